/** An entry of a key: a picture, a name with its count, and what belongs to it, all in full and wrapped. */
import type { Figure } from '../../src-core/figures/figure'
import { breakLines } from '../../src-core/figures/lines'
import { Sheet, TYPE } from './setting'

export interface Entry {
  readonly picture: Figure | null
  /** Room that the picture takes, in mm, also where there is none. */
  readonly across: number
  /** In bold. */
  readonly name: string
  /** Behind the name. */
  readonly count: string
  readonly lines: readonly string[]
}

/** Between picture and words, and below the entry. mm. */
const BESIDE = 3.2
const BELOW = 2.4

interface Setting {
  readonly name: readonly string[]
  readonly lines: readonly string[]
  /** Whether the count has a line of its own. */
  readonly apart: boolean
  readonly height: number
}

function setEntry(sheet: Sheet, entry: Entry, width: number): Setting {
  const { measure } = sheet
  const room = width - entry.across - BESIDE
  const name = breakLines(entry.name, room, measure, TYPE.body, 'bold')
  const last = measure(`${name.at(-1)!} `, TYPE.body, 'bold')
  const apart = entry.count !== '' && last + measure(entry.count, TYPE.body, 'regular') > room
  const lines = entry.lines.flatMap((text) => (text === '' ? [] : breakLines(text, room, measure, TYPE.body)))
  return {
    name,
    lines,
    apart,
    height: (name.length + (apart ? 1 : 0) + lines.length) * Sheet.line(TYPE.body),
  }
}

/** Height with the room below. */
export const entryHeight = (sheet: Sheet, entry: Entry, width: number): number =>
  Math.max(entry.across, setEntry(sheet, entry, width).height) + BELOW

/** Draws it with its top left at (x, y). */
export function drawEntry(sheet: Sheet, entry: Entry, x: number, y: number, width: number): void {
  if (entry.picture) sheet.figure(entry.picture, x, y)
  const { name, lines, apart, height } = setEntry(sheet, entry, width)
  const start = x + entry.across + BESIDE
  let top = y + Math.max(0, (entry.across - height) / 2)
  name.forEach((text, i) => {
    const below = sheet.text(text, start, top, { weight: 'bold' })
    if (i === name.length - 1 && !apart && entry.count !== '')
      sheet.text(entry.count, start + sheet.measure(`${text} `, TYPE.body, 'bold'), top)
    top = below
  })
  for (const text of apart ? [entry.count, ...lines] : lines) top = sheet.text(text, start, top)
}
