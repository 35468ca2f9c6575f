/** `petalyard fit` for people: what comes nearest to the wished size, best first. */
import type { FitArrangement } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { formatMass, formatNumber, formatSize } from '../../../src-core/units/format'
import { table } from '../text'
import { ARRANGEMENT_WORDS, countWords, unitsOf } from './words'

const COLUMNS = [
  { head: 'Arrangement', align: 'left' },
  { head: 'Motifs', align: 'right' },
  { head: 'In all', align: 'right' },
  { head: 'Size', align: 'right' },
  { head: 'Off by', align: 'right' },
  { head: 'Yarn', align: 'right' },
] as const

export function fitReport(
  project: Project,
  wish: { readonly width: number; readonly height: number },
  arrangements: readonly FitArrangement[],
  width: number,
): string[] {
  const units = unitsOf(project)
  const signed = (mm: number) => (mm > 0 ? '+' : '')
  const rows = arrangements.map((fit) => {
    const grams = fit.yarns.reduce((sum, yarn) => sum + yarn.grams, 0)
    const off = formatSize(fit.error.width, fit.error.height, units).split(' × ')
    const fewer = fit.arrangement === 'offset-rows' && fit.alternateRows === 'oneFewer' ? ', one fewer' : ''
    return [
      ARRANGEMENT_WORDS[fit.arrangement] + fewer,
      countWords(fit),
      formatNumber(fit.motifs),
      formatSize(fit.size.width, fit.size.height, units),
      `${signed(fit.error.width)}${off[0] ?? ''} × ${signed(fit.error.height)}${off[1] ?? ''}`,
      fit.yarns.length > 0 ? formatMass(grams, units) : '–',
    ]
  })
  return [`Nearest to ${formatSize(wish.width, wish.height, units)}`, '', ...table(COLUMNS, rows, width)]
}
