/** Where each colourway goes: the patterns of a fill, with what was painted by hand on top. */
import { counted } from '../figures/words'
import type { Finding } from '../../shared-types/finding'
import type { Arrangement, BlanketLayout, Colourway } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { isAddition } from '../layout/addresses'
import { formatNumber } from '../units/format'
import { seededRandom } from '../units/random'
import type { Random } from '../units/random'
import { COLOUR_CONSTANTS } from './constants'
import { FREE, alikePairs, countColours, evenCounts } from './graph'
import type { ColourTask } from './graph'
import { isOfFill, readKept } from './kept'
import type { Kept } from './kept'
import { colourApart, coloursThatDo } from './no-two-alike'
import type { Colouring } from './no-two-alike'
import { scatter } from './scatter'
import { colourFrom } from './stay'
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

export interface ColourAssignment {
  /** Colourway id of each cell, '' where none is given. */
  readonly colourways: readonly string[]
  /** Of a fill by chance: the colourways that it chooses from, and what painted cells had before. */
  readonly chance?: { readonly chosen: readonly string[]; readonly under: ReadonlyMap<number, string> }
  readonly findings: readonly Finding[]
}

/** Cells in reading order: row by row, left to right. */
const readingOrder = (cells: readonly ColourCell[]): number[] =>
  cells
    .map((_, index) => index)
    .sort((a, b) => {
      const [first, second] = [cells[a], cells[b]]
      return first && second ? first.row - second.row || first.column - second.column : 0
    })

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

function shade(
  cells: readonly ColourCell[],
  bands: number,
  direction: ShadeDirection,
  random: Random,
): number[] {
  return along(cells, direction).map((part) => {
    const mixed = part * bands + (random.next() - 0.5) * COLOUR_CONSTANTS.shadeMixing
    return Math.min(bands - 1, Math.max(0, Math.floor(mixed)))
  })
}

const pointAt = (cells: readonly ColourCell[], pairs: readonly (readonly [number, number])[]) => ({
  cells: [...new Set(pairs.flat())]
    .slice(0, COLOUR_CONSTANTS.cellsInFinding)
    .map((index) => cells[index]?.id ?? ''),
})

const namesOf = (ids: readonly string[], colourways: readonly Colourway[]): string[] =>
  ids.map((id) => {
    const found = colourways.find((colourway) => colourway.id === id)
    return found?.code ?? found?.name ?? id
  })

/** What could not be had of colours apart: alike by hand, impossible, not found, uneven. */
function apartFindings(
  cells: readonly ColourCell[],
  task: ColourTask,
  { colours: colouring, outcome }: Colouring,
  ids: readonly string[],
  colourways: readonly Colourway[],
  random: Random,
): Finding[] {
  const findings: Finding[] = []
  const where = 'layout.cells'
  const byHand = alikePairs(task.neighbours, task.fixed)
  if (byHand.length > 0) {
    const values = { pairs: formatNumber(byHand.length) }
    findings.push(finding('colours/painted-alike', where, values, pointAt(cells, byHand)))
  }
  const values = { colourways: ids.length }
  if (outcome === 'perfect') {
    const counts = countColours(colouring, task.colours)
    const painted = countColours(task.fixed, task.colours)
    const free = task.fixed.filter((colour) => colour === FREE).length
    const even = evenCounts(painted, free)
    const gap = Math.max(...counts) - Math.min(...counts)
    if (free > 0 && gap > Math.max(...even) - Math.min(...even)) {
      const told = namesOf(ids, colourways).map(
        (name, index) => `${name} ${formatNumber(counts[index] ?? 0)}`,
      )
      findings.push(finding('colours/uneven', where, { counts: told.join(', ') }))
    }
    return findings
  }
  const handPairs = new Set(byHand.map((pair) => pair.join()))
  const pairs = alikePairs(task.neighbours, colouring).filter((pair) => !handPairs.has(pair.join()))
  const point = pointAt(cells, pairs)
  if (outcome === 'impossible') {
    const enough = coloursThatDo(task, task.colours + 3, random)
    const advice = enough === null ? 'Choose more colourways' : `Choose ${counted(enough, 'colourway')}`
    const said = { ...values, pairs: formatNumber(pairs.length), advice }
    findings.push(finding('colours/impossible', where, said, point))
  } else if (pairs.length > 0) {
    findings.push(
      finding('colours/not-found', where, { ...values, pairs: formatNumber(pairs.length) }, point),
    )
  }
  return findings
}

/** What a fill by chance is coloured from: the cells, what was painted by hand, in order, and what stood. */
interface Chance {
  readonly cells: readonly ColourCell[]
  readonly fill: Fill
  readonly chosen: readonly string[]
  readonly byHand: ReadonlyMap<number, string>
  readonly kept: Kept | undefined
  readonly arrangement: Arrangement
}

/**
 * Colours by chance, scattered or no two alike. What stood stays as far as it can; where the file remembers
 * nothing, what the seed alone gives counts as standing, and the painted cells are worked in one by one.
 */
