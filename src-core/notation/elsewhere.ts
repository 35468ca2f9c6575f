/** Places that stand in another motif. */
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { Noun } from './tree'

/** Which motif is meant. */
const WHICH_ONE = [
  ...['prev', 'first', 'second', 'third', 'other', 'another', 'neighboring', 'neighbouring', 'last', 'made'],
  ...['finished', 'next', 'joined', 'each'],
]

/** "sl st to the centre of the shamrock", "to base of bud": a piece of the work that is no stitch or space. */
const readPiece = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    const to = reader.key(-1) === 'to'
    reader.skip('the')
    const from = reader.at
    if (!reader.skip('center', 'base', 'bottom', 'side', 'edge') || !reader.skip('of')) return null
    while (reader.skip('the', 'your', 'each', 'first', 'last', 'finished')) continue
    if (reader.peek()?.kind !== 'word') return null
    const part = reader.skip('leaf', 'flower', 'stem', 'heart')
    if (!part && !to) return null
    if (!part && !reader.skipA('motif') && reader.peek()!.kinds.size > 0) return null
    while (reader.peek()?.kind === 'word' && reader.peek()!.kinds.size === 0) reader.at++
    return { kind: 'own', chain: 0, of: 0, words: reader.words(reader.span(from)) }
  })

/** "(next 2ch sp) of second square" within that part: of the motif in hand; passes it. */
export const passOfThisPart = (reader: Reader): boolean =>
  reader.attempt(() => {
    const name = reader.part?.split(' ') ?? []
    if (name.length === 0 || !reader.skip('of', 'on')) return null
    reader.skip('the')
    if (!name.every((word, ahead) => reader.spelled(ahead) === word)) return null
    reader.at += name.length
    return true
  }) === true

/** "corresponding ch-3 sp of previous motif", "matching corner sp on adjacent square": not in this motif. */
export function readElsewhere(reader: Reader): Noun | null {
  if (['to', 'in', 'into'].includes(reader.key(-1))) {
    const piece = readPiece(reader)
    if (piece) return piece
  }
  // Most places name no other motif: looked for first, since places are read for every stitch.
  let named = false
  for (let ahead = 0; ahead < 12 && !named; ahead++)
    named = reader.isA('elsewhere', ahead) || reader.isA('motif', ahead)
  if (!named) return null
  return reader.attempt(() => {
    reader.skip('the', 'a')
    const matching = reader.skipA('elsewhere')
    if (!matching) while (reader.skip('next', 'same', 'first', 'any', 'last')) continue
    // "in joined ch-3 sp of neighbor": others meet there already.
    reader.skip('joined')
    const noun = readNoun(reader)
    if (!noun || noun.kind === 'ring' || passOfThisPart(reader)) return null
    const of = reader.attempt(() => {
      if (!reader.skip('of', 'on', 'from')) return null
      reader.skip('the')
      const which = reader.skipA('elsewhere') || reader.skip(...WHICH_ONE)
      if (!which && !reader.isA('motif')) return null
      reader.skip('made', 'finished', 'joined', 'granny')
      return reader.skipA('motif') || null
    })
    return of || (matching && noun.kind !== 'stitch') || (matching && of) ? noun : null
  })
}
