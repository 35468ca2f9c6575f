/** Repeats: how often a part goes into the round, what one takes, and how the last one ends. */
import { counted, plural } from '../figures/words'
import { LIMITS } from './limits'
import { needOf, needOfPlace, starTimes } from './need'
import { endsInFirst, endsWithSingle, lastItems, works } from './repeat-endings'
import { amountWords, freeOf, partSource, resources, unitOf } from './resources'
import { SKIPPED, TRAVELLED } from './source'
import type { Source } from './source'
import type { ItemRunner } from './stitching'
import type { Span } from './tokens'
import type { GroupItem, Item, Place, RepeatClause, StarItem } from './tree'
import { report, spend } from './work'
import type { Work } from './work'

interface AroundPart {
  readonly item: GroupItem | StarItem
  readonly items: readonly Item[]
  readonly place: Place | null
  readonly lastCount: number
  readonly rest: readonly Item[]
}

/** Where the text stands that goes around: from the asterisk or bracket to the end of its body. */
function bodySpan(item: GroupItem | StarItem): Span {
  const last = item.items[item.items.length - 1]
  return last && item.type === 'star' ? { ...item, end: last.end } : item
}

function lastBody(work: Work, star: StarItem): readonly Item[] {
  const items = lastItems(star)
  if (items) return items
  report(work, 'rounds/double-asterisk-missing', star.repeat, {}, 'once')
  work.open = true
  return star.items
}

/** Repeats a part as often as the round before allows. */
export function runAround(work: Work, part: AroundPart, run: ItemRunner, star: StarItem | null = null): void {
  const body = part.items
  const bodies = part.place ? [{ ...(part.item as GroupItem), times: null, around: false }] : body
  const need = needOf(body, part.place !== null)
  if (part.place) needOfPlace(need, part.place)
  const source = partSource(work, bodies)
  const ending = star ? lastBody(work, star) : bodies
  const once = () => {
    run(work, ending)
    work.repeats.set(part.item, 1)
  }
  if (!source || source.state.unknown) {
    if (source?.state.unknown) work.open = true
    else if (work.base.kind === 'ring') {
      report(work, 'rounds/repeat-stands-still', bodySpan(part.item), {}, String(part.item.start))
      work.open = true
    }
    return once()
  }
  if (need.dynamic || need.landmarks > 0) return simulate(work, part, bodies, ending, source, run)
  const found = resources(source, need)
  if (found.length === 0) {
    report(work, 'rounds/repeat-stands-still', bodySpan(part.item), {}, String(part.item.start))
    work.open = true
    return once()
  }
  const tail = needOf(part.rest)
  const last = needOf(ending)
  let times: number | null = null
  for (const { kind, unit, free } of found) {
    // A space that is not there at all is a finding of its own.
    if (kind !== 'st' && kind !== 'gap' && free === 0) {
      run(work, bodies)
      if (work.open) return
      continue
    }
    const kept =
      part.lastCount > 0 && (kind === 'st' || found.length === 1)
        ? part.lastCount
        : part.lastCount > 0
          ? 0
          : unitOf(tail, kind)
    const available = free - kept
    const clause = star?.repeat?.ending
    // A round that begins with a loop of chains hangs from the stitch where the one before was joined.
    const hangs = kind === 'st' && work.first === null && clause != null
    const skipped = skippedBy(bodies, kind)
    if (hangs && clause.mode === 'append' && endsInFirst(clause.items) && skipped > 0) {
      const over = (available - 1) % unit
      if (over === skipped && available > unit) {
        runLaps(work, part, bodies, ending, Math.min(LIMITS.repeats, (available - 1 - over) / unit), run)
        work.repeats.delete(part.item)
        return skipRest(source, kind)
      }
    }
    const fit = (available - unitOf(last, kind)) / unit + 1
    if (Number.isInteger(fit) && fit >= 1) {
      times = times === null ? fit : Math.min(times, fit)
      continue
    }
    const toFirst = (available - 1 - unitOf(last, kind)) / unit + 1
    const closes = hangs && (clause.mode === 'replace' || endsInFirst(clause.items))
    if (closes && Number.isInteger(toFirst) && toFirst >= 1 && toFirst <= LIMITS.repeats) {
      // The round began over the first stitch; the last repeat closes in it.
      runLaps(work, part, bodies, ending, toFirst, run)
      return skipRest(source, kind)
    }
    const over = ((available % unit) + unit) % unit
    const single =
      kind === 'st' &&
      over === unit - 1 &&
      ending === bodies &&
      endsWithSingle(bodies) &&
      work.first !== null &&
      available > 0
    if (single) {
      report(work, 'rounds/last-repeat-not-said', star?.repeat ?? part.item, {}, String(part.item.start))
      const laps = (available - over) / unit + 1
      if (laps <= LIMITS.repeats)
        runLaps(work, part, bodies, bodies.slice(0, bodies.findLastIndex(works)), laps, run)
      // How the last one ends is not in the text, so it is never written out.
      work.repeats.delete(part.item)
      return
    }
    if (clause?.mode === 'append' && over === skipped && available > unit) {
      // "…, ending with ch 1, hdc in first sc": the last loop spans what the others skip.
      runLaps(work, part, bodies, ending, (available - over) / unit, run)
      // What it spans is not in the text, so the last repeat is never written out.
      work.repeats.delete(part.item)
      return skipRest(source, kind)
    }
    if (over === 0) {
      const values = {
        unit: amountWords(unit, kind),
        last: amountWords(unitOf(last, kind), kind),
        available: amountWords(Math.max(0, available), kind),
      }
      report(work, 'rounds/last-repeat-does-not-fit', bodySpan(part.item), values, String(part.item.start))
      work.open = true
      return runLaps(work, part, bodies, bodies, Math.min(available / unit, LIMITS.repeats), run)
    }
    const whole = Math.max(0, Math.floor(available / unit))
    const words = {
      unit: amountWords(unit, kind),
      available: amountWords(Math.max(0, available), kind),
      times: `${whole} repeat${whole === 1 ? '' : 's'}`,
      over: amountWords(over, kind),
    }
    report(work, 'rounds/repeat-does-not-fit', bodySpan(part.item), words, String(part.item.start))
    work.open = true
    return runLaps(work, part, bodies, bodies, Math.min(whole, LIMITS.repeats), run)
  }
  runLaps(work, part, bodies, ending, times ?? 1, run)
}

