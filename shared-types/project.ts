/**
 * The project file (`NAME.petalyard`): one schema, from which the types, the checks and the published
 * JSON Schema all come. Stored units are mm, g, m and degrees. Unknown fields survive (loose objects).
 *
 * The schema checks shapes and finite numbers only. What a number may *be* depends on the arrangement that
 * uses it (a ring arrangement may carry `columns: 0`), so limits are findings of the engine, not of the file.
 */
import { z } from 'zod'

export const PROJECT_FORMAT = 'petalyard-project'
export const PROJECT_VERSION = 1

const number = z.number()
const text = z.string()
const id = z.string().min(1)

export const stitchGaugeSchema = z.looseObject({
  stitch: text.optional(),
  stitches: number.optional(),
  rows: number.optional(),
  over: number.optional(),
  hook: number.optional(),
  /** Measured heights in mm, by stitch; they beat every derived one. */
  heights: z.record(text, number).optional(),
  /** The trade's own gauge: "rounds 1–2 measure 63.5 mm" as { rounds: 2, across: 63.5 }. */
  rounds: number.optional(),
  across: number.optional(),
})

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
  dyeLot: text.optional(),
  /** Weighed again when `at` motifs were made; `of` is what there was at the start, where that is not what is on hand. */
  left: z.looseObject({ grams: number.optional(), at: number.optional(), of: number.optional() }).optional(),
  /** Sizes that it is sold in besides the ball: skeins, hanks, cones. */
  packs: z.array(z.looseObject({ grams: number, price: number.optional() })).optional(),
})

/** How a flower with an odd number of petals was measured: tip to opposite dip, or from its centre. */
export const RULERS = ['opposite', 'centre'] as const
/** Left out: opposite. The measures are kept as diameters either way. */
const ruler = z.enum(RULERS).optional()

export const measuredSchema = z.looseObject({
  overTips: number.optional(),
  overValleys: number.optional(),
  across: number.optional(),
  sideToSide: number.optional(),
  pointToPoint: number.optional(),
  length: number.optional(),
  width: number.optional(),
  ruler,
  blocked: z.boolean().optional(),
})

export const weighedSchema = z.looseObject({
  motifs: number.optional(),
  grams: number.optional(),
  resolution: number.optional(),
  shares: z.record(text, number).optional(),
})

const roundSchema = z.looseObject({
  slot: text.optional(),
  work: text,
  across: number.optional(),
})

const motifCommon = {
  id,
  name: text.optional(),
  gauge: stitchGaugeSchema.optional(),
  weighed: weighedSchema.optional(),
  /** Metres in one motif by colour, measured by unravelling it. */
  unravelled: z.record(text, number).optional(),
  minutes: number.optional(),
  /** How it is worked, in the designer's words, to be printed with it: lines as they are. */
  instructions: text.optional(),
}

export const roundsMotifSchema = z.looseObject({
  ...motifCommon,
  kind: z.literal('rounds'),
  foundation: z
    .looseObject({ ring: text.optional(), chains: number.optional(), chain: number.optional() })
    .optional(),
  rounds: z.array(roundSchema).optional(),
  /** Special stitches as the designer explains them ("Shell: 5 dc in one st"), read before the rounds. */
  special: text.optional(),
  measured: measuredSchema.optional(),
})

export const OUTLINE_KINDS = ['petals', 'round', 'square', 'hexagon', 'octagon', 'leaf'] as const

export const measuredMotifSchema = z.looseObject({
  ...motifCommon,
  kind: z.literal('measured'),
  outline: z.enum(OUTLINE_KINDS),
  petals: number.optional(),
  overTips: number.optional(),
  overValleys: number.optional(),
  across: number.optional(),
  sideToSide: number.optional(),
  pointToPoint: number.optional(),
  length: number.optional(),
  width: number.optional(),
  ruler,
  blocked: z.boolean().optional(),
  slots: z.array(z.looseObject({ slot: text, grams: number.optional() })).optional(),
})

export const motifSchema = z.discriminatedUnion('kind', [roundsMotifSchema, measuredMotifSchema])

export const colourwaySchema = z.looseObject({
  id,
  code: text.optional(),
  name: text.optional(),
  motif: text.optional(),
  yarns: z.record(text, text).optional(),
})

export const ARRANGEMENTS = ['straight-rows', 'offset-rows', 'rings'] as const
export const ALTERNATE_ROWS = ['same', 'oneFewer', 'oneMore'] as const
/** How the motifs of a blanket alternate: from place to place, or from row to row. */
export const ALTERNATIONS = ['cell', 'row'] as const
/** Shapes that a blanket is cut out in. */
export const OUTLINE_SHAPES = ['rectangle', 'hexagon', 'circle', 'triangle', 'path'] as const
/** Where a triangle points. */
export const POINTINGS = ['down', 'up'] as const
export const FILL_PATTERNS = ['one', 'repeat', 'rows', 'no-two-alike', 'shade', 'scatter'] as const
/** Where a shade runs to from its first colourway. */
export const SHADE_DIRECTIONS = ['down', 'up', 'right', 'left', 'outward'] as const
export const FILL_SYMMETRIES = ['left-right', 'top-bottom', 'both'] as const
export const EDGING_STYLES = ['follow', 'bridge', 'level'] as const

