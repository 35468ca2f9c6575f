/**
 * The joining round in words: for each way in which a motif meets neighbors in this project, the text of its own last
 * round with the joins in it, made from what its rounds say and read back before it is told.
 */
import type { Plan } from '../../shared-types/plan'
import type { RoundsMotif, Terms } from '../../shared-types/project'
import { workedRounds } from '../accounts'
import { remembered } from '../memo'
import { instructionLines } from '../motif/instructions'
import { readMotif } from '../motif/rounds/read-motif'
import type { ReadMotif } from '../motif/rounds/read-motif'
import { capital, headingWords, itemWords } from '../notation/restyle'
import { editionText } from '../notation/translate'
import type { WorkedRound } from '../notation/worked'
import { stitchAbbreviation } from '../stitches/terms'
import { agrees, meant, read } from './agrees'
import { fold, phrasesOf, written } from './fold'
import type { ChainStyle } from './fold'
import { withJoins } from './joined-steps'
import type { JoinWords } from './joined-steps'
import { generalWords, partsWords, placeKind } from './parts'
import type { InGeneral, LocatedJoin } from './parts'
import { elementsFor, joinPlaces } from './places'
import type { JoinPlaces } from './places'
import { ruleBetween, situationsOf } from './situations'
import type { Situation, SituationJoin } from './situations'
import { unroll } from './unroll'
import type { Unrolled } from './unroll'
import {
  alongSides,
  asWritten,
  byPlaces,
  inRound,
  inTerms,
  matchingPlaces,
  sidesAlone,
  situationTitle,
} from './words'

/** One way in which a motif meets its neighbors, and how its last round goes then. */
export interface JoiningRound {
  /** Id and name of the motif. */
  readonly motif: string
  readonly name: string
  readonly kind: 'motif' | 'filler'
  /** "Joined at petals 5 and 6". */
  readonly title: string
  /** Working numbers, in working order. */
  readonly labels: readonly string[]
  /** At how many join points it is joined to what is there already; two places in the middle of a side share one. */
  readonly joins: number
  /** Number of the round that joins; null where the motif has no rounds. */
  readonly round: number | null
  /** The round in full, or what to do in it where it is not told stitch by stitch. */
  readonly words: string
  /** The words are the whole round, and read back they make the joins of the plan. */
  readonly inFull: boolean
}

/** The joining rounds of a plan, the motifs in their order and fewer joins first; none where motifs are sewn. */
export const joiningRounds = remembered(
  (plan: Plan, terms: Terms): readonly JoiningRound[] =>
    situationsOf(plan).map((situation) => joiningRound(plan, situation, terms)),
  2,
)

type ProjectRound = NonNullable<RoundsMotif['rounds']>[number]

/** A motif in rounds, with the round that joins. */
interface Joinable {
  readonly motif: RoundsMotif
  readonly read: ReadMotif
  readonly places: JoinPlaces
  readonly round: WorkedRound
}

function joinableOf({ settled }: Plan, account: Situation['account']): Joinable | null {
  const motif = settled.motifs.find(({ id }) => id === account.id)
  if (motif?.kind !== 'rounds') return null
  const told = workedRounds(settled, motif)
  const places = joinPlaces(told, account, settled.hand)
  const round = places && told.read.worked.find(({ index }) => index === places.round.round.index)
  return places && round ? { motif, read: told.read, places, round } : null
}

function joiningRound(plan: Plan, situation: Situation, terms: Terms): JoiningRound {
  const { account, joins, kind, labels } = situation
  const own = plan.settled.terms
  const joinable = joinableOf(plan, account)
  const along = alongSides(situation)
  const told = joins.length > 0 && joinable && along === null ? tell(plan, situation, joinable) : null
  const source = plan.settled.motifs.find(({ id }) => id === account.id)
  const worked = { isInstructed: source !== undefined && instructionLines(source).length > 0 }
  const last = joinable?.round ?? (source?.kind === 'rounds' ? lastRound(plan, source) : undefined)
  const name = last ? roundName(last, own) : null
  const chains = chainsOfAll(plan, situation)
  const unplaced =
    name === null
      ? byPlaces(worked, chains, account.spaces?.marks)
      : inRound(name, matchingPlaces(situation, chains))
  const sides = along !== null && (name === null ? sidesAlone(along, worked) : inRound(name, along))
  const plain = joins.length === 0 ? asWritten(name, worked) : sides || unplaced
  const words = told ? editionText(told.words, own, terms) : plain
  return {
    ...{ motif: account.id, name: account.name, kind, labels, joins: joins.length },
    title: inTerms(situationTitle(situation), terms),
    round: joinable?.round.number ?? null,
    words: inTerms(words, terms),
    inFull: told?.inFull ?? joins.length === 0,
  }
}

