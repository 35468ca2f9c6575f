/**
 * A project worked looser or tighter: every stitch grows alike, so sizes, stitch widths and the yarn of a stitch all
 * take the same factor. With another hook that is the ratio of the hooks (common practice, no source).
 */
import type { MeasuredSizes, Motif, Project, StitchGauge } from '../../shared-types/project'

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

/** The sizes of a motif by a factor. */
export const scaledSizes = <Kind extends MeasuredSizes>(sizes: Kind, factor: number): Kind =>
  scaledFields<Kind>(sizes, SIZES, factor)

/** What a motif was weighed or unravelled at, by a factor. */
export const scaledYarn = <Kind extends Motif>(motif: Kind, factor: number): Kind => ({
  ...motif,
  ...(motif.weighed && { weighed: scaledFields(motif.weighed, ['grams'], factor) }),
  ...(motif.unravelled && { unravelled: scaledRecord(motif.unravelled, factor) }),
})

function scaledGauge(gauge: StitchGauge, factor: number, hook: number | undefined): StitchGauge {
  return {
    ...scaledFields(scaledFields(gauge, ['stitches', 'rows'], 1 / factor), ['across'], factor),
    ...(gauge.heights && { heights: scaledRecord(gauge.heights, factor) }),
    ...(hook !== undefined && { hook }),
  }
}

function scaledMotif(motif: Motif, factor: number, hook: number | undefined): Motif {
  const gauge = motif.gauge && { gauge: scaledGauge(motif.gauge, factor, hook) }
  if (motif.kind === 'measured') {
    const { slots } = motif
    return {
      ...scaledSizes(scaledYarn(motif, factor), factor),
      ...gauge,
      ...(slots && { slots: slots.map((slot) => scaledFields(slot, ['grams'], factor)) }),
    }
  }
  const { rounds, measured } = motif
  return {
    ...scaledYarn(motif, factor),
    ...gauge,
    ...(measured && { measured: scaledSizes(measured, factor) }),
    ...(rounds && { rounds: rounds.map((round) => scaledFields(round, ['across'], factor)) }),
  }
}

/** The whole project by a factor, with another hook where one is named. */
export const scaledProject = (project: Project, factor: number, hook?: number): Project => ({
  ...project,
  ...(project.gauge && { gauge: scaledGauge(project.gauge, factor, hook) }),
  ...(project.motifs && { motifs: project.motifs.map((motif) => scaledMotif(motif, factor, hook)) }),
})
