/** Repeats of which each lap works up to a corner and into it. */
import type { AroundPart } from './fits'
import { lapOf } from './laps'
import type { Lap } from './laps'
import { TRAVELLED, cornerPlaces } from './source'
import type { Source } from './source'
import type { ItemRunner } from './stitching'
import { placeParts } from './tree'
import type { Item, PlacePart } from './tree'
import { baseSource } from './work'
import type { Work } from './work'

const namesCorner = ({ noun, extent }: PlacePart): boolean =>
  noun.kind === 'corner' || noun.kind === 'within' || noun.kind === 'landmark' || extent?.to === 'corner'

/** How often a lap goes that works up to a corner and into it: as often as corners are there. Null for any other. */
export function cornersAhead(work: Work, { after, source }: Lap, body: readonly Item[]): number | null {
  const base = baseSource(work)
  // Of stitches that share a place, each might be a corner: only words tell.
  if (base?.total('space') === 0 && ![...placeParts(body)].some(namesCorner)) return null
  const worked = base && source?.state === base.state ? after.sources.get(base.state) : null
  if (!base?.state.ordered || !worked) return null
  const free = ({ used }: Source) =>
    [...cornerPlaces(base)].filter((index) => used[index]! <= TRAVELLED).length
  const each = free(base) - free(worked)
  return each > 0 && free(base) % each === 0 ? free(base) / each : null
}

const TAKES_NOTHING = new Set<Item['type']>(['join', 'note', 'count', 'statement'])

/** "*sc in each st to next corner, 3 sc in corner*": behind the last corner the stretch goes on to where the round began. */
export function runBehindCorners(work: Work, part: AroundPart, body: readonly Item[], run: ItemRunner): void {
  const leads = body.findIndex(
    (item) =>
      (item.type === 'group' && item.toCorner) ||
      [...placeParts([item])].some(({ extent }) => extent?.to === 'corner'),
  )
  if (leads < 0 || work.open || part.lastCount > 0) return
  if (!part.rest.every(({ type }) => TAKES_NOTHING.has(type))) return
  const lead = body.slice(0, leads + 1)
  const { after, stitches, spaces } = lapOf(work, lead, run)
  const over = ({ sources }: Work) => [...sources.values()].reduce((sum, source) => sum + source.over, 0)
  if (stitches + spaces.size === 0 || after.open || over(after) > over(work)) return
  run(work, lead)
  // What the last stretch takes is not in the text, so it is never written out.
  work.repeats.delete(part.item)
}
