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
    if (found && tokens[found.to]?.kinds.has('round')) return new Set()
    if (found?.numbers[0] !== before + 1) continue
    lines.push(index)
    before = found.numbers[1]
  }
  return new Set(lines.length > 1 ? lines : [])
}

const SIGNS = ['.', ':', ')', '(', '-', '–', '—', ',']

/** "3. Rnd 2", "STEP 2: Round 1", "Step Two (round 1):", "B) Round 1": passes the number of a step before that of its round. */
export const passStep = (reader: Reader): boolean =>
  reader.attempt(() => {
    const line = reader.at
    reader.skip('(')
    const step = /^(step|part|stage|no|section)$/.test(reader.spelled()) && ++reader.at > line
    if (step) reader.skip('.')
    const lettered = /^[a-h]$/.test(reader.spelled()) && ++reader.at > line
    if (!lettered && reader.number() === null) return null
    const marked = reader.at
    while (reader.peek() && reader.skip(...SIGNS)) continue
    if (!step && reader.at === marked) return null
    const next = reader.peek()
    const numbered = next?.kind === 'ordinal' || next?.kinds.has('ordinal') ? 1 : 0
    if (next?.first || !reader.isA('round', numbered)) return null
    const told = numbered === 1 || reader.peek(1)?.kind === 'number' || reader.isA('number', 1)
    return told || null
  }) === true

/** "1." as the heading of round 1, "3-4." as that of rounds 3 and 4. */
export function readNumberedLine(reader: Reader): Heading {
  const from = reader.at
  const { numbers, to } = numbersAt(reader.tokens, from)!
  reader.at = to
  return { kind: 'round', from, to, numbers, label: null, span: reader.span(from) }
}
