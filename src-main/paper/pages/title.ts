/** The title page of a pattern: what it is, what it looks like, what it takes, whose it is, and where things stand. */
import { drawPath } from '../../../src-core/figures/figure'
import type { Part } from '../../../src-core/figures/part'
import { breakLines } from '../../../src-core/figures/lines'
import { linePath } from '../../../src-core/figures/path'
import { aloneSentence, projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { capital, counted } from '../../../src-core/figures/words'
import { amountWords, isAssumed, isNeedKnown, NOT_KNOWN } from '../../../src-core/figures/yarn-words'
import { termWord } from '../../../src-core/stitches/terms'
import { formatMass } from '../../../src-core/units/format'
import { drawLogo } from '../draw-logo'
import type { Draft, Job } from '../page'
import { accents, newSheet } from '../page'
import { Sheet, shorten, TYPE } from '../setting'
import { PAGE_NAMES } from '../words'
import { ballSize, finishedSize } from '../words-materials'
import { SKILL_WORDS, TITLE_WORDS, writtenWords, yarnWords } from '../words-title'
import { hookWords } from '../../../src-core/stitches/hooks'
import { gaugeWords, plannedGauge } from '../gauge-words'
import { setWhole } from './whole'

const AIR = 6
const COLUMN_GAP = 10
/** mm, of the label in front of a fact. */
const LABEL = 26
/** Points; the smaller sizes are for titles that are long. */
const TITLES = [30, 24, 19] as const
const MOST_TITLE_LINES = 3
/** mm. */
const LOGO = { width: 50, height: 18 } as const
const BAR = { width: 42, height: 1.2 } as const
/** The picture gets what is left, no less than this many mm, and no more. */
const PICTURE = { least: 60, most: 150 } as const
/** Lines that a line below the title and a copyright take at most, and yarns that are named. */
const MOST_LINES = 3
const MOST_YARNS = 12

/** Where a part of the map begins. */
interface Inside {
  readonly name: string
  readonly page: number
}

/** What comes behind the title page, each part once, with the number of its first page. */
function insideOf(drafts: readonly Draft[]): Inside[] {
  const first = new Map<string, Inside>()
  drafts.forEach((draft, i) => {
    // "Order of work, rows 1–5" begins the order of work.
    for (const { section, name } of [draft, ...(draft.below ?? [])])
      if (!first.has(section)) first.set(section, { name: name.split(',')[0]!, page: i + 2 })
  })
  return [...first.values()]
}

/** The page before all others; `behind` are those. */
export function titlePage(job: Job, behind: readonly Draft[]): Draft {
  const sheet = newSheet(job)
  const top = head(job, sheet) + AIR
  const foot = footHeight(job, sheet)
  const inside = insideOf(behind)
  // What the words need is tried on a sheet that is thrown away; the picture gets the rest.
  const bottom = sheet.bottom - foot
  const needs = (yarns: number): number => facts(job, newSheet(job), sheet.top, inside, yarns) - sheet.top
  const hasPicture = job.plan.motifs.length > 0
  let yarns = MOST_YARNS
  while (yarns > 1 && hasPicture && bottom - needs(yarns) - AIR - top < PICTURE.least) yarns--
  const room = Math.min(PICTURE.most, bottom - needs(yarns) - AIR - top)
  const below = hasPicture && room > 0 ? setWhole(job, sheet, top, room) + AIR : top
  facts(job, sheet, below, inside, yarns)
  setFoot(job, sheet, bottom)
  return { section: 'title', name: PAGE_NAMES.title, bookmarks: [PAGE_NAMES.title], sheet }
}

/** Logo, title, line and designer; returns the y below. */
function head(job: Job, sheet: Sheet): number {
  const { settled, measure } = job
  const colour = accents(job)
  let y = drawLogo(job, sheet, { x: sheet.left, y: sheet.top }, LOGO)
  if (y > sheet.top) y += AIR
  const broken = (size: number): string[] => breakLines(job.title, sheet.inner, measure, size, 'bold')
  const size = TITLES.find((each) => broken(each).length <= 2) ?? TITLES.at(-1)!
  const style = { size, weight: 'bold', leading: 1.15, as: sheet.own('H1') } as const
  y = limited(broken(size), MOST_TITLE_LINES).reduce(
    (at, line) =>
      sheet.text(shorten(line, sheet.inner, measure, size, 'bold'), sheet.left, at, {
        ...style,
        colour: colour.text,
      }),
    y,
  )
  y += 2.5
  const pen = BAR.height / 2
  const bar = linePath(sheet.left + pen, y, sheet.left + BAR.width - pen, y)
  sheet.items.push(drawPath(bar, { stroke: colour.bar, width: BAR.height }))
  y += 3.5
  const line = settled.pattern.line.trim()
  const lead = { size: TYPE.lead, as: sheet.own('P') } as const
  for (const text of limited(breakLines(line, sheet.inner, measure, TYPE.lead), MOST_LINES))
    if (text !== '') y = sheet.text(text, sheet.left, y, lead)
  const by = settled.designer === '' ? '' : TITLE_WORDS.by(settled.designer)
  return by === ''
    ? y
    : sheet.text(shorten(by, sheet.inner, measure, TYPE.lead, 'bold'), sheet.left, y + 1, {
        size: TYPE.lead,
        weight: 'bold',
      })
}

/** The first lines of a text; what is left out shows. */
const limited = (lines: readonly string[], most: number): string[] =>
  lines.length <= most ? [...lines] : [...lines.slice(0, most - 1), `${lines[most - 1]} …`]

/** Shares of the left column: the one that takes the least height is taken, the first of several. */
const SHARES = [0.5, 0.42, 0.58] as const

/** The sentence of the project, and below it label and words in two columns; returns the y below. */
function facts(job: Job, sheet: Sheet, top: number, inside: readonly Inside[], yarns: number): number {
  const below = (share: number): number => setFacts(job, newSheet(job), top, inside, yarns, share)
  const lowest = Math.min(...SHARES.map(below))
  const share = SHARES.find((each) => below(each) <= lowest + 0.01)!
  return setFacts(job, sheet, top, inside, yarns, share)
}

function setFacts(
  job: Job,
  sheet: Sheet,
  top: number,
  inside: readonly Inside[],
  yarns: number,
  share: number,
): number {
  const width = (sheet.inner - COLUMN_GAP) * share
  const rest = sheet.inner - COLUMN_GAP - width
  const second = sheet.left + width + COLUMN_GAP
  sheet.rule(top)
  const sentence = job.isAlone ? aloneSentence(job.plan) : sentenceText(projectSentence(job.plan, job.terms))
  const y = sheet.paragraph(sentence, sheet.left, top + 3, sheet.inner) + 3
  const list = sheet.own('L')
  let left = y
  for (const [label, text] of plainFacts(job))
    left = fact(sheet, list, sheet.left, left, width, label, [text])
  let right = y
  const wool = yarnFacts(job, yarns)
  if (wool.length > 0) right = fact(sheet, list, second, right, rest, TITLE_WORDS.yarn, wool)
  if (inside.length > 0) right = contents(sheet, list, second, right, rest, inside)
  return Math.max(left, right)
}

function fact(
  sheet: Sheet,
  list: Part,
  x: number,
  y: number,
  width: number,
  label: string,
  lines: readonly string[],
): number {
  const set = (): number =>
    lines.reduce((at, line) => sheet.paragraph(line, x + LABEL, at, width - LABEL, { as: 'P' }), y)
  return sheet.labelled(list, () => sheet.text(label, x, y, { weight: 'bold' }), set) + 1.4
}

/** The parts of the map with their pages. */
function contents(
  sheet: Sheet,
  list: Part,
  x: number,
  top: number,
  width: number,
  inside: readonly Inside[],
): number {
  const set = (): number =>
    inside.reduce((y, { name, page }) => {
      const as = sheet.own('P')
      sheet.text(name, x + LABEL, y, { as })
      return sheet.text(String(page), x + width, y, { anchor: 'end', as })
    }, top)
  return sheet.labelled(list, () => sheet.text(TITLE_WORDS.inside, x, top, { weight: 'bold' }), set)
}

function plainFacts(job: Job): [string, string][] {
  const { plan, settled, terms } = job
  const gauge = plannedGauge(job)
  const told = gaugeWords(job, gauge)
  const { skill } = settled.pattern
  return [
    ...(skill ? [[TITLE_WORDS.skill, SKILL_WORDS[skill]] as [string, string]] : []),
    ...(plan.motifs.length > 0 ? [[TITLE_WORDS.size, finishedSize(job)] as [string, string]] : []),
    ...(gauge?.hook ? [[TITLE_WORDS.hook, hookWords(gauge.hook, job.terms)] as [string, string]] : []),
    ...(told ? [[capital(termWord('gauge', terms)), told] as [string, string]] : []),
    [TITLE_WORDS.written, writtenWords(settled, terms)],
  ]
}

/**
 * The yarns with what they come to, in a kit with what lies in it, `most` of them by name. A fibre that all of them are
 * of, and the size of ball that all of them come in, are told once.
 */
function yarnFacts({ plan, settled, units, terms }: Job, most: number): string[] {
  const yarns = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const wound = new Map(plan.kit?.perKit.map(({ yarn, grams }) => [yarn, formatMass(grams, units)]))
  const fibres = new Set(plan.yarns.map(({ id }) => yarns.get(id)?.fibre?.trim() ?? ''))
  const all = plan.yarns.length > 1 && fibres.size === 1 ? [...fibres][0]! : ''
  const ball = (many: number): string => termWord(many === 1 ? 'ball' : 'balls', terms)
  const sizeOf = (id: string): string => (plan.kit ? '' : ballSize(yarns.get(id) ?? { id }))
  const sizes = new Set(plan.yarns.map(({ id }) => sizeOf(id)))
  const size = plan.yarns.length > 1 && sizes.size === 1 ? [...sizes][0]! : ''
  const told = plan.yarns.map((need) => {
    const yarn = yarns.get(need.id)
    const balls =
      need.balls === null || !isNeedKnown(need) || isAssumed(need, 'balls')
        ? ''
        : `, ${counted(need.balls, ball(1), ball(2))}`
    const own = size === '' ? sizeOf(need.id) : ''
    const each = own === '' ? '' : TITLE_WORDS.ballOf(balls === '' ? ball(1) : '', own)
    const amount = plan.kit ? (wound.get(need.id) ?? NOT_KNOWN) : `${amountWords(need, units)}${balls}${each}`
    return yarnWords(yarn?.name || need.id, amount, all === '' ? (yarn?.fibre?.trim() ?? '') : '')
  })
  const shown =
    told.length <= most ? told : [...told.slice(0, most - 1), TITLE_WORDS.more(told.length - most + 1)]
  return [
    ...shown,
    ...(size === '' ? [] : [TITLE_WORDS.eachBall(ball(1), size)]),
    ...(all === '' ? [] : [TITLE_WORDS.allOf(all)]),
  ]
}

/** Copyright, and who sells or publishes it. */
function footLines({ settled, house, measure }: Job, width: number): { text: string; bold: boolean }[] {
  const lines = (text: string, most: number): string[] =>
    text
      .split(/\r?\n/)
      .flatMap((line) => breakLines(line.trim(), width, measure, TYPE.table))
      .filter((line) => line !== '')
      .slice(0, most)
  return [
    ...lines(house.name, 1).map((text) => ({ text, bold: true })),
    ...lines(house.address, MOST_LINES + 1).map((text) => ({ text, bold: false })),
    ...lines(settled.pattern.copyright, MOST_LINES).map((text) => ({ text, bold: false })),
  ]
}

const footHeight = (job: Job, sheet: Sheet): number => {
  const { length } = footLines(job, sheet.inner)
  return length === 0 ? 0 : length * Sheet.line(TYPE.table) + 6
}

function setFoot(job: Job, sheet: Sheet, top: number): void {
  const lines = footLines(job, sheet.inner)
  if (lines.length === 0) return
  sheet.rule(top + 3)
  let y = top + 5
  for (const { text, bold } of lines)
    y = sheet.text(text, sheet.left, y, { size: TYPE.table, ...(bold && { weight: 'bold' }) })
}
