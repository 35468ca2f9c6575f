/** Every word of an appliqué's template. */
import type { Terms } from '../../shared-types/project'
import { saying } from '../../src-core/stitches/spelling'
import { counted } from '../../src-core/figures/words'
import { listOf } from '../../src-core/joins/words'

export const TEMPLATE_WORDS = {
  overview: 'Template',
  overviewReversed: 'Template from the back',
  list: 'What lies where',
  print: 'Print at 100 %, no scaling',
  printHow:
    'In the printer’s window choose “actual size” or 100 %, not “fit to page”. Print this page first and lay a ruler on both squares: they must measure 50 mm and 1 in. If they do not, nothing else will fit.',
  assemble: 'Putting it together',
  oneSheet: 'The template is on one sheet.',
  sheets: (sheets: number, parts: number, overlap: number, terms: Terms): string =>
    saying(
      terms,
    )`The template is printed on ${counted(sheets, 'sheet')}${parts > sheets ? `, in ${counted(parts, 'part')}: cut apart those that share a sheet. They are` : ','} named by row and column: 2·3 is the third in row 2. Neighbours overlap by ${overlap} mm. Cut one of two neighbours along its ticks, lay it on the other so that ticks and diamonds meet, and tape them together.`,
  leftOut: (count: number): string =>
    ` ${counted(count, 'place')} with nothing on ${count === 1 ? 'it is' : 'them are'} left out.`,
  marks: 'What the marks mean',
  marksTold: (seam: boolean, covered: boolean, terms: Terms): string =>
    [
      saying(
        terms,
      )`A cross is the centre of an item, the black arrowhead points to its petal 1 (of a leaf its tip, of a square or hexagon corner 1).`,
      saying(terms)`The letter and the band along its edge are those of its colourway.`,
      'The thick line is the edge of the panel; the long lines are the folds through its middle.',
      ...(seam ? ['The dashed line is the seam: nothing goes beyond it.'] : []),
      ...(covered ? ['What is dashed lies under something else.'] : []),
    ].join(' '),
  reversed:
    'Mirrored: for marking on the back of the fabric, which is how it looks from there. Left and right are changed.',
  tile: (tiles: readonly { readonly row: number; readonly column: number }[]): string =>
    tiles.length === 1
      ? `Row ${tiles[0]!.row}, column ${tiles[0]!.column}`
      : `Parts ${listOf(tiles.map(({ row, column }) => `${row}·${column}`))}`,
  tileReversed: ' · mirrored, for the back',
  squares: { metric: '50 mm', imperial: '1 in' },
  columns: ['Item', 'Yarn', 'Lies', 'Size', 'Across', 'Down', 'Rotated'],
  listIntroduction: (reverse: boolean, terms: Terms): string =>
    saying(
      terms,
    )`From the lowest to the topmost, the order in which they are sewn down. Across and down give the centre from the top left of the panel` +
    (reverse ? ', seen from the right side and not from the back' : '') +
    '. Rotated: how far petal 1 is turned clockwise from 12 o’clock.',
  on: (labels: string): string => `on ${labels}`,
  wrongSide: 'wrong side up',
  thread: (outline: string, length: string, other: string): string =>
    `about ${length} (${other}) to sew down ${outline} of outline, tails included`,
} as const
