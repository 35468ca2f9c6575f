/** Colours by chance, scattered or no two alike: what stands stays as far as it can, and limits are kept. */
import type { Finding } from '../../shared-types/finding'
import type { Arrangement } from '../../shared-types/project'
import { counted } from '../figures/words'
import { finding, spelledValue } from '../findings/finding'
import { DEFAULTS } from '../settled'
import { formatNumber } from '../units/format'
import { seededRandom } from '../units/random'
import type { Random } from '../units/random'
import { apartWithin } from './apart-within'
import type { ColourCell, Fill } from './assign'
import { comeBackWithin } from './come-back'
import { COLOUR_CONSTANTS } from './constants'
import { countsWithin, isWithinLimits } from './counts'
import { FREE, alikePairs, countColours, isAlone } from './graph'
import type { ColourTask } from './graph'
import type { Filled } from './in-turn'
import { isOfFill, readKept } from './kept'
import type { Kept } from './kept'
import { NO_GRAMS, weightOf } from './least-beyond'
import { countTask, isAsEvenAsCanBe, roomFor } from './limits'
import type { Limits, Proof } from './limits'
import { colourApart, coloursThatDo } from './no-two-alike'
import type { Colouring } from './no-two-alike'
import { scatter } from './scatter'
import { colourFrom } from './stay'

/** What a fill by chance is coloured from: the cells, what was painted by hand, in order, and what stood. */
interface Chance {
  readonly cells: readonly ColourCell[]
  readonly fill: Fill
  readonly chosen: readonly string[]
  /** What the chosen colourways are called. */
  readonly names: readonly string[]
  readonly byHand: ReadonlyMap<number, string>
  /** Something was painted; else what stands by hand is made, and nobody clears that. */
  readonly isPainted: boolean
  /** Cells that mirror each other. */
  readonly groups: readonly (readonly number[])[]
  readonly limits: Limits | null
  readonly kept: Kept | undefined
  readonly arrangement: Arrangement
}

/** Cells drawn together: those that mirror each other, without what was painted, which stands by itself. */
interface Drawn {
  readonly parts: readonly (readonly number[])[]
  readonly partOf: Int32Array
  readonly neighbours: readonly (readonly number[])[]
  readonly sizes: readonly number[] | undefined
  /** Neighbours that mirror each other, and so are alike whatever they are. */
  readonly own: readonly (readonly [number, number])[]
}

function drawTogether({ cells, groups, byHand, fill }: Chance): Drawn {
  const own: [number, number][] = []
  if (!fill.symmetry) {
    const neighbours = cells.map((cell) => cell.neighbours)
    return { parts: groups, partOf: Int32Array.from(cells.keys()), neighbours, sizes: undefined, own }
  }
  const parts = groups.flatMap((group) => {
    const free = group.filter((cell) => !byHand.has(cell))
    const fixed = group.flatMap((cell) => (byHand.has(cell) ? [[cell]] : []))
    return free.length > 0 ? [free, ...fixed] : fixed
  })
  const partOf = new Int32Array(cells.length)
  parts.forEach((part, at) => part.forEach((cell) => (partOf[cell] = at)))
  const neighbours = parts.map((part, at) => {
    const near = new Set<number>()
    for (const cell of part)
      for (const other of cells[cell]?.neighbours ?? []) {
        if (partOf[other] !== at) near.add(partOf[other] ?? 0)
        else if (cell < other) own.push([cell, other])
      }
    return [...near]
  })
  return { parts, partOf, neighbours, sizes: parts.map((part) => part.length), own }
}

/** A filling by chance, with what painted cells had before. */
interface ByChance extends Proof {
  /** Colour of each cell; numbers from the chosen colourways on are of others, painted by hand. */
  readonly colours: Int16Array
  readonly under: ReadonlyMap<number, string>
  readonly findings: readonly Finding[]
}

/**
 * Colours by chance, scattered or no two alike. What stood stays as far as it can; where the file remembers
 * nothing, what the seed alone gives counts as standing, and the painted cells are worked in one by one. Limits are
 * looked at last, so that those that do not bind change nothing.
 */
