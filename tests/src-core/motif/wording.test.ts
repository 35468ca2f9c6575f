/** The stitches decide, not the wording: the same stitches in the same places give the same outline and chart. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { chartFigures } from '../../../src-core/figures/chart'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { runs } from '../../runs'
import { GAUGE, workedMotif } from './written-motif'

const ADJUSTABLE = { ring: 'adjustable' }

function told(rounds: readonly string[], foundation: RoundsMotif['foundation'] = ADJUSTABLE) {
  const { account, located, drawing } = workedMotif(rounds, foundation)
  const drawn = drawing()!
  const chart = chartFigures(drawn.located, drawn.beginning, {
    hand: 'right',
    style: 'ink',
    width: 170,
    height: 170,
  })
  return {
    shape: account!.shape,
    petals: account!.petals,
    outline: rounded(account!.outline),
    anchors: rounded(account!.anchors),
    chart: rounded(chart.flatMap((part) => part.marks.map(({ ink }) => ink))),
    growth: growthOf(located),
  }
}

/** Sums in another order differ in their last digits. */
const rounded = <T>(value: T): T =>
  JSON.parse(JSON.stringify(value), (_, each: unknown) =>
    typeof each === 'number' ? Math.round(each * 1e6) / 1e6 + 0 : each,
  ) as T

/** What each cornered round grows by on one with the same corners, in heights of its dc. */
function growthOf(located: ReturnType<typeof roundsAccount>['located']): number[] {
  const { height } = resolveGauge(GAUGE, 'US')
  return located.flatMap((entry, i) => {
    const below = located[i - 1]
    if (!below || entry.corners === 0 || below.corners !== entry.corners) return []
    return [(entry.radius - below.radius) / height('dc')]
  })
}

const JOIN = 'join with sl st in top of beg ch-3'

/** A polygon of dc with (`wide` dc, ch 2, `wide` dc) in its corners, in three ways of telling it. */
function polygon(corners: number, first: number, wide: number, rounds: number) {
  const group = `(${wide} dc, ch 2, ${wide} dc)`
  const begin = `ch 3 (counts as dc), ${first - 1} dc in ring, ch 2, (${first} dc, ch 2) ${corners - 1} times in ring, ${JOIN}`
  const more = Array.from({ length: rounds - 1 }, (_, k) => k)
  const stitches = (count: number) => (count > 0 ? [`dc in next ${count > 1 ? `${count} dc` : 'dc'}`] : [])
  const corner = `${group} in next ch-2 sp`
  /** A round begins in its first side: `wide` more stitches come to stand on either side of its beginning each time. */
  const round = (k: number, between: (side: string) => readonly string[]) =>
    [
      'ch 3 (counts as dc)',
      ...stitches(first - 1 + wide * k),
      corner,
      ...between(`${stitches(first + 2 * wide * k)[0]!}, ${corner}`),
      ...stitches(wide * k),
      JOIN,
    ].join(', ')
  const sides = corners - 1
  return {
    each: [
      begin,
      ...more.map(
        () => `ch 3 (counts as dc), dc in each dc around, working ${group} in each ch-2 sp, ${JOIN}`,
      ),
    ],
    and: [
      begin,
      ...more.map(() => `ch 3 (counts as dc), dc in each dc and ${group} in each ch-2 sp around, ${JOIN}`),
    ],
    spelled: [begin, ...more.map((k) => round(k, (side) => Array.from({ length: sides }, () => side)))],
    asterisks: [
      begin,
      ...more.map((k) =>
        round(k, (side) => [`*${side}; rep from * ${sides === 2 ? 'once' : `${sides - 1} times`} more`]),
      ),
    ],
    brackets: [begin, ...more.map((k) => round(k, (side) => [`[${side}] ${sides} times`]))],
  }
}

describe('M8 a polygon', () => {
  it('has one outline and chart, however its rounds are worded', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 8 }),
        fc.integer({ min: 2, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 2, max: 4 }),
        (corners, first, wide, rounds) => {
          const { each, ...others } = polygon(corners, first, wide, rounds)
          const wanted = told(each)
          expect(wanted.shape).toBe('straight')
          expect(wanted.petals).toBe(corners)
          for (const growth of wanted.growth) {
            expect(growth).toBeGreaterThanOrEqual(0.6 - 1e-9)
            expect(growth).toBeLessThanOrEqual(1.5)
          }
          for (const [wording, text] of Object.entries(others))
            expect([wording, told(text)]).toEqual([wording, wanted])
        },
      ),
      { numRuns: 12, seed: 20261127 },
    )
  })
})

