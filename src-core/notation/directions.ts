/** What the round does besides stitches: joins, colours, where it is worked. */
import { passRotated, passToFarSide } from './along-chain'
import { COLOUR_LETTERS, SHADES, readColourName, readMaterial, readYarn } from './colour-words'
import { readChains, readLoop, readRound } from './nouns'
import { joinedIn, ownChain } from './plain-place'
import { readPlace } from './places'
import type { Reader } from './reader'
import { passSide } from './row-ends'
import type { ColourItem, JoinItem, Place, ScopeItem, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { readStitch } from './vocabulary'
import { passLastStep } from './of-stitches'
import { passBehind } from './where'

/** "Colour 2, in any sp", "Yarn B:": the name alone at the beginning of a phrase. */
const isColourAlone = (reader: Reader): boolean => {
  const name = reader.peek(1)
  // "R2: B: (2tr, 1ch) …", "R4: C, start in any st".
  const before = reader.tokens[reader.at - 1]
  const opens = before === undefined || reader.peek()?.first || /^[:.)–—]$/.test(before.key)
  const alone = opens && COLOUR_LETTERS.test(reader.peek()?.text ?? '') && !reader.rings.has(reader.spelled())
  const goesOn = reader.key(1) === ',' && /^(start|begin|join|with|in|using|attach)$/.test(reader.key(2))
  // "C. Ch 1, …", and in a table "rnd 4 | C | *sc in next sc".
  const stops = reader.key(1) === '.' && (before?.key === ':' || /^\p{Lu}/u.test(reader.peek(2)?.text ?? ''))
  // "Rnd 2: B – 2 sc in each dc".
  if (alone && (/^[:–—-]$/.test(reader.key(1)) || goesOn || stops)) return true
  return (
    (reader.sees('color') || SHADES.test(reader.key())) &&
    (name?.kind === 'number' || COLOUR_LETTERS.test(name?.text ?? '')) &&
    /^([,;.:]|in|)$/.test(reader.key(2))
  )
}

/** "Colour 2, in any 1 ch sp. 3 ch, …": where the new yarn begins, without a word for the joining. */
function readBeginsIn(reader: Reader): ColourItem | null {
  const start = reader.at
  return reader.attempt((): ColourItem | null => {
    // "Third colour in any corner space".
    if (reader.isA('ordinal') && reader.key(1) === 'color') reader.at++
    while (reader.skip('new', 'next', 'another', 'change', 'color', 'yarn', 'last', 'first')) continue
    const named = reader.at > start
    const place = reader.isA('into') ? readPlace(reader) : null
    const [part] = place?.parts ?? []
    // "New color in the first dc of Rnd 4."
    const first = named && part?.which === 'first' && part.round !== null
    if ((part?.which !== 'any' && !first) || !/^[.;:,]?$/.test(reader.key())) return null
    return { type: 'colour', colour: null, place, stitch: null, ...reader.span(start) }
  })
}

/** "Tie B to any sp", "add green in …", "bring in CC": the yarn is joined; passes the verb. */
const passTies = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!/^(tie|add|introduce|bring|knot|lay|start)$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('in', 'on', 'with')
    return true
  }) === true

/** "In yarn A make a magic ring": passes the word before the yarn. */
const passInYarn = (reader: Reader): boolean =>
  /^(colou?r|yarn|shade)$/.test(reader.spelled(1)) &&
  COLOUR_LETTERS.test(reader.peek(2)?.text ?? '') &&
  (reader.isA('verb', 3) || reader.key(3) === ',') &&
  reader.skip('in')

/** "Sl st Cloud into a ch-2 sp", "ss B to any sp": the yarn is joined by it where a round begins; passes the stitch. */
const passSlipsOn = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (readStitch(reader)?.stitch !== 'sl st') return null
    const named = reader.at
    const colour = reader.isA('into') ? null : readColourName(reader, true)
    const leads = /^(in|into|to)$/.test(reader.spelled())
    reader.at = named
    return (colour && leads) || null
  }) !== null

