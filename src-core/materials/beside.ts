/**
 * Motifs that go with others and have no place of their own: "2 leaves to each flower". They are made, counted and
 * printed with those that are placed.
 */
import type { MotifAccount, MotifBeside } from '../../shared-types/plan'
import type { Finding } from '../../shared-types/finding'
import type { Motif } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { accountOf } from '../accounts'
import { isWithin } from '../fields/field'
import { MOTIF } from '../fields/motif'
import { finding } from '../findings/finding'
import type { Piece } from './input'

/** A motif that goes with another one. `each`: how many with one of those; null where nobody said it. */
export interface GoesWith {
  readonly motif: Motif
  readonly account: MotifAccount | null
  /** What is to be said of the motif itself. */
  readonly findings: readonly Finding[]
  readonly to: string
  readonly each: number | null
  /** The colourway that all of them are worked in; '' where there is none. */
  readonly colourway: string
}

/** Every motif of a project that goes with another one. */
export const goingWith = (project: Settled): readonly GoesWith[] =>
  project.motifs.flatMap((motif) => {
    const { motif: to, each } = motif.goesWith ?? {}
    if (!to || to === motif.id || !project.motifs.some(({ id }) => id === to)) return []
    const colourway = project.colourways.find((way) => way.motif === motif.id)?.id ?? ''
    const count = each !== undefined && isWithin(each, MOTIF.goesWith) ? Math.round(each) : null
    const { account, findings } = accountOf(project, motif)
    return [{ motif, account, findings, to, each: count, colourway }]
  })

/** How many motifs of an id are made whole. */
const madeOf = (pieces: readonly Piece[], id: string): number =>
  pieces.reduce(
    (sum, { motif, counts, share }) => sum + (motif.id === id && share === undefined ? counts.motifs : 0),
    0,
  )

/** What is made beside some pieces: of each motif that goes with one of them as many as that makes. */
export function piecesBeside(beside: readonly GoesWith[], pieces: readonly Piece[]): Piece[] {
  return beside.flatMap(({ motif, account, to, each, colourway }) => {
    const made = madeOf(pieces, to) * (each ?? 0)
    if (made === 0) return []
    return [{ motif, account, counts: { motifs: made, byColourway: { [colourway]: made } } }]
  })
}

/** The same for the plan, and what is to be said of them. */
export function toldBeside(
  beside: readonly GoesWith[],
  pieces: readonly Piece[],
): { readonly beside: readonly MotifBeside[]; readonly findings: readonly Finding[] } {
  const placed = beside.filter(({ to }) => pieces.some(({ motif }) => motif.id === to))
  const nameOf = ({ name, id }: Pick<Motif, 'name' | 'id'>): string => name ?? id
  return {
    beside: placed.map(({ motif, account, to, each, colourway }) => ({
      ...{ motif: motif.id, to, each, colourway, account },
      count: each === null ? null : madeOf(pieces, to) * each,
    })),
    findings: placed.flatMap(({ motif, to, each, findings }) => {
      if (each !== null) return findings
      const host = pieces.find((piece) => piece.motif.id === to)!.motif
      const values = { motif: nameOf(motif), with: nameOf(host) }
      const place = `motif ${motif.id}`
      return [...findings, finding('motif/goes-with', place, values, { motif: motif.id })]
    }),
  }
}
