/** Words for whoever works a motif: its written rounds, and the instructions that stand with it. */
import type { Motif } from '../../shared-types/project'
import { workedEntries } from './rounds/special'

/** The designer's instructions, a paragraph for each line; empty where there are none. */
export const instructionLines = ({ instructions = '' }: Motif): string[] =>
  instructions
    .split(/[\n\r\u0085\u2028\u2029]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')

/** Whether somebody who has only the paper can work the motif. */
export const hasInstructions = (motif: Motif): boolean =>
  instructionLines(motif).length > 0 ||
  (motif.kind === 'rounds' && workedEntries(motif).some(({ work }) => work.trim() !== ''))