describe('M8 a square with spaces along its sides', () => {
  const square = (last: string, begins: 'corner' | 'side') => {
    const corner = '(3 dc, ch 2, 3 dc)'
    const first =
      begins === 'corner' ? 'sl st in next 2 dc and in corner sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp' : null
    const join = 'join with sl st in 3rd ch of ch-3'
    const round = (side: string) =>
      first
        ? `${first}, *${side}${corner} in next ch-2 sp; rep from * 2 more times, ${side}${join}`
        : `ch 3 (does not count), *${corner} in next ch-2 sp, ${side.replace(/, $/, '')}; rep from * 3 more times, join with sl st in first dc`
    return [
      `ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, ${join}`,
      round('ch 1, '),
      round('ch 1, 3 dc in next ch-1 sp, ch 1, '),
      `ch 1, ${last}, join with sl st in first sc (56 sc)`,
    ]
  }

  it('keeps its corners in a round of sc, however the round is worded', () => {
    for (const begins of ['corner', 'side'] as const) {
      const wanted = told(
        square(
          '*sc in next 3 dc, 3 sc in next ch-2 sp, (sc in next 3 dc, sc in next ch-1 sp) twice; rep from * 3 more times',
          begins,
        ),
      )
      expect([wanted.shape, wanted.petals]).toEqual(['straight', 4])
      for (const last of [
        '*sc in each dc and ch-1 sp to next corner sp, 3 sc in corner sp; rep from * around',
        '*sc in each dc and each ch-1 sp to next ch-2 sp, 3 sc in next ch-2 sp; rep from * around',
        'sc in each dc and ch-1 sp around and 3 sc in each ch-2 sp',
        'sc in each st and in each ch-1 sp around, 3 sc in each corner sp',
        'sc in each dc and ch-1 sp around, working 3 sc in each corner',
        // A space in general is no corner where those are named by themselves.
        'sc in each st and sp around, working 3 sc in each corner sp',
        'sc in each dc and ch-1 sp around, working 3 sc in each of the 4 corner sps',
        'sc in each dc and ch-1 sp around, with 3 sc in each corner sp',
      ])
        expect([last, told(square(last, begins))]).toEqual([last, wanted])
    }
  })

  it('names the spaces that are left by their chains where they are no corners', () => {
    const work = square(
      '*sc in next 6 dc, 3 sc in next corner sp; rep from * around, sc in next ch-1 sp',
      'corner',
    )
    const { findings } = roundsAccount(
      {
        id: 'm',
        kind: 'rounds',
        gauge: GAUGE,
        foundation: ADJUSTABLE,
        rounds: work.map((each) => ({ work: each })),
      } as RoundsMotif,
      { hand: 'right', terms: 'US', growth: 0 },
    )
    const left = findings.find(({ code }) => code === 'rounds/spaces-left')
    expect(left?.message).toContain('1 ch-1 sp are worked, the round before has 8')
  })
})

describe('M10 a flower', () => {
  it('has one outline and chart, however its petals are worded', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 9 }),
        fc.integer({ min: 3, max: 6 }),
        fc.constantFrom('hdc, dc', 'hdc, 2 dc', 'dc', 'hdc, dc, tr'),
        (petals, chains, up) => {
          const down = up.split(', ').reverse().join(', ')
          const petal = `(sc, ${up}, ch 2, ${down}, sc)`
          const flower = (last: string) => [
            `ch 1, ${2 * petals} sc in ring, join with sl st in first sc`,
            `ch 1, *sc in next sc, ch ${chains}, sk next sc; rep from * ${petals - 1} more times, join with sl st in first sc`,
            `${last}, join with sl st in first sc`,
          ]
          const space = `next ch-${chains} sp`
          const wanted = told(flower(`${petal} in each ch-${chains} sp around`))
          expect(wanted.shape).toBe('petals')
          expect(wanted.petals).toBe(petals)
          for (const last of [
            `*${petal} in ${space}; rep from * around`,
            `*${petal} in ${space}; rep from * ${petals - 1} more times`,
            `[${petal} in ${space}] ${petals} times`,
            Array.from({ length: petals }, () => `${petal} in ${space}`).join(', '),
          ])
            expect([last, told(flower(last))]).toEqual([last, wanted])
        },
      ),
      { numRuns: 10, seed: 20261127 },
    )
  })
})

