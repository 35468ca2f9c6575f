/**
 * Petals counted by the notches between them, where the outline as a whole shows no repeat: short shells that differ in
 * length make a line whose ups and downs are those of chance, but it breaks once between each two of them: it is cut in,
 * or steps from one that is shorter to one that is longer.
 */
import type { Petalled } from './lobes'
import { CLEAR, ORDER } from './symmetry'
import { evenedOut } from './tips'

/** Share of the reach over which the line is evened out first, so that noise of single places cuts nothing. */
const EVENED = 0.008
/** Share of the reach over which the line goes in and out as far as it breaks there. */
const WITHIN = 0.055
/** The least depth of a notch as a share of the reach, and as a multiple of whatever else cuts in (stitches). */
const LEAST_DEPTH = 0.004
const DEEPER = 1.9
/** Notches are narrow: the most of a sector that one is wide at half its depth. */
const NARROW = 0.45
/** How far from even the spaces between them may be, as a share. */
const ASTRAY = 0.3

interface Cut {
  readonly at: number
  readonly depth: number
}

/**
 * The places that are nearer to the middle than all round them, the deepest first, and by how much the line has to come
 * out of each before it goes in deeper elsewhere.
 */
export function cutsOf(reach: ArrayLike<number>): Cut[] {
  const count = reach.length
  const order = Array.from({ length: count }, (_, at) => at).sort((a, b) => reach[a]! - reach[b]!)
  const belongs = new Int32Array(count).fill(-1)
  const rootOf = (at: number): number => {
    let root = at
    while (belongs[root] !== root) root = belongs[root]!
    return root
  }
  const cuts: Cut[] = []
  for (const at of order) {
    const sides = [(at + count - 1) % count, (at + 1) % count].filter((side) => belongs[side] !== -1)
    const roots = [...new Set(sides.map(rootOf))].sort((a, b) => reach[a]! - reach[b]!)
    belongs[at] = roots[0] ?? at
    // Two hollows meet here: the shallower one ends in the deeper.
    const [deeper, shallower] = roots
    if (deeper === undefined || shallower === undefined) continue
    cuts.push({ at: shallower, depth: reach[at]! - reach[shallower]! })
    belongs[shallower] = deeper
  }
  const least = rootOf(order[0]!)
  cuts.push({ at: least, depth: reach[order.at(-1)!]! - reach[least]! })
  return cuts.sort((a, b) => b.depth - a.depth)
}

/** How many directions about a cut lie under half of its depth. */
function widthOf(reach: ArrayLike<number>, { at, depth }: Cut): number {
  const count = reach.length
  const bound = reach[at]! + depth / 2
  let width = 1
  for (const way of [-1, 1])
    for (let by = 1; by < count && reach[(at + way * by + by * count) % count]! < bound; by++) width++
  return width
}

/** By how much the line goes in and out about each place, below nothing: a break is a cut into a line that is even. */
const breaksOf = (reach: readonly number[], by: number): number[] =>
  reach.map((_, at) => {
    let [low, high] = [Infinity, -Infinity]
    for (let i = -by; i <= by; i++) {
      const far = reach[(at + i + reach.length) % reach.length]!
      low = Math.min(low, far)
      high = Math.max(high, far)
    }
    return low - high
  })

/** How often the line breaks at equal spaces, and the direction midway between two of them; null where none do. */
export function notchesOf(
  raw: ArrayLike<number>,
  mean: number,
): { readonly order: number; readonly turn: number } | null {
  const count = raw.length
  const within = Math.round((WITHIN * count) / (4 * Math.PI))
  const reach = evenedOut(raw, Math.round((EVENED * count) / (4 * Math.PI)))
  const broken = evenedOut(breaksOf(reach, within), within)
  const cuts = cutsOf(broken)
  let best: { order: number; turn: number; times: number } | null = null
  for (let order = ORDER.least; order <= Math.min(ORDER.most, cuts.length); order++) {
    const chosen = cuts.slice(0, order).sort((a, b) => a.at - b.at)
    const depth = cuts[order - 1]!.depth
    const times = depth / Math.max(1e-9, cuts[order]?.depth ?? 0)
    if (depth < LEAST_DEPTH * mean || times < DEEPER || (best && best.times >= times)) continue
    const sector = count / order
    const isEven = chosen.every(({ at }, k) => {
      const next = chosen[(k + 1) % order]!.at
      return Math.abs(((next - at + count) % count) / sector - 1) < ASTRAY
    })
    if (!isEven || chosen.some((cut) => widthOf(broken, { ...cut, depth }) > NARROW * sector)) continue
    const [cosine, sine] = [Math.cos, Math.sin].map((of) =>
      chosen.reduce((sum, { at }) => sum + of((2 * Math.PI * order * at) / count), 0),
    ) as [number, number]
    best = { order, turn: (Math.atan2(sine, cosine) + Math.PI) / order, times }
  }
  return best && { order: best.order, turn: best.turn }
}

/** Cuts that part petals: the least depth as a share of the reach, and as a multiple of whatever else cuts in. */
const PARTING = { depth: 0.006, times: 2.2 } as const

/**
 * Whether just as many cuts as there are petals go into the line, at equal spaces, all of them deeper by far than
 * whatever else goes in. That petals are unlike and the whole is bent takes nothing from them.
 */
export function arePartedByCuts(raw: ArrayLike<number>, mean: number, order: number): boolean {
  const count = raw.length
  const cuts = cutsOf(evenedOut(raw, Math.round((EVENED * count) / (4 * Math.PI))))
  const least = cuts[order - 1]?.depth ?? 0
  if (least < PARTING.depth * mean || least < PARTING.times * (cuts[order]?.depth ?? 0)) return false
  const chosen = cuts.slice(0, order).sort((a, b) => a.at - b.at)
  return chosen.every(({ at }, k) => {
    const next = chosen[(k + 1) % order]!.at
    return Math.abs((((next - at + count) % count) * order) / count - 1) < ASTRAY
  })
}

/** A symmetry whose petals were looked at once more. */
export interface Notched extends Petalled {
  /** As many cuts into the line as petals were counted part them: another witness. */
  readonly parted: boolean
}

/** The same symmetry, by its notches where nothing else is clear. */
export function notched(symmetry: Petalled): Notched {
  const { order, reach, mean } = symmetry
  const own = { ...symmetry, parted: order > 0 && arePartedByCuts(reach, mean, order) }
  if (symmetry.hidden || (order > 0 && (symmetry.stands || symmetry.share > CLEAR))) return own
  const notches = notchesOf(reach, mean)
  if (!notches || notches.order === order) return own
  const parted = arePartedByCuts(reach, mean, notches.order)
  return { ...own, ...notches, parted, repeat: notches.order, within: false, stands: true, hidden: true }
}
