/** A round worked again with other numbers: "As Rnd 2, but with 7 dc instead of 3", "having ch 3 between shells instead of ch 1". */
import { readRound } from './nouns'
import type { Reader } from './reader'
import type { ChainItem, Item, Place, PlacePart, RoundChange } from './tree'
import { placeParts } from './tree'
import { isSlip } from './stitch-name'
import { readStitch } from './vocabulary'

type Amount = Pick<RoundChange, 'stitch' | 'to'>

/** "7 dc", "dc 7", "ch 3", "5 ch", "ch-3", "loops of 6 ch". */
function readAmountOf(reader: Reader): Amount | null {
  return reader.attempt(() => {
    if (reader.skipA('space')) reader.skip('of')
    if (reader.peek()?.kind === 'chains') {
      const to = reader.tokens[reader.at++]!.value
      reader.skipA('space')
      return { stitch: 'ch' as const, to }
    }
    const before = reader.number()
    if (reader.skipA('chain')) {
      const to = before ?? reader.number()
      reader.skipA('space')
      return to === null ? null : { stitch: 'ch' as const, to }
    }
    const stitch = readStitch(reader)
    if (!stitch) return null
    const to = before ?? reader.number()
    return to === null ? null : { stitch, to }
  })
}

/** Words between the new number and the old one: "between shells", "in each corner", "on every side". */
const LONGEST_WHERE = 7
const WHERE = new Set(['between', 'in', 'on', 'at', 'along', 'over', 'into', 'for', 'of', 'to', 'around'])

function passWhere(reader: Reader): void {
  const start = reader.at
  if (!reader.seesAny(WHERE)) return
  while (reader.at - start < LONGEST_WHERE && reader.peek()) {
    if (reader.sees('instead') || /^[,.;()[\]]$/.test(reader.key()) || reader.sees('in', 'place')) return
    reader.at++
  }
}

const sameStitch = (one: Amount['stitch'], other: Amount['stitch']): boolean =>
  one === 'ch' || other === 'ch'
    ? one === other
    : one.stitch === other.stitch && one.form === other.form && one.post === other.post

/** "instead of 3", "instead of ch 1", "in place of 5 dc": the number before. */
function readInstead(reader: Reader, { stitch }: Amount): number | null {
  return reader.attempt(() => {
    if (!reader.skipAll('instead', 'of') && !reader.skipAll('in', 'place', 'of')) return null
    reader.skip('the')
    const named = readAmountOf(reader)
    if (named) return sameStitch(named.stitch, stitch) ? named.to : null
    return reader.number()
  })
}

/** Words between the verb and the round that is worked into: "each d.c. round the stem of a d.c. of". */
const LONGEST_INTO = 14

/** "…, taking each dc round the stem of a dc of the 4th round", "but working into Rnd 4": another round; passes it. */
const readOtherRound = (reader: Reader): RoundChange | null =>
  reader.attempt(() => {
    const start = reader.at
    while (reader.skip(',', ';', 'but', 'and', 'except', 'that')) continue
    if (!reader.skipA('verb') && !reader.skip('taking')) return null
    for (let words = 0; words < LONGEST_INTO && reader.peek(); words++) {
      if (/^[,;.:()[\]*]$/.test(reader.key())) return null
      const into = reader.sees('of') || reader.sees('into') || reader.sees('in')
      const round = into ? readRound(reader) : null
      if (round && 'number' in round)
        return { stitch: 'ch' as const, to: 0, from: null, round: round.number, ...reader.span(start) }
      reader.at++
    }
    return null
  })

/** "but with 7 dc instead of 3", "having ch 3 between shells instead of ch 1": one change; passes it. */
const readOneChange = (reader: Reader): RoundChange | null =>
  reader.attempt((): RoundChange | null => {
    reader.skip(',', ';')
    const but = reader.skip('but', 'except', 'only', 'and')
    reader.skip('that', 'now')
    const told = reader.skip('with', 'having', 'have', 'using', 'do') || reader.skipA('verb')
    if (!but && !told) return null
    reader.skip('that', 'now', 'there', 'are')
    const start = reader.at
    const amount = readAmountOf(reader)
    if (!amount) return null
    passWhere(reader)
    const from = readInstead(reader, amount)
    // "with 5 ch between the dc" says enough; of stitches it takes the number that there was.
    const between = amount.stitch === 'ch' && /\bbetween\b/i.test(reader.words(reader.span(start)))
    if (from === null && !between) return null
    if (from !== null) passWhere(reader)
    return { ...amount, from, ...reader.span(start) }
  })

/** What is told behind "as Rnd 2" to be other than there; passes it. */
export function readChanges(reader: Reader): readonly RoundChange[] {
  const changes: RoundChange[] = []
  for (;;) {
    const change = readOneChange(reader) ?? readOtherRound(reader)
    if (!change) return changes
    changes.push(change)
  }
}

const isChain = (item: Item): item is ChainItem => item.type === 'chain'

