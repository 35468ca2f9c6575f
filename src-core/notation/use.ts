/** What a round uses of the one before: everything there, or what is left over is told (M5). */
import type { StitchKey } from '../stitches/table'
import { besideNamed } from './beside-named'
import { leavesLastGap } from './gaps'
import { amountWords } from './laps'
import { leavesAsBefore } from './left-open'
import { SKIPPED, TRAVELLED, WORKED, cornerPlaces } from './source'
import type { Source } from './source'
import { spaceKey } from './state'
import { answersTo } from './answers-to'
import { roundWords } from './taking'
import type { Span } from './tokens'
import { baseSource, report } from './work'
import type { Work } from './work'
import { placeParts } from './tree'
import type { StarItem } from './tree'
import type { WorkedElement } from './worked'

/** The stitch that an element stands for. */
export const STANDING_KEY = (element: WorkedElement): StitchKey => element.countsAs ?? element.stitch

/** Spaces by size: total, used. */
interface SpaceKind {
  readonly chains: number
  total: number
  used: number
  /** Of those used: worked in, not only passed. */
  worked: number
}

function spaceKinds(source: Source, apart: boolean): SpaceKind[] {
  const kinds = new Map<string, SpaceKind>()
  source.places.forEach((place, index) => {
    if (place.kind !== 'space') return
    const { chains } = place
    // "Shell in next shell": the spaces between shells are others, whatever their chains.
    const key = `${chains} ${apart && source.isGroup(place.group)}`
    const kind = kinds.get(key) ?? { chains, total: 0, used: 0, worked: 0 }
    kind.total++
    if (source.used[index]! >= TRAVELLED) kind.used++
    if (source.used[index]! >= WORKED) kind.worked++
    kinds.set(key, kind)
  })
  return [...kinds.values()]
}

/** "…, ch 2; rep from * 6 times, join": the last loop spans what the others skip, without saying so. */
function closeLastLoop(work: Work, source: Source): void {
  const closes = work.elements.findLast(({ role }) => role !== 'join')
  if (closes?.role !== 'space' && closes?.role !== 'closing') return
  const stitches = source.places.flatMap((place, at) => (place.kind === 'stitch' ? [at] : []))
  let run = 0
  // Loops may span now more and now fewer.
  const usual = new Set<number>()
  for (const at of stitches) {
    if (source.used[at] === SKIPPED) run++
    else {
      if (run > 0) usual.add(run)
      run = 0
    }
  }
  const open = stitches.filter((at) => source.used[at]! <= TRAVELLED)
  if (usual.has(open.length)) for (const at of open) source.used[at] = SKIPPED
}

/** "*miss a sp, 2 tr in next sp, 2 ch; rep from * 4 more times": the last chains span the space that each lap misses first. */
function closeLastSpace(work: Work, source: Source): void {
  const closes = work.elements.findLast(({ role }) => role !== 'join')
  if (closes?.role !== 'space' || !source.state.ordered) return
  const last = source.used.findLastIndex((used) => used > TRAVELLED && used !== SKIPPED)
  const missed = new Set<number>()
  const open: number[] = []
  let run = 0
  source.places.forEach(({ kind }, at) => {
    const used = source.used[at]!
    if (used === SKIPPED && kind === 'space') run++
    else if (used > TRAVELLED) {
      if (run > 0) missed.add(run)
      run = 0
    }
    if (kind === 'space' && used < TRAVELLED) open.push(at)
  })
  if (missed.has(open.length) && open[0]! > last) for (const at of open) source.used[at] = SKIPPED
}

/** A loop that is far too short for what it spans, between single stitches: chains ≥ half of the stitches skipped. */
const SHORTEST_LOOP = { share: 2, spans: 4 } as const

export function checkLoops(work: Work, source: Source): void {
  if (!source.state.ordered) return
  const order = new Map<number, number>()
  source.places.forEach((place, at) => {
    if (place.kind === 'stitch') order.set(at, order.size)
  })
  const at = (element: WorkedElement | undefined): number | undefined => {
    const [place] = element?.into ?? []
    const low = element?.role === 'slip' || (element?.standing && STANDING_KEY(element) === 'sc')
    return low && place?.kind === 'stitch' && place.round === source.state.index
      ? order.get(place.index)
      : undefined
  }
  work.elements.forEach((element, index) => {
    if (element.role !== 'space') return
    const from = at(work.elements[index - 1])
    const to = at(work.elements[index + 1])
    if (from === undefined || to === undefined) return
    const spans = to - from - 1
    if (spans < SHORTEST_LOOP.spans || spans <= SHORTEST_LOOP.share * element.count) return
    report(
      work,
      'rounds/loop-short',
      element.span,
      { chains: element.count, spans },
      String(element.span.start),
    )
  })
}

