/** The rounds of a motif, read: worked rounds, each with its entry in the project. */
import type { Finding, FindingTarget } from '../../../shared-types/finding'
import type { RoundsMotif, Terms } from '../../../shared-types/project'
import { remembered } from '../../memo'
import { readRounds } from '../../notation/read'
import type { ReadRounds } from '../../notation/read'
import { likelySlips } from '../../notation/slips'
import type { LikelySlip } from '../../notation/slips'
import type { After } from '../../notation/state'
import type { WorkedRound } from '../../notation/worked'
import type { Millimetres } from '../../units/quantity'
import { boughtRing } from './bought-ring'
import { piecesOf } from './pieces'
import { isSpecialEntry, specialText } from './special'
import { usableRounds } from './usable'

export interface ReadMotif {
  readonly worked: readonly WorkedRound[]
  /** Everything read; its offsets are those of the text that `lines` describes. */
  readonly reading: ReadRounds
  /** One for each of the project's rounds. */
  readonly lines: readonly RoundLine[]
  /** The entry that a line of the text that is read belongs to; null before the first one. */
  readonly entryOfLine: (line: number) => number | null
  /** Index into the project's rounds of each worked round. */
  readonly entries: readonly number[]
  /** Chains of the ring that the motif begins on; 0 for an adjustable one. */
  readonly ringChains: number
  /** How wide the bought ring is that it is worked over; null for a ring that is made, or where its size is not told. */
  readonly ringAcross: Millimetres | null
  /** Chains of a foundation chain that is worked along on both sides; 0 otherwise. */
  readonly stemChains: number
  readonly findings: readonly Finding[]
}

const HEADING = /^\s*(?:(?:rnds?|rounds?|rows?)\b|\d+(?:st|nd|rd|th)\s+(?:rnd|round|row)\b)/i
/** The last number of a heading of its own: "Rnds 4–6:", "3rd rnd:". */
const LAST_NUMBER = /^\s*(?:\D{0,12}?\d+(?:st|nd|rd|th)?\s*(?:-|–|—|to|and|&)\s*(\d+)|\D{0,12}?(\d+))/i

/** Where a round's own words stand in the text that is read: one line for each entry. */
export interface RoundLine {
  /** Offset of the first character of its words. */
  readonly start: number
  /** Number that it was given, or has by its own heading (the first of them). */
  readonly number: number
}

interface Composed {
  readonly text: string
  readonly lines: readonly RoundLine[]
  /** By line of the text: characters that are not the designer's. */
  readonly before: readonly number[]
  /** Lines before the first round. */
  readonly head: number
}

/** One text of all rounds, each with a heading; offsets within a round stay what they are. */
function compose(motif: RoundsMotif): Composed {
  const special = specialText(motif)
  let text = special ? `Special stitches:\n${special}\n\n` : ''
  const head = text.split('\n').length - 1
  const before = Array.from({ length: head }, () => 0)
  const lines: RoundLine[] = []
  let number = 1
  for (const { work } of motif.rounds ?? []) {
    // What explains stitches stands before the first round already.
    const line = isSpecialEntry(work) ? '' : work.replace(/[\n\r\u0085\u2028\u2029]/g, ' ')
    const own = HEADING.test(line)
    // A round that is not written yet stands for nothing.
    const heading = own || line.trim() === '' ? '' : `Rnd ${number}: `
    lines.push({ start: text.length + heading.length, number })
    before.push(heading.length)
    text += `${heading}${line}\n`
    const [, last, only] = own ? (LAST_NUMBER.exec(line) ?? []) : []
    if (line.trim() !== '') number = Number(last ?? only ?? number) + 1
  }
  return { text, lines, before, head }
}

/** Reads all rounds of a motif as one text, once: later rounds may refer to older ones. */
export const readMotif = remembered((given: RoundsMotif, terms: Terms): ReadMotif => {
  const { motif, findings: refused } = usableRounds(given)
  const { text, lines, before, head } = compose(motif)
  const reading = readRounds(text, { terms, after: foundationOf(motif), before })
  const { worked, rounds, findings } = reading
  const entryOf = (line: number) => Math.min(Math.max(0, line - 1 - head), Math.max(0, lines.length - 1))
  const own = motif.foundation
  return {
    worked,
    reading,
    lines,
    entryOfLine: (line) => (line > head ? entryOf(line) : null),
    // By the round's own line: a round that repeats an older one has its stitches from there.
    entries: rounds.map((account) => entryOf(account.span.line)),
    ...beginsOn(worked, own),
    ringAcross: boughtRing(given),
    findings: [
      ...refused,
      ...findings.map((entry) => ({
        ...entry,
        where: `motif ${motif.id}, ${entry.where}`,
        target: targetOf(motif.id, entry.target, (line) => (line > head ? entryOf(line) : null)),
      })),
    ],
  }
})