/** The last round of a motif whose places are not found in it. */
const lastRound = ({ settled }: Plan, motif: RoundsMotif): WorkedRound | undefined =>
  workedRounds(settled, motif).read.worked.at(-1)

const roundName = ({ number }: WorkedRound, terms: Terms): string =>
  `${terms === 'UK' ? 'Round' : 'Rnd'} ${number}`

/** Chains that a tall stitch ends: "ch 3, dc in first sc". */
const closedChains = ({ elements }: WorkedRound): ReadonlySet<number> =>
  new Set(
    elements.flatMap(({ role, index }, i) =>
      role === 'space' && elements[i + 1]?.role === 'closing' ? [index] : [],
    ),
  )

/** The round in full where it can be told stitch by stitch and read back, else what is other than written, place by place. */
function tell(plan: Plan, situation: Situation, joinable: Joinable): { words: string; inFull: boolean } {
  const { round, read: motifRead } = joinable
  const terms = plan.settled.terms
  const chains = chainStyle(motifRead.reading.tree.text, terms)
  const located = joinsAt(plan, situation, joinable, chains)
  const closed = closedChains(round)
  const joins = byElement(located)
  const unrolled = joins && unroll(motifRead.reading.tree, round)
  const steps = unrolled && withJoins(unrolled.steps, joins, closed, terms)
  if (steps) {
    const phrases = phrasesOf(steps, chains)
    const expected = meant(round.index, round.elements, joins, closed)
    for (const body of [fold(phrases, true), fold(phrases, false), written(phrases)])
      for (const isCounted of [true, false]) {
        const words = inTerms(inHeading(unrolled, round, terms, body, isCounted), terms)
        if (readsAs(joinable, words, terms, expected)) return { words, inFull: true }
      }
  }
  const parts = partsWords(located, { round, leading: joinable.places.leading, closed, terms, chains })
  return { words: inRound(roundName(round, terms), parts), inFull: false }
}

/** How a motif is joined wherever it meets neighbors, whichever they are; null where its rounds do not tell it. */
export const joinsInGeneral = remembered((plan: Plan, id: string, terms: Terms): InGeneral | null => {
  const situations = situationsOf(plan).filter(
    ({ account, joins }) => account.id === id && joins.some(({ along }) => !along),
  )
  const [situation] = situations
  const joinable = situation && joinableOf(plan, situation.account)
  if (!joinable) return null
  const own = plan.settled.terms
  const chains = chainStyle(joinable.read.reading.tree.text, own)
  const located = situations.flatMap((each) => joinsAt(plan, each, joinable, chains))
  const { round, places } = joinable
  const closed = closedChains(round)
  const told = generalWords(located, { round, leading: places.leading, closed, terms: own, chains })
  return { ...told, words: inTerms(editionText(told.words, own, terms), terms) }
}, 2)

/** Chains of a joining chain where a motif lies between two spaces of another, beneath which both dip (ours). */
const BETWEEN_SPACES = 1

/** Every join with the element that it falls on. */
function joinsAt(
  plan: Plan,
  { account, first, joins }: Situation,
  { places }: Joinable,
  chains: ChainStyle,
): LocatedJoin[] {
  return joins.flatMap((join) => {
    const { anchor, number, shared, host } = join
    const elements = elementsFor(places, account, anchor, first)
    return (elements.length > 0 ? elements : [null]).map((element) => ({
      place: placeKind(account, anchor),
      number,
      element,
      join: {
        into: intoWords(plan, host, chains),
        shared,
        bridge: chainsOfJoin(plan, account.id, join),
      },
    }))
  })
}

/** Chains of the joining chain across which a join is made, out and back; 0 where there is none. */
function chainsOfJoin(plan: Plan, id: string, { chains: own, host, isAcross }: SituationJoin): number {
  if (own !== undefined) return own
  if (ruleBetween(plan, id, host.motif) === 'bridge') return bridgeChains(plan, id, host.motif)
  return isAcross ? BETWEEN_SPACES : 0
}

/** The chains of all joins of a motif; 0 where they differ. */
function chainsOfAll(plan: Plan, { account, joins }: Situation): number {
  const [chains = 0, ...others] = new Set(joins.map((join) => chainsOfJoin(plan, account.id, join)))
  return others.length > 0 ? 0 : chains
}

/** Joins by the index of their element; null where one has none or two would fall on the same. */
function byElement(located: readonly LocatedJoin[]): Map<number, JoinWords> | null {
  const found = new Map<number, JoinWords>()
  for (const { element, join } of located) {
    if (!element || found.has(element.index)) return null
    found.set(element.index, join)
  }
  return found
}

