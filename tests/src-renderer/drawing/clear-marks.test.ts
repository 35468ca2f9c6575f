/** What is drawn on and about a map can be seen: marks of joins on every yarn, numbers of corners beside the handles. */
import { wcagContrast } from 'culori'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { fromGallery } from '../../../src-core/edging/gallery'
import { mapSize } from '../../../src-core/layout/placed'
import { fitCamera } from '../../../src-renderer/drawing/camera'
import { dimensionFrame } from '../../../src-renderer/drawing/dimension-frame'
import { paintMap } from '../../../src-renderer/drawing/map-painter'
import { measuredOf } from '../../../src-renderer/drawing/measured'
import type { Palette } from '../../../src-renderer/drawing/palette'
import { PictureMaker } from '../../../src-renderer/drawing/picture'
import { FakePath, recorder } from './recorder'
import { palette, picture, project, scene } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const everything = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 }
const dark: Palette = { ...palette, paper: '#262420', ink: '#f3efe6' }

describe.each([
  ['light', palette],
  ['dark', dark],
])('marks of join points in a %s window', (_, own) => {
  it.each(['#f6efdc', '#fffdf8', '#d08c9a', '#1f4030', '#14110f', '#262420'])('stand out from %s', (yarn) => {
    const base = project({ halves: true, arrangement: 'offset-rows', alternateRows: 'oneFewer' })
    const plain = { ...base, yarns: base.yarns!.map(({ id }) => ({ id, colour: yarn })) }
    const record = recorder()
    const shown = new PictureMaker().make(scene(plain), own)
    paintMap(record.pen, shown, { scale: 0.5, x: 0, y: 0, ratio: 1 }, everything)
    const traced = record.calls.filter(
      (call) => call.arguments.length === 0 && ['fill', 'stroke'].includes(call.name),
    )
    const fills = traced.filter(({ name }) => name === 'fill').map(({ fill }) => String(fill))
    const hems = traced.filter(({ name }) => name === 'stroke').map(({ stroke }) => String(stroke))
    expect(fills.length).toBeGreaterThan(2)
    expect(Math.min(...fills.map((fill) => wcagContrast(fill, yarn)))).toBeGreaterThan(2)
    // Beside a yarn like the mark the hem tells it apart.
    expect(new Set(hems.flatMap((hem) => fills.map((fill) => wcagContrast(hem, fill) > 7)))).toEqual(
      new Set([true]),
    )
  })
})

describe('the handle at the corner', () => {
  const edged = project({
    edging: fromGallery({ style: 'follow', rounds: ['sc'], yarn: 'straw' }, 'shell', 'US'),
  })
  const squares = { ...edged, motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 60, slots: [{ slot: 'petals' }] } as never] } // prettier-ignore

  it.each([
    [900, 660],
    [1450, 880],
    [560, 400],
    [420, 260],
  ])('lies beside its number in a map of %d × %d', (width, height) => {
    const own = picture(squares)
    const viewport = { width, height }
    const camera = fitCamera(mapSize(own.plan), viewport)
    const record = recorder()
    paintMap(record.pen, own, { ...camera, ratio: 1 }, everything)
    const at = record.calls.findLast(({ name, arguments: [text] }) => name === 'fillText' && text === '3')!
    // Positions of a list are relative to the plan's origin, in device pixels.
    const [x, y] = [Number(at.arguments[1]) + camera.x, Number(at.arguments[2]) + camera.y]
    const frame = dimensionFrame(camera, mapSize(own.plan), viewport, measuredOf(own.plan))!
    for (const { at: handle } of frame.handles) {
      // Half a plate is 8 pixels, half a handle 5.
      const apart = Math.max(Math.abs(handle.x - x), Math.abs(handle.y - y))
      expect(apart).toBeGreaterThan(13)
    }
    const both = frame.handles.find(({ kind }) => kind === 'both')!.at
    expect(both.x + 5).toBeLessThan(width)
    expect(both.y + 5).toBeLessThan(height)
  })
})
