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
import { MOST_MOTIFS } from './constants'
import { byHolding, evenTurn } from './candidates'
import { closingOnesFirst } from './closing'
import { withStops } from './fit-stops'
import { countPlaces } from './places'
import type { Wish } from './candidates'
import { bestOf, countedOf, fitOf, laidIn, waysOf } from './fit'
import type { WaysThere } from './fit'
import { cutFrom, cutToCount, missOfCount, missOfCut } from './have-outline'
import type { CutFrom } from './have-outline'
import { largest, missOfHave, ofCount, ofMotifs, ofStash } from './have-counts'
import type { Stash } from './have-counts'
import { looksWorth } from './looks'
import { differentOf, forChild, judged, toCloseOf } from './nearness'
import { byPiles, motifsIn, withPiles } from './piles'
import type { Piles } from './piles'
import { missingOf } from '../materials/no-more'
import { heldAgainst } from '../progress/held-against'
import { isBegun } from '../progress/progress'
import { settled } from '../settled'
import { countsOf } from './standing'

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
  const { layout, tryout, leavesOf } = ways
  // What is made is not cut away.
  if (layout.outlineShape && !isBegun(project)) return cutOutFits(project, have, wish, ways, planner)
  if ('count' in have) {
    const count = Math.min(have.count, MOST_MOTIFS)
    const found = bestOf(ways, (kind, rotation) => ofCount(tryout, kind, rotation, wish, count))
    const told = found.map(({ counts, off }) => {
      const laid = laidIn(project, counts)
      return { off, fit: withMore(fitOf(counts, laid, countedOf(laid, planner), wish, leavesOf), have.count) }
    })
    return { arrangements: nearCount(sorted(told, ways)), findings: ways.findings }
  }
  if ('motifs' in have) {
    const found = bestOf(ways, (kind, rotation) => ofMotifs(tryout, kind, rotation, wish, have.motifs))
    const told = found.map(({ counts, off }) => {
      const laid = laidIn(project, counts)
      const fit = fitOf(counts, laid, countedOf(laid, planner), wish, leavesOf)
      return { off, fit: { ...fit, left: have.motifs - fit.motifs } }
    })
    return { arrangements: sorted(told, ways), findings: ways.findings }
  }
  const rich = withinStash(project)
  const stash = stashOf(rich, planner)
  if (!stash) return { arrangements: [], findings: [finding('layout/fit-no-yarn', 'yarns')] }
  // What is short for one motif is short for any number of them: nothing is tried.
  const short = shortForOne(rich, layout, planner)
  const found =
    short.length > 0 ? [] : bestOf(ways, (kind, rotation) => ofStash(tryout, kind, rotation, wish, stash))
  if (found.length === 0)
    return { arrangements: [], findings: [finding('layout/fit-stash', 'yarns', { yarns: listed(short) })] }
  const told = found.map(({ counts, off }) => {
    return { off, fit: fitOf(counts, laidIn(rich, counts), stash.told(counts), wish, leavesOf) }
  })
  const stopped = withStops(rich, keptTo(project, rich, sorted(told, ways)), stash.told, (changed, like) => {
    const own = stashOf(changed, planner)
    const most = own ? ofStash(tryout, like, like, wish, own) : []
    return Math.max(0, ...most.map(({ counts }) => countPlaces(counts)))
  })
  return { arrangements: stopped, findings: ways.findings }
}

