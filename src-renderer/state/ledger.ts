/** The ledger: what follows from everything, and how it differs from before. */
import type { KitAccount, KitYarnRun, PlanNumbers, Range, YarnNeed } from '../../shared-types/plan'
import type { Project, UnitSystem } from '../../shared-types/project'
import {
  formatEighths,
  formatLength,
  formatMass,
  formatMassRange,
  formatMinutes,
  formatMoney,
  formatNumber,
  formatYarnLength,
} from '../../src-core/units/format'
import { ASSUMED, isAssumed, starred } from '../../src-core/figures/yarn-words'
import { termWord } from '../../src-core/stitches/terms'
import { counted } from './summaries'

interface LedgerFigure {
  readonly name: string
  readonly value: string
  readonly unit: string
  /** "(39–48)" */
  readonly range: string
  /** "+12"; empty where nothing changed. */
  readonly change: string
}

interface LedgerYarn {
  readonly id: string
  readonly name: string
  readonly colour: string
  /** Grams: what is needed at the high value, what is on hand, what one ball weighs. */
  readonly need: number
  readonly onHand: number
  readonly ball: number | null
  readonly words: string
  /** "short 4 balls"; empty where it is enough. */
  readonly short: string
  readonly change: string
}

interface Ledger {
  readonly figures: readonly LedgerFigure[]
  readonly yarns: readonly LedgerYarn[]
}

const signed = (value: number, words: (size: number) => string): string =>
  `${value > 0 ? '+' : '−'}${words(Math.abs(value))}`

/** A difference in words, empty where it would round to nothing. */
function differs(now: number, before: number | undefined, words: (size: number) => string): string {
  if (before === undefined || words(now) === words(before)) return ''
  return signed(now - before, words)
}

const bounds = (range: Range, words: (value: number) => string): string => {
  const [low, high] = [words(range.low), words(range.high)]
  return low === high ? '' : `(${low}–${high})`
}

const hours = (minutes: number): string => formatNumber(minutes / 60, minutes < 600 ? 1 : 0)

/** Cost of what is to be bought; null where no price is known. */
export function costOf(plan: PlanNumbers): number | null {
  const known = plan.yarns.filter((yarn) => yarn.cost !== null)
  return known.length === 0 ? null : known.reduce((sum, yarn) => sum + (yarn.cost ?? 0), 0)
}

