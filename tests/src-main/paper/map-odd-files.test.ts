/** The map of files that hold what nobody expects: other alphabets, words without end, nothing, everything. */
import { describe, expect, it } from 'vitest'
import { renderMap } from '../../../src-main/paper/index'
import type { RenderOptions } from '../../../src-main/paper/index'
import { settled } from '../../../src-core/settled'
import { example } from './examples'
import { DATE, flowers, planned, VERSION } from './projects'
import { readPdf } from './read-pdf'

const OPTIONS: RenderOptions = { date: DATE, version: VERSION }

describe('whatever the file holds', () => {
  it('prints Greek and Cyrillic, and spells what the face lacks', async () => {
    const title = 'Λουλούδια · Цветочный плед · Kwiat ½ – 花🌼\u0000\u202e\ud800 done'
    const { plan } = planned(flowers({ columns: 3, rows: 2 }, { title, designer: 'Ørsted & Łucja' }))
    const { pages, information } = await readPdf(await renderMap(plan, OPTIONS))
    expect(pages[0]!.words).toContain('Λουλούδια · Цветочный плед · Kwiat ½ – Hua:blossom:? done')
    expect(information.Author).toBe('Ørsted & Łucja')
  })

  it('shortens what is too long instead of running off the page', async () => {
    const long = 'Endless '.repeat(60)
    const project = flowers({ columns: 3, rows: 2 }, { title: long })
    const named = {
      ...project,
      yarns: project.yarns!.map((yarn) => ({ ...yarn, name: `${yarn.name} ${'verylongname'.repeat(12)}` })),
      colourways: project.colourways!.map((way) => ({ ...way, name: long })),
    }
    const { plan } = planned(named)
    const { pages } = await readPdf(await renderMap({ ...plan, settled: settled(named) }, OPTIONS))
    for (const page of pages) {
      for (const { x, width, text } of page.texts) {
        expect(x + width, text).toBeLessThanOrEqual(page.width - 11.9)
        expect(x, text).toBeGreaterThanOrEqual(11.9)
      }
    }
  })

  it('prints one page for a project in which nothing is laid out yet', async () => {
    const { plan } = planned({ format: 'petalyard-project', version: 1 })
    const { pages } = await readPdf(await renderMap(plan, OPTIONS))
    expect(pages[0]!.words).toContain('Untitled project')
    expect(pages[0]!.words).toContain('Nothing is arranged yet.')
  })

  it('ends where a row of a table is higher than a page', async () => {
    const named = <Named extends { readonly name?: string }>(all: readonly Named[] | undefined) =>
      (all ?? []).map((each) => ({ ...each, name: `${each.name} ${'endless '.repeat(1_200)}` }))
    for (const kit of [example('orchard-gate-garland'), example('causeway-lap-blanket')]) {
      const { yarns, motifs, colourways } = kit
      const endless = {
        ...kit,
        ...{ yarns: named(yarns), motifs: named(motifs), colourways: named(colourways) },
      }
      const { plan } = planned(endless)
      const { pages } = await readPdf(await renderMap(plan, OPTIONS))
      expect(pages.length).toBeLessThan(200)
    }
  }, 30_000)

  it('prints any number of colourways', async () => {
    const project = flowers({ columns: 8, rows: 6 })
    const ways = Array.from({ length: 60 }, (_, i) => ({
      ...project.colourways![0]!,
      id: `w${i}`,
      code: `Z${i}`,
    }))
    const many = {
      ...project,
      colourways: ways,
      layout: {
        ...flowers().layout!,
        columns: 8,
        rows: 8,
        cells: { fill: { pattern: 'repeat' as const, colourways: ways.map(({ id }) => id) } },
      },
    } as typeof project
    const { pages } = await readPdf(await renderMap(planned(many).plan, OPTIONS))
    expect(pages.filter(({ words }) => words.startsWith('Colorways')).length).toBeGreaterThan(1)
  })
})
