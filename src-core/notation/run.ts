/** Follows the items of a round, one after the other, the way hands would. */
import { turnAlongChain } from './chain-targets'
import { closeRound, closesRound, picotChains } from './closing'
import { runAround, runStar } from './repeats'
import { WORKED } from './source'
import {
  closePicot,
  isSlip,
  makeBare,
  makeChain,
  makeClosing,
  makeDecrease,
  makeStitches,
  turnSlipsToTravel,
} from './stitching'
import { SKIPPING, WORKING, sourceFor } from './taking'
import { placeTargets, sweep } from './targets'
import type { Taking } from './taking'
import type {
  ColourItem,
  DescribedItem,
  EvenItem,
  EveryItem,
  GroupItem,
  Item,
  Place,
  ScopeItem,
  SkipItem,
  StitchName,
  WorkItem,
} from './tree'
import { NO_NAME } from './tree'
import { baseSource, hasBody, push, report, spend } from './work'
import type { Target, Work } from './work'

const BUNCH: StitchName['form'][] = ['together', 'decrease']

function runWork(work: Work, item: WorkItem, every: EveryItem | null, next: Item | undefined): void {
  const { stitch: name, place } = item
  const count = item.count ?? 1
  spend(work, item)
  if (place && closesRound(work, place)) {
    const picot = picotChains(work, item, next)
    if (picot > 0) return closePicot(work, picot, item)
    if (isSlip(name)) return closeRound(work, item)
    if (work.repeated === 0) return makeClosing(work, name, item)
  }
  const picot = picotChains(work, item, next)
  if (picot > 0) return closePicot(work, picot, item)
  if (!place) return makeBare(work, name, count, item, runItems)
  const taking: Taking = { as: WORKED, loop: name.loop, post: name.post }
  if (place.parts[0]!.which === 'same') turnSlipsToTravel(work)
  if (BUNCH.includes(name.form)) return runTogether(work, item, name, place, taking)
  const travelling =
    isSlip(name) && work.repeated === 0 && !hasBody(work) && work.beginning !== null && !work.beginningDone
  const targets = placeTargets(work, place, travelling ? { ...taking, as: 1 } : taking)
  const source = place.parts[0] ? sourceFor(work, place.parts[0]) : null
  targets.forEach((target, at) => {
    const met = source && target.source === source ? metAt(work, target, at) : at
    const times = every && (met + 1) % every.nth === 0 ? every.count : count
    makeStitches(work, name, times, [target], item, runItems)
  })
}

/** Number of a stitch in its round, from 0: "every 3rd" is counted from the beginning of the round. */
function metAt(work: Work, target: Target, at: number): number {
  const source = baseSource(work)
  if (!source || target.source !== source) return at
  if (target.place.index < 0) return at
  return target.place.index
}

/** "dc3tog": a cluster where the place is one, a decrease where it is several. */
function runTogether(work: Work, item: WorkItem, name: StitchName, place: Place, taking: Taking): void {
  const legs = Math.max(2, name.size)
  const sweep = place.parts.length === 1 && (place.parts[0]!.which === 'each' || place.parts[0]!.each)
  const targets = placeTargets(work, place, taking)
  const swept =
    place.parts[0]!.noun.kind === 'stitch' &&
    place.start === place.parts[0]!.start &&
    place.parts[0]!.which === 'each'
  if (sweep && !place.over && !(name.form === 'decrease' || swept)) {
    for (const target of targets) makeStitches(work, name, item.count ?? 1, [target], item, runItems)
    return
  }
  if (sweep) {
    // "sc2tog around": pair after pair.
    for (let at = 0; at < targets.length; at += legs)
      makeDecrease(work, name, targets.slice(at, at + legs), item)
    return
  }
  if (place.over || targets.length > 1) {
    const one = place.over || targets.length <= Math.max(legs, 2) || targets.length % legs !== 0
    if (one) makeDecrease(work, name, targets, item)
    else
      for (let at = 0; at < targets.length; at += legs)
        makeDecrease(work, name, targets.slice(at, at + legs), item)
    return
  }
  makeStitches(
    work,
    name.form === 'decrease' ? { ...name, form: 'together' } : name,
    item.count ?? 1,
    targets,
    item,
    runItems,
  )
}

