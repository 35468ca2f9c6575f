/** When the number of petals is in doubt. */
import { describe, expect, it } from 'vitest'
import { petalled } from '../../../src-core/photo/lobes'
import { mayBeOthers } from '../../../src-core/photo/photo'
import { DIRECTIONS, findSymmetry } from '../../../src-core/photo/symmetry'
import { chance } from './flowers'

/** An outline with a reach by the turn round the middle, a little uneven from place to place. */
function outlineOf(reach: (turn: number) => number, noise = 0.3) {
  const random = chance(7)
  const points = Array.from({ length: DIRECTIONS }, (_, at) => {
    const turn = (2 * Math.PI * at) / DIRECTIONS
    const far = reach(turn) + noise * (random() - 0.5)
    return { x: far * Math.sin(turn), y: -far * Math.cos(turn) }
  })
  return petalled(findSymmetry(points, { x: 0, y: 0 }))
}

describe('the number of petals', () => {
  it('is sure where narrow tips have strong multiples of their own', () => {
    const four = outlineOf((turn) => 60 + 40 * Math.abs(Math.cos(2 * turn)) ** 300)
    expect(four.order).toBe(4)
    expect(four.finer).toBeGreaterThan(0.45)
    expect(mayBeOthers(four)).toBe(false)
  })

  it('is in doubt where twice as many stand out nearly as clearly', () => {
    const pairs = outlineOf((turn) => 100 + 3 * Math.cos(14 * turn) + 3 * Math.cos(7 * turn))
    const [order, both] = [pairs.order, pairs]
    expect([7, 14]).toContain(order)
    const seven = {
      ...both,
      order: 7,
      repeat: 7,
      within: false,
      share: 0.9,
      rival: 0,
      finer: 0.5,
      depth: 0.03,
    }
    expect(mayBeOthers({ ...seven, hidden: false })).toBe(true)
    expect(mayBeOthers({ ...seven, hidden: false, finer: 0.4 })).toBe(false)
  })

  it('is sure where long and short petals take turns, whose finer repeat is that of all of them', () => {
    const turns = outlineOf((turn) => 100 + 7 * Math.cos(9 * turn) + 4.8 * Math.cos(3 * turn))
    expect(turns).toMatchObject({ order: 9, within: true })
    expect(turns.finer).toBeGreaterThan(0.6)
    expect(mayBeOthers(turns)).toBe(false)
  })

  it('is all of three that stand evenly and reach as far, though one dip between them is shallow, and in doubt', () => {
    // Tops at every 24°, as far out each; the dips between them go in 10, 8 and 5.
    const depths = [10, 8, 5]
    const reach = (dips: readonly number[]) => (turn: number) => {
      const at = ((((turn / (2 * Math.PI)) * 15) % 15) + 15) % 15
      return 100 - dips[Math.floor(at) % 3]! * Math.sin(Math.PI * at) ** 2
    }
    const mixed = outlineOf(reach(depths))
    expect(mixed).toMatchObject({ order: 15, within: true, doubtful: true })
    expect(mayBeOthers(mixed)).toBe(true)
    // Shallower still they are lobes of one petal.
    expect(outlineOf(reach([10, 8, 3]))).toMatchObject({ order: 5, within: false, doubtful: false })
  })

  it('is in doubt where petals are told apart within the repeat of an outline that stitches may have made', () => {
    const turns = outlineOf((turn) => 100 + 0.7 * Math.cos(9 * turn) + 0.48 * Math.cos(3 * turn), 0.05)
    expect(turns).toMatchObject({ order: 9, within: true })
    expect(turns.depth).toBeLessThan(0.01)
    expect(mayBeOthers(turns)).toBe(true)
  })

  it('is that of the slits behind them where every second dip is shallow, and in doubt', () => {
    const reach = (turn: number) => 100 + 2 * Math.cos(6 * turn) + 1.25 * Math.sin(3 * turn)
    const slit = (each: number) => (reached: Float64Array) =>
      reached.map((_, at) => (Math.cos((2 * Math.PI * each * at) / DIRECTIONS + Math.PI) > 0.94 ? 6 : 0))
    const points = Array.from({ length: DIRECTIONS }, (_, at) => {
      const turn = (2 * Math.PI * at) / DIRECTIONS
      return { x: reach(turn) * Math.sin(turn), y: -reach(turn) * Math.cos(turn) }
    })
    const counted = (each: number) =>
      petalled(findSymmetry(points, { x: 0, y: 0 }, (_, reached) => slit(each)(reached)))
    expect(counted(6)).toMatchObject({ order: 6, repeat: 6, hidden: true })
    expect(mayBeOthers(counted(6))).toBe(true)
    expect(counted(3)).toMatchObject({ order: 3, hidden: false })
  })

  it('is sure where it stands out clearly, however uneven the rest, and in doubt where it does not', () => {
    const uneven = (own: number) =>
      outlineOf((turn) => 100 + own * Math.cos(11 * turn) + 2 * Math.cos(2 * turn))
    expect(uneven(1.7)).toMatchObject({ order: 11, hidden: false })
    expect(uneven(1.7).share).toBeLessThan(0.55)
    expect(mayBeOthers(uneven(1.7))).toBe(false)
    expect(
      mayBeOthers({ ...uneven(1.7), spectrum: { powers: new Array<number>(97).fill(1), mean: 100 } }),
    ).toBe(true)
  })
})
