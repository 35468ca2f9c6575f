/** Patterns of colour in words, and how many there are of a colourway. */
import { say } from '../../state/say'
import type { Plan } from '../../../shared-types/plan'
import type { Colourway, FillPattern } from '../../../shared-types/project'
import { formatNumber } from '../../../src-core/units/format'
import { counted, listed } from '../../../src-core/figures/words'
import { patternLetters } from '../../../src-core/colour/letters'

export const PATTERN_WORDS: Readonly<Record<FillPattern, { label: string; hint: string }>> = {
  one: {
    label: 'All alike',
    get hint() {
      return say`one colourway everywhere`
    },
  },
  repeat: { label: 'One after the other', hint: 'repeating along the rows' },
  rows: {
    label: 'Row by row',
    get hint() {
      return say`each row in one colourway`
    },
  },
  'no-two-alike': { label: 'No two alike touching', hint: 'in numbers as even as possible' },
  shade: {
    label: 'Shaded',
    get hint() {
      return say`from the first colourway to the last`
    },
  },
  scatter: { label: 'Scattered', hint: 'at random, about the same number of each' },
  'by-stash': { label: 'As the stash goes', hint: 'most of what there is most of, mixed evenly' },
}

export const DIRECTION_WORDS = {
  down: 'from the top down',
  up: 'from the bottom up',
  right: 'from left to right',
  left: 'from right to left',
  get outward() {
    return say`from the centre outward`
  },
} as const

export const SYMMETRY_WORDS = {
  none: 'not mirrored',
  'left-right': 'left and right',
  'top-bottom': 'top and bottom',
  both: 'both ways',
} as const

/** "A Dawn": letter and name of a colourway. */
export const wayName = (way: Pick<Colourway, 'code' | 'name'> | undefined): string =>
  `${way?.code ?? ''} ${way?.name ?? ''}`.trim()

/** How many motifs (or fillers) are made in a colourway, and how many half motifs: "55 × and 4 halves". */
export function madeWords({ counts, fillers, halves }: Plan, id: string): string {
  const of = (pieces: readonly { readonly colourway: string }[]) =>
    pieces.filter(({ colourway }) => colourway === id).length
  const whole = `${formatNumber((counts.byColourway[id] ?? 0) + of(fillers))} ×`
  const half = of(halves)
  return half === 0 ? whole : `${whole} and ${counted(half, 'half', 'halves')}`
}

/** Why new colourways have other letters than the next ones: the pattern calls its yarns by those; '' where it does not. */
export function lettersLeftOut(slots: readonly string[]): string {
  const letters = patternLetters(slots)
  return letters.length === 0
    ? ''
    : say`The pattern calls its yarns ${listed(letters)} (“Join ${letters.at(-1)!}”): a new colourway takes another letter.`
}
