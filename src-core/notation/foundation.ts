/** What a motif begins with: a ring of chains, of yarn, and the words around it. */
import { skipAdjustable } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { FoundationItem, Item } from './tree'
import { readStitch } from './vocabulary'

/** "8 ch", "a chain of 8", "ch 8": passes it. */
const readChains = (reader: Reader): number | null =>
  reader.attempt(() => {
    reader.skip('a')
    const before = reader.number()
    if (!reader.skipA('chain')) return null
    if (before === null) reader.skip('of')
    const chains = before ?? reader.number()
    if (before === null) reader.skipA('chain')
    return chains
  })

/** "Form with 8 ch a ring", "with 8 ch form a ring", "make a ring with 8 ch": its chains; passes it. */
const readRingOfChains = (reader: Reader): number | null =>
  reader.attempt(() => {
    const makes = () => {
      const made = reader.skip('form', 'make', 'close', 'create', 'join')
      reader.skip('to', 'into')
      return made
    }
    const ring = () => {
      reader.skip('in', 'into', 'to')
      reader.skip('a', 'the')
      return reader.skipA('ring')
    }
    const withChains = () =>
      reader.skip('with', 'from', 'out', 'using') ? (reader.skip('of'), readChains(reader)) : null
    const first = withChains()
    if (!makes()) return null
    const chains = first ?? withChains() ?? readChains(reader)
    if (!ring()) return null
    return chains ?? withChains()
  })

/** What yarn is wound round for a ring. */
const ROUND_WHAT = new Set(['finger', 'fingers', 'thumb', 'pencil', 'hand', 'stick', 'pen'])

/** "make an adjustable ring", "magic ring", "join to form ring", "sl st in first ch to form a ring". */
export function readFoundation(reader: Reader): FoundationItem | null {
  const start = reader.at
  return reader.attempt((): FoundationItem | null => {
    const closes = reader.attempt(() => {
      const at = reader.at
      while (reader.skip('join', 'and', 'close', 'joining')) continue
      const joins = reader.at > at
      reader.skip('with')
      reader.skip('a')
      const stitch = readStitch(reader)
      if (stitch && stitch.stitch !== 'sl st') return null
      // "join into a ring with ss".
      const ring = reader.attempt(() => {
        if (!joins || !reader.skip('into', 'in')) return null
        reader.skip('a', 'the')
        if (!reader.skipA('ring')) return null
        reader.attempt(() => (reader.skip('with', 'by'), reader.skip('a', 'one', '1'), readStitch(reader)))
        return true
      })
      if (ring) return true
      const place = reader.attempt(() => {
        const found = readPlace(reader)
        return found?.parts[0]?.noun.kind === 'ring' ? null : found
      })
      if (!place && !stitch && !joins) return null
      reader.skip('to')
      // "3 tr, 2 ch, sl st into the ring": into one that is there.
      if (stitch && !joins && reader.sees('into', 'the')) return null
      if (!reader.skip('form', 'make', 'into', 'forming')) return null
      reader.skip('a', 'the')
      return reader.skipA('ring') || null
    })
    if (closes) return { type: 'foundation', ring: 'close-chain', ...reader.span(start) }
    // "Wind yarn round finger to form a ring".
    const wound = reader.attempt(() => {
      if (!reader.skip('wind', 'wrap', 'winding', 'wrapping', 'twist', 'twisting')) return null
      // "Wind the cotton a few times round the finger".
      let finger = false
      for (let words = 0; words < 12 && reader.peek() && !/^[.;:,]$/.test(reader.key()); words++) {
        if (reader.skipA('ring')) return true
        if (reader.sees('or')) break
        finger ||= ROUND_WHAT.has(reader.key())
        reader.at++
      }
      return finger || null
    })
    if (wound) return { type: 'foundation', ring: 'adjustable', ...reader.span(start) }
    const chained = readRingOfChains(reader)
    if (chained !== null)
      return { type: 'foundation', ring: 'close-chain', chains: chained, ...reader.span(start) }
    const makes = reader.sees('make') || reader.sees('form')
    while (reader.skip('make', 'form', 'begin', 'using', 'create', 'work', 'over', 'onto')) continue
    reader.skip('with')
    reader.skip('a', 'an', 'the')
    // "Make a ring": nothing says of what, so it is one that draws together.
    const alone = makes && reader.isA('ring') && (reader.peek(1)?.first ?? /^[,;.:]?$/.test(reader.key(1)))
    if (alone && reader.skipA('ring'))
      return { type: 'foundation', ring: 'adjustable', ...reader.span(start) }
    if (skipAdjustable(reader)) {
      // "Make a magic ring with 6 sc": the stitches follow.
      reader.attempt(() => {
        if (!reader.skip('with') || reader.number() === null) return null
        const at = reader.at - 1
        if (!readStitch(reader)) return null
        reader.at = at
        return true
      })
      return { type: 'foundation', ring: 'adjustable', ...reader.span(start) }
    }
    const ofChains = reader.attempt(() => {
      // "Close a chain of 6 chains in a ring with 1 slip st".
      const closed = reader.attempt(() => {
        if (!reader.skip('close', 'join')) return null
        reader.skip('a')
        if (!reader.skipA('chain') || !reader.skip('of')) return null
        const chains = reader.number()
        if (chains === null || !(reader.skipA('chain') || reader.skip('st')) || !reader.skip('in', 'into'))
          return null
        reader.skip('a', 'the')
        if (!reader.skipA('ring')) return null
        reader.attempt(() => (reader.skip('with', 'by'), reader.skip('a', 'one', '1'), readStitch(reader)))
        return chains
      })
      if (closed !== null) return closed
      if (!reader.skipA('ring') || !reader.skip('of')) return null
      const chains = reader.number()
      return chains !== null && reader.skipA('chain') ? chains : null
    })
    if (ofChains === null) return null
    return { type: 'foundation', ring: 'close-chain', chains: ofChains, ...reader.span(start) }
  })
}

/** "Begin in center with ch 8", "starting at the middle, …": where a motif begins is no work. */
export const passMiddle = (reader: Reader): Item | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.skip('beg', 'begin', 'starting')) return null
    if (!reader.skip('in', 'at', 'from')) return null
    reader.skip('the')
    if (!reader.skip('center')) return null
    reader.skip('with')
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}
