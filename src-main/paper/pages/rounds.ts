/** A motif's rounds: word for word, translated where other terms are asked for, with what the words mean. */
import type { MotifAccount } from '../../../shared-types/plan'
import type { Motif, RoundsMotif } from '../../../shared-types/project'
import { workedRounds } from '../../../src-core/accounts'
import { breakLines } from '../../../src-core/figures/lines'
import { partOf } from '../../../src-core/figures/part'
import { suggestedHalf } from '../../../src-core/half-motif/half-motif'
import { toldInstructions } from '../../../src-core/motif/instructions'
import { specialText } from '../../../src-core/motif/rounds/special'
import { abbreviationsUsed, signsIn } from '../../../src-core/notation/abbreviations'
import type { Abbreviation } from '../../../src-core/notation/abbreviations'
import { editionText } from '../../../src-core/notation/translate'
import { respelled } from '../../../src-core/stitches/spelling'
import { textsBeside } from '../texts-beside'
import type { Flow } from '../flow'
import type { Job } from '../page'
import { roundLines } from '../round-lines'
import { Sheet, TYPE } from '../setting'
import { otherYarns } from '../words-colours'
import { instructionsHeading, MOTIF_WORDS, roundsHeading } from '../words-motif'

/** Room for the names of rounds and colours, at most. */
const WIDEST_LABEL = 56
const LABEL_GAP = 4
const WIDEST_TEXT = 150
const COLUMNS = 3
const COLUMN_GAP = 6
const SHORT = 18

/** Special stitches, rounds and abbreviations, from a place on the motif's first page. */
export function setRounds(job: Job, flow: Flow, motif: RoundsMotif, account: MotifAccount): void {
  const written = job.settled.terms
  const heading = roundsHeading(motif, written, job.terms)
  const head = (words: string): void => {
    flow.y = flow.sheet.heading(words, flow.sheet.left, flow.y)
  }
  const { read } = workedRounds(job.settled, motif)
  const { measure } = flow.sheet
  const named = (words: string): string => ofMotif(job, motif, words)
  setParagraphs(
    flow,
    MOTIF_WORDS.special,
    named,
    editionText(specialText(motif), written, job.terms).split('\n'),
  )
  const list = roundLines(job, motif, read).map(({ name, slot, text }) => {
    const x = measure(`${name}  `, TYPE.body, 'bold')
    const slots = slot === '' ? [] : breakLines(slot, WIDEST_LABEL - LABEL_GAP - x, measure, TYPE.body)
    const widest = Math.max(0, ...slots.map((line) => measure(line, TYPE.body, 'regular')))
    return { name, x, slots, text, width: x + widest + LABEL_GAP }
  })
  const indent = Math.max(...list.map((label) => label.width))
  const width = Math.min(WIDEST_TEXT, flow.sheet.inner - indent)
  const heightOf = ({ text, slots }: (typeof list)[number]): number =>
    Math.max(flow.sheet.heightOf(text, width), slots.length * Sheet.line(TYPE.body)) + 1.8
  const others = otherYarns(job.settled, job.ground.marks, motif.id, job.terms)
  const told = others === '' ? 0 : flow.sheet.heightOf(others, WIDEST_TEXT) + 1.8
  const isNew = flow.need(Sheet.line(TYPE.heading) + 1.6 + told + (list[0] ? heightOf(list[0]) : 0))
  head(isNew ? ofMotif(job, motif, heading) : heading)
  if (told > 0) flow.y = flow.sheet.paragraph(others, flow.sheet.left, flow.y, WIDEST_TEXT) + 1.8
  const part = partOf('L', null, { counted: true })
  for (const line of list) {
    if (flow.need(heightOf(line))) head(MOTIF_WORDS.goesOn(heading))
    const { sheet, y } = flow
    const name = (): void => {
      sheet.text(line.name, sheet.left, y, { weight: 'bold' })
      line.slots.forEach((slot, k) => sheet.text(slot, sheet.left + line.x, y + k * Sheet.line(TYPE.body)))
    }
    sheet.labelled(part, name, () => sheet.paragraph(line.text, sheet.left + indent, y, width))
    flow.y += heightOf(line)
  }
  const beside = [...suggestedHalf(job.plan, account, job.terms), ...textsBeside(job, motif.id)]
  const rounds = list.map(({ text }) => text)
  setAbbreviations(flow, [
    ...abbreviationsUsed(read.reading.tree, job.terms, beside),
    ...signsIn([...rounds, ...beside]),
  ])
}

/** The designer's words on how a motif is worked, a line each, in the terms that are printed. */
export const instructionsOf = ({ settled, terms }: Job, motif: Motif): string[] =>
  toldInstructions(motif, settled.terms).map((line) =>
    respelled(editionText(line, settled.terms, terms), settled.terms, terms),
  )

