/** M27: fillers in the openings between motifs: which openings take one, and what is to be said about it. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import { finding, findingOf, said } from '../findings/finding'
import type { Said } from '../findings/finding'
import { lengthValue } from '../findings/quantities'
import { CHILD_OPENING } from '../joins/constants'
import { stretchLimit } from '../joins/rule'
import type { ResolvedGauge } from '../stitches/gauge'
import { stitchAbbreviation } from '../stitches/terms'
import { formatLength } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { FILLER_GIVES, LEAST_FILLER_STITCHES, SAME_OPENING } from './constants'
import { fillerRadii, fitFiller } from './filler-fit'
import type { FillerFit } from './filler-fit'
import type { Opening, OpeningKind } from './holes'
import type { Lattice } from './lattice'

/** An opening with a filler in it. */
export interface Filled {
  readonly opening: Opening
  readonly fit: FillerFit
}

export interface Filling {
  /** In the order of the motifs that the openings begin with. */
  readonly filled: readonly Filled[]
  /** Joins of all fillers together: one to each motif round each of them. */
  readonly joins: number
  /** Radius of the largest opening that stays. */
  readonly open: Millimetres
  readonly findings: readonly Finding[]
}

const largest = (radii: readonly Millimetres[]): Millimetres =>
  radii.reduce((most, r) => Math.max(most, r), 0)

/** Every opening as it is. */
const unfilled = (openings: readonly Opening[], findings: readonly Finding[] = []): Filling => ({
  filled: [],
  joins: 0,
  open: largest(openings.map(({ kind }) => kind.radius)),
  findings,
})

/**
 * Puts a filler into every opening of the kind whose inscribed circle it fits best; openings between two motifs
 * alone get none. `filler` is null where none is asked for; `gauge` is the filler's own.
 */
export function fillOpenings(
  openings: readonly Opening[],
  lattice: Lattice,
  filler: MotifAccount | null,
  gauge: ResolvedGauge,
  terms: Terms,
  units: UnitSystem,
): Filling {
  if (!filler) return unfilled(openings)
  const length = (mm: Millimetres): string => formatLength(mm, units)
  const say = (found: Said): Finding => findingOf(found, 'layout.fillers', { motif: filler.id })
  const radii = fillerRadii(filler)
  const miss = (kind: OpeningKind) => Math.min(...radii.map((radius) => Math.abs(kind.radius - radius)))
  const kinds = [...new Set(openings.map(({ kind }) => kind))].filter(({ sides }) => sides > 2)
  const best = kinds.reduce<OpeningKind | null>(
    (found, kind) => (!found || miss(kind) < miss(found) - SAME_OPENING / 2 ? kind : found),
    null,
  )
  if (!best) return unfilled(openings, [say(said('layout/filler-nowhere'))])
  const least = LEAST_FILLER_STITCHES * gauge.width
  if (2 * best.radius < least) {
    const stitch = stitchAbbreviation('sc', terms)
    const values = { size: length(2 * best.radius), least: length(least), stitch }
    return unfilled(openings, [say(said('layout/filler-stays-open', values))])
  }
  const fits = new Map<OpeningKind, FillerFit>()
  for (const kind of kinds)
    if (kind.sides === best.sides && Math.abs(kind.radius - best.radius) < SAME_OPENING)
      fits.set(kind, fitFiller(kind, filler, lattice))
  const filled = openings.flatMap((opening): Filled[] => {
    const fit = fits.get(opening.kind)
    return fit ? [{ opening, fit }] : []
  })
  const overlap = largest([...fits.values()].map((fit) => fit.overlap))
  const bridge = largest([...fits.values()].map((fit) => fit.bridge))
  const across = length(2 * largest([...fits.values()].map(({ radius }) => radius)))
  const taken = length(2 * best.radius)
  const findings: Finding[] = []
  if (overlap > FILLER_GIVES)
    findings.push(say(said('layout/filler-large', { across, fits: taken, overlap: length(overlap) })))
  if (bridge > stretchLimit({ gap: 0 }, filler, gauge))
    findings.push(say(said('layout/filler-small', { across, fits: taken, bridge: length(bridge) })))
  return {
    filled,
    joins: filled.reduce((sum, { opening }) => sum + opening.motifs.length, 0),
    open: largest(openings.map(({ kind }) => fits.get(kind)?.open ?? kind.radius)),
    findings,
  }
}

/** M32, for a child's project: the widest opening that stays. */
export function childOpenings(open: Millimetres, units: UnitSystem): Finding[] {
  if (open === 0) return []
  const code = 2 * open >= CHILD_OPENING ? 'joins/gap-for-hands' : 'joins/gap-for-fingers'
  return [
    finding(code, 'joining', { size: formatLength(2 * open, units), limit: lengthValue(CHILD_OPENING) }),
  ]
}
