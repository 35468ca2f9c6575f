/** What can be printed or listed by itself. */

/**
 * Of every project a title page and the map (of an appliqué the template); of a garland and of any kit a card; of a kit the rest. The
 * pattern is that of a project of one motif: title page, materials, rounds and chart, nothing to put together.
 */
export const SHEETS = ['title', 'map', 'pattern', 'card', 'packing', 'labels'] as const
export type SheetName = (typeof SHEETS)[number]

/**
 * Pages that a house or whoever prints may leave out. The others are what a project is put together and kept safe by:
 * map, joins, edging, template, cord, notes, cautions.
 */
export const OPTIONAL_PAGES = ['order', 'materials', 'motif', 'progress'] as const
export type OptionalPage = (typeof OPTIONAL_PAGES)[number]

/** One page of labels to copy, or one label for each kit of the run. */
export const LABEL_COUNTS = ['page', 'run'] as const
export type LabelCount = (typeof LABEL_COUNTS)[number]

/** Lists that a spreadsheet can read. */
export const LISTS = ['materials', 'order', 'cord', 'items', 'kit', 'purchase'] as const
export type ListName = (typeof LISTS)[number]
