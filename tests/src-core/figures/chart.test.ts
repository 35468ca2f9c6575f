import { describe, expect, it } from 'vitest'
import type { SheetStyle } from '../../../shared-types/project'
import {
  chartFigures,
  chartKey,
  chartKeyFigure,
  chartParts,
  LIGHTER_INK,
  SECOND_INK,
} from '../../../src-core/figures/chart'
import type { ChartFigure } from '../../../src-core/figures/chart'
import { flattenPath } from '../../../src-core/figures/chart/flatten'
import { INK } from '../../../src-core/figures/figure'
import { SMALLEST_TYPE } from '../../../src-core/figures/lettering'
import { CHARTED, FANNED, FIVE, HEXAGON, LAYERED, LEAF, locate, PICOTS, POSTS, SAMPLER } from './chart-motifs'
import { examplesInRounds } from './chart-corpus'
import { crossings } from './crossings'
import { record } from './recorder'

const ROOM = { width: 186, height: 200 }
const draw = (
  motif: (typeof CHARTED)[number],
  hand: 'left' | 'right' = 'right',
  style: SheetStyle = 'colour',
): ChartFigure[] => {
  const { located, beginning } = locate(motif, hand)
  return chartFigures(located, beginning, { ...ROOM, hand, style })
}
const plainMeasure = (text: string, size: number): number => text.length * size * 0.17

