/** What somebody else wrote into a project's file, beside what is here: so that there is something to choose by. */
import type { OnDisk } from '../../../shared-types/bridge'
import type { Project } from '../../../shared-types/project'
import { differencesOf } from '../../../src-core/fields/differences'
import type { ProjectFiles } from './ports'

/** Differences that are said: more than these nobody compares in a line. */
const SAID = 3

export class ForeignVersion {
  readonly hash: string
  readonly #modified: number
  readonly #project: Project
  #said: { readonly text: string; readonly words: OnDisk } | null = null

  private constructor(hash: string, modified: number, project: Project) {
    this.hash = hash
    this.#modified = modified
    this.#project = project
  }

  /** Reads what is there; null where it is no project. */
  static async read(path: string, files: ProjectFiles): Promise<ForeignVersion | null> {
    const read = await files.open(path)
    if (!read.ok) return null
    return new ForeignVersion(read.stamp.hash, read.stamp.modified, JSON.parse(read.text) as Project)
  }

  /** The first numbers in which it differs from the project that `text` holds. */
  beside(text: string): OnDisk {
    if (this.#said?.text !== text) {
      const all = differencesOf(JSON.parse(text) as Project, this.#project)
      const differs = all
        .slice(0, SAID)
        .map(({ what, here, there }) => `${what}: ${here ?? 'none'} here, ${there ?? 'none'} in the file`)
      const words = {
        changedAt: new Date(this.#modified).toISOString(),
        differs,
        more: all.length - differs.length,
      }
      this.#said = { text, words }
    }
    return this.#said.words
  }
}
