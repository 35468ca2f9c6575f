/** Fonts for other scripts: what a person chose beside the type that Petalyard brings. */
import { z } from 'zod'

/** How many, and bytes of each: our own choice. Fonts for Chinese or Japanese take up to about 25 MB. */
export const FONT_LIMITS = { count: 4, bytes: 36_000_000 } as const

/** Code points, first and last of each range, in ascending order. */
export type CodePointRanges = readonly (readonly [number, number])[]

/** A font that is kept in the own folder, so that it does not go missing. */
export const keptFontSchema = z.strictObject({
  /** Of its copy: a hash. */
  id: z.string().regex(/^[0-9a-f]{32}$/),
  name: z.string().max(200),
  /** Which one of a collection, from 1. */
  face: z.number().int().min(1).max(10_000),
  /** Scripts that it covers, by name. */
  scripts: z.array(z.string().max(60)).max(60),
  /** What it has beyond the type on paper, as ranges in hexadecimal. */
  covers: z.string().max(200_000),
})
export type KeptFont = z.infer<typeof keptFontSchema>

/** A copy and which of its faces is meant, from 1. */
export interface FontPlace {
  readonly name: string
  readonly path: string
  readonly face: number
}

/** What a font is, or the names of those in a collection of which one has to be chosen. */
export type FontRead =
  Pick<KeptFont, 'name' | 'face' | 'scripts' | 'covers'> | { readonly choose: readonly string[] }
