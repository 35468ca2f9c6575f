/** Places that stand in another motif. */
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { Noun } from './tree'

/** What a motif may be called. */
export const MOTIFS = new Set([
  ...[
    'motif',
    'motifs',
    'square',
    'squares',
    'hexagon',
    'hexagons',
    'octagon',
    'circle',
    'flower',
    'flowers',
  ],
  ...['triangle', 'granny', 'piece', 'block', 'medallion', 'snowflake', 'wheel', 'strip', 'section'],
  ...['neighbor', 'neighbors', 'neighbour', 'neighbours'],
])

const ELSEWHERE = new Set(['corresponding', 'matching', 'adjacent', 'adjoining', 'opposite', 'parallel'])

/** "corresponding ch-3 sp of previous motif", "matching corner sp on adjacent square": not in this motif. */
export function readElsewhere(reader: Reader): Noun | null {
  // Most places name no other motif: looked for first, since places are read for every stitch.
  let named = false
  for (let ahead = 0; ahead < 12 && !named; ahead++)
    named = ELSEWHERE.has(reader.key(ahead)) || reader.seesAny(MOTIFS, ahead)
  if (!named) return null
  return reader.attempt(() => {
    reader.skip('the')
    const matching = reader.skip(...ELSEWHERE)
    if (!matching) while (reader.skip('next', 'same', 'first', 'any', 'last')) continue
    // "in joined ch-3 sp of neighbor": others meet there already.
    reader.skip('joined')
    const noun = readNoun(reader)
    if (!noun || noun.kind === 'ring') return null
    const of = reader.attempt(() => {
      if (!reader.skip('of', 'on', 'from')) return null
      reader.skip('the')
      const which = reader.skip(
        ...[
          'previous',
          'prev',
          'first',
          'second',
          'other',
          'another',
          'adjacent',
          'adjoining',
          'neighboring',
        ],
        ...[
          'neighbouring',
          'last',
          'completed',
          'finished',
          'next',
          'joined',
          'corresponding',
          'opposite',
          'each',
        ],
      )
      if (!which && !reader.seesAny(MOTIFS)) return null
      reader.skip('completed', 'finished', 'joined', 'granny')
      return reader.seesAny(MOTIFS) ? reader.skip(reader.key()) || null : null
    })
    return of || (matching && noun.kind !== 'stitch') || (matching && of) ? noun : null
  })
}
