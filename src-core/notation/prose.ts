/** Words that make no stitch by themselves: steps told in words, notes, what counts as what, and plain prose. */
import { askedAhead } from './count-labels'
import { readChains } from './nouns'
import { passDrawn } from './of-stitches'
import { readStatement } from './stated'
import { readPlace } from './places'
import { standsForOne } from './some-chains'
import type { Reader } from './reader'
import { AS_BEFORE, isTalk } from './talk'
import { readStitch } from './vocabulary'
import type { Token } from './tokens'
import { isSlipOfKeys } from './words'
import { NO_NAME } from './stitch-name'
import type { DescribedItem, Item, NoteItem, Place, WorkItem } from './tree'

/** Words behind which what is worked into must stand. */
const NAMES_NEXT = new Set(['next', 'each', 'same', 'of'])
/** Marks that end a phrase. */
export const BOUNDARY = new Set([
  ',',
  ';',
  '.',
  ':',
  '!',
  '?',
  '(',
  '[',
  '{',
  ')',
  ']',
  '}',
  '*',
  '**',
  '—',
  '–',
])

/** A step of a stitch told in words: "yo, insert hook in next sp, yo and pull up a lp". */
export function readDescribed(reader: Reader): DescribedItem | NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    const over =
      /^(yarn|thread|wool|cotton|silk)$/.test(reader.key()) && /^(over|around|round)$/.test(reader.key(1))
    // "…, and all drawn off together".
    const off = reader.attempt(() => {
      while (reader.skip('and', 'then')) continue
      return passDrawn(reader) || null
    })
    if (off) return { type: 'described', place: null, closes: true, ...reader.span(start) }
    if (!reader.isA('step') && !over) return null
    let place: Place | null = null
    let closes = false
    let loops = false
    const first = reader.key()
    while (reader.peek() && !reader.seesAny(BOUNDARY)) {
      if (reader.sees('through', 'all') || reader.sees('through', 'both')) closes = true
      if (['lp', 'hook'].includes(reader.key())) loops = true
      if (reader.sees('between') || ['in', 'into'].includes(reader.key())) {
        const found = reader.attempt(() => readPlace(reader))
        if (found) {
          place ??= found
          continue
        }
      }
      reader.at++
    }
    // "pull tail to close ring" is no step of a stitch.
    if ((first === 'pull' || first === 'draw') && !loops && !closes) return null
    // "(pull the first loop up tall)" finishes nothing, and begins nothing.
    if (first === 'pull' && !closes && !place) return { type: 'note', effect: null, ...reader.span(start) }
    return { type: 'described', place, closes, ...reader.span(start) }
  })
}

/** What stands before the place that the hook goes into. */
const ENTERS = new Set(['in', 'into', 'through'])

const otherMotif = (place: Place | null): Place | null =>
  place?.parts[0]?.which === 'elsewhere' ? place : null

/** "3 ch and 4 tr in ring, complete as popcorn", "finish as for PC": what was just worked is one; passes it. */
const passFinished = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!['complete', 'finish', 'close'].includes(reader.spelled())) return null
    reader.at++
    const as = reader.skip('as')
    while (reader.skip('as', 'for', 'a', 'the', 'in')) continue
    return as && readStitch(reader)?.form === 'popcorn' ? true : null
  }) === true

/**
 * "drop lp from hook, insert hook in first dc, pull dropped lp through": the stitches before it are a popcorn; where
 * the hook goes into another motif, a join to that.
 */
export function readDropped(reader: Reader): NoteItem | WorkItem | null {
  const start = reader.at
  return reader.attempt(() => {
    let elsewhere: Place | null = null
    if (passFinished(reader)) return { type: 'note', effect: 'dropped', ...reader.span(start) }
    const off = reader.skip('take') || reader.skip('slip')
    if (off && !takesOff(reader)) return null
    if (!off && !reader.skip('drop', 'remove', 'withdraw')) return null
    if (!['lp', 'hook', 'the'].includes(reader.key())) return null
    while (reader.peek() && !['(', ')', ';', '.', '*'].includes(reader.key())) {
      const goesOn = [
        'insert',
        'pull',
        'draw',
        'reinsert',
        're-insert',
        'yo',
        'and',
        'then',
        'pick',
        'from',
      ].includes(reader.key(1))
      if (reader.key() === ',' && !goesOn) break
      const place = reader.seesAny(ENTERS) ? reader.attempt(() => otherMotif(readPlace(reader))) : null
      if (place) elsewhere = place
      else reader.at++
    }
    const span = reader.span(start)
    if (elsewhere) {
      const stitch = { ...NO_NAME, stitch: 'sl st', ...span } as const
      return { type: 'work', count: 1, stitch, place: elsewhere, ...span }
    }
    return { type: 'note', effect: 'dropped', ...span }
  })
}

