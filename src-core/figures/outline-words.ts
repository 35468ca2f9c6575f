/** What a cut-out blanket comes to, against the outline that it is cut out by, in words. */
import type { Plan } from '../../shared-types/plan'
import { atPoint } from '../layout/outline'
import { blanketOf } from '../plans/layouts'
import { formatSize } from '../units/format'
import { counted } from './words'

/**
 * "A motif stands wherever its middle lies within the outline: it comes out 152.9 × 75 cm. Its point is 3 motifs wide: change
 * the depth or the width a little for one of one motif."; empty where nothing is cut out.
 */
export function cutOutWords({ settled, size, motifs }: Pick<Plan, 'settled' | 'size' | 'motifs'>): string {
  const outline = blanketOf(settled)?.outlineShape
  if (!outline?.kind || motifs.length === 0) return ''
  const stands = `A motif stands wherever its middle lies within the outline: it comes out ${formatSize(size.width, size.height, settled.units)}.`
  const rows = new Map<number, number>()
  for (const { row } of motifs) rows.set(row, (rows.get(row) ?? 0) + 1)
  const lengths = [...rows].sort(([a], [b]) => a - b).map(([, count]) => count)
  const many = atPoint(lengths, outline)
  if (many < 1) return stands
  return many === 1
    ? `${stands} It ends in a point of 1 motif.`
    : `${stands} Its point is ${counted(many, 'motif')} wide: make it a little deeper or wider, or take an arrangement that ends in one motif.`
}
