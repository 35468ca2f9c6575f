/** One phrase between two commas: a stitch with its place, a skip, a join, a colour, where to work. */
import { readRepeatRound } from './again'
import { alongAhead, readAlong, readDownChain } from './along-chain'
import { passAside } from './aside'
import { readOfPattern } from './multiples'
import { canBeParted, parted, readBetween } from './chains-between'
import { passExplained } from './brackets'
import { readAmount } from './clauses'
import type { SequenceReader } from './clauses'
import { readCornersAsBefore } from './corners-as-before'
import { readClosedIn, readColour, readJoin, readJoinedOver, readScope } from './directions'
import { readDoubled } from './doubled'
import { readColourFirst } from './colour-words'
import { readDrawnTogether } from './drawn-together'
import { readDrawnUp } from './drawn-up'
import { readEvenChange, readEvenly } from './evenly'
import { readSquares } from './filet'
import { readFoundation } from './foundation'
import { readLeftOpen } from './left-open'
import { readHookFirst, readLong } from './long-stitches'
import { passOnTheWay, readFurther, readWay, toCorner } from './on-the-way'
import { readExtent } from './extents'
import { countAfter, overAll, passDrawn, passOfChains, timesInPlace } from './of-stitches'
import { passMorePieces } from './pieces'
import { readChain } from './made-chains'
import { readPlaced } from './placed'
import { readPlace } from './places'
import {
  BOUNDARY,
  readDescribed,
  readDropped,
  readFirstOne,
  readHeld,
  readLastOne,
  readPlainNote,
  statementAhead,
} from './prose'
import type { Reader } from './reader'
import { readRemainder } from './remainders'
import { readTimesFirst } from './times-first'
import { readAlternating, readForEach } from './whole-repeats'
import { ownChain, plainPlace, readTersePlace, toOwnChains } from './plain-place'
import { roundBeginning } from './round-beginning'
import { readPassedOver, readSkip } from './skips'
import { readStart } from './start-words'
import { spanOf } from './tokens'
import type { Item, NoteItem, Place, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { NO_NAME, isSlip } from './stitch-name'
import { readStitch, sizesStitch } from './vocabulary'
import { readEdge, readRowOf } from './row-ends'
import { passAsBefore, passBehindFirst, passManner } from './where'

function wrapTimes(reader: Reader, start: number, item: Item): Item {
  const amount = readAmount(reader)
  if (!amount) return item
  return {
    type: 'group',
    bracket: '',
    items: [item],
    place: null,
    times: amount.amount,
    around: amount.around,
    toCorner: amount.toCorner,
    lastCount: amount.lastCount,
    ...reader.span(start),
  }
}

/** "sc around", "sc to end": each stitch, without saying "in each st". */
function readSweep(reader: Reader): Place | null {
  const start = reader.at
  return reader.attempt(() => {
    const extent = readExtent(reader)
    if (!extent) return null
    const span = reader.span(start)
    const noun = { kind: 'stitch', name: null } as const
    return plainPlace({ which: 'each', each: true, noun, extent }, span)
  })
}

/** Stitches of one kind that go into one place, at most, where the text names no place (ours). */
const MOST_IN_ONE = 3

/** Stitch with count and place ("a last group into the last gap"); the heart of the notation. */
function readWork(reader: Reader, verb: boolean): Item | null {
  const start = reader.at
  return reader.attempt((): Item | null => {
    if (reader.skip('a', 'an', 'another')) reader.skip('last')
    const before = sizesStitch(reader) ? null : reader.number()
    reader.skip('more')
    const stitch = readStitch(reader)
    if (!stitch) {
      // "2 in next st": the stitch is the one named before.
      if (before === null) return null
      const place = readPlace(reader)
      if (!place) return null
      const span = reader.span(start)
      const same: StitchName = { ...NO_NAME, ...span }
      return { type: 'work', count: before, stitch: same, place, ...span }
    }
    if (stitch.form === 'plain' && stitch.stitch === 'ch') return null
    // "A single crochet should fall in each corner" says what comes of it.
    if (/^(should|will|must|might|would|falls|goes|sits|lands)$/.test(reader.spelled())) return null
    passExplained(reader, stitch)
    if (stitch.form === 'picot') passOfChains(reader)
    const even = readEvenly(reader, start, before, stitch)
    if (even) return even
    // "3 dc together in same sp": the number is that of its legs.
    const legs =
      before !== null && before > 1 && stitch.form === 'together' && !/\d\s*-?tog/i.test(stitch.name)
        ? before
        : 0
    const count = legs > 0 ? null : (before ?? countAfter(reader) ?? timesInPlace(reader))
    // "Inc all the way round" is told of more than that stitch.
    if (!reader.sees('all', 'the', 'way')) reader.skip('all', 'each', 'only')
    if (reader.key(-1) === 'each') reader.at--
    passManner(reader)
    const slips = isSlip(stitch)
    if (slips) passOnTheWay(reader)
    // "2 dc with ch 2 between in next sp".
    const apart = count !== null && count > 1 ? readBetween(reader) : null
    if (apart) reader.skip(',')
    const behind = !slips && passBehindFirst(reader)
    // "11 dc across bottom", not eleven in each.
    const many = !slips && stitch.form === 'plain' && (before ?? 0) > MOST_IN_ONE
    const row = many ? readRowOf(reader, before!) : null
    if (row) return { type: 'work', count: null, stitch, place: row, ...reader.span(start) }
    // "Dc across to corner" goes over all of them, "sl st across to corner" is the way there.
    const across = !slips && reader.sees('across', 'to') ? readSweep(reader) : null
    const plain =
      across ??
      (many ? readEdge(reader) : null) ??
      (alongAhead(reader) ? null : (readPlace(reader) ?? readSweep(reader) ?? readTersePlace(reader, slips)))
    const found = roundBeginning(reader, stitch, plain)
    const closed = slips && !found && count === null ? readClosedIn(reader) : null
    if (closed) return { type: 'join', place: ownChain(reader, closed), ...reader.span(start) }
    const named =
      behind && found ? { ...found, parts: found.parts.map((part) => ({ ...part, behind })) } : found
    const placed = slips && named ? readFurther(reader, named) : named
    const slipped = slips && placed ? toOwnChains(reader, start, placed) : placed
    const place = slips && slipped ? ownChain(reader, toCorner(reader, slipped)) : slipped
    if (slips && !place && passAsBefore(reader)) return { type: 'join', place: null, ...reader.span(start) }
    if (slips) {
      const joined = reader.attempt(() => {
        if (reader.skip('to', 'and') && reader.skip('join', 'close', 'made')) {
          reader.skip('the')
          if (!reader.skipA('round')) reader.skip('ring')
          return true
        }
        return null
      })
      if (joined) return { type: 'join', place, ...reader.span(start) }
      const toFirst = place?.parts[0]
      const word = place ? reader.words(place).slice(0, 3).toLowerCase() : ''
      const space = toFirst?.noun.kind === 'space'
      if (toFirst && !space && word.startsWith('to ') && ['first', 'same'].includes(toFirst.which))
        return { type: 'join', place, ...reader.span(start) }
    }
    if (verb && count !== null && place?.parts.length === 1 && place.parts[0]!.which === 'every') {
      return { type: 'every', count, nth: place.parts[0]!.count, ...reader.span(start) }
    }
    const drawn = place && stitch.form === 'plain' && !slips ? passDrawn(reader) : false
    const said =
      legs > 0
        ? { ...stitch, size: legs }
        : drawn
          ? { ...stitch, form: 'together' as const, size: place!.parts[0]!.count }
          : stitch
    const whole = drawn && place ? overAll(place) : place
    const item: WorkItem = { type: 'work', count, stitch: said, place: whole, ...reader.span(start) }
    const long = readLong(reader, item)
    if (long) return wrapTimes(reader, start, long)
    const between = apart ?? (!slips && canBeParted(item) ? readBetween(reader) : null)
    if (!between) return wrapTimes(reader, start, item)
    reader.attempt(() => (reader.skip(','), reader.skip('around') || null))
    const chained = reader.isA('chain', reader.sees(',') || reader.sees(';') ? 1 : 0)
    const closes = !chained && !(place && /\bacross\b/i.test(reader.words(place)))
    return parted(item, between, reader.tokens[reader.at - 1]!.end, closes)
  })
}

/** "Take 2 d.c. together", "take the next 3 sts together": one stitch over them. */
function readTaken(reader: Reader): WorkItem | null {
  const start = reader.at
  return reader.attempt((): WorkItem | null => {
    const works = reader.sees('work', 'next') || reader.sees('work', 'the', 'next')
    if (!reader.skip('take', 'taking', 'crochet', 'draw') && !(works && reader.skip('work'))) return null
    while (reader.skip('the', 'next', 'last', 'first', 'rem')) continue
    const size = reader.number()
    if (size === null || size < 2) return null
    const named = readStitch(reader)
    if (!named && !reader.skipA('stitch')) return null
    if (named?.form !== 'together' && !reader.skip('tog')) return null
    const span = reader.span(start)
    const plain = { ...NO_NAME, stitch: named?.stitch ?? null, name: reader.words(span), ...span }
    return { type: 'work', count: 1, stitch: { ...plain, form: 'together', size }, place: null, ...span }
  })
}

/** What is done with the work when it is made. */
const DONE_WITH_IT = /^(hang|string|starch|stiffen|pin|wash|rinse|iron|steam|glue|stuff|dry|wear)$/
const NOUNS_AFTER_NUMBER =
  /^(times?|petals?|in|inch|inches|cm|mm|m|g|oz|yds?|yards?|rounds?|rnds?|rows?|balls?|skeins?|more|points?|colou?rs?|strands?|motifs?|leaves|beads?|hooks?|markers?|x|spokes?|scallops?|corners?|loops?|or|to|and|of|on)$/

/** Small words of a sentence, which no stitch is called by. */
const NO_STITCH =
  /^(the|a|an|over|for|all|after|before|while|when|where|which|that|this|these|those|at|up|down|out|as|by|so|but|if|not|also|again|it|them|you|your|he|go|see|use|take|start|cut|then|than|once|here|there|only|just)$/

const ABBREVIATED = ['sc', 'hdc', 'dc', 'tr', 'htr', 'dtr', 'ttr']
const sorted = (letters: string): string => [...letters].sort().join('')

/** "1 hrt", "2 dcc": the letters of a stitch in another order, or one of them twice. */
const isSlipOfStitch = (key: string): boolean =>
  ABBREVIATED.some((each) => sorted(key) === sorted(each) || key.replace(/(.)\1$/, '$1') === each)

/** An unknown word where only a stitch can stand: "2 xdc in next st". */
function readUnknown(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt((): NoteItem | null => {
    const counted = reader.number() !== null
    const token = reader.peek()
    if (token?.kind !== 'word' || NOUNS_AFTER_NUMBER.test(token.key) || NO_STITCH.test(token.key)) return null
    if (DONE_WITH_IT.test(token.key) || (!counted && /ing$/.test(token.key))) return null
    // "Weave in all ends" is no stitch, whatever place follows, nor is "Stitch through all layers".
    if (
      ['finishing', 'skip', 'stitch', 'verb', 'place', 'instruction', 'aside'].some((kind) =>
        token.kinds.has(kind),
      )
    )
      return null
    reader.at++
    // "x.c.": a name with stops is one word.
    const lettersOnly = token.key.length <= 2
    while (lettersOnly && reader.sees('.') && !reader.peek()!.spaced) {
      const next = reader.peek(1)
      if (next?.kind !== 'word' || next.spaced || next.key.length > 2) break
      reader.at += 2
    }
    const dotted = reader.tokens[reader.at - 1] !== token
    const word = reader.words(spanOf(token, reader.tokens[reader.at - 1]!))
    if (dotted) reader.skip('.')
    const placed = readPlace(reader)
    const ends = !reader.peek() || reader.seesAny(BOUNDARY)
    const looksLikeStitch =
      dotted || /^[a-z]{0,3}(sc|dc|tr|tog|cl|st)\d*$/.test(token.key) || isSlipOfStitch(token.key)
    if (!placed && !(counted && (ends || dotted) && looksLikeStitch)) return null
    if (
      placed &&
      !counted &&
      (!['next', 'each', 'same', 'from-hook', 'every'].includes(placed.parts[0]!.which) ||
        token.key.length > 6)
    )
      return null
    reader.report(
      'rounds/unknown-abbreviation',
      dotted ? spanOf(token, reader.tokens[reader.at - 1]!) : token,
      { word },
    )
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}

/** How one phrase is read: the item, or null (and nothing passed) where the words are another one. */
type Phrase = (reader: Reader, sequence: SequenceReader) => Item | null

/**
 * The phrases of the trade in the order in which they are tried; the first that reads the words has them. A phrase
 * that begins like another one, and is more particular, stands before it.
 */
const PHRASES: readonly Phrase[] = [
  passMorePieces,
  readSquares,
  readOfPattern,
  readBecomes,
  passAside,
  statementAhead,
  readRepeatRound,
  readCornersAsBefore,
  readForEach,
  readTimesFirst,
  (reader) => readAlternating(reader, (each) => readWork(each, false)),
  readHeld,
  readLeftOpen,
  readRemainder,
  readPassedOver,
  readSkip,
  readWay,
  readJoinedOver,
  readColour,
  readColourFirst,
  readJoin,
  readScope,
  readFoundation,
  readAlong,
  readDownChain,
  readPlainNote,
  readFirstOne,
  readLastOne,
  readStart,
  readEvenChange,
  readDropped,
  readHookFirst,
  readDrawnTogether,
  readDrawnUp,
  readDescribed,
  readPlaced,
  readChain,
  readTaken,
  (reader, sequence) => readPut(reader, sequence),
  readDoubled,
  (reader) => readWork(reader, false),
  readWithVerb,
  readUnknown,
]

/** "With 3 sc in each corner", "having 3 sc in each corner": worked besides what stands before it; passes the word. */
const passBesides = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('with', 'having', 'adding', 'plus')) return null
    const at = reader.at
    const counted = reader.number() !== null && readStitch(reader) !== null && readPlace(reader) !== null
    reader.at = at
    return counted || null
  }) === true

