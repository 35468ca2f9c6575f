/** M36, written rounds drawn as they are: as many shells, picots and waves as the account of their words has. */
import { describe, expect, it } from 'vitest'
import type { Point } from '../../../shared-types/plan'
import { edgingShapes } from '../../../src-core/figures/edging-shapes'
import { figureSymbols } from '../../../src-core/figures/figure'
import { MapPainter } from '../../../src-core/figures/map'
import { mapGround } from '../../../src-core/figures/map-ground'
import { boxOf, distance } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { figureToSvg } from '../../../src-main/paper'
import { hexagons, ofKind, squares } from './helpers'

function drawn(project: Parameters<typeof planProject>[0]) {
  const plan = planProject(project)
  const shapes = edgingShapes(plan)
  if (!shapes) throw new Error('nothing is drawn')
  return { plan, shapes, round: plan.edging!.rounds.at(-1)! }
}

describe('M36 the drawing of an edging', () => {
  it('M36 has a fan for every shell, of as many stitches', () => {
    const { shapes, round } = drawn(squares(6, 4, ofKind('shell')))
    const [shells, setUp] = shapes.rounds
    expect(shells!.fans).toHaveLength(round.repeats!)
    expect(new Set(shells!.fans.map((fan) => fan.length))).toEqual(new Set([5]))
    expect(setUp!.fans).toEqual([])
  })

  it('M36 has a loop for every picot, also in the SVG', () => {
    const { plan, shapes, round } = drawn(squares(4, 3, ofKind('picot')))
    expect(shapes.rounds[0]!.picots).toHaveLength(round.picots!)
    const { width, height } = plan.size
    const painter = new MapPainter(mapGround(plan, 'colour'), 0.5)
    const items = painter.window({ x: 0, y: 0, width, height })
    const figure = { width: width / 2, height: height / 2, items }
    expect(figureSymbols(figure).filter(({ id }) => id.startsWith('picot-'))).toHaveLength(1)
    const svg = figureToSvg(figure)
    // Its one symbol that is used so often.
    const uses = new Map<string, number>()
    for (const [, name = ''] of svg.matchAll(/<use href="#([^"]+)" transform="matrix/g))
      uses.set(name, (uses.get(name) ?? 0) + 1)
    expect([...uses.values()]).toContain(round.picots!)
  })

  it('M36 is the same drawing in a picture of the whole as on its map', () => {
    for (const kind of ['shell', 'picot', 'scallop', 'ripple'] as const) {
      const { plan } = drawn(squares(4, 3, ofKind(kind)))
      const { width, height } = plan.size
      const painter = new MapPainter(mapGround(plan, 'colour'), 0.5)
      const [map, picture] = [painter.window({ x: 0, y: 0, width, height }), painter.plain()]
      const edging = picture[0]!
      expect(edging.kind).toBe('group')
      expect(map[0]).toEqual(edging)
    }
  })

  it.each(['shell', 'picot', 'plain', 'scallop'] as const)(
    'M36 leads a border of %s round each corner as high as along the sides',
    (kind) => {
      const { plan, shapes } = drawn(squares(4, 3, ofKind(kind)))
      const { heights } = plan.edging!.gauge!
      const whole = boxOf(...plan.edgingLines)
      const beyond = (at: Point): number =>
        Math.hypot(
          Math.max(whole.left - at.x, 0, at.x - whole.right),
          Math.max(whole.top - at.y, 0, at.y - whole.bottom),
        )
      const [outline] = shapes.rounds[0]!.outlines
      const least = outline!.flatMap((a, i) => {
        const b = outline![(i + 1) % outline!.length]!
        return [0, 0.25, 0.5, 0.75].map((t) => beyond({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }))
      })
      // The lowest of a scallop are slip stitches; a corner that is cut off is as low as 0.71 of it.
      const low = kind === 'scallop' ? heights['sl st']! : heights.sc!
      expect(Math.min(...least)).toBeGreaterThan(0.94 * (heights.sc! + low))
    },
  )

  it('M36 spreads a shell at a corner no wider than along a side', () => {
    const { plan, shapes } = drawn(squares(4, 3, ofKind('shell')))
    const across = shapes.rounds[0]!.fans.map((fan) => distance(fan[0]![1], fan.at(-1)![1]))
    const usual = [...across].sort((a, b) => a - b)[across.length >> 1]!
    expect(Math.max(...across)).toBeLessThan(1.05 * usual)
    for (const fan of shapes.rounds[0]!.fans)
      for (const [foot, top] of fan)
        expect(distance(foot, top)).toBeLessThan(1.1 * plan.edging!.gauge!.heights.dc!)
  })

  it('M36 draws scallops as waves: as many crests as repeats, within the finished size', () => {
    const { plan, shapes, round } = drawn(squares(6, 4, ofKind('scallop')))
    const [waves] = shapes.rounds
    expect(waves!.fans).toHaveLength(round.repeats!)
    const box = boxOf(...waves!.outlines)
    // Stitches that lean reach no farther than those that stand upright.
    expect(box.left).toBeGreaterThan(-0.5)
    expect(box.top).toBeGreaterThan(-0.5)
    expect(box.right).toBeLessThan(plan.size.width + 0.5)
    expect(box.bottom).toBeLessThan(plan.size.height + 0.5)
    expect(box.right - box.left).toBeGreaterThan(plan.size.width - 2)
  })

  it('M36 runs along both open ends of a round, from one end of its map to the other', () => {
    const bag = squares(8, 3, ofKind('shell'))
    const { plan, shapes } = drawn({ ...bag, layout: { ...bag.layout, kind: 'blanket', inTheRound: true } })
    const [shells] = shapes.rounds
    expect(shells!.outlines).toHaveLength(2)
    plan.edgingLines.forEach((line, i) => {
      const [box, whole] = [boxOf(shells!.outlines[i]!), boxOf(line)]
      expect(box.right).toBeCloseTo(whole.right, 6)
      expect(Math.abs(box.left - whole.left)).toBeLessThan(2 * shapes.width)
    })
  })

  it('M36 stays the same drawing as long as the edging stays as it is', () => {
    const plan = planProject(hexagons(2, ofKind('shell')))
    const other = { ...plan, marks: { ...plan.marks } }
    expect(edgingShapes(other)).toBe(edgingShapes(plan))
    expect(edgingShapes(planProject(squares(6, 4, { rounds: ['sc'] })))).toBeNull()
  })

  it('M36 is drawn as a band where print cannot show its stitches', () => {
    const { plan } = drawn(squares(6, 4, ofKind('picot')))
    const { width, height } = plan.size
    const items = new MapPainter(mapGround(plan, 'colour'), 0.05).window({ x: 0, y: 0, width, height })
    expect(figureSymbols({ items }).filter(({ id }) => id.startsWith('picot-'))).toEqual([])
  })
})
