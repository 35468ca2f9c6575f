/** Stitches as they are made: plain ones, clusters, decreases, shells, picots, chains, joins. */
import { STITCHES } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import { findBeginning } from './beginning'
import { bunchOf, heldOver, isBunchForm, isPlainGroup, noteAssumed } from './bunches'
import { cellsLeft, nextCell, standsOnChain, staysOnChain, tipCell } from './chain-targets'
import { WORKED } from './source'
import { WORKING, nextStitch, settle } from './taking'
import type { Taking } from './taking'
import { makePicot, picotSize } from './picots'
import { standForSkipped } from './skipped-chains'
import { beginningTarget } from './same-target'
import { cornerBefore } from './corners-as-before'
import { definedKey } from './vocabulary'
import type { Span } from './tokens'
import { isSlip } from './stitch-name'
import type { ChainItem, Definition, Item, Place } from './tree'
import type { StitchName } from './stitch-name'
import { hasBody, push, report } from './work'
import type { Element, Target, Work } from './work'
import { firstStitchOf } from './worked'

/** Runs the items of a definition in one place; handed in, since running and stitching hold each other. */
export type ItemRunner = (work: Work, items: readonly Item[]) => void

/** Chains that stand as high as a stitch that closes a loop: "ch 3, dc in first sc" is a loop of six. */
const CLOSING_CHAINS = (stitch: StitchKey): number => Math.max(1, STITCHES[stitch].beginningChains)

const stitchOf = (work: Work, name: StitchName): StitchKey => {
  const given =
    name.stitch ?? work.lastStitch ?? (name.form === 'increase' || name.form === 'decrease' ? 'sc' : 'dc')
  return given === 'ch' ? 'sc' : given
}

export function definitionOf(work: Work, name: StitchName): Definition | null {
  const key = definedKey(name.name)
  const short = key.replace(/(sts?|stitch|stitches)$/, '')
  const single = key.replace(/s$/, '')
  return (
    work.tree.definitions.find((found) =>
      found.keys.some((given) => given === key || given === short || given === single),
    ) ??
    work.tree.definitions.find(
      (found) => found.form === name.form && name.form !== 'special' && name.size === 0,
    ) ??
    cornerBefore(work, name)
  )
}

/** "Corner = (2 dc, ch 2, 2 dc) in corner sp": where a group goes that is asked for by its name alone. */
export function explainedPlace(work: Work, name: StitchName): Place | null {
  if (name.form === 'plain') return null
  const items = definitionOf(work, name)?.items.filter(({ type }) => type !== 'note') ?? []
  const last = items.at(-1)
  // "Spike sc: a sc into the top of the Rnd 2 cluster".
  const alone = items.length === 1 && last?.type === 'work' ? last.place : null
  if (alone?.parts.length === 1 && alone.parts[0]!.round) return alone
  // "Spike dc: insert hook between two groups of Rnd 2, pull up a loop, …": into no stitch of the round before.
  const steps = items.every(({ type }) => type === 'described') ? items : []
  const hook = steps.find((item) => item.type === 'described' && item.place !== null)
  const between = hook?.type === 'described' ? hook.place : null
  if (between?.parts.length === 1 && between.parts[0]!.round && between.parts[0]!.noun.kind === 'gap')
    return between
  const place = last?.type === 'group' || last?.type === 'placed' ? last.place : null
  const [part] = place?.parts ?? []
  const space = ['space', 'corner', 'within'].includes(part?.noun.kind ?? '')
  return place && space && part?.which === 'next' && place.parts.length === 1 ? place : null
}

