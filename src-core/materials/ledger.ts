/** Gathers what each yarn is used for, in grams or metres, and turns it into balls, leftovers and cost. */
import type { Range, WeightSplit, YarnNeed, YarnNumber } from '../../shared-types/plan'
import type { BandField, Yarn } from '../../shared-types/project'
import { isBeneathShown } from '../units/format'
import type { Grams } from '../units/quantity'
import { isUsable, isUsableOrZero } from '../units/usable'
import { missingOf } from './no-more'
import { gramsOnHand } from './on-hand'
import { NO_RANGE, add, times } from './range'

export type YarnUse = 'motifs' | 'joins' | 'edging' | 'cord' | 'tails'
const YARN_NUMBERS = [
  'grams',
  'metres',
  'balls',
  'onHand',
  'toBuy',
  'leftover',
  'cost',
] as const satisfies YarnNumber[]
const USES: readonly YarnUse[] = ['motifs', 'joins', 'edging', 'cord', 'tails']

interface Entry {
  readonly use: YarnUse
  readonly unit: 'g' | 'm'
  readonly amount: Range
  readonly split: WeightSplit | undefined
}

/** The value if it can be calculated with and is above zero, else null. */
export const positiveOrNull = (value: number | undefined): number | null => (isUsable(value) ? value : null)

/** Grams in one metre of a yarn, from its ball band, or null where the band is not known. */
export function gramsPerMetre(yarn: Yarn): number | null {
  const grams = positiveOrNull(yarn.ballGrams)
  const metres = positiveOrNull(yarn.ballMetres)
  return grams !== null && metres !== null ? grams / metres : null
}

/**
 * Whole balls for so many grams of a need of `of` grams. What vanishes where the need is shown is worth no ball beside
 * what is there; where nothing is there, it is.
 */
export function wholeBalls(grams: Grams, ballGrams: Grams, of: Grams = grams): number {
  const balls = Math.max(0, Math.ceil(grams / ballGrams - 1e-9))
  const last = grams - (balls - 1) * ballGrams
  return balls > 0 && of - last > 1e-9 && isBeneathShown(last, of) ? balls - 1 : balls
}

export class YarnLedger {
  readonly #entries = new Map<string, Entry[]>()
  readonly #motifs = new Map<string, number>()
  readonly #worth = new Map<string, number>()
  readonly #lacking = new Map<string, Set<string>>()

  /** Notes a use of a yarn; a use of nothing still makes the yarn appear in the account. */
  use(yarn: string, use: YarnUse, unit: 'g' | 'm', amount: Range, split?: WeightSplit): void {
    const entries = this.#entries.get(yarn) ?? []
    entries.push({ use, unit, amount, split })
    this.#entries.set(yarn, entries)
  }

  /**
   * Notes how many motifs have this yarn in them, and how many whole ones they are worth with what is a share of one; a
   * yarn appears in the account even before it weighs anything.
   */
  countMotifs(yarn: string, motifs: number, worth: number): void {
    this.use(yarn, 'motifs', 'g', NO_RANGE)
    this.#motifs.set(yarn, (this.#motifs.get(yarn) ?? 0) + motifs)
    this.#worth.set(yarn, (this.#worth.get(yarn) ?? 0) + worth)
  }

  /** Notes that nobody knows how much of a yarn a motif takes. */
  lack(yarn: string, motif: string): void {
    const motifs = this.#lacking.get(yarn) ?? new Set()
    this.#lacking.set(yarn, motifs.add(motif))
  }

  /** Motifs that have this yarn in them. */
  motifsWith(yarn: string): number {
    return this.#motifs.get(yarn) ?? 0
  }

  /** Whole motifs that all pieces with this yarn are worth: a half is worth its share of one. */
  worthWith(yarn: string): number {
    return this.#worth.get(yarn) ?? 0
  }

  has(yarn: string): boolean {
    return this.#entries.has(yarn)
  }

  #sum(yarn: string, unit: 'g' | 'm', use?: YarnUse): Range {
    return (this.#entries.get(yarn) ?? [])
      .filter((entry) => entry.unit === unit && (use === undefined || entry.use === use))
      .reduce((sum, entry) => add(sum, entry.amount), NO_RANGE)
  }

