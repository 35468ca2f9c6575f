/** Work that is told in sum: so many evenly, and stitches told step by step. */
import { makeDecrease, makeStitches } from './stitching'
import type { ItemRunner } from './stitching'
import { WORKING } from './taking'
import { placeTargets } from './targets'
import { makes } from './repeat-endings'
import { statedStitches } from './told-counts'
import type { DescribedItem, EvenItem, Item } from './tree'
import type { StitchName } from './stitch-name'
import { NO_NAME, isSlip } from './stitch-name'
import { baseSource, report, spend, targetAt } from './work'
import type { Element, Work } from './work'

const NO_SPAN = { start: 0, end: 0, line: 1, column: 1 }
/** A part of a place that says nothing yet. */
export const EMPTY_PART = {
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

/** "Sc evenly around. (36 sc)": the count of the round, where nothing else stands behind the beginning. */
function statedAlone(work: Work, item: EvenItem): number | null {
  const { items } = work.node
  const at = items.indexOf(item)
  const alone = !items
    .slice(at + 1)
    .some((next) => makes(next) && !(next.type === 'work' && isSlip(next.stitch)))
  return item.change === 'work' && at >= 0 && alone ? statedStitches(items) : null
}

/** "36 sc evenly around": takes all that is there. */
export function runEvenly(work: Work, item: EvenItem, run: ItemRunner): void {
  const source = baseSource(work)
  const free = source ? source.free('stitch') : 0
  const before = work.elements.filter(({ standing }) => standing).length
  const told = item.count ?? statedAlone(work, item)
  // "1ch, 121 dc evenly along the hem": on a cloth, nothing else has been made.
  if (work.base.kind === 'none' && item.count !== null && item.stitch && item.change === 'work') {
    const cloth = targetAt(work, null, { kind: 'unknown', round: -1, index: -1 })
    for (let at = 0; at < item.count; at++) {
      spend(work, item)
      makeStitches(work, item.stitch, 1, [cloth], item, run)
    }
    return
  }
  if (told === null || !source || source.state.unknown) {
    report(work, 'rounds/not-countable', item, { what: "'evenly'" }, 'evenly')
    work.open = true
    return
  }
  const whole = item.withFirst === true || item.count === null
  const made =
    item.change === 'work'
      ? told - (whole ? before : 0)
      : item.change === 'increase'
        ? free + told
        : free - told
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
  // Around a piece in rows: along the ends of its rows and its chain as well, nobody tells how many where.
  const sides = item.around === true && item.change === 'work' && work.piece.flat && made > targets.length
  if (made >= targets.length) {
    for (let at = 0; at < made; at++) {
      const own = targets[Math.floor((at * targets.length) / made)]!
      const target = sides ? targetAt(work, null, { kind: 'unknown', round: -2, index: -1 }) : own
      makeStitches(work, name, 1, [target], item, run)
    }
  } else {
    for (let at = 0; at < made; at++) {
      const from = Math.floor((at * targets.length) / made)
      const to = Math.floor(((at + 1) * targets.length) / made)
      if (to - from > 1) makeDecrease(work, name, targets.slice(from, to), item)
      else makeStitches(work, name, 1, [targets[from]!], item, run)
    }
  }
}

/** "2 dc in ring holding back last lp of each": what was made before it, or else what comes, is held on the hook. */
export function holdLoops(work: Work, before: Item | undefined): void {
  const { elements } = work
  let from = elements.length
  const isOf = ({ span }: Element) =>
    before?.type === 'work' && span.start >= before.start && span.end <= before.end
  while (from > 0 && isOf(elements[from - 1]!)) from--
  work.held = from
}

/** Whether stitches lie in several places: the chains before them are the first leg. */
const spread = (legs: readonly Element[]): boolean => legs.some(({ group }) => group !== legs[0]!.group)

/** Draws the stitches that are held to one, with the chains in place of the first. */
function closeHeld(work: Work, from: number): void {
  const { elements } = work
  work.held = null
  const first = elements[from]
  if (!first?.standing) return
  const before = elements[from - 1]
  // "Ch 3, holding back last lp of each dc, dc in next 2 dc, …": the chains are the first leg, wherever the others stand.
  const begins =
    before?.role === 'beginning' &&
    before.standing &&
    (before.group === first.group || work.beginning?.said === false || spread(elements.slice(from)))
  const legs = elements.slice(begins ? from - 1 : from)
  if (legs.some(({ group }) => group !== first.group)) first.into = legs.flatMap(({ into }) => into)
  first.legs = elements.length - from + (begins ? 1 : 0)
  first.form = 'cluster'
  elements.length = from + 1
  if (!begins) return
  before.standing = false
  before.countsAs = null
}

/** Steps of a stitch, told one after the other; the last one finishes it. */
export function runDescribed(work: Work, item: DescribedItem, run: ItemRunner): void {
  if (work.held !== null) {
    if (item.closes) closeHeld(work, work.held)
    return
  }
  const target = item.place ? (placeTargets(work, item.place, WORKING)[0] ?? null) : work.here
  work.described = { target: work.described?.target ?? target, span: work.described?.span ?? item }
  if (item.closes) finishDescribed(work, run)
}

/** The stitch told in steps is done: it counts as one. */
export function finishDescribed(work: Work, run: ItemRunner): void {
  const { described } = work
  if (!described) return
  work.described = null
  const target = described.target ?? work.last
  if (!target) return
  const name: StitchName = { ...NO_NAME, form: 'cluster', stitch: 'dc', size: 0, ...described.span }
  makeStitches(work, name, 1, [target], described.span, run)
}
