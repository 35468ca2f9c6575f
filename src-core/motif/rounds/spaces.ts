/** The spaces (or picots) that the last round of a round motif makes all round: it is joined in them (M30). */
import type { MotifSpaces } from '../../../shared-types/plan'
import type { Hand } from '../../../shared-types/project'
import { workingSign } from '../anchors'
import { EVEN_SPACES, SPACES } from '../constants'
import { angleOf, unwrap } from './ground'
import type { LocatedRound } from './ground'

const TURN = 2 * Math.PI

/** What the last round has to be joined in, spread evenly; null where that is nothing, or too much to be counted. */
export function spacesOf(located: readonly LocatedRound[], hand: Hand): MotifSpaces | null {
  const last = located.at(-1)
  const loops = (last?.elements ?? []).filter(({ element: { role } }) => role === 'space' || role === 'picot')
  const count = loops.length
  if (count < SPACES.least || count > SPACES.most) return null
  // Located rounds run their own way: what counts is that they lie evenly.
  const angles = loops.map(({ top }) => angleOf(top)).sort((a, b) => a - b)
  const first = angles[0]!
  const isEven = angles.every((angle, i) => {
    const ideal = first + (i * TURN) / count
    return Math.abs(unwrap(angle, ideal) - ideal) <= (EVEN_SPACES * TURN) / count
  })
  return isEven ? { count, way: workingSign(hand), at: 0 } : null
}
