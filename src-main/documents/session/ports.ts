/** What the sessions need from the machine; given to them, so that tests can let each part fail. */
import type { Finding } from '../../../shared-types/finding'
import type { FileStamp } from '../outcome'

export type { FileStamp }

export type Checked =
  | {
      readonly ok: true
      readonly text: string
      readonly title: string
      readonly findings: readonly Finding[]
    }
  | { readonly ok: false; readonly problem: Finding }

/** What was read from a file, and what the file was like then. */
export type Read = Exclude<Checked, { ok: true }> | (Extract<Checked, { ok: true }> & { stamp: FileStamp })

export type Written =
  | {
      readonly ok: true
      /** Why the former content could not be kept as a copy, though it was to be. */
      readonly withoutBackup?: string
    }
  | { readonly ok: false; readonly reason: string }

export interface WriteOptions {
  /** The former content stays beside it as a copy; where that is demanded, nothing is written without one. */
  readonly backup: boolean | 'demanded'
  /** Nothing is replaced, whatever has the name by then. */
  readonly onlyIfFree?: boolean
  /** Asked in the last moment before the new content takes the file's place: nothing happens unless it says so. */
  readonly mayReplace?: () => Promise<boolean>
}

export interface ProjectFiles {
  /** Reads a project file; `text` is its content brought up to the present version. */
  open(path: string): Promise<Read>
  /** The same for a text that is already here; `name` is for messages. */
  check(text: string, name: string): Checked
  /** Writes whole or not at all. */
  write(path: string, text: string, options: WriteOptions): Promise<Written>
}

/** Times in ms, so that tests need not wait. */
export interface Pace {
  /** A project with a file is saved this long after the last change… */
  readonly saveAfter: number
  /** …and at the latest this long after the first one that is not saved. */
  readonly saveAtMost: number
  /** A failed save is tried again after this time. */
  readonly saveAgain: number
}

/** Common practice, no source: often enough to lose nothing, seldom enough not to keep a slow disk busy. */
export const PACE: Pace = { saveAfter: 2_000, saveAtMost: 10_000, saveAgain: 15_000 }
