/** `petalyard photo`: from a picture drawn by a camera of the tests' own to a project that plans. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { beforeAll, describe, expect, it } from 'vitest'
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
    const project = JSON.parse(await readFile(out, 'utf8')) as { motifs: object[] }
    expect(project.motifs).toMatchObject([
      { name: 'rose petal', kind: 'measured', outline: 'traced', petals: taken.scene.shape.petals },
    ])
    expect((await petalyard('plan', out, '--json')).code).toBe(0)
    const again = await petalyard('photo', png, '--sheet', taken.sheet, '--out', out)
    expect(again).toMatchObject({ code: 4, out: '' })
    expect(again.err).toContain('is there already')
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
