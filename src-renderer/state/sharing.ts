/**
 * Structural sharing between two pieces of plain data: what is equal in `next` is taken from `before`, so that
 * whoever remembers by identity sees what stayed the same.
 */
export function shared<T>(before: unknown, next: T): T {
  if (Object.is(before, next)) return next
  if (typeof before !== 'object' || typeof next !== 'object' || before === null || next === null) return next
  if (Array.isArray(before) !== Array.isArray(next)) return next
  const old = before as Readonly<Record<string, unknown>>
  const fresh = next as Readonly<Record<string, unknown>>
  const keys = Object.keys(fresh)
  let isSame = keys.length === Object.keys(old).length
  const values = keys.map((key) => {
    const value = shared(old[key], fresh[key])
    if (value !== old[key] || !(key in old)) isSame = false
    return value
  })
  if (isSame) return before as T
  if (Array.isArray(next)) return values as T
  return Object.fromEntries(keys.map((key, index) => [key, values[index]])) as T
}
