/** Filet told in words: what the text says of its spaces and blocks, and rows that list them ("3 sp, 1 bl, 3 sp"). */
import type { StitchKey } from '../stitches/table'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import { NO_NAME } from './stitch-name'
import type { Token } from './tokens'
import type { WorkItem } from './tree'
import { readStitch } from './vocabulary'

export type Square = 'space' | 'block'

/** The squares of a text. */
export interface Filet {
  /** Chains over a space, and stitches between those on both sides of a block. */
  readonly chains: number
  readonly stitch: StitchKey
  /** How the text calls them besides their usual names, in lower case. */
  readonly names: ReadonlyMap<string, Square>
}

/** What explains a square: its tokens, and what it tells. */
interface Told {
  readonly heading: Heading
  readonly square: Square
  readonly names: readonly string[]
  readonly begins: boolean
  readonly chains: number
  readonly skipped: number
  readonly stitch: StitchKey | null
}

const USUAL: ReadonlyMap<string, Square> = new Map<string, Square>([
  ...['sp', 'space', 'mesh', 'open mesh', 'open square', 'open sp'].map((name) => [name, 'space'] as const),
  ...[
    'bl',
    'blk',
    'block',
    'solid mesh',
    'solid square',
    'closed mesh',
    'closed square',
    'filled square',
  ].map((name) => [name, 'block'] as const),
])
const BEGINS = ['beg', 'first']
const ARTICLES = ['a', 'an', 'the', 'each', 'every', 'one', '1']

const single = (name: string): string => name.replace(/(mesh)es$/, '$1').replace(/s$/, '')

/** The square by its name at the cursor, of one word or two; passes it. */
function readName(reader: Reader, names: ReadonlyMap<string, Square>): Square | null {
  for (const length of [2, 1]) {
    const words = Array.from({ length }, (_, ahead) => reader.spelled(ahead))
    if (words.some((word) => word === '')) continue
    const name = words.join(' ')
    const square = names.get(name) ?? names.get(single(name)) ?? USUAL.get(name) ?? USUAL.get(single(name))
    if (!square) continue
    reader.at += length
    return square
  }
  return null
}

/** "over a space", "over another block", "over next 2 bl": what lies below; passes it. */
const passOver = (reader: Reader, names: ReadonlyMap<string, Square>): void => {
  reader.attempt(() => {
    if (!reader.skip('over', 'above', 'on')) return null
    while (reader.skip(...ARTICLES, 'another', 'next', 'other') || reader.number() !== null) continue
    return readName(reader, names)
  })
}

const NONE: ReadonlyMap<string, Square> = new Map()

/** How many chains, and how many places are passed over them: "ch 2, skip 2 sts", "2 ch., miss 2". */
const CHAINS = /\bch(?:ain)?s?\.?[ -]?(\d)\b|\b(\d)[ -]?ch(?:ain)?s?\b/i
const SKIPS = /\b(?:skip|sk|miss)(?:ping)? (?:the )?(?:next )?(\d)\b/i

/** "Space (sp): ch 2, skip 2 sts, dc in next dc", "A block over a space is 2 dc in the space, dc in next dc". */
function readTold(reader: Reader): Told | null {
  const from = reader.at
  return reader.attempt(() => {
    reader.skip('for', 'to')
    if (reader.isA('verb')) reader.at++
    while (reader.skip(...ARTICLES)) continue
    const begins = reader.skip(...BEGINS)
    const at = reader.at
    const square = readName(reader, NONE)
    if (!square) return null
    const names = [reader.words(reader.span(at)).toLowerCase()]
    if (reader.skip('(')) {
      while (reader.peek() && !reader.sees(')') && !reader.peek()!.first) {
        if (reader.peek()!.kind === 'word') names.push(single(reader.spelled()))
        reader.at++
      }
      if (!reader.skip(')')) return null
    }
    // "Sp. = 2 ch., miss 2, 1 tr. into next tr."
    if (reader.sees('.') && /^[=:—–-]$/.test(reader.key(1))) reader.at++
    passOver(reader, NONE)
    if (!reader.skip(':', '=', '–', '—', '-', 'is', 'means')) return null
    const to = reader.at
    const end = lineFrom(reader.tokens, to)
    const words = reader.text.slice(reader.tokens[to]?.start ?? 0, reader.tokens[end - 1]?.end ?? 0)
    const chains = CHAINS.exec(words)
    const span = reader.span(from)
    const label = names[0]!
    return {
      heading: { kind: 'definition', from, to, numbers: null, label, span, worked: true, square },
      ...{ square, names, begins },
      chains: Number(chains?.[1] ?? chains?.[2] ?? 0),
      skipped: Number(SKIPS.exec(words)?.[1] ?? 0),
      stitch: tallestIn(reader, to, end),
    }
  })
}

/** Words that explain a square at most, and those that are looked back through in a row. */
const LONGEST = 80

/** First token behind the sentence, or of the next line. */
function lineFrom(tokens: readonly Token[], from: number): number {
  let at = from
  while (at < tokens.length && at - from < LONGEST && (at === from || !tokens[at]!.first)) {
    const stops = tokens[at]!.key === '.' && (tokens[at + 1]?.spaced ?? true)
    if (stops && /^\p{Lu}/u.test(tokens[at + 1]?.text ?? 'A')) break
    at++
  }
  return at
}

