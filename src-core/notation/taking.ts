/** Using places up: which round, which loops, and what answers to a name. */
import { STITCHES } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import { APART, BUNCHES, answersTo } from './answers-to'
import { betweenNamed } from './beside-named'
import { LIMITS } from './limits'
import { FREE, SKIPPED, Source, TRAVELLED, WORKED, cornerPlaces } from './source'
import type { PlaceTest } from './source'
import { BACK, FRONT, spaceKey } from './state'
import { placeParts } from './tree'
import type { Item, Noun, PlacePart } from './tree'
import type { Loop, StitchName } from './stitch-name'
import type { Span } from './tokens'
import { TooLong, baseSource, report, sourceOf, spend, targetAt } from './work'
import type { Target, Work } from './work'
import type { LeftPlace } from './worked'

/** Name of a space in words: its chains, or what it is called. */
function spaceName(noun: Noun): string | null {
  if (noun.kind === 'space')
    return noun.corner ? 'corner' : noun.chains === null ? 'sp' : spaceKey(noun.chains)
  return noun.kind === 'corner' ? 'corner' : null
}

export interface Taking {
  /** WORKED, SKIPPED or TRAVELLED. */
  readonly as: number
  readonly loop: Loop | null
  readonly post: 'front' | 'back' | null
}

export const WORKING: Taking = { as: WORKED, loop: null, post: null }
export const SKIPPING: Taking = { as: SKIPPED, loop: null, post: null }

/** Worked into, in the loop or around the post that the name of the stitch says. */
export const takingFor = (name: StitchName | null): Taking => ({
  as: WORKED,
  loop: name?.loop ?? null,
  post: name?.post ?? null,
})

/** "the round before", "Rnd 2". */
export function roundWords(work: Work, source: Source): string {
  return source === baseSource(work) ? 'the round before' : `Rnd ${source.state.number}`
}

/** "Spike sc in cluster below": the round before, or the last one below it that has such a stitch. */
function sourceBeneath(work: Work, { noun }: PlacePart): Source | null {
  const base = baseSource(work)
  const name = noun.kind === 'stitch' ? noun.name : null
  if (!base || !name || base.state.unknown) return base
  const has = (source: Source) =>
    source.has(
      'stitch',
      `${name.form} ${name.stitch}`,
      (place) => place.stitch !== null && answersTo(place, name),
    )
  for (let number = work.number - 1; number > 0; number--) {
    const state = number === base.state.number ? base.state : work.history.get(number)
    if (state && !state.unknown && has(sourceOf(work, state))) return sourceOf(work, state)
  }
  return base
}

/** "In each of the 12 back loops", where the last round has other stitches: the round whose front loops alone are worked. */
function sourceOfLoops(work: Work, { loop, each, count }: PlacePart): Source | null {
  const base = baseSource(work)
  if (!base || base.state.unknown || (loop !== 'front' && loop !== 'back') || !each || count < 2) return base
  if (base.total('stitch') === count) return base
  const held = loop === 'front' ? BACK : FRONT
  for (let number = work.number - 1; number > 0; number--) {
    const state = work.history.get(number)
    if (!state || state.unknown) continue
    const stitches = state.places.flatMap(({ kind }, at) => (kind === 'stitch' ? [at] : []))
    if (stitches.length === count && stitches.every((at) => state.loops[at] === held))
      return sourceOf(work, state)
  }
  return base
}

/** The round that a part of a place names, or that the round is worked in. */
export function sourceFor(work: Work, part: PlacePart): Source | null {
  const number = part.round
    ? 'number' in part.round
      ? part.round.number
      : work.number - part.round.below
    : work.scope.round
  if (number === null) return part.beneath ? sourceBeneath(work, part) : sourceOfLoops(work, part)
  if (work.base.kind === 'round' && work.base.state.number === number) return baseSource(work)
  const state = work.history.get(number)
  if (state) return sourceOf(work, state)
  report(work, 'rounds/no-such-round', part, { number }, String(number))
  work.open = true
  return null
}

const loopOf = (work: Work, part: PlacePart | null, taking: Taking): Loop =>
  part?.loop ?? taking.loop ?? work.scope.loop ?? 'both'

export function postOf(work: Work, part: PlacePart | null, taking: Taking): 'front' | 'back' | null {
  if (taking.post) return taking.post
  return part?.around || work.scope.around ? (part?.behind || work.scope.behind ? 'back' : 'front') : null
}

/** "FPdc around same st": the same stitch, held otherwise. */
export function withPost(work: Work, target: Target, part: PlacePart, taking: Taking): Target {
  if (target.place.kind !== 'stitch') return target
  return { ...target, place: { ...target.place, post: postOf(work, part, taking) } }
}

