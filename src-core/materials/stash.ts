/**
 * M46: what there is of each yarn for the motifs of a blanket, so that colours can be chosen by it. The account of
 * materials is asked what motifs take, joins, edging, fillers and halves included: there is one account of yarn.
 */
import type { YarnForMotifs, YarnNeed } from '../../shared-types/plan'
import type { BlanketLayout, Yarn } from '../../shared-types/project'
import { FIRM, isByStash, isByYarn } from '../colour/limits'
import type { Grams } from '../units/quantity'
import { isUsableOrZero } from '../units/usable'
import type { Materials, MaterialsInput } from './input'
import { gramsPerMetre } from './ledger'
import { materials } from './materials'
import { gramsOnHand } from './on-hand'

type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>

/** A coloured blanket as far as its yarn. */
interface Worked {
  readonly input: MaterialsInput
  readonly needed: Materials
}

/** How often colours are chosen anew where half motifs and joins follow them (our choice). */
const ROUNDS = 6

/** Grams that a rounding error may make. */
const NO_GRAMS = 1e-6

/** What there is of a yarn that was weighed or counted while the work was made. */
export interface AtHand {
  /** What was used until then and what was left: so much may the whole take. */
  readonly whole: Grams
  /** What is really used over what the plan expects, where that is known: what the whole takes is counted by it. */
  readonly rate?: number
  /** By the high end all the same: no more of it can be had. */
  readonly isHigh?: true
}

/** The same by id of the yarn, of those that were. */
export type Taken = ReadonlyMap<string, AtHand>

/** Whether colours are held against what is on hand. */
const isWithinStash = (fill: Fill | undefined): boolean => fill?.withinStash === true || isByStash(fill)

/**
 * Grams of a need as they are held against a limit: the high end, or as fast as the yarn is known to go; of one of which
 * no more can be had both.
 */
function takes(fill: Fill | undefined, { id, grams }: Pick<YarnNeed, 'id' | 'grams'>, taken: Taken): Grams {
  const { rate, isHigh } = (isWithinStash(fill) && taken.get(id)) || {}
  return rate === undefined ? grams.high : rate * (isHigh ? grams.high : grams.expected)
}

/**
 * The most grams that the whole may take of a yarn: of what is on hand, and of what was used before it was weighed or
 * counted. Infinity where there is no limit.
 */
export function limitOf(fill: Fill | undefined, yarn: Yarn, taken: Taken): Grams {
  const most = fill?.mostGrams?.[yarn.id]
  return Math.min(
    isWithinStash(fill) ? (taken.get(yarn.id)?.whole ?? gramsOnHand(yarn)) : Infinity,
    isUsableOrZero(most) ? most : Infinity,
  )
}

