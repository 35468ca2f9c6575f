/** What can be printed or listed by itself. */

/** Of every project a title page and the map (of an appliqué the template); of a garland and of any kit a card; of a kit the rest. */
export const SHEETS = ['title', 'map', 'card', 'packing', 'labels'] as const
export type SheetName = (typeof SHEETS)[number]

/** One page of labels to copy, or one label for each kit of the run. */
export const LABEL_COUNTS = ['page', 'run'] as const
export type LabelCount = (typeof LABEL_COUNTS)[number]

/** Lists that a spreadsheet can read. */
export const LISTS = ['materials', 'order', 'cord', 'items', 'kit', 'purchase'] as const
export type ListName = (typeof LISTS)[number]
