/**
 * Petals that take turns. Long and short ones make an outline that repeats half as often as it has petals, three kinds
 * a third as often, and petals that differ by chance may look the same; so what repeats is looked at once more, and
 * each of its tops that is parted from the next by a dip as deep as the others is a petal. A notch in a heart is not.
 */
import { extremesOf } from '../motif/extremes'
import { standing } from './comb'
import { BY_FAR, DIRECTIONS, ORDER } from './symmetry'
import type { Slits, Symmetry } from './symmetry'
import { evenedOut, meanOf, middleMean, spreadOf, tipsOf } from './tips'

/** Most kinds of petals that take turns. */
const MOST_KINDS = 4
/** Least height of a top over its dips, and the least depth of each dip, as shares of all that the reach goes in and out. */
const LEAST_TOP = 0.18
const LEAST_DIP = 0.62
/**
 * From this depth of their dips on, tops may be petals as well as lobes of one: nobody can tell by the line alone. Three
 * or more that stand evenly, nearly as far out each, are counted; by how much of an even distance and how far out.
 */
const MAYBE_DIP = 0.45
const EVENLY = { apart: 0.12, top: 0.85, least: 3 } as const
/** And the least that the shallowest dip is of the deepest. */
const ALIKE_DEEP = 0.85
/** Least distance of two tops, as a share of an even one. */
const LEAST_APART = 0.6
/** Tips that differ by less than this share are of petals alike, which differ by chance. */
const ALIKE = 0.03
/** Petals alike part alike: the least that the narrowest dip is of the widest, each at half its depth. */
const ALIKE_WIDE = 0.25
/** Share of the repeat over which the reach is evened out, so that stitches are no petals; most where they are coarse. */
const EVENED = 0.03
const MOST_EVENED = 0.12
const PLACES = 240
/** Share of what a repeat explains that a multiple of it does, from where on as many slits as that are petals. */
const FINER = 0.7

/** A symmetry by its petals: `order` is how many they are, `repeat` how often the outline repeats. */
export interface Petalled extends Symmetry {
  readonly repeat: number
  /** They were told apart within the repeat. */
  readonly within: boolean
  /** It may be another number: of lobes as of petals. */
  readonly doubtful: boolean
}

/** The mean reach over one repeat, from its first tip on; one bent petal does not count. */
export function repeatProfile({ reach, order, turn }: Symmetry, count: number): number[] {
  const each = DIRECTIONS / order
  const first = (turn / (2 * Math.PI)) * DIRECTIONS
  return Array.from({ length: count }, (_, at) =>
    middleMean(
      Array.from({ length: order }, (_, k) => {
        const place = Math.round(first + (k + at / count) * each)
        return reach[((place % DIRECTIONS) + DIRECTIONS) % DIRECTIONS]!
      }),
    ),
  )
}

/** Counts the petals: those within each repeat, unless slits say that these are the lobes of hearts. */
export function petalled(symmetry: Symmetry): Petalled {
  const counted = withinRepeat(symmetry)
  const { slits, spectrum, finer } = symmetry
  // Dips that are unlike by chance repeat more clearly than all do, but each of them has a slit behind it.
  const isMore =
    slits && counted.order > 0 && slits.order > counted.order && slits.order % counted.order === 0
  if (isMore && finer > FINER) return bySlits(symmetry, slits)
  if (!slits || counted.order <= slits.order || counted.order % slits.order !== 0) return counted
  // Lobes that only chance makes unlike show the finer repeat more clearly.
  if (standing(spectrum, slits.order) < standing(spectrum, counted.order)) return counted
  return bySlits(symmetry, slits)
}

const bySlits = (symmetry: Symmetry, slits: Slits): Petalled => ({
  ...symmetry,
  ...slits,
  ...{ repeat: slits.order, within: false, doubtful: false, hidden: true },
})

interface Tops {
  readonly profile: readonly number[]
  readonly high: number
  readonly low: number
  readonly tips: readonly number[]
  readonly dips: readonly number[]
}

/** The tops of one repeat and the dips between them; it is evened out more where they are more than petals can be. */
function topsOf(rough: readonly number[], share: number): Tops {
  const profile = evenedOut(rough, Math.round((share * PLACES) / 2))
  const [high, low] = [Math.max(...profile), Math.min(...profile)]
  const tops = extremesOf(profile, LEAST_TOP * (high - low))
  const isRough = tops.tips.length > MOST_KINDS && share < MOST_EVENED
  return isRough ? topsOf(rough, 2 * share) : { ...tops, profile, high, low }
}

