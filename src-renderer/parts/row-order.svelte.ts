/** Rows of a list in an order of their own: dragged by a handle, moved with Alt and the arrow keys, taken out with Delete. */
import { tick } from 'svelte'
import type { Project } from '../../shared-types/project'
import type { WindowState } from '../state/window.svelte'

interface Rows {
  readonly count: () => number
  readonly nameOf: (index: number) => string
  /** The project with a row in another place. */
  readonly moved: (project: Project, from: number, to: number) => Project
  readonly removed: (project: Project, index: number) => Project
  /** What is done besides, once a row was moved or taken out, or a drag begins. */
  readonly onmove?: (from: number, to: number) => void
  readonly onremove?: () => void
  readonly ontake?: () => void
}

/** The list that stands in `list` has a child for each row, and in each one element of class `row` that takes the focus. */
export class RowOrder {
  list = $state<HTMLElement>()
  drag = $state<{ readonly from: number; readonly to: number; readonly name: string } | null>(null)
  readonly #app: WindowState
  readonly #rows: Rows

  constructor(app: WindowState, rows: Rows) {
    this.#app = app
    this.#rows = rows
  }

  async focusRow(index: number): Promise<void> {
    await tick()
    const rows = this.list?.querySelectorAll<HTMLElement>('.row')
    rows?.[Math.max(0, Math.min(rows.length - 1, index))]?.focus()
  }

  move(from: number, to: number): void {
    const count = this.#rows.count()
    if (to < 0 || to >= count) return
    const name = this.#rows.nameOf(from)
    this.#app.document.change(`move ${name}`, (project) => this.#rows.moved(project, from, to))
    this.#rows.onmove?.(from, to)
    this.#app.say(`${name} is number ${to + 1} of ${count}`)
    void this.focusRow(to)
  }

  remove(index: number): void {
    const name = this.#rows.nameOf(index)
    this.#app.document.change(`take ${name} out`, (project) => this.#rows.removed(project, index))
    this.#rows.onremove?.()
    this.#app.say(`${name} is out`)
    void this.focusRow(index)
  }

  onkeydown(event: KeyboardEvent, index: number): void {
    const step = { ArrowUp: -1, ArrowDown: 1 }[event.key]
    if (step && event.altKey) this.move(index, index + step)
    else if (step) void this.focusRow(index + step)
    else if (event.key === 'Delete') this.remove(index)
    else return
    event.preventDefault()
  }

  /** What a row's handle hears. */
  handleOf(index: number) {
    return {
      onpointerdown: (event: PointerEvent) => this.#take(event, index),
      onpointermove: (event: PointerEvent) => this.#pull(event),
      onpointerup: () => this.#drop(true),
      onpointercancel: () => this.#drop(false),
    }
  }

  #take(event: PointerEvent, index: number): void {
    if (event.button !== 0) return
    event.preventDefault()
    ;(event.currentTarget as HTMLElement).setPointerCapture(event.pointerId)
    this.#rows.ontake?.()
    this.drag = { from: index, to: index, name: this.#rows.nameOf(index) }
  }

  #pull({ clientY }: PointerEvent): void {
    if (!this.drag || !this.list) return
    const middles = [...this.list.children].map((row) => {
      const { top, height } = row.getBoundingClientRect()
      return Math.abs(clientY - top - height / 2)
    })
    const to = middles.indexOf(Math.min(...middles))
    const { from, name } = this.drag
    if (to === this.drag.to) return
    this.drag = { from, to, name }
    this.#app.document.preview(`move ${name}`, (project) => this.#rows.moved(project, from, to))
  }

  #drop(isKept: boolean): void {
    if (!this.drag) return
    this.drag = null
    if (isKept) this.#app.document.commit()
    else this.#app.document.cancel()
  }
}
