/** The layout of a blanket in the project file. */
import { z } from 'zod'
import { number, text } from './project-values'
import { kitSchema } from './project-kit'

export const ARRANGEMENTS = ['straight-rows', 'offset-rows', 'rings'] as const
export const ALTERNATE_ROWS = ['same', 'oneFewer', 'oneMore'] as const
/** How the motifs of a blanket alternate: from place to place, or from row to row. */
export const ALTERNATIONS = ['cell', 'row'] as const
/** Shapes that a blanket is cut out in. */
export const OUTLINE_SHAPES = ['rectangle', 'hexagon', 'circle', 'triangle', 'path'] as const
/** Where a triangle points. */
export const POINTINGS = ['down', 'up'] as const
export const FILL_PATTERNS = [
  'one',
  'repeat',
  'rows',
  'no-two-alike',
  'shade',
  'scatter',
  'by-stash',
] as const
/** Where a shade runs to from its first colourway. */
export const SHADE_DIRECTIONS = ['down', 'up', 'right', 'left', 'outward'] as const
export const FILL_SYMMETRIES = ['left-right', 'top-bottom', 'both'] as const
export const EDGING_ENDS = ['both', 'mouth', 'bottom'] as const
/** Which ends of what is joined in the round are closed: of a bag the bottom, of a cushion both. */
export const CLOSED_ENDS = ['none', 'bottom', 'both'] as const
export const EDGING_STYLES = ['follow', 'bridge', 'level'] as const

export const blanketSchema = z.looseObject({
  kind: z.literal('blanket'),
  arrangement: z.enum(ARRANGEMENTS).optional(),
  motif: text.optional(),
  columns: number.optional(),
  rows: number.optional(),
  alternateRows: z.enum(ALTERNATE_ROWS).optional(),
  rings: number.optional(),
  turn: number.optional(),
  alternateTurn: number.optional(),
  blocking: z.looseObject({ width: number.optional(), height: number.optional() }).optional(),
  target: z.looseObject({ width: number.optional(), height: number.optional() }).optional(),
  cells: z
    .looseObject({
      fill: z
        .looseObject({
          pattern: z.enum(FILL_PATTERNS).optional(),
          colourways: z.array(text).optional(),
          seed: number.optional(),
          /** For a shade; left out: down. */
          direction: z.enum(SHADE_DIRECTIONS).optional(),
          /** Motifs that mirror each other are alike; left out: none. */
          symmetry: z.enum(FILL_SYMMETRIES).optional(),
          /** No yarn is to be bought for it, as far as that can be had. */
          withinStash: z.boolean().optional(),
          /** The most motifs in a colourway, by its id. */
          most: z.record(text, number).optional(),
          /** The most grams of a yarn in the whole piece, by its id. */
          mostGrams: z.record(text, number).optional(),
        })
        .optional(),
      /** By address: "row,place", "row,left" or "row,right" for half motifs, "1,1+1,2+2,1+2,2" for a filler. */
      painted: z.record(text, text).optional(),
      /** The colourways that made motifs were made in, whatever is filled or painted later; addresses as in `painted`. */
      held: z.record(text, text).optional(),
      /** What stands at "row,place" instead of the layout's own: another motif, or null for none. */
      motifs: z.record(text, text.nullable()).optional(),
      /**
       * Motifs of `motifs` that take more than one place, in straight rows: as many rows and motifs of a row as stands
       * here. They stand in the middle of them, and are kept under the place there, of an even number under the one
       * above and to the left of it.
       */
      large: z.record(text, number).optional(),
      /** What stood when the colours were last changed, so that what need not change stays. */
      kept: z
        .looseObject({
          pattern: text.optional(),
          seed: number.optional(),
          arrangement: text.optional(),
          colourways: z.array(text).optional(),
          /** Row by row: numbers of `colourways` from 0, "x" where another was painted, "-" for none. */
          rows: z.array(text).optional(),
          /** What painted motifs had before, by "row,place". */
          under: z.record(text, text).optional(),
        })
        .optional(),
    })
    .optional(),
  /** Motifs that alternate; the first of them is also `motif`. Left out: by cell. */
  alternate: z
    .looseObject({ motifs: z.array(text).optional(), by: z.enum(ALTERNATIONS).optional() })
    .optional(),
  /** Motifs whose middle lies outside of it are left out; it lies in the middle of the arrangement. */
  outlineShape: z
    .looseObject({
      kind: z.enum(OUTLINE_SHAPES).optional(),
      /** Width in mm: diameter of a circle, corner to corner of a hexagon. A path is taken as it is without it. */
      size: number.optional(),
      height: number.optional(),
      /** Of a triangle; left out: down. */
      points: z.enum(POINTINGS).optional(),
      /** SVG path data: what stands in a path's `d`. */
      path: text.optional(),
      /** Where its middle lies, in rows from the top and motifs from the left of row 1; left out: in the middle. */
      middle: z.looseObject({ row: number.optional(), place: number.optional() }).optional(),
    })
    .optional(),
  /** The last motif of each row is joined to the first. */
  inTheRound: z.boolean().optional(),
  /** Which ends of a round are closed, laid flat and seamed; left out: none. */
  closedEnds: z.enum(CLOSED_ENDS).optional(),
  /** Left out, the colourway is the first one of that motif. */
  fillers: z
    .looseObject({
      /** In the kind of openings that it fits best. */
      motif: text.optional(),
      colourway: text.optional(),
      /** Kinds of openings with a filler of their own, or with none. */
      openings: z
        .array(
          z.looseObject({
            /** The motifs round it; of several entries between the same motifs the largest opening comes first. */
            between: z.array(text).optional(),
            /** Null for none; left out, what has none of its own gets. */
            motif: text.nullable().optional(),
            colourway: text.optional(),
          }),
        )
        .optional(),
    })
    .optional(),
  halves: z.boolean().optional(),
  edging: z
    .looseObject({
      style: z.enum(EDGING_STYLES).optional(),
      /** Of what is joined in the round: at which open end it is worked. The mouth is at row 1. Left out: both. */
      ends: z.enum(EDGING_ENDS).optional(),
      /** Plain rounds along the edge, by their stitch. */
      rounds: z.array(text).optional(),
      yarn: text.optional(),
      /** Stitches of its own that the words use, one a line: "Shell: 5 dc in one st". */
      special: text.optional(),
      /** Rounds in words, worked into the last of these, each in the yarn of the edging unless it names one. */
      written: z.array(z.looseObject({ work: text.optional(), yarn: text.optional() })).optional(),
    })
    .optional(),
  kit: kitSchema.optional(),
})

export type BlanketLayout = z.infer<typeof blanketSchema>
export type Arrangement = (typeof ARRANGEMENTS)[number]
export type AlternateRows = (typeof ALTERNATE_ROWS)[number]
export type OutlineShape = NonNullable<BlanketLayout['outlineShape']>
export type FillPattern = (typeof FILL_PATTERNS)[number]
export type ClosedEnds = (typeof CLOSED_ENDS)[number]
export type EdgingEnds = (typeof EDGING_ENDS)[number]
export type EdgingStyle = (typeof EDGING_STYLES)[number]
