/** What a motif begins with: a ring of chains, of yarn, and the words around it. */
import { readChains, skipAdjustable } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { FoundationItem, Item } from './tree'
import { isSlip } from './stitch-name'
import { readStitch } from './vocabulary'

/** Words that close a chain; "form" and "make" do so where it is told what the ring is made of. */
const CLOSES =
  'gather gathered gathering join joining joined united uniting close closing closed connect connecting connected linked tie'.split(
    ' ',
  )
const MAKES = ['form', 'forming', 'formed', 'make', 'making', 'create', 'creating', 'turn', 'bring']
const BY = ['with', 'by', 'using', 'from', 'of', 'out']

/** "With a sl st", "by 1 slip stitch": passes it. */
const passSlip = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip(...BY)
    reader.skip('a', 'one', '1', 'the')
    const stitch = readStitch(reader)
    // "Slip to make a ring".
    if (stitch === null) return (reader.spelled() === 'slip' && ++reader.at > 0) || null
    return isSlip(stitch) || null
  }) === true

/** "(In)to a ring", "in the ring"; `named`: only with its article, since stitches go "in ring" too. */
const passRing = (reader: Reader, named: boolean): boolean =>
  reader.attempt(() => {
    while (reader.skip('in', 'into', 'to', 'for')) continue
    const article = reader.skip('a') || (!named && reader.skip('the'))
    if (named && !article) return null
    while (reader.skip('little', 'small', 'tiny', 'neat', 'tight', 'loose', 'nice')) continue
    // "Close it in a round with 1 slip stitch", as other languages call it.
    const ring = reader.skipA('ring') || (reader.key(-1) === 'a' && reader.skip('round', 'rnd'))
    return ring || null
  }) === true

/** "In first ch", "into furthest ch from hook": where the chain is closed; passes it. */
const passClosingPlace = (reader: Reader, ring: boolean): boolean =>
  reader.attempt(() => {
    const found = reader.attempt(() => readPlace(reader))
    if (found) return found.parts[0]!.noun.kind !== 'ring' || null
    if (ring || !reader.skip('in', 'into')) return null
    let words = 0
    while (words++ < 7 && reader.peek()?.kind === 'word' && !reader.sees('to')) reader.at++
    return (reader.sees('to') && MAKES.includes(reader.key(1))) || null
  }) === true

/** "Rnd 1: 4 ch, (ss into ring)": whether nothing but a chain stands before the words in hand. */
function followsFirstChain(reader: Reader): boolean {
  let at = reader.at - 1
  while (/^(,|and|then)$/.test(reader.tokens[at]?.key ?? '')) at--
  const chained = reader.tokens[at]
  const pair = chained?.kind === 'number' || chained?.kinds.has('chain') ? 2 : 1
  const chain = reader.tokens.slice(Math.max(0, at - pair + 1), at + 1)
  if (!chain.some(({ kind, kinds }) => kind === 'chains' || kinds.has('chain'))) return false
  const before = reader.tokens[at - pair]
  return before === undefined || chain[0]!.first || /^[:–—-]$/.test(before.key)
}

/**
 * "Join with sl st in first ch to form a ring", "close to a ring with 1 sl st", "with 8 ch form a ring": what is done,
 * with how many chains, by which stitch and where, in any order; its chains, 0 where they are made before.
 */
const readClosed = (reader: Reader): number | null =>
  reader.attempt(() => {
    const opens = followsFirstChain(reader)
    let does = false
    let closes = false
    let ring = false
    let slip = false
    let chains: number | null = null
    const parts: (() => boolean)[] = [
      () => {
        const at = reader.at
        while (reader.skip(',', 'and', 'then', 'to', 'so', 'as', 'by')) continue
        const closing = reader.skip(...CLOSES) || (reader.spelled() === 'link' && ++reader.at > 0)
        if (!closing && !reader.skip(...MAKES)) reader.at = at
        else {
          does = true
          closes ||= closing
          const what = ['it', 'this', 'these', 'them', 'both', 'the', 'end', 'ends', 'tog', 'up', 'round']
          while (closing && reader.skip(...what)) continue
          while (!closing && reader.skip('it', 'this', 'these', 'them')) continue
        }
        return reader.at > at
      },
      () => {
        if (chains !== null || (ring && !BY.includes(reader.key()))) return false
        chains = reader.attempt(() => (reader.skip(...BY), readChains(reader)))
        return chains !== null
      },
      () => !slip && passSlip(reader) && (slip = true),
      () => {
        // "Sl st to ring" closes one; "sl st in ring" goes into one that is there.
        const to = reader.sees('to')
        if (ring || !passRing(reader, slip && !does && !to && !opens)) return false
        does ||= slip && (to || opens)
        return (ring = true)
      },
      () => (slip || does) && passClosingPlace(reader, ring) && (closes = true),
    ]
    while (parts.some((passes) => passes())) continue
    return ring && does && (closes || slip || chains !== null) ? (chains ?? 0) : null
  })