describe('the symbol chart', () => {
  it.each(CHARTED)('$id: every worked element has one symbol, in the order worked', (motif) => {
    const { located } = locate(motif)
    const marks = draw(motif).flatMap((part) => part.marks)
    const worked = located.flatMap(({ round }) => round.elements)
    expect(marks.map((mark) => mark.element)).toEqual(worked)
    for (const { ink } of marks) expect(ink.strokes.length + ink.fills.length).toBeGreaterThan(0)
  })

  it.each(['left', 'right'] as const)('a petal fans out of a space of one chain (%s hand)', (hand) => {
    const { located } = locate(FANNED, hand)
    const stitches = located.at(-1)!.elements.filter(({ element }) => element.role === 'stitch')
    for (let first = 0; first < stitches.length; first += 7) {
      const petal = stitches.slice(first, first + 7)
      const [{ base }] = petal as [(typeof petal)[0]]
      const ways = petal.map(({ base: foot, top }) => {
        expect([foot.x, foot.y]).toEqual([base.x, base.y])
        return Math.atan2(top.y - base.y, top.x - base.x)
      })
      const steps = ways.slice(1).map((way, i) => {
        const step = way - ways[i]!
        return Math.atan2(Math.sin(step), Math.cos(step))
      })
      // All one way round, evenly, and over more than a right angle in all.
      for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 6)
      expect(Math.abs(steps[0]! * steps.length)).toBeGreaterThan(Math.PI / 2)
    }
    expect(stitches).toHaveLength(42)
  })

  it.each(CHARTED)('$id: symbols stand where the model puts the stitches', (motif) => {
    const { located, beginning } = locate(motif)
    for (const part of draw(motif)) {
      const all = part.marks.map((mark) => {
        const entry = [...mark.round.elements, ...mark.round.asides].find((e) => e.element === mark.element)!
        return { mark, entry }
      })
      const { mark, entry } = all[0]!
      const scale = part.unit / beginning.stitchWidth
      const cos = Math.cos(beginning.turn)
      const sin = Math.sin(beginning.turn)
      // Turned as the outline is, mirrored for the right hand, scaled.
      const place = (p: { x: number; y: number }) => ({
        x: -scale * (p.x * cos - p.y * sin),
        y: scale * (p.x * sin + p.y * cos),
      })
      const from = place(entry.base)
      const centre = { x: mark.base.x - from.x, y: mark.base.y - from.y }
      for (const each of all)
        for (const end of ['base', 'top'] as const) {
          const at = place(each.entry[end])
          expect(each.mark[end].x).toBeCloseTo(centre.x + at.x, 9)
          expect(each.mark[end].y).toBeCloseTo(centre.y + at.y, 9)
        }
    }
    expect(located.length).toBeGreaterThan(0)
  })

  it.each([...CHARTED, SAMPLER])('$id: no symbol lies on another', (motif) => {
    for (const hand of ['left', 'right'] as const)
      expect(draw(motif, hand).flatMap((part) => crossings(part))).toEqual([])
  })

  it.each(examplesInRounds())('the example motif $id: no symbol lies on another, in either hand', (motif) => {
    for (const hand of ['left', 'right'] as const)
      expect(draw(motif, hand).flatMap((part) => crossings(part))).toEqual([])
  })

  it.each(CHARTED)('$id: the two hands see mirror images', (motif) => {
    const right = draw(motif, 'right')
    const left = draw(motif, 'left')
    right.forEach((part, i) => {
      const other = left[i]!
      const middle = (marks: ChartFigure['marks']) => marks.map((mark) => [mark.top.x, mark.top.y] as const)
      const a = middle(part.marks)
      const b = middle(other.marks)
      const sum = a[0]![0] + b[0]![0]
      a.forEach(([x, y], k) => {
        expect(x + b[k]![0]).toBeCloseTo(sum, 6)
        expect(y).toBeCloseTo(b[k]![1], 6)
      })
    })
  })

  it('works counter-clockwise for right-handers, clockwise for left-handers', () => {
    for (const [hand, sign] of [
      ['right', -1],
      ['left', 1],
    ] as const) {
      const part = draw(HEXAGON, hand)[0]!
      const ring = part.marks.filter((m) => m.round.round.number === 1 && m.element.standing)
      const centre = {
        x: ring.reduce((sum, m) => sum + m.top.x, 0) / ring.length,
        y: ring.reduce((sum, m) => sum + m.top.y, 0) / ring.length,
      }
      ring.slice(1).forEach((mark, i) => {
        const a = ring[i]!.top
        const b = mark.top
        // y down: a positive cross product turns clockwise.
        const turns = (a.x - centre.x) * (b.y - centre.y) - (a.y - centre.y) * (b.x - centre.x)
        expect(Math.sign(turns)).toBe(sign)
      })
    }
  })

  it('petals are where petals are: tips of the last round farther out than its valleys, one tip at 12 o’clock', () => {
    const part = draw(FIVE)[0]!
    const last = part.marks.filter((mark) => mark.round.round.number === 3)
    const tips = last.filter((mark) => mark.element.role === 'space')
    expect(tips).toHaveLength(5)
    const x = tips.reduce((sum, mark) => sum + mark.top.x, 0) / 5
    const y = tips.reduce((sum, mark) => sum + mark.top.y, 0) / 5
    const far = (mark: (typeof last)[number]) => Math.hypot(mark.top.x - x, mark.top.y - y)
    const valleys = last.filter((mark) => mark.element.stitch === 'sc')
    // A drawing opens the middle: petals stand out by stitches, not by a share of it.
    expect(Math.min(...tips.map(far))).toBeGreaterThan(Math.max(...valleys.map(far)) + 2 * part.unit)
    const top = tips.reduce((best, mark) => (mark.top.y < best.top.y ? mark : best))
    expect(Math.abs(top.top.x - x)).toBeLessThan(0.5)
  })

  it('an increase shares its base, a decrease its top', () => {
    const marks = draw(SAMPLER).flatMap((part) => part.marks)
    const pairs = marks.filter((mark) => mark.element.stitch === 'tr')
    expect(pairs[0]!.base).toEqual(pairs[1]!.base)
    expect(pairs[0]!.top).not.toEqual(pairs[1]!.top)
    const { located } = locate(SAMPLER)
    const decrease = located[4]!.elements.find((entry) => entry.element.into.length > 1)!
    expect(decrease.feet).toHaveLength(2)
  })

  it('draws rounds worked behind petals by themselves, what carries them lighter', () => {
    const parts = chartParts(locate(LAYERED).located)
    expect(parts.map((part) => part.rounds.map(({ round }) => round.number))).toEqual([
      [1, 2, 3],
      [4, 5],
    ])
    const [front, back] = draw(LAYERED)
    expect(front!.carriers).toEqual([])
    expect(back!.carriers.map((mark) => mark.element.stitch)).toEqual(Array(6).fill('sc'))
    expect(back!.carriers.every((mark) => mark.round.round.number === 2)).toBe(true)
    expect(record(back!).paths.some(({ paint }) => paint.stroke === LIGHTER_INK)).toBe(true)
    expect(back!.unit).toBe(front!.unit)
  })

  it('draws what is too short to be seen around a post by itself, the posts lighter', () => {
    const [first, second] = draw(POSTS)
    expect(
      chartParts(locate(POSTS).located).map((part) => part.rounds.map(({ round }) => round.number)),
    ).toEqual([
      [1, 2],
      [3, 4],
    ])
    expect(first!.carriers).toEqual([])
    expect(second!.carriers).toHaveLength(24)
    // A post stitch that shows begins above the bar of the stitch that it goes around.
    const around = locate(POSTS).located[1]!.elements.find(
      (entry) => entry.element.into[0]?.post === 'front',
    )!
    const mark = first!.marks.find(
      (each) => each.element.index === around.element.index && each.round.round.number === 2,
    )!
    const up = (at: { x: number; y: number }) => {
      const length = Math.hypot(mark.top.x - mark.base.x, mark.top.y - mark.base.y)
      return (
        ((at.x - mark.base.x) * (mark.top.x - mark.base.x) +
          (at.y - mark.base.y) * (mark.top.y - mark.base.y)) /
        length
      )
    }
    const low = Math.min(...flattenPath(mark.ink.strokes).flat().map(up))
    expect(low).toBeGreaterThan((around.behindUpTo! * first!.unit) / locate(POSTS).beginning.stitchWidth)
  })

  it.each(CHARTED)('$id: rounds are numbered where they begin, in type that can be read', (motif) => {
    for (const part of draw(motif)) {
      const texts = record(part).texts
      const numbers = texts.filter((text) => text.weight === 'bold').map((text) => Number(text.text))
      expect(numbers).toEqual(part.rounds)
      for (const text of texts) expect(text.printed).toBeGreaterThanOrEqual(SMALLEST_TYPE)
      for (const round of part.rounds) {
        const text = texts.find((entry) => entry.weight === 'bold' && entry.text === String(round))!
        const marks = part.marks.filter((mark) => mark.round.round.number === round)
        const near = Math.min(
          ...marks.slice(0, 3).map((m) => Math.hypot(m.base.x - text.x, m.base.y - text.y)),
        )
        expect(near).toBeLessThan(3 * part.unit)
      }
    }
  })

  it.each(CHARTED)('$id: everything lies within the figure, and within the room', (motif) => {
    for (const part of draw(motif)) {
      expect(part.width).toBeLessThanOrEqual(ROOM.width + 1e-9)
      expect(part.height).toBeLessThanOrEqual(ROOM.height + 1e-9)
      for (const { points } of record(part).paths)
        for (const [x, y] of points) {
          expect(x).toBeGreaterThan(0)
          expect(y).toBeGreaterThan(0)
          expect(x).toBeLessThan(part.width)
          expect(y).toBeLessThan(part.height)
        }
    }
  })

  it('the number of chains stands in a ring that has room for it', () => {
    const middle = record(draw(PICOTS)[0]!).texts.filter((text) => text.weight === 'regular')
    expect(middle.map((text) => text.text)).toEqual(['8'])
  })

  it('tells alternate rounds apart, by colour or by grey, and their numbers with them', () => {
    for (const style of ['colour', 'ink'] as const) {
      const { paths, texts } = record(draw(PICOTS, 'right', style)[0]!)
      const inks = new Set(paths.flatMap(({ paint }) => paint.stroke ?? []))
      expect(inks).toContain(SECOND_INK[style])
      const numbers = texts.filter((text) => text.weight === 'bold')
      expect(numbers.map((text) => text.colour)).toEqual([INK, SECOND_INK[style], INK, SECOND_INK[style]])
    }
  })

  it.each(CHARTED)('$id: the stitches of a round stand at even distances, however it is worked', (motif) => {
    for (const { round, elements, petals, corners } of locate(motif).located) {
      const upright = elements.filter(({ element, chain }) => element.standing && chain.length === 0)
      const level = round.elements.every(({ role, stitch }) => role !== 'space' && stitch !== 'tr')
      const feet = new Set(upright.map(({ element }) => element.into[0]?.kind))
      if (!level || petals.length > 0 || corners > 0 || upright.length < 6 || feet.has('chain')) continue
      const turns = upright.map(({ top }) => Math.atan2(top.x, -top.y)).sort((one, other) => one - other)
      const gaps = turns.map((turn, i) => (turns[i + 1] ?? turns[0]! + 2 * Math.PI) - turn)
      expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(1.5)
    }
  })

  it.each([FIVE, LEAF])('$id as it was looked at', (motif) => {
    const told = draw(motif).flatMap((part) =>
      part.marks.map(
        ({ round, element, base, top }) =>
          `${round.round.number} ${element.role} ${element.stitch} ${element.count}: ` +
          [base.x, base.y, top.x, top.y].map((value) => value.toFixed(1)).join(' '),
      ),
    )
    expect(told.join('\n')).toMatchSnapshot()
  })
})

