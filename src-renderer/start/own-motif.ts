/** A project from the motif that lies on the table: what is counted and measured on it, and what it becomes. */
import type { Settings } from '../../shared-types/bridge'
import type { MeasuredMotif, OutlineKind, Project, Ruler } from '../../shared-types/project'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import { DEFAULT_LEAF_WIDTH_SHARE, DEFAULT_VALLEY_SHARE } from '../../src-core/motif/constants'
import { assumedSecond, circlesOf, isOdd, layingOf } from '../../src-core/motif/ruler'
import { patchApplique, patchPanel, setPanelShape } from '../state/edits/applique'
import { firstSizes } from '../state/edits/first-sizes'
import { patchCord, patchSwags } from '../state/edits/garland'
import { setLayoutKind } from '../state/edits/layout-kind'
import { addColourway, addYarn, newColourway, newYarn, setSlotYarn } from '../state/edits/yarn'
import { newMotif } from '../state/edits/motif'

export interface OwnMotif {
  readonly outline: OutlineKind
  readonly petals: number
  /** How an odd number of petals is measured. */
  readonly ruler?: Ruler
  /** mm, as the ruler shows it: tip to tip (or what stands for it), across, side to side or length. */
  readonly lead: number
  /** mm: dip to dip (or what stands for it), or the width of a leaf; left out, it follows the first. */
  readonly second?: number | undefined
}

/** What it is made into, with the one or two numbers (mm) that this needs. */
export type Made =
  | { readonly kind: 'blanket'; readonly width: number; readonly height: number }
  | { readonly kind: 'garland'; readonly length: number }
  | { readonly kind: 'garland'; readonly wall: number; readonly swags: number }
  | { readonly kind: 'applique'; readonly width: number; readonly height: number }
  | { readonly kind: 'applique'; readonly diameter: number }

/** Swags to begin with (ours). */
export const FIRST_SWAGS = 3
/** Drop as a share of the span: an eighth to a quarter is common practice (no source). */
const DROP_SHARE = 0.16

/** The second measure, in mm, as it is assumed while it was not typed; null where there is none. */
export function secondAssumed({ outline, petals, ruler, lead }: OwnMotif): number | null {
  if (outline === 'petals') return assumedSecond(layingOf(petals, ruler), lead, DEFAULT_VALLEY_SHARE)
  return outline === 'leaf' ? lead * DEFAULT_LEAF_WIDTH_SHARE : null
}

/** The motif as the project keeps it. */
function ownMotif(project: Project, own: OwnMotif): MeasuredMotif {
  const made = newMotif(project, own.outline)
  switch (own.outline) {
    case 'petals': {
      const { petals, lead, second, ruler } = own
      const circles = circlesOf(layingOf(petals, ruler), { lead, second }, DEFAULT_VALLEY_SHARE)
      return { ...made, petals, ...circles, ...(isOdd(petals) && ruler && { ruler }) }
    }
    case 'round':
      return { ...made, across: own.lead }
    case 'leaf':
      return { ...made, length: own.lead, width: own.second }
    default:
      return { ...made, sideToSide: own.lead }
  }
}

/** The whole project, laid out as what it is made into: a blanket in a piece, until an arrangement is chosen. */
export function ownProject(settings: Settings, own: OwnMotif, made: Made): Project {
  const { units, terms, hand, currency, paper } = settings
  let project: Project = {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    title: '',
    units,
    terms,
    hand,
    currency,
    sheet: { paper, style: 'colour', terms },
    order: 'there-and-back',
    joining: { rule: own.outline === 'petals' || own.outline === 'round' ? 'tips' : 'edges' },
    allowance: { wastePercent: 10, tail: firstSizes(units).tail },
  }
  const motif = ownMotif(project, own)
  project = { ...project, motifs: [motif] }
  const centre = { ...newYarn(project), name: 'Centre yarn', colour: '#e3c188' }
  project = addYarn(project, centre)
  const slots = motif.slots ?? []
  const main = slots.length > 1 ? { ...newYarn(project), name: 'Petal yarn', colour: '#b3583f' } : centre
  if (main !== centre) project = addYarn(project, main)
  const way = newColourway(project, motif.id)
  project = addColourway(project, way)
  const outer = slots.at(-1)?.slot
  if (outer) project = setSlotYarn(project, way.id, outer, main.id)
  switch (made.kind) {
    case 'garland':
      return ownGarland(project, made)
    case 'applique':
      return ownPanel(project, motif.id, way.id, made)
    default:
      return ownBlanket(project, motif.id, way.id, made)
  }
}

function ownGarland(project: Project, made: Extract<Made, { kind: 'garland' }>): Project {
  const garland = setLayoutKind(project, 'garland')
  if ('length' in made) return patchCord(garland, { length: made.length })
  const span = made.wall / made.swags
  const hung = patchSwags(garland, { count: made.swags, span, drop: Math.round(span * DROP_SHARE) })
  return patchCord(hung, { length: undefined })
}

/** One motif lies in the middle, to be moved, turned and joined by others. */
function ownPanel(
  project: Project,
  motif: string,
  colourway: string,
  made: Extract<Made, { kind: 'applique' }>,
): Project {
  const first = setLayoutKind(project, 'applique')
  const isRound = 'diameter' in made
  const panel = patchPanel(isRound ? setPanelShape(first, 'circle') : first, {
    ...(isRound ? { diameter: made.diameter } : { width: made.width, height: made.height }),
  })
  const [width, height] = isRound ? [made.diameter, made.diameter] : [made.width, made.height]
  const item = { motif, colourway, x: width / 2, y: height / 2, turn: 0 }
  return patchApplique(panel, { items: [item] })
}

function ownBlanket(
  project: Project,
  motif: string,
  colourway: string,
  wish: { width: number; height: number },
): Project {
  return {
    ...project,
    layout: {
      kind: 'blanket',
      arrangement: 'straight-rows',
      motif,
      columns: 8,
      rows: 8,
      alternateRows: 'same',
      turn: 0,
      alternateTurn: 0,
      target: { width: wish.width, height: wish.height },
      cells: { fill: { pattern: 'one', colourways: [colourway], seed: 1 } },
    },
  }
}
