/**
 * The project file (`NAME.petalyard`): one schema, from which the types, the checks and the published
 * JSON Schema all come. Stored units are mm, g, m and degrees. Unknown fields survive (loose objects).
 *
 * The schema checks shapes and finite numbers only. What a number may *be* depends on the arrangement that
 * uses it (a ring arrangement may carry `columns: 0`), so limits are findings of the engine, not of the file.
 */
import { z } from 'zod'
import { appliqueSchema } from './project-applique'
import { blanketSchema } from './project-blanket'
import { colourwaySchema, yarnSchema } from './project-colours'
import { garlandSchema } from './project-garland'
import { motifSchema, stitchGaugeSchema } from './project-motif'
import { number, text } from './project-values'

export * from './project-applique'
export * from './project-blanket'
export * from './project-colours'
export * from './project-garland'
export * from './project-kit'
export * from './project-motif'

export const PROJECT_FORMAT = 'petalyard-project'
export const PROJECT_VERSION = 1

export const layoutSchema = z.discriminatedUnion('kind', [blanketSchema, garlandSchema, appliqueSchema])
export const LAYOUT_KINDS = layoutSchema.options.map(({ shape }) => shape.kind.value)

export const JOIN_RULES = ['tips', 'edges', 'bridge', 'seam', 'apart'] as const
export const SEAMS = ['whip', 'mattress', 'slip-stitch', 'sc', 'flat-braid'] as const

/** Rules that motifs of two kinds may have of their own. */
export const PAIR_RULES = ['tips', 'edges', 'bridge', 'apart'] as const

export const joiningSchema = z.looseObject({
  /** How two motifs are joined (or one to its like), where that differs from the rule for all. */
  pairs: z
    .array(
      z.looseObject({
        motifs: z.array(text),
        rule: z.enum(PAIR_RULES).optional(),
        bridgeChains: number.optional(),
        gap: number.optional(),
      }),
    )
    .optional(),
  /** How two placed motifs are joined ("3,2" and "3,3"), where that differs from all others like them. */
  single: z
    .array(
      z.looseObject({
        places: z.array(text),
        rule: z.enum(PAIR_RULES).optional(),
        bridgeChains: number.optional(),
      }),
    )
    .optional(),
  rule: z.enum(JOIN_RULES).optional(),
  yarn: text.optional(),
  bridgeChains: number.optional(),
  gap: number.optional(),
  reach: number.nullable().optional(),
  seam: z.enum(SEAMS).optional(),
  minutes: number.optional(),
})

export const ORDERS = ['there-and-back', 'one-way', 'upward', 'centre', 'colourway'] as const
export const orderSchema = z.union([z.enum(ORDERS), z.array(text)])

/** How much a pattern asks of who works it: the four project levels of the Craft Yarn Council (§project-levels). */
export const SKILLS = ['basic', 'easy', 'intermediate', 'complex'] as const

export const PAPERS = ['A4', 'Letter'] as const
export const SHEET_STYLES = ['colour', 'ink'] as const

export const projectSchema = z.looseObject({
  format: z.literal(PROJECT_FORMAT),
  version: z.literal(PROJECT_VERSION),
  title: text.optional(),
  designer: text.optional(),
  notes: text.optional(),
  /** What a published pattern says of itself, on its title page. */
  pattern: z
    .looseObject({
      /** One line below the title. */
      line: text.optional(),
      skill: z.enum(SKILLS).optional(),
      copyright: text.optional(),
    })
    .optional(),
  units: z.enum(['metric', 'imperial']).optional(),
  terms: z.enum(['US', 'UK']).optional(),
  hand: z.enum(['right', 'left']).optional(),
  forChild: z.boolean().optional(),
  currency: text.optional(),
  gauge: stitchGaugeSchema.optional(),
  yarns: z.array(yarnSchema).optional(),
  motifs: z.array(motifSchema).optional(),
  colourways: z.array(colourwaySchema).optional(),
  layout: layoutSchema.optional(),
  joining: joiningSchema.optional(),
  order: orderSchema.optional(),
  /**
   * What is made: the day ("2026-12-01"), or "" where none is known, by "row,place" (and by the other addresses of
   * painted pieces; "edging" for the edging). In a garland and on a panel the row is 1 and the place is the number of
   * the motif in its list.
   */
  made: z.record(text, text).optional(),
  /** What is joined, likewise. Left out: with motifs that are joined as they are made, all that are made and have what they are worked into. */
  joined: z.record(text, text).optional(),
  allowance: z.looseObject({ wastePercent: number.optional(), tail: number.optional() }).optional(),
  sheet: z
    .looseObject({
      paper: z.enum(PAPERS).optional(),
      style: z.enum(SHEET_STYLES).optional(),
      terms: z.enum(['US', 'UK']).optional(),
      /** Left out: as the house style says, else without. */
      titlePage: z.boolean().optional(),
    })
    .optional(),
})

export type Project = z.infer<typeof projectSchema>
export type Layout = z.infer<typeof layoutSchema>
export type Joining = z.infer<typeof joiningSchema>
export type JoinRule = (typeof JOIN_RULES)[number]
export type Seam = (typeof SEAMS)[number]
export type Order = z.infer<typeof orderSchema>
export type Hand = 'right' | 'left'
export type Terms = 'US' | 'UK'
export type UnitSystem = 'metric' | 'imperial'
export type Skill = (typeof SKILLS)[number]
export type Paper = (typeof PAPERS)[number]
export type SheetStyle = (typeof SHEET_STYLES)[number]

/** The JSON Schema of the project file, for other programs and for editors that check as one types. */
export function projectJsonSchema(): object {
  return z.toJSONSchema(projectSchema, { unrepresentable: 'any' })
}
