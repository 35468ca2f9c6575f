/** The joining round on a motif's page: its last round in words, for each way in which it meets its neighbors. */
import type { MotifAccount } from '../../../shared-types/plan'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { SHARED_PLACE, tellsShared, titleOf } from '../../../src-core/joining-round/words'
import type { Flow } from '../flow'
import type { Job } from '../page'
import { Sheet, TYPE } from '../setting'
import { otherYarns } from '../words-colours'
import { MOTIF_WORDS } from '../words-motif'

const WIDEST_TEXT = 150
const BETWEEN = 1.8

/** What to do at every place where a motif without rounds is joined; '' where there is nothing to say. */
export const measuredJoining = ({ plan, terms }: Job, account: MotifAccount): string =>
  joiningRounds(plan, terms).find(
    ({ motif, joins, round }) => motif === account.id && joins > 0 && round === null,
  )?.words ?? ''

/** Every joining round of a motif, below what stands there; nothing where it is not joined in its last round. */
export function setJoiningRounds(job: Job, flow: Flow, account: MotifAccount): void {
  const told = joiningRounds(job.plan, job.terms).filter(({ motif }) => motif === account.id)
  // What holds for every join of a measured motif stands beside its drawing.
  const rounds = told.some(({ joins }) => joins > 0) ? told.filter(({ round }) => round !== null) : []
  if (rounds.length === 0) return
  const width = Math.min(WIDEST_TEXT, flow.sheet.inner)
  const heightOf = (round: (typeof rounds)[number]): number =>
    flow.sheet.heightOf(titleOf(round, false), width, { weight: 'bold' }) +
    flow.sheet.heightOf(round.words, width) +
    BETWEEN
  const words = rounds.map((round) => round.words).join(' ')
  const others = otherYarns(job.settled, job.ground.marks, account.id, job.terms, words)
  const advice = [tellsShared(rounds) ? SHARED_PLACE : '', others].filter((text) => text !== '').join(' ')
  const head = (words: string): void => {
    flow.y = flow.sheet.heading(words, flow.sheet.left, flow.y)
  }
  const advised = advice === '' ? 0 : flow.sheet.heightOf(advice, width) + BETWEEN
  flow.need(Sheet.line(TYPE.heading) + 1.6 + advised + heightOf(rounds[0]!))
  head(MOTIF_WORDS.joiningRound)
  if (advice !== '') flow.y = flow.sheet.paragraph(advice, flow.sheet.left, flow.y, width) + BETWEEN
  for (const round of rounds) {
    if (flow.need(heightOf(round))) head(MOTIF_WORDS.goesOn(MOTIF_WORDS.joiningRound))
    const { sheet } = flow
    const below = sheet.paragraph(titleOf(round, false), sheet.left, flow.y, width, { weight: 'bold' })
    flow.y = sheet.paragraph(round.words, sheet.left, below, width) + BETWEEN
  }
  flow.y += 2
}
