/** M26: which of several blankets goes before another, against the size that was asked for: at the start and in fits alike. */
import type { FitArrangement, MotifAccount } from '../../shared-types/plan'
import type { OutlineShape } from '../../shared-types/project'
import { betweenLevel } from '../joins/between'
import { gapesMostly } from '../joins/checks'
import { closedForChild } from '../joins/for-child'
import { holds } from '../joins/holding'
import type { Millimetres } from '../units/quantity'
import { byHolding, missOf } from './candidates'
import { closingOf, closingOnesFirst } from './closing'
import type { Wish } from './candidates'
import { atPoint } from './outline'
import { periodOf } from './trials'

/** What blankets are held against. */
export interface Measure {
  readonly wish: Wish
  readonly outline: OutlineShape | undefined
  /** Of the blanket. */
  readonly motif: MotifAccount
  /** Whether fits say what they leave open. */
  readonly isTold: boolean
}

/**
 * The rows in which motifs with straight sides close: squares and octagons side by side, hexagons and triangles half a
 * place aside. In others they leave holes as large as half of one (common practice, no source).
 */
const closingRows = ({ shape, petals }: MotifAccount): FitArrangement['arrangement'] | null =>
  shape !== 'straight' ? null : petals % 4 === 0 ? 'straight-rows' : 'offset-rows'

/** Rotations in which sides lie on sides, to a thousandth of what a rotation comes back after. */
const ON_SIDES = 1e-3

/** Whether the sides of a motif lie on those of its neighbours all along. */
function closes({ arrangement, turn, alternateTurn }: FitArrangement, motif: MotifAccount): boolean {
  const isOnSides = (degrees: number) => {
    const periods = degrees / periodOf(motif)
    return Math.abs(periods - Math.round(periods)) < ON_SIDES
  }
  return arrangement === closingRows(motif) && isOnSides(turn) && isOnSides(alternateTurn)
}

/**
 * Of all that close, squares and octagons begin in straight rows, side on side, wherever these hold and come within half
 * a motif of the size: that is how they are laid (common practice, no source). The rest keeps its order.
 */
function usualFirst(fits: readonly FitArrangement[], motif: MotifAccount): FitArrangement[] {
  const isUsual = (fit: FitArrangement): boolean => {
    const { holds, gapes } = judged(fit)
    return holds && !gapes && isWithinHalf(fit.error, motif.overTips) && closes(fit, motif)
  }
  const usual = closingRows(motif) === 'straight-rows' ? fits.find(isUsual) : undefined
  return usual ? [usual, ...fits.filter((fit) => fit !== usual)] : [...fits]
}

/** Misses that differ by less are the same. */
const SAME_MISS = 1e-9

/** What a motif is joined at, over all. */
const joinsEach = ({ joins = 0, motifs }: FitArrangement): number => joins / Math.max(1, motifs)

/** How a planned fit is joined: a patch judged, the plan itself decides. */
export const judged = (fit: FitArrangement) => ({
  holds: fit.motifs > 1 && holds(fit),
  gapes: gapesMostly(fit.wide),
  between: betweenLevel(fit.between),
})

/** By what it is compared which of several closes between its motifs; without `overTips` none is near to a size. */
export const toCloseOf = (fit: FitArrangement, overTips?: Millimetres, leaves = fit.leaves ?? 0) => ({
  ...{ holds: judged(fit).holds, gapes: fit.wide !== undefined, leaves },
  isNear: overTips !== undefined && isWithinHalf(fit.error, overTips),
})

/** Whether a size is met to half a motif: an even edge is worth no more than that. */
export const isWithinHalf = (error: FitArrangement['error'], overTips: Millimetres): boolean =>
  Math.max(Math.abs(error.width), Math.abs(error.height)) <= overTips / 2

/** Rows after which the steps of an edge that runs evenly come again: "1, 3, 1, 3" is as regular as "2, 2" (ours). */
const STEPS_COME_AGAIN = 3

/**
 * Of a triangle: 0 where its edges run evenly, step after step or in a turn of few rows, 1 where they do not. The row at
 * the point may be a motif longer or shorter.
 */
export function crookedSteps(lengths: readonly number[], outline: OutlineShape | undefined): 0 | 1 {
  if (outline?.kind !== 'triangle') return 0
  const steps = lengths.slice(1).map((count, i) => Math.abs(count - lengths[i]!))
  const inner = outline.points === 'up' ? steps.slice(1) : steps.slice(0, -1)
  for (let again = 1; again <= STEPS_COME_AGAIN; again++)
    if (inner.length >= 2 * again || again === 1)
      if (inner.every((step, i) => i < again || step === inner[i - again])) return 0
  return 1
}

