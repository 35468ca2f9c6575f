/** Measures and weights that were taken with another hook: what remembers them, and what forgets. */
import type { Motif, Project, StitchGauge } from '../../../shared-types/project'
import { MEASURES } from '../../../src-core/motif/ruling'
import { otherHookOf, sizesOf, TAKEN } from '../../../src-core/motif/taken-with'
import type { Taken } from '../../../src-core/motif/taken-with'
import { settled } from '../../../src-core/settled'
import { withSizesBy, withWeightBy } from '../../../src-core/ways/scale'
import { isUsable } from '../../../src-core/units/usable'

const ALL_MEASURES = [...new Set(Object.values(MEASURES).flat())]

const isTaken: Readonly<Record<Taken, (motif: Motif) => boolean>> = {
  sizes: (motif) => ALL_MEASURES.some((key) => isUsable(sizesOf(motif)[key])),
  weight: (motif) =>
    isUsable(motif.weighed?.grams) ||
    Object.keys(motif.unravelled ?? {}).length > 0 ||
    (motif.kind === 'measured' && (motif.slots ?? []).some(({ grams }) => isUsable(grams))),
}

/** A motif with something of it taken with the hook that it has. */
export function takenAnew<Kind extends Motif>(motif: Kind, taken: Taken): Kind {
  const kept = { ...motif }
  delete kept[TAKEN[taken]]
  if (taken === 'weight') delete kept.weightWorkedOut
  return kept
}

/** A motif whose gauge was `before`, with what was measured and weighed then remembered while its hook is another one. */
export function asTakenBefore<Kind extends Motif>(motif: Kind, before: StitchGauge): Kind {
  const next = { ...motif }
  for (const taken of Object.keys(TAKEN) as Taken[]) {
    const name = TAKEN[taken]
    const own = next[name] ?? before
    if (own.hook === undefined || own.hook === next.gauge?.hook || !isTaken[taken](next)) delete next[name]
    else next[name] = own
  }
  return next
}

const update = (project: Project, id: string, edit: (motif: Motif) => Motif): Project => ({
  ...project,
  motifs: project.motifs?.map((motif) => (motif.id === id ? edit(motif) : motif)),
})

/** Takes what the gauge gives for measures and weights of another hook, until they are taken again. */
export function takeEstimate(project: Project, id: string): Project {
  const { terms, motifs } = settled(project)
  const settledMotif = motifs.find((motif) => motif.id === id)
  if (!settledMotif) return project
  const [sizes, weight] = (['sizes', 'weight'] as const).map((taken) =>
    otherHookOf(settledMotif, taken, terms),
  )
  return update(project, id, (motif) => {
    const sized = sizes ? withSizesBy(motif, sizes.factor) : motif
    return weight ? withWeightBy(sized, weight.factor) : sized
  })
}

/** Says that what was measured and weighed was so with the hook that the motif has. */
export const takenWithHook = (project: Project, id: string): Project =>
  update(project, id, (motif) => takenAnew(takenAnew(motif, 'sizes'), 'weight'))

/** An edit of a weight, after which it is as weighed. */
export const weighedAnew = (project: Project, id: string): Project =>
  update(project, id, (motif) => takenAnew(motif, 'weight'))
