/**
 * Long stitches: the hook goes down into an earlier round, and the stitch covers one of the round before. The words
 * tell both in any order ("spike st in next sc, inserting hook in Rnd 1", "long sc in ring over next sc"), or leave out
 * that the next stitch is covered.
 */
import { readRound } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import { plainPlace } from './plain-place'
import type { Definition, GroupItem, Item, Place, PlacePart, RoundsTree, SkipItem, WorkItem } from './tree'
import { isSlip } from './stitch-name'
import { definedKey, readStitch } from './vocabulary'
import { passBelow } from './where'

const GOES = [
  'inserting',
  'insert',
  'going',
  'go',
  'work',
  'working',
  'reaching',
  'drawing',
  'pulling',
  'taking',
]
const DOWN = ['hook', 'the', 'your', 'it', 'down', 'through', 'yarn', 'long', 'lp', 'up']

/** Whether a place lies in an earlier round or in the ring. */
const isDeep = ({ round, noun }: PlacePart): boolean => round !== null || noun.kind === 'ring'

/** "In Rnd 1", "into st of Rnd 2 below", "into the ring", "2 rnds below": how far down the hook goes. */
function readDepth(reader: Reader): Place | null {
  const start = reader.at
  const round = reader.attempt(() => {
    reader.skip('in', 'into', 'through')
    return readRound(reader)
  })
  if (round) {
    passBelow(reader)
    const span = reader.span(start)
    const noun = { kind: 'stitch', name: null } as const
    const place = plainPlace({ which: 'next', each: false, noun, extent: null }, span)
    return { ...place, parts: place.parts.map((part) => ({ ...part, round })) }
  }
  const place = readPlace(reader)
  const [part] = place?.parts ?? []
  return place && part && place.parts.length === 1 && isDeep(part) ? place : null
}

/** "One row below": of the very stitch that is worked; passes it. */
const passRowBelow = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('in', 'into')
    reader.skip('the', 'st')
    reader.skip('in', 'of')
    reader.skip('the', 'one', '1')
    return (reader.skipA('round') && reader.skip('below')) || null
  }) === true

/** ", inserting hook in Rnd 1", "(into Rnd 1)", ", going down into the ring": behind a stitch and the place it stands in. */
const readHook = (reader: Reader): Place | 'here' | null =>
  reader.attempt(() => {
    const comma = reader.skip(',')
    const bracket = !comma && reader.skip('(', '[')
    const goes = reader.skip(...GOES)
    if ((comma || bracket) && !goes && !(bracket && reader.isA('into'))) return null
    while (reader.skip(...DOWN)) continue
    const depth = passRowBelow(reader) ? 'here' : readDepth(reader)
    if (!depth || (bracket && !reader.skip(')', ']'))) return null
    return depth
  })

/** "Over next sc" behind the place in an earlier round: the stitch that is covered. */
const readCovered = (reader: Reader): Place | null =>
  reader.attempt(() => {
    const place = reader.sees('over') ? readPlace(reader) : null
    const [part] = place?.parts ?? []
    const one = part && place!.parts.length === 1 && part.noun.kind === 'stitch' && part.which === 'next'
    return one && !isDeep(part) ? { ...place!, over: false } : null
  })

/** A long stitch and what it covers: it goes into the one, and the other is passed. */
function cover(work: WorkItem, depth: Place, covered: Place, end: number): GroupItem {
  const { start, line, column } = work
  const { start: from, end: to, line: row, column: at } = covered
  const span = { start: from, end: to, line: row, column: at }
  const passed: SkipItem = { type: 'skip', place: covered, unworked: false, covers: true, ...span }
  return {
    ...{
      type: 'group',
      bracket: '',
      items: [{ ...work, place: depth }, passed],
    },
    ...{ place: null, times: null, around: false, toCorner: false, lastCount: 0 },
    ...{ start, end, line, column },
  }
}

