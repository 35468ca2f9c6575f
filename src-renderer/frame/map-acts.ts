/** What hands and keys do to motifs on the map. */
import type { PlacedMotif, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { DocumentState } from '../state/document.svelte'
import { paint } from '../state/edits/layout'
import { findColourway } from '../state/edits/yarn'
import { counted } from '../state/summaries'
import type { WindowState } from '../state/window.svelte'

/** Paints cells with a colourway (null wipes), as a preview or as a change of its own. */
export function paintCells(
  document: DocumentState,
  cells: readonly string[],
  colourway: string | null,
  how: 'preview' | 'change',
): void {
  const motifs = counted(new Set(cells).size, 'motif')
  const label = colourway === null ? `wipe the paint off ${motifs}` : `paint ${motifs}`
  const edit = (project: Project) => paint(project, cells, colourway)
  if (how === 'preview') document.preview(label, edit)
  else document.change(label, edit)
}

/** "55, row 5, place 7, colourway A Dawn, 4 meeting points". */
export function motifWords(project: Project, plan: Plan, motif: PlacedMotif): string {
  const way = findColourway(project, motif.colourway)
  const joins = plan.joins.filter((node) => node.members.some((member) => member.motif === motif.id)).length
  return [
    `motif ${motif.label}`,
    `row ${motif.row}`,
    `place ${motif.column}`,
    way ? `colourway ${way.code ?? ''} ${way.name ?? ''}`.trim() : 'no colourway',
    counted(joins, 'meeting point'),
  ].join(', ')
}

/** Says the motif in the hand to screen readers. */
export function tellMotif(state: WindowState): void {
  const { document, selection } = state
  const motif = document.plan.motifs.find((entry) => entry.id === selection.focus)
  if (motif) state.say(motifWords(document.project, document.plan, motif))
}
