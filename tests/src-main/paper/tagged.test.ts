/** Paper for who does not see it: what every page tells, and in which order (§pdf-ua). */
import { PDFArray, PDFDict, PDFDocument, PDFName } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { drawText } from '../../../src-core/figures/figure'
import { partOf } from '../../../src-core/figures/part'
import { planProject } from '../../../src-core/plan'
import { renderCharts, renderMap } from '../../../src-main/paper'
import { readFaces } from '../../../src-main/paper/pdf/faces'
import { writePdf } from '../../../src-main/paper/pdf/file'
import { EXAMPLES, planOf } from './examples'
import { DATE, flowers, planned, VERSION } from './projects'
import { readTables } from './read-tables'
import type { ReadTable } from './read-tables'
import { elementsIn, readTags } from './read-tags'
import type { ReadElement, Tagged } from './read-tags'

const options = { date: DATE, version: VERSION }
const UA = '<pdfuaid:part>1</pdfuaid:part>'

const WITHIN: Readonly<Record<string, readonly string[]>> = {
  L: ['LI'],
  LI: ['Lbl', 'LBody'],
  Table: ['TR'],
  TR: ['TH', 'TD'],
}

/** What is wrong with what a file tells, as sentences. */
function faults({ pages }: Tagged): string[] {
  const found = pages.flatMap(({ strays }, i) => strays.map((stray) => `page ${i + 1}: ${stray}`))
  let level = 0
  pages.forEach(({ elements, artifacts }, i) => {
    const all = elementsIn(elements)
    const wrong = (what: string): void => void found.push(`page ${i + 1}: ${what}`)
    for (const { role, alt = '', text, children } of all) {
      if (/^H\d$/.test(role)) {
        if (Number(role[1]) > level + 1) wrong(`${role} after H${level}: ${text}`)
        level = Number(role[1])
        if (text === '') wrong(`a heading without words`)
      }
      if (role === 'Figure' && alt.trim() === '') wrong('a figure without words')
      const allowed = WITHIN[role]
      for (const child of allowed ? children : [])
        if (!allowed!.includes(child.role)) wrong(`${child.role} in ${role}`)
      if (role === 'Table') {
        const widths = new Set(children.map((row) => row.children.length))
        if (widths.size !== 1) wrong(`a table with rows of ${[...widths].join(' and ')} cells`)
        if (children.some((row) => row.children[0]?.role !== 'TH')) wrong('a row without a head')
      }
    }
    // Only the foot of the page, and what says that something goes on.
    const furniture = artifacts.join(' ')
    if (!/^(.*, continued )*.* · version of .* page \d+ of \d+$/.test(furniture))
      wrong(`not told: ${furniture}`)
  })
  return found
}