/** What one repeat skips in words, of one kind. */
const skippedBy = (items: readonly Item[], kind: string): number =>
  unitOf(needOf(items.filter((item) => item.type === 'skip')), kind)

function skipRest(source: Source, kind: string): void {
  const wanted = kind === 'st' ? 'stitch' : 'space'
  source.places.forEach((place, index) => {
    if (place.kind === wanted && source.used[index]! <= TRAVELLED) source.used[index] = SKIPPED
  })
}

function runLaps(
  work: Work,
  part: AroundPart,
  body: readonly Item[],
  last: readonly Item[],
  times: number,
  run: ItemRunner,
): void {
  work.repeats.set(part.item, times)
  for (let lap = 1; lap <= times; lap++) {
    spend(work, part.item)
    if (lap === times) runLast(work, body, last, run)
    else run(work, body)
  }
}

/** The last repeat may close the round ("ending with ch 3, dc in first sc"), which no other one can. */
function runLast(work: Work, body: readonly Item[], last: readonly Item[], run: ItemRunner): void {
  if (last === body) return run(work, last)
  const { repeated } = work
  work.repeated = 0
  run(work, last)
  work.repeated = repeated
}

/** Where one repeat depends on where it stands ("to next corner"), it is worked until the round is used up. */
function simulate(
  work: Work,
  part: AroundPart,
  body: readonly Item[],
  last: readonly Item[],
  source: Source,
  run: ItemRunner,
): void {
  const need = needOf(part.items, part.place !== null)
  const spaces = [...need.spaces.keys()]
  const most = source.places.length + 1
  const over = () => source.overStitches + source.overSpaces + source.overGaps
  const left = () =>
    spaces.length > 0
      ? Math.min(...spaces.map((kind) => freeOf(source, kind, need)))
      : source.free('stitch') - part.lastCount
  const tail =
    part.lastCount > 0
      ? 0
      : spaces.length > 0
        ? Math.max(...spaces.map((kind) => unitOf(needOf(part.rest), kind)))
        : needOf(part.rest).stitches
  const unit = spaces.length > 0 ? Math.max(...spaces.map((kind) => unitOf(need, kind))) : 1
  let times = 0
  while (times < most && left() > tail && !work.open) {
    spend(work, part.item)
    const before = left()
    const ends = last !== body && before - unit <= tail
    if (ends) runLast(work, body, last, run)
    else run(work, body)
    times++
    if (over() > 0) break
    if (left() >= before) {
      report(work, 'rounds/repeat-stands-still', bodySpan(part.item), {}, String(part.item.start))
      work.open = true
      break
    }
  }
  work.repeats.set(part.item, Math.max(1, times))
  if (times === 0) run(work, last)
}

