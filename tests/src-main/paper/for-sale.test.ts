/** A pattern with a title page is for whoever buys it: what its designer has, pays and finds in it stays off. */
import { describe, expect, it } from 'vitest'
import type { Project, Yarn } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import type { MapOptions } from '../../../src-main/paper/index'
import { first, project } from '../../src-core/progress/project'
import { record } from '../../src-core/figures/recorder'
import { DATE, flowers } from './projects'

/** Words of all pages, or of those of a section. */
function wordsOf(project: Project, titlePage: boolean, section?: string): string {
  return mapPages(planProject(project), { date: DATE, titlePage })
    .filter((page) => section === undefined || page.section === section)
    .flatMap(({ figure }) => record(figure).texts.map(({ text }) => text))
    .join(' ')
    .replace(/\s+/g, ' ')
}

const base = flowers({ columns: 4, rows: 5 })
const withYarns = (change: (yarn: Yarn, index: number) => Partial<Yarn>): Project => ({
  ...base,
  currency: 'EUR',
  yarns: base.yarns!.map((yarn, i) => ({ ...yarn, ...change(yarn, i) })),
})
const ALIKE = { ballGrams: 50, ballMetres: 125, price: 4.2, onHandGrams: 400, fibre: '' }

describe('a pattern for sale', () => {
  it('says how large a ball of each yarn is: once where all are alike, else of each', () => {
    const alike = wordsOf(
      withYarns(() => ALIKE),
      true,
      'title',
    )
    expect(alike.match(/one skein is 50 g \(1\.8 oz\), 125 m \(137 yd\)/g)).toHaveLength(1)
    const own = withYarns((_, i) => ({ ...ALIKE, ballGrams: 50 + 25 * (i % 2) }))
    const told = wordsOf(own, true, 'title')
    const { yarns } = planProject(own)
    yarns.forEach(({ id, balls }) => {
      const { name, ballGrams } = own.yarns!.find((yarn) => yarn.id === id)!
      expect(told).toMatch(new RegExp(`${name}: [^:]*, ${balls} skeins? of ${ballGrams} g \\(`))
    })
    // What nobody entered is not made up.
    const unknown = wordsOf(
      withYarns(() => ({ ballGrams: undefined, ballMetres: undefined })),
      true,
      'title',
    )
    expect(unknown).not.toMatch(/one skein is| of \d+ g \(/)
  })

  it('leaves off what its designer has, buys and pays; a maker’s own sheets have it', () => {
    const project = withYarns((_, i) => ({ ...ALIKE, onHandGrams: i === 0 ? 0 : 400 }))
    const own = wordsOf(project, false, 'materials')
    expect(own).toMatch(/on hand to buy cost/)
    expect(own).toContain('€4.20')
    expect(own).toContain('400 g')
    expect(own).toContain('plan again')
    const sold = wordsOf(project, true)
    expect(sold).not.toMatch(/on hand|to buy|\bcost\b|400 g|€|plan again/i)
    // A column in which no yarn has anything is no column.
    const bare = wordsOf(
      withYarns(() => ({ ...ALIKE, onHandGrams: 0, price: undefined })),
      false,
      'materials',
    )
    expect(bare).toMatch(/skeins to buy Brick/)
    expect(bare).not.toMatch(/on hand|\bcost\b/)
    // Of each yarn all that it takes is bought.
    for (const { balls } of planProject(project).yarns) expect(sold).toContain(` ${balls} `)
    expect(sold).toContain('Buy each color in one dye lot.')
  })
})

describe('what is for a buyer while its designer makes one', () => {
  const begun = project({ made: first(4, '2026-12-01') })
  const kit: Project = { ...begun, layout: { ...begun.layout!, kit: { count: 10, price: 90 } } }
  const told = (of: Project, more: Partial<MapOptions> = {}) => {
    const pages = mapPages(planProject(of), { date: DATE, ...more })
    return { sections: pages.map(({ section }) => section), drawn: JSON.stringify(pages) }
  }

  it.each([
    ['a kit', kit, {}],
    ['a pattern with a title page', begun, { titlePage: true }],
  ] as const)('%s has no ticks of hers and no page of progress', (_, of, more) => {
    const { made: __, ...bare } = of
    expect(told(of, more).sections).not.toContain('progress')
    expect(told(of, more).drawn).toBe(told(bare, more).drawn)
    const wished = told(of, { ...more, leaveOut: [] })
    expect(wished.sections).toContain('progress')
    expect(wished.drawn).not.toBe(told(bare, { ...more, leaveOut: [] }).drawn)
  })

  it('her own sheets have both', () => {
    expect(told(begun).sections).toContain('progress')
  })

  it('a kit has its costs on the packing list, which comes only by name', () => {
    expect(told(kit).sections).not.toContain('packing')
    expect(told(kit).sections).toContain('card')
    expect(told(kit, { sheets: ['packing'] }).sections).toEqual(['packing'])
  })
})
