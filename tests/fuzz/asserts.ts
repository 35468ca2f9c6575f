/** What holds whatever was put in. */

/** A number that is none, with its place; null where there is none. JSON would turn it into null unseen. */
export function notFinite(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`
  if (value === null || typeof value !== 'object') return null
  for (const [key, inner] of Object.entries(value)) {
    const found = notFinite(inner, `${path}.${key}`)
    if (found) return found
  }
  return null
}

const SHARED = [
  Object.prototype,
  Array.prototype,
  String.prototype,
  Number.prototype,
  Function.prototype,
  Map.prototype,
]
const known = SHARED.map((prototype) => Reflect.ownKeys(prototype).length)

/** Something that everybody shares was written to. */
export const isPolluted = (): boolean =>
  SHARED.some((prototype, i) => Reflect.ownKeys(prototype).length !== known[i])

/** Fails with a reason. */
export function must(condition: boolean, reason: () => string): asserts condition {
  if (!condition) throw new Error(reason())
}

/** Words for people that show the inside of the program. */
export const LEAKS = /\bNaN\b(?!['"])|\bundefined\b(?!['"])|\[object |\{\w+\}(?!['"])/
