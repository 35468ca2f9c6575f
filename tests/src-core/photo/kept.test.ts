/** The photo that a project keeps with a motif: what is taken for one, and what is not. */
import { encode } from 'jpeg-js'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { PHOTO_CHARACTERS } from '../../../shared-types/project'
import { bytesOf, KEPT_PIXELS, keptPicture, photoOf } from '../../../src-core/photo/kept'
import { planProject } from '../../../src-core/plan'

const jpegOf = (width: number, height: number): Buffer =>
  encode({ width, height, data: new Uint8Array(4 * width * height).fill(128) }, 50).data
const address = (bytes: Uint8Array, kind = 'image/jpeg') =>
  `data:${kind};base64,${Buffer.from(bytes).toString('base64')}`
const small = jpegOf(40, 30)
const shown = (picture: string | undefined) => keptPicture({ photo: { picture } })

/** The same JPEG with something of its camera behind its first two bytes (APP1, as Exif 2.32 has it in 4.5.4). */
const withExif = (jpeg: Buffer): Buffer => {
  const exif = Buffer.concat([Buffer.from('Exif\0\0II*\0'), Buffer.alloc(40)])
  const head = Buffer.from([0xff, 0xe1, 0, exif.length + 2])
  return Buffer.concat([jpeg.subarray(0, 2), head, exif, jpeg.subarray(2)])
}

describe('a photo that is kept with a motif', () => {
  it('is a small JPEG as text, and comes back as the same bytes', () => {
    const photo = photoOf(small, 'A4')
    expect(photo).toMatchObject({ sheet: 'A4', picture: address(small) })
    const kept = keptPicture({ photo: photo! })
    expect(kept).toMatchObject({ width: 40, height: 30, address: photo!.picture })
    expect(Buffer.from(bytesOf(kept!)).equals(small)).toBe(true)
  })

  it('is made with no more letters than the file takes', () => {
    const most = Math.floor((PHOTO_CHARACTERS - 'data:image/jpeg;base64,'.length) / 4) * 3
    expect(photoOf(new Uint8Array(most), 'A4')?.picture?.length).toBeLessThanOrEqual(PHOTO_CHARACTERS)
    expect(photoOf(new Uint8Array(most + 1), 'A4')).toBeNull()
  })

  it('is nothing else: no other kind, no address elsewhere, none that is huge, cut off or tells of its camera', () => {
    const huge = Buffer.from(small)
    const frame = huge.indexOf(Buffer.from([0xff, 0xc0]))
    huge.writeUInt16BE(65_000, frame + 5)
    for (const picture of [
      undefined,
      '',
      'https://example.org/rose.jpg',
      address(small, 'image/svg+xml'),
      address(Buffer.from('<svg/>')),
      `${address(small)}!`,
      address(small.subarray(0, 300)),
      address(huge),
      address(jpegOf(KEPT_PIXELS[0] + 1, 1)),
      address(withExif(small)),
      address(small).padEnd(PHOTO_CHARACTERS + 1, 'A'),
    ])
      expect(shown(picture), picture?.slice(0, 60)).toBeNull()
    expect(shown(address(jpegOf(KEPT_PIXELS[0], 1)))).not.toBeNull()
  })

  it('is said not to be shown where it is none; nothing else of the plan follows from it', () => {
    const motif = { id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 80 } as const
    const project = (picture?: string): Project => ({
      ...{ format: 'petalyard-project', version: 1 },
      motifs: [{ ...motif, ...(picture !== undefined && { photo: { picture } }) }],
      layout: { kind: 'blanket', motif: 'm', rows: 2, columns: 2 },
    })
    const findings = (picture?: string) => planProject(project(picture)).findings
    expect(findings(address(small))).toEqual(findings())
    expect(
      findings('nothing').filter((each) => !findings().some(({ code }) => code === each.code)),
    ).toMatchObject([{ code: 'motif/kept-photo', severity: 'warning', where: 'motifs[0].photo.picture' }])
  })
})
