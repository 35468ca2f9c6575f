/**
 * M46: limits of a fill where several motifs share them. How often each motif stands in each colourway is one integer
 * program; each motif is then coloured within what the others leave.
 */
import type { YarnForMotifs } from '../../shared-types/plan'
import { isUsableOrZero } from '../units/usable'
import type { ColourCell, Fill } from './assign'
import { countsWithin, excessOf, isWithinLimits } from './counts'
import type { CountTask } from './counts'
import { weighed } from './limits'
import type { Limits, Proof } from './limits'
import { mirrored } from './mirror'

/** The cells of one motif. */
export interface Part {
  /** Number of the motif. */
  readonly kind: number
  readonly cells: readonly ColourCell[]
  /** The colourways that its fill chooses from. */
  readonly chosen: readonly string[]
  /** What is painted or held, by "row,place". */
  readonly byHand: ReadonlyMap<string, string>
}

/** What colourways leave for one motif, painted cells of its own still to be counted. */
interface LeftFor {
  readonly most: Record<string, number>
  readonly yarns: readonly YarnForMotifs[]
}

interface Shared {
  /** For a part, once those before it are filled; those after it take what the program gave them. */
  readonly leftFor: (part: number, filled: readonly (readonly string[])[]) => LeftFor
  /** What is known of fillings less far beyond the limits than one with these counts. */
  readonly proofOf: (cells: readonly number[]) => Proof
}

interface Together {
  /** Limits for the free cells, by motif and colourway. */
  readonly limits: Limits
  /** The colourways that have a limit each, in the order of `limits.most`. */
  readonly ids: readonly string[]
  /** Free cells of each motif and colourway in a filling of each part. */
  readonly count: (filled: readonly (readonly string[])[]) => number[]
  readonly isKept: (filled: readonly (readonly string[])[]) => boolean
  /** What fillings of all the others leave for a part. */
  readonly beside: (part: number, filled: readonly (readonly string[])[]) => LeftFor
  readonly share: (plain: readonly (readonly string[])[]) => Shared
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** What one motif takes of a yarn in a colourway. */
const gramsIn = ({ each, others }: YarnForMotifs, kind: number, id: string): number =>
  (kind === 0 ? each : others?.[kind - 1])?.[id] ?? 0

/** The limits that parts share; null where there are none. */
export function limitsTogether(
  fill: Fill | undefined,
  parts: readonly Part[],
  stash: readonly YarnForMotifs[],
): Together | null {
  const limited = (id: string): boolean => isUsableOrZero(fill?.most?.[id])
  const ids = [...new Set(parts.flatMap(({ chosen }) => chosen))]
  if (stash.length === 0 && !ids.some(limited)) return null
  const entries = parts.flatMap((part, index) =>
    part.chosen.map((id) => ({ part: index, kind: part.kind, id })),
  )
  const byHand = parts.flatMap(({ kind, byHand }) => [...byHand.values()].map((id) => ({ kind, id })))
  const limits: Limits = {
    most: ids.map((id) => {
      const painted = byHand.filter((each) => each.id === id).length
      return limited(id) ? Math.floor(fill!.most![id]!) - painted : Infinity
    }),
    shares: entries.map(({ id }) => ids.indexOf(id)),
    yarns: stash.map((yarn) =>
      weighed({
        ...yarn,
        left: yarn.left - sum(byHand.map(({ kind, id }) => gramsIn(yarn, kind, id))),
        each: entries.map(({ kind, id }) => gramsIn(yarn, kind, id)),
      }),
    ),
  }
  const count = (filled: readonly (readonly string[])[]): number[] => {
    const place = new Map(entries.map(({ part, id }, at) => [`${part} ${id}`, at]))
    const counts = entries.map(() => 0)
    filled.forEach((colourways, part) =>
      colourways.forEach((id, cell) => {
        const { cells, byHand } = parts[part]!
        const at = place.get(`${part} ${id}`)
        if (at !== undefined && !byHand.has(cells[cell]!.id)) counts[at]! += 1
      }),
    )
    return counts
  }
  const share = (plain: readonly (readonly string[])[]): Shared => {
    const task: CountTask = { ...limits, groups: groupsOf(fill, parts, entries), wish: count(plain) }
    const target = countsWithin(task)
    const bound = target.isLeast ? excessOf(limits, target.cells) : null
    const weigh = ({ cells, grams }: ReturnType<typeof excessOf>) => [sum(cells), sum(grams)] as const
    return {
      leftFor: (part, filled) => leftFor(fill, parts, stash, entries, part, count(filled), target.cells),
      proofOf(cells) {
        if (!bound) return { isLeast: false }
        const [motifs, grams] = weigh(bound)
        const [over, short] = weigh(excessOf(limits, cells))
        const isLeast = over === motifs && short <= grams + 1e-6
        return { isLeast, atLeast: motifs + grams > 0 ? { motifs, grams } : undefined }
      },
    }
  }
  const beside = (part: number, filled: readonly (readonly string[])[]): LeftFor => {
    const counts = count(filled)
    return leftFor(fill, parts, stash, entries, part, counts, counts)
  }
  return { limits, ids, count, isKept: (filled) => isWithinLimits(limits, count(filled)), beside, share }
}

interface Entry {
  readonly part: number
  readonly kind: number
  readonly id: string
}

/** Cells that take one colour together, part by part. */
const groupsOf = (
  fill: Fill | undefined,
  parts: readonly Part[],
  entries: readonly Entry[],
): CountTask['groups'] =>
  parts.flatMap(({ cells, byHand }, index) => {
    const colours = entries.flatMap(({ part }, at) => (part === index ? [at] : []))
    const many = new Map<number, number>()
    for (const group of mirrored(cells, fill?.symmetry)) {
      const size = group.filter((cell) => !byHand.has(cells[cell]!.id)).length
      if (size > 0) many.set(size, (many.get(size) ?? 0) + 1)
    }
    return [...many]
      .sort(([a], [b]) => a - b)
      .map(([size, count]) => ({ size, many: count, ...(colours.length > 0 && { colours }) }))
  })

function leftFor(
  fill: Fill | undefined,
  parts: readonly Part[],
  stash: readonly YarnForMotifs[],
  entries: readonly Entry[],
  own: number,
  filled: readonly number[],
  target: readonly number[],
): LeftFor {
  /** Motifs of others in each colourway: those that are filled, those that are to come, and what is painted. */
  const taken = [
    ...entries.flatMap(({ part, kind, id }, at) =>
      part === own ? [] : [{ kind, id, many: (part < own ? filled[at] : target[at]) ?? 0 }],
    ),
    ...parts.flatMap(({ kind, byHand }, part) =>
      part === own ? [] : [...byHand.values()].map((id) => ({ kind, id, many: 1 })),
    ),
  ]
  const most = Object.entries(fill?.most ?? {}).flatMap(([id, limit]) => {
    if (!isUsableOrZero(limit)) return []
    const others = sum(taken.map((each) => (each.id === id ? each.many : 0)))
    return [[id, Math.max(0, Math.floor(limit) - others)] as const]
  })
  const { kind } = parts[own]!
  const yarns = stash.map((yarn) => ({
    ...yarn,
    left: yarn.left - sum(taken.map(({ kind, id, many }) => many * gramsIn(yarn, kind, id))),
    each: kind === 0 ? yarn.each : (yarn.others?.[kind - 1] ?? {}),
  }))
  return { most: Object.fromEntries(most), yarns }
}
