/** Names for new things in a project. */

export { freeLetter, LETTERS } from '../../../src-core/colour/letters'

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

/** `name`, or "name 2", "name 3"… where it is taken. */
export function freeName(name: string, taken: readonly (string | undefined)[]): string {
  if (!taken.includes(name)) return name
  let number = 2
  while (taken.includes(`${name} ${number}`)) number++
  return `${name} ${number}`
}
