/** Arrangements in words. */
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
