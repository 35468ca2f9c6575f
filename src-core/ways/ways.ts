/**
 * M29: ways to a size: one thing that is changed, by itself or with the counts that come nearest then, and two where one
 * does not come near enough. Candidates are
 * compared by their size alone; only the best of each kind are planned. Ranked by how near they come in whole mm, then
 * by how little they change: fewer things, then less yarn.
 */
import type { Finding } from '../../shared-types/finding'
import type { Plan, PlanNumbers } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { SizeWay, WayKind, WishedSize } from '../../shared-types/ways'
import { isBegun } from '../progress/progress'
import { isAssumed } from '../figures/yarn-words'
import { capital, rowsOfUpTo } from '../figures/words'
import { CHILD_OPENING } from '../joins/constants'
import { closedForChild, isForHands } from '../joins/for-child'
import { holds } from '../joins/holding'
import { nearest } from '../layout/candidates'
import { waysOf } from '../layout/fit'
import { countPlaces } from '../layout/places'
import { rowsStanding } from '../layout/standing'
import type { Tryout } from '../layout/trials'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { settled } from '../settled'
import { isUsableOrZero } from '../units/usable'
import { keepsMade, slidesOf, stepsOf, withCounts } from './changes'
import type { Change } from './changes'
import { WAYS } from './constants'
import { differences, withEdit } from './edit'
import { errorOf, offBy } from './size'
import { outlineSteps } from './outline'
import type { Size } from './size'
import { countWay, fabricWords } from './words'

export interface WaysToSize {
  readonly ways: readonly SizeWay[]
  readonly findings: readonly Finding[]
}

type Counts = Tryout['counts']
type Told = Plan | PlanNumbers

/** What may be planned: changes, one after the other, and counts. */
interface Candidate {
  readonly changes: readonly Change[]
  readonly counts: Counts
  readonly isRecounted: boolean
  readonly off: number
  /** Motifs more or fewer. */
  readonly more: number
}

/** The ways to a size in mm, the nearest first; findings say why there are none. */
export function waysToSize(project: Project, wish: WishedSize, planner: Planner): WaysToSize {
  const present = planner.size(project)
  const whole = {
    width: wish.width ?? present?.width ?? NaN,
    height: wish.height ?? present?.height ?? NaN,
  }
  // A project that cannot be planned says so itself.
  if (!present && (wish.width === undefined || wish.height === undefined))
    return { ways: [], findings: planner.plan(project).findings.filter(isError) }
  const { layout, findings } = waysOf(project, whole, planner)
  const tryout = layout && planner.tryout(project)
  if (!tryout)
    return { ways: [], findings: layout ? planner.plan(project).findings.filter(isError) : findings }
  const now = tellOf(project, planner)
  const isHeld = now.motifs.length > 1 && holds(now)
  const before = offBy(now.size, wish)
  const found = worthIt(candidatesOf({ project, wish, whole, tryout, planner, isHeld }))
    .filter(({ off }) => off < before)
    .sort(byPromise)
  // Where something is made, a few more are planned: what takes it away is no way.
  const ways = bestOfEach(found, isBegun(project) ? WAYS.eachBegun : WAYS.each)
    .flatMap((candidate) => wayOf(candidate, project, tryout.counts, now, wish, planner) ?? [])
    .filter((way) => (!isHeld || holds(way)) && offBy(way.size, wish) < before)
    .sort((a, b) => byNearness(a, b, wish, isBegun(project)))
  // All of them are wide or narrow by the same motifs: a millimetre more is nothing to put before a size.
  const openOf = ({ opening }: SizeWay) =>
    opening === undefined ? undefined : isForHands(opening) ? CHILD_OPENING : 0
  const closed = closedForChild(ways, (way) => ({ holds: holds(way), opening: openOf(way) }))
  return { ways: closed.slice(0, WAYS.offered), findings }
}

