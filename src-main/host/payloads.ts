/** What messages of a window may hold, as both hosts check it before anything is done. */
import { z } from 'zod'
import type { ExportRequest } from '../../shared-types/bridge'
import { PAPERS, SHEET_STYLES } from '../../shared-types/project'
import { GROUND_COLOUR, PICTURE_FORMATS, PICTURE_SUBJECTS, PICTURE_WIDTH } from '../../shared-types/pictures'
import { LABEL_COUNTS, LISTS, OPTIONAL_PAGES, SHEETS } from '../../shared-types/sheets'
import { EDITION_NAMES } from '../../src-core/editions'
import { TEXT_LIMIT } from './limits'

/** Text of a project. */
export const text = z.string().max(TEXT_LIMIT)
/** The project as it is, by the number of its change. */
export const change = z.strictObject({
  revision: z
    .number()
    .int()
    .nonnegative()
    .max(2 ** 40),
  text,
})
/** One of the recent projects. */
export const entry = z.strictObject({ id: z.string().min(1).max(128) })
/** Of a menu. */
export const words = z.string().max(200)
/** Of a motif or a colourway: whatever stands in the file. */
const id = z.string().max(10_000)
/** More pages than any map has. */
export const PAGES_AT_MOST = 10_000
const editions = z.array(z.enum(EDITION_NAMES)).min(1).max(8)
/** What is printed, on whatever paper. */
const sheetsChoice = {
  sheets: z.array(z.enum(SHEETS)).min(1).max(SHEETS.length).optional(),
  labels: z.enum(LABEL_COUNTS).optional(),
  reverse: z.boolean().optional(),
  leaveOut: z.array(z.enum(OPTIONAL_PAGES)).max(OPTIONAL_PAGES.length).optional(),
}

/** How and what is printed. */
export const paperChoice = {
  ...sheetsChoice,
  ...{ paper: z.enum(PAPERS).optional(), style: z.enum(SHEET_STYLES).optional() },
  terms: z.enum(['US', 'UK']).optional(),
  pages: z.array(z.number().int().min(1).max(PAGES_AT_MOST)).max(PAGES_AT_MOST).optional(),
}

/** What a picture shows, and how. */
const pictureChoice = {
  of: z.enum(PICTURE_SUBJECTS),
  format: z.enum(PICTURE_FORMATS),
  width: z.number().int().min(PICTURE_WIDTH.least).max(PICTURE_WIDTH.most),
  ground: z.string().regex(GROUND_COLOUR).nullable(),
  motif: id.optional(),
  colourway: id.optional(),
}

/** Whatever is written to a file beside the project. */
export const exportSchema: z.ZodType<ExportRequest> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('map'), text, ...paperChoice }),
  z.strictObject({ kind: z.literal('picture'), text, ...pictureChoice }),
  z.strictObject({ kind: z.literal('page'), text }),
  z.strictObject({ kind: z.literal('editions'), text, editions, ...sheetsChoice }),
  z.strictObject({ kind: z.literal('table'), text, table: z.enum(LISTS) }),
])
