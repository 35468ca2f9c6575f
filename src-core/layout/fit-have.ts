/**
 * M26: arrangements from what there is: of motifs that are made already, or as large as the yarn on hand allows; and of
 * so many motifs as are wished for. All keep to the proportions that are asked for, else of the target size, or of the
 * blanket as it is.
 */
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { listed } from '../figures/words'
import { finding } from '../findings/finding'
import type { Planner } from '../plans/planner'
import { blanketOf } from '../plans/layouts'
import type { BlanketCounts } from './blanket'
import { MOST_MOTIFS, LEAST_ROUND } from './constants'
import { byHolding, judgedByPatch } from './candidates'
import type { Candidate, Rotation, Wish } from './candidates'
import { bestOf, countedOf, fitOf, laidIn, waysOf } from './fit'
import type { WaysThere } from './fit'
import { cutFrom, cutToCount, missOfCount, missOfCut } from './have-outline'
import type { CutFrom } from './have-outline'
import { looksWorth } from './looks'
import { judged } from './nearness'
import { byPiles, motifsIn, withPiles } from './piles'
import type { Piles } from './piles'
import { countPlaces } from './places'
import { isBegun } from '../progress/progress'
import { settled } from '../settled'
import { countsOf } from './standing'
import type { Kind, Tryout } from './trials'

/**
 * What there is to make an arrangement from: so many motifs (`piles`: of each colourway), or the yarn on hand; or `count`, how many motifs it is to
 * have, or the nearest number to it. In the proportions of `like`.
 */
export type Have = (
  { readonly motifs: number; readonly piles?: Piles } | { readonly stash: true } | { readonly count: number }
) & {
  readonly like?: Wish
}

interface Fits {
  readonly arrangements: FitArrangement[]
  readonly findings: readonly Finding[]
}

/** Grams that a rounding error may make. */
const NO_GRAMS = 1e-6

/** Outlines told of each arrangement. */
const CUT_EACH = 2

/** Arrangements tried in each kind and rotation, those that come nearest. */
const TRIED = 6

/** The best arrangements from what there is, those that hold first. */
export function fitHave(project: Project, have: Have, planner: Planner): Fits {
  if ('motifs' in have && have.piles) {
    const { piles, ...rest } = have
    const own = withPiles(project, piles)
    const { arrangements, findings } = fitHave(own, { ...rest, motifs: motifsIn(piles) }, planner)
    const told = byPiles(own, arrangements, piles, planner)
    return { arrangements: told.arrangements, findings: [...findings, ...told.findings] }
  }
  const wish = have.like ?? proportionsOf(project, planner)
  const ways = waysOf(project, wish, planner)
  if (!ways.layout) return { arrangements: [], findings: ways.findings }
  const { layout, tryout } = ways
  // What is made is not cut away.
  if (layout.outlineShape && !isBegun(project)) return cutOutFits(project, have, wish, ways, planner)
  if ('count' in have) {
    const count = Math.min(have.count, MOST_MOTIFS)
    const found = bestOf(layout, tryout, (kind, rotation) => ofCount(tryout, kind, rotation, wish, count))
    const told = found.map(({ counts, miss }) => {
      const laid = laidIn(project, counts)
      return { miss, fit: withMore(fitOf(counts, laid, countedOf(laid, planner), wish), have.count) }
    })
    return { arrangements: nearCount(sorted(told)), findings: ways.findings }
  }
  if ('motifs' in have) {
    const found = bestOf(layout, tryout, (kind, rotation) =>
      ofMotifs(tryout, kind, rotation, wish, have.motifs),
    )
    const told = found.map(({ counts, miss }) => {
      const laid = laidIn(project, counts)
      const fit = fitOf(counts, laid, countedOf(laid, planner), wish)
      return { miss, fit: { ...fit, left: have.motifs - fit.motifs } }
    })
    return { arrangements: sorted(told), findings: ways.findings }
  }
  const rich = withinStash(project)
  const stash = stashOf(rich, planner)
  if (!stash) return { arrangements: [], findings: [finding('layout/fit-no-yarn', 'yarns')] }
  // What is short for one motif is short for any number of them: nothing is tried.
  const short = shortForOne(rich, layout, planner)
  const found =
    short.length > 0
      ? []
      : bestOf(layout, tryout, (kind, rotation) => ofStash(tryout, kind, rotation, wish, stash))
  if (found.length === 0)
    return { arrangements: [], findings: [finding('layout/fit-stash', 'yarns', { yarns: listed(short) })] }
  const told = found.map(({ counts, miss }) => {
    return { miss, fit: fitOf(counts, laidIn(rich, counts), stash.told(counts), wish) }
  })
  return { arrangements: sorted(told), findings: ways.findings }
}

