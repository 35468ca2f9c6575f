/**
 * M52: portions of yarn that nobody has to join. A ball gives so many whole lengths of one portion, what is left of it
 * is too short for another; a portion of more than a ball is whole balls and one length from another.
 */
import type { BoughtPack } from '../../../shared-types/plan'
import type { Grams } from '../../units/quantity'
import { KIT_CONSTANTS } from './constants'
import { cheapestMix } from './packs'
import type { Pack } from './packs'

/** Grams that are rounding, not yarn. */
const DUST = 1e-6

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < DUST

/** How many lengths of `each` one pack gives, the loss in winding allowed for; one that parts evenly loses nothing. */
export function lengthsIn(pack: Grams, each: Grams): number {
  const share = pack / each
  if (isWhole(share)) return Math.round(share)
  if (share < 1) return 0
  return Math.max(1, Math.floor(share / (1 + KIT_CONSTANTS.windingLoss) + DUST))
}

/** A portion of more than one pack: so many packs as they are, and a length from another. */
export function packsInEach(pack: Grams, each: Grams): { readonly packs: number; readonly rest: Grams } {
  const packs = Math.floor(each / pack + DUST)
  const rest = each - packs * pack
  return { packs, rest: rest < DUST ? 0 : Number(rest.toFixed(6)) }
}

/** How many portions so many packs give without a join. */
export function wholePortions(pack: Grams, count: number, each: Grams): number {
  if (pack + DUST >= each) return count * lengthsIn(pack, each)
  const { packs, rest } = packsInEach(pack, each)
  if (rest === 0) return Math.floor(count / packs)
  const lengths = lengthsIn(pack, rest)
  // Of every so many packs one is cut, which gives its lengths to as many portions.
  const full = Math.floor(count / (packs * lengths + 1))
  const over = count - full * (packs * lengths + 1)
  return full * lengths + Math.max(0, Math.floor((over - 1) / packs))
}

/** The cheapest packs for so many portions in whole lengths; null where there are too many of them. */
export function cheapestLengths(packs: readonly Pack[], each: Grams, portions: number): BoughtPack[] | null {
  if (portions <= 0 || each <= 0) return []
  const ways: BoughtPack[][] = []
  // Of packs that give as many lengths the cheapest is taken, then the smallest.
  const byLengths = new Map<number, Pack>()
  for (const pack of [...packs].sort((a, b) => a.price - b.price || a.grams - b.grams)) {
    const lengths = lengthsIn(pack.grams, each)
    if (lengths > 0 && !byLengths.has(lengths)) byLengths.set(lengths, pack)
    if (lengths > 0) continue
    const { packs: whole, rest } = packsInEach(pack.grams, each)
    const cut = rest === 0 ? 0 : Math.ceil(portions / lengthsIn(pack.grams, rest) - DUST)
    ways.push([{ ...pack, count: portions * whole + cut }])
  }
  const large = [...byLengths].map(([lengths, { price }]) => ({ grams: lengths, price }))
  const mix = cheapestMix(large, portions)
  if (mix) ways.push(mix.map(({ grams, count }) => ({ ...byLengths.get(grams)!, count })))
  const sum = (way: readonly BoughtPack[], of: (pack: BoughtPack) => number): number =>
    way.reduce((all, pack) => all + pack.count * of(pack), 0)
  const costOf = (way: readonly BoughtPack[]): number => sum(way, ({ price }) => price ?? 0)
  const [best] = ways.sort(
    (a, b) => costOf(a) - costOf(b) || sum(a, ({ grams }) => grams) - sum(b, ({ grams }) => grams),
  )
  return best ? [...best].sort((a, b) => b.grams - a.grams) : null
}
