/** How many stitches the set-up round of an edging has: the multiple that its rounds come out even on. */
import type { Terms } from '../../shared-types/project'
import { EDGING } from './constants'
import { marksNamed } from './marks'
import type { Mark, MarkKind } from './marks'
import { readLoop } from './reading'
import type { ReadLoop } from './reading'

/** "Multiple of 6 plus 1". */
export interface Multiple {
  readonly of: number
  readonly plus: number
  readonly least: number
  /** Of every stretch from one corner, tip or dip to the next, or of the whole round. */
  readonly by: 'stretch' | 'round'
  /** Of the whole round with corners, tips or dips: by how much `plus` grows with each of them. */
  readonly perMark?: number
  /** A short loop that comes out even. */
  readonly sample: { readonly stitches: number; readonly marks: readonly Mark[] }
}

/** Of rounds that come out even on any number of stitches on each side. */
export const ANY_NUMBER: Multiple = {
  ...{ of: 1, plus: 0, least: 1, by: 'stretch' },
  sample: { stitches: 1, marks: [] },
}

/** Corners of a loop that is tried. */
const TRIED = 3

/** The kinds of marks that texts name. */
export const kindsNamed = (works: readonly string[]): ReadonlySet<MarkKind> =>
  new Set(works.flatMap((work) => [...marksNamed(work)]))

/** Marks of a loop with so many stitches from each to the next. */
function loopOf(kinds: ReadonlySet<MarkKind>, lengths: readonly number[]): Mark[] {
  const order = orderOf(kinds)
  let at = 0
  return lengths.flatMap((length, i): Mark[] => {
    const kind = order[i % order.length]!
    const isCorner = kinds.has('corner') && kind === 'tip'
    const marks: Mark[] = [
      ...(isCorner ? [{ kind: 'corner' as const, at, chains: 0 }] : []),
      { kind, at, chains: 0 },
    ]
    at += length
    return marks
  })
}

const orderOf = (kinds: ReadonlySet<MarkKind>): readonly MarkKind[] =>
  kinds.has('corner') && kinds.size === 1 ? ['corner'] : ['tip', 'dip']

/** Numbers that come out even: the first of them, one in a row with others, and how far they lie apart. */
interface Even {
  readonly least: number
  readonly first: number
  readonly of: number
}

function findEven(from: number, to: number, fits: (count: number) => boolean): Even | null {
  const even: number[] = []
  for (let count = from; count <= to; count++) {
    if (fits(count)) even.push(count)
    const [a, b, c] = even.slice(-EDGING.inARow)
    if (c !== undefined && c - b! === b! - a!) break
  }
  const [first, second] = even.slice(-2)
  if (first === undefined) return null
  return { least: even[0]!, first, of: second === undefined ? first : second - first }
}

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0)

/**
 * Finds the multiple by reading the rounds on short loops; null where none of them comes out even. One on which no
 * repeat runs on into where the round began goes first: "*skip 2, 5 dc in next st, skip 2, sc in next st" could also
 * end one stitch early.
 */
export function findMultiple(
  works: readonly string[],
  from: number,
  terms: Terms,
  special = '',
): Multiple | null {
  const kinds = kindsNamed(works)
  // The second search meets the loops of the first again: each is read once.
  const tried = new Map<string, Evenness>()
  const read = (lengths: readonly number[]): Evenness => {
    const key = lengths.join(' ')
    const known = tried.get(key)
    if (known) return known
    const loop = readLoop(works, total(lengths), marksOf(kinds, lengths), from, terms, undefined, special)
    const { fits, endsEven } = loop
    tried.set(key, { fits, endsEven })
    return { fits, endsEven }
  }
  return (
    multipleWhere(kinds, (lengths) => read(lengths).endsEven) ??
    multipleWhere(kinds, (lengths) => read(lengths).fits)
  )
}

type Evenness = Pick<ReadLoop, 'fits' | 'endsEven'>

const marksOf = (kinds: ReadonlySet<MarkKind>, lengths: readonly number[]): Mark[] =>
  kinds.size > 0 ? loopOf(kinds, lengths) : []

/** The multiple of the loops that fit, by the stitches of each of their stretches. */
function multipleWhere(
  kinds: ReadonlySet<MarkKind>,
  fits: (lengths: readonly number[]) => boolean,
): Multiple | null {
  const inTurn = orderOf(kinds).length
  const stretches = kinds.size === 0 ? 1 : TRIED * inTurn
  const alike = (each: number, many = stretches): number[] => Array.from({ length: many }, () => each)
  const spread = (count: number, many = stretches): number[] => shared(alike(1, many), count)
  const found = ({ of, first, least }: Even, by: Multiple['by'], lengths: readonly number[]): Multiple => ({
    ...{ of, plus: first % of, least, by },
    sample: { stitches: total(lengths), marks: marksOf(kinds, lengths) },
  })
  const even = findEven(1, EDGING.probes, (each) => fits(alike(each)))
  if (kinds.size === 0) return even && found(even, 'round', alike(even.first))
  // Sides of one length hide a repeat that runs on past the corners: there all of them together have to come out even.
  const isOfEach = ({ first }: Even, of: number): boolean =>
    [0, stretches - 1].every((one) => fits(alike(first).map((each, i) => (i === one ? each + of : each))))
  if (even && isOfEach(even, even.of)) return found(even, 'stretch', alike(even.first))
  const inAll = findEven(stretches, stretches * EDGING.probes, (count) => fits(spread(count)))
  if (inAll && inAll.first > stretches) {
    const lengths = spread(inAll.first)
    const moved = lengths.map((each, i) => each + (i === 0 ? 1 : i === stretches - 1 ? -1 : 0))
    if (fits(moved)) {
      const more = stretches + inTurn
      const next = findEven(more, more + inAll.of, (count) => fits(spread(count, more)))
      const perMark = next ? modulo(next.least - inAll.first, inAll.of) : 0
      return { ...found(inAll, 'round', lengths), perMark }
    }
  }
  const times = even && SIDES_TIMES.find((many) => isOfEach(even, many * even.of))
  return even && found(times ? { ...even, of: times * even.of } : even, 'stretch', alike(even.first))
}

