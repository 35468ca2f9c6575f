import { describe, expect, it } from 'vitest'
import { drawPath, drawText, MM_PER_POINT, useAt } from '../../../src-core/figures/figure'
import type { FigureItem } from '../../../src-core/figures/figure'
import { dotPath, linePath, rectanglePath } from '../../../src-core/figures/path'
import { paintItems } from '../../../src-renderer/drawing/canvas'
import { recorder } from './recorder'

const type = { face: 'serif', hem: '#hem', hemWidth: 3 }

function paint(...items: FigureItem[]) {
  const record = recorder()
  paintItems(record.pen, items, type)
  return record
}

describe('a draw list on a canvas', () => {
  it('fills before it strokes, in the order of the list', () => {
    const { calls } = paint(
      drawPath(rectanglePath(0, 0, 4, 2), { fill: '#a', stroke: '#b', width: 2 }),
      drawPath(linePath(0, 0, 4, 2), { stroke: '#c', dash: [5, 4] }),
    )
    expect(calls.filter(({ name }) => name === 'fill').map(({ fill }) => fill)).toEqual(['#a'])
    expect(calls.filter(({ name }) => name === 'stroke').map(({ stroke }) => stroke)).toEqual(['#b', '#c'])
    expect(calls.findIndex(({ name }) => name === 'fill')).toBeLessThan(
      calls.findIndex(({ name }) => name === 'stroke'),
    )
    // Dashes end with their line.
    expect(
      calls.filter(({ name }) => name === 'setLineDash').map(({ arguments: given }) => given[0]),
    ).toEqual([[5, 4], []])
  })

  it('gives the last line its width and its ends', () => {
    const { pen } = paint(drawPath(linePath(0, 0, 1, 1), { stroke: '#a', width: 7, cap: 'round' }))
    expect([pen.lineWidth, pen.lineCap, pen.lineJoin]).toEqual([7, 'round', 'round'])
    const plain = paint(drawPath(linePath(0, 0, 1, 1), { stroke: '#a' })).pen
    expect([plain.lineWidth, plain.lineCap]).toEqual([0.25, 'butt'])
  })

  it('draws no line without a width, which a canvas would give the one before', () => {
    const line = linePath(0, 0, 1, 1)
    const wide = drawPath(line, { stroke: '#a', width: 7 })
    expect(paint(wide, drawPath(line, { stroke: '#b', width: 0 })).count('stroke')).toBe(1)
  })

  it('shows dots, which no canvas draws without a length', () => {
    const ends = (cap: 'round' | 'butt') =>
      paint(drawPath(dotPath(3, 4), { stroke: '#a', cap }))
        .calls.filter(({ name }) => name === 'lineTo')
        .map(({ arguments: given }) => given)
    expect(ends('butt')).toEqual([[3, 4]])
    const [[x, y]] = ends('round') as [[number, number]]
    expect(x).toBeGreaterThan(3)
    expect(x).toBeLessThan(3.01)
    expect(y).toBe(4)
  })

  it('writes text in its size and place over a hem', () => {
    const { calls, pen } = paint(drawText('12', 5, 6, 10, { anchor: 'middle', weight: 'bold', colour: '#t' }))
    expect(calls.map(({ name, arguments: given }) => [name, ...given])).toEqual([
      ['strokeText', '12', 5, 6],
      ['fillText', '12', 5, 6],
    ])
    expect([calls[0]!.stroke, calls[1]!.fill]).toEqual(['#hem', '#t'])
    expect([pen.font, pen.textAlign, pen.textBaseline]).toEqual([
      `600 ${10 * MM_PER_POINT}px serif`,
      'center',
      'alphabetic',
    ])
  })

  it('draws a symbol where it is used, and a group in its place and its clip', () => {
    const line = drawPath(linePath(0, 0, 1, 1), { stroke: '#a' })
    const symbol = { id: 's', bounds: { x: 0, y: 0, width: 1, height: 1 }, items: [line] }
    const { calls } = paint(useAt(symbol, 7, 8), {
      ...{ kind: 'group', matrix: [1, 0, 0, 1, 2, 3], clip: rectanglePath(0, 0, 9, 9), items: [line, line] },
    })
    const told = calls.filter(({ name }) => !['beginPath', 'moveTo', 'lineTo', 'closePath'].includes(name))
    expect(told.map(({ name }) => name)).toEqual([
      ...['save', 'transform', 'stroke', 'restore'],
      ...['save', 'transform', 'clip', 'stroke', 'stroke', 'restore'],
    ])
    expect(told[1]!.arguments).toEqual([1, 0, 0, 1, 7, 8])
    expect(told[5]!.arguments).toEqual([1, 0, 0, 1, 2, 3])
  })
})
