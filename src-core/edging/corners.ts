/** M35: how many stitches more than one a plain round of an edging has in each of its outward corners. */
import type { ResolvedGauge } from '../stitches/gauge'
import type { StitchKey } from '../stitches/table'
import { EDGING } from './constants'
import type { LinePlace } from './line-places'

/**
 * A corner that turns by θ is 2·tan(θ/2)·h longer at a height of h: two sc more, four dc more, at a right angle, which
 * are the three sc or five dc in one place that patterns work there (common practice). At sharp corners an even number,
 * so that the corner is a stitch. Null where a line has no corners that are worked so.
 */
export function cornerIncrease(
  corners: number,
  stitch: StitchKey,
  gauge: Pick<ResolvedGauge, 'width' | 'height'>,
): number | null {
  if (corners < EDGING.corners.least || corners > EDGING.corners.most) return null
  const turn = (2 * Math.PI) / corners
  const more = (2 * Math.tan(turn / 2) * gauge.height(stitch)) / gauge.width
  return turn >= EDGING.sharp ? 2 * Math.round(more / 2) : Math.round(more)
}

/** A tip or dip of a line that goes in and out, as a share of the line. */
export interface Bend extends Pick<LinePlace, 'turn'> {
  readonly growth: number
  readonly along: number
  /** Which corner of its line it stands at, where it stands at one. */
  readonly corner?: number
}

/**
 * The same of a line that goes in and out, at each tip by itself, and as many fewer in each dip: a tip of 60° takes two
 * sc in one place, a dip of 60° two worked together.
 */
export function bendIncrease(
  { turn, growth }: Pick<Bend, 'turn' | 'growth'>,
  stitch: StitchKey,
  gauge: Pick<ResolvedGauge, 'width' | 'height'>,
): number {
  const more = (growth * gauge.height(stitch)) / gauge.width
  const isSharp = turn >= EDGING.sharp
  return (isSharp ? 2 * Math.round(more / 2) : Math.round(more)) || 0
}

/**
 * Tips and dips that turn by nearly as much are those of one shape, measured along a line that was drawn a little
 * differently each time: they are worked alike, so that what is rounded at a tip is at a dip too.
 */
function alikeAs(bends: readonly Bend[]): readonly Pick<Bend, 'turn' | 'growth'>[] {
  const sorted = [...bends].sort((a, b) => Math.abs(a.growth) - Math.abs(b.growth))
  const groups: Bend[][] = []
  for (const bend of sorted) {
    const group = groups.at(-1)
    if (group && Math.abs(bend.growth) <= EDGING.alike * Math.abs(group[0]!.growth)) group.push(bend)
    else groups.push([bend])
  }
  const told = new Map<Bend, Pick<Bend, 'turn' | 'growth'>>()
  for (const group of groups) {
    const mean = (of: (bend: Bend) => number): number =>
      group.reduce((sum, bend) => sum + Math.abs(of(bend)), 0) / group.length
    const [turn, growth] = [mean((bend) => bend.turn), mean((bend) => bend.growth)]
    for (const bend of group)
      told.set(bend, { turn: Math.sign(bend.turn) * turn, growth: Math.sign(bend.growth) * growth })
  }
  return bends.map((bend) => told.get(bend)!)
}

/** How many stitches more a plain round has at each place of a line where it grows or shrinks; null where it grows evenly. */
export function increases(
  { corners, bends }: { readonly corners: number; readonly bends?: readonly Bend[] },
  stitch: StitchKey,
  gauge: Pick<ResolvedGauge, 'width' | 'height'>,
): number[] | null {
  if (bends) return alikeAs(bends).map((bend) => bendIncrease(bend, stitch, gauge))
  const each = cornerIncrease(corners, stitch, gauge)
  return each === null ? null : Array.from({ length: corners }, () => each)
}
