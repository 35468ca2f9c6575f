/** `petalyard photo`: from a picture drawn by a camera of the tests' own to a project that plans. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { bytesOf, keptPicture } from '../../../src-core/photo/kept'
import type { KeptPicture } from '../../../src-core/photo/kept'
import { decodePicture } from '../../../src-main/photo/decode'
import { photograph } from '../../src-core/photo/camera'
import { trial } from '../../src-core/photo/scenes'
import { newFolder, petalyard, petalyardIn, SAMPLE, writeProject } from './sample'

const taken = trial(5, 540)
let folder: string
let png: string
let jpeg: string

beforeAll(async () => {
  folder = await newFolder()
  png = join(folder, 'rose petal.png')
  jpeg = join(folder, 'rose.jpg')
  const { width, height, data } = photograph(taken.scene)
  await writeFile(png, encodePng({ width, height, data: new Uint8Array(data), channels: 4, depth: 8 }))
  await writeFile(jpeg, encodeJpeg({ width, height, data: Buffer.from(data) }, 92).data)
})

/** How far a kept picture is from the one that was drawn, in steps of 256, on average over some places. */
async function shrunkBy(kept: KeptPicture, data: Uint8Array, width: number, height: number): Promise<number> {
  const shown = await decodePicture(bytesOf(kept))
  let sum = 0
  for (let at = 0; at < 400; at++) {
    const [x, y] = [((at % 20) + 0.5) / 20, (Math.floor(at / 20) + 0.5) / 20]
    const from = 4 * (Math.floor(y * shown.height) * shown.width + Math.floor(x * shown.width))
    const to = 4 * (Math.floor(y * height) * width + Math.floor(x * width))
    for (let c = 0; c < 3; c++) sum += Math.abs(shown.data[from + c]! - data[to + c]!) / 1200
  }
  return sum
}

