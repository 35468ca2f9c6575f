import { describe, expect, it } from 'vitest'
import { arePartedByCuts, cutsOf, notchesOf } from '../../../src-core/photo/notches'
import { chance } from './flowers'

const COUNT = 1440

/** Shells of unlike lengths on a round of 30 mm, parted by cuts of a few directions; stitches crimp the line. */
function shells(petals: number, deep: number, crimp: number, seed: number, uneven = 0.01): Float64Array {
  const random = chance(seed)
  const each = Array.from({ length: petals }, () => ({
    far: 30 * (1 + uneven * (2 * random() - 1)),
    off: 0.15 * random(),
  }))
  return Float64Array.from({ length: COUNT }, (_, at) => {
    const place = (at / COUNT) * petals
    // Off to later only: a petal begins after its place.
    const begun = place - Math.floor(place) >= each[Math.floor(place)]!.off
    const k = (Math.floor(place) + (begun ? 0 : petals - 1)) % petals
    const t = (place - k - each[k]!.off + petals) % petals
    const next = each[(k + 1) % petals]!.off + 1 - each[k]!.off
    const end = Math.min(t, next - t) * (COUNT / petals)
    return each[k]!.far - deep * Math.exp(-end / 6) + crimp * Math.cos((2 * Math.PI * 53 * at) / COUNT)
  })
}

describe('petals by their notches', () => {
  it.each([
    [5, 0.8],
    [7, 0.7],
    [12, 0.7],
    [19, 0.6],
  ])('counts %i shells that differ in length', (petals, deep) => {
    for (let seed = 1; seed < 6; seed++)
      expect(notchesOf(shells(petals, deep, 0.04, seed), 30)?.order).toBe(petals)
  })

  it.each([5, 7, 10])('counts %i shells by their steps where no notch parts them', (petals) => {
    for (let seed = 1; seed < 6; seed++) {
      const random = chance(seed)
      const far = Array.from({ length: petals }, (_, k) => 30 + (k % 2 ? 0.7 : -0.7) * (0.6 + 0.4 * random()) + (k === petals - 1 ? 2 : 0)) // prettier-ignore
      const stepped = Float64Array.from({ length: COUNT }, (_, at) => far[Math.floor((at / COUNT) * petals)]! + 0.03 * random()) // prettier-ignore
      expect(notchesOf(stepped, 30)?.order).toBe(petals)
    }
  })

  it('tells the direction of a petal', () => {
    // The first shell begins at 12 o'clock, so that a notch is there and a petal's middle half a sector on.
    const { order, turn } = notchesOf(shells(6, 0.8, 0.03, 3, 0), 30)!
    const sector = (2 * Math.PI) / order
    const off = (((turn / sector) % 1) + 1) % 1
    expect(Math.abs(off - 0.5)).toBeLessThan(0.1)
  })

  it('counts none in a round of stitches, in a round that is bent, or where cuts are few or anywhere', () => {
    const random = chance(11)
    const round = Float64Array.from({ length: COUNT }, (_, at) => 30 + 0.2 * Math.cos((53 * at * 2 * Math.PI) / COUNT) + 0.1 * random()) // prettier-ignore
    expect(notchesOf(round, 30)).toBeNull()
    const bent = Float64Array.from({ length: COUNT }, (_, at) => 30 + 0.5 * Math.cos((3 * at * 2 * Math.PI) / COUNT)) // prettier-ignore
    expect(notchesOf(bent, 30)).toBeNull()
    const cutAt = (...places: number[]) =>
      Float64Array.from({ length: COUNT }, (_, at) => 30 - (places.some((place) => Math.abs(at - place) < 8) ? 1 : 0)) // prettier-ignore
    expect(notchesOf(cutAt(100, 820), 30)).toBeNull()
    expect(notchesOf(cutAt(100, 300, 900, 1000), 30)).toBeNull()
    expect(notchesOf(cutAt(100, 460, 820, 1180), 30)?.order).toBe(4)
    // Four at equal spaces, but a fifth of nearly their depth beside them.
    const other = cutAt(100, 460, 820, 1180)
    for (let at = 600; at < 616; at++) other[at] = 29.3
    expect(notchesOf(other, 30)).toBeNull()
  })

  it('takes a cut for as deep as the line comes out of it', () => {
    const cuts = cutsOf([5, 3, 4, 1, 6, 2, 4.5, 4])
    expect(cuts.map(({ at, depth }) => [at, depth])).toEqual([
      [3, 5],
      [5, 3],
      [1, 1],
      [7, 0.5],
    ])
  })

  it('says so where as many cuts part petals as were counted, however unlike they are and however bent the whole is', () => {
    const bent = shells(12, 1.2, 0.04, 3, 0.03).map((far, at) => far * (1 + 0.05 * Math.cos((4 * Math.PI * at) / COUNT))) // prettier-ignore
    expect(arePartedByCuts(bent, 30, 12)).toBe(true)
    for (const other of [3, 4, 6, 8, 11, 13, 24]) expect(arePartedByCuts(bent, 30, other)).toBe(false)
    // Every second one half as deep: these may be lobes.
    const hearts = Float64Array.from({ length: COUNT }, (_, at) => 30 - [2, 1][Math.floor(at / 120) % 2]! * Math.exp(-Math.abs((at % 120) - 60) / 6)) // prettier-ignore
    expect(arePartedByCuts(hearts, 30, 6)).toBe(false)
    expect(arePartedByCuts(hearts, 30, 12)).toBe(true)
  })
})
