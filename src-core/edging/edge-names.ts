/** What the lines of an edging are called where there are several: by where they lie on the map. */
import type { Plan, Point } from '../../shared-types/plan'
import { listed, ordinal } from '../figures/words'
import { boxOf, signedArea } from '../geometry/points'
import { remembered } from '../memo'
import { OPEN_ENDS } from './open-ends'

/** Of what is joined in the round: where its open ends lie. */
export const ENDS = ['mouth', 'bottom'] as const

type Named = Pick<Plan, 'round' | 'edgingLines' | 'motifs'>

/** "row 5", "rows 3 and 4", "rows 3–6". */
function rowWords(rows: readonly number[]): string {
  const [first, last] = [Math.min(...rows), Math.max(...rows)]
  if (first === last) return `row ${first}`
  return last === first + 1 ? `rows ${listed([String(first), String(last)])}` : `rows ${first}–${last}`
}

/** The rows whose middles lie beside a line. */
function rowsBeside(line: readonly Point[], motifs: Plan['motifs']): string {
  const { top, bottom } = boxOf(line)
  const rows = new Set(motifs.flatMap(({ row, y }) => (y > top && y < bottom ? [row] : [])))
  return rows.size === 0 ? '' : ` in ${rowWords([...rows])}`
}

/**
 * "around the outside", "around the hole in rows 3 and 4", "at the mouth": each of a plan’s edging lines, of those that lie
 * in the same rows which from the left.
 */
export const edgeNames = remembered((plan: Named): readonly string[] => {
  const { round, edgingLines, motifs } = plan
  const isHole = (line: readonly Point[]): boolean => signedArea(line) < 0
  const ends = round ? OPEN_ENDS : 0
  const pieces = edgingLines.slice(ends).filter((line) => line.length > 1 && !isHole(line)).length
  const told = edgingLines.map((line, i) => {
    if (i < ends || line.length < 2) return null
    if (!isHole(line) && pieces === 1 && !round) return null
    return { noun: isHole(line) ? 'hole' : 'part', rows: rowsBeside(line, motifs), left: boxOf(line).left }
  })
  return told.map((own, i) => {
    if (!own) return i < ends ? `at the ${ENDS[i]!}` : 'around the outside'
    const alike = told
      .filter((each) => each?.noun === own.noun && each.rows === own.rows)
      .sort((a, b) => a!.left - b!.left)
    if (alike.length === 1) return `around the ${own.noun}${own.rows}`
    return `around the ${ordinal(alike.indexOf(own) + 1)} of ${alike.length} ${own.noun}s${own.rows} from the left`
  })
})

/** The same of those that have an edging, in their order. */
export const workedNames = (plan: Named): readonly string[] =>
  edgeNames(plan).filter((_, i) => plan.edgingLines[i]!.length > 1)

/** Whether what has an edging are both open ends of what is joined in the round, and nothing else. */
export const areBothEnds = ({ round, edgingLines }: Named): boolean =>
  round !== undefined && edgingLines.length === ENDS.length && edgingLines.every(({ length }) => length > 1)
