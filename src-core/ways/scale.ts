/**
 * A project worked looser or tighter: every stitch grows alike, so sizes, stitch widths and the yarn of a stitch all
 * take the same factor. With another hook that is the ratio of the hooks (common practice, no source).
 */
import type { MeasuredMotif, MeasuredSizes, Motif, Project, StitchGauge } from '../../shared-types/project'
import { isFromRounds } from '../motif/from-rounds'
import { sizesOf } from '../motif/taken-with'
import { tracedOutline } from '../motif/traced'

const SIZES = [
  'overTips',
  'overValleys',
  'across',
  'sideToSide',
  'pointToPoint',
  'length',
  'width',
] as const satisfies readonly (keyof MeasuredSizes)[]

/** Kept to a ten-thousandth, so that no tails stand in the file. */
const times = (value: number, factor: number): number => Math.round(value * factor * 1e4) / 1e4

function scaledFields<Kind extends object>(part: Kind, names: readonly (keyof Kind)[], factor: number): Kind {
  const scaled = { ...part }
  for (const name of names) {
    const value = part[name]
    if (typeof value === 'number') scaled[name] = times(value, factor) as Kind[keyof Kind]
  }
  return scaled
}

const scaledRecord = (record: Readonly<Record<string, number>>, factor: number): Record<string, number> =>
  Object.fromEntries(Object.entries(record).map(([name, value]) => [name, times(value, factor)]))

/** Sizes by a factor, for another motif than the one that was measured: worked out, and nothing to go back to. */
export const resized = <Kind extends MeasuredSizes>(sizes: Kind, factor: number): Kind => ({
  ...scaledFields<Kind>(sizes, SIZES, factor),
  asMeasured: {},
})

/** Sizes by a factor; what was measured is kept beside them, with the hook where another one is taken. */
function scaledSizes<Kind extends MeasuredSizes>(
  sizes: Kind,
  factor: number,
  hook?: number,
  isMeasured: (name: (typeof SIZES)[number]) => boolean = () => true,
): Kind {
  const measured = Object.fromEntries(
    SIZES.flatMap((name) => (sizes[name] === undefined || !isMeasured(name) ? [] : [[name, sizes[name]]])),
  )
  if (Object.keys(measured).length === 0) return scaledFields<Kind>(sizes, SIZES, factor)
  const asMeasured = { ...(hook !== undefined && { hook }), ...(sizes.asMeasured ?? measured) }
  return { ...scaledFields<Kind>(sizes, SIZES, factor), asMeasured }
}

/** By which factor, and with which hook, a project comes back to what was measured; null where nothing else is. */
export function backToMeasured(project: Project): { readonly factor: number; readonly hook?: number } | null {
  for (const motif of project.motifs ?? []) {
    const { asMeasured, ...sizes } = sizesOf(motif)
    const name = SIZES.find((each) => (asMeasured?.[each] ?? 0) > 0 && (sizes[each] ?? 0) > 0)
    if (!asMeasured || !name) continue
    const { hook } = asMeasured
    return { factor: asMeasured[name]! / sizes[name]!, ...(hook !== undefined && { hook }) }
  }
  return null
}

/** A motif with the sizes that were measured of it. */
export function withMeasured<Kind extends Motif>(motif: Kind): Kind {
  const restored = <Sizes extends MeasuredSizes>({ asMeasured, ...sizes }: Sizes): Sizes => {
    const { hook: _, ...measured } = asMeasured ?? {}
    return { ...sizes, ...measured } as Sizes
  }
  if (motif.kind === 'measured') return restored(motif) as Kind
  return motif.measured ? { ...motif, measured: restored(motif.measured) } : motif
}

/** What a motif was weighed or unravelled at, by a factor. */
export const scaledYarn = <Kind extends Motif>(motif: Kind, factor: number): Kind => ({
  ...motif,
  ...(motif.weighed && { weighed: scaledFields(motif.weighed, ['grams'], factor) }),
  ...(motif.unravelled && { unravelled: scaledRecord(motif.unravelled, factor) }),
})

const scaledSlots = (slots: NonNullable<MeasuredMotif['slots']>, factor: number) =>
  slots.map((slot) => scaledFields(slot, ['grams'], factor))

/** A motif whose sizes stay, or become by a factor, what the gauge makes of those of another hook; nothing was measured. */
export function withSizesBy(motif: Motif, factor: number): Motif {
  const { measuredWith: _, ...rest } = motif
  if (rest.kind === 'measured') return resized(rest as MeasuredMotif, factor)
  return { ...rest, ...(rest.measured && { measured: resized(rest.measured, factor) }) } as Motif
}

/** The same of what a motif was weighed at. */
export function withWeightBy(motif: Motif, factor: number): Motif {
  const { weighedWith: _, ...rest } = scaledYarn(motif, factor)
  const slots = rest.kind === 'measured' && rest.slots && { slots: scaledSlots(rest.slots, factor) }
  return { ...rest, ...slots, weightWorkedOut: true } as Motif
}

function scaledGauge(gauge: StitchGauge, factor: number, hook: number | undefined): StitchGauge {
  return {
    ...scaledFields(scaledFields(gauge, ['stitches', 'rows'], 1 / factor), ['across'], factor),
    ...(gauge.heights && { heights: scaledRecord(gauge.heights, factor) }),
    ...(hook !== undefined && { hook }),
  }
}

/** A traced motif with the sizes that its points have, where none were measured. */
function withTracedSizes(motif: MeasuredMotif): MeasuredMotif {
  if (motif.outline !== 'traced' || motif.overTips || motif.overValleys) return motif
  const traced = tracedOutline(motif.traced ?? {})
  return 'refused' in traced
    ? motif
    : { ...motif, overTips: times(2 * traced.tip, 1), overValleys: times(2 * traced.valley, 1) }
}

function scaledMotif(
  motif: Motif,
  factor: number,
  hook: number | undefined,
  general: StitchGauge | undefined,
): Motif {
  const before = hook === undefined ? undefined : (motif.gauge ?? general)?.hook
  const gauge = motif.gauge && { gauge: scaledGauge(motif.gauge, factor, hook) }
  if (motif.kind === 'measured') {
    const { slots, fromRounds } = motif
    const isMeasured = (name: (typeof SIZES)[number]) => !isFromRounds(motif, name)
    const given = fromRounds?.sizes && { sizes: scaledRecord(fromRounds.sizes, factor) }
    return {
      ...scaledSizes(scaledYarn(withTracedSizes(motif), factor), factor, before, isMeasured),
      ...gauge,
      ...(given && { fromRounds: { ...fromRounds, ...given } }),
      ...(slots && { slots: scaledSlots(slots, factor) }),
    }
  }
  const { rounds, measured } = motif
  return {
    ...scaledYarn(motif, factor),
    ...gauge,
    ...(measured && { measured: scaledSizes(measured, factor, before) }),
    ...(rounds && { rounds: rounds.map((round) => scaledFields(round, ['across'], factor)) }),
  }
}

/** The whole project by a factor, with another hook where one is named. */
export const scaledProject = (project: Project, factor: number, hook?: number): Project => ({
  ...project,
  ...(project.gauge && { gauge: scaledGauge(project.gauge, factor, hook) }),
  ...(project.motifs && {
    motifs: project.motifs.map((motif) => scaledMotif(motif, factor, hook, project.gauge)),
  }),
})
