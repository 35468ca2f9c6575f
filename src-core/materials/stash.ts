/**
 * M46: what there is of each yarn for the motifs of a blanket, so that colours can be chosen by it. The account of
 * materials is asked what motifs take, joins, edging, fillers and halves included: there is one account of yarn.
 */
import type { YarnForMotifs } from '../../shared-types/plan'
import type { BlanketLayout, Yarn } from '../../shared-types/project'
import { isByStash, isByYarn } from '../colour/limits'
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

/** Grams used of a yarn before it was counted, by its id. */
export type Taken = ReadonlyMap<string, Grams>

/**
 * The most grams that the whole may take of a yarn: of what is on hand and was taken before that was counted. Infinity
 * where there is no limit.
 */
export function limitOf(fill: Fill | undefined, yarn: Yarn, taken?: Taken): Grams {
  const most = fill?.mostGrams?.[yarn.id]
  const isWithin = fill?.withinStash === true || isByStash(fill)
  return Math.min(
    isWithin ? gramsOnHand(yarn) + (taken?.get(yarn.id) ?? 0) : Infinity,
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
    return new Map(yarns.map((need) => [need.id, need.grams.high]))
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
    const isTaken = [each, ...eachFurther].some((takes) =>
      Object.values(takes).some((taken) => taken > NO_GRAMS),
    )
    if (limit === Infinity || !isTaken || !isKnown) return []
    const rest = 2 * of(one, yarn.id) - of(two, yarn.id)
    const found = {
      ...{ id: yarn.id, name: yarn.name ?? yarn.id, left: limit - rest, each },
      ...(further.length > 0 && { others: eachFurther }),
    }
    const moves = rests.some((other) => Math.abs(other(yarn.id) - rest) > NO_GRAMS)
    return [followsColours || moves ? { ...found, isShared: true as const } : found]
  })
}

/** Grams beyond the limits of a fill. */
const shortOf = (fill: Fill | undefined, { input, needed }: Worked, taken: Taken): Grams =>
  needed.yarns.reduce((sum, need) => {
    const yarn = input.basis.yarns.find(({ id }) => id === need.id)
    const short = yarn ? need.grams.high - limitOf(fill, yarn, taken) : 0
    return sum + (short > NO_GRAMS ? short : 0)
  }, 0)

/**
 * Colours a blanket so that its yarns last: as it would be without them where they last anyway, else with what is
 * there for its motifs, of which there are so many `kinds`. Half motifs, joins and edging may follow the colours, so what they take is counted again. `before` says what was used before yarns were counted.
 */
export function withinYarns<Told extends Worked>(
  fill: Fill | undefined,
  kinds: number,
  tell: (stash: readonly YarnForMotifs[]) => Told,
  before: (told: Told) => Taken,
): Told & { readonly stash: readonly YarnForMotifs[] } {
  let best = { ...tell(NO_STASH), stash: NO_STASH }
  if (!isByYarn(fill)) return best
  const taken = before(best)
  // Shares follow what there is, also where it would do.
  let least = isByStash(fill) ? Infinity : shortOf(fill, best, taken)
  let last = best
  for (let round = 0; round < ROUNDS && least > 0; round++) {
    const stash = yarnsForMotifs(fill, last.input, kinds, taken)
    if (round > 0 && isSame(stash, last.stash)) break
    last = { ...tell(stash), stash }
    const short = shortOf(fill, last, taken)
    if (round > 0 && short >= least) continue
    best = last
    least = short
  }
  return best
}

const NO_STASH: readonly YarnForMotifs[] = []

const isSame = (one: readonly YarnForMotifs[], other: readonly YarnForMotifs[]): boolean =>
  one.length === other.length &&
  one.every(({ id, left }, at) => other[at]?.id === id && Math.abs(left - other[at].left) < NO_GRAMS)
