/** Where each colourway goes: the patterns of a fill, with what was painted by hand on top. */
import type { Finding } from '../../shared-types/finding'
import type { YarnForMotifs } from '../../shared-types/plan'
import type { Arrangement, BlanketLayout, Colourway } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { isAddition, tidyAddress } from '../layout/addresses'
import { formatNumber } from '../units/format'
import { seededRandom } from '../units/random'
import type { Random } from '../units/random'
import { motifsOf, sharedOut } from './by-stash'
import { byChance } from './chance'
import { COLOUR_CONSTANTS } from './constants'
import { excessOf } from './counts'
import { repeatWithin, rowsWithin, shadeWithin } from './in-turn'
import type { Filled } from './in-turn'
import type { Kept } from './kept'
import { isByStash, limitFindings, limitsOf, orChoose, roomWords, tallied } from './limits'
import type { Limits, Proof } from './limits'
import { mirrored } from './mirror'
import { DEFAULTS } from '../settled'

/** A place of the layout. Rows from the top, columns from the left, both from 1. */
export interface ColourCell {
  /** "row,column": the key of painted cells. */
  readonly id: string
  readonly row: number
  readonly column: number
  /** Indices of the cells it touches; each pair is named from both sides. */
  readonly neighbours: readonly number[]
}

export type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>
type ShadeDirection = NonNullable<Fill['direction']>

export interface Keeps {
  readonly colourways: readonly string[]
  readonly yarns: readonly string[]
}

export interface ColourAssignment {
  /** Colourway id of each cell, '' where none is given. */
  readonly colourways: readonly string[]
  /** Of a fill by chance: the colourways that it chooses from, and what painted cells had before. */
  readonly chance?: { readonly chosen: readonly string[]; readonly under: ReadonlyMap<number, string> }
  /** Of a pattern that limits change: the cells that take another colourway than the pattern gives them. */
  readonly leaving?: readonly number[]
  /** The limits that the pattern alone would pass, and that are kept now: ids of colourways and of yarns. */
  readonly keeps?: Keeps
  readonly findings: readonly Finding[]
}

/** How far along the shade a cell lies, from 0 to 1 (half a step in from both ends). */
function along(cells: readonly ColourCell[], direction: ShadeDirection): number[] {
  const middle = (numbers: readonly number[]): number => {
    const steps = spreadOf(numbers)
    return ((steps[0] ?? 0) + (steps.at(-1) ?? 0)) / 2
  }
  const rows = cells.map((cell) => cell.row)
  const columns = cells.map((cell) => cell.column)
  const values = {
    down: () => rows,
    up: () => rows.map((row) => -row),
    right: () => columns,
    left: () => columns.map((column) => -column),
    outward: () => {
      const [row, column] = [middle(rows), middle(columns)]
      return cells.map((cell) => Math.hypot(cell.row - row, cell.column - column))
    },
  }[direction]()
  const steps = spreadOf(values)
  const place = new Map(steps.map((value, index) => [value, (index + 0.5) / steps.length]))
  return values.map((value) => place.get(value) ?? 0)
}

/** The distinct values, smallest first. */
const spreadOf = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b)

/** How far along its bands each cell lies, mixed a little where they meet. */
const mixedBands = (
  cells: readonly ColourCell[],
  bands: number,
  direction: ShadeDirection,
  random: Random,
): number[] =>
  along(cells, direction).map((part) => part * bands + (random.next() - 0.5) * COLOUR_CONSTANTS.shadeMixing)

/** What colourways are called: by their letters. */
export const namesOf = (ids: readonly string[], colourways: readonly Colourway[]): string[] =>
  ids.map((id) => {
    const found = colourways.find((colourway) => colourway.id === id)
    return found?.code ?? found?.name ?? id
  })

/** Whether a place is one of the arrangement, of which an outline or a hand left its motif out: it waits there. */
function isLeftOut(
  address: string,
  cells: readonly (ColourCell & { readonly full?: readonly number[] | undefined })[],
) {
  const [row = 0, place = 0] = address.split(',').map(Number)
  const length = cells[0]?.full?.[row - 1] ?? 0
  return place >= 1 && place <= length
}

/** What a fill is to be coloured with, beside its cells. */
interface Task {
  readonly cells: readonly ColourCell[]
  readonly fill: Fill & { readonly pattern: NonNullable<Fill['pattern']> }
  /** Numbers of the chosen colourways in the order in which the fill names them; one may come twice. */
  readonly sequence: readonly number[]
  readonly byHand: ReadonlyMap<number, string>
  /** Cells that mirror each other. */
  readonly groups: readonly (readonly number[])[]
  readonly limits: Limits | null
  /** Of a fill by the stash: motifs that each colourway could have, and those painted of each. */
  readonly shares: readonly number[]
  readonly painted: readonly number[]
}

