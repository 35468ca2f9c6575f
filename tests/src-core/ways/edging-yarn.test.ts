/** M29: what a way's edging is worked in. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'
import { edgingInWords } from '../../../src-core/ways/words'
import { expectKept } from './expect-kept'
import { SQUARES } from './squares'

describe('a way to a size', () => {
  it('names the yarn that another edging is worked in, and of a way that has none says nothing', () => {
    const inMoss: Project = {
      ...SQUARES,
      yarns: [{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125 }],
      colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
      layout: { ...SQUARES.layout!, cells: { fill: { pattern: 'one', colourways: ['c'] } } } as BlanketLayout,
    }
    const ways = expectKept(inMoss, { width: 1092 })
    const [edged] = ways.filter(({ kinds }) => kinds.join() === 'edging')
    expect(planProject(withEdit(inMoss, edged!.edit)).edging!.yarn).toBe('y')
    expect(edged!.edgingIn).toEqual(['y'])
    expect(edgingInWords(edged!, (id) => `“${id}”`, 'US')).toBe('Border in “y”')
    const others = ways.filter(({ kinds }) => !kinds.includes('edging'))
    expect(others.length).toBeGreaterThan(0)
    expect(others.every(({ edgingIn }) => edgingIn === undefined)).toBe(true)
    expect(edgingInWords(others[0]!, (id) => id, 'US')).toBe('')
  })
})
