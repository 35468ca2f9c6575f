import { describe, expect, it } from 'vitest'
import { DETAIL, levelAt, TOLERANCE } from '../../../src-core/figures/detail'
import { motifParts, partsAtLevel, printedOutline } from '../../../src-core/figures/motif-parts'
import { motifSymbol } from '../../../src-core/figures/motif-symbol'
import { polygonPath } from '../../../src-core/figures/path'
import { polar, signedArea } from '../../../src-core/geometry/points'
import { sampleMotif } from './sample'
import { pathPoints } from './recorder'

const bare = sampleMotif()
const valleys = Array.from({ length: bare.petals }, (_, i) => {
  const outward = polar(1, (2 * Math.PI * (i + 0.5)) / bare.petals)
  const [x, y] = [(outward.x * bare.overValleys) / 2, (outward.y * bare.overValleys) / 2]
  return { id: `v${i + 1}`, kind: 'valley' as const, petal: i + 1, x, y, outward, address: `dip ${i + 1}` }
})
const motif = { ...bare, anchors: [...bare.anchors, ...valleys] }
const areaOf = (path: Parameters<typeof pathPoints>[0]) =>
  Math.abs(signedArea(pathPoints(path).map(([x, y]) => ({ x, y }))))

describe('a motif as paths', () => {
  it('has as much of it as its outlines, a line between every two petals, and half of all on a half', () => {
    const whole = motifParts(motif)
    expect(whole.layers).toEqual(motif.layers.map(({ outline }) => polygonPath(outline)))
    expect(whole.petals).toHaveLength(2 * motif.petals)
    const half = motifParts(motif, { turn: 0, scale: 1, half: 'right' })
    whole.layers.forEach((layer, i) => {
      expect(areaOf(half.layers[i]!) / areaOf(layer)).toBeCloseTo(0.5, 3)
      expect(Math.min(...pathPoints(half.layers[i]!).map(([x]) => x))).toBeGreaterThanOrEqual(0)
    })
    expect(half.petals).toHaveLength(motif.petals)
    expect(Math.min(...pathPoints(half.petals).map(([x]) => x))).toBeGreaterThan(-0.02)
  })

  it('is mirrored before it is turned where its wrong side is up', () => {
    const [right] = motifParts(motif, { turn: 20, scale: 2 }).layers
    const [wrong] = motifParts(motif, { turn: -20, scale: 2, flipped: true }).layers
    pathPoints(right!).forEach(([x, y], i) => {
      expect(pathPoints(wrong!)[i]![0]).toBeCloseTo(-x, 9)
      expect(pathPoints(wrong!)[i]![1]).toBeCloseTo(y, 9)
    })
  })

  it('is drawn with fewer points the farther it is, and none that can be seen is left out', () => {
    const counts = [8, 1, 0.2, 0.05].map((scale) => partsAtLevel(motif, levelAt(scale)).layers[0]!.length)
    expect([...counts].sort((a, b) => b - a)).toEqual(counts)
    expect(counts.at(-1)).toBeLessThan(counts[0]! / 3)
    for (const scale of [3, 1, 0.3, 0.07])
      expect(TOLERANCE.finest * 2 ** levelAt(scale) * scale).toBeLessThanOrEqual(
        Math.max(TOLERANCE.screen, TOLERANCE.finest * scale),
      )
  })

  it('is what paper prints, too', () => {
    const lay = { turn: 15, scale: 0.2, half: 'left' } as const
    const symbol = motifSymbol(motif, { ...lay, look: 'plain', mark: null, disc: 0 })
    expect(symbol.items).toContainEqual(
      expect.objectContaining({ path: polygonPath(printedOutline(motif.outline, lay)) }),
    )
  })

  it('shows dots from afar, then outlines, then petals, numbers, rounds and letters', () => {
    const { marks, contour, petals, rounds, letter } = DETAIL
    expect([letter, rounds, petals, contour, marks].sort((a, b) => a - b)).toEqual([
      ...[marks, contour, petals, rounds, letter],
    ])
  })
})
