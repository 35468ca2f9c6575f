/** M26 in words: what a little more per motif comes to on the whole. */
import type { PlanSize } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import { formatLength } from '../units/format'
import { MM_PER_INCH } from '../units/quantity'
import type { Millimetres } from '../units/quantity'

/** A step that a ruler shows in either system: 2 mm, or the eighth that a tape measure is read to. */
const STEP: Readonly<Record<UnitSystem, Millimetres>> = { metric: 2, imperial: MM_PER_INCH / 8 }

/**
 * "If each motif comes out ⅛ in larger, the whole is 2 in wider and 1¾ in longer"; nothing where nothing is known. The size
 * grows in proportion with the motif, so that the plan's own step can be told as one that its reader measures.
 */
export function sensitivityWords(
  { step, width, height }: PlanSize['sensitivity'],
  units: UnitSystem,
): string {
  if (!(step > 0)) return ''
  const told = (mm: Millimetres): string => formatLength((mm / step) * STEP[units], units)
  return `If each motif comes out ${told(step)} larger, the whole is ${told(width)} wider and ${told(height)} longer`
}
