/** The colourways of cells that do not all hold the same motif: each is coloured with those of its own. */
import type { Finding } from '../../shared-types/finding'
import type { YarnForMotifs } from '../../shared-types/plan'
import type { Arrangement, Colourway } from '../../shared-types/project'
import { tidyAddress } from '../layout/addresses'
import { assignColourways, namesOf, readNamed } from './assign'
import type { ColourAssignment, ColourCell, Fill } from './assign'
import type { Kept } from './kept'
import { isAsEvenAsCanBe, limitFindings, limitsOf } from './limits'
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
  const findings = readNamed(cells, fill, painted, colourways).findings
  const places = placesByKind(cells, motifs.length)
  const parts = motifs.flatMap((motif, kind) => {
    const at = places.at[kind]!
    return at.length > 0
      ? [partOf(cells, places, kind, motif, { fill, painted, colourways, kept, held })]
      : []
  })
  const colour = (part: Own, limits: Pick<Fill, 'most'>, yarns: readonly YarnForMotifs[]) => {
    const own = part.fill && { ...part.fill, ...limits }
    return assignColourways(
      ...([part.cells, own, part.painted, colourways, part.kept, arrangement, yarns, held] as const),
      { yarns: stash ?? [], kind: part.kind },
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
  const filled = made.map(({ colourways }) => colourways)
  /** Whether a motif's colourways do not come out even because of limits, which a filling of its own knows nothing of. */
  const isByLimits = (index: number): boolean => {
    const { fill: own, byHand, chosen } = parts[index]!
    if (!own || !together) return false
    const { most, yarns } = together.beside(index, filled)
    const limits = limitsOf({ ...own, most }, chosen, byHand.values(), yarns)
    const counts = (ids: Iterable<string>) => {
      const all = [...ids]
      return chosen.map((id) => all.filter((each) => each === id).length)
    }
    return isAsEvenAsCanBe(counts(filled[index]!), counts(byHand.values()), limits)
  }
  const assigned = cells.map(() => '')
  const under = new Map<number, string>()
  const leaving: number[] = []
  parts.forEach(({ at }, index) => {
    const { colourways, chance, findings: own, leaving: left = [] } = made[index]!
    at.forEach((cell, place) => (assigned[cell] = colourways[place] ?? ''))
    for (const [place, id] of chance?.under ?? []) under.set(at[place]!, id)
    for (const place of left) leaving.push(at[place]!)
    const isNew = ({ code }: Finding) => {
      if (code === UNEVEN || code === ALONE) return !isByLimits(index)
      return code !== UNKNOWN || !findings.some((there) => there.code === UNKNOWN)
    }
    findings.push(...own.filter((each) => !/^(?:file|colours\/limits-)/.test(each.code) && isNew(each)))
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

/** Told of all motifs once. */
const UNKNOWN = 'colours/stash-unknown'

const UNEVEN = 'colours/uneven'
const ALONE = 'colours/uneven-alone'

const NO_LIMITS: Pick<Fill, 'most'> = { most: {} }

/** The cells of each motif, and the number that each cell has among those of its own. */
interface Places {
  readonly at: readonly (readonly number[])[]
  readonly among: Int32Array
}

function placesByKind(cells: readonly KindCell[], kinds: number): Places {
  const at = Array.from({ length: kinds }, (): number[] => [])
  const among = new Int32Array(cells.length)
  cells.forEach(({ kind }, cell) => (among[cell] = at[kind]!.push(cell) - 1))
  return { at, among }
}

/** A cell among those of its own motif. Most patterns never ask for its neighbours: they are told when asked for. */
class OwnCell implements KindCell {
  readonly id: string
  readonly row: number
  readonly column: number
  readonly kind: number
  readonly full: readonly number[] | undefined
  #neighbours: readonly number[] | null = null

  constructor(
    private readonly cell: KindCell,
    private readonly cells: readonly KindCell[],
    private readonly among: Int32Array,
  ) {
    this.id = cell.id
    this.row = cell.row
    this.column = cell.column
    this.kind = cell.kind
    this.full = cell.full
  }

  get neighbours(): readonly number[] {
    this.#neighbours ??= this.cell.neighbours.flatMap((other) =>
      this.cells[other]!.kind === this.kind ? [this.among[other]!] : [],
    )
    return this.#neighbours
  }
}

function partOf(
  cells: readonly KindCell[],
  places: Places,
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
  const at = places.at[kind]!
  const part = at.map((index) => new OwnCell(cells[index]!, cells, places.among))
  const isTouched = Object.keys(painted).length + Object.keys(held).length > 0
  const ids = new Set(isTouched ? part.map(({ id }) => id) : [])
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
