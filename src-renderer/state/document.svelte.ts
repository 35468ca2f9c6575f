/**
 * The project in hand, its plan and its history. The project is immutable: an edit answers a new one that
 * shares what it did not touch, so that the planner can tell what stayed the same and undo is a list of
 * references.
 */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { createPlanner } from '../../src-core/plan'

/** A change of the project: answers a new one, or the same where there is nothing to do. */
export type Edit = (project: Project) => Project

interface Step {
  readonly label: string
  readonly project: Project
  /** Steps with the same key that follow each other closely are one: ten nudges are undone at once. */
  readonly key: string | null
}

/** More steps than anybody takes back; the oldest are let go. */
const MOST_STEPS = 500

export class DocumentState {
  readonly #planner = createPlanner()
  readonly #listeners = new Set<(project: Project) => void>()
  #settled: Project
  #preview: Project | null
  #before: Plan | null
  #label = ''
  #past: readonly Step[]
  #future: readonly Step[]
  readonly project: Project
  readonly plan: Plan
  readonly previous: Plan | null
  readonly undoLabel: string | null
  readonly redoLabel: string | null
  readonly isPreviewing: boolean

  constructor(project: Project) {
    this.#settled = $state.raw(project)
    this.#preview = $state.raw(null)
    this.#before = $state.raw(null)
    this.#past = $state.raw([])
    this.#future = $state.raw([])
    this.project = $derived(this.#preview ?? this.#settled)
    this.plan = $derived(this.#planner.plan(this.project))
    this.previous = $derived(this.#preview ? this.#before : null)
    this.isPreviewing = $derived(this.#preview !== null)
    this.undoLabel = $derived(this.#past.at(-1)?.label ?? null)
    this.redoLabel = $derived(this.#future.at(-1)?.label ?? null)
  }

  /** The project without what is only being tried. */
  get settled(): Project {
    return this.#settled
  }

  /** Calls `listener` with the project after every settled change, undo and redo. */
  onChange(listener: (project: Project) => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** Changes the project under a name that undo tells. Steps with the same `key` in a row become one. */
  change(label: string, edit: Edit, key: string | null = null): void {
    this.cancel()
    this.#settle(label, edit(this.#settled), key)
  }

  /** Tries a change while a hand or a key is still at it; each try starts from the settled project. */
  preview(label: string, edit: Edit): void {
    if (this.#preview === null) this.#before = this.plan
    this.#preview = edit(this.#settled)
    this.#label = label
  }

  /** Keeps what was tried last; `key` as in `change`. */
  commit(key: string | null = null): void {
    const tried = this.#preview
    this.cancel()
    if (tried) this.#settle(this.#label, tried, key)
  }

  /** Drops what was tried. */
  cancel(): void {
    this.#preview = null
    this.#before = null
  }

  undo(): void {
    this.#step('#past')
  }

  redo(): void {
    this.#step('#future')
  }

  /** Another project altogether (the version on disk was taken): nothing to undo in it yet. */
  replace(project: Project): void {
    this.cancel()
    this.#past = []
    this.#future = []
    this.#settled = project
  }

  #settle(label: string, next: Project, key: string | null): void {
    if (next === this.#settled) return
    const last = this.#past.at(-1)
    const isSame = key !== null && last?.key === key && this.#future.length === 0
    if (!isSame) this.#past = [...this.#past.slice(1 - MOST_STEPS), { label, project: this.#settled, key }]
    this.#future = []
    this.#settled = next
    this.#tell()
  }

  #step(from: '#past' | '#future'): void {
    if (this.#preview) return this.cancel()
    const [taken, given] = from === '#past' ? [this.#past, this.#future] : [this.#future, this.#past]
    const step = taken.at(-1)
    if (!step) return
    const rest = taken.slice(0, -1)
    const back = [...given, { label: step.label, project: this.#settled, key: null }]
    if (from === '#past') [this.#past, this.#future] = [rest, back]
    else [this.#future, this.#past] = [rest, back]
    this.#settled = step.project
    this.#tell()
  }

  #tell(): void {
    for (const listener of this.#listeners) listener(this.#settled)
  }
}
