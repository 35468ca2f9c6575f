/** What is said of a joining round beside the round itself. */
import type { Terms } from '../../shared-types/project'
import { capital, counted, plural } from '../figures/words'
import { inSpelling } from '../stitches/spelling'
import { listOf, sidesWords } from '../joins/words'
import { placeIn } from '../motif/anchors'
import { spaceWords } from '../motif/spaces'
import type { JoiningRound } from './joining-round'
import type { Situation, SituationJoin } from './situations'

export const several = (noun: string, numbers: readonly number[]): string =>
  `${plural(numbers.length, noun)} ${listOf(numbers)}`

const numbersOf = (joins: readonly SituationJoin[]): number[] =>
  [...new Set(joins.map(({ number }) => number))].sort((a, b) => a - b)

/** "Both shoulders of petal 4", "the second shoulders of petals 4 and 5": which of them are joined. */
function shouldersWords(joins: readonly SituationJoin[]): string[] {
  const [first, second] = [1, 2].map((place) =>
    numbersOf(joins.filter(({ anchor }) => anchor.kind === 'shoulder' && placeIn(anchor.id) === place)),
  )
  const both = first!.filter((number) => second!.includes(number))
  const alone = (numbers: readonly number[], which: string): string[] => {
    const left = numbers.filter((number) => !both.includes(number))
    return left.length > 0
      ? [`the ${which} ${plural(left.length, 'shoulder')} of ${several('petal', left)}`]
      : []
  }
  return [
    ...(both.length > 0 ? [`both shoulders of ${several('petal', both)}`] : []),
    ...alone(first!, 'first'),
    ...alone(second!, 'second'),
  ]
}

/** "spaces 4 and 6", "space 4 and between spaces 5 and 6". */
function spacesWords(joins: readonly SituationJoin[]): string {
  const named = (isAcross: boolean): readonly number[] =>
    joins.flatMap(({ space, isAcross: is = false }) =>
      space?.next === null && is === isAcross ? [space.number] : [],
    )
  const [near, across] = [named(false), named(true)]
  return listOf([
    ...(near.length > 0 ? [several('space', near)] : []),
    ...(across.length > 0 ? [`${several('space', across)} with a joining chain`] : []),
    ...joins.flatMap(({ space }) => (space && space.next !== null ? [spaceWords(space)] : [])),
  ])
}

/** "petals 5 and 6", "corners 1, 2 and 3 and sides 1 and 2", "3 places". */
function placesWords({ account, joins }: Pick<Situation, 'account' | 'joins'>): string {
  const { shape } = account
  if (account.spaces) return spacesWords(joins)
  if (shape !== 'petals' && shape !== 'straight') return counted(joins.length, 'place')
  const of = (kinds: readonly string[]): number[] =>
    numbersOf(joins.filter(({ anchor }) => kinds.includes(anchor.kind)))
  const [tips, sides] = [of(['tip', 'corner']), of(['side', 'valley'])]
  const noun = shape === 'straight' ? 'corner' : 'petal'
  const told: string[] = []
  if (tips.length > 0) told.push(several(noun, tips))
  if (sides.length > 0) told.push(several('side', sides))
  return listOf([...told, ...shouldersWords(joins)])
}

/** "at petals 5 and 6", "between spaces 2 and 3". */
function atPlaces(situation: Pick<Situation, 'account' | 'joins'>): string {
  const words = placesWords(situation)
  return words.startsWith('between') ? words : `at ${words}`
}

/** The whole sides that are joined: "along each of its four sides", "along sides 1 and 3"; null where none is. */
function alongWords({ account, joins }: Pick<Situation, 'account' | 'joins'>): string | null {
  const numbers = numbersOf(joins.filter(({ along }) => along))
  if (numbers.length === 0) return null
  return numbers.length === account.petals
    ? `along ${sidesWords(account.petals)}`
    : `along ${several('side', numbers)}`
}

/** What to do along whole sides, in the last round; null where a motif is joined at places alone. */
export function alongSides({ account, joins }: Pick<Situation, 'account' | 'joins'>): string | null {
  const sides = alongWords({ account, joins })
  if (!sides) return null
  const others = joins.filter(({ along }) => !along)
  const besides = others.length > 0 ? `; ${matchingPlaces({ account, joins: others })}` : ''
  return `${sides}, join every st: drop lp, insert hook in matching st of neighbour, draw lp through, and go on${besides}`
}

/** The same of a motif whose rounds are not there. */
export const sidesAlone = (along: string, { isInstructed }: Worked): string =>
  `Work it ${isInstructed ? 'as the instructions say' : 'without joining up to its last round'}; in that, ${along}.`

