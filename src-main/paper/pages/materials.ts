/** Materials: yarn by colour with its range, what to buy, what it is for, gauge, hook, edging, ends and time. */
import type { KitAccount, YarnNeed, YarnNumber } from '../../../shared-types/plan'
import type { UnitSystem, Yarn } from '../../../shared-types/project'
import { ENDS_WORDS } from '../../../src-core/edging/words'
import { blanketOf } from '../../../src-core/plans/layouts'
import { partOf } from '../../../src-core/figures/part'
import { hookWords } from '../../../src-core/stitches/hooks'
import { timeWords } from '../../../src-core/figures/time-words'
import { closingsTold, heightWords, openWords } from '../../../src-core/figures/closing-words'
import { capital, listed } from '../../../src-core/figures/words'
import {
  buyingRemark,
  noMoreWords,
  isAssumed,
  isNeedKnown,
  lengthAlone,
  NOT_KNOWN,
  splitRemark,
  starred,
  aloneWords,
  starWords,
  sumRemark,
} from '../../../src-core/figures/yarn-words'
import { stillNeeded } from '../../../src-core/progress/still-needed'
import { madeYarnWords } from '../../../src-core/progress/words'
import { termWord } from '../../../src-core/stitches/terms'
import {
  formatLength,
  formatMass,
  formatMassRange,
  formatMinutes,
  formatMoney,
  formatNumber,
  formatYarnLength,
  isMassShown,
  totalMass,
  totalYarnLength,
} from '../../../src-core/units/format'
import { withPart } from '../below'
import { Flow } from '../flow'
import { chainGaugeWords, gaugeWords, plannedGauge } from '../gauge-words'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { HEADINGS, PAGE_NAMES } from '../words'
import { MOTIF_WORDS } from '../words-motif'
import { TEMPLATE_WORDS } from '../words-template'
import { SWATCH_INSET, yarnSwatch } from './swatch'
import { sewsWithNeedle, sidesJoined } from '../../../src-core/figures/seam-words'
import { marksIn } from '../../../src-core/joins/words'
import { ballSizes, edgingWords, fillerWords, finishedSize, MATERIAL_WORDS } from '../words-materials'

const LABEL = 34

function yarnRow(job: Job, need: YarnNeed, yarn: Yarn | undefined): string[] {
  const { units, settled } = job
  const other = units === 'metric' ? 'imperial' : 'metric'
  const length = (system: 'metric' | 'imperial'): string =>
    need.metres ? is(formatYarnLength(need.metres.expected, system), 'metres') : '–'
  const is = (words: string, number: YarnNumber): string => starred(words, isAssumed(need, number))
  const onHand = need.onHand > 0 ? is(formatMass(need.onHand, units), 'onHand') : '–'
  const lengthsAlone = lengthAlone(need) ? [length('metric'), length('imperial')] : ['–', '–']
  if (!isNeedKnown(need))
    return [yarn?.name || need.id, NOT_KNOWN, '–', ...lengthsAlone, '–', onHand, '–', '–']
  return [
    yarn?.name || need.id,
    is(formatMassRange(need.grams, units), 'grams'),
    is(formatMass(need.grams.expected, other), 'grams'),
    length('metric'),
    length('imperial'),
    need.balls === null ? '–' : is(formatNumber(need.balls), 'balls'),
    onHand,
    need.toBuy ? is(formatNumber(need.toBuy), 'toBuy') : '–',
    need.cost === null || need.toBuy === 0 ? '–' : is(formatMoney(need.cost, settled.currency), 'cost'),
  ]
}

/** What the table asks for; a pattern is for who has nothing made. */
const neededFor = ({ plan, settled, isPattern }: Job): readonly YarnNeed[] =>
  isPattern ? plan.yarns : stillNeeded(plan, settled.yarns)

function totalRow(job: Job): string[] {
  const { units, settled } = job
  const yarns = neededFor(job)
  const sum = (value: (need: YarnNeed) => number | null): number =>
    yarns.reduce((total, need) => total + (value(need) ?? 0), 0)
  const known = (value: (need: YarnNeed) => number | null): boolean =>
    yarns.some((need) => value(need) !== null)
  const mass = (shown: UnitSystem): string => {
    const parts = yarns.map((need) => need.grams.expected)
    return is(formatMass(totalMass(parts, shown), shown), 'grams')
  }
  const length = (shown: UnitSystem): string => {
    const parts = yarns.map((need) => need.metres?.expected ?? 0)
    return is(formatYarnLength(totalYarnLength(parts, shown), shown), 'metres')
  }
  const whole = yarns.every((need) => need.metres !== null)
  const is = (words: string, number: YarnNumber): string =>
    starred(
      words,
      yarns.some((need) => isAssumed(need, number)),
    )
  return [
    MATERIAL_WORDS.together,
    mass(units),
    mass(units === 'metric' ? 'imperial' : 'metric'),
    whole ? length('metric') : '',
    whole ? length('imperial') : '',
    known((need) => need.balls) ? is(formatNumber(sum((need) => need.balls)), 'balls') : '',
    '',
    known((need) => need.toBuy) ? is(formatNumber(sum((need) => need.toBuy)), 'toBuy') : '',
    known((need) => need.cost)
      ? is(
          formatMoney(
            sum((need) => need.cost),
            settled.currency,
          ),
          'cost',
        )
      : '',
  ]
}

