/** The ends of what is joined in the round, in words: open or closed, and how high it is with what goes in and out. */
import type { ClosedEnd, OpenEnd, Plan } from '../../shared-types/plan'
import type { ClosedEnds, Terms } from '../../shared-types/project'
import { blanketOf } from '../plans/layouts'
import { stitchName } from '../stitches/terms'
import { formatLength, formatYarnLength, lengthsIn } from '../units/format'
import { SEAMS_NAMED } from './seam-words'
import { counted, listed } from './words'

type Told = Pick<Plan, 'round' | 'closed' | 'settled' | 'motifs'>

export const CLOSED_WORDS: Readonly<Record<ClosedEnds, string>> = {
  none: 'open at both ends, as a cowl',
  bottom: 'closed at the bottom, as a bag',
  both: 'closed at both ends, as a cushion',
}

/** "; closed at the bottom"; empty where both ends are open. */
export const closedInShort = ({ closed = [] }: Pick<Plan, 'closed'>): string =>
  closed.length === 0 ? '' : `, closed at ${closed.length > 1 ? 'both ends' : 'the bottom'}`

/** How front and back come to lie: what goes in and out lies tip on tip, in a fold where a motif stands at it. */
function laidFlat({ end, depth }: ClosedEnd, plan: Told): string {
  const last = Math.max(0, ...plan.motifs.map(({ row }) => row))
  const row = end === 'mouth' ? 1 : last
  const across = plan.motifs.filter((motif) => motif.row === row).length
  // Where motifs are left out of it, its folds are found by hand.
  const isFull = across === blanketOf(plan.settled)?.columns
  const folds = !isFull
    ? 'as it comes'
    : across % 2 === 0
      ? 'with both folds between motifs'
      : 'with one fold between motifs, the other down the middle of one'
  const where = `Lay it flat ${folds}`
  return depth === 0
    ? `${where}, edge on edge`
    : `${where}, so that each tip of the front lies on one of the back`
}

const sewn = ({ seam }: ClosedEnd, terms: Terms): string =>
  SEAMS_NAMED[seam].replace('{sc}', stitchName('sc', terms))

/**
 * How an end is closed: "The bottom: lay it flat …, and sew front and back together with whip stitch in Moss along their
 * edges, in and out round the tips: 57 cm, about 130 stitches. …".
 */
export function closingWords(end: ClosedEnd, plan: Told, terms: Terms): string {
  const { units, yarns } = plan.settled
  const yarn = yarns.find(({ id }) => id === end.yarn)
  const inYarn = yarn ? ` in ${yarn.name || yarn.id}` : ''
  const along = end.depth === 0 ? 'straight across' : 'along their edges, in and out from tip to dip'
  const takes = `${formatLength(end.length, units)}, about ${counted(end.stitches, 'stitch', 'stitches')}, ${formatYarnLength(end.metres, units)} of yarn with its tails`
  const goes =
    end.depth === 0
      ? ''
      : ` The ${end.end} goes in and out by ${formatLength(end.depth, units)} then: nothing is folded up or filled.`
  const both = blanketOf(plan.settled)?.closedEnds === 'both'
  const pad = both && end.end === 'mouth' ? ' Put the pad in before you close it.' : ''
  return `${laidFlat(end, plan)}, and ${sewn(end, terms)}${inYarn} ${along}: ${takes}.${goes}${pad}`
}

/** Each end that is closed, and how. */
export const closingsTold = (plan: Told, terms: Terms): readonly (readonly [string, string])[] =>
  (plan.closed ?? []).map((end) => [`Close the ${end.end}`, closingWords(end, plan, terms)])

/** What stays open; empty where nothing does. */
export function openWords({ closed = [] }: Pick<Plan, 'closed'>): string {
  if (closed.length > 1) return ''
  return closed.length === 1
    ? 'The mouth stays open.'
    : 'Both ends are open, as for a cowl. Closed at the bottom it is a bag, at both ends a cushion.'
}

/**
 * What the height of a round is measured over, where its ends go in and out: "28.5 cm high over the tips, 15.2 cm between
 * the dips"; empty where they are straight.
 */
export function heightWords({ round, size, settled }: Pick<Plan, 'round' | 'size' | 'settled'>): string {
  const ends = (['mouth', 'bottom'] as const).filter((end) => (round?.depth[end] ?? 0) > 0)
  if (!round || ends.length === 0) return ''
  const deep = ends.reduce((sum, end) => sum + round.depth[end], 0)
  const between = Math.max(0, size.height - deep)
  const lengths = [size.height, between, ...ends.map((end) => round.depth[end])]
  const [high, least, ...depths] = lengths.map(lengthsIn(settled.units, [size.width, ...lengths]))
  const name = (end: OpenEnd, i: number): string => `${depths[i]!} at the ${end}`
  return `${high!} high over the tips, ${least!} without them (${listed(ends.map(name))})`
}
