/** Finds the sheet in a picture, roughly: a smooth piece with four straight sides whose shape fits. */
import { smoothed } from './motif-mask'
import { toOklab } from './oklab'
import { shrink } from './picture'
import type { Picture, SmallLight, Spot } from './picture'
import { asSheet } from './pose'
import { areaOf, countOf, filled, fourSides, hullOf, regions } from './regions'
import type { Mask, Region } from './regions'
import type { Corners } from './homography'
import type { SheetSize } from './sheet-sizes'

/** Places along the longer side of the picture in which the sheet is looked for. */
const SEARCHED = 360
/** Steps of colour (in Oklab) from place to place that still count as smooth; each is tried. */
const SMOOTH = [0.012, 0.018, 0.027, 0.04, 0.06]
/** The least share of the picture that a sheet takes up, and a card. */
const LEAST_SHEET = 0.06
const LEAST_CARD = 0.008
/** How much of its four sides the smooth piece fills, its holes counted in. */
const LEAST_FILL = 0.88
/** The same where the four sides have its shape: a motif near its edge leaves no room for the hole to close. */
const LEAST_FILL_OF_SHAPE = { fill: 0.72, misfit: 0.06 }
/** What a piece counts for that runs over the rim while its corners are known: a strip of a folded sheet is no sheet. */
const KNOWN = 0.6
/** How far from the shape of the sheet the four sides may be. */
const MOST_MISFIT = 0.2

/** How much of its four sides the hull of a card fills: its corners are rounded (ISO/IEC 7810), and nothing lies on it. */
const LEAST_STRAIGHT = 0.94
/** The least share of a card that a stripe of the colour of the table may leave on one of its sides. */
const LEAST_PART = 0.05
/** How much of a card its parts fill, the stripe left out. */
const LEAST_FILL_BESIDE = 0.6
/** Pieces of a picture of which pairs are tried: more are the stitches of a motif. */
const MOST_PAIRED = 6

export interface FoundSheet {
  readonly corners: Corners
  /** It runs over the rim of the picture. */
  readonly cutOff: boolean
  /** Its four sides are seen so far that their corners are known all the same. */
  readonly known: boolean
  /** How far its four sides are from the shape of the sheet. */
  readonly misfit: number
}

/** How much less a step of lightness counts where the edge of a shadow parts a sheet. */
const SHADOWED = 0.3
/** Paper that is nearly as light as the table, in the same shadows, is told by its tint alone: levels of it that are tried. */
const TINTS = [0.15, 0.3, 0.45, 0.6, 0.7, 0.8, 0.86, 0.92]
/** Places of the search over which tints are averaged, to each side. */
const TINT_EVENED = 3
/** How far outside the picture a corner may be known by its sides, as a share of the picture's longer side. */
const OUTSIDE = 0.12

/** The largest step of colour from each place to its neighbours, those of lightness by a share. */
function stepsOf({ width, height, light }: SmallLight, lightness: number): Float32Array {
  const lab = new Float64Array(3)
  const colours = new Float32Array(light.length)
  for (let at = 0; at < light.length; at += 3) {
    toOklab(light[at]!, light[at + 1]!, light[at + 2]!, lab)
    colours[at] = lightness * lab[0]!
    colours[at + 1] = lab[1]!
    colours[at + 2] = lab[2]!
  }
  const steps = new Float32Array(width * height)
  const compare = (one: number, other: number) => {
    const step = Math.hypot(
      colours[3 * one]! - colours[3 * other]!,
      colours[3 * one + 1]! - colours[3 * other + 1]!,
      colours[3 * one + 2]! - colours[3 * other + 2]!,
    )
    steps[one] = Math.max(steps[one]!, step)
    steps[other] = Math.max(steps[other]!, step)
  }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = y * width + x
      if (x + 1 < width) compare(at, at + 1)
      if (y + 1 < height) compare(at, at + width)
    }
  return steps
}

/** Which values are over a level: these are `above`, and the others are not. */
function over(values: Float32Array, level: number, above: 0 | 1 = 1): Uint8Array {
  const on = new Uint8Array(values.length)
  for (let at = 0; at < on.length; at++) on[at] = values[at]! > level ? above : 1 - above
  return on
}

/** Pieces of the picture that are more, or less, yellow or green than a level, whatever light falls on them. */
function tinted({ width, height, light }: SmallLight): Mask[] {
  const lab = new Float64Array(3)
  const tints = [1, 2].map(() => new Float32Array(width * height))
  for (let at = 0; at < width * height; at++) {
    toOklab(light[3 * at]!, light[3 * at + 1]!, light[3 * at + 2]!, lab)
    // The cube root of light scales all three alike.
    tints.forEach((tint, c) => (tint[at] = lab[c + 1]! / Math.max(0.05, lab[0]!)))
  }
  return tints.flatMap((tint) => {
    const evened = smoothed(tint, width, height, TINT_EVENED)
    const sorted = evened.slice().sort()
    return TINTS.flatMap((share) => {
      const level = sorted[Math.floor(share * (sorted.length - 1))]!
      return [1, 0].map((above) => ({
        ...{ width, height },
        on: above === 1 ? over(evened, level) : over(evened, level).map((on) => 1 - on),
      }))
    })
  })
}

/** A sheet of any size under a motif, whose millimetres a ruler gives: the least share of the picture, and how smooth it is. */
const LEAST_UNDER = 0.15
const SMOOTH_UNDER = SMOOTH.slice(0, 2)

