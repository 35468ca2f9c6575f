/**
 * The marks of made motifs, to be told apart when they are small: a dark tick on light ground, and where the motif is
 * joined too a light tick on dark ground. Both leave the colour to be seen.
 */
import type { Point } from '../../shared-types/plan'
import { drawPath } from './figure'
import type { Colour, FigureItem, Path } from './figure'
import { circlePath } from './path'

/** A tick about the middle of a motif that reaches so far to its tips. */
export interface MadeTick extends Point {
  readonly reach: number
  readonly isJoined: boolean
  /** So far from the middle it covers nothing: the disc of its number and letter. */
  readonly clear?: number
  /** Of a half motif: where on it a mark stands that is so far from its middle. */
  readonly place?: (off: number) => Point
}

/** Where it stands below the middle on paper, and how large its ground is, as shares of the reach. */
const SHARE = { down: 0.56, radius: 0.27 } as const

/** Where a tick stands from the middle, as shares of the reach. */
export interface TickSeat {
  readonly across: number
  readonly down: number
}

const BELOW: TickSeat = { across: 0, down: SHARE.down }

/** Below and to the right, where four motifs in straight rows leave an opening. */
export const TICK_ASLANT: TickSeat = {
  across: SHARE.down * Math.SQRT1_2,
  down: SHARE.down * Math.SQRT1_2,
}

/** Beside the number and off the petal with the letter of the colourway, below it, and the mark of a fixed colour, above. */
export const TICK_BESIDE: TickSeat = { across: 0.48, down: -0.4 }

/** Share of the radius: what goes round the ground, and the stroke of the tick. */
const STROKE = { hem: 0.14, tick: 0.3 } as const

/** What the two marks say, for a legend. */
export const tickWords = (joinedAs: string): Readonly<Record<'made' | 'joined', string>> => ({
  made: `made, not ${joinedAs} yet`,
  joined: `made and ${joinedAs}`,
})

/** Ticks as draw items, those of one paint in one path; `least` and `most` bound the radius of their ground. */
export function tickItems(
  ticks: readonly MadeTick[],
  bounds: { readonly least: number; readonly most: number },
  ink: Colour,
  paper: Colour,
  seat: TickSeat = BELOW,
): FigureItem[] {
  if (ticks.length === 0) return []
  const radius = Math.min(
    bounds.most,
    Math.max(bounds.least, Math.min(...ticks.map(({ reach }) => reach)) * SHARE.radius),
  )
  const share = Math.hypot(seat.across, seat.down)
  const middles = ticks.map(({ x, y, reach, isJoined, clear = 0, place }) => {
    // Farther out than its seat where number and letter reach so far.
    const off = Math.max(reach * share, clear + radius * (1 + STROKE.hem / 2))
    if (place) return { ...place(off), isJoined }
    const far = off / share
    return { x: x + far * seat.across, y: y + far * seat.down, isJoined }
  })
  const discs = (of: typeof middles): Path => of.flatMap(({ x, y }) => circlePath(x, y, radius))
  const strokes = (of: typeof middles): Path =>
    of.flatMap(({ x, y }): Path => [
      ['M', x - radius * 0.5, y + radius * 0.02],
      ['L', x - radius * 0.12, y + radius * 0.42],
      ['L', x + radius * 0.54, y - radius * 0.4],
    ])
  const marks = (of: typeof middles, ground: Colour, line: Colour): FigureItem[] =>
    of.length === 0
      ? []
      : [
          drawPath(discs(of), { fill: ground, stroke: line, width: radius * STROKE.hem }),
          drawPath(strokes(of), { stroke: line, width: radius * STROKE.tick, cap: 'round' }),
        ]
  return [
    ...marks(
      middles.filter(({ isJoined }) => !isJoined),
      paper,
      ink,
    ),
    ...marks(
      middles.filter(({ isJoined }) => isJoined),
      ink,
      paper,
    ),
  ]
}
