/** How many stitches the set-up round of an edging has: the multiple that its rounds come out even on. */
import type { Terms } from '../../shared-types/project'
import { EDGING } from './constants'
import { marksNamed } from './marks'
import type { Mark, MarkKind } from './marks'
import { readLoop } from './reading'

/** "Multiple of 6 plus 1". */
export interface Multiple {
  readonly of: number
  readonly plus: number
  readonly least: number
  /** Of every stretch from one corner, tip or dip to the next, or of the whole round. */
  readonly by: 'stretch' | 'round'
  /** A short loop that comes out even. */
  readonly sample: { readonly stitches: number; readonly marks: readonly Mark[] }
}

/** Corners of a loop that is tried. */
const TRIED = 3

/** The kinds of marks that texts name. */
export const kindsNamed = (works: readonly string[]): ReadonlySet<MarkKind> =>
  new Set(works.flatMap((work) => [...marksNamed(work)]))

/** A loop with as many stitches from mark to mark. */
function evenLoop(kinds: ReadonlySet<MarkKind>, each: number): Mark[] {
  const order: MarkKind[] = kinds.has('corner') && kinds.size === 1 ? ['corner'] : ['tip', 'dip']
  return Array.from({ length: TRIED * order.length }, (_, i): Mark[] => [
    ...(kinds.has('corner') && order.length > 1 && i % order.length === 0
      ? [{ kind: 'corner' as const, at: i * each, chains: 0 }]
      : []),
    { kind: order[i % order.length]!, at: i * each, chains: 0 },
  ]).flat()
}

/** Finds the multiple by reading the rounds on short loops; null where none of them comes out even. */
export function findMultiple(works: readonly string[], from: number, terms: Terms): Multiple | null {
  const kinds = kindsNamed(works)
  const stretches = kinds.size === 0 ? 1 : kinds.has('corner') && kinds.size === 1 ? TRIED : 2 * TRIED
  const even: number[] = []
  for (let each = 1; each <= EDGING.probes; each++) {
    const marks = kinds.size > 0 ? evenLoop(kinds, each) : []
    if (readLoop(works, each * stretches, marks, from, terms).fits) even.push(each)
    const [a, b, c] = even.slice(-EDGING.inARow)
    if (c !== undefined && c - b! === b! - a!) break
  }
  const [first, second] = even.slice(-2)
  if (first === undefined) return null
  const of = second === undefined ? first : second - first
  const marks = kinds.size > 0 ? evenLoop(kinds, first) : []
  return {
    ...{ of, plus: first % of, least: even[0]!, by: kinds.size > 0 ? 'stretch' : 'round' },
    sample: { stitches: first * stretches, marks },
  }
}

/** The nearest number of stitches that fits. */
export function nearest(count: number, { of, plus, least }: Multiple): number {
  const steps = Math.round((count - plus) / of)
  const fitting = plus + steps * of
  return fitting >= least ? fitting : least + ((((plus - least) % of) + of) % of)
}

/** Whole numbers near the targets with a given sum: the largest remainders are rounded up. */
function shared(targets: readonly number[], sum: number): number[] {
  const all = targets.reduce((total, target) => total + target, 0)
  const exact = targets.map((target) => (all > 0 ? (target * sum) / all : sum / targets.length))
  const counts = exact.map(Math.floor)
  const order = exact.map((_, i) => i).sort((a, b) => exact[b]! - counts[b]! - (exact[a]! - counts[a]!))
  const missing = sum - counts.reduce((total, count) => total + count, 0)
  for (const i of order.slice(0, missing)) counts[i]!++
  return counts
}

/** Stitches of a loop from corner to corner, near what its length takes. */
export function fitStretches(targets: readonly number[], multiple: Multiple | null): number[] {
  const whole = targets.reduce((sum, target) => sum + target, 0)
  if (!multiple) return shared(targets, Math.max(1, Math.round(whole)))
  const each = targets.map((target) => nearest(target, multiple))
  if (multiple.by === 'stretch') return each
  const isNear = each.every((count, i) => Math.abs(count - targets[i]!) <= EDGING.bySide * targets[i]!)
  return multiple.plus === 0 && isNear ? each : shared(targets, nearest(whole, multiple))
}
