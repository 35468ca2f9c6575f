/** `petalyard photo` on pictures that are spoilt: each is measured or refused in one line, and nothing falls over. */
import { rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { spoiltPicture } from '../../fuzz/pictures'
import { photograph } from '../../src-core/photo/camera'
import { trial } from '../../src-core/photo/scenes'
import { webpOf } from '../photo/encode-webp'
import { runs } from '../../runs'
import { newFolder, petalyard } from './sample'

const taken = trial(5, 120)
const { width, height, data } = photograph(taken.scene)
const whole: Record<'png' | 'jpeg' | 'webp', Uint8Array> = {
  png: encodePng({ width, height, data, channels: 4, depth: 8 }),
  jpeg: new Uint8Array(encodeJpeg({ width, height, data: Buffer.from(data) }, 80).data),
  webp: new Uint8Array(),
}
type Kind = keyof typeof whole
const KINDS = Object.keys(whole) as Kind[]
/** Pictures of each kind. */
const SPOILT = runs(60)
let folder: string

beforeAll(async () => {
  whole.webp = await webpOf(width, height, data)
  folder = await newFolder()
})
afterAll(() => rm(folder, { recursive: true, force: true }))

async function run(bytes: Uint8Array) {
  const file = join(folder, 'spoilt')
  await writeFile(file, bytes)
  return petalyard('photo', file, '--sheet', taken.sheet, '--json')
}

describe('photo on spoilt pictures', () => {
  it('reads the whole ones', async () => {
    for (const kind of KINDS) expect((await run(whole[kind])).err, kind).toBe('')
  })

  it.each(KINDS)('%s: measures or refuses each in one line', async (kind) => {
    const foreign = whole[KINDS[(KINDS.indexOf(kind) + 1) % KINDS.length]!]
    let refused = 0
    for (let seed = 0; seed < SPOILT; seed++) {
      const ran = await run(spoiltPicture(whole[kind], foreign, seed))
      if (ran.code === 3) {
        refused++
        expect(ran, `seed ${seed}`).toMatchObject({
          out: '',
          err: expect.stringMatching(/^[^\n]{10,300}\n$/),
        })
      } else {
        expect([0, 1], `seed ${seed}`).toContain(ran.code)
        expect(() => JSON.parse(ran.out) as unknown, `seed ${seed}`).not.toThrow()
      }
    }
    // Else nothing was spoilt.
    expect(refused).toBeGreaterThan(SPOILT / 4)
  })
})