function byChance({ cells, fill, chosen, byHand, kept, arrangement }: Chance, random: () => Random) {
  // Colours that stand by hand alone cannot be chosen for others, but are still neighbours: they come last.
  const others = [...new Set(byHand.values())].filter((id) => !chosen.includes(id))
  const code = new Map([...chosen, ...others].map((id, index) => [id, index]))
  const codeAt = (cell: number): number => code.get(byHand.get(cell) ?? '') ?? FREE
  const fixed = Int16Array.from(cells, (_, cell) => codeAt(cell))
  const differs = fill.pattern === 'no-two-alike'
  const neighbours = cells.map((cell) => cell.neighbours)
  const task: ColourTask = { neighbours, colours: chosen.length, fixed }
  const under = new Map<number, string>()
  const afresh = (): Colouring => {
    const bare: ColourTask = { ...task, fixed: new Int16Array(cells.length).fill(FREE) }
    if (differs) return colourApart(bare, random())
    return { colours: scatter(bare, random()), outcome: 'perfect', troubled: [] }
  }
  if (!kept || !isOfFill(kept, fill, arrangement)) {
    const bare = afresh()
    for (const cell of byHand.keys()) under.set(cell, chosen[bare.colours[cell] ?? 0] ?? '')
    if (byHand.size === 0) return { task, solved: bare, under }
    const start = { standing: bare.colours, wiped: new Map<number, number>(), isOtherChoice: false }
    return { task, solved: colourFrom(task, start, [...byHand.keys()], differs, random()), under }
  }
  const { standing, wasUnder } = readKept(kept, cells, arrangement, chosen, codeAt)
  const wiped = new Map<number, number>()
  for (const [cell, id] of wasUnder) if (!byHand.has(cell) && code.has(id)) wiped.set(cell, code.get(id)!)
  for (const cell of byHand.keys()) {
    const before = wasUnder.get(cell) ?? chosen[standing[cell] ?? FREE]
    if (before !== undefined) under.set(cell, before)
  }
  const were = new Set(kept.colourways)
  const isOtherChoice = were.size !== chosen.length || chosen.some((id) => !were.has(id))
  const start = { standing, wiped, isOtherChoice }
  return { task, solved: colourFrom(task, start, [...byHand.keys()], differs, random()), under }
}

/**
 * The colourway of every cell: the fill's pattern, and what was painted by hand over it. `colourways` are
 * those of the project; a fill that names none takes them all, one without a pattern repeats its own. Painted cells count in "as even as possible"
 * and as neighbours, and are never changed. The same seed gives the same answer.
 */
export function assignColourways(
  cells: readonly ColourCell[],
  fill: Fill | undefined,
  painted: Readonly<Record<string, string>> | undefined,
  colourways: readonly Colourway[],
  kept?: Kept,
  arrangement: Arrangement = 'straight-rows',
): ColourAssignment {
  const findings: Finding[] = []
  const known = new Set(colourways.map((colourway) => colourway.id))
  const sequence = (fill?.colourways ?? [...known]).filter((id, index) => {
    if (!known.has(id))
      findings.push(finding('file/unknown-colourway', `layout.cells.fill.colourways[${index}]`, { id }))
    return known.has(id)
  })
  const byHand = new Map<number, string>()
  const indexOf = new Map(cells.map((cell, index) => [cell.id, index]))
  for (const [key, id] of Object.entries(painted ?? {})) {
    const address = key.replace(/\s/g, '')
    // Fillers and half motifs are no cells of the pattern: they are painted where they are placed.
    if (isAddition(address)) continue
    const cell = indexOf.get(address)
    const where = `layout.cells.painted["${key}"]`
    if (cell === undefined) findings.push(finding('file/unknown-cell', where, { id: key }))
    else if (!known.has(id)) findings.push(finding('file/unknown-colourway', where, { id }))
    else byHand.set(cell, id)
  }
  const assigned = cells.map((_, index) => byHand.get(index) ?? '')
  const pattern = fill?.pattern ?? (fill?.colourways ? 'repeat' : undefined)
  if (!fill || !pattern || cells.length === 0) return { colourways: assigned, findings }
  if (sequence.length === 0) {
    findings.push(finding('colours/none-chosen', 'layout.cells.fill'))
    return { colourways: assigned, findings }
  }

  const put = (cell: number, id: string | undefined): void => {
    if (!byHand.has(cell)) assigned[cell] = id ?? ''
  }
  if (pattern === 'scatter' || pattern === 'no-two-alike') {
    const chosen = [...new Set(sequence)]
    const seeded = (): Random => seededRandom(fill.seed ?? DEFAULTS.fill.seed)
    const chance = { cells, fill: { ...fill, pattern }, chosen, byHand, kept, arrangement }
    const { task, solved, under } = byChance(chance, seeded)
    if (pattern === 'no-two-alike')
      findings.push(...apartFindings(cells, task, solved, chosen, colourways, seeded()))
    solved.colours.forEach((colour, cell) => put(cell, chosen[colour]))
    return { colourways: assigned, findings, chance: { chosen, under } }
  }
  if (pattern === 'one') cells.forEach((_, cell) => put(cell, sequence[0]))
  else if (pattern === 'rows') {
    cells.forEach(({ row }, cell) => put(cell, sequence[(row - 1) % sequence.length]))
  } else if (pattern === 'repeat') {
    readingOrder(cells).forEach((cell, index) => put(cell, sequence[index % sequence.length]))
  } else {
    shade(
      cells,
      sequence.length,
      fill.direction ?? DEFAULTS.fill.direction,
      seededRandom(fill.seed ?? DEFAULTS.fill.seed),
    ).forEach((band, cell) => put(cell, sequence[band]))
  }
  return { colourways: assigned, findings }
}