/** Without those in which one thing that is changed takes the size away again from what the others come to. */
function worthIt(candidates: readonly Candidate[]): Candidate[] {
  const nameOf = (parts: readonly string[]): string => parts.join('\n')
  const partsOf = ({ changes, counts, isRecounted }: Candidate): string[] => [
    ...(isRecounted ? [countWay(counts)] : []),
    ...changes.map(({ words }) => words),
  ]
  const off = new Map(candidates.map((candidate) => [nameOf(partsOf(candidate)), candidate.off]))
  return candidates.filter((candidate) => {
    const parts = partsOf(candidate)
    return parts.every((_, i) => {
      const without = off.get(nameOf(parts.filter((_part, k) => k !== i)))
      return without === undefined || candidate.off < without
    })
  })
}

const movesOutline = ({ kind }: Change): boolean => kind === 'outline'

const isError = ({ severity }: Finding): boolean => severity === 'error'

const tellOf = (project: Project, planner: Planner): Told => planner.numbers(project) ?? planner.plan(project)

interface Ground {
  readonly project: Project
  readonly wish: WishedSize
  /** With the present size where a side is open. */
  readonly whole: Size
  readonly tryout: Tryout
  readonly planner: Planner
  readonly isHeld: boolean
}

function candidatesOf(ground: Ground): Candidate[] {
  const { project, wish, tryout, planner } = ground
  const now = tryout.counts
  const told = (changes: readonly Change[], counts: Counts, size: Size): Candidate => ({
    changes,
    counts,
    isRecounted: !isSame(counts, now),
    off: offBy(size, wish),
    more: Math.abs(countPlaces(counts) - countPlaces(now)),
  })
  const tries: Stepped[] = stepsOf(project, tryout, wish, planner).flatMap((step) => {
    const changed = step.edit(project)
    const tried = planner.tryout(changed)
    return tried ? [{ step, changed, tried, counts: countsOf(ground, tried) }] : []
  })
  const outlines: Stepped[] = outlineSteps(project, tryout, wish, planner).flatMap(({ change, counts }) => {
    const changed = withCounts(change.edit(project), now, counts, true)
    const tried = planner.tryout(changed)
    return tried ? [{ step: change, changed, tried, counts: [counts] }] : []
  })
  const alone = ({ step, tried, counts }: Stepped): Candidate[] =>
    counts.map((each) => told([step], each, tried.size(each)))
  /** A step, and then as finely as the size asks for. */
  const further = ({ step, changed, tried, counts }: Stepped): Candidate[] =>
    slidesOf(changed, tried, wish, planner, step.kind).flatMap((slide) =>
      counts.flatMap((each) => {
        const found = slide(each)
        return found ? [told([step, found.change], each, found.size)] : []
      }),
    )
  const usual = countsOf(ground, tryout, true)
  const slides = slidesOf(project, tryout, wish, planner).flatMap((slide) =>
    usual.flatMap((counts) => {
      const found = slide(counts)
      return found ? [told([found.change], counts, found.size)] : []
    }),
  )
  const counted = usual
    .filter((counts) => !isSame(counts, now))
    .map((counts) => told([], counts, tryout.size(counts)))
  const single = [...tries.flatMap(alone), ...outlines.flatMap(alone), ...slides, ...counted]
  const isNear = single.some(({ off }) => off <= WAYS.near)
  // An outline by itself never comes to the millimetre: whole motifs come and go.
  const pairs = (isNear ? outlines : [...tries, ...outlines]).flatMap(further)
  return [...single, ...pairs.filter(({ off }) => off <= WAYS.near || !isNear)]
}

/** A project with one step of change, and the counts that may go with it. */
interface Stepped {
  readonly step: Change
  readonly changed: Project
  readonly tried: Tryout
  readonly counts: readonly Counts[]
}