/** The designer's words on how a motif is worked, below what stands there. */
export function setInstructions(job: Job, flow: Flow, motif: Motif): void {
  const lines = instructionsOf(job, motif)
  setParagraphs(flow, instructionsHeading(lines), (words) => ofMotif(job, motif, words), lines)
}

/** A heading that begins a page behind that of its motif: of several it says whose it is. */
const ofMotif = ({ plan }: Job, { name = '' }: Pick<Motif, 'name'>, words: string): string =>
  plan.accounts.length > 1 && name.trim() !== ''
    ? `${name.trim()}: ${words.charAt(0).toLowerCase()}${words.slice(1)}`
    : words

/** The half of a motif in rows, where one stands on the map, nobody says how it is worked, and its rounds tell it. */
export const setHalf = (job: Job, flow: Flow, account: MotifAccount): void =>
  setParagraphs(
    flow,
    MOTIF_WORDS.half,
    (words) => ofMotif(job, account, words),
    suggestedHalf(job.plan, account, job.terms),
  )

/** Whether it is a star or brackets: what these mean takes more words than there is room for in a column. */
const isSign = ({ abbreviation }: Abbreviation): boolean => /^\W/.test(abbreviation)

/** What abbreviations stand for, in columns, read downward; below them what signs mean. */
export function setAbbreviations(flow: Flow, all: readonly Abbreviation[]): void {
  if (all.length === 0) return
  const list = all.filter((each) => !isSign(each))
  const signs = all
    .filter(isSign)
    .map(({ abbreviation, meaning }) => `${abbreviation}\u00a0 ${meaning}.`)
    .join(' ')
  const width = (flow.sheet.inner - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS
  const style = { size: TYPE.table } as const
  const heights = list.map(({ meaning }) => flow.sheet.heightOf(meaning, width - SHORT, style) + 0.5)
  const perColumn = Math.ceil(list.length / COLUMNS)
  const columns = Array.from({ length: COLUMNS }, (_, k) => k * perColumn)
  const heightOf = (from: number): number =>
    heights.slice(from, from + perColumn).reduce((sum, height) => sum + height, 0)
  const columnsHeight = Math.max(...columns.map(heightOf))
  // A line of them has room beside the heading.
  const beside = width + COLUMN_GAP
  const isBeside = flow.sheet.measure(signs, TYPE.table, 'regular') < flow.sheet.inner - beside
  const signsHeight = isBeside ? 0 : flow.sheet.heightOf(signs, flow.sheet.inner, style)
  const height = columnsHeight + signsHeight
  flow.y += 3
  flow.need(Sheet.line(TYPE.heading) + 1.6 + height)
  const { sheet } = flow
  const begins = flow.y
  const top = sheet.heading(MOTIF_WORDS.abbreviations, sheet.left, begins)
  const told = partOf('L')
  columns.forEach((from, column) => {
    const x = sheet.left + column * (width + COLUMN_GAP)
    let y = top
    for (const { abbreviation, meaning } of list.slice(from, from + perColumn)) {
      const here = y
      y = sheet.labelled(
        told,
        () => sheet.text(abbreviation, x, here, { ...style, weight: 'bold' }),
        () => sheet.paragraph(meaning, x + SHORT, here, width - SHORT, style) + 0.5,
      )
    }
  })
  if (signs !== '' && isBeside) sheet.text(signs, sheet.left + beside, begins + 0.7, { ...style, as: 'P' })
  else if (signs !== '') sheet.paragraph(signs, sheet.left, top + columnsHeight, sheet.inner, style)
  flow.y = top + height + 3
}

/** So many paragraphs stay with their heading. */
const KEPT = 3

/** A heading with paragraphs, which run on over pages; nothing where nothing is said. */
function setParagraphs(
  flow: Flow,
  heading: string,
  /** The heading where it begins a page. */
  named: (heading: string) => string,
  lines: readonly string[],
): void {
  const texts = lines.map((line) => line.trim()).filter((line) => line !== '')
  if (texts.length === 0) return
  const width = Math.min(WIDEST_TEXT, flow.sheet.inner)
  const heightOf = (text: string): number => flow.sheet.heightOf(text, width) + 1.2
  // Nor does a heading with what only introduces the others.
  const isNew = flow.need(
    Sheet.line(TYPE.heading) + 1.6 + texts.slice(0, KEPT).reduce((sum, text) => sum + heightOf(text), 0),
  )
  flow.y = flow.sheet.heading(isNew ? named(heading) : heading, flow.sheet.left, flow.y)
  texts.forEach((text, i) => {
    // The last line does not stand alone on a page.
    const more = i === texts.length - 2 ? heightOf(texts.at(-1)!) : 0
    if (flow.need(heightOf(text) + more) && i > 0)
      flow.y = flow.sheet.heading(MOTIF_WORDS.goesOn(heading), flow.sheet.left, flow.y)
    flow.y = flow.sheet.paragraph(text, flow.sheet.left, flow.y, width) + 1.2
  })
  flow.y += 2
}
