/**
 * M8: where a round has its corners, told by its stitches alone: by what is made over what is used, place by place.
 * However a text says it, the same stitches in the same places have the same corners.
 */
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import { relativeHeight } from '../../stitches/table'
import type { Radians } from '../../units/quantity'
import { CORNERS } from './constants'
import { angleOf, isUpright, seatOf, unwrap } from './ground'
import type { LocatedRound } from './ground'

export interface Corner {
  /** Element at the corner: its loop of chains, its middle stitch, or the first of two that share a place. */
  readonly element: WorkedElement
  /** What goes into the corner's place, -1 where the corner is a loop between places. */
  readonly group: number
  /** An increase among others that stand over each other: the corner is a round one. */
  readonly stacked?: boolean
}

/** Stitches of one kind differ by less than this in a corner; a petal's rise to its middle. */
const PETAL_RISES = 1.3
/** Sides may differ by so many elements: the round begins and ends in one of them. */
const UNEVEN_SIDES = 3
/** Stitches that stand between two corner loops of which each is worked in a place of its own. */
const LEAST_SIDE = 3
/** Chains from which on a loop between places turns a corner. */
const LEAST_LOOP = 2
/** So many rounds running increase over each other before a disc has become a polygon (§jillhacker). */
const STACKED_ROUNDS = 3
/** Increases stand over each other when they lie nearer than this share of the way to the next one. */
const STACKED_WITHIN = 0.3

/**
 * The corners of a round: 3 to 8 places at equal distance where it makes more than it uses: groups in one place with a
 * loop or a stitch in their middle, loops between sides, increases over corners or tips, or increases that three
 * rounds running stack. Null for everything else. A group whose stitches rise to its middle is a petal.
 */
export function cornersOf(
  round: WorkedRound,
  upright: readonly WorkedElement[],
  before: readonly LocatedRound[],
): Corner[] | null {
  const onto = before.find((entry) => entry.round.index === round.onto)
  const found = [
    () => groupCorners(round, upright, onto),
    () => (onto ? loopCorners(round) : null),
    () => increasesOver(round, before),
    () => stackedIncreases(round, onto),
  ]
  for (const find of found) {
    const corners = find()
    if (corners && isCount(corners.length) && evenlySpaced(round, corners)) return corners
  }
  return null
}

const isCount = (count: number): boolean => count >= CORNERS.least && count <= CORNERS.most

/** What goes into one place, in the order worked, with the chains between. */
interface Run {
  readonly group: number
  readonly members: WorkedElement[]
  readonly loops: WorkedElement[]
}

/** Stitches that follow each other into one place; a round may begin and end in the middle of one. */
function runsOf(round: WorkedRound): Run[] {
  const runs: Run[] = []
  let loops: WorkedElement[] = []
  for (const element of round.elements) {
    if (element.role === 'space') loops.push(element)
    if (!isUpright(element) || element.role === 'closing') continue
    const last = runs[runs.length - 1]
    if (last && last.group === element.group && element.group >= 0) {
      last.members.push(element)
      last.loops.push(...loops)
    } else runs.push({ group: element.group, members: [element], loops: [] })
    loops = []
  }
  const first = runs[0]
  const last = runs[runs.length - 1]
  if (first && last && first !== last && first.group === last.group && first.group >= 0) {
    first.members.unshift(...last.members)
    first.loops.unshift(...last.loops, ...loops)
    runs.pop()
  }
  return runs
}

/** How many groups in one place have a loop in their middle. */
export const loopedGroups = (round: WorkedRound): number =>
  runsOf(round).filter(({ loops }) => loops.length > 0).length

/** Groups in one place with a loop in their middle, or a stitch where no loops are. */
function groupCorners(
  round: WorkedRound,
  upright: readonly WorkedElement[],
  onto: LocatedRound | undefined,
): Corner[] | null {
  const runs = runsOf(round)
  const looped = runs.filter(({ loops }) => loops.length > 0)
  const chosen = looped.length > 0 ? looped : runs.filter(({ members }) => members.length > 2)
  if (!isCount(chosen.length)) return null
  const sides = runs.filter((run) => !chosen.includes(run))
  const lowest = Math.min(...sides.flatMap(({ members }) => members.map(relative)))
  const corners: Corner[] = []
  for (const { group, members, loops } of chosen) {
    const element = middleOf(loops) ?? middleOf(members)!
    const heights = members.filter((each) => each !== element).map(relative)
    if (heights.length > 0 && Math.max(...heights) / Math.min(...heights) > PETAL_RISES) return null
    if (element.role !== 'space') {
      // Shells are petals: without sides, over lower stitches, or with as much left out beside them as they add.
      if (sides.length === 0 || Math.max(...members.map(relative)) / lowest > PETAL_RISES) return null
      if (onto && passedBeside(members, upright, onto) >= members.length - 1) return null
    }
    corners.push({ element, group })
  }
  return corners
}

/** The middle one; of an even number the first of two. */
const middleOf = <T>(list: readonly T[]): T | undefined => list[Math.floor((list.length - 1) / 2)]

/** Places of the ground that are passed on both sides of a group. */
function passedBeside(
  members: readonly WorkedElement[],
  upright: readonly WorkedElement[],
  onto: LocatedRound,
): number {
  const count = onto.seats.length
  const own = members[0]!.into[0]
  if (!own || own.round !== onto.round.index || count === 0) return 0
  const used = new Set(
    upright.flatMap((each) => each.into.flatMap((place) => (place.round === own.round ? place.index : []))),
  )
  let passed = 0
  for (const step of [1, -1])
    for (let k = 1; k < count && !used.has((own.index + step * k + k * count) % count); k++) passed++
  return passed
}

