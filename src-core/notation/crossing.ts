/** Stitches that cross, by their explanation: "Crossed dc: skip next st, dc in next st, dc in skipped st". */
import { oneOver } from './bunches'
import { definitionOf, makeStitches } from './stitching'
import type { ItemRunner } from './stitching'
import { takingFor } from './taking'
import { placeTargets } from './targets'
import type { Item, WorkItem } from './tree'
import type { Work } from './work'

/** How far along the round a step leads: "skip 2 sts" 2, "dc in 2nd st" 2, back into what was skipped none. */
const leads = (item: Item): number =>
  item.type !== 'work' && item.type !== 'skip'
    ? 0
    : (item.place?.parts ?? []).reduce((sum, part) => sum + (part.unworked ? 0 : Math.max(1, part.count)), 0)

/** Something is passed over first: "skip next st, …", "dc in 2nd st, dc in the st before it". */
const passesFirst = (item: Item | undefined): boolean =>
  item?.type === 'skip' ? !item.unworked : item?.type === 'work' && item.place?.parts[0]?.which === 'nth'

/** The steps of such a stitch, where it is worked on its own or over as many stitches as it takes; null for any other. */
function crossingSteps(work: Work, { stitch, place }: WorkItem): readonly Item[] | null {
  if (stitch.form === 'plain' || work.here) return null
  const steps = (definitionOf(work, stitch)?.items ?? []).filter(
    ({ type }) => type === 'skip' || type === 'work' || type === 'chain',
  )
  if (!passesFirst(steps[0])) return null
  const worked = steps.filter((item) => item.type === 'work')
  const back = worked.some((item) => item.place?.parts.some(({ unworked }) => unworked))
  if (!back || worked.length < 2 || worked.some((item) => item.place === null)) return null
  if (place === null) return steps
  const [part, ...more] = place.parts
  const taken = steps.reduce((sum, item) => sum + leads(item), 0)
  const whole = part!.which === 'next' && part!.noun.kind === 'stitch' && part!.count === taken
  return whole && more.length === 0 ? steps : null
}

const GROUPS: ReadonlySet<string> = new Set(['shell', 'v-stitch'])

/** Stitches that go over several at once: those that cross, and "shell over next 5 sts", which stands in the middle one of them. */
export function runOver(work: Work, item: WorkItem, run: ItemRunner): boolean {
  const { stitch, place, count } = item
  const steps = crossingSteps(work, item)
  for (let at = 0; steps && at < (count ?? 1); at++) run(work, steps)
  if (steps) return true
  const over = place && GROUPS.has(stitch.form) && (count ?? 1) === 1 ? oneOver(place) : 0
  if (over < 2 || /s$/i.test(stitch.name)) return false
  const targets = placeTargets(work, place!, takingFor(stitch))
  const middle = targets[Math.floor((targets.length - 1) / 2)]!
  makeStitches(work, stitch, 1, [middle], item, run)
  work.last = targets.at(-1)!
  return true
}
