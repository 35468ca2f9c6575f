/** Places in the chains that a round or row begins with: "top of beg ch-3", "3rd ch of ch-4", "top of turning ch". */
import type { Reader } from './reader'
import { readRound } from './nouns'
import type { Noun, PlacePart } from './tree'
import { readStitch } from './vocabulary'

/** Words for the place just worked in. */
export const SAME: ReadonlySet<string> = new Set(['same', 'that'])

/** "Join in any ch-1 sp, shell in that sp", "1 d.c. into this and each of next 2 d.c.": passes the word. */
export const passPointed = (reader: Reader): boolean => {
  if (reader.skip('that')) {
    reader.skip('same')
    return true
  }
  const here = reader.sees('this') && !reader.isA('round', 1) && !reader.isA('motif', 1)
  return here && reader.skip('this')
}

/** Chains that stand for the first stitch of a round. */
const RAISED = /^(turning|starting|lifting|climbing|raising|beginning|beg|opening|initial)$/
const BASES = new Set(['base', 'bottom', 'foot'])

/** "1 tr at base of 3 ch", "at the foot of the ch": where the round begins, told without "in". */
export const atBase = (reader: Reader): boolean =>
  reader.sees('at') && BASES.has(reader.key(reader.key(1) === 'the' ? 2 : 1))

/** "3rd st of ch 4": a stitch that is a chain. */
const ofChain = (reader: Reader): boolean =>
  reader.isA('stitch') &&
  reader.key(1) === 'of' &&
  [2, 3, 4].some((ahead) => reader.isA('chain', ahead) || reader.peek(ahead)?.kind === 'chains')

/** "(Round) the 3 ch which stand for the first tr of 1st round": its round. */
const readStandsFor = (reader: Reader): PlacePart['round'] =>
  reader.attempt(() => {
    if (reader.peek()?.kind === 'chains') reader.at++
    else if (reader.number() === null || !reader.skipA('chain')) return null
    if (!reader.skip('which', 'that') || !/^(stands?|counts?|are|is)$/.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('for', 'as', 'the', 'a', 'first', '1', 'your')) continue
    return readStitch(reader) && readRound(reader)
  })

/** "(Round the stem of) 3ch at beg of 1st round": a loop, or the stitch for which it stands. */
const readAtBeginning = (
  reader: Reader,
): { readonly noun: Noun; readonly round: PlacePart['round'] } | null =>
  reader.attempt(() => {
    const token = reader.peek()
    if (token?.kind === 'chains') reader.at++
    const chains = token?.kind === 'chains' ? token.value : reader.number()
    if (chains === null || (token?.kind !== 'chains' && !reader.skipA('chain'))) return null
    if (!reader.skip('at')) return null
    reader.skip('the')
    if (!/^(beg|beginning|start)$/.test(reader.spelled())) return null
    reader.at++
    const round = readRound(reader)
    return round && { noun: { kind: 'space', chains, corner: false }, round }
  })

/** "(Around) first 3 chs of beginning ch-6 of Rnd 1": the stitch for which they stand; its round. */
const readFirstChains = (reader: Reader): PlacePart['round'] =>
  reader.attempt(() => {
    reader.skip('the')
    const stand = readStandsFor(reader)
    if (stand) return stand
    if (!reader.skip('first')) return null
    if (reader.number() === null || !reader.skipA('chain')) return null
    // "(Round the upright made by) the first 3 ch. of the 1st row".
    const round = readRound(reader)
    if (round) return round
    if (!reader.skip('of')) return null
    while (reader.skip('the', 'beg', 'starting', 'turning')) continue
    if (reader.peek()?.kind === 'chains') reader.at++
    else if (!reader.skipA('chain')) return null
    else reader.number()
    return readRound(reader)
  })