describe('stitches and chains in a ring', () => {
  it('M5 have one outline and chart, whether the ring is named once or for each stitch', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 10 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom('sc', 'hdc', 'dc', 'tr', '3-dc cluster'),
        (times, each, chains, stitch) => {
          const made = each > 1 ? `${each} ${stitch}` : stitch
          const join = 'join with sl st in first st'
          const wanted = told([`(${made} in ring, ch ${chains}) ${times} times, ${join}`])
          for (const text of [
            `[${made}, ch ${chains}] ${times} times in ring, ${join}`,
            `*${made} in ring, ch ${chains}; rep from * ${times - 1} more times, ${join}`,
            `${Array.from({ length: times }, () => `${made} in ring, ch ${chains}`).join(', ')}, ${join}`,
          ])
            expect([text, told([text])]).toEqual([text, wanted])
        },
      ),
      { numRuns: runs(20), seed: 20261201 },
    )
  })
})

describe('shapes as they are', () => {
  it('M8 three rounds of increases over each other make an octagon of a disc; two do not', () => {
    const disc = (rounds: number) =>
      told([
        'ch 2 (counts as hdc), 7 hdc in ring, join with sl st in top of beg ch-2',
        'ch 2 (counts as hdc), hdc in same st, 2 hdc in each st around, join with sl st in top of beg ch-2',
        ...Array.from(
          { length: rounds },
          (_, i) =>
            `ch 2 (does not count), *hdc in next ${i > 0 ? `${i + 1} sts` : 'st'}, 2 hdc in next st; rep from * 7 more times, join with sl st in first hdc`,
        ),
      ])
    expect(disc(2).shape).toBe('round')
    expect([disc(3).shape, disc(3).petals]).toEqual(['straight', 8])
  })

  it('M16 a pansy has its two large petals and its three small ones', () => {
    const { shape, anchors } = told([
      'ch 1, 10 sc in ring, join with sl st in first sc',
      'ch 1, *sc in next sc, ch 4, sk next sc; rep from * 4 more times, join with sl st in first sc',
      '(sc, 8 dc, sc) in each of next 3 ch-4 sps, (sc, 12 tr, sc) in each of next 2 ch-4 sps, join with sl st in first sc',
    ])
    expect(shape).toBe('petals')
    const reach = anchors.filter(({ kind }) => kind === 'tip').map(({ x, y }) => Math.hypot(x, y))
    expect(reach).toHaveLength(5)
    const [large, ...rest] = [...reach].sort((a, b) => b - a)
    expect(rest[0]! / large!).toBeGreaterThan(0.95)
    for (const small of rest.slice(1)) expect(small / large!).toBeLessThan(0.92)
  })

  it('a chain worked on both sides with as much at either end is an oval, a graded one a leaf', () => {
    const widthAt = (outline: readonly { x: number; y: number }[], share: number) => {
      const length = Math.max(...outline.map(({ y }) => y)) * 2
      const near = outline.filter(({ y }) => Math.abs(y + (share * length) / 2) < length / 30)
      return Math.max(...near.map(({ x }) => x))
    }
    const oval = told(
      [
        '2 sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch, working along opposite side of chain, sc in next 7 ch, sc in last ch, join with sl st in first sc',
      ],
      { chain: 10 },
    ).outline
    expect(widthAt(oval, 0.6) / widthAt(oval, 0)).toBeGreaterThan(0.85)
    const leaf = told(
      [
        'sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, (sc, ch 2, sc) in last ch, working along opposite side of chain, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, sc in next ch, join with sl st in first sc',
      ],
      { chain: 12 },
    ).outline
    expect(widthAt(leaf, 0.6) / widthAt(leaf, 0)).toBeLessThan(0.7)
  })

  it('M9 eighteen loops of twelve chains press each other out to half their length', () => {
    const { outline } = told([
      'ch 1, 9 sc in ring, join with sl st in first sc',
      'ch 1, *sc in next sc, ch 12, sc in same sc, ch 12; rep from * 8 more times, join with sl st in first sc',
    ])
    const reach = Math.max(...outline.map(({ x, y }) => Math.hypot(x, y)))
    // 12 chains of 5 mm fold to 30 mm, on a middle of 9 sc in two rounds.
    expect(reach).toBeGreaterThan(30)
    expect(reach).toBeLessThan(46)
  })

  it('M8, M17 twenty-four dc in every corner of a small square ruffle, and are told to', () => {
    const { located, findings } = roundsAccount(
      {
        id: 'm',
        kind: 'rounds',
        gauge: GAUGE,
        foundation: { ring: 'chain', chains: 4 },
        rounds: [
          { work: `ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) 3 times in ring, ${JOIN}` },
          {
            work: `ch 3 (does not count), *dc in next 3 dc, (12 dc, ch 2, 12 dc) in next ch-2 sp; rep from * 3 more times, ${'join with sl st in first dc'}`,
          },
        ],
      },
      { hand: 'right', terms: 'US', growth: 0 },
    )
    expect(located[1]!.radius).toBeLessThan(30)
    // Told of the round, and of the text that it is written in: the window goes there.
    expect(findings.find(({ code }) => code === 'motif/ruffles')?.target).toEqual({
      motif: 'm',
      round: 2,
      entry: 1,
    })
  })
})

