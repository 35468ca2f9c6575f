/** Arrangements in words. */
import type { EdgingAccount, MotifAccount } from '../../../../shared-types/plan'
import type { Project } from '../../../../shared-types/project'
import type { EdgingKind } from '../../../../src-core/edging/gallery'
import { listOf } from '../../../../src-core/joins/words'
import type { OneKind } from '../../../state/edits/gaps'
import { findMotif } from '../../../state/edits/motif'
import { counted } from '../../../state/summaries'

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

/** The ways in which an edging meets the edge, for motifs of a shape: only a flower has petals and tips. */
export function edgingWords(shape: MotifAccount['shape'] | undefined) {
  const [along, point] = (shape && AT_EDGE[shape]) ?? AT_EDGE.petals
  return {
    follow: { label: 'Follow the edge', hint: `round every ${along}` },
    bridge: { label: 'Bridge it', hint: `a stitch in each ${point}, chains between` },
    level: { label: 'Level it', hint: 'taller stitches fill the dips, or rows where these are deep' },
  } as const
}
const AT_EDGE: Readonly<Partial<Record<MotifAccount['shape'], readonly [string, string]>>> & {
  readonly petals: readonly [string, string]
} = {
  petals: ['petal', 'tip'],
  straight: ['motif', 'corner'],
  round: ['motif', 'motif where it lies outermost'],
}

export const GALLERY_WORDS: Readonly<Record<EdgingKind, { label: string; hint: string }>> = {
  plain: { label: 'Plain', hint: 'short stitches, three in each corner' },
  picot: { label: 'Picot', hint: 'a loop of three chains after every third stitch' },
  shell: { label: 'Shell', hint: 'five in every sixth stitch' },
  scallop: { label: 'Scallop', hint: 'waves of short and tall stitches' },
  ripple: { label: 'Ripple', hint: 'more at every tip, fewer in every dip' },
}

/** "Comes out even on a multiple of 6 stitches in the whole round."; `into`: the number of the round that it is worked into. */
export const multipleWords = (
  { of, plus, by }: NonNullable<EdgingAccount['multiple']>,
  into: number,
): string =>
  of === 1 && plus === 0
    ? 'Comes out even on any number of stitches.'
    : by === 'round' && plus > 0
      ? `Comes out even where round ${into} has a multiple of ${of} plus ${plus} stitches.`
      : `Comes out even on a multiple of ${of}${plus > 0 ? ` plus ${plus}` : ''} ${
          by === 'stretch' ? 'on each side, from corner to corner' : 'stitches in the whole round'
        }.`

/** "between 4 motifs", "between 2 × Large and 1 × Small", "between 4 motifs, the smaller": what tells a kind of openings. */
export function openingName(project: Project, { kind, all }: OneKind): string {
  const counts = new Map<string, number>()
  for (const id of kind.between) counts.set(id, (counts.get(id) ?? 0) + 1)
  const isOne = new Set(all.flatMap(({ between }) => between)).size < 2
  const named = [...counts].map(([id, count]) => `${count} × ${findMotif(project, id)?.name || id}`)
  const alike = all.filter(({ between }) => between.join() === kind.between.join()).length
  const size = alike < 2 ? '' : `, ${sizeWords(kind.nth, alike)}`
  return `between ${isOne ? counted(kind.between.length, 'motif') : listOf(named)}${size}`
}

/** Which one of several by size, the largest first. */
function sizeWords(nth: number, of: number): string {
  if (of === 2) return nth === 1 ? 'the larger' : 'the smaller'
  return nth === 1 ? 'the largest' : nth === of ? 'the smallest' : `size ${nth} of ${of}`
}