export function byChance(chance: Chance): ByChance {
  const { cells, fill, limits } = chance
  const drawn = drawTogether(chance)
  const random = (): Random => seededRandom(fill.seed ?? DEFAULTS.fill.seed)
  const { task, solved, under, isFresh } = colourParts(chance, drawn, random)
  const differs = fill.pattern === 'no-two-alike'
  const within = limits && keepWithin(task, solved, limits, differs, isFresh, random())
  const parts: Colouring = within ? { ...solved, colours: within.colours } : solved
  return {
    colours: Int16Array.from(cells, (_, cell) => parts.colours[drawn.partOf[cell] ?? 0] ?? 0),
    under,
    isLeast: within?.isLeast ?? true,
    atLeast: within?.atLeast,
    findings: differs ? apartFindings(chance, drawn, task, parts, random()) : [],
  }
}

/** Colours what is drawn together, as if there were no limits. */
function colourParts(
  { cells, fill, chosen, byHand, kept, arrangement }: Chance,
  { parts, partOf, neighbours, sizes }: Drawn,
  random: () => Random,
) {
  // Colours that stand by hand alone cannot be chosen for others, but are still neighbours: they come last.
  const others = [...new Set(byHand.values())].filter((id) => !chosen.includes(id))
  const code = new Map([...chosen, ...others].map((id, index) => [id, index]))
  const codeAt = (cell: number): number => code.get(byHand.get(cell) ?? '') ?? FREE
  const fixed = Int16Array.from(parts, ([first = 0]) => codeAt(first))
  const differs = fill.pattern === 'no-two-alike'
  const task: ColourTask = { neighbours, colours: chosen.length, fixed, ...(sizes ? { sizes } : {}) }
  const painted = [...byHand.keys()].map((cell) => partOf[cell] ?? 0)
  const under = new Map<number, string>()
  const afresh = (): Colouring => {
    const bare: ColourTask = { ...task, fixed: new Int16Array(parts.length).fill(FREE) }
    if (differs) return colourApart(bare, random())
    return { colours: scatter(bare, random()), outcome: 'perfect', troubled: [] }
  }
  if (!kept || !isOfFill(kept, fill, arrangement)) {
    const bare = afresh()
    for (const cell of byHand.keys()) under.set(cell, chosen[bare.colours[partOf[cell] ?? 0] ?? 0] ?? '')
    if (byHand.size === 0) return { task, solved: bare, under, isFresh: true }
    const start = { standing: bare.colours, wiped: new Map<number, number>(), isOtherChoice: false }
    return { task, solved: colourFrom(task, start, painted, differs, random()), under, isFresh: true }
  }
  const stood = readKept(kept, cells, arrangement, chosen, codeAt)
  const standing = Int16Array.from(parts, ([first = 0]) => stood.standing[first] ?? FREE)
  const wiped = new Map<number, number>()
  for (const [cell, id] of stood.wasUnder)
    if (!byHand.has(cell) && code.has(id)) wiped.set(partOf[cell] ?? 0, code.get(id)!)
  for (const cell of byHand.keys()) {
    const before = stood.wasUnder.get(cell) ?? chosen[stood.standing[cell] ?? FREE]
    if (before !== undefined) under.set(cell, before)
  }
  const were = new Set(kept.colourways?.filter((id) => id !== ''))
  const isOtherChoice = were.size !== chosen.length || chosen.some((id) => !were.has(id))
  const start = { standing, wiped, isOtherChoice }
  return { task, solved: colourFrom(task, start, painted, differs, random()), under, isFresh: false }
}

/** Motifs that the free cells of each colour stand for. */
const freeCounts = (task: ColourTask, colours: Int16Array): number[] =>
  countColours(
    colours.map((colour, part) => (task.fixed[part] === FREE ? colour : FREE)),
    task.colours,
    task.sizes,
  )

