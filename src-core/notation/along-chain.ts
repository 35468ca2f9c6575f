/** How a chain is worked along, told apart from the stitches: where that begins, and its other side. */
import { readPlace } from './places'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { Item, NoteItem, PlacePart, ScopeItem } from './tree'
import { readStitch } from './vocabulary'

const FAR_SIDE = ['opposite', 'other', 'second', 'bottom', 'lower', 'under', 'unworked', 'rem', 'far']
const CHAINS_FIRST = ['beg', 'starting', 'commencing', 'base', 'foundation', 'same']
const THE = ['the', 'your', 'this', 'that', 'these', 'those']
const GOES_ALONG = [
  'along',
  'on',
  'down',
  'in',
  'across',
  'into',
  'over',
  'around',
  'up',
  'to',
  'by',
  'from',
  'use',
  'using',
]

/**
 * "along opposite side of ch", "on the underside of the chain", "in the unworked loops of foundation ch"; passes it.
 * `bare`: "now the other side of the chain".
 */
function passFarSide(reader: Reader, bare: boolean, moves: boolean): boolean {
  const up = reader.skip('back', 'up') && reader.key(-1) === 'up'
  if (bare && reader.sees('the')) reader.skip('the')
  // "Work up other side".
  else if (!reader.skip(...GOES_ALONG) && !up) return false
  reader.skip('the')
  // "in free loops on opposite side of ch".
  reader.attempt(() => {
    const loops = reader.skipAll('unworked', 'lp') && reader.skip('on', 'along', 'of')
    reader.skip('the')
    return loops && FAR_SIDE.includes(reader.key()) ? true : null
  })
  const under = reader.skip('underside')
  const bottom = reader.sees('bottom') && !['side', 'edge'].includes(reader.key(1))
  const named = under || (bottom && reader.skip('bottom'))
  if (!named && !(reader.skip(...FAR_SIDE) && reader.skip('side', 'edge', 'lp', 'half'))) return false
  if (!reader.skip('of')) return !named || (under && moves)
  while (reader.skip('the', 'your', 'this', 'that', ...CHAINS_FIRST)) continue
  if (reader.peek()?.kind !== 'chains')
    return reader.skipA('chain') || reader.key(-1) === 'foundation' || reader.key(-1) === 'base'
  reader.at++
  return true
}

/** What is done with the work, or said of it, on the way to the other side. */
const MOVES = new Set([
  ...['do', 'not', 'turn', 'turning', 'rotate', 'rotating', 'spin', 'flip', 'without', 'but', 'back', 'come'],
  ...['keep', 'keeping', 'rep', 'moving', 'move', 'swing', 'pivot', 'carrying', 'continuing'],
  ...['go', 'going', 'continue', 'carry', 'work', 'then', 'now', 'so', 'that', 'you', 'can', 'are', 'will'],
  ...['piece', 'it', 'the', 'your', 'around', 'round', 'on', 'and', 'to', 'in', 'up', 'down', 'again', 'now'],
])
const MOST_MOVES = 16

/** "…, then back down the other side", "do not turn but work back along other side of ch"; passes it. */
export const passToFarSide = (reader: Reader, bare: boolean): boolean =>
  reader.attempt(() => {
    for (let words = 0; words < MOST_MOVES; words++) {
      const found = reader.attempt(() => passFarSide(reader, bare || words > 0, words > 0) || null)
      if (found) {
        // "… with sc in next 8 ch".
        const on = reader.sees('with') && reader.attempt(() => (reader.at++, readStitch(reader)))
        if (on) while (!reader.sees('with')) reader.at--
        if (on) reader.at++
        return true
      }
      const comma = reader.sees(',') && ['so', 'and', 'but', 'then'].includes(reader.key(1))
      if (!comma && !reader.seesAny(MOVES) && !reader.isA('verb')) return null
      reader.at++
    }
    return null
  }) === true

