/** What the lines of an edging are called and counted, the same in window, command line and paper. */
import type { Finding } from '../../shared-types/finding'
import type { EdgingAccount, EdgingLoop, EdgingRound, Plan } from '../../shared-types/plan'
import type { EdgingEnds } from '../../shared-types/project'
import { counted, listed } from '../figures/words'

/** Of what is joined in the round: where its open ends lie. */
const ENDS = ['mouth', 'bottom'] as const

/** "The mouth, along the top of the map"; of a flat piece "Edge 2 of 3". */
export const edgeTitle = (
  { round }: Pick<Plan, 'round'>,
  { line }: EdgingLoop,
  index: number,
  all: number,
): string =>
  !round || line >= ENDS.length
    ? `Edge ${index + 1} of ${all}`
    : line === 0
      ? 'The mouth: row 1, along the top of the map'
      : 'The bottom: the last row, along the bottom of the map'

/** The rounds of an edging that are written, behind its plain ones. */
export const writtenOf = ({ rounds }: Pick<EdgingAccount, 'rounds'>): readonly EdgingRound[] =>
  rounds.filter(({ worked }) => worked !== undefined)

/** What is wrong with a written round, so that it is not counted; null where nothing is. */
export const wrongIn = ({ findings }: Pick<Plan, 'findings'>, round: EdgingRound): Finding | null =>
  findings.find(
    ({ severity, target }) =>
      severity === 'error' && target?.edging !== undefined && target.round === round.number,
  ) ?? null

/** Where an edging of what is joined in the round is worked. */
export const ENDS_WORDS: Readonly<Record<EdgingEnds, string>> = {
  both: 'at both ends',
  mouth: 'at the mouth alone',
  bottom: 'at the bottom alone',
}

/** "129 stitches, 43 repeats, 43 picots": what one line has of a written round. */
const lineWords = (loop: EdgingLoop, index: number): string =>
  [
    counted(loop.made[index] ?? 0, 'stitch', 'stitches'),
    ...((loop.repeats[index] ?? 0) > 1 ? [counted(loop.repeats[index]!, 'repeat')] : []),
    ...((loop.picots[index] ?? 0) > 0 ? [counted(loop.picots[index]!, 'picot')] : []),
  ].join(', ')

/**
 * Of an edging along several lines, what a written round comes to on each: "at each end 129 stitches, 43 repeats", "mouth
 * 129 stitches, bottom 135 stitches"; empty along one line.
 */
export function byLineWords(
  { loops = [] }: Pick<EdgingAccount, 'loops'>,
  index: number,
  isRound: boolean,
): string {
  if (loops.length < 2) return ''
  const each = loops.map((loop) => lineWords(loop, index))
  const isEnds = isRound && loops.length === ENDS.length && loops.every(({ line }) => line < ENDS.length)
  if (new Set(each).size === 1) return `at each ${isEnds ? 'end' : `of ${loops.length} edges`} ${each[0]!}`
  return listed(each.map((words, i) => `${isEnds ? ENDS[i]! : `edge ${i + 1}`} ${words}`))
}
