/**
 * A work as its progress is counted: its pieces in the order in which they are made, and what is needed for it. What
 * is left of it is counted by the same accounts as the whole.
 */
import type { JoinedAs, PieceKind } from '../../shared-types/plan'
import type { MaterialsInput, MotifCounts, Piece, Stitched } from '../materials/input'
import type { Millimetres, Minutes } from '../units/quantity'

/** What a piece is joined to of those before it: done once it and one of them are. */
export interface Link {
  /** Indices of the pieces before it that meet there. */
  readonly into: readonly number[]
  readonly joins: number
  /** The join point that they are at, where others may be joined at it, too. */
  readonly point?: number
  readonly seam: Millimetres
  /** Of the joins, those that whole sides close, and the stitches of these sides. */
  readonly sides?: Stitched
}

export interface WorkPiece {
  /** Its address: "row,place", or that of a half motif or filler. */
  readonly id: string
  readonly kind: PieceKind
  readonly label: string
  readonly colourway: string
  /** Which piece of the account it is one of: 0 is the layout's own motif, the others follow. */
  readonly group: number
  /** Joins into those that were there before it, and the seams to them. */
  readonly joins: number
  readonly seam: Millimetres
  readonly sides?: Stitched
  /** The same one by one; without them they are done as soon as the piece itself is. */
  readonly links?: readonly Link[]
  /** What it takes to sew it down, besides. */
  readonly sewing?: Minutes
}

export interface Work {
  /** In working order. */
  readonly pieces: readonly WorkPiece[]
  /** What the whole of it is counted from. */
  readonly input: MaterialsInput
  /** Made motifs are joined already, in their last round. */
  readonly joinsAsMade: boolean
  readonly hasEdging: boolean
  /** The pieces that meet at each join point, by index; without them every join of a piece is a point of its own. */
  readonly joinPoints?: readonly (readonly number[])[]
  readonly joinedAs: JoinedAs
  /** Relative half width of the time to sew down. */
  readonly sewingSpread?: number
}

/** What is done of it: by index of the pieces. */
export interface Done {
  readonly isMade: (piece: number) => boolean
  /** It is joined to those of its neighbours that are joined as well. */
  readonly isJoined: (piece: number) => boolean
  readonly edging: boolean
}

/** Fillers are hung in between others: slip stitches that cost time alone. */
const isJoining = ({ kind }: WorkPiece): boolean => kind !== 'filler'

/** How often the pieces of one group are made. */
function countsOf(pieces: readonly WorkPiece[]): MotifCounts {
  const byColourway = new Map<string, number>()
  for (const { colourway } of pieces) byColourway.set(colourway, (byColourway.get(colourway) ?? 0) + 1)
  return { motifs: pieces.length, byColourway: Object.fromEntries(byColourway) }
}

const NO_SIDES: Stitched = { count: 0, joins: 0, stitches: 0 }

export const sumOfStitched = (sides: readonly Stitched[]): Stitched =>
  sides.reduce(
    (sum, { count, joins, stitches }) => ({
      ...{ count: sum.count + count, joins: sum.joins + joins, stitches: sum.stitches + stitches },
    }),
    NO_SIDES,
  )

/** Joins and seams of one piece that are still to come: all of them, or those into neighbours that are not there yet. */
function openOf({ pieces }: Work, { isJoined }: Pick<Done, 'isJoined'>) {
  return (piece: WorkPiece, index: number): Pick<Link, 'joins' | 'seam' | 'sides'> => {
    if (!isJoined(index)) return piece
    const open = { joins: 0, seam: 0, sides: { ...NO_SIDES } }
    for (const { into, joins, seam, sides } of pieces[index]?.links ?? []) {
      if (into.length === 0 || into.some(isJoined)) continue
      open.joins += joins
      open.seam += seam
      open.sides.count += sides?.count ?? 0
      open.sides.joins += sides?.joins ?? 0
      open.sides.stitches += sides?.stitches ?? 0
    }
    return open
  }
}

/** Of joins that are still to come, those beyond the first at their join point. */
function againOf({ pieces }: Work, { isJoined }: Pick<Done, 'isJoined'>): number {
  const points = new Set<number>()
  let again = 0
  pieces.forEach(({ links = [] }, index) => {
    for (const { into, joins, point } of links) {
      if (point === undefined || joins === 0) continue
      if (isJoined(index) && (into.length === 0 || into.some(isJoined))) continue
      if (points.has(point)) again += joins
      points.add(point)
    }
  })
  return again
}

/** The account of what is left: the pieces that are not made, the joins that are not made, the edging. */
export function leftOf(work: Work, done: Done): MaterialsInput {
  const { pieces, input } = work
  const { isMade, isJoined, edging } = done
  const open = pieces.filter((_, i) => !isMade(i))
  const unjoined = pieces.filter((_, i) => !isJoined(i))
  const stillOpen = pieces.map(openOf(work, done))
  const sum = <Of>(of: readonly Of[], value: (each: Of, index: number) => number): number =>
    of.reduce((total, each, i) => total + value(each, i), 0)
  const first = input.motif ? 1 : 0
  const counts = (group: number): MotifCounts => countsOf(open.filter((piece) => piece.group === group))
  const seams = sum(pieces, ({ seam }) => seam)
  const length = sum(stillOpen, ({ seam }) => seam)
  const own = (isOwn: (piece: WorkPiece) => boolean, of: readonly Pick<Link, 'joins'>[]): number =>
    sum(of, ({ joins }, i) => (isOwn(pieces[i]!) ? joins : 0))
  const stitched = (isOwn: (piece: WorkPiece) => boolean): Stitched => {
    const sides = stillOpen.flatMap((each, i) => (isOwn(pieces[i]!) ? (each.sides ?? []) : []))
    return sumOfStitched(sides)
  }
  const [joins, joinsLeft] = [own(isJoining, pieces), own(isJoining, stillOpen)]
  // What is worked along with the joins (a cord) is done as far as they are.
  const share = joins > 0 ? joinsLeft / joins : 0
  return {
    ...input,
    whole: input.whole ?? input.counts,
    counts: first === 1 ? counts(0) : input.counts,
    others: (input.others ?? []).map((piece, i): Piece => ({ ...piece, counts: counts(first + i) })),
    // On a panel nothing is joined to another.
    joinOperations: input.joinOperations > 0 ? joinsLeft : 0,
    ...(input.joinsAgain && { joinsAgain: againOf(work, done) }),
    // The first one has nothing to be joined to.
    joiners: unjoined.filter((piece) => piece !== pieces[0] && isJoining(piece)).length,
    fillerJoins: own((piece) => !isJoining(piece), stillOpen),
    ...(input.sides && {
      sides: { seams: stitched(isJoining), along: stitched((piece) => !isJoining(piece)) },
    }),
    // Each line is sewn with a piece of yarn of its own: one that is begun has its ends still to come.
    seams: {
      length,
      count: seams > 0 ? Math.ceil((input.seams.count * length) / seams - 1e-9) : 0,
    },
    edgingBase: edging ? null : input.edgingBase,
    works: (input.works ?? []).map((work) => ({
      ...work,
      millimetres: work.millimetres * share,
      loops: work.loops * share,
      tails: share > 0 ? work.tails : 0,
    })),
  }
}
