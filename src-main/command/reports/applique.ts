/** `petalyard plan` of an appliqué for people: the panel, the distances, and every item in its place. */
import { lettered } from '../../../src-core/colour/letters'
import type { AppliquePlan, MotifAccount, PanelAccount, Plan } from '../../../shared-types/plan'
import type { Project, UnitSystem } from '../../../shared-types/project'
import {
  formatLength,
  formatNumber,
  formatSize,
  formatYarnLength,
  lengthsIn,
} from '../../../src-core/units/format'
import { table } from '../text'
import { saying } from '../../../src-core/stitches/spelling'
import { termsOf, unitsOf } from './words'

const SHAPE_WORDS: Record<PanelAccount['shape'], string> = {
  rectangle: 'rectangle',
  circle: 'circle',
  ellipse: 'ellipse',
  outline: 'drawn outline',
}

/** Label and value of what there is to know, without the items. */
export function appliqueFacts(plan: AppliquePlan, panel: PanelAccount, project: Project): [string, string][] {
  const units = unitsOf(project)
  const { size, clearances, stitching, overlaps } = plan
  const rim = panel.allowance > 0 ? `, with a seam allowance of ${formatLength(panel.allowance, units)}` : ''
  const pairs: [string, string][] = [
    ['Panel', `${SHAPE_WORDS[panel.shape]}, ${formatSize(size.width, size.height, units)}${rim}`],
    ['Items', formatNumber(plan.counts.motifs)],
  ]
  pairs.push(['Distances', distanceWords(clearances, units)])
  if (overlaps.length > 0) pairs.push(['Overlaps', overlapWords(plan, overlaps)])
  pairs.push([
    'Sewing',
    `${formatLength(stitching.outline, units)} of outline: about ${formatYarnLength(stitching.thread, units)} of sewing thread, tails included`,
  ])
  return pairs
}

function distanceWords({ items, edge }: AppliquePlan['clearances'], units: UnitSystem): string {
  const told: string[] = []
  if (items !== null) told.push(`${formatLength(items, units)} between items at the closest`)
  if (edge !== null)
    told.push(
      edge < 0
        ? `${formatLength(-edge, units)} beyond the edge at the worst`
        : `${formatLength(edge, units)} to the edge at the closest`,
    )
  return told.join(', ') || 'none'
}

function overlapWords(plan: Plan, overlaps: AppliquePlan['overlaps']): string {
  const labels = new Map(plan.motifs.map((motif) => [motif.id, motif.label]))
  return overlaps.map(({ below, above }) => `${labels.get(above)} on ${labels.get(below)}`).join(', ')
}

/** Every item with its place and turn. */
export function itemSection(project: Project, plan: Plan, width: number): string[] {
  const units = unitsOf(project)
  const accounts = new Map(plan.accounts.map((account): [string, MotifAccount] => [account.id, account]))
  const ways = new Map(lettered(project.colourways ?? []).map(({ id, code }) => [id, code ?? id]))
  const length = lengthsIn(
    units,
    plan.motifs.flatMap(({ x, y }) => [x, y]),
  )
  const rows = plan.motifs.map((item) => [
    item.label,
    accounts.get(item.motif ?? '')?.name ?? '',
    ways.get(item.colourway) ?? item.colourway,
    length(item.x),
    length(item.y),
    `${formatNumber(item.turn, 1)}°`,
    item.flipped ? 'wrong side up' : '',
  ])
  if (rows.length === 0) return []
  const columns = [
    { head: 'Item', align: 'right' },
    { head: 'Motif', align: 'left' },
    { head: saying(termsOf(project))`Colours`, align: 'left' },
    { head: 'across', align: 'right' },
    { head: 'down', align: 'right' },
    { head: 'turn', align: 'right' },
    { head: '', align: 'left' },
  ] as const
  return ['', ...table(columns, rows, width)]
}
