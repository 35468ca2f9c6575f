/**
 * The account of a figure with a length and a width: a leaf, an oval, a piece in rows, a heart, half a motif. What is
 * measured or stated of it rules, each way by itself.
 */
import type { Finding } from '../../../shared-types/finding'
import type { FigureForm, MotifAccount } from '../../../shared-types/plan-motif'
import type { RoundsMotif } from '../../../shared-types/project'
import type { Outline } from '../../geometry/points'
import type { ResolvedGauge } from '../../stitches/gauge'
import { sizeSpread } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { againstRounds } from '../against-rounds'
import { leafAnchors } from '../anchors'
import { MEASURED_SPREAD } from '../constants'
import { stands } from '../forms'
import { measuredOrAimed } from '../measured'
import { areStated, statedFindings, statedSpread } from '../stated'
import type { RoundsContext } from './account'
import { cleftOf } from './forms-of-rows'
import { slotOf } from './read-motif'
import type { ReadMotif } from './read-motif'
import { slotWork, tallest } from './stitch-counts'

export interface FigureSize {
  readonly length: Millimetres
  readonly width: Millimetres
}

/** What the rounds give of a figure. */
export interface Figure {
  readonly form: FigureForm | null
  readonly size: FigureSize
  /** The outline at a size, its tip above, about its middle. */
  readonly outlineAt: (size: FigureSize) => Outline
  /** By round: the length up to it. */
  readonly lengths: readonly Millimetres[]
  readonly findings: readonly Finding[]
}

/** How far from its middle a figure is widest. */
const widestOf = (outline: Outline): Millimetres =>
  outline.reduce((widest, point) => (point.x > widest.x + 1e-9 ? point : widest)).y

export function figureAccount(
  motif: RoundsMotif,
  { hand, growth, terms }: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
  { form, size: { length, width }, outlineAt, lengths, findings: found }: Figure,
): { account: MotifAccount; findings: readonly Finding[] } {
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + growth : 1
  const own = {
    length: (measured?.length ?? measured?.overTips ?? 0) * grown || length,
    width: (measured?.width ?? measured?.overValleys ?? 0) * grown || width,
  }
  const ruled = own.length !== length || own.width !== width
  const common = tallest(read.worked)
  const isStated = ruled && areStated(motif, measured ?? {}, ['length', 'overTips', 'width', 'overValleys'])
  const spread = !ruled ? sizeSpread(gauge, common) : isStated ? statedSpread(gauge, common) : MEASURED_SPREAD
  const [known, expected] = own.length !== length ? [own.length, length] : [own.width, width]
  const isUpright = stands(form ? { form } : {})
  const what = own.length !== length ? (isUpright ? 'high' : 'long') : 'wide'
  const against =
    ruled && !isStated
      ? againstRounds({ what, measured: known / grown, expected: expected / grown }, gauge, common)
      : null
  const findings = [
    ...read.findings,
    ...found,
    ...(isStated ? statedFindings(known, expected, gauge, common) : against ? [against] : []).map(
      (entry) => ({
        ...entry,
        where: `motif ${motif.id}`,
        target: { motif: motif.id },
      }),
    ),
  ]
  const outline = outlineAt(own)
  const slots = [...new Set(read.worked.map((round) => slotOf(motif, read, round)))].reverse()
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: 'leaf',
    ...(form && { form }),
    petals: 2,
    overTips: own.length,
    overValleys: own.width,
    outline,
    anchors: leafAnchors(own.length, own.width, widestOf(outline), hand, form ?? undefined).map((anchor) =>
      form === 'heart' && anchor.id === 'tip-1' ? { ...anchor, y: cleftOf(outline) ?? anchor.y } : anchor,
    ),
    range: { low: own.length * (1 - spread), high: own.length * (1 + spread) },
    provenance: !ruled ? gauge.provenance : isStated ? 'stated' : measuredOrAimed(motif, terms),
    rounds: read.worked.map((round, i) => ({
      number: round.number,
      // Where no round could be read, the chain alone makes the length.
      outerRadius: (length > 0 ? (lengths[i] ?? length) / length : 1) * (own.length / 2),
      stitches: round.stitches,
      flatness: 1,
      lies: null,
    })),
    ...slotWork(read.worked, (round) => slotOf(motif, read, round), gauge, {
      ring: read.ringChains,
      stem: read.stemChains,
    }),
    layers: slots.map((slot, i) => ({
      slot,
      outline: outline.map(({ x, y }) => ({
        x: (x * (slots.length - i)) / slots.length,
        y: (y * (slots.length - i)) / slots.length,
      })),
    })),
    findings,
  }
  return { account, findings }
}
