/** Places that stand in another motif. */
import { readNoun } from './nouns'
import { isSibling, passPartName, passSiblingKind } from './part-names'
import type { Reader } from './reader'
import { DOING } from './told-counts'
import type { Noun } from './tree'

/** Which motif is meant. */
const WHICH_ONE = [
  ...['prev', 'first', 'second', 'third', 'other', 'another', 'neighboring', 'neighbouring', 'last', 'made'],
  ...['finished', 'next', 'joined', 'each'],
]

/** "In the join between two motifs", "into the joining of …": where others meet. */
const readMeeting = (reader: Reader): Noun | null => {
  const at = reader.at
  if (!reader.skip('join', 'joining', 'seam', 'place', 'point')) return null
  return { kind: 'own', chain: 0, of: 0, words: reader.words(reader.span(at)) }
}

/** "(Where) two large motifs meet", "the motifs are joined"; passes it. */
function passMeet(reader: Reader): boolean | null {
  let motif = false
  for (let words = 0; words < 10 && reader.peek()?.kind === 'word'; words++) {
    if (reader.skip('meet', 'join', 'joined', 'touch', 'meeting')) return motif || null
    motif ||= reader.isA('motif')
    reader.at++
  }
  return null
}

/** "(ch-3 lp) of a petal of (previous flower)"; passes it. */
const passOfGroup = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('a', 'any', 'the', 'next', 'same', 'first', 'one', 'other', 'corresponding')) continue
    const group = reader.skipA('group') || reader.skipA('counted') || reader.skipA('landmark')
    return (group && reader.skip('of', 'on', 'from')) || null
  }) === true

/** "Motif", "motif 1"; passes it. */
const passMotif = (reader: Reader): boolean => {
  const named = reader.skipA('motif')
  if (named && /^[.,;)]?$/.test(reader.key(1))) reader.number()
  return named
}

/** The motif in hand. */
const THIS_ONE = ['current', 'this', 'present', 'new', 'own', 'your', 'same', 'working']

/** A word before "motif" that says which one, how many or of what kind; passes it. */
function saysWhich(reader: Reader): boolean {
  if (reader.skipA('elsewhere') || reader.skip(...WHICH_ONE) || reader.number() !== null) return true
  if (reader.ordinal() !== null) return true
  if (reader.skip('of', 'the', 'a', 'any', 'all', 'granny')) return true
  if (THIS_ONE.includes(reader.spelled())) return false
  const plain = reader.peek()?.kind === 'word' && reader.peek()!.kinds.size === 0 && !reader.seesAny(DOING)
  if (plain) reader.at++
  return plain
}

/** "sl st to the centre of the shamrock", "to base of bud": a piece of the work that is no stitch or space. */
const readPiece = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    const to = reader.key(-1) === 'to'
    reader.skip('the')
    const from = reader.at
    if (!reader.skip('center', 'base', 'bottom', 'side', 'edge') || !reader.skip('of')) return null
    while (reader.skip('the', 'your', 'each', 'first', 'last', 'finished')) continue
    // "Join B to center of any petal": of the round before.
    if (reader.peek()?.kind !== 'word' || reader.sees('any') || reader.sees('next')) return null
    const part = reader.skip('leaf', 'flower', 'stem', 'heart')
    if (!part && !to) return null
    if (!part && !reader.skipA('motif') && reader.peek()!.kinds.size > 0) return null
    while (reader.peek()?.kind === 'word' && reader.peek()!.kinds.size === 0) reader.at++
    return { kind: 'own', chain: 0, of: 0, words: reader.words(reader.span(from)) }
  })

/** "(next 2ch sp) of second square" within that part: of the motif in hand; passes it. */
export const passOfThisPart = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.part === null || !reader.skip('of', 'on')) return null
    reader.skip('the')
    return passPartName(reader, (name) => name === reader.part) && true
  }) === true

/** "corresponding ch-3 sp of previous motif", "matching corner sp on adjacent square": not in this motif. */
export function readElsewhere(reader: Reader): Noun | null {
  if (['to', 'in', 'into'].includes(reader.key(-1))) {
    const piece = readPiece(reader)
    if (piece) return piece
  }
  // Most places name no other motif: looked for first, since places are read for every stitch.
  let named = reader.part !== null && [...reader.parts].some((name) => isSibling(reader.part, name))
  for (let ahead = 0; ahead < 12 && !named; ahead++)
    named = reader.isA('elsewhere', ahead) || reader.isA('motif', ahead)
  if (!named) return null
  return reader.attempt(() => {
    reader.skip('the', 'a')
    const matching = reader.skipA('elsewhere')
    if (!matching) while (reader.skip('next', 'same', 'first', 'any', 'last', 'center')) continue
    // "in joined ch-3 sp of neighbor": others meet there already.
    while (reader.skip('joined', 'unworked', 'unjoined')) continue
    const noun = readNoun(reader) ?? readMeeting(reader)
    if (!noun || noun.kind === 'ring' || passOfThisPart(reader)) return null
    const of = reader.attempt(() => {
      if (reader.skip('where')) return passMeet(reader)
      if (!reader.skip('of', 'on', 'from', 'between')) return null
      passOfGroup(reader)
      reader.skip('the')
      // "Of First Hexie" in the part that makes the next one.
      if (passPartName(reader, (name) => reader.parts.has(name) && isSibling(reader.part, name))) return true
      if (passSiblingKind(reader)) return true
      // "of two large motifs", "of one of the finished small squares".
      for (let words = 0; words < 6 && !reader.isA('motif'); words++) if (!saysWhich(reader)) return null
      return passMotif(reader) || null
    })
    return of || (matching && noun.kind !== 'stitch') || (matching && of) ? noun : null
  })
}
