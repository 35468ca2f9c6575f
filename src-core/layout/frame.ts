/** A laid blanket in the frame of its finished size: with its edging round it, and blocked. */
import type { JoinNode, LeftOutPlace, MotifAccount, PlacedMotif, PlanSize } from '../../shared-types/plan'
import type { EdgingEnds } from '../../shared-types/project'
import { isStretched } from '../joins/checks'
import type { Millimetres } from '../units/quantity'
import type { Arranged, Joined } from './stages'

/** The height of an edging, and the room that it takes at each side, in mm before blocking. */
export interface EdgingRoom {
  readonly height: Millimetres
  readonly side: Millimetres
  readonly top: Millimetres
  readonly bottom: Millimetres
}

/** Of what is joined in the round an edging takes no room where the round closes, and may be at one end alone. */
export const edgingRoom = (height: Millimetres, isRound: boolean, ends: EdgingEnds = 'both'): EdgingRoom => ({
  height,
  side: isRound ? 0 : height,
  top: isRound && ends === 'bottom' ? 0 : height,
  bottom: isRound && ends === 'mouth' ? 0 : height,
})

/** What `finish` needs to know of edging and blocking. */
interface Frame {
  readonly edging: EdgingRoom
  readonly blockWidth: number
  readonly blockHeight: number
}

/** From the top left of all outlines to the finished size: edging round it, then the factors of blocking. */
export const inFrame = ({ edging, blockWidth, blockHeight }: Frame) => ({
  x: (value: number) => (value + edging.side) * blockWidth,
  y: (value: number) => (value + edging.top) * blockHeight,
})

/**
 * The size of all outlines with the edging round it, after blocking. What is joined in the round is as wide as once
 * round it, and has an edging at its open ends alone.
 */
export function finished(
  size: { readonly width: number; readonly height: number; readonly round?: Millimetres },
  { edging, blocking }: { readonly edging: EdgingRoom; readonly blocking: { width: number; height: number } },
): { readonly width: Millimetres; readonly height: Millimetres } {
  const { x, y } = inFrame({ edging, blockWidth: blocking.width, blockHeight: blocking.height })
  const height = y(size.height + edging.bottom)
  return { width: size.round ? size.round * blocking.width : x(size.width + edging.side), height }
}

/** The finished size and its bounds. */
export function finishSize(
  accounts: readonly MotifAccount[],
  arranged: Arranged,
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): PlanSize {
  const blocking = { width: blockWidth, height: blockHeight }
  const { width, height } = finished(arranged, { edging, blocking })
  // Of several motifs the one that is least sure.
  const shares = accounts.map(({ range, overTips }) => [range.low / overTips, range.high / overTips] as const)
  const bounded = (share: number) => ({ width: width * share, height: height * share })
  return {
    width,
    height,
    sensitivity: {
      ...arranged.sensitivity,
      width: arranged.sensitivity.width * blockWidth,
      height: arranged.sensitivity.height * blockHeight,
    },
    range: {
      low: bounded(Math.min(...shares.map(([low]) => low))),
      high: bounded(Math.max(...shares.map(([, high]) => high))),
    },
  }
}

/** The placed motifs with their working numbers, first petals and colourways. */
export function finishMotifs(
  arranged: Arranged,
  labels: readonly number[],
  firsts: readonly number[],
  colourways: readonly string[],
  motifs: readonly string[],
  edging: EdgingRoom,
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
    ...(motifs.length > 1 ? { motif: motifs[p.kind]! } : {}),
    firstPetal: firsts[i]!,
  }))
}

/** The places that were left out by hand. */
export function finishLeftOut(
  { leftOut }: Arranged,
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): LeftOutPlace[] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return leftOut.map((place) => ({ id: place.id, x: x(place.x), y: y(place.y) }))
}

/** The meeting points, each with the motif that was there first. */
export function finishJoins(
  arranged: Arranged,
  joined: Joined,
  labels: readonly number[],
  edging: EdgingRoom,
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
        anchor: joined.anchors[placements[member.motif]!.kind]![member.anchor]!.id,
      })),
      ...(isStretched(node, joined.stretchLimit) ? { stretched: true as const } : {}),
      ...(node.wraps ? { wraps: true as const } : {}),
    }
  })
}
