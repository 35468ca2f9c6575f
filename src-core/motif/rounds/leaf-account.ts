/** The account of a leaf: rounds on a foundation chain that is worked along on both sides. */
import { ruling } from '../ruling'
import { againstRounds } from '../against-rounds'
import { measuredOrAimed } from '../measured'
import { areStated, statedFindings, statedSpread } from '../stated'
import type { MotifAccount, Point } from '../../../shared-types/plan'
import type { Hand, RoundsMotif } from '../../../shared-types/project'
import { sizeSpread } from '../../stitches/gauge'
import type { Outline } from '../../geometry/points'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { leafAnchors } from '../anchors'
import { MEASURED_SPREAD, OUTLINE_POINTS } from '../constants'
import { leafOutline } from '../outlines'
import type { RoundsAccount, RoundsContext } from './account'
import { at } from './ground'
import type { LocatedRound } from './ground'
import { locateLeaf } from './leaf'
import { envelope } from './profile'
import { slotOf } from './read-motif'
import type { ReadMotif } from './read-motif'
import { slotWork, tallest } from './stitch-counts'

/** Length from the chain, width from the stitches of both sides. */
export function leafAccount(
  motif: RoundsMotif,
  context: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
): RoundsAccount {
  const sides = read.worked.map((round) => {
    const heights = { near: 0, far: 0, end: 0 }
    for (const element of round.elements) {
      if (!element.standing) continue
      const height = gauge.height(element.countsAs ?? element.stitch)
      const side = element.into[0]?.opposite ? 'far' : 'near'
      heights[side] = Math.max(heights[side], height)
      heights.end = heights.end === 0 ? height : Math.min(heights.end, height)
    }
    return heights
  })
  const { located, stem, rows } = locateLeaf(read.worked, read.stemChains, gauge)
  const inRows = sides.slice(0, rows)
  const around = sides.slice(rows)
  const over = around.reduce((sum, { near, far }) => sum + near + (far || near), 0)
  const ends = around.slice(rows > 0 ? 0 : 1).reduce((sum, { end }) => sum + 2 * end, 0)
  const high = inRows.reduce((sum, { near, far }) => sum + Math.max(near, far), 0) + over
  const stitches = Math.max(0, ...read.worked.slice(0, rows).map((round) => round.stitches))
  const along = (rows > 0 ? Math.max(chainsUsed(located), stitches) : read.stemChains) * gauge.width + ends
  // Rows are seen as they grow, from the chain up: across lies their chain.
  const [length, width] = rows > 0 ? [high, along] : [along, high]
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + context.growth : 1
  const by = [ruling(measured ?? {}, 'leaf', 'tips'), ruling(measured ?? {}, 'leaf', 'dips')] as const
  const own = {
    length: ((by[0] && measured?.[by[0]]) ?? 0) * grown || length,
    width: ((by[1] && measured?.[by[1]]) ?? 0) * grown || width,
  }
  const ruled = own.length !== length || own.width !== width
  const common = tallest(read.worked)
  const named = by.flatMap((name) => name ?? [])
  const isStated = ruled && areStated(motif, measured ?? {}, named)
  const spread = !ruled ? sizeSpread(gauge, common) : isStated ? statedSpread(gauge, common) : MEASURED_SPREAD
  const [known, expected] = own.length !== length ? [own.length, length] : [own.width, width]
  const what = own.length !== length ? 'long' : 'wide'
  const against =
    ruled && !isStated
      ? againstRounds({ what, measured: known / grown, expected: expected / grown }, gauge, common)
      : null
  const findings = [
    ...read.findings,
    ...(isStated ? statedFindings(known, expected, gauge, common) : against ? [against] : []).map(
      (entry) => ({
        ...entry,
        where: `motif ${motif.id}`,
        target: { motif: motif.id },
      }),
    ),
  ]
  const work = slotWork(read.worked, (round) => slotOf(motif, read, round), gauge)
  const outline = rows > 0 ? rowsOutline(located, own, context.hand) : workedOutline(located, own)
  const slots = [...new Set(read.worked.map((round) => slotOf(motif, read, round)))].reverse()
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: 'leaf',
    petals: 2,
    overTips: own.length,
    overValleys: own.width,
    outline,
    anchors: leafAnchors(own.length, own.width, widestOf(outline), context.hand),
    range: { low: own.length * (1 - spread), high: own.length * (1 + spread) },
    provenance: !ruled ? gauge.provenance : isStated ? 'stated' : measuredOrAimed(motif.measured ?? {}),
    rounds: read.worked.map((round) => ({
      number: round.number,
      outerRadius: own.length / 2,
      stitches: round.stitches,
      flatness: 1,
      lies: null,
    })),
    ...work,
    layers: slots.map((slot, i) => ({
      slot,
      outline: outline.map(({ x, y }) => ({
        x: (x * (slots.length - i)) / slots.length,
        y: (y * (slots.length - i)) / slots.length,
      })),
    })),
    findings,
  }
  const beginning = {
    stitchWidth: gauge.width,
    ringChains: 0,
    stem,
    // Rows are drawn as they grow, from the chain up.
    turn: rows > 0 ? Math.PI / 2 : 0,
  }
  return {
    account,
    findings,
    located,
    drawing: () => ({ located, beginning }),
    beginning,
    read,
  }
}

