/** The marks of made motifs: a tick on light ground, with a hem where the motif is joined too. It leaves the colour to be seen. */
import type { Point } from '../../shared-types/plan'
import { drawPath } from './figure'
import type { Colour, FigureItem, Path } from './figure'
import { circlePath } from './path'

/** A tick about the middle of a motif that reaches so far to its tips. */
export interface MadeTick extends Point {
  readonly reach: number
  readonly isJoined: boolean
}

/** Where it stands below the middle and how large its ground is, as shares of the reach. */
const SHARE = { down: 0.58, radius: 0.22 } as const

/** Ticks as draw items, those of one paint in one path; `least` and `most` bound the radius of their ground. */
export function tickItems(
  ticks: readonly MadeTick[],
  bounds: { readonly least: number; readonly most: number },
  ink: Colour,
  paper: Colour,
): FigureItem[] {
  if (ticks.length === 0) return []
  const radius = Math.min(
    bounds.most,
    Math.max(bounds.least, Math.min(...ticks.map(({ reach }) => reach)) * SHARE.radius),
  )
  const middles = ticks.map(({ x, y, reach, isJoined }) => ({ x, y: y + reach * SHARE.down, isJoined }))
  const discs = (of: typeof middles): Path => of.flatMap(({ x, y }) => circlePath(x, y, radius))
  const strokes: Path = middles.flatMap(({ x, y }): Path => [
    ['M', x - radius * 0.5, y + radius * 0.02],
    ['L', x - radius * 0.12, y + radius * 0.42],
    ['L', x + radius * 0.54, y - radius * 0.4],
  ])
  const joined = middles.filter(({ isJoined }) => isJoined)
  return [
    drawPath(discs(middles), { fill: paper }),
    ...(joined.length > 0 ? [drawPath(discs(joined), { stroke: ink, width: radius * 0.16 })] : []),
    drawPath(strokes, { stroke: ink, width: radius * 0.28, cap: 'round' }),
  ]
}
