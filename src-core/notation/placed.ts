/** A place first, then what goes into it: "in next ch-5 sp work …", "next corner: 3 dc, ch 3, 3 dc". */
import { STARS } from './clauses'
import type { SequenceReader } from './clauses'
import { readNoun } from './nouns'
import { readPlace } from './places'
import { plainPlace } from './plain-place'
import type { Reader } from './reader'
import { readTimesFirst } from './times-first'
import type { Item, NoteItem, Place, PlacedItem, StarItem } from './tree'
import { isSlip } from './stitch-name'

/** "In ring, *sc, ch 2; rep from * 3 more times": what is repeated goes into that place, not on from it. */
function staysThere(star: StarItem, place: Place): boolean {
  if (star.repeat?.amount == null) return false
  const inRing = place.parts[0]!.noun.kind === 'ring'
  return star.items.every((item) => {
    if (item.type === 'skip') return false
    const at = 'place' in item ? item.place?.parts[0] : undefined
    return !at || (inRing && at.noun.kind === 'ring')
  })
}

/** "Next corner: 3 dc, ch 3, 3 dc": a place that a colon makes one of what follows. */
const cornerAhead = (reader: Reader): Place | null =>
  reader.attempt(() => {
    const at = reader.at
    while (
      ['next', 'each', 'first', 'last', 'every', 'the', 'other', 'second', 'third'].includes(reader.key())
    )
      reader.at++
    const named = reader.isA('counted') || reader.peek()?.kind === 'chains' || reader.isA('chain')
    reader.at = at
    const place = named ? readPlace(reader, true) : null
    const kind = place?.parts[0]!.noun.kind
    return place && (kind === 'corner' || kind === 'space') && reader.sees(':') ? place : null
  })

/** "In next 3 ch. sp. 3 tr, 3 ch, 3 tr.": the stop of the abbreviation ends no sentence; passes it. */
const passShortStop = (reader: Reader): void => {
  const next = reader.peek(1)
  const goesOn = next?.kind === 'number' || next?.key === '(' || /^\p{Ll}/u.test(next?.text ?? '')
  if (reader.sees('.') && /^(sps?|lps?|sts?|ch)$/.test(reader.spelled(-1)) && goesOn && !next!.first)
    reader.at++
}

/** "Fill each loop with", "each loop gets", "make a petal in each sp as follows:": the place, before what goes into it. */
const readFilled = (reader: Reader): Place | null =>
  reader.attempt(() => {
    if (/^(fill|cover|edge)$/.test(reader.spelled())) {
      reader.at++
      const place = readPlace(reader, true)
      return place && reader.skip('with') ? place : null
    }
    // "Turning each corner with (2 dc, ch 2, 2 dc)".
    if (/^(turn|turning|rounding)$/.test(reader.spelled()) && /^(each|every|the|all)$/.test(reader.key(1))) {
      reader.at++
      const place = readPlace(reader, true)
      return place?.parts[0]?.noun.kind === 'corner' && reader.skip('with', 'by') ? place : null
    }
    if (reader.sees('each') || reader.sees('every')) {
      const place = readPlace(reader, true)
      if (place && reader.skip('is'))
        return reader.skip('filled', 'worked', 'covered') && reader.skip('with') ? place : null
      return place && reader.skip('gets', 'receives', 'takes', 'holds') ? place : null
    }
    if (!reader.skip('work', 'make')) return null
    reader.skip('a', 'the', 'one', '1', 'another')
    if (!reader.skipA('group')) return null
    const place = reader.isA('into') ? readPlace(reader) : null
    while (reader.skip('as', 'follows', 'like', 'this', 'thus', 'so', 'of')) continue
    return place && reader.sees(':') ? place : null
  })

