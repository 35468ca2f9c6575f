/** Ways of joining in words, and what hangs on them. */
import { say } from '../../state/say'
import type { JoinRule, Order, Seam } from '../../../shared-types/project'
import type { MotifAccount } from '../../../shared-types/plan'

/** Label and hint of a rule, as it works for this motif. */
export function ruleWords(rule: JoinRule, motif: MotifAccount | null): { label: string; hint: string } {
  const isStraight = motif?.shape === 'straight'
  switch (rule) {
    case 'tips':
      return isStraight
        ? { label: 'At the corners', hint: 'join-as-you-go, in the corner spaces' }
        : { label: motif?.shape === 'round' ? 'Where they touch' : 'At their tips', hint: 'join-as-you-go' }
    case 'edges':
      return isStraight
        ? { label: 'Along the sides', hint: 'join-as-you-go, corners and side spaces' }
        : { label: 'Tips and shoulders', hint: say`two and more points to each neighbour` }
    case 'bridge':
      return { label: 'With joining chains', hint: 'a few chains between the motifs' }
    case 'seam':
      return { label: 'Seamed afterwards', hint: 'all motifs first, then sewn or crocheted' }
    case 'apart':
      return { label: 'Not joined', hint: 'placed apart' }
  }
}

export const SEAM_WORDS: Readonly<Record<Seam, string>> = {
  whip: 'whip stitch',
  mattress: 'mattress stitch',
  'slip-stitch': 'slip stitch',
  sc: 'single crochet',
  'flat-braid': 'flat braid',
}

export const ORDER_WORDS: Readonly<Record<Extract<Order, string>, string>> = {
  'there-and-back': 'rows, back and forth',
  'one-way': 'every row the same way',
  upward: 'from the last row up',
  get centre() {
    return say`from the centre outward`
  },
  get colourway() {
    return say`one colourway after the other`
  },
}
