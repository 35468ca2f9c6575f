/** What keeps a project from being drawn: of a plan without motifs, what has to be there first. */
import type { Finding } from '../../shared-types/finding'
import type { Plan } from '../../shared-types/plan'
import { byKind } from '../plans/layouts'
import { capital } from './words'

/** Rooms of which an error leaves nothing to draw; a mistake in a round leaves the rounds before it. */
const ROOMS: ReadonlySet<string> = new Set(['motif', 'layout', 'gauge', 'file', 'garland', 'applique'])

const roomOf = ({ code }: Finding): string => code.slice(0, code.indexOf('/'))

/** The error that leaves nothing to draw; null where something is drawn, or where nothing was begun. */
export const missingOf = ({ motifs, findings }: Plan): Finding | null =>
  (motifs.length === 0 &&
    findings.find((finding) => finding.severity === 'error' && ROOMS.has(roomOf(finding)))) ||
  null

const EMPTY = {
  blanket: 'Nothing is arranged yet.',
  garland: 'Nothing hangs on the cord yet.',
  applique: 'Nothing is placed on the panel yet.',
} as const

/** "Nothing is arranged yet. Quince blossom: it has no written rounds yet." */
export function emptyWords(plan: Plan): string {
  const empty = byKind(plan, {
    blanket: () => EMPTY.blanket,
    garland: () => EMPTY.garland,
    applique: () => EMPTY.applique,
  })
  const missing = missingOf(plan)
  const message = missing ? capital(missing.message) : empty
  if (!missing || message === empty) return empty
  const { target = {} } = missing
  const motif = plan.settled.motifs.find(({ id }) => id === target.motif)
  return `${empty} ${motif ? `${motif.name || `Motif ${motif.id}`}: ${missing.message}` : message}`
}
