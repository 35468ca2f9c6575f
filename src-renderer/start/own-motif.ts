/** A project from the motif that lies on the table: what is counted and measured on it, and a wished size. */
import type { Settings } from '../../shared-types/bridge'
import type { MeasuredMotif, OutlineKind, Project } from '../../shared-types/project'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { patchBlanket } from '../state/edits/layout'
import { resized } from '../state/resize'
import { addColourway, addYarn, newColourway, newYarn, setSlotYarn } from '../state/edits/yarn'
import { newMotif } from '../state/edits/motif'

export interface OwnMotif {
  readonly outline: OutlineKind
  readonly petals: number
  /** mm: tip to tip, across, side to side or length. */
  readonly lead: number
  /** mm: between petals, or the width of a leaf. */
  readonly second: number
}

/** A throw to begin with, in mm: 100 × 130 cm is common practice for one over the knees. */
export const FIRST_WISH = { width: 1000, height: 1300 } as const

/** The motif as the project keeps it. */
export function ownMotif(project: Project, own: OwnMotif): MeasuredMotif {
  const made = newMotif(project, own.outline)
  switch (own.outline) {
    case 'petals':
      return { ...made, petals: own.petals, overTips: own.lead, overValleys: own.second }
    case 'round':
      return { ...made, across: own.lead }
    case 'leaf':
      return { ...made, length: own.lead, width: own.second }
    default:
      return { ...made, sideToSide: own.lead }
  }
}

/** The whole project, laid out to come nearest to `wish` (mm). */
export function ownProject(
  settings: Settings,
  own: OwnMotif,
  wish: { width: number; height: number },
): Project {
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
    allowance: { wastePercent: 10, tail: 150 },
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
  project = {
    ...project,
    layout: {
      kind: 'blanket',
      // Squares and octagons lie side by side; everything else nestles in offset rows.
      arrangement: own.outline === 'square' || own.outline === 'octagon' ? 'straight-rows' : 'offset-rows',
      motif: motif.id,
      columns: 8,
      rows: 8,
      alternateRows: 'same',
      turn: 0,
      alternateTurn: 0,
      target: { width: wish.width, height: wish.height },
      cells: { fill: { pattern: 'one', colourways: [way.id], seed: 1 } },
    },
  }
  // A small piece of it tells the pitch, and the pitch tells how many come nearest to the wish.
  const piece = patchBlanket(project, { columns: 3, rows: 3 })
  return resized(piece, planProject(piece), wish)
}