/** "turn work upside down", "rotate 180°", "spin the piece around": the other side comes up where the first is done. */
export const passRotated = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('turn', 'rotate', 'rotating', 'spin', 'flip')) return null
    const turns = reader.key(-1) === 'turn'
    while (reader.skip('the', 'your', 'work', 'piece', 'it', 'strip', 'leaf', 'ch')) continue
    // "Turn the chain over and sc in each ch", "turn your chain and work along it".
    const chain = reader.key(-1) === 'ch' && /^(the|your)$/.test(reader.spelled(-2))
    if (chain && (reader.skip('over', 'around', 'round') || reader.sees('and') || reader.sees(',')))
      return true
    if (!turns && reader.sees('over') && /^([,.;:]|and)$/.test(reader.key(1))) return ++reader.at > 0
    if (reader.skip('upside')) return reader.skip('down') || null
    if (reader.skip('upside-down', 'clockwise')) return true
    if (reader.peek()?.value === 180) {
      reader.at++
      reader.skip('degrees', 'degree', 'deg', '°')
      return true
    }
    if (reader.skip('around', 'round')) return /^[,.;:]?$/.test(reader.key()) || null
    return !turns && /^[,.;:]$/.test(reader.key()) ? true : null
  }) === true

/** Tokens before a stitch in which the chain stands that it is worked along (ours). */
const LOOKED_BACK = 10

/** Chains made last before a token: "ch 6" of "ch 6, sc over the 6 ch". */
function chainsBefore({ tokens }: Reader, from: number): number | null {
  for (let at = from - 1; at >= Math.max(0, from - LOOKED_BACK); at--) {
    const { kind, value, kinds } = tokens[at]!
    if (kind === 'chains') return value
    if (kind === 'number' && (tokens[at - 1]?.kinds.has('chain') || tokens[at + 1]?.kinds.has('chain')))
      return value
    if (kinds.has('round')) return null
  }
  return null
}

/** "Down the chain", "back along the ch to the base", "along the rest of the chain": passes it. */
const passDownChain = (reader: Reader): boolean =>
  reader.attempt(() => {
    const start = reader.at
    reader.skip('all', 'back')
    reader.skip('all')
    const over = reader.sees('over')
    if (!reader.skip('along', 'down', 'across', 'up', 'over')) return null
    while (reader.skip(...THE, 'length', 'of', 'rem', 'rest', ...CHAINS_FIRST)) continue
    // "Working back along these 6 ch", "down the ch-6 just made".
    const { value, kind } = reader.peek() ?? {}
    const chains = kind === 'chains' || kind === 'number' ? (value ?? null) : null
    // "1ch, 3dc over the 3ch": a loop of the round before.
    if (over && chains !== null && chainsBefore(reader, start) !== chains) return null
    if (kind === 'chains') reader.at++
    else {
      if (reader.number() !== null && !/^(these|those|the|your)$/.test(reader.spelled(-2))) return null
      if (!reader.skipA('chain')) return null
    }
    while (reader.skip('just', 'made', 'st')) continue
    reader.attempt(() => {
      if (!reader.skip('to', 'towards')) return null
      while (reader.skip('the', 'base', 'ring', 'center', 'end', 'beg')) continue
      return /^[,;.:)]?$/.test(reader.key()) || null
    })
    return /^([,;.:)\]–—-]|and|then|)$/.test(reader.key()) || (reader.peek()?.first ?? false) ? true : null
  }) === true

const SCOPE = { loop: null, around: false, round: null, behind: false, opposite: false } as const

/** The 2nd chain from the hook, in which a chain is begun where nothing else is said. */
const begun = (span: Span): ScopeItem => {
  const part: PlacePart = {
    ...{ which: 'from-hook', count: 2, each: false, noun: { kind: 'chain' }, extent: null },
    ...{ loop: null, around: false, round: null, unworked: false, asBeginning: false },
    ...{ nounSpan: span, ...span },
  }
  return { type: 'scope', ...SCOPE, along: part, words: span, ...span }
}

/** "Back along other side", "along the other side of the chain"; "3 sc up the other side" may be that of rows. */
const passChainBack = (reader: Reader): boolean =>
  reader.attempt(() => {
    const back = reader.sees('back')
    if (!passToFarSide(reader, false)) return null
    return back || reader.isA('chain', -1) || reader.peek(-1)?.kind === 'chains' || null
  }) === true

