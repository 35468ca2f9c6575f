/** M35: plain rounds of an edging by what lies flat, at corners, tips and dips, against closed forms. */
import { describe, expect, it } from 'vitest'
import type { EdgingAccount } from '../../../shared-types/plan'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { resolveGauge, stitchYarn } from '../../../src-core/stitches/gauge'
import { hexagons, ofKind, squares } from './helpers'

const gauge = resolveGauge({ stitch: 'sc', stitches: 20, rows: 22, over: 100 }, 'US')

function edgingOf(project: Project): EdgingAccount {
  const { edging } = planProject(project)
  if (!edging) throw new Error('no edging')
  return edging
}

/** The bends of a round, of which each place is told once. */
function bendsOf({ bends = [] }: EdgingAccount['rounds'][number]) {
  return bends.map(({ places = [], ...bend }) => {
    expect(new Set(places.map(({ line, along }) => `${line} ${along}`)).size).toBe(bend.count)
    return bend
  })
}

describe('M35 plain rounds with corners', () => {
  const counts = (project: Project) => edgingOf(project).rounds.map(({ stitches }) => stitches)
  const corners = (project: Project) =>
    edgingOf(project).rounds.map(({ corners: many, inCorner }) => [many, inCorner])

  it.each([
    [8, 5],
    [7, 11],
    [30, 40],
  ])('M35 agree with the same border in words: %i × %i squares', (columns, rows) => {
    const plain = counts(squares(columns, rows, { rounds: ['sc', 'sc'] }))
    expect(plain).toEqual(counts(squares(columns, rows, ofKind('plain'))))
    // Three in one place at each of four corners are two more there.
    expect(plain[1]! - plain[0]!).toBe(4 * 2)
  })

  it('M35 three sc, three hdc and five dc in a right angle', () => {
    const rectangle = squares(8, 5, { rounds: ['sc', 'hdc', 'dc', 'sc'] })
    expect(corners(rectangle)).toEqual([
      [4, 3],
      [4, 3],
      [4, 5],
      [4, 3],
    ])
    const [first, ...later] = counts(rectangle)
    expect(later).toEqual([first! + 8, first! + 8 + 16, first! + 8 + 16 + 8])
  })

  it('M35 two in each tip of the hexagons round the edge, two together in each dip between them', () => {
    for (const rings of [1, 2, 3]) {
      const rounds = edgingOf(hexagons(rings, { rounds: ['sc', 'sc', 'dc'] })).rounds
      // At the edge of r rings stand 6r hexagons: one tip each, two at the six corners; a dip of 60° between any two.
      const [tips, dips] = [6 * rings + 6, 6 * rings]
      expect(bendsOf(rounds[1]!)).toEqual([
        { more: 1, count: tips },
        { more: -1, count: dips },
      ])
      // 2 · tan 30° · h / w = 1.05 for sc and 2.1 for dc (by hand).
      expect(bendsOf(rounds[2]!)).toEqual([
        { more: 2, count: tips },
        { more: -2, count: dips },
      ])
      expect(rounds.every(({ inCorner }) => inCorner === undefined)).toBe(true)
      expect(rounds[1]!.stitches - rounds[0]!.stitches).toBe(tips - dips)
      expect(rounds[2]!.stitches - rounds[1]!.stitches).toBe(2 * (tips - dips))
    }
  })

  it('M35 the steps of squares half a place aside: three in each outer corner, three together in each inner one', () => {
    const steps = squares(6, 4, { rounds: ['sc', 'sc'] })
    const rows = { ...steps.layout, arrangement: 'offset-rows', alternateRows: 'same' } as BlanketLayout
    const [first, second] = edgingOf({ ...steps, layout: rows }).rounds
    // Each of four rows lies half a square aside from the next: four corners, and a step in and out at both sides.
    const corners = 4 + 3 * 2
    expect(bendsOf(second!)).toEqual([
      { more: 2, count: corners },
      { more: -2, count: corners - 4 },
    ])
    expect(second!.stitches - first!.stitches).toBe(2 * 4)
  })

  it('M36 words that begin on a later round: the rounds below have as many fewer as they grow by, on each side', () => {
    for (const project of [
      squares(8, 5, ofKind('shell', 'US', ['sc', 'sc', 'dc'])),
      hexagons(3, ofKind('shell', 'US', ['sc', 'sc', 'dc'])),
    ]) {
      const { rounds, loops } = edgingOf(project)
      const [loop] = loops!
      const grown = ({ inCorner, corners = 0, bends }: EdgingAccount['rounds'][number]) =>
        bends ? bends.reduce((sum, { count, more }) => sum + count * more, 0) : corners * (inCorner! - 1)
      expect(rounds[2]!.stitches).toBe(loop!.stitches)
      expect(rounds[1]!.stitches).toBe(rounds[2]!.stitches - grown(rounds[2]!))
      expect(rounds[0]!.stitches).toBe(rounds[1]!.stitches - grown(rounds[1]!))
      expect(loop!.first!.reduce((sum, count) => sum + count, 0)).toBe(rounds[0]!.stitches)
      // Sides that are alike stay so.
      const sides = loop!.stretches.map((count, i) => `${count} ${loop!.first![i]!}`)
      expect(new Set(sides).size).toBe(new Set(loop!.stretches).size)
    }
  })

  it('M35 a bridged first round keeps its chains, and the next is as long as round the edge', () => {
    const bridged = edgingOf(squares(8, 5, { style: 'bridge', rounds: ['sc', 'sc'] }))
    expect(bridged.rounds[0]!.inCorner).toBeUndefined()
    expect(bridged.rounds[1]).toMatchObject({ corners: 4, inCorner: 3 })
  })

  it('M35 yarn goes with the stitches that are told', () => {
    const { rounds } = edgingOf(squares(8, 5, { rounds: ['sc', 'dc'] }))
    expect(rounds[1]!.metres).toBeCloseTo((rounds[1]!.stitches * stitchYarn('dc', gauge)) / 1000, 9)
  })
})
