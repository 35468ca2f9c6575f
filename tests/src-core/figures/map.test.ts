import { describe, expect, it } from 'vitest'
import { figureSymbols } from '../../../src-core/figures/figure'
import { MapPainter } from '../../../src-core/figures/map'
import { mapGround, smallestNumberedScale } from '../../../src-core/figures/map-ground'
import { overviewMap } from '../../../src-core/figures/overview-map'
import { labelStep } from '../../../src-core/figures/map-edges'
import { tileFigure, tileMap } from '../../../src-core/figures/tiles'
import { record } from './recorder'
import { samplePlan } from './sample'

const BOX = { width: 186, height: 170 }

describe('the overview map', () => {
  const { project, plan } = samplePlan({ columns: 12, rows: 10 })
  const ground = mapGround(plan, 'ink')
  const { figure, numbered, scale } = overviewMap(ground, BOX.width, BOX.height)
  const all = record(figure)
  const dots = all.uses.filter(({ symbol }) => symbol.id.startsWith('meeting-point'))
  const recording = { ...all, uses: all.uses.filter(({ symbol }) => !symbol.id.startsWith('meeting-point')) }

  it('draws every motif once, from one symbol for each motif, colourway and turn', () => {
    expect(recording.uses).toHaveLength(120)
    expect(figureSymbols(figure)).toHaveLength(4 + 1)
  })

  it('prints every working number and its colourway letter in the motif, at 7 pt or more', () => {
    expect(numbered).toBe(true)
    for (const motif of plan.motifs) {
      const use = recording.uses[plan.motifs.indexOf(motif)]!
      const near = recording.texts.filter((text) => Math.hypot(text.x - use.x, text.y - use.y) < 26 * scale)
      const code = project.colourways!.find((way) => way.id === motif.colourway)!.code
      expect(near.map((text) => text.text)).toEqual([motif.label, code])
    }
    for (const text of recording.texts) expect(text.printed).toBeGreaterThanOrEqual(7)
  })

  it('numbers rows and places along the edges', () => {
    const left = Math.min(...recording.uses.map((use) => use.x)) - 39 * scale
    const top = Math.min(...recording.uses.map((use) => use.y)) - 39 * scale
    const rows = recording.texts.filter((text) => text.x < left && text.anchor === 'end')
    const places = recording.texts.filter((text) => text.y < top)
    expect(rows.map((text) => text.text)).toEqual(Array.from({ length: 10 }, (_, i) => String(i + 1)))
    expect(places.map((text) => text.text)).toEqual(Array.from({ length: 12 }, (_, i) => String(i + 1)))
  })

  it('points an arrow along each row, there and back', () => {
    expect(ground.rows.map((row) => row.direction)).toEqual(
      ground.rows.map((_, i) => (i % 2 === 0 ? 'right' : 'left')),
    )
    const right = Math.max(...recording.uses.map((use) => use.x)) + 39 * scale
    const arrows = recording.paths.find(({ points }) => points.every(([x]) => x > right))
    expect(arrows?.points).toHaveLength(10 * 5)
  })

  it('marks every meeting point with a dot of ink', () => {
    expect(dots).toHaveLength(plan.joins.length)
    const [left, right] = [plan.motifs[0]!, plan.motifs[1]!]
    const first = recording.uses[0]!
    const meeting = first.x + ((right.x - left.x) / 2) * scale
    expect(dots.some(({ x, y }) => Math.abs(x - meeting) < 1e-6 && Math.abs(y - first.y) < 1e-6)).toBe(true)
  })

  it('stays inside its box and keeps the proportions of the plan', () => {
    const across = 39 * scale
    for (const { x, y } of recording.uses) {
      expect(x - across).toBeGreaterThanOrEqual(0)
      expect(x + across).toBeLessThanOrEqual(BOX.width)
      expect(y + across).toBeLessThanOrEqual(BOX.height)
    }
    const [a, b] = [recording.uses[0]!, recording.uses[1]!]
    expect(b.x - a.x).toBeCloseTo(plan.pitch.column * scale, 6)
  })

  it('draws no arrows and no letters where there is no order by rows and no colourway', () => {
    const bare = {
      ...plan,
      motifs: plan.motifs.map((motif, i) => ({
        ...motif,
        colourway: '',
        label: String(((i * 7) % plan.motifs.length) + 1),
      })),
    }
    const plain = mapGround(bare, 'ink')
    expect(plain.byRows).toBe(false)
    const texts = record(overviewMap(plain, BOX.width, BOX.height).figure).texts
    expect(texts.every(({ text }) => /^\d+$/.test(text))).toBe(true)
    expect(texts.length).toBeGreaterThanOrEqual(120)
  })

  it('draws the edging as a line round all motifs', () => {
    const edged = samplePlan({ columns: 6, rows: 5, edging: true })
    const line = mapGround(edged.plan, 'ink').edge.flat()
    const xs = line.map((p) => p.x)
    const ys = line.map((p) => p.y)
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(-0.5)
    expect(Math.max(...xs)).toBeLessThanOrEqual(edged.plan.size.width + 0.5)
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(edged.plan.size.width - 10)
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(edged.plan.size.height - 10)
    expect(ground.edge).toHaveLength(0)
  })
})

