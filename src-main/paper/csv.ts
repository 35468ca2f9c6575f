/** The order list and the yarn table for a spreadsheet: RFC 4180, UTF-8, numbers with a point. */
import type { Plan, YarnNumber } from '../../shared-types/plan'
import { colourwayMarks, fillerMarks } from '../../src-core/figures/marks'
import { pieceWords } from '../../src-core/figures/piece-words'
import { splitWords } from '../../src-core/figures/yarn-words'
import { pieceAt, placeInRow } from '../../src-core/layout/placed'
import { GRAMS_PER_OUNCE, METRES_PER_YARD } from '../../src-core/units/quantity'

export type Cell = string | number | null

/** A hundredth of a gram, of a millimetre or of money: more digits than that mean nothing. */
const DECIMALS = 2

/**
 * A text that a spreadsheet would run as a formula gets a leading apostrophe, which it shows as text; also behind blanks
 * and what is not shown, which some take off, and with signs of full width, which some take for the narrow ones.
 */
const FORMULA = /^(?:[\s\p{Cc}\p{Cf}\p{Z}]*[=+\-@＝＋－＠]|[\t\r])/u
/** A spreadsheet that parts cells at semicolons or tabs finds quotes only where a cell begins: what follows begins one. */
const BEHIND_A_SEPARATOR = /(?<=[\s\S])([;\t|])([\s\p{Cc}\p{Cf}\p{Z}]*[=+\-@＝＋－＠])/gu
/** A program that parts cells otherwise takes a line break within a cell for a new line, which could begin with a formula. */
const LINE_BREAKS = /[\t ]*(?:\r\n|[\n\v\f\r\u0085\u2028\u2029])/g
/** What no table needs and a terminal would obey; also what turns the direction of text. */
const UNSEEN = /[^\P{Cc}\t]|[\u202a-\u202e\u2066-\u2069]/gu
const harmless = (text: string): string => {
  const shown = text.replace(LINE_BREAKS, ' ').replace(UNSEEN, '')
  const parted = shown.replace(BEHIND_A_SEPARATOR, "$1'$2")
  return FORMULA.test(parted) ? `'${parted}` : parted
}

function cell(value: Cell): string {
  if (value === null) return ''
  if (typeof value === 'number') return String(Number(value.toFixed(DECIMALS)))
  const text = harmless(value)
  // Where the comma is a decimal sign, semicolons part the cells.
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Rows as CSV, the heading first. */
export const csvTable = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')

/** One line for each motif, half motif and filler in the order of work. */
export function orderCsv(plan: Plan): string {
  const marks = colourwayMarks(plan)
  const ofFillers = fillerMarks(plan)
  const rows = plan.order.map((step): Cell[] => {
    const piece = pieceAt(plan, step.motif)
    const list = step.kind === 'filler' ? ofFillers : marks
    const mark = list.find(({ id }) => id === piece?.colourway)
    const what = piece && step.kind !== 'motif' ? `${pieceWords(plan, piece)}: ` : ''
    return [
      Number(piece?.label ?? Number.NaN) || null,
      step.kind === 'filler' ? null : (piece?.row ?? null),
      step.kind === 'motif' && piece ? placeInRow(plan, piece) : null,
      mark?.code ?? '',
      mark?.name ?? '',
      `${what}${step.words}`,
    ]
  })
  return csvTable([['number', 'row', 'motif', 'colourway', 'name', 'how it is joined'], ...rows])
}

/** The columns of the yarn table that a number stands in. */
const CSV_COLUMNS: Readonly<Record<YarnNumber, readonly string[]>> = {
  grams: ['grams', 'grams low', 'grams high', 'ounces'],
  metres: ['metres', 'yards'],
  balls: ['balls'],
  onHand: ['grams on hand'],
  toBuy: ['balls to buy'],
  leftover: ['grams left over'],
  cost: ['cost'],
}

/** One line for each yarn, in metric and imperial. */
export function yarnCsv(plan: Plan): string {
  const { settled } = plan
  const yarns = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const heading = [
    'yarn',
    'grams',
    'grams low',
    'grams high',
    'ounces',
    'metres',
    'yards',
    'balls',
    'grams on hand',
    'balls to buy',
    'grams left over',
    'cost',
    'currency',
    'weight of a colour',
    'assumed',
  ]
  const rows = plan.yarns.map((need): Cell[] => {
    const yarn = yarns.get(need.id)
    const metres = need.metres?.expected ?? null
    return [
      yarn?.name || need.id,
      need.grams.expected,
      need.grams.low,
      need.grams.high,
      need.grams.expected / GRAMS_PER_OUNCE,
      metres,
      metres === null ? null : metres / METRES_PER_YARD,
      need.balls,
      need.onHand,
      need.toBuy,
      need.leftover,
      need.cost,
      need.cost === null ? '' : settled.currency,
      splitWords(need),
      (need.assumed ?? []).flatMap((number) => CSV_COLUMNS[number]).join(', '),
    ]
  })
  return csvTable([heading, ...rows])
}
