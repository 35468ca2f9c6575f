/** Rounds that are told by a number alone at the start of their line. */
import type { Heading } from './round-headings'
import type { Reader } from './reader'
import type { Token } from './tokens'

/** Lines that are only numbered ("1. Ch 3 …", "2) …") are rounds in a text that has no other name for its rounds. */
export function numberedLines(tokens: readonly Token[]): ReadonlySet<number> {
  const lines: number[] = []
  for (const [index, token] of tokens.entries()) {
    if (!token.first) continue
    if (token.kinds.has('round') || token.is === 'r') return new Set()
    // "#1:" as well.
    const number = token.key === '#' ? index + 1 : index
    const ends = /^[.):]$/.test(tokens[number + 1]?.key ?? '')
    if (tokens[number]?.value === lines.length + 1 && ends) lines.push(index)
  }
  return new Set(lines.length > 1 ? lines : [])
}

/** "1." as the heading of round 1. */
export function readNumberedLine(reader: Reader): Heading {
  const from = reader.at
  const { value } = reader.peek()!
  reader.at += 2
  return { kind: 'round', from, to: reader.at, numbers: [value, value], label: null, span: reader.span(from) }
}
