/** How many motifs leave the order of their colourways for limits, in words: the same in window, command line and paper. */
import type { Plan } from '../../shared-types/plan'
import { formatMass, formatNumber } from '../units/format'
import { counted, listed, plural } from './words'

/**
 * "9 of 165 motifs leave the order, so that Rust stays within 300 g and colourway A within 40 motifs"; empty where none
 * does.
 */
export function leavingWords(plan: Plan): string {
  if (!plan.leaving) return ''
  const { motifs, ...limits } = plan.leaving
  const { yarns, colourways, units } = plan.settled
  const kept = [
    ...limits.yarns.map(({ id, most }) => {
      const yarn = yarns.find((each) => each.id === id)
      return { name: yarn?.name ?? id, most: formatMass(most, units) }
    }),
    ...limits.colourways.map(({ id, most }) => {
      const way = colourways.find((each) => each.id === id)
      return { name: way?.code ?? way?.name ?? id, most: counted(Math.floor(most), 'motif') }
    }),
  ]
  const many = `${formatNumber(motifs)} of ${counted(plan.counts.motifs, 'motif')} ${plural(motifs, 'leaves', 'leave')} the order`
  if (kept.length === 0) return `${many}, to come closer to the limits.`
  const within = kept.map(({ name, most }, at) => `${name}${at === 0 ? ' stays' : ''} within ${most}`)
  return `${many}, so that ${listed(within)}.`
}
