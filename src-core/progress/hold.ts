/**
 * Made motifs keep colour and place while a project changes: whoever edits passes the project before and after through
 * here. What no edit may do without a question is told by `lostMade`.
 */
import type { BlanketLayout, Project } from '../../shared-types/project'
import { holdColours, movedAddress, movesLimits, movesCells, standingColours } from '../colour/hold'
import { tidyAddress } from '../layout/addresses'
import { COUNT_FIELDS } from '../layout/blanket'
import { appliqueOf, blanketOf } from '../plans/layouts'
import { isMarked } from './marks'
import { withOutlineStaying } from './outline-stays'

type Texts = Readonly<Record<string, string>>
type Address = (address: string) => string | null

const stays: Address = (address) => address

/** The project after an edit, with made motifs and all other colours where they were, as far as that can be. */
export function holdWork(before: Project, after: Project): Project {
  if (before === after) return after
  return holdColours(before, holdSingles(before, holdMade(before, withOutlineStaying(before, after))))
}

/** Where what was marked before an edit is marked after it; null where it has no place any more. */
export function movedMarks(before: Project, after: Project): Address {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (was && is) return movedAddress(was, is) ?? stays
  return movedItems(before, after) ?? stays
}

/** Items of a panel are told by their number in the list: one that goes moves those behind it. */
function movedItems(before: Project, after: Project): Address | null {
  const [was, is] = [before, after].map((project) => appliqueOf(project)?.items)
  if (!was || !is || was === is) return null
  const places = new Map(is.map((item, i) => [item, i]))
  return (address) => {
    const [, number = ''] = /^1,(\d+)$/.exec(tidyAddress(address)) ?? []
    const item = was[Number(number) - 1]
    if (!item) return address
    const now = places.get(item)
    if (now !== undefined) return `1,${now + 1}`
    // It was changed where it lies, or it is gone.
    return was.length === is.length ? address : null
  }
}

/** Pairs with a joining rule of their own stay the same motifs. */
function holdSingles(before: Project, after: Project): Project {
  const single = after.joining?.single
  const move = single && single === before.joining?.single ? movedMarks(before, after) : stays
  if (!single || move === stays) return after
  const moved = single.flatMap((pair) => {
    const places = pair.places.map((place) => move(tidyAddress(place)))
    return places.every((place) => place !== null) ? [{ ...pair, places }] : []
  })
  return { ...after, joining: { ...after.joining, single: moved } }
}

function holdMade(before: Project, after: Project): Project {
  if (!isMarked(before) && !isMarked(after)) return after
  const unmarked = new Set(Object.keys(before.made ?? {}).filter((key) => !(key in (after.made ?? {}))))
  const move = movedMarks(before, after)
  const moved = <Marks extends Texts | undefined>(marks: Marks, was: Texts | undefined): Marks | Texts =>
    marks && marks === was && move !== stays ? rekeyed(marks, move) : marks
  const made = moved(after.made, before.made)
  const joined = without(moved(after.joined, before.joined), unmarked)
  const next = made === after.made && joined === after.joined ? after : withMarks(after, made, joined)
  const [was, is] = [blanketOf(before), blanketOf(next)]
  return was && is ? withHeld(before, next, was, is, { unmarked, move }) : next
}

const withMarks = (project: Project, made: Project['made'], joined: Project['joined']): Project => ({
  ...project,
  ...(made && { made: { ...made } }),
  ...(joined && { joined: { ...joined } }),
})

/** Marks where their motifs are now. */
export function rekeyed(marks: Texts, move: Address): Texts {
  return Object.fromEntries(
    Object.entries(marks).flatMap(([key, value]) => {
      const now = move(key)
      return now === null ? [] : [[now, value]]
    }),
  )
}

function without<Marks extends Texts | undefined>(marks: Marks, gone: ReadonlySet<string>): Marks | Texts {
  if (!marks || ![...gone].some((key) => key in marks)) return marks
  return Object.fromEntries(Object.entries(marks).filter(([key]) => !gone.has(key)))
}

interface Marked {
  readonly unmarked: ReadonlySet<string>
  readonly move: Address
}

/** Made motifs are held in the colourway that stood there, unless the edit itself says another. */
function withHeld(
  before: Project,
  after: Project,
  was: BlanketLayout,
  is: BlanketLayout,
  { unmarked, move }: Marked,
): Project {
  const said = is.cells?.held
  const isSaid = said !== was.cells?.held
  const held: Record<string, string> = {
    ...without((isSaid || move === stays || !said ? said : rekeyed(said, move)) ?? {}, unmarked),
  }
  const stands = canMove(before, after, was, is) ? standingColours(before) : null
  const stood = new Map(stands?.places.map(({ id }, i) => [id, stands.assignment.colourways[i] ?? '']))
  const marked = Object.keys(after.made ?? {})
  const known = new Set(Object.keys(before.made ?? {}).map((key) => move(key) ?? ''))
  const back = new Map(Object.keys(before.made ?? {}).map((key) => [move(key) ?? '', key]))
  for (const key of marked) {
    const colour = stood.get(tidyAddress(back.get(key) ?? key))
    if (held[key] === undefined && colour) held[key] = colour
  }
  const painted = paintOver(was, is, held, (key) => known.has(key))
  const isSame = painted === is.cells?.painted && sameTexts(held, said ?? {})
  if (isSame) return after
  const { held: _, ...cells } = is.cells ?? {}
  const holds = Object.keys(held).length > 0
  return {
    ...after,
    layout: { ...is, cells: { ...cells, ...(painted && { painted }), ...(holds && { held }) } },
  }
}

/** Whether an edit touches anything that colours follow from. */
function canMove(before: Project, after: Project, was: BlanketLayout, is: BlanketLayout): boolean {
  const { cells: { fill, painted, kept } = {} } = was
  const cells = is.cells ?? {}
  if (fill !== cells.fill || painted !== cells.painted || kept !== cells.kept) return true
  if (before.colourways !== after.colourways || COUNT_FIELDS.some((name) => was[name] !== is[name]))
    return true
  if (was.alternate !== is.alternate || was.cells?.motifs !== cells.motifs) return true
  if (was.cells?.large !== cells.large || movesCells(before, after)) return true
  return movesLimits(before, after)
}

/**
 * What was painted by this edit: among others made motifs are passed over; by themselves they are meant, and get the
 * colour in `held`.
 */
function paintOver(
  was: BlanketLayout,
  is: BlanketLayout,
  held: Record<string, string>,
  isMade: (key: string) => boolean,
): Texts | undefined {
  const [old, painted] = [was.cells?.painted ?? {}, is.cells?.painted]
  if (!painted || painted === was.cells?.painted) return painted
  const changed = Object.keys(painted).filter((key) => painted[key] !== old[key])
  const own = changed.filter((key) => isMade(tidyAddress(key)))
  if (own.length === 0) return painted
  if (own.length === changed.length) {
    for (const key of own) held[tidyAddress(key)] = painted[key]!
    return painted
  }
  const next: Record<string, string> = { ...painted }
  for (const key of own) {
    if (old[key] === undefined) delete next[key]
    else next[key] = old[key]
  }
  return next
}

function sameTexts(a: Texts, b: Texts): boolean {
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key])
}
