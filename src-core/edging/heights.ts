/** How high a written round of an edging stands: as high as the tallest of what is worked in it. */
import { archBetween, archRise } from '../motif/rounds/arch'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { PICOT } from '../motif/rounds/constants'
import type { BorderStitch, LoopRound } from './reading'

const isRaised = ({ role }: BorderStitch): boolean =>
  role === 'stitch' || role === 'beginning' || role === 'slip'

/** Height in mm of what is worked, from where it goes in; 0 for what adds none. */
export function stitchHeight(
  { role, stitch, count, standing }: BorderStitch,
  gauge: ResolvedGauge,
): Millimetres {
  if (role === 'beginning') return standing ? count * gauge.height('ch') : 0
  if (role === 'stitch') return gauge.height(stitch)
  return role === 'slip' ? gauge.height('sl st') : 0
}

export const picotHeight = ({ count }: BorderStitch, gauge: ResolvedGauge): Millimetres =>
  PICOT * count * gauge.width

/** How far a loop of chains rises over the stitches that it leaves out (M9). */
export function loopRise(
  { count }: BorderStitch,
  before: BorderStitch | undefined,
  after: BorderStitch | undefined,
  gauge: ResolvedGauge,
): Millimetres {
  const chord = Math.max(1, (after?.into[0] ?? 1) - (before?.into.at(-1) ?? 0)) * gauge.width
  const length = count * gauge.width
  return length <= chord ? 0 : archRise(archBetween({ x: 0, y: 0 }, { x: chord, y: 0 }, length))
}

/** Height in mm of a round; picots stand out where nothing is worked over them. */
export function roundHeight({ stitches }: LoopRound, gauge: ResolvedGauge, isLast: boolean): Millimetres {
  let most = 0
  let below = 0
  stitches.forEach((each, i) => {
    if (isRaised(each)) most = Math.max(most, (below = stitchHeight(each, gauge)))
    else if (each.role === 'picot' && isLast) most = Math.max(most, below + picotHeight(each, gauge))
    else if (each.role === 'space') {
      const after = stitches.slice(i + 1).find(isRaised)
      const before = stitches.slice(0, i).reverse().find(isRaised)
      most = Math.max(most, below + loopRise(each, before, after, gauge))
    }
  })
  return most
}
