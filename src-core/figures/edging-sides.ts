/** How the first of plain rounds lies from corner to corner, in words: in window, command line and paper alike. */
import type { EdgingLoop, Plan } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { wayWords } from '../edging/words'
import { formatNumber } from '../units/format'
import type { EdgeSide } from './edging-corners'
import { cornerNames, edgeSides } from './edging-corners'
import { listed } from './words'

/** "147 along the top, 156 along the left side …"; "48 from each corner to the next" where sides have no names. */
export function sideCounts({ stretches }: EdgingLoop, sides: readonly EdgeSide[] | null): string {
  if (sides) return listed(stretches.map((count, i) => `${formatNumber(count)} along the ${sides[i]!}`))
  const [first] = stretches
  return stretches.every((count) => count === first)
    ? `${formatNumber(first!)} from each corner to the next`
    : `${listed(stretches.map((count) => formatNumber(count)))} from corner to corner`
}

/** "Round 1, counterclockwise from the top right corner: 147 along the top …", for each line of plain rounds that has corners. */
export const plainSidesWords = (plan: Plan, terms: Terms): string[] =>
  (plan.edging?.plain ?? []).flatMap((loop) => {
    if (loop.marks.length === 0) return []
    const names = cornerNames(plan, loop.line)
    const start = names ? ` from the ${names[0]!} corner` : ''
    return [
      `Round 1, ${wayWords(plan, loop.line, terms)}${start}: ${sideCounts(loop, edgeSides(plan, loop.line))}`,
    ]
  })
