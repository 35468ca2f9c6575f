/** How many stitches of an edging's set-up round each motif along the edge takes. */
import type { EdgingLoop, PlacedHalf, PlacedMotif, Plan, Point } from '../../shared-types/plan'
import { distance } from '../geometry/points'
import { workedLine } from './direction'
import { alongOf, pointAlong } from './line-places'
import { OPEN_ENDS } from './open-ends'

/** Stitches by the motif or half motif that they are worked into. */
export interface PickUp {
  readonly motif: PlacedMotif | PlacedHalf
  readonly isHalf: boolean
  readonly stitches: number
  /** Sides of a square or a hexagon that no other motif lies at; left out of other motifs. */
  readonly free?: number
}

/** A line with the stitches of its first round: those that are picked up, whichever round the written ones begin on. */
export function firstRoundOf(loop: EdgingLoop): EdgingLoop {
  const { first, marks } = loop
  if (!first) return loop
  const at = first.map((_, i) => first.slice(0, i).reduce((sum, count) => sum + count, 0))
  return {
    ...loop,
    stitches: first.reduce((sum, count) => sum + count, 0),
    stretches: first,
    marks: marks.map((mark, i) => ({ ...mark, at: at[i] ?? mark.at })),
  }
}

/** Where every stitch of the set-up round of a loop stands on its line. */
function places({ edgingLines, round, settled }: Plan, loop: EdgingLoop): Point[] {
  const line = workedLine(edgingLines, loop.line, round !== undefined, settled.hand)
  if (line.length < 2) return []
  const along = alongOf(line)
  const isOpen = round !== undefined && loop.line < OPEN_ENDS
  const length = isOpen ? along[line.length - 1]! : along[line.length]!
  const first = loop.marks[0]?.along ?? 0
  const stops = [
    ...loop.marks.map(({ at, along: share }) => ({ at, mm: (first + ((share - first + 1) % 1)) * length })),
    { at: loop.stitches, mm: (first + 1) * length },
  ]
  if (loop.marks.length === 0) stops.unshift({ at: 0, mm: 0 })
  let segment = 0
  return Array.from({ length: loop.stitches }, (_, stitch) => {
    while (segment < stops.length - 2 && stops[segment + 1]!.at <= stitch) segment++
    const [a, b] = [stops[segment]!, stops[segment + 1]!]
    const mm = (a.mm + ((b.mm - a.mm) * (stitch + 0.5 - a.at)) / Math.max(1, b.at - a.at)) % length
    return pointAlong(line, along, mm)
  })
}

/**
 * The motifs along a loop with the stitches that are picked up from each: from the one whose middle is nearest. The
 * middle of a half is that of the whole one it is cut from.
 */
export function pickUps(plan: Plan, loop: EdgingLoop): PickUp[] {
  const size = Math.max(1, plan.pitch.column)
  const cells = new Map<string, PickUp['motif'][]>()
  const cellOf = ({ x, y }: Point): [number, number] => [Math.floor(x / size), Math.floor(y / size)]
  for (const motif of [...plan.motifs, ...plan.halves]) {
    const key = cellOf(motif).join(' ')
    cells.set(key, [...(cells.get(key) ?? []), motif])
  }
  const counts = new Map<PickUp['motif'], number>()
  const halves = new Set<PickUp['motif']>(plan.halves)
  const around = plan.round?.circumference ?? 0
  for (const stands of places(plan, loop)) {
    // Where a round closes, what stands beyond the last motif is the first one's other half.
    const place = { ...stands, x: around > 0 ? wrapped(stands.x, plan, around) : stands.x }
    const [across, down] = cellOf(place)
    let nearest: PickUp['motif'] | null = null
    for (let row = down - 2; row <= down + 2; row++)
      for (let column = across - 2; column <= across + 2; column++)
        for (const motif of cells.get(`${column} ${row}`) ?? [])
          if (!nearest || distance(motif, place) < distance(nearest, place)) nearest = motif
    if (nearest) counts.set(nearest, (counts.get(nearest) ?? 0) + 1)
  }
  const beside = (motif: PickUp['motif']): number => {
    const [across, down] = cellOf(motif)
    const others = SIDE_BY_SIDE.flatMap((row) =>
      SIDE_BY_SIDE.flatMap((column) => cells.get(`${across + column} ${down + row}`) ?? []),
    ).filter((other) => other !== motif)
    const next = Math.min(...others.map((other) => distance(other, motif)))
    return others.filter((other) => distance(other, motif) <= NEXT_TO * next).length
  }
  const sides = plan.motif?.shape === 'straight' && plan.accounts.length < 2 ? plan.motif.petals : 0
  return [...counts].map(([motif, stitches]) => {
    const isHalf = halves.has(motif)
    const free = !isHalf && (sides === 4 || sides === 6) ? sides - beside(motif) : undefined
    return { motif, isHalf, stitches, ...(free !== undefined && free >= 0 && { free }) }
  })
}

/** Cells of the search around a motif in which its neighbours lie. */
const SIDE_BY_SIDE = [-2, -1, 0, 1, 2] as const
/** How many times as far as the nearest motif one may lie that touches by a side: those of squares by a corner are at 1.41. */
const NEXT_TO = 1.2

/** As far along as the motifs of the map stand: from half a motif before the first of them to half behind the last. */
function wrapped(x: number, { motifs }: Plan, around: number): number {
  const first = Math.min(...motifs.map((motif) => motif.x))
  const from = first - (around - (Math.max(...motifs.map((motif) => motif.x)) - first)) / 2
  return from + ((((x - from) % around) + around) % around)
}
