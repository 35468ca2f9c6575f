/** The letters that colourways are known by. */

/** Letters of colourways: no I and no O, which paper confuses with 1 and 0. */
export const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The first letter (then pair of letters) that no colourway has. */
export function freeLetter(taken: readonly { readonly code?: string | undefined }[] = []): string {
  const known = new Set(taken.map((entry) => entry.code))
  for (const first of ['', ...LETTERS])
    for (const second of LETTERS) if (!known.has(first + second)) return first + second
  throw new Error(`all ${LETTERS.length * (LETTERS.length + 1)} colourway letters are taken`)
}

const PART = /^colou?r ([A-Z]{1,2})$/

/** Letters that the words of a pattern give its yarns ("Join B"), from parts of motifs that are named by them. */
export const patternLetters = (parts: readonly string[]): string[] => [
  ...new Set(parts.flatMap((part) => PART.exec(part)?.[1] ?? [])),
]
