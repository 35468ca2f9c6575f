import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../src-core/units/random'

const draw = (seed: number, count = 5) => {
  const random = seededRandom(seed)
  return Array.from({ length: count }, () => random.next())
}

describe('seeded randomness', () => {
  it('is the same for the same seed and another for another', () => {
    expect(draw(7)).toEqual(draw(7))
    expect(draw(7)).not.toEqual(draw(8))
    expect(draw(0)).not.toEqual(draw(-1))
  })

  it('draws evenly: mean, spread and every tenth', () => {
    const values = draw(42, 100_000)
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true)
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.005)
    const tenths = Array.from(
      { length: 10 },
      (_, tenth) => values.filter((v) => Math.floor(v * 10) === tenth).length,
    )
    for (const count of tenths) expect(Math.abs(count - 10_000)).toBeLessThan(400)
  })

  it('shuffles without losing anything', () => {
    const items = Array.from({ length: 50 }, (_, index) => index)
    const shuffled = seededRandom(3).shuffled(items)
    expect(shuffled).not.toEqual(items)
    expect([...shuffled].sort((a, b) => a - b)).toEqual(items)
  })
})