interface LeafSize {
  readonly length: Millimetres
  readonly width: Millimetres
}

/** A running mean over so many of the outline's points to both sides takes the corners off single stitches. */
const SMOOTHED = { leaf: 5, rows: 1 } as const

/** The points of an outline with a radius for each, smoothed. */
function smoothed(radii: readonly Millimetres[], reach: number): Point[] {
  return radii.map((_, i) => {
    let sum = 0
    for (let k = -reach; k <= reach; k++) sum += radii[(i + k + OUTLINE_POINTS) % OUTLINE_POINTS]!
    return at(sum / (2 * reach + 1), (i / OUTLINE_POINTS) * 2 * Math.PI)
  })
}

const extentOf = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)]

/**
 * The outline of what is worked: pointed where low stitches stand at the ends, an oval where they are all as high. Both
 * sides alike, tip and stem end where they are measured.
 */
function workedOutline(located: readonly LocatedRound[], { length, width }: LeafSize): Outline {
  const radii = envelope(located)
  const step = radii.length / OUTLINE_POINTS
  const both = Array.from({ length: OUTLINE_POINTS }, (_, i) => {
    const own = radii[Math.round(i * step) % radii.length]!
    return (own + radii[Math.round((OUTLINE_POINTS - i) * step) % radii.length]!) / 2
  })
  const points = smoothed(both, SMOOTHED.leaf)
  const top = points[0]!.y
  const end = points[OUTLINE_POINTS / 2]!.y
  const half = Math.max(...points.map(({ x }) => x))
  if (!(half > 0 && end > top)) return leafOutline(length, width)
  return points.map(({ x, y }) => ({
    x: (x / half) * (width / 2),
    y: Math.min(1 / 2, Math.max(-1 / 2, (y - top) / (end - top) - 1 / 2)) * length,
  }))
}

/** The outline of a piece in rows as it is, the chain below, as the hand sees it. */
function rowsOutline(located: readonly LocatedRound[], { length, width }: LeafSize, hand: Hand): Outline {
  const sign = hand === 'left' ? -1 : 1
  const upright = located.map((round) => ({
    ...round,
    edge: round.edge.map(({ x, y }) => ({ x: sign * y, y: x })),
  }))
  const radii = envelope(upright)
  const own = Array.from(
    { length: OUTLINE_POINTS },
    (_, i) => radii[Math.round((i * radii.length) / OUTLINE_POINTS) % radii.length]!,
  )
  const points = smoothed(own, SMOOTHED.rows)
  const [left, right] = extentOf(points.map(({ x }) => x))
  const [top, bottom] = extentOf(points.map(({ y }) => y))
  if (!(right > left && bottom > top)) return leafOutline(length, width)
  return points.map(({ x, y }) => ({
    x: ((x - left) / (right - left) - 1 / 2) * width,
    y: ((y - top) / (bottom - top) - 1 / 2) * length,
  }))
}

/** Chains of the foundation that the first row is worked into. */
function chainsUsed([first]: readonly LocatedRound[]): number {
  const cells = (first?.round.elements ?? []).flatMap(({ into }) =>
    into.flatMap(({ kind, cell }) => (kind === 'chain' ? [cell] : [])),
  )
  return 1 + Math.max(0, ...cells)
}

/** How far from its middle a leaf is widest. */
const widestOf = (outline: Outline): Millimetres =>
  outline.reduce((widest, point) => (point.x > widest.x + 1e-9 ? point : widest)).y
