/**
 * Steps that can be taken back, all of them: the latest as they are, which share what they did not touch, older ones as
 * what they differ in from the one that came after. A painted map of thousands of motifs is a new record at each stroke;
 * thousands of whole ones would fill the memory.
 */
import type { Project } from '../../shared-types/project'
import { appliedTo, difference } from './difference'
import type { Difference } from './difference'

export interface Step {
  readonly label: string
  /** Steps with the same key that follow each other closely are one: ten nudges are undone at once. */
  readonly key: string | null
}

/** So many of the latest are kept as they are (our own choice): what is taken back soon is planned already. */
const AS_THEY_ARE = 50

interface Entry extends Step {
  readonly before: Entry | null
  /** The project before the step, whole or as what differs from the one before the next step. */
  project: { readonly whole: Project } | { readonly differs: Difference }
}

/** Steps in one direction, the last on top. Adding one answers another history; the older ones are shared. */
export class History {
  static readonly empty = new History(null)
  readonly #top: Entry | null

  private constructor(top: Entry | null) {
    this.#top = top
  }

  get last(): Step | null {
    return this.#top
  }

  /** With one step more; `project` is what was there before it. */
  with({ label, key }: Step, project: Project): History {
    const top: Entry = { label, key, before: this.#top, project: { whole: project } }
    let entry: Entry | null = top
    for (let depth = 1; depth < AS_THEY_ARE && entry; depth++) entry = entry.before
    const older = entry?.before
    if (entry && older && 'whole' in entry.project && 'whole' in older.project)
      older.project = { differs: difference(entry.project.whole, older.project.whole) }
    return new History(top)
  }

  /** Takes the last step back from `current`, which followed it; null where there is none. */
  back(current: Project): { readonly step: Step; readonly project: Project; readonly rest: History } | null {
    const top = this.#top
    if (!top) return null
    const { project } = top
    return {
      step: { label: top.label, key: top.key },
      project: 'whole' in project ? project.whole : (appliedTo(current, project.differs) as Project),
      rest: new History(top.before),
    }
  }
}
