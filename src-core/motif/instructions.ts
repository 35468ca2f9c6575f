/** Words for whoever works a motif: its written rounds, and the instructions that stand with it. */
import type { Motif, Terms } from '../../shared-types/project'
import { hooksIn } from '../page/hooks'
import { hookWords } from '../stitches/hooks'
import { saying } from '../stitches/spelling'
import { workedEntries } from './rounds/special'
import { withoutTalk } from './talk-of-page'

/** The designer's instructions, a paragraph for each line; empty where there are none. */
export const instructionLines = ({ instructions = '' }: Motif): string[] =>
  instructions
    .split(/[\n\r\u0085\u2028\u2029]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')

/**
 * The same as they are printed, without the talk of the page that the rounds were pasted from: a line that names the hook of the page which the rounds were pasted from says which one
 * is worked with, where that is another.
 */
export function toldInstructions(motif: Motif, terms: Terms): string[] {
  const page = motif.kind === 'rounds' ? motif.page?.text : undefined
  // Of what was pasted the talk stays in the file; what somebody wrote themselves is printed as it is.
  const lines = instructionLines(motif).flatMap((line) => {
    const told = page?.includes(line) ? withoutTalk(line) : line
    return told === '' ? [] : [told]
  })
  const hook = motif.gauge?.hook
  if (!hook || page === undefined) return lines
  const ofPage = new Set(hooksIn(page).map(({ value }) => value))
  if (ofPage.has(hook)) return lines
  return lines.map((line) => {
    const said = hooksIn(line).find(({ value }) => ofPage.has(value))
    if (!said) return line
    return `${line} (${saying(terms)`Here it is worked with a hook of ${hookWords(hook, terms)}; ${hookWords(said.value, terms)} is what the pattern says.`})`
  })
}

/** What a line of a page begins with that lists what is needed, and tells nothing to do. */
const NEEDED = /^(?:materials?|you (?:will )?need|supplies|yarns?|hook|notions|tools)\s*:/i

/** Whether lines only list what the pattern asks for: then they stand under another name than instructions. */
export const areNeeds = (lines: readonly string[]): boolean =>
  lines.length > 0 && lines.every((line) => NEEDED.test(line))

/** Whether somebody who has only the paper can work the motif. */
export const hasInstructions = (motif: Motif): boolean =>
  instructionLines(motif).length > 0 ||
  (motif.kind === 'rounds' && workedEntries(motif).some(({ work }) => work.trim() !== ''))
