/** What motifs lie on or hang from: the panel of an appliqué, the cord of a garland. Lengths in mm. */
import type { GarlandAccount, Plan, Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Outline } from '../../src-core/geometry/points'
import type { Palette } from './palette'
import { layerInk } from './yarn-inks'
import type { LayerInk } from './yarn-inks'

export interface PanelPicture {
  readonly kind: 'panel'
  readonly edge: Outline
  /** What the seam allowance leaves; empty without one. */
  readonly inner: readonly Outline[]
}

export interface CordPicture {
  readonly kind: 'cord'
  readonly garland: GarlandAccount
  /** The cord as it hangs, and the points it hangs from. */
  readonly line: readonly Point[]
  readonly hooks: readonly Point[]
  /** Length of the tie at each end. */
  readonly tie: number
  readonly beads: readonly (Point & { readonly radius: number })[]
  readonly ink: LayerInk
}

export type GroundPicture = PanelPicture | CordPicture

/** The ground of a plan; the same object as before where it is the same. */
export function groundOf(
  project: Project,
  plan: Plan,
  palette: Palette,
  known: GroundPicture | null | undefined,
): GroundPicture | null {
  const { panel, garland } = plan
  if (panel) {
    const same = known?.kind === 'panel' && known.edge === panel.outline
    const inner = panel.allowance > 0 ? panel.inner : NONE
    if (same && known.inner === inner) return known
    return { kind: 'panel', edge: panel.outline, inner }
  }
  if (!garland) return null
  const { cord, line, hooks, items } = garland
  const ink = layerInk(project.yarns?.find(({ id }) => id === cord.yarn)?.colour, palette.bare)
  if (known?.kind === 'cord' && known.garland === garland && known.ink === ink) return known
  const beads = items.flatMap(({ bead, x, y, extent }) => (bead === '' ? [] : [{ x, y, radius: extent / 2 }]))
  return { kind: 'cord', garland, line, hooks, tie: cord.ties.length, beads, ink }
}

const NONE: readonly Outline[] = []