/** The sheet of this size in the picture, its corners to about a place of the search; null where none is found. */
export function findSheet(picture: Picture, sheet: SheetSize): FoundSheet | null {
  const small = shrink(picture, SEARCHED)
  const least = sheet.beside ? LEAST_CARD : LEAST_SHEET
  const found = fourSided(picture, small, 1, SMOOTH, least, sheet)
  if (found && (!found.cutOff || found.known)) return found
  // Hard edges of shadows part a sheet in pieces, but leave its colour.
  const shadowed = fourSided(picture, small, SHADOWED, SMOOTH, least, sheet)
  if (shadowed && !shadowed.cutOff) return shadowed
  const coloured = bestOf(picture, small, tinted(small), least, sheet)
  const isSheet = coloured && !coloured.cutOff && coloured.misfit < LEAST_FILL_OF_SHAPE.misfit
  return isSheet ? coloured : (found ?? shadowed)
}

/** The whole sheet in a picture, whatever its size; null where there is none, or it runs over the rim. */
export function findSheetUnder(picture: Picture): Corners | null {
  const found = fourSided(picture, shrink(picture, SEARCHED), 1, SMOOTH_UNDER, LEAST_UNDER, null)
  return found && !found.cutOff ? found.corners : null
}

/** Pieces, and every two of the larger ones as one: a black stripe parts a card on a dark table. */
function withPairs(found: readonly Region[]): readonly Region[] {
  const large = [...found].sort((a, b) => b.places.length - a.places.length).slice(0, MOST_PAIRED)
  return large.flatMap((one, at) => [
    one,
    ...large.slice(at + 1).map((other) => ({
      places: Int32Array.from([...one.places, ...other.places]),
      onRim: one.onRim + other.onRim,
    })),
  ])
}

/** A smooth piece with four sides, of at least this share of the picture, that has the shape of a sheet where one is given. */
function fourSided(
  picture: Picture,
  small: SmallLight,
  lightness: number,
  smoothness: readonly number[],
  leastShare: number,
  sheet: SheetSize | null,
): FoundSheet | null {
  const { width, height } = small
  const steps = stepsOf(small, lightness)
  const smoothPieces = smoothness.map((smooth) => ({
    ...{ width, height },
    on: over(steps, smooth, 0),
  }))
  return bestOf(picture, small, smoothPieces, leastShare, sheet)
}

/** The piece of any of the masks whose four sides are most like the sheet. */
function bestOf(
  picture: Picture,
  { width, height, step }: SmallLight,
  masks: readonly Mask[],
  leastShare: number,
  sheet: SheetSize | null,
): FoundSheet | null {
  const least = leastShare * width * height
  let best: (FoundSheet & { score: number }) | null = null
  for (const mask of masks) {
    const found = regions(mask, least * (sheet?.beside ? LEAST_PART : 0.3))
    for (const region of sheet?.beside ? withPairs(found) : found) {
      const whole = filled(region, width, height)
      const hull = hullOf(whole)
      if (areaOf(hull) < least) continue
      const sides = fourSides(hull)
      if (!sides) continue
      const area = areaOf(sides)
      // A card has nothing on it that would eat into its sides.
      if (sheet?.beside && areaOf(hull) < LEAST_STRAIGHT * area) continue
      const filling = countOf(whole) / area
      if (filling < (sheet?.beside ? LEAST_FILL_BESIDE : LEAST_FILL_OF_SHAPE.fill)) continue
      // Between the parts of a card lies its stripe.
      const share = sheet?.beside ? areaOf(hull) / area : filling
      const rim = region.onRim / (width + height)
      const corners = sides.map(({ x, y }) => ({
        x: x * step - 0.5,
        y: y * step - 0.5,
      })) as unknown as Corners
      const turned = sheet ? asSheet(corners, sheet, picture) : { corners, pose: { misfit: 0 } }
      const hasShape = sheet !== null && turned.pose.misfit < LEAST_FILL_OF_SHAPE.misfit
      if (share < LEAST_FILL && !hasShape) continue
      const cutOff = rim > 0.02
      if (!cutOff && turned.pose.misfit > MOST_MISFIT) continue
      const known = !cutOff || (hasShape && areSidesSeen(turned.corners, picture))
      const score =
        share ** 2 *
        Math.sqrt(area) *
        Math.exp(-4 * turned.pose.misfit) *
        (cutOff ? (known ? KNOWN : 0.05) * (rim > 0.6 ? 0.1 : 1) : 1)
      if (!best || score > best.score)
        best = { corners: turned.corners, cutOff, known, misfit: turned.pose.misfit, score }
    }
  }
  return best && { corners: best.corners, cutOff: best.cutOff, known: best.known, misfit: best.misfit }
}

/** The least share of each side that has to be seen for the line along it to be known. */
const SEEN = 0.6
/** How many places along a side are asked about. */
const ASKED = 40

/** Whether each side is seen for most of its length, and no corner lies far outside: two sides that are seen lead to each. */
function areSidesSeen(corners: Corners, { width, height }: Picture): boolean {
  const isIn = ({ x, y }: Spot, room: number) =>
    x > -room && y > -room && x < width + room && y < height + room
  const near = OUTSIDE * Math.max(width, height)
  if (!corners.every((corner) => isIn(corner, near))) return false
  return corners.every((from, at) => {
    const to = corners[(at + 1) % 4]!
    let seen = 0
    for (let i = 0; i < ASKED; i++) {
      const t = (i + 0.5) / ASKED
      if (isIn({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) }, 0)) seen++
    }
    return seen >= SEEN * ASKED
  })
}