/** The present counts, and those nearest to the wish that hold where the present ones do. */
function countsOf(
  { project, wish, whole, tryout: { counts: now }, isHeld }: Ground,
  tried: Tryout,
  /** By themselves: as many motifs in other rows, too. */
  alone = false,
): Counts[] {
  const near = nearest(tried, now, now, whole)
    .filter((each) => each.holds || !isHeld)
    .map(({ counts }) => counts)
  const others = near
    // A side that nobody asked for keeps its motifs.
    .filter(({ columns, rows }) => wish.height !== undefined || rows === now.rows || columns === 0)
    .filter(({ columns }) => wish.width !== undefined || columns === now.columns || columns === 0)
  const found = [...others, ...(alone ? inOtherRows(near, now, wish) : [])]
    .filter((counts) => !isSame(counts, now) && keepsMade(project, now, counts))
    .filter((counts, i, all) => all.findIndex((each) => isSame(each, counts)) === i)
  return [now, ...found]
}

/** Where one side alone is asked for: as many motifs as there are now, in other rows. */
function inOtherRows(near: readonly Counts[], now: Counts, wish: WishedSize): Counts[] {
  if (now.columns === 0 || (wish.width !== undefined && wish.height !== undefined)) return []
  const all = countPlaces(now)
  return near.flatMap((counts) => {
    const [columns, rows] =
      wish.width !== undefined
        ? [counts.columns, Math.round(all / counts.columns)]
        : [Math.round(all / counts.rows), counts.rows]
    const other = { ...counts, columns, rows }
    return rows > 0 && columns > 0 && countPlaces(other) === all ? [other] : []
  })
}

const isSame = (a: Counts, b: Counts): boolean =>
  a.columns === b.columns && a.rows === b.rows && a.rings === b.rings

const kindsOf = ({ changes, isRecounted }: Candidate): WayKind[] => [
  ...(isRecounted ? (['count'] as const) : []),
  ...changes.map(({ kind }) => kind),
]

const byPromise = (a: Candidate, b: Candidate): number =>
  Math.round(a.off) - Math.round(b.off) || a.more - b.more || a.off - b.off

/** The first few of each kind. */
function bestOfEach(candidates: readonly Candidate[], each: number): Candidate[] {
  const taken = new Map<string, number>()
  return candidates.filter((candidate) => {
    // As many motifs in other rows are a kind of their own: nothing more is to be made for them.
    const kind = `${kindsOf(candidate).join()}${candidate.isRecounted && candidate.more === 0 ? ' same' : ''}`
    const count = (taken.get(kind) ?? 0) + 1
    taken.set(kind, count)
    return count <= each
  })
}

/** A candidate planned: what it promises is what the plan says. Null where made motifs would have no place any more. */
function wayOf(
  candidate: Candidate,
  project: Project,
  present: Counts,
  now: Told,
  wish: WishedSize,
  planner: Planner,
): SizeWay | null {
  const { changes, counts, isRecounted } = candidate
  const edited = changes.reduce((before, { edit }) => edit(before), project)
  const changed = withCounts(edited, present, counts, changes.some(movesOutline))
  const fabric = fabricWords(changes, settled(project))
  const edit = differences(project, changed)
  const told = tellOf(withEdit(project, edit), planner)
  const madeOf = ({ progress: { made, others } }: Told) => made + others
  if (madeOf(told) < madeOf(now)) return null
  const { width, height } = told.size
  const grams = new Map(now.yarns.map((need) => [need.id, need.grams.expected]))
  const gone = now.yarns.filter(({ id }) => !told.yarns.some((need) => need.id === id))
  return {
    change: capital(
      [isRecounted ? countsWords(counts, changed) : '', ...changes.map(({ words }) => words)]
        .filter(Boolean)
        .join('; '),
    ),
    kinds: kindsOf(candidate),
    ...(fabric !== '' && { fabric }),
    ...{ pieces: told.pieces, single: told.single },
    size: { width, height },
    error: errorOf({ width, height }, wish),
    difference: { width: width - now.size.width, height: height - now.size.height },
    motifs: told.motifs.length,
    ...(told.opening !== undefined && { opening: told.opening }),
    ...needsOf(project, told),
    ...edgingOf(candidate, now, told),
    yarns: [
      ...told.yarns.map((need) => ({
        id: need.id,
        grams: need.grams.expected,
        difference: need.grams.expected - (grams.get(need.id) ?? 0),
        ...(isAssumed(need, 'grams') ? { assumed: true as const } : {}),
      })),
      ...gone.map((need) => ({ id: need.id, grams: 0, difference: -need.grams.expected })),
    ],
    edit,
  }
}

