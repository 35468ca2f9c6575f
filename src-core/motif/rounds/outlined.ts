/**
 * M14: an outline of one or two rounds of low stitches goes along the edge of petals, down into the dips between them,
 * and does not span these. Common practice, no source.
 */
import type { WorkedElement } from '../../notation/worked'
import { PETALS } from '../constants'
import type { LocatedRound } from './ground'
import { envelope } from './profile'

/** More rounds than this are a ground of their own, round the petals (ours). */
const MOST_ROUNDS = 2

const LOW: ReadonlySet<string> = new Set(['sl st', 'sc'])

const isWorked = ({ role }: WorkedElement): boolean => role === 'stitch' || role === 'slip'

/** Whether a round is worked in low stitches into stitches and chains, with nothing that spans a dip. */
const isLow = ({ round: { elements } }: LocatedRound): boolean =>
  elements.some(isWorked) &&
  elements.every(
    (element) =>
      element.role !== 'space' &&
      (!isWorked(element) ||
        (LOW.has(element.stitch) && element.into.every(({ kind }) => kind === 'stitch' || kind === 'chain'))),
  )

/** Radius in every direction of a flower whose petals are outlined: theirs, and the outline all along; null without one. */
export function outlinedPetals(located: readonly LocatedRound[]): Float64Array | null {
  const last = located.findLastIndex(({ petals }) => petals.length >= PETALS.least)
  const outline = located.slice(last + 1)
  if (last < 0 || outline.length === 0 || outline.length > MOST_ROUNDS || !outline.every(isLow)) return null
  const petals = envelope(located.slice(0, last + 1))
  const wide = Math.max(...envelope(located)) - Math.max(...petals)
  return petals.map((radius) => radius + wide)
}
