/** Repeats: how often a part goes into the round, what one takes, and how the last one ends. */
import { counted, plural } from '../figures/words'
import { LIMITS } from './limits'
import { cellsLeft } from './chain-targets'
import { closesEarly, leadsBack } from './closes-early'
import { cornersAhead, runBehindCorners } from './corner-laps'
import { freeOf, lapsThatFit, runLaps, runLast } from './fits'
import type { AroundPart, Laps } from './fits'
import { forkWork } from './fork'
import {
  amountWords,
  errorsOf,
  kindsOf,
  landmarksIn,
  lapOf,
  sweeps,
  unitOf,
  tailOf,
  takesSpace,
  lapsUpTo,
} from './laps'
import type { Lap } from './laps'
import { goesRoundPieces } from './piece'
import { bodySpan, endsAlike, endsEarly, endsInFirst, endsInGroup, lastItems } from './repeat-endings'
import { onlyCloses, starTimes, works } from './repeat-endings'
import { cornerPlaces } from './source'
import { isSlip } from './stitch-name'
import type { ItemRunner } from './stitching'
import { spanOf } from './tokens'
import type { Span } from './tokens'
import { UNMARKED } from './marked'
import { countItems, statedStitches } from './told-counts'
import { tailCells } from './tail-cells'
import { shareLandmarks } from './landmarks'
import { tipLaps } from './tips'
import type { GroupItem, Item, RepeatClause, StarItem } from './tree'
import { baseSource, report, sourceOf, spend } from './work'
import type { Work } from './work'

function lastBody(work: Work, star: StarItem): readonly Item[] {
  // A round that hangs from the stitch of the joining ends in it by itself.
  if (work.first === null && onlyCloses(star)) return star.items
  const ending = endsInRow(work, star)
  if (ending) return [...star.items.slice(0, star.items.findLastIndex(works)), ...ending]
  const items = lastItems(star)
  if (items) return items
  report(work, 'rounds/double-asterisk-missing', star.repeat, {}, 'once')
  work.open = true
  return star.items
}

/** "*…, dc in next st; rep from * to end, working last dc in top of ch-3": the last place of the row below. */
function endsInRow(work: Work, star: StarItem): readonly Item[] | null {
  const items = star.repeat?.ending?.items
  const only = items?.find(works)
  const own = only?.type === 'work' && !isSlip(only.stitch) && only.place?.parts[0]?.noun.kind === 'own'
  return own && onlyCloses(star) && (baseSource(work)?.edge() ?? -1) >= 0 ? items! : null
}

/** "[…] across to next corner": as often as what lies before the corner allows. */
function runToCorner(work: Work, part: AroundPart, laps: Laps, lap: Lap, run: ItemRunner): void {
  const { source } = lap
  const [kind] = kindsOf(lap)
  const base = baseSource(work)
  if (!source || kind === undefined || !base) return
  const corners = cornerPlaces(base)
  const wanted = kind === 'st' ? 'stitch' : 'space'
  const ahead = base.untilNext(
    (place, at) =>
      place.kind === wanted && !corners.has(at) && (kind === 'st' || takesSpace(lap, place.chains)),
    (_, at) => corners.has(at),
  )
  const unit = kind === 'st' ? lap.stitches : [...lap.spaces.values()].reduce((sum, count) => sum + count, 0)
  if (ahead % unit !== 0) {
    const times = Math.floor(ahead / unit)
    const values = {
      unit: amountWords(unit, kind),
      available: amountWords(ahead, kind),
      times: counted(times, 'repeat'),
      over: amountWords(ahead - times * unit, kind),
    }
    report(work, 'rounds/repeat-does-not-fit', bodySpan(part.item), values, String(part.item.start))
  }
  runLaps(work, part, laps.body, laps.body, Math.floor(ahead / unit), run)
}

