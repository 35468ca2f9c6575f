/** How the last repeat ends, in words: "ending last rep at **", "ending with ch 3, dc in first sc". */
import type { SequenceReader } from './clauses'
import { readNoun } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { Item, Place, RepeatEnding } from './tree'
import { NO_NAME } from './stitch-name'
import { readStopBehind } from './stop-behind'
import { passStopAtDouble } from './stop-at-double'
import { readStitch } from './vocabulary'

/** Token where "on last rep" begins, if it comes soon; what is left out stands before it. */
function lastRepAhead(reader: Reader): number {
  for (let ahead = 1; ahead < 10; ahead++) {
    if (!['on', 'at', 'in', 'of'].includes(reader.key(ahead))) continue
    let named = ahead + 1
    // "omitting dc at the end of the last rep".
    while (['the', 'end', 'of'].includes(reader.key(named))) named++
    if (reader.key(named) === 'last' && ['rep', 'times'].includes(reader.key(named + 1)))
      return reader.at + ahead
  }
  return reader.end
}

/** Sets the cursor behind the last token that ends there. */
function passBehind(reader: Reader, end: number): void {
  while (reader.at > 0 && reader.tokens[reader.at - 1]!.end > end) reader.at--
}

/** "(ending last rep with) 3 tr in last dc, turn": that is said of the row, and is read behind it. */
function withoutTurn(reader: Reader, items: Item[]): Item[] {
  const last = items.at(-1)
  if (items.length < 2 || last?.type !== 'note' || last.effect !== 'turn') return items
  const left = items.slice(0, -1)
  passBehind(reader, left.at(-1)!.end)
  return left
}

/** "omitting last 3 sts": stitches that are named by their number alone. */
function readLastStitches(reader: Reader): Item[] | null {
  const start = reader.at
  return reader.attempt(() => {
    const count = reader.number() ?? 1
    if (!reader.skipA('stitch')) return null
    const span = reader.span(start)
    return [{ type: 'work', count, stitch: { ...NO_NAME, ...span }, place: null, ...span }]
  })
}

/** "(ending) in the same st as you began", "(ending) at the joining st": where the round began. */
const readWhereBegun = (reader: Reader): Place | null =>
  reader.attempt(() => {
    if (!reader.sees('in') && !reader.skip('at', 'where')) return null
    const place = readPlace(reader, true)
    const [part] = place?.parts ?? []
    if (!part || place!.parts.length > 1 || part.noun.kind === 'space' || part.noun.kind === 'ring')
      return null
    reader.attempt(
      () => (
        reader.skip('as', 'where') && reader.skip('you'),
        reader.skip('began', 'started', 'begun', 'beg') || null
      ),
    )
    return part.asBeginning || part.which === 'same' || part.which === 'first' ? place : null
  })

/** Verbs with which the last stitch of all is placed. */
const PLACES_LAST = ['work', 'make', 'put', 'with', 'having', 'join']

/** "Instead of 5", "in place of 5 tr": passes it. */
const passInsteadOf = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skipAll('instead', 'of') && !reader.skipAll('in', 'place', 'of')) return null
    if (reader.number() === null) return null
    readStitch(reader)
    return true
  }) === true

/** "(working) only 3 tr in last dc", "3 tr instead of 5 tr in last dc": another number of the last stitch. */
const readFewer = (reader: Reader): Item | null => {
  const start = reader.at
  return reader.attempt((): Item | null => {
    reader.skip('only', 'just')
    const count = reader.number()
    const stitch = count === null ? null : readStitch(reader)
    passInsteadOf(reader)
    const place = stitch && readPlace(reader)
    const last = place?.parts.length === 1 && place.parts[0]!.which === 'last'
    return stitch && last ? { type: 'work', count, stitch, place, ...reader.span(start) } : null
  })
}

/**
 * "Working last sl st in joining sl st", "with the final sc placed in the first sc", "replacing last dc with sl st in
 * first dc", "but on last repeat sl st in first dc": the last stitch of the last repeat, put elsewhere.
 */
