/** Half motifs at the sides carry number, letter and tick as whole ones do, each within what is there of it. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { mapGround, smallestNumberedScale } from '../../../src-core/figures/map-ground'
import { MapPainter } from '../../../src-core/figures/map'
import { keptHalf, laidOutline } from '../../../src-core/figures/motif-parts'
import { halfSeats, seatBeside } from '../../../src-core/figures/seats'
import { contains, distanceToEdge } from '../../../src-core/geometry/points'
import { accountAt, placedPieces } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { record } from './recorder'

const SHAPES = {
  hexagons: { kind: 'measured', outline: 'hexagon', sideToSide: 100, blocked: true },
  'deep petals': { kind: 'measured', outline: 'petals', petals: 6, overTips: 74, overValleys: 40 },
  'written flowers': {
    kind: 'rounds',
    outline: 'petals',
    rounds: [
      { slot: 'eye', work: 'Ch 4, join with sl st to form a ring. Ch 1, 12 sc in ring, join.' },
      { slot: 'rim', work: '*(Sc, hdc, dc, hdc, sc) in next st, sl st in next st; rep from * around, join.' },
    ],
  },
} as const

const blanket = (name: keyof typeof SHAPES): Project => ({
  format: 'petalyard-project',
  version: 1,
  terms: 'US',
  gauge: { stitch: 'dc', stitches: 16, rows: 8, over: 100 },
  yarns: [
    { id: 'cream', colour: '#f6efdc' },
    { id: 'rose', colour: '#d08c9a' },
    { id: 'green', colour: '#1f4030' },
  ],
  motifs: [{ slots: [{ slot: 'eye' }, { slot: 'rim' }], ...SHAPES[name], id: 'm' } as never],
  colourways: [
    { id: 'a', code: 'A', motif: 'm', yarns: { eye: 'rose', rim: 'cream' } },
    { id: 'b', code: 'B', motif: 'm', yarns: { eye: 'cream', rim: 'rose' } },
    { id: 'c', code: 'C', motif: 'm', yarns: { eye: 'cream', rim: 'green' } },
  ],
  layout: {
    ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 9, rows: 12 },
    ...{ alternateRows: 'oneFewer', halves: true },
    cells: { fill: { pattern: 'no-two-alike', colourways: ['a', 'b', 'c'], seed: 3 } },
  },
  joining: { rule: name === 'hexagons' ? 'edges' : 'tips' },
  made: Object.fromEntries(['2,left', '2,right', '4,left', '4,right'].map((id) => [id, ''])),
})

describe.each(Object.keys(SHAPES) as (keyof typeof SHAPES)[])('half motifs of %s', (name) => {
  const plan = planProject(blanket(name))
  const halves = placedPieces(plan).filter(({ kind }) => kind === 'half')
  const outlineOf = ({ x, y, turn, side = 'left', ...half }: (typeof halves)[number]) =>
    laidOutline(accountAt(plan, half)!.outline, { turn, scale: 1, half: keptHalf({ side }) }).map((p) => ({
      x: p.x + x,
      y: p.y + y,
    }))

  it.each(['ink', 'colour'] as const)('have number and letter at the smallest scale, in %s', (style) => {
    expect(halves.length).toBeGreaterThan(8)
    const ground = mapGround(plan, style)
    const scale = smallestNumberedScale(ground)
    const { width, height } = plan.size
    const { texts } = record({ items: new MapPainter(ground, scale).window({ x: 0, y: 0, width, height }) })
    for (const half of halves) {
      const outline = outlineOf(half)
      const own = texts.filter(({ x, y }) => contains(outline, { x: x / scale, y: y / scale }))
      expect(own.map(({ text }) => text)).toEqual([half.label, expect.stringMatching(/^[ABC]$/)])
    }
  })

  it('have their tick on what is there of them', () => {
    const ground = mapGround(plan, 'colour')
    const scale = 2 * smallestNumberedScale(ground)
    const { width, height } = plan.size
    const { paths } = record({ items: new MapPainter(ground, scale).window({ x: 0, y: 0, width, height }) })
    const strokes = paths.filter(({ paint, points }) => paint.cap === 'round' && points.length % 3 === 0)
    const corners = strokes.flatMap(({ points }) => points).map(([x, y]) => ({ x: x / scale, y: y / scale }))
    const made = halves.filter(({ id }) => plan.marks.made.includes(id))
    expect(made).toHaveLength(4)
    const near = made.map((half) => corners.filter((at) => contains(outlineOf(half), at)).length)
    expect(near).toEqual(made.map(() => 3))
  })

  it('have room for a mark beside their middle, within their outline', () => {
    for (const half of halves) {
      const { side = 'left', turn } = half
      const seats = halfSeats(accountAt(plan, half)!, { side, turn })
      expect(contains(seats.outline, seats.middle)).toBe(true)
      const at = seatBeside(seats, seats.middle.room * 3, 2, -1)
      const room = Math.min(...seats.outline.map((b, i) => distanceToEdge(at, seats.outline.at(i - 1)!, b)))
      expect(contains(seats.outline, at)).toBe(true)
      expect(room).toBeGreaterThanOrEqual(2 - 1e-6)
    }
  })
})
