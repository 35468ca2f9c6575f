/** Which colours a motif has, from the middle outwards, and how much of each is seen. */
import { differenceCiede2000, formatHex } from 'culori'
import type { Evened } from './light'
import type { FoundMotif } from './motif-mask'
import { toOklab } from './oklab'
import type { Spot } from './picture'
import type { Plane } from './rectify'

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
/** Distance between the places that are looked at, in mm. */
const SPACING = 0.8

const difference = differenceCiede2000()

interface Cluster {
  readonly light: [number, number, number]
  readonly count: number
  readonly far: number
}

const hex = ([r, g, b]: readonly number[]): string => formatHex({ mode: 'lrgb', r: r!, g: g!, b: b! })

/** Colours of the motif: clusters in Oklab (k-means from far-apart starts), those of one yarn put together. */
export function coloursOf(
  plane: Plane,
  { ratio, paper }: Evened,
  { mask, distance, level }: FoundMotif,
  middle: Spot,
): PhotoColour[] {
  const brightness = Math.min(0.85, Math.max(0.04, 0.2126 * paper[0] + 0.7152 * paper[1] + 0.0722 * paper[2]))
  const lab = new Float64Array(3)
  const points: { lab: number[]; light: number[]; far: number }[] = []
  const step = Math.max(1, Math.round(SPACING * plane.scale))
  for (let y = 0; y < plane.height; y += step)
    for (let x = 0; x < plane.width; x += step) {
      const at = y * plane.width + x
      if (!mask.on[at] || distance[at]! < level * 0.8) continue
      const light = [0, 1, 2].map((c) => Math.min(1, ratio[3 * at + c]! * brightness))
      toOklab(light[0]!, light[1]!, light[2]!, lab)
      points.push({
        lab: [lab[0]! * LIGHTNESS, lab[1]!, lab[2]!],
        light,
        far: Math.hypot(x - middle.x, y - middle.y),
      })
    }
  if (points.length === 0) return []
  const apart = (a: readonly number[], b: readonly number[]) =>
    (a[0]! - b[0]!) ** 2 + (a[1]! - b[1]!) ** 2 + (a[2]! - b[2]!) ** 2
  const sorted = points.slice().sort((a, b) => a.far - b.far)
  const quantile = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!.lab
  let centres = Array.from({ length: MOST_COLOURS }, (_, at) => quantile((at + 0.5) / MOST_COLOURS))
  let clusters: Cluster[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const sums = centres.map(() => ({ lab: [0, 0, 0], light: [0, 0, 0], far: 0, count: 0 }))
    for (const point of points) {
      let near = 0
      let least = Infinity
      for (let k = 0; k < centres.length; k++) {
        const by = apart(point.lab, centres[k]!)
        if (by < least) {
          least = by
          near = k
        }
      }
      const sum = sums[near]!
      for (let c = 0; c < 3; c++) {
        sum.lab[c]! += point.lab[c]!
        sum.light[c]! += point.light[c]!
      }
      sum.far += point.far
      sum.count++
    }
    const held = sums.filter(({ count }) => count > 0)
    centres = held.map(({ lab, count }) => lab.map((each) => each / count))
    clusters = held.map(({ light, far, count }) => ({
      light: light.map((each) => each / count) as [number, number, number],
      count,
      far: far / count,
    }))
  }
  const most = sorted.at(-1)!.far
  return together(clusters)
    .filter(({ count }) => count / points.length >= LEAST_SHARE)
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
