/** The icons in every form, taken apart again. */
import { expect, it } from 'vitest'
import { decode } from 'fast-png'
import { icnsOf, icoOf, iconPictures, SIZES } from '../../../scripts/icons.mjs'

it.each(['app', 'project'] as const)(
  'the icon of the %s is drawn in each size, with clear corners',
  async (of) => {
    const pictures = await iconPictures(of)
    expect([...pictures.keys()]).toEqual(SIZES)
    for (const [size, png] of pictures) {
      const { width, height, data, channels } = decode(png)
      expect([width, height, channels]).toEqual([size, size, 4])
      expect(data[3]).toBe(0)
      // Something is in the middle.
      expect(data[4 * (Math.floor(size / 2) * size + Math.floor(size / 2)) + 3]).toBe(255)
    }
  },
)

it('an ICO names the size, place and length of each picture', async () => {
  const pictures = await iconPictures('app')
  const ico = icoOf(pictures)
  const count = ico.readUInt16LE(4)
  const sizes = Array.from({ length: count }, (_, index) => {
    const at = 6 + 16 * index
    const [length, offset] = [ico.readUInt32LE(at + 8), ico.readUInt32LE(at + 12)]
    const picture = decode(ico.subarray(offset, offset + length))
    expect(picture.width % 256).toBe(ico.readUInt8(at))
    return picture.width
  })
  expect(sizes).toEqual([16, 24, 32, 48, 64, 128, 256])
})

it('an ICNS holds pictures to its end, each of the size of its kind', async () => {
  const icns = icnsOf(await iconPictures('app'))
  expect(icns.toString('ascii', 0, 4)).toBe('icns')
  expect(icns.readUInt32BE(4)).toBe(icns.length)
  const found: Record<string, number> = {}
  for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4))
    found[icns.toString('ascii', at, at + 4)] = decode(
      icns.subarray(at + 8, at + icns.readUInt32BE(at + 4)),
    ).width
  // Sizes of the kinds, from memory; those that a Mac shows up to 1024 pixels.
  expect(found).toEqual({
    ...{ icp4: 16, icp5: 32, icp6: 64, ic07: 128, ic08: 256, ic09: 512, ic10: 1024 },
    ...{ ic11: 32, ic12: 64, ic13: 256, ic14: 512 },
  })
})
