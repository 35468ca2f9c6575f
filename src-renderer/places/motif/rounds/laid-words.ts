/** What became of the arrangement where rounds or a page of another motif were taken over. */
import type { Project } from '../../../../shared-types/project'
import { layoutName } from '../../../../src-core/layout/fit'
import { countsOf } from '../../../../src-core/layout/standing'
import { countWay } from '../../../../src-core/ways/words'

/** Rows and counts: what a motif of another shape or size may change. */
function arrangementWords(project: Project): string {
  const counts = countsOf(project)
  return counts ? `${layoutName(counts)}, ${countWay(counts)}` : ''
}

/** " Laid out anew for it: straight rows, 9 motifs in a row, 11 rows."; empty where it is laid out as it was. */
export function laidAnewWords(before: Project, after: Project): string {
  const now = arrangementWords(after)
  return arrangementWords(before) === now ? '' : ` Laid out anew for it: ${now}.`
}
