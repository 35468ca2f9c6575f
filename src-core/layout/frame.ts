/** A laid blanket in the frame of its finished size: with its edging round it, and blocked. */
import type { JoinNode, MotifAccount, PlacedMotif, PlanSize } from '../../shared-types/plan'
import { isStretched } from '../joins/checks'
import type { Millimetres } from '../units/quantity'
import type { Arranged, Joined } from './stages'

/** What `finish` needs to know of edging and blocking. */
interface Frame {
  readonly edging: Millimetres
  readonly blockWidth: number
  readonly blockHeight: number
}

/** From the top left of all outlines to the finished size: edging round it, then the factors of blocking. */
export const inFrame = ({ edging, blockWidth, blockHeight }: Frame) => ({
  x: (value: number) => (value + edging) * blockWidth,
  y: (value: number) => (value + edging) * blockHeight,
})

/** The size of all outlines with the edging round it, after blocking. */
export function finished(
  size: { readonly width: number; readonly height: number },
  {
    edging,
    blocking,
  }: { readonly edging: Millimetres; readonly blocking: { width: number; height: number } },
): { readonly width: Millimetres; readonly height: Millimetres } {
  const { x, y } = inFrame({ edging, blockWidth: blocking.width, blockHeight: blocking.height })
  return { width: x(size.width + edging), height: y(size.height + edging) }
}

/** The finished size and its bounds. */
export function finishSize(
  account: MotifAccount,
  arranged: Arranged,
  edging: Millimetres,
  blockWidth: number,
  blockHeight: number,
): PlanSize {
  const blocking = { width: blockWidth, height: blockHeight }
  const { width, height } = finished(arranged, { edging, blocking })
  const share = (bound: number) => bound / account.overTips
  const bounded = (bound: number) => ({ width: width * share(bound), height: height * share(bound) })
  return {
    width,
    height,
    sensitivity: {
      ...arranged.sensitivity,
      width: arranged.sensitivity.width * blockWidth,
      height: arranged.sensitivity.height * blockHeight,
    },
    range: { low: bounded(account.range.low), high: bounded(account.range.high) },
  }
}

/** The placed motifs with their working numbers, first petals and colourways. */
export function finishMotifs(
  arranged: Arranged,
  labels: readonly number[],
  firsts: readonly number[],
  colourways: readonly string[],
  edging: Millimetres,
  blockWidth: number,
  blockHeight: number,
): PlacedMotif[] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return arranged.placements.map((p, i) => ({
    id: p.id,
    label: String(labels[i]),
    row: p.row,
    column: p.column,
    x: x(p.x),
    y: y(p.y),
    turn: p.turn,
    colourway: colourways[i] ?? '',
    firstPetal: firsts[i]!,
  }))
}

/** The meeting points, each with the motif that was there first. */
export function finishJoins(
  arranged: Arranged,
  joined: Joined,
  labels: readonly number[],
  edging: Millimetres,
  blockWidth: number,
  blockHeight: number,
): JoinNode[] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  const { placements } = arranged
  return joined.nodes.map((node) => {
    const members = [...node.members].sort((a, b) => labels[a.motif]! - labels[b.motif]!)
    return {
      x: x(node.x),
      y: y(node.y),
      spread: node.spread,
      host: placements[members[0]!.motif]!.id,
      members: members.map((member) => ({
        motif: placements[member.motif]!.id,
        anchor: joined.anchors[member.anchor]!.id,
      })),
      ...(isStretched(node, joined.stretchLimit) ? { stretched: true as const } : {}),
    }
  })
}
