/** Which keys paint, by the letters of the colourways. */
import { say } from '../state/say'

/** Letters that are named one by one; more are not read. */
const NAMED = 5

/** "A–E paint", "H, M and G paint", "B paints": a range only where the letters are one. */
export function paintKeys(letters: readonly string[]): string {
  const [first = '', ...rest] = letters
  if (rest.length === 0) return `${first} paints`
  const last = rest.at(-1)!
  const isRun = letters.every(
    (letter, i) => letter.length === 1 && letter.charCodeAt(0) === first.charCodeAt(0) + i,
  )
  if (isRun && letters.length > 2) return `${first}–${last} paint`
  if (letters.length > NAMED) return say`the letters of the colourways paint`
  return `${letters.slice(0, -1).join(', ')} and ${last} paint`
}