const kitSchema = z.looseObject({
  count: number.optional(),
  windTo: number.optional(),
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
  fees: z.looseObject({ fixed: number.optional(), sharePercent: number.optional() }).optional(),
  taxPercent: number.optional(),
  /** The pattern that is put in: whose it is, and whether its owner allows it. */
  pattern: z.looseObject({ by: text.optional(), allowed: z.boolean().optional() }).optional(),
  /** How to wash it, for the card; the ball band knows. */
  care: text.optional(),
})

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
    })
    .optional(),
  /** The last motif of each row is joined to the first. */
  inTheRound: z.boolean().optional(),
  /** Left out, the colourway is the first one of that motif. */
  fillers: z.looseObject({ motif: text.optional(), colourway: text.optional() }).optional(),
  halves: z.boolean().optional(),
  edging: z
    .looseObject({
      style: z.enum(EDGING_STYLES).optional(),
      rounds: z.array(text).optional(),
      yarn: text.optional(),
    })
    .optional(),
  kit: kitSchema.optional(),
})

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

export const PANEL_SHAPES = ['rectangle', 'circle', 'ellipse', 'outline'] as const
/** Whether one item of an appliqué may lie on another. */
const OVERLAPS = ['refused', 'allowed'] as const

export const appliqueSchema = z.looseObject({
  kind: z.literal('applique'),
  panel: z
    .looseObject({
      shape: z.enum(PANEL_SHAPES).optional(),
      width: number.optional(),
      height: number.optional(),
      diameter: number.optional(),
      /** SVG path data in mm: what stands in a path's `d`. */
      path: text.optional(),
      /** Corners as [x, y] in mm, where there is no path. */
      points: z.array(z.array(number)).optional(),
      allowance: number.optional(),
    })
    .optional(),
  clearance: number.optional(),
  /** Left out: refused. */
  overlaps: z.enum(OVERLAPS).optional(),
  items: z
    .array(
      z.looseObject({
        motif: text.optional(),
        colourway: text.optional(),
        x: number.optional(),
        y: number.optional(),
        turn: number.optional(),
        flipped: z.boolean().optional(),
        /** Higher lies on top; the same: the later one in the list. */
        layer: number.optional(),
      }),
    )
    .optional(),
  kit: kitSchema.optional(),
})

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
  rule: z.enum(JOIN_RULES).optional(),
  yarn: text.optional(),
  bridgeChains: number.optional(),
  gap: number.optional(),
  reach: number.nullable().optional(),
  seam: z.enum(SEAMS).optional(),
  minutes: number.optional(),
})

export const ORDERS = ['there-and-back', 'one-way', 'centre', 'colourway'] as const
export const orderSchema = z.union([z.enum(ORDERS), z.array(text)])

export const PAPERS = ['A4', 'Letter'] as const
export const SHEET_STYLES = ['colour', 'ink'] as const

export const projectSchema = z.looseObject({
  format: z.literal(PROJECT_FORMAT),
  version: z.literal(PROJECT_VERSION),
  title: text.optional(),
  designer: text.optional(),
  notes: text.optional(),
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
  /** What is joined, likewise. Left out: with motifs that are joined as they are made, all that are made. */
  joined: z.record(text, text).optional(),
  allowance: z.looseObject({ wastePercent: number.optional(), tail: number.optional() }).optional(),
  sheet: z
    .looseObject({
      paper: z.enum(PAPERS).optional(),
      style: z.enum(SHEET_STYLES).optional(),
      terms: z.enum(['US', 'UK']).optional(),
    })
    .optional(),
})

export type Project = z.infer<typeof projectSchema>
export type StitchGauge = z.infer<typeof stitchGaugeSchema>
export type Yarn = z.infer<typeof yarnSchema>
export type BandField = (typeof BAND_FIELDS)[number]
export type Motif = z.infer<typeof motifSchema>
export type RoundsMotif = z.infer<typeof roundsMotifSchema>
export type MeasuredMotif = z.infer<typeof measuredMotifSchema>
export type MeasuredSizes = z.infer<typeof measuredSchema>
export type Weighed = z.infer<typeof weighedSchema>
export type Colourway = z.infer<typeof colourwaySchema>
export type Layout = z.infer<typeof layoutSchema>
export type BlanketLayout = z.infer<typeof blanketSchema>
export type GarlandLayout = z.infer<typeof garlandSchema>
export type Kit = z.infer<typeof kitSchema>
export type AppliqueLayout = z.infer<typeof appliqueSchema>
export type Joining = z.infer<typeof joiningSchema>
export type PanelShape = (typeof PANEL_SHAPES)[number]
export type JoinRule = (typeof JOIN_RULES)[number]
export type Seam = (typeof SEAMS)[number]
export type Arrangement = (typeof ARRANGEMENTS)[number]
export type AlternateRows = (typeof ALTERNATE_ROWS)[number]
export type OutlineShape = NonNullable<BlanketLayout['outlineShape']>
export type FillPattern = (typeof FILL_PATTERNS)[number]
export type EdgingStyle = (typeof EDGING_STYLES)[number]
export type Order = z.infer<typeof orderSchema>
export type OutlineKind = (typeof OUTLINE_KINDS)[number]
export type Hand = 'right' | 'left'
export type Terms = 'US' | 'UK'
export type Ruler = (typeof RULERS)[number]
export type UnitSystem = 'metric' | 'imperial'
export type Paper = (typeof PAPERS)[number]
export type SheetStyle = (typeof SHEET_STYLES)[number]

/** The JSON Schema of the project file, for other programs and for editors that check as one types. */
export function projectJsonSchema(): object {
  return z.toJSONSchema(projectSchema, { unrepresentable: 'any' })
}
