/**
 * How far a yarn goes that was weighed again: what was used so far, over what the plan says for the motifs made by
 * then, is the rate at which all that follows is taken to use it, motif by motif in working order.
 */
import type { Finding } from '../../shared-types/finding'
import type { Forecast, YarnNeed } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import { isWithin } from '../fields/field'
import { YARN_LEFT } from '../fields/yarn'
import { finding } from '../findings/finding'
import { massValue } from '../findings/quantities'
import { materials } from '../materials/materials'
import { gramsOnHand } from '../materials/on-hand'
import { formatNumber } from '../units/format'
import type { Grams } from '../units/quantity'
import { isUsable } from '../units/usable'
import { PROGRESS } from './constants'
import type { Marking } from './marks'
import { leftOf } from './work'
import type { Done, Work } from './work'

interface Told {
  readonly forecast: Forecast | null
  readonly findings: readonly Finding[]
}
const NOTHING: Told = { forecast: null, findings: [] }

/** What is told of each yarn that was weighed again. */
export function forecastYarns(
  work: Work,
  marking: Marking,
  needs: readonly YarnNeed[],
): { forecast: Forecast[]; findings: Finding[] } {
  const told = work.input.basis.yarns.map((yarn) => {
    const need = needs.find(({ id }) => id === yarn.id)
    return forecastOf(work, marking, yarn, need)
  })
  return {
    forecast: told.flatMap(({ forecast }) => forecast ?? []),
    findings: told.flatMap(({ findings }) => findings),
  }
}

/** What is said of a weighing that nobody can use. */
function refusal(yarn: Yarn): Finding | null {
  const { grams, at, of } = yarn.left ?? {}
  const checked = [
    [grams, YARN_LEFT.grams, 'what is left'],
    [of, YARN_LEFT.of, 'what there was at the start'],
    [at, YARN_LEFT.at, 'a number of made motifs'],
  ] as const
  const wrong = checked.find(([value, field]) => value !== undefined && !isWithin(value, field))
  if (!wrong) return null
  const [value, , what] = wrong
  const values = { yarn: nameOf(yarn), received: String(value), what }
  return finding('progress/weighed-value', whereOf(yarn), values, { yarn: yarn.id })
}

const nameOf = ({ name, id }: Yarn): string => name ?? id
const whereOf = ({ id }: Yarn): string => `yarn ${id}, left`

function forecastOf(work: Work, marking: Marking, yarn: Yarn, need: YarnNeed | undefined): Told {
  const refused = refusal(yarn)
  if (refused) return { forecast: null, findings: [refused] }
  // Without a number it was weighed just now.
  const { grams, at = marking.made.length, of } = yarn.left ?? {}
  // Nothing made: nothing to tell.
  if (grams === undefined || at === 0 || !need) return NOTHING
  const name = nameOf(yarn)
  const where = whereOf(yarn)
  const target = { yarn: yarn.id }
  const total = work.pieces.length
  const motifs = work.pieces.filter(({ kind }) => kind === 'motif').length
  const only = (found: Finding): Told => ({ forecast: null, findings: [found] })
  if (at > total) return only(finding('progress/weighed-beyond', where, { yarn: name, at, total }, target))
  const start = of ?? startOf(yarn, need)
  if (start === null) return only(finding('progress/no-start', where, { yarn: name }, target))
  const findings: Finding[] = []
  const { made } = marking
  if (at > made.length)
    findings.push(finding('progress/weighed-ahead', where, { yarn: name, at, made: made.length }, target))
  const used = start - grams
  if (!(used > PROGRESS.tolerance)) {
    const values = { yarn: name, at, left: massValue(grams), start: massValue(start) }
    return {
      forecast: null,
      findings: [...findings, finding('progress/nothing-used', where, values, target)],
    }
  }
  const supply = supplyOf(work, marking, yarn.id)
  const planned = supply.whole - supply.after(at)
  if (!(planned > PROGRESS.tolerance)) {
    const values = { yarn: name, used: massValue(used), at }
    return {
      forecast: null,
      findings: [...findings, finding('progress/none-in-yarn', where, values, target)],
    }
  }
  const rate = used / planned
  if (rate < PROGRESS.rateLimits.low || rate > PROGRESS.rateLimits.high) {
    const values = { yarn: name, percent: formatNumber(rate * 100) }
    const joined = supply.joinedAt(at)
    // What goes into joins alone is used as motifs are joined, however many are made.
    const isForJoins = need.parts.joins > 0 && need.parts.motifs === 0
    findings.push(
      isForJoins
        ? finding('progress/rate-far-joins', where, { ...values, joined }, target)
        : finding('progress/rate-far', where, { ...values, at }, target),
    )
  }
  /** Whether it suffices until so many are made. */
  const reaches = (count: number): boolean =>
    rate * (supply.after(at) - supply.after(count)) <= grams + PROGRESS.tolerance
  const furthest = lastWith(at, total, reaches)
  const lastsTo = supply.lastIn(furthest)
  const missing = Math.max(0, rate * supply.after(at) - grams)
  const enough = missing <= PROGRESS.tolerance
  const over = enough ? Math.max(0, grams - rate * supply.after(at)) : 0
  // The last motif that it goes into is made already.
  const spent = !enough && furthest < total && lastsTo === supply.lastIn(at)
  const forecast: Forecast = {
    ...(spent && { spent: true as const, next: supply.nextIn(at) }),
    ...{ yarn: yarn.id, lastsTo, enough, missing: enough ? 0 : missing, over },
    ...{ rate, start, left: grams, at },
  }
  if (!enough) {
    const values = { yarn: name, missing: massValue(missing), last: lastsTo, total: formatNumber(motifs) }
    const code = furthest === total ? 'progress/edging-short' : 'progress/runs-out'
    findings.push(
      spent
        ? finding(
            'progress/spent',
            where,
            { ...values, left: massValue(grams), next: supply.nextIn(at) },
            target,
          )
        : finding(code, where, values, target),
    )
  }
  return { forecast, findings }
}