/** A stitch with where its hook goes and what it covers, where the words behind it tell so; else null. */
export function readLong(reader: Reader, work: WorkItem): Item | null {
  const [part] = work.place?.parts ?? []
  if (isSlip(work.stitch) || (work.place && work.place.parts.length > 1)) return null
  // "Long sc inserting hook in sc of Rnd 1", "long sc (into Rnd 1) in next sc".
  if (!work.place || !part) {
    const place = readHook(reader)
    if (!place || place === 'here') return null
    const covered = reader.attempt(() => {
      const found = readPlace(reader)
      return found?.parts.every(({ noun }) => noun.kind === 'stitch') ? found : null
    })
    const { end } = reader.tokens[reader.at - 1]!
    return covered ? cover(work, place, covered, end) : { ...work, place, end }
  }
  if (isDeep(part)) {
    const covered = readCovered(reader)
    return covered && cover(work, work.place, covered, covered.end)
  }
  const depth = readHook(reader)
  const { end } = reader.tokens[reader.at - 1]!
  if (!depth) return null
  const onStitch = part.noun.kind !== 'row-end'
  const single = onStitch && part.count === 1 && !part.each && (work.count ?? 1) === 1
  return depth === 'here' || !single ? { ...work, end } : cover(work, depth, work.place, end)
}

/** "Insert hook in sc of Rnd 1 below next sc and work a long sc": the place stands before the stitch. */
export const readHookFirst = (reader: Reader): WorkItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.skip('insert', 'inserting') || !reader.skip('hook')) return null
    const place = readDepth(reader)
    if (!place) return null
    reader.skip(',')
    reader.skip('and')
    if (!reader.skip('work', 'make', 'made')) return null
    while (reader.skip('a', 'an', 'the', 'one', '1')) continue
    const stitch = readStitch(reader)
    return stitch && { type: 'work', count: 1, stitch, place, ...reader.span(start) }
  })
}

/** Where a stitch goes: as it is told there, or as the text explains the stitch ("spike sc: sc in next st 2 rnds below"). */
function placeOf({ place, stitch }: WorkItem, definitions: readonly Definition[]): Place | null {
  if (place || stitch.form === 'plain') return place
  const key = definedKey(stitch.name)
  const items = definitions.find(({ keys }) => keys.includes(key))?.items ?? []
  const [only, ...others] = items.filter(({ type }) => type !== 'note')
  return only?.type === 'work' && others.length === 0 ? only.place : null
}

/** How many stitches one covers that is worked into an earlier round, where nothing tells; 0 where it is no such stitch. */
function coversAtMost(item: Item, definitions: readonly Definition[]): number {
  if (item.type !== 'work' || isSlip(item.stitch)) return 0
  const place = placeOf(item, definitions)
  const [part, ...others] = place?.parts ?? []
  if (!part || others.length > 0) return 0
  const { noun, round, each, which } = part
  const stitch = noun.kind === 'stitch' || (noun.kind === 'within' && noun.what === 'stitch')
  return round !== null && stitch && !each && which !== 'same' ? (item.count ?? 1) * part.count : 0
}

/** Words that say that a stitch is covered, though not that it is passed. */
const SAYS = /\b(long|spike|below|beneath|over|under)\b/i

/** The items of a round with every long stitch covering the one behind it; null where there are none, or all is told. */
export function coverNext(
  items: readonly Item[],
  { text, definitions }: Pick<RoundsTree, 'text' | 'definitions'>,
): { readonly items: readonly Item[]; readonly said: boolean } | null {
  let found = false
  let said = false
  const inner = (list: readonly Item[]): readonly Item[] =>
    list.flatMap((item, at): readonly Item[] => {
      if (item.type === 'star' || item.type === 'group') return [{ ...item, items: inner(item.items) }]
      const passes = (other: Item | undefined) => other?.type === 'skip'
      const behind = list.slice(at + 1, at + 3).find(({ type }) => type !== 'note')
      const count = coversAtMost(item, definitions)
      if (count === 0 || passes(behind) || passes(list[at - 1])) return [item]
      found = true
      said ||= SAYS.test(text.slice(item.start, item.end))
      const noun = { kind: 'stitch', name: null } as const
      const [next] = plainPlace({ which: 'next', each: false, noun, extent: null }, spanOfItem(item)).parts
      const place = { parts: [{ ...next!, count }], over: false, ...spanOfItem(item) }
      return [item, { type: 'skip', place, unworked: false, covers: true, ...spanOfItem(item) }]
    })
  const covered = inner(items)
  return found ? { items: covered, said } : null
}

const spanOfItem = ({ start, end, line, column }: Item) => ({ start, end, line, column })