/** What the motifs may take of each yarn with a limit, and what one takes in each colourway. */
function yarnsForMotifs(
  fill: Fill | undefined,
  input: MaterialsInput,
  kinds: number,
  taken: Taken,
): YarnForMotifs[] {
  const { basis, counts } = input
  const others = input.others ?? []
  /** The motifs of the cells beside the first; fillers and half motifs come after them. */
  const further = others.slice(0, kinds - 1)
  const added = others.slice(kinds - 1)
  const made = Object.entries(counts.byColourway).filter(([id, many]) => id !== '' && many > 0)
  // What joins and edging are worked in may follow the colourway of most motifs: it stays that one.
  const [main] = made.reduce((most, each) => (each[1] > most[1] ? each : most), ['', 0])
  /** What all takes with so many of the first motif in each colourway, and of one further motif. */
  const grams = (byColourway: Record<string, number>, kind = 0, id = ''): Map<string, Grams> => {
    const { yarns } = materials({
      ...input,
      counts: { motifs: counts.motifs, byColourway },
      others: [
        ...further.map((piece, at) => ({
          ...piece,
          counts: { motifs: piece.counts.motifs, byColourway: at === kind - 1 ? { [id]: 1 } : {} },
        })),
        ...added,
      ],
    })
    return new Map(yarns.map((need) => [need.id, takes(fill, need, taken)]))
  }
  const one = grams({ [main]: 1 })
  const two = grams({ [main]: 2 })
  const of = (found: ReadonlyMap<string, Grams>, id: string): Grams => found.get(id) ?? 0
  const waysOf = (motif: string | undefined) =>
    basis.colourways.filter((way) => way.motif === undefined || way.motif === motif)
  const ways = waysOf(input.motif?.id)
  const furtherOnes = further.map(({ motif }, at) =>
    waysOf(motif.id).map(({ id }) => ({ id, found: grams({ [main]: 2 }, at + 1, id) })),
  )
  const withOne = ways.map((way) => ({
    id: way.id,
    found: way.id === main ? null : grams({ [main]: 2, [way.id]: 1 }),
  }))
  /** What joins and edging would take if most motifs were in another colourway. */
  const rests = ways.map(({ id }) => {
    const [single, double] = [grams({ [id]: 1 }), grams({ [id]: 2 })]
    return (yarn: string): Grams => 2 * of(single, yarn) - of(double, yarn)
  })
  const followsColours = added.some(
    ({ share, motif }) =>
      share !== undefined ||
      basis.colourways.some((way) => way.motif === motif.id && fill?.colourways?.includes(way.id)),
  )
  return basis.yarns.flatMap((yarn) => {
    const limit = limitOf(fill, yarn, taken)
    // Metres that no band brings to grams have no limit in grams.
    const isKnown = gramsPerMetre(yarn) !== null || of(two, yarn.id) > 0 || yarn.ballMetres === undefined
    const each = Object.fromEntries(
      withOne.map(({ id, found }) => [
        id,
        Math.max(0, found ? of(found, yarn.id) - of(two, yarn.id) : of(two, yarn.id) - of(one, yarn.id)),
      ]),
    )
    const eachFurther = furtherOnes.map((found) =>
      Object.fromEntries(
        found.map(({ id, found }) => [id, Math.max(0, of(found, yarn.id) - of(two, yarn.id))]),
      ),
    )
    const isTaken = [each, ...eachFurther].some((ones) => Object.values(ones).some((one) => one > NO_GRAMS))
    if (limit === Infinity || !isTaken || !isKnown) return []
    const rest = 2 * of(one, yarn.id) - of(two, yarn.id)
    const found = {
      ...{ id: yarn.id, name: yarn.name ?? yarn.id, left: limit - rest, each },
      ...(further.length > 0 && { others: eachFurther }),
    }
    const moves = rests.some((other) => Math.abs(other(yarn.id) - rest) > NO_GRAMS)
    return [
      {
        ...found,
        ...(yarn.noMore && isWithinStash(fill) && { noMore: true as const }),
        ...((followsColours || moves) && { isShared: true as const }),
      },
    ]
  })
}

/** Grams beyond the limits of a fill, those of a yarn of which no more can be had as they count in colouring. */
const shortOf = (fill: Fill | undefined, { input, needed }: Worked, taken: Taken): Grams =>
  needed.yarns.reduce((sum, need) => {
    const yarn = input.basis.yarns.find(({ id }) => id === need.id)
    const short = yarn ? takes(fill, need, taken) - limitOf(fill, yarn, taken) : 0
    const weight = yarn?.noMore && isWithinStash(fill) ? FIRM : 1
    return sum + (short > NO_GRAMS ? weight * short : 0)
  }, 0)

/**
 * Colours a blanket so that its yarns last: as it would be without them where they last anyway, else with what is
 * there for its motifs, of which there are so many `kinds`. Half motifs, joins and edging may follow the colours, so what they take is counted again. `before` says what there is of yarns that were weighed or counted meanwhile.
 */
export function withinYarns<Told extends Worked>(
  fill: Fill | undefined,
  kinds: number,
  tell: (stash: readonly YarnForMotifs[]) => Told,
  before: (told: Told) => Taken,
): Told & { readonly stash: readonly YarnForMotifs[]; readonly taken: Taken } {
  const first = tell(NO_STASH)
  const taken = isByYarn(fill) ? before(first) : NONE_TAKEN
  let best = { ...first, stash: NO_STASH, taken }
  if (!isByYarn(fill)) return best
  // Shares follow what there is, also where it would do.
  let least = isByStash(fill) ? Infinity : shortOf(fill, best, taken)
  let last = best
  for (let round = 0; round < ROUNDS && least > 0; round++) {
    const stash = yarnsForMotifs(fill, last.input, kinds, taken)
    if (round > 0 && isSame(stash, last.stash)) break
    last = { ...tell(stash), stash, taken }
    const short = shortOf(fill, last, taken)
    if (round > 0 && short >= least) continue
    best = last
    least = short
  }
  return best
}

const NO_STASH: readonly YarnForMotifs[] = []
const NONE_TAKEN: Taken = new Map()

const isSame = (one: readonly YarnForMotifs[], other: readonly YarnForMotifs[]): boolean =>
  one.length === other.length &&
  one.every(({ id, left }, at) => other[at]?.id === id && Math.abs(left - other[at].left) < NO_GRAMS)
