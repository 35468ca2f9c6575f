/** Figures of the ledger: a name, a number, its unit, and how it differs from before a change. */
import type { PlanNumbers, Range } from '../../shared-types/plan'
import type { Project, UnitSystem } from '../../shared-types/project'
import { formatEighths, formatLength, formatMinutes, formatNumber } from '../../src-core/units/format'

export interface LedgerFigure {
  readonly name: string
  readonly value: string
  readonly unit: string
  /** "(39–48)" */
  readonly range: string
  /** "+12"; empty where nothing changed. */
  readonly change: string
}

const signed = (value: number, words: (size: number) => string): string =>
  `${value > 0 ? '+' : '−'}${words(Math.abs(value))}`

/** A difference in words, empty where it would round to nothing. */
export function differs(now: number, before: number | undefined, words: (size: number) => string): string {
  if (before === undefined || words(now) === words(before)) return ''
  return signed(now - before, words)
}

const bounds = (range: Range, words: (value: number) => string): string => {
  const [low, high] = [words(range.low), words(range.high)]
  return low === high ? '' : `(${low}–${high})`
}

const hours = (minutes: number): string => formatNumber(minutes / 60, minutes < 600 ? 1 : 0)

/** A count, with its difference. */
export const countFigure = (name: string, now: number, before: number | undefined): LedgerFigure => ({
  ...figure(name, formatNumber(now)),
  change: differs(now, before, formatNumber),
})

/** A count that is told only where there are some, or were before the change that is being tried. */
export const additionFigure = (name: string, now = 0, before?: number): LedgerFigure[] =>
  now > 0 || (before ?? 0) > 0 ? [countFigure(name, now, before)] : []

export const figure = (name: string, value: string, unit = ''): LedgerFigure => ({
  name,
  value,
  unit,
  range: '',
  change: '',
})

export function hoursFigure(plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure {
  return {
    ...figure('Hours', plan.minutes ? hours(plan.minutes.expected) : '–'),
    range: plan.minutes ? bounds(plan.minutes, hours) : '',
    change:
      plan.minutes && before?.minutes
        ? differs(plan.minutes.expected, before.minutes.expected, formatMinutes)
        : '',
  }
}

export function sizeFigure(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure {
  const { width, height } = plan.size
  const isNothing = width === 0 && height === 0
  if (isNothing && !before) return figure('Size', '–')
  const imperial = project.units === 'imperial'
  const one = (mm: number) => (imperial ? formatEighths(mm) : formatNumber(mm / 10, 1))
  const change = before
    ? [differs(width, before.size.width, one), differs(height, before.size.height, one)]
    : ['', '']
  const told = change.some(Boolean) ? change.map((entry) => entry || '0').join(' × ') : ''
  return {
    name: 'Size',
    value: `${one(width)} × ${one(height)}`,
    unit: imperial ? 'in' : 'cm',
    range: '',
    change: told,
  }
}

export function lengthFigure(
  name: string,
  now: number,
  before: number | undefined,
  units: UnitSystem,
): LedgerFigure {
  const words = (mm: number): string => formatLength(mm, units)
  const [value = '', unit = ''] = words(now).split(' ')
  return { ...figure(name, value, unit), change: differs(now, before, words) }
}
