/** M33, first half: in which order the motifs are worked. */
import type { Finding } from '../../shared-types/finding'
import type { Order } from '../../shared-types/project'
import type { Hand } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { directionOf } from '../geometry/points'
import type { Placement } from '../layout/blanket'
import { workingSign } from '../motif/anchors'

interface SequenceInput {
  readonly placements: readonly Placement[]
  readonly order: Order
  readonly hand: Hand
  /** Colourway per placement, and the colourways in the order of the project. */
  readonly colourways: readonly string[]
  readonly colourwayOrder: readonly string[]
  /** Rows are shifted against each other: distances from the centre are counted on the hexagonal lattice. */
  readonly offset: boolean
}

/** Indices of the placements in working order: every one exactly once. */
export function workSequence(input: SequenceInput): { sequence: number[]; findings: Finding[] } {
  const { placements, order } = input
  const byRow = placements.map((_, i) => i)
  if (Array.isArray(order)) return listed(placements, order)
  switch (order as Exclude<Order, string[]>) {
    case 'one-way':
      return { sequence: byRow, findings: [] }
    case 'upward':
      return { sequence: upward(placements), findings: [] }
    case 'centre':
      return { sequence: fromCentre(input), findings: [] }
    case 'colourway': {
      const rank = new Map(input.colourwayOrder.map((id, i) => [id, i]))
      const rankOf = (i: number) => rank.get(input.colourways[i] ?? '') ?? rank.size
      return { sequence: byRow.sort((a, b) => rankOf(a) - rankOf(b) || a - b), findings: [] }
    }
    default:
      return { sequence: thereAndBack(placements), findings: [] }
  }
}

/**
 * The whole working order: half motifs and fillers come in at the end of the row (of any run of motifs in one row)
 * in which the last one that they are joined to was made, half motifs first. `halves` and `fillers` name the
 * placements that each of them waits for. Pieces by index: placements, then halves, then fillers.
 */
export function sequenceWithAdditions(
  sequence: readonly number[],
  placements: readonly Pick<Placement, 'row'>[],
  halves: readonly (readonly number[])[],
  fillers: readonly (readonly number[])[],
): readonly number[] {
  const needs = [...halves, ...fillers].map((round) => new Set(round))
  if (needs.length === 0) return sequence
  const waiting = new Map<number, number[]>()
  needs.forEach((round, index) => {
    for (const motif of round) waiting.set(motif, [...(waiting.get(motif) ?? []), index])
  })
  const missing = needs.map((round) => round.size)
  const order: number[] = []
  let ready: number[] = []
  sequence.forEach((motif, i) => {
    order.push(motif)
    for (const index of waiting.get(motif) ?? []) if (--missing[index]! === 0) ready.push(index)
    const next = placements[sequence[i + 1] ?? -1]
    if (next?.row === placements[motif]!.row) return
    const isHalf = (index: number): boolean => index < halves.length
    const sorted = [...ready.filter(isHalf), ...ready.filter((index) => !isHalf(index))]
    order.push(...sorted.map((index) => placements.length + index))
    ready = []
  })
  return order
}

function thereAndBack(placements: readonly Placement[]): number[] {
  const sequence = placements.map((_, i) => i)
  const column = (i: number) => placements[i]!.column * (placements[i]!.row % 2 === 1 ? 1 : -1)
  return sequence.sort((a, b) => placements[a]!.row - placements[b]!.row || column(a) - column(b))
}

/** There and back from the last row up: a shawl begins at its point, and can end where the yarn does. */
function upward(placements: readonly Placement[]): number[] {
  const last = placements.reduce((most, { row }) => Math.max(most, row), 0)
  const column = (i: number) => placements[i]!.column * ((last - placements[i]!.row) % 2 === 0 ? 1 : -1)
  return placements
    .map((_, i) => i)
    .sort((a, b) => placements[b]!.row - placements[a]!.row || column(a) - column(b))
}

/** In which ring a motif lies, so many rows and half places from the one in the middle. */
export const ringAt = (rows: number, halves: number, offset: boolean): number =>
  offset ? rows + Math.max(0, (halves - rows) / 2) : Math.max(rows, halves / 2)

/** Round after round from the middle outward, each round in working direction from 12 o'clock. */
function fromCentre({ placements, hand, offset }: SequenceInput): number[] {
  const cx = placements.reduce((sum, p) => sum + p.x, 0) / Math.max(1, placements.length)
  const cy = placements.reduce((sum, p) => sum + p.y, 0) / Math.max(1, placements.length)
  const far = (p: Placement) => Math.hypot(p.x - cx, p.y - cy)
  // The motif nearest the middle; of equals the first.
  const middle = placements.reduce((best, p) => (far(p) < far(best) - 1e-6 ? p : best), placements[0]!)
  const sign = workingSign(hand)
  const keys = placements.map((p) => {
    const rows = Math.abs(p.row - middle.row)
    const halves = Math.abs(p.halves - middle.halves)
    const ring = ringAt(rows, halves, offset)
    const angle = sign * directionOf({ x: p.x - middle.x, y: p.y - middle.y })
    return { ring, angle: (angle + 4 * Math.PI + 1e-9) % (2 * Math.PI) }
  })
  return placements
    .map((_, i) => i)
    .sort((a, b) => keys[a]!.ring - keys[b]!.ring || keys[a]!.angle - keys[b]!.angle || a - b)
}

/** An order by hand: unknown and repeated places are reported, what is left out comes last. */
function listed(placements: readonly Placement[], order: readonly string[]) {
  const findings: Finding[] = []
  const index = new Map(placements.map((place, i) => [place.id, i]))
  const sequence = new Set<number>()
  order.forEach((entry, n) => {
    const id = entry.replace(/\s/g, '')
    const i = index.get(id)
    if (i === undefined) findings.push(finding('order/unknown-place', `order[${n}]`, { id: entry }))
    else if (sequence.has(i))
      findings.push(finding('order/repeated', `order[${n}]`, { id: entry }, { cells: [id] }))
    else sequence.add(i)
  })
  const missing = placements.length - sequence.size
  if (missing > 0) findings.push(finding('order/incomplete', 'order', { count: missing }))
  placements.forEach((_, i) => sequence.add(i))
  return { sequence: [...sequence], findings }
}
