import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Picture } from '../../../src-renderer/drawing/picture'
import { differenceOf, PictureMaker } from '../../../src-renderer/drawing/picture'
import { TILE, tilesIn, TileStore } from '../../../src-renderer/drawing/tiles'
import type { Screen } from '../../../src-renderer/drawing/tiles'
import { createPlanner } from '../../../src-core/plan'
import { FakePath, recorder } from './recorder'
import type { Recorder } from './recorder'
import { painted, palette, project, scene } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const window = { width: 1000, height: 700 }
const always = () => true
const never = () => false

function setUp() {
  const surfaces: Recorder[] = []
  const store = new TileStore(() => {
    const surface = recorder()
    surfaces.push(surface)
    return { image: surface as unknown as CanvasImageSource, pen: surface.pen }
  })
  const copies: (readonly [number, number, number, number])[] = []
  const screen: Screen = {
    copy: (_, ...box) => void copies.push(box),
    clear: () => undefined,
    within: (_, draw) => draw(),
  }
  const fills = () => surfaces.reduce((sum, surface) => sum + surface.count('fill'), 0)
  const forget = () => {
    copies.length = 0
    surfaces.forEach((surface) => surface.clear())
  }
  return { store, screen, copies, surfaces, fills, forget }
}

function pictures() {
  const planner = createPlanner()
  const maker = new PictureMaker()
  return (own = project()): Picture => maker.make(scene(own, { showJoins: false }, planner), palette)
}

const placing = (scale: number, x = 40, y = 30) => ({ scale, x, y, ratio: 1 })

describe('the map as tiles', () => {
  it('covers the window with tiles and paints each once', () => {
    const { store, screen, copies, fills, forget } = setUp()
    store.update(pictures()(), 'everything')
    expect(store.show(screen, window, placing(1), always)).toBe(true)
    expect(copies).toHaveLength(tilesIn(window, placing(1)).length)
    const covered = copies.some(([x, y, w, h]) => x <= 0 && y <= 0 && x + w > 0 && y + h > 0)
    expect(covered).toBe(true)
    expect(fills()).toBeGreaterThanOrEqual(160)
    forget()
    expect(store.show(screen, window, placing(1), always)).toBe(true)
    expect(fills()).toBe(0)
  })

  it('only copies while panning over what is there', () => {
    const { store, screen, fills, forget } = setUp()
    store.update(pictures()(), 'everything')
    store.show(screen, window, placing(1), always)
    forget()
    for (let x = 40; x > 20; x -= 3) store.show(screen, window, placing(1, x, 28), never)
    expect(fills()).toBe(0)
  })

  it('mends the tiles of a painted motif and leaves the others', () => {
    const { store, screen, surfaces, fills, forget } = setUp()
    const make = pictures()
    const own = project()
    const before = make(own)
    store.update(before, 'everything')
    store.show(screen, window, placing(1), always)
    forget()
    const after = make(painted(own, ['3,3'], 'b'))
    store.update(after, differenceOf(before, after))
    expect(store.show(screen, window, placing(1), always)).toBe(true)
    const touched = surfaces.filter((surface) => surface.calls.length > 0)
    expect(touched).toHaveLength(1)
    // Two layers of the motif itself and of the eight neighbours whose boxes touch its own.
    expect(fills()).toBeLessThanOrEqual(18)
    expect(touched[0]!.calls.some((call) => call.name === 'clip')).toBe(true)
  })

  it('paints at least one tile in a frame, and the rest in the frames after it', () => {
    const { store, screen } = setUp()
    store.update(pictures()(), 'everything')
    const tiles = tilesIn(window, placing(1)).length
    let frames = 1
    while (!store.show(screen, window, placing(1), never)) frames++
    expect(frames).toBe(tiles)
  })

  it('stands in with what it knows from another scale until a tile is painted', () => {
    const { store, screen, copies, forget } = setUp()
    store.update(pictures()(), 'everything')
    store.show(screen, window, placing(1), always)
    forget()
    store.show(screen, window, placing(2), never)
    expect(copies.some(([, , width]) => width === 2 * TILE)).toBe(true)
    forget()
    store.showStretched(screen, window, placing(1.5))
    expect(copies.length).toBeGreaterThan(0)
    expect(copies.every(([, , width]) => width !== TILE)).toBe(true)
  })

  it('prepares the whole a tile at a time and then has nothing left to do', () => {
    const { store } = setUp()
    store.update(pictures()(), 'everything')
    let steps = 0
    while (store.prepareWhole(0.9, 1)) steps++
    expect(steps).toBe(Math.ceil((800 * 0.9) / TILE) * Math.ceil((640 * 0.9) / TILE))
  })

  it('keeps a bounded number of tiles however far one wanders', () => {
    const { store, screen } = setUp()
    store.update(pictures()(), 'everything')
    for (let i = 0; i < 60; i++) store.show(screen, window, placing(1 + i / 10, -i * 97, -i * 61), always)
    expect(store.count).toBeLessThanOrEqual(96)
  })

  it('paints everything anew after a change of everything, and after it was cleared', () => {
    const { store, screen, fills, forget } = setUp()
    const make = pictures()
    store.update(make(), 'everything')
    store.show(screen, window, placing(1), always)
    const first = fills()
    forget()
    store.update(make(), 'everything')
    store.show(screen, window, placing(1), always)
    expect(fills()).toBe(first)
    store.clear()
    expect(store.count).toBe(0)
  })
})
