/** From a place in words to places in hand: which stitch, space, chain or gap of which round comes next. */
import { bunchTop } from './bunch-tops'
import { chainTargets, goesAlong, landmarkTargets } from './chain-targets'
import { isOfLoops } from './closing'
import { eachCount } from './each-count'
import { betweenStitches, gapTargets } from './gaps'
import { shellSpace, shellTargets, withinTargets, withinTest } from './petals'
import { passUpTo } from './nth'
import { isCornerOfPiece, rowEndTargets, stemTargets, turnUnder } from './piece'
import { beginningTarget, sameTarget } from './same-target'
import { SKIPPED, TRAVELLED, WORKED, cornerPlaces } from './source'
import type { PlaceTest, Source } from './source'
import { loopsOfStitches } from './stitch-loops'
import {
  begunBy,
  edgeTarget,
  missing,
  nowhere,
  placed,
  ringTarget,
  roundWords,
  settle,
  SKIPPING,
  sourceFor,
  spacesThere,
  spaceTest,
  stitchTest,
  takeAt,
  withPost,
  WORKING,
} from './taking'
import type { Taking } from './taking'
import type { Place, PlacePart } from './tree'
import { keptEdge } from './turning'
import { baseSource, hasBody, report, spend, targetAt } from './work'
import type { Target, Work } from './work'
import type { LeftPlace } from './worked'

function takeSpace(work: Work, source: Source | null, part: PlacePart, taking: Taking): Target {
  if (!source) return nowhere(work, part)
  const { name, test } = spaceTest(work, source, part.noun)
  if (name === 'corner' && source.total('space') === 0 && source.total('stitch') > 0)
    return takeStitch(work, source, part, taking, cornerPlaces(source).size > 0 ? { name, test } : undefined)
  const index = source.find('space', name, test)
  if (index >= 0) return takeAt(work, source, index, part, taking)
  const there = source.has('space', name, test)
  const begun = part.round === null || there ? -1 : begunBy(source, part.noun)
  if (begun >= 0) return takeAt(work, source, begun, part, taking)
  if (!there && !source.state.unknown) {
    const wanted = name === 'corner' ? 'corner sps' : name === 'sp' ? 'chain spaces' : `${name} sps`
    report(
      work,
      'rounds/no-such-space',
      part.nounSpan,
      { have: spacesThere(source), wanted, round: roundWords(work, source) },
      wanted,
    )
    // All spaces are of one size, and another one is told: they are meant, and only their chains are counted wrongly.
    const others = part.noun.kind === 'space' && part.noun.chains !== null && onlySpaces(source)
    const other = others ? source.find('space', '', () => true) : -1
    work.open = true
    if (other >= 0) return takeAt(work, source, other, part, taking)
    return targetAt(work, source, { kind: 'unknown', round: source.state.index, index: -1 })
  }
  return missing(work, source, 'space', part)
}

/** Whether a round leaves spaces of one size alone. */
const onlySpaces = ({ places, state }: Source): boolean =>
  state.ordered && new Set(places.flatMap((place) => (place.kind === 'space' ? place.chains : []))).size === 1

/** "Any sl st between 2 points": not the one at the tip of a point; −1 where none is told apart. */
const betweenPoints = ({ state, places }: Source): number =>
  state.stems.some(({ slip }) => slip)
    ? places.findIndex(({ kind }, at) => kind === 'slip' && places[(at + 1) % places.length]?.kind === 'slip')
    : -1