/** Marks the loops that are worked in; a loop that another round holds already is a slip of the text. */
function useLoops(work: Work, source: Source, index: number, part: PlacePart | null, taking: Taking): void {
  if (taking.as !== WORKED || postOf(work, part, taking)) return
  const loop = loopOf(work, part, taking)
  const mark = loop === 'front' ? FRONT : loop === 'back' ? BACK : FRONT | BACK
  const held = source.state.loops[index] ?? 0
  if (loop !== 'both' && (held & mark) !== 0) {
    const used =
      held === (FRONT | BACK) ? 'both loops' : held === FRONT ? 'the front loops' : 'the back loops'
    const values = {
      by: source.state.loopsBy,
      used,
      round: source.state.number,
      loops: `${loop} loops`,
      advice: loop === 'front' ? 'BLO' : 'FLO',
    }
    report(work, 'rounds/loop-already-used', work.clause ?? part, values, String(source.state.number))
    work.open = true
  }
  work.loopMarks.push({ state: source.state, index, mark })
}

export function placed(
  work: Work,
  source: Source,
  index: number,
  part: PlacePart | null,
  taking: Taking,
): Target {
  const left = source.places[index]!
  return targetAt(work, source, {
    kind: left.kind === 'space' ? 'space' : 'stitch',
    round: source.state.index,
    index,
    loop: loopOf(work, part, taking),
    post: postOf(work, part, taking),
  })
}

/** Uses a place up. */
export function takeAt(
  work: Work,
  source: Source,
  index: number,
  part: PlacePart | null,
  taking: Taking,
): Target {
  source.take(index, taking.as)
  useLoops(work, source, index, part, taking)
  const kind = source.places[index]!.kind
  if (kind === 'stitch' && taking.as !== TRAVELLED && source === baseSource(work)) work.stitchWork = true
  return placed(work, source, index, part, taking)
}

/** A place that is asked for but is not there. */
export function missing(
  work: Work,
  source: Source | null,
  kind: LeftPlace['kind'] | 'gap',
  part: PlacePart | null,
): Target {
  if (source && !source.state.unknown) {
    if (kind === 'space') source.missSpace(part?.noun.kind === 'space' ? part.noun.chains : null)
    else if (kind === 'gap') source.overGaps++
    else source.overStitches++
    work.overSpan ??= part
    // A round that asks for more than any round holds is not followed to its end.
    if (source.overStitches + source.overSpaces + source.overGaps > LIMITS.stitches)
      throw new TooLong(part ?? work.node)
  }
  return targetAt(work, source, { kind: 'unknown', round: source?.state.index ?? -2, index: -1 })
}

/** "Dc in top of turning ch": where a row ends; null in a round. */
export function edgeTarget(
  work: Work,
  source: Source | null,
  part: PlacePart,
  taking: Taking,
): Target | null {
  const edge = source?.edge() ?? -1
  if (source && edge >= 0) return takeAt(work, source, edge, part, taking)
  const tooMany = taking.as === WORKED && source?.isPastEdge(part.noun) === true
  return tooMany ? missing(work, source, 'stitch', part) : null
}

/** A ring among the materials, which lie within so many characters from the beginning. */
export const BOUGHT_RING = /\b(plastic|brass|metal|curtain|bone|rubber|wooden|key) rings?\b/i
const HEAD = 4000

/** "Using a magic ring and yarn A:" right before its first round, among the words of a page. */
const RING_BEFORE = /\b(magic|adjustable|sliding|slip) (ring|loop|circle)\b[^\n]{0,60}\n?\s*$/i
const ringBefore = ({ tree, node }: Work): boolean =>
  RING_BEFORE.test(tree.text.slice(Math.max(0, node.start - 120), node.start))

/** The ring: where nothing has been made, it is made as the text names it. */
export function ringTarget(work: Work, part: PlacePart): Target {
  const { base } = work
  if (base.kind === 'none' || (base.kind === 'round' && base.state.unknown)) {
    // "6 sc in magic ring" makes the ring as it names it.
    const chains = part.noun.kind === 'ring' ? (part.noun.chains ?? 0) : 0
    const named = part.noun.kind === 'ring' && (part.noun.yarn || chains > 0)
    const bought = BOUGHT_RING.test(work.tree.text.slice(0, HEAD))
    if (!named && !bought && !ringBefore(work)) report(work, 'rounds/no-ring', part, {}, 'once')
    if (base.kind === 'none') {
      work.base = { kind: 'ring', chains }
      if (named) work.foundation = { kind: 'ring', chains }
    }
  }
  if (base.kind === 'round') work.picked = true
  return targetAt(work, null, { kind: 'ring', round: -2, index: 0 })
}

