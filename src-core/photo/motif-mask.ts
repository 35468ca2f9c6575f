/** The motif apart from paper and shadow. */
import type { Evened } from './light'
import { toOklab } from './oklab'
import type { Spot } from './picture'
import type { Area, Plane } from './rectify'
import { countOf, filled, regions } from './regions'
import type { Mask, Region } from './regions'
import { piecesOf, usualOf } from './seams'

/** The deepest shadow that is still taken for paper, as its share of the full light, and where none is. */
const DEEPEST_SHADOW = 0.5
export const NO_SHADOW = 1
/** How much light a paper is taken to throw back, at least and at most, for colours as people see them. */
const PAPER_LIGHT = { least: 0.04, most: 0.9 }
/** The line between paper and motif: a share of the motif's own distance, never under the noise or this step. */
const SHARE = 0.4
const LEAST_STEP = 0.03
const NOISES = 5
/** Where that line leaves pieces of which none is half of them all, some of the motif stands out less: this share. */
const MOST_OF = 0.5
const FAINT = 0.15
/**
 * Places nearer to paper than that line that have a colour of their own are yarn: where they are this share of all that
 * lie so many mm, and pixels, within, the line is that of theirs. On sheets darker than this, clefts that a lens fills with
 * the light of both petals have as much colour.
 */
const TINTED = {
  share: 0.03,
  colour: 0.8,
  least: 0.035,
  within: { length: 1, pixels: 2.5 },
  sheet: 0.35,
} as const

export interface FoundMotif {
  readonly mask: Mask
  /** How far each place is from paper in any light, in Oklab. */
  readonly distance: Float32Array
  readonly level: number
  /** The motif's usual distance in multiples of what paper strays: how clearly it stands out. */
  readonly contrast: number
  /** It reaches the rim of the sheet. */
  readonly overEdge: boolean
  /** The deepest shadow that was taken for paper. */
  readonly shadow: number
  /** Whatever is brighter than the paper, in its colour, was taken for paper too. */
  readonly glare: boolean
  /** Some of it is, or may be, no more than a shadow of the paper. */
  readonly likePaper?: boolean
}

/** Distance of each place from the line from paper in full light, or in more than that (`glare`), to paper in the deepest shadow. */
export function distances(
  plane: Plane,
  { ratio, paper }: Evened,
  shadow: number,
  glare = false,
): Float32Array {
  const brightness = 0.2126 * paper[0] + 0.7152 * paper[1] + 0.0722 * paper[2]
  const held = Math.min(PAPER_LIGHT.most, Math.max(PAPER_LIGHT.least, brightness))
  const lab = new Float64Array(3)
  toOklab(held, held, held, lab)
  const white = lab[0]!
  const deepest = Math.cbrt(shadow)
  const brightest = glare ? Infinity : 1
  const distance = new Float32Array(plane.ground.length)
  for (let at = 0; at < distance.length; at++) {
    if (!plane.ground[at]) continue
    toOklab(ratio[3 * at]! * held, ratio[3 * at + 1]! * held, ratio[3 * at + 2]! * held, lab)
    const along = Math.min(brightest, Math.max(deepest, lab[0]! / white))
    const off = lab[0]! - along * white
    distance[at] = Math.sqrt(off * off + lab[1]! * lab[1]! + lab[2]! * lab[2]!)
  }
  return distance
}

/** Means over squares of (2 by + 1)² places. */
export function smoothed(values: Float32Array, width: number, height: number, by: number): Float32Array {
  if (by < 1) return values
  const lines = new Float32Array(values.length)
  const result = new Float32Array(values.length)
  const pass = (
    from: Float32Array,
    to: Float32Array,
    count: number,
    length: number,
    next: number,
    stride: number,
  ) => {
    for (let line = 0; line < count; line++) {
      const start = line * stride
      let sum = 0
      let held = 0
      for (let i = -by; i < length + by; i++) {
        if (i + by < length && i + by >= 0) {
          sum += from[start + (i + by) * next]!
          held++
        }
        if (i - by - 1 >= 0) {
          sum -= from[start + (i - by - 1) * next]!
          held--
        }
        if (i >= 0 && i < length) to[start + i * next] = sum / held
      }
    }
  }
  pass(values, lines, height, width, 1, width)
  pass(lines, result, width, height, width, 1)
  return result
}

const middleOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : Float32Array.from(values).sort()[values.length >> 1]!

/** 1 where a place on the ground is farther from paper than a level. */
function standingOut(distance: Float32Array, ground: Uint8Array, level: number): Uint8Array {
  const on = new Uint8Array(distance.length)
  for (let at = 0; at < on.length; at++) if (distance[at]! > level && ground[at]) on[at] = 1
  return on
}

/** Whether a piece lies, in mm of its plane, where something else is known to lie. */
const isOther = (
  { places }: Region,
  { width, scale, left, top }: Plane,
  other: (x: number, y: number) => boolean,
): boolean => places.some((at) => other(left + (at % width) / scale, top + Math.floor(at / width) / scale))

/**
 * Finds the motif: the largest piece that is not paper, and not where something else lies, as told in mm of the plane.
 * Null where nothing stands out.
 */