/** "2 ch, 1 tr in next tr" over a space of 2 ch, in rows of filet: passed over by chains as long as its own. */
function passSpanned(work: Work, source: Source, sizes: ReadonlySet<number>): void {
  if (!source.state.ordered) return
  const at = (element: WorkedElement | undefined): number => {
    const [place] = element?.into ?? []
    return place?.kind === 'stitch' && place.round === source.state.index ? place.index : -1
  }
  work.elements.forEach((element, index) => {
    if (element.role !== 'space') return
    const [from, to] = [at(work.elements[index - 1]), at(work.elements[index + 1])].sort((a, b) => a - b)
    const between = from! + 1
    if (from! < 0 || to !== between + 1) return
    const { kind, chains } = source.places[between]!
    if (
      kind === 'space' &&
      sizes.has(chains) &&
      chains <= element.count &&
      source.used[between]! <= TRAVELLED
    )
      source.used[between] = SKIPPED
  })
}

/** Stitches that nobody names, since they lie between two spaces that are worked one after the other. */
function betweenSpaces(source: Source): number {
  const { places, used } = source
  const from = places.findIndex(({ kind }, at) => kind === 'space' && used[at]! >= TRAVELLED)
  let between = 0
  let run = 0
  let open = true
  for (let step = 1; from >= 0 && step <= places.length; step++) {
    const at = (from + step) % places.length
    if (places[at]!.kind === 'slip') continue
    // Passed on the way to where the round begins.
    if (places[at]!.kind === 'stitch' && used[at] === TRAVELLED) continue
    if (places[at]!.kind === 'stitch' && used[at]! < TRAVELLED) run++
    else {
      const ends = places[at]!.kind === 'space' && used[at]! >= TRAVELLED
      if (open && ends) between += run
      open = ends
      run = 0
    }
  }
  return between
}

/** "Petals (make 5)", each on 4 sts of a round that has fewer than 20. */
function checkPieces(work: Work, source: Source, pieces: number): void {
  const used = source.count('stitch') * pieces
  const available = source.total('stitch')
  if (used <= available || !source.state.ordered) return
  const uses = `${pieces} of these use ${amountWords(used, 'st')} of ${roundWords(work, source)}`
  report(work, 'rounds/too-many-used', null, { uses, available })
}

/** "Leave last 3 sts unworked" where more or fewer are left. */
function checkLeft(work: Work, source: Source, where: Span | null): void {
  const left = source.total('stitch') - source.count('stitch')
  const sure = source.state.ordered && source.overStitches === 0 && source.total('space') === 0
  if (!sure || work.left === null || work.left === left || work.picked || source.gapsTaken > 0) return
  const values = { used: amountWords(source.count('stitch'), 'st'), available: source.total('stitch'), left }
  report(work, 'rounds/stitches-left', where, values)
}

/** The words that say how often the round repeats: what is left over may come of them. */
function howOften(work: Work): Span | null {
  const star = work.node.items.find((item) => item.type === 'star' && item.repeat?.amount != null)
  if (star?.type === 'star') return star.repeat!.amountSpan
  const bracket = work.node.items.find((item) => item.type === 'group' && (item.times ?? 0) > 1)
  // "In each of the nine ch-5 lps".
  const each = () => [...placeParts(work.node.items)].find((part) => part.each && part.count > 1)
  const around = () => work.node.items.find((item): item is StarItem => item.type === 'star')?.repeat
  return bracket ?? each() ?? around() ?? null
}

/** The stitch behind which the first one is passed over between two that are worked; null where none is. */
function passedBehind(work: Work, { used, places, state }: Source): Span | null {
  if (!state.ordered) return null
  const at = places.findIndex(
    ({ kind }, index) =>
      kind === 'stitch' &&
      used[index]! < TRAVELLED &&
      places[index - 1]?.kind === 'stitch' &&
      used[index - 1]! >= WORKED,
  )
  const before = work.elements.find(
    ({ into: [place] }) => place?.kind === 'stitch' && place.round === state.index && place.index === at - 1,
  )
  return at > 0 && before ? before.span : null
}

/** "*1 tr in next sc, ch 3, 1 sc in next ch-2 sp": what lies between is of another kind than the stitches that are named. */
function passedByName(work: Work, { places, used }: Source): boolean {
  const parts = [...placeParts(work.node.items)].filter(
    ({ noun, which, round }) => noun.kind === 'stitch' && which !== 'same' && which !== 'first' && !round,
  )
  if (parts.length === 0 || !parts.every(({ noun }) => noun.kind === 'stitch' && noun.name)) return false
  const worked = new Set<string | null>()
  places.forEach(({ kind, stitch }, at) => kind === 'stitch' && used[at]! >= WORKED && worked.add(stitch))
  return places.every(
    ({ kind, stitch }, at) => kind !== 'stitch' || used[at]! >= TRAVELLED || (stitch && !worked.has(stitch)),
  )
}

