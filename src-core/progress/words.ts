/** How far a work has come, in words: the same in window, command line and paper. */
import { dayIn } from './days'
import type { LostMade } from './lost'
import type { Forecast, JoinedAs, PlacedMotif, Plan, PlanNumbers, Progress } from '../../shared-types/plan'
import type { Terms, UnitSystem, Yarn } from '../../shared-types/project'
import { saying } from '../stitches/spelling'
import { termWord } from '../stitches/terms'
import { capital, counted, listed, plural } from '../figures/words'
import { othersWords, piecesWords } from './pieces'
import type { Pieces } from './pieces'
import { pieceAt } from '../layout/placed'
import { formatMass, formatMassRange, formatMinutes, formatNumber, formatSize } from '../units/format'

/** Whether there is anything to tell yet. */
export const hasBegun = ({ made, others, edging, forecast }: Progress): boolean =>
  made + others > 0 || edging || forecast.length > 0

/** "87 of 120 motifs made, 60 of them joined"; fillers and half motifs beside them. */
export function madeWords(plan: Pick<PlanNumbers, 'progress' | 'motifs' | 'counts'>, terms: Terms): string {
  const { made, joined, joinedAs, others, left, edging } = plan.progress
  const of = `${formatNumber(made)} of ${counted(plan.motifs.length, 'motif')} made`
  const rest = others + left.others
  return [
    of,
    ...(joined > 0 || made > 0 ? [`${formatNumber(joined)} ${joinedAs}`] : []),
    ...(rest > 0 ? [`${formatNumber(others)} of ${othersWords(plan, rest)} made`] : []),
    ...(edging ? [`${termWord('edging', terms)} made`] : []),
  ].join(', ')
}

/**
 * Of a motif that is made but does not count as joined, since others that it is worked into are missing: "Joined once
 * motifs 3 and 12 are made"; empty where nothing is missing.
 */
export function waitingWords(plan: Plan, id: string): string {
  const made = new Set(plan.marks.made)
  const met = plan.order.find(({ motif }) => motif === id)?.joins.flatMap((join) => join.with) ?? []
  const missing = [...new Set(met.map(({ motif }) => motif))].filter((motif) => !made.has(motif))
  if (missing.length === 0) return ''
  const labels = missing.map((motif) => pieceAt(plan, motif)?.label ?? motif)
  return `Joined once ${plural(missing.length, 'motif')} ${listed(labels)} ${plural(missing.length, 'is', 'are')} made.`
}

/** Where there are fields to enter it in: what is on hand once some of it is made. */
const ON_HAND_HINT =
  'Under “on hand”, enter what you have now, and how many motifs were made when you counted it. Or enter what you had at the beginning, with what you have bought since.'

/** What is made and what of it is to be bought; empty where nothing is made. */
export function madeYarnWords(
  { days, edging }: Pick<Progress, 'days' | 'edging'>,
  terms: Terms,
  pieces: Pieces,
): string {
  const sum = (isOwn: (day: string) => boolean): number =>
    days.reduce((total, { day, pieces }) => total + (isOwn(day) ? pieces : 0), 0)
  const [before, since] = [sum((day) => day === ''), sum((day) => day !== '')]
  const made = [
    ...(since > 0 ? [piecesWords(pieces, since)] : []),
    ...(edging ? [`the ${termWord('edging', terms)}`] : []),
  ]
  return [
    ...(before > 0 ? [`${formatNumber(before)} made before you planned: nothing to buy for them.`] : []),
    ...(made.length > 0
      ? [`Made from your yarn: ${listed(made)}; only the rest is on the list to buy.`]
      : []),
  ].join(' ')
}

/** The same with what to enter where something was made from what was on hand: for places with fields for it. */
export function madeYarnAdvice(
  progress: Pick<Progress, 'days' | 'edging'>,
  terms: Terms,
  pieces: Pieces,
): string {
  const words = madeYarnWords(progress, terms, pieces)
  const isFromHand = progress.edging || progress.days.some(({ day, pieces }) => day !== '' && pieces > 0)
  return isFromHand ? `${words} ${ON_HAND_HINT}` : words
}

/** When a motif counts as joined, beside the buttons that mark it. */
export const joinedWhenWords = (joinsAsMade: boolean, joinedAs: JoinedAs): string =>
  joinsAsMade
    ? 'You join these motifs as you make them: one counts as joined once it and the motifs you work it into are made. If you leave a join for later, mark the motif as made, not joined yet.'
    : `A motif marked as made is not ${joinedAs} yet: mark that separately.`

