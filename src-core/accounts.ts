/** Accounts of a project's motifs, each remembered for as long as what it reads is the same. */
import type { Finding } from '../shared-types/finding'
import type { MotifAccount } from '../shared-types/plan'
import type { Hand, Motif, Project, StitchGauge, Terms, UnitSystem } from '../shared-types/project'
import { bySeverity, toldTo } from './findings/finding'
import { motifAccount } from './motif/account'
import { blockingGrowth } from './motif/growth'

type Told = ReturnType<typeof accountFrom>

/** Accounts by motif, for as long as what they read is the same: whoever asks gets the same object. */
const accounts = new WeakMap<Motif, { readonly read: ReturnType<typeof readBy>; readonly told: Told }>()

/** Account of one motif of a project, with its findings. */
export function accountOf(project: Project, motif: Motif): Told {
  const read = readBy(project)
  const known = accounts.get(motif)
  if (known?.read.every((value, i) => Object.is(value, read[i]))) return known.told
  const made = accountFrom(motif, ...read)
  accounts.set(motif, { read, told: made })
  return made
}

/** The accounts of all motifs of a project, in its order; one without an outline is left out with findings. */
export function measureProject(project: Project): { motifs: MotifAccount[]; findings: Finding[] } {
  const motifs: MotifAccount[] = []
  const findings: Finding[] = []
  for (const motif of project.motifs ?? []) {
    const told = accountOf(project, motif)
    if (told.account) motifs.push(told.account)
    findings.push(...told.findings)
  }
  return { motifs, findings: bySeverity(findings) }
}

/** What the account of a motif reads of its project. */
export const readBy = (project: Project) =>
  [
    project.colourways,
    project.yarns,
    project.hand ?? 'right',
    project.terms ?? 'US',
    project.gauge,
    project.units ?? 'metric',
  ] as const

/** The account of a motif from just the fields that it reads. */
export function accountFrom(
  motif: Motif,
  colourways: Project['colourways'],
  yarns: Project['yarns'],
  hand: Hand,
  terms: Terms,
  gauge: StitchGauge | undefined,
  units: UnitSystem,
) {
  const growth = blockingGrowth(motif, colourways ?? [], yarns ?? [])
  const told = motifAccount(motif, { hand, terms, gauge, growth })
  const findings = toldTo({ units, terms }, told.findings)
  return { ...told, findings, account: told.account && { ...told.account, findings } }
}
