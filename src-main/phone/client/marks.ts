/** Which motifs are made: as the project said when the page was written, and what was changed on this phone since. */
import type { PhoneData } from '../data'

export interface Marks {
  isMade(id: string): boolean
  set(id: string, made: boolean): void
  /** Forgets what was changed here. */
  clear(): void
  /** All that are made, in working order. */
  made(): string[]
  /** Those whose mark of the project was taken away here. */
  removed(): string[]
  /** Whether this browser keeps anything for the page. */
  readonly kept: boolean
  listen(listener: () => void): void
}

export function createMarks({ key, pieces, made }: PhoneData): Marks {
  const begun = new Set(made)
  const known = new Set(pieces.map(({ id }) => id))
  const changed = new Map<string, boolean>()
  const listeners: (() => void)[] = []
  let kept = true

  try {
    const stored: unknown = JSON.parse(localStorage.getItem(key) ?? '{}')
    if (stored !== null && typeof stored === 'object')
      for (const [id, value] of Object.entries(stored))
        if (typeof value === 'boolean' && known.has(id)) changed.set(id, value)
  } catch {
    // What cannot be read is as good as nothing; whether it can be written is asked below.
  }
  const keep = (): void => {
    try {
      localStorage.setItem(key, JSON.stringify(Object.fromEntries(changed)))
    } catch {
      kept = false
    }
  }
  keep()

  const isMade = (id: string): boolean => changed.get(id) ?? begun.has(id)
  const tell = (): void => {
    keep()
    for (const listener of listeners) listener()
  }
  return {
    isMade,
    set(id, value) {
      if (id === '') return
      changed.set(id, value)
      tell()
    },
    clear() {
      changed.clear()
      tell()
    },
    made: () => pieces.flatMap(({ id }) => (id !== '' && isMade(id) ? [id] : [])),
    removed: () => [...begun].filter((id) => known.has(id) && !isMade(id)),
    get kept() {
      return kept
    },
    listen: (listener) => void listeners.push(listener),
  }
}
