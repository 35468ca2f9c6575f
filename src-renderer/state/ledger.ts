/** The ledger: what follows from everything, and how it differs from before. */
import { heldAgainst } from '../../src-core/progress/held-against'
import { weighedWords } from '../../src-core/progress/words'
import type { KitAccount, KitYarnRun, PlanNumbers, YarnNeed } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { formatMass, formatMoney, formatNumber } from '../../src-core/units/format'
import {
  ASSUMED,
  isAssumed,
  amountWords,
  isNeedKnown,
  starred,
  unpriced,
} from '../../src-core/figures/yarn-words'
import { termWord } from '../../src-core/stitches/terms'
import { isMissing } from '../../src-core/materials/no-more'
import { PENNY, wholeCost } from '../../src-core/materials/whole-cost'
import { kindOf } from '../kinds/kinds'
import { counted, plural } from '../../src-core/figures/words'
import { hasBegun } from '../../src-core/progress/words'
import { differs, figure } from './ledger-figures'
import type { LedgerFigure } from './ledger-figures'
import { settled } from '../../src-core/settled'

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

/** What a yarn is called. */
export const yarnName = (project: Project, id: string): string =>
  project.yarns?.find((yarn) => yarn.id === id)?.name ?? id

/** Cost of what is to be bought; null where no price is known. */
export function costOf(plan: PlanNumbers): number | null {
  const known = plan.yarns.filter((yarn) => yarn.cost !== null)
  return known.length === 0 ? null : known.reduce((sum, yarn) => sum + (yarn.cost ?? 0), 0)
}

/** How short it is stands before it, once it was weighed again. */
const NO_MORE = 'no more to be had'

function yarnLine(
  project: Project,
  plan: PlanNumbers,
  need: YarnNeed,
  before: PlanNumbers | null,
): LedgerYarn {
  const yarn = project.yarns?.find((entry) => entry.id === need.id)
  const { units } = settled(project)
  const [one, many] = [termWord('ball', settled(project).terms), termWord('balls', settled(project).terms)]
  const { onHand } = need
  const held = heldAgainst(need, plan.progress)
  const was = before?.yarns.find((entry) => entry.id === need.id)
  const isKnown = isNeedKnown(need)
  // Once it is weighed again, what is bought follows what is left of it and how fast it goes.
  const weighed = plan.progress.forecast.find((entry) => entry.yarn === need.id)
  const onHandWords = weighed
    ? weighedWords(weighed, units)
    : onHand > 0 && starred(`${formatMass(onHand, units)} on hand`, isAssumed(need, 'onHand'))
  const words = [
    starred(amountWords(need, units), isKnown && isAssumed(need, 'grams')),
    need.balls === null || !isKnown ? '' : starred(counted(need.balls, one, many), isAssumed(need, 'balls')),
    onHandWords,
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
    need: held.need,
    onHand: held.there,
    ball: yarn?.ballGrams ?? null,
    words: words.join(' · '),
    short: need.noMore
      ? isMissing(need)
        ? starred(
            weighed ? NO_MORE : `${formatMass(need.noMore.missing, units)} short, ${NO_MORE}`,
            isAssumed(need, 'grams'),
          )
        : ''
      : need.toBuy
        ? starred(`buy ${formatNumber(need.toBuy)}`, isAssumed(need, 'toBuy'))
        : '',
    change,
  }
}

/** A yarn of a run of kits: what is wound for each, and what is bought for all of them. */
function kitLine(project: Project, kit: KitAccount, run: KitYarnRun, before: PlanNumbers | null): LedgerYarn {
  const yarn = project.yarns?.find((entry) => entry.id === run.yarn)
  const { units } = settled(project)
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

/** Balls to buy, where no yarn has a price: "–" would look like none. Null where there is a price, or nothing to buy. */
function ballsToBuy(project: Project, plan: PlanNumbers): LedgerFigure | null {
  const balls = plan.yarns.reduce((sum, need) => sum + (need.toBuy ?? 0), 0)
  if (costOf(plan) !== null || balls === 0) return null
  const { terms } = settled(project)
  const guessed = plan.yarns.some((need) => (need.toBuy ?? 0) > 0 && isAssumed(need, 'toBuy'))
  const unit = plural(balls, termWord('ball', terms), termWord('balls', terms))
  return figure('To buy', starred(formatNumber(balls), guessed), unit)
}

/** What is to be bought for one, or for the whole run of a kit and what one is sold for. */
function moneyFigures(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure[] {
  const money = (amount: number) => formatMoney(amount, settled(project).currency)
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
  if (!kit) {
    const toBuy =
      ballsToBuy(project, plan) ?? sum('To buy', costOf(plan), before ? costOf(before) : null, guessed)
    // There is no room here for their names, which stand in the place of the yarns.
    const left = unpriced(plan.yarns).length
    const bought =
      left > 0 && costOf(plan) !== null
        ? { ...toBuy, unit: `${toBuy.unit} and ${left} unpriced`.trim() }
        : toBuy
    // What is made already is no longer to buy, but it was paid for.
    const { yarns } = settled(project)
    const whole = wholeCost(plan.yarns, yarns)
    const isLess = hasBegun(plan.progress) && whole !== null && whole - (costOf(plan) ?? 0) > PENNY
    return isLess
      ? [bought, sum('Yarn in all', whole, before ? wholeCost(before.yarns, yarns) : null, guessed)]
      : [bought]
  }
  const assumed = kit.assumed?.includes('cost') ?? false
  return [
    sum(`Batch of ${formatNumber(kit.count)}`, kit.runCost, before?.kit?.runCost, assumed),
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
  const figures = [
    ...kindOf(project).figures(project, plan, before),
    ...madeFigure(plan),
    ...moneyFigures(project, plan, before),
  ]
  const told = before
    ? [
        ...plan.yarns,
        ...before.yarns.filter((was) => !plan.yarns.some((yarn) => yarn.id === was.id)).map(gone),
      ]
    : plan.yarns
  const kit = plan.kit
  const lines = kit ? kit.run.map((run) => kitLine(project, kit, run, before)) : []
  return { figures, yarns: kit ? lines : told.map((need) => yarnLine(project, plan, need, before)) }
}

/** How many are made, once one is. */
const madeFigure = ({ progress, motifs }: PlanNumbers): LedgerFigure[] =>
  hasBegun(progress) ? [figure('Made', formatNumber(progress.made), `of ${formatNumber(motifs.length)}`)] : []

/** A yarn that was needed before and is not needed now. */
const gone = (need: YarnNeed): YarnNeed => ({
  ...need,
  grams: { low: 0, expected: 0, high: 0 },
  metres: null,
  balls: need.balls === null ? null : 0,
  toBuy: need.toBuy === null ? null : 0,
  ...(need.noMore && { noMore: { missing: 0 } }),
})
