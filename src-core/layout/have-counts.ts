/**
 * M26: counts of a kind in a rotation that so many motifs, or the yarn on hand, allow, those first that leave least over
 * and keep to the proportions asked for.
 */
import type { WideGaps } from '../../shared-types/plan'
import type { BlanketCounts } from './blanket'
import { MOST_MOTIFS, LEAST_ROUND } from './constants'
import { evenTurn, judgedByPatch } from './candidates'
import type { Candidate, Rotation, Wish } from './candidates'
import { countPlaces } from './places'
import type { Kind, Tryout } from './trials'

/** Arrangements tried in each kind and rotation, those that come nearest. */
const TRIED = 6

/** What some gaping join points weigh against motifs that stay over and proportions that are out (ours). */
const SOME_GAPE = 0.1

/** What speaks against an arrangement: how far off it is, as a share, and that some of its join points gape. */
export const missOfHave = (off: number, wide: WideGaps | null | undefined): number =>
  off + (wide ? SOME_GAPE : 0)

/** How far a size is from the proportions of another: 0 where it has them, near 1 for a strip. */
function outOfProportion(size: Wish, wish: Wish): number {
  const ratio = ((size.width / size.height) * wish.height) / wish.width
  return 1 - Math.min(ratio, 1 / ratio)
}

/** Counts of a kind that one number of columns, or rings, can have. */
function counted(kind: Kind, rotation: Rotation, across: number, rows: number): BlanketCounts {
  return kind.arrangement === 'rings'
    ? { inTheRound: false, ...kind, ...rotation, alternateTurn: 0, columns: 0, rows: 0, rings: across }
    : { inTheRound: false, ...kind, ...rotation, columns: across, rows, rings: 0 }
}

/** Rows with one motif fewer have two at least, rounds three. */
const leastAcross = ({ arrangement, alternateRows, inTheRound }: Kind): number =>
  inTheRound
    ? LEAST_ROUND
    : arrangement === 'rings'
      ? 0
      : arrangement === 'offset-rows' && alternateRows === 'oneFewer'
        ? 2
        : 1

/** A candidate and how far off it is, as a share, whatever its join points do. */
interface HaveCandidate extends Candidate {
  readonly off: number
}

const candidate = (tryout: Tryout, counts: BlanketCounts, off: number): HaveCandidate => ({
  ...{ counts, off },
  miss: missOfHave(off, tryout.trials.of(counts).wide),
  ...judgedByPatch(tryout, counts),
})

/** Numbers in a row by which a kind is tried, in order: those that come out even where it closes; all, if none does. */
function acrossEvenly<Found>(tryout: Tryout, kind: Kind, tried: (each: AcrossSteps) => Found[]): Found[] {
  const step = evenTurn(tryout, kind)
  const least = leastAcross(kind)
  const even = tried({ least: step * Math.ceil(least / step), step })
  return even.length > 0 || step === 1 ? even : tried({ least, step: 1 })
}

interface AcrossSteps {
  readonly least: number
  readonly step: number
}

/** Rectangles of at most so many motifs: what is left over counts as much as what is out of proportion. */
export const ofMotifs = (tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, motifs: number) =>
  acrossEvenly(tryout, kind, ({ least, step }) => {
    const most = Math.min(motifs, MOST_MOTIFS)
    const found: { readonly counts: BlanketCounts; readonly off: number }[] = []
    for (let across = least; across <= most; across += step) {
      const many = (rows: number): number => countPlaces(counted(kind, rotation, across, rows))
      let rows = Math.floor(most / Math.max(1, across))
      while (rows > 1 && many(rows) > most) rows--
      while (kind.arrangement !== 'rings' && many(rows + 1) <= most) rows++
      if (rows < 1 || many(rows) > most) break
      const counts = counted(kind, rotation, across, rows)
      const left = (motifs - countPlaces(counts)) / motifs
      found.push({ counts, off: left + outOfProportion(tryout.size(counts), wish) })
    }
    found.sort((a, b) => a.off - b.off)
    return found.slice(0, TRIED).map(({ counts, off }) => candidate(tryout, counts, off))
  })

