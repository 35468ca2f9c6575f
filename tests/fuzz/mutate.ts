/**
 * Structure-aware mutation: an example is changed where it has something, by what could stand there: huge and tiny
 * numbers, ids of the same file, lists a thousand times as long, parts of other examples.
 */
import type { Random } from '../../src-core/units/random'

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }
type Path = readonly (string | number)[]

/** Numbers that have broken programs before, and some that are only large. */
export const NUMBERS: readonly number[] = [
  ...[0, -0, -1, -3, 0.5, 1, 2, 3, 5, 7, 11, 24, 25, 99, 100, 101, 500, 999, 1000, 1001, 10_000, 100_000],
  ...[1e-300, 5e-324, 1e-9, 0.1 + 0.2, 1e6, 1e9, 2 ** 31, 2 ** 32, 2 ** 53, 1e15, 1e21, 1e300],
  ...[Number.MAX_VALUE, -1e300, -1e-9, 360, 361, 1e7 / 3],
]

/** Texts that are more than texts to somebody. */
export const TEXTS: readonly string[] = [
  ...['', ' ', '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'm1', 'y1', 'c1', '1,1', '1,left'],
  ...[
    '2,2',
    '1,1+1,2+2,1+2,2',
    '=1+1',
    '\n',
    '\u0000',
    '\u202e',
    '\ud800',
    '🌼',
    'ß',
    'é',
    '"',
    "'",
    '</script>',
  ],
  ...['../../etc/passwd', 'NaN', 'Infinity', 'undefined', 'null', '%s%n', '\\', '-1', '1e999', '2026-02-30'],
]

/** How long a list grows at most, and a text in characters. */
const COPIES = [2, 3, 10, 60, 300, 1000, 4000]
const LENGTHS = [10, 1000, 100_000]

const isList = (value: unknown): value is readonly Json[] => Array.isArray(value)
const isRecord = (value: unknown): value is Record<string, Json> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** One of them. */
export const oneOf = <Item>(items: readonly Item[], random: Random): Item =>
  items[random.below(items.length)]!

/** Paths of everything in a document, itself left out. */
function pathsOf(value: Json, above: Path = []): Path[] {
  if (isList(value)) return value.flatMap((inner, i) => [[...above, i], ...pathsOf(inner, [...above, i])])
  if (!isRecord(value)) return []
  return Object.entries(value).flatMap(([key, inner]) => [
    [...above, key],
    ...pathsOf(inner, [...above, key]),
  ])
}

const at = (document: Json, path: Path): Json | undefined =>
  path.reduce<Json | undefined>(
    (value, key) => (value as Readonly<Record<string | number, Json>> | undefined)?.[key],
    document,
  )

/** A copy with another value at a path; undefined takes it out. */
function withValue(document: Json, path: Path, value: Json | undefined): Json {
  const [key, ...rest] = path
  if (key === undefined) return value ?? null
  if (isList(document)) {
    const made = document.map((inner, i) => (i === key ? withValue(inner, rest, value) : inner))
    return rest.length === 0 && value === undefined ? made.filter((_, i) => i !== key) : made
  }
  const entries = Object.entries(document as Record<string, Json>)
  // `fromEntries` makes an own key of "__proto__", as JSON does.
  return Object.fromEntries(
    entries.flatMap(([name, inner]): [string, Json][] => {
      if (name !== key) return [[name, inner]]
      return rest.length === 0 && value === undefined ? [] : [[name, withValue(inner, rest, value)]]
    }),
  )
}

/** So many of a list's entries, those with an id under ids of their own. */
function manyOf(list: readonly Json[], count: number): Json[] {
  return Array.from({ length: count }, (_, i) => {
    const entry = list[i % list.length]!
    if (i < list.length || !isRecord(entry) || typeof entry.id !== 'string') return entry
    return { ...entry, id: `${entry.id}-${i}` }
  })
}

/** As many keys, each with a value that stands there. */
function manyKeys(record: Record<string, Json>, count: number): Json {
  const values = Object.values(record)
  const across = Math.ceil(Math.sqrt(count))
  return Object.fromEntries(
    Array.from({ length: count }, (_, i) => [
      i % 2 ? `${Math.floor(i / across) + 1},${(i % across) + 1}` : `k${i}`,
      values[i % values.length]!,
    ]),
  )
}

function changedValue(value: Json, texts: readonly string[], random: Random): Json | undefined {
  const dice = random.below(10)
  if (dice === 0) return undefined
  if (dice === 1) return oneOf<Json>([null, true, false, [], {}, 0, '', oneOf(NUMBERS, random)], random)
  if (typeof value === 'number') {
    if (dice < 4) return value * oneOf([2, 10, 100, 0.1, -1, 1.0001], random)
    return oneOf(NUMBERS, random)
  }
  if (typeof value === 'string') {
    if (dice < 4) return oneOf(texts, random)
    if (dice < 6) return oneOf(TEXTS, random)
    if (dice < 7) return value.repeat(Math.ceil(oneOf(LENGTHS, random) / Math.max(1, value.length)))
    return changedText(value, random)
  }
  if (isList(value)) {
    if (value.length === 0 || dice < 3) return []
    if (dice < 5) return random.shuffled(value)
    return manyOf(value, oneOf(COPIES, random))
  }
  if (isRecord(value)) {
    if (dice < 7 || Object.keys(value).length === 0) return { ...value, [oneOf(texts, random)]: 1 }
    return manyKeys(value, oneOf(COPIES, random))
  }
  return oneOf<Json>([true, false, 1, 'true'], random)
}

/** A text with a number in it changed, a word twice, missing, or taken from elsewhere in it. */
export function changedText(text: string, random: Random): string {
  const words = text.split(/(?<=\s)/)
  const place = random.below(words.length)
  const figures = [...text.matchAll(/\d+/g)]
  if (figures.length > 0 && random.below(2) === 0) {
    const { 0: figure, index } = oneOf(figures, random)
    const other = String(Math.abs(Math.trunc(oneOf(NUMBERS, random))) || figure)
    return text.slice(0, index) + other + text.slice(index + figure.length)
  }
  switch (random.below(4)) {
    case 0:
      return [...words.slice(0, place), ...words.slice(place + 1)].join('')
    case 1:
      return [...words.slice(0, place), words[place]!, ...words.slice(place)].join('')
    case 2:
      return [...words.slice(0, place), oneOf(words, random), ...words.slice(place + 1)].join('')
    default: {
      const from = random.below(words.length)
      return [...words.slice(0, place), ...words.slice(from)].join('')
    }
  }
}

/** A project from one of the examples, changed in one to five places; some parts come from another one. */
export function mutated(examples: readonly Json[], random: Random): Json {
  let document = oneOf(examples, random)
  const texts = pathsOf(document).flatMap((path) => {
    const value = at(document, path)
    return typeof value === 'string' && value.length < 60 ? [value] : []
  })
  for (let changes = 1 + random.below(5); changes > 0; changes--) {
    const paths = pathsOf(document)
    if (paths.length === 0) break
    const path = oneOf(paths, random)
    if (random.below(8) === 0) {
      const other = oneOf(examples, random)
      const alike = pathsOf(other).filter(([first]) => first === path[0])
      if (alike.length > 0) {
        const from = oneOf(alike, random)
        document = withValue(
          document,
          from.length <= path.length ? path.slice(0, from.length) : path,
          at(other, from),
        )
        continue
      }
    }
    document = withValue(document, path, changedValue(at(document, path) ?? null, texts, random))
  }
  return document
}
