/** What one value of JSON differs in from another, as small as its change; what is the same is shared, not copied. */

/** How to come from one value to the other. */
export type Difference =
  | { readonly is: 'same' }
  | { readonly is: 'other'; readonly value: unknown }
  | {
      readonly is: 'fields'
      readonly fields: readonly (readonly [string, Difference | null])[]
      /** All names in order, where it does not follow: what goes leaves its place, what comes is last. */
      readonly order: readonly string[] | null
    }
  /** Between `from` entries at the start and `to` at the end that are the same, others stand. */
  | {
      readonly is: 'entries'
      readonly from: number
      readonly to: number
      readonly between: readonly unknown[]
    }
  /** As many as before, some of them changed. */
  | { readonly is: 'changed'; readonly entries: readonly (readonly [number, Difference])[] }

const SAME: Difference = { is: 'same' }

type Fields = Readonly<Record<string, unknown>>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What leads from `before` to `after`. */
export function difference(before: unknown, after: unknown): Difference {
  if (Object.is(before, after)) return SAME
  if (Array.isArray(before) && Array.isArray(after)) return betweenLists(before, after)
  if (isFields(before) && isFields(after)) return betweenFields(before, after)
  return { is: 'other', value: after }
}

function betweenFields(before: Fields, after: Fields): Difference {
  const fields: [string, Difference | null][] = []
  const kept: string[] = []
  for (const name of Object.keys(before)) {
    if (!Object.hasOwn(after, name)) {
      fields.push([name, null])
      continue
    }
    kept.push(name)
    const inside = difference(before[name], after[name])
    if (inside.is !== 'same') fields.push([name, inside])
  }
  const names = Object.keys(after)
  for (const name of names)
    if (!Object.hasOwn(before, name)) {
      fields.push([name, { is: 'other', value: after[name] }])
      kept.push(name)
    }
  const isInOrder = kept.every((name, at) => name === names[at])
  return fields.length === 0 && isInOrder ? SAME : { is: 'fields', fields, order: isInOrder ? null : names }
}

function betweenLists(before: readonly unknown[], after: readonly unknown[]): Difference {
  if (before.length === after.length) {
    const entries = after.flatMap((value, at) => {
      const inside = difference(before[at], value)
      return inside.is === 'same' ? [] : [[at, inside] as const]
    })
    return entries.length === 0 ? SAME : { is: 'changed', entries }
  }
  const shorter = Math.min(before.length, after.length)
  let from = 0
  while (from < shorter && Object.is(before[from], after[from])) from++
  let to = 0
  while (to < shorter - from && Object.is(before.at(-1 - to), after.at(-1 - to))) to++
  return { is: 'entries', from, to, between: after.slice(from, after.length - to) }
}

/** The value to which a difference leads. */
export function appliedTo(before: unknown, by: Difference): unknown {
  switch (by.is) {
    case 'same':
      return before
    case 'other':
      return by.value
    case 'entries': {
      const list = before as readonly unknown[]
      return [...list.slice(0, by.from), ...by.between, ...list.slice(list.length - by.to)]
    }
    case 'changed': {
      const list = [...(before as readonly unknown[])]
      for (const [at, inside] of by.entries) list[at] = appliedTo(list[at], inside)
      return list
    }
    case 'fields': {
      const { ...fields } = before as Record<string, unknown>
      for (const [name, inside] of by.fields)
        if (inside === null) delete fields[name]
        else put(fields, name, appliedTo(fields[name], inside))
      if (!by.order) return fields
      const ordered: Record<string, unknown> = {}
      for (const name of by.order) put(ordered, name, fields[name])
      return ordered
    }
  }
}

/** Also a name that means something else to the language. */
function put(fields: Record<string, unknown>, name: string, value: unknown): void {
  Object.defineProperty(fields, name, { value, enumerable: true, configurable: true, writable: true })
}