/** Appends one standing stitch (or a slip stitch) into its targets. */
function stand(
  work: Work,
  name: StitchName,
  stitch: StitchKey,
  targets: readonly Target[],
  span: Span,
  legs: number,
): Element {
  const first = targets[0]!
  const into = targets.map((target) => target.place)
  const element = push(work, 'stitch', stitch, span, {
    form:
      name.form === 'special' || name.form === 'increase' || name.form === 'decrease' ? 'plain' : name.form,
    into,
    group: first.group,
    legs,
    standing: true,
    reverse: name.reverse,
  })
  if (name.form === 'decrease') element.form = 'together'
  if (work.leg) {
    const { legs: said, target } = work.leg
    element.legs = said > 0 ? said : legs + 1
    // "Ch 2, dc in next sc (counts as dc2tog)": the chains stand in a place of their own.
    const apart = target !== null && (into.length > 1 || target.group !== first.group)
    if (element.form === 'plain') element.form = apart ? 'together' : 'cluster'
    if (target && apart) element.into = [target.place, ...into]
    work.leg = null
  }
  work.last = targets[targets.length - 1]!
  work.first ??= first
  work.lastStitch = stitch
  return element
}

function slip(work: Work, targets: readonly Target[], span: Span, reused: boolean): void {
  const { beginning } = work
  const leads = beginning !== null && !beginning.slips && !work.beginningDone
  const travelling = work.repeated === 0 && !hasBody(work) && leads
  for (const target of targets) {
    push(work, travelling ? 'travel' : 'slip', 'sl st', span, { into: [target.place], group: target.group })
    work.last = target
  }
  if (!travelling && !reused) work.first ??= targets[0] ?? null
}

/** "inc" is two of the stitch in hand in one place; "dec" one over two. */
export function makeStitches(
  work: Work,
  name: StitchName,
  count: number,
  targets: readonly Target[],
  span: Span,
  run: ItemRunner,
): void {
  if (isSlip(name)) {
    for (let at = 0; at < count; at++) slip(work, targets, span, false)
    return
  }
  const definition = name.form === 'plain' ? null : definitionOf(work, name)
  const stitch = stitchOf(work, name)
  const target = targets[0]!
  for (let at = 0; at < count; at++) {
    switch (name.form) {
      case 'plain': {
        const fresh = at === 0
        standForSkipped(work, target, stitch, fresh)
        stand(work, name, stitch, targets, span, 1)
        // "ch 2, 1 dc" of a beginning cluster is one stitch, "ch 2, 2 dc" too.
        if (
          work.leg === null &&
          fresh &&
          count > 1 &&
          work.elements[work.elements.length - 1]!.form === 'cluster'
        )
          return
        break
      }
      case 'increase':
        stand(work, name, stitch, targets, span, 1)
        stand(work, name, stitch, targets, span, 1)
        break
      case 'shell':
      case 'v-stitch':
        makeGroup(work, name, stitch, target, span, definition, run)
        break
      case 'special':
        if (definition && definition.items.some((item) => item.type === 'work' || item.type === 'group')) {
          makeGroup(work, name, stitch, target, span, definition, run)
        } else stand(work, name, stitch, targets, span, 1)
        break
      case 'picot':
        makePicot(work, picotSize(name, definition), span)
        break
      default:
        if (definition && isPlainGroup(name, definition, work.tree.text))
          makeGroup(work, name, stitch, target, span, definition, run)
        else makeBunch(work, name, targets, span, definition)
    }
  }
}

/** A cluster, puff, popcorn or bobble, or stitches worked together. */
function makeBunch(
  work: Work,
  name: StitchName,
  targets: readonly Target[],
  span: Span,
  definition: Definition | null,
): void {
  if (!isBunchForm(name.form) || targets.length > 1) {
    stand(work, name, name.stitch ?? 'dc', targets, span, Math.max(name.size, targets.length, 1))
    return
  }
  const { stitch, legs, assumed } = bunchOf(name, name.form, definition, work.tree.text)
  // Chains that are one of the legs are counted by `stand`; a size that is only usual holds them already.
  const ownLeg = work.leg !== null && work.leg.legs === 0 && name.size === 0
  const element = stand(work, name, stitch, targets, span, ownLeg ? legs - 1 : legs)
  element.assumed = assumed && element.legs === legs
  if (element.assumed) noteAssumed(work, name, span, { stitch, legs })
}

