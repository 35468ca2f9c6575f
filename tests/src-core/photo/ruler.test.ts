/** A motif beside a ruler: two points on its marks, and how far apart these are, give the scale. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { onRuler, rulerFault, sheetByRuler } from '../../../src-core/photo/ruler'
import { photograph } from './camera'
import type { Scene } from './camera'
import { chance, flower } from './flowers'
import { trial } from './scenes'

const WIDE = 540
/** A cloth larger than the picture, which shows this many mm of it from side to side. */
const SEEN = 230
const CLOTH = { width: 600, height: 800 }
const RULER = { x: -90, y: 80, length: 200 }
const scene = (shape: Scene['shape'], more: Partial<Scene> = {}): Scene => ({
  ...trial(7).scene,
  ...{ shape, sheet: CLOTH, at: { x: 6, y: -30 }, turn: 0, tilt: 0, filling: CLOTH.width / SEEN },
  ...{ picture: { width: WIDE, height: (WIDE * 4) / 3 }, paper: [0.7, 0.7, 0.66], ruler: RULER },
  ...{ yarns: [[0.35, 0.05, 0.07]], blur: 0.6, noise: 0.005, relief: 0.1 },
  ...more,
})
/** Where a place in mm about the middle of the cloth is in the picture, seen from straight above. */
const seen = (x: number, y: number) => ({
  x: (WIDE - 1) / 2 + (x * WIDE) / SEEN,
  y: ((WIDE * 4) / 3 - 1) / 2 + (y * WIDE) / SEEN,
})
const mark = (at: number) => seen(RULER.x + at, RULER.y)
const ruler = { from: mark(20), to: mark(170), length: 150 }
const codes = (answer: ReturnType<typeof measurePhoto>) => answer.findings.map(({ code }) => code)

describe('a motif beside a ruler', () => {
  const shape = flower('rounded', 6, 96, 0.68, 0.3, 0.02, chance(3))
  const picture = photograph(scene(shape))

  it('is measured in its millimetres, though the ruler is larger; a slant is said not to be corrected', () => {
    const answer = measurePhoto(picture, { sheet: 'ruler', ruler })
    expect(answer).toMatchObject({ sheet: 'ruler', sure: false, measures: { kind: 'petals', petals: 6 } })
    const { overTips, overValleys, middle } = answer.measures!
    expect(Math.abs(overTips / shape.overTips - 1)).toBeLessThan(0.015)
    expect(Math.abs(overValleys / shape.overValleys - 1)).toBeLessThan(0.03)
    expect(middle.x).toBeCloseTo(SEEN / 2 + 6, 0)
    expect(codes(answer)).toContain('photo/by-ruler')
    // Said to be another length, everything is.
    const twice = measurePhoto(picture, { sheet: 'ruler', ruler: { ...ruler, length: 300 } }).measures!
    expect(twice.overTips / overTips).toBeCloseTo(2, 1)
  })

  it('is told from a sheet that lies under it, on a table of another colour', () => {
    const sheet = { width: 150, height: 150 }
    const more = {
      sheet,
      filling: sheet.width / SEEN,
      at: { x: 4, y: -10 },
      table: [0.2, 0.1, 0.05] as const,
    }
    const laid = photograph(scene(shape, { ...more, ruler: { ...RULER, y: 110 } }))
    const points = { from: seen(-70, 110), to: seen(80, 110), length: 150 }
    const { measures } = measurePhoto(laid, { sheet: 'ruler', ruler: points })
    expect(measures).toMatchObject({ kind: 'petals', petals: 6 })
    expect(Math.abs(measures!.overTips / shape.overTips - 1)).toBeLessThan(0.015)
  })

  it('cannot be told from a ruler that touches it', () => {
    const touching = photograph(scene(shape, { ruler: { ...RULER, y: 10 } }))
    const points = { ...ruler, from: seen(-70, 10), to: seen(80, 10) }
    const answer = measurePhoto(touching, { sheet: 'ruler', ruler: points })
    expect(answer.measures).toBeNull()
    expect(codes(answer)).toContain('photo/no-motif-by-ruler')
  })

  it('is not measured by points that give no scale', () => {
    const by = (change: Partial<typeof ruler>) =>
      measurePhoto(picture, { sheet: 'ruler', ruler: { ...ruler, ...change } })
    for (const change of [
      { to: { x: ruler.from.x + 30, y: ruler.from.y } },
      { to: { x: WIDE, y: 100 } },
      { from: { x: NaN, y: 1 } },
      { length: 0 },
      { length: Infinity },
    ]) {
      const answer = by(change)
      expect(answer.measures).toBeNull()
      expect(codes(answer)).toEqual(['photo/ruler-points'])
    }
    expect(codes(measurePhoto(picture, { sheet: 'ruler' }))).toEqual(['photo/ruler-points'])
  })
})

describe('the plane of a ruler', () => {
  it('is the whole picture in millimetres', () => {
    const [from, to] = [
      { x: 100, y: 200 },
      { x: 400, y: 600 },
    ]
    const { size, corners } = sheetByRuler({ from, to, length: 250 }, { width: 1001, height: 801 })
    expect(size).toEqual({ width: 500, height: 400, whole: true })
    expect(corners[2]).toEqual({ x: 1000, y: 800 })
    expect(rulerFault({ from, to, length: 250 }, { width: 1001, height: 801 })).toBeNull()
    const lies = onRuler({ from, to, length: 250 })
    expect([lies(125, 200), lies(127, 199), lies(135, 200), lies(40, 90)]).toEqual([true, true, false, false])
  })
})