/** Brings a filling within its limits: as even as can be where it is new, else with few changes. */
function keepWithin(
  task: ColourTask,
  solved: Colouring,
  limits: Limits,
  differs: boolean,
  isFresh: boolean,
  random: Random,
): Filled {
  const sizes = Array.from(task.fixed, (own, part) => (own === FREE ? (task.sizes?.[part] ?? 1) : 0))
  const now = freeCounts(task, solved.colours)
  if (isWithinLimits(limits, now)) return { colours: solved.colours, isLeast: true }
  const wish = isFresh ? countColours(task.fixed, task.colours).map((many) => -many) : now
  if (differs) {
    const found = apartWithin(task, solved.colours, solved.outcome === 'perfect', limits, wish, random)
    const isBetter = weightOf(limits, freeCounts(task, found.colours)) < weightOf(limits, now) - NO_GRAMS
    // What stood changes for something alone, and no more of it than that takes.
    if (!isFresh && !isBetter) return { ...found, colours: solved.colours }
    if (!isFresh) comeBackWithin(task, solved.colours, found.colours, limits)
    return found
  }
  const counted = countTask(limits, sizes, wish)
  const { groups, isLeast } = countsWithin(counted)
  const room = roomFor(counted, groups)
  const colours = Int16Array.from(solved.colours)
  // By chance, cells keep their colours while there is room for them; the others take what is left, by chance too.
  const order = random.shuffled([...sizes.keys()]).filter((part) => (sizes[part] ?? 0) > 0)
  const moving = order.filter((part) => {
    const [colour, size] = [colours[part] ?? 0, sizes[part] ?? 0]
    const stays = room.fits(colour, size)
    if (stays) room.take(colour, size)
    return !stays
  })
  for (const part of moving) {
    const size = sizes[part] ?? 0
    const to = limits.most.findIndex((_, colour) => room.fits(colour, size))
    colours[part] = Math.max(0, to)
    room.take(Math.max(0, to), size)
  }
  return { colours, isLeast }
}

const pointAt = (cells: readonly ColourCell[], pairs: readonly (readonly [number, number])[]) => ({
  cells: [...new Set(pairs.flat())]
    .slice(0, COLOUR_CONSTANTS.cellsInFinding)
    .map((index) => cells[index]?.id ?? ''),
})

/** What could not be had of colours apart: alike by hand or by mirroring, impossible, not found, uneven. */
function apartFindings(
  { cells, names, limits, isPainted }: Chance,
  { parts, own }: Drawn,
  task: ColourTask,
  { colours: colouring, outcome }: Colouring,
  random: Random,
): Finding[] {
  const findings: Finding[] = []
  const where = 'layout.cells'
  const pointTo = (pairs: readonly (readonly [number, number])[]) =>
    pointAt(
      cells,
      pairs.map(([a, b]) => [parts[a]?.[0] ?? 0, parts[b]?.[0] ?? 0]),
    )
  const byHand = alikePairs(task.neighbours, task.fixed)
  if (byHand.length > 0) {
    const values = { pairs: formatNumber(byHand.length) }
    findings.push(finding('colours/painted-alike', where, values, pointTo(byHand)))
  }
  if (own.length > 0) {
    const values = { pairs: formatNumber(own.length) }
    findings.push(finding('colours/mirror-alike', 'layout.cells.fill.symmetry', values, pointAt(cells, own)))
  }
  const values = { colourways: names.length }
  if (outcome === 'perfect') {
    const counts = countColours(colouring, task.colours, task.sizes)
    const painted = countColours(task.fixed, task.colours)
    // What limits alone keep from coming out even is what they were set for.
    if (!task.sizes && !isAsEvenAsCanBe(counts, painted, limits)) {
      const told = names.map((name, index) => `${name} ${formatNumber(counts[index] ?? 0)}`)
      const values = { counts: told.join(', '), colourways: names.length }
      findings.push(
        finding(isAlone(task, colouring) ? 'colours/uneven-alone' : 'colours/uneven', where, values),
      )
    }
    return findings
  }
  const handPairs = new Set(byHand.map((pair) => pair.join()))
  const pairs = alikePairs(task.neighbours, colouring).filter((pair) => !handPairs.has(pair.join()))
  const point = pointTo(pairs)
  const clear = isPainted ? ', or clear what is painted by hand round these motifs' : ''
  if (outcome === 'impossible') {
    const enough = coloursThatDo(task, task.colours + 3, random)
    const advice = spelledValue(
      enough === null ? 'Choose more colourways' : `Choose ${counted(enough, 'colourway')}`,
    )
    const said = { ...values, pairs: formatNumber(pairs.length), advice, clear }
    findings.push(finding('colours/impossible', where, said, point))
  } else if (pairs.length > 0) {
    const advice = spelledValue(`${isPainted ? '' : 'or '}choose one more colourway`)
    const said = { ...values, pairs: formatNumber(pairs.length), advice, clear }
    findings.push(finding('colours/not-found', where, said, point))
  }
  return findings
}