/** Where each side and all of them have to come out even: how many times the multiple of like sides is tried (ours). */
const SIDES_TIMES = [2, 3, 4, 6]

const modulo = (value: number, of: number): number => ((value % of) + of) % of

/** The multiple of a loop with so many stretches from mark to mark. */
export function multipleFor(multiple: Multiple, stretches: number, kinds: ReadonlySet<MarkKind>): Multiple {
  const { of, plus, perMark } = multiple
  if (perMark === undefined || stretches === 0) return multiple
  const turns = stretches / orderOf(kinds).length
  return { ...multiple, plus: modulo(plus + (turns - TRIED) * perMark, of), least: stretches }
}

/** The nearest number of stitches that fits. */
export function nearest(count: number, { of, plus, least }: Multiple): number {
  const steps = Math.round((count - plus) / of)
  const fitting = plus + steps * of
  return fitting >= least ? fitting : least + modulo(plus - least, of)
}

/** Sides that are as long but for how numbers are rounded have as much left, whichever way an edge is worked. */
const thousandths = (share: number): number => Math.round(1000 * share)

/** Whole numbers near the targets with a given sum: the largest remainders are rounded up. */
function shared(targets: readonly number[], sum: number): number[] {
  const all = targets.reduce((total, target) => total + target, 0)
  const exact = targets.map((target) => (all > 0 ? (target * sum) / all : sum / targets.length))
  const counts = exact.map(Math.floor)
  const over = (i: number): number => thousandths(exact[i]! - counts[i]!)
  const order = exact.map((_, i) => i).sort((a, b) => over(b) - over(a))
  const missing = sum - counts.reduce((total, count) => total + count, 0)
  for (const i of order.slice(0, missing)) counts[i]!++
  return counts
}

const isAny = ({ of, plus, by }: Multiple): boolean => of === 1 && plus === 0 && by === 'stretch'

/** Whole numbers near the targets, sides of one length alike, and all together as near to what they take as that allows. */
function alike(targets: readonly number[], least: number): number[] {
  const counts = targets.map((target) => Math.max(least, Math.floor(target)))
  const whole = total(targets)
  const kinds = new Map<string, number[]>()
  targets.forEach((target, i) => {
    const key = target.toFixed(3)
    kinds.set(key, [...(kinds.get(key) ?? []), i])
  })
  const over = (kind: readonly number[]): number =>
    thousandths(targets[kind[0]!]! - Math.floor(targets[kind[0]!]!))
  let sum = total(counts)
  for (const kind of [...kinds.values()].sort((a, b) => over(b) - over(a))) {
    if (Math.abs(sum + kind.length - whole) >= Math.abs(sum - whole)) continue
    for (const i of kind) counts[i]!++
    sum += kind.length
  }
  return counts
}

/**
 * What each side has to come out even on so that every corner falls on the same stitch of a repeat: where all sides
 * together come out even then; else null.
 */
function ofEachSide(multiple: Multiple, sides: number): Multiple | null {
  const { of, plus, perMark = 0 } = multiple
  if (multiple.by === 'stretch') return multiple
  return modulo(sides * perMark - plus, of) === 0
    ? { ...multiple, plus: modulo(perMark, of), least: 1 }
    : null
}

/**
 * Stitches of a loop from corner to corner, near what its length takes: where that changes no side much, with as many
 * repeats on each side as come out whole, so that sides of one length and all corners are alike.
 */
export function fitStretches(targets: readonly number[], multiple: Multiple | null): number[] {
  const whole = targets.reduce((sum, target) => sum + target, 0)
  if (!multiple) return shared(targets, Math.max(1, Math.round(whole)))
  if (isAny(multiple)) return alike(targets, multiple.least)
  const side = ofEachSide(multiple, targets.length)
  const each = side && targets.map((target) => nearest(target, side))
  if (each && multiple.by === 'stretch') return each
  const isNear = each?.every((count, i) => Math.abs(count - targets[i]!) <= EDGING.bySide * targets[i]!)
  return each && isNear ? each : shared(targets, nearest(whole, multiple))
}

/** The nearest numbers of stitches with which repeats come out whole on every side. */
export interface WholeSides {
  readonly fewer: number
  readonly more: number
  /** What each side has, and how many stitches more (or fewer) come nearest to it with whole repeats. */
  readonly sides: readonly SideChange[]
}

export interface SideChange {
  readonly stitches: number
  readonly more: number
}

/** Where repeats do not come out whole on each side: what would; null where they do, or where no number of them does. */
export function wholeSides(stretches: readonly number[], multiple: Multiple | null): WholeSides | null {
  const side =
    multiple?.by === 'round' && stretches.length > 1 ? ofEachSide(multiple, stretches.length) : null
  if (!side) return null
  const over = stretches.map((count) => modulo(count - side.plus, side.of))
  if (over.every((each) => each === 0)) return null
  const fewer = total(stretches.map((count, i) => Math.max(side.plus, count - over[i]!)))
  const more = total(stretches.map((count, i) => count + modulo(-over[i]!, side.of)))
  const sides = stretches.map((count) => ({ stitches: count, more: nearest(count, side) - count }))
  return { fewer, more, sides }
}