/** What a motif more or fewer than asked for weighs against proportions that are out (ours). */
const MORE_OR_FEWER = 12

/** Rectangles of so many motifs, or the nearest number: how far off that is counts more than the proportions. */
export const ofCount = (tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, count: number) =>
  acrossEvenly(tryout, kind, ({ least, step }) => {
    const found: { readonly counts: BlanketCounts; readonly off: number }[] = []
    const isRings = kind.arrangement === 'rings'
    for (let across = least; across <= Math.max(count, least); across += step) {
      let rows = Math.max(1, Math.floor(count / Math.max(1, across)))
      const many = (of: number): number => countPlaces(counted(kind, rotation, across, of))
      while (!isRings && many(rows) < count) rows++
      while (!isRings && rows > 1 && many(rows - 1) >= count) rows--
      for (const each of isRings ? [1] : [rows - 1, rows]) {
        if (each < 1 || many(each) > MOST_MOTIFS) continue
        const counts = counted(kind, rotation, across, each)
        const astray = Math.abs(many(each) - count) / count
        found.push({ counts, off: MORE_OR_FEWER * astray + outOfProportion(tryout.size(counts), wish) })
      }
      if (isRings && many(1) >= count) break
    }
    found.sort((a, b) => a.off - b.off)
    return found.slice(0, TRIED).map(({ counts, off }) => candidate(tryout, counts, off))
  })

/** The yarn on hand, asked whether it reaches for an arrangement. */
export interface Stash {
  readonly reaches: (counts: BlanketCounts) => boolean
  /** About how many motifs it makes. */
  readonly motifs: number
}

/** The largest number from `least` to `most` that something reaches for, if it reaches for all less; else `least` − 1. */
export function largest(least: number, most: number, reaches: (number: number) => boolean): number {
  let [known, beyond] = [least - 1, most + 1]
  // Where it starts is a good guess: steps away from it double until one reaches.
  for (let step = 1; beyond - known > 1; step *= 2) {
    const next = known < least ? Math.max(least, beyond - step) : Math.floor((known + beyond) / 2)
    if (reaches(next)) known = next
    else beyond = next
  }
  return known
}

/** The largest of one kind in one rotation: near the proportions, and with a row or column more or fewer. */
export const ofStash = (tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, stash: Stash) =>
  acrossEvenly(tryout, kind, ({ least, step }) => {
    const isRings = kind.arrangement === 'rings'
    const at = (across: number, rows: number): BlanketCounts => counted(kind, rotation, across, rows)
    const rowsFor = (across: number): number => {
      if (isRings) return 1
      const [few, more] = [tryout.size(at(across, 3)), tryout.size(at(across, 5))]
      const each = (more.height - few.height) / 2
      const wished = (few.width * wish.height) / wish.width
      return Math.max(1, Math.round(3 + (wished - few.height) / each))
    }
    const reaches = (across: number, rows: number): boolean =>
      across >= least &&
      rows >= 1 &&
      countPlaces(at(across, rows)) <= MOST_MOTIFS &&
      stash.reaches(at(across, rows))
    // In whole turns of `step`.
    let turns = 0
    const numberOf = (many: number) => least + many * step
    const sidesOf = (many: number) => [numberOf(many), rowsFor(numberOf(many))] as const
    while (countPlaces(at(...sidesOf(turns + 1))) <= stash.motifs) turns++
    turns = Math.max(
      0,
      largest(0, turns, (each) => reaches(...sidesOf(each))),
    )
    while (reaches(...sidesOf(turns + 1))) turns++
    const found: HaveCandidate[] = []
    for (const columns of (isRings ? [turns] : [turns, turns + 1]).map(numberOf)) {
      let rows = largest(1, rowsFor(columns), (each) => reaches(columns, each))
      if (rows === 0) continue
      while (!isRings && reaches(columns, rows + 1)) rows++
      const size = tryout.size(at(columns, rows))
      // The largest piece of the wished proportions that lies within it, by its area.
      const scale = Math.min(size.width / wish.width, size.height / wish.height)
      found.push(candidate(tryout, at(columns, rows), -2 * Math.log(scale)))
    }
    return found
  })
