/** What goes into a kit is all there, and told alike on everything that goes in. */
import { describe, expect, it } from 'vitest'
import { NO_HOUSE } from '../../../shared-types/house'
import type { Project } from '../../../shared-types/project'
import type { FigureItem } from '../../../src-core/figures/figure'
import { planProject } from '../../../src-core/plan'
import { flowers } from './projects'
import { GATE, KINDS, KIT, pagesOf, read, withKit } from './kits'

describe('what goes into a kit', () => {
  it.each(['A4', 'Letter'] as const)(
    'the card on %s leaves nothing out of a kit with many yarns: hook and last leaf are on it, and nothing runs over',
    async (paper) => {
      const names = ['Oat', 'Harebell', 'Plum', 'Blush', 'Apricot', 'Kelp', 'Slate']
      const yarns = names.map((name, i) => ({ ...GATE.yarns![0]!, id: `more${i}`, name }))
      const ways = names.map((name, i) => ({
        id: `w${i}`,
        code: 'DEFGHIJ'[i]!,
        name,
        motif: 'bloom',
        yarns: { Centre: 'cream', Petals: `more${i}` },
      }))
      const items = [
        ...ways.map(({ id }) => ({ motif: 'bloom', colourway: id })),
        ...(GATE.layout.items ?? []),
      ]
      const project = withKit({
        ...GATE,
        yarns: [...GATE.yarns!, ...yarns],
        colourways: [...GATE.colourways!, ...ways],
        layout: { ...GATE.layout, items },
      } as Project)
      const { pages } = await read(project, { sheets: ['card'], paper })
      const words = pages.map((page) => page.words).join(' ')
      for (const { name } of project.yarns!) expect(words).toMatch(new RegExp(`${name} yarn cotton \\d+ g`))
      expect(words).toContain('1 × crochet hook')
      for (const { code, name } of project.colourways!) expect(words).toContain(`${code} · ${name}`)
      expect(words).toMatch(/\d+ × Leaf/)
      for (const { texts, width, height } of pages)
        for (const { x, y, width: wide } of texts) {
          expect(x + wide).toBeLessThan(width - 11)
          expect(y).toBeLessThan(height - 11)
        }
    },
  )

  it('the card of a blanket shows what it looks like: no number, arrow or count over the motifs', () => {
    const edged = flowers({ edging: { rounds: ['sc'], yarn: 'y1' } })
    const [page] = pagesOf(withKit(edged), { sheets: ['card'] })
    const tall = ({ part }: FigureItem): number => (part && 'box' in part ? (part.box?.height ?? 0) : 0)
    const picture = page!.figure.items.reduce((most, item) => (tall(item) > tall(most) ? item : most))
    expect(tall(picture)).toBeGreaterThanOrEqual(59)
    const textsOf = (item: FigureItem): string[] =>
      item.kind === 'group' ? item.items.flatMap(textsOf) : item.kind === 'text' ? [item.text] : []
    expect(picture.kind).toBe('group')
    expect(textsOf(picture)).toEqual([])
  })

  it.each(KINDS)('everything that goes in with %s tells the same grams of a yarn', async (_, project) => {
    const plan = planProject(project)
    const { pages } = await read(project, { sheets: ['title', 'card', 'map', 'labels'] })
    const words = pages.map((page) => page.words).join(' ')
    for (const { yarn, grams } of plan.kit!.perKit) {
      const name = project.yarns!.find(({ id }) => id === yarn)!.name!
      const told = [
        ...words.matchAll(
          new RegExp(`${name}(?: yarn)?:?(?: cotton| wool)? ([\\d.,–]+) (?:to [\\d.,]+ )?g`, 'g'),
        ),
      ]
      expect(told.length).toBeGreaterThan(2)
      expect(new Set(told.map(([, number]) => number!.replace(',', '')))).toEqual(new Set([String(grams)]))
    }
    // What it takes to work it, and what is allowed on top, is what the seller counts with.
    for (const own of ['waste', 'Allowed for', 'balls', 'skeins', 'What the yarn is for'])
      expect(words).not.toContain(own)
  })

  it('the title page tells hook and gauge of the motifs, and a fibre that all yarns share once', async () => {
    const gauge = { stitch: 'sc', stitches: 21, rows: 23, over: 100, hook: 3.25 }
    const motifs = GATE.motifs!.map((motif) => ({ ...motif, gauge }))
    const yarns = GATE.yarns!.map((yarn) => ({ ...yarn, fibre: '75 % wool, 25 % nylon' }))
    const { pages } = await read({ ...GATE, gauge: undefined, motifs, yarns }, { sheets: ['title'] })
    expect(pages[0]!.words).toContain('Hook 3.25 mm')
    expect(pages[0]!.words).toContain('Gauge 21 sc (single crochet) × 23 rows')
    expect(pages[0]!.words.replaceAll('\u00a0', ' ').match(/75 % wool, 25 % nylon/g)).toHaveLength(1)
  })

  it('a motif of one color is told by its yarn alone, and the center as its reader spells it', async () => {
    const base = withKit(flowers(), KIT)
    const slots = (names: string[]) => ({
      ...base,
      motifs: base.motifs!.map((motif) => ({ ...motif, slots: names.map((slot) => ({ slot, grams: 3 })) })),
      colourways: base.colourways!.map((way) => ({
        ...way,
        yarns: Object.fromEntries(names.map((slot, i) => [slot, base.yarns![i]!.id])),
      })),
    })
    const told = async (names: string[], terms: 'US' | 'UK') =>
      (await read(slots(names) as Project, { sheets: ['card', 'map'], terms })).pages
        .map(({ words }) => words)
        .join(' ')
    expect(await told(['motif'], 'US')).not.toMatch(new RegExp(`${base.yarns![0]!.name} motif`))
    for (const [names, terms, said, other] of [
      [['centre', 'petals'], 'US', 'center', 'centre'],
      [['center', 'petals'], 'UK', 'centre', 'center'],
    ] as const) {
      const words = await told([...names], terms)
      expect(words).toContain(`${base.yarns![0]!.name} ${said}`)
      expect(words).not.toMatch(new RegExp(`\\b${other}\\b`))
    }
  })

  it('titles of all sheets have the color of the house in color, and none in ink', () => {
    const house = { ...NO_HOUSE, accent: '#5b2a5b' }
    for (const style of ['colour', 'ink'] as const) {
      const project = { ...GATE, sheet: { ...GATE.sheet, style } }
      const pages = pagesOf(project, { house, sheets: ['title', 'card', 'map', 'packing'] })
      const titles = pages.flatMap(({ figure }) =>
        figure.items.flatMap((item) => (item.kind === 'text' && item.size > 20 ? [item] : [])),
      )
      expect(titles.length).toBeGreaterThanOrEqual(5)
      const colours = new Set(titles.map(({ colour }) => colour))
      expect(colours.size).toBe(1)
      expect(colours.has('#5b2a5b')).toBe(style === 'colour')
    }
  })
})
