/** The drawing in a real Chromium: what is seen, what the hand meets. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { openBenchPage } from '../../bench/drawing'
import type { Bench } from '../../bench/drawing-page/page'

/** In the page. */
declare const bench: Bench

let page: Page
let close: () => Promise<void>

beforeAll(async () => {
  const opened = await openBenchPage({ width: 900, height: 700 }, 2)
  if (!opened) throw new Error('there is no Chromium')
  ;({ page, close } = opened)
})
afterAll(() => close())

/**
 * Waits until the map is drawn and stays as it is: however slow the machine, nothing is judged half done. The page
 * itself compares what it paints; handing it over each time would take longer than painting.
 */
async function still(): Promise<void> {
  await keepPixels('before')
  for (let tries = 0; tries < 60; tries++) {
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
    await page.waitForTimeout(200)
    if ((await comparedWith('before')).same) return
    await keepPixels('before')
  }
  throw new Error('the map does not come to rest')
}

/** Starts a throw of 12 × 10 and waits until it is drawn. */
async function start(change: Parameters<Bench['startDrawing']>[1] = {}): Promise<void> {
  await page.evaluate((own) => bench.startDrawing({ columns: 12, rows: 10 }, own), change)
  await still()
}
const placeOf = (id: string) => page.evaluate((motif) => bench.drawing().placeOf(motif)!, id)

/** Colour of the map's canvas at a place in CSS pixels. */
const colourAt = (x: number, y: number) =>
  page.evaluate(
    ([left, top]) => {
      const canvas = document.querySelector('canvas')!
      const pen = canvas.getContext('2d')!
      return [...pen.getImageData(left * devicePixelRatio, top * devicePixelRatio, 1, 1).data]
    },
    [x, y] as const,
  )

/** Keeps all of the map's canvas in the page, by a name. */
const keepPixels = (name: string): Promise<void> =>
  page.evaluate((each) => {
    const { width, height } = document.querySelector('canvas')!
    const { data } = document.querySelector('canvas')!.getContext('2d')!.getImageData(0, 0, width, height)
    Object.assign(globalThis, { [each]: data })
  }, name)

/**
 * The map's canvas beside what was kept of it: whether it is the same, by how much (of 255) a channel is off at most,
 * and how many are by more than `far`. Seen over white: where the canvas is nearly clear its colours mean little.
 */
const comparedWith = (name: string, far = 0): Promise<{ same: boolean; most: number; off: number }> =>
  page.evaluate(
    ([each, much]) => {
      const before = (globalThis as unknown as Record<string, Uint8ClampedArray>)[each]!
      const { width, height } = document.querySelector('canvas')!
      const { data } = document.querySelector('canvas')!.getContext('2d')!.getImageData(0, 0, width, height)
      if (data.length !== before.length) return { same: false, most: 255, off: data.length }
      const onPaper = (pixels: Uint8ClampedArray, i: number): number => {
        const alpha = pixels[i | 3]! / 255
        return pixels[i]! * alpha + 255 * (1 - alpha)
      }
      const found = { same: true, most: 0, off: 0 }
      for (let i = 0; i < data.length; i++) {
        if (data[i] === before[i] && data[i | 3] === before[i | 3]) continue
        const by = Math.abs(onPaper(data, i) - onPaper(before, i))
        found.same = false
        found.most = Math.max(found.most, by)
        if (by > much) found.off++
      }
      return found
    },
    [name, far] as const,
  )

/** Whether anything is painted at all. */
const isPainted = (): Promise<boolean> =>
  page.evaluate(() => {
    const { width, height } = document.querySelector('canvas')!
    const { data } = document.querySelector('canvas')!.getContext('2d')!.getImageData(0, 0, width, height)
    return data.some((value) => value > 0)
  })

