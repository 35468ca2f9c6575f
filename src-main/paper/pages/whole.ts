/** What it looks like, with nothing that a map says about it: for the title page and the card of a kit. */
import type { Figure } from '../../../src-core/figures/figure'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { wholePicture } from '../../../src-core/figures/whole-picture'
import type { Job } from '../page'
import type { Sheet } from '../setting'
import { FIGURE_WORDS } from '../words-figures'

/** mm. Hooks at the ends of a cord and the lines of an outline stand over a picture's measure by less. */
const RIM = 0.5

/** The whole in the middle of its room; returns the y below. */
export function setWhole(job: Job, sheet: Sheet, top: number, room: number): number {
  const figure: Figure = wholePicture(job.plan, { look: job.style, plain: true })
  const scale = Math.min((sheet.inner - 2 * RIM) / figure.width, room / figure.height)
  const left = sheet.left + (sheet.inner - figure.width * scale) / 2
  const sentence = sentenceText(projectSentence(job.plan, job.terms))
  return sheet.figure(figure, left, top, FIGURE_WORDS.whole(sentence), scale)
}
