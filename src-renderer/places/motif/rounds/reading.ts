/** The rounds of a motif as the editor shows them: numbers and findings beside each, places in its own text. */
import type { Finding, Severity } from '../../../../shared-types/finding'
import type { MotifAccount } from '../../../../shared-types/plan'
import type { Project, RoundsMotif, Terms } from '../../../../shared-types/project'
import { workedRounds } from '../../../../src-core/accounts'
import { toldTo } from '../../../../src-core/findings/finding'
import { LIE_WORDS } from '../../../../src-core/figures/words'
import { PETALS } from '../../../../src-core/motif/constants'
import { isOdd } from '../../../../src-core/motif/ruler'
import { lieOf } from '../../../../src-core/motif/rounds/checks'
import type { LocatedRound } from '../../../../src-core/motif/rounds/ground'
import { isSpecialEntry } from '../../../../src-core/motif/rounds/special'
import type { RoundAccount } from '../../../../src-core/notation/account'
import type { Span } from '../../../../src-core/notation/tokens'
import type { RoundsTree } from '../../../../src-core/notation/tree'
import type { WorkedElement, WorkedRound } from '../../../../src-core/notation/worked'
import { settled } from '../../../../src-core/settled'
import { chainSpace, stitchAbbreviation } from '../../../../src-core/stitches/terms'
import { formatLength } from '../../../../src-core/units/format'
import { counted, listed } from '../../../state/summaries'

/** A stretch of a round's own text. */
export interface Stretch {
  readonly start: number
  readonly end: number
}

export interface Mark extends Stretch {
  readonly severity: Severity
}

export interface EntryFinding {
  readonly finding: Finding
  /** Null where the whole round is meant. */
  readonly at: Stretch | null
}

export interface Entry {
  readonly index: number
  /** "Rnd 3", "Rnds 4–6"; of a round that is not written yet its number to be. */
  readonly label: string
  readonly number: number
  /** What it makes, uses, leaves; how large the motif is then and how it lies. */
  readonly facts: readonly string[]
  readonly findings: readonly EntryFinding[]
  readonly marks: readonly Mark[]
}

export interface RoundsReading {
  readonly account: MotifAccount | null
  readonly located: readonly LocatedRound[]
  readonly entries: readonly Entry[]
  /** Findings on no round in particular. */
  readonly general: readonly Finding[]
  readonly tree: RoundsTree
  /** The entry that a worked round comes from, by its index. */
  entryOf(round: number): number
  /** Where a stitch stands in the text of its entry; null where its words stand in another round. */
  stretchOf(round: number, span: Span): Stretch | null
}

/** Reads a motif of a project for the editor. */
export function readForEditor(motif: RoundsMotif, project: Project): RoundsReading {
  const { terms, units } = settled(project)
  const told = workedRounds(settled(project), motif)
  const { read } = told
  const { rounds, tree } = read.reading
  const entryOf = (round: number) => read.entries[round] ?? 0
  const byEntry = new Map<number, EntryFinding[]>()
  const general: Finding[] = []
  for (const finding of toldTo(project, told.findings)) {
    const { entry, round, column, length } = finding.target ?? {}
    const worked = read.worked.find(({ number }) => number === round)
    const index = entry ?? (worked ? entryOf(worked.index) : undefined)
    if (index === undefined) general.push(finding)
    else {
      const start = (column ?? 1) - 1
      const at = length === undefined ? null : { start, end: start + length }
      byEntry.set(index, [...(byEntry.get(index) ?? []), { finding, at }])
    }
  }
  const entries = (motif.rounds ?? []).map((round, index): Entry => {
    const own = read.worked.filter((worked) => entryOf(worked.index) === index)
    const [first, last] = [own[0], own.at(-1)]
    const number = first?.number ?? read.lines[index]?.number ?? index + 1
    const findings = byEntry.get(index) ?? []
    const located = last && told.located.find((entry) => entry.round.index === last.index)
    return {
      index,
      number,
      label: isSpecialEntry(round.work)
        ? 'Special stitches'
        : last && last.number > number
          ? `Rnds ${number}–${last.number}`
          : `Rnd ${number}`,
      facts: last
        ? [
            ...useWords(last, rounds, terms),
            // What is not located belongs to another piece, or has no place.
            ...(located
              ? [...sizeWords(located, told.account, units), ...lieWords(located, told.account)]
              : []),
          ]
        : [],
      findings,
      marks: findings
        .filter((entry) => entry.at !== null && entry.at.start < round.work.length)
        .map(({ finding, at }) => ({ ...at!, severity: finding.severity })),
    }
  })
  return {
    account: told.account,
    located: told.located,
    entries,
    general,
    tree,
    entryOf,
    stretchOf(round, { start, end }) {
      const index = entryOf(round)
      const offset = read.lines[index]?.start ?? 0
      const length = motif.rounds?.[index]?.work.length ?? 0
      return start >= offset && end <= offset + length ? { start: start - offset, end: end - offset } : null
    },
  }
}