/** The same of what is cut out: its outline grows and shrinks, in each arrangement that the start would offer. */
function cutOutFits(
  project: Project,
  have: Have,
  wish: Wish,
  { layout, tryout, findings }: WaysThere,
  planner: Planner,
): Fits {
  const looks = looksWorth(tryout, settled(project).joining.rule, wish, layout)
  const laidAll = (of: Project) => looks.map(({ candidate }) => laidIn(of, candidate.counts))
  const told = (found: readonly CutFrom[], left?: number) => {
    const best = found.reduce((most, { motifs }) => Math.max(most, motifs), left ?? 0)
    return found.map((cut) => {
      const laid = cut.project
      const fit = fitOf(countsOf(laid)!, laid, countedOf(laid, planner), wish)
      return {
        miss: missOfCut(cut, best),
        fit: left === undefined ? fit : { ...fit, left: left - fit.motifs },
      }
    })
  }
  if ('count' in have) {
    const count = Math.min(have.count, MOST_MOTIFS)
    const cuts = laidAll(project).flatMap((laid) => cutToCount(laid, count, planner).slice(0, CUT_EACH))
    const all = cuts.map((cut) => {
      const laid = cut.project
      const fit = fitOf(countsOf(laid)!, laid, countedOf(laid, planner), wish)
      return { miss: missOfCount(cut, count), fit: withMore(fit, have.count) }
    })
    return { arrangements: nearCount(sorted(all)), findings }
  }
  if ('motifs' in have) {
    const most = Math.min(have.motifs, MOST_MOTIFS)
    const found = laidAll(project).flatMap((laid) =>
      cutFrom(laid, most, () => true, planner).slice(0, CUT_EACH),
    )
    return { arrangements: sorted(told(found, have.motifs)), findings }
  }
  const rich = withinStash(project)
  const stash = stashOf(rich, planner)
  if (!stash) return { arrangements: [], findings: [finding('layout/fit-no-yarn', 'yarns')] }
  const short = shortForOne(rich, layout, planner)
  const reaches = (laid: Project) => lasts(countedOf(laid, planner))
  // About so many at first; where they are too many for a yarn, fewer.
  const found =
    short.length > 0
      ? []
      : laidAll(rich).flatMap((laid) => {
          const most = largest(2, stash.motifs, (many) => {
            const [first] = cutFrom(laid, many, () => true, planner)
            return first !== undefined && reaches(first.project)
          })
          return most < 2 ? [] : cutFrom(laid, most, reaches, planner).slice(0, CUT_EACH)
        })
  if (found.length === 0)
    return { arrangements: [], findings: [finding('layout/fit-stash', 'yarns', { yarns: listed(short) })] }
  return { arrangements: sorted(told(found)), findings }
}

/** The names of yarns that are short for one motif. */
function shortForOne(project: Project, layout: BlanketLayout, planner: Planner): string[] {
  const one = { arrangement: 'straight-rows', columns: 1, rows: 1 } as const
  const { yarns } = planner.plan({ ...project, layout: { ...layout, ...blanketOf(project), ...one } })
  const short = yarns.filter(({ grams, onHand }) => grams.high > onHand + NO_GRAMS)
  return short.map(({ id }) => project.yarns?.find((yarn) => yarn.id === id)?.name ?? id)
}

const sorted = (told: readonly { readonly fit: FitArrangement; readonly miss: number }[]): FitArrangement[] =>
  told
    .map(({ fit, miss }) => ({ fit, miss, ...judged(fit) }))
    .sort(byHolding)
    .map(({ fit }) => fit)

/** The target size where there is one, else the size as it is, else a square. */
function proportionsOf(project: Project, planner: Planner): Wish {
  const { width, height } = blanketOf(project)?.target ?? {}
  if (width && height && width > 0 && height > 0) return { width, height }
  const size = planner.size(project)
  return size && size.width > 0 && size.height > 0 ? size : { width: 1000, height: 1000 }
}

/** The project with its colours chosen by the yarn on hand. */
export function withinStash(project: Project): Project {
  const layout = blanketOf(project)
  const fill = layout?.cells?.fill
  if (!layout || !fill || fill.withinStash) return project
  return {
    ...project,
    layout: { ...layout, cells: { ...layout.cells, fill: { ...fill, withinStash: true } } },
  }
}

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

const candidate = (tryout: Tryout, counts: BlanketCounts, miss: number): Candidate => ({
  counts,
  miss,
  ...judgedByPatch(tryout, counts),
})

/** Rectangles of at most so many motifs: what is left over counts as much as what is out of proportion. */
function ofMotifs(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, motifs: number): Candidate[] {
  const most = Math.min(motifs, MOST_MOTIFS)
  const found: { readonly counts: BlanketCounts; readonly miss: number }[] = []
  for (let across = leastAcross(kind); across <= most; across++) {
    const many = (rows: number): number => countPlaces(counted(kind, rotation, across, rows))
    let rows = Math.floor(most / Math.max(1, across))
    while (rows > 1 && many(rows) > most) rows--
    while (kind.arrangement !== 'rings' && many(rows + 1) <= most) rows++
    if (rows < 1 || many(rows) > most) break
    const counts = counted(kind, rotation, across, rows)
    const left = (motifs - countPlaces(counts)) / motifs
    found.push({ counts, miss: left + outOfProportion(tryout.size(counts), wish) })
  }
  found.sort((a, b) => a.miss - b.miss)
  return found.slice(0, TRIED).map(({ counts, miss }) => candidate(tryout, counts, miss))
}

