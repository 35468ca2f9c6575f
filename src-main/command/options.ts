/** Readers of option values; what they throw ends the command with 2. */
import { InvalidArgumentError } from 'commander'
import { readQuantity } from '../../src-core/units/read'

/** A length in mm: "1300", "130cm", "51 in", "12*95". */
export function readLengthOption(text: string): number {
  const read = readQuantity(text, { kind: 'length', units: 'metric', least: LENGTH.least, most: LENGTH.most })
  if (!read.ok) throw new InvalidArgumentError(read.message)
  return read.value
}

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
