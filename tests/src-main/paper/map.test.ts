import { joiningAdvice } from '../../../src-main/paper/words-joining'
import { beforeAll, describe, expect, it } from 'vitest'
import { mapPages, NoSuchPageError, renderMap } from '../../../src-main/paper/index'
import type { RenderOptions } from '../../../src-main/paper/index'
import { record } from '../../src-core/figures/recorder'
import { blanketOf, flower, solidSquare } from '../../src-core/joining-round/flowers'
import { planProject } from '../../../src-core/plan'
import { readOrder } from './followed/read-order'
import { DATE, flowers, planned, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadPdf } from './read-pdf'
import { settled } from '../../../src-core/settled'

const OPTIONS: RenderOptions = { date: DATE, version: VERSION }
const edged = { edging: { style: 'bridge' as const, rounds: ['sc', 'dc'], yarn: 'y1' } }

describe('the assembly map of a throw', () => {
  const { project, plan } = planned(flowers(edged, { forChild: true }))
  let read: ReadPdf
  beforeAll(async () => {
    read = await readPdf(await renderMap(plan, OPTIONS))
  })

  it('has the overview, joins, order, materials, the motif and cautions, each under a bookmark', () => {
    expect(read.bookmarks.map(([title]) => title)).toEqual([
      'Overview',
      'How the motifs meet',
      'Order of work',
      'Border',
      'Materials',
      'The motif',
      'Take care',
    ])
    expect(read.pageMode).toBe('UseOutlines')
    for (const [, page] of read.bookmarks) expect(page).toBeLessThanOrEqual(read.pages.length)
  })

  it('says on every page what it is, of which version, and which page of how many', () => {
    read.pages.forEach((page, i) => {
      expect(page.words).toContain('Harbour window throw by Ida Moe · version of November 24, 2026')
      expect(page.words).toContain(`page ${i + 1} of ${read.pages.length}`)
    })
    expect(read.labels?.[0]).toBe('1 Overview')
    expect(read.labels).toHaveLength(read.pages.length)
  })

  it('begins with the project as a sentence, the key with counts, how to read and how to join', () => {
    const { words } = read.pages[0]!
    expect(words).toContain('120 six-petal flowers of 78 mm in offset rows of 12, joined tip to tip:')
    expect(words).toContain('before the border')
    expect(words).toMatch(/Dawn × 30/)
    expect(words).toContain('Lichen center, Brick petals')
    expect(words).toContain('The number is the order of work, the letter the colorway.')
    // Of a measured flower nobody knows whether a chain stands at its tip, as on the page of its motif.
    expect(words).toContain('work a slip stitch into the matching place of that flower.')
  })

  it('says of written rounds how to join just as the joining round does, corners and sides', () => {
    const squares = (rule: 'tips' | 'edges', terms: 'US' | 'UK') => {
      const columns = { columns: 3, rows: 3 }
      return joiningAdvice(
        planProject(blanketOf({ rounds: solidSquare(3), joining: { rule }, layout: columns })),
        terms,
      )
    }
    const last =
      'Work each square up to its last round. At free corners and sides work that round as written; where a dot meets a square already there, '
    const corners =
      'at corners, instead of the ch 2 work: ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1'
    expect(squares('tips', 'US')).toBe(`${last}${corners}.`)
    // A side of the third round has 2 + 7 + 2 dc: its joins are at a quarter, the half and three quarters.
    expect(squares('edges', 'US')).toBe(
      `${last}${corners}; along sides, after the 3rd, 6th and 9th dc of the side, drop lp, insert hook in corresponding dc of neighbor, draw lp through.`,
    )
    expect(squares('tips', 'UK')).toContain('1 ch, ss in corresponding 2-ch sp of neighbour, 1 ch')
    const petals = planProject(
      blanketOf({ rounds: flower(6, 'ch 5'), layout: { arrangement: 'offset-rows' } }),
    )
    expect(joiningAdvice(petals, 'US')).toContain(
      'already there, instead of the ch 5 work: ch 2, sl st in corresponding ch-5 sp of neighbor, ch 2.',
    )
  })

  it('says how to work the edging: where its stitches go, and the chains between them', () => {
    const { stitches, chains } = plan.edging!.rounds[0]!
    const words = read.pages.map((page) => page.words).join(' ')
    expect(words).toContain(
      `Round 1 Right side facing, join the yarn in a free tip. Going counterclockwise, work sc in every free tip, ch ${chains / stitches} between: ${stitches} sc and ${chains} chains.`,
    )
    expect(words).toContain(`Round 1: ${stitches} sc and ${chains} chains. Round 2: `)
    expect(words).toContain('One skein of')
    expect(words).toContain(
      `Round 2 dc in each stitch and evenly over the chains, 3 in one place at each of 14 outer tips and 3 together at each of 8 inner tips: ${plan.edging!.rounds[1]!.stitches} dc.`,
    )
  })

  it('says so where tips do not stand equally far apart round the edge', () => {
    const own = flowers(edged)
    const five = {
      ...own,
      motifs: own.motifs!.map((motif) => ({ ...motif, petals: 5 })) as typeof own.motifs,
    }
    const pages = mapPages(planned(five).plan, { date: new Date(0) })
    const words = pages.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)).join(' ')
    expect(words).toMatch(
      /between two tips of one motif ch \d+; from one motif to the next ch \d+ in \d+ gaps?(, ch \d+ in \d+)* and ch \d+ in \d+, more where the tips stand farther apart: /,
    )
  })

  it('prints every working number where its motif is', () => {
    const numbers = read.pages[0]!.texts.filter(({ text }) => /^\d+$/.test(text))
    const centre = (label: string) => {
      const found = numbers.filter(({ text, y }) => text === label && y > 45)
      return found.map(({ x, y, width }) => ({ x: x + width / 2, y }))
    }
    const by = new Map(plan.motifs.map((motif) => [motif.label, motif]))
    const [first] = centre('13')
    const [last] = centre('97')
    const scale = (last!.y - first!.y) / (by.get('97')!.y - by.get('13')!.y)
    for (const motif of plan.motifs) {
      const wish = {
        x: first!.x + (motif.x - by.get('13')!.x) * scale,
        y: first!.y + (motif.y - by.get('13')!.y) * scale,
      }
      const near = centre(motif.label).some(({ x, y }) => Math.hypot(x - wish.x, y - wish.y) < 0.05)
      expect(near, `number ${motif.label}`).toBe(true)
    }
  })

  it('lists every motif with a box to tick and its colourway under the heading of its row', () => {
    const { boxes } = readOrder(read.pages)
    const codes = new Map(project.colourways!.map((way) => [way.id, way.code]))
    const byNumber = [...plan.motifs].sort((a, b) => Number(a.label) - Number(b.label))
    expect(boxes.map(({ label, row, code }) => ({ label, row, code }))).toEqual(
      byNumber.map(({ label, row, colourway }) => ({ label, row, code: codes.get(colourway) })),
    )
  })

  it('tells yarn in grams and ounces, metres and yards, with range, skeins and cost', () => {
    const page = read.pages.find(({ words }) => words.includes('Materials Yarn needed'))!
    for (const need of plan.yarns) {
      const { low, expected, high } = need.grams
      expect(page.words).toContain(`${Math.round(expected)} g (${Math.round(low)}–${Math.round(high)})`)
    }
    for (const word of [
      'oz',
      ' m ',
      ' yd ',
      'skeins',
      'to buy',
      'Gauge',
      'Border',
      'Ends',
      'dye lot',
      'Hook 3.5 mm',
      'to 10 cm (4 in)',
    ]) {
      expect(page.words).toContain(word)
    }
  })

  it('sets nothing smaller than 7 pt, and lists and tables at 8 pt or more', () => {
    for (const page of read.pages)
      for (const { size, text } of page.texts) expect(size, text).toBeGreaterThanOrEqual(7)
    const order = read.pages.find(({ words }) => words.startsWith('Order of work'))!
    for (const { size } of order.texts) expect(size).toBeGreaterThanOrEqual(8)
  })

  it('keeps all text 12 mm from the edge', () => {
    for (const page of read.pages) {
      for (const { x, y, width, text } of page.texts) {
        expect(x, text).toBeGreaterThanOrEqual(11.99)
        expect(x + width, text).toBeLessThanOrEqual(page.width - 11.99)
        expect(y, text).toBeGreaterThanOrEqual(12)
        expect(y, text).toBeLessThanOrEqual(page.height - 12)
      }
    }
  })

  it('carries title, author, language, dates and print scaling', () => {
    expect(read.information).toMatchObject({
      Title: 'Harbour window throw',
      Author: 'Ida Moe',
      Language: 'en-US',
      Producer: 'Petalyard 0.1.0',
      CreationDate: 'D:20261124100000Z',
      ModDate: 'D:20261124100000Z',
    })
    expect(read.viewerPreferences).toMatchObject({ PrintScaling: 'None', DisplayDocTitle: true })
  })

  it('cautions about blankets for babies and defers to local rules', () => {
    const words = read.pages.map((page) => page.words).join(' ')
    expect(words).toContain('Not for sleep under 12 months')
    expect(words).toContain('out of the crib')
    expect(words).toContain('Follow the advice that is given where you live')
  })
})