/** "Joined at petals 5 and 6", "Joined at corners 1 and 2, where others are joined at corner 1 already". */
export function situationTitle({ account, joins }: Pick<Situation, 'account' | 'joins'>): string {
  if (joins.length === 0) return 'Not joined to a neighbour yet'
  const sides = alongWords({ account, joins })
  const points = joins.filter(({ along }) => !along)
  if (sides && points.length === 0) return `Joined stitch for stitch ${sides}`
  if (sides) return `Joined stitch for stitch ${sides} and ${atPlaces({ account, joins: points })}`
  const shared = joins.filter((join) => join.shared)
  const isCounted = account.shape !== 'round' && account.shape !== 'leaf'
  const others =
    shared.length === 0 || !isCounted
      ? ''
      : `; others are joined ${atPlaces({ account, joins: shared })} already`
  return `Joined ${atPlaces({ account, joins })}${others}`
}

/** What a motif without written rounds is worked by. */
interface Worked {
  /** Its designer's instructions are printed. */
  readonly isInstructed: boolean
}

/** The round where nothing is joined yet. */
export function asWritten(round: string | null, { isInstructed }: Worked): string {
  if (round !== null) return `Work ${round} as written.`
  return isInstructed ? 'Work it as the instructions say.' : 'Work it without joining.'
}

/** "sl st in the …", a joining chain out and back round it where there is one. */
const slipIn = (into: string, chains: number): string =>
  chains > 0 ? `ch ${chains}, sl st in the ${into}, ch ${chains}` : `sl st in the ${into}`

/**
 * What to do at the places of a motif whose rounds are not told stitch by stitch; `chains` are those of the joining
 * chain that it has everywhere.
 */
export function byPlaces({ isInstructed }: Worked, chains: number, isMarked = false): string {
  const join = isMarked
    ? `at each mark that meets a neighbour, ${slipIn('edge of the neighbour, at its mark', chains)}`
    : `where it meets a neighbour, ${slipIn('matching place of the neighbour', chains)}`
  return isInstructed
    ? `Work it as the instructions say; ${join}.`
    : `${capital(join)}; work the rest without joining.`
}

/** The same where it is known at which corners or petals. */
export const matchingPlaces = (situation: Pick<Situation, 'account' | 'joins'>, chains = 0): string =>
  `${atPlaces(situation)}, ${slipIn('matching place of the neighbour', chains)}`

/** What is other than written, in a round that is written. */
export const inRound = (round: string, parts: string): string => `Work ${round} as written; ${parts}.`

const COUNTS = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** American or British words; of "3 5-ch sps" the count in letters. */
export function inTerms(text: string, terms: Terms): string {
  if (terms === 'US') return inSpelling(text, terms)
  // A designer's own round is told in the designer's terms first.
  return text
    .replace(/\bneighbor/g, 'neighbour')
    .replace(/\bsl st\b/g, 'ss')
    .replace(/\bRnd\b/g, 'Round')
    .replace(/\bnext (\d+) (?=\d+-ch)/g, (same, count: string) =>
      COUNTS[Number(count) - 2] === undefined ? same : `next ${COUNTS[Number(count) - 2]} `,
    )
}

/** More runs of numbers than this say less than their count (ours). */
const MOST_RUNS = 12

/** Which motifs are worked so: "22 motifs: 2–12 and 14–24", "228 motifs". */
export function whichWords({ kind, labels }: Pick<JoiningRound, 'kind' | 'labels'>): string {
  const count = counted(labels.length, kind)
  const numbers = runsOf(labels)
  if (labels.length === 1) return `${kind} ${labels[0]}`
  return numbers.length > MOST_RUNS ? count : `${count}: ${listOf(numbers)}`
}

/** What "joined" says of a place. */
export const SHARED_PLACE =
  'In a “joined” place others are joined already: go into the place of the motif that was there first.'

/** Whether a text speaks of places where others are joined already. */
export const tellsShared = (rounds: readonly Pick<JoiningRound, 'words'>[]): boolean =>
  rounds.some(({ words }) => /\bin joined \S/.test(words))

/** "3–7", "9": working numbers, those that follow each other as runs. */
function runsOf(labels: readonly string[]): string[] {
  const runs: [number, number][] = []
  for (const number of labels.map(Number).sort((a, b) => a - b)) {
    const run = runs.at(-1)
    if (run && number === run[1] + 1) run[1] = number
    else runs.push([number, number])
  }
  return runs.flatMap(([from, to]) => {
    if (to - from > 1) return [`${from}–${to}`]
    return to > from ? [String(from), String(to)] : [String(from)]
  })
}

/** All of them as one text, to be put into a pattern. */
export const asText = (rounds: readonly JoiningRound[]): string => {
  const isSeveral = new Set(rounds.map(({ motif }) => motif)).size > 1
  const told = rounds.map((round) => `${titleOf(round, isSeveral)}\n${round.words}`)
  return [...(tellsShared(rounds) ? [SHARED_PLACE] : []), ...told].join('\n\n')
}

/** "Joined at petals 5 and 6: 22 motifs", with the motif's name where there are several. */
export const titleOf = (round: JoiningRound, isSeveral: boolean): string =>
  `${isSeveral ? `${round.name}. ` : ''}${round.title}: ${whichWords(round)}`