describe('the key', () => {
  const key = (motif: (typeof CHARTED)[number], terms: 'US' | 'UK' = 'US') => {
    const { located, beginning } = locate(motif)
    return chartKey(located, beginning, { terms, hand: 'right' })
  }

  it('has the symbols that are used, and no others', () => {
    expect(key(FIVE).map((entry) => entry.words)).toEqual([
      'ch: chain',
      'ch 1 at the beginning of a round, does not count as a stitch',
      'sl st: slip stitch',
      'sc: single crochet',
      'hdc: half double crochet',
      'dc: double crochet',
      'tr: treble crochet',
      'adjustable ring (magic ring)',
      'direction of work, counterclockwise',
    ])
    expect(key(LEAF).map((entry) => entry.id)).not.toContain('ring')
  })

  it('speaks the terms asked for', () => {
    const words = key(FIVE, 'UK').map((entry) => entry.words)
    expect(words).toContain('dc: double crochet')
    expect(words).toContain('dtr: double treble crochet')
    expect(words.join()).not.toContain('sc:')
  })

  it('tells loops, posts, bunches, decreases and picots apart', () => {
    const words = key(SAMPLER).map((entry) => entry.words)
    for (const expected of [
      'ch 3 at the beginning of a round, counts as dc',
      'ch 3 at the beginning of a round, does not count as a stitch',
      'sc: single crochet, in the back loop only',
      'sc2tog: 2 sc worked together over 2 places',
      'cluster of 3 dc in one place',
      'FPdc: front post double crochet',
      'sc: single crochet, worked backwards (crab stitch)',
      'ring of 6 chains',
    ])
      expect(words).toContain(expected)
    expect(key(PICOTS).map((entry) => entry.words)).toContain('picot of 3 chains')
  })

  it('is set in lines within its width', () => {
    const figure = chartKeyFigure(key(SAMPLER), 60, 9.5, plainMeasure)
    for (const text of record(figure).texts) {
      expect(text.x + plainMeasure(text.text, text.size)).toBeLessThanOrEqual(60)
      expect(text.y).toBeLessThan(figure.height)
    }
  })
})