/** "With MC", "change to B", "using colour 2", "join CC with sl st in any ch-1 sp", "join yarn in any st". */
export function readColour(reader: Reader): ColourItem | null {
  const start = reader.at
  const begins = readBeginsIn(reader)
  if (begins) return begins
  return reader.attempt((): ColourItem | null => {
    const before = reader.tokens[start - 1]
    const opens = before === undefined || reader.tokens[start]?.first || /^[:.)–—]$/.test(before.key)
    const ties = passTies(reader) || (opens && passSlipsOn(reader))
    const attaches = reader.sees('attach')
    const joins = ties || reader.skip('join', 'attach')
    if (!joins) {
      const change = reader.skip('change')
      if (change) {
        reader.skip('color', 'yarn')
        if (!reader.skip('to') && !reader.sees(',') && !reader.sees('.') && !reader.sees(';')) return null
      } else if (!isColourAlone(reader) && !reader.skip('with', 'using') && !passInYarn(reader)) return null
      reader.skip('the')
      reader.skip('new', 'next')
      const colour = readColourName(reader) ?? (change ? null : readMaterial(reader))
      if (colour === null && !change) return null
      if (change) passLastStep(reader)
      if (colour !== null && reader.sees(',')) reader.at++
      if (colour !== null && reader.sees('in')) {
        // "With B in any ch-sp" is a join without the word.
        const place = readPlace(reader)
        return { type: 'colour', colour: colour || null, place, stitch: null, ...reader.span(start) }
      }
      return { type: 'colour', colour: colour || null, place: null, stitch: null, ...reader.span(start) }
    }
    // "Join in contrast to any sp".
    if (reader.sees('in') && reader.isA('colour', 1)) reader.at++
    // "Join A in first dc" names a colour.
    if (!COLOUR_LETTERS.test(reader.peek()?.text ?? '')) reader.skip('the', 'a', 'with')
    // "Add a loop of thread to one point": to hang it by.
    if (reader.sees('lp') && reader.key(1) === 'of') return null
    const renewed = reader.skip('new', 'next')
    const colour = readColourName(reader, true) ?? readYarn(reader)
    if (colour === null && renewed && !reader.skip('ball')) return null
    if (ties && colour === null) return null
    passBehind(reader)
    let stitch: StitchName | null = null
    const withStitch = reader.tokens[reader.at - 1]?.key === 'with' || reader.skip('with')
    if (withStitch) {
      reader.skip('a')
      stitch = readStitch(reader)
      if (!stitch) return null
    }
    const read = readPlace(reader)
    const named =
      colour !== null ||
      (reader.tokens[start - 1]?.key === ',' && reader.tokens[start - 2]?.kinds.has('colour'))
    const place = opens || named || read?.parts[0]?.which === 'any' ? joinedIn(reader, read) : read
    // "Join B in any ch-1 sp with a standing dc".
    stitch ??= reader.attempt(() =>
      place && reader.skip('with') ? (reader.skip('a'), readStitch(reader)) : null,
    )
    if (colour === null && !renewed) {
      // "join with sc in first st" begins a round, "join with sl st in first sc" ends one.
      const any = place?.parts[0]?.which === 'any'
      // "Attach between 2 tr" at the beginning of a round needs no word for the yarn.
      const begins = attaches && opens && place !== null
      if (!any && !begins && (stitch === null || stitch.stitch === 'sl st')) return null
    }
    return { type: 'colour', colour: colour || null, place, stitch, ...reader.span(start) }
  })
}

/** "The last 5 ch", "last ch-5 lp", "the last one"; passes it. */
function passLoopName(reader: Reader): boolean {
  reader.skip('the')
  if (!reader.skip('last')) return false
  reader.skip('of', 'the')
  reader.number()
  if (reader.peek()?.kind === 'chains') reader.at++
  else if (!reader.skipA('chain')) reader.skip('one')
  else if (reader.peek()?.kind === 'number') reader.at++
  reader.skipA('space')
  return true
}

/** "The last 5 ch being joined with a sl st to first sc": what is joined adds nothing; passes it. */
const passLastLoop = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!passLoopName(reader)) return null
    reader.skip('being', 'is', 'are')
    return reader.sees('joined') || reader.sees('joining') || reader.sees('connected') || null
  }) === true

/** "Joining last ch 5 with a sl st in first sc", behind the verb; passes it. */
const passJoinedLoop = (reader: Reader): boolean =>
  reader.attempt(() => (passLoopName(reader) && /^(with|to|in|into|by|at)$/.test(reader.key())) || null) ===
  true

/** "Close the ring and join with …": how the tail is pulled makes no stitch. */
const passRingClosed = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('close', 'tighten')) return null
    while (reader.skip('the', 'magic', 'up')) continue
    const closed = reader.skip('ring', 'circle', 'lp', 'hole')
    reader.skip(',')
    return (closed && reader.skip('and', 'then') && reader.sees('join')) || null
  }) === true

/** "Finish the round (with a sl st)"; passes it. */
const passFinishing = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('finish', 'end')) return null
    reader.skip('the')
    return (reader.skipA('round') && reader.sees('with')) || null
  }) === true

/** "Ss the last 5ch to first dc": the last loop, joined; passes all before the place. */
const passSlippedLoop = (reader: Reader): boolean =>
  reader.attempt(() => {
    const stitch = readStitch(reader)
    return (stitch?.form === 'plain' && stitch.stitch === 'sl st' && passJoinedLoop(reader)) || null
  }) === true

