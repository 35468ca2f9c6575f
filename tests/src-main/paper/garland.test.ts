import { describe, expect, it } from 'vitest'
import type { GarlandLayout, Project } from '../../../shared-types/project'
import { garlandFigure } from '../../../src-core/figures/garland'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'
import { mapPages, renderMap } from '../../../src-main/paper'
import { DATE, flowers, planned, VERSION } from './projects'
import { readPdf } from './read-pdf'

const example = JSON.parse(
  listExamples().find(({ name }) => name === 'orchard-gate-garland')!.text,
) as Project & { layout: GarlandLayout }
const { plan } = planned(example)
const read = async (project: Project, options = {}) =>
  readPdf(await renderMap(planProject(project), { date: DATE, version: VERSION, ...options }))

describe('the sheets of a garland kit', () => {
  it('are the card, the list along the cord, and every motif (small ones share a page); the packing list by name', () => {
    const pages = mapPages(plan, { date: DATE })
    expect(pages.map(({ section }) => section)).toEqual(['card', 'cord', 'motif', 'motif'])
    const seller = mapPages(plan, { date: DATE, sheets: ['packing'] })
    expect(seller.map(({ section }) => section)).toEqual(['packing'])
  })

  it.each(['A4', 'Letter'] as const)(
    'the card on %s says what is in it, how it hangs, and cautions',
    async (paper) => {
      const { pages, bookmarks } = await read(example, { paper })
      const { words, texts, height } = pages[0]!
      // Nothing is printed over anything else: no two lines share a place.
      const lines = [...texts].sort((a, b) => a.y - b.y || a.x - b.x)
      lines.forEach((line, i) => {
        for (const other of lines.slice(i + 1)) {
          if (other.y - line.y > 2) break
          const apart = line.x + line.width <= other.x + 0.01 || other.x + other.width <= line.x + 0.01
          expect(apart, `${line.text} / ${other.text}`).toBe(true)
        }
      })
      for (const said of [
        'In this kit',
        '31 g (1.1 oz)',
        '78 m (85 yd)',
        'crochet hook, 3.5 mm',
        'Hang it from four points at one height, 70 cm (27½ in) apart',
        'ch 680: 72 for a tie, 536 for the cord (223.2 cm',
        'Decoration, not a toy.',
        'never on or across a crib',
        'Follow the rules that apply where you live.',
        'Fiber cotton',
        'copy it from the skein band',
        'Design:',
      ])
        expect(words).toContain(said)
      for (const { y, size } of texts) {
        expect(y).toBeLessThan(height - 12)
        expect(size).toBeGreaterThanOrEqual(7 - 1e-6)
      }
      expect(bookmarks[0]).toEqual(['Kit card', 1])
    },
  )

  it('tells left-handers that their chain grows from right to left, and nobody else', async () => {
    const said = async (hand: Project['hand']) =>
      (await read({ ...example, ...(hand && { hand }) })).pages.map(({ words }) => words).join(' ')
    expect(await said('left')).toContain('the first thing of the list comes to hang on the right')
    expect(await said('right')).not.toContain('grows from right to left')
  })

  it('say by how many chains to 10 cm the cord is counted, where somebody said so', async () => {
    const told = (await read(example)).pages[0]!.words
    expect(told).toContain('Cord: 24 chains to 10 cm (4 in)')
    const layout = example.layout as GarlandLayout
    const plain = { ...example, layout: { ...layout, cord: { ...layout.cord, gauge: undefined } } }
    expect((await read(plain as Project)).pages[0]!.words).not.toContain('chains to 10 cm')
  })

  it('the list along the cord has every thing, in the terms of the sheet', async () => {
    const us = await read(example)
    expect(us.pages[1]!.words.match(/sc in petal 1, ch 7, sc in next petal/g)).toHaveLength(14)
    const uk = await read(example, { terms: 'UK' })
    expect(uk.pages[1]!.words).toContain('dc in petal 1, 7 ch, dc in next petal')
    expect(uk.pages[0]!.words).toContain('never on or across a cot')
  })

  it('the list along the cord ends at the tie, and its chains are those of the cord', async () => {
    const { garland } = plan
    const fastened = garland!.cord.chains! - garland!.chainsAfter!
    const before = garland!.items.reduce((sum, { chains }) => sum + chains!, 0)
    // Motifs that hang by several points stand over chains of their own.
    expect(fastened).toBeGreaterThanOrEqual(before)
    const { pages } = await read(example)
    expect(pages.map(({ words }) => words).join(' ')).toMatch(
      new RegExp(
        `end of the cord [^ ]+ [^ ]+ ${garland!.chainsAfter} then ${garland!.cord.ties.chains} chains to tie`,
      ),
    )
  })

  it('the packing list winds for spares too and adds up', async () => {
    const { pages } = await read(example, { sheets: ['packing'] })
    const { words } = pages.at(-1)!
    expect(words).toContain('For the seller; it does not go into the kit.')
    expect(words).toContain('806 g (28.4 oz)')
    expect(words).toContain('Together €210.35')
    expect(words).toContain('€19.55 with €3.26 of tax in it')
    expect(words).toContain('at 15 of 25')
  })

  it('the card lists all of it, however much is in the kit, its cautions at the foot of its first page', async () => {
    const many = Array.from({ length: 90 }, (_, i) => ({ name: `bead number ${i + 1}.`, price: 1 }))
    const full = { ...example, layout: { ...example.layout, kit: { count: 2, extras: many } } }
    const { pages } = await read(full)
    expect(pages[0]!.words).toContain('Decoration, not a toy.')
    const cards = pages.filter(({ words }) => words.includes('Kit card page'))
    expect(cards.length).toBeGreaterThan(1)
    const words = cards.map((page) => page.words).join(' ')
    for (const { name } of many) expect(words.split(`1 × ${name}`)).toHaveLength(2)
    for (const made of ['15 × Leaf', '8 × Six-petal bloom', '6 × Five-petal bud'])
      expect(words).toContain(made)
    expect(words).not.toMatch(/and \d+ more/)
    expect(pages[cards.length]!.words).toContain('Along the cord')
  })

  it('names whose pattern it is, and whether it may be put in', async () => {
    const kit = { ...example.layout.kit, pattern: { by: 'Ada Loop', allowed: true }, care: 'Wash cool.' }
    const { pages } = await read({ ...example, layout: { ...example.layout, kit } })
    expect(pages[0]!.words).toContain('Pattern by Ada Loop, included with permission.')
    expect(pages[0]!.words).toContain('Care Wash cool.')
  })

  it('without a kit there are materials; a bought cord has no chains; straight and in ink it prints too', async () => {
    const { kit: _, swags: _swags, ...layout } = example.layout
    const straight: Project = {
      ...example,
      layout: {
        ...layout,
        cord: { length: 3000, worked: 'bought' },
        items: [...layout.items!, { bead: 'bead', size: 9 }],
      },
    }
    const { pages } = await read(straight, { style: 'ink' })
    expect(pages[0]!.words).toContain('Yarn for it')
    expect(pages[0]!.words).toContain('Hung straight it is 300 cm')
    expect(pages[1]!.words).not.toContain('chains before it')
    expect(pages[1]!.words).toContain('sew petal 1 and the next petal to the cord')
    expect(pages.at(-1)!.words).toContain('Materials')
  })

  it('a blanket that is a kit ends with its card', () => {
    const { plan: blanket } = planned(flowers({ kit: { count: 3 } }))
    expect(mapPages(blanket, { date: DATE }).at(-1)?.section).toBe('card')
  })
})

describe('the drawing of a garland', () => {
  it('fits its box, draws every motif once, and its part is cut to the box', () => {
    const options = { width: 180, height: 50, look: 'colour' } as const
    const figure = garlandFigure(plan, plan.garland!, options)
    expect(figure.height).toBeLessThanOrEqual(50)
    expect(figure.items.filter((item) => item.kind === 'use')).toHaveLength(plan.motifs.length)
    expect(figure.scale).toBeCloseTo(180 / plan.size.width, 9)
    const part = garlandFigure(plan, plan.garland!, { ...options, from: 0, to: 700, numbered: true })
    expect(part.items).toHaveLength(1)
    expect(part.scale).toBeGreaterThan(figure.scale)
  })
})
