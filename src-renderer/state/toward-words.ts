/** What brings a blanket to its target size, on its button and in undo. */
import type { UnitSystem } from '../../shared-types/project'
import { counted } from '../../src-core/figures/words'
import { formatSize } from '../../src-core/units/format'
import { blanketOf } from './edits/layout'
import type { Toward } from './resize'

/** "Change to 13 motifs in a row and 16 rows: 104 × 128 cm", and what undo calls it. */
export function towardWords(
  { project, size, alternate }: Toward,
  units: UnitSystem,
): { readonly does: string; readonly did: string } {
  const { arrangement, rings = 0, columns = 0, rows = 0, outlineShape } = blanketOf(project) ?? {}
  const rowsAre =
    alternate === undefined ? '' : alternate === 'same' ? ', as many in each,' : ', one fewer in every other,'
  const counts =
    arrangement === 'rings'
      ? counted(rings, 'ring')
      : `${counted(columns, 'motif')} in a row${rowsAre} and ${counted(rows, 'row')}`
  const to = outlineShape ? 'a shape of about the target size' : counts
  return { does: `Change to ${to}: ${formatSize(size.width, size.height, units)}`, did: `change to ${to}` }
}