/** Patterns that go on from one cell to the next, or along a direction: the colour of each group. */
function byPattern({
  cells,
  fill,
  sequence,
  byHand,
  groups,
  limits,
  shares,
  painted,
}: Task): Filled & { broken?: number } {
  const firsts = groups.map(([first = 0]) => cells[first]!)
  const sizes = groups.map((group) => group.filter((cell) => !byHand.has(cell)).length)
  if (isByStash(fill)) return sharedOut(sizes, firsts, shares, painted, limits)
  if (fill.pattern === 'shade') {
    const seeded = seededRandom(fill.seed ?? DEFAULTS.fill.seed)
    const direction = fill.direction ?? DEFAULTS.fill.direction
    return shadeWithin(sizes, mixedBands(firsts, sequence.length, direction, seeded), sequence, limits)
  }
  const place = (group: number): ColourCell => firsts[group]!
  const inOrder = [...groups.keys()].sort(
    (a, b) => place(a).row - place(b).row || place(a).column - place(b).column,
  )
  if (fill.pattern === 'rows') {
    // A row without a motif of its own takes its turn all the same.
    const rows = Array.from({ length: place(inOrder.at(-1) ?? 0).row }, (): number[] => [])
    for (const group of inOrder) rows[place(group).row - 1]?.push(group)
    return rowsWithin(sizes, firsts, rows, sequence, limits)
  }
  const ordered = inOrder.map((group) => sizes[group] ?? 0)
  const taken = fill.pattern === 'one' ? sequence.slice(0, 1) : sequence
  const filled = repeatWithin(ordered, inOrder.map(place), taken, limits)
  const back = (colours: Int16Array): Int16Array => {
    const of = new Int16Array(groups.length)
    inOrder.forEach((group, at) => (of[group] = colours[at] ?? 0))
    return of
  }
  return {
    ...{ ...filled, colours: back(filled.colours) },
    ...(filled.natural && { natural: back(filled.natural) }),
  }
}

/** What a fill and a hand name for some cells: the colourways that there are, what is painted, and what nobody knows. */
export function readNamed(
  cells: readonly ColourCell[],
  fill: Fill | undefined,
  painted: Readonly<Record<string, string>> | undefined,
  colourways: readonly Colourway[],
  held?: Readonly<Record<string, string>>,
): { readonly named: readonly string[]; readonly byHand: Map<number, string>; readonly findings: Finding[] } {
  const findings: Finding[] = []
  const known = new Set(colourways.map((colourway) => colourway.id))
  const named = (fill?.colourways ?? [...known]).filter((id, index) => {
    if (!known.has(id))
      findings.push(finding('file/unknown-colourway', `layout.cells.fill.colourways[${index}]`, { id }))
    return known.has(id)
  })
  for (const id of Object.keys(fill?.most ?? {}))
    if (!known.has(id)) findings.push(finding('file/unknown-colourway', 'layout.cells.fill.most', { id }))
  const byHand = new Map<number, string>()
  // Of ten thousand motifs most are painted by nobody.
  const isTouched = Object.keys(painted ?? {}).length + Object.keys(held ?? {}).length > 0
  const indexOf = new Map(isTouched ? cells.map((cell, index) => [cell.id, index]) : [])
  for (const [key, id] of Object.entries(painted ?? {})) {
    const address = tidyAddress(key)
    // Fillers and half motifs are no cells of the pattern: they are painted where they are placed.
    if (isAddition(address)) continue
    const cell = indexOf.get(address)
    const where = `layout.cells.painted["${key}"]`
    if (cell === undefined) {
      if (!isLeftOut(address, cells)) findings.push(finding('file/unknown-cell', where, { id: key }))
    } else if (!known.has(id)) findings.push(finding('file/unknown-colourway', where, { id }))
    else byHand.set(cell, id)
  }
  for (const [key, id] of Object.entries(held ?? {})) {
    const cell = indexOf.get(tidyAddress(key))
    if (cell !== undefined && known.has(id)) byHand.set(cell, id)
  }
  return { named, byHand, findings }
}

/**
 * The colourway of every cell: the fill's pattern, and what was painted by hand over it. `colourways` are
 * those of the project; a fill that names none takes them all, one without a pattern repeats its own. Painted cells
 * count in "as even as possible", in limits and as neighbours, and are never changed; so are those `held`, made motifs
 * in the colourway that they were made in, whatever is painted over them. `stash` is what there is of yarns with a
 * limit; the last is what a fill by the stash takes shares from, and the number of the motif. The same seed gives the same answer.
 */
