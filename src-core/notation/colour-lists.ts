/** Letters that a page gives its colours in the materials: "A = cream", "Rose (B)", "Color C: 20 g". */
import { sectionOf } from './sections'
import type { Token } from './tokens'

const LETTER = /^([A-Z]|MC|CC\d?|C[A-H])$/
const NAMES = /^(colou?r|yarn|shade|cotton|wool|thread)$/
const TELLS = /^[=:–—-]$/

/** Whether a letter at a token names a colour there: alone in its bracket, explained, or behind the word. */
function isNamed(tokens: readonly Token[], at: number): boolean {
  const [before, after] = [tokens[at - 1], tokens[at + 1]]
  const isAlone = /^[([]$/.test(before?.key ?? '') && /^[)\]]$/.test(after?.key ?? '')
  const opens = tokens[at]!.first || /^[,;:•·–—-]$/.test(before?.key ?? '')
  const isExplained = opens && TELLS.test(after?.key ?? '') && after!.first === false
  // "MC (white)".
  const isTold = after?.key === '(' && tokens[at + 2]?.kind === 'word'
  return isAlone || isExplained || isTold || NAMES.test(before?.key ?? '')
}

/**
 * Adds the letters of a section to `colours`. In a list of colours every letter is one; in the materials, where hooks
 * and sizes have letters too, they are where they are named as colours and follow each other from A, or begin with MC.
 */
export function addColours(
  colours: string[],
  tokens: readonly Token[],
  label: string,
  from: number,
  to: number,
): void {
  const isList = /colou?rs$/i.test(label)
  const kind = sectionOf(label.toLowerCase().split(/\s+/))
  if (!isList && kind !== 'materials' && kind !== 'yarn' && kind !== 'colours') return
  const found: string[] = []
  for (let at = from; at < to; at++) {
    const { text } = tokens[at]!
    if (LETTER.test(text) && (isList || isNamed(tokens, at)) && !found.includes(text)) found.push(text)
  }
  const inTurn = [...found].sort().every((letter, at) => letter === String.fromCharCode(65 + at))
  if (!isList && (found.length < 2 || (!inTurn && !found.includes('MC')))) return
  for (const letter of found) if (!colours.includes(letter)) colours.push(letter)
}

/** Whether a colour is one of those known; of names that stand in no list nothing is known where that has letters. */
export const isKnownColour = (colour: string, known: readonly string[]): boolean =>
  known.length === 0 ||
  known.includes(colour) ||
  (!LETTER.test(colour) && known.every((each) => LETTER.test(each)))