/** Repeats a part as often as the round before allows. */
export function runAround(
  work: Work,
  given: AroundPart,
  run: ItemRunner,
  star: StarItem | null = null,
): void {
  const part = { ...given, rest: tailOf(given.rest) }
  const body = part.place
    ? [{ ...(part.item as GroupItem), times: null, around: false, toCorner: false }]
    : part.items
  const last = star ? lastBody(work, star) : body
  const laps = { body, last }
  const tips = tipLaps(work, part, laps)
  if (tips) return runLaps(work, part, tips.body, tips.last, tips.times, run)
  const once = () => {
    run(work, last)
    work.repeats.set(part.item, 1)
  }
  const standsStill = () => {
    const told = [...countItems(work.node.items)].find(
      ({ until, start }) => until && start >= part.item.start,
    )
    if (told) {
      const times = lapsUpTo(told.entries[0]!, work, lapOf(work, body, run).after)
      return runLaps(work, part, body, last, times, run)
    }
    report(work, 'rounds/repeat-stands-still', bodySpan(part.item), {}, String(part.item.start))
    work.open = true
    once()
  }
  const lap = lapOf(work, body, run)
  const { source } = lap
  if (source?.state.unknown) {
    work.open = true
    return once()
  }
  const cells = work.chain ? cellsLeft(work.chain) : work.base.kind === 'chain' ? work.base.chains : 0
  const unit = cells - (lap.after.chain ? cellsLeft(lap.after.chain) : cells)
  if (!source && unit > 0) {
    const tail = tailCells(lap.after, part.rest, run)
    const kept = sweeps(part.rest) ? 0 : Math.max(part.lastCount, tail)
    const times = Math.max(1, Math.floor((cells - kept) / unit))
    if ((cells - kept) % unit !== 0) {
      const words = {
        unit: `${unit} ch`,
        available: `${cells - kept} ch`,
        times: counted(times, 'repeat'),
        over: `${(cells - kept) % unit} ch`,
      }
      report(work, 'rounds/repeat-does-not-fit', bodySpan(part.item), words, String(part.item.start))
    }
    return runLaps(work, part, body, last, times, run)
  }
  if (!source) return work.base.kind === 'ring' ? standsStill() : once()
  const kinds = kindsOf(lap)
  // What is asked for and not there is a finding of its own.
  if (lap.after.open && !work.open) return once()
  if (kinds.length === 0) return standsStill()
  if (part.toCorner) return runToCorner(work, part, laps, lap, run)
  // A round that hangs from the stitch of the joining ends there: that stitch is not for a lap.
  const ending = star?.repeat?.ending
  const closesInFirst = last !== body && ending != null && endsInFirst(ending.items)
  const hangs = kinds[0] === 'st' && work.first === null && closesInFirst
  // Told before laps are tried, which changes what they are tried on.
  const sides = star && last === body ? cornersAhead(work, lap, body) : null
  const fits = hangs ? null : lapsThatFit(work, part, laps, lap, run)
  const laid = fits ?? sides
  if (laid !== null) {
    const back = star ? leadsBack(work, part, laps, star, laid) : null
    if (back) return runLaps(work, part, body, back, laid + 1, run)
    runLaps(work, part, body, last, laid, run)
    if (laid === sides) runBehindCorners(work, part, body, run)
    return
  }
  // The lap may have changed what it was tried on: where nothing comes out even, it is told by its numbers.
  const one = lapOf(work, body, run)
  const end = last === body ? one : lapOf(work, last, run)
  const tail = sweeps(part.rest) ? null : lapOf(one.after, part.rest, run)
  const mine = sourceOf(work, source.state)
  for (const kind of kinds) {
    const unit = unitOf(one, kind)
    const free = freeOf(mine, kind, one, body)
    const kept =
      part.lastCount > 0
        ? kind === 'st' || kinds.length === 1
          ? part.lastCount
          : 0
        : tail
          ? unitOf(tail, kind)
          : 0
    const available = free - kept
    if (closesEarly(work, part, laps, { kind, unit, end: unitOf(end, kind), available }, star, run)) return
    const over = ((available % unit) + unit) % unit
    const more = available - unitOf(end, kind)
    if (more >= 0 && more % unit === 0) continue
    const whole = Math.max(0, Math.floor(available / unit))
    if (available <= 0) {
      const uses = `one repeat takes ${amountWords(unit, kind)}`
      report(work, 'rounds/too-many-used', bodySpan(part.item), { uses, available: 0 })
    } else if (over === 0) {
      const values = {
        unit: amountWords(unit, kind),
        last: amountWords(unitOf(end, kind), kind),
        available: amountWords(available, kind),
      }
      report(work, 'rounds/last-repeat-does-not-fit', bodySpan(part.item), values, String(part.item.start))
    } else {
      const words = {
        unit: amountWords(unit, kind),
        available: amountWords(available, kind),
        times: counted(whole, 'repeat'),
        over: amountWords(over, kind),
      }
      report(work, 'rounds/repeat-does-not-fit', bodySpan(part.item), words, String(part.item.start))
    }
    work.open = true
    return runLaps(work, part, body, body, Math.min(whole, LIMITS.repeats), run)
  }
  const [kind] = kinds
  const spare = freeOf(mine, kind!, one, body) - (tail ? unitOf(tail, kind!) : 0) - part.lastCount
  const times = Math.floor((spare - unitOf(end, kind!)) / unitOf(one, kind!)) + 1
  runLaps(work, part, body, last, Math.max(1, Math.min(times, LIMITS.repeats)), run)
}

