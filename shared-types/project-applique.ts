/** The layout of an appliqué in the project file. */
import { z } from 'zod'
import { number, text } from './project-values'
import { kitSchema } from './project-kit'

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

export type AppliqueLayout = z.infer<typeof appliqueSchema>
export type PanelShape = (typeof PANEL_SHAPES)[number]