export function findMotif(
  plane: Plane,
  evened: Evened,
  other: ((x: number, y: number) => boolean) | undefined = undefined,
  shadow: number = DEEPEST_SHADOW,
  glare = false,
): FoundMotif | null {
  const { width, height, ground, scale } = plane
  const raw = distances(plane, evened, shadow, glare)
  const distance = smoothed(raw, width, height, Math.round(0.12 * scale))
  const some: number[] = []
  for (let at = 0; at < distance.length; at += 7) if (ground[at]) some.push(distance[at]!)
  const quiet = middleOf(some)
  // Half of the paper strays less than this; the motif seldom covers more than half of it.
  const noise = Math.max(0.004, 1.4826 * quiet)
  const least = Math.max(LEAST_STEP, NOISES * noise)
  const piecesAt = (level: number) =>
    piecesOf(plane, evened, distance, standingOut(distance, ground, level), 60 * scale).filter(
      (piece) => piece.onRim < 0.2 * (width + height) && !(other && isOther(piece, plane, other)),
    )
  const first = largestOf(piecesAt(least))
  if (!first) return null
  // The line between paper and a motif, by how far all of it but this share is from paper.
  const levelOf = (piece: Region, share: number) => Math.max(least, SHARE * usualOf(piece, distance, share))
  let level = levelOf(first, 0.5)
  const pieces = piecesAt(level)
  let found = largestOf(pieces)
  if (found && isBroken(found, pieces, first, distance.length)) {
    // Some of the motif stands out less than the rest of it: dark petals round a pale middle.
    level = levelOf(first, FAINT)
    found = largestOf(piecesAt(level))
  } else if (found) level = levelOf(found, 0.5)
  const tinted = tintedUnder(plane, evened, first, distance, level)
  if (tinted !== null && tinted < level) {
    level = Math.max(least, tinted)
    found = largestOf(piecesAt(level)) ?? found
  }
  const largest = found ?? first
  const mask = filled(largest, width, height)
  return {
    ...{ mask, distance, level, shadow, glare },
    contrast: usualOf(largest, distance, 0.5) / noise,
    overEdge: largest.onRim > 0 || touchesUnseen(mask, ground),
  }
}

/** The line by which yarn counts that is nearer to paper than a level, but in a colour of its own, as no shadow is; null where hardly any is. */
function tintedUnder(
  { width, scale, density }: Plane,
  { ratio, paper }: Evened,
  { places }: Region,
  distance: Float32Array,
  level: number,
): number | null {
  const lab = new Float64Array(3)
  const found: number[] = []
  if (0.2126 * paper[0] + 0.7152 * paper[1] + 0.0722 * paper[2] < TINTED.sheet) return null
  const by = Math.ceil(Math.max(TINTED.within.length, TINTED.within.pixels / density) * scale)
  const isIn = (at: number) => (distance[at] ?? 0) > TINTED.least
  for (const at of places) {
    const far = distance[at]!
    if (far > level || !isIn(at)) continue
    // The rim of all yarn is half of its colour.
    if (!isIn(at - by) || !isIn(at + by) || !isIn(at - by * width) || !isIn(at + by * width)) continue
    toOklab(ratio[3 * at]!, ratio[3 * at + 1]!, ratio[3 * at + 2]!, lab)
    if (Math.hypot(lab[1]!, lab[2]!) > Math.max(TINTED.least, TINTED.colour * far)) found.push(far)
  }
  if (found.length < TINTED.share * places.length) return null
  return SHARE * middleOf(found)
}

const largestOf = (pieces: readonly Region[]): Region | null =>
  pieces.reduce<Region | null>(
    (most, piece) => (!most || piece.places.length > most.places.length ? piece : most),
    null,
  )

/** Whether the largest of the pieces that lie in a `whole` one is but a part of what they are together. */
function isBroken({ places }: Region, pieces: readonly Region[], whole: Region, count: number): boolean {
  if (pieces.length < 2) return false
  const on = new Uint8Array(count)
  for (const at of whole.places) on[at] = 1
  const within = pieces.filter((piece) => on[piece.places[0]!])
  return places.length < MOST_OF * within.reduce((sum, piece) => sum + piece.places.length, 0)
}

/** Whether a mask touches places where no ground is seen. */
function touchesUnseen({ width, on }: Mask, ground: Uint8Array): boolean {
  for (let at = 0; at < on.length; at++)
    if (
      on[at] &&
      (ground[at - 1] === 0 || ground[at + 1] === 0 || ground[at - width] === 0 || ground[at + width] === 0)
    )
      return true
  return false
}

/** The box round a mask with `room` mm to each side, in mm of its plane. */
export function boxOf({ width, height, on }: Mask, { left, top, scale }: Plane, room: number): Area {
  const box = { left: width, top: height, right: 0, bottom: 0 }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (on[y * width + x]) {
        if (x < box.left) box.left = x
        if (x > box.right) box.right = x
        if (y < box.top) box.top = y
        if (y > box.bottom) box.bottom = y
      }
  return {
    left: Math.max(left, left + box.left / scale - room),
    top: Math.max(top, top + box.top / scale - room),
    right: Math.min(left + width / scale, left + box.right / scale + room),
    bottom: Math.min(top + height / scale, top + box.bottom / scale + room),
  }
}

