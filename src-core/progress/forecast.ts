/**
 * How far a yarn goes that was weighed or counted again: what was used so far, over what the plan says for the motifs made by
 * then, is the rate at which all that follows is taken to use it, motif by motif in working order. Where nobody knows what was used, the plan says how far it goes.
 */
import type { Finding } from '../../shared-types/finding'
import type { Forecast, YarnNeed } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import { isWithin } from '../fields/field'
import { YARN_LEFT } from '../fields/yarn'
import { finding } from '../findings/finding'
import { massValue } from '../findings/quantities'
import { shortRemedy } from '../materials/no-more'
import { countedAt, gramsOnHand } from '../materials/on-hand'
import { termWord } from '../stitches/terms'
import { formatNumber } from '../units/format'
import type { Grams } from '../units/quantity'
import { isUsable } from '../units/usable'
import { PROGRESS } from './constants'
import type { Marking } from './marks'
import { apartWords } from './pieces'
import { kindsOf, lastWith, supplyOf } from './supply'
import type { Supply } from './supply'
import type { Work } from './work'

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

/** A yarn in a work: what its forecast is made of and its findings point at. */
interface Asked {
  readonly work: Work
  readonly marking: Marking
  readonly yarn: Yarn
  readonly need: YarnNeed
  readonly supply: Supply
}

function forecastOf(work: Work, marking: Marking, yarn: Yarn, need: YarnNeed | undefined): Told {
  const refused = refusal(yarn)
  if (refused) return { forecast: null, findings: [refused] }
  if (!need) return NOTHING
  const from = countedAt(yarn)
  // Without a number it was weighed just now.
  const { grams, at = marking.made.length } = yarn.left ?? {}
  const asked = (): Asked => ({ work, marking, yarn, need, supply: supplyOf(work, marking, yarn.id) })
  // What is on hand was counted later than it was weighed.
  const isOlder = at < from
  if (from > 0 && (grams === undefined || isOlder)) return countedOf(asked(), from)
  // Nothing made: nothing to tell.
  return grams === undefined || at === 0 ? NOTHING : weighedOf(asked(), grams, at, from)
}

/** What is on hand was counted while the work was made: it is held against what the plan says is left. */
function countedOf(asked: Asked, at: number): Told {
  const { marking, yarn } = asked
  const made = marking.made.length
  const values = { yarn: nameOf(yarn), pieces: piecesMade(asked, at), made }
  const ahead = at > made ? [finding('progress/counted-ahead', whereOf(yarn), values, { yarn: yarn.id })] : []
  return byPlan(asked, gramsOnHand(yarn), at, ahead)
}

/** "18 motifs and 2 half motifs": the first so many pieces. */
const piecesMade = ({ work, marking }: Pick<Asked, 'work' | 'marking'>, at: number): string =>
  apartWords(kindsOf(work, marking, at))

/** How far it goes by the plan, where nobody can tell how fast it was used: by the high end, as what is bought. */
function byPlan(asked: Asked, left: Grams, at: number, before: readonly Finding[]): Told {
  const { work, yarn, need, supply } = asked
  const plan = supply.rangeAfter(at)
  const total = work.pieces.length
  const reaches = (count: number): boolean =>
    plan.high - supply.rangeAfter(count).high <= left + PROGRESS.tolerance
  const furthest = lastWith(Math.min(at, total), total, reaches)
  const lastsTo = supply.lastIn(furthest)
  const missing = Math.max(0, plan.high - left)
  const enough = missing <= PROGRESS.tolerance
  const spent = !enough && furthest < total && lastsTo === supply.lastIn(at)
  const forecast: Forecast = {
    ...(spent && { spent: true as const, next: supply.nextIn(at) }),
    ...{ yarn: yarn.id, lastsTo, enough, missing: enough ? 0 : missing },
    ...{ over: enough ? left - plan.high : 0, rate: 1, plan, start: left, left, at },
  }
  if (enough) return { forecast, findings: before }
  const pieces = piecesMade(asked, at)
  const values = { yarn: nameOf(yarn), left: massValue(left), pieces, missing: massValue(missing) }
  const target = { yarn: yarn.id }
  const motifs = work.pieces.filter(({ kind }) => kind === 'motif').length
  const ways = waysOn(yarn, need, missing, false)
  const reach = spent
    ? `are not enough for the next motif in it, number ${formatNumber(supply.nextIn(at))}`
    : furthest === total
      ? 'are enough for all motifs but not for what comes after them'
      : `last to motif ${formatNumber(lastsTo)} of ${formatNumber(motifs)}`
  const found =
    left >= plan.expected
      ? finding('progress/plan-tight', whereOf(yarn), values, target)
      : finding('progress/plan-short', whereOf(yarn), { ...values, reach, ways }, target)
  return { forecast, findings: [...before, found] }
}

