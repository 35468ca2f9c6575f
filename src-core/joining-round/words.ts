/** What is said of a joining round beside the round itself. */
import type { Terms } from '../../shared-types/project'
import { listOf } from '../joins/words'
import type { Situation, SituationJoin } from './situations'

const several = (noun: string, numbers: readonly number[]): string =>
  `${noun}${numbers.length > 1 ? 's' : ''} ${listOf(numbers)}`

const numbersOf = (joins: readonly SituationJoin[]): number[] =>
  [...new Set(joins.map(({ number }) => number))].sort((a, b) => a - b)

/** "petals 5 and 6", "corners 1, 2 and 3 and sides 1 and 2", "3 places". */
function placesWords({ account, joins }: Pick<Situation, 'account' | 'joins'>): string {
  const { shape } = account
  if (shape !== 'petals' && shape !== 'straight')
    return joins.length === 1 ? '1 place' : `${joins.length} places`
  const of = (kinds: readonly string[]): number[] =>
    numbersOf(joins.filter(({ anchor }) => kinds.includes(anchor.kind)))
  const [tips, sides, shoulders] = [of(['tip', 'corner']), of(['side', 'valley']), of(['shoulder'])]
  const noun = shape === 'straight' ? 'corner' : 'petal'
  const told: string[] = []
  if (tips.length > 0) told.push(several(noun, tips))
  if (sides.length > 0) told.push(several('side', sides))
  if (shoulders.length > 0) told.push(`the shoulders of ${several('petal', shoulders)}`)
  return listOf(told)
}

/** "Joined at petals 5 and 6". */
export const situationTitle = (situation: Pick<Situation, 'account' | 'joins'>): string =>
  situation.joins.length === 0 ? 'Not joined to a neighbor yet' : `Joined at ${placesWords(situation)}`

/** The round where nothing is joined yet. */
export const asWritten = (round: string | null): string =>
  round === null ? 'Work the motif as written.' : `Work ${round} as written.`

/** What to do at the places of a motif whose rounds are not told stitch by stitch. */
export const byPlaces = (situation: Pick<Situation, 'account' | 'joins'>): string =>
  `At ${placesWords(situation)}: sl st in the matching place of the neighbor; work the rest without joining.`

/** The same in a round that is written, whose chains are parted alike. */
export const inRound = (
  situation: Pick<Situation, 'account' | 'joins'>,
  round: string,
  what: string,
): string => `Work ${round} as written; at ${placesWords(situation)}, ${what}.`

const COUNTS = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** American or British words; of "3 5-ch sps" the count in letters. */
export function inTerms(text: string, terms: Terms): string {
  if (terms === 'US') return text.replace(/\bneighbour/g, 'neighbor')
  return text
    .replace(/\bneighbor/g, 'neighbour')
    .replace(/\bsl st\b/g, 'ss')
    .replace(/\bRnd\b/g, 'Round')
    .replace(/\bnext (\d+) (?=\d+-ch)/g, (same, count: string) =>
      COUNTS[Number(count) - 2] === undefined ? same : `next ${COUNTS[Number(count) - 2]} `,
    )
}

/** "3", "3–7 and 9": working numbers, those that follow each other as runs. */
export function labelsWords(labels: readonly string[]): string {
  const numbers = labels.map(Number)
  if (numbers.some((number) => !Number.isInteger(number))) return listOf(labels)
  const runs: [number, number][] = []
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const run = runs.at(-1)
    if (run && number === run[1] + 1) run[1] = number
    else runs.push([number, number])
  }
  const told = runs.flatMap(([from, to]) => {
    if (to - from > 1) return [`${from}–${to}`]
    return to > from ? [String(from), String(to)] : [String(from)]
  })
  return listOf(told)
}