/** "Work corner in next sp (3 dc, ch 2, 3 dc)", "first petal in same sp (…)": its name, its place, and what it is. */
const readNamed = (reader: Reader): Place | null =>
  reader.attempt(() => {
    while (reader.skip('work', 'make', 'a', 'the', 'one', 'another', 'first', 'next', 'beg', 'last')) continue
    if (!reader.skip('corner') && !reader.skipA('group')) return null
    const place = reader.isA('into') ? readPlace(reader) : null
    const [part] = place?.parts ?? []
    const one = part?.count === 1 && (part.which === 'next' || part.which === 'same')
    return place && one && /^[([]$/.test(reader.key()) ? place : null
  })

/** The first of what was read; gives the rest back. */
function firstAlone(reader: Reader, items: readonly Item[]): readonly Item[] {
  const [, next] = items
  while (next && reader.tokens[reader.at - 1]!.start >= next.start) reader.at--
  return items.slice(0, 1)
}

/** "Whenever you reach a ch-2 space, work …": each of them. */
const readReached = (reader: Reader): Place | null => {
  const start = reader.at
  return reader.attempt(() => {
    const often = /^(when|whenever|where|wherever)$/.test(reader.spelled()) && ++reader.at > 0
    if (!often && !(reader.skip('each', 'every', 'any') && reader.skip('times'))) return null
    if (!reader.skip('you', 'we', 'one')) return null
    if (!/^(reach|come|get|arrive|meet|hit|find)$/.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('to', 'at', 'a', 'an', 'the', 'each', 'any')) continue
    const noun = readNoun(reader)
    if (noun?.kind !== 'space' && noun?.kind !== 'corner') return null
    const place = plainPlace({ which: 'each', each: true, noun, extent: null }, reader.span(start))
    return reader.sees(',') || reader.isA('verb') ? place : null
  })
}

/**
 * "In each loop work 1 dc, 3 tr, 1 dc, ss into first dc": the slip stitch at the end joins the round, once, and none of
 * the loops; gives it back to be read behind them.
 */
function leaveJoin(reader: Reader, place: Place, items: readonly Item[]): readonly Item[] {
  const [part] = place.parts
  const at = items.findLastIndex(({ type }) => type !== 'note')
  const [before, last] = [items[at - 1], items[at]]
  const worked = before?.type === 'group' || (before?.type === 'work' && !isSlip(before.stitch))
  const whole = part?.each || part?.noun.kind === 'ring'
  if (!whole || !last || !worked) return items
  const into = last.type === 'work' && isSlip(last.stitch) ? last.place?.parts[0] : undefined
  const first = into?.which === 'first' && (into.noun.kind === 'stitch' || into.noun.kind === 'own')
  if (last.type !== 'join' && !(first && last.type === 'work')) return items
  while (reader.at > 0 && reader.tokens[reader.at - 1]!.start >= last.start) reader.at--
  return items.slice(0, at)
}

/**
 * "In the arch 2 dc, ch 3, 2 dc, then sc in center dc of next group", "…, then complete rnd as for first motif": what goes
 * on from there is given back.
 */
function leaveOnward(reader: Reader, place: Place, items: readonly Item[]): readonly Item[] {
  const at = items.findIndex(
    (item) =>
      (item.type === 'work' && item.place?.parts.every(({ noun }) => noun.kind === 'within')) ||
      (item.type === 'repeat-round' && item.completes),
  )
  if (at < 1 || place.parts[0]!.each) return items
  const from = items[at]!
  while (reader.at > 0 && reader.tokens[reader.at - 1]!.start >= from.start) reader.at--
  return items.slice(0, at)
}

/** "Working in ends of rows, sc in each of 9 rows": which way it goes; what is worked tells its places itself. */
const tellsEnds = (place: Place, items: readonly Item[]): boolean =>
  place.parts[0]!.noun.kind === 'row-end' &&
  items.some((item) => item.type === 'work' && item.place?.parts[0]!.noun.kind === 'row-end')

/** "(Into every sp work) a petal of (1 dc, 5 tr, 1 dc)": what it is called; passes it. */
const passCalled = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('a', 'one', '1') || !reader.skipA('group') || !reader.skip('of')) return null
    return reader.peek()?.kind === 'number' || /^[([]$/.test(reader.key()) || null
  }) === true

/** "In next ch-5 sp work …": a place first, then what goes into it. */
export function readPlaced(reader: Reader, sequence: SequenceReader): PlacedItem | NoteItem | null {
  const start = reader.at
  return reader.attempt((): PlacedItem | NoteItem | null => {
    const named = readNamed(reader)
    if (named) {
      const [group] = firstAlone(reader, sequence(reader, 'placed'))
      if (group?.type !== 'group' || group.place) return null
      return { type: 'placed', place: named, items: group.items, ...reader.span(start) }
    }
    const filled = readReached(reader) ?? readFilled(reader)
    const place = filled ?? (reader.isA('place') ? readPlace(reader) : cornerAhead(reader))
    if (!place) return null
    // "Working between the stitches, not into the tops: …" only says how.
    if (
      reader.sees(',') &&
      place.parts[0]!.noun.kind === 'gap' &&
      reader.key(-1) !== 'next' &&
      reader.spelled(1) === 'not'
    )
      return { type: 'note', effect: null, ...reader.span(start) }
    if (!reader.skip(',', ':')) passShortStop(reader)
    while (reader.skip('work', 'make', 'place', 'crochet', 'put', 'do')) continue
    reader.skip(':')
    reader.skip('below')
    while (reader.skip('work', 'make', 'crochet')) continue
    passCalled(reader)
    const at = reader.at
    // "Into each st work 2 times 1 dc and 1 ch".
    const timed = readTimesFirst(reader, sequence, true)
    if (timed) return { type: 'placed', place, items: [timed], ...reader.span(start) }
    const read = sequence(reader, STARS.has(reader.key()) ? 'star' : 'placed')
    const items = leaveOnward(reader, place, leaveJoin(reader, place, read))
    if (items[0]?.type === 'star' && !staysThere(items[0], place)) return null
    if (tellsEnds(place, items)) {
      reader.at = at
      return { type: 'note', effect: null, ...reader.span(start) }
    }
    if (reader.at === at) return null
    // Prose behind a place ("in ring, pull tail") is prose altogether; it is not read a second time.
    if (items.every((item) => item.type === 'note'))
      return { type: 'note', effect: null, ...reader.span(start) }
    return { type: 'placed', place, items, ...reader.span(start) }
  })
}
