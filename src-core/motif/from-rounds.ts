/** Sizes of a measured motif that nobody measured: they stand as its written rounds give them. */
import type { MeasuredMotif, MeasuredSizes } from '../../shared-types/project'

type SizeName = Exclude<keyof MeasuredSizes & string, 'ruler' | 'blocked' | 'asMeasured'>

/** mm. Less than a file keeps: a size that differs by more was entered. */
const SAME = 1e-3

/** Whether a size stands as the rounds give it. */
export function isFromRounds(motif: MeasuredMotif, name: SizeName): boolean {
  const [given, now] = [motif.fromRounds?.sizes?.[name], motif[name]]
  return given !== undefined && typeof now === 'number' && Math.abs(now - given) < SAME
}

/** The motif with a size that somebody entered, be it the one that stood there. */
export function withoutFromRounds(motif: MeasuredMotif, name: string): MeasuredMotif {
  const { fromRounds } = motif
  if (fromRounds?.sizes?.[name] === undefined) return motif
  const { [name]: _, ...sizes } = fromRounds.sizes
  return { ...motif, fromRounds: { ...fromRounds, sizes } }
}
