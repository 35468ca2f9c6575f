/** Accounts of a project's motifs, each remembered for as long as what it reads is the same. */
import type { Finding } from '../shared-types/finding'
import type { MotifAccount } from '../shared-types/plan'
import type {
  Colourway,
  Hand,
  Motif,
  Project,
  RoundsMotif,
  Terms,
  UnitSystem,
  Yarn,
} from '../shared-types/project'
import type { Settled } from '../shared-types/settled'
import { tooLarge } from './checks/too-large'
import { bySeverity, toldTo } from './findings/finding'
import { remembered } from './memo'
import { motifAccount } from './motif/account'
import { blockingGrowth } from './motif/growth'
import { roundsAccount } from './motif/rounds/account'
import type { RoundsAccount } from './motif/rounds/account'
import { settled, withGauge } from './settled'

/** The accounts of all motifs of a project, in its order; one without an outline is left out with findings. */
export function measureProject(project: Project): { motifs: MotifAccount[]; findings: Finding[] } {
  const beyond = tooLarge(project)
  if (beyond.length > 0) return { motifs: [], findings: beyond }
  const told = settled(project).motifs.map((motif) => accountOf(project, motif))
  return {
    motifs: told.flatMap(({ account }) => account ?? []),
    findings: bySeverity(told.flatMap(({ findings }) => findings)),
  }
}

/** What the account of a motif reads of its project. */
export const readBy = (project: Project) => {
  const { colourways, yarns, hand, terms, units } = settled(project)
  return [colourways, yarns, hand, terms, units] as const
}

/** The account of a motif from just the fields that it reads. */
export function accountFrom(
  motif: Motif,
  colourways: readonly Colourway[],
  yarns: readonly Yarn[],
  hand: Hand,
  terms: Terms,
  units: UnitSystem,
) {
  const growth = blockingGrowth(motif, colourways, yarns)
  const told = motifAccount(motif, { hand, terms, growth })
  const findings = toldTo({ units, terms }, told.findings)
  return { ...told, findings, account: told.account && { ...told.account, findings } }
}

const remember = remembered(accountFrom)

/** Account of one motif of a project, with its findings; whoever asks gets the same object. */
export const accountOf = (project: Project, motif: Motif): ReturnType<typeof accountFrom> =>
  remember(withGauge(motif, project.gauge), ...readBy(project))

/** The rounds of a motif of a project as they were read and located. */
export const workedRounds = (project: Settled, motif: RoundsMotif): RoundsAccount =>
  roundsAccount(withGauge(motif, project.gauge), {
    ...project,
    growth: blockingGrowth(motif, project.colourways, project.yarns),
  })