export function assignColourways(
  cells: readonly ColourCell[],
  fill: Fill | undefined,
  painted: Readonly<Record<string, string>> | undefined,
  colourways: readonly Colourway[],
  kept?: Kept,
  arrangement: Arrangement = 'straight-rows',
  stash: readonly YarnForMotifs[] = NO_STASH,
  held?: Readonly<Record<string, string>>,
  { yarns, kind }: { readonly yarns: readonly YarnForMotifs[]; readonly kind: number } = {
    yarns: stash,
    kind: 0,
  },
): ColourAssignment {
  const { named, byHand, findings } = readNamed(cells, fill, painted, colourways, held)
  const assigned = cells.map((_, index) => byHand.get(index) ?? '')
  const pattern = fill?.pattern ?? (fill?.colourways ? 'repeat' : undefined)
  if (!fill || !pattern || cells.length === 0) return { colourways: assigned, findings }
  if (named.length === 0) {
    findings.push(finding('colours/none-chosen', 'layout.cells.fill'))
    return { colourways: assigned, findings }
  }

  const chosen = pattern === 'one' ? named.slice(0, 1) : [...new Set(named)]
  const names = namesOf(chosen, colourways)
  const limits = limitsOf(fill, chosen, byHand.values(), stash)
  const groups = mirrored(cells, fill.symmetry)
  const task = { cells, fill: { ...fill, pattern }, byHand, groups, limits }
  const put = (cell: number, colour: number | undefined): void => {
    if (!byHand.has(cell)) assigned[cell] = chosen[colour ?? 0] ?? ''
  }
  const told = (colours: ArrayLike<number>, proof: Proof): Finding[] => {
    if (!limits) return []
    const sizes = cells.map((_, cell) => (byHand.has(cell) ? 0 : 1))
    return limitFindings(fill, limits, tallied(chosen.length, colours, sizes), names, chosen, proof)
  }
  if (pattern === 'scatter' || pattern === 'no-two-alike') {
    const isPainted = isPaintedBeside(painted, held)
    const found = byChance({ ...task, chosen, names, kept, arrangement, isPainted })
    found.colours.forEach((colour, cell) => put(cell, colour))
    findings.push(...found.findings, ...told(found.colours, found))
    return { colourways: assigned, findings, chance: { chosen, under: found.under } }
  }
  const sequence = named.map((id) => chosen.indexOf(id))
  const known = isByStash(fill) ? motifsOf(chosen, yarns, kind) : null
  const shares = known ?? chosen.map(() => 1)
  const paintedOf = tallied(
    chosen.length,
    [...byHand.values()].map((id) => chosen.indexOf(id)),
    [...byHand].map(() => 1),
  )
  if (isByStash(fill) && !known && yarns !== NO_STASH)
    findings.push(finding('colours/stash-unknown', 'layout.cells.fill'))
  const {
    colours,
    natural,
    isLeast,
    broken = 0,
  } = byPattern({ ...task, sequence, shares, painted: paintedOf })
  const ofCell = new Int16Array(cells.length)
  const leaving: number[] = []
  groups.forEach((group, at) => {
    for (const cell of group) {
      ofCell[cell] = colours[at] ?? 0
      if (natural && !byHand.has(cell) && natural[at] !== colours[at]) leaving.push(cell)
    }
  })
  ofCell.forEach((colour, cell) => put(cell, colour))
  if (broken > 0)
    findings.push(
      finding('colours/rows-broken', 'layout.cells.fill', {
        rows: formatNumber(broken),
        Room: orChoose([roomWords(fill, limits?.yarns.every(({ noMore }) => noMore) ?? false)]),
      }),
    )
  findings.push(...told(ofCell, { isLeast }))
  if (!limits || !natural) return { colourways: assigned, findings }
  const sizes = cells.map((_, cell) => (byHand.has(cell) ? 0 : 1))
  const alone = new Int16Array(cells.length)
  groups.forEach((group, at) => group.forEach((cell) => (alone[cell] = natural[at] ?? 0)))
  const keeps = keepsOf(limits, chosen, [alone, ofCell], sizes)
  return { colourways: assigned, findings, leaving: leaving.sort((a, b) => a - b), keeps }
}

/** Whether a place is painted whose motif is not made. */
function isPaintedBeside(
  painted: Readonly<Record<string, string>> = {},
  held: Readonly<Record<string, string>> = {},
): boolean {
  const made = new Set(Object.keys(held).map(tidyAddress))
  return Object.keys(painted).some((key) => !isAddition(tidyAddress(key)) && !made.has(tidyAddress(key)))
}

const NO_STASH: readonly YarnForMotifs[] = []

/** The limits that the first of two colourings of free cells passes and the other keeps. */
function keepsOf(
  limits: Limits,
  chosen: readonly string[],
  colourings: readonly [Int16Array, Int16Array],
  sizes: readonly number[],
): Keeps {
  const [alone, now] = colourings.map((colours) => excessOf(limits, tallied(chosen.length, colours, sizes)))
  return {
    colourways: chosen.filter((_, at) => alone!.cells[at]! > 0 && now!.cells[at] === 0),
    yarns: limits.yarns.flatMap(({ id }, at) => (alone!.grams[at]! > 0 && now!.grams[at] === 0 ? [id] : [])),
  }
}
