/** Words that only say how the hands or the work are held or where they go meanwhile: "keeping ch behind petal, …", "coming down the other side, …". */
import type { Reader } from './reader'
import { readStitch } from './vocabulary'

/** What is done beside the stitches. */
const HELD =
  /^(keeping|holding|bringing|pushing|pulling|folding|tilting|laying|bending|carrying|letting|taking)$/
/** On the way. */
const GOING = /^(going|coming|moving|travelling|traveling|heading|climbing|descending|returning)$/
/** What such words are about; anything else makes an instruction of them. */
const ABOUT = new Set(
  (
    'the a an this that these each all your its their last first prev petal petals ch yarn thread cotton ' +
    'wool tail loop lp work hook it them behind in front back at to on of over out way forward forwards ' +
    'down up toward towards you side wrong right rs ws flat loose loosely aside color unused not use ' +
    'along other free far next opposite point spike tip leaf stem top away from well clear motif flower ' +
    'center against and now'
  ).split(' '),
)
const MOST_WORDS = 12

/** "For the next corner work 3 dc": what it will be, before a verb of working. */
const passPurpose = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('for')) return null
    while (reader.skip('the', 'each', 'every', 'your', 'a', 'next', 'last', 'other')) continue
    reader.ordinal()
    if (!/^(corner|petal|point|side|tip|scallop|leaf)$/.test(reader.key())) return null
    reader.at++
    reader.skip(',')
    return reader.isA('verb') || reader.sees('work') || null
  }) === true

/** "Then one last (2 dc, ch 2, 2 dc) in the corner": that it is one more; passes it. */
const passOneLast = (reader: Reader): boolean =>
  reader.attempt(() => {
    const one = reader.skip('one', '1', 'a', 'the')
    const more = reader.skip('more', 'last') || reader.skip('another')
    return (one && more && /^[([]$/.test(reader.key())) || null
  }) === true

/** "A shell of (3 dc, ch 2, 3 dc) in next sp": what the bracket comes to; passes it. */
const passNameOf = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('work', 'make', 'a', 'an', 'one', 'another')) continue
    if (!/^(shell|fan|v-st|v-stitch|group|corner|wedge)$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('made', 'consisting')
    return (reader.skip('of', 'as') && /^[([]$/.test(reader.key())) || null
  }) === true

/** "Start with a slip knot and (ch 2)", "make a slipknot, then": what the hands know without counting; passes it. */
const passHands = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.skip('begin', 'beg')) reader.skip('with', 'by')
    reader.skip('make', 'tie')
    reader.skip('a', 'your')
    if (!reader.skip('slipknot') && !(reader.skip('slip') && reader.skip('knot'))) return null
    if (reader.skip('on', 'onto')) while (reader.skip('your', 'the', 'hook')) continue
    reader.skip(',')
    return reader.skip('and', 'then') || reader.key(-1) === ',' || null
  }) === true

const HOLD = /^(keep|hold|bring|push|pull|fold|bend|press|flip|tip)$/
const PETALS = /^(petals?|leaf|leaves|points?|scallops?|shells?|loops|flower|ruffles?|frill|them)$/

/** "Fold the small petals toward you and (work in …)": where they lie meanwhile, before a verb of working; passes it. */
const passHeld = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!HOLD.test(reader.spelled())) return null
    let named = false
    for (let words = 0; words < MOST_WORDS; words++) {
      reader.at++
      const token = reader.peek()
      if (token?.kind !== 'word') return null
      if (named && reader.sees('and')) return reader.isA('verb', 1) && ++reader.at > 0 ? true : null
      const petals = PETALS.test(reader.spelled())
      if (petals) named = true
      else if (!ABOUT.has(token.key) && !/^(small|big|large|little|round|inner|outer)$/.test(token.key))
        return null
    }
    return null
  }) === true

