/** Rounds of an edging in other words of patterns (from memory, no source) come to what those between corners come to. */
import { describe, expect, it } from 'vitest'
import { inUsualWords } from '../../../src-core/edging/usual-words'
import { planProject } from '../../../src-core/plan'
import { squares } from './helpers'

const edged = (works: readonly string[], terms: 'US' | 'UK' = 'US') => {
  const rounds = [terms === 'US' ? 'sc' : 'dc']
  const plan = planProject(squares(8, 9, { rounds, written: works.map((work) => ({ work })) }, terms))
  const wrong = plan.findings
    .filter(({ code }) => /^(rounds|edging)\//.test(code))
    .map(({ message }) => message)
  return { wrong, made: plan.edging!.rounds.map(({ stitches }) => stitches), loop: plan.edging!.loops![0]! }
}

const PLAIN = 'ch 1, *3 sc in corner, sc in each st to next corner; rep from * around, join.'
const MESH = 'ch 1, *3 sc in corner, [ch 1, sk 1 st, sc in next st] to next corner; rep from * around, join.'
const SHELLS =
  '*[sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st] to next corner, 7 dc in corner; rep from * around.'

describe('M36 what patterns say of a side', () => {
  it.each([
    [PLAIN, 'ch 1, *3 sc in corner, sc in each st across to next corner; rep from * around, join.'],
    [PLAIN, 'ch 1, *3 sc in the corner, sc evenly across to the next corner; repeat from * around, join.'],
    [PLAIN, 'ch 1, *sc in each st along the side to next corner, 3 sc in corner; rep from * around, join.'],
    [PLAIN, 'ch 1, *sc in each st up to next corner, 3 sc in corner; rep from * 3 more times, join.'],
    [PLAIN, 'ch 1, *sc in each st until corner, 3 sc in corner st; rep from * around, join.'],
    [PLAIN, 'ch 1, work 1 sc in each st, 3 sc in corners, join.'],
    [PLAIN, 'ch 1, sc in each st, 3 sc in each corner, join.'],
    [
      MESH,
      'ch 1, *3 sc in corner, [ch 1, sk 1 st, sc in next st] across to next corner; rep from * around, join.',
    ],
    [
      MESH,
      'ch 1, *3 sc in corner, (ch 1, sk 1 st, sc in next st) across side to next corner; rep from * around, join.',
    ],
    [
      MESH,
      'ch 1, *3 sc in corner, *ch 1, sk 1 st, sc in next st; rep from * to next corner; rep from first * around, join.',
    ],
    [
      MESH,
      'ch 1, *3 sc in corner, **ch 1, sk 1 st, sc in next st; rep from ** across to next corner; rep from * 3 times more, join.',
    ],
    [
      SHELLS,
      '*[sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st] across to corner, 7 dc in corner st; rep from * around.',
    ],
    [
      SHELLS,
      '*sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * to corner, 7 dc in corner; rep from first * around.',
    ],
  ])('%s = %s', (told, said) => {
    const [own, other] = [edged([said]), edged([told])]
    expect(own.wrong).toEqual([])
    expect(own.made).toEqual(other.made)
    expect(own.loop.stretches).toEqual(other.loop.stretches)
  })

  it('in whole repeats on every side, by hand', () => {
    const { loop, made } = edged([SHELLS])
    // One stitch of each stretch is its corner; a shell of five and its sc take six: 6 made of 6, 7 at a corner.
    expect(loop.stretches.map((count) => (count - 1) % 6)).toEqual([0, 0, 0, 0])
    expect(made[1]).toBe(loop.stitches - 4 + 4 * 7)
  })

  it.each([
    '*(2 dc, ch 2, 2 dc) in corner ch-2 sp, dc in each st across to next corner ch-2 sp; rep from * around.',
    '*(2 dc, ch 2, 2 dc) in next ch-2 corner sp, dc in each st to next corner sp; rep from * around.',
    '*(2 dc, ch 2, 2 dc) in corner sp, dc in each st to next corner sp; rep from * around.',
    'dc in each st around, (2 dc, ch 2, 2 dc) in each corner sp.',
  ])('into the space of a corner: %s', (second) => {
    const first = '*(sc, ch 2, sc) in corner, sc in each st to next corner; rep from * around.'
    const { wrong, made, loop } = edged([first, second])
    expect(wrong).toEqual([])
    // Two sc at a corner in the place of one stitch; then four dc in each space besides all stitches.
    expect(made.slice(1)).toEqual([loop.stitches + 4, loop.stitches + 4 + 16])
  })

  it('in UK terms', () => {
    const { wrong, made, loop } = edged(
      ['1 ch, *3 dc in corner, dc in each st across to next corner; rep from * around, ss to first dc.'],
      'UK',
    )
    expect(wrong).toEqual([])
    expect(made[1]).toBe(loop.stitches + 8)
  })

  it('leave everything else as it is', () => {
    for (const text of [
      PLAIN,
      SHELLS,
      '*sc in next 3 sts, ch 3, sl st in third ch from hook; rep from * around, join with sl st in first sc.',
      'ch 1, *3 sc in tip, sc in each st to next dip, sc3tog over dip, sc in each st to next tip; rep from * around.',
    ])
      expect(inUsualWords(text)).toBe(text)
  })
})