/** "(Take) the loop off the hook", "(take) the hook out of the loop": whether that is told at the cursor. */
const takesOff = ({ tokens, at }: Reader): boolean => {
  const words = tokens.slice(at, at + 6).map(({ is }) => is)
  const [first] = words.filter((word) => word !== 'the' && word !== 'your')
  return (first === 'lp' || first === 'hook') && words.some((word) => /^(off|out|from)$/.test(word))
}

const HOLDS = /^(hold|holding|leaving|leave|keeping|keep|retaining|retain)$/

/** "holding back last lp of each on hook": the stitches before it, or behind it, are drawn together at the end. */
export function readHeld(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    const holds = HOLDS.test(reader.spelled()) && ++reader.at > 0
    while (reader.skip('back', 'the', 'always', 'on', 'your', 'hook', 'needle')) continue
    if (!reader.skip('last') || !reader.skip('lp')) return null
    while (reader.skip('of', 'each', 'the', 'on', 'hook', 'st', 'your')) continue
    readStitch(reader)
    // "The last loop of each being kept on the hook".
    if (
      !holds &&
      !(reader.skip('being', 'is') && /^(kept|held|left|retained)$/.test(reader.spelled()) && ++reader.at > 0)
    )
      return null
    while (reader.skip('on', 'the', 'hook', 'your', 'needle')) continue
    return { type: 'note', effect: 'held', ...reader.span(start) }
  })
}

/** "Turn", "do not join", "fasten off". */
export function readPlainNote(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    let effect: NoteItem['effect']
    const chained = reader.key(-1) === 'ch' || reader.key(-2) === 'ch' || reader.peek(-1)?.kind === 'chains'
    if (reader.skip('turn') || (chained && reader.skipAll('to', 'turn'))) effect = 'turn'
    else if (reader.skip('do', 'not')) {
      reader.skip('not')
      if (!reader.skip('join')) return null
      effect = 'no-join'
    } else if (reader.sees('fo') && /^[.,;!)]?$/.test(reader.key(1))) {
      reader.at++
      effect = 'fasten-off'
    } else if (reader.skip('fasten', 'finish', 'cast', 'bind')) {
      if (!reader.skip('off')) return null
      effect = 'fasten-off'
    } else if (reader.skip('cut', 'snip', 'break', 'trim')) {
      reader.skip('off')
      while (reader.skip('the', 'your', 'work')) continue
      const alone = /^([.;,!]|and|)$/.test(reader.key())
      const named = reader.skip('yarn', 'thread', 'cotton', 'wool', 'color', 'off') || reader.isA('colour')
      if (!alone && !named) return null
      effect = 'fasten-off'
    } else return null
    while (reader.peek() && !reader.seesAny(BOUNDARY)) {
      if (reader.sees('and')) break
      // "Turn with 3 ch": those are made.
      if (
        effect === 'turn' &&
        reader.sees('with') &&
        (reader.peek(1)?.kind === 'number' || reader.isA('chain', 1) || reader.peek(1)?.kind === 'chains')
      ) {
        reader.at++
        break
      }
      reader.at++
    }
    return { type: 'note', effect, ...reader.span(start) }
  })
}

/** "Ch 4 for first dc and ch 1", "ch 3 as a dc": what the chains stand for, in fewer words. */
const readPurpose = (reader: Reader): Item | null =>
  reader.attempt(() => {
    // "3 ch for 1 tr", "ch 3 as a dc", "3 ch of height replacing the first tr".
    const chained = [-1, -2, -4].some(
      (back) => reader.key(back) === 'ch' || reader.peek(back)?.kind === 'chains',
    )
    if (!chained) return null
    // "2nd round: 3 ch = 1 tr, 1 tr in same st".
    const told = standsForOne(reader) || ['for', 'as', 'stands'].some((word) => reader.sees(word))
    if (!told && !reader.skip('to')) return null
    let end = reader.at
    while (end < reader.end && !BOUNDARY.has(reader.tokens[end]!.key)) end++
    return readStatement(reader, end)
  })

