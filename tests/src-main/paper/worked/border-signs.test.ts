/** The letters on the drawing of a border: its words name them, and nothing stands on them. */
import { describe, expect, it } from 'vitest'
import { FIGURE_WIDTH } from '../../../../src-core/figures/lettering'
import { planProject } from '../../../../src-core/plan'
import { mapPages } from '../../../../src-main/paper'
import { phonePage } from '../../../../src-main/phone/page'
import { record } from '../../../src-core/figures/recorder'
import { example } from '../examples'
import { DATE, VERSION } from '../projects'

const pagesOf = (name: string, paper: 'A4' | 'Letter') => {
  const project = example(name)
  const plan = planProject({ ...project, sheet: { ...project.sheet, paper } as never })
  return { plan, pages: mapPages(plan, { date: DATE }) }
}

describe('the drawing of a border', () => {
  it.each([
    ['estuary-dusk-shawl', 'A4'],
    ['estuary-dusk-shawl', 'Letter'],
    ['orangery-cloth', 'Letter'],
  ] as const)('of %s on %s has the letters that its words name', (name, paper) => {
    const letters = ['a', 'b', 'c']
    const { plan, pages } = pagesOf(name, paper)
    const page = pages.find(({ label }) => /Border|Edging/.test(label))!
    const { texts } = record(page.figure)
    const words = texts.map(({ text }) => text).join(' ')
    for (const letter of letters) {
      expect(words).toContain(`(${letter})`)
      expect(texts.filter(({ text }) => text === letter).length).toBeGreaterThan(0)
    }
    const signs = texts.filter(({ text, size }) => size === 7 && /^([a-z]|\d+)$/.test(text))
    const wide = ({ text, size }: (typeof signs)[number]) => text.length * size * FIGURE_WIDTH * 0.3528
    for (const one of signs)
      for (const other of signs)
        if (one !== other && Math.abs(one.y - other.y) < 1.6)
          expect(Math.abs(one.x - other.x)).toBeGreaterThan((wide(one) + wide(other)) / 2)
    // The page for a phone has no such drawing.
    expect(phonePage(plan, { version: VERSION })).not.toMatch(/tips? \([a-z]\)/)
  })

  it('has none where they would stand on each other, and no round names them', () => {
    const project = example('orangery-cloth')
    const layout = { ...project.layout, columns: 36, rows: 36, target: undefined } as never
    const pages = mapPages(planProject({ ...project, layout }), { date: DATE })
    const border = pages.filter(({ label }) => /Border/.test(label))
    const words = border.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)).join(' ')
    expect(words).toMatch(/5 in one place at each of 4 corners, 3 in one place at/)
    expect(words).not.toMatch(/Letters along the edge|tips? \([a-z]\)/)
  })

  it('is not there where all tips and all dips are worked alike', () => {
    const { pages } = pagesOf('limekiln-cushion', 'A4')
    const words = pages.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)).join(' ')
    expect(words).toContain('2 together at each of 12 dips')
    expect(words).not.toContain('Letters along the edge')
  })
})