/** "8 repeats of 3 use 24 sts; there are 22", or one repeat too many where "n times" was meant to count all. */
function checkAmount(
  work: Work,
  star: StarItem,
  clause: RepeatClause,
  times: number,
  rest: readonly Item[],
  run: ItemRunner,
): void {
  // In a place that is named around it ("in ring, *…") a repeat uses nothing more of the round before.
  if (work.here || rest.some((item) => item.type === 'again')) return
  if (sweeps(star.items) || landmarksIn(star.items) > 0 || goesRoundPieces(work, star.items)) return
  const first = lapOf(work, star.items, run)
  // A first lap may take the stitch where the yarn was joined besides.
  const lap = times > 2 ? lapOf(first.after, star.items, run) : first
  const { source } = first
  if (!source || source.state.unknown || first.after.open) return
  const trial = forkWork(work)
  const overBefore = sourceOf(work, source.state).over
  for (let at = 1; at < times; at++) run(trial, star.items)
  run(trial, lastBody(work, star))
  const over = (trial.sources.get(source.state)?.over ?? 0) - overBefore
  if (over === 1 && trial.elements[trial.elements.length - 1]?.role === 'slip') return
  const tail = sweeps(rest) ? null : lapOf(lap.after, rest, run)
  if (over === 0 && !tail?.source) return
  const last = lapOf(work, lastBody(work, star), run)
  const mine = sourceOf(work, source.state)
  for (const kind of kindsOf(lap)) {
    const unit = unitOf(lap, kind)
    const free = freeOf(mine, kind, lap, star.items)
    const uses = unit * (times - 1) + unitOf(last, kind)
    // "Rep from * 5 more times, (…) in last sp": one repeat stands in the way of what follows.
    const behind = tail ? unitOf(tail, kind) : 0
    if (behind === unit && uses === free && clause.amount && comesTo(work, star, times - 1, rest, run)) {
      work.overReported = true
      const words = `${counted(times, 'repeat')} and what follows use ${amountWords(uses + behind, kind)}`
      return report(work, 'rounds/too-many-used', withoutEnding(clause), { uses: words, available: free })
    }
    if (over === 0 || uses <= free || free === 0) continue
    work.overReported = true
    const { loops } = lap
    const madeSpaces = loops > 0 ? `, ${counted(loops * times, 'space')}` : ''
    const fits = unit * (times - 2) + unitOf(last, kind) + (tail ? unitOf(tail, kind) : 0) === free
    if (clause.said === 'plain' && !star.closed && fits) {
      const values = {
        amount: clause.amount ?? 1,
        times,
        uses: `${amountWords(uses, kind)}${madeSpaces}`,
        available: `${amountWords(free, kind)}${loops > 0 ? ` and ${counted(loops * (times - 1), 'space')}` : ''}`,
        fewer: times - 2,
      }
      return report(work, 'rounds/repeat-off-by-one', clause.amountSpan, values)
    }
    const values = {
      uses: `${counted(times, 'repeat')} of ${unit} ${plural(times, 'uses', 'use')} ${amountWords(uses, kind)}`,
      available: free,
    }
    const told = withoutEnding(clause)
    // Where the count of the round agrees with how often, the fault lies in what is repeated.
    const counts = [...countItems(work.node.items)].flatMap(({ entries }) => entries)
    const sure = loops > 0 && counts.some(({ count, noun }) => noun.kind !== 'stitch' && count === times + 1)
    return report(work, 'rounds/too-many-used', sure ? spanOf(bodySpan(star), told) : told, values)
  }
}

const withoutEnding = (clause: RepeatClause): Span => ({
  start: clause.start,
  end: Math.max(clause.amountSpan.end, clause.start + 1),
  line: clause.line,
  column: clause.column,
})

