/** Motifs that are joined along whole sides: the seams between them, and what they take the place of. */
import type { Millimetres } from '../units/quantity'
import { POINT_SEAM } from './constants'

interface Meeting {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly members: readonly { readonly motif: number }[]
}

/** A seam between two motifs, by index. */
export interface Seam {
  readonly motifs: readonly [number, number]
  readonly length: Millimetres
  /** It runs from one join point to another, not at one alone. */
  readonly isSide: boolean
}

/** What is joined along whole sides, not at points. */
export interface Sides {
  readonly count: number
  readonly length: Millimetres
  readonly stitches: number
  /** Joins that they close, among those that are counted one by one; the join points that they take up altogether. */
  readonly joins: number
  readonly points: number
}

export const NO_SIDES: Sides = { count: 0, length: 0, stitches: 0, joins: 0, points: 0 }

export const sumOfSides = (all: readonly Sides[]): Sides =>
  all.reduce(
    (sum, each) => ({
      count: sum.count + each.count,
      length: sum.length + each.length,
      stitches: sum.stitches + each.stitches,
      joins: sum.joins + each.joins,
      points: sum.points + each.points,
    }),
    NO_SIDES,
  )

/** Stitches along a side, one for each stitch of width `width`. */
export const stitchesAlong = (length: Millimetres, width: Millimetres): number =>
  Math.max(1, Math.round(length / width))

const pairOf = (one: number, other: number): string => `${one} ${other}`

/** What is laid, as far as seams run in it: where motifs stand, and once round what is joined in the round. */
export interface SeamGround {
  readonly placements: readonly { readonly x: Millimetres }[]
  /** 0 where nothing is joined in the round. */
  readonly round: Millimetres
}

const FLAT: SeamGround = { placements: [], round: 0 }

/**
 * Seams run between the outermost places that two neighbours share. In the round a place is told at one end of the
 * rows, wherever its motifs stand: it is seen from its first motif, the short way round, and two motifs that meet on both
 * sides of each other have two seams.
 */
export function seamsBetween(nodes: readonly Meeting[], { placements, round }: SeamGround = FLAT): Seam[] {
  const shared = new Map<string, { motifs: [number, number]; meeting: { x: number; y: number }[] }>()
  const from = (motif: number, x: Millimetres): Millimetres => {
    const across = x - (placements[motif]?.x ?? 0)
    return round > 0 ? across - round * Math.round(across / round) : across
  }
  for (const { members, x, y } of nodes)
    members.forEach(({ motif }, i) =>
      members.slice(i + 1).forEach((other) => {
        const seen = round > 0 ? from(motif, x) : x
        // Once more round or not: the way to the other motif that leads over this place.
        const apart = (placements[other.motif]?.x ?? 0) - (placements[motif]?.x ?? 0)
        const times = round > 0 ? Math.round((seen - from(other.motif, x) - apart) / round) : 0
        const key = `${pairOf(motif, other.motif)} ${times}`
        const known = shared.get(key)
        if (known) known.meeting.push({ x: seen, y })
        else shared.set(key, { motifs: [motif, other.motif], meeting: [{ x: seen, y }] })
      }),
    )
  return [...shared.values()].map(({ motifs, meeting }) => {
    let length = POINT_SEAM
    for (const a of meeting)
      for (const b of meeting) length = Math.max(length, Math.hypot(a.x - b.x, a.y - b.y))
    return { motifs, length, isSide: meeting.length > 1 }
  })
}

/**
 * How many joins of each node whole sides close: as many as they leave fewer pieces there. `isThere` says of whom that
 * they are joined to each other already.
 */
export function closedBySides(
  seams: readonly Seam[],
  isThere: (motif: number) => boolean = () => false,
): (node: Meeting) => number {
  const sides = new Set(
    seams.flatMap(({ motifs: [one, other], isSide }) =>
      isSide ? [pairOf(one, other), pairOf(other, one)] : [],
    ),
  )
  return ({ members }) => {
    let pieces: number[][] = []
    let apart = 0
    let there = false
    for (const { motif } of members) {
      const isFirst = !isThere(motif) || !there
      if (isThere(motif)) there = true
      if (isFirst) apart++
      const meets = pieces.filter((piece) =>
        piece.some((other) => (isThere(motif) && isThere(other)) || sides.has(pairOf(motif, other))),
      )
      pieces = [...pieces.filter((piece) => !meets.includes(piece)), [...meets.flat(), motif]]
    }
    return apart - pieces.length
  }
}

/** The seams among these that run along whole sides, worked in stitches of width `width`. */
export function wholeSides(
  nodes: readonly Meeting[],
  width: Millimetres,
  ground: SeamGround = FLAT,
  isThere?: (motif: number) => boolean,
): Sides {
  const seams = seamsBetween(nodes, ground).filter(
    ({ motifs: [one, other], isSide }) => isSide && !(isThere?.(one) && isThere(other)),
  )
  const closed = closedBySides(seams, isThere)
  const [joins, points] = nodes.reduce(
    ([sum, all], node) => {
      const own = closed(node)
      const whole = node.members.filter(({ motif }) => isThere?.(motif)).length
      const needed = node.members.length - Math.max(1, whole)
      // Where two that are there meet, theirs is the point.
      return [sum + own, all + (own > 0 && own === needed && whole < 2 ? 1 : 0)]
    },
    [0, 0],
  )
  return {
    count: seams.length,
    length: seams.reduce((sum, { length }) => sum + length, 0),
    stitches: seams.reduce((sum, { length }) => sum + stitchesAlong(length, width), 0),
    ...{ joins, points },
  }
}

/** What a plan says of them. */
export const sidesTold = ({ joins: _, ...told }: Sides): Omit<Sides, 'joins'> => told
