/**
 * How a plan travels from the worker to the window. What is long where there are many motifs goes as the bytes of a text
 * and is read when somebody looks at it: bytes change hands without being copied, thousands of objects are copied one
 * by one, and all of it in the thread that should answer the next key.
 */
import type { Plan } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'
import { telling, toldAs, withFields } from '../../src-core/telling'

const LONG = ['motifs', 'joins', 'order', 'holes', 'fillers', 'fillerSteps', 'halves', 'findings'] as const
type Long = (typeof LONG)[number]
const isLong = (key: string): key is Long => (LONG as readonly string[]).includes(key)

/** Items of a list that are written and read at a stretch: a few ms of them. */
const AT_A_STRETCH = 500

/** Fields of a plan, the long ones in pieces, each the text of a list in UTF-8. */
export interface Parcel {
  readonly light: Partial<Omit<Plan, Long | 'settled'>>
  readonly long: Readonly<Partial<Record<Long, readonly ArrayBuffer[]>>>
}

/** What is written as JSON, in bytes. */
export const bytesOf = (value: unknown): ArrayBuffer => new TextEncoder().encode(JSON.stringify(value)).buffer

/** The project itself stays behind: whoever asked has it. Between pieces of what is long it pauses. */
export function* packing({ settled: _, ...fields }: Partial<Plan>): Generator<null, Parcel, void> {
  const light = Object.entries(fields).filter(([key]) => !isLong(key))
  const long: Partial<Record<Long, ArrayBuffer[]>> = {}
  for (const key of LONG) {
    const list = fields[key]
    if (!list) continue
    const pieces: ArrayBuffer[] = (long[key] = [])
    for (let from = 0; from < list.length; from += AT_A_STRETCH) {
      yield null
      pieces.push(bytesOf(list.slice(from, from + AT_A_STRETCH)))
    }
  }
  return { light: Object.fromEntries(light), long }
}

/**
 * The plan of a project: the plan before with the fields of a parcel. What is long is not read yet, neither the old
 * nor the new.
 */
export function unpacked({ light, long }: Parcel, settled: Settled, before?: Plan): Plan {
  const lists = Object.entries(long).map(([key, pieces]) =>
    toldAs(
      key,
      telling(() => read(pieces)),
    ),
  )
  return withFields((before ?? {}) as Plan, { ...light, settled }, ...lists) as Plan
}

/** Reads pieces of a list one after the other, as far as they are asked for. */
function* read(pieces: readonly ArrayBuffer[]): Generator<unknown, void, void> {
  for (const piece of pieces) yield* JSON.parse(new TextDecoder().decode(piece)) as unknown[]
}
