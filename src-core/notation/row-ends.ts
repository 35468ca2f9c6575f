/** Work along the sides of rows: "sc in end of each of next 6 rows", "1 sc in each row end", "8 sc evenly down the side". */
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { Place, PlacePart } from './tree'

const ALONG = ['along', 'down', 'up', 'across', 'over', 'on']
const WHICH_SIDE = [
  ...[
    'the',
    'a',
    'one',
    'first',
    'second',
    'next',
    'other',
    'opposite',
    'same',
    'last',
    'each',
    'rem',
    'third',
  ],
  ...['left', 'right', 'long', 'short', 'lower', 'upper', 'straight', 'slanted', 'sloping', 'left-hand'],
  ...['right-hand', 'row', 'raw'],
]
const SIDE = ['side', 'sides', 'edge', 'edges']
/** A piece itself: "up the point", "down the leaf". */
const PIECES = ['point', 'leaf', 'ray', 'arm', 'spoke', 'petal', 'points', 'rays', 'arms', 'branch']
const OF_WHAT = [
  'the',
  'piece',
  'work',
  'petal',
  'leaf',
  'triangle',
  'square',
  'rows',
  'row',
  'point',
  'heart',
  'each',
  'flag',
]

/** "down the side", "up other side of petal", "along the left-hand edge"; passes it. */
export const passSide = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip(...ALONG)) return null
    const steep = ['up', 'down'].includes(reader.key(-1))
    while (reader.skip(...WHICH_SIDE)) continue
    if (steep && reader.skip(...PIECES)) return true
    while (reader.skip('unworked', 'back', 'ch', 'foundation', 'bottom', 'base', 'starting', 'beg')) continue
    // "Down ends of rows".
    const ends = reader.attempt(() => {
      if (!reader.skip('end') || !reader.skip('of')) return null
      reader.skip('the')
      return isRow(reader) && ++reader.at > 0 ? true : null
    })
    if (ends) return true
    // "Along row ends", "along the row ends of the piece".
    if (!reader.skip(...SIDE, 'row-end') && !reader.skip('end')) return null
    if (/^ends?$/.test(reader.spelled(-1)) && !/^rows?$/.test(reader.spelled(-2))) return null
    reader.attempt(() => {
      if (!reader.skip('of')) return null
      const at = reader.at
      while (reader.skip(...OF_WHAT)) continue
      // "up the unworked side of each chain".
      if (steep && reader.skipA('chain')) return true
      return reader.at > at && !reader.isA('chain') ? true : null
    })
    return true
  }) === true

/** "to the point", "down to the bottom", "up to corner": how far; a side goes there anyway. */
const passFar = (reader: Reader): void => {
  reader.attempt(() => {
    reader.skip('up', 'down', 'back')
    if (!reader.skip('to')) return null
    while (reader.skip('the', 'next', 'first')) continue
    return reader.skip('point', 'tip', 'top', 'bottom', 'corner', 'end', 'base', 'st') || null
  })
}

/** "Working along row ends, work (9 sc evenly spaced)": whether a side was named right before a token. */
export function sideBefore(reader: Reader, from: number): Place | null {
  let to = from - 1
  while (/^([,:]|work|make|and|then|works?)$/.test(reader.tokens[to]?.is ?? reader.tokens[to]?.key ?? ''))
    to--
  const outer = reader.at
  let side: Place | null = null
  for (let at = to; at > to - 8 && at >= 0 && !/^[,;.*]$/.test(reader.tokens[at]!.key); at--) {
    reader.at = at
    if (!reader.skip(...ALONG)) continue
    reader.at = at
    if (passSide(reader) && reader.at === to + 1) side = placeOf(null, reader.span(at))
  }
  reader.at = outer
  return side
}

const isRow = (reader: Reader): boolean => reader.isA('round') && /^rows?$/.test(reader.spelled())

interface Which {
  readonly each: boolean
  readonly count: number | null
}

/** "each of the next 6", "next 3", "the 5": which rows; null: none is named. */
function readWhich(reader: Reader): Which {
  let each = false
  for (;;) {
    if (reader.skip('each', 'every', 'all')) each = true
    else if (!reader.skip('of', 'the', 'next', 'first', 'last', 'rem', 'these', 'those')) break
  }
  return { each, count: reader.number() }
}