/** "33 motifs, 41 joins, about 12 h", or that nothing is left. */
export function leftWords(plan: Pick<PlanNumbers, 'progress' | 'counts'>): string {
  const { motifs, others, joins, minutes, ends } = plan.progress.left
  const told = [
    ...(motifs > 0 ? [counted(motifs, 'motif')] : []),
    ...(others > 0 ? [othersWords(plan, others)] : []),
    ...(joins > 0 ? [counted(joins, 'join')] : []),
    ...(ends > 0 ? [counted(ends, 'end')] : []),
    ...(minutes && minutes.expected > 0 ? [`about ${formatMinutes(minutes.expected)}`] : []),
  ]
  return told.length > 0 ? told.join(', ') : 'nothing'
}

const nameOf = (yarns: readonly Yarn[], id: string): string =>
  yarns.find((yarn) => yarn.id === id)?.name ?? id

/** "Sand 6.6 g, Moss 13.2 g": what each yarn still has to give. */
export const yarnLeftWords = (
  { left }: Pick<Progress, 'left'>,
  yarns: readonly Yarn[],
  units: UnitSystem,
): string =>
  left.yarns
    .filter(({ grams }) => grams.expected > 0)
    .map(({ id, grams }) => `${nameOf(yarns, id)} ${formatMass(grams.expected, units)}`)
    .join(', ')

/**
 * "At this rate Moss lasts to motif 212 of 300: 100 g go into what is left, so 38 g more are needed."; by the plan, where
 * nobody knows how fast it goes.
 */
export function forecastWords(
  { yarn, lastsTo, spent, next, enough, tight, scant, missing, over, left, plan }: Forecast,
  yarns: readonly Yarn[],
  total: number,
  units: UnitSystem,
): string {
  const name = nameOf(yarns, yarn)
  if (enough && plan)
    return `By the plan ${name} is enough: ${formatMassRange(plan, units)} go into what is left, of ${formatMass(left, units)}.`
  if (tight || scant) {
    const less = tight ? 'the motifs still to be made may differ by' : 'one motif takes'
    const noMore = yarns.find(({ id }) => id === yarn)?.noMore
    return `At this rate ${name} is only just enough: about ${formatMass(over, units)} will be left over, less than ${less}. ${noMore ? 'No more can be had: weigh it again soon.' : 'Weigh it again soon, or have a little more at hand.'}`
  }
  if (enough) return `At this rate ${name} is enough: about ${formatMass(over, units)} will be left over.`
  const to = spent
    ? `is not enough for the next motif in it, number ${formatNumber(next ?? 0)}`
    : `lasts to motif ${formatNumber(lastsTo)} of ${formatNumber(total)}`
  const whole = formatMass(left + missing, units)
  if (plan)
    return `By the plan ${name} ${to}: up to ${whole} go into what is left, so up to ${formatMass(missing, units)} more are needed.`
  return `At this rate ${name} ${to}: ${whole} go into what is left, so ${formatMass(missing, units)} more are needed.`
}

/** "195 g left of 310 g, 48 g short at this rate": what a yarn that was weighed or counted again is bought by. */
export function weighedWords(
  { left, start, missing, enough, plan }: Pick<Forecast, 'left' | 'start' | 'missing' | 'enough' | 'plan'>,
  units: UnitSystem,
): string {
  if (plan) {
    const now = `${formatMass(left, units)} on hand now for up to ${formatMass(plan.high, units)} still to use`
    return enough ? now : `${now}, up to ${formatMass(missing, units)} short`
  }
  const of = `${formatMass(left, units)} left of ${formatMass(start, units)}`
  return enough ? of : `${of}, ${formatMass(missing, units)} short at this rate`
}

/** A day of the log: "December 1, 2026". */
export const dayWords = (day: string, terms: Terms): string => (day ? dayIn(day, terms) : 'day not known')

/** What is told of a plan when its motif is measured again. */
type Remeasured = Pick<PlanNumbers, 'size' | 'yarns' | 'motifs'>

/**
 * What another measure, weight or gauge of the motif changed: "size 130 × 160 cm → 134 × 165 cm; 88 → 86 motifs; Moss
 * 412 g → 430 g"; empty where it changed nothing that is told.
 */
export function remeasuredWords(
  before: Remeasured,
  after: Remeasured,
  yarns: readonly Yarn[],
  units: UnitSystem,
  terms: Terms = 'US',
): string {
  const size = ({ size: { width, height } }: Remeasured) => formatSize(width, height, units)
  const changes: string[] = []
  if (size(before) !== size(after)) changes.push(`size ${size(before)} → ${size(after)}`)
  const [had, has] = [before.motifs.length, after.motifs.length]
  if (had !== has) changes.push(`${formatNumber(had)} → ${counted(has, 'motif')}`)
  const many = recoloured(before, after)
  if (many > 0)
    changes.push(
      saying(terms)`${counted(many, 'motif')} still to be made in another colour (Undo brings back what was)`,
    )
  const grams = (of: Remeasured, id: string) =>
    formatMass(of.yarns.find((yarn) => yarn.id === id)?.grams.expected ?? 0, units)
  for (const id of new Set([...before.yarns, ...after.yarns].map((yarn) => yarn.id))) {
    const [from, to] = [grams(before, id), grams(after, id)]
    if (from !== to) changes.push(`${nameOf(yarns, id)} ${from} → ${to}`)
  }
  return changes.join('; ')
}

