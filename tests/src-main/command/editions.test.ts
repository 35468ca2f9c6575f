import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { settled } from '../../../src-core/settled'
import { EDITION_NAMES, editionsOf } from '../../../src-core/editions'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard } from './sample'

const own = settled({
  ...{ format: 'petalyard-project', version: 1 },
  ...{ hand: 'left', sheet: { paper: 'Letter', style: 'ink', terms: 'UK' } },
})
const namesOf = (names: readonly string[]) => editionsOf(names, own).map(({ name }) => name)

async function example() {
  const folder = await newFolder()
  const file = join(folder, 'cloth.petalyard')
  await petalyard('example', 'slate-roof-lap-blanket', '--out', file)
  return { folder, file }
}

describe('editions', () => {
  it('are crossed, and what no name says is as in the project', () => {
    expect(namesOf(['us', 'uk'])).toEqual(['us-left-letter-ink', 'uk-left-letter-ink'])
    expect(namesOf(['a4', 'colour', 'ink'])).toEqual(['uk-left-a4-colour', 'uk-left-a4-ink'])
    const all = editionsOf(EDITION_NAMES, own)
    expect(all).toHaveLength(16)
    expect(new Set(all.map(({ name }) => name)).size).toBe(16)
    expect(all[0]).toEqual({
      name: 'us-right-a4-colour',
      terms: 'US',
      hand: 'right',
      paper: 'A4',
      style: 'colour',
    })
  })

  it('are each a PDF on its paper, in its terms and for its hand, in a folder that is made', async () => {
    const { folder, file } = await example()
    const out = join(folder, 'to', 'print')
    const ran = await petalyard('map', file, '--editions', 'us,UK,a4,Letter,ink,right,left', '--out', out)
    expect(ran).toMatchObject({ code: 0, err: '' })
    const files = (await readdir(out)).sort()
    expect(files).toHaveLength(8)
    expect(files[0]).toBe('cloth-uk-left-a4-ink.pdf')
    const read = async (name: string) =>
      readPdf(new Uint8Array(await readFile(join(out, `cloth-${name}-ink.pdf`))))
    const [a4, letter] = [await read('us-right-a4'), await read('us-right-letter')]
    // Upright or lying, whichever shows the map larger.
    const sides = ({ width, height }: { width: number; height: number }) =>
      [width, height].sort((a, b) => a - b)
    for (const page of a4.pages) {
      expect(sides(page)[0]).toBeCloseTo(210, 0)
      expect(sides(page)[1]).toBeCloseTo(297, 0)
    }
    for (const page of letter.pages) {
      expect(sides(page)[0]).toBeCloseTo(215.9, 0)
      expect(sides(page)[1]).toBeCloseTo(279.4, 0)
    }
    const words = async (name: string) => (await read(name)).pages.map((page) => page.words).join(' ')
    const [us, uk, left] = [await words('us-right-a4'), await words('uk-right-a4'), await words('us-left-a4')]
    expect(us).toContain('Gauge')
    expect(uk).toContain('Tension')
    expect(left).not.toBe(us)
  })

  it('replace what was made here, and nothing else unless told to', async () => {
    const { folder, file } = await example()
    const out = join(folder, 'maps')
    const map = (...more: string[]) =>
      petalyard('map', file, '--editions', 'us,uk,a4,ink,right', '--out', out, ...more)
    expect(await map()).toMatchObject({ code: 0, err: '' })
    expect(await map()).toMatchObject({ code: 0, err: '' })
    const [uk, us] = (await readdir(out)).sort().map((name) => join(out, name)) as [string, string]
    await writeFile(us, 'mine')
    await writeFile(uk, 'old')
    const refused = await map()
    expect(refused).toMatchObject({ code: 4, out: '' })
    expect(refused.err).toContain('not made by Petalyard')
    expect(refused.err).toContain('cloth-us-right-a4-ink.pdf and 1 more')
    expect(await readFile(us, 'utf8')).toBe('mine')
    expect(await readFile(uk, 'utf8')).toBe('old')
    expect(await map('--force')).toMatchObject({ code: 0, err: '' })
    expect((await readFile(us)).subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('refuse what they say themselves, names that are none, and a folder that cannot be made', async () => {
    const { folder, file } = await example()
    const out = join(folder, 'maps')
    expect(await petalyard('map', file, '--editions', 'us', '--paper', 'A4', '--out', out)).toMatchObject({
      code: 2,
    })
    const unknown = await petalyard('map', file, '--editions', 'us,a5', '--out', out)
    expect(unknown).toMatchObject({ code: 2 })
    expect(unknown.err).toContain("'a5' is none of them")
    // A name that every object has.
    const inherited = await petalyard('map', file, '--editions', 'constructor', '--out', out)
    expect(inherited.err).toContain("'constructor' is none of them")
    await writeFile(out, 'mine')
    expect(await petalyard('map', file, '--editions', 'us', '--out', out)).toMatchObject({ code: 4 })
    expect(await readFile(out, 'utf8')).toBe('mine')
    await mkdir(join(folder, 'there'))
    expect(await petalyard('map', file, '--editions', 'color', '--out', join(folder, 'there'))).toMatchObject(
      { code: 0 },
    )
  })
})
