/** When a work will be done, at the pace of its log or at one that is asked about. */
import type { Progress } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { plural } from '../figures/words'
import { formatNumber } from '../units/format'
import { PROGRESS } from './constants'
import { dayAfter, dayIn, daysBetween } from './days'

export interface Pace {
  /** Motifs, half motifs and fillers a day, days of rest included. */
  readonly each: number
  /** The first and the last day of the log that it follows from. */
  readonly from: string
  readonly to: string
}

/** The pace of the latest days of the log; null where fewer than two days are known. */
export function paceOf({ days }: Pick<Progress, 'days'>): Pace | null {
  const known = days.filter(({ day }) => day !== '')
  const to = known.at(-1)?.day
  if (to === undefined) return null
  const latest = known.filter(({ day }) => daysBetween(day, to) < PROGRESS.paceDays)
  const [first] = latest
  if (!first || first.day === to) return null
  const made = latest.reduce((sum, { pieces }) => sum + pieces, 0)
  return { each: made / (daysBetween(first.day, to) + 1), from: first.day, to }
}

/** The day on which the last one is made, at so many a day beginning on the day after `last`; null where none is left. */
export function doneOn({ left }: Pick<Progress, 'left'>, each: number, last: string): string | null {
  const many = left.motifs + left.others
  if (many === 0 || !(each > 0)) return null
  return dayAfter(last, Math.ceil(many / each - 1e-9)) || null
}

/**
 * "At 3 motifs a day, the last of them is made on December 8, 2026.": at the pace of the log, or at `asked` a day. Counted
 * from `today` where somebody knows which day that is and the log ends before it. Empty where there is nothing to say.
 */
export function paceWords(
  progress: Pick<Progress, 'days' | 'left'>,
  terms: Terms,
  { asked, today }: { readonly asked?: number | undefined; readonly today?: string } = {},
): string {
  const log = paceOf(progress)
  const last = [log?.to ?? '', today ?? ''].reduce((a, b) => (a > b ? a : b))
  const each = asked ?? log?.each
  const done = each === undefined || last === '' ? null : doneOn(progress, each, last)
  if (each === undefined || done === null) return ''
  const pace = `${formatNumber(each, 1)} ${plural(Math.round(each * 10) / 10, 'motif')}`
  const since =
    asked === undefined && log ? `, as from ${dayIn(log.from, terms)} to ${dayIn(log.to, terms)}` : ''
  return `At ${pace} a day${since}, the last one is made on ${dayIn(done, terms)}.`
}