/** Whether a round comes to the count that the text states with so many laps. */
function comesTo(work: Work, star: StarItem, times: number, rest: readonly Item[], run: ItemRunner): boolean {
  const stated = statedStitches(work.node.items)
  if (stated === null || times > LIMITS.repeats) return false
  const trial = forkWork(work)
  for (let lap = 1; lap <= times; lap++) run(trial, star.items)
  run(trial, rest)
  return trial.elements.filter(({ standing }) => standing).length === stated
}

/** "sc, inc, repeat 6 times": six in all, or six more, whichever fills the round; of what is marked also its count. */
function timesThatFit(work: Work, star: StarItem, rest: readonly Item[], run: ItemRunner): number | null {
  const times = starTimes(star)
  if (times === null || times < 2 || star.repeat?.said !== 'plain' || star.closed) return times
  const lap = lapOf(work, star.items, run)
  if (!lap.source || lap.source.state.unknown) return times
  const mine = sourceOf(work, lap.source.state)
  const tail = sweeps(rest) ? null : lapOf(lap.after, rest, run)
  const fewer = kindsOf(lap).every((kind) => {
    const left = freeOf(mine, kind, lap, star.items) - (tail ? unitOf(tail, kind) : 0)
    return unitOf(lap, kind) * (times - 1) === left
  })
  // "Rep from * 3 times" is three more; "from * to * 11 times" stands behind a lap that may be one of them.
  const { start, end } = star.repeat
  const isEnclosed = /\bto\s*\*/.test(work.tree.text.slice(start, end))
  const countsAll = star.mark === UNMARKED || (isEnclosed && comesTo(work, star, times - 1, rest, run))
  return fewer && countsAll ? times - 1 : times
}

const oversOf = ({ sources }: Work): number => [...sources.values()].reduce((sum, { over }) => sum + over, 0)

/** "*…, dc in next 13 dc; rep from * around, ending with dc in last 11 dc": in place of the 13 where only that fits. */
function asItEnds(work: Work, star: StarItem, rest: readonly Item[], run: ItemRunner): StarItem {
  const { repeat } = star
  const ways = [endsAlike(star), endsEarly(star), endsInGroup(star)].filter((way) => way !== null)
  if (!repeat || ways.length === 0) return star
  const faults = (ended: StarItem) => {
    const trial = forkWork(work)
    runMarked(trial, ended, rest, run)
    return errorsOf(trial) - errorsOf(work) + oversOf(trial) - oversOf(work)
  }
  const group = repeat.amount === null ? endsInGroup(star) : null
  if (group) return { ...star, repeat: { ...repeat, ending: group } }
  if (faults(star) === 0) return star
  const others = ways.map((ending) => ({ ...star, repeat: { ...repeat, ending } }))
  return others.find((other) => faults(other) === 0) ?? star
}

/** A part marked with an asterisk, as often as is said. */
export function runStar(work: Work, star: StarItem, rest: readonly Item[], run: ItemRunner): void {
  const ended = asItEnds(work, star, rest, run)
  runMarked(work, ended, rest, run)
  // What the last one differs in is not in the text, so it is never written out.
  if (ended !== star) work.repeats.delete(ended)
}

function runMarked(work: Work, star: StarItem, rest: readonly Item[], run: ItemRunner): void {
  const clause = star.repeat
  const double = star.items.find((item) => item.type === 'double')
  const laterDouble = rest.some((item) => item.type === 'again' && item.toDouble)
  if (double && !clause?.endAtDouble && !laterDouble)
    report(work, 'rounds/unused-double-asterisk', double, {}, String(double.start))
  if (!clause) {
    const mark = { ...star, end: star.start + star.mark.length }
    report(work, 'rounds/star-not-repeated', mark, {}, String(star.start))
    work.unrepeated = true
    return run(work, star.items)
  }
  const times = timesThatFit(work, star, rest, run)
  if (times === null) {
    const part = {
      item: star,
      items: star.items,
      place: null,
      lastCount: clause.lastCount,
      toCorner: clause.toCorner,
      rest,
    }
    return runAround(work, part, run, star)
  }
  work.clause = withoutEnding(clause)
  checkAmount(work, star, clause, times, rest, run)
  const shares = shareLandmarks(work, star, times, run)
  work.repeats.set(star, times)
  const last = lastBody(work, star)
  for (let lap = 1; lap <= times; lap++) {
    spend(work, star)
    if (shares) work.flex = [...shares]
    if (lap === times) runLast(work, star.items, last, run)
    else run(work, star.items)
  }
}
