/** Which colours a motif has, from the middle outwards, and how much of each is seen. */
import { differenceCiede2000, formatHex } from 'culori'
import type { Evened } from './light'
import type { FoundMotif } from './motif-mask'
import { toOklab } from './oklab'
import type { Spot } from './picture'
import type { Plane } from './rectify'
import { countOf } from './regions'

export interface PhotoColour {
  /** As "#rrggbb", as if the paper were without colour. */
  readonly colour: string
  /** Share of the motif as seen from above. */
  readonly share: number
  /** Usual distance from the middle, as a share of the motif's reach. */
  readonly far: number
}

const MOST_COLOURS = 6
/** Lightness counts less than hue and chroma: stitches are light and dark. */
const LIGHTNESS = 0.45
/** Colours nearer than this (ΔE00) are one yarn. */
const SAME_YARN = 11
const LEAST_SHARE = 0.03
const ROUNDS = 12
/** Distance between the places that are looked at, in mm, and how many of a motif at most. */
const SPACING = 0.8
const MOST_PLACES = 4000

const difference = differenceCiede2000()

interface Cluster {
  readonly light: [number, number, number]
  readonly count: number
  readonly far: number
}

const hex = ([r, g, b]: readonly number[]): string => formatHex({ mode: 'lrgb', r: r!, g: g!, b: b! })

/** Values of each place: its colour in Oklab, its light, its distance from the middle. */
const VALUES = 7
const FAR = 6

/** The sums of all places that are nearest to each of the centres, and how many they are. */
function sumsOf(values: Float64Array, centres: Float64Array): Float64Array {
  const sums = new Float64Array((centres.length / 3) * (VALUES + 1))
  for (let from = 0; from < values.length; from += VALUES) {
    let to = 0
    let least = Infinity
    for (let k = 0, at = 0; k < centres.length; k += 3, at += VALUES + 1) {
      const l = values[from]! - centres[k]!
      const a = values[from + 1]! - centres[k + 1]!
      const b = values[from + 2]! - centres[k + 2]!
      const by = l * l + a * a + b * b
      if (by < least) {
        least = by
        to = at
      }
    }
    for (let c = 0; c < VALUES; c++) sums[to + c]! += values[from + c]!
    sums[to + VALUES]!++
  }
  return sums
}

/** Colours of the motif: clusters in Oklab (k-means from far-apart starts), those of one yarn put together. */
export function coloursOf(
  plane: Plane,
  { ratio, paper }: Evened,
  { mask, distance, level }: FoundMotif,
  middle: Spot,
): PhotoColour[] {
  const brightness = Math.min(0.85, Math.max(0.04, 0.2126 * paper[0] + 0.7152 * paper[1] + 0.0722 * paper[2]))
  const lab = new Float64Array(3)
  const points: number[] = []
  const step = Math.max(
    1,
    Math.round(Math.max(SPACING * plane.scale, Math.sqrt(countOf(mask) / MOST_PLACES))),
  )
  for (let y = 0; y < plane.height; y += step)
    for (let x = 0; x < plane.width; x += step) {
      const at = y * plane.width + x
      if (!mask.on[at] || distance[at]! < level * 0.8) continue
      const red = Math.min(1, ratio[3 * at]! * brightness)
      const green = Math.min(1, ratio[3 * at + 1]! * brightness)
      const blue = Math.min(1, ratio[3 * at + 2]! * brightness)
      toOklab(red, green, blue, lab)
      const far = Math.sqrt((x - middle.x) ** 2 + (y - middle.y) ** 2)
      points.push(lab[0]! * LIGHTNESS, lab[1]!, lab[2]!, red, green, blue, far)
    }
  const count = points.length / VALUES
  if (count === 0) return []
  const values = Float64Array.from(points)
  const byFar = Float64Array.from({ length: count }, (_, at) => values[VALUES * at + FAR]!)
  const sorted = Uint32Array.from({ length: count }, (_, at) => at).sort((a, b) => byFar[a]! - byFar[b]!)
  let centres = Float64Array.from({ length: 3 * MOST_COLOURS }, (_, at) => {
    const share = (Math.floor(at / 3) + 0.5) / MOST_COLOURS
    return values[VALUES * sorted[Math.floor(share * (count - 1))]! + (at % 3)]!
  })
  let clusters: Cluster[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const sums = sumsOf(values, centres)
    clusters = []
    const next: number[] = []
    for (let at = 0; at < sums.length; at += VALUES + 1) {
      const held = sums[at + VALUES]!
      if (held === 0) continue
      const [l, a, b, red, green, blue, far] = sums.subarray(at, at + VALUES).map((sum) => sum / held)
      next.push(l!, a!, b!)
      clusters.push({ light: [red!, green!, blue!], count: held, far: far! })
    }
    centres = Float64Array.from(next)
  }
  const most = byFar[sorted[count - 1]!]!
  return together(clusters)
    .filter((each) => each.count / count >= LEAST_SHARE)
    .sort((a, b) => a.far - b.far)
    .map(({ light, count, far }, _, all) => ({
      colour: hex(light),
      share: count / all.reduce((sum, each) => sum + each.count, 0),
      far: far / most,
    }))
}

/** Puts together the two nearest clusters until all are apart. */
function together(clusters: readonly Cluster[]): Cluster[] {
  const left = [...clusters]
  for (;;) {
    let near: { a: number; b: number; by: number } | null = null
    for (let a = 0; a < left.length; a++)
      for (let b = a + 1; b < left.length; b++) {
        const by = difference(hex(left[a]!.light), hex(left[b]!.light))
        if (!near || by < near.by) near = { a, b, by }
      }
    if (!near || near.by > SAME_YARN) return left
    const [one, other] = [left[near.a]!, left[near.b]!]
    const count = one.count + other.count
    const mean = (x: number, y: number) => (x * one.count + y * other.count) / count
    left.splice(near.b, 1)
    left[near.a] = {
      light: one.light.map((each, c) => mean(each, other.light[c]!)) as [number, number, number],
      count,
      far: mean(one.far, other.far),
    }
  }
}
