/** Follows the items of a round, one after the other, the way hands would. */
import { runOver } from './crossing'
import { oneOver } from './bunches'
import {
  ELSEWHERE,
  attaches,
  cellsLeft,
  passesOwnChains,
  startAlongChain,
  turnAlongChain,
} from './chain-targets'
import { checkTop, closeRound, closesChain, closesRound, endsLap, picotChains, stepsDown } from './closing'
import { EMPTY_PART, finishDescribed, holdLoops, runDescribed, runEvenly } from './in-sum'
import { runOwnWay } from './own-way'
import { turnUnder } from './piece'
import { runAround, runStar } from './repeats'
import { FREE, SKIPPED, TRAVELLED } from './source'
import {
  clusterOf,
  drawTogether,
  makeBare,
  makeChain,
  explainedPlace,
  makeClosing,
  makeStitches,
} from './stitching'
import { SKIPPING, WORKING, checkNeighbor, settle, sourceFor, takingFor } from './taking'
import { leadsOn, leadsThere, leaveJoin, leaveTheWay, reachedBy, stayThere, stillThere } from './the-way'
import { sweepPartners, sweptParts } from './swept'
import { isKnownColour } from './colour-lists'
import type { SweptItem } from './swept'
import { placeTargets, sweep } from './targets'
import { runSquares } from './squares'
import { runTogether } from './together'
import { isSlip } from './stitch-name'
import { meetsAgain } from './told-joins'
import { spanOf } from './tokens'
import type { ColourItem, EveryItem, GroupItem, Item, Place, ScopeItem, SkipItem, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { closePicot } from './picots'
import { oneEach } from './each-count'
import { baseSource, hasBody, push, report, spend } from './work'
import type { Target, Work } from './work'

const BUNCH: StitchName['form'][] = ['together', 'decrease']

function runWork(work: Work, item: WorkItem, every: EveryItem | null, next: Item | undefined): void {
  const { stitch: name } = item
  const place = item.place ?? (work.here ? null : explainedPlace(work, name))
  const [count, part] = [item.count ?? 1, place?.parts[0]]
  spend(work, item)
  if (runOver(work, item, runItems) || runSquares(work, item, runItems)) return
  if (part?.which === 'elsewhere' || (part && isSlip(name) && meetsAgain(work, part))) {
    checkNeighbor(work, part)
    // The chains on both sides of a join to another motif stay one space.
    push(work, 'travel', 'sl st', item, { into: [{ ...ELSEWHERE }] })
    return
  }
  if (place && isSlip(name) && closesChain(work, place)) return closeRound(work, item)
  if (place && closesRound(work, place, isSlip(name))) {
    const picot = picotChains(work, item, next)
    if (picot > 0) return closePicot(work, picot, item)
    if (isSlip(name)) {
      checkTop(work, place)
      return closeRound(work, item)
    }
    // "3 hdc in first tr" behind a stitch is worked there; what closes a loop stands behind its chains.
    // "3 dc in first ch of foundation, dc in each of next 11 ch" goes on along the chain: one stitch alone closes.
    const alone = count === 1 && !(next?.type === 'work' && next.place?.parts[0]?.noun.kind === 'chain')
    const closes = alone && (work.elements.at(-1)?.role !== 'stitch' || !firstFree(work))
    if (work.repeated === 0 && goesRound(work) && closes) return makeClosing(work, name, item)
  }
  const picot = picotChains(work, item, next)
  if (picot > 0) return closePicot(work, picot, item)
  if (!work.here && stepsDown(work, item, work.hand?.then ?? [])) return closeRound(work, item)
  const reached = reachedBy(work, name, place) ?? (place && !isSlip(name) ? stillThere(work, place) : null)
  if (reached) return makeStitches(work, name, count, [reached], item, runItems)
  if (!place && isSlip(name) && endsLap(work)) return closeRound(work, item)
  if (isSlip(name) && attaches(work, place, item)) return
  if (!place && runOwnWay(work, name, count, runItems)) return
  if (!place) return makeBare(work, name, count, item, runItems)
  const taking = takingFor(name)
  if (!isSlip(name) || place.parts[0]!.which === 'same') leaveTheWay(work, place)
  if (BUNCH.includes(name.form)) return runTogether(work, item, name, place, taking, runItems)
  if (name.form === 'cluster' && oneOver(place) > 0) {
    const { stitch, legs } = clusterOf(work, name)
    const size = place.over && name.size === 0 ? oneOver(place) : legs
    const drawn: StitchName = { ...name, form: 'together', stitch, size }
    if (size === oneOver(place)) return runTogether(work, item, drawn, place, taking, runItems)
  }
  const travelling = isSlip(name) && leadsThere(work)
  if (travelling) leaveJoin(work, place)
  const targets = placeTargets(work, place, travelling ? { ...taking, as: TRAVELLED } : taking)
  const source = place.parts[0] ? sourceFor(work, place.parts[0]) : null
  targets.forEach((target, at) => {
    const met = source && target.source === source ? metAt(work, target, at) : at
    const times = every && (met + 1) % every.nth === 0 ? every.count : oneEach(item, place) ? 1 : count
    makeStitches(work, name, times, [target], item, runItems)
  })
  if (isSlip(name)) stayThere(work, targets.at(-1), next)
}

/** Whether more than the chains at the beginning is worked: what goes into the first stitch then closes the round. */
const goesRound = (work: Work): boolean =>
  work.elements.some(({ role }) => role === 'stitch' || role === 'slip' || role === 'space')

/** Whether the first stitch of the round before has not been worked: the beginning stands elsewhere. */
function firstFree(work: Work): boolean {
  const source = baseSource(work)
  if (!source?.state.ordered || source.state.unknown) return false
  const first = source.places.findIndex(({ kind }) => kind === 'stitch')
  return first >= 0 && source.used[first]! <= TRAVELLED
}

/** Number of a stitch in its round, from 0: "every 3rd" is counted from the beginning of the round. */
function metAt(work: Work, target: Target, at: number): number {
  const source = baseSource(work)
  if (!source || target.source !== source) return at
  if (target.place.index < 0) return at
  return target.place.index
}

function runSkip(work: Work, item: SkipItem): void {
  if (item.unworked) {
    work.leaveOpen = true
    work.left = item.left ?? null
    return
  }
  // A long stitch into the round before itself covers nothing more.
  if (item.covers && work.last?.source === baseSource(work)) return
  const begun = passesOwnChains(work, item.place)
  if (begun) startAlongChain(work, begun)
  else placeTargets(work, item.place, SKIPPING)
}

function runGroup(work: Work, item: GroupItem, rest: readonly Item[]): void {
  const times = item.times ?? 1
  if (item.around) {
    work.repeated++
    const { items, place, lastCount, toCorner } = item
    runAround(work, { item, items, place, lastCount, toCorner, rest }, runItems)
    work.repeated--
    return
  }
  if (!item.place) {
    if (item.times !== null) work.repeated++
    for (let at = 0; at < times; at++) {
      spend(work, item)
      const isUsedUp =
        at > 0 && at === times - 1 && work.overSpan === null && baseSource(work)?.free('stitch') === 0
      runItems(work, item.items)
      // One lap too many is told from there to the words that say how many.
      if (isUsedUp && work.overSpan) work.overSpan = spanOf(work.overSpan, item)
    }
    if (item.times !== null) work.repeated--
    return
  }
  // "(dc, ch 1) 3 times in next sp" stays in one place, "(…) in next sp 3 times" goes on to the next.
  const within = item.times === null || item.place.end === item.end
  const outer = within ? 1 : times
  for (let lap = 0; lap < outer; lap++) {
    spend(work, item)
    runPlaced(work, item.place, item.items, within ? times : 1)
  }
}

function runPlaced(work: Work, place: Place, items: readonly Item[], times: number): void {
  leaveTheWay(work, place)
  const there = stillThere(work, place, true)
  const targets = there ? [there] : placeTargets(work, place, WORKING)
  const many = targets.length > 1 || place.parts[0]!.each
  if (many) work.repeated++
  const [first, parts, last] = [items[0], items.at(-1), work.elements.at(-1)]
  // "Ch 3, dc in same sp, 2 dc in each sp around, with ch 1 between": behind what begins the round, too.
  if (many && parts?.type === 'chain' && parts.apart && last?.standing) makeChain(work, parts)
  // "Ch 4 (counts as dc and ch 1), dc in each dc across with ch 1 between": the first chain is there.
  const chained = many && first?.type === 'chain' && first.apart && last?.role === 'space' ? 1 : 0
  if (chained > 0) runInto(work, targets.slice(0, chained), items.slice(1), times)
  runInto(work, targets.slice(chained), items, times)
  if (many) work.repeated--
}

/** Works items into each of the targets in turn. */
function runInto(work: Work, targets: readonly Target[], items: readonly Item[], times: number): void {
  const outer = work.here
  for (const target of targets) {
    work.here = target
    work.last = target
    work.first ??= target
    for (let at = 0; at < times; at++) runItems(work, items)
    work.last = target
  }
  work.here = outer
}

function runColour(work: Work, item: ColourItem): void {
  if (item.colour !== null) {
    work.colour = item.colour
    if (!isKnownColour(item.colour, work.colours)) {
      const values = { colour: item.colour, known: work.colours.join(', ') }
      report(work, 'rounds/no-such-colour', item, values, item.colour)
    }
  }
  if (!item.place) return
  if (work.joined && hasBody(work)) {
    work.ahead = [item]
    return
  }
  const before = work.beginning
  const standing = item.stitch && item.stitch.stitch !== 'sl st'
  const source = baseSource(work)
  const free = source?.used.slice()
  const targets = placeTargets(work, item.place, standing ? WORKING : { as: 0, loop: null, post: null })
  // Where the yarn is joined nothing is passed over yet.
  free?.forEach((used, at) => {
    if (used === FREE && source!.used[at] === SKIPPED && !work.beginningDone) source!.used[at] = FREE
  })
  const target = targets[0]
  if (!target) return
  // "Join green in any sc of Rnd 2": what follows goes on there.
  const { round } = item.place.parts[0]!
  if (round && target.source && !item.stitch?.post) work.scope.round ??= target.source.state.number
  // "Ch 3 in any dc, dc in same dc": the chains stand there, and not where the round before was joined.
  const stood = work.first
  const only = work.elements.every(({ role }) => role === 'beginning')
  const begun = item.colour === null && !standing && work.beginningDone && only
  if (begun && stood?.source && stood.place.kind === 'stitch') stood.source.putBack(stood.place.index)
  work.last = target
  work.first = target
  if (begun) settle(work, target)
  else if (standing) makeStitches(work, item.stitch!, 1, [target], item, runItems)
  else if (target.source && target.place.index >= 0 && target.place.kind !== 'gap') {
    // "Join B with sl st in any sc, *ch 4, sl st in next sc": that stitch is used by the joining.
    const hangs = item.stitch !== null && (before === null || before.as === 'loop')
    if (hangs && target.place.kind === 'stitch') target.source.take(target.place.index, TRAVELLED)
    else target.source.moveTo(target.place.index)
    if (hangs) work.joinedAt = target
  } else if (target.source && target.place.kind === 'gap') target.source.releaseGap(target.place.index)
  if (!before && !standing) push(work, 'travel', 'sl st', item, { into: [target.place], group: target.group })
}

function runScope(work: Work, item: ScopeItem): void {
  // "Working along foundation ch" behind the side of a block: its other side, unless along the chain made meanwhile.
  const named = /\bfoundation|\bstarting/i.test(work.tree.text.slice(item.words.start, item.words.end))
  const under = item.along && work.base.kind === 'round' && (named || work.elements.at(-1)?.stitch !== 'ch')
  if (under && turnUnder(work)) return
  if (item.along) return startAlongChain(work, item.along)
  if (item.opposite) {
    if (!work.chain && work.base.kind === 'round' && turnUnder(work)) return
    if (!item.rotated || (work.chain && cellsLeft(work.chain) === 0)) turnAlongChain(work, item.words)
    return
  }
  if (item.loop) work.scope.loop = item.loop
  if (item.around) work.scope.around = true
  if (item.behind) work.scope.behind = true
  if (item.round) {
    work.scope.round = 'number' in item.round ? item.round.number : work.number - item.round.below
    work.clause = item.words
    const part = { round: item.round } as const
    sourceFor(work, {
      ...EMPTY_PART,
      ...part,
      start: item.start,
      end: item.end,
      line: item.line,
      column: item.column,
    })
  }
}

function runBehind(work: Work, { behind, loop, round }: ScopeItem): void {
  if (behind && !loop && !round) work.scope.behind = true
}

function runSweep(work: Work, items: readonly SweptItem[]): void {
  const [first] = items
  if (!first) return
  const itemOf = new Map(items.flatMap((item) => sweptParts(item).map((part) => [part, item] as const)))
  // "sc in same st and in each dc around": what stands before the sweep is worked by itself.
  const before = first.place.parts.filter((part) => !itemOf.has(part))
  if (before.length > 0) runItems(work, [{ ...first, place: { ...first.place, parts: before } }])
  const parts = [...itemOf.keys()]
  const takings = new Map(
    parts.map((part) => {
      const item = itemOf.get(part)!
      return [part, takingFor(item.type === 'work' ? item.stitch : null)] as const
    }),
  )
  work.repeated++
  for (const { target, part } of sweep(work, parts, takings)) {
    const item = itemOf.get(part) ?? first
    if (item.type === 'work') makeStitches(work, item.stitch, item.count ?? 1, [target], item, runItems)
    else runInto(work, [target], item.items, 1)
  }
  work.repeated--
}

const TELLS: ReadonlySet<Item['type']> = new Set(['note', 'count', 'statement'])

/** Whether nothing more is worked in a round, which has come to its end. */
const endsRound = (work: Work, rest: readonly Item[]): boolean =>
  hasBody(work) && work.repeated === 0 && !work.here && rest.every(({ type }) => TELLS.has(type))

/** Phrases behind a repeat that are looked at for what they keep for themselves. */
const LONGEST_TAIL = 200

/** Runs items in order. */
export function runItems(work: Work, items: readonly Item[]): void {
  let swept = 0
  const sweeping = (index: number): boolean => {
    const { partners, to } = sweepPartners(work, items, index)
    runSweep(work, partners)
    swept = to
    return partners.length > 0
  }
  items.forEach((item, index) => {
    spend(work, item)
    if (index < swept && item.type !== 'statement') return
    const described = item.type === 'described' || item.type === 'note'
    if (work.described && !described) finishDescribed(work, runItems)
    const then = items.slice(index + 1, index + 4)
    const next = then.find((found) => found.type !== 'note' && found.type !== 'statement')
    switch (item.type) {
      case 'work':
        // "sc around next post, working from behind": what follows is said of this stitch too.
        if (items[index + 1]?.type === 'scope') runBehind(work, items[index + 1] as ScopeItem)
        if (sweeping(index)) break
        if (leadsOn(work, item)) {
          work.ahead = [...work.ahead, item]
          break
        }
        work.hand = { item, then }
        runWork(work, item, next?.type === 'every' ? next : null, next)
        break
      case 'chain':
        makeChain(work, item)
        break
      case 'skip':
        runSkip(work, item)
        break
      case 'group':
        if (sweeping(index)) break
        runGroup(work, item, items.slice(index + 1, index + 1 + LONGEST_TAIL))
        break
      case 'placed':
        runPlaced(work, item.place, item.items, 1)
        break
      case 'star':
        work.repeated++
        runStar(work, item, items.slice(index + 1, index + 1 + LONGEST_TAIL), runItems)
        work.repeated--
        break
      case 'again': {
        const star = items
          .slice(Math.max(0, index - LONGEST_TAIL), index)
          .findLast((found) => found.type === 'star')
        if (star?.type !== 'star') break
        const double = star.items.findIndex((found) => found.type === 'double')
        const part = item.toDouble && double >= 0 ? star.items.slice(0, double) : star.items
        for (let at = 0; at < item.times; at++) runItems(work, part)
        break
      }
      case 'note':
        if (item.effect === 'dropped') drawTogether(work)
        if (item.effect === 'held') holdLoops(work, items[index - 1])
        break
      case 'join':
        checkTop(work, item.place)
        closeRound(work, item)
        break
      case 'colour':
        // "…, join with sl st in first sc. Fasten off A. Join B.": for the next round.
        if (item.colour && !item.place && endsRound(work, items.slice(index + 1))) work.ahead = [item]
        else runColour(work, item)
        break
      case 'scope':
        runScope(work, item)
        break
      case 'foundation': {
        const last = work.elements[work.elements.length - 1]
        const made = last?.role === 'stem' ? last.count : 0
        const chains = item.ring === 'close-chain' ? (item.chains ?? made) : 0
        if (work.base.kind === 'none' || work.base.kind === 'ring') {
          work.base = { kind: 'ring', chains }
          work.foundation = { kind: 'ring', chains }
        }
        break
      }
      case 'evenly':
        runEvenly(work, item, runItems)
        break
      case 'described':
        runDescribed(work, item, runItems)
        break
      default:
        break
    }
  })
  finishDescribed(work, runItems)
}
