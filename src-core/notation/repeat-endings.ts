/** How the last repeat differs: cut at `**`, put differently, or closed over the first stitch. */
import type { Item, StarItem } from './tree'

/** How often a star runs in all, where it says so; null where it goes around. */
export function starTimes({ repeat, closed }: StarItem): number | null {
  if (!repeat || repeat.amount === null) return null
  return closed || repeat.said === 'in-all' ? repeat.amount : repeat.amount + 1
}

/** Items up to `**`; null where it is not set. */
function upToDouble(items: readonly Item[]): readonly Item[] | null {
  const at = items.findIndex((item) => item.type === 'double')
  return at < 0 ? null : items.slice(0, at)
}

/** Whether an item makes or takes anything. */
export const works = (item: Item): boolean =>
  item.type !== 'note' && item.type !== 'count' && item.type !== 'statement'

/** Whether an item makes stitches or takes places, so that what stands before it is in the middle of the round. */
export const makes = (item: Item): boolean =>
  works(item) && item.type !== 'join' && item.type !== 'colour' && item.type !== 'foundation'

/** Body of the last repeat: cut at `**`, or with its last stitches put differently; null where ** is missing. */
export function lastItems(star: StarItem): readonly Item[] | null {
  const clause = star.repeat
  if (clause?.endAtDouble) return upToDouble(star.items)
  const ending = clause?.ending
  if (!ending) return star.items
  if (ending.mode === 'append') return [...openForEnding(star.items, ending.items), ...ending.items]
  const body = [...star.items]
  const drop = ending.mode === 'omit' ? 1 : Math.max(1, ending.items.filter(works).length)
  for (let dropped = 0; dropped < drop && body.length > 0;) {
    const item = body.pop()!
    if (!works(item)) continue
    dropped++
    const fewer = dropped === drop ? oneFewer(item, ending.items[0]) : null
    if (fewer) body.push(fewer)
  }
  return ending.mode === 'omit' ? body : [...body, ...ending.items]
}

/** "*…, ch 4; rep from * around, ending with ch 2, dc in first sc": the last chain is put differently, not added to. */
function openForEnding(body: readonly Item[], ending: readonly Item[]): readonly Item[] {
  const last = body.findLastIndex(works)
  return body[last]?.type === 'chain' && ending.find(works)?.type === 'chain' ? body.slice(0, last) : body
}

/** Whether an ending closes the round over the stitch where it began: "…, dc in first sc", "…, dc in joining". */
export function endsInFirst(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  const part = last?.type === 'work' ? last.place?.parts[0] : undefined
  return (
    part !== undefined &&
    (part.noun.kind === 'own' || (part.which === 'first' && part.noun.kind === 'stitch'))
  )
}

/** "dc in next 3 dc" without its last dc, where the text takes off a single one. */
function oneFewer(item: Item, off: Item | undefined): Item | null {
  if (item.type !== 'work' || off?.type !== 'work' || (off.count ?? 1) !== 1) return null
  const [part] = item.place?.parts ?? []
  if (!item.place) return (item.count ?? 1) > 1 ? { ...item, count: item.count! - 1 } : null
  if (!part || item.place.parts.length > 1 || part.which !== 'next' || part.count < 2) return null
  return { ...item, place: { ...item.place, parts: [{ ...part, count: part.count - 1 }] } }
}

/** Whether the last stitch of a body is one that would fall on the first stitch of the round again. */
export function endsWithSingle(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  if (last?.type !== 'work' || (last.count ?? 1) !== 1) return false
  const part = last.place?.parts[0]
  return (
    !part ||
    (last.place!.parts.length === 1 &&
      part.which === 'next' &&
      part.count === 1 &&
      part.noun.kind === 'stitch')
  )
}
