/**
 * Which stitch or chain of its rounds stands at a place of a motif where it is joined (M15): at its tips and corners
 * by where they lie, between them by the way along the round.
 */
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { directionOf } from '../geometry/points'
import { workingSign } from '../motif/anchors'
import { countedFrom, isAlike } from '../motif/numbering'
import { spaceAt } from '../motif/spaces'
import type { RoundsAccount } from '../motif/rounds/account'
import { angleOf, radiusOf, unwrap } from '../motif/rounds/ground'
import type { LocatedElement, LocatedRound } from '../motif/rounds/ground'
import type { WorkedElement } from '../notation/worked'
import type { Radians } from '../units/quantity'
import { AT_TIP, NEAR_TIP, REACHES } from './constants'

const TURN = 2 * Math.PI

/** Places of a motif in the one round that is joined. */
export interface JoinPlaces {
  readonly round: LocatedRound
  /** Elements at the tips or corners, in the order worked; of a round motif all that it can be joined at. */
  readonly leading: readonly WorkedElement[]
  /** Sign of a step in working direction, angles being clockwise. */
  readonly sign: 1 | -1
  /** Index into `leading` of each tip or corner by its own petal, where petals are not alike; else null. */
  readonly own: ReadonlyMap<number, number> | null
}

const isLeading = ({ kind }: Anchor): boolean => kind === 'tip' || kind === 'corner'
const isLoop = ({ role }: WorkedElement): boolean => role === 'space' || role === 'picot'
const isStanding = (element: WorkedElement): boolean => element.standing || isLoop(element)

/** The places of a motif in its rounds, `account` as it is placed; null where its rounds do not tell them. */
export function joinPlaces(told: RoundsAccount, account: MotifAccount, hand: Hand): JoinPlaces | null {
  const turn = told.beginning?.turn
  if (turn === undefined || told.located.length === 0 || account.shape === 'leaf') return null
  const sign = workingSign(hand)
  if (account.shape === 'round') return roundPlaces(told.located, account, sign)
  const leading = account.anchors.filter(isLeading)
  if (leading.length < 2) return null
  const angles = leading.map((anchor) => sign * directionOf(anchor) - turn)
  const round = outermost(told.located, angles)
  const found = round && angles.map((angle) => elementAt(round, angle, TURN / leading.length))
  if (!round || !found || found.some((element) => element === null)) return null
  const elements = found as WorkedElement[]
  if (new Set(elements).size < elements.length) return null
  const inOrder = [...elements].sort((a, b) => a.index - b.index)
  if (isAlike(account)) return { round, leading: inOrder, sign, own: null }
  const own = new Map(leading.map(({ petal }, i) => [petal, inOrder.indexOf(elements[i]!)]))
  return { round, leading: inOrder, sign, own }
}

const off = (a: Radians, b: Radians): Radians => Math.abs(unwrap(a, b) - b)

const near = (round: LocatedRound, angle: Radians, within: Radians): LocatedElement[] =>
  round.elements.filter(({ element, top }) => isStanding(element) && off(angleOf(top), angle) <= within)

/** The last round that reaches out farthest at every tip. */
function outermost(located: readonly LocatedRound[], angles: readonly Radians[]): LocatedRound | null {
  const within = (NEAR_TIP * TURN) / angles.length
  const reachOf = (round: LocatedRound, angle: Radians): number =>
    near(round, angle, within).reduce((most, { top }) => Math.max(most, radiusOf(top)), 0)
  const farthest = angles.map((angle) => Math.max(...located.map((round) => reachOf(round, angle))))
  return (
    located.findLast((round) =>
      angles.every((angle, i) => reachOf(round, angle) >= REACHES * farthest[i]!),
    ) ?? null
  )
}

/** What stands at a tip: its loop of chains or picot, else the stitch in its middle. */
function elementAt(round: LocatedRound, angle: Radians, step: Radians): WorkedElement | null {
  const around = near(round, angle, NEAR_TIP * step)
  const reach = around.reduce((most, { top }) => Math.max(most, radiusOf(top)), 0)
  const nearest = (list: readonly LocatedElement[]): WorkedElement | null =>
    list.reduce<LocatedElement | null>((best, each) => {
      const nearer = best ? off(angleOf(best.top), angle) - off(angleOf(each.top), angle) : 1
      return nearer > 1e-6 ? each : best
    }, null)?.element ?? null
  const outer = around.filter(({ top }) => radiusOf(top) >= REACHES * reach)
  const loops = outer.filter(
    ({ element, top }) => isLoop(element) && off(angleOf(top), angle) <= AT_TIP * step,
  )
  return nearest(loops) ?? nearest(outer)
}