/** "*dc in next 7 dc, ch 3*": loops of the most chains between sides, over nothing that is left out. */
function loopCorners(round: WorkedRound): Corner[] | null {
  const loops = round.elements.filter((element) => element.role === 'space')
  const most = loops.reduce((chains, { count }) => Math.max(chains, count), 0)
  const corners = loops.filter((element) => element.count === most)
  if (most < LEAST_LOOP || !isCount(corners.length)) return null
  const { elements } = round
  const at = new Map(elements.map((element, i) => [element, i]))
  const along = elements.filter((element) => isUpright(element) || element.role === 'space')
  const sides = corners.map((corner, i) => {
    const next = corners[(i + 1) % corners.length]!
    const from = along.indexOf(corner)
    const to = along.indexOf(next)
    return along.slice(from + 1, to > from ? to : undefined).concat(to > from ? [] : along.slice(0, to))
  })
  if (sides.some((side) => side.filter(isUpright).length < LEAST_SIDE)) return null
  const skips = corners.some((corner) => {
    const i = at.get(corner)!
    const before = along[(along.indexOf(corner) - 1 + along.length) % along.length]?.into[0]
    const behind = along[(along.indexOf(corner) + 1) % along.length]?.into[0]
    if (i < 0 || !before || !behind || before.round !== behind.round || before.round < 0) return true
    if (before.index === behind.index) return true
    return behind.index > before.index && behind.index - before.index > 1 + most / 2
  })
  return skips ? null : corners.map((element) => ({ element, group: -1 }))
}

/** Places with more than one stitch; none where all are. */
function increasesOf(round: WorkedRound): WorkedElement[][] {
  const runs = runsOf(round)
  const increases = runs.filter(({ members }) => members.length > 1)
  return increases.length === runs.length ? [] : increases.map(({ members }) => members)
}

const middles = (increases: readonly (readonly WorkedElement[])[]): Corner[] =>
  increases.map((members) => ({
    element: middleOf(members)!,
    group: members[0]!.group,
  }))

/** Up to three stitches over every tip of a petal, which are pulled into a polygon, or over every corner. */
function increasesOver(round: WorkedRound, before: readonly LocatedRound[]): Corner[] | null {
  const increases = increasesOf(round)
  if (!isCount(increases.length)) return null
  const over = increases.every(
    (members) => members.length <= 3 && seatOf(members[0]!.into[0], before)?.tip === true,
  )
  return over ? middles(increases) : null
}

/** Directions of a round's increases. */
const directions = (increases: readonly (readonly WorkedElement[])[], round: LocatedRound): Radians[] => {
  const angles = new Map(round.elements.map(({ element, top }) => [element, angleOf(top)]))
  return increases.map((members) => {
    const first = angles.get(members[0]!) ?? 0
    return members.reduce((sum, each) => sum + unwrap(angles.get(each) ?? first, first), 0) / members.length
  })
}

/** Increases over increases turn a disc into a polygon; one that has become it goes on as it is. */
function stackedIncreases(round: WorkedRound, onto: LocatedRound | undefined): Corner[] | null {
  const increases = increasesOf(round)
  if (!onto || !isCount(increases.length) || increases.some(({ length }) => length > 3)) return null
  if (onto.stacked + 1 < STACKED_ROUNDS && onto.corners === 0) return null
  if (!stackedOn(increases, onto)) return null
  return middles(increases).map((corner) => ({ ...corner, stacked: true }))
}

function stackedOn(increases: readonly (readonly WorkedElement[])[], onto: LocatedRound): boolean {
  if (onto.stackedAt.length !== increases.length) return false
  const near = (STACKED_WITHIN * 2 * Math.PI) / increases.length
  return increases.every((members) => {
    const place = members[0]!.into[0]
    const seat = place?.round === onto.round.index ? onto.seats[place.index] : null
    return seat && onto.stackedAt.some((angle) => Math.abs(unwrap(angle, seat.angle) - seat.angle) < near)
  })
}

/** Rounds running in which the increases of a round stand over each other, itself counted, and where they stand. */
export function stackOf(
  located: LocatedRound,
  onto: LocatedRound | undefined,
): Pick<LocatedRound, 'stacked' | 'stackedAt'> {
  const increases = increasesOf(located.round)
  if (!isCount(increases.length)) return { stacked: 0, stackedAt: [] }
  const stackedAt = directions(increases, located)
  return { stacked: onto && stackedOn(increases, onto) ? onto.stacked + 1 : 1, stackedAt }
}

function evenlySpaced(round: WorkedRound, corners: readonly Corner[]): boolean {
  // Slip stitches that travel to the corner, and the join, are no part of a side.
  const along = round.elements.filter((element) => element.standing || element.role === 'space')
  const places = corners.map((corner) => along.indexOf(corner.element)).sort((a, b) => a - b)
  const steps = places.map((place, i) => {
    const next = places[(i + 1) % places.length]!
    return (next - place + along.length) % along.length
  })
  return Math.max(...steps) - Math.min(...steps) <= UNEVEN_SIDES
}

const relative = (element: WorkedElement): number => relativeHeight(element.countsAs ?? element.stitch)
