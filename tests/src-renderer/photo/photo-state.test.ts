import { describe, expect, it } from 'vitest'
import { PhotoState } from '../../../src-renderer/photo/photo-state.svelte'
import { aFile, answerOf, fakeFinder, measuresOf } from './fake-finder'

const FLOWER = measuresOf(8, 104, 70)

describe('a photo on its way to a motif', () => {
  it('is read and measured; what was found makes the motif', async () => {
    const { finder, asked } = fakeFinder([answerOf(FLOWER)])
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile())
    expect(photo.phase).toBe('measured')
    expect(asked).toEqual([{ sheet: 'A4', corners: undefined }])
    expect(photo.measured).toMatchObject({ outline: 'traced', petals: 8, overTips: 104, overValleys: 70 })
    expect(photo.measured!.traced!.tips).toHaveLength(8)
  })

  it('is refused by its name, and nothing is left of the picture before', async () => {
    const { finder } = fakeFinder([], 'is a GIF picture: save it as PNG or JPEG first')
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile('rose.gif'))
    expect(photo.problem).toBe('rose.gif is a GIF picture: save it as PNG or JPEG first.')
    expect(photo).toMatchObject({ phase: 'none', picture: null, measured: null })
  })

  it('every number may be typed over; a remark on it goes then', async () => {
    const { finder } = fakeFinder([answerOf(FLOWER, 'photo/dips-hidden')])
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile())
    expect(photo.areDipsUnsure).toBe(true)
    expect(photo.findings.map(({ code }) => code)).toEqual(['photo/dips-hidden'])
    photo.set({ overValleys: 66 })
    expect(photo.findings).toEqual([])
    // The slider stays, so that it can be moved on.
    expect(photo.areDipsUnsure).toBe(true)
    photo.set({ overTips: 102 })
    expect(photo.measured).toMatchObject({ petals: 8, overTips: 102, overValleys: 66 })
    photo.takeAs('petals', 4)
    expect(photo.measured).toMatchObject({ petals: 4 })
    expect(photo.measured!.traced!.tips).toHaveLength(4)
    photo.takeAs('round')
    expect(photo.measured!.outline).toBe('round')
    expect(photo.measured!.across).toBeCloseTo(87, 0)
    photo.takeAs('other')
    expect(photo.measured).toMatchObject({ outline: 'traced', petals: 8 })
    photo.takeAs('petals')
    expect(photo.measured).toMatchObject({ petals: 8, overTips: 104 })
  })

  it('is sure where nothing stands against it, and once all that did was typed', async () => {
    const opened = async (...codes: ('photo/dips-hidden' | 'photo/no-motif')[]) => {
      const photo = new PhotoState(fakeFinder([answerOf(FLOWER, ...codes)]).finder, 'A4')
      expect(photo.isSure).toBe(false)
      await photo.open(aFile())
      return photo
    }
    expect((await opened()).isSure).toBe(true)
    const unsure = await opened('photo/dips-hidden')
    expect(unsure.isSure).toBe(false)
    unsure.set({ overValleys: 66 })
    expect(unsure.isSure).toBe(true)
    const both = await opened('photo/dips-hidden', 'photo/no-motif')
    both.set({ overValleys: 66 })
    expect(both.isSure).toBe(false)
  })

  it('corners that were set by hand are measured with, until they are looked for again', async () => {
    const { finder, asked } = fakeFinder([answerOf(FLOWER)])
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile())
    const found = photo.corners!
    const moved = [{ x: 120, y: 90 }, found[1], found[2], found[3]] as const
    photo.setCorners(moved)
    await photo.measure()
    expect(asked[1]!.corners).toEqual(moved)
    expect(photo.corners).toEqual(moved)
    photo.chooseSheet('Letter')
    expect(asked[2]).toEqual({ sheet: 'Letter', corners: moved })
    photo.findCorners()
    await Promise.resolve()
    expect(asked[3]!.corners).toBeUndefined()
  })

  it('where no sheet was found corners stand ready to be moved onto it', async () => {
    const none = { ...answerOf(null, 'photo/no-motif'), corners: null }
    const { finder } = fakeFinder([none])
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile())
    expect(photo.corners).toHaveLength(4)
    expect(photo.measured).toBeNull()
    for (const { x, y } of photo.corners!) {
      expect(x).toBeGreaterThan(0)
      expect(y).toBeGreaterThan(0)
      expect(x).toBeLessThan(1000)
      expect(y).toBeLessThan(1333)
    }
  })

  it('by a ruler is measured once both points were set, and again by another length', async () => {
    const answer = answerOf(FLOWER)
    const { finder, asked } = fakeFinder([answer, { ...answer, sheet: 'ruler' }])
    const photo = new PhotoState(finder, 'A4')
    await photo.open(aFile())
    photo.chooseSheet('ruler')
    // What the sheet said is not what the ruler says.
    // A mark that every ruler has: 10 cm, or 4 in.
    expect(photo.rulerLength).toBe(100)
    expect(new PhotoState(finder, 'Letter', 'imperial').rulerLength).toBeCloseTo(101.6, 9)
    expect(photo).toMatchObject({ phase: 'asking', measures: null, laid: null })
    expect(photo.handles).toHaveLength(2)
    photo.moveHandle(0, { x: 100, y: 1200 })
    await photo.measure()
    expect(asked).toHaveLength(1)
    photo.moveHandle(1, { x: 900, y: 5000 })
    await photo.measure()
    const ruler = { from: { x: 100, y: 1200 }, to: { x: 900, y: 1332 }, length: 100 }
    expect(asked[1]).toEqual({ sheet: 'ruler', ruler })
    expect(photo.measured).toMatchObject({ petals: 8, overTips: 104 })
    expect(photo.laid!.size.width).toBeCloseTo((999 * 100) / Math.hypot(800, 132), 6)
    photo.setRulerLength(150)
    await Promise.resolve()
    expect(asked[2]).toEqual({ sheet: 'ruler', ruler: { ...ruler, length: 150 } })
    photo.chooseSheet('A4')
    await Promise.resolve()
    expect(asked[3]).toEqual({ sheet: 'A4', corners: undefined })
    expect(photo.handles).toHaveLength(4)
    await photo.open(aFile())
    photo.chooseSheet('ruler')
    expect(photo.phase).toBe('asking')
  })

  it('is given up in the middle, and an answer that comes late changes nothing', async () => {
    const { finder, held, state } = fakeFinder([answerOf(FLOWER)])
    state.holds = true
    const photo = new PhotoState(finder, 'A4')
    const opening = photo.open(aFile())
    await Promise.resolve()
    await Promise.resolve()
    await Promise.resolve()
    expect(photo.isBusy).toBe(true)
    photo.cancel()
    held[0]?.()
    await opening
    expect(photo).toMatchObject({ phase: 'none', picture: null, measured: null, problem: '' })
  })
})
