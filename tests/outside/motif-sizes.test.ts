/**
 * §published-sizes: published motifs, each written here as rounds of our own wording from what its source tells of the
 * counts. Sources and measures: tests/fixtures/published-sizes.jsonl. Where a source names a hook and yarn class
 * but no gauge, the gauge is the one its list gives for that hook (worsted, 5 mm: 14 sc × 16 rows to 4 in; 5.5 mm:
 * a common label's 12 × 15 and one writer's own 13 × 15, §schultz), else from the standard table (§yarn-weights).
 * The cases are §crochetbtf, §grandmotherspatternbook, §pinkmambo, §michaels, §hoop-gauge, §barefoottams, §allicrafts
 * and §freevintagecrochet.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { RoundsMotif, StitchGauge } from '../../shared-types/project'
import { roundsAccount } from '../../src-core/motif/rounds/account'

const FOUR_INCHES = 101.6
const WORSTED_5: StitchGauge = { stitch: 'sc', stitches: 14, rows: 16, over: FOUR_INCHES, hook: 5 }
const WORSTED_LABEL: StitchGauge = { stitch: 'sc', stitches: 12, rows: 15, over: FOUR_INCHES, hook: 5.5 }
const WORSTED_OWN: StitchGauge = { stitch: 'sc', stitches: 13, rows: 15, over: FOUR_INCHES, hook: 5.5 }
const FOUR_PLY: StitchGauge = { stitch: 'sc', stitches: 21, rows: 24, over: 100, hook: 3.75 }
const THREAD_10: StitchGauge = { stitch: 'sc', stitches: 35, rows: 38, over: 100, hook: 1.65 }
const THREAD_30: StitchGauge = { stitch: 'sc', stitches: 50, rows: 54, over: 100, hook: 1.1 }

const ADJUSTABLE = { ring: 'adjustable' }
const ring = (chains: number) => ({ ring: 'chain', chains })
const JOIN = 'join with sl st in top of beg ch-3'

const grannyRound = (groups: number) =>
  `*(3 dc, ch 1, 3 dc) in next corner ch-1 sp, ch 1, ${
    groups === 0
      ? ''
      : groups === 1
        ? '3 dc in next ch-1 sp, ch 1'
        : `(3 dc in next ch-1 sp, ch 1) ${groups} times`
  }; rep from * 3 more times, join with sl st in first dc`.replace(', ;', ';')

/**
 * A round of the published hexagon: `side` dc between the corners, (dc, ch 1, dc) in each of the six corner
 * spaces. The source counts each corner's ch 1: 12 = 6 dc + 6 ch, 24 = 18 dc + 6 ch, … 60 = 54 dc + 6 ch.
 */
const hexagonRound = (side: number, count: number) => {
  const along = `dc in next ${side > 1 ? `${side} dc` : 'dc'}`
  return (
    `sl st in next ch-1 sp, ch 4 (counts as dc and ch 1), dc in same sp, *${along}, (dc, ch 1, dc) in next ch-1 sp; ` +
    `rep from * 4 more times, ${along}, join with sl st in 3rd ch of beg ch-4 (${count} dc)`
  )
}

const HEXAGON = [
  'ch 5, dc in 5th ch from hook (4 skipped chs count as dc and ch 1), ch 1, (dc, ch 1) 4 times in same ch, join with sl st in 3rd ch of beg ch-4',
  hexagonRound(1, 18),
  hexagonRound(3, 30),
  hexagonRound(5, 42),
  hexagonRound(7, 54),
]

const FLOWER = [
  'ch 1, 12 sc in ring, join with sl st in first sc',
  'ch 1, *sc in next sc, ch 3; rep from * 11 more times, join with sl st in first sc',
  'ch 1, *sc in next ch-3 sp, ch 5, sk next ch-3 sp; rep from * 5 more times, join with sl st in first sc',
  '(sc, hdc, dc, tr, ch 1, tr, dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
]

