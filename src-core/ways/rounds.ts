/** A motif in written rounds with one round more or fewer, where it still lies as it did. */
import type { MotifAccount } from '../../shared-types/plan'
import type { Project, RoundsMotif } from '../../shared-types/project'
import { accountOf } from '../accounts'
import { readMotif } from '../motif/rounds/read-motif'
import type { ReadMotif } from '../motif/rounds/read-motif'
import { settled } from '../settled'
import { nextRounds } from './next-round'
import { resized, scaledYarn } from './scale'

/** As its rounds alone tell it, without what was measured or weighed of the whole. */
const bare = ({ measured: _measured, weighed: _weighed, unravelled: _unravelled, ...motif }: RoundsMotif) =>
  motif as RoundsMotif

const metresOf = ({ metres }: MotifAccount): number =>
  Object.values(metres).reduce((sum, each) => sum + each, 0)

type Round = NonNullable<RoundsMotif['rounds']>[number]

/** One plain round, in the terms of the text. */
const PLAIN = {
  US: 'sc in each st around, join with sl st in first sc',
  UK: 'dc in each st around, join with ss in first dc',
}

/**
 * The project with a round more in its motif (as its rounds grow, else the last one again, or a plain one) or one
 * fewer; null where none fits.
 */
export function withRound(project: Project, id: string | undefined, more: boolean): Project | null {
  const motif = project.motifs?.find((each) => each.id === id)
  if (motif?.kind !== 'rounds' || !motif.rounds || motif.rounds.length < 2) return null
  const { rounds } = motif
  const last = rounds.at(-1)!
  const { across: _across, ...again } = last
  const plain = { ...again, work: PLAIN[settled(project).terms] }
  // The last round of a flower makes its petals, as a rule: it is neither left out nor worked twice.
  const isFlower = accountOf(project, motif).account?.shape === 'petals'
  const lists = more
    ? [
        ...(isFlower ? [] : grown(project, motif, again)),
        ...(isFlower ? [plain] : [again, plain]).map((round) => [...rounds, round]),
      ]
    : isFlower
      ? []
      : [rounds.slice(0, -1)]
  for (const list of lists) {
    const changed = changedTo(project, motif, list)
    if (changed)
      return { ...project, motifs: project.motifs!.map((each) => (each === motif ? changed : each)) }
  }
  return null
}

/** The rounds with the next one, where it goes round and has as many stitches more as the last one had. */
function grown(project: Project, motif: RoundsMotif, again: Round): Round[][] {
  const { terms } = settled(project)
  const rounds = motif.rounds!
  const known = codesOf(readMotif(motif, terms))
  for (const work of nextRounds(motif, terms)) {
    const list = [...rounds, { ...again, work }]
    const read = readMotif({ ...motif, rounds: list }, terms)
    const [before, last, made] = read.reading.rounds.slice(-3).map((round) => round.made)
    if (typeof before !== 'number' || typeof last !== 'number' || made !== 2 * last - before) continue
    if ([...codesOf(read)].every((code) => known.has(code))) return [list]
  }
  return []
}

const codesOf = ({ findings }: ReadMotif): ReadonlySet<string> => new Set(findings.map(({ code }) => code))

/** The motif in other rounds, what was measured and weighed in proportion; null where it does not work out. */
function changedTo(project: Project, motif: RoundsMotif, rounds: RoundsMotif['rounds']): RoundsMotif | null {
  const before = accountOf(project, bare(motif))
  const after = accountOf(project, bare({ ...motif, rounds }))
  const [old, made] = [before.account, after.account]
  if (!old || !made || made.shape !== old.shape || made.petals !== old.petals) return null
  if (made.anchors.length !== old.anchors.length || !(made.overTips > 0)) return null
  const known = new Set(before.findings.map(({ code }) => code))
  if (after.findings.some(({ code, severity }) => severity !== 'note' && !known.has(code))) return null
  const [metresOld, metresMade] = [metresOf(old), metresOf(made)]
  const sized: RoundsMotif = {
    ...motif,
    rounds,
    ...(motif.measured && { measured: resized(motif.measured, made.overTips / old.overTips) }),
  }
  return metresOld > 0 && metresMade > 0 ? scaledYarn(sized, metresMade / metresOld) : sized
}
