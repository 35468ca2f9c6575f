/** The gauge that a work was planned by, in words. */
import type { StitchGauge } from '../../shared-types/project'
import { plural } from '../../src-core/figures/words'
import { cordGauge } from '../../src-core/layout/garland/cord'
import { byKind, garlandOf } from '../../src-core/plans/layouts'
import { canonicalStitch, stitchName, translateStitch } from '../../src-core/stitches/terms'
import { formatLength, formatNumber } from '../../src-core/units/format'
import type { Job } from './page'
import { MATERIAL_WORDS } from './words-materials'

/** The trade takes 10 cm and 4 in for the same swatch. */
const swatchWords = (over: number, job: Job): string =>
  over === 100 || over === 101.6 ? MATERIAL_WORDS.swatch(job.units) : formatLength(over, job.units)

/** The gauge in words: "20 sc (single crochet) × 22 rows to 10 cm (4 in)". */
export function gaugeWords(job: Job, gauge: StitchGauge | undefined): string | null {
  if (!gauge) return null
  const from = job.settled.terms
  const written = gauge.stitch ?? (from === 'UK' ? 'dc' : 'sc')
  const stitch = translateStitch(written, from, job.terms) ?? written
  const key = canonicalStitch(stitch, job.terms)
  const name = key ? `${stitch} (${stitchName(key, job.terms)})` : stitch
  const rows = gauge.rows ? ` × ${formatNumber(gauge.rows, 1)} ${plural(gauge.rows, 'row')}` : ''
  const swatch = gauge.stitches
    ? `${formatNumber(gauge.stitches, 1)} ${name}${rows} to ${swatchWords(gauge.over ?? 100, job)}`
    : null
  if (gauge.rounds && gauge.across) {
    const isStraight = job.plan.motif?.shape === 'straight'
    const across = `${formatLength(gauge.across, job.units)} ${isStraight ? 'from side to side' : 'across'}`
    const told = MATERIAL_WORDS.roundsMeasure(gauge.rounds, across)
    if (!swatch) return told
    // What was measured, or is stated, follows from neither.
    return `${told}${job.plan.motif?.provenance === 'gauge' ? ', from which the sizes follow' : ''}; ${swatch}`
  }
  return swatch
}

/** "24 chains to 10 cm (4 in)": by which those of a cord are counted; '' where nobody said how many. */
export function chainGaugeWords(job: Job): string {
  const { worked, gauge } = garlandOf(job.settled)?.cord ?? {}
  const chains = gauge?.chains
  return worked === 'bought' || !chains
    ? ''
    : `${formatNumber(chains, 1)} ${plural(chains, 'chain')} to ${swatchWords(gauge.over ?? 100, job)}`
}

/** The gauge that it was planned by: of its motif, of the cord, else of the project. */
export const plannedGauge = ({ plan, settled }: Job): StitchGauge | undefined => {
  const ofMotif = (settled.motifs.find(({ id }) => id === plan.motif?.id) ?? settled).gauge
  return byKind(plan, {
    blanket: () => ofMotif,
    garland: () => cordGauge(settled, garlandOf(settled)),
    applique: () => ofMotif,
  })
}