/** Behind a verb that adds nothing: "work", "now", "then make". */
const AFTER_VERB: readonly Phrase[] = [
  readScope,
  readColour,
  readJoin,
  readPlaced,
  readChain,
  (reader) => readWork(reader, true),
]

/** "Pop 12 hdc into the ring", "squeeze 3 dc in each loop", "stick another dc in": any word that puts stitches somewhere. */
const readPut: Phrase = (reader) => {
  const start = reader.at
  const item = reader.attempt(() => {
    if (!PUTS.test(reader.spelled())) return null
    reader.at++
    const counted = reader.peek()?.kind === 'number' || reader.isA('number') || reader.sees('a', 'an')
    return counted || reader.sees('another') ? readWork(reader, true) : null
  })
  return item && { ...item, ...reader.span(start) }
}
const PUTS = /^(pop|pops|popping|throw|squeeze|stick|tuck|fit|add|drop|chuck|cram|pack|knock|whip|plop)$/

const firstOf = (phrases: readonly Phrase[], reader: Reader, sequence: SequenceReader): Item | null => {
  for (const phrase of phrases) {
    const item = phrase(reader, sequence)
    if (item) return item
  }
  return null
}

/** "Then for the stem work 8 ch": what it becomes is told before it. */
function readBecomes(reader: Reader, sequence: SequenceReader): Item | null {
  return reader.attempt(() => {
    while (reader.skip('then', 'now', 'and')) continue
    if (!reader.skip('for') || !reader.skip('the', 'a')) return null
    for (let words = 0; words < 2 && reader.peek()?.kind === 'word' && !reader.isA('verb'); words++) {
      if (['instruction', 'number', 'chain', 'into'].some((kind) => reader.isA(kind))) return null
      reader.at++
    }
    return reader.isA('verb') ? readWithVerb(reader, sequence) : null
  })
}

function readWithVerb(reader: Reader, sequence: SequenceReader): Item | null {
  const start = reader.at
  const item = reader.attempt(() => {
    // "We start with 5 ch", "now you work 12 sc in the ring".
    const told = reader.isA('opening', 1) || reader.isA('verb', 1)
    if (told) reader.skip('we', 'you', 'i')
    // "Begin with 8 ch", "starting by making 6 chs".
    const opens = reader.isA('opening') || ['starting', 'beg'].includes(reader.key())
    const by = opens && ['with', 'by'].includes(reader.key(1))
    const places = reader.sees('place') && (reader.peek(1)?.kind === 'number' || reader.isA('number', 1))
    if (by) reader.at += 2
    else if (passBesides(reader)) return readWork(reader, true)
    else if (places) reader.at++
    else if (!reader.skipA('opening') && !reader.skipA('verb')) return null
    while (reader.skipA('verb')) continue
    return firstOf(AFTER_VERB, reader, sequence)
  })
  return item && { ...item, ...reader.span(start) }
}

/** The phrase at the cursor, or null where the words are prose. */
export const readPhrase = (reader: Reader, sequence: SequenceReader): Item | null =>
  firstOf(PHRASES, reader, sequence)