const readLastElsewhere = (reader: Reader, sequence: SequenceReader): RepeatEnding | null => {
  const start = reader.at
  return reader.attempt((): RepeatEnding | null => {
    while (reader.skip(',', ';', '(', 'and', 'but', '-', '–', '—')) continue
    reader.attempt(() =>
      /^(except|only)$/.test(reader.spelled()) && ++reader.at > 0
        ? reader.skip('that', 'when') || null
        : null,
    )
    const bracketed = reader.tokens[reader.at - 1]?.key === '('
    const done = (items: Item[]): RepeatEnding | null => {
      if (bracketed && !reader.skip(')')) return null
      return items.some(({ type }) => type !== 'note')
        ? { mode: 'replace', items, ...reader.span(start) }
        : null
    }
    const instead = /^(replacing|substituting)$/.test(reader.spelled()) && ++reader.at > 0
    if (!instead && reader.skip('on', 'for', 'in', 'at')) {
      reader.skip('the')
      // "In the last shell" is a place, "for the last shell" tells of the last lap.
      const laps = !reader.sees('in') && reader.key(-1) !== 'in' && reader.key(-2) !== 'in'
      if (!reader.skip('last')) return null
      const named = reader.skip('rep', 'times', 'pattern', 'patt', 'one', 'set', 'lap', 'sequence')
      if (!named && !(laps && (reader.skipA('group') || reader.skipA('counted')))) return null
      while (reader.skip(',', 'work', 'end', 'ending', 'finish', 'with', 'by')) continue
      return done(sequence(reader, 'clause'))
    }
    const placed = !instead && reader.skip(...PLACES_LAST)
    // "Working only 3 tr in last dc".
    const fewer = placed ? readFewer(reader) : null
    if (fewer) return done([fewer])
    reader.skip('the', 'your')
    reader.skip('very')
    if (!reader.skip('last')) return null
    reader.skip('of', 'all')
    const at = reader.at
    if (placed) reader.number()
    const stitch = readStitch(reader)
    if (!stitch) return null
    if (instead) return reader.skip('with', 'by') ? done(sequence(reader, 'clause')) : null
    const from = reader.at
    reader.skip('.')
    // "The last dc of the last repeat being left out".
    reader.attempt(() => {
      if (!reader.skip('of', 'in')) return null
      while (reader.skip('the', 'last')) continue
      return reader.skip('rep') || null
    })
    const being = reader.skip('being', 'is')
    if (being && reader.sees('a')) return done(sequence(reader, 'clause'))
    // "… being left out", "the last dc is omitted".
    if (being && LEFT_OUT.test(reader.spelled())) {
      reader.at++
      reader.skip('out', 'off', 'worked')
      const span = reader.span(at)
      return { mode: 'omit', items: [{ type: 'work', count: 1, stitch, place: null, ...span }], ...span }
    }
    // "The last single being replaced by 1 sl st in the first single".
    if (/^(replaced|substituted)$/.test(reader.spelled()) && ++reader.at > 0)
      return reader.skip('with', 'by') ? done(sequence(reader, 'clause')) : null
    const said = reader.skip('worked', 'made', 'placed', 'put', 'take', 'taken')
    if (!placed && !said && from !== reader.at) return null
    const place = readPlace(reader)
    if (!place) return null
    // "… making the last CL between the last dc and the ch 3": where the laps lead to by themselves.
    if (place.parts.every(({ noun }) => noun.kind === 'gap') && (!bracketed || reader.skip(')')))
      return { mode: 'append', items: [], ...reader.span(start) }
    return done([{ type: 'work', count: 1, stitch, place, ...reader.span(at) }])
  })
}

const LEFT_OUT = /^(left|omitted|dropped|skipped|not)$/

/** "Omitting", "but leave off", "without", "stopping before", "finish the last repeat without": passes it. */
const passOmitting = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.attempt(() => {
      if (!reader.skip('end', 'ending', 'finish', 'work')) return null
      reader.skip('the')
      return reader.skip('last') && reader.skip('rep', 'times', 'one') && reader.sees('without') ? true : null
    })
    if (reader.skip('omit', 'leaving', 'without')) return true
    if (reader.skip('leave')) return reader.sees('out') || reader.sees('off') || null
    if (/^stop(ping)?$/.test(reader.spelled())) {
      reader.at++
      return reader.skip('before') || null
    }
    reader.skip('do')
    return reader.skip('not') && reader.skip('work', 'make', 'do') ? reader.sees('the') || null : null
  }) === true

/** Words of the longest phrase before "instead of". */
const LONGEST_INSTEAD = 14

