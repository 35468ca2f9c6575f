/** What is known while a round is being worked: the elements so far, where one stands, what is still to come. */
import type { FindingCode } from '../findings/catalogue'
import { said } from '../findings/finding'
import type { Said, Told } from '../findings/finding'
import type { StitchKey } from '../stitches/table'
import type { Beginning } from './beginning'
import { LIMITS } from './limits'
import type { Piece } from './piece'
import { Source } from './source'
import type { Base, RoundState } from './state'
import type { Span } from './tokens'
import type { ColourItem, Item, RoundNode, RoundsTree, WorkItem } from './tree'
import type { Loop } from './stitch-name'
import type { ElementRole, Foundation, WorkedElement, WorkedPlace } from './worked'

export type Element = { -readonly [Key in keyof WorkedElement]: WorkedElement[Key] }

export interface Target {
  readonly place: WorkedPlace
  readonly group: number
  readonly source: Source | null
}

export type WorkFinding = Said & {
  /** Null: the round as a whole. */
  readonly span: Span | null
}

/** A chain that is worked along, from the hook back to its first chain and on its other side. */
export interface ChainWork {
  readonly element: number
  readonly chains: number
  readonly firstCell: number
  cell: number
  opposite: boolean
}

export interface Scope {
  loop: Loop | null
  around: boolean
  round: number | null
  behind: boolean
}

export interface Work {
  readonly index: number
  readonly number: number
  readonly node: RoundNode
  readonly tree: Omit<RoundsTree, 'repeats'>
  base: Base
  /** What stands before the round in rows. */
  readonly piece: Piece
  /** Rounds by their number, and the one that the text is handed with. */
  readonly history: ReadonlyMap<number, RoundState>
  /** Rounds of the part before. */
  readonly earlier: ReadonlyMap<number, RoundState>
  readonly sources: Map<RoundState, Source>
  readonly gaps: ReadonlyMap<RoundState, number>
  readonly turned: boolean
  readonly colours: readonly string[]
  readonly repeats: Map<Item, number>
  readonly budget: { left: number }
  /** Stitches and chains that the text may still make. */
  room: number
  /** A stitch of its own that the round begins with may bring it. */
  beginning: Beginning | null

  readonly elements: Element[]
  readonly groups: Map<string, number>
  readonly findings: WorkFinding[]
  readonly reported: Set<string>
  readonly scope: Scope
  foundation: Foundation | null
  /** The place that is named around the stitches in hand: "(…) in next sp". */
  here: Target | null
  last: Target | null
  first: Target | null
  /** New yarn joined behind the end of the round: for the next one. */
  ahead: readonly (ColourItem | WorkItem)[]
  /** The stitch in which new yarn was joined with a slip stitch, and nothing else goes into it. */
  joinedAt: Target | null
  beginningDone: boolean
  /** The beginning chain is the first leg of the cluster to come. */
  leg: { legs: number; target: Target | null } | null
  lastStitch: StitchKey | null
  chain: ChainWork | null
  /** The stitches in hand, and what the text says next. */
  hand: { item: WorkItem; then: readonly Item[] } | null
  /** Chains of a space of the round before that are worked one by one. */
  spaceCells: { target: Target; left: number; cell: number } | null
  flex: number[]
  colour: string | null
  described: { target: Target | null; span: Span } | null
  /** First of the elements whose last loops are held on the hook. */
  held: number | null
  /** Inside a part that is repeated. */
  repeated: number
  depth: number
  joined: boolean
  leaveOpen: boolean
  /** How many that are, where it is said. */
  left: number | null
  /** A part is marked to be repeated, and nothing says how often. */
  unrepeated: boolean
  /** Real work in stitches of the round before, not only on the way. */
  stitchWork: boolean
  /** Places picked by name ("center dc of next petal"): what lies between is passed on purpose. */
  picked: boolean
  overSpan: Span | null
  overReported: boolean
  usesCorners: boolean
  clause: Span | null
  spokes: number
  chainCells: Set<string>
  loopMarks: { state: RoundState; index: number; mark: number }[]
  /** The account cannot be known. */
  open: boolean
}

/** Thrown inside one round only, caught where the round is read: it asks for more than can be worked. */
export class TooLong extends Error {
  constructor(readonly span: Span) {
    super('round too long')
  }
}

export function report<Code extends FindingCode>(
  work: Work,
  code: Code,
  span: Span | null,
  ...told: Told<Code, string>
): void {
  const [, once = ''] = told
  const key = once === '' ? '' : `${code} ${once}`
  if (key !== '' && work.reported.has(key)) return
  if (key !== '') work.reported.add(key)
  work.findings.push({ ...said(code, ...told), span })
}

/** Counts one step of work; a text that never ends is stopped here. */
export function spend(work: Work, span: Span): void {
  if (work.elements.length >= LIMITS.stitches || work.budget.left-- <= 0) throw new TooLong(span)
}

/** Places or stitches that are looked through for one step of work. */
const LOOKED_AT_PER_STEP = 50

/** Counts what it costs to look through so many places: a long round looked through at every lap ends too. */
export function spendLooking(work: Work, count: number, span: Span): void {
  work.budget.left -= Math.ceil(count / LOOKED_AT_PER_STEP)
  if (work.budget.left <= 0) throw new TooLong(span)
}

export function baseSource(work: Work): Source | null {
  return work.base.kind === 'round' ? sourceOf(work, work.base.state) : null
}

export function sourceOf(work: Work, state: RoundState): Source {
  const found = work.sources.get(state)
  if (found) return found
  const isBase = work.base.kind === 'round' && work.base.state === state
  const source = new Source(state, isBase && work.turned, work.gaps.get(state) ?? null)
  work.sources.set(state, source)
  return source
}

/** Whether anything but the way to the beginning has been worked. */
export const hasBody = (work: Work): boolean =>
  work.elements.some(
    (element) => element.role !== 'travel' && element.role !== 'stem' && element.role !== 'beginning',
  ) || work.elements.some((element) => element.standing)

/** Appends an element. */
export function push(
  work: Work,
  role: ElementRole,
  stitch: StitchKey,
  span: Span,
  rest: Partial<Element> = {},
): Element {
  spend(work, span)
  work.room -= rest.count ?? 1
  if (work.room < 0) throw new TooLong(span)
  const element: Element = {
    index: work.elements.length,
    role,
    form: 'plain',
    stitch,
    count: 1,
    legs: 1,
    assumed: false,
    into: [],
    group: -1,
    standing: false,
    countsAs: null,
    behind: work.scope.behind,
    reverse: false,
    colour: work.colour,
    span,
    ...rest,
  }
  work.elements.push(element)
  return element
}

/** Number of the group that goes into a place. */
function groupOf(work: Work, place: WorkedPlace): number {
  const group = work.groups.size
  // Of places that are not there nothing is known: each is one of its own.
  const key =
    place.index < 0
      ? String(group)
      : `${place.kind} ${place.round} ${place.index} ${place.cell} ${place.opposite}`
  const found = work.groups.get(key)
  if (found !== undefined) return found
  work.groups.set(key, group)
  return group
}

export function targetAt(
  work: Work,
  source: Source | null,
  place: Omit<WorkedPlace, 'cell' | 'opposite' | 'loop' | 'post'> & Partial<WorkedPlace>,
): Target {
  const full: WorkedPlace = { cell: 0, opposite: false, loop: 'both', post: null, ...place }
  return { place: full, group: groupOf(work, full), source }
}
