/** The colourways of cells that do not all hold the same motif: each is coloured with those of its own. */
import type { Finding } from '../../shared-types/finding'
import type { YarnForMotifs } from '../../shared-types/plan'
import type { Arrangement, Colourway } from '../../shared-types/project'
import { tidyAddress } from '../layout/addresses'
import { assignColourways, namesOf } from './assign'
import type { ColourAssignment, ColourCell, Fill } from './assign'
import type { Kept } from './kept'
import { limitFindings } from './limits'
import { limitsTogether } from './limits-together'
import type { Part } from './limits-together'

/** A cell that holds the motif with this number. */
export interface KindCell extends ColourCell {
  readonly kind: number
  /** How many every row of the arrangement has, whatever is left out. */
  readonly full?: readonly number[] | undefined
}

/** The cells of one motif: their places among all, and what they are coloured with. */
interface Own extends Part {
  readonly at: readonly number[]
  readonly fill: Fill | undefined
  readonly painted: Readonly<Record<string, string>>
  readonly kept: Kept | undefined
}

/** As `assignColourways`, for cells of the motifs with these ids. A colourway that names no motif suits all. */
export function assignParts(
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
  // What is painted where nothing is, and colourways that nobody knows, are told once, of all cells.
  const { most } = fill ?? {}
  const named = fill && { pattern: 'one' as const, colourways: fill.colourways, ...(most && { most }) }
  const known = assignColourways(cells, named, painted, colourways)
  const findings: Finding[] = known.findings.filter(({ code }) => code.startsWith('file/'))
  const parts = motifs.flatMap((motif, kind) => {
    const part = partOf(cells, kind, motif, { fill, painted, colourways, kept, held })
    return part.cells.length > 0 ? [part] : []
  })
  const colour = (part: Own, limits: Pick<Fill, 'most'>, yarns: readonly YarnForMotifs[]) => {
    const own = part.fill && { ...part.fill, ...limits }
    return assignColourways(
      ...([part.cells, own, part.painted, colourways, part.kept, arrangement, yarns, held] as const),
    )
  }
  // Limits are of all motifs together: each may take what the others leave.
  const together = limitsTogether(fill, parts, stash ?? [])
  let made = parts.map((part) => colour(part, NO_LIMITS, []))
  const plain = made.map(({ colourways }) => colourways)
  if (together && fill && !together.isKept(plain)) {
    const shared = together.share(plain)
    const filled = [...plain]
    made = parts.map((part, index) => {
      const { most, yarns } = shared.leftFor(index, filled.slice(0, index))
      const one = colour(part, { most }, yarns)
      filled[index] = one.colourways
      return one
    })
    const { limits, ids } = together
    const cellsOfEach = together.count(filled)
    findings.push(
      ...limitFindings(
        ...([fill, limits, cellsOfEach, namesOf(ids, colourways), ids] as const),
        shared.proofOf(cellsOfEach),
      ),
    )
  }
  const assigned = cells.map(() => '')
  const under = new Map<number, string>()
  const leaving: number[] = []
  parts.forEach(({ at }, index) => {
    const { colourways, chance, findings: own, leaving: left = [] } = made[index]!
    at.forEach((cell, place) => (assigned[cell] = colourways[place] ?? ''))
    for (const [place, id] of chance?.under ?? []) under.set(at[place]!, id)
    for (const place of left) leaving.push(at[place]!)
    findings.push(...own.filter(({ code }) => !/^(?:file|colours\/limits-)/.test(code)))
  })
  const isLimited = made.some(({ leaving }) => leaving)
  const keeps = {
    colourways: [...new Set(made.flatMap(({ keeps }) => keeps?.colourways ?? []))],
    yarns: [...new Set(made.flatMap(({ keeps }) => keeps?.yarns ?? []))],
  }
  const told = { findings, ...(isLimited && { leaving: leaving.sort((a, b) => a - b), keeps }) }
  if (!made.some(({ chance }) => chance)) return { colourways: assigned, ...told }
  const all = new Set(colourways.map(({ id }) => id))
  const chosen = [...new Set(fill?.colourways ?? all)].filter((id) => all.has(id))
  return { colourways: assigned, ...told, chance: { chosen, under } }
}

/** Of a cell that has another motif. */
const ELSEWHERE = -1

const NO_LIMITS: Pick<Fill, 'most'> = { most: {} }

function partOf(
  cells: readonly KindCell[],
  kind: number,
  motif: string,
  of: {
    readonly fill: Fill | undefined
    readonly painted: Readonly<Record<string, string>> | undefined
    readonly colourways: readonly Colourway[]
    readonly kept: Kept | undefined
    readonly held: Readonly<Record<string, string>> | undefined
  },
): Own {
  const { fill, painted = {}, colourways, kept, held = {} } = of
  const own = new Map(colourways.map((way) => [way.id, way.motif]))
  const suits = (id: string): boolean => own.get(id) === undefined || own.get(id) === motif
  const at = cells.flatMap((cell, index) => (cell.kind === kind ? [index] : []))
  // A list by number, not a map: of ten thousand motifs every neighbour is asked for.
  const place = new Int32Array(cells.length).fill(ELSEWHERE)
  at.forEach((cell, index) => (place[cell] = index))
  const part = at.map((index) => {
    const cell = cells[index]!
    const neighbours: number[] = []
    for (const other of cell.neighbours) {
      const own = place[other]!
      if (own !== ELSEWHERE) neighbours.push(own)
    }
    return { ...cell, neighbours }
  })
  const ids = new Set(part.map(({ id }) => id))
  const among = (named: Readonly<Record<string, string>>): [string, string][] =>
    Object.entries(named).filter(([key, id]) => ids.has(tidyAddress(key)) && own.has(id))
  const tidied = [...among(painted), ...among(held)].map(([key, id]) => [tidyAddress(key), id] as const)
  const byHand = new Map(tidied)
  const all = [...own.keys()].filter(suits)
  const named = fill?.colourways?.filter(suits) ?? all
  // A fill that names none of a motif's colourways was made before that motif came: it takes all that it has.
  const chosen = named.length > 0 ? named : all
  return {
    ...{ at, kind, cells: part, byHand },
    chosen: [...new Set(chosen)].filter((id) => own.has(id)),
    fill: fill && { ...fill, colourways: chosen },
    painted: Object.fromEntries(among(painted)),
    // Colourways of other motifs keep their numbers; nothing here stood in them.
    kept: kept && { ...kept, colourways: (kept.colourways ?? []).map((id) => (suits(id) ? id : '')) },
  }
}
