/** Fonts for other scripts: what a person chose beside the type that Petalyard brings. */

/** How many, and bytes of each: our own choice. Fonts for Chinese or Japanese take up to about 25 MB. */
export const FONT_LIMITS = { count: 4, bytes: 40_000_000 } as const

/** Code points, first and last of each range, in ascending order. */
export type CodePointRanges = readonly (readonly [number, number])[]

/** A file, and which face where it is a collection: from 1. */
export interface FontPlace {
  readonly path: string
  readonly face: number
}
