/** What is worked into: nouns of the trade, loops, rounds, and how far a stretch goes. */
import { readBetweenNamed } from './between-named'
import { readGap } from './gap-nouns'
import type { Reader } from './reader'
import type { Noun, PlacePart } from './tree'
import type { Loop, StitchName } from './stitch-name'
import { definedKey, readStitch } from './vocabulary'

/** "ch-sp", "chain-loops": in one word. */
const CHAIN_SPACE = /^ch-(?:sp|lp|arch)$/
const LOOP_SIDES: ReadonlyMap<string, Loop> = new Map(
  Object.entries({ front: 'front', back: 'back', both: 'both', top: 'both' }),
)

/** "(loops) only of", "(loops) left free of", "(loops) left" by a round; passes it. */
const passLeft = (reader: Reader): void => {
  while (reader.skip('only', 'left', 'unworked', 'still', 'over')) continue
  if (!reader.skip('of') && reader.key(-1) === 'left') reader.skip('from', 'in', 'on')
}

/** "front lps (only)", "back lp", "BLO", "both lps", with "of" behind it; passes it. */
export function readLoop(reader: Reader): Loop | null {
  return reader.attempt(() => {
    reader.skip('the')
    while (reader.skip('unworked', 'rem')) continue
    const short: Loop | null = reader.skip('blo') ? 'back' : reader.skip('flo') ? 'front' : null
    if (short) {
      passLeft(reader)
      return short
    }
    const third = reader.attempt(() => {
      if (reader.ordinal() === 3 && reader.skip('lp')) return true
      return reader.skip('back') && reader.skip('bump', 'bumps', 'bar') ? true : null
    })
    if (third) {
      // It lies behind the stitch, below its back loop.
      passLeft(reader)
      return 'back'
    }
    const side = LOOP_SIDES.get(reader.key().replace(/-lp$/, ''))
    if (!side) return null
    if (reader.key().endsWith('-lp')) reader.at++
    else {
      reader.at++
      if (!reader.skip('lp')) return null
    }
    passLeft(reader)
    return side
  })
}

/** "of Rnd 2", "of rnd below", "2 rnds below", "of previous rnd" (null: that is where one works anyway). */
export function readRound(reader: Reader): PlacePart['round'] {
  const start = reader.at
  // "(Loops left) by Rnd 3": of the round that it is worked in.
  const by = reader.skip('by') && reader.skipA('round') ? reader.number() : null
  if (by !== null && by > 1) return { number: by - 1 }
  reader.at = start
  reader.skip('of', 'on', 'in', 'from')
  reader.skip('the')
  const below = reader.number()
  const rounds = below !== null && reader.skipA('round')
  while (rounds && reader.skip('straight', 'directly')) continue
  if (rounds && reader.skip('below', 'down')) {
    return { below }
  }
  reader.at = start
  reader.skip('of', 'on', 'in', 'from')
  reader.skip('the')
  const ordinal = reader.ordinal()
  const first = ordinal === null && reader.skip('first') ? 1 : ordinal
  if (first !== null && reader.skipA('round')) return { number: first }
  if (first === null && (reader.skipA('round') || reader.skip('r'))) {
    const number = reader.number()
    if (number !== null) return { number }
    if (reader.skip('below')) return { below: 1 }
  }
  if (first === null && reader.skip('prev', 'last') && reader.skipA('round')) return null
  reader.at = start
  return null
}

/** "sp", "corner sp" and "corner" behind the chains of a space: how many words; 0 where none follows. */
function spaceBehind(reader: Reader, ahead: number): number {
  const corner = reader.key(ahead) === 'corner' ? 1 : 0
  // "ch-2 point", "ch-3 tip".
  if (corner === 0 && ['point', 'tip'].includes(reader.key(ahead))) return 1
  return reader.isA('space', ahead + corner) ? corner + 1 : corner
}

/** "3ch-sp", "3ch sp", "3 ch corner sp": a space by its chains; passes it. "3 ch sps" are three spaces. */
function glued(reader: Reader): number | null {
  return reader.attempt(() => {
    const number = reader.peek()
    if (number?.kind !== 'number') return null
    const word = reader.peek(1)
    const own = word !== undefined && CHAIN_SPACE.test(word.is)
    const behind = own || !word?.kinds.has('chain') ? 0 : spaceBehind(reader, 2)
    // "Under each 3 ch", "under next 5 ch": the chains are gone around. "Each of 3 ch" are stitches.
    const before = [reader.key(-1), reader.key(-2)]
    const under =
      before[0] === 'each' ||
      (before[0] === 'every' && before[1] === 'under') ||
      before[0] === 'under' ||
      (before[0] === 'next' && before[1] === 'under')
    const whole = word?.kinds.has('chain') && (under || (before[0] !== 'each' && isOver(reader)))
    if (!own && behind === 0 && !whole) return null
    const joined = word!.start === number.end
    reader.at += 2 + behind
    if (!joined && /s$/.test(reader.spelled(-1))) return null
    return number.value
  })
}

