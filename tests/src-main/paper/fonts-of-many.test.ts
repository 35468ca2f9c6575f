/** Fonts that say more characters than there are: a list of these would take all memory, and the program with it. */
import { readdirSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ChosenFont } from '../../../src-main/paper/pdf/fonts/chosen'
import { demandCountable } from '../../../src-main/paper/pdf/fonts/characters'
import { newFolder, petalyard, SAMPLE, writeProject } from '../command/sample'
import { collection, FONT_NAMES, fontBytes, replaced } from './fonts'

const uint16 = (...values: readonly number[]) =>
  Buffer.concat(values.map((value) => Buffer.from([value >> 8, value & 255])))
const uint32 = (...values: readonly number[]) =>
  Buffer.concat(values.map((value) => uint16(Math.floor(value / 65_536), value % 65_536)))

/** A table `cmap` (OpenType) with one subtable. */
const cmap = (subtable: Buffer) => Buffer.concat([uint16(0, 1, 3, 10), uint32(12), subtable])
type Group = readonly [first: number, last: number, glyph: number]
const groups = (format: number, list: readonly Group[]) =>
  cmap(
    Buffer.concat([uint16(format, 0), uint32(16 + 12 * list.length, 0, list.length), uint32(...list.flat())]),
  )
const segments = (list: readonly Group[]) => {
  const half = (of: (group: Group) => number) => uint16(...list.map(of))
  const more = [half(([, last]) => last), uint16(0), half(([first]) => first), half(() => 1), half(() => 0)]
  return cmap(Buffer.concat([uint16(4, 0, 0, 2 * list.length, 0, 0, 0), ...more]))
}

const TABLES: Readonly<Record<string, Buffer>> = {
  'one group to the last number that there is, format 12': groups(12, [[0, 0xffffffff, 1]]),
  'one group to the last number that there is, format 13': groups(13, [[0, 0xffffffff, 1]]),
  'a group that runs backwards': groups(12, [[0xffffffff, 0x5d0, 1]]),
  'every character twice': groups(13, [
    [0, 0x10ffff, 1],
    [0, 0x10ffff, 2],
  ]),
  'small groups that overlap': groups(
    12,
    Array.from({ length: 2000 }, (): Group => [0x500, 0x8ff, 1]),
  ),
  'segments that overlap, format 4': segments(Array.from({ length: 30 }, (): Group => [0, 0xfffe, 1])),
  'a list of as many as there are numbers, format 10': cmap(
    Buffer.concat([uint16(10, 0), uint32(20, 0, 0x5d0, 0xffffffff)]),
  ),
  'more groups than its file has room for': cmap(Buffer.concat([uint16(12, 0), uint32(16, 0, 0xffffffff)])),
}

describe('a font that says more characters than there are', () => {
  it.each(Object.keys(TABLES))('is damaged before anything lists them: %s', (name) => {
    const font = replaced(fontBytes('hebrew'), 'cmap', TABLES[name]!)
    expect(() => demandCountable(font, 0)).toThrow()
    expect(() => demandCountable(collection([fontBytes('thai'), font]), 1)).toThrow()
    expect(() => demandCountable(collection([fontBytes('thai'), font]), 0)).not.toThrow()
    expect(() => ChosenFont.read(font)).toThrow(/^it is damaged$/)
    expect(() => ChosenFont.read(collection([fontBytes('thai'), font]), 2)).toThrow(/^it is damaged$/)
  })

  it('ends a command with 3, and nothing is written', async () => {
    const folder = await newFolder()
    const font = join(folder, 'many.ttf')
    await writeFile(font, replaced(fontBytes('hebrew'), 'cmap', groups(12, [[0, 0xffffffff, 1]])))
    const out = join(folder, 'map.pdf')
    expect(await petalyard('map', await writeProject(SAMPLE), '--font', font, '--out', out)).toEqual({
      ...{ code: 3, out: '' },
      err: 'petalyard: many.ttf cannot be used: it is damaged.\n',
    })
    expect(readdirSync(folder)).toEqual(['many.ttf'])
  })
})

describe('a font that says each character once', () => {
  it.each(FONT_NAMES)('is read: %s', (name) => {
    expect(() => demandCountable(fontBytes(name), 0)).not.toThrow()
  })

  it('may say all that there are', () => {
    const all = groups(
      13,
      Array.from({ length: 17 }, (_, plane): Group => [plane * 0x10000, plane * 0x10000 + 0xffff, 1]),
    )
    expect(() => demandCountable(replaced(fontBytes('hebrew'), 'cmap', all), 0)).not.toThrow()
  })
})
