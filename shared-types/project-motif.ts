/** Motifs in the project file: measures or written rounds, gauge and weight. */
import { z } from 'zod'
import { id, number, text } from './project-values'

export const stitchGaugeSchema = z.looseObject({
  stitch: text.optional(),
  stitches: number.optional(),
  rows: number.optional(),
  over: number.optional(),
  hook: number.optional(),
  /** The hook that the gauge was counted with, where `hook` was changed since and it was not counted again. */
  countedWith: number.optional(),
  /** Measured heights in mm, by stitch; they beat every derived one. */
  heights: z.record(text, number).optional(),
  /** The trade's own gauge: "rounds 1–2 measure 63.5 mm" as { rounds: 2, across: 63.5 }. */
  rounds: number.optional(),
  across: number.optional(),
})

/** How a flower with an odd number of petals was measured: tip to opposite dip, or from its centre. */
export const RULERS = ['opposite', 'centre'] as const
/** Left out: opposite. The measures are kept as diameters either way. */
const ruler = z.enum(RULERS).optional()

/** What a ruler says of a motif. */
const measures = {
  overTips: number.optional(),
  overValleys: number.optional(),
  across: number.optional(),
  sideToSide: number.optional(),
  pointToPoint: number.optional(),
  length: number.optional(),
  width: number.optional(),
  ruler,
  blocked: z.boolean().optional(),
  /**
   * What was measured, by the same names, where the sizes above are worked out from it for another gauge; `hook` where
   * another one came with it; empty where they are worked out for other rounds.
   */
  asMeasured: z.record(text, number).optional(),
}

export const measuredSchema = z.looseObject(measures)

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

/** Characters of the picture of a motif as text, about 300 kB of JPEG (our own choice). */
export const PHOTO_CHARACTERS = 400_000

/** The picture that it was measured from, scaled down: a JPEG as a data URL; `sheet` is what it lies on or beside. */
const photoSchema = z.looseObject({
  picture: z.string().max(PHOTO_CHARACTERS).optional(),
  sheet: text.optional(),
})

const motifCommon = {
  id,
  name: text.optional(),
  gauge: stitchGaugeSchema.optional(),
  weighed: weighedSchema.optional(),
  /** The gauge that its sizes were measured with, where another hook was taken since and they were not measured again. */
  measuredWith: stitchGaugeSchema.optional(),
  /** The same of its weight. */
  weighedWith: stitchGaugeSchema.optional(),
  /** Its weight is worked out for another hook from what was weighed. */
  weightWorkedOut: z.boolean().optional(),
  /** Metres in one motif by colour, measured by unravelling it. */
  unravelled: z.record(text, number).optional(),
  minutes: number.optional(),
  /** How it is worked, in the designer's words, to be printed with it: lines as they are. */
  instructions: text.optional(),
  photo: photoSchema.optional(),
  /** Sizes as the page of its rounds states them, by their names; one that stands in the motif otherwise was measured. */
  stated: z.record(text, number).optional(),
  /** The motif that this one goes with, without a place of its own, and how many of it with each of those. */
  goesWith: z.looseObject({ motif: id.optional(), each: number.optional() }).optional(),
}

/** What a motif in written rounds can be said to be, where its stitches alone do not settle it. */
export const ROUND_SHAPES = ['petals', 'round', 'straight'] as const

export const roundsMotifSchema = z.looseObject({
  ...motifCommon,
  kind: z.literal('rounds'),
  /** Left out: as the rounds say. */
  shape: z.enum(ROUND_SHAPES).optional(),
  foundation: z
    .looseObject({ ring: text.optional(), chains: number.optional(), chain: number.optional() })
    .optional(),
  rounds: z.array(roundSchema).optional(),
  /** Special stitches as the designer explains them ("Shell: 5 dc in one st"), read before the rounds. */
  special: text.optional(),
  /** The page that the rounds were pasted from, and what of its proposals was taken or left, by their ids. */
  page: z
    .looseObject({
      text: text.optional(),
      terms: z.enum(['US', 'UK']).optional(),
      done: z.array(text).optional(),
    })
    .optional(),
  measured: measuredSchema.optional(),
})

/** Outlines that follow from measures alone. */
export const OUTLINE_KINDS = ['petals', 'round', 'square', 'hexagon', 'octagon', 'leaf'] as const

/** A line round the motif as it runs, from a photo of it: points [x, y] in mm about its middle, y downwards. */
const traceSchema = z.looseObject({
  points: z.array(z.array(number)).optional(),
  /** Which of the points are tips of petals, and which dips between them, counted from 0; found where left out. */
  tips: z.array(number).optional(),
  dips: z.array(number).optional(),
})

export const measuredMotifSchema = z.looseObject({
  ...motifCommon,
  kind: z.literal('measured'),
  outline: z.enum([...OUTLINE_KINDS, 'traced']),
  petals: number.optional(),
  /** For `outline: "traced"`; the measures beside it say how large it is. */
  traced: traceSchema.optional(),
  ...measures,
  /**
   * What stands above as the written rounds of the same motif give it, because nobody has measured it: its outline, its
   * petals and sizes by their names. A value that differs since was entered.
   */
  fromRounds: z
    .looseObject({
      outline: text.optional(),
      petals: number.optional(),
      sizes: z.record(text, number).optional(),
    })
    .optional(),
  slots: z.array(z.looseObject({ slot: text, grams: number.optional() })).optional(),
})

export const motifSchema = z.discriminatedUnion('kind', [roundsMotifSchema, measuredMotifSchema])

export type StitchGauge = z.infer<typeof stitchGaugeSchema>
export type Motif = z.infer<typeof motifSchema>
export type RoundsMotif = z.infer<typeof roundsMotifSchema>
export type MeasuredMotif = z.infer<typeof measuredMotifSchema>
export type MeasuredSizes = z.infer<typeof measuredSchema>
export type Weighed = z.infer<typeof weighedSchema>
export type OutlineKind = (typeof OUTLINE_KINDS)[number]
/** Every outline of a measured motif: also one that was traced. */
export type MeasuredOutline = MeasuredMotif['outline']
export type KeptPhoto = z.infer<typeof photoSchema>
export type Trace = z.infer<typeof traceSchema>
export type RoundShape = (typeof ROUND_SHAPES)[number]
export type Ruler = (typeof RULERS)[number]
