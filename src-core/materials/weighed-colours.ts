/**
 * What was weighed of single colours of a motif: with measures in its list of colours, where a motif that goes by
 * written rounds by now keeps it. What its rounds have no colour for counts for nothing, and is told.
 */
import type { Finding } from '../../shared-types/finding'
import type { Motif } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { listed } from '../figures/words'
import { isBlank } from '../motif/rounds/account'
import type { Grams } from '../units/quantity'
import { isUsable } from '../units/usable'

/** Grams that were weighed of each colour of one motif by itself, by the names that they were weighed under. */
function weighedAlone(motif: Motif): Map<string, Grams> {
  const found = new Map<string, Grams>()
  // Beside written rounds nobody has checked the list.
  const slots: unknown = motif.slots
  if (!Array.isArray(slots)) return found
  for (const entry of slots as unknown[]) {
    const { slot, grams } = (entry ?? {}) as { slot?: unknown; grams?: unknown }
    if (typeof slot === 'string' && typeof grams === 'number' && isUsable(grams))
      found.set(slot, (found.get(slot) ?? 0) + grams)
  }
  return found
}

const sharesOf = ({ weighed }: Motif): string[] =>
  Object.entries(weighed?.shares ?? {}).flatMap(([slot, share]) => (share > 0 ? [slot] : []))

/** The grams of single colours that count: of written rounds those of their colours that have no share of a whole weight. */
export function weighedColours(motif: Motif, colours: readonly string[]): ReadonlyMap<string, Grams> {
  const alone = weighedAlone(motif)
  if (motif.kind === 'measured') return alone
  const shared = new Set(Object.keys(motif.weighed?.shares ?? {}))
  return new Map([...alone].filter(([slot]) => colours.includes(slot) && !shared.has(slot)))
}

/** The colours that something was weighed of, whatever it is based on now. */
export const namesWeighed = (motif: Motif): string[] => [
  ...new Set([...weighedAlone(motif).keys(), ...sharesOf(motif)]),
]

/** What is lost of a weighing by colour: no colour is called so, while others are not known for it. */
export function weighedOfNone(motif: Motif, colours: readonly string[], where: string): Finding | null {
  if (motif.kind === 'rounds' && isBlank(motif)) return null
  const gone = namesWeighed(motif).filter((slot) => !colours.includes(slot))
  if (gone.length === 0) return null
  const known = new Set([...weighedColours(motif, colours).keys(), ...sharesOf(motif)])
  const isWhole = colours.length < 2 && isUsable(motif.weighed?.grams)
  if (isWhole || colours.every((slot) => known.has(slot))) return null
  const values = { motif: motif.name ?? motif.id, slots: listed(gone), count: gone.length }
  return finding('yarn/weighed-other-colours', `${where}.weighed`, values, { motif: motif.id })
}
