/**
 * Constants of motifs in written rounds (M5–M17). Each is the model's own, fitted or from memory as it says. "Fitted":
 * together, on a coarse grid, to the nine sizes of §published-sizes; docs/model.md tells how far off they are, and how
 * far one is that is left out of the fit.
 */

/** M5: a chain ring gives way by so much (fitted to published motifs). */
export const RING_GIVES = 0.15
/** M5: sc and dc per chain of a ring beyond which it is over-full (§eckman: ch 4 holds 8 with ease). */
export const RING_HOLDS = { sc: 3, dc: 4 } as const
/**
 * M7: from so many times the stitches that fit without strain on a round is over-full. A disc that grows by the
 * published flat number (§flat-circle: 6 sc, 12 dc a round) lies flat in every published gauge, and at the squattest of those (a
 * common label's 12 sc × 15 rows, §schultz: q = 0.80) its rounds hold √(0.955 / 0.80) times what 2πr asks for.
 */
export const OVERFULL_FROM = Math.sqrt(6 / (2 * Math.PI) / 0.8)
/** M7: an over-full round stands out by at most this share of its height … (fitted) */
export const OVERFULL_MOST = 0.12
/** … and by this share of what it is too long by. */
export const OVERFULL_SHARE = 0.6
/** M8: a cornered round follows its length by this share … (fitted to §published-sizes) */
export const LENGTH_TELLS = 0.6
/** … but by no more than these shares of its height, outward and inward (fitted, as far as the sizes tell it). */
export const GROWS = { most: 0.2, least: 0.4 } as const
/** M8: … over petals by this share, as far as their tips reach (fitted) */
export const PETALS_SPREAD = 0.9
/** M7: chains between the stitches of a round press by this share of their length (fitted). */
export const CHAINS_PRESS = 0.5
/** M9: loops that nothing holds lie slack and reach so far out of their chord, as a share of their arch (fitted) */
export const LOOPS_LIE = 0.7
/** M9: loops of so many chains and more press on their neighbours (ours) */
export const LONG_LOOP = 4
/** M8: a corner loop of so many chains and more is a point, which counts for so many along the round (ours) */
export const POINT_LOOP = { from: 4, counts: 3 } as const
/** M8: an open corner loop adds so much of its chains (from memory). */
export const CORNER_LOOP = 0.3
/** M10: widest half angle of a fan into one stitch, in radians: 100°. */
export const WIDEST_FAN = (100 * Math.PI) / 180
/** M11: an open tip chain and a closed picot add so much of their chains (from memory). */
export const TIP_CHAIN = 0.3
export const PICOT = 0.35
/** M10: chains in a tip from which on stitches stand along them as along a loop (by eye). */
export const TIP_LOOP = 3
/** M10: stitches of a petal keep so far from the border to the next petal, in stitch widths: half of themselves. */
export const PRESSED = 0.45
/** M10: chains beside a petal keep so far from its stitches, in stitch widths (by eye). */
export const BESIDE_PETAL = 0.55
/** M9: chains of neighbouring loops keep so far from the line between them, in stitch widths (by eye). */
export const LOOPS_APART = 0.36
/** Chains of a loop are drawn so much shorter in all, in chains (by eye). */
export const LOOP_ENDS = 0.5
/** M11: the outermost round's own loops, in stitch widths (from memory); those of petals stand free (fitted). */
export const OUTER_LOOPS = { round: 0.1, petals: 0.24 } as const
/** M12: stitches per length of a petal's top edge. */
export const CROWDED = { note: 1.35, warning: 1.6 } as const
/** M12: loops of three and more chains take so many stitches to a chain without a note. */
export const LOOP_HOLDS = 3
/** M17: bounds of the flatness F between cups, may cup, flat, may ruffle, ruffles (fitted to §published-sizes). */
export const FLATNESS = { cups: 0.8, mayCup: 0.9, mayRuffle: 1.25, ruffles: 1.4 } as const
/** M17: flatness is judged from this round on. */
export const FLATNESS_FROM_ROUND = 3
/** M8: a motif has so many corners. */
export const CORNERS = { least: 3, most: 8 } as const
/** Symbols of a chart: more are no longer told apart on any paper, and take too long to place (ours). */
export const MOST_SYMBOLS = 5_000
/**
 * M16: a motif is uneven when its outline is off its own mean petal by this share of its mean radius, and a tip reaches
 * less far than the farthest, or stands nearer to the next one than even, or a dip is deeper than the others (the cleft of a heart), by these shares:
 * less is evened out (ours).
 */
export const UNEVEN = { unlike: 0.05, reach: 0.08, apart: 0.35, cleft: 0.4 } as const
/**
 * M14: a polygon is one as long as its corners stand out by these shares of what a regular one's do. Scallops leave its
 * sides as they are where more of them than `toSide` stand on each and they are no deeper than this share of the way to
 * it; a round motif is edged by so many and more, no deeper than this share of its radius (ours).
 */
export const SCALLOPS = {
  corners: { least: 0.4, most: 1.45 },
  toSide: 2,
  deep: 0.3,
  many: 16,
  shallow: 0.15,
} as const
