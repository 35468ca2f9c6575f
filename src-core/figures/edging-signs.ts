/**
 * Letters at the tips and dips of a border whose rounds take more at some of them than at others, and the chains between
 * its tips where these differ: on the drawing of the border, whose words name the letters.
 */
import type { EdgingRound, Plan, Point } from '../../shared-types/plan'
import type { SignOf } from '../edging/words'
import { gapsToNext } from '../edging/bridge-spans'
import { workedLine } from '../edging/direction'
import { alongOf, pointAlong } from '../edging/line-places'
import { OPEN_ENDS } from '../edging/open-ends'
import { distance } from '../geometry/points'
import { remembered } from '../memo'

/** A letter or a number, where it stands on an edging's line, and the way out of the work there, as long as 1. */
export interface EdgingSign extends Point {
  readonly text: string
  readonly out: Point
  /** It stands at a tip. */
  readonly isTip?: boolean
}

export interface EdgingSigns {
  /** At tips and dips. */
  readonly letters: readonly EdgingSign[]
  /** Between two tips: how many chains lie there. */
  readonly chains: readonly EdgingSign[]
  /** The letters of the places of a round that take so many more. */
  readonly of: (round: number) => SignOf
}

const LETTERS = 'abcdefghjkmnpqrstuvwxyz'
/** Share of a motif before and after a place by which the way of an edge is told there (by eye). */
const ABOUT = 0.1

/** The signs of a plan's border; no letters where all of its tips, and all of its dips, are worked alike. */
export const edgingSigns = remembered((plan: Plan): EdgingSigns => {
  const rounds = plan.edging?.rounds ?? []
  const kinds = kindsOf(rounds)
  const isAlike = (isTip: boolean): boolean => kinds.filter((kind) => kind.isTip === isTip).length < 2
  const isLettered = kinds.length <= LETTERS.length && !(isAlike(true) && isAlike(false))
  const lettered = isLettered ? kinds.map((kind, i) => ({ ...kind, letter: LETTERS[i]! })) : []
  return {
    letters: lettered.flatMap(({ places, letter, isTip }) =>
      places.flatMap(({ line, along }) => {
        const at = spotOn(plan, line, along)
        return at ? [{ ...at, text: letter, isTip }] : []
      }),
    ),
    chains: chainsBetween(plan, rounds[0]),
    of: (round) => (more) =>
      lettered
        .filter(({ changes }) => changes.get(round) === more)
        .map(({ letter }) => letter)
        .join(', '),
  }
})

interface Place {
  readonly line: number
  readonly along: number
}

/** Places that every round works alike. */
interface Kind {
  readonly isTip: boolean
  /** Stitches more, or fewer, by the number of the round. */
  readonly changes: ReadonlyMap<number, number>
  readonly places: readonly Place[]
}

/** The kinds of tips and dips, tips first, those that take the most first. */
function kindsOf(rounds: readonly EdgingRound[]): Kind[] {
  const byPlace = new Map<string, { place: Place; changes: Map<number, number> }>()
  for (const { number, bends = [] } of rounds)
    for (const { more, places = [] } of bends)
      for (const place of places) {
        const key = `${place.line} ${place.along.toFixed(6)}`
        const known = byPlace.get(key) ?? { place, changes: new Map<number, number>() }
        known.changes.set(number, more)
        byPlace.set(key, known)
      }
  const kinds = new Map<string, { changes: Map<number, number>; places: Place[] }>()
  for (const { place, changes } of byPlace.values()) {
    const key = JSON.stringify([...changes])
    const known = kinds.get(key)
    if (known) known.places.push(place)
    else kinds.set(key, { changes, places: [place] })
  }
  const sum = ({ changes }: { changes: ReadonlyMap<number, number> }): number =>
    [...changes.values()].reduce((total, more) => total + more, 0)
  return [...kinds.values()]
    .map((kind) => ({ ...kind, isTip: sum(kind) > 0 }))
    .sort((a, b) => Number(b.isTip) - Number(a.isTip) || Math.abs(sum(b)) - Math.abs(sum(a)))
}

/** A place of a line, and the way out there; null where the line is no longer there. */
function spotOn(plan: Plan, index: number, share: number): (Point & { readonly out: Point }) | null {
  const { hand } = plan.settled
  const line = workedLine(plan.edgingLines, index, plan.round !== undefined, hand)
  if (line.length < 2) return null
  const isOpen = plan.round !== undefined && index < OPEN_ENDS
  const along = alongOf(line)
  const length = along[isOpen ? line.length - 1 : line.length]!
  const at = (mm: number): Point => {
    const on = isOpen ? Math.min(length, Math.max(0, mm)) : ((mm % length) + length) % length
    return pointAlong(line, along, on, isOpen)
  }
  const about = ABOUT * Math.max(1, plan.pitch.column)
  const [before, here, after] = [-1, 0, 1].map((step) => at(share * length + step * about))
  const long = distance(before!, after!) || 1
  // Right-handers have the work to their left.
  const side = hand === 'right' ? 1 : -1
  const out = {
    x: (-side * (after!.y - before!.y)) / long,
    y: (side * (after!.x - before!.x)) / long,
  }
  return { ...here!, out }
}

/** The chains of every gap where some of those that lie alike have more than others; none elsewhere. */
function chainsBetween(plan: Plan, round: EdgingRound | undefined): EdgingSign[] {
  const { gaps, straight = [] } = round ?? {}
  if (!gaps) return []
  const lines = plan.edgingLines.flatMap((line, i) => (line.length > 1 ? [i] : []))
  const told = lines.flatMap((line, l) => {
    const own = gaps[l] ?? []
    const toNext = gapsToNext(plan, line)
    const points = workedLine(plan.edgingLines, line, plan.round !== undefined, plan.settled.hand)
    const along = alongOf(points)
    const isOpen = plan.round !== undefined && line < OPEN_ENDS
    const length = along[isOpen ? points.length - 1 : points.length]!
    return own.flatMap((chains, i) =>
      straight[l]?.[i] || toNext.length !== own.length
        ? []
        : [{ line, chains, toNext: toNext[i]!, along: (along[i]! + along[i + 1]!) / 2 / length }],
    )
  })
  const varied = [true, false].filter(
    (next) => new Set(told.flatMap((gap) => (gap.toNext === next ? [gap.chains] : []))).size > 1,
  )
  return told.flatMap((gap) => {
    const at = varied.includes(gap.toNext) ? spotOn(plan, gap.line, gap.along) : null
    return at ? [{ ...at, text: String(gap.chains) }] : []
  })
}
