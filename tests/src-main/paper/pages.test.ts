/**
 * Every page of every example, on both papers, in both styles and in both terms: nothing is cut off, nothing stands on anything else,
 * ink is black and grey, and what a hand needs is there. One render of each serves all of it.
 */
import { decodePDFRawStream, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Paper, SheetStyle, Terms } from '../../../shared-types/project'
import type { SheetName } from '../../../shared-types/sheets'
import { foundationWords } from '../../../src-core/motif/rounds/foundation-words'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { createPlanner } from '../../../src-core/plan'
import { renderMap } from '../../../src-main/paper/index'
import { columnTroubles } from './checker/columns'
import { readSheets } from './checker/read-sheets'
import type { PaintedSheet } from './checker/read-sheets'
import { beyondMargin, emptyPages, sparsePages, troublesOf } from './checker/troubles'
import { example, EXAMPLES, planOf } from './examples'
import { DATE, flowers, VERSION } from './projects'
import { readTables } from './read-tables'

const PAPERS: readonly Paper[] = ['A4', 'Letter']
const STYLES: readonly SheetStyle[] = ['ink', 'colour']
const EVERY_SHEET: readonly SheetName[] = ['title', 'map', 'card', 'packing', 'labels']

async function printed(plan: Plan, paper: Paper, style: SheetStyle, terms?: Terms) {
  const sheets: readonly SheetName[] = plan.kit ? EVERY_SHEET : ['title', 'map']
  const bytes = await renderMap(plan, { paper, style, terms, sheets, date: DATE, version: VERSION })
  return { bytes, pages: await readSheets(bytes) }
}

const wordsOf = (pages: readonly PaintedSheet[]): string => pages.map(({ words }) => words).join(' ')

/** Words as they are found whatever line they were broken at. */
const squeezed = (text: string): string => text.replace(/\s+/g, '')

/** Operators that set a colour which is not grey (§pdf, table 74), in pages and in forms alike. */
async function colourOperators(bytes: Uint8Array): Promise<string[]> {
  const file = await PDFDocument.load(bytes, { updateMetadata: false })
  const found: string[] = []
  for (const [, object] of file.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream)) continue
    const type = object.dict.get(PDFName.of('Type'))?.toString()
    const isForm = object.dict.get(PDFName.of('Subtype'))?.toString() === '/Form'
    if (type === '/ObjStm' || type === '/XRef' || (!isForm && object.dict.has(PDFName.of('Length1'))))
      continue
    const text = Buffer.from(decodePDFRawStream(object).decode()).toString('latin1')
    if (!isForm && !/\b(?:BT|re|cm|Do)\b/.test(text)) continue
    found.push(...(text.match(/(?<=^|\s)(?:rg|RG|k|K|cs|CS|sc|SC|scn|SCN)(?=\s|$)/gm) ?? []))
  }
  return found
}

/** A part as a sheet names it: the program's own name spelled for its readers, no only part of a motif beside its yarn. */
function partOn(terms: Terms, slot: string, all: object | undefined): string {
  if (/^(motif|all)$/i.test(slot) && Object.keys(all ?? {}).length === 1) return ''
  return /^cent(er|re)$/.test(slot) ? { US: 'center', UK: 'centre' }[terms] : slot
}

