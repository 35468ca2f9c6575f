/** Readers of option values; what they throw ends the command with 2. */
import { InvalidArgumentError } from 'commander'

/** A length in mm. */
export function readLengthOption(text: string): number {
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value) || value <= 0)
    throw new InvalidArgumentError('A length above 0 is expected, in mm.')
  return value
}

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
