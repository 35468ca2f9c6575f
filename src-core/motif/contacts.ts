/** M30: a round motif gets its anchors where neighbours touch. */
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { directionOf } from '../geometry/points'
import type { Lattice } from '../layout/lattice'
import { radians } from '../units/quantity'
import type { Radians } from '../units/quantity'
import { roundAnchors, workingSign } from './anchors'
import { dividedEvenly, turnedToSpaces } from './spaces'

/** Directions that agree to this are one place. */
const SAME_DIRECTION: Radians = 1e-6

/** A round motif with places towards all its neighbours, and turned so that its spaces face as many as can be. */
export const withContacts = (account: MotifAccount, lattice: Lattice, hand: Hand): MotifAccount =>
  dividedEvenly(
    turnedToSpaces({ ...account, anchors: contactAnchors(account, lattice, hand) }),
    workingSign(hand),
  )

/** Places of a round motif towards all the neighbours that its lattice can give it, before its turn. */
function contactAnchors(account: MotifAccount, lattice: Lattice, hand: Hand): Anchor[] {
  const { column, pitches, shift, beside } = lattice
  const steps: [number, number][] = [
    [column, 0],
    [-column, 0],
  ]
  const sideways = shift > 0 ? [shift, -shift] : [0]
  for (const down of pitches) for (const side of sideways) steps.push([side, down], [side, -down])
  for (const { x, y } of beside) steps.push([x, y], [-x, -y])
  const directions: Radians[] = []
  for (const [x, y] of steps)
    for (const turn of new Set(lattice.turns)) {
      const angle = wrap(directionOf({ x, y }) - radians(turn))
      const known = directions.some((d) => Math.abs(wrap(d - angle + Math.PI) - Math.PI) < SAME_DIRECTION)
      if (!known) directions.push(angle)
    }
  return roundAnchors(account.overTips / 2, directions, hand)
}

const wrap = (angle: Radians): Radians => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
