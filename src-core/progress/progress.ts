/** How far a work has come: what is made, what is left of it, how far the weighed yarn goes, and day by day. */
import type { Finding } from '../../shared-types/finding'
import type {
  DayOfWork,
  JoinedAs,
  Marks,
  Plan,
  Progress,
  Range,
  YarnLeft,
  YarnNeed,
} from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { addressWords } from '../layout/addresses'
import { materials } from '../materials/materials'
import { countedAt } from '../materials/on-hand'
import { add, spread } from '../materials/range'
import { stillToBuy } from '../materials/still-to-buy'
import { forecastYarns } from './forecast'
import { isMarked, readMarks } from './marks'
import type { Marking } from './marks'
import { kindsOf } from './supply'
import { leftOf } from './work'
import type { Work } from './work'

/** What is told of the progress in a plan. */
export interface ToldProgress {
  readonly progress: Progress
  readonly marks: Marks
  /** The yarn of the whole work; what is still to be bought of what was weighed again follows its forecast. */
  readonly yarns: readonly YarnNeed[]
  readonly findings: readonly Finding[]
}

const NO_MARKS: Marks = { made: [], joined: [] }
const NONE: readonly never[] = []

/** The progress of a project of which nothing is marked or weighed again: all of it is left. */
export const notBegun = (
  needed: Pick<Plan, 'yarns' | 'ends' | 'minutes'>,
  left: { readonly motifs: number; readonly others?: number; readonly joins?: number },
  joinedAs: JoinedAs,
): ToldProgress => ({
  progress: {
    ...{ made: 0, joined: 0, joinedAs, others: 0, edging: false },
    left: {
      ...{ motifs: left.motifs, others: left.others ?? 0, joins: left.joins ?? 0 },
      ...timeOf(needed.minutes),
      ends: needed.ends,
      yarns: needed.yarns.map(yarnLeft),
    },
    forecast: NONE,
    days: NONE,
  },
  marks: NO_MARKS,
  yarns: needed.yarns,
  findings: NONE,
})

const timeOf = (minutes: Range | null) => ({ hours: minutes && minutes.expected / 60, minutes })
const yarnLeft = ({ id, grams, metres, parts }: YarnNeed): YarnLeft => ({ id, grams, metres, parts })

/** Whether a project says anything of its progress: marks, or yarn weighed or counted while it is made. */
export const isBegun = (project: Pick<Project, 'made' | 'joined' | 'yarns'>): boolean =>
  isMarked(project) || (project.yarns ?? NONE).some((yarn) => yarn.left !== undefined || countedAt(yarn) > 0)

/** The progress of a work; `needs` is the yarn of the whole of it. */
export function tellProgress(project: Settled, work: Work, needs: readonly YarnNeed[]): ToldProgress {
  const marking = readMarks(project, work)
  const { pieces } = work
  const { isMade, isJoined, isJoinedOn, edging } = marking
  const isWhole = (piece: number): boolean => pieces[piece]!.kind === 'motif'
  const all = pieces.map((_, i) => i)
  const made = all.filter(isMade)
  const open = all.filter((piece) => !isMade(piece))
  const unjoined = all.filter((piece) => !isJoined(piece))
  const needed = materials(leftOf(work, { isMade, isJoined, edging }))
  const sewing = unjoined.reduce((sum, piece) => sum + (pieces[piece]!.sewing ?? 0), 0)
  const minutes = needed.minutes && add(needed.minutes, spread(sewing, work.sewingSpread ?? 0))
  const { forecast, findings } = forecastYarns(work, marking, needs)
  const ids = (some: readonly number[]): string[] => some.map((piece) => pieces[piece]!.id)
  const joined = made.filter(isJoinedOn)
  return {
    progress: {
      made: made.filter(isWhole).length,
      joined: joined.filter(isWhole).length,
      joinedAs: work.joinedAs,
      others: made.length - made.filter(isWhole).length,
      edging,
      left: {
        motifs: open.filter(isWhole).length,
        others: open.length - open.filter(isWhole).length,
        joins: joinsLeft(work, unjoined),
        ...timeOf(minutes),
        ends: needed.ends,
        yarns: needed.yarns.map(yarnLeft),
      },
      forecast,
      days: daysOf(marking),
      ...kindsCounted(project, work, marking),
    },
    marks: { made: ids(made), joined: ids(joined) },
    yarns: stillToBuy(afterMade(project, work, marking, needs, needed.yarns), forecast, project.yarns),
    findings: [...marking.findings, ...otherMotif(project, work, marking), ...findings],
  }
}

