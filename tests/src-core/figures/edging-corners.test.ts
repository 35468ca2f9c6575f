/** M36: corners of an edging on the map, numbered as its words count them; squares and hexagons of 60 mm, counted by hand. */
import { describe, expect, it } from 'vitest'
import { cornerPlates, cornerWords, edgingCorners } from '../../../src-core/figures/edging-corners'
import type { Hand } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { hexagons, ofKind, SIDE, squares } from '../edging/helpers'
import { record } from './recorder'

const LOOK = { scale: 0.3, type: 7, ink: '#000000', paper: '#ffffff', line: 0.25, left: 0, top: 0 } as const

describe('M36 the corners of an edging', () => {
  it.each([
    ['right', 'counterclockwise from the top right'],
    ['left', 'clockwise from the top left'],
  ] as [Hand, string][])(
    'stand at the corners of a rectangle, for %s-handers %s, with the stitches of each side',
    (hand) => {
      const plan = planProject({ ...squares(8, 5, ofKind('shell')), hand })
      const { corners, stretches } = edgingCorners(plan)
      const { width, height } = plan.size
      const [begin, end] = hand === 'right' ? [width, 0] : [0, width]
      const where = [
        [begin, 0],
        [end, 0],
        [end, height],
        [begin, height],
      ]
      expect(corners.map(({ number }) => number)).toEqual([1, 2, 3, 4])
      corners.forEach(({ x, y }, i) => {
        expect(Math.hypot(x - where[i]![0]!, y - where[i]![1]!)).toBeLessThan(plan.edging!.height)
      })
      const [loop] = plan.edging!.loops!
      expect(stretches.map(({ stitches }) => stitches)).toEqual(loop!.stretches)
      expect(stretches.reduce((sum, { stitches }) => sum + stitches, 0)).toBe(loop!.stitches)
      expect(stretches.map(({ from, to }) => [from, to])).toEqual([
        [1, 2],
        [2, 3],
        [3, 4],
        [4, 1],
      ])
      // 8 motifs of 60 mm across and 5 down.
      expect(stretches[0]!.length).toBeCloseTo(8 * SIDE, 0)
      expect(stretches[1]!.length).toBeCloseTo(5 * SIDE, 0)
      // Words along the sides are read from below or from the right, never upside down.
      for (const { angle } of stretches) expect(Math.abs(angle)).toBeLessThanOrEqual(Math.PI / 2 + 1e-6)
      expect(stretches[0]!.angle).toBeCloseTo(0, 6)
      expect(stretches[1]!.angle).toBeCloseTo(-Math.PI / 2, 6)
    },
  )

  it('are six of a hexagon and three of a triangle', () => {
    expect(edgingCorners(planProject(hexagons(2, ofKind('shell')))).corners).toHaveLength(6)
    const whole = squares(14, 8, ofKind('shell'))
    const outlineShape = { kind: 'triangle', size: 1300, height: 780, points: 'down' } as const
    const shawl = planProject({ ...whole, layout: { ...whole.layout, outlineShape } as typeof whole.layout })
    expect(edgingCorners(shawl).corners).toHaveLength(shawl.edging!.loops![0]!.marks.length)
  })

  it('are drawn in squares within the map; counts, which would cover the border there, stand beside it alone', () => {
    const plan = planProject(squares(8, 5, ofKind('shell')))
    const { texts, paths } = record({ items: cornerPlates(plan, LOOK) })
    expect(texts.map(({ text }) => text)).toEqual(['1', '2', '3', '4'])
    for (const [x, y] of paths.flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(-1e-6)
      expect(x).toBeLessThanOrEqual(plan.size.width * LOOK.scale + 1e-6)
      expect(y).toBeGreaterThanOrEqual(-1e-6)
      expect(y).toBeLessThanOrEqual(plan.size.height * LOOK.scale + 1e-6)
    }
    const beside = record({ items: cornerPlates(plan, { ...LOOK, isBeside: true }) })
    const [loop] = plan.edging!.loops!
    for (const wanted of ['1', '2', '3', '4', ...loop!.stretches.map((count) => `${count} sts`)])
      expect(beside.texts.map(({ text }) => text)).toContain(wanted)
    const small = record({ items: cornerPlates(plan, { ...LOOK, isBeside: true, scale: 0.02 }) })
    expect(small.texts.map(({ text }) => text)).toEqual(['1', '2', '3', '4'])
    expect(cornerWords(plan, 'border', false)).toBe(
      'A number in a square along the edge is a corner of the border.',
    )
    expect(cornerWords(plan, 'border', true)).toContain('how many stitches are worked')
  })

  it('have the stitches that are picked up between them, also where words begin on a later round', () => {
    const plan = planProject(squares(8, 5, ofKind('shell', 'US', ['sc', 'sc', 'sc'])))
    const [loop] = plan.edging!.loops!
    // Three sc in each of four corners: two more on each side in every round.
    expect(edgingCorners(plan).stretches.map(({ stitches }) => stitches)).toEqual(
      loop!.stretches.map((count) => count - 2 * 2),
    )
  })

  it('lie beside the border where there is room, and cover nothing of it', () => {
    const plan = planProject(squares(8, 5, ofKind('shell')))
    const { paths } = record({ items: cornerPlates(plan, { ...LOOK, isBeside: true }) })
    const [width, height] = [plan.size.width * LOOK.scale, plan.size.height * LOOK.scale]
    // At a corner the border itself reaches further than it is high.
    const near = 0.5 * plan.edging!.height * LOOK.scale
    for (const { points } of paths) {
      const [xs, ys] = [points.map(([x]) => x!), points.map(([, y]) => y!)]
      const isOutside =
        Math.max(...xs) <= near ||
        Math.min(...xs) >= width - near ||
        Math.max(...ys) <= near ||
        Math.min(...ys) >= height - near
      expect(isOutside).toBe(true)
    }
  })

  it('are none where no words count corners', () => {
    for (const project of [squares(8, 5, { rounds: ['sc', 'dc'] }), hexagons(2, ofKind('ripple'))]) {
      const plan = planProject(project)
      expect(edgingCorners(plan)).toEqual({ corners: [], stretches: [] })
      expect(cornerPlates(plan, LOOK)).toEqual([])
      expect(cornerWords(plan, 'border', true)).toBe('')
    }
  })
})
