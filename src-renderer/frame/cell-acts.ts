/** Putting motifs into the cells of a blanket and leaving cells out: by brush, by key, by button. */
import { counted } from '../../src-core/figures/words'
import { blockOf, keptUnder } from '../../src-core/layout/blocks'
import { bringBack, setCells, setLarge } from '../state/edits/cells'
import { blanketOf } from '../state/edits/layout'
import { findMotif } from '../state/edits/motif'
import type { WindowState } from '../state/window.svelte'

/** A brush that puts a motif into what it meets, or leaves it out; null for one that paints colours. */
export interface CellBrush {
  readonly motif: string | null
}

const PREFIX = 'cell:'

/** Cell brushes are kept where colourways are; no id of a file begins so by itself. */
export const brushOfMotif = (motif: string | null): string => `${PREFIX}${motif ?? ''}`

export const cellBrush = (brush: string | null): CellBrush | null =>
  brush?.startsWith(PREFIX) ? { motif: brush.slice(PREFIX.length) || null } : null

/** Of places only motifs are cells: half motifs and fillers follow them. */
const cellsOf = (ids: readonly string[]): string[] => [...new Set(ids)].filter((id) => /^\d+,\d+$/.test(id))

/** Puts a motif into cells, or leaves them out where it is null: as a preview or as a change of its own. */
export function fillCells(
  state: WindowState,
  ids: readonly string[],
  motif: string | null,
  how: 'preview' | 'change' = 'change',
): void {
  const { document, selection } = state
  const cells = cellsOf(ids)
  if (cells.length === 0 || !blanketOf(document.committed)) return
  const words = counted(cells.length, 'motif')
  const name = findMotif(document.committed, motif ?? undefined)?.name ?? motif ?? ''
  const label = motif === null ? `leave out ${words}` : `change ${counted(cells.length, 'motif')} to ${name}`
  const edit = (project: typeof document.committed) => setCells(project, cells, motif)
  if (how === 'preview') return document.preview(label, edit)
  const next = motif === null ? besideCells(document.plan.motifs, selection.focus, cells) : null
  const before = document.committed
  document.change(label, edit)
  // What is asked about first is not done yet.
  if (document.committed === before) return
  // Arrows go on from where the place was.
  if (motif === null) selection.hold(next)
  tellCells(state, cells, motif)
}

/** The motif beside one that goes, of those that stay: after it in the order of places, else before it. */
function besideCells(
  motifs: readonly { readonly id: string }[],
  focus: string | null,
  gone: readonly string[],
): string | null {
  const at = motifs.findIndex(({ id }) => id === focus)
  if (at < 0) return null
  const stays = ({ id }: { readonly id: string }) => !gone.includes(id)
  return (motifs.slice(at).find(stays) ?? motifs.slice(0, at).findLast(stays))?.id ?? null
}

/** Says what became of cells. */
export function tellCells(state: WindowState, ids: readonly string[], motif: string | null): void {
  const cells = cellsOf(ids)
  const name = findMotif(state.document.committed, motif ?? undefined)?.name ?? motif ?? ''
  const words =
    motif === null
      ? `${counted(cells.length, 'motif')} left out`
      : `${counted(cells.length, 'motif')} changed to ${name}`
  state.say(`${words}.`)
}

/** Puts one large motif into the block that some cells fill, and takes it in the hand. */
export function putLarge(state: WindowState, ids: readonly string[], motif: string): void {
  const { document, selection } = state
  const block = blockOf(ids)
  if (!block) return
  const name = findMotif(document.committed, motif)?.name ?? motif
  const before = document.committed
  document.change(`put one ${name} in the place of ${counted(ids.length, 'motif')}`, (project) =>
    setLarge(project, ids, motif),
  )
  if (document.committed === before) return
  selection.hold(keptUnder(block.row, block.column, block.size))
  state.say(`One ${name} in the place of ${counted(ids.length, 'motif')}.`)
}

/** Gives cells back to the pattern. */
export function giveBack(state: WindowState, ids: readonly string[]): void {
  const words = counted(ids.length, 'motif')
  state.document.change(`bring ${words} back`, (project) => bringBack(project, ids))
  state.say(`${words} brought back.`)
}
