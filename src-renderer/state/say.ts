/** What the window says, spelled as the project's terms do; one document is open in a window, so this is said once. */
import { createSubscriber } from 'svelte/reactivity'
import type { Terms } from '../../shared-types/project'
import { inSpelling, saying } from '../../src-core/stitches/spelling'
import type { Say } from '../../src-core/stitches/spelling'

let reader: Terms = 'US'
let changed = (): void => undefined
// Not a rune: rooms that speak are also read where Svelte compiles nothing.
const followed = createSubscriber((update) => {
  changed = update
})

/** From now on texts are spelled in these terms. */
export function sayIn(terms: Terms): void {
  if (terms === reader) return
  reader = terms
  changed()
}

/** A text of the window: what is put in between, such as a name, stays as it is. */
export const say: Say = (parts, ...values) => {
  followed()
  return saying(reader)(parts, ...values)
}

/** A text from elsewhere that holds nothing that people wrote. */
export const spelled = (text: string): string => {
  followed()
  return inSpelling(text, reader)
}
