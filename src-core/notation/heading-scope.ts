/** Where a round is worked, told in the bracket of its heading: "R4 (BLO of R2, behind the petals):". */
import { readScope } from './directions'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import type { Item } from './tree'

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
    const scope = readScope(reader)
    if (scope && (scope.loop || scope.round)) scopes.push(scope)
    if (!scope) reader.at++
  }
  reader.end = outer
  return scopes
}
