import { readFileSync } from 'node:fs'
import { encode } from 'fast-png'
import { describe, expect, it } from 'vitest'
import { NO_HOUSE } from '../../../shared-types/house'
import type { Kit, Project } from '../../../shared-types/project'
import type { SheetName } from '../../../shared-types/sheets'
import { planProject } from '../../../src-core/plan'
import { mapPages, NoSuchSheetError } from '../../../src-main/paper'
import { listCsv } from '../../../src-main/paper/lists'
import { normalLogo } from '../../../src-main/paper/logo'
import { record } from '../../src-core/figures/recorder'
import { example } from './examples'
import { DATE, flowers } from './projects'
import { GATE, KINDS, KIT, pagesOf, read, withKit } from './kits'

describe('the packing list', () => {
  it('says what is lost in winding, and that whole packs lose nothing', async () => {
    const told = async (kit: Kit, ballGrams = 50) => {
      const project = withKit(flowers(), kit)
      const yarns = project.yarns!.map((yarn) => ({ ...yarn, ballGrams, ballMetres: ballGrams * 2.5 }))
      const { pages } = await read({ ...project, yarns }, { sheets: ['packing'] })
      return pages[0]!.words
    }
    expect(await told({ count: 40, windTo: 1 }, 1000)).toContain('2 % is allowed for loss in winding.')
    // 118 g from balls of 50 g: two as they are, and 18 g of another.
    const parted = await told({ count: 40, windTo: 1 })
    expect(parted).toContain('2 % is allowed for loss in winding, but none where whole packs go in.')
    expect(parted).toContain('☐ Brick, skeins as they are 2 × 50 g (1.8 oz) 80 4,000 g')
    expect(parted).toContain('☐ Brick, wound 18 g (0.63 oz) 45 m (49 yd) 40 720 g')
    const whole = await told({ count: 40, windTo: 100 })
    expect(whole).toContain('whole packs go in as they are, so that nothing is lost in winding.')
    expect(whole).not.toContain('2 %')
  })
})

describe('a packing list that would run a few lines over', () => {
  const project = JSON.parse(readFileSync('docs/projects/lemon-grove-garland.petalyard', 'utf8')) as Project
  const packing = (paper: 'A4' | 'Letter') => {
    const { sheet } = project
    return pagesOf({ ...project, sheet: { ...sheet, paper, terms: 'US' } as never }, { sheets: ['packing'] })
  }
  const placesOf = (page: ReturnType<typeof packing>[number]) => {
    const { texts } = record(page.figure)
    return (words: string) => texts.find(({ text }) => text === words)!
  }

  it('has its account beside what is bought, on one page', () => {
    const pages = packing('Letter')
    expect(pages).toHaveLength(1)
    const at = placesOf(pages[0]!)
    expect(at('Cost and price').y).toBe(at('To buy for the batch').y)
    expect(at('One kit costs').x).toBeGreaterThan(at('£170.20').x)
    expect(at('Before selling').y).toBeGreaterThan(at('Cautions').y)
  })

  it('has it below, where the page is long enough', () => {
    const pages = packing('A4')
    expect(pages).toHaveLength(1)
    const at = placesOf(pages[0]!)
    expect(at('Cost and price').x).toBe(at('To buy for the batch').x)
  })
})