function bridgeChains({ settled: { joining } }: Plan, one: string, other: string): number {
  const pair = joining.pairs?.find(({ motifs }) => motifs.includes(one) && motifs.includes(other))
  return pair?.bridgeChains ?? joining.bridgeChains
}

/** "ch-2 sp", "picot", "dc": what stands at a place of the motif that is joined to. */
function intoWords(
  plan: Plan,
  { motif, anchor: id }: { readonly motif: string; readonly anchor: string },
  chains: ChainStyle,
): string {
  const account = [plan.motif, ...plan.accounts].find((each) => each?.id === motif)
  const anchor = account?.anchors.find((each) => each.id === id)
  const joinable = account && joinableOf(plan, account)
  const element = anchor && joinable && elementsFor(joinable.places, account, anchor, 1)[0]
  if (!element) return 'sp'
  const { role, count, form, stitch, countsAs, index } = element
  if (role === 'picot') return 'picot'
  if (role === 'space') {
    const next = joinable.round.elements.find((each) => each.index === index + 1)
    const all = count + (next?.role === 'closing' ? next.count : 0)
    return chains.isSpaceBehind ? `${all}-ch sp` : `ch-${all} sp`
  }
  if (form === 'popcorn' || form === 'cluster' || form === 'puff' || form === 'bobble') return form
  return stitchAbbreviation(countsAs ?? stitch, plan.settled.terms)
}

/** "5 ch", "5-ch sp", as the designer writes it; by the usage of the terms where the text does not say. */
function chainStyle(text: string, terms: Terms): ChainStyle {
  const before = text.match(/\bch(ain)?s?\.? ?-?\d/gi)?.length ?? 0
  const behind = text.match(/\b\d+[ -]?ch\b(?!-)/gi)?.length ?? 0
  const [spaceBefore, spaceBehind] = [/\bch\.?-\d/gi, /\b\d+-ch\b/gi].map(
    (sign) => text.match(sign)?.length ?? 0,
  )
  return {
    isBehind: terms === 'UK' && behind >= before,
    isSpaceBehind: terms === 'UK' && (spaceBehind! > 0 || spaceBefore === 0) && spaceBehind! >= spaceBefore!,
  }
}

function inHeading(
  { style, node, counts }: Unrolled,
  round: WorkedRound,
  terms: Terms,
  body: string,
  isCounted: boolean,
): string {
  const own = node.numbers?.[0] === round.number && node.numbers[1] === round.number
  const heading = own ? headingWords(style, node) : `${roundName(round, terms)}: `
  const end = isCounted ? counts.map((count) => ` ${itemWords(style, count, false)}`).join('') : ''
  return `${heading}${capital(body)}.${end}`
}

/** Whether the motif with these words for its round is the same but for the joins that are meant. */
function readsAs(
  { motif, read: before, round }: Joinable,
  words: string,
  terms: Terms,
  expected: readonly string[],
) {
  const at = before.worked.indexOf(round)
  const entry = before.entries[at]
  const rounds = entry === undefined ? null : withRound(motif.rounds ?? [], before.entries, at, words)
  if (!rounds) return false
  const { worked, findings } = readMotif({ ...motif, rounds }, terms)
  const again = worked[at]
  if (!again || worked.length !== before.worked.length) return false
  const known = new Set(before.findings.map(({ code }) => code))
  return findings.every(({ code }) => known.has(code)) && agrees(read(round.index, again.elements), expected)
}

/** The rounds with other words for one of them, the last of "Rnds 2–8: …" told by itself; null where it cannot be. */
function withRound(
  rounds: readonly ProjectRound[],
  entries: readonly number[],
  at: number,
  words: string,
): ProjectRound[] | null {
  const entry = entries[at]
  const laps = entries.filter((each) => each === entry).length
  const shorter = laps === 1 || entries[at + 1] === entry ? null : withoutLast(rounds[entry!]!.work)
  if (laps > 1 && shorter === null) return null
  return rounds.flatMap((round, i) => {
    if (i !== entry) return [round]
    const own = { ...round, work: words }
    return shorter === null ? [own] : [{ ...round, work: shorter }, own]
  })
}

/** "Rnds 2–8: …" as "Rnds 2–7: …"; null where the heading is another. */
function withoutLast(work: string): string | null {
  const heading = /^(\s*(?:rnd|round)s?\.?\s*)(\d+)(\s*(?:-|–|—|to)\s*)(\d+)/i.exec(work)
  if (!heading) return null
  const [all, word, from, dash, to] = heading
  const last = Number(to) - 1
  const numbers = last > Number(from) ? `${from}${dash}${last}` : from
  return last < Number(from) ? null : `${word}${numbers}${work.slice(all.length)}`
}