describe('photo', () => {
  it('measures a flower in a JPEG', async () => {
    const { code, out } = await petalyard('photo', jpeg, '--sheet', taken.sheet, '--json')
    const answer = JSON.parse(out) as {
      petals: number
      kind: string
      overTips: number
      outline: [number, number][]
      colours: { share: number }[]
      overValleys: number
      range: { low: number; high: number }
      rangeOverValleys: { low: number; high: number }
      findings: { severity: string }[]
    }
    expect(code).toBe(answer.findings.some(({ severity }) => severity === 'error') ? 1 : 0)
    expect(answer).toMatchObject({ petals: taken.scene.shape.petals, kind: 'petals' })
    expect(Math.abs(answer.overTips / taken.scene.shape.overTips - 1)).toBeLessThan(0.015)
    expect(answer.range.low).toBeLessThan(answer.overTips)
    expect(answer.rangeOverValleys.low).toBeLessThan(answer.overValleys)
    expect(answer.rangeOverValleys.high).toBeGreaterThan(answer.overValleys)
    expect(answer.outline.length).toBeGreaterThan(50)
    expect(answer.colours.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 1)
  })

  it('says it in lines, and writes a project that plans, once', async () => {
    const out = join(folder, 'rose.petalyard')
    const ran = await petalyard('photo', png, '--sheet', taken.sheet, '--out', out)
    expect(ran.out).toMatch(/^Petals: \d+\nTip to tip: .* mm \(.* in\)\nDip to dip: /)
    expect(ran.out).toMatch(/\nDip to dip lies between .* mm \(.* in\) and .* mm \(.* in\)\n/)
    expect(ran.out).toContain(`Wrote ${out}`)
    const written = await readFile(out, 'utf8')
    expect(written).not.toContain('data:image')
    const project = JSON.parse(written) as { motifs: object[] }
    expect(project.motifs).toMatchObject([
      { name: 'rose petal', kind: 'measured', outline: 'traced', petals: taken.scene.shape.petals },
    ])
    expect((await petalyard('plan', out, '--json')).code).toBe(0)
    const again = await petalyard('photo', png, '--sheet', taken.sheet, '--out', out)
    expect(again).toMatchObject({ code: 4, out: '' })
    expect(again.err).toContain('is there already')
  })

  it('keeps a small copy of the picture in the project where that is wished, and only there', async () => {
    // A phone's picture, with what phones write into theirs.
    const [wide, tall] = [1640, 1230]
    const { width, height, data } = photograph(taken.scene)
    const large = new Uint8Array(4 * wide * tall).fill(90)
    for (let y = 0; y < tall; y++)
      for (let x = 0; x < wide; x++) {
        const [u, v] = [Math.floor((x * width) / wide), Math.floor((y * height) / tall)]
        large.set(data.subarray(4 * (v * width + u), 4 * (v * width + u) + 4), 4 * (y * wide + x))
      }
    const bytes = encodeJpeg({ width: wide, height: tall, data: Buffer.from(large) }, 80).data
    const exif = Buffer.from('Exif\0\0MM\0*\0\0\0\x08\0\0 Kitchen GPS')
    const head = Buffer.from([0xff, 0xe1, 0, exif.length + 2])
    const file = join(folder, 'phone.jpg')
    await writeFile(file, Buffer.concat([bytes.subarray(0, 2), head, exif, bytes.subarray(2)]))
    const out = join(folder, 'kept.petalyard')
    const points = ['--points', '100,100,1600,100', '--length', '20cm']
    expect((await petalyard('photo', file, ...points, '--out', out, '--keep', '--force')).err).not.toMatch(
      /kept/,
    )
    const { motifs } = JSON.parse(await readFile(out, 'utf8')) as Project
    const kept = keptPicture(motifs![0]!)!
    expect(kept).toMatchObject({ width: 820, height: 615 })
    expect(motifs![0]!.photo!.sheet).toBe('ruler')
    for (const word of ['Exif', 'Kitchen', 'GPS'])
      expect(Buffer.from(bytesOf(kept)).includes(word)).toBe(false)
    expect(await shrunkBy(kept, data, width, height)).toBeLessThan(12)
    expect((await petalyard('check', out)).out).not.toContain('motif/kept-photo')
    expect(await petalyard('photo', jpeg, '--keep')).toMatchObject({ code: 2, out: '' })
  })

  it('takes the sheet that is usual where people live, or the one whose shape it has, and says so', async () => {
    const told = async (...args: string[]) => {
      const { out } = await petalyardIn(args[0]!, 'photo', jpeg, '--json', ...args.slice(1))
      const { sheet, findings } = JSON.parse(out) as { sheet: string; findings: { code: string }[] }
      return { sheet, other: findings.some(({ code }) => code === 'photo/other-sheet') }
    }
    expect(taken.sheet).toBe('A4')
    expect(await told('de-DE')).toEqual({ sheet: 'A4', other: false })
    expect(await told('en-US')).toEqual({ sheet: 'A4', other: true })
    expect(await told('en-US', '--sheet', 'A4')).toEqual({ sheet: 'A4', other: false })
  })

  it('names the yarns of a project that its colours are like', async () => {
    const first = JSON.parse((await petalyard('photo', jpeg, '--json')).out) as {
      colours: { colour: string; yarn?: string }[]
    }
    expect(first.colours.some((each) => 'yarn' in each)).toBe(false)
    const stash = await writeProject({
      ...SAMPLE,
      yarns: [
        { ...SAMPLE.yarns![0], name: 'Moss', colour: first.colours[0]!.colour },
        { ...SAMPLE.yarns![1], colour: '#ff00ff' },
      ],
    })
    const { out } = await petalyard('photo', jpeg, '--yarns', stash, '--json')
    const { colours } = JSON.parse(out) as { colours: object[] }
    expect(colours[0]).toMatchObject({ yarn: 'y1', difference: 0 })
    expect((await petalyard('photo', jpeg, '--yarns', stash)).out).toMatch(/^Yarn: #\w+ \d+ % like Moss/m)
    expect((await petalyard('photo', jpeg, '--yarns', join(folder, 'none'))).code).toBe(3)
  })

  it('takes the scale from two points on a ruler', async () => {
    const points = ['--points', '100,40,460,40', '--length', '20 cm', '--json']
    const { out } = await petalyard('photo', jpeg, '--sheet', 'ruler', ...points)
    const answer = JSON.parse(out) as { sheet: string; findings: { code: string }[] }
    expect(answer.sheet).toBe('ruler')
    expect(answer.findings.map(({ code }) => code)).toContain('photo/by-ruler')
    const near = await petalyard('photo', jpeg, '--points', '100,40,110,40', '--length', '20 cm')
    expect(near).toMatchObject({ code: 1, out: '' })
    expect(near.err).toContain('less than 50 pixels apart')
    for (const wrong of [
      ['--sheet', 'ruler'],
      ['--points', '1,2,3,4'],
      ['--length', '10cm', '--sheet', 'ruler'],
      ['--sheet', 'A4', '--points', '100,40,460,40', '--length', '20 cm'],
      ['--points', '100,40,620', '--length', '20 cm'],
      ['--points', '100,,620,40', '--length', '20 cm'],
      ['--points', '100,40,460,40', '--length', 'long'],
    ])
      expect(await petalyard('photo', jpeg, ...wrong)).toMatchObject({ code: 2, out: '' })
  })

  it('refuses what is no photo, in one line', async () => {
    const drawing = join(folder, 'd.svg')
    await writeFile(drawing, '<svg/>')
    const ran = await petalyard('photo', drawing)
    expect(ran.err).toBe(`petalyard: ${drawing} is a drawing (SVG), not a photo.\n`)
    expect(ran.code).toBe(3)
    expect((await petalyard('photo', join(folder, 'none.png'))).err).toContain('it does not exist')
  })
})