/** How many motifs that are there before and after have another colourway: made ones keep theirs. */
function recoloured(before: Remeasured, after: Remeasured): number {
  const placed = ({ motifs }: Remeasured) =>
    Array.isArray(motifs) ? (motifs as readonly Pick<PlacedMotif, 'id' | 'colourway'>[]) : []
  const was = new Map(placed(before).map(({ id, colourway }) => [id, colourway]))
  return placed(after).filter(({ id, colourway }) => was.has(id) && was.get(id) !== colourway).length
}

/** What of a work is entered anew while it is made. */
export type Renewed = 'measures' | 'weight' | 'gauge' | 'rounds' | 'yarn'

/** "New measurements and weight": what a change of the plan follows from. */
export function renewedWords(what: readonly Renewed[], terms: Terms): string {
  const words: Readonly<Record<Renewed, string>> = {
    measures: 'measurements',
    weight: 'weight',
    gauge: termWord('gauge', terms),
    rounds: 'rounds',
    yarn: 'weight of the yarn that is left',
  }
  return `New ${listed(what.map((each) => words[each]))}`
}

/** The first three of a list, and how many more there are. */
const someOf = (all: readonly string[]): string =>
  all.length <= 4 ? listed(all) : `${all.slice(0, 3).join(', ')} and ${formatNumber(all.length - 3)} more`

/** What an edit would do to made motifs, as a question. */
export function lostWords(
  lost: Omit<LostMade, 'stillMarked'>,
  terms: Terms,
): {
  readonly question: string
  readonly yes: string
} {
  const { gone, recoloured, recolouredFrom, rejoined, rejoinedNumbers, renumbered, isSewn } = lost
  const joins = rejoined.length
  // A long list of them tells nobody more than how many there are.
  const isTold = rejoinedNumbers.length === joins && joins <= 12
  const which = isTold
    ? ` (${plural(joins, 'number')} ${listed(rejoinedNumbers.map((number) => formatNumber(number)))})`
    : ''
  const told = [
    ...(gone > 0
      ? [
          `${counted(gone, 'made motif')} would no longer fit in, and ${gone === 1 ? 'its mark' : 'their marks'} would be cleared.`,
        ]
      : []),
    ...(recoloured > 0
      ? [
          saying(
            terms,
          )`${counted(recoloured, 'made motif')} would be shown in another colourway than you made them in: ${listed(recolouredFrom.map(([name, count]) => `${formatNumber(count)} of ${name}`))}.`,
        ]
      : []),
    ...(joins > 0
      ? [
          isSewn
            ? `${counted(joins, 'motif')} that ${joins === 1 ? 'is' : 'are'} sewn down would lie elsewhere: you would have to undo ${joins === 1 ? 'its stitches. It stays' : 'their stitches. They stay'} marked as made, but not as sewn down.`
            : `${counted(joins, 'joined motif')}${which} would be joined to other motifs, at other places or in another way: you would have to undo ${joins === 1 ? 'its joins. It stays' : 'their joins. They stay'} marked as made, but not as joined.`,
        ]
      : []),
    ...(renumbered.length > 0
      ? [
          saying(
            terms,
          )`${counted(renumbered.length, 'made motif')} would get ${renumbered.length === 1 ? 'another number' : 'other numbers'} (${someOf(
            renumbered.map(([was, is]) => `${formatNumber(was)} becomes ${formatNumber(is)}`),
          )}): what you printed or labelled before would no longer be right.`,
        ]
      : []),
  ]
  return {
    question: told.join(' '),
    yes: capital(
      listed([
        ...(gone > 0 ? [`clear ${counted(gone, 'mark')}`] : []),
        ...(recoloured > 0 && gone === 0 ? [`change ${counted(recoloured, 'made motif')}`] : []),
        ...(joins > 0 ? [`mark ${formatNumber(joins)} as not ${isSewn ? 'sewn down' : 'joined'}`] : []),
        ...(renumbered.length > 0 && gone + recoloured + joins === 0
          ? [`renumber ${counted(renumbered.length, 'made motif')}`]
          : []),
      ]),
    ),
  }
}
