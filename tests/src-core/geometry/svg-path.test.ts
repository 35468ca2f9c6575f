import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boxOf, perimeter, signedArea } from '../../../src-core/geometry/points'
import { MOST_PATH_CHARACTERS, MOST_PATH_POINTS, readPath } from '../../../src-core/geometry/svg-path'
import { processorTime } from '../../processor-time'

function piece(text: string) {
  const read = readPath(text)
  if ('trouble' in read) throw new Error(JSON.stringify(read.trouble))
  expect(read.subPaths).toHaveLength(1)
  return read.subPaths[0]!
}
const trouble = (text: string) => {
  const read = readPath(text)
  return 'trouble' in read ? read.trouble.kind : 'none'
}

describe('path data', () => {
  it('of straight lines comes out corner by corner, absolute and relative alike', () => {
    const corners = [
      { x: 10, y: 20 },
      { x: 110, y: 20 },
      { x: 110, y: 70 },
      { x: 10, y: 70 },
    ]
    for (const text of ['M10 20H110V70H10Z', 'm10,20 h100v50h-100z', 'M 10 20 L 110 20 110 70 10 70 10 20'])
      expect(piece(text)).toEqual({ points: corners, closed: true })
    expect(piece('M0 0 L100 0 100 50').closed).toBe(false)
  })

  it('arcs keep within 0.05 mm of their circle, also on a metre', () => {
    for (const radius of [5, 100, 1000]) {
      const { points } = piece(
        `M 0 ${-radius} A ${radius} ${radius} 0 0 1 0 ${radius} A ${radius} ${radius} 0 0 1 0 ${-radius} Z`,
      )
      points.forEach((a, i) => {
        const b = points[(i + 1) % points.length]!
        expect(Math.hypot(a.x, a.y)).toBeCloseTo(radius, 6)
        expect(Math.hypot((a.x + b.x) / 2, (a.y + b.y) / 2)).toBeGreaterThanOrEqual(radius - 0.05 - 1e-9)
      })
      expect(signedArea(points)).toBeGreaterThan(Math.PI * radius ** 2 - 2 * Math.PI * radius * 0.05)
    }
  })

  it('takes the large or the small arc, either way round (SVG 1.1, 8.3.8: four arcs through two points)', () => {
    const box = (flags: string) => {
      const { left, top, right, bottom } = boxOf(piece(`M 0 0 A 50 50 0 ${flags} 50 50`).points)
      return [left, top, right, bottom].map((value) => Math.round(value))
    }
    expect(box('0 1')).toEqual([0, 0, 50, 50])
    expect(box('1 1')).toEqual([0, -50, 100, 50])
    expect(box('0 0')).toEqual([0, 0, 50, 50])
    expect(box('1 0')).toEqual([-50, 0, 50, 100])
    // Radii that are too small grow until they reach; radii of 0 are a straight line.
    expect(perimeter(piece('M 0 0 A 1 1 0 0 1 100 0').points)).toBeCloseTo(50 * Math.PI + 100, 0)
    expect(piece('M 0 0 A 0 9 0 0 1 100 0').points).toHaveLength(2)
  })

  it('curves keep within 0.05 mm: a quadratic is a parabola, a smooth cubic goes on as it came', () => {
    const { points } = piece('M 0 0 Q 100 200 200 0')
    for (const { x, y } of points) expect(y).toBeCloseTo(2 * (x / 200) * (1 - x / 200) * 200, 9)
    for (let i = 1; i < points.length; i++) {
      const x = (points[i]!.x + points[i - 1]!.x) / 2
      const y = (points[i]!.y + points[i - 1]!.y) / 2
      expect(Math.abs(2 * (x / 200) * (1 - x / 200) * 200 - y)).toBeLessThanOrEqual(0.05)
    }
    const smooth = piece('M0 0 C 0 50 50 50 50 0 S 100 -50 100 0').points
    const spelt = piece('M0 0 C 0 50 50 50 50 0 C 50 -50 100 -50 100 0').points
    expect(smooth).toEqual(spelt)
  })

  it.each([
    ['markup', '<svg onload="alert(1)"><path d="M0 0H9V9Z"/></svg>'],
    ['markup', '<script>M0 0</script>'],
    ['markup', '<!DOCTYPE svg [<!ENTITY a "aaaa">]>'],
    ['markup', 'M0 0 &lol; L 9 9'],
    ['unreadable', 'javascript:alert(1)'],
    ['unreadable', 'url(#a)'],
    ['unreadable', 'M 0 0 L 10'],
    ['unreadable', 'L 0 0 10 10'],
    ['unreadable', 'M 0 0 R 1 2 3 4'],
    ['unreadable', 'M 0 0 A 5 5 0 2 1 9 9'],
    ['unreadable', 'M NaN 0 L 9 9'],
    ['unreadable', 'M 1.2.3.4e L'],
    ['number', 'M 1e999 0 L 9 9'],
    ['number', 'M 0 0 L 100001 9'],
    ['number', 'M 0 0 C -1e300 0 1e300 0 9 9'],
    ['empty', ' \n '],
    ['too-long', 'M0 0' + 'L1 1'.repeat(MOST_PATH_CHARACTERS / 4)],
    ['too-many-points', 'M0 0' + 'l1 1'.repeat(MOST_PATH_POINTS + 1)],
    ['too-many-points', 'M0 0' + 'A 90000 90000 0 1 1 1 1 A 90000 90000 0 1 0 0 0'.repeat(9)],
  ])('refuses %s: %.40s', (kind, text) => {
    expect(trouble(text)).toBe(kind)
  })

  it('answers any text at all, quickly', () => {
    const letters = fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZz0123456789.,-+eE <&"')
    const began = processorTime()
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: letters, maxLength: 400 }), fc.string()), (text) => {
        const read = readPath(text)
        if ('trouble' in read) return
        for (const { points } of read.subPaths)
          for (const { x, y } of points) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true)
      }),
      { numRuns: 3000 },
    )
    expect(processorTime() - began).toBeLessThan(30_000)
  })
})
