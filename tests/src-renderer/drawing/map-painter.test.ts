import { fromGallery } from '../../../src-core/edging/gallery'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { paintCost, paintMap } from '../../../src-renderer/drawing/map-painter'
import { DETAIL } from '../../../src-core/figures/detail'
import type { Picture } from '../../../src-renderer/drawing/picture'
import { FakePath, recorder } from './recorder'
import { painted, palette, picture, project } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const everything = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 }
const at = (scale: number) => ({ scale, x: 0, y: 0, ratio: 1 })
/** The scale at which a motif is so many CSS pixels wide. */
const sized = (pixels: number) => at(pixels / 80)

function draw(own: Picture, placing: ReturnType<typeof at>, box = everything) {
  const record = recorder()
  paintMap(record.pen, own, placing, box)
  return record
}

/** Paths that are traced on the pen itself: where each part of them begins, and whether they are stroked or filled. */
function pathsOf({ calls }: Pick<ReturnType<typeof recorder>, 'calls'>) {
  const paths: { how: string; from: (readonly unknown[])[] }[] = []
  let from: (readonly unknown[])[] = []
  for (const call of calls)
    if (call.name === 'beginPath') from = []
    else if (call.name === 'moveTo') from.push(call.arguments)
    else if ((call.name === 'fill' || call.name === 'stroke') && call.arguments.length === 0)
      paths.push({ how: call.name, from })
  return paths
}