/** A round motif is joined at its loops where they are counted or it has enough of them, else at its stitches. */
function roundPlaces(
  located: readonly LocatedRound[],
  { anchors: { length: count }, spaces }: Pick<MotifAccount, 'anchors' | 'spaces'>,
  sign: 1 | -1,
): JoinPlaces | null {
  const round = located.at(-1)!
  const standing = round.round.elements.filter(isStanding)
  const loops = standing.filter(isLoop)
  if (spaces && loops.length === spaces.count) return { round, leading: loops, sign, own: null }
  const leading = loops.length >= count ? loops : standing
  return leading.length >= count ? { round, leading, sign, own: null } : null
}

/** How far on from its tip or corner a place lies, as a share of the way to the next one. */
function shareOf({ kind, id }: Anchor): { readonly share: number; readonly after: 0 | -1 } {
  const part = Number(id.slice(id.lastIndexOf('-') + 1))
  if (kind === 'valley') return { share: 1 / 2, after: 0 }
  if (kind === 'shoulder') return part === 1 ? { share: 3 / 4, after: -1 } : { share: 1 / 4, after: 0 }
  return { share: part / 4, after: 0 }
}

/**
 * The elements at a place of a motif whose petals are counted from `first`: one, the two in the middle of a side that
 * has none there, or none.
 */
export function elementsFor(
  places: JoinPlaces,
  account: MotifAccount,
  anchor: Anchor,
  first: number,
): readonly WorkedElement[] {
  const { leading, own } = places
  const { anchors, shape } = account
  const space = spaceAt(account, directionOf(anchor), first)
  if (space && leading.length === account.spaces?.count) {
    if (space.next === null) return listOfOne(leading[space.number - 1])
    // What stands between two spaces: of several stitches the one in the middle.
    return listOfOne(alongPetal(betweenTips(places, space.number - 1).way, 1 / 2))
  }
  if (shape === 'round') return listOfOne(roundElement(places, anchors, anchor, first))
  const count = leading.length
  const at = own?.get(anchor.petal) ?? countedFrom(anchor.petal, first, count) - 1
  if (isLeading(anchor)) return listOfOne(leading[at])
  const { share, after } = shareOf(anchor)
  const from = (at + after + count) % count
  const { way, loops } = betweenTips(places, from)
  if (anchor.kind !== 'side') return listOfOne(alongPetal(way, share))
  return alongSide(loops.length >= 3 ? loops : way, share)
}

const listOfOne = (element: WorkedElement | null | undefined): WorkedElement[] => (element ? [element] : [])

/** What stands between a tip or corner and the next, and the loops among it. */
function betweenTips({ round, leading }: JoinPlaces, from: number) {
  const { elements } = round.round
  const start = leading[from]!.index
  const end = leading[(from + 1) % leading.length]!.index
  const inBetween = [...elements.slice(start + 1), ...elements.slice(0, start)]
  const way = inBetween.slice(0, (end - start - 1 + elements.length) % elements.length).filter(isStanding)
  return { way, loops: way.filter(isLoop) }
}

/** What stands at a share of the way from a tip to the next, seen from both tips alike. */
function alongPetal(way: readonly WorkedElement[], share: number): WorkedElement | undefined {
  const last = way.length - 1
  if (share === 1 / 2) return way[Math.floor(last / 2)]
  return way[share > 1 / 2 ? last - Math.floor((1 - share) * way.length) : Math.floor(share * way.length)]
}

/**
 * What a side is joined at: its middle, and on both sides of it as far from the middle as from the corner. Of an even
 * count the two in the middle are both joined, and the others stand so that all four are spread over the side. Counted
 * from either end it is the same, so that two sides that face each other are joined at the same places.
 */
function alongSide(chosen: readonly WorkedElement[], share: number): readonly WorkedElement[] {
  const count = chosen.length
  const isEven = count % 2 === 0
  if (share === 1 / 2) return chosen.slice(Math.ceil(count / 2) - 1, Math.floor(count / 2) + 1)
  const near = Math.max(1, Math.round((count + 1) / (isEven ? 5 : 4)))
  return listOfOne(chosen[share < 1 / 2 ? near - 1 : count - near])
}

/** Places of a round motif, as far on from the first as they lie. */
function roundElement(
  { leading, sign }: JoinPlaces,
  anchors: readonly Anchor[],
  anchor: Anchor,
  first: number,
) {
  const begin = anchors.find(({ petal }) => petal === first)
  if (!begin) return null
  const way = sign * (directionOf(anchor) - directionOf(begin))
  const share = (((way / TURN) % 1) + 1) % 1
  return leading[Math.round(share * leading.length) % leading.length] ?? null
}