function runSkip(work: Work, item: SkipItem): void {
  if (item.unworked) {
    work.leaveOpen = true
    return
  }
  placeTargets(work, item.place, SKIPPING)
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
      runItems(work, item.items)
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
  if (place.parts[0]!.which === 'same') turnSlipsToTravel(work)
  const targets = placeTargets(work, place, WORKING)
  const many = targets.length > 1 || place.parts[0]!.each
  if (many) work.repeated++
  for (const target of targets) for (let at = 0; at < times; at++) workInto(work, target, items)
  if (many) work.repeated--
}

function runColour(work: Work, item: ColourItem): void {
  if (item.colour !== null) {
    work.colour = item.colour
    if (work.colours.length > 0 && !work.colours.includes(item.colour)) {
      const values = { colour: item.colour, known: work.colours.join(', ') }
      report(work, 'rounds/no-such-colour', item, values, item.colour)
    }
  }
  if (!item.place) return
  const before = work.beginning
  const standing = item.stitch && item.stitch.stitch !== 'sl st'
  const targets = placeTargets(work, item.place, standing ? WORKING : { as: 0, loop: null, post: null })
  const target = targets[0]
  if (!target) return
  work.last = target
  work.first = target
  if (standing) makeStitches(work, item.stitch!, 1, [target], item, runItems)
  else if (target.source && target.place.index >= 0 && target.place.kind !== 'gap')
    target.source.moveTo(target.place.index)
  else if (target.source && target.place.kind === 'gap') target.source.releaseGap(target.place.index)
  if (!before && !standing) push(work, 'travel', 'sl st', item, { into: [target.place], group: target.group })
}

