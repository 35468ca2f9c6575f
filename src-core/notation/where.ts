/** Where a stitch lies that is meant: words behind it that name no place of their own. */
import type { Reader } from './reader'
import { passThatRemain } from './that-remain'
import type { Token } from './tokens'
import { readStitch } from './vocabulary'

/** "between petals" behind the stitch that is meant. */
export function readBetween(reader: Reader): boolean {
  const found = reader.attempt(() => {
    if (!reader.skip('between')) return null
    while (reader.skip('the', 'next', 'any', 'each', '2', 'two')) continue
    return reader.skipA('group') || reader.skipA('counted') || reader.skip('arch') ? true : null
  })
  return found !== null
}

/** "(The first tr) after a corner space", "to the left of any corner", "of one side": whichever of them; passes it. */
const passBesideAny = (reader: Reader): boolean =>
  reader.attempt(() => {
    const beside =
      reader.skip('after', 'before', 'beside', 'of', 'on', 'along', 'past') ||
      reader.skipAll('next', 'to') ||
      (reader.skipAll('to', 'the') &&
        /^(left|right)$/.test(reader.spelled()) &&
        ++reader.at > 0 &&
        reader.skip('of'))
    if (!beside || !reader.skip('a', 'any', 'one')) return null
    reader.skipAll('of', 'the')
    if (reader.skip('side', 'edge', 'sides', 'edges')) return true
    const chained = reader.peek()?.kind === 'chains' && ++reader.at > 0
    const corner = reader.skip('corner')
    return (chained || corner) && (reader.skipA('space') || corner) ? true : null
  }) === true

/** "(In) the top of (next dc)", "tip of (next cluster)", "side of (last dc)": which part of it; passes it. */
export function passTopOf(reader: Reader): void {
  const bunch = reader.sees('tip', 'of') && [3, 4].some((ahead) => isBunch(reader.peek(ahead)))
  if (bunch) {
    reader.at += 2
    return
  }
  if (reader.skipAll('the', 'top', 'of') || reader.skipAll('top', 'of')) return
  if (reader.key(2) === 'last') reader.skipAll('side', 'of')
}

/** "lying between this petal and the next", "at the point", "on that side": where the stitch lies that is meant. */
export function passWhere(reader: Reader): boolean {
  if (passBesideAny(reader) || passThatRemain(reader)) return true
  const passed = reader.attempt(() => {
    reader.skip('lying', 'that', 'which')
    reader.skip('is', 'lies')
    if (!reader.skip('at', 'between', 'behind')) return null
    reader.skip('the', 'this', 'each', 'two', '2')
    reader.skip('bottom', 'top', 'lower', 'upper', 'very')
    if (!reader.skipA('counted') && !reader.skipA('landmark')) return null
    if (reader.skip('and')) reader.skip('the')
    reader.skip('next')
    return true
  })
  return passed === true
}

/** "from behind", "from the back", "at the back", "in back of work": how a post is gone around; passes it. */
export const passBehind = (reader: Reader): boolean =>
  reader.attempt(() => {
    // "In back of work": behind it; "in back of next dc" is a place.
    if (reader.skipAll('in', 'back', 'of')) return reader.skip('work', 'piece') ? true : null
    if (!reader.skip('from', 'at')) return null
    if (reader.key(-1) === 'from' && reader.skip('behind')) return true
    reader.skip('the')
    if (!reader.skip('back', 'rear')) return null
    reader.attempt(() => (reader.skip('of'), reader.skip('the'), reader.skip('work', 'petal') || null))
    return !reader.sees('lp') && !reader.sees('post') ? true : null
  }) === true

/** "(Sl st) loosely in each st", "(2 sc) worked in next st": passes the word. */
export function passManner(reader: Reader): void {
  const said = reader.spelled()
  const loosely = said.endsWith('ly') && !reader.sees('evenly')
  if ((loosely || /^(worked|made|placed)$/.test(said)) && reader.isA('into', 1)) reader.at++
}

/** "1 dc at the back round the stem of each tr": how a post is gone around, told before it; passes it. */
export const passBehindFirst = (reader: Reader): boolean =>
  reader.attempt(() => {
    const taken = reader.skip('taken', 'worked', 'caught', 'taking')
    if (!passBehind(reader)) return null
    return reader.sees('around') || reader.sees('round') || (taken && reader.sees('on')) ? true : null
  }) === true