describe('loops behind petals, worked round the stitches below', () => {
  const PETALS = [
    'ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3 (12 dc)',
    'ch 1, 2 sc in each st around, join (24 sc)',
    'join yarn in any sc, *ch 5, skip 3 sc, sc in next sc; rep from * around (6 ch-5 loops)',
    'in each loop work (sc, hdc, 5 dc, hdc, sc) (6 petals)',
  ]
  const SHELLS = 'in each ch-6 loop work (sc, hdc, dc, 3 tr, dc, hdc, sc), join'
  it.each([
    'join yarn around the post of any sc of Rnd 3, *ch 6, sc around next sc of Rnd 3; rep from * 5 times more, join',
    'join yarn around the post of any sc of Rnd 3, *ch 6, sc around next sc of Rnd 3; rep from * 5 times more, sl st to first st',
    'join yarn with sc around the post of any sc of Rnd 3, *ch 6, sc around next sc of Rnd 3; rep from * 4 times more, ch 6, sl st to first sc',
  ])('are all alike, wherever the yarn was joined: %s', (loops) => {
    const { account } = workedMotif([...PETALS, loops, SHELLS], { ring: 'chain', chains: 4 })
    const { outline, petals } = account!
    expect(petals).toBe(6)
    const reach = outline.map(({ x, y }) => Math.hypot(x, y))
    const sixth = reach.length / 6
    expect(Number.isInteger(sixth)).toBe(true)
    const apart = reach.map((radius, i) => Math.abs(radius - reach[(i + sixth) % reach.length]!))
    expect(Math.max(...apart)).toBeLessThan(0.1)
  })
})

describe('loops over a round that was joined', () => {
  const FIRST = 'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)'
  const PETALS = '(sc, hdc, 5 dc, hdc, sc) in each ch-5 loop around, join with sl st in first sc'
  it.each([
    '*ch 5, sk next sc, sc in next sc; rep from * 5 more times (6 ch-5 loops)',
    '*ch 5, sk 1 sc, sc in next sc; rep from * all round, working the last sc into the same place as the sl st',
    'ch 1, sc in first sc, *ch 5, sk next sc, sc in next sc; rep from * 4 more times, ch 5, join with sl st in first sc',
  ])('lead away from where the hook stands and back to it: %s', (loops) => {
    const { located } = workedMotif([FIRST, loops, PETALS], ADJUSTABLE)
    const spans = located[1]!.seats.flatMap(({ arch }) => (arch ? [arch.chord] : []))
    expect(spans).toHaveLength(6)
    for (const span of spans) expect(span).toBeCloseTo(spans[1]!, 6)
  })
})
