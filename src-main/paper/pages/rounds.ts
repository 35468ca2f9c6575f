/** A motif's rounds: word for word, translated where other terms are asked for, with what the words mean. */
import type { RoundsMotif } from '../../../shared-types/project'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { isSpecialEntry, specialText } from '../../../src-core/motif/rounds/special'
import { abbreviationsUsed } from '../../../src-core/notation/abbreviations'
import type { Abbreviation } from '../../../src-core/notation/abbreviations'
import { translateText } from '../../../src-core/notation/translate'
import type { Flow } from '../flow'
import type { Job } from '../page'
import { Sheet, shorten, TYPE } from '../setting'
import { MOTIF_WORDS } from '../words-motif'

/** Room for the names of rounds and colours, at most. */
const WIDEST_LABEL = 56
const LABEL_GAP = 4
const WIDEST_TEXT = 150
const COLUMNS = 3
const COLUMN_GAP = 6
const SHORT = 18

/** Special stitches, rounds and abbreviations, from a place on the motif's first page. */
export function setRounds(job: Job, flow: Flow, motif: RoundsMotif): void {
  const written = job.project.terms ?? 'US'
  const heading = MOTIF_WORDS.rounds(written, job.terms)
  const head = (): void => {
    flow.y = flow.sheet.heading(heading, flow.sheet.left, flow.y)
  }
  const { reading, lines } = readMotif(motif, written)
  const list = (motif.rounds ?? []).flatMap((round, i) =>
    isSpecialEntry(round.work)
      ? []
      : [
          {
            number: lines[i]?.number ?? i + 1,
            slot: round.slot ?? '',
            text: translateText(round.work, written, job.terms),
          },
        ],
  )
  setSpecial(flow, explanations(translateText(specialText(motif), written, job.terms)))
  const labels = list.map(({ slot, number }) => {
    const name = MOTIF_WORDS.round(number)
    const x = flow.sheet.measure(`${name}  `, TYPE.body, 'bold')
    const room = WIDEST_LABEL - LABEL_GAP - x
    const shown = shorten(slot, room, flow.sheet.measure, TYPE.body, 'regular')
    return { name, x, slot: shown, width: x + flow.sheet.measure(shown, TYPE.body, 'regular') + LABEL_GAP }
  })
  const indent = Math.max(...labels.map((label) => label.width))
  const width = Math.min(WIDEST_TEXT, flow.sheet.inner - indent)
  const heightOf = (text: string): number => flow.sheet.heightOf(text, width) + 1.8
  flow.need(Sheet.line(TYPE.heading) + 1.6 + heightOf(list[0]?.text ?? ''))
  head()
  list.forEach(({ text }, i) => {
    if (flow.need(heightOf(text))) head()
    const { sheet } = flow
    const { name, x, slot } = labels[i]!
    sheet.text(name, sheet.left, flow.y, { weight: 'bold' })
    if (slot !== '') sheet.text(slot, sheet.left + x, flow.y)
    flow.y = sheet.paragraph(text, sheet.left + indent, flow.y, width) + 1.8
  })
  setAbbreviations(flow, abbreviationsUsed(reading.tree, job.terms))
}

/** In columns, read downward. */
function setAbbreviations(flow: Flow, list: readonly Abbreviation[]): void {
  if (list.length === 0) return
  const width = (flow.sheet.inner - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS
  const style = { size: TYPE.table } as const
  const heights = list.map(({ meaning }) => flow.sheet.heightOf(meaning, width - SHORT, style) + 0.5)
  const perColumn = Math.ceil(list.length / COLUMNS)
  const columns = Array.from({ length: COLUMNS }, (_, k) => k * perColumn)
  const heightOf = (from: number): number =>
    heights.slice(from, from + perColumn).reduce((sum, height) => sum + height, 0)
  const height = Math.max(...columns.map(heightOf))
  flow.y += 3
  flow.need(Sheet.line(TYPE.heading) + 1.6 + height)
  const { sheet } = flow
  const top = sheet.heading(MOTIF_WORDS.abbreviations, sheet.left, flow.y)
  columns.forEach((from, column) => {
    const x = sheet.left + column * (width + COLUMN_GAP)
    let y = top
    for (const { abbreviation, meaning } of list.slice(from, from + perColumn)) {
      sheet.text(abbreviation, x, y, { ...style, weight: 'bold' })
      y = sheet.paragraph(meaning, x + SHORT, y, width - SHORT, style) + 0.5
    }
  })
  flow.y = top + height + 3
}

/** The designer's own stitches, a line for each. */
const explanations = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')

function setSpecial(flow: Flow, texts: readonly string[]): void {
  if (texts.length === 0) return
  const width = Math.min(WIDEST_TEXT, flow.sheet.inner)
  const heightOf = (text: string): number => flow.sheet.heightOf(text, width) + 1.2
  flow.need(Sheet.line(TYPE.heading) + 1.6 + heightOf(texts[0]!))
  flow.y = flow.sheet.heading(MOTIF_WORDS.special, flow.sheet.left, flow.y)
  for (const text of texts) {
    flow.need(heightOf(text))
    flow.y = flow.sheet.paragraph(text, flow.sheet.left, flow.y, width) + 1.2
  }
  flow.y += 2
}