describe('each sheet of a kit alone', () => {
  it.each(KINDS)(
    'the card of %s is one page, A4 and Letter, with cautions and credit',
    async (_, project) => {
      for (const [paper, width, height] of [
        ['A4', 210, 297],
        ['Letter', 215.9, 279.4],
      ] as const) {
        const { pages } = await read(project, { sheets: ['card'], paper })
        expect(pages).toHaveLength(1)
        const [page] = pages
        expect(page!.width).toBeCloseTo(width, 1)
        expect(page!.height).toBeCloseTo(height, 1)
        expect(page!.words).toContain('In this kit')
        expect(page!.words).toContain('crochet hook')
        expect(page!.words).toContain('not for children under three')
        expect(page!.words).toContain('Follow the rules that apply where you live.')
        expect(page!.words).toContain('page 1 of 1')
        expect(page!.words).not.toContain('€')
      }
    },
  )

  it('the card of a blanket with fillers tells them, too: what is made, and how it goes together', async () => {
    const project = withKit(example('orangery-cloth'))
    const plan = planProject(project)
    expect(plan.fillers.length).toBeGreaterThan(0)
    const [card] = (await read(project, { sheets: ['card'] })).pages
    const fillers = new Map<string, number>()
    for (const { motif } of plan.fillers) fillers.set(motif, (fillers.get(motif) ?? 0) + 1)
    for (const { id, name } of plan.fillerMotifs)
      expect(card!.words).toContain(`${fillers.get(id)} × ${name}`)
    expect(card!.words).toMatch(
      new RegExp(`Work ${plan.motifs.length} motifs.* and ${plan.fillers.length} fillers, joined`),
    )
  })

  it('the card and every label carry the logo of the house, and who sells it', async () => {
    const png = encode({ width: 8, height: 4, data: new Uint8Array(8 * 4 * 4).fill(90), channels: 4 })
    const logo = await normalLogo(png)
    const house = { ...NO_HOUSE, logo, name: 'Petal Lane', address: '3 Mill Row\nLeeds' }
    const told = (sheet: SheetName) =>
      mapPages(planProject(withKit(flowers())), { date: DATE, sheets: [sheet], house })
    const logos = (sheet: SheetName) =>
      told(sheet).map(({ figure }) => figure.items.filter(({ kind }) => kind === 'image').length)
    expect(logos('card')).toEqual([1])
    const [labels] = told('labels')
    const titles = labels!.figure.items.filter((item) => item.kind === 'text' && item.text === 'Crochet kit')
    expect(titles.length).toBeGreaterThan(1)
    expect(logos('labels')).toEqual([titles.length])
    const printed = await read(withKit(flowers()), { sheets: ['labels'], house })
    expect(printed.pages[0]!.words).toContain('Sold by: Petal Lane, 3 Mill Row, Leeds')
    expect(printed.pages[0]!.words).not.toContain('with address')
    const { pages } = await read(withKit(flowers()), { sheets: ['card'], house })
    expect(pages[0]!.words).toContain('Sold by Petal Lane, 3 Mill Row, Leeds')
    expect(logos('packing')[0]).toBe(0)
  })

  it('the packing list says what there is more of to spare, and that its share is rounded up', async () => {
    const told = async (kit: Kit) =>
      (await read(withKit(GATE, kit), { sheets: ['packing'] })).pages[0]!.words.replaceAll('\u00a0', ' ')
    const { extras } = KIT
    expect(await told({ count: 25, sparePercent: 5, extras })).toContain(
      '25 kits, with yarn and extras for 2 more to spare (5 % of 25, rounded up).',
    )
    expect(await told({ count: 40, sparePercent: 5 })).toContain(
      '40 kits, with yarn for 2 more to spare (5 % of 40).',
    )
    expect(await told({ count: 40, sparePercent: 0, extras })).toContain('40 kits. Yarn is counted')
  })

  it('the purchases can be sent as an order: fibre, metres, lot, what is left to order, prices with both decimals', () => {
    const yarn = { id: 'y1', name: 'Brick', fibre: 'merino', dyeLot: '12B', ballGrams: 50, ballMetres: 120 }
    const bloom = flowers()
    const [first, ...others] = bloom.yarns!
    const yarns = [{ ...first!, ...yarn, id: first!.id, price: 3.1, onHandBalls: 4.5 }, ...others]
    const plan = planProject(withKit({ ...bloom, yarns }, { count: 6, extras: [{ name: 'hook', price: 2 }] }))
    const run = plan.kit!.run[0]!
    const [balls, leftover, cost] = [run.balls!, run.leftover!, run.cost!]
    const rows = listCsv('purchase', plan)!.split('\r\n')
    expect(rows[1]).toBe(
      `Brick,merino,12B,50,120,${balls},4,${balls - 4},${balls * 50},${Number(leftover.toFixed(2))},3.10,${cost.toFixed(2)},EUR`,
    )
    expect(rows).toContain('hook,,,,,6,,6,,,2.00,12.00,EUR')
  })

  it('the packing list says that stock is not taken off, and of what nobody can work', async () => {
    const wordsOf = async (project: Project) =>
      (await read(project, { sheets: ['packing'] })).pages.map(({ words }) => words).join(' ')
    const none = GATE.yarns!.map((yarn) => ({ ...yarn, onHandGrams: undefined, onHandBalls: undefined }))
    const plain = await wordsOf({ ...GATE, yarns: none })
    expect(plain).not.toContain('what is on hand is not taken off')
    expect(plain).not.toContain('neither written rounds nor instructions')
    const stock = none.map((yarn) => ({ ...yarn, onHandBalls: 2 }))
    const motifs = GATE.motifs!.map((motif) => ({
      ...motif,
      kind: 'measured' as const,
      instructions: undefined,
    }))
    const told = await wordsOf({ ...GATE, yarns: stock, motifs: motifs as Project['motifs'] })
    expect(told).toContain('All of it is bought new here: what is on hand is not taken off')
    // Of each yarn two balls of the size that is sold lie there, so many fewer are ordered.
    expect(told).toContain('how many on hand to order left over cost')
    expect(plain).not.toContain('to order')
    const { run } = planProject({ ...GATE, yarns: stock, motifs: motifs as Project['motifs'] }).kit!
    const balls = run.flatMap(({ packs }) => packs).filter(({ grams }) => grams === stock[0]!.ballGrams)
    expect(balls.length).toBeGreaterThan(0)
    for (const { count } of balls) {
      const there = Math.min(2, count)
      expect(told).toMatch(new RegExp(`50 g each ${count} ${there} ${count - there} `))
    }
    // What is weighed, opened, is told and not counted on.
    const opened = none.map((yarn, i) => ({ ...yarn, onHandGrams: i === 0 ? 35 : undefined }))
    expect(await wordsOf({ ...GATE, yarns: opened })).toMatch(/ g each (\d+) 35 g \1 /)
    expect(told).toContain('it has neither written rounds nor instructions')
  })

  it.each(KINDS)('the packing list of %s is for the seller alone', async (_, project) => {
    const { pages } = await read(project, { sheets: ['packing'] })
    const words = pages.map((page) => page.words).join(' ')
    expect(words).toContain('For the seller; it does not go into the kit.')
    expect(words).toContain('Winding and cutting')
    expect(words).not.toContain('In this kit')
  })

  it('a pattern that nobody has allowed yet is told to the seller, and to nobody who buys', async () => {
    const asked = withKit(GATE, { ...KIT, pattern: { by: 'Ada Loop', allowed: false } })
    const all = async (sheet: SheetName) =>
      (await read(asked, { sheets: [sheet] })).pages.map((page) => page.words).join(' ')
    expect(await all('packing')).toContain('Pattern by Ada Loop, permission still to be asked for.')
    for (const sheet of ['card', 'labels'] as const) {
      expect(await all(sheet)).toContain('Pattern by Ada Loop.')
      expect(await all(sheet)).not.toContain('permission')
    }
  })

  it('a bought cord is bought, put in and told; beads are threaded on it', async () => {
    const cord = { length: 2000, ties: 200, worked: 'bought', price: 1.5, grams: 20 } as const
    const { swags: _, ...rest } = GATE.layout
    const bead = { bead: 'wood bead', size: 12, price: 0.1 }
    const layout = { ...rest, items: [...(rest.items ?? []), bead] }
    const project = withKit({ ...GATE, layout: { ...layout, cord } } as Project)
    const plan = planProject(project)
    const told = plan.kit!.extras.find(({ name }) => name.startsWith('cord, '))!
    expect(told).toMatchObject({ name: 'cord, 240 cm', perKit: 1, run: 12, price: 1.5, cost: 18 })
    const worked = planProject(
      withKit({ ...GATE, layout: { ...layout, cord: { ...cord, worked: 'chain' } } } as Project),
    )
    expect(worked.kit!.extras.some(({ name }) => name.startsWith('cord'))).toBe(false)
    const card = (await read(project, { sheets: ['card'] })).pages[0]!.words
    expect(card).toContain('cord, 240 cm')
    expect(card).toMatch(
      /Thread the beads \(\d+ × wood bead\) in the order of the list before you tie the cord/,
    )
    const packing = (await read(project, { sheets: ['packing'] })).pages.map(({ words }) => words).join(' ')
    expect(packing).toContain('cord, cut')
    expect(listCsv('purchase', plan)).toContain('"cord, 240 cm"')
    expect(listCsv('cord', plan)).toContain('thread one wood bead on the cord')
  })

  it('the card tells the yarn of every part and of the cord, and beads are threaded before the cord begins', async () => {
    const plain = (await read(GATE, { sheets: ['card'] })).pages[0]!.words
    for (const said of [
      'Clotted cream heart, Quince petals',
      'Quince heart, Clotted cream petals',
      'Moss leaf',
    ])
      expect(plain).toContain(said)
    expect(plain).toContain('In Moss: ch 680: 72 for a tie, 536 for the cord')
    expect(plain).toContain(
      'Do not chain them all beforehand: the list says after how many chains you fasten',
    )
    expect(plain).not.toContain('beads (')
    const items = [...(GATE.layout.items ?? []), { bead: 'wood bead', size: 12, price: 0.1 }]
    const beaded = { ...GATE, layout: { ...GATE.layout, items } } as Project
    const { pages } = await read(beaded, { sheets: ['card', 'map'] })
    const told = /Before you begin the cord, thread all the beads \(\d+ × wood bead\) on its yarn/
    for (const page of pages.slice(0, 2)) expect(page.words).toMatch(told)
  })

  it('the card tells the gauge also where it stands on the motifs', async () => {
    const gauge = { stitch: 'sc', stitches: 21, rows: 23, over: 100, hook: 3.25 }
    const motifs = GATE.motifs!.map((motif) => ({ ...motif, gauge }))
    const { pages } = await read({ ...GATE, gauge: undefined, motifs }, { sheets: ['card'] })
    expect(pages[0]!.words).toContain('Hook 3.25 mm (US D-3).')
    expect(pages[0]!.words).toMatch(/21 sc \(single crochet\)/)
  })

  it('paper tells the waste that was counted, not one that was refused', async () => {
    const { pages } = await read({ ...flowers(), allowance: { wastePercent: -5 } })
    const words = pages.map((page) => page.words).join(' ')
    expect(words).toMatch(/Allowed for:? *10 %/)
    expect(words).not.toContain('5 % more than')
  })

  it('a bought cord without a price leaves the cost open, and says so', () => {
    const { swags: _, ...layout } = GATE.layout
    const cord = { length: 2000, worked: 'bought' } as const
    const { kit, findings } = planProject(withKit({ ...GATE, layout: { ...layout, cord } } as Project))
    expect(kit!.runCost).toBeNull()
    expect(findings.find(({ code }) => code === 'kit/no-price')!.message).toContain('cord, 200 cm')
    // Somebody who has put a cord in by name has told everything.
    const named = { ...KIT, extras: [{ name: 'jute cord', price: 2 }] }
    const own = planProject(withKit({ ...GATE, layout: { ...layout, cord } } as Project, named))
    expect(own.kit!.extras.filter(({ name }) => /cord/.test(name))).toHaveLength(1)
    expect(own.kit!.runCost).not.toBeNull()
  })

  it('what is put in leaves the packing list out; everything has neither that nor labels', () => {
    const sections = (sheets?: SheetName[]) =>
      new Set(pagesOf(GATE, { sheets }).map(({ section }) => section))
    expect(sections(['card', 'map'])).toEqual(new Set(['card', 'cord', 'motif']))
    expect(sections(['map'])).toEqual(new Set(['cord', 'motif']))
    expect(sections()).toEqual(new Set(['card', 'cord', 'motif']))
    const blanket = pagesOf(withKit(flowers())).map(({ section }) => section)
    expect(blanket.at(-1)).toBe('card')
    expect(blanket).not.toContain('packing')
  })

  it('what there is none of is refused', () => {
    expect(() => pagesOf(flowers(), { sheets: ['card'] })).toThrow(NoSuchSheetError)
    expect(() => pagesOf(flowers(), { sheets: ['labels'] })).toThrow(/it is for layouts with a kit/)
    expect(() => pagesOf(withKit(GATE, { count: 2001 }), { sheets: ['labels'], labels: 'run' })).toThrow(
      /2,001 labels are too many/,
    )
  })
})