/** "next 4 row ends", "each row end", "last row end" without what leads there; passes it. */
const readEnds = (reader: Reader): Which | null =>
  reader.attempt(() => {
    const found = readWhich(reader)
    const isOne = found.count === null && !found.each && /^(next|first|last)$/.test(reader.spelled(-1))
    const isNamed = reader.skip('row-end') || (isRow(reader) && ++reader.at > 0 && reader.skip('end', 'edge'))
    if (!isNamed) return null
    const isSingle = isOne && !/s$/.test(reader.spelled(-1))
    reader.skipA('stitch')
    return isSingle ? { each: false, count: 1 } : found
  })

/** "(skip) next 4 row ends": passes it. */
export const readBareRowEnds = (reader: Reader): Place | null =>
  reader.attempt(() => {
    const start = reader.at
    const which = readEnds(reader)
    return which ? placeOf(which, reader.span(start)) : null
  })

function placeOf(which: { each: boolean; count: number | null } | null, span: Span): Place {
  const part: PlacePart = {
    which: which !== null && which.count === null ? 'each' : 'next',
    count: which?.count ?? 1,
    each: which !== null,
    noun: { kind: 'row-end' },
    ...{ extent: null, loop: null, around: false, round: null, unworked: false, asBeginning: false },
    nounSpan: span,
    ...span,
  }
  return { parts: [part], over: false, ...span }
}

/** Whether a side or row is named close by: places are read for every stitch. */
const namedAhead = (reader: Reader): boolean => {
  for (let ahead = 1; ahead < 11; ahead++) {
    const key = reader.spelled(ahead)
    if (/^rows?$|^row-ends?$/.test(key) || SIDE.includes(key)) return true
    if (/^[,;.]$/.test(key)) return false
  }
  return false
}

/** A place at the ends of rows; passes it. */
export function readRowEnds(reader: Reader): Place | null {
  if (!namedAhead(reader)) return null
  const start = reader.at
  return reader.attempt((): Place | null => {
    if (passSide(reader)) {
      passFar(reader)
      return placeOf(null, reader.span(start))
    }
    if (!reader.isA('into')) return null
    reader.at++
    const ends = reader.attempt(() => {
      reader.skip('the')
      if (!reader.skip('end', 'side', 'sides', 'edge', 'edges') || !reader.skip('of')) return null
      const which = readWhich(reader)
      return isRow(reader) && ++reader.at > 0 ? which : null
    })
    const which =
      ends ??
      readEnds(reader) ??
      reader.attempt(() => {
        const found = readWhich(reader)
        if (!isRow(reader)) return null
        reader.at++
        // "1 sc in each row down the side".
        return found.each && (/^([,;.)]|down|up|along|to|)$/.test(reader.key()) || null) ? found : null
      })
    if (!which) return null
    passSide(reader)
    passFar(reader)
    return placeOf(which.count === null && !which.each ? { ...which, each: true } : which, reader.span(start))
  })
}

const endsHere = (reader: Reader): boolean =>
  /^([,;.:)\]]|and|then|)$/.test(reader.key()) || reader.peek()?.first === true

/** "(11 dc) across bottom", "along the top edge": so many along an edge, whatever stands there; passes it. */
export const readEdge = (reader: Reader): Place | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.skip(...ALONG)) return null
    reader.skip('the')
    if (!reader.skip('top', 'bottom', 'lower', 'upper')) return null
    reader.skip(...SIDE)
    return endsHere(reader) ? placeOf(null, reader.span(start)) : null
  })
}

/** "(13 dc) across": one in each of the next 13; passes it. */
export const readRowOf = (reader: Reader, count: number): Place | null => {
  const start = reader.at
  if (!reader.attempt(() => (reader.skip('across') && endsHere(reader) ? true : null))) return null
  const span = reader.span(start)
  const [part] = placeOf({ each: true, count }, span).parts
  return { parts: [{ ...part!, noun: { kind: 'stitch', name: null } }], over: false, ...span }
}
