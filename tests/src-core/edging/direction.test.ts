/**
 * M35, which way an edging is worked. Who holds a piece with its right side to them and its edge up works from right to
 * left with the right hand, from left to right with the left one (common practice): the work lies to the left of the way
 * of right-handers. A left-hander does to the mirror image of a piece what a right-hander does to the piece.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout, Hand, Project } from '../../../shared-types/project'
import { alongOf, pointAlong } from '../../../src-core/edging/line-places'
import { workedLine } from '../../../src-core/edging/direction'
import { pickUps } from '../../../src-core/edging/pick-up'
import { edgingCorners } from '../../../src-core/figures/edging-corners'
import { edgingShapes } from '../../../src-core/figures/edging-shapes'
import { contains, signedArea } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { runs } from '../../runs'
import { record } from '../figures/recorder'
import { ofKind, squares } from './helpers'

const HANDS: readonly Hand[] = ['right', 'left']
const COLUMNS = 6

/** Squares without some places, flat or joined in the round. */
function cut(places: readonly string[], hand: Hand, inTheRound: boolean, kind: Parameters<typeof ofKind>[0]) {
  const whole = squares(COLUMNS, 4, ofKind(kind))
  const motifs = Object.fromEntries(places.map((place) => [place, null]))
  const layout = { ...(whole.layout as BlanketLayout), inTheRound, cells: { motifs } }
  return { ...whole, hand, layout } as Project
}

const mirrored = (place: string): string => {
  const [row, column] = place.split(',').map(Number)
  return `${row},${COLUMNS + 1 - column!}`
}

/** Whether numbers in a ring are as others, from one of them on, as far as `off`. */
const isSameRing = (a: readonly number[], b: readonly number[], off: number): boolean =>
  a.length === b.length &&
  a.some((_, start) => a.every((__, i) => Math.abs(a[(start + i) % a.length]! - b[i]!) <= off))

/** Where a mark stands on the plan's line the way it is worked. */
function placeOf({ edgingLines, round, settled }: Plan, line: number, share: number) {
  const isOpen = round !== undefined && line < 2
  const way = workedLine(edgingLines, line, round !== undefined, settled.hand)
  const along = alongOf(way)
  return pointAlong(way, along, share * along[isOpen ? way.length - 1 : way.length]!, isOpen)
}

