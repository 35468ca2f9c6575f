/** A project as a plan that nothing has been worked of yet. */
import type { Project, Yarn } from '../../shared-types/project'

/** A yarn without what was weighed or counted while the work was made; what is on hand stays as it was counted. */
function begunAnew(yarn: Yarn): Yarn {
  const { left: _left, onHandAt: _at, ...rest } = yarn
  return rest
}

/** The project without its marks, and without what was weighed and counted meanwhile. */
export function asNewPlan(project: Project): Project {
  const { made: _made, joined: _joined, ...rest } = project
  return { ...rest, ...(rest.yarns && { yarns: rest.yarns.map(begunAnew) }) }
}