/**
 * The best first: what holds, what closes without a gap at most joins, what comes nearer, and of what comes as near the
 * one with most joins for each motif. Of motifs with straight sides what closes between them goes before open lace, and
 * squares begin in straight rows (`usualFirst`). Of what is cut out, rows in which straight sides close, and edges that
 * run evenly, go before what comes nearer within half a motif.
 */
export const ranked = (fits: readonly FitArrangement[], measure: Measure): FitArrangement[] => {
  const { wish, outline, motif, isTold } = measure
  const rows = outline && closingRows(motif)
  const toClose = (fit: FitArrangement) => toCloseOf(fit, motif.overTips)
  const closing = outline && isTold ? closingOf(fits, toClose) : null
  const isOpen = (fit: FitArrangement) => fit.arrangement !== rows || closing?.includes(fit) === false
  const judgedFits = fits.map((fit) => ({
    fit,
    ...judged(fit),
    miss: missOf(fit.size, wish),
    near: outline ? Number(!isWithinHalf(fit.error, motif.overTips)) : 0,
    open: rows && fit.arrangement !== 'rings' ? Number(isOpen(fit)) : 0,
    crooked: crookedSteps(fit.lengths ?? [], outline),
    blunt: Number(atPoint(fit.lengths ?? [], outline) > 1),
  }))
  judgedFits.sort(
    (a, b) =>
      byHolding({ ...a, miss: 0 }, { ...b, miss: 0 }) ||
      a.near - b.near ||
      a.open - b.open ||
      (a.near === 0 ? a.blunt - b.blunt : 0) ||
      a.crooked - b.crooked ||
      (Math.abs(a.miss - b.miss) > SAME_MISS ? a.miss - b.miss : joinsEach(b.fit) - joinsEach(a.fit)),
  )
  const sorted = closedFirst(
    judgedFits.map(({ fit }) => fit),
    (fit) => fit,
    wish,
  )
  if (outline) return forChild(sorted)
  return forChild(usualFirst(isTold ? closingOnesFirst(sorted, toClose) : sorted, motif))
}

/** M32: for a child, those through whose openings no hand fits first; what a plan for nobody small does not tell, stays. */
export const forChild = (fits: readonly FitArrangement[]): FitArrangement[] =>
  closedForChild(fits, (fit) => ({ holds: judged(fit).holds, opening: fit.opening }))

/** The same order, but that nothing with gaping joins stands above what lies closed and comes nearer. */
export function closedFirst<Of>(list: readonly Of[], fitOf: (one: Of) => FitArrangement, wish: Wish): Of[] {
  const isBehind = (one: FitArrangement, other: FitArrangement): boolean =>
    one.wide !== undefined &&
    other.wide === undefined &&
    (judged(other).holds || !judged(one).holds) &&
    missOf(other.size, wish) < missOf(one.size, wish)
  const left = [...list]
  const sorted: Of[] = []
  // What lies closed is behind nothing, so that there is always a first one.
  while (left.length > 0) {
    const next = left.findIndex((one) => !left.some((other) => isBehind(fitOf(one), fitOf(other))))
    sorted.push(...left.splice(Math.max(0, next), 1))
  }
  return sorted
}

/** mm and degrees by which what is typed differs from what is worked out: 25.7° is half of a seventh (ours). */
const SAME = { size: 1, turn: 0.1 } as const

/** Whether two turns are one to whoever types them. */
export function isSameTurn(one: number, other: number): boolean {
  const off = Math.abs(one - other) % 360
  return Math.min(off, 360 - off) < SAME.turn
}

/** Rows that turn by as much against each other, joined as often: which of the two kinds begins makes no other blanket. */
const isSwapped = (a: FitArrangement, b: FitArrangement): boolean =>
  a.arrangement !== 'rings' &&
  Math.min(a.alternateTurn, b.alternateTurn) > SAME.turn &&
  a.joins !== undefined &&
  a.joins === b.joins

/** Whether two arrangements leave the same motifs in the same places. */
export function isSameBlanket(a: FitArrangement, b: FitArrangement): boolean {
  const isAlike = (one: number, other: number) => Math.abs(one - other) < SAME.size
  return (
    a.arrangement === b.arrangement &&
    a.motifs === b.motifs &&
    (a.arrangement !== 'offset-rows' || a.alternateRows === b.alternateRows) &&
    (isSameTurn(a.turn, b.turn) || isSwapped(a, b)) &&
    (a.arrangement === 'rings' || isSameTurn(a.alternateTurn, b.alternateTurn)) &&
    isAlike(a.size.width, b.size.width) &&
    isAlike(a.size.height, b.size.height)
  )
}

/** Without blankets that came twice. */
export const differentOf = (fits: readonly FitArrangement[]): FitArrangement[] =>
  fits.filter((fit, i) => !fits.slice(0, i).some((before) => isSameBlanket(before, fit)))
