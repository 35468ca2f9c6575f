/**
 * The rows of a half: of each round the tops on one side of the cut, and what its straight edge needs. Where the cut goes
 * through a stitch, that stitch stands at the edge; where it goes through a space, half of its chains lie beside a
 * stitch at the edge; an edge that was begun goes on, stitch on stitch. Between two stitches nothing is added: the
 * turning chain counts as the first stitch.
 */
import type { StitchKey } from '../stitches/table'
import type { Cut } from './cut'
import { RING } from './rings'
import type { Ring, Top } from './rings'

/** A row from where it begins to where it ends; `into` counts the tops of the row before from where this one begins. */
export interface HalfRow {
  readonly tops: readonly Top[]
  /** The first and last stitch stand at the straight edge. */
  readonly hasEdge: boolean
}

/** Tops of a ring from one end of a cut to the other. */
interface Side {
  /** Doubled place where it begins. */
  readonly start: number
  /** Indices in the ring of what lies strictly between the ends. */
  readonly inner: readonly number[]
  /** What the cut goes through at both ends; null: it passes between two. */
  readonly end: Top | null
}

function sideOf({ tops }: Ring, start: number): Side {
  const count = tops.length
  const first = Math.floor(start / 2) + 1
  const inner: number[] = []
  for (let at = first; 2 * at < start + count; at++) inner.push(at % count)
  return { start, inner, end: start % 2 === 0 ? tops[(start / 2) % count]! : null }
}

/** Where a top of the ring before stands in its row; null where it lies on the other side. */
function placeIn(ring: Ring, side: Side, row: HalfRow, top: number): number | null {
  const count = ring.tops.length
  const off = (((2 * top - side.start) % (2 * count)) + 2 * count) % (2 * count)
  const edge = row.hasEdge ? 1 : 0
  const isSpace = side.end?.kind === 'space'
  if (off > count) return null
  if (off === 0) return isSpace ? 1 : 0
  if (off === count) return row.tops.length - (isSpace ? 2 : 1)
  const at = side.inner.indexOf(top)
  return at < 0 ? null : at + edge + (isSpace ? 1 : 0)
}

/** Half of a space, rounded up: its chains lie along the curve of the edge. */
const halfChains = (chains: number): number => Math.ceil(chains / 2)

function rowOf(ring: Ring, side: Side, before: Before | null): HalfRow | null {
  const { tops } = ring
  const inner: Top[] = []
  for (const at of side.inner) {
    const top = tops[at]!
    if (top.kind === 'space' || top.into === RING) inner.push(top)
    else {
      const into = before && placeIn(before.ring, before.side, before.row, top.into)
      if (into === null) return null
      inner.push({ ...top, into })
    }
  }
  const [first, last] = [inner[0], inner.at(-1)]
  const { end } = side
  const edgeKey: StitchKey | undefined =
    end?.kind === 'stitch' ? end.stitch : inner.find((top) => top.kind === 'stitch')?.stitch
  const hasEdge = end !== null || before?.row.hasEdge === true
  if (!edgeKey) return null
  if (!hasEdge) {
    // The row begins in the first stitch: there is nothing else at its edge.
    if (first?.kind !== 'stitch' || last?.kind !== 'stitch') return null
    return first.into === RING || first.into === 0 ? { tops: inner, hasEdge } : null
  }
  const ends = before ? [0, before.row.tops.length - 1] : [RING, RING]
  const stitch = (into: number): Top => ({ kind: 'stitch', stitch: edgeKey, into })
  const space: Top[] = end?.kind === 'space' ? [{ kind: 'space', chains: halfChains(end.chains) }] : []
  return { tops: [stitch(ends[0]!), ...space, ...inner, ...space, stitch(ends[1]!)], hasEdge }
}

interface Before {
  readonly ring: Ring
  readonly side: Side
  readonly row: HalfRow
}

/** The rows of a half; null where one of them reaches to the other side of the cut, or begins in mid-air. */
export function rowsOf(rings: readonly Ring[], cut: Cut): readonly HalfRow[] | null {
  // Each ring has two sides: that one which all of the next round's half is worked into.
  const sides: Side[] = []
  for (let i = rings.length - 1; i >= 0; i--) {
    const ring = rings[i]!
    const count = ring.tops.length
    const above = sides[0]
    const both = [sideOf(ring, cut[i]!), sideOf(ring, cut[i]! + count)]
    const reached = above?.inner.flatMap((at) => {
      const top = rings[i + 1]!.tops[at]!
      return top.kind === 'stitch' ? [top.into] : []
    })
    const side = reached
      ? both.find(({ start }) =>
          reached.every((top) => (((2 * top - start) % (2 * count)) + 2 * count) % (2 * count) <= count),
        )
      : both[0]
    if (!side) return null
    sides.unshift(side)
  }
  const rows: HalfRow[] = []
  let before: Before | null = null
  for (const [i, ring] of rings.entries()) {
    const row = rowOf(ring, sides[i]!, before)
    if (!row) return null
    rows.push(row)
    before = { ring, side: sides[i]!, row }
  }
  return rows
}