/** How many places of a piece lie in a mask of a coarser plane. */
function shared({ places }: Region, plane: Plane, mask: Mask, coarse: Plane): number {
  const by = coarse.scale / plane.scale
  let count = 0
  for (const at of places) {
    const x = Math.round((plane.left - coarse.left) * coarse.scale + (at % plane.width) * by)
    const y = Math.round((plane.top - coarse.top) * coarse.scale + Math.floor(at / plane.width) * by)
    if (mask.on[y * mask.width + x]) count++
  }
  return count
}

/** The motif in a finer plane of the same picture, at the level where it was found: whatever lies beside it is not it. */
export function findAgain(plane: Plane, evened: Evened, found: FoundMotif, coarse: Plane): FoundMotif | null {
  const { width, height, ground, scale } = plane
  const raw = distances(plane, evened, found.shadow, found.glare)
  const distance = smoothed(raw, width, height, Math.round(0.12 * scale))
  const on = standingOut(distance, ground, found.level)
  const pieces = piecesOf(plane, evened, distance, on, 60 * scale)
  const [largest] = pieces
    .map((piece) => ({ ...piece, shared: shared(piece, plane, found.mask, coarse) }))
    .sort((a, b) => b.shared - a.shared)
  if (!largest) return null
  return { ...found, mask: filled(largest, width, height), distance }
}

/** The share of the level from which a thread that closes a space counts, and how wide a space is at least, in mm. */
const THREAD = 0.5
const LEAST_SPACE = 0.8

/** What stands out by half as much, and the piece of it that the motif lies in, with its holes filled. */
function faintly({ width, height, ground, scale }: Plane, { mask, distance, level }: FoundMotif) {
  const faint = standingOut(distance, ground, THREAD * level)
  const [whole] = regions({ width, height, on: faint }, 60 * scale)
    .map((piece) => ({ ...piece, shared: piece.places.filter((at) => mask.on[at]).length }))
    .sort((a, b) => b.shared - a.shared)
  return { faint, outer: whole ? filled(whole, width, height) : null }
}

/** As much of the motif again, as a share, that stands out by half as much is more than its blur: it is seen half. */
const HALF_SEEN = 1.2

/** Whether threads of the motif stand out so little that it may have been taken for less than it is. */
export function isHalfSeen(plane: Plane, found: FoundMotif): boolean {
  const { outer } = faintly(plane, found)
  return outer !== null && countOf(outer) > HALF_SEEN * countOf(found.mask)
}

/**
 * The motif with the spaces that threads close off which are too thin for the level: a chain as thin as a pixel or two is
 * seen half. What lies within a thread all round is the motif's. Null where there is nothing like that.
 */
export function threadedThrough(plane: Plane, found: FoundMotif): FoundMotif | null {
  const { width, height, scale } = plane
  const { mask } = found
  const { faint, outer } = faintly(plane, found)
  if (!outer) return null
  // A blur is faint all round the motif: only what is wider than that is a space.
  const inner = Float32Array.from(outer.on, (on, at) => (on && !mask.on[at] && !faint[at] ? 1 : 0))
  const spaces = regions(
    { width, height, on: Uint8Array.from(inner) },
    Math.round((LEAST_SPACE * scale) ** 2),
  )
  if (spaces.length === 0) return null
  const on = mask.on.slice()
  for (const space of spaces) for (const at of space.places) on[at] = 1
  // The thread itself, as far as it lies about the spaces.
  const reach = Math.max(1, Math.round(0.3 * scale))
  for (let round = 0; round < reach; round++) {
    const before = on.slice()
    for (let at = width; at < on.length - width; at++)
      if (
        !before[at] &&
        outer.on[at] &&
        (before[at - 1] || before[at + 1] || before[at - width] || before[at + width])
      )
        on[at] = 1
  }
  return { ...found, mask: { width, height, on } }
}

/** The inner share of the reach where nothing is looked for: rings and spaces round the middle are no slits. */
const CORE = 0.45
/** Nearer to paper than this multiple of the level a slit begins, which at the level is open. */
const THIN = 1.6

/** How much of the motif is open along rays from its middle, out to how far it reaches: slits between petals. */
export function openAlong(
  { width, height }: Plane,
  { distance, level }: FoundMotif,
  middle: Spot,
  reach: Float64Array,
): Float64Array {
  return reach.map((far, at) => {
    const angle = (2 * Math.PI * at) / reach.length
    const [across, down] = [Math.sin(angle), -Math.cos(angle)]
    let open = 0
    for (let r = Math.ceil(CORE * far); r < far; r++) {
      const x = Math.min(width - 1, Math.max(0, Math.round(middle.x + r * across)))
      const y = Math.min(height - 1, Math.max(0, Math.round(middle.y + r * down)))
      open += Math.min(1, Math.max(0, (THIN - distance[y * width + x]! / level) / (THIN - 1)))
    }
    return open
  })
}
