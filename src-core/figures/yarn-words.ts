/** What stands beside numbers of yarn on screen, on paper and in lists: what they were split by, what is assumed. */
import type { Forecast, Range, WeightSplit, YarnNeed, YarnNumber } from '../../shared-types/plan'
import type { Terms, UnitSystem, Yarn } from '../../shared-types/project'
import { wholeBalls } from '../materials/ledger'
import { SPLIT_SPREAD } from '../materials/motif-yarn'
import { countedAt } from '../materials/on-hand'
import { termWord } from '../stitches/terms'
import { formatMass, formatMassRange, formatNumber, formatRange, formatYarnLength } from '../units/format'
import { listed, plural } from './words'

const SPLIT_WORDS: Readonly<Record<WeightSplit, string>> = {
  stitches: 'split by stitches',
  areas: 'split by area',
  evenly: 'split evenly',
}

/** "split by area": where a yarn's grams come from a weight that nobody split; empty where they do not. */
export const splitWords = ({ split = [] }: Pick<YarnNeed, 'split'>): string =>
  listed(split.map((source) => SPLIT_WORDS[source]))

/** "each within ±15 %": how sure a part is; of several ways the least sure. */
function sureWords(split: readonly WeightSplit[], names: number): string {
  const half = Math.max(...split.map((source) => SPLIT_SPREAD[source]))
  const within = `within ±${formatNumber(half * 100)}\u00a0%`
  return names === 1 ? within : `each ${within}`
}

/** "Brick and Sand split by area, each within ±25 %": each way once; empty where nothing was split. */
export function splitRemark(needs: readonly YarnNeed[], nameOf: (id: string) => string): string {
  const ways = new Map<string, { readonly split: readonly WeightSplit[]; readonly names: string[] }>()
  for (const need of needs) {
    const words = splitWords(need)
    const names = ways.get(words)?.names ?? []
    if (words) ways.set(words, { split: need.split ?? [], names: [...names, nameOf(need.id)] })
  }
  return [...ways]
    .map(([words, { split, names }]) => `${listed(names)} ${words}, ${sureWords(split, names.length)}`)
    .join('; ')
}

/** The mark in running words. */
export const ASSUMED = '(assumed)'
/** The mark in tables, which say below what it means. */
export const ASSUMED_STAR = '*'

/** Whether one of some numbers of a yarn follows from a band that nobody entered. */
export const isAssumed = (need: Pick<YarnNeed, 'assumed'>, ...numbers: readonly YarnNumber[]): boolean =>
  numbers.some((number) => need.assumed?.includes(number))

/** A number with its mark where it is assumed. */
export const marked = (words: string, assumed: boolean): string => (assumed ? `${words} ${ASSUMED}` : words)

/** The same in a table. */
export const starred = (words: string, assumed: boolean): string =>
  assumed ? `${words}${ASSUMED_STAR}` : words

type Priced = Pick<YarnNeed, 'id' | 'toBuy' | 'cost'>

/** What is to be bought and a sum of prices leaves out; empty where there is no sum or nothing is left out of it. */
export function unpriced(needs: readonly Priced[]): string[] {
  if (needs.every(({ cost }) => cost === null)) return []
  return needs.flatMap(({ id, toBuy, cost }) => (cost === null && toBuy ? [id] : []))
}

/** "Cream, whose price is not known": the same by name, in words. */
export function unpricedWords(needs: readonly Priced[], nameOf: (id: string) => string): string {
  const names = unpriced(needs).map(nameOf)
  if (names.length === 0) return ''
  return `${listed(names)}, whose ${names.length === 1 ? 'price is' : 'prices are'} not known`
}

/** The same below a table. */
export function sumRemark(...[needs, nameOf]: Parameters<typeof unpricedWords>): string {
  const words = unpricedWords(needs, nameOf)
  return words && `The sum leaves out ${words}.`
}

/** What the star of a table means. */
export const starWords = (ball: string): string =>
  `${ASSUMED_STAR} assumed, as the ${ball} band is not entered yet.`

/** Said where a run of kits is bought of yarns that are on hand. */
export const BOUGHT_NEW =
  'All of it is bought new here: what is on hand is not taken off, so that the price does not depend on it.'

/** Whether yarns of a run are on hand. */
export const hasStock = (
  yarns: readonly Yarn[] | undefined,
  run: readonly { readonly yarn: string }[],
): boolean =>
  run.some(({ yarn }) =>
    yarns?.some(
      ({ id, onHandGrams, onHandBalls }) => id === yarn && ((onHandGrams ?? 0) > 0 || (onHandBalls ?? 0) > 0),
    ),
  )

/** Whether it is known how much of a yarn is needed: what is used takes some. */
export const isNeedKnown = ({ grams }: Pick<YarnNeed, 'grams'>): boolean => grams.high > 0

/** "Straw, which is not known yet": what a sum of weights leaves out, by name; empty where nothing is left out of it. */
export function unknownWords(needs: readonly YarnNeed[], nameOf: (id: string) => string): string {
  const names = needs.filter((need) => !isNeedKnown(need)).map(({ id }) => nameOf(id))
  if (names.length === 0 || names.length === needs.length) return ''
  return `${listed(names)}, which ${names.length === 1 ? 'is' : 'are'} ${NOT_KNOWN}`
}

/** Said instead of a weight of 0. */
export const NOT_KNOWN = 'not known yet'

/** The length that is needed, where that is all that is known: no ball band brings it to grams. */
export const lengthAlone = (need: Pick<YarnNeed, 'grams' | 'metres'>): Range | null =>
  !isNeedKnown(need) && need.metres && need.metres.high > 0 ? need.metres : null

