/** What a plan comes to is known before what is told of each motif; both are the same. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { createPlanner } from '../../src-core/plan'

const examples = readdirSync('examples')
  .filter((name) => name.endsWith('.petalyard'))
  .map((name) => ({
    name: name.replace('.petalyard', ''),
    project: JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as Project,
  }))

const blankets = examples.filter(({ project }) => project.layout?.kind === 'blanket' && !project.layout.kit)

describe('the numbers of a plan', () => {
  it.each(blankets)('of $name are those of the plan', ({ project }) => {
    const { motifs, ...numbers } = createPlanner().numbers(project)!
    const plan = createPlanner().plan(project)
    expect(plan).toMatchObject(numbers)
    expect(motifs.length).toBe(plan.motifs.length)
    expect(plan.counts.joins).toBeGreaterThan(0)
  })

  it('are not told apart where the whole plan is as quick, or where nothing can be counted', () => {
    for (const { project } of examples.filter(({ project }) => project.layout?.kind !== 'blanket'))
      expect(createPlanner().numbers(project)).toBeNull()
    expect(
      createPlanner().numbers({ format: 'petalyard-project', version: 1, layout: { kind: 'blanket' } }),
    ).toBeNull()
  })
})
