/** How motifs are joined, in the words that the pages have for it: whoever works from the phone has nothing else. */
import type { Plan } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { closingsTold } from '../../src-core/figures/closing-words'
import { seamsTold } from '../../src-core/figures/seam-words'
import { legendsOf, marksIn } from '../../src-core/joins/words'
import { escaped } from '../paper/svg'
import { HEADINGS } from '../paper/words'
import {
  joinedAsYouGo,
  joiningAdvice,
  joinsByStitch,
  sharedPointAdvice,
  sidesAdvice,
} from '../paper/words-joining'

/** The part of the page; '' where nothing is joined. */
export function joiningPart(plan: Plan, terms: Terms): string {
  const { joins, order, settled, motif, accounts } = plan
  if (joins.length === 0) return ''
  const asYouGo = joinedAsYouGo(settled.joining)
  // Along a seam nothing is counted from others.
  const legends = asYouGo
    ? legendsOf(
        order.map(({ words }) => words),
        marksIn([motif, ...accounts]),
      )
    : []
  const notes = [
    ...(asYouGo && joins.some(({ members }) => members.length > 2) ? [sharedPointAdvice] : []),
    ...(motif?.shape === 'straight' ? [sidesAdvice(asYouGo, joinsByStitch(plan, terms))] : []),
  ]
  const closing = closingsTold(plan, terms).map(([name, words]) => `${name}. ${words}`)
  const told = [joiningAdvice(plan, terms), seamsTold(plan), ...notes, ...legends, ...closing].filter(
    (words) => words !== '',
  )
  const body = told.map((words) => `<p>${escaped(words)}</p>`).join('\n')
  return `<section>\n<h2>${HEADINGS.joining}</h2>\n${body}\n</section>\n`
}
