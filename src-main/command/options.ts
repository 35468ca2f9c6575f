/** Readers of option values; what they throw ends the command with 2. */
import { InvalidArgumentError } from 'commander'
import type { Option } from 'commander'
import { GROUND_COLOUR, PICTURE_WIDTH } from '../../shared-types/pictures'
import type { OptionalPage, SheetName } from '../../shared-types/sheets'
import { OPTIONAL_PAGES, SHEETS } from '../../shared-types/sheets'
import { EDITION_NAMES } from '../../src-core/editions'
import { readQuantity } from '../../src-core/units/read'

/** An option that takes one of these words, however they are written: "--paper a4", "--terms us". */
export function oneOf(option: Option, words: readonly string[]): Option {
  const { parseArg: demand } = option.choices([...words])
  return option.argParser((text, before) => {
    const word = words.find((each) => each.toLowerCase() === text.toLowerCase()) ?? text
    return demand?.(word, before) ?? word
  })
}

/** A length in mm: "1300", "130cm", "51 in", "12*95". */
export function readLengthOption(text: string): number {
  const read = readQuantity(text, { kind: 'length', units: 'metric', least: LENGTH.least, most: LENGTH.most })
  if (!read.ok) throw new InvalidArgumentError(read.message)
  return read.value
}

/** A distance in mm, which may be nothing: "0", "12", "1/2 in". */
export function readDistanceOption(text: string): number {
  const read = readQuantity(text, { kind: 'length', units: 'metric', least: 0, most: LENGTH.most })
  if (!read.ok) throw new InvalidArgumentError(read.message)
  return read.value
}

/** Degrees clockwise, of any number of turns within reason. */
export function readDegreesOption(text: string): number {
  const read = readQuantity(text, { kind: 'angle', units: 'metric', least: -3600, most: 3600 })
  if (!read.ok) throw new InvalidArgumentError(read.message)
  return read.value
}

/** How many mm one unit of a drawing is. */
export function readUnitOption(text: string): number {
  const unit = Number(text)
  if (!(unit >= 1e-4 && unit <= 1000))
    throw new InvalidArgumentError('A number of mm from 0.0001 to 1000 is expected.')
  return unit
}

/** A whole number from 1. */
export function readCountOption(text: string): number {
  const count = Number(text)
  if (!/^\d+$/.test(text.trim()) || count < 1 || count > COUNT_AT_MOST)
    throw new InvalidArgumentError(`A whole number from 1 to ${COUNT_AT_MOST} is expected.`)
  return count
}

/** How many motifs there are: a number, or of each colourway "A=120,B=90". */
export function readPilesOption(text: string): number | Record<string, number> {
  if (!text.includes('=')) return readCountOption(text)
  const piles = text.split(',').map((part): [string, number] => {
    const [name = '', many = ''] = part.split('=').map((each) => each.trim())
    return [name, readCountOption(many)]
  })
  return Object.fromEntries(piles)
}

/** Pixels across a picture. */
export function readPixelsOption(text: string): number {
  const { least, most } = PICTURE_WIDTH
  const pixels = Number(text)
  if (!/^\d+$/.test(text.trim()) || pixels < least || pixels > most)
    throw new InvalidArgumentError(`A whole number of pixels from ${least} to ${most} is expected.`)
  return pixels
}

/** The colour behind a picture. */
export function readGroundOption(text: string): string {
  if (!GROUND_COLOUR.test(text.trim()))
    throw new InvalidArgumentError('A colour such as "#f4efe6" is expected.')
  return text.trim().toLowerCase()
}

/** A seed: a whole number that can be written exactly. */
export function readSeedOption(text: string): number {
  const seed = Number(text)
  if (!/^\d+$/.test(text.trim()) || !Number.isSafeInteger(seed))
    throw new InvalidArgumentError('A whole number from 0 is expected.')
  return seed
}

/** "225,180" as x and y in mm. */
export function readPlaceOption(text: string): { x: number; y: number } {
  const parts = text.split(',').map((part) => readQuantity(part, { kind: 'length', units: 'metric' }))
  const [x, y] = parts
  if (parts.length !== 2 || !x?.ok || !y?.ok)
    throw new InvalidArgumentError('Two lengths with a comma between are expected, such as "225,180".')
  return { x: x.value, y: y.value }
}

/** More than any panel holds. */
const COUNT_AT_MOST = 2000

/** mm. What can be wished for: from one motif of thread to a marquee (our own choice). */
const LENGTH = { least: 1, most: 100_000 } as const

/** More pages than any map has; keeps "1-999999999" from filling the memory. */
const PAGES_AT_MOST = 10_000

/** "1-3,5" as page numbers in ascending order, each once. */
export function readPagesOption(text: string): number[] {
  const pages = text.split(',').flatMap((part) => {
    const match = /^\s*(\d+)\s*(?:[-–]\s*(\d+)\s*)?$/.exec(part)
    const first = Number(match?.[1])
    const last = Number(match?.[2] ?? first)
    if (!match || first < 1 || last < first || last > PAGES_AT_MOST)
      throw new InvalidArgumentError('Page numbers from 1 are expected, such as "1-3,5".')
    return Array.from({ length: last - first + 1 }, (_, index) => first + index)
  })
  return [...new Set(pages)].sort((a, b) => a - b)
}

/** "card,packing" as names of sheets, each once. */
export function readSheetsOption(text: string): SheetName[] {
  const names = text.split(',').map((part) => {
    const name = SHEETS.find((sheet) => sheet === part.trim())
    if (!name) throw new InvalidArgumentError(`Expected are ${SHEETS.join(', ')}.`)
    return name
  })
  return [...new Set(names)]
}

/** "order,motif" as names of pages that are left out, each once; `none` leaves out none. */
export function readLeaveOutOption(text: string): OptionalPage[] {
  if (text.trim() === 'none') return []
  const names = text.split(',').map((part) => {
    const name = OPTIONAL_PAGES.find((page) => page === part.trim())
    if (!name)
      throw new InvalidArgumentError(
        `Expected are ${OPTIONAL_PAGES.join(', ')}, or none. The other pages are always printed.`,
      )
    return name
  })
  return [...new Set(names)]
}

/** Names of editions as others may spell them. */
const SPELLED: Readonly<Record<string, string>> = { color: 'colour' }

/** "us,uk,a4" as the names in it; `all` is every one. */
export function readEditionsOption(text: string): string[] {
  const names = text.split(',').map((part) => {
    const name = part.trim().toLowerCase()
    return Object.hasOwn(SPELLED, name) ? SPELLED[name]! : name
  })
  if (names.length === 1 && names[0] === 'all') return [...EDITION_NAMES]
  const unknown = names.find((name) => !EDITION_NAMES.includes(name))
  if (unknown !== undefined)
    throw new InvalidArgumentError(
      `Expected are ${EDITION_NAMES.join(', ')} with commas between, or all; '${unknown}' is none of them.`,
    )
  return [...new Set(names)]
}
