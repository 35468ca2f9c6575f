/** §8, appliqué: motifs laid on a panel, the distances they keep, and what it takes to sew them down. */
import { byName } from '../by-name'
import type { Finding } from '../../shared-types/finding'
import type { AppliquePlan, MotifAccount, Plan, PlacedMotif, Stitching } from '../../shared-types/plan'
import type { AppliqueLayout, Motif, Project } from '../../shared-types/project'
import { bySeverity, finding } from '../findings/finding'
import { lengthValue, mostValue } from '../findings/quantities'
import { perimeter } from '../geometry/points'
import { MATERIAL_CONSTANTS } from '../materials/constants'
import type { Piece } from '../materials/input'
import { materials } from '../materials/materials'
import { add, spread } from '../materials/range'
import { resolveGauge } from '../stitches/gauge'
import { isUsableOrZero } from '../units/usable'
import { APPLIQUE } from './applique/constants'
import { measureDistances } from './applique/distances'
import { layItems, stackItems } from './applique/items'
import type { KnownMotif, LaidItem } from './applique/items'
import { readPanel } from './applique/panel'
import type { Panel } from './applique/panel'

export interface AppliqueContext {
  /** A plan of nothing, to fill in. */
  readonly empty: Plan
  /** Findings on what refers to what. */
  readonly references: readonly Finding[]
  readonly accountOf: (motif: Motif) => {
    readonly account: MotifAccount | null
    readonly findings: readonly Finding[]
  }
}

/** The plan of an appliqué; it shows what can be shown, also when there are errors. */
export function planApplique(project: Project, layout: AppliqueLayout, context: AppliqueContext): Plan {
  const units = project.units ?? 'metric'
  const findings: Finding[] = [...context.references]
  const { panel, findings: panelFindings } = readPanel(layout.panel, units)
  findings.push(...panelFindings)
  const motifs = knownMotifs(project, layout, context, findings)
  const { laid, findings: itemFindings } = layItems(project, layout.items ?? [], motifs)
  findings.push(...itemFindings)
  const least = clearanceOf(layout, findings)
  const stitching = stitchingOf(project, laid)
  const needed = neededFor(project, laid, stitching)
  findings.push(...needed.findings, ...flippedNote(laid))
  const placed = panel && placeOn(panel, laid, layout, least, project)
  if (placed) findings.push(...placed.findings)
  return {
    ...context.empty,
    ...needed,
    ...(panel && placed ? { size: sizeOf(panel), ...placed.parts } : {}),
    stitching,
    stacking: stackItems(laid).map(({ id }) => id),
    accounts: [...motifs.values()].map(({ account }) => account),
    motifs: laid.map(placedMotif),
    // The panel holds everything.
    pieces: laid.length > 0 ? 1 : 0,
    counts: { motifs: laid.length, byColourway: countsOf(laid) },
    findings: bySeverity(findings),
  }
}

/** The motifs that items name, each with its account; one without an outline is left out with findings. */
function knownMotifs(
  project: Project,
  layout: AppliqueLayout,
  { accountOf }: AppliqueContext,
  findings: Finding[],
): Map<string, KnownMotif> {
  const named = new Set(layout.items?.map((item) => item.motif))
  const known = new Map<string, KnownMotif>()
  for (const motif of project.motifs ?? []) {
    if (!named.has(motif.id) || known.has(motif.id)) continue
    const told = accountOf(motif)
    findings.push(...told.findings)
    if (told.account) known.set(motif.id, { motif, account: told.account })
  }
  return known
}

function clearanceOf(layout: AppliqueLayout, findings: Finding[]): number {
  const asked = layout.clearance ?? 0
  if (asked >= 0 && asked <= APPLIQUE.mostClearance) return asked
  const values = { received: lengthValue(asked), most: mostValue(APPLIQUE.mostClearance) }
  findings.push(finding('applique/clearance', 'layout.clearance', values))
  return 0
}

