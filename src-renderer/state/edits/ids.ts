/** Names for new things in a project. */

/** Letters of colourways: no I and no O, which paper confuses with 1 and 0. */
export const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

interface Named {
  readonly id: string
}

/** The first id of the form `prefix` + number that is not taken. */
export function freeId(prefix: string, taken: readonly Named[] = []): string {
  const known = new Set(taken.map((entry) => entry.id))
  let number = taken.length + 1
  while (known.has(`${prefix}${number}`)) number++
  return `${prefix}${number}`
}

/** The first letter (then pair of letters) that no colourway has. */
export function freeLetter(taken: readonly { readonly code?: string | undefined }[] = []): string {
  const known = new Set(taken.map((entry) => entry.code))
  for (const first of ['', ...LETTERS])
    for (const second of LETTERS) if (!known.has(first + second)) return first + second
  throw new Error(`all ${LETTERS.length * (LETTERS.length + 1)} colourway letters are taken`)
}

/** `name`, or "name 2", "name 3"… where it is taken. */
export function freeName(name: string, taken: readonly (string | undefined)[]): string {
  if (!taken.includes(name)) return name
  let number = 2
  while (taken.includes(`${name} ${number}`)) number++
  return `${name} ${number}`
}
