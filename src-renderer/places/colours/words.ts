/** Patterns of colour in words. */
import type { FillPattern } from '../../../shared-types/project'

export const PATTERN_WORDS: Readonly<Record<FillPattern, { label: string; hint: string }>> = {
  one: { label: 'All alike', hint: 'one colourway everywhere' },
  repeat: { label: 'One after the other', hint: 'repeating along the rows' },
  rows: { label: 'Row by row', hint: 'each row in one colourway' },
  'no-two-alike': { label: 'No two alike touching', hint: 'as even as the counts allow' },
  shade: { label: 'Shading over', hint: 'from the first colourway to the last' },
  scatter: { label: 'Scattered', hint: 'by chance, in even numbers' },
}

export const DIRECTION_WORDS = {
  down: 'from the top down',
  up: 'from the bottom up',
  right: 'from left to right',
  left: 'from right to left',
  outward: 'from the centre outward',
} as const
