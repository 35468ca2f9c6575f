/** Stitches that are drawn together at their tops: in one place a cluster, over several a decrease. */
import { oneOver } from './bunches'
import { makeDecrease, makeStitches } from './stitching'
import type { ItemRunner } from './stitching'
import { placeTargets } from './targets'
import type { Taking } from './taking'
import type { Place, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { report } from './work'
import type { Work } from './work'

/** "dc3tog": a cluster where the place is one, a decrease where it is several. */
export function runTogether(
  work: Work,
  item: WorkItem,
  name: StitchName,
  place: Place,
  taking: Taking,
  run: ItemRunner,
): void {
  const legs = Math.max(2, name.size)
  const under = oneOver(place)
  // "dc4tog over next 2" has two legs in each, "dc2tog over next 4" is worked twice.
  if (name.size > 1 && under > 0 && name.size % under !== 0 && under % name.size !== 0)
    report(work, 'rounds/together-over', item, { legs: name.size, under }, String(item.start))
  const sweep = place.parts.length === 1 && (place.parts[0]!.which === 'each' || place.parts[0]!.each)
  const targets = placeTargets(work, place, taking)
  const swept =
    place.parts[0]!.noun.kind === 'stitch' &&
    place.start === place.parts[0]!.start &&
    place.parts[0]!.which === 'each'
  if (sweep && !place.over && !(name.form === 'decrease' || swept)) {
    for (const target of targets) makeStitches(work, name, item.count ?? 1, [target], item, run)
    return
  }
  if (sweep) {
    // "sc2tog around": pair after pair.
    for (let at = 0; at < targets.length; at += legs)
      makeDecrease(work, name, targets.slice(at, at + legs), item)
    return
  }
  if (place.over || targets.length > 1) {
    const one = place.over || targets.length <= Math.max(legs, 2) || targets.length % legs !== 0
    if (one) makeDecrease(work, name, targets, item)
    else
      for (let at = 0; at < targets.length; at += legs)
        makeDecrease(work, name, targets.slice(at, at + legs), item)
    return
  }
  makeStitches(
    work,
    name.form === 'decrease' ? { ...name, form: 'together' } : name,
    item.count ?? 1,
    targets,
    item,
    run,
  )
}