/** "Ch 3 = dc, ch 4 = dc + ch 1" before the rounds: said of every round, and none of it is worked. */
const readEqual = (reader: Reader): NoteItem | null =>
  reader.attempt(() => {
    const start = reader.at
    if (reader.inRound || readChains(reader) === null || !reader.skip('=')) return null
    reader.skip('a', 'one', '1', 'first')
    if (readStitch(reader) === null) return null
    while (reader.peek() && !reader.seesAny(BOUNDARY)) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  })

/** "3 ch always counts as a treble": said of every round. */
const ALWAYS = new Set(['always', 'at', 'throughout'])

/** "Counting the ch-3 as 1 dc | and working 3 sc in each corner": whether work follows the word at a token. */
function worksNext(reader: Reader, at: number): boolean {
  if (reader.tokens[at]!.key !== 'and') return false
  const [next, , last] = reader.tokens.slice(at + 1, at + 4)
  return next?.is === 'work' || (next?.kind === 'number' && (last?.key === 'in' || last?.key === 'into'))
}

/** "Ch 3 counts as dc", where it begins at the cursor. */
export function statementAhead(reader: Reader): Item | null {
  const purpose = readPurpose(reader) ?? readEqual(reader)
  if (purpose) return purpose
  if (reader.key() === 'counts' && askedAhead(reader)) return null
  // "The 1 ch for turning never counting as a stitch".
  const the = reader.sees('the') ? 1 : 0
  const numbered = reader.peek(the)?.kind === 'number' && reader.isA('chain', the + 1)
  if (
    !['counts', 'does', 'not', 'this', 'here', 'ch', 'first'].includes(reader.key()) &&
    reader.peek()?.kind !== 'chains' &&
    !(numbered && (the === 1 || ALWAYS.has(reader.key(2))))
  )
    return null
  let end = reader.at
  const goesOn = (): boolean => !BOUNDARY.has(reader.tokens[end]!.key) && !worksNext(reader, end)
  while (end < reader.end && goesOn() && end - reader.at < 16) end++
  const words = reader.tokens.slice(reader.at, end).map((token) => token.is)
  const says = words.findIndex((word) => word === 'counts' || word === 'stands')
  // "Ch 3 to stand for a dc" is worked.
  if (says < 0 || words[says - 1] === 'to') return null
  return readStatement(reader, end)
}

/** "…, the first dc replaced by 3 ch": how the first of them is made; passes it. */
export function readFirstOne(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    reader.skip('the', 'your')
    if (!reader.skip('first') || !(reader.skip('one') || readStitch(reader))) return null
    reader.skip('being', 'is')
    if (!/^(replaced|formed|made|worked|substituted)$/.test(reader.spelled())) return null
    reader.at++
    if (!reader.skip('by', 'with', 'of', 'from', 'as')) return null
    while (reader.peek() && !reader.seesAny(BOUNDARY)) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}

/** "The very last sl st goes in the same st as the join": where one lies that is told already; passes it. */
export function readLastOne(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    reader.skip('the', 'your')
    reader.skip('very')
    if (!reader.skip('last') || !readStitch(reader)) return null
    if (!LANDS.has(reader.spelled())) return null
    while (reader.peek() && !reader.seesAny(BOUNDARY)) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}
const LANDS = new Set(['goes', 'is', 'falls', 'will', 'lands', 'comes', 'should', 'joins', 'ends', 'sits'])

/** Prose up to the next comma, stop or bracket: kept as it stands, with what it may mean for the round. */
export function readProse(reader: Reader): NoteItem {
  const start = reader.at
  reader.at++
  while (reader.peek() && !reader.peek()!.paragraph && !reader.seesAny(BOUNDARY)) {
    // "Fold petals forward and join green to …".
    const more = reader.sees('and') && JOINS.has(reader.key(1)) && reader.isA('colour', 2)
    if (more && reader.at > start + 1) break
    reader.at++
  }
  const unread = unreadIn(reader, start)
  return { type: 'note', effect: null, ...(unread && { unread }), ...reader.span(start) }
}

const JOINS = new Set(['join', 'attach'])

/** What something does by itself; an instruction has none of these forms. */
const SAID_OF =
  /^(should|will|must|might|would|goes|going|falls|falling|landing|lands|comes|sits|lies|forms|gives|serves|becomes|belongs|fits|hides|looks|pulls|needs|leads|stays|keeps|turns|faces|shows|marks|hangs|ruffles|curls|cups|remains?)$/

/** "12 full st in ring": a stitch that nobody here knows. */
const unknownWork = ([, second, third, ...rest]: readonly Token[]): boolean =>
  second?.kind === 'word' &&
  second.kinds.size === 0 &&
  third?.is === 'st' &&
  rest.some(({ kinds }) => kinds.has('into'))