/**
 * "Sk 2 dc, 3 dc in next dc, ch 1, (…) in next corner sp": what is left before the corner is as much as was skipped in
 * words, or passed with slip stitches where the round begins. What lies between two spaces is left out of `missed`.
 */
function passedAlike({ places, used }: Source, missed: number): boolean {
  const runs = (as: (use: number) => boolean, behind: (at: number) => boolean = () => true): number[] => {
    const found: number[] = []
    let isOpen = false
    places.forEach(({ kind }, at) => {
      const within = kind === 'stitch' && as(used[at]!)
      if (within && isOpen) found[found.length - 1]!++
      else if (within && behind(at)) {
        isOpen = true
        found.push(1)
      }
      if (!within) isOpen = false
    })
    return found
  }
  const skipped = runs((use) => use === SKIPPED)
  const [first] = skipped
  if (first === undefined) return false
  const begun = runs((use) => use === TRAVELLED).filter((run) => run === first)
  const isWorked = (at: number) => places[at - 1]?.kind === 'stitch' && used[at - 1]! >= WORKED
  const passed = [
    runs((use) => use < TRAVELLED).filter((run) => run === first),
    runs((use) => use < TRAVELLED, isWorked).filter((run) => run === first),
  ]
  const sides = [skipped.length, skipped.length + begun.length]
  return passed.some((own) => sides.includes(own.length) && first * own.length === missed)
}

/** "Sc in next dc, *ch 4, dc in next sc": chains lead over other stitches, each time over as many, to the next one of that name. */
function passedToNamed(work: Work, { places, used, state }: Source): boolean {
  if (!state.ordered || !state.joined) return false
  const named = [...placeParts(work.node.items)].flatMap(({ noun, which }) =>
    which === 'next' && noun.kind === 'stitch' && noun.name ? [noun.name] : [],
  )
  const stitches = places.flatMap((place, at) => (place.kind === 'stitch' ? [{ place, use: used[at]! }] : []))
  const isPassed = (at: number) => stitches[(at + stitches.length) % stitches.length]!.use < TRAVELLED
  const lengths = stitches.flatMap((_, from) => {
    if (!isPassed(from) || isPassed(from - 1)) return []
    let to = from
    while (to < from + stitches.length && isPassed(to)) to++
    const { place: next } = stitches[to % stitches.length]!
    // "*9 ch, 1 dc into next cluster": told apart by its form where both are made of the same stitch.
    const name = next.stitch === null ? undefined : named.find((each) => answersTo(next, each))
    const isOther = stitches.slice(from, to).every(({ place }) => name && !answersTo(place, name))
    return [isOther ? to - from : 0]
  })
  return lengths.length > 1 && lengths[0]! > 0 && lengths.every((length) => length === lengths[0])
}

/** Rows of lace: all goes into spaces, and only the first and last stitch keep the edges straight. */
function isAtEnds({ places, used, state }: Source): boolean {
  const stitches = places.flatMap(({ kind }, at) => (kind === 'stitch' ? [at] : []))
  return !state.joined && stitches.slice(1, -1).every((at) => used[at]! < WORKED)
}

/** "…, 8 dc in loop of turning ch-5" at the end of a row: what goes into that space stands for its edge as well; 1 or 0. */
function coveredEdge(source: Source): number {
  const edge = source.edge()
  return edge >= 0 && source.places[edge + 1]?.kind === 'space' && source.used[edge + 1]! >= WORKED ? 1 : 0
}

/** "…, dc in 3rd of turning ch-5" at the end of a row: the space of that chain is closed by it. */
function closeEdge(work: Work, source: Source): void {
  const { state, places, used } = source
  const edge = state.joined ? -1 : places.findIndex(({ kind }) => kind === 'stitch')
  const [last] = work.elements.findLast(({ standing }) => standing)?.into ?? []
  const endsThere = last?.kind === 'stitch' && last.round === state.index && last.index === edge
  const isSpace = edge >= 0 && places[edge + 1]?.kind === 'space'
  if (endsThere && isSpace && used[edge + 1]! <= TRAVELLED) used[edge + 1] = SKIPPED
}

/** "…, 3 ch, ss in same dc as the joining ss": the last of all that closes stands in that stitch. */
function closeInLast(work: Work, source: Source): void {
  const last = work.elements.at(-1)
  const [place] = last?.into ?? []
  const closes = last !== undefined && !last.standing && last.role !== 'space'
  if (closes && place?.kind === 'stitch' && place.round === source.state.index)
    source.used[place.index] = Math.max(source.used[place.index]!, WORKED)
}