interface Case {
  readonly what: string
  /** Line of the published list, by its source. */
  readonly source: string
  readonly millimetres: number
  readonly measure: 'overTips' | 'overValleys'
  readonly gauge: StitchGauge
  readonly foundation: NonNullable<RoundsMotif['foundation']>
  readonly rounds: readonly string[]
}

const CASES: readonly Case[] = [
  {
    what: 'hexagon of dc, 12 to 60 with its corner chains, side to side',
    source: 'sites.google.com/site/crochetbtf',
    millimetres: 127,
    measure: 'overValleys',
    gauge: WORSTED_5,
    foundation: { ring: 'stitch' },
    rounds: HEXAGON,
  },
  {
    what: 'granny square, six rounds',
    source: 'grandmotherspatternbook.com/?p=1458',
    millimetres: 190.5,
    measure: 'overValleys',
    gauge: WORSTED_OWN,
    foundation: ring(4),
    rounds: [
      `ch 3, 2 dc in ring, ch 1, (3 dc, ch 1) 3 times in ring, ${JOIN}`,
      ...[0, 1, 2, 3, 4].map(grannyRound),
    ],
  },
  {
    what: 'hexagon in pairs, eight rounds',
    source: 'pinkmambo.com/dorothy-crochet-hexagon-motif',
    millimetres: 216,
    measure: 'overValleys',
    gauge: WORSTED_5,
    foundation: ring(4),
    rounds: [
      `ch 3, 11 dc in ring, ${JOIN}`,
      `ch 3, dc in same st, 2 dc in each dc around, ${JOIN}`,
      '*dc in next 2 dc, ch 2; rep from * 11 more times, join with sl st in first dc',
      '*(sc, ch 1, tr) in next ch-2 sp; rep from * 11 more times, join with sl st in first sc',
      '*(dc, ch 1, tr) in next ch-1 sp, ch 1; rep from * 11 more times, join with sl st in first dc',
      '*(2 dc, ch 2, 2 dc) in next ch-1 sp, (2 dc in next ch-1 sp) 3 times; rep from * 5 more times, join with sl st in first dc',
      '*(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 10 dc; rep from * 5 more times, join with sl st in first dc',
      '*sc in next dc, ch 3, sk next dc; rep from * around',
    ],
  },
  {
    what: 'hexagon flower with an edging round (no hook named: the common label)',
    source: 'michaels.com B_81093 (throw 57x48 in from rows of 7 and 8, 11 rows, 82 motifs)',
    millimetres: 152.4,
    measure: 'overValleys',
    gauge: WORSTED_LABEL,
    foundation: ring(4),
    rounds: [
      ...FLOWER,
      'ch 1, *sc in next 4 sts, 2 sc in next ch-1 sp, sc in next 4 sts; rep from * 5 more times, join with sl st in first sc (60 sc)',
    ],
  },
  {
    what: 'the same flower in thread, over its petals',
    source: 'same',
    millimetres: 44.5,
    measure: 'overTips',
    gauge: THREAD_10,
    foundation: ring(4),
    rounds: FLOWER,
  },
  {
    what: 'a disc of 14, 28 and 42 dc',
    source: 'designer gauge check for a 15 cm hoop motif, 2019',
    millimetres: 55,
    measure: 'overTips',
    gauge: FOUR_PLY,
    foundation: ADJUSTABLE,
    rounds: [
      `ch 3, 13 dc in ring, ${JOIN}`,
      'ch 4 (counts as dc and ch 1), *dc in next st, ch 1; rep from * 12 more times, join with sl st in 3rd ch of beg ch-4',
      `ch 3, 2 dc in next ch-1 sp, *dc in next dc, 2 dc in next ch-1 sp; rep from * 12 more times, ${JOIN}`,
    ],
  },
  {
    what: 'five petals with picots',
    source: 'barefoottams.blogspot.com 2012/05',
    millimetres: 88.9,
    measure: 'overTips',
    gauge: WORSTED_5,
    foundation: ADJUSTABLE,
    rounds: [
      'ch 1, 10 hdc in ring, join with sl st in first hdc',
      'ch 1, *sc in next st, ch 3, sk next st; rep from * 4 more times, join with sl st in first sc',
      '(sc, hdc, dc, tr, picot-3, tr, dc, hdc, sc) in each ch-3 sp around, join with sl st in first sc',
    ],
  },
  {
    what: 'five petals of dc, tr, dc on 14 sc',
    source: 'allicrafts.blogspot.com 2010/12',
    millimetres: 76.2,
    measure: 'overTips',
    gauge: WORSTED_5,
    foundation: ADJUSTABLE,
    rounds: [
      'ch 1, 7 sc in ring, join with sl st in first sc',
      'ch 1, 2 sc in each sc around, join with sl st in first sc (14 sc)',
      '*(dc, tr, dc) in next sc, sl st in next 2 sc; rep from * 3 more times, (dc, tr, dc) in next sc, sl st in next sc',
    ],
  },
  {
    what: 'a doily motif in thread',
    source: 'freevintagecrochet.com 7308',
    millimetres: 107.95,
    measure: 'overTips',
    gauge: THREAD_30,
    foundation: ring(10),
    rounds: [
      `ch 3, 19 dc in ring, ${JOIN}`,
      'ch 8 (counts as dtr and ch 3), *dtr in next dc, ch 3; rep from * 18 more times, join with sl st in 5th ch of beg ch-8',
      'ch 1, *sc in next dtr, 3 sc in next ch-3 sp; rep from * 19 more times, join with sl st in first sc (80 sc)',
      '*5-dtr cluster over next 4 sts, ch 10; rep from * 19 more times, join with sl st in first cluster',
      '*sc in next ch-10 sp, ch 10; rep from * 19 more times, join with sl st in first sc',
      '*sc in next ch-10 sp, ch 10; rep from * 19 more times, join with sl st in first sc',
      '*(sc, hdc, sc) in next ch-10 sp, ch 2; rep from * 19 more times, join with sl st in first sc',
    ],
  },
]

