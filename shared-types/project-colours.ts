/** Yarns and colourways in the project file. */
import { z } from 'zod'
import { id, number, text } from './project-values'

/** What a ball band says; the fields of a yarn that may be assumed. */
export const BAND_FIELDS = ['ballGrams', 'ballMetres', 'price'] as const

export const yarnSchema = z.looseObject({
  id,
  name: text.optional(),
  colour: text.optional(),
  ballGrams: number.optional(),
  ballMetres: number.optional(),
  fibre: text.optional(),
  price: number.optional(),
  /** Of the band, what nobody entered: taken from a common yarn, or from another one of the project. */
  assumed: z.array(z.enum(BAND_FIELDS)).optional(),
  onHandGrams: number.optional(),
  /** Whole or part balls on hand, besides the grams. */
  onHandBalls: number.optional(),
  /** How many motifs were made when what is on hand was counted; left out: none, at the beginning. */
  onHandAt: number.optional(),
  dyeLot: text.optional(),
  /** No more of it can be had: what is missing of it cannot be bought. */
  noMore: z.boolean().optional(),
  /** Weighed again when `at` motifs were made; `of` is what there was at the start, where that is not what is on hand. */
  left: z.looseObject({ grams: number.optional(), at: number.optional(), of: number.optional() }).optional(),
  /** Sizes that it is sold in besides the ball: skeins, hanks, cones. */
  packs: z.array(z.looseObject({ grams: number, price: number.optional() })).optional(),
})

export const colourwaySchema = z.looseObject({
  id,
  code: text.optional(),
  name: text.optional(),
  motif: text.optional(),
  yarns: z.record(text, text).optional(),
})

export type Yarn = z.infer<typeof yarnSchema>
export type BandField = (typeof BAND_FIELDS)[number]
export type Colourway = z.infer<typeof colourwaySchema>
