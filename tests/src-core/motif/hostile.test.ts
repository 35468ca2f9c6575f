/** Whatever is written: measuring and charting never throw, and every place is a number. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { chartFigures, chartKey } from '../../../src-core/figures/chart'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { runs } from '../../runs'

const PIECES = [
  ...[
    '*',
    '; rep from * around, ',
    'turn, ',
    'ch 1, ',
    'ch 5, ',
    'picot, ',
    'sk 2 sts, ',
    'working behind petals, ',
  ],
  'ch 9, sl st in 2nd ch from hook, sc in next ch, hdc in next 3 chs, ',
  'sl st in next sc, ',
  'sl st in ring, ',
  'sc in next st, ',
  'trtr in next st, ',
  'popcorn in next st, ',
  'puff in ring, ',
  '12 dc in ring, ',
  '2 dc in each st around, ',
  'dc in 4th ch from hook, ',
  '5 dc in 5th ch from hook ',
  '(4 skipped chs count as dc and ch 1), ',
  '(ch 3, 3 dc, ch 3, sl st) 5 times in ring, ',
  '(ch 6, sl st in ring) 6 times, ',
  '(sc, hdc, dc, ch 2, dc, hdc, sc) in each ch-5 sp around, ',
  'in each ch-3 lp make 6 sc, ',
  'dc3tog over next 3 sts, ',
  'FPdc around next st, ',
  'BPsc around each st around, ',
  'ch 3, 2 dc in same st, ',
  'join with sl st in first sc, ',
]
const round = fc
  .array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 6 })
  .map((list) => list.join(''))
const foundation = fc.constantFrom<RoundsMotif['foundation'][]>(
  undefined,
  { ring: 'adjustable' },
  { ring: 'chain', chains: 6 },
  { ring: 'stitch' },
  { chain: 11 },
)

describe('hostile rounds', () => {
  it('are measured and charted without a fall, in numbers', () => {
    fc.assert(
      fc.property(fc.array(round, { minLength: 1, maxLength: 4 }), foundation, (rounds, begins) => {
        const motif: RoundsMotif = {
          id: 'm',
          kind: 'rounds',
          gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
          foundation: begins,
          rounds: rounds.map((work) => ({ work })),
        }
        const told = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
        const { account, located, beginning } = told
        if (account) {
          const numbers = [
            account.overTips,
            account.overValleys,
            ...account.outline.flatMap(({ x, y }) => [x, y]),
          ]
          expect(numbers.every(Number.isFinite)).toBe(true)
        }
        const points = located.flatMap((entry) =>
          [...entry.elements, ...entry.asides].flatMap(({ base, top, chain }) => [base, top, ...chain]),
        )
        expect(points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true)
        if (!beginning || located.length === 0) return
        chartKey(located, beginning, { terms: 'UK', hand: 'left' })
        for (const figure of chartFigures(located, beginning, {
          hand: 'right',
          style: 'ink',
          width: 130,
          height: 130,
        }))
          expect(Number.isFinite(figure.width) && Number.isFinite(figure.height)).toBe(true)
      }),
      { numRuns: runs(500), seed: 20261125 },
    )
  })
})
