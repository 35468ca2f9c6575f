import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildDesktop } from '../../../scripts/window-build.mjs'
import type { Progress } from '../../../shared-types/bridge'
import type { SheetName } from '../../../shared-types/sheets'
import { listExamples } from '../../../src-main/documents/examples'
import { createPaper } from '../../../src-main/host/paper'
import { makeExport, makePreview } from '../../../src-main/host/paper-work'
import type { Paper } from '../../../src-main/host/ports'
import { readPdf } from '../paper/read-pdf'
import { projectText } from '../documents/session/world'

const date = new Date('2026-03-04T05:06:07Z')
const text = listExamples()[0]?.text ?? ''
const drawing = { of: 'map', format: 'svg', width: 800, ground: null } as const
const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes)

describe('what is made', () => {
  it('a map in PDF, page by page', async () => {
    const told: Progress[] = []
    const made = await makeExport({ kind: 'map', text, paper: 'Letter' }, date, (each) => told.push(each))
    expect(decode(made.bytes.slice(0, 5))).toBe('%PDF-')
    expect(made.pages).toBeGreaterThanOrEqual(3)
    expect(told[0]?.words).toBe('Working out the plan')
    expect(told.at(-1)).toMatchObject({ done: 100, total: 100 })
    const two = await makeExport({ kind: 'map', text, pages: [1, 3] }, date, () => undefined)
    expect(two.pages).toBe(2)
  })

  it('a drawing in SVG and tables in CSV', async () => {
    const make = async (request: Parameters<typeof makeExport>[0]) =>
      decode((await makeExport(request, date, () => undefined)).bytes)
    expect(await make({ kind: 'picture', text, ...drawing })).toMatch(/^<\?xml[^>]*>\n<svg [^>]*viewBox/)
    expect(await make({ kind: 'table', text, table: 'materials' })).toMatch(/^.?yarn,grams/)
    expect(await make({ kind: 'table', text, table: 'order' })).toMatch(/^.?number,row,motif/)
  })

  it('each sheet of a kit, and each of its lists', async () => {
    const garland = listExamples().find(({ name }) => name === 'orchard-gate-garland')!.text
    const pages = async (sheets: readonly SheetName[]) =>
      (await makeExport({ kind: 'map', text: garland, sheets }, date, () => undefined)).pages
    expect(await pages(['card'])).toBe(1)
    expect(await pages(['card', 'map'])).toBe(4)
    const run = { kind: 'map', text: garland, sheets: ['labels'], labels: 'run' } as const
    expect((await makeExport(run, date, () => undefined)).pages).toBeGreaterThan(1)
    for (const table of ['cord', 'kit', 'purchase'] as const) {
      const made = await makeExport({ kind: 'table', text: garland, table }, date, () => undefined)
      expect(decode(made.bytes).split('\r\n').length).toBeGreaterThan(3)
    }
    const items = { kind: 'table', text: garland, table: 'items' } as const
    await expect(makeExport(items, date, () => undefined)).rejects.toThrow('this list is for appliqués')
    expect(makePreview({ text: garland, page: 1, sheets: ['packing'] }, date)).toMatchObject({ pageCount: 1 })
  })

  it('several editions as PDFs in one ZIP, each on its paper and in its terms', async () => {
    const told: Progress[] = []
    const blanket = listExamples().find(({ name }) => name === 'slate-roof-lap-blanket')!.text
    const request = { kind: 'editions', text: blanket, editions: ['us', 'uk', 'letter'] } as const
    const made = await makeExport(request, date, (each) => told.push(each))
    const files = unzipSync(made.bytes)
    expect(Object.keys(files).map((name) => name.replace(/^.*?-(us|uk)-/, '$1-'))).toEqual([
      expect.stringMatching(/^us-(right|left)-letter-(colour|ink)\.pdf$/),
      expect.stringMatching(/^uk-(right|left)-letter-(colour|ink)\.pdf$/),
    ])
    const [us, uk] = await Promise.all(Object.values(files).map((bytes) => readPdf(bytes)))
    expect(us!.pages.length + uk!.pages.length).toBe(made.pages)
    const words = ({ pages }: typeof us & object) => pages.map((page) => page.words).join(' ')
    expect(words(us!)).toContain('Gauge 18 sc')
    expect(words(uk!)).toContain('Tension 18 dc')
    expect(told.map((each) => each.words)).toContain('Writing edition 2 of 2')
    expect(told.at(-1)).toMatchObject({ done: 100, total: 100 })
  })

  it('a template for the right side, and one mirrored for the back', async () => {
    const cushion = listExamples().find(({ name }) => name === 'quince-wreath-cushion')!.text
    const front = makePreview({ text: cushion, page: 1 }, date)
    const back = makePreview({ text: cushion, page: 1, reverse: true }, date)
    expect(back.pageCount).toBe(front.pageCount)
    expect(back.title).toMatch(/from the back/)
    expect(front.title).not.toMatch(/from the back/)
    const made = (reverse: boolean) =>
      makeExport({ kind: 'map', text: cushion, reverse, pages: [2] }, date, () => undefined)
    expect((await made(true)).bytes).not.toEqual((await made(false)).bytes)
  })

  it('nothing from a project that places no motif', async () => {
    const empty = { kind: 'map', text: projectText('Empty') } as const
    await expect(makeExport(empty, date, () => undefined)).rejects.toThrow('there is nothing to draw yet')
  })

  it('pages as pictures; a page beyond the last is the last', () => {
    const first = makePreview({ text, page: 1 }, date)
    expect(first.svg).toContain('<svg')
    const last = makePreview({ text, page: 9_999 }, date)
    expect(last.page).toBe(first.pageCount)
    expect(makePreview({ text, page: 1, style: 'ink' }, date).svg).not.toBe(
      makePreview({ text, page: 1, style: 'colour' }, date).svg,
    )
  })
})

