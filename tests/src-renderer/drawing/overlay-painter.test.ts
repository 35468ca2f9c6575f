import { describe, expect, it } from 'vitest'
import { paintOverlay } from '../../../src-renderer/drawing/overlay-painter'
import type { Overlay } from '../../../src-renderer/drawing/overlay-painter'
import { recorder } from './recorder'
import { palette } from './scenes'

const nothing: Overlay = {
  dimensions: null,
  previous: null,
  wished: null,
  band: null,
  hot: null,
  line: null,
  gaps: [],
  pivot: null,
}

function draw(overlay: Partial<Overlay>) {
  const record = recorder()
  paintOverlay(record.pen, { ...nothing, ...overlay }, { width: 800, height: 600 }, palette)
  return record
}
const texts = (record: ReturnType<typeof draw>) =>
  record.calls.filter(({ name }) => name === 'fillText').map(({ arguments: given, fill }) => [given[0], fill])

describe('what is drawn over the map while something is in the hand', () => {
  it('is nothing while nothing is', () => {
    expect(draw({}).calls).toEqual([])
  })

  it('is a line for each distance with its number, in the warning tone where it is too short', () => {
    const record = draw({
      gaps: [
        { from: { x: 10, y: 10 }, to: { x: 60, y: 10 }, words: '20 mm', isShort: false },
        { from: { x: 10, y: 40 }, to: { x: 10, y: 90 }, words: '2.5 mm', isShort: true },
      ],
    })
    expect(texts(record)).toEqual([
      ['20 mm', palette.accent],
      ['2.5 mm', palette.warning],
    ])
    const lines = record.calls.filter(({ name }) => name === 'stroke').map(({ stroke }) => stroke)
    expect(lines).toEqual([palette.paper, palette.accent, palette.paper, palette.warning])
    // The number of a level line stands above it, that of an upright one beside it.
    const [level, upright] = record.calls.filter(({ name }) => name === 'fillText')
    const [across, above] = level!.arguments.slice(1) as [number, number]
    const [beside, down] = upright!.arguments.slice(1) as [number, number]
    // They stand with the middle of their capitals there: 0.66 of 13 px.
    const drop = (0.66 * 13) / 2
    expect([across, beside]).toEqual([35, 22])
    expect([above, down].map((y) => y - drop)).toEqual([expect.closeTo(-2, 6), expect.closeTo(65, 6)])
  })

  it('is the line that the hand draws, and what a rotation turns about with its degrees', () => {
    const record = draw({
      line: [
        { x: 0, y: 0 },
        { x: 5, y: 5 },
        { x: 9, y: 2 },
      ],
      pivot: { at: { x: 100, y: 100 }, words: '15°' },
    })
    // Each on its hem.
    expect(record.count('lineTo')).toBe(2 * (2 + 2))
    expect(texts(record)).toEqual([['15°', palette.accent]])
    expect(draw({ line: [{ x: 0, y: 0 }] }).calls).toEqual([])
  })
})