/** "…, ch 2, join with dc in first sc": a stitch in place of the last chains. */
export function readJoinedOver(reader: Reader): WorkItem | null {
  const start = reader.at
  const behind = reader.key(-1) === ',' || reader.sees('and') ? 1 : 0
  const chained = reader.key(-1 - behind) === 'ch' || reader.key(-2 - behind) === 'ch'
  if (!chained && reader.peek(-1 - behind)?.kind !== 'chains') return null
  return reader.attempt((): WorkItem | null => {
    if (!reader.skip('join', 'close') || !reader.skip('with')) return null
    reader.skip('a')
    const stitch = readStitch(reader)
    if (stitch?.form !== 'plain' || ['sl st', 'ch'].includes(stitch.stitch ?? '')) return null
    const place = readPlace(reader)
    const [part] = place?.parts ?? []
    const first = part?.which === 'first' && (part.noun.kind === 'stitch' || part.noun.kind === 'own')
    return first ? { type: 'work', count: 1, stitch, place, ...reader.span(start) } : null
  })
}

/** "Join first sc", "join 3rd ch of ch 4", "ss top of 3 ch": the place where a round closes, without its "in". */
export function readClosedIn(reader: Reader): Place | null {
  return reader.attempt(() => {
    const place = readPlace(reader, true)
    const [part, ...rest] = place?.parts ?? []
    if (!place || !part || rest.length > 0 || part.which !== 'first' || part.count !== 1 || part.each)
      return null
    if (part.noun.kind !== 'stitch' && part.noun.kind !== 'own') return null
    return /^([.,;:)[(]|to|and)?$/.test(reader.key()) || reader.peek()?.first ? place : null
  })
}

/** "join with sl st in first sc", "join", "close with ss", "join to form ring" is a foundation, not this. */
export function readJoin(reader: Reader): JoinItem | null {
  const start = reader.at
  if (passSlippedLoop(reader)) {
    const place = readPlace(reader)
    if (place) return { type: 'join', place, ofLast: true, ...reader.span(start) }
    reader.at = start
  }
  return reader.attempt((): JoinItem | null => {
    const before = passLastLoop(reader)
    passRingClosed(reader)
    reader.skip('invisible', 'inv')
    const closes = reader.sees('close')
    const finishes = passFinishing(reader)
    if (!finishes && !reader.skip('join', 'joining', 'joined', 'connected', 'close')) return null
    const ofLast = passJoinedLoop(reader) || before
    reader.skip('the')
    reader.skipA('round')
    if (reader.skip('with', 'using', 'by')) {
      reader.skip('a', 'one', '1')
      const stitch = readStitch(reader)
      // "Close with a chain stitch" is how some languages call it.
      const called = closes && stitch?.stitch === 'ch' && /st/.test(stitch.name)
      if (stitch?.stitch !== 'sl st' && !called) return null
    }
    // "Join top ch 3": the chain that the round begins with.
    const top = reader.attempt(
      () => (reader.skip('top') && !reader.skip('of') && readChains(reader) !== null) || null,
    )
    const named = top ? null : (readPlace(reader) ?? readClosedIn(reader))
    const place = named && ownChain(reader, named)
    if (place?.parts[0]?.which === 'any') return null
    if (place?.parts[0]?.noun.kind === 'ring') return null
    const next = reader.key()
    if (!place && reader.sees('to', 'form')) return null
    if (!place && (next === 'into' || next === 'in' || next === 'to')) return null
    if (!place && /^(A|B|C|D|E|F|MC|CC)$/.test(reader.peek()?.text ?? '')) return null
    if (!place && /^(yarn|new|colou?r|next|motifs?|petals?|pieces?|ends?)$/.test(next)) return null
    // "Close the hole with the tail" closes no round.
    if (!place && closes && !/^([,;.:()]|and|with|)$/.test(next)) return null
    if (reader.skipAll('as', 'before')) reader.skip('in')
    return { type: 'join', place, ...(ofLast && { ofLast }), ...reader.span(start) }
  })
}

const PLACE_FOLLOWS = new Set(['next', 'each', 'same', 'first', 'every', 'last', 'any', 'st'])

/** "Each st", "all of the dc", "every st around": passes it. */
function passAllStitches(reader: Reader): boolean {
  while (reader.skip('each', 'every', 'all', 'of', 'the', 'these')) continue
  return reader.skipA('stitch') || readStitch(reader) !== null
}

/** "(The back loops of Round 1) that you didn't use", "which are still free": passes it. */
const passUnused = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('that', 'which')) return null
    while (reader.skip('you', 'are', 'is', 'were', 'have', 'still', 'not', 'been', 'left', 'over')) continue
    const unused = /^(use|used|work|worked)$/.test(reader.spelled()) && reader.at++ > 0
    return unused || reader.skip('unworked') || reader.key(-1) === 'left' || reader.key(-1) === 'over' || null
  }) === true

