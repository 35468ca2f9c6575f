/** Fonts for other scripts on the command line: what they cover is printed as written, bad ones are refused in a line. */
import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { collection, fontBytes, fontFile, licensed } from '../paper/fonts'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard, SAMPLE } from './sample'

let folder = ''
let file = ''
beforeAll(async () => {
  folder = await newFolder()
  file = await inFolder('hebrew.petalyard', JSON.stringify({ ...SAMPLE, title: 'שמיכה 12', notes: 'ผ้าห่ม' }))
})

async function inFolder(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name)
  await writeFile(path, content)
  return path
}

const words = async (pdf: string): Promise<string> =>
  (await readPdf(new Uint8Array(await readFile(pdf)))).pages.map((page) => page.words).join(' ')

describe('map --font', () => {
  it('prints what the fonts cover as it is written, and lists only what none does', async () => {
    const out = join(folder, 'hebrew.pdf')
    const ran = await petalyard('map', file, '--out', out, '--font', fontFile('hebrew'))
    expect(ran.code).toBe(0)
    expect(ran.err).not.toContain('Hebrew')
    expect(ran.err).toMatch(/letters\/missing[^\n]*notes[^\n]*Thai/)
    expect(await words(out)).toContain('שמיכה')
    const both = ['--font', fontFile('hebrew'), '--font', fontFile('thai')]
    expect(await petalyard('map', file, '--out', out, ...both)).toMatchObject({ code: 0, err: '' })
    expect(await words(out)).toContain('ผ้าห่ม')
  })

  it('takes them from a house style, whose files stand beside it, and of a collection the one that is told', async () => {
    await inFolder('both.ttc', collection([fontBytes('thai'), fontBytes('hebrew')]))
    const house = await inFolder('house.json', JSON.stringify({ fonts: ['both.ttc#2', 'both.ttc#1'] }))
    const out = join(folder, 'house.pdf')
    expect(await petalyard('map', file, '--out', out, '--house', house)).toMatchObject({ code: 0, err: '' })
    expect(await words(out)).toContain('שמיכה')
  })

  it('draws them in pictures, and in every edition', async () => {
    const svg = join(folder, 'hebrew.svg')
    const of = ['--of', 'key', '--font', fontFile('hebrew')]
    expect(await petalyard('picture', file, '--out', svg, ...of)).toMatchObject({ code: 0, err: '' })
    const editions = join(folder, 'editions')
    const ran = await petalyard(
      ...['map', file, '--out', editions, '--editions', 'us,uk', '--font', fontFile('hebrew')],
    )
    expect(ran.code).toBe(0)
    const files = await readdir(editions)
    expect(files).toHaveLength(2)
    for (const name of files) expect(await words(join(editions, name))).toContain('שמיכה')
  })

  it.each([
    ['what is no font', () => '{}', /^petalyard: bad\.ttf cannot be used: it is not a font\.\n$/],
    [
      'one that may not be embedded',
      () => licensed(fontBytes('hebrew'), 2),
      /^petalyard: bad\.ttf cannot be used: its makers do not allow it in a PDF\.\n$/,
    ],
    [
      'a damaged one',
      () => fontBytes('hebrew').subarray(0, 9000),
      /bad\.ttf cannot be used: it is damaged\.\n$/,
    ],
    [
      'a collection without a number',
      () => collection([fontBytes('thai'), fontBytes('hebrew')]),
      /it holds 2 fonts, one has to be chosen: 1 Noto Sans Thai Regular, 2 Noto Sans Hebrew Regular\.\n$/,
    ],
  ])('refuses %s in one line, and writes nothing', async (_, content, why) => {
    const font = await inFolder('bad.ttf', content())
    const out = join(folder, 'none.pdf')
    const ran = await petalyard('map', file, '--out', out, '--font', font)
    expect(ran).toMatchObject({ code: 3, out: '' })
    expect(ran.err).toMatch(why)
    await expect(readFile(out)).rejects.toThrow('ENOENT')
  })

  it('refuses more than four, one that is not there, and a list that is none', async () => {
    const out = join(folder, 'none.pdf')
    const five = Array.from({ length: 5 }, () => ['--font', fontFile('hebrew')]).flat()
    expect(await petalyard('map', file, '--out', out, ...five)).toMatchObject({ code: 2 })
    const missing = await petalyard('map', file, '--out', out, '--font', join(folder, 'none.ttf'))
    expect(missing).toMatchObject({ code: 3 })
    expect(missing.err).toMatch(/none\.ttf could not be read: it does not exist/)
    const house = await inFolder('bad.json', '{"fonts": "hebrew.ttf"}')
    const ran = await petalyard('map', file, '--out', out, '--house', house)
    expect([ran.code, ran.err]).toEqual([3, expect.stringMatching(/"fonts" is a list of font files/)])
  })
})
