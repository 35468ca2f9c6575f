/** What an arranger is about to lay: shown on the map while it is thought over, and laid in one step. */
import { untrack } from 'svelte'
import type { Project } from '../../shared-types/project'
import { arrange, groundFor, roomFinding } from '../../src-core/composing/arrange'
import type {
  LaidByTurns,
  RowWish,
  ScatterWish,
  SprayWish,
  Wish,
  WreathWish,
} from '../../src-core/composing/arrange'
import { groundOf } from '../../src-core/composing/ground'
import { capital } from '../../src-core/figures/words'
import type { DocumentState } from './document.svelte'
import { addedIds, itemsOf, waysFor } from './edits/applique'
import { counted } from './summaries'

export type How = Wish['how']

const HOW_NAMES: Readonly<Record<How, string>> = {
  wreath: 'wreath',
  row: 'row',
  spray: 'corner spray',
  scatter: 'scatter',
}

export class LayingState {
  readonly #document: DocumentState
  /** The arranger that is open; null where none is. */
  how = $state<How | null>(null)
  /** Keep what lies there, or lay in its place. */
  keep = $state(true)
  turns = $state.raw<readonly LaidByTurns[]>([])
  wreath = $state.raw<Omit<WreathWish, 'how'>>({})
  row = $state.raw<Omit<RowWish, 'how'>>({ points: [] })
  spray = $state.raw<Omit<SprayWish, 'how'>>({ corner: 'top-left' })
  scatter = $state.raw<Omit<ScatterWish, 'how'>>({ seed: 1 })
  /** What was shown last, to tell when something else has kept it or taken it away. */
  #shown: Project | null = null
  /** It is still what the window shows. */
  #isInSight = false

  constructor(document: DocumentState) {
    this.#document = document
  }

  get wish(): Wish | null {
    switch (this.how) {
      case 'wreath':
        return { how: 'wreath', ...this.wreath }
      case 'row':
        return this.row.points.length > 1 ? { how: 'row', ...this.row } : null
      case 'spray':
        return { how: 'spray', ...this.spray }
      case 'scatter':
        return { how: 'scatter', ...this.scatter }
      default:
        return null
    }
  }

  /** Motifs to lay by turns: those that were chosen and are still there; else the first of the project. */
  turnsFor(project: Project): readonly LaidByTurns[] {
    const motifs = project.motifs ?? []
    const there = this.turns.filter(({ motif }) => motifs.some(({ id }) => id === motif))
    if (there.length > 0) return there
    const first = motifs[0]
    return first ? [firstWay(project, first.id)] : []
  }

  /** How many items are shown that are not laid yet. */
  get shown(): number {
    const { project, committed, isPreviewing } = this.#document
    return itemsOf(project).length - (this.keep && isPreviewing ? itemsOf(committed).length : 0)
  }

  /** What is asked for and has no room, in words; nothing where it has. */
  get roomWords(): string {
    const { wish } = this
    const settled = this.#document.committed
    const ground = wish && groundOf(settled)
    if (!ground) return ''
    const told = roomFinding(groundFor(ground, this.keep), this.turnsFor(settled), wish, this.shown)
    return told ? `${capital(told.message)} ${told.mend}` : ''
  }

  /** Opens an arranger, or folds it. */
  toggle(how: How, open: boolean): void {
    if (open) this.how = how
    else if (this.how === how) this.how = null
  }

  /** Shows what would be laid. To be called in an effect: it follows the wish and the settled project. */
  show(): void {
    const { wish, keep } = this
    const settled = this.#document.committed
    const turns = this.turnsFor(settled)
    untrack(() => {
      // Something else (saving, printing) has kept what was shown: it lies there now.
      if (this.#shown === settled) this.how = null
      else if (wish) {
        const next = arrange(settled, turns, wish, keep)
        this.#document.preview(`place a ${HOW_NAMES[wish.how]}`, () => next)
        this.#shown = next === settled ? null : next
        this.#isInSight = true
        return
      }
      this.hide()
    })
  }

  /**
   * Follows what happens to it. To be called in an effect: taken back by undo or Escape, the arranger is folded;
   * where something else was tried in between, it is shown again.
   */
  follow(): void {
    const { project, isPreviewing } = this.#document
    untrack(() => {
      if (this.#shown === null) return
      if (project === this.#shown) this.#isInSight = true
      else if (isPreviewing) this.#isInSight = false
      else if (!this.#isInSight) this.show()
      else {
        this.#shown = null
        this.how = null
      }
    })
  }

  /** Takes away what is shown. */
  hide(): void {
    if (this.#shown !== null && this.#document.project === this.#shown) this.#document.cancel()
    this.#shown = null
  }

  /** Lays it, in one step. Answers the ids of what was laid; nothing where there was no room. */
  lay(): string[] {
    const { wish, keep } = this
    if (!wish) return []
    const before = this.#document.committed
    const turns = this.turnsFor(before)
    const after = arrange(before, turns, wish, keep)
    const ids = keep ? addedIds(before, after) : itemsOf(after).map((_, index) => `1,${index + 1}`)
    this.how = null
    this.#shown = null
    if (after === before) {
      this.#document.cancel()
      return []
    }
    const name = wish.how === 'scatter' ? 'scatter' : `place a ${HOW_NAMES[wish.how]} of`
    this.#document.change(`${name} ${counted(ids.length, 'item')}`, () => after)
    return ids
  }
}

/** A motif with the first of its colourways. */
export function firstWay(project: Project, motif: string): LaidByTurns {
  const way = waysFor(project, motif)[0]
  return { motif, ...(way && { colourway: way.id }) }
}
