/**
 * Keeps colours where they are while a project changes: whoever edits passes the project before and after
 * through here, and what has to change of a fill by chance changes from what stood.
 */
import type { YarnForMotifs } from '../../shared-types/plan'
import type { BlanketLayout, Colourway, Project } from '../../shared-types/project'
import { COUNT_FIELDS, blanketCounts } from '../layout/blanket'
import { fullLengths, placesOf } from '../layout/places'
import type { Place } from '../layout/places'
import { groundOf } from '../layout/ground'
import { layBlanket } from '../layout/blanket'
import { join, placedAccounts } from '../layout/stages'
import { touchingPairs } from '../layout/touching'
import { memoised, remembered } from '../memo'
import { createPlanner } from '../plan'
import { blanketOf } from '../plans/layouts'
import { heldColours } from '../progress/held'
import { assignByMotif } from './by-hand'
import type { KindCell } from './by-motif'
import type { ColourAssignment } from './assign'
import { colourCells, keepsApart } from './cells'
import { isByChance, keyOfPlace, placeOfKey, rowLengths, shiftOf, writeKept } from './kept'
import { isByYarn } from './limits'
import { DEFAULTS, settled } from '../settled'

/** The colourways of a blanket, without the rest of its plan. */
interface StandingColours {
  readonly places: readonly Place[]
  /** The motif of each place; '' where all of them hold the blanket's. */
  readonly motifs: readonly string[]
  readonly assignment: ColourAssignment
}

const NONE: readonly Colourway[] = []
const NO_STASH: readonly YarnForMotifs[] = []

/** What yarn leaves for the motifs is known once all of a blanket is counted. */
const planner = memoised(createPlanner)

const standing = memoised(
  (
    cells: BlanketLayout['cells'],
    made: Project['made'],
    ways: readonly Colourway[],
    arrangement: NonNullable<BlanketLayout['arrangement']>,
    stash: readonly YarnForMotifs[],
    places: StandingPlaces | null,
  ): StandingColours | null => {
    if (!places) return null
    const { fill, painted, kept, held } = cells ?? {}
    const fast = heldColours(held, made)
    const { places: there, cells: coloured, motifs } = places
    const assignment = assignByMotif(
      ...([coloured, fill, painted, ways, kept, arrangement, motifs, stash, fast] as const),
    )
    return { places: there, motifs: coloured.map(({ kind = 0 }) => motifs[kind] ?? ''), assignment }
  },
  3,
)

/** The cells of a blanket that hold a motif, and their motifs. */
interface StandingPlaces {
  readonly places: readonly Place[]
  readonly cells: readonly KindCell[]
  readonly motifs: readonly string[]
}

const plainPlaces = memoised(
  (arrangement: NonNullable<BlanketLayout['arrangement']>, ...counts: unknown[]): StandingPlaces | null => {
    const fields = Object.fromEntries(COUNT_FIELDS.map((name, index) => [name, counts[index]]))
    const read = blanketCounts(fields).counts
    if (!read) return null
    const round = read.inTheRound ? read.columns : 0
    const places = placesOf(read)
    return { places, cells: colourCells(places, arrangement !== 'straight-rows', round), motifs: ONE }
  },
  3,
)

/** Stands for the ids of the motifs where there is but one. */
const ONE: readonly string[] = ['']

/** Where something is left out or alternates, that follows from the lattice. */
const cutPlaces = remembered((project: Project): StandingPlaces | null => {
  const parts = groundOf(project)
  if (!parts) return null
  const { hand, accounts, gauge, rules, grid, counts, cells, cut } = parts
  const laid = layBlanket(grid, counts, cells, cut.test)
  const { placements } = laid
  const joined = () =>
    join(placedAccounts(accounts, grid, hand, cells), gauge, rules, settled(project).joining, laid, counts)
  const touching =
    accounts.length > 1 && keepsApart(blanketOf(project)?.cells?.fill)
      ? touchingPairs(placements, joined().nodes)
      : []
  const round = counts.inTheRound ? counts.columns : 0
  const full = fullLengths(counts)
  return {
    // What is kept of them has its rows at their full length.
    places: placements.map((placement) => ({ ...placement, full })),
    cells: colourCells(placements, counts.arrangement !== 'straight-rows', round, full, touching),
    motifs: cells.motifs,
  }
})

/** The places of a project's motifs, whatever their colours; none where there is no blanket that can be laid out. */
export const standingPlaces = (project: Project): readonly Place[] => placesIn(project)?.places ?? []

function placesIn(project: Project): StandingPlaces | null {
  const layout = blanketOf(project)
  if (!layout) return null
  const { arrangement = DEFAULTS.blanket.arrangement, alternate, outlineShape, cells } = layout
  return alternate || outlineShape || cells?.motifs
    ? cutPlaces(project)
    : plainPlaces(arrangement, ...COUNT_FIELDS.map((name) => layout[name]))
}

/** Which colourway stands where in a project; null where there is no blanket that can be laid out. */
export function standingColours(project: Project): StandingColours | null {
  const layout = blanketOf(project)
  if (!layout) return null
  const { arrangement = DEFAULTS.blanket.arrangement, cells } = layout
  const stash = isByYarn(cells?.fill) ? planner().stash(project) : NO_STASH
  return standing(cells, project.made, project.colourways ?? NONE, arrangement, stash, placesIn(project))
}

/** What the middles of motifs, and with them what lies within an outline, follow from beside the layout. */
const SIZE_FIELDS = ['motifs', 'gauge', 'joining', 'terms'] as const satisfies readonly (keyof Project)[]

