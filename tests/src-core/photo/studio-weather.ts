/** What a picture of the studio is taken in: with care, or as kitchens, lamps and phones have it. */
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { chance } from './flowers'
import type { Plain } from './studio-motifs'

export interface Weather {
  readonly sheet: SheetName | null
  readonly plain: Plain | null
  /** How much light the corners of the picture lose besides. */
  readonly vignette: number
  /** A lamp that is small and near: depth of its shadow, and its softness in mm; null as it comes. */
  readonly shadow: { readonly depth: number; readonly softness: number } | null
  /** Fibres that stand off the yarn: how far, in mm, and how much of the ground they cover. */
  readonly fuzz: { readonly far: number; readonly cover: number }
  /** Contrast of a cloth of checks on the table. */
  readonly checks: number
  /** How far the sheet's long edges bow, in mm. */
  readonly curl: number
  /** What the phone makes of it: light, steepness of its curve, halos of its sharpening, balance of its white. */
  readonly exposure: number
  readonly steep: number
  readonly sharpen: number
  readonly white: readonly [number, number, number]
  /** Yarn whose colour changes from stitch to stitch. */
  readonly tweed: number
  readonly quality: number | null
}

export const calm: Weather = {
  ...{ sheet: null, plain: null, vignette: 0, shadow: null, fuzz: { far: 0, cover: 0 }, checks: 0, curl: 0 },
  ...{ exposure: 1, steep: 0, sharpen: 0, white: [1, 1, 1], tweed: 0, quality: null },
}

/** Without care: each fault in about half of the pictures. */
export function harsh(number: number): Weather {
  const random = chance(7_368_787 * number + 29)
  const between = (least: number, most: number) => least + (most - least) * random()
  const often = (share: number, value: () => number, other = 0) => (random() < share ? value() : other)
  const kind = random()
  const plain = (['disc', 'square', 'hexagon', 'octagon'] as const)[Math.floor(random() * 4)]!
  return {
    sheet: random() < 0.12 ? 'card' : null,
    plain: kind < 0.16 ? plain : null,
    vignette: often(0.5, () => between(0.1, 0.5)),
    shadow: random() < 0.35 ? { depth: between(0.25, 0.5), softness: between(0.1, 0.5) } : null,
    fuzz: { far: between(0.4, 1.2), cover: often(0.5, () => between(0.05, 0.25)) },
    checks: often(0.35, () => between(0.15, 0.5)),
    curl: often(0.3, () => between(-1.2, 1.2)),
    exposure: between(0.8, 1.15),
    steep: often(0.5, () => between(0.1, 0.5)),
    sharpen: often(0.5, () => between(0.2, 0.8)),
    white: [between(0.85, 1.1), 1, between(0.75, 1.1)],
    tweed: often(0.3, () => between(0.05, 0.25)),
    quality: Math.round(between(60, 94)),
  }
}

/** The phone's curve: steeper in the middle, flat at both ends. */
export const curved = (value: number, steep: number): number =>
  value + steep * value * (1 - value) * (2 * value - 1)

/** A value between −1 and 1 that belongs to a patch of the plane, the same each time. */
export function patch(x: number, y: number, size: number): number {
  const mixed = Math.imul(
    Math.floor(x / size) * 374_761_393 + Math.floor(y / size) * 668_265_263,
    1_274_126_177,
  )
  return ((mixed ^ (mixed >>> 15)) >>> 0) / 2_147_483_648 - 1
}
