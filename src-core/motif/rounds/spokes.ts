/**
 * Spokes (M10): stitches worked back along a chain that the round itself makes. The chain goes straight out from
 * where it begins; the stitches stand on its side in the direction of work, those of a second side on the other. A
 * spoke is as long as its chains but the one that turns, as wide as its stitches are high, and keeps to its sector.
 */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { angleOf, at, gather, heightOf, isSlip, isUpright, neighbours, radiusOf, unwrap } from './ground'
import type { Stood } from './stand'

/** A chain that is worked back along, in its place. */
export interface Stem {
  readonly from: Point
  readonly tip: Point
  /** Middles of its chains, the first made first. */
  readonly chain: readonly Point[]
}

const TURN = 2 * Math.PI
/** In stitch widths, by eye: clear of what the chain begins on, of the next spoke, and slip stitches of the chain. */
const CLEAR = { start: 0.15, next: 0.35, slip: 0.36 } as const
/** The chain that turns lies across the end, in stitch widths along and aside (by eye). */
const TURNING = { along: 0.12, aside: 0.3 } as const
/** Spokes that have more room than this beside them are not pressed. */
const WIDE: Radians = (80 * Math.PI) / 180

interface Spoke {
  readonly stem: WorkedElement
  readonly members: readonly WorkedElement[]
}

/** Chains of a round that are worked back along, with what is worked into them. */
function spokesOf(round: WorkedRound): Spoke[] {
  const spokes = new Map<number, WorkedElement[]>()
  for (const element of round.elements) {
    const place = element.into[0]
    if (place?.kind !== 'chain' || place.round !== round.index) continue
    gather(spokes, place.index, element)
  }
  return [...spokes].flatMap(([index, members]) => {
    const stem = round.elements[index]
    // A motif that begins in one chain has that in its middle.
    const begins = round.foundation?.kind === 'chain' && index === 0
    return stem && !begins ? [{ stem, members }] : []
  })
}

/** Stitches and chains of all spokes of a round; `pointOf` tells where its other elements end. */
export function standOnSpokes(
  round: WorkedRound,
  pointOf: (element: WorkedElement) => Point,
  gauge: ResolvedGauge,
): { stood: Stood[]; stems: ReadonlyMap<WorkedElement, Stem> } {
  const spokes = spokesOf(round)
  const along = new Set(spokes.flatMap(({ stem, members }) => [stem, ...members]))
  // A spoke's chain begins on the last thing made before it that belongs to no spoke.
  const carries = (e: WorkedElement) => isUpright(e) || isSlip(e) || e.role === 'travel'
  const carriers = round.elements.filter((e) => !along.has(e) && carries(e))
  const carrierOf = neighbours(round.elements, new Set(carriers), 'before')
  const starts = spokes.map(({ stem }) => {
    const carrier = carrierOf[stem.index]
    return carrier ? pointOf(carrier) : at(0, 0)
  })
  const stems = new Map<WorkedElement, Stem>()
  const stood = spokes.flatMap(({ stem, members }, i) => {
    const from = starts[i]!
    const own = radiusOf(from) > 1e-6 ? angleOf(from) : (i / spokes.length) * TURN
    const next = starts[(i + 1) % starts.length]!
    let room = unwrap(angleOf(next), own) - own
    if (room <= 1e-6) room += TURN
    const spoke = { from, angle: own, room: spokes.length > 1 ? room : TURN }
    stems.set(stem, stemOf(stem, spoke, gauge))
    return members.map((element) => standAlong(element, spoke, i, gauge))
  })
  return { stood, stems }
}

interface Lie {
  readonly from: Point
  readonly angle: Radians
  /** To the next spoke. */
  readonly room: Radians
}

/** The point at a distance along a spoke, and aside in the way of working. */
function spokePoint({ from, angle }: Lie, along: Millimetres, aside: Millimetres): Point {
  const out = at(1, angle)
  return { x: from.x + out.x * along - out.y * aside, y: from.y + out.y * along + out.x * aside }
}

function stemOf(stem: WorkedElement, spoke: Lie, gauge: ResolvedGauge): Stem {
  const { width } = gauge
  const start = CLEAR.start * width
  const straight = Math.max(1, stem.count - 1)
  const chain = Array.from({ length: straight }, (_, cell) =>
    spokePoint(spoke, start + (cell + 0.5) * width, 0),
  )
  const tip = spokePoint(spoke, start + straight * width, 0)
  if (stem.count > 1)
    chain.push(spokePoint(spoke, start + (straight + TURNING.along) * width, TURNING.aside * width))
  return { from: spoke.from, tip, chain }
}

function standAlong(element: WorkedElement, spoke: Lie, petal: number, gauge: ResolvedGauge): Stood {
  const place = element.into[0]!
  const { width } = gauge
  const base = spokePoint(spoke, (CLEAR.start + place.cell + 0.5) * width, 0)
  const wanted = element.role === 'slip' ? CLEAR.slip * width : heightOf(element, gauge)
  const free = radiusOf(base) * Math.tan(Math.min(spoke.room, WIDE)) - CLEAR.next * width
  const pressed = spoke.room < WIDE && !place.opposite
  const height = pressed ? Math.max(CLEAR.slip * width, Math.min(wanted, free)) : wanted
  const lie = { ...spoke, from: base }
  const top = spokePoint(lie, 0, place.opposite ? -height : height)
  return { element, base, top, petal, along: width }
}