describe('the drawing in a browser', () => {
  it('draws sharp on a screen of two pixels to one, from the yarns’ colours', async () => {
    await start()
    const canvas = await page.evaluate(() => {
      const { width, height } = document.querySelector('canvas')!
      return { width, height }
    })
    expect(canvas).toEqual({ width: 1800, height: 1400 })
    const at = await placeOf('1,1')
    const scale = await page.evaluate(() => bench.view()!.scale)
    expect(await colourAt(at.x, at.y)).toEqual([0xe2, 0xbb, 0x5c, 255])
    expect(await colourAt(at.x, at.y - 28 * scale)).toEqual([0xc9, 0x74, 0x6a, 255])
    expect((await colourAt(at.x + 39 * scale, at.y + 39 * scale))[3]).toBe(0)
  })

  it('selects with a press and paints everything under one fast stroke', async () => {
    await start()
    const first = await placeOf('3,4')
    await page.mouse.click(first.x, first.y)
    expect(await page.evaluate(() => bench.drawing().stepFrom('3,4', 'right'))).toBe('3,5')
    await page.evaluate(() => bench.tool('paint'))
    const from = await placeOf('5,1')
    const to = await placeOf('5,12')
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(to.x, to.y)
    await page.mouse.up()
    await still()
    const painted = await page.evaluate(() => bench.painted())
    expect(painted).toEqual(Array.from({ length: 12 }, (_, i) => `5,${i + 1}`))
    const scale = await page.evaluate(() => bench.view()!.scale)
    const middle = await placeOf('5,6')
    expect(await colourAt(middle.x, middle.y - 28 * scale)).toEqual([0x5b, 0x75, 0x92, 255])
  })

  it('paints, when zoomed and moved, what it would have painted at once', async () => {
    await start()
    await page.mouse.move(400, 300)
    await page.keyboard.down('Control')
    for (let i = 0; i < 6; i++) await page.mouse.wheel(0, -100)
    await page.keyboard.up('Control')
    await still()
    for (let i = 0; i < 10; i++) await page.mouse.wheel(17, 23)
    await still()
    const moved = await page.locator('#drawing').screenshot()
    // Labels on and off again: every tile is painted anew, at this very view.
    await page.evaluate(() => bench.show({ showLabels: true }))
    await still()
    await page.evaluate(() => bench.show({ showLabels: false }))
    await still()
    const anew = await page.locator('#drawing').screenshot()
    expect(anew.equals(moved)).toBe(true)
  })

  it('leaves no trace of the old colours where motifs were painted', async () => {
    await start({ tool: 'paint' })
    const from = await placeOf('2,2')
    const to = await placeOf('8,9')
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(to.x, to.y, { steps: 3 })
    await page.mouse.up()
    await page.mouse.move(5, 5)
    await still()
    await keepPixels('mended')
    await page.evaluate(() => bench.show({ showLabels: true }))
    await still()
    await page.evaluate(() => bench.show({ showLabels: false }))
    await still()
    expect(await isPainted()).toBe(true)
    // A path that is cut off at a mended box is smoothed along its edges in other steps; a hem of the colour
    // that was there before would show with 60 and more.
    expect((await comparedWith('mended')).most).toBeLessThan(24)
  })

  it('keeps its numbers’ places in the window and the fit when the window changes', async () => {
    await start()
    await page.setViewportSize({ width: 700, height: 800 })
    await page.waitForFunction(() => bench.view()!.frame.left + bench.view()!.frame.width < 700)
    const view = await page.evaluate(() => bench.view()!)
    expect(view.zoom).toBeCloseTo(1)
    expect(view.frame.left + view.frame.width).toBeLessThan(700)
    expect(view.widthNumber!.top).toBeGreaterThanOrEqual(0)
    await page.setViewportSize({ width: 900, height: 700 })
  })

  it('moves without gliding where motion is to be reduced', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await start()
    const zoom = await page.evaluate(async () => {
      bench.drawing().zoomBy(2)
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      return bench.view()!.zoom
    })
    expect(zoom).toBeCloseTo(2)
    await page.emulateMedia({ reducedMotion: null })
  })
})

describe('a panel in a browser', () => {
  async function startPanel(): Promise<void> {
    await page.evaluate(() => bench.startPanel(40))
    await still()
  }
  const motif = (id: string) =>
    page.evaluate((wanted) => {
      const { x, y } = bench.plan().motifs.find((entry) => entry.id === wanted)!
      return { x, y }
    }, id)

  it('moves the item under the hand by what the hand moves, in halves of a millimetre', async () => {
    await startPanel()
    const before = await motif('1,10')
    const other = await motif('1,11')
    const at = await placeOf('1,10')
    const scale = await page.evaluate(() => bench.view()!.scale)
    await page.mouse.move(at.x, at.y)
    await page.mouse.down()
    await page.mouse.move(at.x + 33, at.y + 21, { steps: 4 })
    await page.mouse.up()
    const after = await motif('1,10')
    expect(Math.abs(after.x - before.x - 33 / scale)).toBeLessThanOrEqual(0.25 + 1e-6)
    expect(Math.abs(after.y - before.y - 21 / scale)).toBeLessThanOrEqual(0.25 + 1e-6)
    expect(await motif('1,11')).toEqual(other)
    expect(await page.evaluate(() => bench.drawing().placeOf('1,10'))).toEqual({
      x: expect.closeTo(at.x + 33, 0) as number,
      y: expect.closeTo(at.y + 21, 0) as number,
    })
  })

  it('puts it back with Escape', async () => {
    await startPanel()
    const before = await motif('1,10')
    const at = await placeOf('1,10')
    await page.mouse.move(at.x, at.y)
    await page.mouse.down()
    await page.mouse.move(at.x + 60, at.y, { steps: 3 })
    expect((await motif('1,10')).x).toBeGreaterThan(before.x)
    await page.keyboard.press('Escape')
    await page.mouse.up()
    expect(await motif('1,10')).toEqual(before)
  })

  it('leaves no trace where an item lay', async () => {
    await startPanel()
    const at = await placeOf('1,17')
    await page.mouse.move(at.x, at.y)
    await page.mouse.down()
    await page.mouse.move(at.x + 90, at.y - 60, { steps: 8 })
    await page.mouse.up()
    await still()
    await keepPixels('mended')
    await page.evaluate(() => bench.show({ showLabels: true }))
    await still()
    await page.evaluate(() => bench.show({ showLabels: false }))
    await still()
    expect(await isPainted()).toBe(true)
    // Where a path is cut off at a mended box a pixel may be smoothed otherwise; what is left of an outline, or of
    // a dashed line, would be hundreds.
    expect((await comparedWith('mended', 24)).off).toBeLessThan(60)
  })
})
