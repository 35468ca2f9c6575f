/** The account of a leaf: rounds on a foundation chain that is worked along on both sides. */
import type { MotifAccount } from '../../../shared-types/plan'
import type { RoundsMotif } from '../../../shared-types/project'
import { sizeSpread } from '../../stitches/gauge'
import type { ResolvedGauge } from '../../stitches/gauge'
import { leafAnchors } from '../anchors'
import { MEASURED_SPREAD } from '../constants'
import { leafOutline, leafWidest } from '../outlines'
import type { RoundsAccount, RoundsContext } from './account'
import { locateLeaf, stemPoints } from './leaf'
import { slotOf } from './read-motif'
import type { ReadMotif } from './read-motif'
import type { Shape } from './shape'
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
  const width = sides.reduce((sum, { near, far }) => sum + near + (far || near), 0)
  const length = read.stemChains * gauge.width + sides.slice(1).reduce((sum, { end }) => sum + 2 * end, 0)
  const shape: Shape = {
    shape: 'leaf',
    petals: 2,
    overTips: length,
    overValleys: width,
    outline: leafOutline(length, width),
    anchors: leafAnchors(length, width, leafWidest(length), context.hand),
    turn: 0,
  }
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + context.growth : 1
  const own = {
    length: (measured?.length ?? measured?.overTips ?? 0) * grown || length,
    width: (measured?.width ?? measured?.overValleys ?? 0) * grown || width,
  }
  const ruled = own.length !== length || own.width !== width
  const spread = ruled ? MEASURED_SPREAD : sizeSpread(gauge, tallest(read.worked))
  const work = slotWork(read.worked, (round) => slotOf(motif, read, round), gauge)
  const outline = ruled ? leafOutline(own.length, own.width) : shape.outline
  const slots = [...new Set(read.worked.map((round) => slotOf(motif, read, round)))].reverse()
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: shape.shape,
    petals: shape.petals,
    overTips: own.length,
    overValleys: own.width,
    outline,
    anchors: ruled ? leafAnchors(own.length, own.width, leafWidest(own.length), context.hand) : shape.anchors,
    range: { low: own.length * (1 - spread), high: own.length * (1 + spread) },
    provenance: ruled ? 'measured' : gauge.provenance,
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
    findings: read.findings,
  }
  const located = locateLeaf(read.worked, read.stemChains, gauge)
  const beginning = {
    stitchWidth: gauge.width,
    ringChains: 0,
    stem: stemPoints(read.stemChains, gauge.width),
    turn: 0,
  }
  return { account, findings: read.findings, located, beginning, read }
}
