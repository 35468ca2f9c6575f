/** What the sessions need from the machine; given to them, so that tests can let each part fail. */
import type { Finding } from '../../../shared-types/finding'

/** What a file was like when it was read or written: enough to notice that somebody else changed it. */
export interface FileStamp {
  readonly size: number
  /** Modification time in ms. */
  readonly modified: number
  /** SHA-256 of the bytes, hexadecimal. */
  readonly hash: string
}

export type Checked =
  | {
      readonly ok: true
      readonly text: string
      readonly title: string
      readonly findings: readonly Finding[]
    }
  | { readonly ok: false; readonly problem: Finding }

export type Written = { readonly ok: true } | { readonly ok: false; readonly reason: string }

export interface ProjectFiles {
  /** Reads a project file; `text` is its content brought up to the present version. */
  open(path: string): Promise<Checked>
  /** The same for a text that is already here; `name` is for messages. */
  check(text: string, name: string): Checked
  /** Writes whole or not at all; with `backup` the former content stays beside it as a copy. */
  write(path: string, text: string, options: { readonly backup: boolean }): Promise<Written>
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