/** The same of what is cut out: its outline grows and shrinks, in each arrangement that the start would offer. */
function cutOutFits(project: Project, have: Have, wish: Wish, ways: WaysThere, planner: Planner): Fits {
  const { layout, tryout, leavesOf, findings } = ways
  const looks = looksWorth(tryout, settled(project).joining.rule, wish, layout)
  const laidAll = (of: Project) => looks.map(({ candidate }) => laidIn(of, candidate.counts))
  const told = (found: readonly CutFrom[], left?: number) => {
    const best = found.reduce((most, { motifs }) => Math.max(most, motifs), left ?? 0)
    return found.map((cut) => {
      const laid = cut.project
      const fit = fitOf(countsOf(laid)!, laid, countedOf(laid, planner), wish, leavesOf)
      return {
        off: missOfCut(cut, best),
        fit: left === undefined ? fit : { ...fit, left: left - fit.motifs },
      }
    })
  }
  if ('count' in have) {
    const count = Math.min(have.count, MOST_MOTIFS)
    const cuts = laidAll(project).flatMap((laid) => cutToCount(laid, count, planner).slice(0, CUT_EACH))
    const all = cuts.map((cut) => {
      const laid = cut.project
      const fit = fitOf(countsOf(laid)!, laid, countedOf(laid, planner), wish, leavesOf)
      return { off: missOfCount(cut, count), fit: withMore(fit, have.count) }
    })
    return { arrangements: nearCount(sorted(all, ways)), findings }
  }
  if ('motifs' in have) {
    const most = Math.min(have.motifs, MOST_MOTIFS)
    const found = laidAll(project).flatMap((laid) =>
      cutFrom(laid, most, () => true, planner).slice(0, CUT_EACH),
    )
    return { arrangements: sorted(told(found, have.motifs), ways), findings }
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
  return { arrangements: keptTo(project, rich, sorted(told(found), ways)), findings }
}

/** Fits that were counted within the yarn on hand say so where the project is not. */
const keptTo = (project: Project, rich: Project, fits: readonly FitArrangement[]): FitArrangement[] =>
  fits.map((fit) => (rich === project ? fit : { ...fit, withinStash: true }))

/** The names of yarns that are short for one motif. */
function shortForOne(project: Project, layout: BlanketLayout, planner: Planner): string[] {
  const one = { arrangement: 'straight-rows', columns: 1, rows: 1 } as const
  const { yarns } = planner.plan({ ...project, layout: { ...layout, ...blanketOf(project), ...one } })
  const short = yarns.filter(({ grams, onHand }) => missingOf(grams.high, onHand) > 0)
  return short.map(({ id }) => project.yarns?.find((yarn) => yarn.id === id)?.name ?? id)
}

/** The best first, without those in which two alike meet where a round closes, if any comes out even. */
function sorted(
  told: readonly { readonly fit: FitArrangement; readonly off: number }[],
  { tryout, layout, leavesOf }: Pick<WaysThere, 'tryout' | 'layout' | 'leavesOf'>,
): FitArrangement[] {
  const turn = evenTurn(tryout, layout)
  const isEven = ({ fit }: { readonly fit: FitArrangement }) => fit.columns % turn === 0
  const offered = told.some(isEven) ? told.filter(isEven) : told
  const fits = offered
    .map(({ fit, off }) => ({ fit, miss: missOfHave(off, fit.wide), ...judged(fit) }))
    .sort(byHolding)
    .map(({ fit }) => fit)
  const different = differentOf(fits)
  return forChild(leavesOf ? closingOnesFirst(different, (fit) => toCloseOf(fit)) : different)
}

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

/** The same, and what an arrangement comes to. */
interface StashOfProject extends Stash {
  readonly told: (counts: BlanketCounts) => PlanNumbers
}

/** The yarn on hand; null where it is not known what motifs take. */
function stashOf(project: Project, planner: Planner): StashOfProject | null {
  const told = (counts?: BlanketCounts): PlanNumbers =>
    countedOf(counts ? laidIn(project, counts) : project, planner)
  const now = told()
  const [need, have] = [
    now.yarns.reduce((sum, { grams }) => sum + grams.high, 0),
    now.yarns.reduce((sum, { id, grams, onHand }) => {
      const { need, there } = heldAgainst({ id, grams, onHand }, now.progress)
      // What was used is in the need of the whole.
      return sum + Math.max(0, there + grams.high - need)
    }, 0),
  ]
  if (!(need > 0) || now.motifs.length === 0) return null
  // Each is asked about a plan of its own: once is enough.
  const known = new Map<string, PlanNumbers>()
  const toldOnce = (counts: BlanketCounts): PlanNumbers => {
    const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = counts
    const name = [arrangement, columns, rows, rings, alternateRows, turn, alternateTurn].join()
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

/** Whether nothing is to be bought: what was weighed or counted again lasts by its forecast, all else by what is on hand. */
const lasts = ({ yarns, progress }: PlanNumbers): boolean =>
  yarns.every(({ id, grams, onHand, noMore }) => {
    const weighed = progress.forecast.find(({ yarn }) => yarn === id)
    return weighed
      ? weighed.missing <= NO_GRAMS && !(noMore && weighed.tight)
      : missingOf(grams.high, onHand) === 0
  })
