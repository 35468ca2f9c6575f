/** Repeats whose last lap ends in the stitch where the round began. */
import { LIMITS } from './limits'
import { TAKES_NOTHING, runLaps, skipRest } from './fits'
import type { AroundPart, Laps } from './fits'
import { lapOf, unitOf } from './laps'
import { endsInFirst, endsWithSingle, works } from './repeat-endings'
import type { ItemRunner } from './stitching'
import { countItems } from './told-counts'
import { placeParts } from './tree'
import type { Item, StarItem, WorkItem } from './tree'
import { baseSource, report } from './work'
import type { Work } from './work'

/** What of a kind one lap takes, the last one, and how much there is. */
export interface Sum {
  readonly kind: string
  readonly unit: number
  readonly end: number
  readonly available: number
}

/** Chains that are a loop and no height. */
const LOOP = 3

/**
 * "Sc in first loop, *ch 5, sc in next loop; rep from * around, join": every lap leads from one loop to the next, and
 * the last one back to the first stitch. Its body without that stitch, where it is told nowhere; else null.
 */
export function leadsBack(
  work: Work,
  { rest }: AroundPart,
  { body, last }: Laps,
  star: StarItem,
  times: number,
): readonly Item[] | null {
  if (last !== body || star.repeat?.amount !== null || star.repeat.ending || star.repeat.endAtDouble)
    return null
  const made = body.filter(works)
  const [chain] = made
  const end = made.at(-1)
  const standing = work.elements.filter((element) => element.standing)
  const begins = standing.length === 1 && work.elements.at(-1) === standing[0]
  const loops = chain?.type === 'chain' && chain.count >= LOOP && end?.type === 'work' && endsWithSpace(end)
  const behind = rest.find(works)
  if (!begins || !loops || behind?.type !== 'join') return null
  const told = [...countItems(work.node.items)].flatMap(({ entries }) =>
    entries.filter(({ noun }) => noun.kind === 'space').map(({ count }) => count),
  )
  if (told.includes(times)) return null
  if (!told.includes(times + 1))
    report(work, 'rounds/last-repeat-not-said', star.repeat, {}, String(star.start))
  return body.slice(0, body.lastIndexOf(end!))
}

/** One stitch in the next loop. */
const endsWithSpace = ({ count, place }: WorkItem): boolean => {
  const [part, ...others] = place?.parts ?? []
  const next = part?.which === 'next' && part.count === 1 && part.noun.kind === 'space'
  return next && others.length === 0 && (count ?? 1) === 1
}

/** Endings that close the round over the stitch where it began; whether it is one of them. */
export function closesEarly(
  work: Work,
  part: AroundPart,
  { body, last }: Laps,
  { kind, unit, end, available }: Sum,
  star: StarItem | null,
  run: ItemRunner,
): boolean {
  const clause = star?.repeat?.ending
  const source = baseSource(work)
  if (!source) return false
  const finish = (times: number, items: readonly Item[], written: boolean) => {
    runLaps(work, part, body, items, Math.min(LIMITS.repeats, times), run)
    // What the last one spans is not in the text, so it is never written out.
    if (!written) work.repeats.delete(part.item)
    return true
  }
  // A round that begins with a loop of chains hangs from the stitch where the one before was joined.
  const hangs = kind === 'st' && work.first === null && clause != null
  const skips = body.filter((item) => item.type === 'skip')
  // "Sc in 5th sc from last" passes four of them.
  const passed = [...placeParts(body)].reduce(
    (sum, { which, count }) => sum + (which === 'nth' ? count - 1 : 0),
    0,
  )
  const skipped = unitOf(lapOf(work, skips, run), kind) + (skips.length === 0 && kind === 'st' ? passed : 0)
  const behindFirst = (available - 1) % unit
  if (hangs && clause.mode === 'append' && endsInFirst(clause.items) && skipped > 0)
    if (behindFirst === skipped && available > unit) {
      finish((available - 1 - behindFirst) / unit, last, false)
      skipRest(source, kind)
      return true
    }
  if (available >= end && (available - end) % unit === 0) return false
  const toFirst = (available - 1 - end) / unit + 1
  const closes = hangs && (clause.mode === 'replace' || endsInFirst(clause.items))
  if (closes && Number.isInteger(toFirst) && toFirst >= 1) {
    finish(toFirst, last, true)
    skipRest(source, kind)
    return true
  }
  const over = ((available % unit) + unit) % unit
  const single = kind === 'st' && over === unit - 1 && last === body && endsWithSingle(body)
  const begun = work.first?.place.kind === 'stitch'
  // "(ch 3, skip a dc, dc in next dc) around, ch 3, join": the last loop is told by itself.
  if (
    kind === 'st' &&
    last === body &&
    begun &&
    over > 0 &&
    over === skipped &&
    available > unit &&
    body[0]?.type === 'chain' &&
    part.rest.find(works)?.type === 'chain'
  ) {
    finish((available - over) / unit, last, true)
    skipRest(source, kind)
    return true
  }
  if (single && work.first !== null && available > 0) {
    if (!part.rest.some((item) => item.type === 'join' && item.ofLast))
      report(work, 'rounds/last-repeat-not-said', star?.repeat ?? part.item, {}, String(part.item.start))
    return finish((available - over) / unit + 1, body.slice(0, body.findLastIndex(works)), false)
  }
  // "Ch 4, *skip next dc, dc in next dc, ch 1; rep from * around, join": the last chain spans what each one skips first.
  const loops = kind === 'st' && last === body && body[0]?.type === 'skip' && body.at(-1)?.type === 'chain'
  if (
    loops &&
    begun &&
    over === skipped &&
    over > 0 &&
    available > unit &&
    part.rest.every(({ type }) => TAKES_NOTHING.has(type))
  ) {
    finish((available - over) / unit, last, false)
    skipRest(source, kind)
    return true
  }
  if (clause?.mode === 'append' && over === skipped && over > 0 && available > unit) {
    // "…, ending with ch 1, hdc in first sc": the last loop spans what the others skip.
    finish((available - over) / unit, last, false)
    skipRest(source, kind)
    return true
  }
  return false
}
