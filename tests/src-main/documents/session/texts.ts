/** What stories and tests of sessions share that needs no test runner. */
import type { Pace } from '../../../../src-main/documents/session/ports'

/** A pace at which no timer fires during a test. */
export const NEVER: Pace = { saveAfter: 1e8, saveAtMost: 1e8, saveAgain: 1e8 }

/** The text of a small project. `title` tells one version from another; `extra` must survive. */
export function projectText(title: string, extra: object = {}): string {
  return JSON.stringify({ format: 'petalyard-project', version: 1, title, ...extra })
}

export const titleOf = (text: string) => (JSON.parse(text) as { title: string }).title