/** Asked for each stitch that has nowhere to go; looked for once. */
const rings = new WeakMap<readonly Item[], PlacePart | 'none'>()
function ringNamed(items: readonly Item[]): PlacePart | null {
  const known = rings.get(items) ?? [...placeParts(items)].find(({ noun }) => noun.kind === 'ring') ?? 'none'
  rings.set(items, known)
  return known === 'none' ? null : known
}

/** There is no round to work in: said once, and the account stays open. */
export function nowhere(work: Work, part: PlacePart | null): Target {
  if (work.base.kind === 'ring') return targetAt(work, null, { kind: 'ring', round: -2, index: 0 })
  // "2 tr, 2 ch, (3 tr, 2 ch) 3 times into a magic ring": the ring is named behind all that goes into it.
  const ring = work.base.kind === 'none' ? ringNamed(work.node.items) : null
  if (ring) return ringTarget(work, ring)
  // "8 sc in the beginning loop", "10 dc into the loop" before any round: a ring of yarn.
  if (work.base.kind === 'none' && part?.noun.kind === 'space' && part.noun.chains === null) {
    work.foundation = { kind: 'ring', chains: 0 }
    work.base = work.foundation
    return targetAt(work, null, { kind: 'ring', round: -2, index: 0 })
  }
  if (!work.open) report(work, 'rounds/nothing-to-work-in', part, {}, 'once')
  work.open = true
  return targetAt(work, null, { kind: 'unknown', round: -2, index: -1 })
}

/** Uses up the place of a target that only stood there so far (joined yarn, the stitch of the joining). */
export function settle(work: Work, target: Target, taking: Taking = WORKING): Target {
  const { source, place } = target
  if (!source || place.index < 0) return target
  if (place.kind === 'gap') {
    if (!source.gapUsed[place.index]) source.takeGap(place.index)
    return target
  }
  if (place.kind !== 'stitch' && place.kind !== 'space') return target
  // "Join in front loop of any dc, 2 tr in same loop": the yarn stands in that loop alone.
  const loop = taking.loop ?? (place.loop === 'both' ? null : (place.loop ?? null))
  if (source.used[place.index]! < WORKED) return takeAt(work, source, place.index, null, { ...taking, loop })
  return target
}

/** The next stitch, where nothing else is said. */
export function nextStitch(work: Work, span: PlacePart | null, taking: Taking): Target {
  const number = work.scope.round
  const state = number === null ? null : work.history.get(number)
  const source = state ? sourceOf(work, state) : baseSource(work)
  spend(work, span ?? work.node)
  if (!source) return nowhere(work, span)
  const index = source.find('stitch', '', () => true)
  return index >= 0 ? takeAt(work, source, index, span, taking) : missing(work, source, 'stitch', span)
}

/** None of the round before is of the kind that is named. */
export function noSuchStitch(work: Work, source: Source, named: StitchName, span: Span): void {
  const { terms } = work.tree
  const have = source.places.flatMap(({ kind, stitch, form }) =>
    kind !== 'stitch' || !stitch ? [] : APART.has(form) ? [`${form}s`] : [stitchAbbreviation(stitch, terms)],
  )
  const values = {
    have: [...new Set(have)].join(' and '),
    wanted: named.name,
    round: roundWords(work, source),
  }
  report(work, 'rounds/no-such-stitch', span, values, named.name)
}

/** "Miss the fptr": whether a round passes over stitches around posts by their name; asked once of its items. */
const postsPassed = new WeakMap<readonly Item[], boolean>()
function passesPosts(items: readonly Item[]): boolean {
  const known =
    postsPassed.get(items) ??
    items.some(
      (item) =>
        (item.type === 'skip' &&
          item.place.parts.some(({ noun }) => noun.kind === 'stitch' && noun.name?.post != null)) ||
        ('items' in item && passesPosts(item.items)),
    )
  postsPassed.set(items, known)
  return known
}

