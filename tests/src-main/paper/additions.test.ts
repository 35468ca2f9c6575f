/** M27, M28 on paper: fillers and half motifs on the map, in its key and in the order of work. */
import { describe, expect, it } from 'vitest'
import { keyMarks, mapGround, overviewMap } from '../../../src-core/figures/map'
import { planProject } from '../../../src-core/plan'
import { orderCsv } from '../../../src-main/paper/csv'
import { mapPages } from '../../../src-main/paper/index'
import { keyCount } from '../../../src-main/paper/words'
import { blanket, ROUND } from '../../src-core/layout/additions'
import { record } from '../../src-core/figures/recorder'

const project = blanket(
  ROUND,
  { name: 'Knot', outline: 'petals', petals: 3, overTips: 12, overValleys: 8 },
  { arrangement: 'offset-rows', columns: 6, rows: 5, halves: true, fillers: { motif: 'f' } },
)
const plan = planProject(project)
const ground = mapGround(project, plan, 'ink')

describe('fillers and half motifs on the map', () => {
  const { figure, scale } = overviewMap(ground, 186, 170)
  const drawn = record(figure)
  const uses = drawn.uses.filter(({ symbol }) => symbol.id !== 'meeting-point')
  const first = uses[0]!
  const origin = { x: first.x - plan.motifs[0]!.x * scale, y: first.y - plan.motifs[0]!.y * scale }
  const at = (x: number, y: number) =>
    uses.filter((use) => Math.hypot(use.x - origin.x - x * scale, use.y - origin.y - y * scale) < 1e-6)

  it('M27 draws every filler in its place, small and without a number', () => {
    expect(plan.fillers).toHaveLength(40)
    for (const filler of plan.fillers) {
      const [use] = at(filler.x, filler.y)
      expect(use!.symbol.bounds.width).toBeLessThan(14 * scale)
    }
    expect(uses).toHaveLength(plan.motifs.length + plan.fillers.length + plan.halves.length)
    const numbers = drawn.texts.filter((text) => /^\d+$/.test(text.text) && text.weight === 'bold')
    expect(numbers).toHaveLength(plan.motifs.length)
  })

  it('M28 draws each half on the inner side of its cut', () => {
    expect(plan.halves).toHaveLength(5)
    for (const half of plan.halves) {
      const { bounds } = at(half.x, half.y)[0]!.symbol
      expect(bounds.width).toBeCloseTo(40 * scale, 0)
      expect(bounds.x + bounds.width / 2 > 0).toBe(half.side === 'left')
    }
  })

  it('counts both in the key, fillers in a texture of their own', () => {
    const [motifs, fillers] = keyMarks(ground)
    expect(motifs).toMatchObject({ id: 'a', count: 30, halves: 5, fillers: 0 })
    expect(fillers).toMatchObject({ id: 'b', count: 0, halves: 0, fillers: 40 })
    expect(fillers!.texture).not.toBe(motifs!.texture)
    expect([motifs!, fillers!].map(keyCount)).toEqual(['× 30 and 5 halves', '× 40 fillers'])
    const own = mapGround(
      project,
      { ...plan, fillers: plan.fillers.map((f) => ({ ...f, colourway: '' })) },
      'ink',
    )
    expect(own.fillerMarks).toMatchObject([{ id: '', code: '', fillers: 40 }])
  })

  it('colours halves that no whole motif is like, and counts them in the key', () => {
    const other = { ...plan, halves: plan.halves.map((half) => ({ ...half, colourway: 'c' })) }
    const marks = mapGround(project, other, 'colour').marks
    expect(marks.find(({ id }) => id === 'c')).toMatchObject({ count: 0, halves: 5 })
    expect(keyCount(marks.find(({ id }) => id === 'c')!)).toBe('× 5 halves')
  })
})

describe('fillers and half motifs on the pages', () => {
  const pages = mapPages(project, plan, { date: new Date('2026-11-24T10:00:00Z') })
  const textOf = (section: string) =>
    pages
      .filter((page) => page.section === section)
      .flatMap((page) => record(page.figure).texts.map((text) => text.text))

  it('lists every filler once in the order of work, with a box to tick', () => {
    const order = textOf('order')
    expect(order).toContain('Fillers')
    expect(order.filter((text) => text.startsWith('☐ between'))).toHaveLength(40)
    expect(new Set(order.filter((text) => text.startsWith('☐'))).size).toBe(70)
  })

  it('tells both among the materials', () => {
    const words = textOf('materials').join(' ')
    expect(words).toContain('40 × Knot in openings of 12.4 mm, joined 120 times in all')
    expect(words).toContain('5 half motifs at the ends of rows')
    expect(words).toContain('(about 55 %)')
  })

  it('puts fillers after the last motif round them in the spreadsheet', () => {
    const lines = orderCsv(project, plan).trim().split('\r\n').slice(1)
    expect(lines).toHaveLength(70)
    const numbers: number[] = []
    for (const line of lines) {
      if (/^\d/.test(line)) numbers.push(parseInt(line))
      else {
        const round = /filler between ([\d, and]+):/.exec(line)![1]!.split(/\D+/).map(Number)
        expect(Math.max(...round)).toBe(numbers.at(-1))
      }
    }
  })
})
