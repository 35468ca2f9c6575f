/** Which motifs have a page, and which share one. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import type { MapPage } from '../../../src-main/paper/index'
import { blanket } from '../../src-core/layout/additions'
import { example, planOf } from './examples'
import { DATE } from './projects'

const motifPages = (project: Project): MapPage[] =>
  mapPages(planOf(project), { date: DATE }).filter(({ sections }) => sections.includes('motif'))

const titles = (page: MapPage): string[] =>
  page.figure.items.flatMap((item) => (item.kind === 'text' && item.weight === 'bold' ? [item.text] : []))

describe('pages of motifs', () => {
  it('show fillers as well as the motif that is laid out, small ones on one page', () => {
    const pages = motifPages(example('orangery-cloth'))
    expect(pages).toHaveLength(1)
    expect(titles(pages[0]!)).toEqual(expect.arrayContaining(['Slice', 'Blossom']))
    expect(pages[0]!.bookmarks).toEqual(['Slice', 'Blossom'])
  })

  it('put measured motifs of a garland and of a panel together where they fit, nothing into the footer', () => {
    for (const name of ['orchard-gate-garland', 'quince-wreath-cushion']) {
      const project = example(name)
      const pages = motifPages(project)
      const named = pages.flatMap(titles)
      for (const motif of project.motifs!) expect(named).toContain(motif.name)
      expect(pages.length).toBeLessThan(project.motifs!.length)
      for (const { figure } of pages)
        for (const item of figure.items)
          if (item.kind === 'text') expect(item.y).toBeLessThan(figure.height - 10)
    }
  })

  it('say how a motif lies on the map where it is drawn another way, and from where it is counted there', () => {
    const told = (project: Project): string =>
      mapPages(planOf(project), { date: DATE })
        .filter(({ sections }) => sections.includes('motif'))
        .flatMap(({ figure }) => figure.items)
        .map((item) => ('text' in item ? item.text : ''))
        .join(' ')
    const square = { outline: 'square', sideToSide: 80 }
    const flower = { outline: 'petals', petals: 8, overTips: 80, overValleys: 60 }
    const rows = { columns: 4, rows: 4 }
    expect(told(blanket(flower, flower, { ...rows, turn: 22.5 }))).toContain(
      'On the map it lies with a dip at the top, not a petal.',
    )
    expect(told(blanket(square, flower, { ...rows, turn: 45 }))).toContain(
      'On the map it lies with a corner at the top, not a side.',
    )
    const upright = told(blanket(square, flower, { ...rows, turn: 0 }))
    expect(upright).not.toContain('On the map it lies')
    expect(upright).toContain('On the map each counts from where its own free corners begin.')
    const seam = { joining: { rule: 'seam', seam: 'whip' } } as const
    expect(told(blanket(square, flower, rows, seam))).toContain('Sewn to others, any corner of it can be')
  })

  it('draw a large motif smaller where its words need the room, and keep the footer free', () => {
    // Eight rounds of dc: a square nearly as wide as the page, whose rounds cup here and there.
    const side = (count: number) => `dc in next ${count} dc`
    const rounds = Array.from({ length: 8 }, (_, at) => ({
      work:
        at === 0
          ? 'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3'
          : `ch 3 (counts as dc), ${side(4 * at - 2)}, (2 dc, ch 2, 2 dc) in next ch-2 sp, *${side(4 * at - 1)}, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times, join with sl st in top of beg ch-3`,
    }))
    const motif = {
      id: 'big',
      name: 'Wide square',
      kind: 'rounds' as const,
      gauge: { stitch: 'dc' as const, stitches: 17, rows: 8, over: 100, hook: 5 },
      foundation: { ring: 'chain' as const, chains: 4 },
      rounds,
    }
    const layout = {
      kind: 'blanket',
      arrangement: 'straight-rows',
      motif: 'big',
      rows: 3,
      columns: 3,
    } as const
    const project: Project = { ...example('orangery-cloth'), motifs: [motif], layout, colourways: [] }
    const plan = createPlanner().plan(project)
    expect(plan.motif!.overTips).toBeGreaterThan(160)
    for (const paper of ['Letter', 'A4'] as const) {
      const pages = mapPages(plan, { date: DATE, paper }).filter(({ sections }) => sections.includes('motif'))
      for (const { figure } of pages) {
        const texts = figure.items.flatMap((item) => (item.kind === 'text' ? [item] : []))
        // Only the footer's own three words stand so low.
        const low = texts.filter(({ y }) => y > figure.height - 17)
        expect([paper, low.length]).toEqual([paper, 3])
      }
    }
  })

  it('begin a page for a motif in written rounds, with its own chart', () => {
    const blanket = example('orangery-cloth')
    const written = example('orchard-wall-throw').motifs!.find(({ id }) => id === 'blossom')!
    const filler = blanket.motifs!.find(({ id }) => id === 'blossom')!
    const motifs = blanket.motifs!.map((motif) => (motif === filler ? { ...written, id: filler.id } : motif))
    const pages = motifPages({ ...blanket, motifs })
    expect(pages.length).toBeGreaterThan(1)
    expect(titles(pages[0]!)).toContain('Slice')
    expect(titles(pages[1]!)).toContain(written.name)
    expect(pages.slice(1).flatMap((page) => page.bookmarks)).toContain('Chart')
  })

  it('head a second page of charts with what goes on there', () => {
    const pages = motifPages(example('orchard-wall-throw'))
    expect(pages.map(titles).filter((each) => each.includes('Chart'))).toHaveLength(1)
    expect(titles(pages.at(-1)!)).toEqual(['Chart, continued'])
  })
})
