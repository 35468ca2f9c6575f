/** Where a round is worked, told in the bracket of its heading: "R4 (BLO of R2, behind the petals):". */
import { readScope } from './directions'
import { readLoop, readRound } from './nouns'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import type { Item, ScopeItem } from './tree'

/** "Back loops only of Round 2", without "in" before it. */
const readLoopsOf = (reader: Reader): ScopeItem | null =>
  reader.attempt((): ScopeItem | null => {
    const start = reader.at
    const loop = readLoop(reader)
    if (!loop) return null
    const words = reader.span(start)
    const round = readRound(reader)
    const where = { loop, around: false, round, behind: false, opposite: false }
    return { type: 'scope', ...where, words, ...reader.span(start) }
  })

/** What the heading says of loops and of the round that is worked into; the cursor is lost. */
export function headingScopes(reader: Reader, { from, to }: Heading): Item[] {
  const scopes: Item[] = []
  const open = reader.tokens.findIndex(({ key }, at) => at >= from && at < to && key === '(')
  const close = reader.tokens.findIndex(({ key }, at) => at > open && at < to && key === ')')
  if (open < 0 || close < 0) return scopes
  const outer = reader.end
  reader.at = open + 1
  reader.end = close
  while (reader.at < close) {
    const scope = readScope(reader) ?? readLoopsOf(reader)
    if (scope && (scope.loop || scope.round)) scopes.push(scope)
    if (!scope) reader.at++
  }
  reader.end = outer
  return scopes
}
