/** "Corners as before", "work corners as in Rnd 2": what goes into a corner is told by an earlier round. */
import { passAsThere } from './as-there'
import type { Reader } from './reader'
import { readPlace } from './places'
import { plainPlace } from './plain-place'
import { isSlip } from './stitch-name'
import type { Definition, Item, Place, PlacePart, RoundNode, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { readStitch } from './vocabulary'
import { NO_NAME } from './stitch-name'
import type { Work } from './work'

const SIDES = new Set(['with', 'and', 'but'])

/** What stands before the corners: a verb, "with", "increasing in". */
function passLead(reader: Reader): void {
  while (reader.skip('with', 'and', 'make', 'having', 'keep', 'keeping', 'do') || reader.skipA('verb'))
    continue
  if (reader.skip('inc', 'increasing')) reader.skip('in', 'at', 'on')
  reader.skip('all')
  reader.skip('the')
}

/** "One more corner", "then another corner", "work the last corner", "corner again": what this round has put into the others; passes it. */
const passOneMore = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('then', 'and', 'now') || reader.skipA('verb')) continue
    reader.skip('one', '1', 'a', 'the')
    const more = reader.skip('more', 'last', 'another')
    if (!reader.skip('corner') || /s$/.test(reader.spelled(-1))) return null
    const again = reader.skip('again')
    return (more || again) && (!reader.peek() || /^[,.;]$/.test(reader.key()) || reader.peek()!.first)
      ? true
      : null
  }) === true

/** "Work corner in next sp", "work first corner in same sp": where a corner goes that was told before; passes it. */
const readCornerInto = (reader: Reader): Place | null =>
  reader.attempt(() => {
    while (reader.skipA('verb') || reader.skip('a', 'the', 'one', 'another', 'first', 'next', 'beg', 'last'))
      continue
    // Where the page explains a corner as a stitch, that is meant.
    if (readStitch(reader) || !reader.skip('corner') || !reader.isA('into')) return null
    const place = readPlace(reader)
    const [part] = place?.parts ?? []
    const one = part?.count === 1 && (part.which === 'next' || part.which === 'same')
    return place && one && part.noun.kind === 'space' && /^([,;.*)]|)$/.test(reader.key()) ? place : null
  })

/** "Corners as before", "corner as in Rnd 2": a corner, or each of them, that an earlier round tells. */
export const readCornersAsBefore = (reader: Reader): WorkItem | null => {
  const start = reader.at
  if (passOneMore(reader)) {
    const span = reader.span(start)
    const stitch: StitchName = { ...NO_NAME, form: 'special', name: 'another corner', ...span }
    const place = plainPlace({ which: 'next', each: false, noun: { kind: 'corner' }, extent: null }, span)
    return { type: 'work', count: null, stitch, place, ...span }
  }
  const into = readCornerInto(reader)
  if (into) {
    const span = reader.span(start)
    const stitch: StitchName = { ...NO_NAME, form: 'special', name: 'corner as before', ...span }
    return { type: 'work', count: null, stitch, place: into, ...span }
  }
  return reader.attempt(() => {
    passLead(reader)
    const from = reader.at
    const all = reader.skip('each', 'every', 'all')
    reader.skip('next', 'last', 'the', 'other')
    const each = all || reader.spelled() === 'corners'
    if (!reader.skip('corner')) return null
    if (reader.isA('space')) reader.at++
    const noun = reader.span(from)
    if (!passAsThere(reader)) return null
    // "…, with ch 1, 3 dc in next ch-1 sp along each side" tells the sides in prose.
    if (reader.seesAny(SIDES, reader.sees(',') ? 1 : 0)) return null
    const span = reader.span(start)
    const stitch: StitchName = { ...NO_NAME, form: 'special', name: reader.words(span), ...span }
    const which = each ? 'each' : 'next'
    const place = plainPlace({ which, each, noun: { kind: 'corner' }, extent: null }, noun)
    return { type: 'work', count: null, stitch, place, ...span }
  })
}

/** Whether a name is that of corners as an earlier round has them. */
const isAsBefore = ({ form, name }: StitchName): boolean => form === 'special' && /\bcorners?\b/i.test(name)

const isCorner = ({ noun }: PlacePart): boolean =>
  noun.kind === 'corner' || (noun.kind === 'space' && noun.corner)

/** How surely an item is what goes into a corner; 0 where it is not. */
function cornered(item: Item): number {
  if (!('place' in item) || item.place?.parts.length !== 1) return 0
  const [part] = item.place.parts
  if (part!.which === 'same' || part!.which === 'elsewhere') return 0
  if (item.type === 'work') {
    const many = (item.count ?? 1) > 1 && !isSlip(item.stitch) && !isAsBefore(item.stitch)
    return many && isCorner(part!) ? 2 : many && part!.which === 'next' && part!.count === 1 ? 1 : 0
  }
  if (item.type !== 'group' && item.type !== 'placed') return 0
  const grows = item.items.some(({ type }) => type === 'chain')
  return isCorner(part!) ? 4 : grows && part!.noun.kind === 'space' ? 3 : 0
}

/** What a round works into its corners: the surest of its items. */
function cornerOf(items: readonly Item[]): Item | null {
  let best: Item | null = null
  const look = (list: readonly Item[]) => {
    for (const item of list) {
      if (cornered(item) > (best ? cornered(best) : 0)) best = item
      if (item.type === 'star' || (item.type === 'group' && !item.place)) look(item.items)
    }
  }
  look(items)
  return best
}

/** Corners by round, as told there or before. */
const known = new WeakMap<RoundNode, Item | null>()

function cornersAt(rounds: readonly RoundNode[], index: number): Item | null {
  let from = index
  while (from >= 0 && !known.has(rounds[from]!)) from--
  let corner = from >= 0 ? known.get(rounds[from]!)! : null
  for (let at = from + 1; at <= index; at++) {
    corner = cornerOf(rounds[at]!.items) ?? corner
    known.set(rounds[at]!, corner)
  }
  return corner
}

/** The corner of an earlier round under the name of the one in hand; null where none is told. */
export function cornerBefore(work: Work, name: StitchName): Definition | null {
  if (!isAsBefore(name)) return null
  const { rounds } = work.tree
  const numbered =
    /\b(?:r|rnds?|rounds?|rows?)\s*(\d+)/i.exec(name.name) ??
    /\b(\d+)(?:st|nd|rd|th)\s+(?:rnd|round|row)/i.exec(name.name)
  const number = Number(numbered?.[1] ?? 0)
  const before = rounds.findLastIndex(
    ({ start, numbers }) =>
      start < work.node.start &&
      (number === 0 || (numbers !== null && numbers[0] <= number && number <= numbers[1])),
  )
  const own = /^another/.test(name.name) ? cornerOf(work.node.items) : null
  const corner = own ?? cornersAt(rounds, before)
  if (!corner) return null
  const { start, end, line, column } = corner
  const span = { start, end, line, column }
  const items =
    corner.type === 'group' || corner.type === 'placed' ? corner.items : [{ ...corner, place: null } as Item]
  const stitch = corner.type === 'work' ? corner.stitch.stitch : null
  return { names: [], keys: [], form: 'shell', stitch, items, description: span, ...span }
}