/** What a motif more or fewer than asked for weighs against proportions that are out (ours). */
const MORE_OR_FEWER = 12

/** Rectangles of so many motifs, or the nearest number: how far off that is counts more than the proportions. */
function ofCount(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, count: number): Candidate[] {
  const found: { readonly counts: BlanketCounts; readonly miss: number }[] = []
  const isRings = kind.arrangement === 'rings'
  for (let across = leastAcross(kind); across <= Math.max(count, leastAcross(kind)); across++) {
    let rows = Math.max(1, Math.floor(count / Math.max(1, across)))
    const many = (of: number): number => countPlaces(counted(kind, rotation, across, of))
    while (!isRings && many(rows) < count) rows++
    while (!isRings && rows > 1 && many(rows - 1) >= count) rows--
    for (const each of isRings ? [1] : [rows - 1, rows]) {
      if (each < 1 || many(each) > MOST_MOTIFS) continue
      const counts = counted(kind, rotation, across, each)
      const off = Math.abs(many(each) - count) / count
      found.push({ counts, miss: MORE_OR_FEWER * off + outOfProportion(tryout.size(counts), wish) })
    }
    if (isRings && many(1) >= count) break
  }
  found.sort((a, b) => a.miss - b.miss)
  return found.slice(0, TRIED).map(({ counts, miss }) => candidate(tryout, counts, miss))
}

/** Shares of what was asked for by which fits may have more or fewer, while there are nearer ones (ours). */
const NEAR_COUNT = 0.1

/** Those that come near to a number of motifs; where none does, the nearest. */
function nearCount(fits: readonly FitArrangement[]): FitArrangement[] {
  const off = ({ more = 0 }: FitArrangement): number => Math.abs(more)
  const least = Math.min(...fits.map(off))
  return fits.filter((fit) => off(fit) <= Math.max(least, NEAR_COUNT * (fit.motifs - (fit.more ?? 0))))
}

/** A fit with how many motifs more it has than were asked for. */
const withMore = (fit: FitArrangement, count: number): FitArrangement => ({
  ...fit,
  more: fit.motifs - count,
})

/** The yarn on hand, asked whether it reaches for an arrangement. */
interface Stash {
  readonly reaches: (counts: BlanketCounts) => boolean
  /** What an arrangement comes to. */
  readonly told: (counts: BlanketCounts) => PlanNumbers
  /** About how many motifs it makes. */
  readonly motifs: number
}

/** The yarn on hand; null where it is not known what motifs take. */
function stashOf(project: Project, planner: Planner): Stash | null {
  const told = (counts?: BlanketCounts): PlanNumbers =>
    countedOf(counts ? laidIn(project, counts) : project, planner)
  const now = told()
  const [need, have] = [
    now.yarns.reduce((sum, { grams }) => sum + grams.high, 0),
    now.yarns.reduce((sum, { onHand }) => sum + onHand, 0),
  ]
  if (!(need > 0) || now.motifs.length === 0) return null
  // Each is asked about a plan of its own: once is enough.
  const known = new Map<string, PlanNumbers>()
  const toldOnce = (counts: BlanketCounts): PlanNumbers => {
    const name = Object.values(counts).join()
    const answer = known.get(name) ?? told(counts)
    known.set(name, answer)
    return answer
  }
  return {
    motifs: Math.max(1, Math.min(MOST_MOTIFS, Math.floor((now.motifs.length * have) / need))),
    told: toldOnce,
    reaches: (counts) => lasts(toldOnce(counts)),
  }
}

/** Whether nothing is to be bought: what was weighed again lasts by its forecast, all else by what is on hand. */
const lasts = ({ yarns, progress }: PlanNumbers): boolean =>
  yarns.every(({ id, grams, onHand }) => {
    const weighed = progress.forecast.find(({ yarn }) => yarn === id)
    return weighed ? weighed.missing <= NO_GRAMS : grams.high <= onHand + NO_GRAMS
  })

/** The largest number from `least` to `most` that something reaches for, if it reaches for all less; else `least` − 1. */
function largest(least: number, most: number, reaches: (number: number) => boolean): number {
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
function ofStash(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish, stash: Stash): Candidate[] {
  const isRings = kind.arrangement === 'rings'
  const least = leastAcross(kind)
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
  let across = least
  while (countPlaces(at(across + 1, rowsFor(across + 1))) <= stash.motifs) across++
  across = Math.max(
    least,
    largest(least, across, (each) => reaches(each, rowsFor(each))),
  )
  while (reaches(across + 1, rowsFor(across + 1))) across++
  const found: Candidate[] = []
  for (const columns of isRings ? [across] : [across, across + 1]) {
    let rows = largest(1, rowsFor(columns), (each) => reaches(columns, each))
    if (rows === 0) continue
    while (!isRings && reaches(columns, rows + 1)) rows++
    const size = tryout.size(at(columns, rows))
    // The largest piece of the wished proportions that lies within it.
    const scale = Math.min(size.width / wish.width, size.height / wish.height)
    found.push(candidate(tryout, at(columns, rows), 1 / scale))
  }
  return found
}
