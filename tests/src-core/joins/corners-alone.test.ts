/** M32: motifs with straight sides that are joined at nothing but their corners hang by points, and are warned of. */
import { expect, it } from 'vitest'
import type { JoinRule, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

const blanket = (outline: string, rule: JoinRule, layout: object = {}, motif: object = {}): Project =>
  ({
    ...{ format: 'petalyard-project', version: 1, joining: { rule } },
    motifs: [
      { id: 'm', kind: 'measured', outline, sideToSide: 100, ...motif },
      { id: 's', kind: 'measured', outline: 'square', sideToSide: 95 },
    ],
    layout: { kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 4, rows: 4, ...layout },
  }) as unknown as Project

const codes = (project: Project) =>
  planProject(project)
    .findings.map(({ code }) => code)
    .filter((code) => /^joins\/(?:corners-alone|weak)$/.test(code))

it('squares side on side whose corners alone are joined, and whatever stands corner to corner', () => {
  expect(codes(blanket('square', 'tips'))).toEqual(['joins/corners-alone'])
  expect(codes(blanket('octagon', 'tips'))).toEqual(['joins/corners-alone'])
  // Turned by 45° squares of straight rows meet at points, however their sides would be joined.
  for (const rule of ['edges', 'seam', 'tips'] as const)
    expect(codes(blanket('square', rule, { turn: 45 }))).toEqual(['joins/corners-alone'])
  expect(
    planProject(blanket('square', 'tips')).findings.find(({ code }) => code === 'joins/corners-alone'),
  ).toMatchObject({
    severity: 'warning',
  })
})

it('not where sides are joined, where fillers hold them, where nothing is joined, nor of flowers', () => {
  for (const rule of ['edges', 'seam', 'apart'] as const) expect(codes(blanket('square', rule))).toEqual([])
  expect(codes(blanket('hexagon', 'edges', { arrangement: 'offset-rows' }))).toEqual([])
  const filled = { turn: 45, fillers: { motif: 's' } }
  expect(codes(blanket('square', 'edges', filled))).toEqual([])
  const petals = { petals: 4, overTips: 100, overValleys: 70, sideToSide: undefined }
  expect(codes(blanket('petals', 'tips', {}, petals))).toEqual(['joins/weak'])
})