describe('numbers along the edges', () => {
  it('are thinned out before they collide', () => {
    expect(labelStep(5, 3.6)).toBe(1)
    expect(labelStep(2, 3.6)).toBe(2)
    expect(labelStep(1, 3.6)).toBe(5)
    expect(labelStep(0.4, 3.6)).toBe(10)
  })
})

describe('a map in sheets', () => {
  const { plan } = samplePlan({ columns: 60, rows: 50 })
  const ground = mapGround(plan, 'ink')
  const scale = smallestNumberedScale(ground)
  const box = { width: 186, height: 240 }
  const tiling = tileMap(ground, scale, box.width, box.height)

  it('is needed when numbers would print under 7 pt, and then prints them', () => {
    expect(overviewMap(ground, box.width, box.height).numbered).toBe(false)
    expect(new MapPainter(ground, scale).number!.label.number).toBeGreaterThanOrEqual(7)
    expect(tiling.tiles.length).toBeGreaterThan(4)
  })

  it('gives every motif to exactly one sheet, on which it is whole with its number', () => {
    expect(tiling.tiles.reduce((sum, tile) => sum + tile.motifs, 0)).toBe(plan.motifs.length)
    const painter = new MapPainter(ground, scale)
    const numbers = tiling.tiles.map(
      (tile) => new Set(record({ items: painter.window(tile.view) }).texts.map((text) => text.text)),
    )
    for (const motif of plan.motifs) {
      const owner = tiling.tiles.findIndex(
        ({ area }) =>
          motif.x >= area.x &&
          motif.x < area.x + area.width &&
          motif.y >= area.y &&
          motif.y < area.y + area.height,
      )
      const { view } = tiling.tiles[owner]!
      expect(numbers[owner]!.has(motif.label)).toBe(true)
      expect(motif.x - 39).toBeGreaterThanOrEqual(view.x - 1e-9)
      expect(motif.x + 39).toBeLessThanOrEqual(view.x + view.width + 1e-9)
      expect(motif.y - 39).toBeGreaterThanOrEqual(view.y - 1e-9)
      expect(motif.y + 39).toBeLessThanOrEqual(view.y + view.height + 1e-9)
    }
  })

  it('overlaps its neighbours by what it says, and every sheet fits its box', () => {
    const painter = new MapPainter(ground, scale)
    for (const tile of tiling.tiles) {
      const figure = tileFigure(painter, tiling, tile)
      expect(figure.width).toBeLessThanOrEqual(box.width + 1e-6)
      expect(figure.height).toBeLessThanOrEqual(box.height + 1e-6)
      const next = tiling.tiles.find(({ area }) => area.y === tile.area.y && area.x > tile.area.x)
      if (next) {
        const shared = tile.view.x + tile.view.width - next.view.x
        expect(shared * scale).toBeCloseTo(2 * tiling.overlap, 6)
      }
    }
  })

  it('says which rows and places are on a sheet, in the order of reading', () => {
    const first = tiling.tiles[0]!
    expect(first.rows?.[0]).toBe(1)
    expect(first.places?.[0]).toBe(1)
    const last = tiling.tiles.at(-1)!
    expect(last.rows?.[1]).toBe(50)
    expect(last.places?.[1]).toBe(60)
    expect(tiling.tiles.map((tile) => tile.number)).toEqual(tiling.tiles.map((_, i) => i + 1))
  })

  it('puts crop ticks only where a neighbour follows', () => {
    const painter = new MapPainter(ground, scale)
    const ticks = (i: number): number =>
      record(tileFigure(painter, tiling, tiling.tiles[i]!)).paths.filter(
        ({ paint }) => paint.stroke === '#555555',
      ).length
    expect(ticks(0)).toBe(4)
    const middle = tiling.tiles.findIndex(
      ({ area }) =>
        area.x > 0 &&
        area.y > 0 &&
        area.x + area.width < plan.size.width - 1 &&
        area.y + area.height < plan.size.height - 1,
    )
    expect(ticks(middle)).toBe(8)
  })
})