/** "Ss to the first dc instead of the last dc": the last stitch of the last repeat is another. */
const readInstead = (reader: Reader, sequence: SequenceReader): RepeatEnding | null => {
  const start = reader.at
  return reader.attempt((): RepeatEnding | null => {
    while (reader.skip(',', ';', 'and', 'but', 'work')) continue
    let ahead = 0
    while (ahead < LONGEST_INSTEAD && reader.peek(ahead) && !/^[.;,(*]$/.test(reader.key(ahead))) {
      if (
        reader.key(ahead) === 'instead' ||
        (reader.key(ahead) === 'in' && reader.key(ahead + 1) === 'place')
      )
        break
      ahead++
    }
    if (!['instead', 'in'].includes(reader.key(ahead)) || ahead === 0) return null
    const items = sequence(reader, 'clause')
    if (!reader.skip('instead') && !reader.skipAll('in', 'place')) return null
    if (items.length !== 1 || !reader.skip('of')) return null
    while (reader.skip('the', 'very', 'work')) continue
    if (!reader.skip('last')) return null
    reader.number()
    return readStitch(reader) ? { mode: 'replace', items, ...reader.span(start) } : null
  })
}

/** "ending last rep at **", "ending with ch 3, dc in first sc", "omitting last ch 2 on final rep". */
export function readEnding(
  reader: Reader,
  sequence: SequenceReader,
): { atDouble: boolean; ending: RepeatEnding | null } | null {
  const start = reader.at
  if (passStopAtDouble(reader)) return { atDouble: true, ending: null }
  const behind = readStopBehind(reader)
  if (behind) return { atDouble: false, ending: behind }
  const elsewhere = readLastElsewhere(reader, sequence) ?? readInstead(reader, sequence)
  if (elsewhere) return { atDouble: false, ending: elsewhere }
  return reader.attempt(() => {
    while (reader.skip(',', ';', '.', '(', 'and', 'but', '-', '–', '—')) continue
    const bracketed = reader.tokens[reader.at - 1]?.key === '('
    const omit = passOmitting(reader)
    const lastLoop = reader.attempt(() => {
      reader.skip('the')
      if (!reader.skip('last') || !(reader.skipA('space') || reader.skip('rep', 'one'))) return null
      return reader.sees('ending') || reader.sees('end') || null
    })
    // "Rep from * to end, working only 3 tr in last dc".
    const only = reader.sees('work', 'only') && reader.skipAll('work', 'only')
    if (!omit && !only) {
      reader.skip('to')
      if (!reader.skip('ending', 'end', 'finish')) return null
    }
    // "End the rnd with ch 4".
    reader.attempt(() => (reader.skip('the'), reader.skipA('round') || null))
    const lastRep = reader.attempt(() => {
      reader.skip('on')
      reader.skip('the')
      if (!reader.skip('last', 'each')) return null
      return reader.skip('rep', 'times', 'one') ? true : null
    })
    const inFirst = lastRep ? null : readWhereBegun(reader)
    if (inFirst) {
      const span = reader.span(start)
      const items: Item[] = [
        { type: 'work', count: 1, stitch: { ...NO_NAME, ...span }, place: inFirst, ...span },
      ]
      return { atDouble: false, ending: { mode: 'replace', items, ...reader.span(start) } as RepeatEnding }
    }
    if (omit) {
      reader.skip('out', 'off')
      while (reader.skip('the', 'very')) continue
      reader.skip('last')
      const outer = reader.end
      reader.end = lastRepAhead(reader)
      const items = readLastStitches(reader) ?? sequence(reader, 'clause').slice(0, 1)
      if (items.length > 0) passBehind(reader, items[0]!.end)
      reader.end = outer
      if (items.length === 0) return null
      if (reader.skip('on', 'at', 'in', 'of')) {
        while (reader.skip('the', 'very', 'end', 'of')) continue
        // "At the end of the 5th", "of the last point".
        if (!reader.skip('last')) reader.ordinal()
        if (!reader.skip('rep', 'times', 'one')) reader.skipA('group')
      }
      if (bracketed) reader.skip(')')
      return { atDouble: false, ending: { mode: 'omit', items, ...reader.span(start) } as RepeatEnding }
    }
    // "Ending ch 1, sc in last sp", "end ch 4": the "with" may be left out before what is worked.
    while (reader.skip('with', 'by', 'in', ':', 'a')) continue
    const fewer = reader.attempt(() => {
      const other = readFewer(reader)
      return other && /\binstead|\bin place of/i.test(reader.text.slice(other.start, other.end))
        ? other
        : null
    })
    if (fewer) {
      const ending: RepeatEnding = { mode: 'replace', items: [fewer], ...reader.span(start) }
      return bracketed && !reader.skip(')') ? null : { atDouble: false, ending }
    }
    const items = withoutTurn(reader, sequence(reader, 'clause'))
    if (items[0]?.type === 'note' || items.every((item) => item.type === 'note')) return null
    const instead = reader.attempt(() => {
      reader.skip(',')
      return reader.skipAll('instead', 'of') || reader.skipAll('in', 'place', 'of') ? true : null
    })
    if (instead) {
      reader.skip('the')
      reader.skip('last')
      const replaced = sequence(reader, 'clause')
      if (replaced.length === 0) readNoun(reader)
    }
    if (bracketed) reader.skip(')')
    const mode = instead || lastRep || lastLoop || only ? 'replace' : 'append'
    return { atDouble: false, ending: { mode, items, ...reader.span(start) } as RepeatEnding }
  })
}