describe('the map as a list of strokes', () => {
  it('fills every layer of every motif once, at its place and in its yarn', () => {
    const own = picture(project(), { showJoins: false })
    const { calls, count } = draw(own, sized(12))
    expect(own.motifs).toHaveLength(80)
    expect(count('fill')).toBe(160)
    expect(count('stroke')).toBe(0)
    const fills = calls.filter((call) => call.name === 'fill')
    expect(fills.filter((call) => call.fill === '#bb5544')).toHaveLength(40)
    expect(fills.filter((call) => call.fill === '#446688')).toHaveLength(40)
    expect(fills.filter((call) => call.fill === '#e2bb5c')).toHaveLength(80)
    const places = calls
      .filter((call) => call.name === 'setTransform')
      .map((call) => call.arguments.slice(4).join())
    for (const { x, y } of own.motifs) expect(places).toContain(`${x * 0.15},${y * 0.15}`)
  })

  it('shares one path for each layer among all motifs', () => {
    const { calls } = draw(picture(project(), { showJoins: false }), sized(40))
    const paths = new Set(calls.filter((call) => call.name === 'fill').map((call) => call.arguments[0]))
    expect(paths.size).toBe(2)
  })

  it('draws nothing that lies outside the box', () => {
    const own = picture(project(), { showJoins: false })
    const first = own.motifs[0]!
    const box = { left: first.x - 1, top: first.y - 1, right: first.x + 1, bottom: first.y + 1 }
    expect(draw(own, sized(12), box).count('fill')).toBe(2)
    expect(draw(own, sized(12), { left: -900, top: -900, right: -800, bottom: -800 }).count('fill')).toBe(0)
  })

  it('adds contours, lines between petals and rounds as the motif grows', () => {
    const own = picture(project(), { showJoins: false })
    const strokes = (pixels: number) => draw(own, sized(pixels)).count('stroke')
    expect(strokes(DETAIL.contour - 1)).toBe(0)
    expect(strokes(DETAIL.contour + 1)).toBe(160)
    expect(strokes(DETAIL.petals + 1)).toBe(240)
    expect(strokes(DETAIL.rounds + 1)).toBe(320)
  })

  it('uses fewer points for what is drawn smaller', () => {
    const own = picture()
    const points = (scale: number) =>
      (own.main!.artist.at(scale).layers[0] as unknown as FakePath).points.length
    expect(points(8)).toBeGreaterThanOrEqual(own.main!.account.outline.length)
    expect(points(0.5)).toBeLessThan(points(8))
    expect(points(0.15)).toBeLessThan(points(0.5))
    expect(points(0.15)).toBeGreaterThanOrEqual(16)
  })

  it('marks every meeting point once where motifs are large enough, in ink', () => {
    const own = picture()
    const marks = (record: ReturnType<typeof draw>) => record.count('moveTo')
    const near = draw(own, sized(40))
    const paths = pathsOf(near)
    const placed = (how: string) =>
      paths.filter((path) => path.how === how).flatMap(({ from }) => from.map((at) => at.join()))
    for (const how of ['stroke', 'fill']) {
      expect(placed(how)).toHaveLength(own.joins.length)
      expect(new Set(placed(how)).size).toBe(own.joins.length)
    }
    expect(own.joins.length).toBeGreaterThan(100)
    // No hem of paper lies over the ink of another mark.
    expect(paths.map(({ how }) => how).join(' ')).toMatch(/^(stroke ?)+(fill ?)+$/)
    expect(near.calls.filter(({ name, arguments: path }) => name === 'stroke' && path.length === 0).every(({ stroke }) => stroke === palette.paper)).toBe(true) // prettier-ignore
    expect(near.calls.filter((call) => call.name === 'fill').at(-1)!.fill).toBe(palette.ink)
    // A browser measures a path anew for each part of it that is closed.
    expect(Math.max(...paths.map(({ from }) => from.length))).toBeLessThan(50)
    expect(marks(draw(own, sized(DETAIL.joins - 1)))).toBe(0)
    expect(marks(draw(picture(project(), { showJoins: false }), sized(40)))).toBe(0)
  })

  it('writes working numbers, and letters where there is room', () => {
    const own = picture(project(), { showLabels: true })
    const texts = (pixels: number) =>
      draw(own, sized(pixels))
        .calls.filter((call) => call.name === 'fillText')
        .map((call) => String(call.arguments[0]))
    expect(texts(DETAIL.number - 1)).toEqual([])
    expect(texts(DETAIL.number + 1).sort()).toEqual(own.motifs.map(({ label }) => label).sort())
    expect(texts(DETAIL.letter + 1).filter((text) => text === 'A')).toHaveLength(40)
    expect(draw(picture(), sized(200)).count('fillText')).toBe(0)
  })

  it('stretches motifs as blocking does', () => {
    const own = picture(project({ blocking: { width: 1.2, height: 0.9 } }), { showJoins: false })
    const { calls } = draw(own, at(1))
    const first = calls.find((call) => call.name === 'setTransform')!
    expect(first.arguments[0]).toBeCloseTo(1.2)
    expect(first.arguments[3]).toBeCloseTo(0.9)
  })

  it('draws the edging first, as a band outside its line, in its yarn', () => {
    const own = picture(project({ edging: { style: 'bridge', rounds: ['sc', 'dc'], yarn: 'blue' } }))
    const { calls } = draw(own, sized(40))
    const clip = calls.findIndex((call) => call.name === 'clip')
    expect(calls[clip]!.arguments).toEqual(['evenodd'])
    const band = calls.filter((call) => call.name === 'stroke' && call.stroke === '#446688')
    expect(band).toHaveLength(1)
    expect(calls.indexOf(band[0]!)).toBeLessThan(calls.findIndex((call) => call.name === 'restore'))
  })

  it('draws written rounds of an edging as they are, each in its yarn; as a band where they are too small', () => {
    const shell = fromGallery({ style: 'bridge', rounds: ['sc'], yarn: 'blue' }, 'shell', 'US')
    const own = picture(project({ edging: { ...shell, written: [{ ...shell.written![0], yarn: 'red' }] } }))
    expect(own.edging?.shapes?.of.rounds.map(({ yarn }) => yarn)).toEqual(['red', 'blue'])
    const near = draw(own, sized(120)).calls
    const [rounds, line] = [own.edging!.shapes!, own.edging!.ink.line]
    const before = near.slice(
      0,
      near.findIndex((call) => call.name === 'restore'),
    )
    expect(before.filter((call) => call.name === 'fill')).toHaveLength(rounds.inks.length)
    expect(before.filter((call) => call.name === 'stroke' && call.stroke === line).length).toBeGreaterThan(1)
    const far = draw(own, sized(8)).calls
    const band = far.slice(
      0,
      far.findIndex((call) => call.name === 'restore'),
    )
    expect(band.filter((call) => call.name === 'fill')).toEqual([])
  })

  it('marks two motifs that are joined in a way of their own, wherever joins are shown', () => {
    const joining = { rule: 'tips' as const, single: [{ places: ['2,2', '2,3'], rule: 'edges' as const }] }
    const own = { ...project(), joining }
    const strokes = (shown: boolean, of = own) =>
      draw(picture(of, { showJoins: shown, showLabels: false }), sized(6)).calls.filter(
        ({ name, stroke }) => name === 'stroke' && stroke === palette.ink,
      ).length
    expect(strokes(true)).toBe(2)
    expect(strokes(false)).toBe(0)
    expect(strokes(true, { ...own, joining: { rule: 'tips', single: [] } })).toBe(0)
  })

  it('numbers the corners of an edging at every zoom, over everything else', () => {
    const shell = fromGallery({ style: 'follow', rounds: ['sc'], yarn: 'blue' }, 'shell', 'US')
    const own = picture(project({ edging: shell }), { showJoins: false, showLabels: false })
    const written = (size: number) =>
      draw(own, sized(size)).calls.flatMap(({ name, arguments: [text] }) =>
        name === 'fillText' ? [text] : [],
      )
    const corners = own.plan.edging!.loops![0]!.marks.length
    const numbers = Array.from({ length: corners }, (_, i) => String(i + 1))
    expect(corners).toBeGreaterThan(2)
    for (const size of [8, 120]) expect(written(size)).toEqual(expect.arrayContaining(numbers))
    expect(written(120)).toContain(`${own.plan.edging!.loops![0]!.stretches[0]!} sts`)
    const plain = picture(project({ edging: { style: 'follow', rounds: ['sc'], yarn: 'blue' } }), {
      showLabels: false,
    })
    expect(draw(plain, sized(120)).calls.filter(({ name }) => name === 'fillText')).toEqual([])
  })

  it('draws motifs without a yarn bare, and a plan without a motif not at all', () => {
    const bare = { ...project(), yarns: [] }
    const fills = draw(picture(bare, { showJoins: false }), sized(12)).calls.filter(
      (call) => call.name === 'fill',
    )
    expect(new Set(fills.map((call) => call.fill))).toEqual(new Set([palette.bare]))
    expect(draw(picture({ ...project(), layout: undefined }), sized(12)).calls).toEqual([])
  })

  it('shows a newly painted motif in its new yarn', () => {
    const own = picture(painted(project(), ['1,1', '2,1'], 'b'), { showJoins: false })
    const fills = draw(own, sized(12)).calls.filter((call) => call.name === 'fill' && call.fill === '#446688')
    expect(fills).toHaveLength(42)
  })

  it('knows what a frame costs', () => {
    const own = picture(project(), { showJoins: false })
    for (const pixels of [12, 20, 35]) {
      const { calls } = draw(own, sized(pixels))
      const paths = calls.filter((call) => call.name === 'fill' || call.name === 'stroke').length
      expect(paintCost(own, pixels / 80, 80)).toBeGreaterThanOrEqual(paths)
    }
  })
})
