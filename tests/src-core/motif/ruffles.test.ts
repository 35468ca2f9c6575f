/**
 * M7, M8, M17: what has more stitches than lie flat is as high as its stitches and ruffles; it is said to, and is not
 * hidden in a larger size. Heights by hand: 15 dc and 8 rows to 100 mm make stitches of 6.67 mm and rounds of 12.6 mm.
 */
import { describe, expect, it } from 'vitest'
import type { MotifAccount } from '../../../shared-types/plan'
import type { RoundsMotif, StitchGauge } from '../../../shared-types/project'
import { lieWords } from '../../../src-core/figures/lie-words'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { record } from '../figures/recorder'

const GAUGE: StitchGauge = { stitch: 'dc', stitches: 15, rows: 8, over: 100, hook: 4 }
const HEIGHT = 12.6
const ROUNDS = 4
/** A ring of four chains, given way by 15 %. */
const RING = (1.15 * 4 * 6.67) / (2 * Math.PI)

/** A hexagon of dc with so many on each side of the loop in its corners. */
function hexagon(each: number): RoundsMotif {
  const dc = each === 1 ? 'dc' : `${each} dc`
  const corner = `(${dc}, ch 2, ${dc}) in next ch-2 sp`
  const along = (count: number) => (count === 1 ? 'dc in next dc' : `dc in each of next ${count} dc`)
  const works = Array.from({ length: ROUNDS - 1 }, (_, i) => {
    const side = 2 + 2 * each * i
    const rest = side > 2 ? `, ${along(side / 2 - 1)}` : ''
    return `Ch 3 (counts as dc), ${along(side / 2)}, ${corner}, *${along(side)}, ${corner}; rep from * 4 more times${rest}; join with sl st in top of beg ch-3.`
  })
  const first =
    'Ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times; join with sl st in top of beg ch-3.'
  return {
    ...{ id: 'm', name: 'Hexagon', kind: 'rounds', foundation: { ring: 'chain', chains: 4 }, gauge: GAUGE },
    rounds: [first, ...works].map((work) => ({ slot: 'all', work })),
  }
}

/** A disc that grows by so many dc in every round. */
const disc = (more: number): RoundsMotif => ({
  ...{ id: 'm', kind: 'rounds', foundation: { ring: 'adjustable' }, gauge: GAUGE },
  rounds: [
    `Ch 3 (counts as dc), ${more - 1} dc in ring; join with sl st in top of beg ch-3.`,
    ...Array.from(
      { length: 3 },
      (_, i) =>
        `Ch 3 (counts as dc), ${i === 0 ? '' : `dc in next ${i === 1 ? 'dc' : `${i} dc`}, `}dc in same st as last dc, *${i === 0 ? '' : `dc in next ${i === 1 ? 'dc' : `${i} dc`}, `}2 dc in next dc; rep from * around; join.`,
    ),
  ].map((work) => ({ slot: 'all', work })),
})

const accountOf = (motif: RoundsMotif): MotifAccount =>
  roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 }).account!

const account = (lies: readonly [MotifAccount['rounds'][number]['lies'], number, number][]) => ({
  rounds: lies.map(([lie, stitches, flatness], i) => ({
    ...{ number: i + 1, outerRadius: 10, stitches, flatness, lies: lie },
  })),
})

