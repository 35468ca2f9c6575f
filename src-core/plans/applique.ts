/** §8, appliqué: motifs laid on a panel, the distances they keep, and what it takes to sew them down. */
import type { Finding } from '../../shared-types/finding'
import type { AppliquePlan } from '../../shared-types/plan'
import type { Settled, SettledApplique } from '../../shared-types/settled'
import { namedByItems } from '../checks/references'
import { CLEARANCE } from '../fields/applique'
import { isWithin } from '../fields/field'
import { bySeverity, finding } from '../findings/finding'
import { lengthValue, mostValue } from '../findings/quantities'
import { tally } from '../layout/additions'
import { measureDistances } from '../layout/applique/distances'
import { flippedNote, knownMotifs, layItems, placedMotif, stackItems } from '../layout/applique/items'
import type { LaidItem } from '../layout/applique/items'
import { readPanel } from '../layout/applique/panel'
import type { Panel } from '../layout/applique/panel'
import { neededFor, stitchingOf } from '../layout/applique/sewing'
import { EMPTY } from './empty'
import type { KindPlanner } from './kind'

export const APPLIQUE_PLANNER: KindPlanner<SettledApplique> = {
  plan: planApplique,
  placedMotifs: ({ items }) => items.map(({ motif }) => motif),
  names: ({ items }) => namedByItems(items),
}

/** Distances where there is no panel to measure them on. */
const NOTHING_LAID = { clearances: { items: null, edge: null }, overlaps: [] } as const

/** The plan of an appliqué; it shows what can be shown, also when there are errors. */
function planApplique(project: Settled, layout: SettledApplique): AppliquePlan {
  const units = project.units
  const findings: Finding[] = []
  const { panel, findings: panelFindings } = readPanel(layout.panel, units)
  findings.push(...panelFindings)
  const motifs = knownMotifs(project, layout, findings)
  const { laid, findings: itemFindings } = layItems(project, layout.items, motifs)
  findings.push(...itemFindings)
  const least = clearanceOf(layout, findings)
  const stitching = stitchingOf(project, laid)
  const needed = neededFor(project, laid, stitching)
  findings.push(...needed.findings, ...flippedNote(laid))
  const placed = panel && placeOn(panel, laid, layout, least, project)
  if (placed) findings.push(...placed.findings)
  return {
    ...EMPTY,
    ...needed,
    kind: 'applique',
    ...NOTHING_LAID,
    ...(panel && placed ? { size: sizeOf(panel), ...placed.parts } : {}),
    stitching,
    stacking: stackItems(laid).map(({ id }) => id),
    accounts: [...motifs.values()].map(({ account }) => account),
    motifs: laid.map(placedMotif),
    // The panel holds everything.
    pieces: laid.length > 0 ? 1 : 0,
    counts: { motifs: laid.length, byColourway: tally(laid.map(({ colourway }) => colourway)) },
    findings: bySeverity(findings),
  }
}

function clearanceOf(layout: SettledApplique, findings: Finding[]): number {
  const asked = layout.clearance
  if (isWithin(asked, CLEARANCE)) return asked
  const values = { received: lengthValue(asked), most: mostValue(CLEARANCE.most) }
  findings.push(finding('applique/clearance', 'layout.clearance', values))
  return 0
}

function placeOn(
  panel: Panel,
  laid: readonly LaidItem[],
  layout: SettledApplique,
  least: number,
  project: Settled,
): { parts: Pick<AppliquePlan, 'panel' | 'clearances' | 'overlaps'>; findings: readonly Finding[] } {
  const allowed = layout.overlaps === 'allowed'
  const { clearances, overlaps, findings } = measureDistances(laid, panel, least, allowed, project.units)
  const { shape, outline, allowance, inner } = panel
  return { parts: { panel: { shape, outline, allowance, inner }, clearances, overlaps }, findings }
}

/** The panel is cut to its size: nothing about it is an estimate. */
function sizeOf({ width, height }: Panel): AppliquePlan['size'] {
  const exact = { width, height }
  return { ...exact, sensitivity: { step: 0, width: 0, height: 0 }, range: { low: exact, high: exact } }
}
