/** Names of the parts of a pattern: "First Motif", "1ST MOTIF" and "Motif 1" are one. */
import type { Reader } from './reader'
import { wordOf } from './words'

const ORDINALS = [
  '',
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
]
const ROMAN = ['', 'i', 'ii', 'iii', 'iv', 'v', 'vi']

/** "1st" → "first"; null for what is no ordinal in figures, or a high one. */
const inWords = (word: string): string | null =>
  /^\d+(st|nd|rd|th)$/.test(word) ? (ORDINALS[parseInt(word, 10)] ?? null) : null

/** "1", "one" and "i" → 1; 0 for anything else. */
function numberOf(word: string): number {
  if (/^\d{1,2}$/.test(word)) return Number(word)
  const { kinds, value } = wordOf(word)
  return kinds.has('number') ? value : Math.max(0, ROMAN.indexOf(word))
}

/** The name of a part in the one form under which it is looked for. */
export function partName(name: string): string {
  const words = name
    .toLowerCase()
    .split(/\s+/)
    .map((word) => inWords(word) ?? word)
  const [first = '', last = '', ...more] = words
  const nth = more.length === 0 && wordOf(first).kinds.has('motif') ? ORDINALS[numberOf(last)] : undefined
  return nth ? `${nth} ${first}` : words.join(' ')
}

/** Words of the longest name that is looked for. */
const MOST_WORDS = 4

/** Passes the longest name at the cursor that `known` knows, and gives it. */
export function passPartName(reader: Reader, known: (name: string) => boolean): string | null {
  for (let length = MOST_WORDS; length > 0; length--) {
    const words = Array.from({ length }, (_, ahead) => reader.spelled(ahead))
    const name = words.includes('') ? null : partName(words.join(' '))
    if (name === null || !known(name)) continue
    reader.at += length
    return name
  }
  return null
}

/** The name of one motif of several that a text makes. */
export const isOneOfSeveral = (name: string): boolean =>
  /^(first|second|third|fourth|fifth|next|last) (motif|square|hexagon|flower|block|wheel|medallion)$/.test(
    partName(name),
  )

/** Whether two parts are pieces of one kind: "First Hexie", "Next Hexie". */
export function isSibling(one: string | null, other: string): boolean {
  const [first = [], second = []] = [one?.split(' '), other.split(' ')]
  return one !== other && first.length > 1 && second.length > 1 && kindOf(first) === kindOf(second)
}

/** "dot" of "next dots". */
const kindOf = (words: readonly string[]): string => (words.at(-1) ?? '').replace(/s$/, '')

const WHICH = [
  'prev',
  'previous',
  'last',
  'first',
  'other',
  'neighbor',
  'finished',
  'joined',
  'adjacent',
  'any',
  'a',
]

/** "previous dot", "the finished hexie" in a part of such pieces: another one of them; passes it. */
export const passSiblingKind = (reader: Reader): boolean =>
  reader.attempt(() => {
    const kind = kindOf(reader.part?.split(' ') ?? [])
    if (kind === '' || ![...reader.parts].some((name) => isSibling(reader.part, name))) return null
    if (!reader.skip(...WHICH)) return null
    while (reader.skip(...WHICH)) continue
    return reader.spelled().replace(/s$/, '') === kind && ++reader.at > 0 ? true : null
  }) === true