function yarnTable(job: Job): { columns: readonly Column[]; rows: Row[] } {
  if (job.plan.kit) return kitTable(job, job.plan.kit)
  const yarns = new Map(job.settled.yarns.map((yarn) => [yarn.id, yarn]))
  const balls = termWord('balls', job.terms)
  const all = MATERIAL_WORDS.columns(balls, job.units)
  const headings = job.isPattern ? all.slice(0, -MATERIAL_WORDS.own.length) : all
  const columns = headings.map((heading, i) => ({
    heading,
    align: i === 0 ? ('left' as const) : ('right' as const),
  }))
  const needs = neededFor(job)
  const rows: Row[] = needs.map((need) => {
    const yarn = yarns.get(need.id)
    return {
      cells: yarnRow(job, need, yarn).slice(0, headings.length),
      mark: yarnSwatch(yarn?.colour, job.style),
    }
  })
  // Nobody knows what it comes to where one of them is not known.
  // What is needed in all and what is still needed is no sum.
  const isAlike = needs.every(({ again }) => again === needs[0]?.again)
  const has = (i: number): boolean => rows.some(({ cells }) => cells[i] !== '–')
  const [onHand, toBuy] = MATERIAL_WORDS.own.map((heading) => headings.indexOf(heading)) as [number, number]
  // Beside what is on hand a dash says that nothing is to be bought.
  const filled = headings.map((_, i) => i < NAMED || has(i) || (i === toBuy && has(onHand)))
  if (rows.length > 1 && isAlike && needs.every(isNeedKnown))
    rows.push({ cells: totalRow(job).slice(0, headings.length), bold: true })
  const only = <T>(cells: readonly T[]): T[] => cells.filter((_, i) => filled[i])
  return { columns: only(columns), rows: rows.map((row) => ({ ...row, cells: only(row.cells) })) }
}

/** Yarn and what is needed of it always stand in the table; a column that no row has anything in does not. */
const NAMED = 2

/**
 * With a kit these pages are for who buys it, and tell what lies in it, as the card does: what its seller needs for one,
 * has, buys and pays is theirs alone.
 */
function kitTable({ plan, settled, units, style }: Job, kit: KitAccount): { columns: Column[]; rows: Row[] } {
  const other = units === 'metric' ? 'imperial' : 'metric'
  const yarns = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const columns = MATERIAL_WORDS.inKit(units).map((heading, i) => ({
    heading,
    align: i === 0 ? ('left' as const) : ('right' as const),
  }))
  const amounts = new Map(kit.perKit.map((amount) => [amount.yarn, amount]))
  const rows = plan.yarns.map(({ id }): Row => {
    const amount = amounts.get(id)
    const name = yarns.get(id)?.name || id
    const mark = yarnSwatch(yarns.get(id)?.colour, style)
    if (!amount) return { cells: [name, NOT_KNOWN, '–', '–', '–'], mark }
    const { grams, metres, assumed = [] } = amount
    const mass = (system: UnitSystem): string => starred(formatMass(grams, system), assumed.includes('grams'))
    const length = (system: UnitSystem): string =>
      metres === null ? '–' : starred(formatYarnLength(metres, system), assumed.includes('metres'))
    return { cells: [name, mass(units), mass(other), length('metric'), length('imperial')], mark }
  })
  return { columns, rows }
}

