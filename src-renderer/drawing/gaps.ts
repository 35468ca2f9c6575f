/** How far what is being moved keeps from its nearest neighbour and from the seam line. Lengths in mm. */
import type { PlacedMotif, Point } from '../../shared-types/plan'
import { boxDistance, indexEdges } from '../../src-core/geometry/edges'
import type { Edges } from '../../src-core/geometry/edges'
import { areaGap, insideGap } from '../../src-core/geometry/nearest'
import type { Gap } from '../../src-core/geometry/nearest'
import { placeOutline } from '../../src-core/geometry/place'
import { contains } from '../../src-core/geometry/points'
import type { Outline } from '../../src-core/geometry/points'
import { kindOf } from './picture'
import type { Picture } from './picture'

interface ShownGap extends Gap {
  /** To the nearest neighbour, or to the seam line (the edge, where there is no allowance). */
  readonly to: Point
  readonly what: 'neighbour' | 'seam'
  /** Less than what is asked for. */
  readonly isShort: boolean
}

/** Distances of less than this much too little are kept well enough (mm). */
const JUDGED = 0.01

/** Finds gaps, and remembers outlines as long as they lie where they lay. */
export class GapFinder {
  #known = new Map<string, Edges>()
  #seams: { readonly inner: readonly Outline[]; readonly edges: readonly Edges[] } | null = null

  /** The gaps of some motifs of a panel; `clearance` is what they are asked to keep from others. */
  find(picture: Picture, ids: ReadonlySet<string>, clearance: number): ShownGap[] {
    const { plan, motifs, hit } = picture
    if (!plan.panel || ids.size === 0) return []
    const used = new Map<string, Edges>()
    const edgesOf = (index: number): Edges | null => {
      const motif = motifs[index]!
      const kind = kindOf(picture, motif)
      if (!kind) return null
      const key = keyOf(motif)
      const edges =
        used.get(key) ?? this.#known.get(key) ?? indexEdges(placeOutline(kind.account.outline, motif))
      used.set(key, edges)
      return edges
    }
    const chosen: number[] = []
    const others: number[] = []
    motifs.forEach(({ id }, index) => (ids.has(id) ? chosen : others).push(index))
    let nearest: Gap | null = null
    let least = Infinity
    for (const index of chosen) {
      const box = hit.boxOf(index)
      const near = others
        .map((other) => ({ other, far: boxDistance(box, hit.boxOf(other)) }))
        .filter(({ far }) => far < least)
        .sort((a, b) => a.far - b.far)
      for (const { other, far } of near) {
        if (far >= least) break
        const [own, theirs] = [edgesOf(index), edgesOf(other)]
        const gap = own && theirs && areaGap(own, theirs, least)
        if (gap) [nearest, least] = [gap, gap.distance]
      }
    }
    let seam: Gap | null = null
    const seams = this.#seamsOf(plan.panel.inner)
    for (const index of chosen) {
      const own = edgesOf(index)
      const gap = own && seamGap(own, motifs[index]!, seams)
      if (gap && (!seam || gap.distance < seam.distance)) seam = gap
    }
    this.#known = used
    const gaps: ShownGap[] = []
    if (nearest) gaps.push({ ...nearest, what: 'neighbour', isShort: nearest.distance < clearance - JUDGED })
    if (seam) gaps.push({ ...seam, what: 'seam', isShort: seam.distance < -JUDGED })
    return gaps
  }

  #seamsOf(inner: readonly Outline[]): readonly Edges[] {
    if (this.#seams?.inner !== inner) this.#seams = { inner, edges: inner.map(indexEdges) }
    return this.#seams.edges
  }
}

/** To the piece within the seam line that the motif's centre lies in, else to the one that it is nearest to. */
function seamGap(own: Edges, centre: Point, seams: readonly Edges[]): Gap | null {
  const holding = seams.find(({ outline }) => contains(outline, centre))
  if (holding) return insideGap(own, holding)
  let best: Gap | null = null
  for (const edges of seams) {
    const gap = insideGap(own, edges)
    if (!best || gap.distance > best.distance) best = gap
  }
  return best
}

const keyOf = ({ id, motif, x, y, turn, flipped }: PlacedMotif): string =>
  [id, motif, x, y, turn, flipped].join()