describe('labels', () => {
  it('tell contents, fibre, care, cautions and who sells it, all of them in their own cell', async () => {
    const { pages } = await read(GATE, { sheets: ['labels'] })
    expect(pages).toHaveLength(1)
    const { words, texts, width, height } = pages[0]!
    const count = words.match(/Orchard gate garland Crochet kit/g)!.length
    expect(count).toBeGreaterThanOrEqual(4)
    for (const said of [
      'Contents: Moss yarn 31 g, Quince yarn 30 g, Clotted cream yarn 17 g, crochet hook',
      'Fiber: cotton',
      'Care: __________________ (copy it from the skein band)',
      'Take care: Decoration, not a toy.',
      'not for children under three',
      'Sold by, with address:',
    ])
      expect(words.split(said).length - 1).toBe(count)
    const middle = width / 2
    for (const { x, y, width: wide, size } of texts) {
      expect(size).toBeGreaterThanOrEqual(7 - 1e-6)
      expect(y).toBeLessThan(height - 12)
      if (y > height - 12 - 9) continue
      // Left or right of the middle, where it is cut.
      expect(x + wide <= middle || x >= middle).toBe(true)
    }
  })

  it('are as many as there are kits', async () => {
    const { pages } = await read(GATE, { sheets: ['labels'], labels: 'run' })
    const words = pages.map((page) => page.words).join(' ')
    expect(words.match(/Crochet kit/g)).toHaveLength(25)
    // The last one stands alone on its page; the pages before are full.
    expect(pages.length).toBe(Math.ceil(25 / pages[0]!.words.match(/Crochet kit/g)!.length))
  })

  it('hold however much is in a kit, and say what they leave out', async () => {
    const extras = Array.from({ length: 300 }, (_, i) => ({ name: `bead of the kind number ${i + 1}` }))
    const { pages } = await read(withKit(GATE, { count: 1, extras }), { sheets: ['labels'] })
    expect(pages[0]!.words).toMatch(/and \d+ things more/)
    expect(pages[0]!.words).toContain('Decoration, not a toy.')
  })
})

describe('lists', () => {
  it('of an appliqué say what lies where, the lowest first', () => {
    const project = example('quince-wreath-cushion')
    const plan = planProject(project)
    const lines = listCsv('items', plan)!.trimEnd().split('\r\n')
    expect(lines[0]).toBe('number,motif,colourway,name,mm across,mm down,degrees turned,lies')
    expect(lines).toHaveLength(plan.motifs.length + 1)
    expect(lines[1]).toBe('1,Quince blossom,A,Light,225,85,0,')
    for (const list of ['cord', 'kit', 'purchase'] as const) expect(listCsv(list, plan)).toBeNull()
  })

  it('winding and cutting adds up to the run that is told', () => {
    const plan = planProject(GATE)
    const rows = listCsv('kit', plan)!.trimEnd().split('\r\n').slice(1)
    for (const run of plan.kit!.run) {
      const name = GATE.yarns!.find(({ id }) => id === run.yarn)!.name!
      const cells = rows.find((row) => row.startsWith(`yarn,${name},`))!.split(',')
      expect(Number(cells[3]) * Number(cells[7])).toBe(run.grams + run.spares)
    }
  })
})
