/** What a hand does to the items of a panel on which overlaps are not allowed. */
import type { Plan } from '../../shared-types/plan'
import { finding } from '../../src-core/findings/finding'
import { appliqueOf } from '../state/edits/applique'
import type { WindowState } from '../state/window.svelte'

const REFUSED = 'applique/kept-apart'

/** Two items, of which the first was moved, that overlap now and did not before. */
function newOverlap(before: Plan, after: Plan, ids: readonly string[]): readonly [string, string] | null {
  const pairs = (plan: Plan) => (plan.overlaps ?? []).map(({ below, above }) => [below, above] as const)
  const there = new Set(pairs(before).flatMap(([one, other]) => [`${one} ${other}`, `${other} ${one}`]))
  for (const [one, other] of pairs(after)) {
    if (there.has(`${one} ${other}`)) continue
    if (ids.includes(one) !== ids.includes(other)) return ids.includes(one) ? [one, other] : [other, one]
  }
  return null
}

/**
 * Keeps what is tried on items, unless it drops them onto others where overlaps are not allowed: then they go back,
 * and it is said why. Keys may pass over others on their way, and numbers may be typed: what they leave on another
 * item is told as a mistake to mend.
 */
export function settleItems(state: WindowState, ids: readonly string[]): void {
  const { document } = state
  const { plan, previous } = document
  const others = state.notices.filter(({ code }) => code !== REFUSED)
  if (others.length < state.notices.length) state.notices = others
  const isFree = appliqueOf(document.project)?.overlaps === 'allowed'
  const pair = isFree || !previous ? null : newOverlap(previous, plan, ids)
  if (!pair) return document.commit()
  document.cancel()
  const label = (id: string): string => plan.motifs.find((motif) => motif.id === id)?.label ?? id
  const told = finding(REFUSED, 'layout.overlaps', { item: label(pair[0]), other: label(pair[1]) })
  state.tell(told)
  state.say(told.message)
}
