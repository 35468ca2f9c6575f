/** Arrangements in words. */
import type { EdgingAccount } from '../../../../shared-types/plan'
import type { EdgingKind } from '../../../../src-core/edging/gallery'

export const ARRANGEMENT_WORDS = {
  'straight-rows': { label: 'Straight rows', hint: 'motif under motif' },
  'offset-rows': { label: 'Offset rows', hint: 'every other row shifted by half a motif' },
  rings: { label: 'Rings', hint: 'round one in the middle' },
} as const

export const ALTERNATE_WORDS = {
  same: 'as many as the others',
  oneFewer: 'one fewer',
  oneMore: 'one more',
} as const

export const BY_WORDS = { cell: 'from motif to motif', row: 'row by row' } as const

export const OUTLINE_WORDS = {
  rectangle: 'a rectangle',
  hexagon: 'a hexagon',
  circle: 'a circle',
  triangle: 'a triangle',
  path: 'a drawn shape',
} as const

export const POINTING_WORDS = { down: 'points down', up: 'points up' } as const

export const EDGING_WORDS = {
  follow: { label: 'Follow the edge', hint: 'round every petal' },
  bridge: { label: 'Bridge it', hint: 'a stitch in each tip, chains between' },
  level: { label: 'Level it', hint: 'tall stitches fill the dips' },
} as const

export const GALLERY_WORDS: Readonly<Record<EdgingKind, { label: string; hint: string }>> = {
  plain: { label: 'Plain', hint: 'short stitches, three in each corner' },
  picot: { label: 'Picot', hint: 'a loop of three chains after every third stitch' },
  shell: { label: 'Shell', hint: 'five in every sixth stitch' },
  scallop: { label: 'Scallop', hint: 'waves of short and tall stitches' },
  ripple: { label: 'Ripple', hint: 'more at every tip, fewer in every dip' },
}

/** "Comes out even on a multiple of 6 stitches." */
export const multipleWords = ({ of, plus, by }: NonNullable<EdgingAccount['multiple']>): string =>
  of === 1 && plus === 0
    ? 'Comes out even on any number of stitches.'
    : `Comes out even on a multiple of ${of}${plus > 0 ? ` plus ${plus}` : ''} ${
        by === 'stretch' ? 'on each side, from corner to corner' : 'stitches in the whole round'
      }.`
