/** A blanket as a work in progress: its motifs, half motifs and fillers in the order in which they are made. */
import type { PlacedFiller, PlacedHalf } from '../../shared-types/plan'
import { plainRounds } from '../edging/written'
import { fillerId, halfId } from '../layout/addresses'
import type { Filling } from '../layout/fillers'
import type { Halved } from '../layout/halves'
import { seamsBetween } from '../layout/stages'
import type { Arranged, Joined } from '../layout/stages'
import type { Worked } from '../layout/works'
import { POINT_SEAM } from '../joins/constants'
import type { MaterialsInput } from '../materials/input'
import type { Work, WorkPiece } from './work'

interface BlanketParts {
  readonly arranged: Arranged
  readonly joined: Joined
  readonly halved: Halved
  /** How many motifs the blanket is made of: each is a group of its own in the account. */
  readonly motifs: number
  readonly filling: Filling
  readonly worked: Worked
  /** By placement. */
  readonly colourways: readonly string[]
  readonly halves: readonly PlacedHalf[]
  readonly fillers: readonly PlacedFiller[]
  readonly input: MaterialsInput
}

/** Every join belongs to the piece that is worked into what was there before it. */
export function blanketWork({
  arranged: { placements },
  joined,
  halved,
  filling,
  motifs,
  worked,
  colourways,
  halves,
  fillers,
  input,
}: BlanketParts): Work {
  const wholes = placements.length
  const count = wholes + halves.length + fillers.length
  const rank = new Int32Array(count)
  worked.all.forEach((piece, i) => (rank[piece] = i))
  const joins = new Int32Array(count)
  const seam = new Float64Array(count)
  const later = (a: number, b: number): number => (rank[a]! > rank[b]! ? a : b)
  for (const { members } of joined.nodes) {
    const first = members.reduce((best, { motif }) => Math.min(best, rank[motif]!), Infinity)
    for (const { motif } of members) if (rank[motif]! > first) joins[motif]!++
  }
  for (const { members } of halved.nodes) {
    const own = members.map(({ motif }) => motif).filter((motif) => motif >= wholes)
    // Among halves alone the first one is there already.
    const host = members.length > own.length ? -1 : own.reduce((a, b) => (rank[a]! < rank[b]! ? a : b))
    for (const motif of own) if (motif !== host) joins[motif]!++
  }
  filling.filled.forEach(({ opening }, i) => (joins[wholes + halves.length + i] = opening.motifs.length))
  if (input.joining?.rule === 'seam') {
    for (const { motifs, length } of seamsBetween(joined.nodes)) seam[later(...motifs)]! += length
    // One half takes as long a seam as another.
    halves.forEach((_, i) => (seam[wholes + i] = halved.seams.length / halves.length))
    fillers.forEach(
      (_, i) => (seam[wholes + halves.length + i] = joins[wholes + halves.length + i]! * POINT_SEAM),
    )
  }
  const others = input.motif ? motifs : 0
  const fillerGroup = others
  // Half motifs follow, those of each motif by themselves.
  const halfKinds = [...new Set(halved.places.map(({ kind }) => kind))].sort((a, b) => a - b)
  const halfGroup = others + (fillers.length > 0 ? 1 : 0)
  const pieces: WorkPiece[] = []
  const put = (
    index: number,
    piece: Pick<WorkPiece, 'id' | 'kind' | 'label' | 'colourway' | 'group'>,
  ): void => {
    pieces[rank[index]!] = { ...piece, joins: joins[index]!, seam: seam[index]! }
  }
  placements.forEach(({ id, kind: group }, i) =>
    put(i, { id, kind: 'motif', label: String(worked.labels[i]), colourway: colourways[i] ?? '', group }),
  )
  halves.forEach(({ row, side, label, colourway }, i) => {
    const group = halfGroup + halfKinds.indexOf(halved.places[i]!.kind)
    put(wholes + i, { id: halfId(row, side), kind: 'half', label, colourway, group })
  })
  fillers.forEach(({ motifs, label, colourway }, i) => {
    const index = wholes + halves.length + i
    put(index, { id: fillerId(motifs), kind: 'filler', label, colourway, group: fillerGroup })
  })
  const rule = input.joining?.rule
  const own = [...halves, ...fillers].flatMap(({ points = [] }, i) => points.map(() => [rank[wholes + i]!]))
  return {
    pieces,
    joinPoints: [...joined.nodes.map(({ members }) => members.map(({ motif }) => rank[motif]!)), ...own],
    input,
    joinsAsMade: rule !== 'seam' && rule !== 'apart',
    joinedAs: 'joined',
    hasEdging: input.edgingBase !== null && plainRounds(input.edging, input.basis.terms).length > 0,
  }
}