/** What the yarn that is left for the motifs follows from beside the layout. */
const STASH_FIELDS = ['yarns', 'motifs', 'colourways', 'gauge', 'joining', 'allowance', 'terms'] as const

/** Whether an edit may change what limits by yarn leave for the motifs of a fill. */
export function movesLimits(before: Project, after: Project): boolean {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (!isByYarn(is?.cells?.fill) && !isByYarn(was?.cells?.fill)) return false
  return was !== is || STASH_FIELDS.some((name) => before[name] !== after[name])
}

/** Whether an edit may move motifs into an outline or out of it, or change which of several motifs touch. */
export function movesCells(before: Project, after: Project): boolean {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (!isBySize(was) && !isBySize(is)) return false
  return was !== is || SIZE_FIELDS.some((name) => before[name] !== after[name])
}

/** Whether the cells that are coloured, or which of them touch, follow from how large motifs are. */
const isBySize = (layout: BlanketLayout | null | undefined): boolean =>
  Boolean(layout?.outlineShape) ||
  (keepsApart(layout?.cells?.fill) && Boolean(layout?.alternate ?? layout?.cells?.motifs))

/** The project after an edit, with what stood before it remembered where the colours would move otherwise. */
export function holdColours(before: Project, after: Project): Project {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (!was || !is || before === after) return after
  const isSame =
    was.cells === is.cells &&
    before.colourways === after.colourways &&
    was.alternate === is.alternate &&
    COUNT_FIELDS.every((name) => was[name] === is[name]) &&
    !movesCells(before, after) &&
    !(isByChance(is.cells?.fill) && movesLimits(before, after))
  if (isSame) return after
  const moved = withMovedPaint(was, is, after)
  const layout = blanketOf(moved) ?? is
  const { fill } = layout.cells ?? {}
  const arrangement = layout.arrangement ?? DEFAULTS.blanket.arrangement
  const isOfOld =
    isByChance(fill) &&
    fill?.pattern === was.cells?.fill?.pattern &&
    (fill?.seed ?? 0) === (was.cells?.fill?.seed ?? 0) &&
    arrangement === (was.arrangement ?? 'straight-rows')
  if (!fill || !isOfOld) return withKept(moved, layout, undefined)
  const stood = standingColours(before)
  if (!stood?.assignment.chance) return moved
  const { chosen, under } = stood.assignment.chance
  const old = writeKept(fill, arrangement, stood.places, chosen, stood.assignment.colourways, under)
  const next = withKept(moved, layout, old)
  const stands = standingColours(next)
  if (!stands?.assignment.chance) return next
  const { chance, colourways } = stands.assignment
  const kept = writeKept(fill, arrangement, stands.places, chance.chosen, colourways, chance.under)
  return withKept(moved, layout, kept)
}

function withKept(
  project: Project,
  layout: BlanketLayout,
  kept: NonNullable<BlanketLayout['cells']>['kept'],
): Project {
  const { kept: old, ...cells } = layout.cells ?? {}
  if (old === undefined && kept === undefined) return project
  return { ...project, layout: { ...layout, cells: kept ? { ...cells, kept } : cells } }
}

/** The project with what was painted, put in and left out by hand where the same motifs are now. */
function withMovedPaint(was: BlanketLayout, is: BlanketLayout, project: Project): Project {
  const stays = (name: 'painted' | 'motifs') => is.cells?.[name] && is.cells[name] === was.cells?.[name]
  const names = (['painted', 'motifs'] as const).filter(stays)
  const move = names.length > 0 ? movedAddress(was, is) : null
  if (!move) return project
  const moved = names.map((name) => [name, movedKeys(is.cells?.[name] ?? {}, move)] as const)
  const cells = { ...is.cells, ...Object.fromEntries(moved) }
  return { ...project, layout: { ...is, cells } }
}

/** What stands under addresses, under those where it is now; what has no place any more is gone. */
function movedKeys<Value>(
  entries: Readonly<Record<string, Value>>,
  move: (address: string) => string | null,
): Record<string, Value> {
  const moved = Object.entries(entries).flatMap(([key, value]): (readonly [string, Value])[] => {
    const now = move(key)
    return now === null ? [] : [[now, value]]
  })
  return Object.fromEntries(moved)
}

/**
 * Where the same motif is now, or null where it has no place any more: rings that come or go move every number, and
 * shifted rows may begin elsewhere. Null instead of an answer where every address stays what it was.
 */
export function movedAddress(
  was: BlanketLayout,
  is: BlanketLayout,
): ((address: string) => string | null) | null {
  const arrangement = is.arrangement ?? DEFAULTS.blanket.arrangement
  if (arrangement !== (was.arrangement ?? DEFAULTS.blanket.arrangement)) return null
  const [before, after] = [was, is].map((layout) => blanketCounts(layout).counts)
  if (!before || !after) return null
  const shift = shiftOf(arrangement, rowLengths(placesOf(before)), rowLengths(placesOf(after)))
  const here = shift({ row: 2, column: 2 })
  if (here.row === 2 && here.column === 2) return null
  return (address) => {
    // A filler's address names the motifs round it.
    const places = address.split('+').map(placeOfKey)
    const now = places.flatMap((place) => (place ? [shift(place)] : []))
    if (now.length < places.length) return address
    const isThere = now.every(({ row, column }) => row > 0 && column > 0)
    return isThere ? now.map(keyOfPlace).join('+') : null
  }
}