/**
 * What the first round is worked into tells what a motif begins on. A chain is the stem of a leaf where stitches go
 * along it, the middle of a disc where all go into one of its chains ("12 dc in 4th ch from hook"), and a ring where
 * they go into that, however its closing is told.
 */
function beginsOn(
  worked: readonly WorkedRound[],
  own: RoundsMotif['foundation'],
): Pick<ReadMotif, 'ringChains' | 'stemChains'> {
  const made = piecesOf(worked)[0]?.find((round) => round.foundation)?.foundation
  if (made?.kind === 'ring') return { ringChains: made.chains, stemChains: 0 }
  const chains = own?.chain ?? (made && made.chains > 2 ? made.chains : 0)
  const places = worked[0]?.elements.flatMap(({ into }) => into) ?? []
  const cells = new Set(
    places.flatMap(({ kind, cell, opposite }) => (kind === 'chain' ? [`${cell} ${opposite}`] : [])),
  )
  const ring = own?.ring === 'chain' ? (own.chains ?? 0) : own?.ring === 'stitch' ? 1 : 0
  if (made || own?.chain !== undefined) {
    // Rows that begin at a point go up from their one chain.
    if (cells.size === 1)
      return beginsRows(worked) ? { ringChains: 0, stemChains: 1 } : { ringChains: 1, stemChains: 0 }
    if (cells.size === 0 && places.some(({ kind }) => kind === 'ring'))
      return { ringChains: chains, stemChains: 0 }
  }
  // Two chains are none to work along: all goes into the first of them.
  return chains > 2
    ? { ringChains: ring, stemChains: chains }
    : { ringChains: chains > 0 ? 1 : ring, stemChains: 0 }
}

/** Whether the first rounds go back and forth: turned each time, not joined. */
function beginsRows([first, second]: readonly WorkedRound[]): boolean {
  return first !== undefined && !first.joined && second !== undefined && !second.joined && second.turned
}

/** A place in the text as a place in the motif's rounds; what stands before the first one belongs to none. */
function targetOf(
  motif: string,
  { line = 0, ...target }: FindingTarget = {},
  entryOf: (line: number) => number | null,
): FindingTarget {
  const entry = entryOf(line)
  return { ...target, motif, ...(entry === null ? {} : { entry }) }
}

function foundationOf({ foundation }: RoundsMotif): After {
  if (!foundation) return { start: true }
  if (foundation.chain !== undefined) return { chain: foundation.chain }
  if (foundation.ring === 'adjustable') return { ring: 0 }
  if (foundation.ring === 'chain') return { ring: foundation.chains ?? 0 }
  return { start: true }
}

/** A number of a round that would work out if it were another, in the text of its entry. */
export interface RoundSlip extends Pick<LikelySlip, 'was' | 'now' | 'words'> {
  /** Index into the motif's rounds. */
  readonly entry: number
  /** Offsets into the words of that entry. */
  readonly start: number
  readonly end: number
}

/** The numbers of a motif's rounds that would work out if they were others (`notation/slips.ts`). */
export function slipsOfMotif(given: RoundsMotif, terms: Terms): RoundSlip[] {
  const { motif } = usableRounds(given)
  const { text, before } = compose(motif)
  const { lines, entryOfLine, reading } = readMotif(given, terms)
  return likelySlips(text, { terms, after: foundationOf(motif), before }, reading).flatMap(
    ({ line, start, end, was, now, words }) => {
      const entry = entryOfLine(line)
      const from = entry === null ? -1 : start - lines[entry]!.start
      return entry === null || from < 0
        ? []
        : [{ entry, start: from, end: from + end - start, was, now, words }]
    },
  )
}

/** The colour of a round. */
export const slotOf = (motif: RoundsMotif, read: ReadMotif, round: WorkedRound): string =>
  motif.rounds?.[read.entries[read.worked.indexOf(round)]!]?.slot ?? ''