function takeStitch(
  work: Work,
  source: Source | null,
  part: PlacePart,
  taking: Taking,
  by?: { name: string; test: PlaceTest },
): Target {
  if (!source) return nowhere(work, part)
  const slip =
    part.noun.kind === 'stitch' && part.noun.name?.form === 'plain' && part.noun.name.stitch === 'sl st'
  if (slip) {
    const between = part.which === 'any' ? betweenPoints(source) : -1
    const index = between >= 0 ? between : source.find('slip', '', () => true)
    return index >= 0 ? takeAt(work, source, index, part, taking) : missing(work, source, 'stitch', part)
  }
  const skipped = part.unworked && !by ? source.lastSkipped() : -1
  if (skipped >= 0) {
    // "Sk next st, dc in next st, dc in skipped st": back over what was skipped, and on from where one was.
    source.used[skipped] = WORKED
    return placed(work, source, skipped, part, taking)
  }
  const { name, test } = by ?? stitchTest(work, source, part)
  if (hangsOver(work, source, part, taking)) moveBehindFirst(source, name, test)
  const index = source.find('stitch', name, test)
  return index >= 0 ? takeAt(work, source, index, part, taking) : missing(work, source, 'stitch', part)
}

/**
 * "*Ch 5, sl st around next sc of Rnd 2; rep from * around", "*ch 5, sk 1 sc, sc in next sc; rep from * around": the loop
 * that the round begins with leads away from the first of them, since the round before was joined there, and the last loop
 * comes back to that.
 */
function hangsOver(work: Work, source: Source, { which, round, count }: PlacePart, taking: Taking): boolean {
  const isBase = source === baseSource(work)
  if (which !== 'next' || (isBase ? taking !== SKIPPING : count > 1 || round === null)) return false
  const [first, ...others] = work.elements
  const isLoop = first?.role === 'space' && first.count > 2 && others.length === 0
  return isLoop && work.first === null && source.state.joined && source.used.every((use) => use === 0)
}

/** Sets the cursor behind the first place that is meant; where there is one alone, it stays. */
function moveBehindFirst(source: Source, name: string, test: PlaceTest): void {
  const first = source.find('stitch', name, test)
  if (first < 0) return
  const next = source.places.findIndex(
    (place, at) => at > first && place.kind === 'stitch' && test(place, at),
  )
  if (next >= 0) source.moveTo(next)
}

/** A place of a sweep, with the part of the text that asked for it. */
interface Swept {
  readonly target: Target
  readonly part: PlacePart
}

const targetOf = ({ target }: Swept): Target => target

const isOfPosts = ({ noun }: PlacePart): boolean => noun.kind === 'stitch' && noun.name?.post != null

/** "in each st and in each ch-1 sp around": every place that a part asks for, in the order in which they are met. */
export function sweep(
  work: Work,
  parts: readonly PlacePart[],
  takings: Taking | ReadonlyMap<PlacePart, Taking>,
): Swept[] {
  const part = parts[0]!
  const takingOf = (asked: PlacePart) => ('get' in takings ? (takings.get(asked) ?? WORKING) : takings)
  const taking = takingOf(part)
  const source = sourceFor(work, part)
  if (!source) return [{ target: nowhere(work, part), part }]
  if (source.state.unknown) {
    work.open = true
    return [{ target: missing(work, source, 'stitch', part), part }]
  }
  const extent = parts.findLast((each) => each.extent !== null)?.extent ?? null
  const onlyStitches = source.total('space') === 0
  const tests = parts.map((each) => {
    const corner = each.noun.kind === 'corner' && onlyStitches
    const space = each.noun.kind === 'space' || each.noun.kind === 'corner'
    const by =
      withinTest(source, each.noun) ??
      (space ? spaceTest(work, source, each.noun) : stitchTest(work, source, each))
    return { kind: space && !corner ? ('space' as const) : ('stitch' as const), ...by, part: each }
  })
  const absent = tests.find(({ kind, name, test }) => kind === 'space' && !source.has('space', name, test))
  if (absent) return [{ target: takeSpace(work, source, absent.part, taking), part: absent.part }]
  const swept: Swept[] = []
  if (tests.length === 1) {
    const { kind, name, test } = tests[0]!
    const step = part.which === 'every' ? Math.max(1, part.count) : 1
    const count = eachCount(work, source, { ...part, extent }, kind, test)
    for (let at = 0; at < count; at++) {
      spend(work, part)
      const index = source.find(kind, name, test)
      if (index < 0) break
      const skipped = step > 1 && at % step !== step - 1
      const target = takeAt(work, source, index, part, skipped ? SKIPPING : taking)
      if (!skipped) swept.push({ target, part })
    }
    return swept
  }
  // The last part is the most particular one: "each st … and 3 in each corner"; one of post stitches is it anywhere.
  const particular = [...tests].sort((a, b) => Number(isOfPosts(a.part)) - Number(isOfPosts(b.part)))
  const asked = (place: LeftPlace, at: number) =>
    particular.findLast((each) => each.kind === place.kind && each.test(place, at))
  let count = 0
  source.places.forEach((place, at) => {
    if (source.used[at]! <= TRAVELLED && asked(place, at)) count++
  })
  if (extent?.to === 'last') count -= extent.count
  else count -= keptEdge(work, source, 'stitch', (place, at) => asked(place, at) !== undefined)
  if (extent?.to === 'corner' && source.state.ordered) {
    const corners = cornerPlaces(source)
    count = source.untilNext(
      (place, at) => asked(place, at) !== undefined,
      (_, at) => corners.has(at),
    )
  }
  for (let at = 0; at < count; at++) {
    spend(work, part)
    const found = tests
      .map((each) => source.find(each.kind, each.name, each.test))
      .filter((index) => index >= 0)
      .sort((a, b) => source.distance(a) - source.distance(b))
    const index = found[0]
    if (index === undefined) break
    const by = asked(source.places[index]!, index)?.part ?? part
    swept.push({ target: takeAt(work, source, index, by, takingOf(by)), part: by })
  }
  return swept
}

