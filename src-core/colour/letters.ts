/** The letters that colourways are known by. */

import { remembered } from '../memo'

/** Letters of colourways: no I and no O, which paper confuses with 1 and 0. */
export const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The first letter (then pair of letters) that no colourway has. */
export function freeLetter(taken: readonly { readonly code?: string | undefined }[] = []): string {
  const known = new Set(taken.map((entry) => entry.code))
  for (const first of ['', ...LETTERS])
    for (const second of LETTERS) if (!known.has(first + second)) return first + second
  throw new Error(`all ${LETTERS.length * (LETTERS.length + 1)} colourway letters are taken`)
}

/**
 * The code of each colourway: its own, or a letter by its place in the file, or the next that no other has. `own`: what
 * counts as its own.
 */
export function codesOf<Way extends { readonly code?: string | undefined }>(
  colourways: readonly Way[],
  own: (way: Way) => string = ({ code = '' }) => code.trim(),
): string[] {
  const taken = new Set(colourways.map(own))
  return colourways.map((way, index) => {
    const written = own(way)
    if (written) return written
    const letters = Array.from({ length: LETTERS.length }, (_, i) => LETTERS[(index + i) % LETTERS.length]!)
    const code = letters.find((letter) => !taken.has(letter)) ?? letters[0]!
    taken.add(code)
    return code
  })
}

/** Colourways with the letter of each, where the file gives it none: on every sheet and in every list it has that. */
export const lettered = remembered(
  <Way extends { readonly code?: string | undefined }>(colourways: readonly Way[]): Way[] => {
    const codes = codesOf(colourways)
    return colourways.map((way, i) => (way.code?.trim() ? way : { ...way, code: codes[i]! }))
  },
)

const PART = /^colou?r ([A-Z]{1,2})$/

/** Letters that the words of a pattern give its yarns ("Join B"), from parts of motifs that are named by them. */
export const patternLetters = (parts: readonly string[]): string[] => [
  ...new Set(parts.flatMap((part) => PART.exec(part)?.[1] ?? [])),
]