/** "top of beg ch-3", "3rd ch of ch-4", "base of 3-ch", "beg ch-3 sp", "first sc" where this round is meant. */
export function readOwn(reader: Reader): { noun: Noun; base: boolean; round?: PlacePart['round'] } | null {
  const start = reader.at
  const begun = readAtBeginning(reader)
  if (begun) return { ...begun, base: false }
  const round = readFirstChains(reader)
  if (round) return { noun: { kind: 'stitch', name: null }, base: false, round }
  return reader.attempt(() => {
    reader.skip('the')
    // "in st at base of 3 ch", "in st at base of ss".
    reader.attempt(() => (reader.skipA('stitch') && atBase(reader) ? ++reader.at > 0 : null))
    reader.skip('the')
    // "dc in joining", "in joining sl st": where the round before was closed and this one begins.
    if (
      (!/^(color|yarn|shade|thread|round|rnd)$/.test(reader.key(1)) && reader.skip('joining')) ||
      (reader.sees('joined') && reader.isA('stitch', 1) && reader.skip('joined'))
    ) {
      if (!reader.skipA('stitch')) readStitch(reader)
      const words = reader.words(reader.span(start))
      return { noun: { kind: 'own', chain: 0, of: 0, words }, base: false }
    }
    // "in top of same st" is the one that was worked in.
    if (SAME.has(reader.key(reader.sees('top', 'of', 'the') ? 3 : 2))) return null
    const ordinal = reader.ordinal()
    const article = reader.sees('of', 'the') || reader.sees('of', 'your') ? 1 : 0
    let chain = 0
    let base = false
    if (ordinal === null && reader.skipA('own-chain')) {
      return { noun: { kind: 'own', chain: 0, of: 0, words: reader.words(reader.span(start)) }, base }
    }
    if (ordinal !== null) {
      // "3rd turning ch": of those that the round begins with.
      const raised = RAISED.test(reader.spelled())
      if (raised && reader.isA('chain', 1) && reader.key(2) !== 'of') {
        reader.at += 2
        const words = reader.words(reader.span(start))
        return { noun: { kind: 'own', chain: ordinal, of: 0, words } as Noun, base }
      }
      // "3rd ch of ch-4", and "3rd of 4-ch" where a number of chains follows.
      const short =
        reader.sees('of') &&
        (reader.peek(1 + article)?.kind === 'chains' ||
          // "in the third of the turning ch".
          reader.isA('own-chain', 1 + article) ||
          (RAISED.test(reader.spelled(1 + article)) && reader.isA('chain', 2 + article)) ||
          // "3d of ch 4".
          (reader.isA('chain', 1 + article) && reader.peek(2 + article)?.kind === 'number') ||
          // "the third of the four chains".
          ((reader.peek(1 + article)?.kind === 'number' || reader.isA('number', 1 + article)) &&
            reader.isA('chain', 2 + article)))
      if (!short) {
        if (!reader.isA('chain') && !ofChain(reader)) return null
        reader.at++
      }
      if (!reader.skip('of')) return null
      chain = ordinal
    } else if (reader.isA('own') || reader.sees('tip', 'of')) {
      // "Tip of first cluster" is its top; the tip of a petal is a place of its own.
      const word = reader.key()
      reader.at++
      base = BASES.has(word)
      if (word === 'top' || word === 'tip' || base) {
        if (!reader.skip('of')) return null
        // "in top of next dc" is in that stitch.
        if (['same', 'next', 'each', 'every', 'any'].includes(reader.key())) return null
      }
    } else return null
    while (reader.skip('the', 'your', 'beg', 'first', 'starting', 'turning', 'same', 'last', 'next', '1st'))
      continue
    // "top of the skipped chs".
    reader.skip('skipped', 'skip')
    // "top of the 3 missed ch".
    if (reader.peek()?.kind === 'number' && reader.key(1) === 'skipped' && reader.isA('chain', 2)) {
      const of = reader.tokens[reader.at]!.value
      reader.at += 3
      return { noun: { kind: 'own', chain, of, words: reader.words(reader.span(start)) } as Noun, base }
    }
    const risen = /^(turning|starting|beginning)$/.test(reader.spelled(1)) && reader.isA('chain', 2)
    if (reader.peek()?.kind === 'number' && risen) {
      const of = reader.tokens[reader.at]!.value
      reader.at += 3
      return { noun: { kind: 'own', chain, of, words: reader.words(reader.span(start)) } as Noun, base }
    }
    const token = reader.peek()
    let of = 0
    if (token?.kind === 'chains') {
      of = token.value
      reader.at++
      if (reader.isA('space')) return null
    } else if (reader.skipA('own-chain')) {
      of = 0
    } else if (reader.skipA('chain')) {
      of = reader.number() ?? 0
      if (reader.isA('space')) return null
    } else if ((token?.kind === 'number' || reader.isA('number')) && reader.isA('chain', 1)) {
      of = reader.number() ?? 0
      reader.at++
    } else if (base && reader.skipA('counted')) {
      // "At base of first point", "at foot of first petal": where the round began.
      of = 0
    } else if (!reader.skipA('stitch') && !readStitch(reader)) return null
    const span = reader.span(start)
    return { noun: { kind: 'own', chain, of, words: reader.words(span) } as Noun, base }
  })
}