/** The stitch that the words work; null where they work none that stands upright. */
function tallestIn(reader: Reader, from: number, to: number): StitchKey | null {
  const outer = reader.at
  let stitch: StitchKey | null = null
  for (reader.at = from; reader.at < to && !stitch;) {
    const at = reader.at
    const name = readStitch(reader)
    const upright = name?.form === 'plain' && !['ch', 'sl st', 'sc', null].includes(name.stitch)
    if (upright) stitch = name.stitch
    reader.at = Math.max(at + 1, reader.at)
  }
  reader.at = outer
  return stitch
}

const ENDS_SENTENCE = /^[.;:)!]$/

/** What a text says of its squares before its rows; null where it explains no spaces and blocks. */
export function findFilet(
  reader: Reader,
  headings: readonly Heading[],
): { readonly filet: Filet; readonly headings: readonly Heading[] } | null {
  const rows = headings.find(({ kind, numbers }) => kind === 'round' && numbers !== null)
  const told: Told[] = []
  for (let at = 0; at < (rows?.from ?? 0); at++) {
    const opens = reader.tokens[at]!.first || ENDS_SENTENCE.test(reader.tokens[at - 1]?.key ?? '.')
    reader.at = at
    const found = opens ? readTold(reader) : null
    if (!found) continue
    told.push(found)
    at = found.heading.to - 1
  }
  const space = told.find(({ square, begins, chains }) => square === 'space' && !begins && chains > 0)
  const stitch = space?.stitch ?? null
  const blocks = told.some((each) => each.square === 'block' && each.stitch === stitch)
  if (!space || !stitch || !blocks || (space.skipped > 0 && space.skipped !== space.chains)) return null
  const names = new Map(told.flatMap((each) => each.names.map((name) => [name, each.square] as const)))
  const own = told.map(({ heading }) => heading)
  const taken = new Set(
    own.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)),
  )
  const others = headings.filter(({ from }) => !taken.has(from))
  return {
    filet: { chains: space.chains, stitch, names },
    headings: [...others, ...own].sort((a, b) => a.from - b.from),
  }
}

const ENDS = /^([.,;:)\]*]|\*\*|and|then|ending|turn|)$/

/** "(2 blks)", "(3 sps, 2 bls)" behind what makes them: in a bracket that nothing repeats. */
function isBracketed(reader: Reader, start: number): boolean {
  let open = start - 1
  const lists = (at: number) => /^(?:[,&]|and|\p{L}{1,9}|\d+)$/u.test(reader.tokens[at]?.key ?? '')
  while (start - open < LONGEST && lists(open)) open--
  if (!/^[([]$/.test(reader.tokens[open]?.key ?? '')) return false
  let close = reader.at
  while (close - start < LONGEST && lists(close)) close++
  if (!/^[)\]]$/.test(reader.tokens[close]?.key ?? '')) return false
  const behind = reader.tokens[close + 1]
  return (
    !behind ||
    !(
      behind.kind === 'number' ||
      /^(?:twice|once|around|across|x|×|rep|\*)$/.test(behind.is) ||
      behind.kinds.has('number')
    )
  )
}

/** Whether squares alone, told in a sentence of its own behind the work of a row, say what it comes to: "…; turn. 7 sp." */
function isTally(reader: Reader, start: number, filet: Filet): boolean {
  if (isBracketed(reader, start)) return true
  if (!/^[.—–-]$/.test(reader.tokens[start - 1]?.key ?? '')) return false
  const lists = reader.sees(',') || reader.sees('and')
  if (lists) return false
  for (let at = start - 2; at >= Math.max(0, start - LONGEST); at--) {
    const { kinds, key } = reader.tokens[at]!
    if (kinds.has('round')) return false
    if (filet.names.has(single(key)) || USUAL.has(single(key)) || kinds.has('where')) return true
  }
  return false
}

/** "3 sp", "1 bl", "beginning sp", "2 blocks over spaces": squares of a row. */
export function readSquares(reader: Reader): WorkItem | null {
  const { filet } = reader
  if (!filet) return null
  const start = reader.at
  return reader.attempt((): WorkItem | null => {
    if (reader.isA('verb')) reader.at++
    const count = reader.number() ?? (reader.skip('a', 'an', 'another') ? 1 : null)
    reader.skip('more')
    const begins = reader.skip(...BEGINS)
    const at = reader.at
    const square = readName(reader, filet.names)
    if (!square || (count === null && !begins)) return null
    const named = reader.words(reader.span(at))
    passOver(reader, filet.names)
    // "3 sp., 1 bl."
    if (reader.sees('.') && /^[,;]$/.test(reader.key(1))) reader.at++
    const next = reader.peek()
    const ends = !next || next.first || next.kind === 'number' || ENDS.test(next.is)
    if (!ends || isTally(reader, start, filet)) return null
    const span = reader.span(start)
    const stitch = { ...NO_NAME, form: 'special', stitch: filet.stitch, name: named, ...span } as const
    return { type: 'work', count: count ?? 1, stitch, place: null, square, ...span }
  })
}

/** Whether the words up to a token list squares, and tell no count: "Ch 3, turn. 2 sp, 3 bl, 2 sp." */
export function listsSquares(reader: Reader, from: number, to: number): boolean {
  if (!reader.filet) return false
  const outer = reader.at
  reader.at = from
  let listed = 0
  while (reader.at < to && readSquares(reader)) {
    listed++
    while (reader.skip(',', 'and', ';')) continue
  }
  const whole = reader.at >= to
  reader.at = outer
  return whole && listed > 1
}
