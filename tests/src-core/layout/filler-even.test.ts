/**
 * M27: of two petals of a motif that face an opening alike, which one a round filler is joined to. Flowers of eight
 * petals, 90 mm, in straight rows and rotated by 22.5°, so that two petals of each meet two of each neighbour's: round
 * each opening lie four flowers, at 45°, 135°, 225° and 315° from its middle, and each turns two tips to it that lie
 * 22.5° to either side of the line to the middle. By hand.
 */
import { describe, expect, it } from 'vitest'
import type { Plan, PlacedFiller, Point } from '../../../shared-types/plan'
import { directionOf, polar } from '../../../src-core/geometry/points'
import { MapPainter } from '../../../src-core/figures/map'
import { mapGround } from '../../../src-core/figures/map-ground'
import { orderList } from '../../../src-core/figures/order-list'
import { facingPoints } from '../../../src-core/layout/facing-points'
import { mapSize } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { degrees, radians } from '../../../src-core/units/quantity'
import { blanket } from './additions'

const flower = { outline: 'petals', petals: 8, overTips: 90, overValleys: 66 }
const filler = { outline: 'round', across: 41.4 }

/** 10 × 4 of them; in the round 10 · 3 openings, else 9 · 3. */
const plan = (inTheRound: boolean): Plan =>
  planProject(
    blanket(flower, filler, {
      ...{ columns: 10, rows: 4, turn: 22.5, inTheRound },
      fillers: { motif: 'f' },
    }),
  )

/** From the middle of a filler to where it is joined, in degrees clockwise from the top, in their order. */
const directions = ({ x, y, points }: PlacedFiller): number[] =>
  points!.map((at) => (degrees(directionOf({ x: at.x - x, y: at.y - y })) + 360) % 360).sort((a, b) => a - b)

describe('M27 petals that face an opening alike', () => {
  it('are chosen alike all round: four joins a quarter of the way round from each other', () => {
    // Those on the closing line as the others: beside them, not at the other end of the map.
    const { fillers } = plan(true)
    expect(fillers).toHaveLength(30)
    for (const one of fillers) {
      const [first, ...others] = directions(one)
      // The first of the four flowers lies at 45°.
      expect(first).toBeGreaterThan(0)
      expect(first).toBeLessThan(90)
      expect(others.map((each) => Math.round(each - first!))).toEqual([90, 180, 270])
    }
  })

  it('are said by the hours that lie three apart', () => {
    const { fillerSteps } = plan(true)
    expect(fillerSteps).toHaveLength(30)
    for (const { words } of fillerSteps) {
      const hours = [...words.matchAll(/at half past (\d+) to/g)].map(([, hour]) => Number(hour) % 12)
      expect(hours.sort((a, b) => a - b)).toEqual([0, 3, 6, 9])
    }
  })

  it('are one way to learn, in rows worked to the left and to the right: 27 of 30; 3 lie on the closing line', () => {
    const ways = orderList(plan(true)).ways.filter(({ kind }) => kind === 'filler')
    expect(ways.map(({ uses }) => uses).sort((a, b) => b - a)).toEqual([27, 3])
  })

  it('have their numbers on the map, those on the closing line as well', () => {
    const account = plan(true)
    const ground = mapGround(account, 'colour')
    const { width, height } = mapSize(account)
    const texts = new MapPainter(ground, 0.25)
      .window({ x: 0, y: 0, width, height })
      .flatMap((item) => (item.kind === 'text' ? [item.text] : []))
    expect(account.fillers.filter(({ label }) => !texts.includes(label))).toEqual([])
  })

  it('as evenly as what has but one place lets them', () => {
    const at = (radius: number, angle: number): Point => polar(radius, radians(angle))
    const spike = (angle: number) => [at(20, angle), at(60, angle + 20), at(60, angle - 20)]
    const fork = (one: number, other: number) => {
      const between = (one + other) / 2
      return [at(20, one), at(60, between), at(20, other), at(90, between)]
    }
    // 0° or 60°, 180°, 240° or 300°: thirds of the way round are 60°, 180° and 300°.
    const motifs = [fork(0, 60), spike(180), fork(240, 300)]
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
      [1, 2, 0],
    ]) {
      const found = facingPoints(order.map((motif) => motifs[motif]!))
      const told = found.map((point) => Math.round((degrees(directionOf(point)) + 360) % 360))
      expect(told).toEqual(order.map((motif) => [60, 180, 300][motif]))
    }
  })
})
