/** Which ink texture a colourway takes: the lighter its yarns, the less ink. */
import { TEXTURE_COUNT, textureKind } from './textures'

/** Lightness (CIE L*) that the blank paper and the densest texture stand for (our choice: yarns lie between). */
const LIGHTEST = 95
const DARKEST = 25
/** Share of ink that neighbours should differ by, if there are few enough of them (judged on prints). */
const STEP = 0.2
/** What it costs to stand nearer than that, against the square of the way from the ink that a lightness asks for. */
const CROWDED = 3
/** What neighbours of one family cost. */
const SAME_FAMILY = 0.02

const DENSEST = textureKind(TEXTURE_COUNT - 1).ink

/** The share of ink that is as dark as a lightness. */
function wanted(lightness: number): number {
  const share = (LIGHTEST - lightness) / (LIGHTEST - DARKEST)
  return DENSEST * Math.min(1, Math.max(0, share))
}

function beside(lighter: number, darker: number, step: number): number {
  const [a, b] = [textureKind(lighter), textureKind(darker)]
  const short = Math.max(0, step - (b.ink - a.ink))
  return CROWDED * short * short + (a.family === b.family ? SAME_FAMILY : 0)
}

/**
 * Numbers of textures for colourways of these lightnesses, in their order: the darker takes the denser, each its
 * own, as near as that allows to the ink that its lightness asks for (by dynamic programming from the lightest on).
 * Beyond as many as there are, neighbours share one and are told apart by their letters.
 */
export function texturesFor(lightnesses: readonly number[]): number[] {
  const order = lightnesses.map((_, i) => i).sort((a, b) => lightnesses[b]! - lightnesses[a]! || a - b)
  const count = order.length
  const textures = new Array<number>(count).fill(0)
  if (count > TEXTURE_COUNT) {
    order.forEach((index, rank) => (textures[index] = Math.floor((rank * TEXTURE_COUNT) / count)))
    return textures
  }
  const step = Math.min(STEP, DENSEST / count)
  /** The least cost with the colourway of a rank in each texture, and the texture of the one before. */
  const costs: number[][] = []
  const before: number[][] = []
  order.forEach((index, rank) => {
    const ink = wanted(lightnesses[index]!)
    costs.push(new Array<number>(TEXTURE_COUNT).fill(Infinity))
    before.push(new Array<number>(TEXTURE_COUNT).fill(-1))
    for (let t = rank; t <= TEXTURE_COUNT - count + rank; t++) {
      const own = (textureKind(t).ink - ink) ** 2
      if (rank === 0) costs[rank]![t] = own
      for (let s = rank - 1; rank > 0 && s < t; s++) {
        const cost = costs[rank - 1]![s]! + beside(s, t, step) + own
        if (cost >= costs[rank]![t]!) continue
        costs[rank]![t] = cost
        before[rank]![t] = s
      }
    }
  })
  const last = costs.at(-1) ?? []
  let texture = last.indexOf(Math.min(...last))
  for (let rank = count - 1; rank >= 0; rank--) {
    textures[order[rank]!] = texture
    texture = before[rank]![texture]!
  }
  return textures
}