describe('M17 a motif of more stitches than lie flat', () => {
  it('M8 reaches as far as its rounds are high, and no farther for its stitches', () => {
    const [flat, full, fuller] = [1, 2, 3].map((each) => accountOf(hexagon(each)))
    const reach = 2 * (RING + ROUNDS * HEIGHT)
    expect(flat!.rounds.map(({ lies }) => lies)).toEqual([null, null, 'flat', 'flat'])
    expect(full!.rounds.map(({ stitches }) => stitches)).toEqual([12, 36, 60, 84])
    expect(full!.rounds.at(-1)!.lies).toBe('ruffles')
    for (const each of [full!, fuller!]) {
      // Loops of its corners, into which the next round goes, reach a little farther than its stitches.
      expect(each.overValleys).toBeGreaterThan(0.97 * reach)
      expect(each.overValleys).toBeLessThan(1.06 * reach)
    }
    expect(fuller!.overValleys).toBeLessThan(1.01 * full!.overValleys)
  })

  it('M7 a disc likewise: a ruffled one is no larger than one that lies flat', () => {
    const [flat, ruffled] = [12, 20].map((more) => accountOf(disc(more)))
    expect(flat!.rounds.at(-1)!.lies).toBe('flat')
    expect(ruffled!.rounds.at(-1)!.lies).toBe('ruffles')
    // Its ring alone is drawn wider by what goes into it.
    const grown = ({ rounds }: MotifAccount) => rounds.at(-1)!.outerRadius - rounds[0]!.outerRadius
    expect(grown(ruffled!)).toBeLessThan(1.005 * grown(flat!))
  })

  it('says which rounds, and about how many stitches too many or too few', () => {
    expect(
      lieWords(
        account([
          [null, 12, 1.5],
          ['flat', 24, 1],
          ['flat', 36, 1],
        ]),
      ),
    ).toBe('')
    expect(
      lieWords(
        account([
          [null, 12, 1],
          ['may-ruffle', 30, 1.3],
          ['ruffles', 60, 1.5],
        ]),
      ),
    ).toBe('Ruffles: round 3 has more stitches than lie flat (about 20 too many).')
    expect(
      lieWords(
        account([
          [null, 12, 1],
          ['ruffles', 30, 1.5],
          ['ruffles', 60, 1.5],
          ['ruffles', 90, 2],
        ]),
      ),
    ).toBe('Ruffles: rounds 2 to 4 have more stitches than lie flat (round 4 about 45 too many).')
    expect(
      lieWords(
        account([
          ['cups', 12, 0.75],
          ['flat', 24, 1],
          ['cups', 24, 0.6],
        ]),
      ),
    ).toBe('Cups: rounds 1 and 3 have fewer stitches than lie flat (round 3 about 16 too few).')
    expect(
      lieWords(
        account([
          [null, 12, 1],
          ['flat', 24, 1],
          ['may-cup', 36, 0.85],
        ]),
      ),
    ).toBe('May cup: round 3 has fewer stitches than lie flat (about 6 too few); blocking may settle it.')
  })

  it('says so on its page, and nothing there where it lies flat', () => {
    const words = (each: number) => {
      const plan = planProject({
        ...{ format: 'petalyard-project', version: 1, terms: 'US', motifs: [hexagon(each)] },
        layout: { kind: 'blanket', arrangement: 'rings', motif: 'm', rings: 1 },
      } as never)
      return mapPages(plan, { date: new Date(0) })
        .filter(({ section }) => section === 'motif')
        .flatMap(({ figure }) => record(figure).texts.map(({ text }) => text))
        .join(' ')
    }
    expect(words(2)).toContain('stitches than lie flat (round 4 about 33 too many).')
    expect(words(1)).not.toContain('than lie flat')
  })
})

describe('a round with three stitches or more in each of the one before', () => {
  const account = (work: string) => {
    const rounds = ['Ch 3 (counts as dc), 11 dc in ring; join.', work, work].map((each) => ({ work: each }))
    const motif: RoundsMotif = {
      ...{ id: 'm', kind: 'rounds', foundation: { ring: 'adjustable' }, gauge: GAUGE },
      rounds,
    }
    return roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  }

  it('is no round of petals: it ruffles, and is said to', () => {
    const { account: made, findings } = account('Ch 1, 3 dc in each dc around; join with sl st in first dc.')
    expect(made!.rounds.map(({ stitches }) => stitches)).toEqual([12, 36, 108])
    expect(made!.rounds.at(-1)!.lies).toBe('ruffles')
    expect(findings.map(({ code }) => code)).toContain('motif/ruffles')
  })

  it('is one of shells where stitches are passed between them', () => {
    const { findings } = account(
      'Ch 1, *sk 1 dc, 5 dc in next dc; rep from * around; join with sl st in first dc.',
    )
    expect(findings.map(({ code }) => code)).not.toContain('motif/ruffles')
  })
})
