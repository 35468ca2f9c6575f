/** A map to be coloured: who stands beside whom, how many colours there are, and what is already fixed. */
export interface ColourTask {
  readonly neighbours: readonly (readonly number[])[]
  readonly colours: number
  /**
   * Colour of each cell that may not change, −1 where the cell is free. Colours from `colours` on stand there
   * but are not to be given to others.
   */
  readonly fixed: Int16Array
  /** How many motifs each cell stands for; one where it is left out. */
  readonly sizes?: readonly number[]
}

/** How many motifs a cell of a task stands for. */
export const sizeOf = ({ sizes }: Pick<ColourTask, 'sizes'>, cell: number): number => sizes?.[cell] ?? 1

/** A free cell. */
export const FREE = -1

/**
 * The free cells in groups that cannot influence each other: joined by neighbours, with fixed cells as walls.
 */
export function freeGroups({ neighbours, fixed }: ColourTask): number[][] {
  const seen = new Uint8Array(fixed.length)
  const groups: number[][] = []
  for (let start = 0; start < fixed.length; start++) {
    if (seen[start] || fixed[start] !== FREE) continue
    const group = [start]
    seen[start] = 1
    for (let index = 0; index < group.length; index++) {
      for (const next of neighbours[group[index] ?? 0] ?? []) {
        if (seen[next] || fixed[next] !== FREE) continue
        seen[next] = 1
        group.push(next)
      }
    }
    groups.push(group)
  }
  return groups
}

/** How often each of the first `colours` colours stands in a colouring, each cell as often as `sizes` say. */
export function countColours(colouring: Int16Array, colours: number, sizes?: readonly number[]): number[] {
  const counts = new Array<number>(colours).fill(0)
  colouring.forEach((colour, cell) => {
    if (colour !== FREE && colour < colours) counts[colour] = (counts[colour] ?? 0) + (sizes?.[cell] ?? 1)
  })
  return counts
}

/** Pairs of neighbours with the same colour, each once. */
export function alikePairs(neighbours: ColourTask['neighbours'], colouring: Int16Array): [number, number][] {
  const pairs: [number, number][] = []
  neighbours.forEach((beside, cell) => {
    for (const other of beside) {
      if (cell < other && colouring[cell] !== FREE && colouring[cell] === colouring[other])
        pairs.push([cell, other])
    }
  })
  return pairs
}

/** The most even counts that are possible when each colour already stands `least` times and `free` are to come. */
export function evenCounts(least: readonly number[], free: number): number[] {
  const counts = [...least]
  for (let left = free; left > 0;) {
    const low = Math.min(...counts)
    const lowest = counts.flatMap((value, index) => (value === low ? [index] : []))
    const above = counts.filter((value) => value > low)
    const next = above.length > 0 ? Math.min(...above) : Infinity
    const lift = Math.min(next - low, Math.floor(left / lowest.length))
    if (lift > 0) {
      for (const index of lowest) counts[index] = low + lift
      left -= lift * lowest.length
    } else {
      for (const index of lowest.slice(0, left)) counts[index] = low + 1
      left = 0
    }
  }
  return counts
}

/** Cells that a search for what determines all others begins at. */
const STARTS = 12

/**
 * Whether a colouring of which no two neighbours are alike is the only one but for which colour is which: from a few
 * cells that all touch each other every other follows, as its neighbours leave it one colour.
 */
export function isAlone({ neighbours, colours }: ColourTask, colouring: Int16Array): boolean {
  const cells = colouring.length
  if (colours < 2 || cells < colours) return false
  for (let at = 0; at < STARTS; at++) {
    const start = Math.floor((at * cells) / STARTS)
    const clique = [start]
    for (const next of neighbours[start] ?? [])
      if (clique.length < colours - 1 && clique.every((cell) => neighbours[cell]!.includes(next)))
        clique.push(next)
    if (clique.length < colours - 1) continue
    const known = new Uint8Array(cells)
    const queue = [...clique]
    for (const cell of queue) known[cell] = 1
    for (let i = 0; i < queue.length; i++)
      for (const next of neighbours[queue[i]!] ?? []) {
        if (known[next]) continue
        const seen = new Set<number>()
        for (const cell of neighbours[next]!)
          if (known[cell] && colouring[cell]! < colours) seen.add(colouring[cell]!)
        if (seen.size < colours - 1) continue
        known[next] = 1
        queue.push(next)
      }
    if (queue.length === cells) return true
  }
  return false
}