  /** How weights were split for this yarn, each way once. */
  #splits(yarn: string): WeightSplit[] {
    const entries = this.#entries.get(yarn) ?? []
    return [...new Set(entries.flatMap(({ split, amount }) => (split && amount.expected > 0 ? split : [])))]
  }

  /** The high end of what was noted of a yarn so far, with its waste, in grams; 0 where some of it is not known. */
  high(yarn: Yarn, wastePercent: number): Grams {
    if (this.#lacking.has(yarn.id)) return 0
    const metres = this.#sum(yarn.id, 'm').high * (gramsPerMetre(yarn) ?? 0)
    return (this.#sum(yarn.id, 'g').high + metres) * (1 + wastePercent / 100)
  }

  /** Metres of a yarn that could not be brought to grams, waste left out. */
  metresOnly(yarn: Yarn): number {
    return gramsPerMetre(yarn) === null ? this.#sum(yarn.id, 'm').expected : 0
  }

  /** Which of a yarn's numbers follow from what nobody read off its band. */
  #assumed(yarn: Yarn, need: YarnNeed): YarnNumber[] {
    const says = (field: BandField): boolean => yarn.assumed?.includes(field) ?? false
    const [ball, length] = [says('ballGrams'), says('ballMetres')]
    const isMeasured = gramsPerMetre(yarn) !== null && (ball || length)
    const grams = isMeasured && this.#sum(yarn.id, 'm').expected > 0
    const metres = isMeasured && this.#sum(yarn.id, 'g').expected > 0
    const onHand = ball && isUsable(yarn.onHandBalls)
    const balls = need.balls !== null && (ball || grams)
    const bought = need.toBuy !== null && (balls || onHand)
    const cost = need.cost !== null && (bought || says('price'))
    const follows = { grams, metres, balls, onHand, toBuy: bought, leftover: bought, cost }
    return YARN_NUMBERS.filter((number) => follows[number])
  }

  /** The account of one yarn. Metres that no ball band brings to grams are not in its grams. */
  need(yarn: Yarn, wastePercent: number): YarnNeed {
    const perMetre = gramsPerMetre(yarn)
    const waste = wastePercent / 100
    const ofUse = (use: YarnUse): Range =>
      add(this.#sum(yarn.id, 'g', use), times(this.#sum(yarn.id, 'm', use), perMetre ?? 0))
    const byUse = Object.fromEntries(USES.map((use) => [use, ofUse(use)])) as Record<YarnUse, Range>
    const net = USES.reduce((sum, use) => add(sum, byUse[use]), NO_RANGE)
    const parts = {
      motifs: byUse.motifs.expected,
      joins: byUse.joins.expected,
      edging: byUse.edging.expected,
      tails: byUse.tails.expected,
      waste: net.expected * waste,
      ...(byUse.cord.expected > 0 ? { cord: byUse.cord.expected } : {}),
    }
    const worked = parts.motifs + parts.joins + parts.edging + byUse.cord.expected
    const expected = worked + parts.tails + parts.waste
    const lacking = [...(this.#lacking.get(yarn.id) ?? [])]
    const isWhole = lacking.length === 0
    const whole: Range = {
      low: Math.min(expected, net.low * (1 + waste)),
      expected,
      high: Math.max(expected, net.high * (1 + waste)),
    }
    // A border alone is not what a blanket takes.
    const grams = isWhole ? whole : NO_RANGE
    const inGrams = this.#sum(yarn.id, 'g').expected > 0
    const lengths = times(this.#sum(yarn.id, 'm'), 1 + waste)
    const length = perMetre !== null ? times(grams, 1 / perMetre) : inGrams ? null : lengths
    const metres = isWhole ? length : null

    const ballGrams = positiveOrNull(yarn.ballGrams)
    const onHand = gramsOnHand(yarn)
    const price = isUsableOrZero(yarn.price) ? yarn.price : null
    const isCounted = this.metresOnly(yarn) === 0 && isWhole
    const told = ballGrams !== null && isCounted
    const splits = this.#splits(yarn.id)
    const noMore = yarn.noMore && isCounted ? { missing: missingOf(grams.high, onHand) } : null
    const toBuy = noMore ? 0 : told ? wholeBalls(grams.high - onHand, ballGrams, grams.high) : null
    const leftover = noMore
      ? Math.max(0, onHand - expected)
      : toBuy !== null && ballGrams !== null
        ? onHand + toBuy * ballGrams - expected
        : null
    const known: YarnNeed = {
      id: yarn.id,
      grams,
      metres,
      balls: told ? wholeBalls(grams.high, ballGrams) : null,
      onHand,
      toBuy,
      leftover,
      cost: toBuy !== null && price !== null ? toBuy * price : null,
      parts,
      ...(noMore && { noMore }),
      ...(splits.length > 0 ? { split: splits } : {}),
      ...(lacking.length > 0 ? { lacking } : {}),
    }
    const assumed = this.#assumed(yarn, known)
    return assumed.length > 0 ? { ...known, assumed } : known
  }
}