/** Weighed again: at the rate at which it was used since it was counted, else by the plan. */
function weighedOf(asked: Asked, grams: Grams, at: number, from: number): Told {
  const { work, marking, yarn, need, supply } = asked
  const name = nameOf(yarn)
  const where = whereOf(yarn)
  const target = { yarn: yarn.id }
  const total = work.pieces.length
  const motifs = work.pieces.filter(({ kind }) => kind === 'motif').length
  const only = (found: Finding): Told => ({ forecast: null, findings: [found] })
  if (at > total) return only(finding('progress/weighed-beyond', where, { yarn: name, at, total }, target))
  const { made } = marking
  const pieces = piecesMade(asked, at)
  const findings: Finding[] =
    at > made.length
      ? [finding('progress/weighed-ahead', where, { yarn: name, pieces, made: made.length }, target)]
      : []
  const planned = (since: number): Grams => supply.after(since) - supply.after(at)
  const begun = startOf(yarn, need, from)
  const isFar = (rate: number): boolean => rate < PROGRESS.rateLimits.low || rate > PROGRESS.rateLimits.high
  // Balls that somebody may have bought tell nothing where what was used of them cannot be.
  const isGuess = begun?.isAssumed === true && planned(0) > 0 && isFar((begun.grams - grams) / planned(0))
  if (begun === null || isGuess)
    return byPlan(asked, grams, at, [
      ...findings,
      finding('progress/no-start', where, { yarn: name }, target),
    ])
  const { grams: start, since } = begun
  const used = start - grams
  if (!(used > PROGRESS.tolerance)) {
    const values = { yarn: name, pieces, left: massValue(grams), start: massValue(start) }
    // Counted and weighed at once, it says the same twice.
    const nothing = since === at ? [] : [finding('progress/nothing-used', where, values, target)]
    return byPlan(asked, grams, at, [...findings, ...nothing])
  }
  if (!(planned(since) > PROGRESS.tolerance)) {
    // It was counted and weighed at once: what was weighed is there.
    if (since === at) return byPlan(asked, grams, at, findings)
    const values = { yarn: name, used: massValue(used), at }
    return {
      forecast: null,
      findings: [...findings, finding('progress/none-in-yarn', where, values, target)],
    }
  }
  const rate = used / planned(since)
  if (isFar(rate)) {
    const values = { yarn: name, percent: formatNumber(rate * 100) }
    const joined = supply.joinedAt(at)
    // What goes into joins alone is used as motifs are joined, however many are made.
    const isForJoins = need.parts.joins > 0 && need.parts.motifs === 0
    findings.push(
      isForJoins
        ? finding('progress/rate-far-joins', where, { ...values, joined }, target)
        : finding('progress/rate-far', where, { ...values, at: at - since }, target),
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
  const rest = supply.rangeAfter(at)
  const tight = enough && over < rate * (rest.high - rest.expected) - PROGRESS.tolerance
  // One that goes wrong cannot be made again.
  const scant = enough && !tight && over < rate * supply.oneAfter(at) - PROGRESS.tolerance
  // The last motif that it goes into is made already.
  const spent = !enough && furthest < total && lastsTo === supply.lastIn(at)
  const forecast: Forecast = {
    ...(spent && { spent: true as const, next: supply.nextIn(at) }),
    ...{ yarn: yarn.id, lastsTo, enough, missing: enough ? 0 : missing, over },
    ...(tight && { tight: true as const }),
    ...(scant && { scant: true as const }),
    ...{ rate, start, left: grams, at },
  }
  if (!enough) {
    const isRest = furthest === total && !spent
    const ways = waysOn(yarn, need, missing, isRest)
    const values = {
      ...{ yarn: name, missing: massValue(missing), last: lastsTo, total: formatNumber(motifs), ways },
    }
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

/** What can be done where it runs short on the way. */
const waysOn = (yarn: Yarn, need: YarnNeed, missing: Grams, isRest: boolean) =>
  shortRemedy(yarn, need, missing, { isRest }, (terms) => {
    const other = isRest
      ? `work the ${termWord('edging', terms)} in another yarn`
      : 'make fewer motifs in this yarn'
    return `Buy what is missing while the dye lot can be had, or ${other}`
  })

/** What a yarn was begun with: grams, when so many motifs were made, and whether that is only taken for it. */
interface Begun {
  readonly grams: Grams
  readonly since: number
  readonly isAssumed: boolean
}

/** What was said, else what is on hand, else the whole balls that are to be bought; null where none of it is known. */
function startOf(yarn: Yarn, need: YarnNeed, from: number): Begun | null {
  if (yarn.left?.of !== undefined) return { grams: yarn.left.of, since: 0, isAssumed: false }
  const onHand = gramsOnHand(yarn)
  if (onHand > 0 || from > 0) return { grams: onHand, since: from, isAssumed: false }
  return isUsable(yarn.ballGrams) && need.toBuy !== null && need.toBuy > 0
    ? { grams: need.toBuy * yarn.ballGrams, since: 0, isAssumed: true }
    : null
}