/** Whether the figure at the cursor belongs to a space ("3ch-sp") and tells no amount. */
export const sizeAhead = (reader: Reader): boolean => {
  const at = reader.at
  const found = glued(reader) !== null
  reader.at = at
  return found
}

/** Behind these the chains of a space say enough: "in next ch-2", "over the first ch-3". */
const CHAINS_ALONE = new Set([
  'next',
  'each',
  'any',
  'same',
  'every',
  'first',
  'last',
  'over',
  'under',
  'around',
])
/** The hook goes over chains, which are gone around. */
const OVER = new Set(['over', 'under', 'around'])

/** "2 sc over ch 2", "over the first ch 3". */
const isOver = (reader: Reader): boolean => {
  let behind = -1
  while (['the', 'first', 'last', 'each', 'beg', 'same'].includes(reader.key(behind))) behind--
  // "3 dc round the first 3 ch": the word is a preposition where more stands before the chains.
  if (behind < -1 && reader.key(behind) === 'round') return true
  // "Pass over 2 ch" skips chains.
  return OVER.has(reader.key(behind)) && reader.key(behind - 1) !== 'skip'
}

function readSpaceNoun(reader: Reader, corner: boolean): Noun | null {
  const token = reader.peek()
  // "6 lp" of a picot that the text calls so is no loop.
  if (!token || (reader.definitions.get(definedKey(token.key))?.items.length ?? 0) > 0) return null
  if (CHAIN_SPACE.test(token.is)) {
    reader.at++
    return { kind: 'space', chains: null, corner }
  }
  // "3ch-sp", "3 ch sp": behind the figure the space may be spelled in any way.
  const size = glued(reader)
  const inCorner = () => corner || reader.key(-1) === 'corner' || reader.key(-2) === 'corner'
  if (size !== null) return { kind: 'space', chains: size, corner: inCorner() }
  if (token.kind === 'chains') {
    const hyphen = reader.key(1) === '-' && reader.isA('space', 2) ? 1 : 0
    const behind = spaceBehind(reader, 1 + hyphen)
    // "In next ch-2", "in each ch-5" leave the word for it out.
    const alone = CHAINS_ALONE.has(reader.key(-1)) && !reader.isA('picot', 1)
    if (behind === 0 && !corner && !alone) return null
    reader.at += 1 + hyphen + behind
    return { kind: 'space', chains: token.value, corner: inCorner() }
  }
  if (token.kinds.has('chain')) {
    // "ch sp", "ch3 sp", "ch 3 sp", "chain space"
    const number = reader.peek(1)?.kind === 'number' ? reader.peek(1)!.value : null
    const after = number === null ? 1 : 2
    const behind = spaceBehind(reader, after)
    if (behind === 0 && !(number !== null && isOver(reader))) return null
    reader.at += after + behind
    return { kind: 'space', chains: number, corner: inCorner() }
  }
  if (token.kinds.has('space')) {
    reader.at++
    // "each loop of 4 chain".
    const of = reader.attempt(() => {
      if (!reader.skip('of')) return null
      if (reader.peek()?.kind === 'chains') return reader.tokens[reader.at++]!.value
      const before = reader.number()
      if (!reader.skipA('chain')) return null
      return before ?? reader.number()
    })
    return { kind: 'space', chains: of, corner }
  }
  return null
}

/** Rings that are bought: nothing holds their number of stitches either. */
const RING_STUFF = new Set(['plastic', 'brass', 'metal', 'curtain', 'bone', 'rubber', 'wooden', 'key'])

/** "Magic ring", "sliding loop", "MR", or what the text calls it: passes it. */
export const skipAdjustable = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.skip('mr')) return true
    if (reader.rings.has(reader.spelled())) return ++reader.at > 0
    if (RING_STUFF.has(reader.spelled()) && reader.isA('ring', 1)) return (reader.at += 2) > 0
    if (!reader.skip('magic', 'amigurumi', 'slip', 'yarn', 'sl', 'thread')) return null
    reader.skip('knot', 'thread', 'yarn')
    return reader.skipA('ring') ? true : null
  }) === true

/** "8 ch", "a chain of 8", "ch 8", "ch-8": how many chains; passes them. */
export const readChains = (reader: Reader): number | null =>
  reader.attempt(() => {
    reader.skip('a')
    if (reader.peek()?.kind === 'chains') return reader.tokens[reader.at++]!.value
    const before = reader.number()
    if (!reader.skipA('chain')) return null
    reader.skip('st')
    if (before === null) reader.skip('of')
    const chains = before ?? reader.number()
    if (before === null) reader.skipA('chain')
    return chains
  })