function sizeFigure(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure {
  const { width, height } = plan.size
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

function yarnLine(project: Project, need: YarnNeed, before: PlanNumbers | null): LedgerYarn {
  const yarn = project.yarns?.find((entry) => entry.id === need.id)
  const units = project.units ?? 'metric'
  const [one, many] = [termWord('ball', project.terms ?? 'US'), termWord('balls', project.terms ?? 'US')]
  const { onHand } = need
  const was = before?.yarns.find((entry) => entry.id === need.id)
  const words = [
    starred(formatMassRange(need.grams, units), isAssumed(need, 'grams')),
    need.balls === null ? '' : starred(counted(need.balls, one, many), isAssumed(need, 'balls')),
    onHand > 0 ? starred(`${formatMass(onHand, units)} on hand`, isAssumed(need, 'onHand')) : '',
  ].filter(Boolean)
  const balls = before ? differs(need.balls ?? 0, was?.balls ?? 0, formatNumber) : ''
  const change = balls
    ? `${balls} ${Math.abs((need.balls ?? 0) - (was?.balls ?? 0)) === 1 ? one : many}`
    : before
      ? differs(need.grams.expected, was?.grams.expected ?? 0, (grams) => formatMass(grams, units))
      : ''
  return {
    id: need.id,
    name: yarn?.name ?? need.id,
    colour: yarn?.colour ?? 'transparent',
    need: need.grams.high,
    onHand,
    ball: yarn?.ballGrams ?? null,
    words: words.join(' · '),
    short: need.toBuy ? starred(`buy ${formatNumber(need.toBuy)}`, isAssumed(need, 'toBuy')) : '',
    change,
  }
}

/** A yarn of a run of kits: what is wound for each, and what is bought for all of them. */
function kitLine(project: Project, kit: KitAccount, run: KitYarnRun, before: PlanNumbers | null): LedgerYarn {
  const yarn = project.yarns?.find((entry) => entry.id === run.yarn)
  const units = project.units ?? 'metric'
  const mass = (grams: number): string => formatMass(grams, units)
  const wound = kit.perKit.find((entry) => entry.yarn === run.yarn)
  const each = wound?.grams ?? 0
  const was = before?.kit?.perKit.find((entry) => entry.yarn === run.yarn)?.grams
  const packs = run.packs.map(({ count, grams }) => `${formatNumber(count)} × ${mass(grams)}`).join(', ')
  return {
    id: run.yarn,
    name: yarn?.name ?? run.yarn,
    colour: yarn?.colour ?? 'transparent',
    need: run.grams + run.spares + run.loss,
    onHand: 0,
    ball: yarn?.ballGrams ?? null,
    words: [
      starred(`${mass(each)} in each`, wound?.assumed?.includes('grams') ?? false),
      packs && starred(packs, run.assumed ?? false),
    ]
      .filter(Boolean)
      .join(' · '),
    short: '',
    change: before ? differs(each, was, mass) : '',
  }
}

/** A count, with its difference. */
const countFigure = (name: string, now: number, before: number | undefined): LedgerFigure => ({
  ...figure(name, formatNumber(now)),
  change: differs(now, before, formatNumber),
})

/** A count that is told only where there are some, or were before the change that is being tried. */
const additionFigure = (name: string, now = 0, before?: number): LedgerFigure[] =>
  now > 0 || (before ?? 0) > 0 ? [countFigure(name, now, before)] : []

const figure = (name: string, value: string, unit = ''): LedgerFigure => ({
  name,
  value,
  unit,
  range: '',
  change: '',
})

function hoursFigure(plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure {
  return {
    ...figure('Hours', plan.minutes ? hours(plan.minutes.expected) : '–'),
    range: plan.minutes ? bounds(plan.minutes, hours) : '',
    change:
      plan.minutes && before?.minutes
        ? differs(plan.minutes.expected, before.minutes.expected, formatMinutes)
        : '',
  }
}

/** What is told of each kind of layout: of a blanket its size and joins, of a garland its cord and wall. */
function kindFigures(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure[] {
  const units = project.units ?? 'metric'
  const ends = countFigure('Ends', plan.ends, before?.ends)
  const time = hoursFigure(plan, before)
  if (plan.cord && plan.items) {
    const { cord, items, swags } = plan
    const wall = swags?.width ?? cord.length
    const wallBefore = before?.swags?.width ?? before?.cord?.length
    return [
      lengthFigure('Cord', cord.length, before?.cord?.length, units),
      lengthFigure('Wall', wall, wallBefore, units),
      countFigure('On it', items.length, before?.items?.length),
      ...(cord.chains === null
        ? []
        : [countFigure('Chains', cord.whole.chains ?? 0, before?.cord?.whole.chains ?? undefined)]),
      ends,
      time,
    ]
  }
  if (project.layout?.kind === 'garland') return [countFigure('On it', 0, undefined), ends, time]
  const size = sizeFigure(project, plan, before)
  if (project.layout?.kind === 'applique') {
    const closest = plan.clearances?.items ?? null
    const thread = plan.stitching?.thread ?? 0
    return [
      size,
      countFigure('Items', plan.motifs.length, before?.motifs.length),
      ...(closest === null
        ? []
        : [lengthFigure('Closest', closest, before?.clearances?.items ?? undefined, units)]),
      { ...figure('Thread', formatYarnLength(thread, units)) },
      time,
    ]
  }
  return [
    size,
    countFigure('Motifs', plan.counts.motifs, before?.counts.motifs),
    ...additionFigure('Fillers', plan.counts.fillers, before?.counts.fillers),
    ...additionFigure('Halves', plan.counts.halves, before?.counts.halves),
    countFigure('Joins', plan.counts.joins ?? 0, before?.counts.joins),
    ends,
    time,
  ]
}

function lengthFigure(
  name: string,
  now: number,
  before: number | undefined,
  units: UnitSystem,
): LedgerFigure {
  const words = (mm: number): string => formatLength(mm, units)
  const [value = '', unit = ''] = words(now).split(' ')
  return { ...figure(name, value, unit), change: differs(now, before, words) }
}

/** What is to be bought for one, or for the whole run of a kit and what one is sold for. */
function moneyFigures(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure[] {
  const money = (amount: number) => formatMoney(amount, project.currency ?? 'EUR')
  const sum = (
    name: string,
    now: number | null | undefined,
    was: number | null | undefined,
    assumed: boolean,
  ) => ({
    ...figure(
      name,
      now === null || now === undefined ? '–' : money(now),
      typeof now === 'number' && assumed ? ASSUMED : '',
    ),
    change: typeof now === 'number' && typeof was === 'number' ? differs(now, was, money) : '',
  })
  const { kit } = plan
  const guessed = plan.yarns.some((need) => isAssumed(need, 'cost'))
  if (!kit) return [sum('To buy', costOf(plan), before ? costOf(before) : null, guessed)]
  const assumed = kit.assumed?.includes('cost') ?? false
  return [
    sum(`Run of ${formatNumber(kit.count)}`, kit.runCost, before?.kit?.runCost, assumed),
    sum(
      kit.asked && kit.asked.tax > 0 ? 'Kit, with tax' : 'Kit',
      kit.asked?.withTax,
      before?.kit?.asked?.withTax,
      assumed,
    ),
  ]
}

/** Everything that the ledger tells, with differences from `before` where something is being tried. */
export function ledgerOf(project: Project, plan: PlanNumbers, before: PlanNumbers | null): Ledger {
  const figures = [...kindFigures(project, plan, before), ...moneyFigures(project, plan, before)]
  const told = before
    ? [
        ...plan.yarns,
        ...before.yarns.filter((was) => !plan.yarns.some((yarn) => yarn.id === was.id)).map(gone),
      ]
    : plan.yarns
  const kit = plan.kit
  const lines = kit ? kit.run.map((run) => kitLine(project, kit, run, before)) : []
  return { figures, yarns: kit ? lines : told.map((need) => yarnLine(project, need, before)) }
}

/** A yarn that was needed before and is not needed now. */
const gone = (need: YarnNeed): YarnNeed => ({
  ...need,
  grams: { low: 0, expected: 0, high: 0 },
  metres: null,
  balls: need.balls === null ? null : 0,
  toBuy: need.toBuy === null ? null : 0,
})
