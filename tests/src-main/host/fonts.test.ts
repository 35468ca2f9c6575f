/** Fonts for other scripts in the host: kept as copies, refused with a reason, removed again, printed with. */
import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Settings } from '../../../shared-types/bridge'
import type { FontPlace } from '../../../shared-types/fonts'
import { FONT_LIMITS } from '../../../shared-types/fonts'
import { answer } from '../../../src-main/host/operations'
import { makeExport, makePreview } from '../../../src-main/host/paper-work'
import { readFont } from '../../../src-main/host/paper-fonts'
import { collection, fontBytes } from '../paper/fonts'
import { readPdf } from '../paper/read-pdf'
import { DATE, flowers } from '../paper/projects'
import type { HostWorld } from './host-world'
import { makeHost, TestCaller } from './host-world'

let world: HostWorld
let caller: TestCaller
beforeEach(async () => {
  world = await makeHost()
  caller = new TestCaller(world.host.openBlank())
})
afterEach(() => world.end())

const ask = (name: string, payload: unknown) => answer(world.host, caller, name, payload)
const add = (text: string, face: number | null = null) =>
  ask('addFont', { name: `${text}.ttf`, data: Buffer.from(text).toString('base64'), face })
const kept = () => world.host.settings.current.fonts
const copies = () => readdir(world.host.own.at('fonts')).catch(() => [])

describe('a font that is chosen', () => {
  it('is kept as a copy and in the settings, once, and removed again with its copy', async () => {
    const added = await add('Hebrew')
    expect(added).toMatchObject({ outcome: 'done', value: { settings: { fonts: [{ name: 'Hebrew' }] } } })
    await add('Hebrew')
    expect(kept()).toMatchObject([{ name: 'Hebrew', face: 1, scripts: ['Hebrew'], covers: '590-5f4' }])
    const [place] = world.host.fonts.places
    expect(await readFile(place!.path, 'utf8')).toBe('Hebrew')
    const stored = JSON.parse(await readFile(join(world.host.own.path, 'settings.json'), 'utf8')) as Settings
    expect(stored.fonts).toEqual(kept())
    const removed = await ask('removeFont', { id: kept()[0]!.id })
    expect(removed).toMatchObject({ outcome: 'done', value: { fonts: [] } })
    expect(await copies()).toEqual([])
    expect(await ask('removeFont', { id: 'none' })).toMatchObject({ outcome: 'done', value: { fonts: [] } })
  })

  it('is one of a collection, which is asked for', async () => {
    expect(await add('two')).toEqual({ outcome: 'done', value: { choose: ['One', 'Two'] } })
    expect(kept()).toEqual([])
    await add('two', 2)
    expect(kept()).toMatchObject([{ name: 'two', face: 2 }])
  })

  it('is refused with the reason, and nothing is kept of it', async () => {
    const refused = await add('bad')
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/font-refused' } })
    expect(JSON.stringify(refused)).toContain('this font cannot be used: it is damaged.')
    expect([kept(), await copies()]).toEqual([[], []])
  })

  it('is one of four at most, and of no settings that a window sends', async () => {
    for (let i = 0; i < FONT_LIMITS.count; i++) await add(`Font ${i}`)
    const fifth = await add('Fifth')
    expect(JSON.stringify(fifth)).toContain('there are 4 fonts already; remove one first')
    expect(kept()).toHaveLength(4)
    const sent = await ask('changeSettings', { fonts: [] })
    expect(sent).toMatchObject({ outcome: 'refused', problem: { code: 'app/bad-message' } })
    expect(await ask('addFont', { name: 'x', data: 'no base 64!', face: null })).toMatchObject({
      outcome: 'refused',
      problem: { code: 'app/bad-message' },
    })
  })
})

describe('paper of the window', () => {
  const text = JSON.stringify({ ...flowers({ columns: 3, rows: 2 }), title: 'שמיכה 12' })
  const place = async (bytes: Buffer): Promise<FontPlace> => {
    const path = join(world.folder, 'hebrew.font')
    await writeFile(path, bytes)
    return { name: 'Noto Sans Hebrew', path, face: 2 }
  }

  it('is set in the fonts, on the page that is shown and in the file', async () => {
    const fonts = [await place(collection([fontBytes('thai'), fontBytes('hebrew')]))]
    const made = await makeExport({ kind: 'map', text, fonts }, DATE, () => undefined)
    const { pages } = await readPdf(made.bytes)
    expect(pages.map(({ words }) => words).join(' ')).toContain('שמיכה')
    const shown = makePreview({ text, page: 1, fonts }, DATE).svg
    expect(shown).not.toBe(makePreview({ text, page: 1 }, DATE).svg)
    expect(shown).not.toMatch(/[\u2066-\u2069]/)
  })

  it('says which font is to be chosen again where its copy is gone', async () => {
    const fonts = [{ ...(await place(fontBytes('hebrew'))), path: join(world.folder, 'none.font') }]
    expect(() => makePreview({ text, page: 1, fonts }, DATE)).toThrow(
      'the font Noto Sans Hebrew cannot be read any more: remove it in the settings and choose it again',
    )
  })

  it('reads what a font is', () => {
    expect(readFont(fontBytes('hebrew'), null)).toMatchObject({ name: 'Noto Sans Hebrew Regular', face: 1 })
    expect(readFont(collection([fontBytes('thai'), fontBytes('hebrew')]), null)).toEqual({
      choose: ['Noto Sans Thai Regular', 'Noto Sans Hebrew Regular'],
    })
    expect(() => readFont(Buffer.from('no font'), null)).toThrow('it is not a font')
  })
})
