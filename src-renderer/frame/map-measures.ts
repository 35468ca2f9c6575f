/** What stands on the dimension lines of each kind of project, and what typing there changes. Lengths in mm. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { APPLIQUE } from '../../src-core/layout/applique/constants'
import { GARLAND_LIMITS } from '../../src-core/layout/garland/constants'
import { appliqueOf, patchPanel } from '../state/edits/applique'
import { garlandOf, isSwagged, patchCord, patchSwags, swagFollows } from '../state/edits/garland'
import { fitted } from '../state/resize'

export interface Measure {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  /** Told in mm (or inches) rather than as a span. */
  readonly isShort?: boolean
  /** Null where the number follows from others and cannot be typed. */
  readonly edit: ((project: Project, mm: number) => Project) | null
  /** The name of the change, for undo. */
  readonly change: string
}

export interface Measures {
  readonly across: Measure
  readonly down: Measure
}

/** The measures of a plan; `from` is the plan that a change starts from. */
export function measuresOf(project: Project, plan: Plan, from: Plan): Measures {
  if (plan.panel) return panelMeasures(project, plan)
  if (plan.garland) return garlandMeasures(project, plan)
  const limits = { least: 10, most: 20000, change: 'change the size' }
  const { width, height } = from.size
  return {
    across: {
      ...limits,
      label: 'Width of the blanket',
      value: plan.size.width,
      edit: (before, mm) => fitted(before, from, { width: mm, height }),
    },
    down: {
      ...limits,
      label: 'Height of the blanket',
      value: plan.size.height,
      edit: (before, mm) => fitted(before, from, { width, height: mm }),
    },
  }
}

function panelMeasures(project: Project, { size }: Plan): Measures {
  const limits = { ...APPLIQUE.panel, change: 'change the panel' }
  const shape = appliqueOf(project)?.panel?.shape ?? 'rectangle'
  const isDrawn = shape === 'outline'
  if (shape === 'circle') {
    const edit = (before: Project, diameter: number) => patchPanel(before, { diameter })
    return {
      across: { ...limits, label: 'Diameter of the panel', value: size.width, edit },
      down: { ...limits, label: 'Diameter of the panel, top to bottom', value: size.height, edit },
    }
  }
  return {
    across: {
      ...limits,
      label: 'Width of the panel',
      value: size.width,
      edit: isDrawn ? null : (before, width) => patchPanel(before, { width }),
    },
    down: {
      ...limits,
      label: 'Height of the panel',
      value: size.height,
      edit: isDrawn ? null : (before, height) => patchPanel(before, { height }),
    },
  }
}

function garlandMeasures(project: Project, { garland, size }: Plan): Measures {
  const layout = garlandOf(project)
  const swags = garland?.swags
  if (layout && swags && isSwagged(layout)) {
    const follows = swagFollows(layout)
    return {
      across: {
        label: 'Width of the wall',
        value: swags.width,
        least: GARLAND_LIMITS.span.least * swags.count,
        most: GARLAND_LIMITS.span.most,
        edit: follows === 'span' ? null : (before, mm) => patchSwags(before, { span: mm / swags.count }),
        change: 'change the wall',
      },
      down: {
        label: 'Drop of a swag',
        isShort: true,
        value: swags.drop,
        ...GARLAND_LIMITS.drop,
        edit: follows === 'drop' ? null : (before, drop) => patchSwags(before, { drop }),
        change: 'change the drop',
      },
    }
  }
  return {
    across: {
      label: 'Length of the cord between the ties',
      value: garland?.cord.length ?? size.width,
      ...GARLAND_LIMITS.length,
      edit: layout?.cord?.length === undefined ? null : (before, length) => patchCord(before, { length }),
      change: 'change the cord',
    },
    down: {
      label: 'Height as it hangs',
      isShort: true,
      value: size.height,
      least: 0,
      most: Infinity,
      edit: null,
      change: '',
    },
  }
}
