/** The layout of a garland in the project file. */
import { z } from 'zod'
import { number, text } from './project-values'
import { kitSchema } from './project-kit'

export const garlandSchema = z.looseObject({
  kind: z.literal('garland'),
  cord: z
    .looseObject({
      length: number.optional(),
      ties: number.optional(),
      worked: z.enum(['chain', 'bought']).optional(),
      yarn: text.optional(),
      gauge: z.looseObject({ chains: number.optional(), over: number.optional() }).optional(),
      /** Of a bought cord, cut for one garland. */
      price: number.optional(),
      grams: number.optional(),
    })
    .optional(),
  items: z
    .array(
      z.looseObject({
        motif: text.optional(),
        colourway: text.optional(),
        gap: number.optional(),
        /** A bead or another bought thing of `size` mm along the cord. */
        bead: text.optional(),
        size: number.optional(),
        price: number.optional(),
        grams: number.optional(),
      }),
    )
    .optional(),
  spacing: z
    .looseObject({
      between: z.enum(['edges', 'centres']).optional(),
      mm: number.optional(),
      /** How many hang on the cord; without `mm` they share its length evenly. */
      count: number.optional(),
    })
    .optional(),
  /** The second half of the sequence mirrors the first. */
  symmetric: z.boolean().optional(),
  /** How motifs hang: straight down, or turned with the cord; by one petal or two, so many chains apart. */
  hang: z
    .looseObject({
      way: z.enum(['plumb', 'along']).optional(),
      by: number.optional(),
      chains: number.optional(),
    })
    .optional(),
  swags: z
    .looseObject({ count: number.optional(), span: number.optional(), drop: number.optional() })
    .optional(),
  kit: kitSchema.optional(),
})

export type GarlandLayout = z.infer<typeof garlandSchema>