describe('in workers', () => {
  let paper: Paper
  beforeAll(async () => {
    await buildDesktop()
    paper = createPaper(join(fileURLToPath(new URL('../../../out/main', import.meta.url)), 'paper.cjs'))
  })
  afterAll(() => paper.close())

  it('exports and previews come back, with their reasons where they fail', async () => {
    const made = await paper.make({ kind: 'map', text }, () => undefined, new AbortController().signal)
    expect(decode(made.bytes.slice(0, 5))).toBe('%PDF-')
    expect((await paper.preview({ text, page: 2 }, 'one'))?.page).toBe(2)
    const nothing = { kind: 'map', text: projectText('Empty') } as const
    await expect(paper.make(nothing, () => undefined, new AbortController().signal)).rejects.toThrow(
      'nothing to draw',
    )
    await expect(paper.preview({ text: '{', page: 1 }, 'one')).rejects.toThrow('could not be read')
    expect((await paper.preview({ text, page: 1 }, 'one'))?.page).toBe(1)
  })

  it('of pages to look at the last one asked for is made; others, and pages to print, all come', async () => {
    const look = (page: number, asker: string) => paper.preview({ text, page }, asker)
    const print = (page: number) => paper.preview({ text, page, purpose: 'print' }, 'one')
    const asked = [
      look(1, 'one'),
      look(2, 'one'),
      print(1),
      look(3, 'one'),
      print(2),
      look(1, 'two'),
      print(3),
    ]
    const made = await Promise.all(asked)
    // The first is on its way already; the second was overtaken by the fourth.
    expect(made.map((page) => page?.page ?? null)).toEqual([1, null, 1, 3, 2, 1, 3])
  })

  it('an export ends at once when it is cancelled, before or on the way', async () => {
    const control = new AbortController()
    const running = paper.make({ kind: 'map', text }, () => control.abort(), control.signal)
    await expect(running).rejects.toThrow(/abort/i)
    await expect(paper.make({ kind: 'map', text }, () => undefined, control.signal)).rejects.toThrow(/abort/i)
  })
})

it('a preview worker that ends fails all that waits for it, and the next page gets another', async () => {
  const ends = `import { parentPort } from 'node:worker_threads'
    parentPort.on('message', () => process.exit(1))`
  const address = new URL(`data:text/javascript,${encodeURIComponent(ends)}`)
  const paper = createPaper(address as unknown as string)
  const asked = ['one', 'two'].map((asker) => paper.preview({ text, page: 1 }, asker))
  for (const page of asked) await expect(page).rejects.toThrow('ended before it was done')
  await expect(paper.preview({ text, page: 1 }, 'one')).rejects.toThrow('ended before it was done')
  await paper.close()
})

describe('a worker that takes too much', () => {
  /** Stands in for a plan that takes all memory, or for ever. */
  const script = (body: string) => `data:text/javascript,${encodeURIComponent(body)}`
  const greedy = `import { parentPort } from 'node:worker_threads'
    parentPort.on('message', () => { const held = []; for (;;) held.push(new Array(1e5).fill(held.length + 0.5)) })`
  const endless = `import { parentPort } from 'node:worker_threads'
    parentPort.on('message', () => { for (;;); })`

  it.each([
    ['memory', greedy, /more memory/],
    ['time', endless, /more than 1 seconds/],
  ])('of %s is ended and told, and the program lives on', async (_, body, words) => {
    const limits = { memory: 64, silence: body === endless ? 1_000 : 60_000 }
    const paper = createPaper(new URL(script(body)) as unknown as string, limits)
    const never = new AbortController().signal
    await expect(paper.make({ kind: 'picture', text, ...drawing }, () => undefined, never)).rejects.toThrow(
      words,
    )
    await expect(paper.preview({ text, page: 1 }, 'one')).rejects.toThrow(words)
    // The next page is asked of a new worker, which is ended like the first.
    await expect(paper.preview({ text, page: 2 }, 'one')).rejects.toThrow(words)
    await paper.close()
  })
})