/** Counts in words: of what is cut out, the rows that stand. */
const countsWords = (counts: Counts, changed: Project): string =>
  blanketOf(changed)?.outlineShape && counts.arrangement !== 'rings'
    ? rowsOfUpTo(rowsStanding(changed))
    : countWay(counts)

/** What the edging is worked in: without a yarn of its own it follows the colours, which may change with the motifs. */
function edgingOf(candidate: Candidate, now: Told, told: Told): Pick<SizeWay, 'edgingIn'> {
  const [was, is] = [now, told].map(({ yarns }) =>
    yarns.filter(({ parts }) => parts.edging > 0).map(({ id }) => id),
  ) as [string[], string[]]
  const changes = kindsOf(candidate).includes('edging') || was.join() !== is.join()
  return changes && is.length > 0 ? { edgingIn: is } : {}
}

/** What must be bought for it, and which limits of the colours it goes beyond. */
function needsOf(
  project: Project,
  { yarns, counts }: Told,
): Pick<SizeWay, 'buy' | 'missing' | 'beyond' | 'unweighed'> {
  const fill = blanketOf(project)?.cells?.fill
  const buy = yarns.flatMap(({ id, toBuy }) => (toBuy !== null && toBuy > 0 ? [{ id, balls: toBuy }] : []))
  const missing = yarns.flatMap(({ id, noMore }) =>
    noMore && noMore.missing > 0 ? [{ id, grams: noMore.missing }] : [],
  )
  const beyond = [
    ...yarns.flatMap(({ id, grams }) => {
      const limit = fill?.mostGrams?.[id]
      const over = isUsableOrZero(limit) ? grams.expected - limit : 0
      return over > GRAM ? [{ yarn: id, grams: over }] : []
    }),
    ...Object.entries(counts.byColourway).flatMap(([colourway, motifs]) => {
      const limit = fill?.most?.[colourway]
      const over = isUsableOrZero(limit) ? motifs - Math.floor(limit) : 0
      return over > 0 ? [{ colourway, motifs: over }] : []
    }),
  ]
  return {
    ...(buy.length > 0 && { buy }),
    ...(missing.length > 0 && { missing }),
    ...(beyond.length > 0 && { beyond }),
    ...(yarns.some(({ lacking }) => lacking !== undefined) && { unweighed: true as const }),
  }
}

/** Less is no breach of a limit. */
const GRAM = 0.5

/**
 * What comes to the size goes first, and of it what lacks no yarn of which no more can be had; of the rest, while something
 * is made, what needs no yarn to be bought; then what comes nearer.
 */
function byNearness(a: SizeWay, b: SizeWay, wish: WishedSize, isBegun: boolean): number {
  const near = (way: SizeWay) => Math.round(offBy(way.size, wish))
  const buys = (way: SizeWay) => (isBegun && near(way) > WAYS.near && way.buy ? 1 : 0)
  const lacks = (way: SizeWay) => (way.missing ? 1 : 0)
  const isThere = (way: SizeWay) => (near(way) <= WAYS.near ? 0 : 1)
  const yarn = (way: SizeWay) => way.yarns.reduce((sum, { difference }) => sum + Math.abs(difference), 0)
  return (
    isThere(a) - isThere(b) ||
    lacks(a) - lacks(b) ||
    buys(a) - buys(b) ||
    near(a) - near(b) ||
    a.kinds.length - b.kinds.length ||
    yarn(a) - yarn(b)
  )
}
