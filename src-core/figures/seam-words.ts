/** What is joined along whole sides, in words: seams where motifs are sewn, sides where they are joined stitch for stitch. */
import type { JoinedSides, Plan, PlanNumbers } from '../../shared-types/plan'
import type { Seam, Terms, UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { formatNumber, formatYarnLength } from '../units/format'
import { counted } from './words'
import { stitchName } from '../stitches/terms'

const MM_PER_M = 1000
/** From so many on, stitches are told in tens. */
const IN_TENS = 100

/** "seam", "side". */
export const sideNoun = (joining: Pick<Settled['joining'], 'rule'>): string =>
  joining.rule === 'seam' ? 'seam' : 'side'

/** "34.1 m". */
export const sidesLength = ({ length }: JoinedSides, units: UnitSystem): string =>
  formatYarnLength(length / MM_PER_M, units)

/**
 * "34.1 m and 3,406 stitches in all, 13 each by the last round", "34.1 m in all, about 7,600 stitches by length": which
 * it is told by, too.
 */
export function sideLengths(sides: JoinedSides, units: UnitSystem): string {
  const { stitches, count, counted: known, each } = sides
  const length = sidesLength(sides, units)
  if (known === count) {
    const alike = each !== null && count > 1 ? `, ${formatNumber(each)} each` : ''
    return `${length} and ${counted(stitches, 'stitch', 'stitches')} in all${alike} by the last round`
  }
  const told = stitches < IN_TENS ? stitches : Math.round(stitches / 10) * 10
  const by =
    known > 0 ? `those of ${formatNumber(known)} by the last round, the others by length` : 'by length'
  return `${length} in all, about ${counted(told, 'stitch', 'stitches')}${known > 0 ? `, ${by}` : ` ${by}`}`
}

/** "262 seams, 34.1 m in all, about 7,600 stitches by length"; empty where nothing is joined along whole sides. */
export function sidesJoined(
  { sides }: PlanNumbers['counts'],
  { joining, units }: Pick<Settled, 'joining' | 'units'>,
): string {
  return sides ? `${counted(sides.count, sideNoun(joining))}, ${sideLengths(sides, units)}` : ''
}

/** Join points that lie on no whole side. */
export const pointsAlone = ({ joins = 0, sides }: PlanNumbers['counts']): number =>
  joins - (sides?.points ?? 0)

/** What is sewn or crocheted, as one tells a hand to do it. */
const SEAM_WORDS: Readonly<Record<Seam, string>> = {
  whip: 'Sew them with whip stitch',
  mattress: 'Sew them with mattress stitch',
  'slip-stitch': 'Join them with a row of slip stitches',
  sc: 'Join them with a row of {sc}',
  'flat-braid': 'Join them with a flat braid',
}

/** The same of front and back, where an end is closed. */
export const SEAMS_NAMED: Readonly<Record<Seam, string>> = {
  whip: 'sew front and back together with whip stitch',
  mattress: 'sew front and back together with mattress stitch',
  'slip-stitch': 'join front and back with a row of slip stitches',
  sc: 'join front and back with a row of {sc}',
  'flat-braid': 'join front and back with a flat braid',
}

/** How edges are held and what is caught along them, so that all seams look alike (common practice). */
const HELD: Readonly<Record<Seam, string>> = {
  whip: 'Lay the two side by side, right side up, and sew through the back loops alone, stitch to stitch',
  mattress:
    'Lay the two side by side, right side up, and go under both loops of a stitch of one, then of the stitch that faces it',
  'slip-stitch': 'Hold the two with right sides together and go through both loops of both, stitch to stitch',
  sc: 'Hold the two with wrong sides together and go through both loops of both, stitch to stitch: the ridge lies on the right side',
  'flat-braid': 'Lay the two side by side, right side up, stitch to stitch',
}

/** Seams that are sewn with a needle; the others are crocheted. */
const SEWN: ReadonlySet<Seam> = new Set(['whip', 'mattress'])

/** Whether motifs are sewn with a needle. */
export const sewsWithNeedle = ({ settled: { joining } }: Pick<Plan, 'settled'>): boolean =>
  joining.rule === 'seam' && SEWN.has(joining.seam)

/** Whether whole sides alone are sewn: then the map shows all that a hand needs to know of each motif. */
export const isSewnBySides = ({ settled, counts }: Pick<Plan, 'settled' | 'counts'>): boolean =>
  settled.joining.rule === 'seam' && counts.sides !== undefined && pointsAlone(counts) === 0

/** "sew", "join". */
export const seamVerb = ({ settled }: Pick<Plan, 'settled'>): string =>
  SEWN.has(settled.joining.seam) ? 'sew' : 'join'

/** The yarn of the seams by its name: the one that is planned for them; '' where nobody knows, or nothing is sewn. */
export function seamYarn({ settled, yarns }: Pick<Plan, 'settled' | 'yarns'>): string {
  if (settled.joining.rule !== 'seam') return ''
  const id = settled.joining.yarn ?? yarns.find(({ parts }) => parts.joins > 0)?.id
  const yarn = settled.yarns.find((each) => each.id === id)
  return yarn ? yarn.name || yarn.id : ''
}

/** "Sew them with whip stitch in Cream". */
export function seamAdvice(plan: Pick<Plan, 'settled' | 'yarns'>, terms: Terms): string {
  const yarn = seamYarn(plan)
  const how = SEAM_WORDS[plan.settled.joining.seam].replace('{sc}', stitchName('sc', terms))
  return `${how}${yarn === '' ? '' : ` in ${yarn}`}`
}

/**
 * What a seam is like and how it is worked: "191 seams, 8 stitches each. Lay the two side by side, …"; empty where
 * nothing is sewn along whole sides.
 */
export function seamsTold({ settled, counts }: Pick<Plan, 'settled' | 'counts'>): string {
  const { seam, rule } = settled.joining
  if (rule !== 'seam' || !counts.sides) return ''
  const { count, each } = counts.sides
  const tool = SEWN.has(seam) ? 'the needle' : 'the hook'
  return `${counted(count, 'seam')}${each === null ? '' : `, ${counted(each, 'stitch', 'stitches')} ${count > 1 ? 'each' : 'long'}`}. ${HELD[seam]}. Begin and end each seam in the corners; where more than two meet, take ${tool} once through the corners of all of them before you go on.`
}
