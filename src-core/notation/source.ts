/**
 * One round being worked into: which places are used up, and which comes next. Where the order of the places is
 * known there is one cursor that goes around; where only counts are known, stitches and spaces each have their own.
 */
import { GONE_BACK_TO } from './state'
import type { RoundState } from './state'
import type { Noun } from './tree'
import type { LeftPlace } from './worked'

/** Worked into; passed by slip stitches on the way (may still be worked); skipped in words. */
export const FREE = 0
export const TRAVELLED = 1
export const SKIPPED = 2
export const WORKED = 3

export type PlaceTest = (place: LeftPlace, index: number) => boolean

export class Source {
  readonly used: Uint8Array
  /** Cursor by class of place; `''` is the one cursor of an ordered round. */
  private readonly cursors = new Map<string, number>()
  private readonly exhausted = new Set<string>()
  /** Asked for beyond what is there. */
  overStitches = 0
  overSpaces = 0
  /** Of the spaces beyond, those that are asked for by their chains: "ch-3" → how many. */
  readonly overByChains = new Map<number, number>()
  readonly gapUsed: Uint8Array
  gapCursor = 0
  overGaps = 0
  /** Position from which the lap began, for "lap complete". */
  start = 0
  /** Order of the places as they are met: turned over, they come from the other side. */
  private readonly order: Int32Array | null
  corners: ReadonlySet<number> | null = null

  constructor(
    readonly state: RoundState,
    turned = false,
    gaps: number | null = null,
  ) {
    const count = state.places.length
    this.used = new Uint8Array(count)
    if (GONE_BACK_TO.has(state))
      state.touched.forEach((by, at) => (this.used[at] = by === WORKED ? WORKED : FREE))
    this.gapUsed = new Uint8Array(gaps ?? state.places.filter((place) => place.kind === 'stitch').length)
    // A joined round still begins in its first stitch; a row that is turned begins in its last.
    const first = state.joined || state.endsInSpace ? count : count - 1
    this.order = turned ? Int32Array.from({ length: count }, (_, at) => (first - at) % count) : null
  }

  /** The same round in the same condition, to be worked on by itself. */
  fork(): Source {
    const copy = new Source(this.state, this.order !== null, this.gapUsed.length)
    copy.used.set(this.used)
    copy.gapUsed.set(this.gapUsed)
    for (const [name, at] of this.cursors) copy.cursors.set(name, at)
    for (const name of this.exhausted) copy.exhausted.add(name)
    copy.known = this.known
    copy.overStitches = this.overStitches
    copy.overSpaces = this.overSpaces
    copy.overGaps = this.overGaps
    for (const [chains, count] of this.overByChains) copy.overByChains.set(chains, count)
    copy.gapCursor = this.gapCursor
    copy.gapsTaken = this.gapsTaken
    copy.betweenGroups = this.betweenGroups
    copy.stitchGroups = this.stitchGroups
    copy.start = this.start
    copy.corners = this.corners
    return copy
  }

  /** A space is asked for, by its chains perhaps, that is not there. */
  missSpace(chains: number | null): void {
    this.overSpaces++
    if (chains !== null) this.overByChains.set(chains, (this.overByChains.get(chains) ?? 0) + 1)
  }

  /** Asked for beyond what is there, of all kinds. */
  get over(): number {
    return this.overStitches + this.overSpaces + this.overGaps
  }

  get places(): readonly LeftPlace[] {
    return this.state.places
  }

  /** Index of the place that is met at a step of the lap. */
  private met(step: number): number {
    return this.order ? this.order[step]! : step
  }

  private step(index: number): number {
    // Turning over twice is as before.
    return this.order ? this.order[index]! : index
  }

  private cursorName(kind: LeftPlace['kind']): string {
    return this.state.ordered ? '' : kind
  }

  /** The next place of this kind that passes the test, from the cursor on, around once; −1 where there is none. */
  find(kind: LeftPlace['kind'], name: string, test: PlaceTest, from?: number): number {
    const key = `${kind} ${name}`
    const count = this.places.length
    if (count === 0 || this.exhausted.has(key)) return -1
    const cursor = from ?? this.cursors.get(this.cursorName(kind)) ?? this.start
    for (let offset = 0; offset < count; offset++) {
      const index = this.met((cursor + offset) % count)
      const place = this.places[index]!
      if (place.kind !== kind || this.used[index]! > TRAVELLED || !test(place, index)) continue
      return index
    }
    this.exhausted.add(key)
    return -1
  }

  /** The first stitch of a row, its turning chain as a rule, as long as it is free: where the next row ends. −1: none. */
  edge(): number {
    if (this.state.joined || this.state.endsInSpace || this.state.unknown) return -1
    const index = this.places.findIndex(({ kind }) => kind === 'stitch')
    return index >= 0 && this.used[index]! <= TRAVELLED ? index : -1
  }

