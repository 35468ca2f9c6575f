/** Where a person wants a file to be written, with its ending; knows no window, so that tests can answer for one. */
import { lstat } from 'node:fs/promises'
import { extname } from 'node:path'

export interface PlaceQuestions {
  /** The system's dialog with this path in it; it asks by itself before it names what is there. Null: cancelled. */
  readonly place: (suggested: string) => Promise<string | null>
  /** May the file at this path be replaced? */
  readonly mayReplace: (path: string) => Promise<boolean>
}

/**
 * Asks until there is a place. Dialogs on Linux do not add an ending, so that they asked about "throw" where
 * "throw.csv" will be written: for that one it is asked here, before anything is replaced.
 */
export async function placeAsked(
  suggested: string,
  ending: string,
  { place, mayReplace }: PlaceQuestions,
): Promise<string | null> {
  for (let shown = suggested; ;) {
    const path = await place(shown)
    if (path === null || extname(path).toLowerCase() === ending) return path
    const whole = path + ending
    if (!(await isThere(whole)) || (await mayReplace(whole))) return whole
    shown = whole
  }
}

/** What cannot be looked at is there, as far as anybody knows. */
const isThere = (path: string): Promise<boolean> =>
  lstat(path).then(
    () => true,
    (error: NodeJS.ErrnoException) => error.code !== 'ENOENT',
  )
