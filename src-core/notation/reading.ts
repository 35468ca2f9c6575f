/** What goes on from round to round while a text is read, and how what is found on the way is told. */
import type { Finding } from '../../shared-types/finding'
import { findingOf } from '../findings/finding'
import type { RoundAccount } from './account'
import type { PartEnd } from './borders'
import type { StateBefore } from './continued'
import { LIMITS } from './limits'
import type { Gathered } from './loose-groups'
import { countedState, markUsed, stateOf } from './state'
import type { After, Base, RoundState } from './state'
import type { Span } from './tokens'
import type { ChainItem, Item, RoundNode, StatementItem } from './tree'
import type { WorkFinding } from './work'
import type { WorkedRound } from './worked'

/** What goes on from round to round while a text is read. */
export interface Reading {
  base: Base
  readonly history: Map<number, RoundState>
  readonly gaps: Map<RoundState, number>
  readonly worked: WorkedRound[]
  readonly accounts: RoundAccount[]
  readonly findings: Finding[]
  /** Rounds as they were before later ones were worked into them, in turn. */
  readonly undo: StateBefore[]
  readonly budget: { left: number }
  /** Stitches and chains that may still be made. */
  room: number
  readonly colours: readonly string[]
  /** What beginning chains of so many stand for, where the text says it once for all. */
  readonly usual: Map<number, StatementItem>
  readonly repeats: Map<Item, number>
  /** Rounds whose loose stitches were gathered into groups, by their items as the text has them. */
  readonly gathered: Map<readonly Item[], Gathered>
  /** Repeats that run so often in one round and otherwise in another: they cannot be written out. */
  readonly uneven: Set<Item>
  /** By line: characters that stand before the designer's own words and are no part of a column. */
  readonly before: readonly number[]
  number: number
  turned: boolean
  /** The turning chain that the row before ended with. */
  carried: ChainItem | null
  /** The part of the pattern in hand, and whether nothing of it has been worked yet. */
  part: string | null
  partOpen: boolean
  /** Rounds of the part before, by their number: what a motif is joined to. */
  earlier: ReadonlyMap<number, RoundState>
  /** How each part before the one in hand ended, by its name. */
  ends: ReadonlyMap<string, PartEnd>
  /** Pieces alike that the row before is one of. */
  pieces: number
  /** The ring or chain that the part in hand began with before its first round. */
  foundation: Base
  source: number
  /** The last round that could not be counted, by its number. */
  openRound: number | null
}

/** A count from outside, made harmless. */
export const clampCount = (value: number | undefined): number => {
  const count = Math.floor(Number(value ?? 0))
  return Number.isFinite(count) && count > 0 ? Math.min(count, LIMITS.stitches) : 0
}

function clampSpaces(spaces: Readonly<Record<string, number>> | undefined): Record<string, number> {
  const entries = Object.entries(spaces ?? {}).slice(0, 50)
  return Object.fromEntries(entries.map(([key, count]) => [key, clampCount(count)]))
}

export function startReading(
  after: After | undefined,
  first: number,
  colours: readonly string[],
  before: readonly number[] = [],
): Reading {
  const reading: Reading = {
    base: { kind: 'none' },
    history: new Map(),
    gaps: new Map(),
    worked: [],
    accounts: [],
    findings: [],
    undo: [],
    budget: { left: LIMITS.steps },
    room: LIMITS.worked,
    colours,
    usual: new Map(),
    repeats: new Map(),
    gathered: new Map(),
    uneven: new Set(),
    before,
    number: first - 1,
    turned: false,
    carried: null,
    part: null,
    partOpen: false,
    earlier: new Map(),
    ends: new Map(),
    pieces: 1,
    foundation: { kind: 'none' },
    source: 0,
    openRound: null,
  }
  if (after) {
    if (after.ring !== undefined && !after.stitches)
      reading.base = { kind: 'ring', chains: clampCount(after.ring) }
    else if (after.chain !== undefined) reading.base = { kind: 'chain', chains: clampCount(after.chain) }
    else if (!after.start) {
      const state = countedState(-1, first - 1, clampCount(after.stitches), clampSpaces(after.spaces))
      reading.base = { kind: 'round', state }
    }
    const { from } = after
    if (from) {
      const same = from.round === first - 1 && reading.base.kind === 'round' ? reading.base.state : null
      const state = same ?? countedState(-1, from.round, clampCount(from.stitches), clampSpaces(from.spaces))
      if (from.used) markUsed(state, from.used)
      if (from.gaps !== undefined) reading.gaps.set(state, clampCount(from.gaps))
      if (!same) reading.history.set(from.round, state)
    }
  } else if (first > 1) {
    // A text that begins with "Rnd 3" and does not say what came before can still be read, but not checked.
    reading.base = { kind: 'round', state: stateOf(-1, first - 1, [], { unknown: true }) }
  }
  return reading
}

/** "round 3, column 12: “rep from * 7 more times”". */
function whereWords(text: string, label: string, span: Span, column: number): string {
  const words = text.slice(span.start, span.end).replace(/\s+/g, ' ')
  const short = words.length > 80 ? `${words.slice(0, 77)}…` : words
  return `${label}, column ${column}: "${short}"`
}

const roundLabel = (number: number, label: string | null, numbered: boolean): string =>
  numbered || label === null ? `round ${number}` : `${label} (round ${number})`

export function addFinding(
  reading: Reading,
  text: string,
  node: RoundNode | null,
  number: number,
  found: WorkFinding,
): void {
  const numbered = node?.numbers !== null
  const label = roundLabel(number, node?.label ?? null, numbered)
  const at = found.span ?? node
  const line = at?.line ?? 1
  const column = Math.max(1, (at?.column ?? 1) - (reading.before[line - 1] ?? 0))
  const length = found.span ? { length: found.span.end - found.span.start } : {}
  const target = { round: number, column, line, ...length }
  const where = found.span ? whereWords(text, label, found.span, column) : label
  reading.findings.push(findingOf(found, where, target))
}