describe('tagged paper', () => {
  it.each(EXAMPLES.flatMap((each) => (['A4', 'Letter'] as const).map((paper) => ({ ...each, paper }))))(
    'tells all that is on $name on $paper, and names PDF/UA',
    async ({ project, paper }) => {
      const bytes = await renderMap(planOf(project), { ...options, paper })
      const read = await readTags(bytes)
      expect(faults(read)).toEqual([])
      expect(read.marked).toBe(true)
      expect(read.metadata).toContain(UA)
    },
  )

  it('reads a sheet as a person does', async () => {
    const { project } = EXAMPLES.find(({ name }) => name.startsWith('limekiln'))!
    const { pages } = await readTags(
      await renderMap(planOf(project), { ...options, sheets: ['title', 'map'] }),
    )
    const outline = (page: number): string[] =>
      elementsIn(pages[page]!.elements).flatMap(({ role, text }) =>
        ['H1', 'H2', 'Figure', 'Lbl'].includes(role) ? [`${role} ${text.slice(0, 24)}`] : [],
      )
    expect(outline(0).slice(0, 3)).toEqual([
      'H1 Limekiln cushion',
      'Figure Picture of the finished ',
      'Lbl Finished size',
    ])
    expect(outline(1)).toEqual([
      'H1 Limekiln cushion',
      'Figure Map of the whole: 19 mot',
      'Figure The motif in colorway A',
      'Figure The motif in colorway B',
      'Figure The motif in colorway C',
      'H2 How to read it',
      'H2 Joining',
    ])
    const materials = pages
      .flatMap(({ elements }) => elementsIn(elements))
      .find(({ role }) => role === 'Table')!
    const cells = ({ children }: ReadElement): string[] => children.map(({ role, text }) => `${role} ${text}`)
    expect(cells(materials.children[0]!).slice(0, 2)).toEqual(['TH Yarn', 'TH needed'])
    expect(cells(materials.children[1]!)[0]).toMatch(/^TH \w/)
    expect(cells(materials.children[1]!)[1]).toMatch(/^TD \d/)
  })

  it('says of header cells what they are the head of, and knows every element by its page', async () => {
    const { plan } = planned(flowers())
    const document = await PDFDocument.load(await renderMap(plan, options))
    const dicts = document.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) => (object instanceof PDFDict ? [object] : []))
    const named = (dict: PDFDict, key: string): string => String(dict.get(PDFName.of(key)) ?? '')
    const heads = dicts.filter((dict) => named(dict, 'S') === '/TH')
    expect(heads.length).toBeGreaterThan(8)
    const scopes = heads.map((head) => named(head.lookup(PDFName.of('A'), PDFDict), 'Scope'))
    expect(new Set(scopes)).toEqual(new Set(['/Column', '/Row']))
    const root = document.catalog.lookup(PDFName.of('StructTreeRoot'), PDFDict)
    const numbers = root.lookup(PDFName.of('ParentTree'), PDFDict).lookup(PDFName.of('Nums'), PDFArray)
    expect(numbers.size()).toBe(2 * document.getPageCount())
    document.getPages().forEach((page, i) => {
      expect(named(page.node, 'StructParents')).toBe(String(i))
      expect(named(page.node, 'Tabs')).toBe('/S')
      expect(numbers.lookup(2 * i + 1, PDFArray).size()).toBeGreaterThan(0)
    })
  })

  it('tells a table that runs over several pages once, with all its rows below one heading', async () => {
    const { project } = EXAMPLES.find(({ name }) => name.startsWith('orchard-gate'))!
    const { layout } = project
    if (layout?.kind !== 'garland') throw new Error('a garland is wanted')
    const swags = { ...layout.swags!, span: 3000 }
    const plan = planProject({ ...project, layout: { ...layout, swags, kit: undefined } })
    const tables = await readTables(await renderMap(plan, options))
    const along = tables.filter(({ heads }) => heads[0] === 'No.')
    expect(along).toHaveLength(1)
    const [{ rows, headRows, pages }] = along as [ReadTable]
    expect(headRows).toBe(1)
    expect(pages.length).toBeGreaterThan(1)
    const numbers = rows.flatMap(([number]) => (number === '' ? [] : [Number(number)]))
    expect(numbers).toEqual(plan.garland!.items.map((_, i) => i + 1))
  })

  it('begins at the first level where pages are printed alone, and names PDF/UA on charts', async () => {
    const { plan } = planned(flowers({ columns: 30, rows: 30 }))
    const read = await readTags(await renderMap(plan, { ...options, pages: [4] }))
    expect(faults(read)).toEqual([])
    const { project } = EXAMPLES.find(({ name }) => name.startsWith('limekiln'))!
    const { settled } = planProject(project)
    const motifs = settled.motifs.flatMap((motif) => (motif.kind === 'rounds' ? [motif] : []))
    const charts = await readTags(
      await renderCharts(
        motifs.map((motif) => ({ settled, motif })),
        options,
      ),
    )
    expect(charts.metadata).toContain(UA)
    expect(charts.pages.flatMap(({ strays }) => strays)).toEqual([])
  })

  it('does not name PDF/UA where words are told by nobody, or a figure says nothing', async () => {
    const information = {
      title: 'T & co',
      author: '',
      subject: '',
      language: 'en',
      date: DATE,
      producer: 'p',
    }
    const withPart = async (part?: ReturnType<typeof partOf>) => {
      const items = [{ ...drawText('Work petals', 20, 50, 10), part }]
      const page = { label: '1', bookmarks: [], figure: { width: 100, height: 100, items } }
      return readTags(await writePdf([page], information, { faces: readFaces() }))
    }
    expect((await withPart(partOf('P'))).metadata).toContain(UA)
    expect((await withPart()).metadata).not.toContain('pdfuaid:part')
    expect((await withPart(partOf('Figure', null, { alt: ' ' }))).metadata).not.toContain('pdfuaid:part')
    expect((await withPart(partOf('P'))).metadata).toContain('T &amp; co')
  })

  it('says nothing of itself that could move a cursor or disguise a name', async () => {
    const information = { subject: 'a\u0000b', language: 'en', date: DATE, producer: 'p' }
    const said = { ...information, title: 'Throw\u001b[31m', author: 'R\u202eon' }
    const page = { label: '1', bookmarks: [], figure: { width: 100, height: 100, items: [] } }
    const file = await PDFDocument.load(await writePdf([page], said, { faces: readFaces() }))
    expect([file.getTitle(), file.getAuthor(), file.getSubject()]).toEqual(['Throw [31m', 'R on', 'a b'])
  })

  it(
    'stays small: a map of ten thousand motifs is one figure, its list within 2 MB',
    { timeout: 120_000 },
    async () => {
      const { plan } = planned(flowers({ columns: 100, rows: 100 }))
      const bytes = await renderMap(plan, options)
      expect(plan.motifs.length).toBe(10_000)
      expect(bytes.length).toBeLessThan(2_000_000)
    },
  )
})