/** "8 repeats of 3 use 24 sts; there are 22", or one repeat too many where "n times" was meant to count all. */
function checkAmount(
  work: Work,
  star: StarItem,
  clause: RepeatClause,
  times: number,
  rest: readonly Item[],
): void {
  // In a place that is named around it ("in ring, *…") a repeat uses nothing more of the round before.
  if (work.here) return
  const need = needOf(star.items)
  const source = partSource(work, star.items)
  if (!source || source.state.unknown || need.dynamic || need.landmarks > 0) return
  const last = needOf(lastBody(work, star))
  const tail = needOf(rest)
  const from = rest.some((item) => item.type === 'again') ? 'later' : ''
  if (from) return
  for (const { kind, unit, free } of resources(source, need)) {
    const uses = unit * (times - 1) + unitOf(last, kind)
    if (uses <= free || free === 0) continue
    work.overReported = true
    const loops = need.loops
    const madeSpaces = loops > 0 ? `, ${counted(loops * times, 'space')}` : ''
    const fits = unit * (times - 2) + unitOf(last, kind) + unitOf(tail, kind) === free
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
    return report(work, 'rounds/too-many-used', withoutEnding(clause), values)
  }
}

const withoutEnding = (clause: RepeatClause): Span => ({
  start: clause.start,
  end: Math.max(clause.amountSpan.end, clause.start + 1),
  line: clause.line,
  column: clause.column,
})

/** Stretches to tip and valley share what a petal has beside its named stitches, the first one the larger half. */
function shareLandmarks(work: Work, star: StarItem, times: number): number[] | null {
  const need = needOf(star.items)
  if (need.landmarks === 0) return null
  const source = partSource(work, star.items)
  if (!source || source.state.unknown) return null
  const free = source.free('stitch')
  const share = free / times - need.stitches
  if (!Number.isInteger(share) || share < 0) {
    const whole = Math.floor(free / times)
    const words = {
      unit: 'the same part of the round',
      available: amountWords(free, 'st'),
      times: `${counted(times, 'time')} ${whole}`,
      over: amountWords(free - whole * times, 'st'),
    }
    report(work, 'rounds/repeat-does-not-fit', bodySpan(star), words)
    work.open = true
    return null
  }
  let left = share
  return Array.from({ length: need.landmarks }, (_, at) => {
    const part = Math.ceil(left / (need.landmarks - at))
    left -= part
    return part
  })
}

/** A part marked with an asterisk, as often as is said. */
export function runStar(work: Work, star: StarItem, rest: readonly Item[], run: ItemRunner): void {
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
  const times = starTimes(star)
  if (times === null) {
    const part = { item: star, items: star.items, place: null, lastCount: clause.lastCount, rest }
    return runAround(work, part, run, star)
  }
  work.clause = withoutEnding(clause)
  checkAmount(work, star, clause, times, rest)
  const shares = shareLandmarks(work, star, times)
  work.repeats.set(star, times)
  const last = lastBody(work, star)
  for (let lap = 1; lap <= times; lap++) {
    spend(work, star)
    if (shares) work.flex = [...shares]
    if (lap === times) runLast(work, star.items, last, run)
    else run(work, star.items)
  }
}