/** "Working in BLO", "In front lps of Rnd 2", "behind petals", "along opposite side of ch". */
export function readScope(reader: Reader): ScopeItem | null {
  const start = reader.at
  let wordsAt = start
  const scope = (rest: Partial<ScopeItem>): ScopeItem => ({
    type: 'scope',
    loop: null,
    around: false,
    round: null,
    behind: false,
    opposite: false,
    words: reader.span(Math.min(wordsAt, reader.at - 1)),
    ...rest,
    ...reader.span(start),
  })
  return reader.attempt((): ScopeItem | null => {
    const now = reader.skip('now', 'then')
    if (passToFarSide(reader, now)) return scope({ opposite: true })
    const working = reader.attempt(() => (reader.skipA('verb') && passSide(reader) ? true : null))
    if (working) return scope({})
    // "Down the side put 1 sc in the end of each row": nothing is worked yet.
    if (passSide(reader)) return scope({})
    if (passRotated(reader)) return scope({ opposite: true, rotated: true })
    const worked = reader.skip('work')
    if (worked) reader.skip('only', 'just')
    if (passBehind(reader) || reader.skip('behind')) {
      while (reader.skip('the', 'petal', 'them', 'last', 'prev', 'first', 'all', 'work')) continue
      if (reader.skipA('round')) reader.number()
      // "Behind the inner petals".
      if (reader.peek()?.kind === 'word' && reader.isA('group', 1)) reader.at += 2
      readRound(reader)
      const loop = reader.attempt(() => (reader.skip('in', 'into', 'through') ? readLoop(reader) : null))
      return scope({ behind: true, loop, round: loop ? readRound(reader) : null })
    }
    // "Now the BACK loops of Round 1 that you didn't use."
    const bare = now && reader.skip('the')
    const into = reader.skip('in', 'into', 'through', 'on') || bare
    if (!into && !worked && !['blo', 'flo'].includes(reader.key())) return null
    const posts = reader.attempt(() => {
      if (!reader.skip('around')) return null
      reader.skip('the')
      return reader.skip('post', 'stem') || null
    })
    if (posts) {
      reader.skip('of')
      if (!reader.skipA('stitch')) readStitch(reader)
      const round = readRound(reader)
      return round ? scope({ around: true, round }) : null
    }
    wordsAt = reader.at
    // "Working in front of dc just made".
    const front = reader.attempt(() => {
      if (!reader.skip('front', 'back') || !reader.skip('of')) return null
      while (reader.skip('the', 'that', 'last', 'these', 'first')) continue
      reader.number()
      const what = reader.skipA('group') || reader.skipA('stitch') || readStitch(reader) !== null
      reader.skip('just', 'last')
      reader.skip('made', 'worked')
      readRound(reader)
      return what || null
    })
    if (front) return scope({})
    const loop = readLoop(reader)
    if (!loop) {
      // "working in skipped sts of Rnd 2"
      while (reader.skip('the', 'skipped', 'unworked')) continue
      if (!reader.skip('st', 'sp', 'lp')) return null
      const round = readRound(reader)
      return round && /^[,;.:]$/.test(reader.key()) ? scope({ round }) : null
    }
    const ofBefore = reader.tokens[reader.at - 1]?.key === 'of'
    if (ofBefore) reader.at--
    const of = reader.at
    let round = readRound(reader)
    // "Working into the back loop only of each st, ch 1, …", "of the sts of the previous round".
    if (ofBefore && reader.at === of) {
      reader.at++
      if (!passAllStitches(reader)) return null
      const all = reader.at
      round = readRound(reader)
      if (reader.at === all) reader.skip('around', 'throughout', 'across')
      if (round ? !worked && !/^[,;.:]$/.test(reader.key()) : !worked || !/^[,;:]$/.test(reader.key()))
        return null
    }
    if (bare && round === null) return null
    passUnused(reader)
    if (reader.seesAny(PLACE_FOLLOWS) || reader.attempt(() => readStitch(reader))) return null
    while (reader.skip('throughout', 'around', 'for', 'this', 'rnd', 'round', 'entire', 'the')) continue
    // "FLO (sc, hdc, dc in next st) x 5": of all that the bracket holds.
    // "R6: BLO 30dc".
    const counted = !into && reader.peek()?.kind === 'number'
    if (!worked && !round && !counted && !/^[,;.:([*]?$/.test(reader.key())) return null
    return scope({ loop, round })
  })
}