const MESH = /^(blocks?|blks?|mesh(es)?)$/

/** "1 block, 7 spaces, 1 block", "2 open mesh": rows of filet, told by what they show. */
const filet = ({ tokens: all }: Reader, start: number, tokens: readonly Token[]): boolean => {
  const last = tokens.at(-1)!
  if (tokens.length > 3 || (!MESH.test(last.key) && !last.kinds.has('space'))) return false
  const near = all.slice(Math.max(0, start - AROUND), start)
  // "…, dc in 3rd ch of ch-5. 4 filled meshes.": a sentence of its own behind stitches tells what they come to.
  const alone = near.at(-1)?.key === '.' && /^[.!]?$/.test(all[start + tokens.length]?.key ?? '')
  if (alone && near.some(({ kinds }) => kinds.has('into'))) return false
  return [...near, ...all.slice(start, start + AROUND)].some(({ key }) => MESH.test(key))
}
const AROUND = 16

/** What words between `start` and the cursor that no phrase reads may be: a typing slip, work told in prose, an aside. */
function unreadIn(reader: Reader, start: number): NoteItem['unread'] {
  const end = reader.at
  const tokens = reader.tokens.slice(start, end)
  const [first] = tokens
  if (first?.kind === 'number')
    return unknownWork(tokens) || filet(reader, start, tokens) ? 'work' : undefined
  if (first?.kind !== 'word' && !first?.kinds.has('place')) return undefined
  if (
    tokens.slice(0, 2).some(({ kinds }) => kinds.has('aside')) ||
    tokens.some(({ is, kinds }) => is === 'counts' || kinds.has('explains'))
  )
    return undefined
  if (tokens.length === 1) {
    const before = reader.tokens[start - 1]
    // "[…] times": the number is lost.
    if (first.is === 'times' && (before?.key === ']' || before?.key === ')'))
      reader.report('rounds/not-countable', first, { what: 'how often it repeats' })
    const open = before === undefined || BOUNDARY.has(before.key) || NAMES_NEXT.has(before.is)
    // "Neatly, …", "Going up the side of the point, …" say how.
    const how = /(ly|ing)$/.test(first.key)
    return open && first.kinds.size === 0 && !how ? 'word' : undefined
  }
  // "dc in nxt st".
  if (
    first.kinds.has('into') &&
    tokens.slice(1, 3).some(({ kind, key }) => kind === 'word' && isSlipOfKeys(key))
  )
    return 'word'
  // "The last sl st goes where the round started", "the one with the first trebles in": said of what is worked.
  if (tokens.some(({ key }) => SAID_OF.test(key)) || (first.key === 'the' && tokens[1]?.key === 'one'))
    return undefined
  // "As before", "as usual": what is told that way is known.
  if (first.is === 'as' && /^(before|usual|always|established)$/.test(tokens[1]!.is)) return undefined
  // "Continue as established, working 1 tr in each tr": what follows says it.
  if (
    first.is === 'continue' &&
    tokens.slice(1).every(({ is }) => AS_BEFORE.has(is)) &&
    (reader.isA('verb', 1) || reader.sees(':'))
  )
    return undefined
  // "Surface slip stitch along the middle": on what is there already.
  if (first.key === 'surface') return undefined
  // "Whenever you reach a space, work (…) in it".
  if (first.kinds.has('into') && tokens.length === 2 && tokens[1]!.key === 'it') return undefined
  // "Not into the tops".
  if (first.is === 'not') return undefined
  // "Make it as big as your pan".
  if (first.is === 'make' && /^(it|them|this|these|sure|more|as)$/.test(tokens[1]!.key)) return undefined
  // "Skipping the sc" makes no stitch.
  if (first.is === 'skip') return 'words'
  // "Working over the tail" only says how; "picot every 4th st" makes stitches.
  // "Make four, or make forty", "make 6 rows of 8 medallions": how many pieces.
  if (first.is === 'make' && (tokens[1]!.kind === 'number' || tokens[1]!.kinds.has('number')))
    return undefined
  if (isTalk(tokens)) return 'words'
  if ((first.kinds.has('verb') && first.key !== 'working' && first.is !== 'put') || first.is === 'every')
    return 'work'
  for (reader.at = start; reader.at < end; reader.at++) {
    const told =
      reader.sees('rep') || reader.sees('continue') || reader.isA('pattern') || readStitch(reader) !== null
    if (!told) continue
    reader.at = end
    return 'work'
  }
  return 'words'
}