describe('M35 the way an edging is worked', () => {
  it('M35 is counterclockwise for right-handers, clockwise for left-handers, and the other way round a hole', () => {
    for (const hand of HANDS) {
      const plan = planProject(cut(['2,3', '3,3'], hand, false, 'shell'))
      const { edgingLines, edging } = plan
      expect(edgingLines.map((line) => Math.sign(signedArea(line)))).toEqual([1, -1])
      const sign = hand === 'right' ? -1 : 1
      const corners = edging!.loops![0]!.marks.map(({ along }) => placeOf(plan, 0, along))
      expect(Math.sign(signedArea(corners))).toBe(sign)
      expect(Math.sign(signedArea(edgingCorners(plan).corners))).toBe(sign)
      const hole = workedLine(edgingLines, 1, false, hand)
      expect(Math.sign(signedArea(hole))).toBe(-sign)
    }
  })

  it('M35 goes along the mouth the other way than along the bottom, as either is held up', () => {
    for (const hand of HANDS) {
      const plan = planProject(cut(['1,2', '1,4', '4,2', '4,4'], hand, true, 'plain'))
      const { corners } = edgingCorners(plan)
      const ends = plan.edging!.loops!.map(({ line, marks }) =>
        marks.map(({ along }) => placeOf(plan, line, along).x),
      )
      const isRising = (numbers: readonly number[]) => numbers.every((x, i) => i === 0 || x > numbers[i - 1]!)
      expect(ends.map((end) => isRising(end))).toEqual(hand === 'right' ? [false, true] : [true, false])
      // Numbers stand outside of the work: above the mouth, below the bottom.
      corners.forEach(({ out }, i) => expect(i < 4 ? -out.y : out.y).toBeGreaterThan(0.5))
    }
  })

  it('M35 property: a left-hander counts along a mirror image what a right-hander counts along the piece', () => {
    const place = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: COLUMNS }))
    const kind = fc.constantFrom('plain', 'shell', 'ripple', 'picot' as const)
    fc.assert(
      fc.property(
        fc.uniqueArray(
          place.map(([row, column]) => `${row},${column}`),
          { maxLength: 3 },
        ),
        fc.boolean(),
        kind,
        (places, inTheRound, of) => {
          const right = planProject(cut(places, 'right', inTheRound, of))
          const left = planProject(cut(places.map(mirrored), 'left', inTheRound, of))
          const [one, other] = [right, left].map((plan) => plan.edging?.loops ?? [])
          expect(one!.length).toBe(other!.length)
          // Where a tip of a line stands hangs on where the line begins, by less than a stitch.
          const off = of === 'ripple' ? 1 : 0
          for (const loop of one!)
            expect(
              other!.some(
                ({ stitches, stretches, made }) =>
                  Math.abs(stitches - loop.stitches) <= off &&
                  Math.abs((made[0] ?? 0) - (loop.made[0] ?? 0)) <= off &&
                  isSameRing(stretches, loop.stretches, off),
              ),
              JSON.stringify([loop.stretches, other!.map(({ stretches }) => stretches)]),
            ).toBe(true)
          for (const plan of [right, left])
            for (const loop of plan.edging?.loops ?? []) {
              const picked = pickUps(plan, loop)
              expect(picked.reduce((sum, each) => sum + each.stitches, 0)).toBe(loop.stitches)
            }
        },
      ),
      { numRuns: runs(30) },
    )
  })

  it('M35 fills a dip from the side that is met first', () => {
    // A stair that falls slowly and ends steeply, in stitches so large that they fill it.
    const gauge = { stitch: 'sc', stitches: 4, rows: 4, over: 100 }
    const stairs = ['1,3', '1,4', '1,5', '1,6', '2,6']
    const worksOf = (places: readonly string[], hand: Hand) => {
      const project = cut(places, hand, false, 'plain')
      const layout = {
        ...project.layout,
        edging: { style: 'level', rounds: ['sc'], yarn: 'y1' },
      } as BlanketLayout
      const { dips = [] } = planProject({ ...project, gauge, layout }).edging!
      return dips.map(({ work, rows }) => JSON.stringify([work, rows])).sort()
    }
    const right = worksOf(stairs, 'right')
    expect(right).toEqual(worksOf(stairs.map(mirrored), 'left'))
    expect(right).not.toEqual(worksOf(stairs, 'left'))
  })

  it('M35 draws the same piece for both hands, its stitches outside of the edge', () => {
    for (const inTheRound of [false, true])
      for (const hand of HANDS) {
        const plan = planProject(cut(['2,3', '3,3'], hand, inTheRound, 'shell'))
        const edge = plan.edgingLines[inTheRound ? 2 : 0]!
        const motifs = plan.motifs.map(({ x, y }) => ({ x, y }))
        for (const { outlines, fans } of edgingShapes(plan)!.rounds) {
          expect(outlines.length).toBeGreaterThan(0)
          for (const [, top] of fans.flat()) {
            // A stitch that stands inwards would stand on a motif.
            const near = Math.min(
              ...motifs.map(({ x, y }) => Math.max(Math.abs(x - top.x), Math.abs(y - top.y))),
            )
            expect(near).toBeGreaterThan(28)
          }
        }
        if (inTheRound) expect(contains(edge, plan.motifs[0]!)).toBe(false)
      }
  })

  it('M35 is said on the page in the spelling of its terms', () => {
    const words = (hand: Hand, terms: 'US' | 'UK', inTheRound = false) => {
      const plan = planProject(cut(['2,3'], hand, inTheRound, 'shell'))
      return mapPages(plan, { date: new Date(0), terms })
        .flatMap(({ figure }) => record(figure).texts.map(({ text }) => text))
        .join(' ')
        .match(/Going [a-z ]+,/g)!
    }
    expect(words('right', 'US')).toEqual(['Going counterclockwise,', 'Going clockwise,'])
    expect(words('right', 'UK')).toEqual(['Going anticlockwise,', 'Going clockwise,'])
    expect(words('left', 'US')).toEqual(['Going clockwise,', 'Going counterclockwise,'])
    expect(words('right', 'US', true)).toEqual([
      ...['Going from right to left,', 'Going from right to left,', 'Going clockwise,'],
    ])
  })
})