/** Passes them where an instruction follows, behind a comma or a verb of working. */
export const passManner = (reader: Reader): boolean =>
  reader.attempt(() => {
    if ((reader.peek()?.first && passHands(reader)) || passOneLast(reader) || passNameOf(reader)) return true
    const before = reader.tokens[reader.at - 1]
    if (before && !/^([,;:.*([]|and|then|now)$/.test(before.key)) return null
    if (reader.sees('for')) return passPurpose(reader) || null
    if (passHands(reader) || passHeld(reader)) return true
    // "Now work [4 tr into the ring, 3 ch] twice".
    const now = reader.sees('now') && reader.isA('verb', 1) && /^[([*]$/.test(reader.key(2))
    if (now) return (reader.at += 2) > 0
    const going = GOING.test(reader.spelled())
    if (!going && !HELD.test(reader.spelled())) return null
    reader.at++
    // "Going back along the chain" turns there; "holding back the last loop of each" makes a cluster.
    if (going ? !/^(up|down)$/.test(reader.key()) : reader.sees('back')) return null
    for (let words = 0; words < MOST_WORDS; words++) {
      if (reader.sees(',')) {
        const at = ++reader.at
        reader.skipA('verb')
        reader.number()
        const works = readStitch(reader) !== null || reader.isA('chain') || reader.isA('skip')
        if (!works && reader.peek()?.kind !== 'chains' && !reader.isA('into')) return null
        reader.at = at
        return true
      }
      if (reader.sees('work') && words > 1) {
        const token = reader.peek(1)
        if (token?.kind === 'number' || token?.kinds.has('number') || token?.kinds.has('into')) return true
      }
      const token = reader.peek()
      if (!token || !(ABOUT.has(token.key) || ABOUT.has(token.is)) || token.kind === 'number') return null
      reader.at++
    }
    return null
  }) === true

/** Who goes where: "You'll work down one side of the chain, round the bottom, and back up the other side." */
const GOES =
  /^((you'll|you will|we'll|we will|you|we|you are going to|we are going to|this time) )?(now )?(be )?(work|working|go|going|worked|crochet|crocheting) /
const WAY_ENDS =
  / (side|sides|bottom|top|other|end|around|round)( (again|of it|of (the|your|it) (chain|ch|foundation|piece)))?$/
/** Both ways are told, or it might be an instruction: "work along the other side". */
const BOTH_WAYS = /\b(one|both|first|top|down|all the way)\b.*\b(sides|other|back|bottom|around|round)\b/
const MOST_OVERVIEW = 32

/** Passes a sentence that says which way a round goes before it is worked stitch by stitch. */
export const passOverview = (reader: Reader): boolean =>
  reader.attempt(() => {
    const from = reader.at
    const before = reader.tokens[from - 1]
    if (before && !reader.peek()?.first && !/^[.:!)\]]$/.test(before.key)) return null
    while (reader.at - from < MOST_OVERVIEW && reader.peek() && !reader.sees('.')) {
      const token = reader.peek()!
      if (token.kind !== 'word' && token.key !== ',') return null
      reader.at++
    }
    const words = reader.words(reader.span(from)).toLowerCase().replace(/’/g, "'").replace(/\s+/g, ' ')
    const told = [GOES, WAY_ENDS, BOTH_WAYS].every((has) => has.test(words))
    return told && reader.sees('.') ? ++reader.at > 0 : null
  }) === true

/** "Displace the increases once more:", "here the increases are staggered.": what becomes of them, before it is worked. */
const SHIFTED = /^(displac|shift|stagger|offset|alternat|spread|mov|chang)(e|es|ed|ing|s)?$/
const CHANGED = /^(increases?|incs?|decreases?|decs?|shaping)$/
const MOST_SHIFTED = 14

/** Passes such words up to their colon or stop; they name no stitch but those. */
export const passShifted = (reader: Reader): boolean =>
  reader.attempt(() => {
    const before = reader.tokens[reader.at - 1]
    if (before && !reader.peek()?.first && !/^[.:;!)\]]$/.test(before.key)) return null
    const from = reader.at
    let shifted = false
    let named = false
    while (reader.peek() && !/^[.:]$/.test(reader.key())) {
      const token = reader.peek()!
      if (token.kind !== 'word' || reader.at - from >= MOST_SHIFTED) return null
      if (token.first && reader.at > from) return null
      const spelled = reader.spelled()
      if (SHIFTED.test(spelled)) shifted = true
      else if (CHANGED.test(spelled)) named = true
      else if (token.kinds.has('number') || token.kinds.has('ordinal') || readsStitch(reader)) return null
      reader.at++
    }
    return shifted && named && reader.at > from && reader.peek() ? ++reader.at > 0 : null
  }) === true

const readsStitch = (reader: Reader): boolean => {
  const { at } = reader
  const found = readStitch(reader) !== null
  reader.at = at
  return found
}
