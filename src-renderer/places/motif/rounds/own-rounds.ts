/** A project whose motif is still to be written, laid out as what it is to become. */
import type { Settings } from '../../../../shared-types/bridge'
import type { MeasuredSizes, Project } from '../../../../shared-types/project'
import type { Made } from '../../../start/own-motif'
import { OPEN_YARNS } from '../../../../src-core/page/named-yarns'
import { firstSizes } from '../../../../src-core/layout/first-sizes'
import { ownProject } from '../../../start/own-motif'

/** `sizes`: what was entered of the motif itself, which its rounds are then to come out at. */
export function ownRoundsProject(settings: Settings, made: Made, sizes?: MeasuredSizes): Project {
  const project = ownProject(
    settings,
    { outline: 'petals', petals: 6, lead: firstSizes(settings.units).motif.petals },
    made,
  )
  const [motif] = project.motifs ?? []
  if (!motif) return project
  return {
    ...project,
    motifs: [{ id: motif.id, name: 'Flower', kind: 'rounds', rounds: [], ...(sizes && { measured: sizes }) }],
    // Which colours there are, the rounds will tell; which yarns they are in, nobody knows yet.
    yarns: project.yarns?.map((yarn, i) => ({ ...yarn, name: OPEN_YARNS[i] ?? yarn.name })),
    colourways: project.colourways?.map((way) => (way.motif === motif.id ? { ...way, yarns: {} } : way)),
  }
}
