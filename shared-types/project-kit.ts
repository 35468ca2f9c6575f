/** A kit in the project file: a part of whatever is laid out. */
import { z } from 'zod'
import { number, text } from './project-values'

export const kitSchema = z.looseObject({
  count: number.optional(),
  windTo: number.optional(),
  /** Whether each yarn of a kit is cut in whole lengths, or pieced together where a ball ends (left out). */
  lengths: z.enum(['whole', 'joined']).optional(),
  sparePercent: number.optional(),
  /** What is put in besides yarn; `count` of it in each kit. */
  extras: z
    .array(
      z.looseObject({
        name: text,
        price: number.optional(),
        count: number.optional(),
        grams: number.optional(),
      }),
    )
    .optional(),
  packaging: number.optional(),
  packagingGrams: number.optional(),
  marginPercent: number.optional(),
  /** `on`: what the share is charged on, the price before tax (left out) or all that the buyer pays, tax included. */
  fees: z
    .looseObject({
      fixed: number.optional(),
      sharePercent: number.optional(),
      on: z.enum(['price', 'paid']).optional(),
    })
    .optional(),
  taxPercent: number.optional(),
  /** The pattern that is put in: whose it is, and whether its owner allows it. */
  pattern: z.looseObject({ by: text.optional(), allowed: z.boolean().optional() }).optional(),
  /** How to wash it, for the card; the ball band knows. */
  care: text.optional(),
})

export type Kit = z.infer<typeof kitSchema>