function placeOn(
  panel: Panel,
  laid: readonly LaidItem[],
  layout: AppliqueLayout,
  least: number,
  project: Project,
): { parts: Pick<AppliquePlan, 'panel' | 'clearances' | 'overlaps'>; findings: readonly Finding[] } {
  const allowed = layout.overlaps === 'allowed'
  const { clearances, overlaps, findings } = measureDistances(
    laid,
    panel,
    least,
    allowed,
    project.units ?? 'metric',
  )
  const { shape, outline, allowance, inner } = panel
  return { parts: { panel: { shape, outline, allowance, inner }, clearances, overlaps }, findings }
}

/** The panel is cut to its size: nothing about it is an estimate. */
function sizeOf({ width, height }: Panel): Plan['size'] {
  const exact = { width, height }
  return { ...exact, sensitivity: { step: 0, width: 0, height: 0 }, range: { low: exact, high: exact } }
}

const placedMotif = (item: LaidItem): PlacedMotif => ({
  id: item.id,
  label: String(item.number),
  row: 1,
  column: item.number,
  x: item.x,
  y: item.y,
  turn: item.turn,
  colourway: item.colourway,
  motif: item.motif.id,
  flipped: item.flipped,
})

function countsOf(laid: readonly LaidItem[]): Record<string, number> {
  const counts = new Map<string, number>()
  for (const { colourway } of laid) if (colourway) counts.set(colourway, (counts.get(colourway) ?? 0) + 1)
  return Object.fromEntries(counts)
}

function flippedNote(laid: readonly LaidItem[]): Finding[] {
  const flipped = laid.filter((item) => item.flipped)
  if (flipped.length === 0) return []
  const items = `${flipped.length === 1 ? 'item' : 'items'} ${flipped.map((item) => item.name).join(', ')}`
  const target = { cells: flipped.map(({ id }) => id) }
  return [finding('applique/wrong-side', 'layout.items', { items }, target)]
}

/** Thread to sew everything down: 2.5 × outline and two tails for each item. */
function stitchingOf(project: Project, laid: readonly LaidItem[]): Stitching {
  const lengths = new Map<MotifAccount, number>()
  const lengthOf = (account: MotifAccount): number => {
    const length = lengths.get(account) ?? perimeter(account.outline)
    lengths.set(account, length)
    return length
  }
  const outline = laid.reduce((sum, { account }) => sum + lengthOf(account), 0)
  const tails = laid.length * APPLIQUE.threadTails
  const stated = project.allowance?.tail
  const tail = isUsableOrZero(stated) ? stated : MATERIAL_CONSTANTS.tail
  return { outline, thread: (outline * APPLIQUE.threadPerOutline + tails * tail) / 1000, tails }
}

/** Yarn, ends and time of the motifs, and the time to sew them down. */
function neededFor(project: Project, laid: readonly LaidItem[], stitching: Stitching) {
  const pieces = new Map<
    string,
    Piece & { counts: { motifs: number; byColourway: Record<string, number> } }
  >()
  for (const { motif, account, colourway } of laid) {
    const piece = pieces.get(motif.id) ?? {
      motif,
      account,
      counts: { motifs: 0, byColourway: byName<number>() },
    }
    piece.counts.motifs++
    piece.counts.byColourway[colourway] = (piece.counts.byColourway[colourway] ?? 0) + 1
    pieces.set(motif.id, piece)
  }
  // Nothing is joined to anything: what joining rules say does not apply to a panel.
  const loose: Project = { ...project, joining: undefined }
  const needed = materials({
    project: loose,
    motif: null,
    account: null,
    gauge: resolveGauge(project.gauge, project.terms ?? 'US'),
    counts: { motifs: 0, byColourway: {} },
    others: [...pieces.values()],
    joinOperations: 0,
    joinNodes: 0,
    seams: { length: 0, count: 0 },
    edgingBase: null,
  })
  const sewing = spread(stitching.outline * APPLIQUE.stitchMinutes, APPLIQUE.timeSpread)
  return { ...needed, minutes: needed.minutes && add(needed.minutes, sewing) }
}
