/** One colourway as the key shows it: in ink with its letter in the middle, in colour with its middle to be seen. */
import type { MotifAccount } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import type { Figure, FigureItem } from './figure'
import { drawText, useAt } from './figure'
import { capitalDrop } from './lettering'
import type { ColourwayMark } from './marks'
import { motifSymbol } from './motif-symbol'
import { innerRadius, outerRadius } from './path'

const LETTER_TYPE = 9.5
/** Radii of the disc under a letter, in mm: the least holds a W, also where a leaf is narrower. */
const DISC = { least: 1.9, most: 2.3 } as const

/** A square figure of `across` mm with the motif as large as it fits. */
export function keySwatch(
  motif: MotifAccount,
  mark: ColourwayMark,
  style: SheetStyle,
  turn: number,
  across: number,
): Figure {
  const scale = (across - 0.4) / (2 * outerRadius(motif.outline) || 1)
  const lettered = style === 'ink' && mark.code !== ''
  const room = innerRadius(motif.outline) * scale * 0.8
  const disc = lettered ? Math.min(DISC.most, Math.max(DISC.least, room)) : 0
  const symbol = motifSymbol(motif, { scale, turn, look: style, mark, disc })
  const items: FigureItem[] = [useAt(symbol, across / 2, across / 2)]
  if (lettered) {
    items.push(
      drawText(mark.code, across / 2, across / 2 + capitalDrop(LETTER_TYPE), LETTER_TYPE, {
        anchor: 'middle',
        weight: 'bold',
      }),
    )
  }
  return { width: across, height: across, items }
}
