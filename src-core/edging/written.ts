/** What an edging is asked to be: plain rounds along the edge, and written rounds worked into the last of them. */
import type { BlanketLayout, Terms } from '../../shared-types/project'
import { memoised, remembered } from '../memo'
import { stitchAbbreviation } from '../stitches/terms'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { findMultiple } from './fit'
import type { Multiple } from './fit'
import { roundHeight } from './heights'
import { plainWork, readLoop } from './reading'
import type { LoopRound } from './reading'

type Edging = NonNullable<BlanketLayout['edging']>
type Written = NonNullable<Edging['written']>

/** A written round of the edging. */
export interface WrittenRound {
  readonly work: string
  /** As it was written, with line ends and a heading of its own. */
  readonly own: string
  readonly yarn: string | undefined
  /** Index into the project's written rounds. */
  readonly entry: number
  /** The stitches of its own that all of them may use, in words. */
  readonly special: string
}

const NONE: readonly WrittenRound[] = []

const roundsOf = remembered((written: Written, special: string): readonly WrittenRound[] =>
  written.flatMap(({ work, yarn }, entry) =>
    plainWork(work ?? '') === ''
      ? []
      : [{ work: plainWork(work ?? ''), own: work ?? '', yarn: yarn || undefined, entry, special }],
  ),
)

/** The written rounds that say something; the same list for the same edging. */
export const writtenRounds = (edging: Edging | undefined): readonly WrittenRound[] =>
  edging?.written ? roundsOf(edging.written, edging.special?.trim() ?? '') : NONE

/** The rounds below them, by their stitch: written rounds are worked into one of sc where there is none. */
export function plainRounds(edging: Edging | undefined, terms: Terms): readonly string[] {
  const rounds = edging?.rounds ?? []
  return rounds.length === 0 && writtenRounds(edging).length > 0 ? [stitchAbbreviation('sc', terms)] : rounds
}

/** What written rounds come to, wherever they are worked. */
export interface Sample {
  readonly multiple: Multiple | null
  /** On a short loop. */
  readonly rounds: readonly LoopRound[]
}

/** Stitches of the loop that rounds are looked at on which come out even on none (ours). */
const UNEVEN = 24

/** By the words, not by the list of them: a file that is read anew asks for the same. */
const sampleOfWords = memoised((from: number, terms: Terms, special: string, ...works: string[]): Sample => {
  const multiple = works.length > 0 ? findMultiple(works, from, terms, special) : null
  const { stitches, marks } = multiple?.sample ?? { stitches: UNEVEN, marks: [] }
  return { multiple, rounds: readLoop(works, stitches, marks, from, terms, undefined, special).rounds }
}, 8)

/** Looks at written rounds on a short loop; the first of them has number `from`. */
export const sampleOf = (written: readonly WrittenRound[], from: number, terms: Terms): Sample =>
  sampleOfWords(from, terms, written[0]?.special ?? '', ...written.map(({ work }) => work))

/** Heights of written rounds in mm; picots stand on the last of them alone. */
export function writtenHeights(
  written: readonly WrittenRound[],
  from: number,
  terms: Terms,
  gauge: ResolvedGauge,
): Millimetres[] {
  const { rounds } = sampleOf(written, from, terms)
  return rounds.map((round, i) => roundHeight(round, gauge, i === rounds.length - 1))
}