/** Everything there must be used, unless the text says that it stays unworked. */
export function checkUse(work: Work, source: Source, allWorked: boolean): void {
  const joined = work.joinedAt
  if (joined?.source === source && joined.place.kind === 'stitch')
    source.used[joined.place.index] = Math.max(source.used[joined.place.index]!, WORKED)
  closeInLast(work, source)
  closeEdge(work, source)
  const stitches = source.total('stitch')
  const used = source.count('stitch') + source.overStitches
  const spacesUsed = source.count('space') + source.overSpaces
  const spaces = source.total('space')
  const where = work.clause ?? null
  const before = roundWords(work, source)
  if (source.overStitches > 0 && !work.overReported) {
    const span = work.overSpan ?? where
    report(work, 'rounds/too-many-used', span, {
      uses: `the round uses ${amountWords(used, 'st')} of ${before}`,
      available: stitches,
    })
  }
  if (source.overSpaces > 0 && !work.overReported) {
    report(work, 'rounds/too-many-used', work.overSpan ?? where, {
      uses: `the round uses ${amountWords(spacesUsed, 'sp')} of ${before}`,
      available: spaces,
    })
  }
  const { pieces } = work.node
  if (pieces && source.state.joined && source === baseSource(work)) return checkPieces(work, source, pieces)
  if (work.leaveOpen && allWorked) checkLeft(work, source, where)
  if (work.leaveOpen || !allWorked) return
  if (work.unrepeated && (source.count('stitch') < stitches || source.count('space') < spaces)) {
    work.open = true
    return
  }
  for (const at of besideNamed(source, work.node.items))
    if (source.used[at]! <= TRAVELLED) source.used[at] = SKIPPED
  const worked = spaceKinds(source, false).filter(({ used }) => used > 0)
  passSpanned(work, source, new Set(worked.map(({ chains }) => chains)))
  closeLastSpace(work, source)
  const cornerChains = new Set([...cornerPlaces(source)].map((index) => source.places[index]!.chains))
  // "In sp of next shell": those beside shells are others, too.
  const ofShells = [...placeParts(work.node.items)].some(({ noun }) => noun.kind === 'within')
  for (const { chains, ...kind } of spaceKinds(source, work.picked || ofShells)) {
    // "Ch 3, skip next ch-2 sp, [sc in next ch-1 sp, ch 3] 6 times": the one behind those is passed as well.
    if (kind.worked === 0 || kind.used === kind.total || source.overSpaces > 0) continue
    const name = work.usesCorners && cornerChains.has(chains) ? 'corner' : spaceKey(chains)
    report(
      work,
      'rounds/spaces-left',
      howOften(work),
      { used: amountWords(kind.used, name), available: kind.total },
      'spaces',
    )
  }
  const { gaps, gapsTaken } = source
  // "*3 dc in sp between next 2 groups, (…) in next ch-2 sp; rep from * 4 more times" leaves the last side out.
  const leavesLast = source.state.joined && leavesLastGap(source)
  if (gapsTaken > 0 && gapsTaken < gaps && (!source.state.ordered || leavesLast)) {
    report(
      work,
      'rounds/spaces-left',
      source.state.ordered ? howOften(work) : null,
      { used: amountWords(gapsTaken, 'gap'), available: gaps },
      'gaps',
    )
  }
  closeLastLoop(work, source)
  const left = stitches - source.count('stitch')
  if (left <= 0 || used === 0 || work.picked || source.gapsTaken > 0) return
  if (spacesUsed > 0) {
    const missed = left - betweenSpaces(source) - coveredEdge(source)
    if (!work.stitchWork || missed <= 0 || passedByName(work, source) || passedAlike(source, missed)) return
    if (spacesUsed === spaces && isAtEnds(source)) return
    if (leavesAsBefore(work.tree.rounds, work.node, missed)) return
    const passed = amountWords(missed, 'st')
    report(work, 'rounds/stitches-passed', passedBehind(work, source), { passed }, 'passed')
    return
  }
  if (!source.state.ordered && work.scope.round === null && used === 0) return
  if (passedToNamed(work, source)) return
  // "Hanging loop: Ch 12, sl st in same place": no round of its own.
  const { numbers, label } = work.node
  // "Stem: Ch 12, sc in 2nd ch from hook and in each ch back, sl st in leaf" neither.
  const hangs = work.elements.every(({ standing, into }) => !standing || into[0]?.kind === 'chain')
  if (numbers === null && label !== null && hangs) return
  if (leavesAsBefore(work.tree.rounds, work.node, left)) return
  const span = where ?? howOften(work)
  report(work, 'rounds/stitches-left', span, { used: amountWords(used, 'st'), available: stitches, left })
}
