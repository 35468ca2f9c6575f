/** M36: written rounds at the open ends of what is joined in the round, counted end by end (by hand). */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { byLineWords } from '../../../src-core/edging/words'
import { edgingCorners } from '../../../src-core/figures/edging-corners'
import { workedLine } from '../../../src-core/edging/direction'
import { planProject } from '../../../src-core/plan'

/** Squares of 60 mm, 20 sc to 100 mm: a stitch is 5 mm wide, so that each square has twelve of them. */
const bag = (
  columns: number,
  edging: BlanketLayout['edging'],
  layout: Partial<BlanketLayout> = {},
): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 4 },
  yarns: [{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125 }],
  motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 60 }],
  joining: { rule: 'edges' },
  layout: {
    ...{ kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns, rows: 4, inTheRound: true },
    edging: { rounds: ['sc'], yarn: 'y', ...edging },
    ...layout,
  },
})

const PLAIN = 'Sc in each st around.'
const PICOTS = '*Sc in next 3 sts, ch 3, sl st in first ch; repeat from * around.'
const written = (...works: string[]) => works.map((work) => ({ work }))
const edgingOf = (project: Project) => planProject(project).edging!

describe('M36 written rounds at the open ends of a round', () => {
  it.each([3, 8, 11])('have C · s / w stitches at each of both ends, of %d squares', (columns) => {
    const plan = planProject(bag(columns, { written: written(PLAIN, PICOTS) }))
    const edging = plan.edging!
    const stitches = (columns * 60) / 5
    expect(edging.loops).toHaveLength(2)
    for (const [line, loop] of edging.loops!.entries()) {
      expect(loop.line).toBe(line)
      expect(loop.made[0]).toBe(stitches)
      // Three stitches to a repeat: four picots on every square.
      expect(loop.repeats[1]).toBe(stitches / 3)
      expect(loop.picots[1]).toBe(4 * columns)
    }
    expect(byLineWords(plan, 0)).toMatch(new RegExp(`^at each end ${stitches} stitches`))
    expect(byLineWords(plan, 1)).toMatch(new RegExp(`${stitches / 3} repeats, ${4 * columns} picots$`))
  })

  it('have half the stitches and half the yarn at one end as at both, and say no second end', () => {
    const [both, mouth, bottom] = (['both', 'mouth', 'bottom'] as const).map((ends) =>
      planProject(bag(8, { ends, written: written(PLAIN, PICOTS) })),
    )
    for (const one of [mouth!, bottom!]) {
      expect(one.edging!.loops).toHaveLength(1)
      expect(one.edging!.loops![0]!.made[0]).toBe(96)
      expect(byLineWords(one, 1)).toBe('')
      const parts = [one, both!].map(({ yarns }) => yarns[0]!.parts.edging)
      expect(parts[0]! / parts[1]!).toBeCloseTo(0.5, 6)
    }
    expect(mouth!.edging!.loops![0]!.line).toBe(0)
    expect(bottom!.edging!.loops![0]!.line).toBe(1)
  })

  it('are brought to a multiple at each end: 36 of three squares to 35 in repeats of five', () => {
    const five = '*Sc in next 4 sts, skip 1 st; repeat from * around.'
    for (const loop of edgingOf(bag(3, { written: written(five) })).loops!) {
      expect(loop.repeats[0]).toBe(7)
      expect(loop.made[0]).toBe(28)
    }
  })

  describe('with squares left out at an end', () => {
    const without = (...places: string[]) => ({
      cells: { motifs: Object.fromEntries(places.map((place) => [place, null])) },
    })

    it.each([
      { end: 'mouth', places: ['1,2'] },
      { end: 'mouth', places: ['1,2', '1,3'] },
      { end: 'mouth', places: ['1,1'] },
      { end: 'mouth', places: ['1,1', '1,8'] },
      { end: 'bottom', places: ['4,5', '4,6', '4,7'] },
      { end: 'bottom', places: ['4,1'] },
    ])('go round the notch: two sides more, of $places', ({ end, places }) => {
      const project = bag(8, { style: 'follow', written: written(PLAIN) }, without(...places))
      const plan = planProject(project)
      const [mouth, bottom] = plan.edging!.loops!.map(({ made }) => made[0]!)
      const [notched, even] = end === 'mouth' ? [mouth, bottom] : [bottom, mouth]
      expect(even).toBe((8 * 60) / 5)
      // The line turns within the squares' corners: a stitch less for the four of them.
      expect(notched).toBeGreaterThanOrEqual((8 * 60 + 2 * 60) / 5 - 1)
      expect(notched).toBeLessThanOrEqual((8 * 60 + 2 * 60) / 5)
      const drawn = (plan.edgingLines ?? []).map((line) =>
        line.slice(1).reduce((sum, to, i) => sum + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0),
      )
      expect(drawn.reduce((sum, length) => sum + length)).toBeCloseTo(plan.edging!.length, 1)
    })

    const CORNERS = '*3 dc in corner, dc in each st to next corner; rep from * around.'
    const notched = (...places: string[]) =>
      planProject(bag(8, { style: 'follow', written: written(CORNERS) }, without(...places)))

    it.each([
      { end: 0, places: ['1,4', '1,5'], corners: 2 },
      { end: 0, places: ['1,1'], corners: 2 },
      { end: 0, places: ['1,1', '1,8'], corners: 2 },
      { end: 0, places: ['1,2', '1,6'], corners: 4 },
      { end: 0, places: ['1,4', '1,5', '2,4'], corners: 3 },
      { end: 1, places: ['4,5', '4,6'], corners: 2 },
    ])('M36 work 3 dc in each corner of the notch of $places', ({ end, places, corners }) => {
      const { edging, edgingLines } = notched(...places)
      const { marks, stitches, stretches, made, texts } = edging!.loops![end]!
      expect(marks.map(({ kind }) => kind)).toEqual(Array.from({ length: corners }, () => 'corner'))
      expect(stretches.reduce((sum, count) => sum + count, 0)).toBe(stretches.length > 0 ? stitches : 0)
      // Two stitches more in each corner.
      expect(made[0]).toBe(stitches + 2 * corners)
      expect(texts[0]).toContain('3 dc in next st')
      expect(edging!.rounds[1]!.corners).toBe(corners)
      // Every corner is the upper (lower) end of a side of a square that stands: on the line, as far out as it gets.
      const line = workedLine(edgingLines, end, true, 'right')
      const outmost = end === 0 ? Math.min(...line.map(({ y }) => y)) : Math.max(...line.map(({ y }) => y))
      const isDeeper = places.some((place) => place.startsWith('2'))
      const lengths = [0]
      line
        .slice(1)
        .forEach((to, i) => lengths.push(lengths[i]! + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y)))
      const heights = marks.map(({ along }) => {
        const at = along * lengths.at(-1)!
        const i = lengths.reduce(
          (best, each, k) => (Math.abs(each - at) < Math.abs(lengths[best]! - at) ? k : best),
          0,
        )
        return Math.round(Math.abs(line[i]!.y - outmost))
      })
      expect(heights.sort((a, b) => a - b)).toEqual([
        ...Array.from({ length: isDeeper ? corners - 1 : corners }, () => 0),
        ...(isDeeper ? [60] : []),
      ])
      // The even end has none.
      expect(edging!.loops![1 - end]!.marks).toEqual([])
    })

    it('M36 have stretches as long as the sides between their corners, by hand', () => {
      const { stretches } = notched('1,4', '1,5').edging!.loops![0]!
      // Into the notch: 60 + 120 + 60 mm in stitches of 5 mm, and of 4.66 mm height a right angle less; the turns inside
      // the line's own round corners take up to two stitches. Without: 360 mm, and a right angle more.
      const turn = (Math.PI / 2) * (4.66 / 5)
      expect(stretches[0]).toBeGreaterThanOrEqual(Math.floor(48 - turn - 1))
      expect(stretches[0]).toBeLessThanOrEqual(Math.ceil(48 - turn))
      expect(Math.abs(stretches[1]! - (72 + turn))).toBeLessThanOrEqual(1)
    })

    it('M36 work 3 in the tips of a notch', () => {
      const text = '*3 sc in tip, sc in each st to next tip; rep from * around.'
      const project = bag(8, { style: 'follow', written: written(text) }, without('1,4'))
      const [mouth, bottom] = planProject(project).edging!.loops!
      expect(mouth!.marks.map(({ kind }) => kind)).toEqual(['tip', 'tip'])
      expect(mouth!.made[0]).toBe(mouth!.stitches + 4)
      expect(bottom!.marks).toEqual([])
    })

    it('M36 show each corner with its number on the map, outside of the work', () => {
      for (const [end, place] of [
        [0, '1,4'],
        [1, '4,4'],
      ] as const) {
        const { corners, stretches } = edgingCorners(notched(place))
        expect(corners.map(({ number }) => number)).toEqual([1, 2])
        for (const { out } of corners) expect(end === 0 ? -out.y : out.y).toBeGreaterThan(0.5)
        expect(stretches).toHaveLength(2)
      }
    })

    it('stand a row lower where all of the first row is left out', () => {
      const places = Array.from({ length: 8 }, (_, i) => `1,${i + 1}`)
      const project = bag(8, { style: 'follow', written: written(PLAIN) }, without(...places))
      expect(edgingOf(project).loops!.map(({ made }) => made[0])).toEqual([96, 96])
    })
  })
})
