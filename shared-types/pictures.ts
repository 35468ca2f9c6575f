/** Pictures of a project: what they can show, and how. */

/**
 * The whole as it looks; the map with its numbers; one motif; its symbol chart with its key; the colourways with
 * their letters and names.
 */
export const PICTURE_SUBJECTS = ['whole', 'map', 'motif', 'chart', 'key'] as const
export type PictureSubject = (typeof PICTURE_SUBJECTS)[number]

export const PICTURE_FORMATS = ['png', 'svg'] as const
export type PictureFormat = (typeof PICTURE_FORMATS)[number]

/** Pixels across: what is chosen without a word, and the bounds (those of the largest posters; our own choice). */
export const PICTURE_WIDTH = { least: 16, usual: 2000, most: 12_000 } as const

/** "#rrggbb": what may lie behind a picture. */
export const GROUND_COLOUR = /^#[0-9a-f]{6}$/i

/** One picture. */
export interface PictureChoice {
  readonly of: PictureSubject
  readonly format: PictureFormat
  /** Pixels across; the height follows. */
  readonly width: number
  /** "#rrggbb" behind it; null for none. */
  readonly ground: string | null
  /** Of which motif, for pictures of one; the one that is arranged where absent. */
  readonly motif?: string | undefined
  /** In which colourway a motif is shown; the first that it has where absent. */
  readonly colourway?: string | undefined
}
