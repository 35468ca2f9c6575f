/** Corners that a round names in passing, and repeats that come out whole on each side. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expandMarks, usesIn } from '../../../src-core/edging/marks'
import { readRounds } from '../../../src-core/notation/read'
import { planProject } from '../../../src-core/plan'
import { squares } from './helpers'

const edged = (works: readonly string[], columns = 8, rows = 8, terms: 'US' | 'UK' = 'US') => {
  const plain = terms === 'US' ? 'sc' : 'dc'
  const plan = planProject(
    squares(columns, rows, { rounds: [plain], written: works.map((work) => ({ work })) }, terms),
  )
  const { edging, findings } = plan
  return {
    loop: edging!.loops![0]!,
    rounds: edging!.rounds,
    codes: findings.map(({ code }) => code),
    findings,
  }
}

const TOLD =
  'ch 1, *3 sc in corner, sc in each st to next corner; rep from * around, join with sl st in first sc.'

describe('M36 corners in passing', () => {
  it.each([
    'sc in each st around, 3 sc in each corner, join with sl st in first sc.',
    'Ch 1, sc in each st around, 3 sc in each corner st, join with sl st in first sc.',
    'ch 1, sc in each st around, working 3 sc in each corner, join with sl st in first sc.',
    'ch 1, sc in each st around and 3 sc in each corner, join with sl st in first sc.',
    'ch 1, sc in each st around (3 sc in each corner), join with sl st in first sc.',
    'ch 1, 3 sc in each corner, sc in each st all the way around, join with sl st in first sc.',
    'ch 1, work sc in every st around, placing 3 sc in the 4 corners, join with sl st in first sc.',
    'ch 1, sc evenly around, with 3 sc in each corner, join with sl st in first sc.',
  ])('%s', (work) => {
    const [own, told] = [edged([work]), edged([TOLD])]
    expect(own.codes.filter((code) => /^(rounds|edging)\//.test(code))).toEqual([])
    expect(own.loop.stretches).toEqual(told.loop.stretches)
    expect(own.rounds[1]!.stitches).toBe(told.rounds[1]!.stitches)
    // Two more stitches at each of four corners.
    expect(own.rounds[1]!.stitches).toBe(own.loop.stitches + 8)
  })

  it('in UK terms', () => {
    const own = edged(['dc in each st around, 3 dc in each corner, join with ss in first dc.'], 8, 8, 'UK')
    expect(own.codes.filter((code) => /^(rounds|edging)\//.test(code))).toEqual([])
    expect(own.rounds[1]!.stitches).toBe(own.loop.stitches + 8)
  })

  it('round after round, each corner in the middle one of three', () => {
    const work = 'ch 1, sc in each st around, 3 sc in each corner, join with sl st in first sc.'
    const own = edged([work, work, work])
    expect(own.rounds.slice(1).map(({ stitches }) => stitches - own.loop.stitches)).toEqual([8, 16, 24])
  })
})

describe('M36 repeats on each side', () => {
  const shells =
    'ch 1, *sc in next st, sk 2 sts, 5 dc in next st, sk 2 sts; rep from * around, join with sl st in first sc.'

  it('a square is picked up alike on all sides, and all corners fall on the same stitch of a repeat', () => {
    const { loop, rounds, codes } = edged([TOLD, shells], 16, 16)
    expect(new Set(loop.stretches).size).toBe(1)
    // With two more at each corner every side is a multiple of six.
    expect((loop.stretches[0]! + 2) % 6).toBe(0)
    expect(rounds[2]!.repeats! % 4).toBe(0)
    expect(codes).not.toContain('edging/corners-differ')
  })

  it('where sides are too short for it, a note says which numbers would do', () => {
    const wide =
      'ch 1, *sc in next st, sk 8 sts, 19 dc in next st, sk 8 sts; rep from * around, join with sl st in first sc.'
    const { loop, findings } = edged([TOLD, wide], 2, 2)
    const found = findings.find(({ code }) => code === 'edging/corners-differ')
    // 100 and two at each corner are six repeats of 18; 72 and 144 are one and two for each side.
    expect(loop.stitches).toBe(100)
    expect(found?.message).toBe(
      '6 repeats of round 3 of the border do not divide evenly over its sides: each of its 4 corners falls on a different stitch of a repeat. 4 or 8 repeats do, over 64 or 136 stitches instead of 100.',
    )
  })
})

describe('Sides that differ', () => {
  const told = (gaps: readonly number[], left: number) => {
    let from = 0
    const marks = gaps.map((gap) => ({ kind: 'tip' as const, at: (from += gap) - 1, chains: 0 }))
    const stitches = from + left
    const said = '*Sc in each st to next tip, 3 sc in tip; rep from * around'
    const { text } = expandMarks(said, stitches, marks, usesIn('US'))!
    const { rounds, findings } = readRounds(`Rnd 1: ${text}`, { terms: 'US', after: { stitches } })
    // By hand: a stitch in each, and two more at each tip.
    expect([rounds[0]!.made, findings]).toEqual([stitches + 2 * gaps.length, []])
    return text
  }

  it('are said once with how often, as long as they come in the same turn', () => {
    expect(told([6, 6, 8, 6, 6, 8, 6, 6, 8, 10], 4)).toBe(
      '[Sc in each of next 5 sts, 3 sc in next st, sc in each of next 5 sts, 3 sc in next st, sc in each of next 7 sts, 3 sc in next st] 3 times, sc in each of next 9 sts, 3 sc in next st, sc in each of next 4 sts.',
    )
    expect(told([5, 9, 9, 9, 7], 3)).toBe(
      'Sc in each of next 4 sts, 3 sc in next st, [sc in each of next 8 sts, 3 sc in next st] 3 times, sc in each of next 6 sts, 3 sc in next st, sc in each of next 3 sts.',
    )
  })

  it('come to the same stitches, whatever their order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(4, 5, 6), { minLength: 1, maxLength: 24 }),
        fc.integer({ min: 0, max: 6 }),
        (gaps, left) => {
          told(gaps, left)
        },
      ),
      { numRuns: 60 },
    )
  })
})