/** What the expected grams are made of; columns that are empty everywhere are left out. */
function partsTable(job: Job): { columns: readonly Column[]; rows: Row[] } | null {
  if (job.plan.kit) return null
  const yarns = new Map(job.settled.yarns.map((yarn) => [yarn.id, yarn]))
  const parts = MATERIAL_WORDS.parts(termWord('edging', job.terms))
  const shown = parts.filter(({ key }) =>
    job.plan.yarns.some((need) => isMassShown(need.parts[key] ?? 0, job.units)),
  )
  if (shown.length < 2) return null
  const columns = [
    { heading: MATERIAL_WORDS.yarn, align: 'left' as const },
    ...shown.map(({ heading }) => ({ heading, align: 'right' as const })),
  ]
  const rows = job.plan.yarns.map((need) => {
    const yarn = yarns.get(need.id)
    const cells = [
      yarn?.name || need.id,
      ...shown.map(({ key }) =>
        isMassShown(need.parts[key] ?? 0, job.units)
          ? starred(formatMass(need.parts[key] ?? 0, job.units), isAssumed(need, 'grams'))
          : '–',
      ),
    ]
    return { cells, mark: yarnSwatch(yarn?.colour, job.style) }
  })
  return { columns, rows }
}

/** Where numbers of the table come from: a weight that was split, a band that nobody entered. */
function yarnRemarks({ plan, settled, terms, units, isPattern }: Job): [string, string][] {
  const names = new Map(settled.yarns.map((yarn) => [yarn.id, yarn.name || yarn.id]))
  const nameOf = (id: string): string => names.get(id) ?? id
  const split = splitRemark(plan.yarns, nameOf)
  const unpriced = isPattern ? '' : sumRemark(plan.yarns, nameOf)
  const missing = isPattern ? '' : noMoreWords(plan.yarns, nameOf, units)
  const isStarred = plan.yarns.some((need) => need.assumed)
  const used = plan.yarns.flatMap((need) => settled.yarns.find(({ id }) => id === need.id) ?? [])
  const again = (isCounted: boolean): string[] =>
    (isPattern ? [] : plan.progress.forecast).flatMap((each) =>
      (each.plan !== undefined) === isCounted ? [nameOf(each.yarn)] : [],
    )
  const [weighed, counted] = [again(false), again(true)]
  const sizes = ballSizes(used, termWord('ball', terms))
  const row = (label: string, words: string): [string, string][] => (words === '' ? [] : [[label, words]])
  return [
    ...row('Missing', missing && `${missing}.`),
    ...row(capital(termWord('balls', terms)), sizes),
    ...row('Weighed again', weighed.length > 0 ? MATERIAL_WORDS.weighed(listed(weighed)) : ''),
    ...row('Counted again', counted.length > 0 ? MATERIAL_WORDS.counted(listed(counted)) : ''),
    ...row('Weight', split && MATERIAL_WORDS.split(split, terms)),
    ...row('Cost', unpriced),
    ...row('Assumed', isStarred ? starWords(termWord('ball', terms)) : ''),
  ]
}

/** A yarn for who has nothing of it. */
const bought = ({ again: _, noMore: __, ...rest }: YarnNeed) => ({ ...rest, onHand: 0, toBuy: rest.balls })

/** Label and words, in the order in which they are asked for. */
function facts(job: Job, notes: readonly string[]): [string, string][] {
  const { plan, settled, terms, units } = job
  const list = notes.map((text): [string, string] => [HEADINGS.notes, text])
  const gauge = plannedGauge(job)
  const told = gaugeWords(job, gauge)
  if (told) list.push([capital(termWord('gauge', terms)), told])
  const chains = chainGaugeWords(job)
  if (chains !== '') list.push(['Cord', chains])
  if (gauge?.hook) list.push(['Hook', hookWords(gauge.hook, terms)])
  const edging = edgingWords(plan.edging, job)
  const at = blanketOf(settled)?.edging?.ends ?? 'both'
  const both = at === 'both' ? '; the counts are those of both together' : ''
  const ends = plan.round ? ` It is worked ${ENDS_WORDS[at]}${both}.` : ''
  if (edging) list.push([capital(termWord('edging', terms)), `${edging}${ends}`])
  if (plan.fillers.length > 0) list.push(['Fillers', fillerWords(job)])
  if (plan.halves.length > 0) list.push(['Half motifs', MATERIAL_WORDS.halves(plan.halves.length)])
  list.push(['Finished size', finishedSize(job)])
  if (plan.round) {
    const high = heightWords(plan)
    if (high) list.push(['Height', `${high}.`])
    const open = openWords(plan)
    if (open) list.push(['Open ends', open])
    list.push(...closingsTold(plan, terms).map(([name, words]): [string, string] => [name, words]))
  }
  if (plan.stitching) {
    const { outline, thread } = plan.stitching
    const length = formatYarnLength(thread, units)
    const other = formatYarnLength(thread, units === 'metric' ? 'imperial' : 'metric')
    list.push(['Sewing thread', TEMPLATE_WORDS.thread(formatLength(outline, units), length, other)])
  }
  const { joining } = settled
  const sides = sidesJoined(plan.counts, settled)
  if (sides) list.push([joining.rule === 'seam' ? 'Seams' : 'Joined sides', sides])
  list.push(['Ends', MATERIAL_WORDS.ends(plan.ends)])
  list.push(...tools(job))
  if (plan.minutes) {
    const { low, expected, high } = plan.minutes
    const range =
      formatMinutes(low) === formatMinutes(high) ? '' : ` (${formatMinutes(low)} to ${formatMinutes(high)})`
    const parts = plan.time ? `: ${timeWords(plan.time, terms)}` : ''
    list.push(['Time', `about ${formatMinutes(expected)}${range}${parts}`])
  }
  if (plan.kit) {
    if (plan.kit.perKit.some(({ assumed }) => assumed))
      list.push(['Assumed', starWords(termWord('ball', terms))])
    return list
  }
  list.push(['Allowed for', MATERIAL_WORDS.waste(formatNumber(settled.allowance.wastePercent, 1))])
  list.push(...yarnRemarks(job))
  const made = job.isPattern ? '' : madeYarnWords(plan.progress, terms, plan)
  if (made) list.push(['Made', made])
  const why = buyingRemark(job.isPattern ? plan.yarns.map(bought) : plan.yarns, settled.yarns, units, terms)
  const again = job.isPattern ? '' : MATERIAL_WORDS.again
  list.push(['Buying', [MATERIAL_WORDS.buying(terms), again, why].filter(Boolean).join(' ')])
  const alone = job.isPattern ? '' : aloneWords(plan.yarns)
  if (alone) list.push(['On hand', alone])
  return list
}