function accountOf({ what, gauge, foundation, rounds }: Case) {
  const motif: RoundsMotif = {
    id: what,
    kind: 'rounds',
    gauge,
    foundation,
    rounds: rounds.map((work) => ({ work })),
  }
  return roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
}

const sizeOf = (given: Case): number => accountOf(given).account![given.measure]

const rms = (errors: readonly number[]) =>
  Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length)

describe('M5–M14 published motif sizes', () => {
  const published = readFileSync(new URL('../fixtures/published-sizes.jsonl', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { kind: string; mm: number; source: string })
    .filter((entry) => entry.kind === 'size')

  it('checks every size of the list, and the measures are the list’s own', () => {
    const sorted = (entries: { mm: number; source: string }[]) =>
      entries.map((e) => `${e.mm} ${e.source}`).sort()
    expect(sorted(CASES.map((c) => ({ mm: c.millimetres, source: c.source })))).toEqual(sorted(published))
  })

  it.each(CASES)('$what: $millimetres mm within 10 %', (given) => {
    expect(Math.abs(sizeOf(given) / given.millimetres - 1)).toBeLessThan(0.1)
  })

  it('M8 the hexagon in pairs measures 10 in point to point as well, within 15 %', () => {
    const pairs = CASES.find((given) => given.source.includes('pinkmambo'))!
    const { overTips, overValleys } = accountOf(pairs).account!
    expect(Math.abs(overTips / 254 - 1)).toBeLessThan(0.15)
    // A hexagon's corners stand 2/√3 of its sides out; the published one 10 to 8½.
    expect(Math.abs(overTips / overValleys / (10 / 8.5) - 1)).toBeLessThan(0.05)
  })

  it('all within 4.5 % rms, squares and hexagons within 3.5 %', () => {
    const error = (given: Case) => sizeOf(given) / given.millimetres - 1
    expect(rms(CASES.map(error))).toBeLessThan(0.045)
    expect(rms(CASES.filter((given) => given.measure === 'overValleys').map(error))).toBeLessThan(0.035)
  })
})

describe('M7, M17 discs of plain rounds', () => {
  const disc = (
    stitch: string,
    first: number,
    more: number,
    count: number,
    gauge = WORSTED_5,
    foundation: NonNullable<RoundsMotif['foundation']> = ADJUSTABLE,
  ) =>
    roundsAccount(
      {
        id: 'disc',
        kind: 'rounds',
        gauge,
        foundation,
        rounds: [
          {
            work: `${stitch === 'dc' ? 'ch 3 (does not count), ' : 'ch 1, '}${first} ${stitch} in ring, join with sl st in first ${stitch}`,
          },
          ...Array.from({ length: count - 1 }, (_, i) => ({
            work:
              i === 0 && more === first
                ? `2 ${stitch} in each st around, join with sl st in first ${stitch}`
                : `*${stitch} in next ${i} sts, 2 ${stitch} in next st; rep from * ${more - 1} more times, join with sl st in first ${stitch}`,
          })),
        ],
      },
      { hand: 'right', terms: 'US', growth: 0 },
    )

  /**
   * The published motif (§crochetbtf, "Gauge: Diameter = 5”") counts 12, 24, 36, 48, 60 with
   * the ch 1 of its six corners: it is a hexagon of 54 dc and 6 ch. It does not say how its 5 in are laid across;
   * what is compared is side to side, the measure by which hexagons are joined (point to point is 2/√3 of it).
   */
  it('the published hexagon of 12, 24, 36, 48, 60 comes to 5 in side to side within 6 %', () => {
    const hexagon = CASES[0]!
    const { account, findings } = accountOf(hexagon)
    expect(findings.filter((entry) => entry.severity !== 'note')).toEqual([])
    expect(account!.shape).toBe('straight')
    const corners = 6
    expect(account!.rounds.map((round) => round.stitches + corners)).toEqual([12, 24, 36, 48, 60])
    expect(Math.abs(account!.overValleys / 127 - 1)).toBeLessThan(0.06)
  })

  it('a round disc of 12, 24, 36, 48, 60 dc comes to 5 in across within 6 % as well', () => {
    const { account } = disc('dc', 12, 12, 5)
    expect(account!.shape).toBe('round')
    expect(account!.rounds.map((round) => round.stitches)).toEqual([12, 24, 36, 48, 60])
    expect(Math.abs(account!.overTips / 127 - 1)).toBeLessThan(0.06)
  })

  it('three rounds of 12, 24, 36 dc, worsted and 5 mm, come to 3 to 3½ in (§tyingknots)', () => {
    const { account } = disc('dc', 12, 12, 3)
    expect(account!.overTips).toBeGreaterThan(3 * 25.4)
    expect(account!.overTips).toBeLessThan(3.5 * 25.4)
  })

  it('a crown of 10, 20, 30, 40 dc with a 5.5 mm hook comes to 5 in within 6 % (§warmdetroit)', () => {
    const { account } = disc('dc', 10, 10, 4, WORSTED_LABEL, ring(3))
    expect(Math.abs(account!.overTips / 127 - 1)).toBeLessThan(0.06)
  })

  it('a disc by the flat numbers of §flat-circle is not over-full at any published gauge (sc 6, dc 12)', () => {
    for (const gauge of [WORSTED_5, WORSTED_LABEL, WORSTED_OWN, FOUR_PLY]) {
      for (const [stitch, more] of [
        ['sc', 6],
        ['dc', 12],
      ] as const) {
        // Six increases over each other make a hexagon of a disc from the fifth round on (§jillhacker).
        const { account } = disc(stitch, more, more, 4, gauge)
        const radii = account!.rounds.map((round) => round.outerRadius)
        const steps = radii.map((radius, i) => radius - (radii[i - 1] ?? 0))
        for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 9)
      }
    }
  })

  it('six more sc a round lie flat, five may cup, eight may ruffle (§flat-circle: 6 to 8)', () => {
    const codes = (more: number) =>
      new Set(
        disc('sc', more, more, 6)
          .findings.map((entry) => entry.code)
          .filter((code) => /cup|ruffle/.test(code)),
      )
    expect([...codes(6)]).toEqual([])
    expect([...codes(5)]).toEqual(['motif/may-cup'])
    expect([...codes(8)]).toEqual(['motif/may-ruffle'])
  })
})
