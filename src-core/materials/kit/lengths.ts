/**
 * M52: how a portion of yarn is taken from what it is sold in. Whole packs go in as they are; the rest is wound from
 * others, in one length (nobody has to join it) or joined where a pack ends. What is wound loses a share, what goes in
 * as it is loses nothing.
 */
import type { BoughtPack } from '../../../shared-types/plan'
import type { Grams } from '../../units/quantity'
import { KIT_CONSTANTS } from './constants'
import { cheapestMix } from './packs'
import type { Pack } from './packs'

/** Grams that are rounding, not yarn. */
const DUST = 1e-6
const LOSS = KIT_CONSTANTS.windingLoss

/** Packs that go into a portion as they are. */
export interface WholePacks {
  readonly count: number
  readonly grams: Grams
}

/** A way to buy for so many portions. */
export interface Way {
  readonly mix: readonly BoughtPack[]
  readonly cost: number
  /** Lost in winding, of all portions. */
  readonly loss: Grams
  /** What goes into each portion as it is; left out where nothing does, or not the same into each. */
  readonly whole?: WholePacks
  /** Wound for each portion besides. */
  readonly wound: Grams
  /** Portions whose wound part is joined from pieces. */
  readonly pieced: number
}

/**
 * How many lengths of `each` one pack gives, the loss in winding allowed for. A pack that holds one and not quite
 * the loss gives it all the same.
 */
export function lengthsIn(pack: Grams, each: Grams): number {
  if (pack / each < 1 - DUST) return 0
  return Math.max(1, Math.floor(pack / (each * (1 + LOSS)) + DUST))
}

/** What one length loses in winding: no more than its pack holds, so that a pack of just that weight loses nothing. */
export const lossOfLength = (pack: Grams, each: Grams): Grams =>
  Math.max(0, Math.min(each * LOSS, pack / lengthsIn(pack, each) - each))

/** The ways to buy so that every portion has whole packs and one length; none where there are too many of them. */
export function wholeWays(packs: readonly Pack[], each: Grams, portions: number): Way[] {
  return splits(packs, each).flatMap((split) => {
    const mix = split.rest > 0 ? cheapestOfLengths(packs, split.rest, portions) : []
    if (!mix) return []
    const loss = split.rest > 0 ? lossOfLengths(mix, split.rest, portions) : 0
    return [wayOf(split, mix, portions, loss, 0)]
  })
}

/** The ways to buy where ends may be joined: all that give whole lengths, too. */
export function joinedWays(packs: readonly Pack[], each: Grams, portions: number, windTo: Grams): Way[] {
  const needed = portions * each
  // A run that is beyond reckoning is so however it is parted.
  if (packs.length === 0 || !cheapestMix(packs, needed * (1 + LOSS))) return []
  const parted = splits(packs, each).flatMap((split) => {
    const wound = portions * split.rest
    const mix = cheapestMix(packs, wound * (1 + LOSS))
    if (!mix) return []
    const lengths = mix.reduce((sum, { grams, count }) => sum + count * lengthsIn(grams, split.rest), 0)
    const pieced = split.rest > 0 ? Math.max(0, portions - lengths) : 0
    return [wayOf(split, mix, portions, Number((wound * LOSS).toFixed(6)), pieced)]
  })
  // Where the step is the weight of whole packs, packs of several sizes may go in as they are.
  const steps = packs.filter((pack) => isWhole(windTo / pack.grams))
  const mixed = steps.length > 1 ? cheapestMix(steps, needed) : null
  const asTheyAre = mixed ? [{ mix: mixed, cost: costOf(mixed), loss: 0, wound: 0, pieced: 0 }] : []
  return [...parted, ...asTheyAre, ...wholeWays(packs, each, portions)]
}

/** The best of some ways: the cheapest, then the one that buys least, joins least and loses least. */
export const bestWay = (ways: readonly Way[]): Way | undefined =>
  [...ways].sort(
    (a, b) => a.cost - b.cost || gramsOf(a.mix) - gramsOf(b.mix) || a.pieced - b.pieced || a.loss - b.loss,
  )[0]

export const gramsOf = (mix: readonly BoughtPack[]): Grams =>
  mix.reduce((sum, pack) => sum + pack.grams * pack.count, 0)

const costOf = (mix: readonly BoughtPack[]): number =>
  mix.reduce((sum, { count, price }) => sum + (price ?? 0) * count, 0)

interface Split {
  readonly pack?: Pack
  readonly count: number
  readonly rest: Grams
}

const isWhole = (value: number): boolean => value > 0.5 && Math.abs(value - Math.round(value)) < DUST

/** How a portion may be parted: nothing of it as it is, or as many packs of one size as it holds. */
function splits(packs: readonly Pack[], each: Grams): Split[] {
  const parted = packs.flatMap((pack): Split[] => {
    const count = Math.floor(each / pack.grams + DUST)
    if (count === 0) return []
    const rest = each - count * pack.grams
    return [{ pack, count, rest: rest < DUST ? 0 : Number(rest.toFixed(6)) }]
  })
  return [{ count: 0, rest: each }, ...parted]
}

function wayOf(
  split: Split,
  wound: readonly BoughtPack[],
  portions: number,
  loss: Grams,
  pieced: number,
): Way {
  const { pack, count, rest } = split
  const mix = pack ? merged([{ ...pack, count: count * portions }, ...wound]) : wound
  const told = { mix, cost: costOf(mix), loss, wound: rest, pieced }
  return pack ? { ...told, whole: { count, grams: pack.grams } } : told
}

/** One entry for each size at one price, the largest first. */
function merged(mix: readonly BoughtPack[]): BoughtPack[] {
  const all: BoughtPack[] = []
  for (const pack of mix) {
    const at = all.findIndex(({ grams, price }) => grams === pack.grams && price === pack.price)
    if (at < 0) all.push(pack)
    else all[at] = { ...pack, count: all[at]!.count + pack.count }
  }
  return all.sort((a, b) => b.grams - a.grams)
}

/** The cheapest packs that give so many lengths; null where none gives one, or there are too many. */
function cheapestOfLengths(packs: readonly Pack[], each: Grams, portions: number): BoughtPack[] | null {
  // Of packs that give as many lengths the cheapest is taken, then the smallest.
  const byLengths = new Map<number, Pack>()
  for (const pack of [...packs].sort((a, b) => a.price - b.price || a.grams - b.grams)) {
    const lengths = lengthsIn(pack.grams, each)
    if (lengths > 0 && !byLengths.has(lengths)) byLengths.set(lengths, pack)
  }
  if (byLengths.size === 0) return null
  const large = [...byLengths].map(([lengths, { price }]) => ({ grams: lengths, price }))
  const mix = cheapestMix(large, portions)
  return mix && merged(mix.map(({ grams, count }) => ({ ...byLengths.get(grams)!, count })))
}

/** What so many lengths lose that are taken from these packs, from those first that lose least. */
function lossOfLengths(mix: readonly BoughtPack[], each: Grams, portions: number): Grams {
  let left = portions
  let loss = 0
  const taken = mix.map(({ grams, count }) => ({
    lengths: count * lengthsIn(grams, each),
    lost: lossOfLength(grams, each),
  }))
  for (const { lengths, lost } of taken.sort((a, b) => a.lost - b.lost)) {
    const cut = Math.min(left, lengths)
    loss += cut * lost
    left -= cut
  }
  return Number(loss.toFixed(6))
}
