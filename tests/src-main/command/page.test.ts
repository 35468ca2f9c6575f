import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { newFolder, petalyard } from './sample'

describe('page', () => {
  it('writes one file and says how large it is', async () => {
    const folder = await newFolder()
    const file = join(folder, 'mine.petalyard')
    await petalyard('example', 'market-stall-throw', '--out', file)
    const out = join(folder, 'map.html')
    const ran = await petalyard('page', file, '--out', out)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^Wrote .*map\.html: 238 motifs, \d+ kB\n$/)
    expect(await readFile(out, 'utf8')).toContain('<title>Market stall throw</title>')
  })

  it('never writes over the project, and writes nothing where nothing is laid out', async () => {
    const folder = await newFolder()
    const file = join(folder, 'mine.petalyard')
    await petalyard('example', 'market-stall-throw', '--out', file)
    const before = await readFile(file, 'utf8')
    expect(await petalyard('page', file, '--out', file)).toMatchObject({ code: 2 })
    expect(await readFile(file, 'utf8')).toBe(before)
    expect(await petalyard('page', file)).toMatchObject({ code: 2 })
    expect(
      await petalyard('page', join(folder, 'none.petalyard'), '--out', join(folder, 'x.html')),
    ).toMatchObject({
      code: 3,
    })
  })
})