/** The chains that a round begins with: no work stands before them. */
const beginningOf = (items: readonly Item[]): ChainItem | null => {
  const found = items.find(
    (item) =>
      isChain(item) ||
      ['star', 'group', 'placed'].includes(item.type) ||
      (item.type === 'work' && !isSlip(item.stitch)),
  )
  return found && isChain(found) ? found : null
}

/** How many chains part the stitches of a round, where it is always the same number. */
function partingChains(items: readonly Item[], beginning: ChainItem | null): number | null {
  const found = new Set<number>()
  const look = (list: readonly Item[]) => {
    for (const item of list) {
      if (isChain(item) && item !== beginning) found.add(item.count)
      if ('items' in item) look(item.items)
    }
  }
  look(items)
  return found.size === 1 ? [...found][0]! : null
}

/** The items of a round, those that go into an older one into another; null where none does. */
function inRound(items: readonly Item[], number: number): readonly Item[] | null {
  let found = false
  const one = (item: Item): Item => {
    const told = 'place' in item && item.place ? item.place.parts.some(({ round }) => round !== null) : false
    const scoped = item.type === 'scope' && item.round !== null
    found ||= told || scoped
    const placed =
      told && 'place' in item
        ? {
            ...item,
            place: {
              ...item.place!,
              parts: item.place!.parts.map((part) => (part.round ? { ...part, round: { number } } : part)),
            },
          }
        : scoped
          ? { ...item, round: { number } }
          : item
    return 'items' in placed ? { ...placed, items: placed.items.map(one) } : placed
  }
  const after = items.map(one)
  return found ? after : null
}

/** The items of a round with one thing changed; null where there is nothing of the kind. */
function changed(items: readonly Item[], change: RoundChange): readonly Item[] | null {
  if (change.round !== undefined) return inRound(items, change.round)
  const beginning = beginningOf(items)
  const from = change.from ?? partingChains(items, beginning)
  if (from === null) return null
  const { stitch, to } = change
  let found = 0
  const inPart = (part: PlacePart): PlacePart => {
    const { noun } = part
    // What the round before was called in the round that is worked again need not be its name now.
    if (stitch === 'ch' && noun.kind === 'space' && noun.chains === from)
      return { ...part, noun: { ...noun, chains: null } }
    if (stitch === 'ch' && noun.kind === 'own' && beginning && noun.of === beginning.count && extra > 0)
      return { ...part, noun: { ...noun, of: noun.of + to - from } }
    return part
  }
  const inPlace = (place: Place): Place => ({ ...place, parts: place.parts.map(inPart) })
  const at = beginning ? items.indexOf(beginning) + 1 : 0
  const statement = items[at]
  const extra = statement?.type === 'statement' && statement.chains === from ? from : 0
  const one = (item: Item): Item => {
    if (isChain(item)) {
      if (stitch !== 'ch') return item
      if (item === beginning) return extra > 0 ? { ...item, count: item.count + to - from } : item
      if (item.count !== from) return item
      found++
      return { ...item, count: to }
    }
    if (item === statement && item.type === 'statement' && extra > 0 && stitch === 'ch')
      return { ...item, chains: to }
    if (item.type === 'work' && stitch !== 'ch' && sameStitch(item.stitch, stitch)) {
      const [part] = item.place?.parts ?? []
      const several = part && (part.which === 'next' || part.which === 'first') && part.count === from
      if (several && from > 1 && (item.count ?? 1) === 1) {
        found++
        return {
          ...item,
          place: { ...item.place!, parts: [{ ...part, count: to }, ...item.place!.parts.slice(1)] },
        }
      }
      if ((item.count ?? 1) === from) {
        found++
        return { ...item, count: to }
      }
    }
    const placed = 'place' in item && item.place ? { ...item, place: inPlace(item.place) } : item
    return 'items' in placed ? { ...placed, items: placed.items.map(one) } : placed
  }
  const after = items.map(one)
  return found > 0 ? after : null
}

/** A round as it is worked again; the change that found nothing to change, where there is one. */
export function withChanges(
  items: readonly Item[],
  changes: readonly RoundChange[],
): { readonly items: readonly Item[]; readonly open: RoundChange | null } {
  let now = items
  for (const change of changes) {
    const next = changed(now, change)
    if (!next) return { items: now, open: change }
    now = next
  }
  return { items: now, open: null }
}

/** What a round does over and over, and how it ends: the rest of another one is worked that way. */
export function completing(items: readonly Item[]): readonly Item[] {
  const at = items.findIndex(
    (item) =>
      item.type === 'star' ||
      (item.type === 'group' && (item.around || (item.times !== null && item.place === null))) ||
      [...placeParts([item])].some(({ which }) => which === 'each'),
  )
  return items.slice(Math.max(0, at)).map((item): Item => {
    if (item.type === 'star' && item.repeat?.amount != null)
      return { ...item, closed: false, repeat: { ...item.repeat, amount: null, said: 'plain' } }
    return item.type === 'group' && item.times !== null && !item.place
      ? { ...item, times: null, around: true }
      : item
  })
}
