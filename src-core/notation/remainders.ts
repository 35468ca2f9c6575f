/** What is left at the end of a round, and told before it is worked: "one stitch remains, in which make 1 sc". */
import { plainPlace } from './plain-place'
import type { Reader } from './reader'
import type { Place, WorkItem } from './tree'
import { passThatRemain } from './that-remain'
import { readStitch } from './vocabulary'

const LEADS = [
  'there',
  'you',
  "you'll",
  'you’ll',
  'have',
  'are',
  'is',
  'will',
  'should',
  'this',
  'that',
  'which',
  'now',
  'just',
  'only',
]
const OF_THEM = ['it', 'this', 'that', 'them', 'these', 'those']

/** "One stitch remains", "you have 2 sts left", "this leaves 2 sts": how many; passes it with the sign behind it. */
const readLeft = (reader: Reader): number | null =>
  reader.attempt(() => {
    while (reader.skip(...LEADS)) continue
    const leaves = /^leav(e|es|ing)$/.test(reader.spelled()) && ++reader.at > 0
    if (leaves) reader.skip('you')
    reader.skip('just', 'only')
    const count = reader.number()
    if (count === null || (!reader.skipA('stitch') && !readStitch(reader))) return null
    while (reader.skip('are', 'is', 'still', 'will', 'now')) continue
    if (!passThatRemain(reader) && !leaves) return null
    reader.skip('over')
    while (reader.skip(',', ';', ':', '.', '–', '—', '-', 'and', 'so', 'now', 'then')) continue
    return count
  })

/** "In which", "in each of them", "in it"; whether each of several is meant, null where it is none of these. */
const readPointed = (reader: Reader): { readonly each: boolean } | null =>
  reader.attempt(() => {
    if (!reader.skip('in', 'into', 'on')) return null
    const each = reader.skip('each', 'both')
    const of = each && reader.skip('of')
    if (reader.skip('which')) return { each }
    if (!reader.skip(...OF_THEM)) return each && !of ? { each } : null
    if (!reader.skipA('stitch')) reader.skip('one', 'last')
    return { each }
  })

/** "One stitch remains, in which make one single crochet", "two sts are left: work 1 sc in each of them". */
export const readRemainder = (reader: Reader): WorkItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    const left = readLeft(reader)
    if (left === null) return null
    const from = reader.at
    const before = readPointed(reader)
    const verb = (): void => {
      while (reader.skip('you', 'we') || reader.skipA('verb')) continue
    }
    verb()
    const count = reader.number() ?? (reader.skip('a', 'an') ? 1 : null)
    const stitch = readStitch(reader)
    const pointed = before ?? (stitch && readPointed(reader))
    // "3 sc in it" of several is told of one of them, which one nobody knows.
    if (!stitch || !pointed || (left > 1 && !pointed.each)) return null
    const noun = { kind: 'stitch', name: null } as const
    const place: Place = plainPlace({ which: 'next', each: left > 1, noun, extent: null }, reader.span(from))
    const parts = place.parts.map((part) => ({ ...part, count: left }))
    return { type: 'work', count, stitch, place: { ...place, parts }, ...reader.span(start) }
  })
}

/** Whether what is left is told at the cursor, and worked right behind; no count of the round. */
export const remainderAhead = (reader: Reader): boolean => {
  const { at } = reader
  const found = readRemainder(reader) !== null
  reader.at = at
  return found
}
