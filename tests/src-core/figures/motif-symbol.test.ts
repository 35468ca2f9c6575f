import { describe, expect, it } from 'vitest'
import type { FigureItem } from '../../../src-core/figures/figure'
import type { MotifAccount } from '../../../shared-types/plan'
import {
  fitLabel,
  labelAt,
  labelFits,
  numberedScale,
  SMALLEST_TYPE,
} from '../../../src-core/figures/lettering'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { discReach, fitNumber, scaleForNumber } from '../../../src-core/figures/number-disc'
import type { NumberPlace } from '../../../src-core/figures/number-disc'
import { colourwayMarks, luminance, paperColour, UNKNOWN_COLOUR } from '../../../src-core/figures/marks'
import { MotifSymbols, motifSymbol } from '../../../src-core/figures/motif-symbol'
import { textureItems, textureKind, TEXTURE_COUNT } from '../../../src-core/figures/textures'
import { pathPoints } from './recorder'
import { sampleMotif, samplePlan } from './sample'

const motif = sampleMotif()
const { plan } = samplePlan({ columns: 4, rows: 4, colourways: 4 })
const marks = colourwayMarks(plan)

describe('ink textures', () => {
  const box = { x: -7, y: -7, width: 14, height: 14 }

  it('are at least ten, each unlike every other', () => {
    const drawn = Array.from({ length: TEXTURE_COUNT }, (_, i) => JSON.stringify(textureItems(i, box, 14)))
    expect(new Set(drawn).size).toBe(TEXTURE_COUNT)
    expect(TEXTURE_COUNT).toBeGreaterThanOrEqual(10)
  })

  it('cover the whole of their box', () => {
    for (let i = 0; i < TEXTURE_COUNT; i++) {
      const points = textureItems(i, box, 14).flatMap((item) => pathPoints(item.path))
      if (points.length === 0) continue
      for (const side of [0, 1] as const) {
        expect(Math.min(...points.map((p) => p[side]))).toBeLessThan(-5)
        expect(Math.max(...points.map((p) => p[side]))).toBeGreaterThan(5)
      }
    }
  })

  it('keep their direction however the motif is turned', () => {
    const steep = Array.from({ length: TEXTURE_COUNT }, (_, i) => i).find(
      (i) => textureKind(i).name === 'steep lines',
    )!
    const mark = { ...marks[0]!, texture: steep }
    const slopes = (turn: number): number[] => {
      const symbol = motifSymbol(motif, { scale: 0.2, turn, look: 'ink', mark, disc: 2 })
      const group = symbol.items.find(
        (item): item is Extract<FigureItem, { kind: 'group' }> => item.kind === 'group',
      )!
      const lines = group.items.flatMap((item) => (item.kind === 'path' ? pathPoints(item.path) : []))
      const angles = new Set<number>()
      for (let i = 0; i + 1 < lines.length; i += 2) {
        const [a, b] = [lines[i]!, lines[i + 1]!]
        angles.add(Math.round((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI))
      }
      return [...angles]
    }
    expect(slopes(0)).toEqual([72])
    expect(slopes(30)).toEqual([72])
  })

  it('are clipped to the motif', () => {
    const symbol = motifSymbol(motif, { scale: 0.2, turn: 0, look: 'ink', mark: marks[0]!, disc: 0 })
    const group = symbol.items.find((item) => item.kind === 'group')
    expect(group?.kind === 'group' && group.clip?.length).toBeGreaterThan(30)
  })
})

describe('a motif as a symbol', () => {
  it('has bounds that hold half the width of its outline', () => {
    const symbol = motifSymbol(motif, { scale: 0.2, turn: 0, look: 'plain', mark: null, disc: 0 })
    expect(symbol.bounds.y).toBeLessThan(-39 * 0.2 - 0.08)
    expect(symbol.bounds.height).toBeCloseTo(2 * -symbol.bounds.y, 6)
  })

  it('is one object for the same colourway and turn, and another for another turn', () => {
    const symbols = new MotifSymbols(motif, new Map(marks.map((mark) => [mark.id, mark])), {
      scale: 0.2,
      look: 'ink',
      disc: 2,
    })
    expect(symbols.get('c1', 0)).toBe(symbols.get('c1', 0))
    expect(symbols.get('c1', 0)).not.toBe(symbols.get('c1', 30))
    expect(symbols.get('c1', 0)).not.toBe(symbols.get('c2', 0))
  })

  it('fills its sections in the yarns’ colours, the outermost first', () => {
    const symbol = motifSymbol(motif, { scale: 0.2, turn: 0, look: 'colour', mark: marks[0]!, disc: 0 })
    const fills = symbol.items.flatMap((item) =>
      item.kind === 'path' && item.paint.fill ? [item.paint.fill] : [],
    )
    expect(fills).toEqual(['#b5533c', '#c9b458'])
  })

  it('stretches with the blocking of the whole work', () => {
    const symbol = motifSymbol(motif, {
      scale: 0.2,
      turn: 0,
      look: 'plain',
      mark: null,
      disc: 0,
      stretch: { x: 1.1, y: 1 },
    })
    const plain = motifSymbol(motif, { scale: 0.2, turn: 0, look: 'plain', mark: null, disc: 0 })
    expect(symbol.bounds.width).toBeGreaterThan(plain.bounds.width * 1.05)
    expect(symbol.bounds.height).toBeCloseTo(plain.bounds.height, 6)
  })
})

describe('the disc in a motif', () => {
  const big = {
    ...motif,
    layers: [
      motif.layers[0]!,
      { slot: 'centre', outline: motif.outline.map(({ x, y }) => ({ x: x * 0.42, y: y * 0.42 })) },
    ],
  }
  const twins = (slot: string): ColourwayMark[] =>
    marks.slice(0, 2).map((mark, i) => ({
      ...mark,
      slots: ['petals', 'centre'].map((each) => ({
        slot: each,
        yarnName: each,
        colour: each === slot ? ['#8a9a5b', '#b9c4c9'][i]! : '#56616b',
      })),
    }))
  const place = (layers: MotifAccount['layers'], own: readonly ColourwayMark[]): NumberPlace => ({
    ...{ layers, centre: { x: 0, y: 0 }, inner: 26, tip: 39, digits: 3, letters: 1, marks: own },
  })

  it('stays as it is where colourways differ beside it, or where no colour is printed', () => {
    for (const own of [twins('petals'), []])
      expect(fitNumber(place(motif.layers, own), 0.2)?.rings).toEqual([])
  })

  it('shows the only part that differs in a ring where it would hide it', () => {
    const disc = fitNumber(place(motif.layers, twins('centre')), 0.16)!
    expect(disc.rings).toEqual(['centre'])
    expect(disc.label.number).toBeGreaterThanOrEqual(7)
    expect(labelFits(26 * 0.16, 39 * 0.16, discReach(disc))).toBe(true)
  })

  it('gets smaller rather than a ring where that lets the part be seen', () => {
    const scale = 0.3
    const disc = fitNumber(place(big.layers, twins('centre')), scale)!
    expect(disc.rings).toEqual([])
    const free = fitNumber(place(big.layers, []), scale)!
    expect(disc.label.disc).toBeLessThan(free.label.disc)
  })

  it('fits with its rings at the scale that is said to be the smallest', () => {
    const own = place(motif.layers, twins('centre'))
    const scale = scaleForNumber(own)
    expect(scale).toBeGreaterThan(scaleForNumber(place(motif.layers, [])))
    expect(fitNumber(own, scale)).not.toBeNull()
    expect(fitNumber(own, scale * 0.9)).toBeNull()
  })

  it('has its ring drawn in the colour that the part has in the colourway', () => {
    const [mark] = twins('centre')
    const options = { scale: 0.15, turn: 0, look: 'colour', mark: mark!, disc: 2.5 } as const
    const fills = motifSymbol(motif, { ...options, rings: ['centre'] }).items.flatMap((item) =>
      item.kind === 'path' && item.paint.fill ? [item.paint.fill] : [],
    )
    expect(fills.slice(-2)).toEqual(['#8a9a5b', '#ffffff'])
  })
})

describe('the label in a motif', () => {
  it('is never smaller than 7 pt; what has no room for that gets none', () => {
    expect(SMALLEST_TYPE).toBe(7)
    for (let inner = 0.5; inner < 15; inner += 0.25) {
      for (let digits = 1; digits <= 5; digits++) {
        const label = fitLabel(inner, inner * 1.5, digits, 1)
        if (!label) continue
        expect(Math.min(label.number, label.letter)).toBeGreaterThanOrEqual(7)
        expect(label.disc).toBeLessThanOrEqual(inner)
      }
    }
    expect(fitLabel(1.5, 2.2, 3, 1)).toBeNull()
  })

  it('fits at the scale that is said to be the smallest, and not much below', () => {
    const scale = numberedScale(26, 39, 3, 1)
    expect(fitLabel(26 * scale, 39 * scale, 3, 1)).not.toBeNull()
    expect(fitLabel(26 * scale * 0.95, 39 * scale * 0.95, 3, 1)).toBeNull()
  })

  it('grows with its digits and with the letters of its colourway', () => {
    expect(labelAt(4, 7, 1).disc).toBeGreaterThan(labelAt(2, 7, 1).disc)
    expect(labelAt(1, 7, 3).disc).toBeGreaterThan(labelAt(1, 7, 1).disc)
  })
})

describe('colours for paper', () => {
  it('reads short and long hex colours and stands in for anything else', () => {
    expect(paperColour('#ABC')).toBe('#aabbcc')
    expect(paperColour(' #7fB5a8 ')).toBe('#7fb5a8')
    for (const odd of [undefined, '', 'teal', '#12345', 'url(#x)', '#gggggg'])
      expect(paperColour(odd)).toBe(UNKNOWN_COLOUR)
  })

  it('measures luminance as WCAG 2.2 does (§wcag: #767676 on white has a contrast of 4.54)', () => {
    expect(1.05 / (luminance('#767676') + 0.05)).toBeCloseTo(4.54, 2)
    expect(luminance('#ffffff')).toBeCloseTo(1, 9)
  })

  it('counts the motifs of each colourway and keeps those without one apart', () => {
    expect(marks.reduce((sum, mark) => sum + mark.count, 0)).toBe(16)
    expect(new Set(marks.map((mark) => mark.texture)).size).toBe(marks.length)
    const bare = { ...plan, motifs: plan.motifs.map((placed) => ({ ...placed, colourway: '' })) }
    expect(colourwayMarks(bare)).toMatchObject([{ id: '', code: '', count: 16 }])
  })
})