  /** "Dc in top of turning ch" where the first stitch of the row was worked already: one too many. */
  isPastEdge(noun: Noun): boolean {
    if (noun.kind !== 'own' || !/\bch(ain)?\b/i.test(noun.words)) return false
    if (this.state.joined || this.state.endsInSpace || this.state.unknown) return false
    const index = this.places.findIndex(({ kind }) => kind === 'stitch')
    return index >= 0 && this.used[index]! >= WORKED
  }

  /** Uses a place up and sets the cursor behind it. */
  take(index: number, as: number): void {
    const place = this.places[index]!
    this.used[index] = Math.max(this.used[index]!, as)
    this.cursors.set(this.cursorName(place.kind), (this.step(index) + 1) % this.places.length)
  }

  /** Passes over what groups have between the cursor and a place; spaces between groups are left. */
  passTo(index: number): void {
    const count = this.places.length
    const cursor = this.cursors.get(this.cursorName(this.places[index]!.kind)) ?? this.start
    for (let offset = this.distance(index) - 1; offset >= 0; offset--) {
      const at = this.met((cursor + offset) % count)
      if (this.used[at]! < SKIPPED && this.isGroup(this.places[at]!.group)) this.used[at] = SKIPPED
    }
  }

  /** Sets the cursor at a place without using it: new yarn is joined there. */
  moveTo(index: number): void {
    this.cursors.set(this.cursorName(this.places[index]!.kind), this.step(index))
  }

  /** Frees a place that was only passed through, and goes on with it. */
  putBack(index: number): void {
    this.used[index] = TRAVELLED
    this.moveTo(index)
  }

  setStart(step: number): void {
    this.start = step
  }

  /** Places that are still free, by kind and test. */
  free(kind: LeftPlace['kind'], test: PlaceTest = () => true): number {
    let count = 0
    for (let index = 0; index < this.places.length; index++) {
      const place = this.places[index]!
      if (place.kind === kind && this.used[index]! <= TRAVELLED && test(place, index)) count++
    }
    return count
  }

  /** Free stitches that pass the test between the cursor and the next place that ends the run. */
  untilNext(test: PlaceTest, ends: PlaceTest): number {
    const count = this.places.length
    const cursor = this.cursors.get('') ?? this.start
    let free = 0
    for (let offset = 0; offset < count; offset++) {
      const index = this.met((cursor + offset) % count)
      const place = this.places[index]!
      if (ends(place, index)) return free
      if (this.used[index]! <= TRAVELLED && test(place, index)) free++
    }
    return free
  }

  /** Steps from the cursor to a place. */
  distance(index: number): number {
    const count = this.places.length
    const cursor = this.cursors.get(this.cursorName(this.places[index]!.kind)) ?? this.start
    return (this.step(index) - cursor + count) % count
  }

  /** The first stitch of the last run that this round skipped, not worked since; -1 where there is none. */
  lastSkipped(): number {
    if (!this.state.ordered && this.places.length === 0) return -1
    const count = this.places.length
    let at = ((this.cursors.get(this.cursorName('stitch')) ?? this.start) - 1 + count) % Math.max(1, count)
    let found = -1
    for (let back = 0; back < count; back++, at = (at - 1 + count) % count) {
      const index = this.met(at)
      if (this.places[index]!.kind !== 'stitch') continue
      if (this.used[index] === SKIPPED) found = index
      else if (found >= 0 || this.used[index]! <= TRAVELLED) break
    }
    return found
  }

  /** How many stitches right behind the hook are skipped. */
  passedBehind(): number {
    const count = this.places.length
    const cursor = this.cursors.get('') ?? this.start
    let passed = 0
    for (let back = 1; back <= count; back++) {
      const index = this.met((((cursor - back) % count) + count) % count)
      if (this.used[index] !== SKIPPED) break
      passed++
    }
    return passed
  }

  /** Back to where the round begins: "first" is said before anything is worked. */
  restart(): void {
    this.cursors.clear()
  }

  /** The loop in which the round before ended, or its last space. */
  lastSpace(): number {
    for (let index = this.places.length - 1; index >= 0; index--)
      if (this.places[index]!.kind === 'space' && this.used[index]! <= TRAVELLED) return index
    return -1
  }

  private groups: Map<number, number[]> | null = null

  /** Places of one group, in order. */
  membersOf(group: number): readonly number[] {
    if (!this.groups) {
      this.groups = new Map()
      for (let index = 0; index < this.places.length; index++) {
        const list = this.groups.get(this.places[index]!.group)
        if (list) list.push(index)
        else this.groups.set(this.places[index]!.group, [index])
      }
    }
    return this.groups.get(group) ?? []
  }

  groupSize(group: number): number {
    return this.membersOf(group).length
  }

  /** What is worked in one place makes a group, or petal; a whole round in the ring is none. */
  isGroup(group: number): boolean {
    const size = group < 0 ? 0 : this.groupSize(group)
    return size > 1 && size < this.places.length
  }

