/** Petals that take turns, by how far an outline reaches in each direction; and the outline that is kept of them. */
import { describe, expect, it } from 'vitest'
import { evenOutline } from '../../../src-core/photo/even'
import { inTurns, lengthsBy, petalled } from '../../../src-core/photo/lobes'
import { measuredOf } from '../../../src-core/photo/motif'
import { mayBeOthers } from '../../../src-core/photo/photo'
import type { PhotoMeasures } from '../../../src-core/photo/photo'
import { findSymmetry } from '../../../src-core/photo/symmetry'
import { tipsOf } from '../../../src-core/photo/tips'
import { tracedOutline } from '../../../src-core/motif/traced'
import { chance } from './flowers'

/** A line by its reach at a direction clockwise from 12 o'clock, with stitches of chance on it. */
const lineOf = (reach: (turn: number) => number, rough = 0.15) => {
  const random = chance(5)
  return Array.from({ length: 900 }, (_, at) => {
    const turn = (2 * Math.PI * at) / 900
    const far = reach(turn) + rough * (random() - 0.5)
    return { x: far * Math.sin(turn), y: -far * Math.cos(turn) }
  })
}
/** Petals about even directions, `lengths` over and over, parted by dips at 30. */
const petals = (count: number, lengths: readonly number[]) => (turn: number) => {
  const place = ((turn + 0.4) / (2 * Math.PI)) * count
  const own = Math.round(place)
  const far = lengths[((own % count) + count) % lengths.length]!
  return 30 + (far - 30) * Math.cos(Math.PI * (place - own)) ** 2
}
const found = (reach: (turn: number) => number) => petalled(findSymmetry(lineOf(reach), { x: 0.3, y: -0.2 }))

describe('petals within a repeat', () => {
  it.each([
    [12, [45, 39]],
    [6, [45, 40]],
    [20, [45, 36]],
    [9, [45, 41, 37]],
    [15, [45, 40, 35]],
  ])('are counted where kinds of them take turns: %i', (count, lengths) => {
    expect(found(petals(count, lengths))).toMatchObject({ order: count, repeat: count / lengths.length })
  })

  it('are petals alike where they differ no more than by chance', () => {
    expect(found(petals(8, [45]))).toMatchObject({ order: 8, repeat: 8, within: false })
    expect(found(petals(8, [45, 44.6]))).toMatchObject({ order: 8, repeat: 8 })
  })

  it('take turns where all of them repeat more clearly, from the longest on', () => {
    const all = { ...found(petals(12, [39, 45])), order: 12, repeat: 12, within: false }
    const taken = inTurns(all, 0.5)
    expect(taken).toMatchObject({ order: 12, repeat: 6, within: true })
    const [long, short] = lengthsBy(tipsOf(taken, 0.5).map(({ far }) => far), 2) // prettier-ignore
    expect(long).toBeCloseTo(45, 0)
    expect(short).toBeCloseTo(39, 0)
    expect(inTurns({ ...found(petals(8, [45])), repeat: 8 }, 0.5).repeat).toBe(8)
  })

  it('are of one kind where kinds that were told apart differ no more than petals of a kind', () => {
    const uneven = petals(12, [45, 42, 44, 45.5, 41.5, 43, 45, 44, 42, 43.5, 45, 41])
    expect(inTurns({ ...found(uneven), order: 12, repeat: 6, within: true }, 0.5).repeat).toBe(12)
    expect(inTurns({ ...found(petals(12, [45, 39])), order: 12, repeat: 6 }, 0.5).repeat).toBe(6)
  })

  it('are not made of a notch in each tip, nor of a stitch in each dip', () => {
    const heart = (turn: number) =>
      40 +
      6 * Math.cos(6 * turn) -
      4 * Math.max(0, 1 - 9 * Math.abs((turn * 6) / (2 * Math.PI) - Math.round((turn * 6) / (2 * Math.PI))))
    expect(found(heart)).toMatchObject({ order: 6, repeat: 6 })
    const picot = (turn: number) =>
      petals(7, [45])(turn) + 1.2 * Math.max(0, Math.cos(7 * (turn + 0.4) + Math.PI)) ** 40
    expect(found(picot)).toMatchObject({ order: 7, repeat: 7 })
  })

  it('are one where every second dip is no more than a bend: flat shells meet in notches', () => {
    const place = (turn: number) => (((turn * 7) / (2 * Math.PI)) % 1) - 0.5
    const flat = (turn: number) => 40 - 0.24 * Math.exp(-((place(turn) / 0.18) ** 2)) - 0.3 * Math.exp(-(((Math.abs(place(turn)) - 0.5) / 0.02) ** 2)) // prettier-ignore
    expect(petalled(findSymmetry(lineOf(flat, 0.05), { x: 0, y: 0 }))).toMatchObject({ order: 7, repeat: 7 })
  })

  it('are hearts of two lobes alike where every second dip is shallower in each of them', () => {
    const hearts = (turn: number) => 40 + 0.7 * Math.cos(14 * turn) + 0.16 * Math.cos(7 * turn + Math.PI / 2)
    const found = petalled(findSymmetry(lineOf(hearts, 0.05), { x: 0, y: 0 }))
    expect(found).toMatchObject({ order: 7, repeat: 7, within: false })
    expect(mayBeOthers(found)).toBe(true)
  })

  it('keep their kinds in the outline that is evened out, which can be planned', () => {
    const symmetry = found(petals(12, [45, 39]))
    const outline = evenOutline(symmetry, 45, 30, 1)
    const reach = outline.map(([x, y]) => Math.hypot(x, y))
    expect(Math.max(...reach)).toBeCloseTo(45, 9)
    expect(Math.min(...reach)).toBeCloseTo(30, 9)
    const measures = { kind: 'petals', petals: 12, overTips: 90, overValleys: 60, evenOutline: outline }
    const motif = measuredOf(measures as unknown as PhotoMeasures)
    const read = tracedOutline(motif.traced!)
    if ('refused' in read) throw new Error('refused')
    expect(read.tips).toHaveLength(12)
    const tips = read.tips.map((at) => Math.hypot(read.outline[at]!.x, read.outline[at]!.y))
    tips.forEach((far, k) => expect(Math.abs(far - (k % 2 ? 39 : 45))).toBeLessThan(0.5))
  })
})
