/** Stitches stand over what they are worked into, whichever kind of place that is. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { angleOf, unwrap } from '../../../src-core/motif/rounds/ground'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

const located = (...rounds: string[]) => {
  const motif: RoundsMotif = {
    id: 'm',
    kind: 'rounds',
    gauge: GAUGE,
    foundation: { ring: 'adjustable' },
    rounds: rounds.map((work) => ({ work })),
  }
  const told = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  expect(told.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  return told.located
}

/** How far the stitches of a round turn away from their places, in radians, at most. */
const turned = ({ elements }: ReturnType<typeof located>[number]): number =>
  Math.max(
    ...elements
      .filter(({ element }) => element.into.length > 0)
      .map(({ base, top }) => Math.abs(unwrap(angleOf(top), angleOf(base)) - angleOf(base))),
  )

const FIRST =
  'ch 3 (counts as dc), dc in ring, ch 1, (2 dc in ring, ch 1) 7 times, join with sl st in top of beg ch-3'

describe('a round over another', () => {
  it('goes over stitches and spaces in turn, also where one place is named before', () => {
    const [, second] = located(
      FIRST,
      'ch 1, sc in same st and in each dc and ch-1 sp around, join with sl st in first sc (24 sc)',
    )
    expect(second!.elements.map(({ element }) => element.into[0]!.index)).toEqual(
      Array.from({ length: 24 }, (_, i) => i),
    )
    expect(turned(second!)).toBeLessThan(0.35)
  })

  it('has stitches between two others above the place between them', () => {
    const [, , third] = located(
      FIRST,
      'sl st in next dc and in next ch-1 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp, *(2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * 6 more times, join with sl st in top of beg ch-3',
      'sl st in next dc and in next ch-1 sp, ch 1, *sc in same sp, ch 3, dc in sp between next 2 groups, ch 3, sc in next ch-1 sp; rep from * 6 more times, sc in same sp, ch 3, dc in sp between next 2 groups, ch 3, join',
    )
    const between = third!.elements.filter(({ element }) => element.into[0]?.kind === 'gap')
    expect(between.length).toBeGreaterThan(5)
    for (const { base } of between) {
      // Spaces of the round below stand at odd sixteenths from its first one, gaps between.
      const spaces = third!.elements.filter(({ element }) => element.into[0]?.kind === 'space')
      const nearest = Math.min(
        ...spaces.map((each) => Math.abs(unwrap(angleOf(each.base), angleOf(base)) - angleOf(base))),
      )
      expect(nearest).toBeGreaterThan(Math.PI / 16)
    }
  })

  it('turns a corner where its loop stands between two stitches', () => {
    const [, second] = located(
      'ch 3 (counts as dc), 23 dc in ring, join with sl st in top of beg ch-3',
      'ch 3 (counts as dc), dc in next 2 dc, ch 2, *dc in next 6 dc, ch 2; rep from * twice more, dc in next 3 dc, join with sl st in top of beg ch-3',
    )
    expect(second!.corners).toBe(4)
    expect(turned(second!)).toBeLessThan(0.35)
  })
})
