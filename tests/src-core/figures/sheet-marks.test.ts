import { describe, expect, it } from 'vitest'
import { cropTicks, sheetKey } from '../../../src-core/figures/sheet-marks'

describe('crop ticks', () => {
  it('stand outside of a window, above and below it and on both sides', () => {
    const look = { paint: { stroke: '#000000' }, from: 1, to: 4 }
    const ticks = cropTicks({ x: 10, y: 20, width: 100, height: 50 }, { xs: [30], ys: [40] }, look)
    expect(ticks.map((item) => item.kind === 'path' && item.path.map(([, x, y]) => [x, y]))).toEqual([
      [
        [30, 16],
        [30, 19],
      ],
      [
        [30, 71],
        [30, 74],
      ],
      [
        [6, 40],
        [9, 40],
      ],
      [
        [111, 40],
        [114, 40],
      ],
    ])
  })
})

describe('the key of all sheets', () => {
  const sheets = [0, 1, 2].map((i) => ({
    area: { x: i * 100, y: 0, width: 100, height: 100 },
    name: i === 1 ? '' : `1·${i + 1}`,
    isHere: i === 2,
  }))
  const size = { width: 300, height: 100 }
  const texts = (room: { width: number; height: number }) =>
    sheetKey(sheets, size, room).items.flatMap((item) => (item.kind === 'text' ? [item] : []))

  it('fits its box, with a name on every sheet that is printed', () => {
    const { width, height, items } = sheetKey(sheets, size, { width: 30, height: 30 })
    expect([width, height]).toEqual([30, 10])
    expect(items.filter((item) => item.kind === 'path')).toHaveLength(3)
    expect(texts({ width: 30, height: 30 }).map(({ text }) => text)).toEqual(['1·1', '1·3'])
  })

  it('names none where one has no room for its name at 7 pt', () => {
    expect(texts({ width: 16, height: 30 })).toHaveLength(2)
    expect(texts({ width: 13, height: 30 })).toEqual([])
  })
})
