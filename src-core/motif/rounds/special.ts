/**
 * Special stitches of a motif. Their home is the field `special`; files from before it have them as an entry among
 * the rounds that begins with "Special stitches", which reads the same.
 */
import type { RoundsMotif } from '../../../shared-types/project'

const SPECIAL = /^\s*special\s+(?:stitch(?:es)?(?:\s+used)?|terms|abbreviations)\s*(?:[:.\n\r]|$)\s*/i

/** Whether an entry of a motif's rounds explains special stitches instead of being worked. */
export const isSpecialEntry = (work: string): boolean => SPECIAL.test(work)

/** Everything that a motif says of its special stitches, a line for each; '' where it explains none. */
export function specialText(motif: RoundsMotif): string {
  const older = (motif.rounds ?? []).flatMap(({ work }) =>
    isSpecialEntry(work) ? [work.replace(SPECIAL, '')] : [],
  )
  return [motif.special ?? '', ...older]
    .flatMap((text) => text.split(/[\n\r\u0085\u2028\u2029]+/))
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n')
}

type WrittenRound = NonNullable<RoundsMotif['rounds']>[number]

/** The entries of a motif that are worked. */
export const workedEntries = (motif: RoundsMotif): readonly WrittenRound[] =>
  motif.rounds?.filter(({ work }) => !isSpecialEntry(work)) ?? []