const YARN = /^(yarn|thread|cotton|wool|string|tail)s?$/

/** What yarn is wound round for a ring. */
const ROUND_WHAT = new Set(['finger', 'fingers', 'thumb', 'pencil', 'hand', 'stick', 'pen'])

/** "(Begin) with pale pink and (a slip ring)": the yarn that the ring is made of; passes it. */
const passYarnAnd = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('with')) return null
    for (let words = 0; words < 5; words++) {
      if (words > 0 && reader.skip('and')) {
        const { at } = reader
        reader.skip('a', 'an', 'the')
        const ring = skipAdjustable(reader)
        reader.at = at
        return ring || null
      }
      if (reader.peek()?.kind !== 'word' || reader.peek()!.first) return null
      reader.at++
    }
    return null
  }) === true

/** "make an adjustable ring", "magic ring", "join to form ring", "sl st in first ch to form a ring". */
export function readFoundation(reader: Reader): FoundationItem | null {
  const start = reader.at
  return reader.attempt((): FoundationItem | null => {
    const closed = readClosed(reader)
    if (closed !== null)
      return {
        type: 'foundation',
        ring: 'close-chain',
        ...(closed > 0 && { chains: closed }),
        ...reader.span(start),
      }
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
    const makes = reader.sees('make') || reader.sees('form')
    while (reader.skip('make', 'form', 'begin', 'off', 'using', 'create', 'work', 'over', 'onto')) continue
    // "Begin with pale pink and a slip ring", "begin in a magic ring".
    if (!passYarnAnd(reader)) reader.skip('with', 'in', 'from')
    reader.skip('a', 'an', 'the')
    // "Make a ring": nothing says of what, so it is one that draws together.
    const alone =
      makes && reader.isA('ring') && (reader.peek(1)?.first === true || /^[,;.:]?$/.test(reader.key(1)))
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
      // "Magic ring (thread ring)", "magic loop (or ch 4 and join)": once more in other words.
      reader.attempt(() => {
        if (!reader.skip('(')) return null
        while (reader.peek()?.kind === 'word' && !reader.isA('ring') && !reader.isA('chain')) reader.at++
        return (reader.skipA('ring') && reader.skip(')')) || null
      })
      return { type: 'foundation', ring: 'adjustable', ...reader.span(start) }
    }
    // "Ring of thread", "work a loop of yarn as centre ring".
    const ofYarn = reader.attempt(() => {
      if (!reader.skipA('ring') || !reader.skip('of', 'with', 'from', 'using')) return null
      while (reader.skip('the', 'your', 'of', 'work', 'unworked', 'short', 'loose', 'end')) continue
      if (!YARN.test(reader.spelled()) && reader.key(-1) !== 'end') return null
      for (let words = 0; words < 7 && reader.peek() && !/^[.;:,]$/.test(reader.key()); words++) reader.at++
      return true
    })
    if (ofYarn) return { type: 'foundation', ring: 'adjustable', ...reader.span(start) }
    const ofChains = reader.attempt(() => {
      if (!reader.skipA('ring') || !reader.skip('of')) return null
      const chains = reader.number()
      return chains !== null && reader.skipA('chain') ? chains : null
    })
    if (ofChains === null) return null
    return { type: 'foundation', ring: 'close-chain', chains: ofChains, ...reader.span(start) }
  })
}

/** "Strike on (20 ch)", "Set up (6 ch)", "Mount (a chain of 8)": passes all before the chain. */
const passSetUp = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!/^(strike|cast|set|mount|throw|lay|put|make|begin|start)$/.test(reader.spelled())) return null
    reader.at++
    if (!reader.skip('on', 'up', 'off') && /^(make|begin|start)$/.test(reader.spelled(-1))) return null
    const { at } = reader
    const chains = readChains(reader)
    reader.at = at
    return chains !== null || null
  }) === true

/** "For the example (chain 18)", "for each motif (make 6 ch)": passes all before the chain. */
const passForWhat = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('for') || reader.isA('chain')) return null
    for (let words = 0; words < MOST_FOR && reader.peek()?.kind === 'word'; words++) {
      const { at } = reader
      reader.skipA('verb')
      const chains = words > 0 && !reader.sees('a') ? readChains(reader) : null
      reader.at = at
      if (chains !== null) return true
      reader.at++
    }
    return null
  }) === true
const MOST_FOR = 8

/** "Begin in center with ch 8", "starting at the middle, …": where a motif begins is no work. */
export const passMiddle = (reader: Reader): Item | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (passSetUp(reader) || passForWhat(reader)) return { type: 'note', effect: null, ...reader.span(start) }
    if (!reader.skip('beg', 'begin', 'starting')) return null
    if (!reader.skip('in', 'at', 'from')) return null
    reader.skip('the')
    if (!reader.skip('center')) return null
    reader.skip('with')
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}
