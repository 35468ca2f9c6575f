/** The rounds of a motif, read: worked rounds, each with its entry in the project. */
import type { Finding } from '../../../shared-types/finding'
import type { RoundsMotif, Terms } from '../../../shared-types/project'
import { readRounds } from '../../notation/read'
import type { After } from '../../notation/state'
import type { WorkedRound } from '../../notation/worked'

export interface ReadMotif {
  readonly worked: readonly WorkedRound[]
  /** Index into the project's rounds of each worked round. */
  readonly entries: readonly number[]
  /** Chains of the ring that the motif begins on; 0 for an adjustable one. */
  readonly ringChains: number
  /** Chains of a foundation chain that is worked along on both sides; 0 otherwise. */
  readonly stemChains: number
  readonly findings: readonly Finding[]
}

const HEADING = /^\s*(?:(?:rnds?|rounds?|rows?)\b|\d+(?:st|nd|rd|th)\s+(?:rnd|round|row)\b)/i

/** Reads all rounds of a motif as one text: later rounds may refer to older ones. */
export function readMotif(motif: RoundsMotif, terms: Terms): ReadMotif {
  const rounds = motif.rounds ?? []
  const starts: number[] = []
  let text = ''
  rounds.forEach(({ work }, i) => {
    starts.push(text.length)
    const line = work.replace(/\s*\n\s*/g, ' ').trim()
    text += `${HEADING.test(line) ? line : `Rnd ${i + 1}: ${line}`}\n`
  })
  const { worked, findings } = readRounds(text, { terms, after: foundationOf(motif) })
  const entryAt = (position: number): number => {
    let entry = 0
    while (entry + 1 < starts.length && starts[entry + 1]! <= position) entry++
    return entry
  }
  const made = worked.find((round) => round.foundation)?.foundation
  const own = motif.foundation
  return {
    worked,
    entries: worked.map((round) => entryAt(round.elements[0]?.span.start ?? 0)),
    ringChains:
      made?.kind === 'ring'
        ? made.chains
        : own?.ring === 'chain'
          ? (own.chains ?? 0)
          : own?.ring === 'stitch'
            ? 1
            : 0,
    stemChains: own?.chain ?? (made?.kind === 'chain' && made.chains > 2 ? made.chains : 0),
    findings: findings.map((entry) => ({
      ...entry,
      where: `motif ${motif.id}, ${entry.where}`,
      target: { ...entry.target, motif: motif.id },
    })),
  }
}

function foundationOf({ foundation }: RoundsMotif): After {
  if (!foundation) return { start: true }
  if (foundation.chain !== undefined) return { chain: foundation.chain }
  if (foundation.ring === 'adjustable') return { ring: 0 }
  if (foundation.ring === 'chain') return { ring: foundation.chains ?? 0 }
  return { start: true }
}