  private stitchGroups: number[] | null = null

  /** The next gap between two groups; where groups are not known, any gap. */
  nextGroupGap(): number {
    this.stitchGroups ??= this.places.filter((place) => place.kind === 'stitch').map((place) => place.group)
    const stitches = this.stitchGroups
    if (!this.state.ordered || stitches.every((group) => group < 0)) return this.nextGap()
    const count = Math.min(stitches.length, this.gapUsed.length)
    this.betweenGroups = true
    for (let offset = 0; offset < count; offset++) {
      const index = (this.gapCursor + offset) % count
      if (this.gapUsed[index]) continue
      if (stitches[index] !== stitches[(index + 1) % count]) return index
    }
    return -1
  }

  /** Gaps that are worked in: all, or those between groups alone. */
  get gaps(): number {
    const stitches = this.stitchGroups
    if (!this.betweenGroups || !stitches) return this.gapUsed.length
    return stitches.filter((group, at) => group !== stitches[(at + 1) % stitches.length]).length
  }

  nextGap(): number {
    const count = this.gapUsed.length
    if (this.gapsTaken >= count) return -1
    for (let offset = 0; offset < count; offset++) {
      const index = (this.gapCursor + offset) % count
      if (this.gapUsed[index]) continue
      return index
    }
    return -1
  }

  takeGap(index: number): void {
    if (!this.gapUsed[index]) this.gapsTaken++
    this.gapUsed[index] = WORKED
    this.gapCursor = (index + 1) % this.gapUsed.length
  }

  count(kind: LeftPlace['kind'], least = TRAVELLED): number {
    let count = 0
    for (let index = 0; index < this.places.length; index++)
      if (this.places[index]!.kind === kind && this.used[index]! >= least) count++
    return count
  }

  total(kind: LeftPlace['kind']): number {
    return this.places.filter((place) => place.kind === kind).length
  }

  /** Gives a gap back: yarn was only joined there. */
  releaseGap(index: number): void {
    if (this.gapUsed[index]) this.gapsTaken--
    this.gapUsed[index] = FREE
    this.gapCursor = index
  }

  /** Only the gaps between groups are worked in. */
  private betweenGroups = false

  /** Groups of the stitches, where the gaps between groups are worked in. */
  get groupsBesideGaps(): readonly number[] | null {
    return this.betweenGroups ? this.stitchGroups : null
  }

  /** Gaps worked into. */
  gapsTaken = 0

  /** Whether a place of this kind answers a test, remembered by name: rounds are long and the question is asked for every stitch. */
  has(kind: LeftPlace['kind'], name: string, test: PlaceTest): boolean {
    const key = `${kind} ${name}`
    const known = this.known.get(key)
    if (known !== undefined) return known
    const found = this.places.some((place, index) => place.kind === kind && test(place, index))
    this.known.set(key, found)
    return found
  }

  /** The sizes of the spaces of the round, the largest first; looked for once, since each lap may ask. */
  get spaceSizes(): readonly number[] {
    this.sizes ??= [
      ...new Set(this.places.filter(({ kind }) => kind === 'space').map(({ chains }) => chains)),
    ].sort((a, b) => b - a)
    return this.sizes
  }

  /** What was asked of the round's places; forks share it, since the places stay. */
  private known = new Map<string, boolean>()
  private sizes: readonly number[] | null = null
}

const alike = (a: LeftPlace, b: LeftPlace): boolean => a.chains === b.chains && a.group >= 0 === b.group >= 0

/** The corner spaces of a round: in the middle of a group; else, of several sizes, the few large ones. */
export function cornerPlaces(source: Source): ReadonlySet<number> {
  if (source.corners) return source.corners
  const spaces: number[] = []
  source.places.forEach((place, index) => {
    if (place.kind === 'space') spaces.push(index)
  })
  const marked = spaces.filter((index) => source.places[index]!.corner)
  const first = source.places[marked[0]!]
  // "(corner)" told of the first one is said of all that are like it.
  const likeFirst = spaces.filter((index) => first !== undefined && alike(source.places[index]!, first))
  // The corner that the round is joined over lies in no single place.
  const joinedOver = spaces.filter(
    (index) => !marked.includes(index) && source.places[index]!.chains === first?.chains,
  )
  const candidates =
    marked.length === 0
      ? spaces
      : marked.length === 1
        ? likeFirst
        : joinedOver.length === 1
          ? [...marked, ...joinedOver]
          : marked
  const largest = Math.max(0, ...candidates.slice(0, 5000).map((index) => source.places[index]!.chains))
  let corners = candidates.filter((index) => source.places[index]!.chains === largest)
  if (spaces.length === 0) {
    corners = []
    source.places.forEach((place, index) => {
      // Where only counts are known, any stitch may be a corner.
      if (place.kind === 'stitch' && (place.corner || !source.state.ordered)) corners.push(index)
    })
  }
  source.corners = new Set(corners)
  return source.corners
}