/** Grams at the start: what is on hand, else the whole balls that are to be bought; null where neither is known. */
function startOf(yarn: Yarn, need: YarnNeed): Grams | null {
  const onHand = gramsOnHand(yarn)
  if (onHand > 0) return onHand
  return isUsable(yarn.ballGrams) && need.toBuy !== null && need.toBuy > 0
    ? need.toBuy * yarn.ballGrams
    : null
}

/** What the plan says of one yarn while a work grows, piece by piece: first what is made, then the working order. */
function supplyOf(work: Work, marking: Marking, yarn: string) {
  const others = work.pieces.map((_, i) => i).filter((piece) => !marking.isMade(piece))
  const sequence = [...marking.made, ...others]
  const place = new Int32Array(sequence.length)
  sequence.forEach((piece, i) => (place[piece] = i))
  /** Once so many are made; motifs still to come are joined as they are made. */
  const doneAt = (count: number): Done => {
    const isMade = (piece: number): boolean => place[piece]! < count
    return {
      isMade,
      isJoined: (piece) => isMade(piece) && (marking.isJoined(piece) || !marking.isMade(piece)),
      // Made before it was weighed, it is part of what was used.
      edging: marking.edging && count > 0,
    }
  }
  const known = new Map<number, Grams>()
  const after = (count: number): Grams => {
    const grams =
      known.get(count) ??
      materials(leftOf(work, doneAt(count))).yarns.find(({ id }) => id === yarn)?.grams.expected ??
      0
    known.set(count, grams)
    return grams
  }
  return {
    whole: after(0),
    after,
    /** Working number of the first piece in this yarn after so many. */
    nextIn(count: number): number {
      const more = firstWith(
        count,
        sequence.length,
        (later) => after(count) - after(later) > PROGRESS.tolerance,
      )
      return Number(work.pieces[sequence[more - 1] ?? -1]?.label ?? 0)
    },
    /** How many count as joined once so many are made. */
    joinedAt: (count: number): number => sequence.filter(doneAt(count).isJoined).length,
    /** Working number of the last motif up to the last piece in this yarn among the first so many; 0 where there is none. */
    lastIn(count: number): number {
      const same = firstWith(0, count, (less) => after(less) - after(count) <= PROGRESS.tolerance)
      // Half motifs and fillers have the numbers after those of all motifs: they would be taken for a far one.
      const motif = sequence.slice(0, same).findLast((piece) => work.pieces[piece]!.kind === 'motif')
      return Number(work.pieces[motif ?? sequence[same - 1] ?? -1]?.label ?? 0)
    },
  }
}

/** The largest number from `low` to `high` that holds; all up to it do, and `low` does. */
function lastWith(low: number, high: number, holds: (count: number) => boolean): number {
  let [from, to] = [low, high]
  while (from < to) {
    const middle = Math.ceil((from + to) / 2)
    if (holds(middle)) from = middle
    else to = middle - 1
  }
  return from
}

/** The smallest number from `low` to `high` that holds; all from it on do, and `high` does. */
const firstWith = (low: number, high: number, holds: (count: number) => boolean): number =>
  lastWith(low, high, (count) => count === low || !holds(count - 1))
