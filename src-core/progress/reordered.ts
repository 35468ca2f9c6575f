/**
 * What an edit of a blanket does to the working order of what is made: motifs that get another number, and finished
 * joins that a motif still to be made would come before, so that nobody would be told to work them.
 */
import type { Project } from '../../shared-types/project'
import { standingColours } from '../colour/hold'
import { workSequence } from '../joins/sequence'
import { tidyAddress } from '../layout/addresses'
import { layBlanket } from '../layout/blanket'
import { groundOf } from '../layout/ground'
import { join, placedAccounts } from '../layout/stages'
import { blanketOf } from '../plans/layouts'
import { settled } from '../settled'
import { joinedOf, joinsAsMade } from './mark'
import { COLOURS, differs } from './rejoined'

interface Reordered {
  /** Number before and after, by address before the edit, of every motif that stays. */
  readonly numbers: ReadonlyMap<string, readonly [was: number, is: number]>
  /** Addresses, before the edit, of joined motifs that would have to be joined to one that is not made yet. */
  readonly waiting: ReadonlySet<string>
}

const NOTHING: Reordered = { numbers: new Map(), waiting: new Set() }

type Layout = NonNullable<ReturnType<typeof blanketOf>>

/** What of a layout moves nothing in the order, besides colours. */
const BESIDE_ORDER: ReadonlySet<string> = new Set([
  ...['cells', 'edging', 'fillers', 'halves', 'target'],
] satisfies (keyof Layout)[])

/** Whether an edit touches anything that the order of motifs, or which of them meet, follows from. */
function canReorder(before: Project, after: Project): boolean {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (!was || !is) return false
  if (before.order !== after.order) return true
  if (before.motifs !== after.motifs || before.joining !== after.joining) return true
  if (after.order === 'colourway' && (was !== is || before.colourways !== after.colourways)) return true
  return differs(was, is, BESIDE_ORDER) || differs(was.cells, is.cells, COLOURS)
}

/** The motifs of a blanket in working order, and which of them meet. */
function ordered(project: Project) {
  const parts = groundOf(project)
  if (!parts) return null
  const { accounts, cells, grid, counts, rules, cut, gauge, hand } = parts
  const { order, joining, colourways } = settled(project)
  const laid = layBlanket(grid, counts, cells, cut.test)
  const { placements } = laid
  const standing = order === 'colourway' ? standingColours(project) : null
  const ways = new Map(standing?.places.map(({ id }, i) => [id, standing.assignment.colourways[i] ?? '']))
  const { sequence } = workSequence({
    ...{ placements, order, hand },
    colourways: placements.map(({ id }) => ways.get(id) ?? ''),
    colourwayOrder: colourways.map(({ id }) => id),
    offset: counts.arrangement !== 'straight-rows',
  })
  const number = new Map(sequence.map((motif, i) => [placements[motif]!.id, i + 1]))
  /** Joined motifs that are worked into one that is not made. */
  const waiting = (): ReadonlySet<string> => {
    const made = new Set(Object.keys(project.made ?? {}).map(tidyAddress))
    const placed = placedAccounts(accounts, grid, hand, ...(cells.blocks.size > 0 ? [cells] : []))
    const { nodes } = join(placed, gauge, rules, joining, laid, counts)
    const found = new Set<string>()
    for (const { members } of nodes) {
      const ids = members.map(({ motif }) => placements[motif]!.id)
      // Every one of them is joined to those before it.
      const first = Math.min(...ids.flatMap((id) => (made.has(id) ? [] : [number.get(id)!])))
      for (const id of ids) if (number.get(id)! > first) found.add(id)
    }
    return found
  }
  return { number, waiting }
}

/** What an edit does to the order of made motifs; `move` says where each is after it. */
export function reorderedBy(
  before: Project,
  after: Project,
  move: (address: string) => string | null,
): Reordered {
  if (!canReorder(before, after)) return NOTHING
  const [was, is] = [ordered(before), ordered(after)]
  if (!was || !is) return NOTHING
  const numbers = new Map<string, readonly [number, number]>()
  const stays = new Map<string, string>()
  for (const key of Object.keys(before.made ?? {})) {
    const [id, now] = [tidyAddress(key), move(key)]
    const [old, next] = [was.number.get(id), now === null ? undefined : is.number.get(tidyAddress(now))]
    if (old === undefined || next === undefined) continue
    numbers.set(id, [old, next])
    stays.set(id, tidyAddress(now!))
  }
  // What is sewn is sewn once both are there, whichever came first.
  const isJoinedOn = joinsAsMade(before) && joinsAsMade(after)
  const joined = isJoinedOn ? Object.keys(joinedOf(before)).map(tidyAddress) : []
  const late = joined.some((id) => stays.has(id)) ? is.waiting() : NOTHING.waiting
  const fresh = joined.filter((id) => late.has(stays.get(id) ?? ''))
  const early = fresh.length > 0 ? was.waiting() : NOTHING.waiting
  return { numbers, waiting: new Set(fresh.filter((id) => !early.has(id))) }
}
