/** Which placed motifs, fillers and half motifs are chosen (by address), and the one that is in the hand. Not part of the history. */
import type { Plan } from '../../shared-types/plan'
import { pieceAt } from '../../src-core/layout/placed'

const NONE: ReadonlySet<string> = new Set()

export class SelectionState {
  ids = $state.raw<ReadonlySet<string>>(NONE)
  focus = $state.raw<string | null>(null)

  replace(ids: Iterable<string>): void {
    this.ids = new Set(ids)
  }

  add(ids: Iterable<string>): void {
    this.ids = new Set([...this.ids, ...ids])
  }

  toggle(ids: Iterable<string>): void {
    const next = new Set(this.ids)
    for (const id of ids) if (!next.delete(id)) next.add(id)
    this.ids = next
  }

  clear(): void {
    this.ids = NONE
  }

  /** Takes one motif in the hand and selects it alone. */
  hold(id: string | null): void {
    this.focus = id
    this.ids = id ? new Set([id]) : NONE
  }

  /** What a command acts on: the selection, else the motif in the hand. Places that are gone are left out. */
  targets(plan: Plan): string[] {
    const wanted = this.ids.size > 0 ? [...this.ids] : this.focus ? [this.focus] : []
    return wanted.filter((id) => pieceAt(plan, id) !== undefined)
  }
}
