/** Motifs beside those that are placed, on their pages: in the openings, and those that go with others. */
import type { MotifAccount } from '../../../shared-types/plan'
import { markBeside } from '../../../src-core/figures/marks'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import type { Job } from '../page'
import { MOTIF_WORDS } from '../words-motif'
import type { MotifOnPaper } from './motif'

/** The colourways in which a motif stands in openings, each with how often it does. */
export function fillerMarksOf({ plan, ground }: Job, { id }: MotifAccount): ColourwayMark[] {
  const own = plan.fillers.filter(({ motif }) => motif === id)
  return ground.fillerMarks.flatMap((mark) => {
    const fillers = own.filter(({ colourway }) => colourway === mark.id).length
    return fillers > 0 ? [{ ...mark, fillers }] : []
  })
}

/** Motifs that go with those that are placed. */
export const besideMotifs = ({ plan }: Job, placed: readonly MotifOnPaper[]): MotifOnPaper[] =>
  (plan.beside ?? []).flatMap(({ account, colourway }) =>
    account && !placed.some((each) => each.account.id === account.id)
      ? [{ account, marks: markBeside(plan, colourway) }]
      : [],
  )

/** "Make 2 with each Marigold: 360 in all." */
export const besideNotes = ({ plan, settled }: Job, { id }: MotifAccount): string[] =>
  (plan.beside ?? []).flatMap(({ motif, to, each, count }) => {
    const name = settled.motifs.find((one) => one.id === to)?.name?.trim() || to
    return motif === id ? [MOTIF_WORDS.beside(name, each, count)] : []
  })
