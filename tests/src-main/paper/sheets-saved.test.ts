/** No page where none is needed: key and joins share one, charts stand with their motif, motifs are as large as can be. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { boundsOf } from '../../../src-core/figures/path'
import { renderMap } from '../../../src-main/paper/index'
import { example, planOf } from './examples'
import { DATE, flowers, VERSION } from './projects'
import { boxOfPoints, readPaths } from './read-paths'
import { readPdf } from './read-pdf'

const rendered = (project: Project, paper: 'A4' | 'Letter' = 'A4') =>
  renderMap(planOf(project), { date: DATE, version: VERSION, style: 'ink', paper })

const times = (words: string, part: string): number => words.split(part).length - 1

describe('a key with a page of its own', () => {
  it.each([
    ['estuary-dusk-shawl', 'A4'],
    ['market-stall-throw', 'Letter'],
    ['orchard-floor-blanket', 'A4'],
  ] as const)('shares it with the joins: %s on %s', async (name, paper) => {
    const { pages, bookmarks } = await readPdf(await rendered(example(name), paper))
    const [, second] = pages
    expect(second!.words).toMatch(/^Colou?rways /)
    expect(second!.words).toContain('How the motifs meet')
    expect(second!.words).toContain('What the marks mean')
    // The advice stands once on a page.
    expect(times(second!.words, 'In the free petals finish the round')).toBe(1)
    expect(bookmarks.filter(([title]) => title === 'How the motifs meet')).toEqual([
      ['How the motifs meet', 2],
    ])
    expect(pages.filter(({ words }) => words.includes('How the motifs meet'))).toHaveLength(1)
  })
})

describe('the key of several motifs', () => {
  it('says of each colorway which of them it is', async () => {
    const { pages } = await readPdf(await rendered(example('causeway-lap-blanket'), 'A4'))
    expect(pages[0]!.words).toMatch(/Slate × 9 Cobble/)
    expect(pages[0]!.words).toMatch(/Sand × 16 Stone/)
  })
})

describe('the page of a motif', () => {
  it.each(['hearthstone-hexagon', 'slate-roof-lap-blanket', 'saltmarsh-bag'])(
    'draws the motif of %s at its full size, though that leaves no room beside it',
    async (name) => {
      const project = example(name)
      const { width, height } = boundsOf(planOf(project).motif!.outline)
      const bytes = await rendered(project)
      const { pages } = await readPdf(bytes)
      const at = pages.findIndex(({ words }) => words.includes('Measures'))
      expect(pages[at]!.words).toContain('Drawn at its full size when printed at 100')
      const boxes = (await readPaths(bytes))[at]!.map(({ points }) => boxOfPoints(points))
      const drawn = boxes.some(
        ({ left, right, top, bottom }) =>
          Math.abs(right - left - width) < 0.2 && Math.abs(bottom - top - height) < 0.2,
      )
      expect(drawn).toBe(true)
    },
  )

  it('has no page more for a larger drawing', async () => {
    const { pages } = await readPdf(await rendered(example('orchard-floor-blanket')))
    const own = pages.filter(({ words }) => words.includes('Measures'))
    expect(own).toHaveLength(1)
    expect(own[0]!.words).toContain('Large blossom')
    expect(own[0]!.words).toContain('Small blossom')
    // Nor for abbreviations, where the page before has room.
    const listed = pages.filter(({ words }) => words.includes('Abbreviations'))
    expect(listed).toHaveLength(1)
    expect(listed[0]!.words).toContain('Materials')
  })

  it('holds the chart of a few rounds, a little smaller than on a page of its own', async () => {
    const end = 'join with sl st in top of beg ch-3.'
    const work = [
      `Ch 3 (counts as dc), 11 dc in ring, ${end} (12 dc)`,
      `Ch 3 (counts as dc), dc in same st, 2 dc in each st around, ${end} (24 dc)`,
      `Ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, ${end} (36 dc)`,
      `Ch 3 (counts as dc), dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * around, ${end} (48 dc)`,
    ]
    const motif = {
      ...{ id: 'm1', name: 'Round', kind: 'rounds' as const, outline: 'round' as const },
      ...{ foundation: { kind: 'ring', chains: 6 } },
      rounds: work.map((each) => ({ work: each })),
    }
    const joining = { rule: 'seam', seam: 'whip' } as const
    const project = flowers({}, { motifs: [motif as never], colourways: [], joining })
    const layout = { ...project.layout, cells: {} } as never
    const { pages } = await readPdf(await rendered({ ...project, layout }))
    const own = pages.filter(({ words }) => words.includes('Key to the chart'))
    expect(own).toHaveLength(1)
    expect(own[0]!.words).toContain('Measures')
    expect(own[0]!.words).toContain('Rounds as written')
  })

  it.each([6, 18, 28, 40])(
    'leaves no last line of instructions alone on a page, and says that they go on: %d rounds',
    async (rounds) => {
      const project = example('orchard-gate-garland')
      const [first, ...others] = project.motifs as readonly { readonly instructions?: string }[]
      const more = Array.from(
        { length: rounds - 3 },
        (_, i) =>
          `Rnd ${i + 4}: ch 1, sc in same st as joining, *ch 4, sk next sc, sc in next sc; rep from * 4 more times, ch 4, sk next sc, join with sl st in first sc (6 ch-4 sps).`,
      )
      const instructions = [first!.instructions, ...more].join('\n')
      const longer = { ...project, motifs: [{ ...first, instructions }, ...others] as never }
      const { pages } = await readPdf(await rendered(longer))
      const next = pages.filter(({ words }) => words.startsWith('Instructions, continued'))
      expect(next.length).toBeGreaterThan(0)
      for (const { words } of next) {
        const [one, two] = [...words.matchAll(/Rnd (\d+): /g)].map(([, number]) => Number(number))
        expect(words).toMatch(/^Instructions, continued Rnd \d+: /)
        expect(two).toBe(one! + 1)
      }
    },
  )
})
