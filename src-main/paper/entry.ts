/** An entry of a key: a picture, a name with its count, and what belongs to it, all in full and wrapped. */
import type { Figure } from '../../src-core/figures/figure'
import { breakLines } from '../../src-core/figures/lines'
import type { Part } from '../../src-core/figures/part'
import { partOf } from '../../src-core/figures/part'
import { Sheet, TYPE } from './setting'

export interface Entry {
  readonly picture: Figure | null
  /** What is read aloud in its place. */
  readonly alt: string
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

/** Draws it with its top left at (x, y), as an item of the list. */
export function drawEntry(sheet: Sheet, list: Part, entry: Entry, x: number, y: number, width: number): void {
  const body = partOf('LBody', partOf('LI', list))
  sheet.within(body, () => setWords(sheet, entry, x, y, width))
}

function setWords(sheet: Sheet, entry: Entry, x: number, y: number, width: number): void {
  if (entry.picture) sheet.figure(entry.picture, x, y, entry.alt)
  const { name, lines, apart, height } = setEntry(sheet, entry, width)
  const start = x + entry.across + BESIDE
  let top = y + Math.max(0, (entry.across - height) / 2)
  const heading = sheet.own('P')
  name.forEach((text, i) => {
    const below = sheet.text(text, start, top, { weight: 'bold', as: heading })
    if (i === name.length - 1 && !apart && entry.count !== '')
      sheet.text(entry.count, start + sheet.measure(`${text} `, TYPE.body, 'bold'), top, { as: heading })
    top = below
  })
  const told = sheet.own('P')
  for (const text of apart ? [entry.count, ...lines] : lines) top = sheet.text(text, start, top, { as: told })
}
