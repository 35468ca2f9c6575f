/** What is said of photos. */
import type { PhotoMeasures } from '../../src-core/photo/photo'
import type { SheetChoice } from '../../src-core/photo/sheet-sizes'

type Kind = PhotoMeasures['kind']

export const SHEET_WORDS: Readonly<Record<SheetChoice, string>> = {
  A4: 'sheet of A4',
  Letter: 'sheet of Letter',
  A5: 'sheet of A5',
  card: 'table, by a bank card',
  ruler: 'table, by a ruler',
}

export const KIND_WORDS: Readonly<Record<Kind, string>> = {
  petals: 'flower with petals',
  round: 'round',
  square: 'square',
  hexagon: 'hexagon',
  octagon: 'octagon',
  other: 'as it lies',
}

export const KINDS_FOUND = Object.keys(KIND_WORDS) as Kind[]

export const HOW =
  'Lay the motif on a white sheet, light yarn on a dark one. Hold the camera right above it, with all four corners of the sheet in the picture.'
export const STAYS = 'PNG, JPEG or WebP. The picture stays on this machine and outside the project.'
export const KEPT =
  'A small copy goes into the project file, without place, date or camera. Whoever gets the file sees it.'
export const notKept = (name: string): string =>
  `${name || 'The picture'} cannot be kept: it cannot be made small enough. Use the motif without it.`
export const SURE = 'Sure: nothing in the picture stands against these numbers.'
export const UNSURE = 'Not sure: check with a ruler what is said here.'
export const CORNERS_HOW =
  'Each corner of the sheet has a handle: drag it, or move it with the arrow keys, ten times as far with Shift.'
export const POINT_NAMES = ['First point on the ruler', 'Second point on the ruler']
export const POINTS_HOW =
  'Drag each of the two points onto a mark of the ruler, or move it with the arrow keys, ten times as far with Shift. Then say how far apart the marks are.'
export const dipsHow = (low: string, high: string): string =>
  `The dips are hard to make out: dip to dip is between ${low} and ${high}. Move the inner circle until it runs through them.`