/** The stitches just made, drawn together to one popcorn. */
export function drawTogether(work: Work): void {
  const { elements } = work
  let from = elements.length
  const group = elements[from - 1]?.group
  while (from > 0 && elements[from - 1]!.standing && elements[from - 1]!.group === group) from--
  const first = elements[from]
  const legs = elements.length - from
  if (!first || legs < 2) return
  elements.length = from + 1
  first.form = 'popcorn'
  first.legs = legs
}

/** A shell or V-stitch: as explained, else 5 dc or (dc, ch 1, dc) as is most common. */
function makeGroup(
  work: Work,
  name: StitchName,
  stitch: StitchKey,
  target: Target,
  span: Span,
  definition: Definition | null,
  run: ItemRunner,
): void {
  if (definition && work.depth < 8) {
    // "Beg shell: ch 3, (dc, ch 1, 2 dc)": its chains are those of the round.
    if (!work.beginningDone && !hasBody(work))
      work.beginning = findBeginning(definition.items, false) ?? work.beginning
    const outer = work.here
    work.here = target
    work.depth++
    // "…; skip the st behind it": that is the place where it is called for.
    run(work, definition.items.filter(({ type }) => type !== 'skip').map(stripPlace))
    work.depth--
    work.here = outer
    work.last = target
    return
  }
  const plain: StitchName = { ...name, form: 'plain', size: 0 }
  const made = name.stitch ?? 'dc'
  if (name.form === 'v-stitch') {
    stand(work, plain, made, [target], span, 1)
    push(work, 'space', 'ch', span, { count: 1, group: target.group })
    stand(work, plain, made, [target], span, 1)
    return
  }
  const size = name.size > 0 ? name.size : 5
  if (name.size === 0)
    report(
      work,
      'rounds/special-not-explained',
      span,
      { word: name.name, taken: `${size} ${stitch === 'sc' ? 'dc' : made}` },
      name.form,
    )
  for (let at = 0; at < size; at++) stand(work, plain, made, [target], span, 1)
}

/** "Beg shell = sl st across to ch-2 sp of first shell, ch 3, (dc, ch 2, 2 dc) in same sp": leads to where it stands, as a round does that says so itself; else null. */
function ledTo(work: Work, said: Definition | null): readonly Item[] | null {
  const [first] = said?.items ?? []
  const leads = first?.type === 'work' && isSlip(first.stitch) && first.place !== null
  if (!said || !leads || work.beginningDone || hasBody(work) || work.depth > 0) return null
  work.beginning = findBeginning(said.items, false) ?? work.beginning
  return said.items
}

/** In a definition the place ("in same st") is the one where the special stitch is called for. */
function stripPlace(item: Item): Item {
  if (
    item.type === 'work' &&
    item.place &&
    !item.place.parts.some((part) => part.which === 'from-hook' || part.noun.kind === 'own')
  )
    return { ...item, place: null }
  if (item.type === 'group') return { ...item, place: null }
  return item
}

/** One decrease over the next stitches, or over places that the text names. */
export function makeDecrease(work: Work, name: StitchName, targets: readonly Target[], span: Span): void {
  if (targets.length === 0) return
  const form = name.form === 'plain' ? 'together' : name.form
  const stitch = name.form === 'decrease' ? (name.stitch ?? work.lastStitch ?? 'sc') : (name.stitch ?? 'dc')
  stand(work, { ...name, form }, stitch, targets, span, Math.max(2, name.size, targets.length))
}

/** The next stitch, or the next chain of the one that is worked along. */
function nextBare(work: Work, taking: Taking): Target {
  const along = work.base.kind === 'chain' || standsOnChain(work) ? work.chain : null
  if (!along) return nextStitch(work, null, taking)
  return cellsLeft(along) > 0 ? nextCell(work) : (tipCell(work, along) ?? nextStitch(work, null, taking))
}

