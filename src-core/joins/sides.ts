/** Motifs that are joined along whole sides: the seams between them, and what they take the place of. */
import type { MotifSide } from '../../shared-types/plan'
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
  /** Of these sides, those whose stitches the last round of a motif counts; the others are told by their length. */
  readonly counted: number
  /** Stitches of each, where all have as many; null where they differ. */
  readonly each: number | null
  /** mm. What their yarn is counted by: where stitches are known, as long as these are wide. */
  readonly worked: Millimetres
  /** Joins that they close, among those that are counted one by one; the join points that they take up altogether. */
  readonly joins: number
  readonly points: number
}

export const NO_SIDES: Sides = {
  ...{ count: 0, length: 0, stitches: 0, counted: 0, worked: 0, joins: 0, points: 0 },
  each: null,
}

export const sumOfSides = (all: readonly Sides[]): Sides =>
  all.reduce(
    (sum, each) => ({
      count: sum.count + each.count,
      length: sum.length + each.length,
      stitches: sum.stitches + each.stitches,
      counted: sum.counted + each.counted,
      worked: sum.worked + each.worked,
      each: sum.count === 0 || sum.each === each.each ? each.each : each.count === 0 ? sum.each : null,
      joins: sum.joins + each.joins,
      points: sum.points + each.points,
    }),
    NO_SIDES,
  )

/** Stitches along a side, one for each stitch of width `width`. */
export const stitchesAlong = (length: Millimetres, width: Millimetres): number =>
  Math.max(1, Math.round(length / width))

/** What a seam along a side comes to. */
interface SeamWork {
  readonly stitches: number
  /** mm. Its length, as it is counted: by its stitches where these are known. */
  readonly worked: Millimetres
  readonly isCounted: boolean
}

/**
 * The stitches of a seam, or of a part of one: as many as the last round of a motif counts along it, of two that differ
 * the most; by its length where nobody knows. Loops at corners are sewn as well.
 */
export function sideWork(
  length: Millimetres,
  width: Millimetres,
  known: readonly (MotifSide | undefined)[],
): SeamWork {
  const told = known.flatMap((side) => (side ? [{ ...side, share: length / side.length }] : []))
  if (told.length === 0) return { stitches: stitchesAlong(length, width), worked: length, isCounted: false }
  const most = told.reduce((a, b) => (b.stitches * b.share > a.stitches * a.share ? b : a))
  return {
    stitches: Math.max(1, Math.round(most.stitches * most.share)),
    worked: (most.stitches + most.corner) * most.share * width,
    isCounted: true,
  }
}

/** The same of a seam between motifs; one at a single point is as long as it is. */
export const seamWork = (
  { motifs, length, isSide }: Seam,
  width: Millimetres,
  { sideOf }: SeamGround,
): SeamWork => sideWork(length, width, isSide && sideOf ? motifs.map((motif) => sideOf(motif)) : [])

const pairOf = (one: number, other: number): string => `${one} ${other}`

/** What is laid, as far as seams run in it: where motifs stand, and once round what is joined in the round. */
export interface SeamGround {
  readonly placements: readonly { readonly x: Millimetres }[]
  /** 0 where nothing is joined in the round. */
  readonly round: Millimetres
  /** What is known of the sides of a motif. */
  readonly sideOf?: (motif: number) => MotifSide | undefined
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
  const own = seams.map((seam) => seamWork(seam, width, ground))
  const each = new Set(own.map(({ stitches }) => stitches))
  return {
    count: seams.length,
    length: seams.reduce((sum, { length }) => sum + length, 0),
    stitches: own.reduce((sum, { stitches }) => sum + stitches, 0),
    worked: own.reduce((sum, { worked }) => sum + worked, 0),
    counted: own.filter(({ isCounted }) => isCounted).length,
    each: each.size === 1 ? [...each][0]! : null,
    ...{ joins, points },
  }
}

/** What a plan says of them. */
export const sidesTold = ({ joins: _, worked: __, ...told }: Sides): Omit<Sides, 'joins' | 'worked'> => told
