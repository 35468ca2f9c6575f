/** Projects that are too large to plan: told before any work is begun. */
import type { Finding } from '../../shared-types/finding'
import type { Project } from '../../shared-types/project'
import { finding, spelledValue } from '../findings/finding'
import { PROJECT_LIMITS } from '../limits'
import { formatNumber } from '../units/format'

/** A finding for each limit that a project passes; with one of them nothing of it is planned. */
export const tooLarge = (project: Project): Finding[] =>
  PROJECT_LIMITS.flatMap(({ what, most, count }) => {
    const received = count(project)
    const values = { received: spelledValue(`${formatNumber(received)} ${what}`), most: formatNumber(most) }
    return received > most ? [finding('file/too-large', 'the project', values)] : []
  })
