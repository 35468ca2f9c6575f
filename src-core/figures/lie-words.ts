/** M17: what is to be said of a motif beside its size where its rounds do not lie flat. */
import type { Lie, MeasuredRound, MotifAccount } from '../../shared-types/plan'
import { formatNumber } from '../units/format'
import { capital, LIE_WORDS, listed } from './words'

/** From the least flat on; each is said of the rounds that lie so and no flatter. */
const TOLD: readonly (readonly [Exclude<Lie, 'flat'>, Exclude<Lie, 'flat'>])[] = [
  ['ruffles', 'may-ruffle'],
  ['cups', 'may-cup'],
]

/** "round 3", "rounds 3 and 4", "rounds 2 to 5". */
function roundsNamed(numbers: readonly number[]): string {
  const [first, last] = [numbers[0]!, numbers.at(-1)!]
  if (numbers.length === 1) return `round ${first}`
  const isRow = numbers.length > 2 && last - first === numbers.length - 1
  return `rounds ${isRow ? `${first} to ${last}` : listed(numbers.map(String))}`
}

/** How many stitches a round has more than lie flat; below zero where it has fewer. */
const tooMany = ({ stitches, flatness }: MeasuredRound): number => stitches * (1 - 1 / flatness)

function wordsFor(lie: Exclude<Lie, 'flat'>, rounds: readonly MeasuredRound[]): string {
  const off = ({ flatness }: MeasuredRound): number => Math.abs(Math.log(flatness))
  const worst = rounds.reduce((most, each) => (off(each) > off(most) ? each : most))
  const isMore = worst.flatness > 1
  const many = formatNumber(Math.max(1, Math.abs(Math.round(tooMany(worst)))))
  const which = rounds.length > 1 ? `round ${worst.number} ` : ''
  const have = rounds.length > 1 ? 'have' : 'has'
  const settles = lie.startsWith('may') ? '; blocking may settle it' : ''
  return `${capital(LIE_WORDS[lie])}: ${roundsNamed(rounds.map(({ number }) => number))} ${have} ${isMore ? 'more' : 'fewer'} stitches than lie flat (${which}about ${many} too ${isMore ? 'many' : 'few'})${settles}.`
}

/**
 * "Ruffles: rounds 2 to 4 have more stitches than lie flat (round 4 about 33 too many).", and likewise where it cups;
 * empty where its rounds lie flat, or nothing is known of them.
 */
export const lieWords = ({ rounds }: Pick<MotifAccount, 'rounds'>): string =>
  TOLD.flatMap(([lie, may]) => {
    const sure = rounds.filter(({ lies }) => lies === lie)
    const own = sure.length > 0 ? sure : rounds.filter(({ lies }) => lies === may)
    return own.length > 0 ? [wordsFor(sure.length > 0 ? lie : may, own)] : []
  }).join(' ')
