/** The counts that a text states of a round: what goes on from one that could not be counted. */
import type { Reader } from './reader'
import { spaceKey } from './state'
import type { CountEntry, CountItem, Item } from './tree'

/** All counts among the items of a round. */
export function* countItems(items: readonly Item[]): Generator<CountItem> {
  for (const item of items) {
    if (item.type === 'count') yield item
    else if (item.type === 'group' || item.type === 'placed') yield* countItems(item.items)
  }
}

/** How many of something are more stitches than are told: shells, groups. */
const MANY = new Set(['shell', 'v-stitch', 'picot', 'increase', 'decrease'])

const ofStitches = ({ noun }: CountEntry): boolean =>
  noun.kind === 'stitch' && !MANY.has(noun.name?.form ?? '') && noun.name?.stitch !== 'sl st'

/** "24 sts", "12 FPdc and 12 dc": the stitches of one list; the first figure without a name is the sum of all. */
function stitchesIn(count: CountItem): number | null {
  const entries = count.entries.filter(ofStitches)
  const sum = entries.find(({ noun }) => noun.kind === 'stitch' && noun.name === null)
  if (entries.length === 0) return null
  return sum?.count ?? entries.reduce((all, entry) => all + entry.count, 0)
}

/** The stitches that the text says the round has. */
export function statedStitches(items: readonly Item[]): number | null {
  let stated: number | null = null
  for (const count of countItems(items)) stated = stitchesIn(count) ?? stated
  return stated
}

/** The spaces that the text says the round has, by their chains. */
export function statedSpaces(items: readonly Item[]): Record<string, number> {
  const spaces: Record<string, number> = {}
  for (const { entries } of countItems(items))
    for (const { noun, count } of entries)
      if (noun.kind === 'space' && noun.chains !== null) spaces[spaceKey(noun.chains)] = count
  return spaces
}

/** Words that say what is done or where: a list that has one of them is no list of counts. */
export const DOING = new Set([
  ...[
    'in',
    'into',
    'next',
    'same',
    'from',
    'to',
    'over',
    'under',
    'between',
    'behind',
    'then',
    'instead',
    'until',
  ],
  ...[
    'work',
    'rep',
    'join',
    'turn',
    'skip',
    'fasten',
    'change',
    'each',
    'using',
    'working',
    'last',
    'first',
    'times',
    'more',
  ],
])

/** "Rnds 5 and 6: … [30 sts; 36 sts]": of as many counts of the same as there are rounds, each is of its own. */
export function countsInTurn(
  items: readonly Item[],
  numbers: readonly [number, number] | null,
): readonly Item[] {
  const rounds = numbers ? numbers[1] - numbers[0] + 1 : 1
  if (rounds < 2) return items
  const named = ({ words }: CountEntry): string => words.replace(/^\S+\s*/, '')
  return items.map((item) => {
    if (item.type !== 'count' || item.entries.length !== rounds) return item
    const [first] = item.entries
    if (
      item.entries.some(
        (entry) => entry.inTurn || entry.round !== undefined || !['', named(first!)].includes(named(entry)),
      )
    )
      return item
    return { ...item, entries: item.entries.map((entry, at) => ({ ...entry, round: numbers![0] + at })) }
  })
}

/** A sign that ends counts; "44 tr; 60 tr" goes on. */
export const endsCounts = ({ tokens }: Reader, at: number): boolean =>
  /^[.!?([]$/.test(tokens[at]!.key) || (tokens[at]!.key === ';' && tokens[at + 1]?.kind !== 'number')

/** "(2) half shells"; passes it. */
export const passHalf = (reader: Reader): boolean =>
  reader.attempt(() =>
    reader.skip('half') && (reader.skip('shell') || reader.skipA('group')) ? true : null,
  ) === true