export function stitchTest(work: Work, source: Source, part: PlacePart): { name: string; test: PlaceTest } {
  if (part.unworked) work.picked = true
  const unworked: PlaceTest = part.unworked
    ? (_, index) => (source.state.touched[index] ?? FREE) < WORKED
    : () => true
  const named = part.noun.kind === 'stitch' ? part.noun.name : null
  if (!named || named.form === 'shell' || named.form === 'v-stitch' || named.form === 'picot')
    return { name: part.unworked ? 'unworked' : '', test: unworked }
  if (source.state.unknown) return { name: '', test: () => true }
  // "FPdc around each FPdc": of stitches alike in all else those around posts alone, where there are such.
  const { post } = named
  const posts = post !== null && source.has('stitch', post, (place) => place.post === post)
  // "Join in any dc" of a round that has popcorns besides.
  const apart: PlaceTest = (place) => !BUNCHES.has(place.form)
  const plain = named.form === 'plain' && part.which === 'any' && source.has('stitch', 'apart', apart)
  // "Tr3tog in next tr, miss next fptr" of a round that has both: one is not the other.
  const unposted: PlaceTest = (place) => place.post === undefined
  const bare =
    post === null &&
    named.form === 'plain' &&
    passesPosts(work.node.items) &&
    source.has('stitch', 'unposted', unposted)
  const answers: PlaceTest = (place, at) =>
    answersTo(place, named) &&
    (!posts || place.post === post) &&
    (!plain || apart(place, at)) &&
    (!bare || unposted(place, at))
  const key = `${named.form} ${named.stitch}${posts ? ` ${post}` : ''}${plain ? ' apart' : ''}${bare ? ' bare' : ''}`
  // A popcorn may begin as a cluster, where others of the round are popcorns.
  const alike: PlaceTest = ({ form }) => form === named.form
  const other = APART.has(named.form) && !source.has('stitch', `as ${named.form}`, alike)
  const there = !other && source.has('stitch', key, answers)
  if (!there && source.has('stitch', '', () => true)) {
    noSuchStitch(work, source, named, part.nounSpan)
    return { name: '', test: unworked }
  }
  return {
    name: part.unworked ? `${key} unworked` : key,
    test: (place, index) => answers(place, index) && unworked(place, index),
  }
}

/** "3 dc in ch-4 sp" of a row that began with ch 4 (counts as dc and ch 1): the space behind that chain; −1 where others are meant. */
function begunSpace({ places, state, spaceSizes }: Source, chains: number): number {
  const [first, second] = places
  if (!state.ordered || state.joined || first?.kind !== 'stitch' || second?.kind !== 'space') return -1
  if (spaceSizes.includes(chains)) return -1
  const rise = first.stitch === null ? 0 : STITCHES[first.stitch].beginningChains
  return rise > 0 && rise + second.chains === chains ? 1 : -1
}

/** "3ch at beg of 1st round" that counts as a stitch: where that stitch lies; −1 where the round did not begin so. */
export function begunBy({ places }: Source, noun: Noun): number {
  const [first] = places
  const rise = first?.kind === 'stitch' && first.stitch !== null ? STITCHES[first.stitch].beginningChains : 0
  return rise > 0 && noun.kind === 'space' && noun.chains === rise ? 0 : -1
}

export function spaceTest(work: Work, source: Source, noun: Noun): { name: string; test: PlaceTest } {
  const name = spaceName(noun) ?? 'sp'
  if (name === 'corner') {
    work.usesCorners = true
    const corners = cornerPlaces(source)
    const chains = noun.kind === 'space' ? noun.chains : null
    return {
      name: chains === null ? name : `${spaceKey(chains)} ${name}`,
      test: (place, index) => corners.has(index) && (chains === null || place.chains === chains),
    }
  }
  if (noun.kind === 'space' && noun.chains !== null) {
    const begun = begunSpace(source, noun.chains)
    const meant = betweenNamed(source, noun)
    if (meant) return { name: `${name} between ${noun.between!.stitch}`, test: (_, at) => meant.has(at) }
    return { name, test: (place, index) => place.chains === noun.chains || index === begun }
  }
  return { name, test: () => true }
}

/** "ch-5 sps and ch-1 sps": what spaces there are. */
export const spacesThere = ({ spaceSizes }: Source): string =>
  spaceSizes.length === 0 ? 'only sts' : spaceSizes.map((chains) => `${spaceKey(chains)} sps`).join(' and ')

/** "Sl st in corner ch-5 sp of First Motif": where the text makes that motif as well, its last round has such a space. */
export function checkNeighbor(work: Work, part: PlacePart): void {
  const { noun } = part
  const made = work.history.get(work.number) ?? work.earlier.get(work.number)
  if (noun.kind !== 'space' || noun.chains === null || !made?.ordered || made.unknown) return
  const spaces = made.places.filter(({ kind }) => kind === 'space')
  if (spaces.length === 0 || spaces.some(({ chains }) => chains === noun.chains)) return
  const wanted = `${spaceKey(noun.chains)} sps`
  const values = {
    have: spacesThere(new Source(made)),
    wanted,
    round: `Rnd ${made.number} of the motif before`,
  }
  report(work, 'rounds/no-such-space', part.nounSpan, values, wanted)
}