/** "…, 2 dc in first ch-2 sp": where all is worked, the one in which the round began. */
function firstAgain(work: Work, source: Source | null, space: boolean): Target | null {
  const kind = space ? 'space' : 'stitch'
  const first = work.first
  if (!source || source.state.unknown || first?.source !== source || first.place.kind !== kind) return null
  return hasBody(work) && source.free(kind) === 0 ? first : null
}

const isBare = (work: Work, { start, nounSpan }: PlacePart): boolean =>
  /^(the\s*)?$/i.test(work.tree.text.slice(start, nounSpan.start))

/** "Sc in each of the 5 sts coming down" of a point of five chains: a slip stitch at its tip is one of them. */
function tipSlip(source: Source, { noun }: PlacePart, count: number): number {
  const { stems } = source.state
  if (noun.kind !== 'stitch' || noun.name || !stems.some(({ chains, slip }) => slip && chains === count + 1))
    return -1
  const slip = source.find('slip', '', () => true)
  const stitch = source.find('stitch', '', () => true)
  return slip >= 0 && stitch >= 0 && source.distance(slip) < source.distance(stitch) ? slip : -1
}

function nextTargets(work: Work, part: PlacePart, taking: Taking): Target[] {
  const source = sourceFor(work, part)
  const space = part.noun.kind === 'space' || part.noun.kind === 'corner'
  const count = part.which === 'next' || part.which === 'last' || part.which === 'first' ? part.count : 1
  if (part.which === 'first' && source?.state.ordered && !hasBody(work)) source.restart()
  const targets: Target[] = []
  const around = part.which === 'first' && count === 1 ? firstAgain(work, source, space) : null
  if (around) return [around]
  // "Ch 3, dc in first dc": the one that the chain stands in.
  const onlyBegun = work.elements.every(
    ({ role, span }) =>
      role === 'beginning' ||
      role === 'travel' ||
      // "Ch 4 (counts as dc and ch 1)".
      (role === 'space' && span === work.beginning?.item && work.beginning.extra > 0),
  )
  const counts = work.beginningDone && work.beginning?.as === 'counts'
  if (
    part.which === 'first' &&
    !space &&
    count === 1 &&
    counts &&
    onlyBegun &&
    work.first?.place.kind === 'stitch'
  )
    if (taking.as === WORKED) return [withPost(work, settle(work, work.first, taking), part, taking)]
  // "Sl st into corner, ch 3, 2 dc in the corner": without "next" the one where the hook stands.
  const stands =
    space && onlyBegun && part.which === 'next' && count === 1 && isBare(work, part) ? work.first : null
  if (stands?.place.kind === 'space' && stands.source === source) return [settle(work, stands, taking)]
  passUpTo(work, source, part)
  for (let at = 0; at < count; at++) {
    spend(work, part)
    // "sk first st" behind a beginning chain that counts means the stitch which that chain stands in.
    if (
      at === 0 &&
      part.which === 'first' &&
      !space &&
      taking.as === SKIPPED &&
      work.first?.place.kind === 'stitch' &&
      work.beginning?.as !== 'turning'
    ) {
      targets.push(work.first)
      continue
    }
    const tip = !space && source ? tipSlip(source, part, count) : -1
    targets.push(
      tip >= 0
        ? takeAt(work, source!, tip, part, taking)
        : space
          ? takeSpace(work, source, part, taking)
          : takeStitch(work, source, part, taking),
    )
  }
  return targets
}

