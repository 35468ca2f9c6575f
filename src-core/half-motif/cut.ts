/**
 * Where rounds can be cut in half: a line through the middle on both sides of which every round is the same, stitch
 * for stitch, and into the same places. A line is told by a sum: it mirrors top i of a ring of n to top `sum − i`, and
 * meets the ring at the places `sum/2` and `(sum + n)/2`, on a top or between two.
 */
import { RING } from './rings'
import type { Ring, Top } from './rings'

/** The sum of a line in each ring, the first ring first. */
export type Cut = readonly number[]

const modulo = (value: number, count: number): number => ((value % count) + count) % count

const isAlike = (a: Top, b: Top): boolean =>
  a.kind === 'space' || b.kind === 'space'
    ? a.kind === b.kind && 'chains' in a && 'chains' in b && a.chains === b.chains
    : a.stitch === b.stitch

/** Whether `tops` are the same where `other` says which top stands for each; `target` says it of the ring before. */
function isSame({ tops }: Ring, other: (index: number) => number, target: (into: number) => number): boolean {
  return tops.every((top, i) => {
    const match = tops[modulo(other(i), tops.length)]!
    if (!isAlike(top, match)) return false
    if (top.kind === 'space' || match.kind === 'space') return true
    return top.into === RING ? match.into === RING : match.into === target(top.into)
  })
}

/** Half a turn leaves every ring as it is. */
const hasHalfTurn = (rings: readonly Ring[]): boolean =>
  rings.every((ring, i) => {
    const [own, before] = [ring.tops.length, rings[i - 1]?.tops.length ?? 0]
    if (own % 2 !== 0) return false
    return isSame(
      ring,
      (at) => at + own / 2,
      (into) => modulo(into + before / 2, before),
    )
  })

/** The line in all rings by its sum in the last; null where it mirrors one of them to something else. */
function cutBy(rings: readonly Ring[], last: number): Cut | null {
  const cut: number[] = []
  let sum = last
  for (let i = rings.length - 1; i >= 0; i--) {
    const ring = rings[i]!
    const { tops } = ring
    cut.unshift(sum)
    const before = rings[i - 1]?.tops.length ?? 0
    const at = tops.findIndex(({ kind }) => kind === 'stitch')
    const [one, other] = [tops[at], tops[modulo(sum - at, tops.length)]]
    if (one?.kind !== 'stitch' || other?.kind !== 'stitch') return null
    const next = before > 0 ? modulo(one.into + other.into, before) : 0
    const own = sum
    if (
      !isSame(
        ring,
        (each) => own - each,
        (into) => modulo(next - into, before),
      )
    )
      return null
    sum = next
  }
  return cut
}

/** All lines that cut the rounds into two equal halves, each of which is the same from either end. */
export function cutsOf(rings: readonly Ring[]): readonly Cut[] {
  if (!hasHalfTurn(rings)) return []
  const count = rings.at(-1)!.tops.length
  return Array.from({ length: count }, (_, sum) => cutBy(rings, sum)).filter((cut) => cut !== null)
}

/** How far a line passes from a top of a ring, in half tops. */
export function asideOf(sum: number, top: number, count: number): number {
  const off = modulo(2 * top - sum, count)
  return Math.min(off, count - off)
}