/** What is needed besides yarn and hook. */
function tools({ plan }: Job): [string, string][] {
  const marks = marksIn([plan.motif, ...plan.accounts])
  const isSewn = sewsWithNeedle(plan)
  return [
    ...(isSewn || plan.ends > 0 ? [['Needle', MATERIAL_WORDS.needle(isSewn)] as [string, string]] : []),
    ...(marks === null ? [] : [['Stitch markers', MATERIAL_WORDS.markers(marks)] as [string, string]]),
  ]
}

/** What of them may stand below the rows of a page that is not half full. */
export type Filling = 'all' | 'tables' | 'none'

/**
 * The pages with those of materials; `notes` are those that page 1 had no room for, and `fills` what of them may begin
 * below the last page where that only fills it.
 */
export function withMaterials(
  job: Job,
  before: readonly Draft[],
  notes: readonly string[] = [],
  fills: Filling = 'all',
): Draft[] {
  if (job.leftOut.has('materials')) return [...before]
  const { top: first } = newSheet(job)
  const set = (top: number) => materialPages(job, notes, top, fills === 'tables' && top > first)
  return withPart(job, before, set, fills !== 'none')
}

/** Least room for a heading with a table under it, in mm. */
const TABLE_ROOM = 36

function materialPages(job: Job, notes: readonly string[], top: number, apart: boolean): Draft[] {
  const first = newSheet(job)
  const flow = new Flow(job, first, first.titleAt(HEADINGS.materials, top) + 1, HEADINGS.materials)
  const tables = [yarnTable(job), partsTable(job)].flatMap((table) => table ?? [])
  tables.forEach(({ columns, rows }, i) => {
    if (rows.length === 0) return
    flow.need(TABLE_ROOM)
    if (i > 0) flow.y = flow.sheet.heading(HEADINGS.parts, flow.sheet.left, flow.y)
    const table = new Table(flow.sheet, columns, rows, { inset: SWATCH_INSET })
    flow.y = table.draw(flow.sheet, flow.y) + 6
    while (table.goesOn) {
      flow.need(Infinity)
      flow.y = table.draw(flow.sheet, flow.y) + 6
    }
  })
  const list = facts(job, notes)
  const width = first.inner - LABEL
  const heightOf = ([, text]: [string, string]): number => first.heightOf(text, width) + 1.6
  flow.need(apart ? Infinity : 8 + heightOf(list[0]!))
  flow.y = flow.sheet.heading(HEADINGS.also, flow.sheet.left, flow.y)
  const told = partOf('L')
  for (const fact of list) {
    if (flow.need(heightOf(fact)))
      flow.y = flow.sheet.heading(MOTIF_WORDS.goesOn(HEADINGS.also), flow.sheet.left, flow.y)
    const { sheet, y } = flow
    flow.y = sheet.labelled(
      told,
      () => sheet.text(fact[0], sheet.left, y, { size: TYPE.body, weight: 'bold' }),
      () => sheet.paragraph(fact[1], sheet.left + LABEL, y, width) + 1.6,
    )
  }
  return flow.drafts('materials', PAGE_NAMES.materials)
}
