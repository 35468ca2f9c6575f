/** Rounds that are told by a number alone at the start of their line. */
import type { Heading } from './round-headings'
import type { Reader } from './reader'
import type { Token } from './tokens'

const RANGE = new Set(['-', '–', '—', 'to', 'and', '&'])

/** "1.", "#1:", "3-4)", "3 & 4:" at a token: its numbers and the token behind it. Null for other lines. */
function numbersAt(tokens: readonly Token[], from: number): { numbers: [number, number]; to: number } | null {
  const at = tokens[from]?.key === '#' ? from + 1 : from
  const first = tokens[at]
  if (first?.kind !== 'number') return null
  // "3-4:": the hyphen hangs on the figure.
  const second = first.hyphen ? at + 1 : RANGE.has(tokens[at + 1]?.key ?? '') ? at + 2 : at
  const last = tokens[second]
  if (last?.kind !== 'number' || (second > at && (last.value <= first.value || last.first))) return null
  const ends = /^[.):]$/.test(tokens[second + 1]?.key ?? '')
  return ends ? { numbers: [first.value, last.value], to: second + 2 } : null
}

/** Lines that are only numbered ("1. Ch 3 …", "2) …") are rounds in a text that has no other name for its rounds. */
export function numberedLines(tokens: readonly Token[]): ReadonlySet<number> {
  const lines: number[] = []
  let before = 0
  for (const [index, token] of tokens.entries()) {
    if (!token.first) continue
    if (token.kinds.has('round') || token.is === 'r') return new Set()
    const found = numbersAt(tokens, index)
    if (found?.numbers[0] !== before + 1) continue
    lines.push(index)
    before = found.numbers[1]
  }
  return new Set(lines.length > 1 ? lines : [])
}

/** "1." as the heading of round 1, "3-4." as that of rounds 3 and 4. */
export function readNumberedLine(reader: Reader): Heading {
  const from = reader.at
  const { numbers, to } = numbersAt(reader.tokens, from)!
  reader.at = to
  return { kind: 'round', from, to, numbers, label: null, span: reader.span(from) }
}