function runScope(work: Work, item: ScopeItem): void {
  if (item.opposite) {
    turnAlongChain(work)
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

const NO_SPAN = { start: 0, end: 0, line: 1, column: 1 }
const EMPTY_PART = {
  which: 'next',
  count: 1,
  each: false,
  noun: { kind: 'stitch', name: null },
  extent: null,
  loop: null,
  around: false,
  unworked: false,
  asBeginning: false,
  nounSpan: NO_SPAN,
} as const

/** "36 sc evenly around": takes all that is there. */
function runEvenly(work: Work, item: EvenItem): void {
  const source = baseSource(work)
  const free = source ? source.free('stitch') : 0
  if (item.count === null || !source || source.state.unknown) {
    report(work, 'rounds/not-countable', item, { what: "'evenly'" }, 'evenly')
    work.open = true
    return
  }
  const made =
    item.change === 'work' ? item.count : item.change === 'increase' ? free + item.count : free - item.count
  const name: StitchName = item.stitch ?? { ...NO_NAME, ...item, stitch: work.lastStitch ?? 'sc' }
  const targets = placeTargets(
    work,
    {
      parts: [
        {
          ...EMPTY_PART,
          which: 'each',
          each: true,
          round: null,
          start: item.start,
          end: item.end,
          line: item.line,
          column: item.column,
        },
      ],
      over: false,
      ...NO_SPAN,
    },
    WORKING,
  )
  if (targets.length === 0 || made <= 0) return
  if (made >= targets.length) {
    for (let at = 0; at < made; at++)
      makeStitches(work, name, 1, [targets[Math.floor((at * targets.length) / made)]!], item, runItems)
  } else {
    for (let at = 0; at < made; at++) {
      const from = Math.floor((at * targets.length) / made)
      const to = Math.floor(((at + 1) * targets.length) / made)
      if (to - from > 1) makeDecrease(work, name, targets.slice(from, to), item)
      else makeStitches(work, name, 1, [targets[from]!], item, runItems)
    }
  }
}

function runDescribed(work: Work, item: DescribedItem): void {
  const target = item.place ? (placeTargets(work, item.place, WORKING)[0] ?? null) : work.here
  work.described = { target: work.described?.target ?? target, span: work.described?.span ?? item }
  if (item.closes) finishDescribed(work)
}

/** The stitch told in steps is done: it counts as one. */
function finishDescribed(work: Work): void {
  const { described } = work
  if (!described) return
  work.described = null
  const target = described.target ?? work.last
  if (!target) return
  const name: StitchName = { ...NO_NAME, form: 'cluster', stitch: 'dc', size: 0, ...described.span }
  makeStitches(work, name, 1, [target], described.span, runItems)
}

/** "sc in each st … and 3 sc in each corner sp", "…, working (2 dc, ch 2, 2 dc) in each ch-2 sp": one sweep, if the next item belongs to it. */
function sweepPartner(work: Work, item: WorkItem, next: Item | undefined): WorkItem | GroupItem | null {
  if ((next?.type !== 'work' && next?.type !== 'group') || !item.place || !next.place || work.here)
    return null
  const [first] = item.place.parts
  const [second] = next.place.parts
  if (item.place.parts.length !== 1 || next.place.parts.length !== 1 || !first || !second) return null
  if (first.which !== 'each' || second.which !== 'each' || first.noun.kind !== 'stitch') return null
  if (second.noun.kind !== 'space' && second.noun.kind !== 'corner') return null
  if (next.type === 'group' && (next.times !== null || next.around)) return null
  const between = work.tree.text.slice(item.end, next.start)
  return /[.;]/.test(between) ? null : next
}

function runSweep(work: Work, first: WorkItem, second: WorkItem | GroupItem): void {
  const parts = [first.place!.parts[0]!, second.place!.parts[0]!]
  const taking: Taking = { as: WORKED, loop: first.stitch.loop, post: first.stitch.post }
  work.repeated++
  for (const { target, part } of sweep(work, parts, taking)) {
    const item = part === parts[1] ? second : first
    if (item.type === 'group') workInto(work, target, item.items)
    else makeStitches(work, item.stitch, item.count ?? 1, [target], item, runItems)
  }
  work.repeated--
}

/** A group in one place. */
function workInto(work: Work, target: Target, items: readonly Item[]): void {
  const outer = work.here
  work.here = target
  work.last = target
  work.first ??= target
  runItems(work, items)
  work.last = target
  work.here = outer
}

/** Phrases behind a repeat that are looked at for what they keep for themselves. */
const LONGEST_TAIL = 200

/** Runs items in order. */
export function runItems(work: Work, items: readonly Item[]): void {
  let swept: WorkItem | GroupItem | null = null
  items.forEach((item, index) => {
    spend(work, item)
    if (item === swept) return
    const described = item.type === 'described' || item.type === 'note'
    if (work.described && !described) finishDescribed(work)
    const next = items
      .slice(index + 1, index + 4)
      .find((found) => found.type !== 'note' && found.type !== 'statement')
    switch (item.type) {
      case 'work':
        // "sc around next post, working from behind": what follows is said of this stitch too.
        if (items[index + 1]?.type === 'scope') runBehind(work, items[index + 1] as ScopeItem)
        swept = sweepPartner(work, item, items[index + 1])
        if (swept) {
          runSweep(work, item, swept)
          break
        }
        runWork(work, item, next?.type === 'every' ? next : null, next)
        break
      case 'chain':
        makeChain(work, item)
        break
      case 'skip':
        runSkip(work, item)
        break
      case 'group':
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
      case 'join':
        closeRound(work, item)
        break
      case 'colour':
        runColour(work, item)
        break
      case 'scope':
        runScope(work, item)
        break
      case 'foundation': {
        const last = work.elements[work.elements.length - 1]
        const chains = item.ring === 'close-chain' && last?.role === 'stem' ? last.count : 0
        if (work.base.kind === 'none' || work.base.kind === 'ring') {
          work.base = { kind: 'ring', chains }
          work.foundation = { kind: 'ring', chains }
        }
        break
      }
      case 'evenly':
        runEvenly(work, item)
        break
      case 'described':
        runDescribed(work, item)
        break
      default:
        break
    }
  })
  finishDescribed(work)
}
