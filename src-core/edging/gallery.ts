/**
 * Edgings to begin from: ordinary written rounds, to be changed like any others. Common practice, no source: shells of
 * five in every sixth stitch, picots of three chains after every third, three in each corner.
 */
import type { BlanketLayout, EdgingStyle, Terms } from '../../shared-types/project'
import { translateText } from '../notation/translate'
import { stitchAbbreviation } from '../stitches/terms'

export const EDGING_KINDS = ['plain', 'picot', 'shell', 'scallop', 'ripple'] as const
export type EdgingKind = (typeof EDGING_KINDS)[number]

interface GalleryEdging {
  /** In US terms. */
  readonly rounds: readonly string[]
  /** How it must meet the edge; left out: as it does. */
  readonly style?: EdgingStyle
}

const GALLERY: Readonly<Record<EdgingKind, GalleryEdging>> = {
  plain: {
    rounds: [
      'ch 1, *3 sc in corner, sc in each st to next corner; rep from * around, join with sl st in first sc.',
    ],
  },
  picot: {
    rounds: [
      'ch 1, *sc in next 3 sts, ch 3, sl st in third ch from hook; rep from * around, join with sl st in first sc.',
    ],
  },
  shell: {
    rounds: [
      'ch 1, *sc in next st, sk 2 sts, 5 dc in next st, sk 2 sts; rep from * around, join with sl st in first sc.',
    ],
  },
  scallop: {
    rounds: [
      'ch 1, *sc in next st, hdc in next st, 3 dc in next st, hdc in next st, sc in next st, sl st in next st; rep from * around, join with sl st in first sc.',
    ],
  },
  ripple: {
    style: 'follow',
    rounds: [
      'ch 1, *3 sc in tip, sc in each st to next dip, sc3tog over dip, sc in each st to next tip; rep from * around, join with sl st in first sc.',
    ],
  },
}

/** The words of an edging of the gallery. */
export const galleryRounds = (kind: EdgingKind, terms: Terms): string[] =>
  GALLERY[kind].rounds.map((work) => translateText(work, 'US', terms))

/** An edging with the written rounds of one of the gallery instead of its own; its other fields stay. */
export function fromGallery(
  edging: BlanketLayout['edging'],
  kind: EdgingKind,
  terms: Terms,
): NonNullable<BlanketLayout['edging']> {
  const { style } = GALLERY[kind]
  const { style: before, ...others } = edging ?? {}
  return {
    ...others,
    // What came with another of the gallery goes with it.
    ...(before && !cameWithGallery(edging, terms) && { style: before }),
    ...(style && { style }),
    // They are worked into a round of sc, which is said: it is there to be seen and changed.
    rounds: others.rounds?.length ? others.rounds : [stitchAbbreviation('sc', terms)],
    written: galleryRounds(kind, terms).map((work) => ({ work })),
  }
}

/** Whether an edging is one of the gallery as it was begun, in the style that came with it. */
const cameWithGallery = (edging: BlanketLayout['edging'], terms: Terms): boolean =>
  EDGING_KINDS.some((kind) => {
    const works = galleryRounds(kind, terms)
    const isIt =
      works.length === edging?.written?.length && works.every((work, i) => edging.written?.[i]?.work === work)
    return isIt && GALLERY[kind].style !== undefined && GALLERY[kind].style === edging?.style
  })