describe.each(EXAMPLES)('$name on paper', ({ project }) => {
  const plan = planOf(project)
  const prints: {
    paper: Paper
    style: SheetStyle
    terms: Terms
    bytes: Uint8Array
    pages: PaintedSheet[]
  }[] = []

  beforeAll(async () => {
    for (const paper of PAPERS)
      for (const style of STYLES) {
        // Both papers, both styles and both terms, each with each of the others once.
        const terms = (paper === 'A4') === (style === 'ink') ? 'UK' : 'US'
        prints.push({ paper, style, terms, ...(await printed(plan, paper, style, terms)) })
      }
  })
  afterAll(() => void prints.splice(0))

  it('has nothing within 12 mm of an edge', () => {
    for (const { paper, style, pages } of prints)
      pages.forEach((page, i) =>
        expect(beyondMargin(page).map((trouble) => `${paper} ${style} ${i + 1}: ${trouble}`)).toEqual([]),
      )
  })

  it('cuts nothing off, puts no text on text or on a line, and keeps ink black and grey', async () => {
    for (const { paper, style, bytes, pages } of prints) {
      const troubles = pages.flatMap((page, i) =>
        troublesOf(page, { ink: style === 'ink' }).map((trouble) => `${paper} ${style} ${i + 1}: ${trouble}`),
      )
      expect(troubles).toEqual([])
      if (style === 'ink') expect(await colourOperators(bytes)).toEqual([])
    }
  })

  it('has a head on every column of its tables, and one unit in each', async () => {
    for (const { paper, terms, bytes } of prints) {
      const troubles = (await readTables(bytes)).flatMap(columnTroubles)
      expect(troubles.map((trouble) => `${paper} ${terms}: ${trouble}`)).toEqual([])
    }
  })

  it('leaves no page part-empty but the last of a part', () => {
    for (const { paper, style, pages } of prints)
      expect(emptyPages(pages).map((trouble) => `${paper} ${style}: ${trouble}`)).toEqual([])
  })

  it('leaves no page nearly empty but the last of all', () => {
    for (const { paper, style, pages } of prints)
      expect(sparsePages(pages).map((trouble) => `${paper} ${style}: ${trouble}`)).toEqual([])
  })

  it('names the rows of a page of the order of work that are on it, and no way without its boxes', () => {
    for (const { pages } of prints) {
      for (const { words, painted, height } of pages.filter((page) =>
        page.words.includes('Order of work, row'),
      )) {
        const rows = [...words.matchAll(/(?:☐ [\d,]+ · r|R)ow (\d+)/g)].map(([, row]) => Number(row))
        const [, from, to = from] = /Order of work, rows? (\d+)(?:–(\d+))?/.exec(words)!
        // What is worked at the end of a row may begin a page.
        expect(Math.min(...rows) - Number(from)).toBeLessThanOrEqual(1)
        expect(Math.max(...rows)).toBe(Number(to))
        // The name of a way stands before boxes that are joined so, never at the end of a line.
        const texts = painted.flatMap((item) => (item.kind === 'text' ? [item] : []))
        const body = texts.filter(({ size, box }) => size < 9 && box.bottom < height - 21)
        for (const name of texts.filter(({ text }) => /^Way \d+$/.test(text.trim()))) {
          const after = body.filter(
            ({ box }) =>
              box.left > name.box.left &&
              box.left < name.box.left + 24 &&
              Math.abs(box.top - name.box.top) < 1,
          )
          expect(after.some(({ text }) => text.startsWith('☐'))).toBe(true)
        }
      }
    }
  })

  it('names the designer on every page, and has the notes', () => {
    for (const { pages } of prints) {
      const { designer = '', notes = '' } = project
      if (designer) for (const page of pages) expect(page.words).toContain(`by ${designer}`)
      expect(squeezed(wordsOf(pages))).toContain(squeezed(notes))
    }
  })

  it('names the yarn of every part in full, and begins written rounds with their foundation', () => {
    const placed = new Set([
      ...plan.motifs.map(({ colourway }) => colourway),
      ...plan.fillers.map(({ colourway }) => colourway),
    ])
    const names = new Map((project.yarns ?? []).map((yarn) => [yarn.id, yarn.name || yarn.id]))
    const parts = (project.colourways ?? []).filter(({ id }) => placed.has(id))
    const accounts = [plan.motif, ...plan.fillerMotifs, ...plan.accounts]
    const motifs = (project.motifs ?? []).filter(({ id }) => accounts.some((account) => account?.id === id))
    for (const { pages, terms } of prints) {
      const words = squeezed(wordsOf(pages)).toLowerCase()
      for (const { yarns } of parts)
        for (const [slot, id] of Object.entries(yarns ?? {}))
          expect(words).toContain(
            squeezed(`${names.get(id) ?? id} ${partOn(terms, slot, yarns)}`).toLowerCase(),
          )
      for (const motif of motifs) {
        if (motif.kind !== 'rounds') continue
        const read = readMotif(motif, project.terms ?? 'US')
        const foundation = foundationWords(motif, read, terms, project.hand ?? 'right')
        expect(foundation).not.toBe('')
        expect(words).toContain(squeezed(`Foundation ${foundation}`).toLowerCase())
      }
    }
  })
})

describe('a map in sheets', () => {
  it('cuts no number and no disc, and numbers every column and row that a sheet is of', async () => {
    const project = flowers({ columns: 32, rows: 26 })
    const { pages } = await printed(createPlanner().plan(project), 'A4', 'ink')
    const sheets = pages.filter(({ words }) => /^Sheet \d+ of/.test(words))
    expect(sheets.length).toBeGreaterThan(1)
    for (const page of sheets) {
      expect(troublesOf(page, { ink: true })).toEqual([])
      const [, ...ends] = /Rows (\d+)–(\d+), motifs (\d+)–(\d+)/.exec(page.words)!.map(Number)
      const texts = page.painted.flatMap((item) => (item.kind === 'text' && !item.clip ? [item] : []))
      const top = Math.min(...texts.filter(({ text }) => text === String(ends[0])).map(({ box }) => box.left))
      const rows = texts.filter(({ box }) => box.left < top + 4).map(({ text }) => Number(text))
      for (const row of ends.slice(0, 2)) expect(rows).toContain(row)
      const line = texts.find(({ text, box }) => text === String(ends[3]) && box.left > top + 6)!
      const places = texts
        .filter(({ box }) => Math.abs(box.bottom - line.box.bottom) < 0.5)
        .map(({ text }) => Number(text))
      for (let place = ends[2]!; place <= ends[3]!; place++) expect(places).toContain(place)
    }
  })
})

describe('long notes', () => {
  it('have pages of their own that map and card point to; the packing list has them all', async () => {
    const notes = Array.from({ length: 60 }, (_, i) => `Sentence ${i + 1} of the notes, which are many.`)
    const gate = { ...example('orchard-gate-garland'), notes: notes.join('\n') }
    const plan = createPlanner().plan(gate)
    const { pages } = await printed(plan, 'A4', 'ink')
    const [, card, first] = pages
    expect(card!.words).toContain('The designer’s notes stand on the page “Notes”.')
    expect(first!.words).toMatch(/^Notes Sentence 1 of/)
    expect(wordsOf(pages).split(notes[59]!)).toHaveLength(3)
    for (const page of pages) expect(troublesOf(page, { ink: true })).toEqual([])
  })
})