/** How many places about one lie under a level. */
function widthAt(profile: readonly number[], at: number, level: number): number {
  let width = 1
  for (const way of [-1, 1])
    for (let by = 1; by < PLACES && profile[(at + way * by + PLACES) % PLACES]! < level; by++) width++
  return width
}

function withinRepeat(symmetry: Symmetry): Petalled {
  const { order, turn } = symmetry
  const plain = { ...symmetry, repeat: order, within: false, doubtful: false }
  if (order === 0) return plain
  const { profile, high, low, tips, dips } = topsOf(repeatProfile(symmetry, PLACES), EVENED)
  const kinds = tips.length
  if (kinds < 2 || kinds > MOST_KINDS || kinds * order > ORDER.most) return plain
  const widths = dips.map((dip) => widthAt(profile, dip, (profile[dip]! + high) / 2))
  if (Math.min(...widths) < ALIKE_WIDE * Math.max(...widths)) return plain
  const shallowest = Math.min(...dips.map((dip) => (high - profile[dip]!) / (high - low)))
  if (shallowest < MAYBE_DIP) return plain
  const apart = tips.map((tip, at) => (((tips[(at + 1) % kinds]! - tip) % PLACES) + PLACES) % PLACES)
  if (apart.some((each) => each < (LEAST_APART * PLACES) / kinds)) return plain
  const heights = tips.map((tip) => profile[tip]!)
  const doubtful = shallowest < LEAST_DIP
  const areEven =
    kinds >= EVENLY.least &&
    apart.every((each) => Math.abs((each * kinds) / PLACES - 1) <= EVENLY.apart) &&
    heights.every((height) => height - low >= EVENLY.top * (high - low))
  if (doubtful && !areEven) return { ...plain, doubtful }
  const isAlike = Math.max(...heights) - Math.min(...heights) < ALIKE * high
  // Every second dip of two that take turns mirrors the other: where tops are alike and they are not, it is a heart's notch.
  const isClearer = standing(symmetry.spectrum, order) > standing(symmetry.spectrum, kinds * order) + BY_FAR
  if (isAlike && kinds === 2 && shallowest < ALIKE_DEEP && isClearer) return plain
  const longest = tips[heights.indexOf(Math.max(...heights))]!
  return {
    ...symmetry,
    order: kinds * order,
    repeat: isAlike ? kinds * order : order,
    turn: turn + (2 * Math.PI * longest) / (PLACES * order),
    within: true,
    doubtful,
  }
}

/** Kinds of petals differ by so many times as much as petals of a kind do; those that were told apart, by so many at least. */
const KINDS_APART = { found: 4, kept: 3 } as const

/** How long petals are on average, by kinds that take turns. */
export const lengthsBy = (far: readonly number[], kinds: number): number[] =>
  Array.from({ length: kinds }, (_, kind) => meanOf(far.filter((__, petal) => petal % kinds === kind)))

/** How much petals of a kind differ, rms. */
export const spreadWithin = (far: readonly number[], lengths: readonly number[]): number =>
  spreadOf(far.map((each, petal) => each - lengths[petal % lengths.length]!))

/**
 * The same petals as kinds of them where long and short ones take turns, though all of them repeat more clearly; and as
 * all of one kind where those that were told apart differ no more than petals of a kind do.
 */
export function inTurns<Of extends Petalled>(symmetry: Of, blur: number): Of {
  const { order, repeat, turn } = symmetry
  if (order === 0) return symmetry
  const far = tipsOf(symmetry, blur).map((tip) => tip.far)
  if (repeat !== order) {
    const lengths = lengthsBy(far, order / repeat)
    const by = Math.max(...lengths) - Math.min(...lengths)
    return by < KINDS_APART.kept * spreadWithin(far, lengths) ? { ...symmetry, repeat: order } : symmetry
  }
  for (let kinds = 2; kinds <= MOST_KINDS && order >= kinds * ORDER.least; kinds++) {
    if (order % kinds !== 0) continue
    const lengths = lengthsBy(far, kinds)
    const longest = Math.max(...lengths)
    const by = longest - Math.min(...lengths)
    if (by < ALIKE * longest || by < KINDS_APART.found * spreadWithin(far, lengths)) continue
    const first = turn + (2 * Math.PI * lengths.indexOf(longest)) / order
    return { ...symmetry, repeat: order / kinds, within: true, turn: first }
  }
  return symmetry
}