/** "(round) the back of (the stem of) the next dc"; passes it. */
export const passRear = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('the')
    return reader.skip('back', 'rear') && reader.skip('of') ? true : null
  }) === true

/** "below the next sc", "directly below", "straight under that st": behind the stitch of a round further down. */
export const passBelow = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('directly', 'straight', 'right', 'just', 'immediately', 'that', 'lies')) continue
    if (!reader.skip('below', 'beneath', 'underneath')) return null
    reader.attempt(() => {
      while (reader.skip('the', 'that', 'this', 'next', 'same', 'each')) continue
      return reader.skipA('stitch') || readStitch(reader) !== null || null
    })
    return true
  }) === true

/** Whether a stitch is told by what lies above it. */
export const belowAhead = (reader: Reader): boolean => {
  const at = reader.at
  const found = passBelow(reader)
  reader.at = at
  return found
}

/** "(The st) you missed", "that was skipped", "just passed over", "you left unworked", "missed just now"; passes it. */
export const passWhichMissed = (reader: Reader): boolean =>
  reader.attempt(() => {
    const which = reader.skip('that', 'which')
    const you = /^(you|we|i)$/.test(reader.spelled()) && ++reader.at > 0
    while ((which || you) && /^(was|were|is|are|has|have|had|been)$/.test(reader.spelled())) reader.at++
    reader.skip('just', 'first', 'previously', 'earlier')
    const left = you && reader.skip('left')
    const over = !left && reader.spelled() === 'passed' && ++reader.at > 0 && reader.skip('over', 'by')
    if (!left && !over && !reader.skip('skipped')) return null
    while (reader.skip('over', 'out', 'before', 'earlier', 'behind', 'just', 'now', 'unworked', 'empty'))
      continue
    // "In the st you left a marker in".
    return endsPlace(reader) || reader.sees('then') ? true : null
  }) === true

/** "top of same st", "the top of that same dc": passes what stands before "same". */
export const passTopOfSame = (reader: Reader): void => {
  reader.attempt(() => {
    reader.skip('the')
    if (reader.skipAll('top', 'of')) reader.skip('that', 'the', 'this')
    else if (!reader.skip('that', 'this', 'very')) return null
    reader.skip('very')
    return reader.sees('same') || null
  })
}

/** "the unused side of (each of the 5 ch)": passes it. */
export const passFreeSide = (reader: Reader): void => {
  reader.attempt(() => {
    reader.skip('the')
    const lies = reader.skip('unworked', 'other', 'opposite', 'far')
    if (!lies || !reader.skip('side', 'edge', 'lp')) return null
    return (reader.skip('of') && ['each', 'the', 'next', 'every'].includes(reader.key())) || null
  })
}

/** "where you joined", "where the round was joined", "where the sl st was made": where the round began. */
export const passWhereJoined = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('where')) return null
    for (let words = 0; words < LONGEST_WHERE && reader.peek(); words++) {
      if (reader.skip('joined', 'join', 'joining', 'ended', 'attached'))
        return reader.skip('the') ? null : true
      if (reader.peek()!.kind !== 'word') return null
      reader.at++
    }
    return null
  }) === true
const LONGEST_WHERE = 6

/** "2 sc in the ch that holds the first sc", "in the ch where you started": the one that the first side began in; passes it. */
export const passHolds = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('already')
    if (!reader.skip('that', 'which', 'where', 'holding', 'with', 'containing', 'used')) return null
    for (let words = 0; words < LONGEST_HOLDS && reader.peek()?.kind === 'word'; words++, reader.at++) {
      const first = reader.sees('first') || reader.sees('beg')
      if (!first && !['started', 'began', 'begun', 'starting'].includes(reader.key())) continue
      reader.at++
      reader.number()
      if (first && !readStitch(reader)) reader.skip('st')
      reader.attempt(() => (reader.skip('is', 'was', 'are'), reader.skip('in', 'made', 'worked') || null))
      return true
    }
    return null
  }) === true
const LONGEST_HOLDS = 7

