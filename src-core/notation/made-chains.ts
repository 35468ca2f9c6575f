/** Chains that are made, in all the words for them: "ch 3", "3 turning ch", "a foundation chain of 10 stitches". */
import { readBehindEach } from './chains-between'
import type { Reader } from './reader'
import type { ChainItem } from './tree'

/** What chains are for that begin a round. */
const RAISES = new Set(
  'turning starting beginning lifting climbing raising height rising lift climb raise rise'.split(' '),
)

/** "3 ch of lifting", "2 chains for height", "4 ch for height and space"; passes it. */
const passRaising = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('of', 'for', 'to')) return null
    while (reader.skip('the', 'gain')) continue
    if (!RAISES.has(reader.spelled()) || reader.isA('chain', 1)) return null
    reader.at++
    reader.attempt(() => (reader.skip('and', '+'), reader.skip('a', 'the'), reader.skipA('space') || null))
    return true
  }) === true

/** "A foundation chain of 10 stitches", "a base of 10 ch": how many; passes it. */
const readBase = (reader: Reader): number | null =>
  reader.attempt(() => {
    reader.skip('a', 'the')
    if (!reader.skip('foundation', 'base', 'starting', 'beg')) return null
    const chained = reader.skipA('chain')
    if (!reader.skip('of') && !(chained && reader.skip(':'))) return null
    const count = reader.number()
    const named = reader.skipA('chain')
    return (reader.skipA('stitch') && chained) || named ? count : null
  })

export function readChain(reader: Reader): ChainItem | null {
  const start = reader.at
  // "In every sp: 2 dc, after each one 2 ch".
  const behind = reader.sees('after') || reader.sees('each', 'followed') ? readBehindEach(reader) : null
  if (behind) return { ...behind, apart: true, ...reader.span(start) }
  return reader.attempt((): ChainItem | null => {
    // "Beg ch-3 (counts as dc), …" opens a round.
    const opens = reader.sees('beg') && /^[:.–—)-]?$/.test(reader.key(-1))
    // "Standing ch 3": as high as the stitches behind it.
    if (opens || reader.sees('standing')) reader.at++
    // "Foundation ring 4ch, join with ss."
    const ringed = /^(foundation|base|starting)$/.test(reader.key()) && reader.isA('ring', 1)
    if (ringed && (reader.isA('chain', 2) || reader.isA('chain', 3))) reader.at += 2
    const base = readBase(reader)
    if (base !== null) return { type: 'chain', count: base, ...reader.span(start) }
    const token = reader.peek()
    if (token?.kind === 'chains') {
      // "ch-5" is a space that is there; some write it for "ch 5" all the same.
      if (reader.isA('space', 1) || reader.isA('picot', 1) || reader.key(1) === '-') return null
      if (opens && !/^[([,]$/.test(reader.key(1))) return null
      reader.at++
      return { type: 'chain', count: token.value, ...reader.span(start) }
    }
    reader.skip('a')
    const before = reader.peek()?.hyphen ? null : reader.attempt(() => reader.number())
    // "3 turning ch", "3 starting chains".
    if (before !== null && RAISES.has(reader.spelled()) && reader.isA('chain', 1)) reader.at++
    if (!reader.skipA('chain')) return null
    if (/^stitch/.test(reader.spelled())) reader.at++
    // "Foundation chain: 14."
    const told = before === null && reader.peek(1)?.kind === 'number' && reader.skip(':', '=')
    const count = reader.isA('space') ? null : (before ?? (reader.peek()?.hyphen ? null : reader.number()))
    if (reader.isA('space')) return null
    if (told) reader.skipA('chain')
    const raises = count !== null && passRaising(reader)
    const made = !raises && reader.skip('of') ? reader.number() : count
    // "A chain of 10 chain stitches".
    if (made !== count && reader.skipA('chain') && reader.isA('stitch')) reader.at++
    if (opens && !reader.sees('(', '[', ',')) return null
    return { type: 'chain', count: made ?? 1, ...reader.span(start) }
  })
}
