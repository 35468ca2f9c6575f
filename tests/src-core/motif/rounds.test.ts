import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { archBetween, archHalfAngle, archRise, veeRise } from '../../../src-core/motif/rounds/arch'
import { planProject } from '../../../src-core/plan'
import { formatFineLength } from '../../../src-core/units/format'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

const FLOWER: RoundsMotif = {
  id: 'flower',
  kind: 'rounds',
  gauge: GAUGE,
  foundation: { ring: 'chain', chains: 6 },
  rounds: [
    { slot: 'Centre', work: 'ch 1, 12 sc in ring, join with sl st in first sc' },
    {
      slot: 'Petals',
      work: 'ch 1, sc in same st as joining, *ch 4, sk 1, sc in next st; rep from * 4 more times, ch 4, sk 1, join with sl st in first sc',
    },
    {
      slot: 'Petals',
      work: '(sc, hdc, 2 dc, ch 2, 2 dc, hdc, sc) in each ch-4 sp around, join with sl st in first sc',
    },
  ],
}

const account = (motif: RoundsMotif, hand: 'left' | 'right' = 'right') =>
  roundsAccount(motif, { hand, terms: 'US', growth: 0 })

describe('M9 loops', () => {
  it('a half circle over its diameter, a V over the same chord, a straight loop', () => {
    expect(archHalfAngle(2 / Math.PI)).toBeCloseTo(Math.PI / 2, 9)
    const arch = archBetween({ x: -10, y: 0 }, { x: 10, y: 0 }, 10 * Math.PI)
    expect(archRise(arch)).toBeCloseTo(10, 9)
    expect(veeRise(arch)).toBeCloseTo(0.5 * Math.sqrt((10 * Math.PI) ** 2 - 400), 9)
    const tight = archBetween({ x: -10, y: 0 }, { x: 10, y: 0 }, 15)
    expect(archRise(tight)).toBe(0)
  })
})

describe('M8 corners', () => {
  const FIRST =
    'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join with sl st in top of beg ch-3'
  const side = (groups: number) => ', 3 dc in next ch-1 sp, ch 1'.repeat(groups)
  /** A granny of so many rounds, each begun in the corner that `enter` leads to. */
  const granny = (rounds: number, enter: string): RoundsMotif => ({
    id: 'granny',
    kind: 'rounds',
    gauge: GAUGE,
    foundation: { ring: 'chain', chains: 4 },
    rounds: Array.from({ length: rounds }, (_, i) => ({
      slot: 'main',
      work:
        i === 0
          ? FIRST
          : `${enter}, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1${side(i - 1)}, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1${side(i - 1)}; rep from * around; join with sl st in top of beg ch-3`,
    })),
  })

  it.each([2, 3, 4, 5])(
    'a granny of %i rounds is a square, whether slip stitches or new yarn lead to its corner',
    (rounds) => {
      const travelled = account(granny(rounds, 'sl st in next 2 dc and in ch-2 sp'))
      const joined = account(granny(rounds, 'join with sl st in any ch-2 sp'))
      for (const { account: told, findings } of [travelled, joined]) {
        expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
        expect(told).toMatchObject({ shape: 'straight' })
      }
      expect(travelled.account!.overTips).toBeCloseTo(joined.account!.overTips, 6)
      expect(travelled.account!.overValleys).toBeCloseTo(joined.account!.overValleys, 6)
      // Corner to corner against side to side, its corners a little drawn out by their loops.
      const ratio = joined.account!.overTips / joined.account!.overValleys
      expect(ratio).toBeGreaterThan(1.38)
      expect(ratio).toBeLessThan(1.55)
    },
  )
})