/**
 * What is still to be bought. Made on no known day, before it was laid out, a motif has its yarn in it: it takes none
 * of what is on hand. Made since, it was worked from what was on hand at the beginning, and what it took beyond that
 * has been bought: the rest takes what is left on hand, and no more is to be bought than the rest takes in all.
 */
function afterMade(
  { yarns }: Settled,
  work: Work,
  { days, edging }: Marking,
  needs: readonly YarnNeed[],
  left: readonly YarnNeed[],
): readonly YarnNeed[] {
  if (days.size === 0 && !edging) return needs
  const before = (piece: number): boolean => days.get(piece) === ''
  const nobody = (): boolean => false
  const since = [...days.keys()].some(before)
    ? materials(leftOf(work, { isMade: before, isJoined: nobody, edging: false })).yarns
    : needs
  return needs.map((need) => {
    const all = since.find(({ id }) => id === need.id)
    const rest = left.find(({ id }) => id === need.id)
    const yarn = yarns.find(({ id }) => id === need.id)
    if (need.noMore) {
      const missing = Math.min(all?.noMore?.missing ?? 0, rest?.grams.high ?? 0)
      return { ...need, noMore: { missing }, leftover: all ? all.leftover : need.onHand }
    }
    if (need.toBuy === null || rest?.balls === null) return need
    const { toBuy, leftover, cost } = all ?? { toBuy: 0, leftover: need.onHand, cost: 0 }
    const balls = rest?.balls ?? 0
    if (toBuy === null || toBuy <= balls)
      return { ...need, toBuy, leftover, cost: need.cost === null ? null : cost }
    return {
      ...need,
      toBuy: balls,
      leftover: balls * (yarn?.ballGrams ?? 0) - (rest?.grams.expected ?? 0),
      cost: need.cost === null ? null : balls * (yarn?.price ?? 0),
    }
  })
}

/** What was made when a yarn was counted or weighed again: numbers alone say no more where all are whole motifs. */
function kindsCounted({ yarns }: Settled, work: Work, marking: Marking): Pick<Progress, 'kinds'> {
  if (work.pieces.every(({ kind }) => kind === 'motif')) return {}
  const counts = yarns.flatMap((yarn) => [countedAt(yarn), yarn.left?.at ?? 0]).filter((at) => at > 0)
  if (counts.length === 0) return {}
  return { kinds: Object.fromEntries(counts.map((at) => [at, kindsOf(work, marking, at)])) }
}

/** Join points at which something is still to be joined. */
function joinsLeft({ pieces, joinPoints }: Work, unjoined: readonly number[]): number {
  if (!joinPoints) return unjoined.reduce((sum, piece) => sum + pieces[piece]!.joins, 0)
  const open = new Set(unjoined)
  return joinPoints.filter((members) => members.some((piece) => open.has(piece))).length
}

/** Day by day; what was made on no known day comes first. */
function daysOf({ made, days }: Marking): DayOfWork[] {
  const counts = new Map<string, number>()
  for (const piece of made) {
    const day = days.get(piece) ?? ''
    counts.set(day, (counts.get(day) ?? 0) + 1)
  }
  return [...counts].map(([day, pieces]) => ({ day, pieces }))
}

/** Made in a colourway of another motif than is laid out now: nobody makes one from the other. */
function otherMotif(project: Settled, { pieces, input }: Work, { made }: Marking): Finding[] {
  const groups = [...(input.motif ? [input] : []), ...(input.others ?? [])].map(({ motif }) => motif)
  const ways = new Map(project.colourways.map((way) => [way.id, way]))
  const wrong = made.filter((piece) => {
    const { group, colourway } = pieces[piece]!
    const own = ways.get(colourway)?.motif
    return own !== undefined && own !== groups[group]?.id
  })
  const first = pieces[wrong[0] ?? -1]
  if (!first) return []
  const motif = groups[first.group]
  const cells = wrong.map((piece) => pieces[piece]!.id)
  const values = {
    count: wrong.length,
    motif: motif?.name ?? motif?.id ?? '',
    places: addressWords(
      cells,
      pieces.map(({ id }) => id),
    ),
  }
  return [finding('progress/other-motif', 'made', values, { cells })]
}