describe('paper, terms and units', () => {
  it('is A4 or Letter to a tenth of a millimetre (§paper-sizes)', async () => {
    const { plan } = planned(flowers({ columns: 5, rows: 4 }))
    const size = async (paper: 'A4' | 'Letter'): Promise<[number, number]> => {
      const { pages } = await readPdf(await renderMap(plan, { ...OPTIONS, paper, pages: [1] }))
      return [pages[0]!.width, pages[0]!.height]
    }
    const [a4, letter] = [await size('A4'), await size('Letter')]
    expect(a4[0]).toBeCloseTo(210, 1)
    expect(a4[1]).toBeCloseTo(297, 1)
    expect(letter[0]).toBeCloseTo(215.9, 1)
    expect(letter[1]).toBeCloseTo(279.4, 1)
  })

  it('turns to landscape where only that holds numbers that can be read', async () => {
    const { plan } = planned(flowers({ columns: 20, rows: 6 }))
    const { pages } = await readPdf(await renderMap(plan, OPTIONS))
    expect(pages[0]!.width).toBeGreaterThan(pages[0]!.height)
    expect(pages[1]!.width).toBeLessThan(pages[1]!.height)
  })

  it('speaks the chosen terms and translates the gauge into them', async () => {
    const { plan } = planned(flowers(edged, { forChild: true }))
    const { pages, information } = await readPdf(await renderMap(plan, { ...OPTIONS, terms: 'UK' }))
    const words = pages.map((page) => page.words).join(' ')
    for (const word of ['Tension', '20 dc (double crochet)', 'balls', 'edging', 'out of the cot']) {
      expect(words).toContain(word)
    }
    for (const word of ['Gauge', 'skeins', 'border', 'crib', 'single crochet'])
      expect(words).not.toContain(word)
    expect(information.Language).toBe('en-GB')
  })

  it('tells imperial first when the project does, and still both', async () => {
    const { plan } = planned(flowers({}, { units: 'imperial' }))
    const { pages } = await readPdf(await renderMap(plan, OPTIONS))
    const materials = pages.find(({ words }) => words.startsWith('Materials'))!
    expect(materials.words).toMatch(/\d oz \([\d.]+–[\d.]+\)/)
    expect(materials.words).toMatch(/\d g /)
    expect(pages[0]!.words).toMatch(/joined tip to tip: \S+ × \S+ in \(/)
  })
})

describe('a big map', () => {
  const { plan } = planned(flowers({ columns: 40, rows: 40 }))

  it('goes on over sheets that name their rows and places; page 1 shows where they lie', async () => {
    const { pages, bookmarks } = await readPdf(await renderMap(plan, OPTIONS))
    const sheets = pages.filter(({ words }) => /^Sheet \d+ of \d+/.test(words))
    expect(sheets.length).toBeGreaterThan(3)
    expect(sheets[0]!.words).toMatch(/^Sheet 1 of \d+ Rows 1–\d+, motifs 1–\d+/)
    expect(pages[0]!.words).toContain(`The map is printed on ${sheets.length} sheets`)
    expect(bookmarks.filter(([title]) => title.startsWith('Sheet'))).toHaveLength(sheets.length)
    const printed = new Set(sheets.flatMap((page) => page.texts.map(({ text }) => text)))
    for (const motif of plan.motifs) expect(printed.has(motif.label), motif.label).toBe(true)
  })
})

describe('motifs of odd shapes', () => {
  it.each([
    ['a blade of grass', { outline: 'leaf', length: 150, width: 24 }],
    ['a star of spokes', { outline: 'petals', petals: 24, overTips: 90, overValleys: 10 }],
  ] as const)('prints every number of %s, within the margins', async (_, shape) => {
    const motif = { id: 'm1', kind: 'measured' as const, ...shape }
    const { plan } = planned(
      flowers({ arrangement: 'straight-rows', columns: 12, rows: 12 }, { motifs: [motif] }),
    )
    expect(plan.motifs).toHaveLength(144)
    const { pages } = await readPdf(await renderMap(plan, OPTIONS))
    const printed = new Set<string>()
    for (const page of pages) {
      for (const { text, x, y, width } of page.texts) {
        if (page === pages[0] || page.words.startsWith('Sheet')) printed.add(text)
        expect(x, text).toBeGreaterThanOrEqual(11.9)
        expect(x + width, text).toBeLessThanOrEqual(page.width - 11.9)
        expect(y, text).toBeLessThanOrEqual(page.height - 12)
      }
    }
    for (const { label } of plan.motifs) expect(printed.has(label), label).toBe(true)
  })
})

describe('pages that are asked for', () => {
  const { plan } = planned(flowers({ columns: 4, rows: 3 }))

  it('are kept with their numbers', async () => {
    const { pages } = await readPdf(await renderMap(plan, { ...OPTIONS, pages: [2, 1] }))
    const all = mapPages(plan, OPTIONS)
    expect(pages).toHaveLength(2)
    expect(pages[1]!.words).toContain(`page 2 of ${all.length}`)
  })

  it('are refused when there are none such', async () => {
    const asked = renderMap(plan, { ...OPTIONS, pages: [1, 99] })
    await expect(asked).rejects.toThrow(NoSuchPageError)
    await expect(asked).rejects.toThrow(/pages 1 to \d+; there is no page 99/)
    await expect(renderMap(plan, { ...OPTIONS, pages: [0.5] })).rejects.toThrow(NoSuchPageError)
  })

  it('can be previewed as draw lists of the paper’s size', () => {
    for (const page of mapPages(plan, { ...OPTIONS, paper: 'Letter' })) {
      expect([page.figure.width, page.figure.height]).toEqual([215.9, 279.4])
      expect(page.name).not.toBe('')
    }
  })
})

describe('the same again', () => {
  const { project, plan } = planned(flowers({ columns: 6, rows: 5 }))

  it('gives the same bytes for the same input and date, and others when anything changes', async () => {
    const first = Buffer.from(await renderMap(plan, OPTIONS))
    expect(Buffer.from(await renderMap(plan, OPTIONS)).equals(first)).toBe(true)
    const other = [
      await renderMap(plan, { ...OPTIONS, date: new Date('2026-11-25T10:00:00Z') }),
      await renderMap(plan, { ...OPTIONS, style: 'colour' }),
      await renderMap({ ...plan, settled: settled({ ...project, title: 'Another' }) }, OPTIONS),
    ]
    for (const bytes of other) expect(Buffer.from(bytes).equals(first)).toBe(false)
  })

  it('tells how far it is, and stops when it is told to', async () => {
    const shares: number[] = []
    await renderMap(plan, { ...OPTIONS, onProgress: (share) => shares.push(share) })
    expect(shares.at(-1)).toBe(1)
    expect([...shares].sort((a, b) => a - b)).toEqual(shares)
    const controller = new AbortController()
    const stopped = renderMap(plan, {
      ...OPTIONS,
      signal: controller.signal,
      onProgress: () => controller.abort(new Error('stopped by the user')),
    })
    await expect(stopped).rejects.toThrow('stopped by the user')
  })
})

describe('the key of a tall and narrow map', () => {
  it('stands beside the map, with how to read and join it, not on a page of its own', () => {
    const { plan } = planned(flowers({ columns: 5, rows: 26 }))
    const pages = mapPages(plan, OPTIONS)
    expect(pages.map(({ section }) => section)).not.toContain('key')
    const { texts } = record(pages[0]!.figure)
    const [read, join] = ['How to read it', 'Joining'].map((words) =>
      texts.find(({ text }) => text === words)!,
    )
    expect(read!.x).toBeGreaterThan(pages[0]!.figure.width / 2)
    expect(join!.x).toBeCloseTo(read!.x, 6)
    expect(join!.y).toBeGreaterThan(read!.y)
    // Every number of the map stands at the left of it.
    for (const { label } of plan.motifs)
      expect(texts.some(({ text, x }) => text === label && x < read!.x)).toBe(true)
  })
})
