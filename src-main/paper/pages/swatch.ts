/** A yarn's colour as a small block before its name, so that the list can be matched with the balls in the basket. */
import type { SheetStyle } from '../../../shared-types/project'
import { drawPath, INK } from '../../../src-core/figures/figure'
import { greyOf, paperColour } from '../../../src-core/figures/marks'
import { rectanglePath } from '../../../src-core/figures/path'
import type { Row } from '../table'

/** mm that the words of a row begin further in. */
export const SWATCH_INSET = 6

/** Draws the block; in ink as a grey that is as light as the yarn. */
export const yarnSwatch =
  (colour: string | undefined, style: SheetStyle): NonNullable<Row['mark']> =>
  (sheet, x, y, height) => {
    const shown = paperColour(colour)
    const fill = style === 'ink' ? greyOf(shown) : shown
    sheet.items.push(
      drawPath(rectanglePath(x, y + height / 2 - 1.5, 3.6, 3), { fill, stroke: INK, width: 0.18 }),
    )
  }
