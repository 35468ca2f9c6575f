/** What a blanket says of lists and limits that name something else than it does. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { cellsProject } from './projects'

const told = (project: Project, code: string) =>
  planProject(project).findings.filter((finding) => finding.code === code)

describe('M19 the motifs that alternate', () => {
  it('say that their list begins with another one than the arrangement', () => {
    const usual = cellsProject(['flower', 'bud'])
    expect(told(usual, 'layout/alternate-first')).toEqual([])
    const other = cellsProject(['flower', 'bud'], { alternate: { motifs: ['bud', 'flower'], by: 'cell' } })
    expect(told(other, 'layout/alternate-first')[0]).toMatchObject({
      severity: 'warning',
      where: 'layout.alternate.motifs[0]',
    })
  })

  it('say by their first what the arrangement is made of, where nothing else does', () => {
    const usual = cellsProject(['flower', 'bud'])
    const { motif: _, ...layout } = usual.layout as { motif?: string } & NonNullable<Project['layout']>
    const plan = planProject({ ...usual, layout: layout as Project['layout'] })
    expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(plan.motifs).toEqual(planProject(usual).motifs)
  })
})

it('a joining rule of a motif that is placed nowhere says that it changes nothing', () => {
  const pairs = [{ motifs: ['flower', 'bud'], rule: 'edges' as const }]
  const both = cellsProject(['flower', 'bud'], {}, { joining: { rule: 'tips', pairs } })
  expect(told(both, 'joins/pair-absent')).toEqual([])
  const alone = { ...both, layout: { ...both.layout, alternate: undefined } } as Project
  expect(told(alone, 'joins/pair-absent')[0]).toMatchObject({
    where: 'joining.pairs[0].motifs',
    severity: 'note',
  })
})

it('a limit that is no whole number is told as it was found, in the spelling of its terms', () => {
  const limited = (most: number, terms: 'US' | 'UK') =>
    cellsProject(['flower'], { cells: { fill: { pattern: 'repeat', most: { c0: most } } } }, { terms })
  expect(told(limited(2.5, 'US'), 'file/not-whole')[0]!.message).toBe(
    'the limit of a colorway: found 2.5, expected a whole number from 0 to 100000.',
  )
  expect(told(limited(2.5, 'UK'), 'file/not-whole')[0]!.message).toContain('the limit of a colourway')
  expect(told(limited(200_000, 'US'), 'file/out-of-bounds')[0]!.message).toContain('found 200000')
})
