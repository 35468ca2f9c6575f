/**
 * How a plan travels from the worker to the window. What is long where there are many motifs goes as the bytes of a text
 * and is read when somebody looks at it: bytes change hands without being copied, thousands of objects are copied one
 * by one, and all of it in the thread that should answer the next key.
 */
import type { Plan } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'

const LONG = ['motifs', 'joins', 'order', 'holes', 'fillers', 'fillerSteps', 'halves', 'findings'] as const
type Long = (typeof LONG)[number]
const isLong = (key: string): key is Long => (LONG as readonly string[]).includes(key)

/** Fields of a plan, the long ones as text in UTF-8. */
export interface Parcel {
  readonly light: Partial<Omit<Plan, Long | 'settled'>>
  readonly long: Readonly<Partial<Record<Long, ArrayBuffer>>>
}

/** What is written as JSON, in bytes. */
export const bytesOf = (value: unknown): ArrayBuffer => new TextEncoder().encode(JSON.stringify(value)).buffer

/** The project itself stays behind: whoever asked has it. Between long fields it pauses. */
export function* packing({ settled: _, ...fields }: Partial<Plan>): Generator<null, Parcel, void> {
  const entries = Object.entries(fields)
  const light = entries.filter(([key]) => !isLong(key))
  const long: Partial<Record<Long, ArrayBuffer>> = {}
  for (const [key, value] of entries) {
    if (!isLong(key)) continue
    yield null
    long[key] = bytesOf(value)
  }
  return { light: Object.fromEntries(light), long }
}

/**
 * The plan of a project: the plan before with the fields of a parcel. What is long is not read yet, neither the old
 * nor the new.
 */
export function unpacked({ light, long }: Parcel, settled: Settled, before?: Plan): Plan {
  const plan = Object.defineProperties({}, before ? Object.getOwnPropertyDescriptors(before) : {}) as Plan
  for (const [key, value] of Object.entries({ ...light, settled }))
    Object.defineProperty(plan, key, { value, enumerable: true, configurable: true, writable: true })
  for (const [key, bytes] of Object.entries(long))
    Object.defineProperty(plan, key, { get: readOnce(bytes), enumerable: true, configurable: true })
  return plan
}

/** Reads a text when it is asked for the first time, and lets go of it. */
function readOnce(bytes: ArrayBuffer): () => unknown {
  let waiting: ArrayBuffer | null = bytes
  let read: unknown
  return () => {
    if (waiting !== null) {
      read = JSON.parse(new TextDecoder().decode(waiting))
      waiting = null
    }
    return read
  }
}
