import { beforeAll, describe, expect, it, vi } from 'vitest'
import { ownJoins } from '../../../src-core/figures/join-marks'
import { TICK_BESIDE } from '../../../src-core/figures/made-ticks'
import { fitCamera, toScreen } from '../../../src-renderer/drawing/camera'
import { paintMarks } from '../../../src-renderer/drawing/marks-painter'
import type { Marks } from '../../../src-renderer/drawing/marks-painter'
import { faint } from '../../../src-renderer/drawing/palette'
import { circles, FakePath, recorder } from './recorder'
import { palette, picture } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const none: Marks = {
  selection: new Set(),
  focus: null,
  own: [],
  flagged: new Set(),
  changed: new Set(),
  made: new Set(),
  joined: new Set(),
  fixed: new Set(),
  hover: null,
  warned: new Set(),
  faults: [],
}
const viewport = { width: 1000, height: 800 }

function draw(marks: Partial<Marks>, zoom = 1, colours = palette) {
  const own = { ...picture(), palette: colours }
  const fit = fitCamera(own.plan.size, viewport)
  const record = recorder()
  const camera = { ...fit, scale: fit.scale * zoom }
  paintMarks(record.pen, own, camera, viewport, { ...none, ...marks }, 1)
  return record
}
const strokes = (record: ReturnType<typeof draw>, colour: string) =>
  record.calls.filter((call) => call.name === 'stroke' && call.stroke === colour).length

describe('marks on the map', () => {
  it('are not drawn where nothing is marked', () => {
    expect(draw({}).calls).toEqual([])
  })

  it('tick what is made, dark on light, and light on dark where it is joined', () => {
    // In a dark theme too, where ink is light and paper dark.
    const dark = { ...palette, paper: '#252320', ink: '#f3eee4' }
    const record = draw({ made: new Set(['1,1', '2,2']), joined: new Set(['1,1']) }, 1, dark)
    const discs = (ground: string) =>
      record.calls.filter((call) => call.name === 'fill' && call.fill === ground).length
    // One path for all of a paint: the ground with its hem, the ticks.
    expect([discs(palette.markLight), discs(palette.markDark)]).toEqual([1, 1])
    expect(strokes(record, palette.markDark)).toBe(2)
    expect(strokes(record, palette.markLight)).toBe(2)
  })

  it('set the tick clear of the number, the letter below it and the pin above', () => {
    // In reaches: the letter stands up to 0.6 below the middle, up to 30° aside, the pin's head 0.62 above it.
    const radius = 0.27
    const far = (x: number, y: number) => Math.hypot(TICK_BESIDE.across - x, TICK_BESIDE.down - y)
    for (const degrees of [-30, 0, 30]) {
      const [x, y] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)]
      expect(far(0.6 * x, 0.6 * y)).toBeGreaterThan(radius + 0.2)
    }
    expect(far(0, -0.62)).toBeGreaterThan(radius + 0.16)
    // The number: three figures of 0.19 of the motif across.
    expect(-TICK_BESIDE.down - radius).toBeGreaterThan(0.19 / 2)
    const record = draw({ made: new Set(['2,2']) })
    const { motifs, size } = picture().plan
    const middle = toScreen(
      fitCamera(size, viewport),
      motifs.find(({ id }) => id === '2,2')!,
    )
    const arcs = record.calls.filter(({ name }) => name === 'bezierCurveTo')
    expect(arcs.length).toBeGreaterThanOrEqual(4)
    // Its ground is a circle: the middle of where its quarters end.
    const ends = arcs.slice(0, 4).map(({ arguments: given }) => given.slice(4, 6).map(Number))
    expect(ends.reduce((sum, [x]) => sum + x!, 0) / 4).toBeGreaterThan(middle.x)
    expect(ends.reduce((sum, [, y]) => sum + y!, 0) / 4).toBeLessThan(middle.y)
  })

  it('follow the contour of every selected motif in the accent', () => {
    const record = draw({ selection: new Set(['1,1', '2,2', '3,3']) })
    expect(strokes(record, palette.accent)).toBe(3)
    expect(strokes(record, palette.paper)).toBe(3)
  })

  it('ring the motif of the keyboard in the accent and flagged ones, dashed, in the warning tone', () => {
    const record = draw({ focus: '2,2', flagged: new Set(['4,4', '5,5']) })
    // Each on a wider one.
    expect(circles(record)).toHaveLength(2 * 3)
    expect(strokes(record, palette.accent)).toBe(1)
    expect(strokes(record, palette.warning)).toBe(2)
    const dashes = record.calls.filter((call) => call.name === 'setLineDash').map((call) => call.arguments[0])
    expect(dashes).toEqual([1, 2, 3, 4].flatMap(() => [[4, 3], []]))
  })

  it('pin what is fixed, dark in light and light in dark, and ring what changed along in ink', () => {
    const record = draw({ fixed: new Set(['1,1', '2,2']), changed: new Set(['3,3']) })
    const fills = record.calls.filter((call) => call.name === 'fill').map((call) => call.fill)
    expect(fills).toEqual([palette.paper, palette.ink, palette.paper])
    // And two rings, one on the other, about what changed along.
    expect(circles(record)).toHaveLength(3 * 2 + 2)
    expect(strokes(record, palette.ink)).toBe(1)
  })

  it('keep the join points of the motif in hand in view at every zoom: filled where it joins, open where it hosts', () => {
    const own = ownJoins(picture().plan, '4,5')
    const hosts = own.filter((join) => join.hosts).length
    expect(own.length).toBeGreaterThanOrEqual(4)
    expect(hosts).toBeGreaterThan(0)
    for (const zoom of [0.1, 1, 4]) {
      const record = draw({ own }, zoom)
      expect(circles(record)).toHaveLength(2 * own.length)
      expect(strokes(record, palette.accent)).toBe(hosts)
      const filled = record.calls.filter(({ name, fill }) => name === 'fill' && fill === palette.accent)
      expect(filled).toHaveLength(own.length - hosts)
    }
  })

  it('become dots where motifs are tiny, and leave out what is off screen', () => {
    const tiny = draw({ selection: new Set(['1,1']) }, 0.1)
    expect(tiny.count('stroke')).toBe(0)
    expect(tiny.count('fill')).toBe(1)
    expect(draw({ selection: new Set(['8,10']), flagged: new Set(['8,10']) }, 8).count('stroke')).toBe(0)
  })

  it('follow the contour of what is too near to something in the warning tone, selected or not', () => {
    const record = draw({ warned: new Set(['1,1', '2,2']), selection: new Set(['2,2']) })
    expect(strokes(record, palette.warning)).toBe(2)
    expect(strokes(record, palette.accent)).toBe(0)
  })

  it('fill what lies where it should not', () => {
    const fault = [
      { x: 0, y: 0 },
      { x: 9, y: 0 },
      { x: 9, y: 9 },
    ]
    const record = draw({ faults: [fault] })
    const fills = record.calls.filter((call) => call.name === 'fill')
    expect(fills.map((call) => call.fill)).toEqual([faint(palette.warning, 0.45)])
    expect(record.count('lineTo')).toBe(2)
  })
})