/** How much of a yarn is needed: its weight, else its length, else that nobody knows. */
export function amountWords(need: Pick<YarnNeed, 'grams' | 'metres'>, units: UnitSystem): string {
  const length = lengthAlone(need)
  if (length) return formatRange(length, (metres) => formatYarnLength(metres, units))
  return isNeedKnown(need) ? formatMassRange(need.grams, units) : NOT_KNOWN
}

/**
 * Why so many whole balls are bought, where the grams needed do not show it: a ball is the least that is sold, or only
 * the high end of the range comes to more: "up to 4.4 g needed, and a whole skein is the least that is sold"; else empty.
 */
export function buyingReason(
  { grams, onHand, toBuy, again }: Pick<YarnNeed, 'grams' | 'onHand' | 'toBuy' | 'again'>,
  { ballGrams }: Pick<Yarn, 'ballGrams'>,
  units: UnitSystem,
  terms: Terms,
): string {
  if (!toBuy || !ballGrams || again) return ''
  const missing = grams.high - onHand
  // Another count, of yarn that was weighed again, has reasons of its own.
  if (toBuy !== wholeBalls(missing, ballGrams, grams.high)) return ''
  const expected = wholeBalls(Math.max(0, grams.expected - onHand), ballGrams, grams.expected)
  if (expected < toBuy) {
    const nameOf = (count: number): string => plural(count, termWord('ball', terms), termWord('balls', terms))
    const bought = expected > 0 ? [`${formatNumber(expected)} ${nameOf(expected)}`] : []
    const covers = [...bought, ...(onHand > 0 ? ['what is on hand'] : [])]
    const verb = covers.length === 1 && expected < 2 ? 'covers' : 'cover'
    const more = toBuy - expected
    const others = `${more === 1 ? 'one' : formatNumber(more)} ${expected > 0 ? 'more' : nameOf(more)} ${plural(more, 'covers', 'cover')}`
    return `${covers.join(' and ')} ${verb} the ${formatMass(grams.expected, units)} expected, ${others} the high end of ${formatMass(grams.high, units)}`
  }
  if (toBuy > 1 || missing > ballGrams / 2) return ''
  const needed = `up to ${formatMass(missing, units)} ${onHand > 0 ? 'missing' : 'needed'}`
  return `${needed}, and a whole ${termWord('ball', terms)} is the least that is sold`
}

/**
 * Of a yarn that was weighed again: what the whole takes at the rate at which it went, "394 g", and what of it is used,
 * "135 g used, 259 g still to come at this rate"; null where no rate is known, or only since what is on hand was counted.
 */
export function wholeAtRate(
  { start, left, missing, over, plan }: Forecast,
  yarn: Yarn,
  units: UnitSystem,
): { readonly whole: string; readonly split: string } | null {
  if (plan || countedAt(yarn) > 0) return null
  const [used, toCome] = [start - left, left + missing - over]
  const mass = (grams: number): string => formatMass(grams, units)
  return {
    whole: mass(used + toCome),
    split: `${mass(used)} used, ${mass(toCome)} still to come at this rate`,
  }
}

/** What there is to buy of a yarn that was weighed or counted again, and why: "120 g were left with 39 made, 400 g go into …". */
export function againReason({ left, missing, over, at, plan }: Forecast, units: UnitSystem): string {
  const need = left + missing - over
  const goes = plan
    ? `up to ${formatMass(plan.high, units)} go into what was left to make`
    : `at that rate ${formatMass(Math.max(0, need), units)} go into what was left to make`
  const end = missing > 0 ? `, so ${formatMass(missing, units)} are missing` : ''
  return `${formatMass(left, units)} were left with ${formatNumber(at)} made; ${goes}${end}`
}

/** The same of all yarns, below a table: "Straw, 1 skein: up to 4.4 g needed, and …"; empty where nothing is to be said. */
export function buyingRemark(
  needs: readonly YarnNeed[],
  yarns: readonly Yarn[],
  units: UnitSystem,
  terms: Terms,
): string {
  const reasons = needs.flatMap((need) => {
    const yarn = yarns.find(({ id }) => id === need.id)
    const reason = yarn && buyingReason(need, yarn, units, terms)
    if (!reason) return []
    const balls = plural(need.toBuy ?? 0, termWord('ball', terms), termWord('balls', terms))
    return [`${yarn.name ?? yarn.id}, ${formatNumber(need.toBuy ?? 0)} ${balls}: ${reason}.`]
  })
  return reasons.join(' ')
}

/** "14 g of Rust missing, and no more can be had": of the yarns of which none can be bought; empty where all are enough. */
export function noMoreWords(
  needs: readonly Pick<YarnNeed, 'id' | 'noMore'>[],
  nameOf: (id: string) => string,
  units: UnitSystem,
): string {
  const short = needs.flatMap(({ id, noMore }) =>
    noMore && noMore.missing > 0 ? [`${formatMass(noMore.missing, units)} of ${nameOf(id)}`] : [],
  )
  return short.length > 0 ? `${listed(short)} missing, and no more can be had` : ''
}

/**
 * Said where what is to be bought is less what is on hand: a project knows of no other, so that yarn which two of them
 * are planned from would count in both. Empty where nothing is on hand.
 */
export const aloneWords = (needs: readonly Pick<YarnNeed, 'onHand'>[]): string =>
  needs.some(({ onHand }) => onHand > 0)
    ? 'What is on hand counts for this plan alone. If another plan takes of the same yarn, enter only what is left for this one.'
    : ''

/** Said where something of a yarn is on hand or made, so that what is to be bought is not what it costs in all. */
export const wholeCostWords = (money: string, terms: Terms): string =>
  `All of its yarn in whole ${termWord('balls', terms)}, with what is on hand and what is made, costs ${money}.`