/** Whether words behind a stitch say that it goes along a chain, or along its other side; passes nothing. */
export function alongAhead(reader: Reader): boolean {
  if (!GOES_ALONG.includes(reader.key()) && !['all', 'back'].includes(reader.key())) return false
  const { at } = reader
  const found = passDownChain(reader) || passChainBack(reader)
  reader.at = at
  return found
}

const isBare = (item: Item | undefined): boolean => item?.type === 'work' && item.place === null

const passSame = (reader: Reader): boolean =>
  (reader.isA('verb') || reader.sees('the') || reader.sees('same')) &&
  reader.attempt(() => {
    while (reader.skipA('verb')) continue
    reader.skip('the')
    if (!reader.skip('same')) return null
    while (reader.skip('st', 'again', 'sequence', 'back', 'in', 'reverse', 'order')) continue
    return passToFarSide(reader, true) || null
  }) === true

/** Whether words say that the other side of a chain is worked as the first; passes nothing. */
export function sameBackAhead(reader: Reader): boolean {
  const { at } = reader
  const found = passSame(reader)
  reader.at = at
  return found
}

/** "…, work the same along the other side of the chain": puts the list there once more, and passes the words. */
export function passSameBack(reader: Reader, items: Item[]): boolean {
  const start = reader.at
  if (!passSame(reader)) return false
  const list = items.slice(items.findLastIndex(({ type }) => type === 'chain') + 1)
  const again = list.flatMap((item) => (item.type === 'work' ? [{ ...item, place: null }] : []))
  const span = reader.span(start)
  if (again.length < 2 || list.some(({ type }) => type === 'star' || type === 'group')) {
    reader.at = start
    return false
  }
  items.push({ type: 'scope', ...SCOPE, opposite: true, words: span, ...span }, ...again)
  return true
}

/**
 * "Sl st, sc, hdc, dc, hdc, sc down the chain", "hdc, 3 dc, sc back along other side": where a list goes, told behind
 * it; puts it before the list, and passes the words.
 */
export function passListAlong(reader: Reader, items: Item[]): boolean {
  if (passSameBack(reader, items)) return true
  if (!isBare(items.at(-1)) || !alongAhead(reader)) return false
  const start = reader.at
  const down = passDownChain(reader)
  if (!down) passChainBack(reader)
  let from = items.length
  while (isBare(items[from - 1])) from--
  const span = reader.span(start)
  if (!down) items.splice(from, 0, { type: 'scope', ...SCOPE, opposite: true, words: span, ...span })
  else if (items[from - 1]?.type === 'chain') items.splice(from, 0, begun(span))
  return true
}

/** "Then down the ch: sl st, sc, hdc, …", "work along the chain: sc in 2nd ch from hook, …": before the list. */
export const readDownChain = (reader: Reader): ScopeItem | NoteItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    while (reader.skip('now', 'then') || reader.skipA('verb')) continue
    if (!passDownChain(reader)) return null
    const span = reader.span(start)
    let ahead = 1
    while (reader.peek(ahead) && ahead < FIRST_PHRASE && !/^[,;.]$/.test(reader.key(ahead))) ahead++
    const named = Array.from({ length: ahead }, (_, at) => reader.key(at)).some((key) => key === 'hook')
    return named || !/^[:,]$/.test(reader.key()) ? { type: 'note', effect: null, ...span } : begun(span)
  })
}
const FIRST_PHRASE = 14

/** "Starting in 2nd ch from hook, sc in each ch": where the chain is begun, without a stitch of its own. */
export function readAlong(reader: Reader): ScopeItem | null {
  const start = reader.at
  return reader.attempt((): ScopeItem | null => {
    if (!reader.skip('starting', 'begin', 'beg')) return null
    reader.skip('with', 'from', 'by')
    while (reader.skip('work', 'at')) continue
    const place = readPlace(reader, true)
    const [part] = place?.parts ?? []
    if (!place || place.parts.length > 1 || part?.which !== 'from-hook') return null
    const span = reader.span(start)
    return { type: 'scope', ...SCOPE, along: part, words: span, ...span }
  })
}
