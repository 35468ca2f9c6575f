/**
 * Patterns that take colours in turn, within limits: the pattern stays, and as few motifs leave it as the limits need.
 */
import { countsWithin, excessOf, isWithinLimits } from './counts'
import { changeFew, rowAfterRow, spreadOver } from './few-changes'
import type { Standing } from './few-changes'
import { countTask, tallied } from './limits'
import type { Limits, Proof } from './limits'

/** Groups of cells with the colours that they take. */
export interface Filled extends Proof {
  /** Colour of each group. */
  readonly colours: Int16Array
  /** Colour of each group by the pattern alone, where limits make others of some. */
  readonly natural?: Int16Array
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** Runs a sequence of colours through groups of `sizes` free cells, in their order; `places` are where each stands. */
export function repeatWithin(
  sizes: readonly number[],
  places: readonly Standing[],
  sequence: readonly number[],
  limits: Limits | null,
): Filled {
  const natural = Int16Array.from(sizes, (_, group) => sequence[group % sequence.length] ?? 0)
  if (!limits) return { colours: natural, isLeast: true }
  const wish = tallied(limits.most.length, natural, sizes)
  if (isWithinLimits(limits, wish)) return { colours: natural, isLeast: true }
  const task = countTask(limits, sizes, wish)
  const { groups, cells, isLeast } = countsWithin(task)
  // A pattern is not changed for nothing.
  if (!isLess(excessOf(limits, cells), excessOf(limits, wish))) return { colours: natural, isLeast }
  return { colours: changeFew(natural, sizes, task, groups, spreadOver(places)), isLeast, natural }
}

/**
 * Runs a sequence of colours through rows, each row in one; `rows` are the groups of each. Where whole rows go beyond
 * the limits and single cells do not, or less far, rows are broken; answers how many.
 */
export function rowsWithin(
  sizes: readonly number[],
  places: readonly Standing[],
  rows: readonly (readonly number[])[],
  sequence: readonly number[],
  limits: Limits | null,
): Filled & { readonly broken: number } {
  const rowSizes = rows.map((groups) => sum(groups.map((group) => sizes[group] ?? 0)))
  const spread = (colours: ArrayLike<number>): Int16Array => {
    const of = new Int16Array(sizes.length)
    rows.forEach((groups, row) => {
      for (const group of groups) of[group] = colours[row] ?? 0
    })
    return of
  }
  const rowPlaces = rows.map((_, row) => ({ row: row + 1, column: 0 }))
  const whole = repeatWithin(rowSizes, rowPlaces, sequence, limits)
  const colours = spread(whole.colours)
  const done = { colours, isLeast: whole.isLeast, broken: 0 }
  if (!limits) return done
  const natural = spread(Int16Array.from(rows, (_, row) => sequence[row % sequence.length] ?? 0))
  const cells = tallied(limits.most.length, colours, sizes)
  if (isWithinLimits(limits, cells)) return whole.natural ? { ...done, natural } : done
  const task = countTask(limits, sizes, tallied(limits.most.length, natural, sizes))
  const single = countsWithin(task)
  if (!isLess(excessOf(limits, single.cells), excessOf(limits, cells)))
    return { ...done, isLeast: single.isLeast, ...(whole.natural && { natural }) }
  const few = changeFew(natural, sizes, task, single.groups, rowAfterRow(places))
  const isBroken = (groups: readonly number[]): boolean =>
    new Set(groups.flatMap((group) => ((sizes[group] ?? 0) > 0 ? few[group]! : []))).size > 1
  return { colours: few, isLeast: single.isLeast, natural, broken: rows.filter(isBroken).length }
}

/** Whether one excess is smaller than another: cells first, then grams. */
function isLess(one: ReturnType<typeof excessOf>, other: ReturnType<typeof excessOf>): boolean {
  const cells = sum(one.cells) - sum(other.cells)
  return cells < 0 || (cells === 0 && sum(one.grams) < sum(other.grams) - 1e-6)
}

/** Bands of a shade: `bands` are the colours from one end to the other, `along` where each group lies, 0 to 1. */
export function shadeWithin(
  sizes: readonly number[],
  mixed: readonly number[],
  bands: readonly number[],
  limits: Limits | null,
): Filled {
  const natural = mixed.map((value) => Math.min(bands.length - 1, Math.max(0, Math.floor(value))))
  const plain = Int16Array.from(natural, (band) => bands[band] ?? 0)
  const colours = Int16Array.from(plain)
  if (!limits) return { colours, isLeast: true }
  const wish = tallied(limits.most.length, colours, sizes)
  if (isWithinLimits(limits, wish)) return { colours, isLeast: true }
  const task = countTask(limits, sizes, wish)
  const { groups, cells, isLeast } = countsWithin(task)
  if (!isLess(excessOf(limits, cells), excessOf(limits, wish))) return { colours, isLeast }
  // A colour of several bands has as much of each as it would have, and what is over of the last.
  const left = new Map(task.groups.map(({ size }, at) => [size, [...(groups[at] ?? [])]]))
  const many = new Map<number, number[]>()
  for (const { size } of task.groups) {
    const had = bands.map(
      (_, band) => natural.filter((each, at) => each === band && sizes[at] === size).length,
    )
    const row = left.get(size) ?? []
    many.set(
      size,
      bands.map((colour, band) => {
        const isLast = bands.lastIndexOf(colour) === band
        const taken = Math.min(row[colour] ?? 0, isLast ? Infinity : (had[band] ?? 0))
        row[colour] = (row[colour] ?? 0) - taken
        return taken
      }),
    )
  }
  const order = [...mixed.keys()].sort((a, b) => (mixed[a] ?? 0) - (mixed[b] ?? 0) || a - b)
  for (const group of order) {
    const row = many.get(sizes[group] ?? 0)
    const band = row?.findIndex((count) => count > 0) ?? -1
    if (!row || band < 0) continue
    row[band] = (row[band] ?? 0) - 1
    colours[group] = bands[band] ?? 0
  }
  return { colours, isLeast, natural: plain }
}