describe('a motif in written rounds', () => {
  it('M10 finds the petals, their tips and valleys, in the right order of size', () => {
    const { account: told, findings } = account(FLOWER)
    expect(findings.filter((entry) => entry.severity === 'error')).toEqual([])
    expect(told).toMatchObject({ shape: 'petals', petals: 6, provenance: 'gauge' })
    expect(told!.overValleys).toBeLessThan(told!.overTips)
    expect(told!.overValleys).toBeGreaterThan(0.4 * told!.overTips)
    const far = told!.outline.map((p) => Math.hypot(p.x, p.y))
    expect(Math.max(...far)).toBeCloseTo(told!.overTips / 2, 9)
    expect(Math.min(...far)).toBeCloseTo(told!.overValleys / 2, 9)
    expect(told!.outline[0]!.y).toBeCloseTo(-told!.overTips / 2, 9)
    const radii = told!.rounds.map((round) => round.outerRadius)
    expect([...radii].sort((a, b) => a - b)).toEqual(radii)
  })

  it('M40 counts stitches and yarn by colour', () => {
    const { account: told } = account(FLOWER)
    expect(told!.stitches['Centre']).toEqual({ ch: 7, sc: 12, 'sl st': 2 })
    expect(told!.stitches['Petals']).toEqual({ ch: 1 + 24 + 12, sc: 6 + 12, hdc: 12, dc: 24, 'sl st': 2 })
    expect(told!.metres['Petals']!).toBeGreaterThan(told!.metres['Centre']!)
  })

  it('grows in step with the gauge, and is alike for both hands', () => {
    const { account: plain } = account(FLOWER)
    const double = { ...FLOWER, gauge: { ...GAUGE, over: 200 } }
    expect(account(double).account!.overTips).toBeCloseTo(2 * plain!.overTips, 6)
    const left = account(FLOWER, 'left').account!
    expect(left.overTips).toBeCloseTo(plain!.overTips, 9)
    const second = (told: typeof left) => told.anchors.find((anchor) => anchor.id === 'tip-2')!.x
    expect(second(left)).toBeCloseTo(-second(plain!), 9)
  })

  it('M15 a measure of the whole motif rules, and its ratio is told', () => {
    const { account: told, findings } = account({ ...FLOWER, measured: { overTips: 80, overValleys: 55 } })
    expect(told!.overTips).toBeCloseTo(80, 9)
    expect(told!.overValleys).toBeCloseTo(55, 9)
    expect(told!.provenance).toBe('measured')
    expect(findings.some((entry) => entry.code === 'motif/other-than-gauge')).toBe(true)
    // There is nothing to differ from where no gauge is given.
    const bare = account({ ...FLOWER, gauge: undefined, measured: { overTips: 80, overValleys: 55 } })
    expect(bare.findings.some((entry) => entry.code === 'motif/other-than-gauge')).toBe(false)
  })

  it('M15 a size that the page states rules as stated, as sure as the gauge, until one is measured', () => {
    const plain = account(FLOWER).account!
    const of = (share: number, more: Partial<RoundsMotif> = {}) => {
      const overTips = plain.overTips * share
      const stated = { overTips }
      return account({ ...FLOWER, measured: { overTips }, stated, ...more })
    }
    const codes = ({ findings }: ReturnType<typeof of>) =>
      findings.flatMap(({ code }) => (/stated|other-than/.test(code) ? [code] : []))
    const near = of(0.95)
    expect(near.account!.provenance).toBe('stated')
    expect(near.account!.overTips).toBeCloseTo(plain.overTips * 0.95, 9)
    const spread = (told: typeof plain) => (told.range.high - told.range.low) / told.overTips / 2
    expect(spread(near.account!)).toBeCloseTo(spread(plain), 9)
    expect(codes(near)).toEqual(['motif/stated-size'])
    // Within 3 % and the spread both can be right; beyond, one of them is wrong.
    const least = (1 - spread(plain)) / 1.03
    const most = (1 + spread(plain)) / 0.97
    expect(codes(of(least + 0.001))).toEqual(['motif/stated-size'])
    expect(codes(of(most - 0.001))).toEqual(['motif/stated-size'])
    for (const share of [least - 0.001, most + 0.001]) {
      const apart = of(share)
      expect(codes(apart)).toEqual(['motif/stated-against-gauge'])
      expect(apart.findings.find(({ code }) => code === 'motif/stated-against-gauge')).toMatchObject({
        severity: 'warning',
        target: { motif: FLOWER.id },
      })
    }
    // No word where they agree, and nothing to contradict without a gauge.
    expect(codes(of(1.005))).toEqual([])
    expect(codes(of(2, { gauge: undefined }))).toEqual([])
    // Measured: another number, or the same one that is stated no more.
    const measured = of(0.8, { measured: { overTips: plain.overTips * 0.82 } })
    expect(measured.account!.provenance).toBe('measured')
    expect(codes(measured)).toEqual(['motif/other-than-gauge'])
    expect(of(0.8, { stated: undefined }).account!.provenance).toBe('measured')
  })

  it('M15 a measure that neither hand nor blocking makes of the rounds is a warning with both sizes', () => {
    const plain = account(FLOWER).account!
    const of = (share: number, more: Partial<RoundsMotif> = {}) =>
      account({ ...FLOWER, measured: { overTips: plain.overTips * share }, ...more }).findings.filter(
        ({ code }) => /measured-against|other-than/.test(code),
      )
    const codes = (...asked: Parameters<typeof of>) => of(...asked).map(({ code }) => code)
    // Counted in sc, its tallest stitch a dc: ±15 %; measured within 3 %, and one of both blocked by up to 11 %.
    const [least, most] = [0.85 / 1.03 / 1.11, (1.15 * 1.11) / 0.97]
    for (const share of [least + 0.001, 0.9, 1.2, most - 0.001])
      expect(codes(share)).toEqual(['motif/other-than-gauge'])
    for (const share of [least - 0.001, most + 0.001])
      expect(codes(share)).toEqual(['motif/measured-against-gauge'])
    const [told] = of(1.5)
    expect(told).toMatchObject({ severity: 'warning', target: { motif: FLOWER.id } })
    expect(told!.message).toContain(`measured ${formatFineLength(plain.overTips * 1.5, 'metric')} tip to tip`)
    expect(told!.message).toContain(`come to ${formatFineLength(plain.overTips, 'metric')}: 50 % larger`)
    // The hook alone is a rule of thumb of ±25 %; where nothing is known there is nothing to hold it against.
    const hook = { gauge: { hook: 3.5 } }
    const byHook = account({ ...FLOWER, ...hook }).account!.overTips / plain.overTips
    expect(codes(1.4 * byHook, hook)).toEqual([])
    expect(codes(1.5 * byHook, hook)).toEqual(['motif/measured-against-hook'])
    expect(codes(3, { gauge: undefined })).toEqual([])
    // Told as the ruler showed it, before it grew in blocking.
    const thread = { hand: 'right', terms: 'US', growth: 0.06 } as const
    const raw = roundsAccount({ ...FLOWER, measured: { overTips: 200, blocked: false } }, thread)
    expect(raw.findings.find(({ code }) => code === 'motif/measured-against-gauge')!.message).toContain(
      'measured 200 mm tip to tip',
    )
  })

  it('M15 a measured round rules from there on', () => {
    const plain = account(FLOWER).account!
    const across = plain.rounds[0]!.outerRadius * 2 * 1.2
    const rounds = FLOWER.rounds!.map((round, i) => (i === 0 ? { ...round, across } : round))
    const told = account({ ...FLOWER, rounds }).account!
    expect(told.rounds[0]!.outerRadius).toBeCloseTo(across / 2, 6)
    expect(told.overTips / plain.overTips).toBeCloseTo(1.2, 1)
  })

  it('M3 "rounds 1–2 measure 63.5 mm" is a gauge', () => {
    const rounds = [
      { work: 'ch 3, 11 dc in ring, join with sl st in top of beg ch-3' },
      { work: 'ch 3, dc in same st, 2 dc in each dc around, join with sl st in top of beg ch-3' },
      {
        work: 'ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * 10 more times, join with sl st in top of beg ch-3',
      },
    ]
    const told = account({
      id: 'disc',
      kind: 'rounds',
      gauge: { rounds: 2, across: 63.5, hook: 5 },
      foundation: { ring: 'chain', chains: 4 },
      rounds,
    }).account!
    expect(told.rounds[1]!.outerRadius * 2).toBeCloseTo(63.5, 1)
    expect(told.overTips).toBeGreaterThan(80)
  })

  it('M3 "rounds 1 and 2 measure 70 mm" of straight sides is from side to side (common practice, no source)', () => {
    const square = [
      {
        work: 'ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of ch 3',
      },
      {
        work: 'sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, join with sl st in top of ch 3',
      },
      {
        work: 'sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc between groups, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, 3 dc between groups, join with sl st in top of ch 3',
      },
    ]
    const told = (count: number, across: number) =>
      account({
        ...{ id: 'granny', kind: 'rounds', gauge: { rounds: 2, across, hook: 4 } },
        ...{ foundation: { ring: 'chain', chains: 4 }, rounds: square.slice(0, count) },
      }).account!
    const two = told(2, 70)
    expect(two).toMatchObject({ shape: 'straight', petals: 4 })
    expect(two.overValleys).toBeCloseTo(70, 2)
    expect(two.overTips).toBeGreaterThan(85)
    // A third round goes on from there; all of it grows with the measure.
    expect(told(3, 70).overValleys / told(3, 35).overValleys).toBeCloseTo(2, 2)
  })

  it('M12 a crowded petal and M5 an over-full ring are said', () => {
    const rounds = [
      { work: 'ch 1, 30 sc in ring, join with sl st in first sc' },
      {
        work: '*sl st in next st, sk next st, 11 dc in next st, sk next 2 sts; rep from * 5 more times, join with sl st in first sl st',
      },
    ]
    const codes = account({ ...FLOWER, rounds }).findings.map((entry) => entry.code)
    expect(codes).toContain('motif/ring-over-full')
    expect(codes.some((code) => code === 'motif/petal-full' || code === 'motif/petal-too-full')).toBe(true)
  })

  it('a leaf on a chain has the chain’s length and the stitches’ width', () => {
    const leaf: RoundsMotif = {
      id: 'leaf',
      kind: 'rounds',
      gauge: GAUGE,
      foundation: { chain: 11 },
      rounds: [
        {
          slot: 'Leaf',
          work: 'sc in 2nd ch from hook, hdc in next ch, dc in next 6 ch, hdc in next ch, 3 sc in last ch, working along opposite side of chain, hdc in next ch, dc in next 6 ch, hdc in next ch, sc in next ch',
        },
      ],
    }
    const told = account(leaf).account!
    expect(told.shape).toBe('leaf')
    expect(told.overTips).toBeCloseTo(11 * 5, 6)
    expect(told.overValleys).toBeGreaterThan(15)
  })

  it('without rounds there is an error and no outline', () => {
    const told = account({ id: 'empty', kind: 'rounds' })
    expect(told.account).toBeNull()
    expect(told.findings.map((entry) => entry.code)).toContain('motif/no-rounds')
  })

  it('plans a blanket from rounds and gauge alone, yarn included', () => {
    const plan = planProject({
      format: 'petalyard-project',
      version: 1,
      motifs: [FLOWER],
      yarns: [{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125 }],
      colourways: [{ id: 'c', code: 'A', motif: 'flower', yarns: { Centre: 'y', Petals: 'y' } }],
      layout: {
        kind: 'blanket',
        arrangement: 'offset-rows',
        motif: 'flower',
        columns: 4,
        rows: 3,
        cells: { fill: { pattern: 'one', colourways: ['c'] } },
      },
    })
    expect(plan.findings.filter((entry) => entry.severity === 'error')).toEqual([])
    expect(plan.counts.motifs).toBe(12)
    expect(plan.joins.length).toBeGreaterThan(10)
    expect(plan.yarns[0]!.grams.low).toBeLessThan(plan.yarns[0]!.grams.expected)
  })
})
