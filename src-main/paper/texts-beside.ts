/** What stands in abbreviations beside the rounds of a motif: on its pages, on those of the whole, and on a phone. */
import { joiningRounds, joinsInGeneral } from '../../src-core/joining-round/joining-round'
import { edgingSteps } from './edging-steps'
import { edgingWords } from './words-materials'
import type { EdgingJob } from './edging-steps'

/** How the motif is joined, and the edging, whose page lists no abbreviations of its own; in the terms of the job. */
export function textsBeside(job: EdgingJob, motif: string): string[] {
  const { plan, terms } = job
  const told = edgingSteps(job)
  const steps = told ? [...told.steps, ...told.lines.flatMap((line) => line.steps), ['', told.end]] : []
  return [
    ...joiningRounds(plan, terms).flatMap((round) => (round.motif === motif ? round.words : [])),
    joinsInGeneral(plan, motif, terms)?.words ?? '',
    ...steps.map(([, words]) => words),
    edgingWords(plan.edging, job) ?? '',
  ]
}
