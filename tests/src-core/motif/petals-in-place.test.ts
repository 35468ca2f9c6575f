/** Petals that rise from a slip stitch in their own place have one outline, however they are told. */
import { describe, expect, it } from 'vitest'
import { workedMotif } from './written-motif'

const daisy = (round: string) =>
  workedMotif(['8 sc in magic ring, sl st in first sc', round], { ring: 'adjustable' }).account!

describe('eight petals of two tr between chains', () => {
  const told = daisy(
    '*(ch 4, 2 tr, ch 4, sl st) in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
  )

  it.each([
    'Join white with a sl st in any sc, *ch 4, 2 tr in same sc, ch 4, sl st in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
    '*ch 4, 2 tr in same sc, ch 4, sl st in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
  ])('are eight: %s', (round) => {
    const motif = daisy(round)
    expect(motif).toMatchObject({ shape: 'petals', petals: 8 })
    expect(motif.overTips).toBeCloseTo(told.overTips, 6)
    expect(motif.overValleys).toBeCloseTo(told.overValleys, 6)
  })

  it('that rise over to the next stitch are eight as well', () => {
    expect(daisy('*Ch 3, 2 dc in next sc, ch 3, sl st in same sc; rep from * around.')).toMatchObject({
      petals: 8,
    })
  })
})

describe('five petals, each from the slip stitch before into the next stitch and back', () => {
  const STARRED = '*Ch 3, 2 tr in next st, ch 3, sl st in same st, sl st in next st; rep from * 4 more times.'
  const PETAL = 'ch 3, 2 tr in next st, ch 3, sl st in same st, sl st in next st'
  const pinwheel = (round: string) =>
    workedMotif(['Ch 1, 10 sc in ring, join with sl st to first sc', round], { ring: 'adjustable' })

  it('have their chains as far from their stitches on both sides, in outline and chart', () => {
    const { account, drawing } = pinwheel(STARRED)
    expect(account).toMatchObject({ shape: 'petals', petals: 5 })
    const { elements } = drawing()!.located.at(-1)!
    const tall = elements.flatMap(({ element }, i) => (element.stitch === 'tr' ? [i] : []))
    expect(tall).toHaveLength(10)
    for (let k = 0; k < tall.length; k += 2) {
      const [first, second] = [tall[k]!, tall[k + 1]!]
      const [before, behind] = [elements[first - 1]!, elements[second + 1]!]
      expect([before, behind].map(({ element }) => element.role)).toEqual(['space', 'space'])
      const apart = (one: typeof before, other: typeof before) =>
        Math.hypot(one.top.x - other.top.x, one.top.y - other.top.y)
      expect(apart(before, elements[first]!)).toBeCloseTo(apart(elements[second]!, behind), 6)
    }
  })

  it('have no edge that stands out beyond the stitches', () => {
    const { account } = pinwheel(STARRED)
    const radii = account!.outline.map(({ x, y }) => Math.hypot(x, y)).sort((a, b) => b - a)
    expect(radii[0]! / radii[5]!).toBeLessThan(1.03)
  })

  it('are the same spelled out', () => {
    const spelled = Array.from({ length: 5 }, () => PETAL).join(', ')
    const [one, other] = [pinwheel(STARRED).account!, pinwheel(spelled).account!]
    expect(other.outline).toEqual(one.outline)
    expect(other.anchors).toEqual(one.anchors)
  })
})
