import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readPng } from '../paper/read-png'
import { newFolder, petalyard } from './sample'

async function example(name: string): Promise<{ folder: string; file: string }> {
  const folder = await newFolder()
  const file = join(folder, 'mine.petalyard')
  await petalyard('example', name, '--out', file)
  return { folder, file }
}

describe('picture', () => {
  it('writes a PNG so many pixels wide, on white or on nothing', async () => {
    const { folder, file } = await example('limekiln-cushion')
    const out = join(folder, 'p.png')
    const ran = await petalyard('picture', file, '--out', out, '--width', '320')
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^Wrote .*p\.png: 320 × \d+ pixels, \d+(\.\d+)? kB\n$/)
    const white = readPng(new Uint8Array(await readFile(out)))
    expect([white.width, white.at(0, 0)]).toEqual([320, { colour: '#ffffff', alpha: 255 }])
    await petalyard('picture', file, '--out', out, '--transparent')
    const clear = readPng(new Uint8Array(await readFile(out)))
    expect([clear.width, clear.at(0, 0).alpha]).toEqual([2000, 0])
    await petalyard('picture', file, '--out', out, '--width', '64', '--ground', '#AB12cd')
    expect(readPng(new Uint8Array(await readFile(out))).at(1, 1).colour).toBe('#ab12cd')
  })

  it('writes an SVG of a motif and of its chart', async () => {
    const { folder, file } = await example('orchard-wall-throw')
    const out = join(folder, 'p.SVG')
    expect(await petalyard('picture', file, '--motif', 'layered', '--out', out)).toMatchObject({ code: 0 })
    expect(await readFile(out, 'utf8')).toContain('<title>Layered six-petal flower</title>')
    expect(await petalyard('picture', file, '--of', 'chart', '--motif', 'leaf', '--out', out)).toMatchObject({
      code: 0,
    })
    expect(await readFile(out, 'utf8')).toContain('<title>Leaf: symbol chart</title>')
  })

  it.each([
    [['--out', 'p.jpg'], /must end in \.png or \.svg/],
    [['--out', 'p.png', '--width', '12'], /pixels from 16 to 12000/],
    [['--out', 'p.png', '--width', '1e3'], /pixels from 16 to 12000/],
    [['--out', 'p.png', '--ground', 'white'], /#f4efe6/],
    [['--out', 'p.png', '--ground', '#ffffff', '--transparent'], /leave --ground out/],
    [['--out', 'p.png', '--of', 'motif', '--motif', 'rose'], /no motif rose is placed/],
    [['--out', 'p.png', '--of', 'photo'], /Allowed choices/],
  ])('refuses %j', async (args, words) => {
    const { folder, file } = await example('limekiln-cushion')
    const ran = await petalyard(
      'picture',
      file,
      ...args.map((arg) => (arg.startsWith('p.') ? join(folder, arg) : arg)),
    )
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toMatch(words)
  })

  it('never writes over the project, and says when it cannot write', async () => {
    const { folder, file } = await example('limekiln-cushion')
    expect((await petalyard('picture', file, '--out', join(folder, 'no', 'p.png'))).code).toBe(4)
    expect((await petalyard('picture', join(folder, 'none'), '--out', join(folder, 'p.png'))).code).toBe(3)
  })
})