/** Stitch and legs of a cluster: as named, as explained, else as is usual. */
export const clusterOf = (work: Work, name: StitchName) =>
  bunchOf(name, 'cluster', definitionOf(work, name), work.tree.text)

/** Over how many stitches a cluster goes as it is explained; 0 for one place. */
function stitchesOver(work: Work, name: StitchName): number {
  const begins = !hasBody(work) && !work.beginningDone && !work.leg
  return isBunchForm(name.form) ? heldOver(definitionOf(work, name)?.items ?? [], begins) : 0
}

/** Bare stitches: each in the next stitch, or all in the place that is named around them. */
export function makeBare(work: Work, name: StitchName, count: number, span: Span, run: ItemRunner): void {
  if (name.form === 'picot') {
    makeStitches(work, name, count, [], span, run)
    return
  }
  const taking = { as: WORKED, loop: name.loop, post: name.post }
  const several = name.form === 'together' || name.form === 'decrease'
  const led = ledTo(work, definitionOf(work, name))
  if (led) return run(work, led)
  for (let at = 0; at < count; at++) {
    if (work.here) {
      makeStitches(work, name, 1, [work.here], span, run)
      continue
    }
    const over = several ? 0 : stitchesOver(work, name)
    if (over > 1)
      makeDecrease(
        work,
        name,
        Array.from({ length: over }, () => nextStitch(work, null, taking)),
        span,
      )
    else if (several) {
      const legs = Math.max(2, name.size) - (work.leg ? 1 : 0)
      const into = Array.from({ length: name.size > 0 && !work.leg ? legs : Math.max(2, name.size) }, () =>
        nextBare(work, taking),
      )
      makeDecrease(work, name, into, span)
    } else makeStitches(work, name, 1, [nextBare(work, taking)], span, run)
  }
}

/** Chains: of the beginning, of the foundation, or between stitches. */
export function makeChain(work: Work, item: ChainItem): void {
  if (!staysOnChain(work)) work.chain = null
  const { beginning } = work
  if (beginning?.item === item && !work.beginningDone) {
    work.beginningDone = true
    makeBeginning(work, item)
    return
  }
  if (work.base.kind === 'none' && !hasBody(work)) {
    push(work, 'stem', 'ch', item, { count: item.count })
    return
  }
  push(work, 'space', 'ch', item, { count: item.count, group: item.apart ? -1 : (work.here?.group ?? -1) })
}

function makeBeginning(work: Work, item: ChainItem): void {
  const beginning = work.beginning!
  const target = work.here ?? work.last ?? beginningTarget(work)
  if (beginning.as === 'loop') {
    push(work, 'space', 'ch', item, { count: item.count, group: work.here?.group ?? -1 })
    return
  }
  const into = target ? [target.place] : []
  const group = target?.group ?? -1
  if (beginning.as === 'turning') {
    push(work, 'beginning', 'ch', item, { count: item.count, group })
    work.first = target
    return
  }
  const settled = target ? settle(work, target, WORKING) : null
  work.first = settled
  work.last = settled
  if (beginning.as === 'leg') {
    push(work, 'beginning', 'ch', item, { count: item.count, into, group })
    work.leg = { legs: beginning.legs, target: settled }
    return
  }
  const height = item.count - beginning.extra
  push(work, 'beginning', 'ch', item, {
    count: height,
    into,
    group,
    standing: true,
    countsAs: beginning.stitch ?? 'dc',
  })
  if (beginning.stitch) work.lastStitch = beginning.stitch
  if (beginning.extra > 0)
    push(work, 'space', 'ch', item, { count: beginning.extra, group: work.here?.group ?? -1 })
}

/** A stitch into the first of the round: it closes the round and stands for the last chains of a loop. */
export function makeClosing(work: Work, name: StitchName, span: Span): void {
  const stitch = name.stitch ?? 'dc'
  const chains = CLOSING_CHAINS(stitch)
  push(work, 'closing', stitch, span, { count: chains, into: [firstStitchOf(work.index)] })
  work.joined = true
}
