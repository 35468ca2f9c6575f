/** The colourways of cells that do not all hold the same motif: each is coloured with those of its own. */
import type { Finding } from '../../shared-types/finding'
import type { YarnForMotifs } from '../../shared-types/plan'
import type { Arrangement, Colourway } from '../../shared-types/project'
import { assignColourways } from './assign'
import type { ColourAssignment, ColourCell, Fill } from './assign'
import type { Kept } from './kept'

/** A cell that holds the motif with this number. */
export interface KindCell extends ColourCell {
  readonly kind: number
  /** How many every row of the arrangement has, whatever is left out. */
  readonly full?: readonly number[] | undefined
}

/** As `assignColourways`, for cells of the motifs with these ids. A colourway that names no motif suits all. */
export function assignByMotif(
  cells: readonly KindCell[],
  fill: Fill | undefined,
  painted: Readonly<Record<string, string>> | undefined,
  colourways: readonly Colourway[],
  kept: Kept | undefined,
  arrangement: Arrangement,
  motifs: readonly string[],
  stash?: readonly YarnForMotifs[],
  held?: Readonly<Record<string, string>>,
): ColourAssignment {
  if (motifs.length === 1)
    return assignColourways(cells, fill, painted, colourways, kept, arrangement, stash, held)
  const suits = (id: string, motif: string): boolean => {
    const own = colourways.find((way) => way.id === id)?.motif
    return own === undefined || own === motif
  }
  const chosen = fill?.colourways ?? colourways.map(({ id }) => id)
  const assigned = cells.map(() => '')
  const findings: Finding[] = []
  // What is painted where nothing is, and colourways that nobody knows, are told once, of all cells.
  const told = assignColourways(cells, fill && { colourways: fill.colourways }, painted, colourways)
  findings.push(...told.findings.filter(({ code }) => code.startsWith('file/')))
  motifs.forEach((motif, kind) => {
    const own = cells.flatMap((cell, index) => (cell.kind === kind ? [index] : []))
    if (own.length === 0) return
    const place = new Map(own.map((cell, index) => [cell, index]))
    const part = own.map((index) => {
      const cell = cells[index]!
      return { ...cell, neighbours: cell.neighbours.flatMap((other) => place.get(other) ?? []) }
    })
    const ids = new Set(part.map(({ id }) => id))
    const byHand = Object.entries(painted ?? {}).filter(([key]) => ids.has(key.replace(/\s/g, '')))
    const suiting = chosen.filter((id) => suits(id, motif))
    const ownFill = fill && { ...fill, colourways: suiting }
    const made = assignColourways(
      part,
      ownFill,
      Object.fromEntries(byHand),
      colourways,
      undefined,
      arrangement,
      // What motifs take of a limited yarn is known of the first motif alone.
      kind === 0 ? stash : undefined,
      held,
    )
    own.forEach((cell, index) => (assigned[cell] = made.colourways[index] ?? ''))
    findings.push(...made.findings.filter(({ code }) => !code.startsWith('file/')))
  })
  return { colourways: assigned, findings }
}
