/** Stitches that cross, by their explanation: "Crossed dc: skip next st, dc in next st, dc in skipped st". */
import { definitionOf } from './stitching'
import type { Item, WorkItem } from './tree'
import type { Work } from './work'

/** How many places a stitch of the explanation takes. */
const placesOf = ({ place }: WorkItem): number =>
  (place?.parts ?? []).reduce((sum, part) => sum + Math.max(1, part.count), 0) || 1

/** The steps of such a stitch, where it is worked on its own or over as many stitches as it takes; null for any other. */
export function crossingSteps(work: Work, { stitch, place }: WorkItem): readonly Item[] | null {
  if (stitch.form === 'plain' || work.here) return null
  const steps = (definitionOf(work, stitch)?.items ?? []).filter(
    ({ type }) => type === 'skip' || type === 'work' || type === 'chain',
  )
  const [first, ...others] = steps
  if (first?.type !== 'skip' || first.unworked) return null
  const worked = others.filter((item) => item.type === 'work')
  const back = worked.some((item) => item.place?.parts.some(({ unworked }) => unworked))
  if (!back || worked.length < 2 || worked.some((item) => item.place === null)) return null
  if (place === null) return steps
  const [part, ...more] = place.parts
  const taken = worked.reduce((sum, item) => sum + placesOf(item), 0)
  const whole = part!.which === 'next' && part!.noun.kind === 'stitch' && part!.count === taken
  return whole && more.length === 0 ? steps : null
}