/** "Into the 2 ch. work 2 tr., 2 ch., 2 tr.": where the round before has such spaces, the space is meant. */
function wholeSpace(work: Work, part: PlacePart): PlacePart | null {
  const chains = part.count
  if (part.noun.kind !== 'chain' || part.which !== 'next' || part.each || chains < 2 || work.chain)
    return null
  if (!/^the\b/i.test(work.tree.text.slice(part.start, part.end))) return null
  const there = baseSource(work)?.has('space', `the ${chains}`, (place) => place.chains === chains)
  return there ? { ...part, count: 1, noun: { kind: 'space', chains, corner: false } } : null
}

/** Whether a round begins in a space, or with a loop of so many chains. */
const startsIn = (work: Work, chains: number): boolean =>
  (work.first ?? work.last ?? beginningTarget(work))?.place.kind !== 'stitch' ||
  work.elements.slice(0, 2).some(({ stitch, count }) => stitch === 'ch' && count === chains)

/** All places that a part names, used up in order. */
function partTargets(work: Work, told: PlacePart, taking: Taking): Target[] {
  const asked = loopsOfStitches(work, told)
  const part = shellSpace(work, asked) ?? asked
  const { noun, which } = part
  if (noun.kind === 'ring') return [ringTarget(work, part)]
  if (noun.kind === 'row-end') return rowEndTargets(work, part)
  if (noun.kind === 'corner' && isCornerOfPiece(work)) return rowEndTargets(work, { ...part, count: 1 })
  const tips = noun.kind === 'own' ? /turning/i.test(noun.words) : noun.kind === 'landmark'
  if (tips && !part.extent) {
    const stem = stemTargets(work, { ...part, which: 'next', count: 1 })
    if (stem) return stem
  }
  // "3 sc in the tip": of a piece that began in one chain.
  const tip = noun.kind === 'landmark' || noun.kind === 'corner'
  if (tip && work.piece.chains > 0 && baseSource(work)?.free('stitch') === 0 && turnUnder(work))
    return chainTargets(work, { ...part, which: 'next', count: 1, noun: { kind: 'chain' } }, taking)
  if (which === 'made') {
    const source = sourceFor(work, part)
    if (source && !hasBody(work)) {
      const index = source.lastSpace()
      if (index >= 0) return [takeAt(work, source, index, part, taking)]
    }
    return [settle(work, sameTarget(work, part), taking)]
  }
  const bunch = taking.as === WORKED ? bunchTop(part) : null
  const source = bunch && baseSource(work)
  if (bunch && source?.state.ordered && source.find('stitch', '', stitchTest(work, source, bunch).test) >= 0)
    return [takeStitch(work, source, bunch, taking)]
  if (noun.kind === 'own' && isOfLoops(work, noun)) {
    const loop = { kind: 'space', chains: noun.of, corner: false } as const
    return [takeSpace(work, baseSource(work), { ...part, noun: loop }, taking)]
  }
  if (noun.kind === 'own') {
    // "Ch 1, sc in joining": the stitch in which the round before was joined.
    const begins =
      which === 'same' || (!hasBody(work) && noun.chain === 0 && /^(the )?join/i.test(noun.words))
    if (begins) return [settle(work, beginningTarget(work) ?? sameTarget(work, part), taking)]
    const source = baseSource(work)
    const edge = edgeTarget(work, source, part, taking)
    if (edge) return [edge]
    // "1 tr. into top of first pop.": of the round before, where the beginning stands elsewhere.
    const first = source?.state.ordered ? source.places.findIndex(({ kind }) => kind === 'stitch') : -1
    // "1 ch, 1 dc in the top of the 3 ch and in the next 2 tr": in what began the round before.
    const goesOn = taking.as === WORKED && (hasBody(work) || work.beginning?.as !== 'counts')
    // "Join B in top of ch-3": where the round before began.
    const joins = taking.as === 0 && work.elements.length === 0
    if (source && first >= 0 && source.used[first]! <= TRAVELLED && (goesOn || joins))
      return [takeAt(work, source, first, part, taking)]
    return [targetAt(work, null, { kind: 'stitch', round: work.index, index: 0 })]
  }
  const between = betweenStitches(work, part)
  if (between) return between
  // "same sp as joining" where nothing but the counts of the round before are known.
  const unnamed = which === 'same' && noun.kind === 'space' && !work.last && !work.first
  if (unnamed && baseSource(work)?.state.ordered === false)
    return [takeSpace(work, baseSource(work), part, taking)]
  // "FPtr around dc of Rnd 1 below next dc (skip that dc)": passed over in the round that is worked into.
  const elsewhere = work.last !== null && work.last.source !== baseSource(work)
  // "Starting in 2nd ch from hook, sc in that ch", "2 sc in same ch as first sc" on the other side.
  const alongStart = noun.kind === 'chain' && work.chain && (!hasBody(work) || part.asBeginning)
  const away =
    noun.kind === 'space' && part.asBeginning && noun.chains !== null && !startsIn(work, noun.chains)
  // "2 sc in beg ch-3 sp" where the round does not stand in such a space: the first of them.
  if (which === 'same' && away)
    return nextTargets(work, { ...part, which: 'first', asBeginning: false }, taking)
  if (which === 'same' && alongStart) return chainTargets(work, part, taking)
  if (which === 'same' && taking.as === SKIPPED && elsewhere && noun.kind === 'stitch')
    return nextTargets(work, { ...part, which: 'next' }, taking)
  if (which === 'same') return [withPost(work, settle(work, sameTarget(work, part), taking), part, taking)]
  const whole = wholeSpace(work, part)
  if (whole) return [takeSpace(work, baseSource(work), whole, taking)]
  if (noun.kind === 'chain' || goesAlong(work, part)) return chainTargets(work, part, taking)
  if (which === 'from-hook') return chainTargets(work, part, taking)
  if (noun.kind === 'gap') return gapTargets(work, part)
  if (noun.kind === 'within')
    return Array.from({ length: Math.max(1, part.count) }, () => withinTargets(work, part, taking)).flat()
  if (part.extent?.to === 'landmark') return landmarkTargets(work, part, taking)
  const shells = shellTargets(work, part, taking)
  if (shells) return shells
  if (which === 'each' || which === 'every') return sweep(work, [part], taking).map(targetOf)
  return nextTargets(work, part, taking)
}

/** All places of a place in words; "each … and each …" are one sweep. */
export function placeTargets(work: Work, place: Place, taking: Taking): Target[] {
  // "in same st and in each dc and ch-1 sp": what stands before the sweep is worked by itself.
  const from = place.parts.findLastIndex((part) => part.which !== 'each' || part.noun.kind === 'chain') + 1
  const swept = place.parts.slice(from)
  const one = (part: PlacePart) => partTargets(work, part, taking)
  if (swept.length < 2 || swept[0]!.extent !== null) return place.parts.flatMap(one)
  return [...place.parts.slice(0, from).flatMap(one), ...sweep(work, swept, taking).map(targetOf)]
}
