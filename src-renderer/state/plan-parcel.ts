/**
 * How a plan travels from the worker to the window. What is long where there are many motifs goes as text and is
 * read when somebody looks at it: the browser copies a text at once, thousands of objects one by one, and all of it
 * in the thread that should answer the next key.
 */
import type { Plan } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'

const LONG = ['motifs', 'joins', 'order', 'holes', 'fillers', 'fillerSteps', 'halves', 'findings'] as const
type Long = (typeof LONG)[number]
const isLong = (key: string): key is Long => (LONG as readonly string[]).includes(key)

/** Fields of a plan, the long ones as text. */
export interface Parcel {
  readonly light: Partial<Omit<Plan, Long | 'settled'>>
  readonly long: Readonly<Partial<Record<Long, string>>>
}

/** The project itself stays behind: whoever asked has it. */
export function packed({ settled: _, ...fields }: Partial<Plan>): Parcel {
  const entries = Object.entries(fields)
  const light = entries.filter(([key]) => !isLong(key))
  const long = entries.filter(([key]) => isLong(key))
  return {
    light: Object.fromEntries(light),
    long: Object.fromEntries(long.map(([key, value]) => [key, JSON.stringify(value)])),
  }
}

/**
 * The plan of a project: the plan before with the fields of a parcel. What is long is not read yet, neither the old
 * nor the new.
 */
export function unpacked({ light, long }: Parcel, settled: Settled, before?: Plan): Plan {
  const plan = Object.defineProperties({}, before ? Object.getOwnPropertyDescriptors(before) : {}) as Plan
  for (const [key, value] of Object.entries({ ...light, settled }))
    Object.defineProperty(plan, key, { value, enumerable: true, configurable: true, writable: true })
  for (const [key, text] of Object.entries(long))
    Object.defineProperty(plan, key, { get: readOnce(text), enumerable: true, configurable: true })
  return plan
}

/** Reads a text when it is asked for the first time, and lets go of it. */
function readOnce(text: string): () => unknown {
  let waiting: string | null = text
  let read: unknown
  return () => {
    if (waiting !== null) {
      read = JSON.parse(waiting)
      waiting = null
    }
    return read
  }
}
