/** How far the work has come, for people who read `petalyard plan`. */
import type { Plan } from '../../../shared-types/plan'
import { counted } from '../../../src-core/figures/words'
import {
  dayWords,
  forecastWords,
  hasBegun,
  leftWords,
  madeWords,
  yarnLeftWords,
} from '../../../src-core/progress/words'
import { paceWords } from '../../../src-core/progress/pace'
import { formatNumber } from '../../../src-core/units/format'
import { listing, wrap } from '../text'

/** Days that are shown unless all are asked for: the last ones. */
const DAYS_SHOWN = 7

/** What is made, what is left, how far weighed yarn goes and what was made day by day; nothing before it is begun. */
export function progressSection(plan: Plan, width: number, isWhole: boolean): string[] {
  const { progress, settled } = plan
  if (!hasBegun(progress)) return []
  const { yarns, units, terms } = settled
  const left = yarnLeftWords(progress, yarns, units)
  const days = isWhole ? progress.days : progress.days.slice(-DAYS_SHOWN)
  const earlier = progress.days.length - days.length
  const log = days.map(({ day, pieces }) => `${dayWords(day, terms)}: ${formatNumber(pieces)}`)
  const pace = paceWords(progress, terms)
  const pairs: [string, string][] = [
    ['Made', madeWords(plan, terms)],
    ['Left', leftWords(plan)],
    ...(left ? [['Yarn', left] satisfies [string, string]] : []),
    ...(log.length > 0
      ? [
          [
            'By day',
            [...(earlier > 0 ? [`${counted(earlier, 'day')} before`] : []), ...log].join('; '),
          ] satisfies [string, string],
        ]
      : []),
  ]
  return [
    '',
    'Progress',
    ...listing(pairs, width),
    ...(pace ? wrap(pace, width) : []),
    ...progress.forecast.flatMap((forecast) =>
      wrap(forecastWords(forecast, yarns, plan.motifs.length, units), width),
    ),
  ]
}
