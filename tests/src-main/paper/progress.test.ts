import { describe, expect, it } from 'vitest'
import type { FigureItem } from '../../../src-core/figures/figure'
import { mapGround } from '../../../src-core/figures/map-ground'
import { overviewMap } from '../../../src-core/figures/overview-map'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper'
import { first, project, weighed } from '../../src-core/progress/project'

const DATE = new Date('2026-12-05T10:00:00Z')
const textsOf = (items: readonly FigureItem[]): string[] =>
  items.flatMap((item) =>
    item.kind === 'text' ? [item.text] : item.kind === 'group' ? textsOf(item.items) : [],
  )
const pagesOf = (of: ReturnType<typeof project>) => mapPages(planProject(of), { date: DATE })
const strokesOf = (of: ReturnType<typeof project>, style: 'colour' | 'ink') => {
  const { figure } = overviewMap(mapGround(planProject(of), style), 180, 180)
  return JSON.stringify(figure.items).length
}

describe('the progress on paper', () => {
  it('has a page once something is made: what is left, how far the yarn goes, day by day', () => {
    const begun = weighed(project({ made: first(4, '2026-12-01') }), 'moss', { grams: 14, at: 4 })
    const page = pagesOf(begun).find(({ section }) => section === 'progress')!
    const text = textsOf(page.figure.items).join(' ')
    expect(text).toContain('4 of 12 motifs made, 4 joined.')
    expect(text).toContain(
      'At this rate Moss lasts to motif 11 of 12: 16 g go into what is left, so 2 g more are needed.',
    )
    expect(text).toMatch(/Day by day.*December 1, 2026 4/)
    const materials = pagesOf(begun).filter(({ sections }) => sections.includes('materials'))
    expect(materials.flatMap(({ figure }) => textsOf(figure.items)).join(' ')).toContain(
      'Moss: needed and on hand are what is still to be used and what was left at the weighing',
    )
    expect(pagesOf(project()).some(({ section }) => section === 'progress')).toBe(false)
  })

  it('ticks what is done in the list, says of the rest that it is made, and tells the ticks beside the map', () => {
    const all = (of: ReturnType<typeof project>, section: string) =>
      pagesOf(of)
        .filter((page) => page.section === section)
        .flatMap(({ figure }) => textsOf(figure.items))
    const some = project({ made: first(5), joined: first(3) })
    const boxes = all(some, 'order').filter((text) => /^[☐☑] \d/.test(text))
    expect(boxes.filter((text) => text.startsWith('☑')).map((text) => text.match(/\d+/)![0])).toEqual([
      '1',
      '2',
      '3',
    ])
    expect(boxes.filter((text) => text.endsWith(', made')).map((text) => text.match(/\d+/)![0])).toEqual([
      '4',
      '5',
    ])
    expect(boxes).toHaveLength(12)
    const legend = all(some, 'overview').join(' ')
    expect(legend).toContain(
      'A dark tick on light ground: made, not joined yet; a light tick on dark ground:',
    )
    expect(all(project(), 'overview').join(' ')).not.toContain('tick')
    expect(all(project(), 'order').join(' ')).not.toMatch(/☑|already/)
  })

  it('stands on the map as ticks, in color and in ink, and the motifs keep their looks', () => {
    for (const style of ['colour', 'ink'] as const) {
      const begun = project({ made: first(5), joined: first(2) })
      expect(strokesOf(begun, style)).toBeGreaterThan(strokesOf(project(), style))
      const { figure } = overviewMap(mapGround(planProject(begun), style), 180, 180)
      const uses = JSON.stringify(figure.items).match(/"kind":"use"/g)
      const bare = overviewMap(mapGround(planProject(project()), style), 180, 180).figure
      expect(uses).toEqual(JSON.stringify(bare.items).match(/"kind":"use"/g))
    }
  })
})