/** "(each ch) of foundation", "(ch) at point", "(ch) along the foundation edge": where the chain lies; passes it. */
const passUnder = (reader: Reader): void => {
  reader.attempt(() => {
    const along = reader.skip('along', 'across')
    if (!along && !reader.skip('of', 'at', 'on')) return null
    reader.skip('the')
    const named = reader.skip('foundation', 'base', 'bottom', 'tip', 'point')
    if (!named) return null
    // "At the base of Row 1".
    if (reader.skip('of')) {
      reader.skip('the')
      return (reader.skip('first') ? reader.skipA('round') : reader.skipA('round') && reader.number()) || null
    }
    while (reader.skip('edge', 'row', 'ch', 'side')) continue
    return true
  })
}

/** "(each of next 5) dtr drawn off together": the stitch alone, since the other words tell what is made of them. */
function readUndrawn(reader: Reader): StitchName | null {
  const start = reader.at
  const stitch = readStitch(reader)
  if (stitch?.form !== 'together' || !DRAWN.test(stitch.name)) return stitch
  while (reader.at > start && !DRAWN.test(reader.spelled())) reader.at--
  const span = reader.span(start)
  const words = reader.words(span)
  return { ...stitch, form: 'plain', size: 0, name: words.replace(DRAWN, '').trim() }
}
const DRAWN = /\b(drawn|crocheted|worked|finished|closed)\b/

export const isShell = (form: string | undefined): boolean => form === 'shell' || form === 'v-stitch'

/** "(In next) shell sp", "V-st ch-1 sp": where a shell is worked into anyway; passes it. */
const passOwnSpace = (reader: Reader): void => {
  reader.attempt(() => {
    if (reader.peek()?.kind === 'chains') reader.at++
    return reader.skipA('space') || null
  })
}

/** What is worked into: a stitch, a space, a chain, the ring, a gap. Passes it; null where there is none. */
export function readNoun(reader: Reader): Noun | null {
  return reader.attempt((): Noun | null => {
    reader.skip('the')
    const corner = reader.skip('corner')
    // "In each side space": any one that is no corner; the corners are named besides.
    if (reader.sees('side') && reader.isA('space', 1)) reader.at++
    const space = readSpaceNoun(reader, corner)
    if (space) {
      const chained = space.kind === 'space' && space.chains !== null
      const between = chained ? readBetweenNamed(reader) : null
      if (chained && between) return { ...space, between }
      const gap = readGap(reader)
      // "Ch-2 sp between shells": chains lie between them.
      return gap && !chained ? gap.noun : space
    }
    if (corner) {
      if (!reader.skipA('stitch')) readStitch(reader)
      return { kind: 'corner' }
    }
    const yarn = skipAdjustable(reader)
    if (yarn || reader.skip('ring', 'center', 'circle')) {
      const chains = yarn ? null : reader.attempt(() => (reader.skip('of') ? readChains(reader) : null))
      if (chains !== null) return { kind: 'ring', yarn, chains }
      if (reader.skip('of')) {
        reader.skip('the')
        reader.skipA('ring')
      }
      return { kind: 'ring', yarn }
    }
    if (reader.skip('tip') || (reader.sees('point') && reader.skip('point'))) {
      // "the point of 3 chain".
      const chains = reader.attempt(() => {
        if (!reader.skip('of')) return null
        if (reader.peek()?.kind === 'chains') return reader.tokens[reader.at++]!.value
        const count = reader.number()
        return count !== null && reader.skipA('chain') ? count : null
      })
      if (chains !== null) return { kind: 'space', chains, corner: false }
      if (!reader.skipA('stitch')) readStitch(reader)
      return { kind: 'landmark', name: 'tip' }
    }
    if (reader.skip('valley')) {
      if (!reader.skipA('stitch')) readStitch(reader)
      return { kind: 'landmark', name: 'valley' }
    }
    // A spoke is the stitch that makes it.
    if (reader.skipA('stitch') || reader.skip('spoke')) return { kind: 'stitch', name: null }
    // "in the bottom ch", "in base ch".
    if (reader.isA('chain', 1)) reader.skip('bottom', 'base', 'foundation', 'lower', 'tip', 'point')
    if (reader.skipA('chain') || reader.skip('ch-st')) {
      reader.skipA('stitch')
      passUnder(reader)
      return { kind: 'chain' }
    }
    const stitch = readUndrawn(reader)
    if (stitch) {
      reader.skipA('stitch')
      if (isShell(stitch.form)) passOwnSpace(reader)
      return { kind: 'stitch', name: stitch }
    }
    return null
  })
}

/** "sl st in next dc and ch-1 sp", "and corner": a space can be nothing else. */
export const sizedSpaceAhead = (reader: Reader): boolean => {
  const at = reader.at
  const noun = readNoun(reader)
  reader.at = at
  return noun?.kind === 'corner' || noun?.kind === 'space'
}
