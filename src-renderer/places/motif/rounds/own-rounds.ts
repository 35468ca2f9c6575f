/** A project whose motif is still to be written, laid out towards a first wish. */
import type { Settings } from '../../../../shared-types/bridge'
import type { Project } from '../../../../shared-types/project'
import { FIRST_WISH, ownProject } from '../../../start/own-motif'

export function ownRoundsProject(settings: Settings): Project {
  const project = ownProject(
    settings,
    { outline: 'petals', petals: 6, lead: 80, second: 56 },
    { ...FIRST_WISH },
  )
  const [motif] = project.motifs ?? []
  return motif
    ? { ...project, motifs: [{ id: motif.id, name: 'Flower', kind: 'rounds', rounds: [] }] }
    : project
}
