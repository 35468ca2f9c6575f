/** Whatever number is typed: it is told at its word, nothing throws, and no typed number decides how much is worked. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { chartFigures, chartKey } from '../../../src-core/figures/chart'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { LIMITS } from '../../../src-core/notation/limits'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds } from '../../../src-core/notation/read'
import { runs } from '../../runs'

const FIRST = 'Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\n'

describe('amounts that nobody can work', () => {
  it.each([
    ['Rnd 2: dec in next 0 sts.', 'next 0 sts', 'rounds/none-of-it'],
    ['Rnd 2: sc2tog next 0.', 'next 0', 'rounds/none-of-it'],
    ['Rnd 2: 0 sc in next st.', '0 sc in next st', 'rounds/none-of-it'],
    ['Rnd 2: sc in 0th dc of next shell.', '0th dc of next shell', 'rounds/none-of-it'],
    ['Rnd 2: ch 0, sc in next st.', 'ch 0', 'rounds/none-of-it'],
    ['Rnd 2: dc 12345678901 tog.', '12345678901', 'rounds/too-long'],
    ['Rnd 2: ch 3, dc99999999tog, dc in next st.', '99999999', 'rounds/too-long'],
    ['Rnd 2: ch 3, 99999-dc cluster in next st.', '99999', 'rounds/too-long'],
    ['Rnd 2: ch 5 (counts as dc, ch 12345678901), dc in each st.', '12345678901', 'rounds/too-long'],
    ['Rnd 2: *sc, ch-12345678901 picot; rep from * around.', 'ch-12345678901', 'rounds/too-long'],
    ['Rnd 2: sc in each ch-99999999999 sp around.', 'ch-99999999999', 'rounds/too-long'],
    ['Rnd 2: sk next 99999999999 sts.', '99999999999', 'rounds/too-long'],
    ['Rnd 2: sc in 99999999999th ch from hook.', '99999999999th', 'rounds/too-long'],
    ['Rnd 2: sc in each st to last 99999999999 sts.', '99999999999', 'rounds/too-long'],
    ['Rnd 2: *sc in next st; rep from * 99999999999 times.', '99999999999', 'rounds/too-long'],
    ['Rnd 2: [sc in next st] 99999999999 times.', '[sc in next st] 99999999999 times', 'rounds/too-long'],
    ['Rnd 2: 99999999999 sc evenly around.', '99999999999', 'rounds/too-long'],
    ['Rnd 2: rep Rnd 1 99999999999 times.', '99999999999', 'rounds/too-long'],
    ['Rnd 2: rep Rnd 1 4000 times.', 'rep Rnd 1 4000 times', 'rounds/too-long'],
    ['Rnd 99999999999: sc in each st around.', '99999999999', 'rounds/too-long'],
    ['Rnds 2-99999999999: sc in each st around.', '99999999999', 'rounds/too-long'],
    [`Rnd 2: ch ${'9'.repeat(400)}.`, '999', 'rounds/too-long'],
  ])('are told at their word: %s', (text, words, code) => {
    const { findings, worked, rounds } = readRounds(FIRST + text, { terms: 'US' })
    const told = findings.filter((found) => found.code === code)
    expect(told).toHaveLength(1)
    expect(told[0]!.where).toContain(`"${words}`)
    expect(told[0]!.target?.line).toBe(2)
    // What cannot be worked is not worked: the account stays open, and nothing is made by that number.
    expect(worked.flatMap((round) => round.elements).length).toBeLessThan(7_000)
    if (!text.includes('4000')) expect(rounds.slice(1).every((round) => round.made === null)).toBe(true)
  })

  it('leaves numbers in prose alone', () => {
    const prose =
      'Pattern 4006381333931 of 2026. Rnd 2: Ch 1, sc in each st around; join. Weave in 99999999 ends.'
    const { findings } = readRounds(FIRST + prose, { terms: 'US' })
    expect(findings.filter(({ code }) => /too-long|none-of-it/.test(code))).toEqual([])
  })

  it('prints them back as they were written', () => {
    const text = `${FIRST}Rnd 2: Ch 12345678901, sc2tog over next 0 sts.`
    const { tree } = readRounds(text, { terms: 'US' })
    for (const style of ['as-written', 'consistent', 'expanded'] as const)
      expect(printRounds(tree, { style })).toContain('Ch 12345678901, sc2tog over next 0 sts.')
  })

  it('reads what is within the limits as before', () => {
    const { rounds, findings } = readRounds(`Rnd 1: 5000 sc in ring.\nRnd 2: Sc in next 5000 sts.`, {
      terms: 'US',
    })
    expect(rounds[1]!.made).toBe(5_000)
    expect(findings.filter(({ code }) => code === 'rounds/too-long')).toEqual([])
  })
})

const amount = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 1, max: 12 }).map(String) },
  fc.constantFrom('0', '00', '007', '99', '100', '101', '4999', '5001', '20000', '20001', '12345678901'),
  fc.constantFrom('9'.repeat(25), '9'.repeat(400)),
)
const stitch = fc.oneof(
  fc.constantFrom('sc', 'dc', 'inc', 'dec', 'shell', 'V-st', 'picot', 'puff', 'sl st', 'FPdc'),
  amount.map((size) => `${size}-dc cl`),
  amount.map((size) => `dc${size}tog`),
  amount.map((size) => `dc ${size} tog`),
  amount.map((size) => `ch-${size} picot`),
  amount.map((size) => `${size}-dc shell`),
)
const place = fc.oneof(
  fc.constantFrom('in ring', 'in same st', 'in each st around', 'in next st', 'around', 'evenly around', ''),
  amount.map((count) => `in next ${count} sts`),
  amount.map((count) => `over next ${count} sts`),
  amount.map((count) => `in each ch-${count} sp`),
  amount.map((count) => `in next ${count} ch-3 sps`),
  amount.map((count) => `in ${count}th ch from hook`),
  amount.map((count) => `in ${count}th dc of next shell`),
  amount.map((count) => `in each st to last ${count} sts`),
  amount.map((count) => `in sp between next ${count} dc`),
  amount.map((count) => `in every ${count}th st`),
  amount.map((count) => `in next st of Rnd ${count}`),
  amount.map((count) => `in next st ${count} rnds below`),
)
const step = fc.oneof(
  fc.tuple(amount, stitch, place).map(([count, name, where]) => `${count} ${name} ${where}`),
  fc.tuple(stitch, place).map(([name, where]) => `${name} ${where}`),
  amount.map((count) => `ch ${count}`),
  amount.map((count) => `ch ${count} (counts as dc, ch ${count})`),
  amount.map((count) => `sk next ${count} sts`),
  amount.map((count) => `inc ${count} sts evenly`),
  fc.constantFrom('turn', 'join with sl st in top of ch-3', 'working in back loops only'),
)
const { steps } = fc.letrec<{ steps: string; part: string }>((tie) => ({
  steps: fc.array(tie('part'), { minLength: 1, maxLength: 3 }).map((parts) => parts.join(', ')),
  part: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    step,
    fc.tuple(tie('steps'), amount).map(([inner, times]) => `[${inner}] ${times} times`),
    fc.tuple(tie('steps'), place).map(([inner, where]) => `(${inner}) ${where}`),
    fc.tuple(tie('steps'), amount).map(([inner, times]) => `*${inner}; rep from * ${times} more times`),
    fc.tuple(tie('steps')).map(([inner]) => `*${inner}; rep from * around`),
  ),
}))
const round = fc.oneof(
  { weight: 6, arbitrary: steps },
  amount.map((times) => `rep Rnd 1 ${times} times`),
  fc.tuple(amount, steps).map(([number, work]) => `Rnd ${number}: ${work}`),
  fc.tuple(amount, amount, steps).map(([from, to, work]) => `Rnds ${from}-${to}: ${work}`),
  fc.tuple(steps, amount, amount).map(([work, count, all]) => `${work}. (${count} dc, ${all} ch-3 sps)`),
)

describe('texts of the grammar with wild numbers', () => {
  it('are read, printed, measured and charted without a fall, in bounded work and in numbers', () => {
    fc.assert(
      fc.property(
        fc.array(round, { minLength: 1, maxLength: 3 }),
        fc.constantFrom('US', 'UK'),
        (rounds, terms) => {
          const motif: RoundsMotif = {
            id: 'm',
            kind: 'rounds',
            gauge: { stitch: 'dc', stitches: 16, rows: 9, over: 100 },
            special: `Shell: ${rounds[0]!} in next st.`,
            rounds: [{ work: '12 dc in ring; join.' }, ...rounds.map((work) => ({ work }))],
          }
          const { account, located, beginning, read } = roundsAccount(motif, {
            hand: 'right',
            terms,
            growth: 0,
          })
          const elements = read.worked.reduce((sum, entry) => sum + entry.elements.length, 0)
          expect(elements).toBeLessThanOrEqual(LIMITS.worked)
          for (const style of ['as-written', 'consistent', 'expanded'] as const) {
            const printed = printRounds(read.reading.tree, { style, terms: 'UK' })
            expect(printed.length).toBeLessThan(10_000_000)
          }
          for (const found of read.findings)
            expect(found.message).not.toMatch(/undefined|NaN|Infinity|\{\w+\}/)
          if (account)
            for (const { x, y } of account.outline)
              expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true)
          if (!beginning) return
          chartKey(located, beginning, { terms, hand: 'left' })
          for (const figure of chartFigures(located, beginning, {
            hand: 'right',
            style: 'ink',
            width: 130,
            height: 130,
          }))
            expect(Number.isFinite(figure.width) && Number.isFinite(figure.height)).toBe(true)
        },
      ),
      { numRuns: runs(25), seed: 20261126 },
    )
  })
})
