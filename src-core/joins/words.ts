/** The words of the working order. Left and right on a motif are seen from its middle, looking outward. */
import type { Anchor } from '../../shared-types/plan'
import { directionOf } from '../geometry/points'
import { clock } from '../motif/anchors'
import { radians } from '../units/quantity'
import type { Degrees } from '../units/quantity'
import type { Naming } from './steps'

/** How left and right are meant wherever the working order is told. */
export const SIDES_LEGEND =
  'Left and right on a motif are seen from its middle, looking outward, right side up.'

/** A place of the motif in hand with its number from the motif's own start. */
export interface Station {
  readonly anchor: Anchor
  readonly number: number
}

/** A place with what is to be told of it: null where it stays free. */
export interface ToldPlace {
  readonly station: Station
  readonly phrase: string | null
  /** Working number of the motif that was there first. */
  readonly partner: number
  /** All that meet there already. */
  readonly partners: readonly number[]
}

const ORDINALS = ['', 'next', '2nd', '3rd']
const ordinal = (n: number): string => ORDINALS[n] ?? `${n}th`

/** "3", "3 and 7", "3, 7 and 9". */
export function listOf(items: readonly (string | number)[]): string {
  if (items.length < 2) return String(items[0] ?? '')
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`
}

const noun = (naming: Naming): string => (naming === 'corners' ? 'corner' : 'petal')

/** A place on the motif in hand: "petal 4", "place 2 of side 3", "at 9 o'clock". */
export function stationName({ anchor, number }: Station, naming: Naming, turn: Degrees): string {
  if (naming === 'clock') return `at ${clockOf(anchor, turn)}`
  if (naming === 'address') return anchor.address
  if (anchor.kind === 'tip' || anchor.kind === 'corner') return `${noun(naming)} ${number}`
  return anchor.address.replace(/\d+$/, String(number))
}

const clockOf = (anchor: Anchor, turn: Degrees): string => clock(directionOf(anchor) + radians(turn))

/** Joining where others are already joined. */
export function spacePhrase(host: number, others: readonly number[]): string {
  return `into the same space of ${host} that ${listOf(others)} ${others.length > 1 ? 'are' : 'is'} joined to`
}

interface JoinPhrase {
  readonly naming: Naming
  readonly host: number
  readonly anchor: Anchor
  readonly turn: Degrees
  /** Working number of the motif joined nearest by on the host, 0 for none. */
  readonly reference: number
  /** Places from there, counter-clockwise positive. */
  readonly leftward: number
  readonly own: number
}

/** Joining to a place of a motif where nothing is joined yet. */
export function joinPhrase({ naming, host, anchor, turn, reference, leftward, own }: JoinPhrase): string {
  if (naming === 'clock') return `to ${host}, at its ${clockOf(anchor, turn)}`
  if (naming === 'address') return `to the ${anchor.address} of ${host}`
  if (anchor.kind !== 'tip' && anchor.kind !== 'corner') return `to the place of ${host} that lies opposite`
  if (reference === 0) return `to any free ${noun(naming)} of ${host}`
  const side = leftward > 0 ? 'left' : 'right'
  const from = reference === own ? 'the one just joined' : `where ${reference} is joined`
  return `to ${host}’s ${ordinal(Math.abs(leftward))} free ${noun(naming)} to the ${side} of ${from}`
}

/** The whole step: free places as runs, joins one by one, neighbouring places along one side taken together. */
export function stepWords(told: readonly ToldPlace[], naming: Naming, turn: Degrees): string {
  const joins = told.filter((entry) => entry.phrase !== null)
  const leading = told.filter(
    ({ station }) => station.anchor.kind === 'tip' || station.anchor.kind === 'corner',
  )
  const free = leading.filter((entry) => entry.phrase === null).map((entry) => entry.station.number)
  const phrases: string[] = []
  if (naming === 'petals' || naming === 'corners') {
    const all = new Set(leading.map((entry) => entry.station.number)).size
    if (joins.length === 0) return `work all ${all} ${noun(naming)}s free`
    if (free.length > 0) phrases.push(`work ${noun(naming)}${free.length > 1 ? 's' : ''} ${runs(free)} free`)
  } else if (joins.length === 0) return 'work it free'
  for (let i = 0; i < joins.length; i++) {
    const { station, phrase, partner } = joins[i]!
    const along = station.anchor.kind === 'side' || station.anchor.kind === 'shoulder'
    if (along && naming === 'corners') {
      let last = i
      while (
        joins[last + 1]?.partner === partner &&
        joins[last + 1]!.station.anchor.kind === station.anchor.kind &&
        joins[last + 1]!.station.number === station.number
      )
        last++
      if (last > i) {
        phrases.push(`side ${station.number} to the places of ${partner} that lie opposite`)
        i = last
        continue
      }
    }
    phrases.push(`${stationName(station, naming, turn)} ${phrase}`)
  }
  return phrases.join('; ')
}

/** What the hand does along a seam: sewn with a needle, or crocheted. */
export type SeamVerb = 'sew' | 'crochet'

/** The step of a finished motif that is put on with a seam: its sides (or else its tips) with whom they meet. */
export function seamWords(told: readonly ToldPlace[], naming: Naming, turn: Degrees, verb: SeamVerb): string {
  const joins = told.filter((entry) => entry.phrase !== null)
  if (joins.length === 0) return 'lay it in its place'
  const alongSides = joins.filter(({ station }) => station.anchor.kind === 'side' && naming === 'corners')
  const sides = new Map<number, number>()
  for (const { station, partner } of alongSides) sides.set(station.number, partner)
  const covered = new Set(sides.values())
  const phrases = [...sides].map(([side, partner]) => `side ${side} to ${partner}`)
  for (const { station, partners } of joins) {
    if (station.anchor.kind === 'side' && naming === 'corners') continue
    const others = partners.filter((partner) => !covered.has(partner))
    if (others.length > 0) phrases.push(`${stationName(station, naming, turn)} to ${listOf(others)}`)
  }
  return `${verb} ${phrases.join('; ')}`
}

/** Numbers as runs: 1–3 and 6. */
function runs(numbers: readonly number[]): string {
  const parts: string[] = []
  for (let i = 0; i < numbers.length;) {
    let end = i
    while (numbers[end + 1] === numbers[end]! + 1) end++
    parts.push(
      end === i
        ? `${numbers[i]}`
        : end === i + 1
          ? `${numbers[i]}, ${numbers[end]}`
          : `${numbers[i]}–${numbers[end]}`,
    )
    i = end + 1
  }
  return listOf(parts)
}