/** Nothing is said of a round on one that does not work out: its account leaves that open. */
function lieWords(located: LocatedRound, account: MotifAccount | null): string[] {
  const told = account?.rounds.find(({ number }) => number === located.round.number)
  const lie = told ? told.lies : lieOf(located)
  return lie ? [LIE_WORDS[lie]] : []
}

/** How far a round reaches, by what of it does. */
function sizeWords(
  { round, petals, corners }: LocatedRound,
  account: MotifAccount | null,
  units: 'metric' | 'imperial',
): string[] {
  const measured = account?.rounds.find(({ number }) => number === round.number)
  if (!measured || measured.outerRadius <= 0 || account?.shape === 'leaf') return []
  const tips = petals.length >= PETALS.least
  const how = tips ? (isOdd(petals.length) ? 'through its tips' : 'tip to tip') : 'across'
  return [`${formatLength(2 * measured.outerRadius, units)} ${corners > 0 ? 'point to point' : how}`]
}

/** A standing stitch by its name: "dc", "3-dc cluster", "sc2tog", "popcorn". */
function nameOf(element: WorkedElement, terms: Terms): string {
  const stitch = stitchAbbreviation(element.countsAs ?? element.stitch, terms)
  if (element.form === 'puff' || element.form === 'popcorn' || element.form === 'bobble') return element.form
  if (element.legs <= 1) return stitch
  return element.into.length > 1 ? `${stitch}${element.legs}tog` : `${element.legs}-${stitch} cluster`
}

/** More kinds of stitch than this are counted together. */
const MOST_KINDS = 4

/** "18 sc", "30 sts: 12 sc, 12 hdc and 6 dc", "6 ch-6 sps". */
function madeWords(round: WorkedRound, account: RoundAccount, terms: Terms): string {
  const kinds = new Map<string, number>()
  for (const element of round.elements)
    if (element.standing) {
      const name = nameOf(element, terms)
      kinds.set(name, (kinds.get(name) ?? 0) + 1)
    }
  // Names in full have a plural, abbreviations have none.
  const parts = [...kinds].map(([name, count]) =>
    /er$|uff$|orn$|ble$/.test(name) ? counted(count, name) : `${count} ${name}`,
  )
  const total = account.made ?? round.stitches
  const stitches =
    parts.length > MOST_KINDS
      ? [counted(total, 'st')]
      : parts.length > 1
        ? [`${counted(total, 'st')} (${listed(parts)})`]
        : parts
  const spaces = Object.entries(account.spaces).map(([key, count]) => {
    const words = chainSpace(Number(key.replace(/\D/g, '')), terms)
    return counted(count, words)
  })
  const picots = account.picots > 0 ? [counted(account.picots, 'picot')] : []
  return listed([...stitches, ...spaces, ...picots])
}

/** What a round makes, uses and leaves of the one that it is worked in. */
function useWords(round: WorkedRound, rounds: readonly RoundAccount[], terms: Terms): string[] {
  const account = rounds[round.index]
  if (!account) return []
  if (account.made === null || account.consumed === null) return ['cannot be counted yet']
  const made = madeWords(round, account, terms)
  const words = [made ? `makes ${made}` : 'makes no stitches']
  const source = rounds.slice(0, round.index).findLast((entry) => entry.number === account.source)
  if (!source) {
    const into = round.elements.find((element) => element.into.length > 0)?.into[0]?.kind
    if (into === 'ring') words.push('in the ring')
    if (into === 'chain') words.push('along the chain')
    return words
  }
  const { stitches, spaces } = account.consumed
  const all = Object.values(source.spaces).reduce((sum, count) => sum + count, 0)
  const part = (used: number, there: number, one: string) =>
    used === there ? `all ${counted(there, one)}` : `${used} of ${counted(there, one)}`
  const used = [
    ...(stitches > 0 && source.made !== null ? [part(stitches, source.made, 'st')] : []),
    ...(spaces > 0 ? [part(spaces, all, 'space')] : []),
  ]
  if (used.length > 0) words.push(`uses ${used.join(' and ')}`)
  const left = [
    ...(stitches > 0 && (source.made ?? 0) > stitches ? [counted((source.made ?? 0) - stitches, 'st')] : []),
    ...(spaces > 0 && all > spaces ? [counted(all - spaces, 'space')] : []),
  ]
  if (left.length > 0) words.push(`${left.join(' and ')} left`)
  return words
}