/** "(4th st) from last", "(2nd sc) from hook", "(3rd dc) along": counted from where the hook stands; passes it. */
export const passFromLast = (reader: Reader): void => {
  reader.attempt(() => {
    if (reader.skip('along', 'after', 'over')) return /^([,;.)]|and|)$/.test(reader.key()) || null
    if (!reader.skip('from', 'after')) return null
    while (reader.skip('the', 'your')) continue
    if (reader.skip('hook', 'there', 'here')) return true
    if (!reader.skip('last', 'prev', 'joining')) return null
    if (!reader.skipA('stitch')) readStitch(reader)
    return true
  })
}

/** "as joining", "as sl st", "as last dc made": says whether the beginning of the round is meant. */
export function passSameAs(reader: Reader): boolean {
  const beginning = reader.attempt((): { beginning: boolean } | null => {
    if (!reader.skip('as', 'where')) return null
    if (reader.skip('before')) return { beginning: false }
    reader.skip('the')
    let first = false
    reader.skip('very')
    while (reader.isA('same-as')) {
      first ||= !reader.sees('last') && !reader.sees('prev')
      reader.at++
    }
    if (reader.skip('joining', 'join', 'joined')) {
      readStitch(reader)
      return { beginning: true }
    }
    reader.skip('turning')
    // "in same sp as last 2 dc".
    reader.number()
    if (reader.peek()?.kind === 'chains') reader.at++
    else if (reader.skipA('own-chain')) return { beginning: true }
    else if (!reader.skipA('stitch') && !readStitch(reader)) return null
    // "In place where ss was worked".
    reader.skip('was', 'is')
    reader.skip('made', 'worked')
    return { beginning: first }
  })
  return beginning?.beginning ?? false
}

/** Whether nothing more is said of a stitch that is named: "sc in pc, …", "2 sc in sc) 8 times", "dc over dc around". */
export const endsPlace = (reader: Reader): boolean =>
  /^([,;:.)(\]*[–—]|and|around|round|rep|\*\*)?$/.test(reader.key()) || (reader.peek()?.first ?? false)

/** A stitch that ends in one tip. */
export const isBunch = (token: Token | undefined): boolean =>
  token !== undefined && ['cluster', 'puff', 'popcorn', 'bobble'].some((form) => token.kinds.has(form))

/** "(each) successive sp", "(the next) (center) sc", "(the last) (unworked) st": which one that is; passes it. */
export const passLikeness = (reader: Reader): void => {
  while (reader.skipA('describes')) continue
  reader.attempt(() => {
    if (!reader.skip('(', '[')) return null
    return reader.skip('center', 'skipped', 'unworked', 'tip', 'point', 'corner') && reader.skip(')', ']')
      ? true
      : null
  })
}

/** What stands behind "round" where a post is gone around, as the UK says it: "1 dc round stem of next tr". */
export const POST_FOLLOWS = /^(the|stem|post|next|each|same|first|last|any|every|all|both|r\w+[fb]|[fb]p\w+)$/

/** "…, in same sp and in each sp around work 3 dc": the place stands before what goes into it. */
export const opensPhrase = (reader: Reader, at: number): boolean =>
  /^([,;:.*([]|then|now)$/.test(reader.tokens[at - 1]?.key ?? '')

/** "1 dc in each tr, and in every corner space 1 dc, 2 ch, 1 dc": whether what goes there stands behind it. */
export const stitchesAhead = (reader: Reader): boolean => {
  const at = reader.at
  const found = reader.number() !== null && reader.key(-1) !== ',' && readStitch(reader) !== null
  reader.at = at
  return found
}

/** "(rtrf round) ftr of Round 3": a stitch that is gone around stands behind the word in hand. */
export function goesRoundStitch(reader: Reader): boolean {
  const { at } = reader
  reader.at = at + 1
  const stitch = reader.isA('stitch') ? null : readStitch(reader)
  reader.at = at
  return stitch !== null && stitch.stitch !== 'sl st'
}

/** "Slip stitch as before", "ss as usual", "join as in Rnd 2", "in the same way": the round closes as the others do; passes it. */
export const passAsBefore = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.skip('in', 'the')) {
      while (reader.skip('the', 'same', 'usual')) continue
      return reader.skip('way', 'manner') || null
    }
    if (!reader.skip('as')) return null
    if (reader.skip('before', 'usual', 'always')) return true
    while (reader.skip('for', 'in', 'on', 'at', 'the', 'end', 'of', 'you', 'did', 'last', 'prev')) continue
    if (!reader.skipA('round')) return null
    reader.number()
    return true
  }) === true
