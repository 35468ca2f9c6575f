/** A blanket as a work in progress: its motifs, half motifs and fillers in the order in which they are made. */
import type { PlacedFiller, PlacedHalf } from '../../shared-types/plan'
import { plainRounds } from '../edging/written'
import { fillerId, halfId } from '../layout/addresses'
import type { Filling } from '../layout/fillers'
import type { Halved } from '../layout/halves'
import type { Arranged, Joined } from '../layout/stages'
import type { Worked } from '../layout/works'
import { POINT_SEAM } from '../joins/constants'
import type { NodeMember } from '../joins/nodes'
import { closedBySides, seamsBetween, seamWork, sideWork } from '../joins/sides'
import type { MaterialsInput, Stitched } from '../materials/input'
import { sumOfStitched } from './work'
import type { Link, Work, WorkPiece } from './work'

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

/** A join that a whole side closes. */
const CLOSED: Stitched = { count: 0, joins: 1, stitches: 0 }

/** One place of one motif: it is at one join point at the most. */
const placeOf = ({ motif, anchor }: NodeMember): string => `${motif} ${anchor}`

/** Every join belongs to the piece that is worked into what was there before it. */
export function blanketWork({
  arranged: { placements, round },
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
  const links: Link[][] = Array.from({ length: count }, () => [])
  const link = (
    piece: number,
    into: readonly number[],
    joins: number,
    { seam = 0, ...more }: Partial<Pick<Link, 'seam' | 'sides' | 'point'>> = {},
  ): void => {
    links[piece]!.push({ into: into.map((other) => rank[other]!), joins, seam, ...more })
  }
  const isSewn = input.joining?.rule === 'seam'
  const seams = isSewn ? seamsBetween(joined.nodes, { placements, round }) : []
  const closedAt = closedBySides(seams)
  /** The pieces that meet at each join point. */
  const joinPoints = joined.nodes.map(({ members }) => members.map(({ motif }) => rank[motif]!))
  joined.nodes.forEach((node, point) => {
    const inOrder = node.members.map(({ motif }) => motif).sort((a, b) => rank[a]! - rank[b]!)
    // Whole sides close as many of them as they hold together there: those that come last.
    const open = inOrder.length - (isSewn ? closedAt(node) : 0)
    inOrder.forEach(
      (motif, i) =>
        i > 0 && link(motif, inOrder.slice(0, i), 1, { point, ...(i < open ? {} : { sides: CLOSED }) }),
    )
  })
  // Where two motifs meet already, a half one is joined at their point.
  const pointAt = new Map(
    joined.nodes.flatMap(({ members }, point) => members.map((member) => [placeOf(member), point] as const)),
  )
  for (const { members } of halved.nodes) {
    const [first, ...met] = members.filter(({ motif }) => motif < wholes)
    const shared = first && met.length > 0 ? pointAt.get(placeOf(first)) : undefined
    const point = shared ?? joinPoints.push([]) - 1
    const there = new Set([...joinPoints[point]!, ...members.map(({ motif }) => rank[motif]!)])
    joinPoints[point] = [...there]
    const own = members.map(({ motif }) => motif).filter((motif) => motif >= wholes)
    // Among halves alone the first one is there already.
    const host = members.length > own.length ? -1 : own.reduce((a, b) => (rank[a]! < rank[b]! ? a : b))
    const others = members.map(({ motif }) => motif)
    for (const motif of own)
      if (motif !== host)
        link(
          motif,
          others.filter((other) => other !== motif && (other < wholes || other === host)),
          1,
          { point },
        )
  }
  filling.filled.forEach(({ opening, filler: { account, gauge }, fit }, i) => {
    for (const { motif, along } of fit.contacts) {
      const work = along === undefined ? undefined : sideWork(along, gauge.width, [account.side])
      const sides = work && { count: 1, joins: 1, stitches: work.stitches }
      const into = [opening.motifs[motif]!]
      link(wholes + halves.length + i, into, 1, {
        seam: isSewn ? (work?.worked ?? POINT_SEAM) : 0,
        ...(sides && { sides }),
      })
    }
  })
  if (isSewn) {
    const ground = { placements, round, sideOf: joined.sideOf }
    for (const seam of seams) {
      const { motifs: pair, isSide } = seam
      const { stitches, worked: length } = seamWork(seam, joined.stitch, ground)
      const [first, later] = rank[pair[0]]! < rank[pair[1]]! ? pair : [pair[1], pair[0]]
      const sides = isSide ? { count: 1, joins: 0, stitches } : undefined
      link(later, [first], 0, { seam: length, ...(sides && { sides }) })
    }
    // One half takes as long a seam as another.
    halves.forEach((_, i) => {
      const own = links[wholes + i]!
      const into = [...new Set(own.flatMap((each) => each.into))]
      const each = (of: number): number => of / halves.length
      const { count, joins, stitches } = halved.sides
      const sides = { count: each(count), joins: each(joins), stitches: each(stitches) }
      own.push({ into, joins: 0, seam: each(halved.seams.length), sides })
    })
  }
  const others = input.motif ? motifs : 0
  // Fillers of each motif are a group of their own, too.
  const fillerKinds = [...new Set(fillers.map(({ motif }) => motif))]
  // Half motifs follow, those of each motif by themselves.
  const halfKinds = [...new Set(halved.places.map(({ kind }) => kind))].sort((a, b) => a - b)
  const halfGroup = others + fillerKinds.length
  const pieces: WorkPiece[] = []
  const put = (
    index: number,
    piece: Pick<WorkPiece, 'id' | 'kind' | 'label' | 'colourway' | 'group'>,
  ): void => {
    const own = links[index]!
    const [joins, seam] = [
      own.reduce((sum, each) => sum + each.joins, 0),
      own.reduce((sum, each) => sum + each.seam, 0),
    ]
    const stitched = own.flatMap(({ sides }) => sides ?? [])
    const sides = sumOfStitched(stitched)
    pieces[rank[index]!] = { ...piece, joins, seam, sides, links: own }
  }
  placements.forEach(({ id, kind: group }, i) =>
    put(i, { id, kind: 'motif', label: String(worked.labels[i]), colourway: colourways[i] ?? '', group }),
  )
  halves.forEach(({ row, side, label, colourway }, i) => {
    const group = halfGroup + halfKinds.indexOf(halved.places[i]!.kind)
    put(wholes + i, { id: halfId(row, side), kind: 'half', label, colourway, group })
  })
  fillers.forEach(({ motifs, motif, label, colourway }, i) => {
    const index = wholes + halves.length + i
    const group = others + fillerKinds.indexOf(motif)
    put(index, { id: fillerId(motifs), kind: 'filler', label, colourway, group })
  })
  const rule = input.joining?.rule
  fillers.forEach(({ points = [] }, i) => {
    for (const _ of points) joinPoints.push([rank[wholes + halves.length + i]!])
  })
  return {
    pieces,
    joinPoints,
    input,
    joinsAsMade: rule !== 'seam' && rule !== 'apart',
    joinedAs: 'joined',
    hasEdging: input.edgingBase !== null && plainRounds(input.edging, input.basis.terms).length > 0,
  }
}
