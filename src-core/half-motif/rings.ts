/**
 * Rounds as rings of stitches and spaces, each stitch with the place that it goes into: what a cut through the middle
 * is looked for in. Only what is plain is read so; a motif of anything else has no half that follows from it.
 */
import type { StitchKey } from '../stitches/table'
import type { WorkedElement, WorkedRound } from '../notation/worked'

export type Top =
  | {
      readonly kind: 'stitch'
      readonly stitch: StitchKey
      /** Index in the ring before; RING in the first. */ readonly into: number
    }
  | { readonly kind: 'space'; readonly chains: number }

export interface Ring {
  readonly tops: readonly Top[]
  /** By index of the element in the round. */
  readonly at: ReadonlyMap<number, number>
}

/** The ring of chains or yarn that the first round is worked into. */
export const RING = -2

/** Tops of more than this nobody works as rows (ours); and what is looked through stays short. */
const MOST_TOPS = 400

const PLAIN_ROLES: ReadonlySet<string> = new Set([
  ...['stitch', 'space', 'beginning', 'join', 'closing', 'travel'],
])
const STITCHED: ReadonlySet<StitchKey> = new Set<StitchKey>(['sc', 'hdc', 'dc', 'tr', 'dtr'])

/** The place of a stitch in the round before; null where it is another than a stitch or space of that. */
function intoOf(element: WorkedElement, round: number): number | null {
  const [place, ...more] = element.into
  if (!place) return element.role === 'beginning' ? (round === 0 ? RING : 0) : null
  if (more.length > 0 || place.loop !== 'both' || place.post !== null || place.opposite) return null
  if (round === 0) return place.kind === 'ring' || place.kind === 'chain' ? RING : null
  return (place.kind === 'stitch' || place.kind === 'space') && place.round === round - 1 ? place.index : null
}

function topsOf({ index, places, elements }: WorkedRound): Top[] | null {
  const tops: Top[] = []
  for (const { kind, element: at, chains } of places) {
    const element = elements[at]
    if (!element || kind === 'slip') return null
    if (kind === 'space') tops.push({ kind, chains })
    else {
      const stitch = element.countsAs ?? element.stitch
      const into = intoOf(element, index)
      if (into === null || !STITCHED.has(stitch)) return null
      tops.push({ kind, stitch, into })
    }
  }
  return tops
}

const isPlain = ({ role, form, legs, behind, reverse }: WorkedElement): boolean =>
  PLAIN_ROLES.has(role) && form === 'plain' && legs <= 1 && !behind && !reverse

/** The rounds as rings, the first one first; null where one of them is more than plain stitches in rounds. */
export function ringsOf(worked: readonly WorkedRound[]): readonly Ring[] | null {
  const rings: Ring[] = []
  for (const [i, round] of worked.entries()) {
    if (round.index !== i || !round.certain || round.turned || !round.elements.every(isPlain)) return null
    const tops = topsOf(round)
    if (!tops || tops.length < 4 || tops.length > MOST_TOPS) return null
    rings.push({ tops, at: new Map(round.places.map(({ element }, place) => [element, place])) })
  }
  return rings.length > 0 ? rings : null
}
