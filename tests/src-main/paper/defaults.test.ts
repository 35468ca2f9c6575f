/** A default that is written out and one that is left out are the same project, to the last byte of paper. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { remembered } from '../../../src-core/memo'
import { planProject } from '../../../src-core/plan'
import { renderMap } from '../../../src-main/paper'
import { listCsv } from '../../../src-main/paper/lists'
import { OPEN_FIELDS, writtenOut } from '../../written-out'
import { EXAMPLES, planOf } from './examples'

const DATE = new Date('2026-11-26T10:00:00Z')
/** An example with all its defaults written out. */
const allWritten = remembered((project: Project) => writtenOut(project))

/** What a plan tells, without the project that it is of. */
const told = ({ settled: _, ...plan }: Plan) => plan

describe('a project with its defaults written out', () => {
  it.each(EXAMPLES)('has the same plan: $name', ({ project }) => {
    const plan = told(planOf(project))
    expect(told(planOf(allWritten(project)))).toEqual(plan)
    const some = fc.record({ own: fc.subarray([...OPEN_FIELDS]), ofLayout: fc.boolean() })
    fc.assert(
      fc.property(some, ({ own, ofLayout }) => {
        expect(told(planProject(writtenOut(project, own, ofLayout)))).toEqual(plan)
      }),
      { numRuns: 3 },
    )
  })

  it.each(EXAMPLES)('has the same lists and the same pages, byte for byte: $name', async ({ project }) => {
    const [left, written] = [planOf(project), planOf(allWritten(project))]
    for (const list of ['materials', 'order', 'cord', 'items', 'kit', 'purchase'] as const)
      expect(listCsv(list, written)).toBe(listCsv(list, left))
    const options = { date: DATE, version: '0' }
    const [a, b] = [await renderMap(left, options), await renderMap(written, options)]
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true)
  })
})
