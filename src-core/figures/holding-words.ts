/** How an arrangement holds and how it is rotated, in words. */
import type { BetweenSpaces, FitArrangement, Holds, WideGaps } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import { CHILD_OPENING } from '../joins/constants'
import { isForHands } from '../joins/for-child'
import { holds } from '../joins/holding'
import { formatFineLength, formatLength, formatNumber } from '../units/format'
import { MM_PER_INCH } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { counted } from './words'

/** "48 motifs hang on one join point", "1 motif hangs on one join point". */
const hanging = (single: number): string =>
  `${counted(single, 'motif')} ${single === 1 ? 'hangs' : 'hang'} on one join point`

/** "holds in one piece"; "falls into 24 pieces, and 48 motifs hang on one join point". */
export function holdingWords(held: Holds): string {
  if (holds(held)) return 'holds in one piece'
  const { pieces, single } = held
  if (pieces <= 1) return `in one piece, but ${hanging(single)}`
  return `falls into ${counted(pieces, 'piece')}${single > 0 ? `, and ${hanging(single)}` : ''}`
}

/**
 * "144 of 367 join points have gaps of up to 8.1 mm; gaps of up to 6.6 mm draw closed as you join", "all 381 join points have gaps of up to …"; empty
 * where all close.
 */
export function wideWords(wide: WideGaps | undefined, units: UnitSystem): string {
  if (!wide) return ''
  const { joins, of, widest, closes } = wide
  const which =
    joins === of
      ? of === 1
        ? 'its join point'
        : `all ${counted(of, 'join point')}`
      : `${formatNumber(joins)} of ${counted(of, 'join point')}`
  const gap = joins === 1 ? 'has a gap' : 'have gaps'
  return `${which} ${gap} of up to ${formatFineLength(widest, units)}; gaps of up to ${formatFineLength(closes, units)} draw closed as you join`
}

/** "32 of 63 join points lie between two spaces: joined there across a chain"; empty where none does. */
export function betweenWords(between: BetweenSpaces | undefined): string {
  if (!between) return ''
  const { joins, of } = between
  const which =
    joins === of
      ? `all ${counted(of, 'join point')}`
      : `${formatNumber(joins)} of ${counted(of, 'join point')}`
  return `${of === 1 ? 'its join point' : which} ${joins === 1 ? 'lies' : 'lie'} between two spaces: joined there across a chain`
}

/** Less is no gap that a hand sees, nor one that a tape shows: a sixteenth of an inch (ours). */
const LEAST_GAP: Millimetres = MM_PER_INCH / 16

/** Whether the largest gap at the joins is worth a word. */
export const isGapTold = (gap: Millimetres): boolean => gap >= LEAST_GAP

/** An opening under a mm across is closed by the join itself. */
export const openingsWords = (across: Millimetres, units: UnitSystem): string =>
  across < 1
    ? 'Leaves no openings between motifs'
    : `Leaves openings of about ${formatLength(across, units)} between motifs`

/** What a fit leaves open: for a child in any case, else where it is open lace though its motifs have straight sides. */
export const leavesWords = (
  { opening, leaves }: Pick<FitArrangement, 'opening' | 'leaves'>,
  units: UnitSystem,
): string => {
  const across = opening ?? leaves
  return across === undefined ? '' : openingsWords(across, units)
}

/** For a child: what is said of several to choose from, whose widest openings are these, in their order; null where none is for hands. */
export function childWords(
  openings: readonly Millimetres[],
  units: UnitSystem,
): { readonly words: string; readonly isWarning: boolean } | null {
  const limit = formatLength(CHILD_OPENING, units)
  if (isForHands(openings[0]))
    return {
      words: `Each of these leaves openings of ${limit} or more, which small hands fit through. Choose smaller motifs, or close them with fillers at Arrangement.`,
      isWarning: true,
    }
  return openings.some(isForHands)
    ? {
        words: `For a child, what has no openings of ${limit} or more comes first: small hands fit through them.`,
        isWarning: false,
      }
    : null
}

/** "rotated 22.5°", "every other row rotated 36°"; empty for motifs that stand as they are. */
export function rotationWords({
  turn,
  alternateTurn,
}: {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
}): string {
  const by = (degrees: Degrees) => `${formatNumber(degrees, 1)}°`
  const all = turn === 0 ? '' : `rotated ${by(turn)}`
  if (alternateTurn === 0) return all
  return all === ''
    ? `every other row rotated ${by(alternateTurn)}`
    : `${all}, every other row ${by(alternateTurn)} more`
}

/**
 * "3 left over", "none left over, 2 more than there are" of motifs that are made, "2 more", "1 fewer", "as asked" of a
 * number that was asked for; else nothing.
 */
export function apartWords({
  left,
  more,
  beyond = 0,
}: Pick<FitArrangement, 'left' | 'more' | 'beyond'>): string {
  if (left !== undefined)
    return `${left > 0 ? formatNumber(left) : 'none'} left over${beyond > 0 ? `, ${formatNumber(beyond)} more than there are` : ''}`
  if (more === undefined) return ''
  return more === 0 ? 'as asked' : `${formatNumber(Math.abs(more))} ${more > 0 ? 'more' : 'fewer'}`
}
