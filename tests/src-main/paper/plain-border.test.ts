/** A border of plain rounds has a part of its own: how it is joined, counted side by side, closed and ended. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Hand, Project } from '../../../shared-types/project'
import { pickUps } from '../../../src-core/edging/pick-up'
import { plainSidesWords } from '../../../src-core/figures/edging-sides'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { phonePage } from '../../../src-main/phone/page'
import { hexagons, squares } from '../../src-core/edging/helpers'
import { readExample } from '../../src-core/joining-round/flowers'
import { record } from '../../src-core/figures/recorder'
import { DATE } from './projects'

/** Whatever is printed on a page. */
const wordsOf = (page: ReturnType<typeof mapPages>[number]): string =>
  record(page.figure)
    .texts.map(({ text }) => text)
    .join(' ')

function told(project: Project, terms?: 'US' | 'UK') {
  const plan = planProject(project)
  const pages = mapPages(plan, { date: DATE, ...(terms && { terms }) })
  const words = pages.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)).join(' ')
  const from = words.search(/(Border|Edging) \d+ rounds? in /)
  return { plan, words, section: words.slice(from, words.indexOf('weave in', from) + 20) }
}

describe('a border of plain rounds on paper', () => {
  // 8 squares of 60 mm across and 5 down at 5 mm a stitch; three sc at a right angle lie flat (common practice).
  it.each([
    ['right', 'top right', 'counterclockwise', 'left side', 'right side'],
    ['left', 'top left', 'clockwise', 'right side', 'left side'],
  ] as [Hand, string, string, string, string][])(
    'says to a %s-hander where the yarn is joined, and how many stitches each side takes',
    (hand, corner, way, second, last) => {
      const { plan, section } = told({ ...squares(8, 5, { rounds: ['sc', 'sc'] }), hand })
      const [line] = plan.edging!.plain!
      const [a, b, c, d] = line!.stretches
      expect([a, b, c, d].map((count, i) => Math.abs(count! - (i % 2 === 0 ? 96 : 60)) <= 2)).toEqual(
        Array.from({ length: 4 }, () => true),
      )
      expect(a! + b! + c! + d!).toBe(plan.edging!.rounds[0]!.stitches)
      expect(section).toContain(
        `Round 1 Right side facing, join the yarn in the ${corner} corner. Going ${way}, work ${line!.stitches} sc along the edge, each side counted from its corner stitch: ${a} along the top, ${b} along the ${second}, ${c} along the bottom and ${d} along the ${last}. Work 3 into one place at each corner, so that it lies flat; the middle one is the corner stitch.`,
      )
      expect(plainSidesWords(plan, 'US')).toEqual([
        `Round 1, ${way} from the ${corner} corner: ${a} along the top, ${b} along the ${second}, ${c} along the bottom and ${d} along the ${last}`,
      ])
      const picked = pickUps(plan, line!)
      expect(picked.reduce((sum, { stitches }) => sum + stitches, 0)).toBe(line!.stitches)
      expect(section).toMatch(/That is 1[12](–1\d)? sts from each of 18 motifs along the sides/)
      expect(section).toContain(
        `Round 2 sc in each stitch, 3 in each of 4 corners: ${line!.stitches + 8} sc.`,
      )
    },
  )

  it('says how rounds begin and close, in the terms of the sheet, and what is done at the end', () => {
    const { section } = told(squares(8, 5, { rounds: ['sc', 'dc'] }))
    expect(section).toContain(
      'Begin each round of sc with ch 1, not counted as a stitch, and close it with a sl st in its first sc.',
    )
    expect(section).toContain(
      'Begin each round of dc with ch 3, counted as its first dc, and close it with a sl st in the top of these.',
    )
    expect(section).toContain('Fasten off after the last round in each yarn')
    expect(section).toContain('weave in 2 ends')
    expect(told(squares(8, 5, { rounds: ['sc'] }), 'UK').section).toContain(
      'Begin each round with 1 ch, not counted as a stitch, and close it with a ss in its first dc.',
    )
  })

  it('names no sides where there are six corners, and counts each end of a round by itself', () => {
    const six = told(hexagons(2, { rounds: ['sc'] }))
    expect(six.section).toMatch(
      /join the yarn in a corner\. .*, each side counted from its corner stitch: \d+ from each corner to the next\./,
    )
    expect(six.section).toMatch(
      /Work 2 in one place at each of 18 outer tips and 2 together at each of 12 dips/,
    )
    // Two rings: six in the middles of the sides with two sides free, six at the corners with three.
    expect(six.section).toMatch(
      /That is \d+(–\d+)? sts from each of 6 motifs with 2 free sides, and \d+(–\d+)? sts from each of 6 motifs with 3 free sides\./,
    )
    const base = squares(8, 5, { rounds: ['sc'] })
    const bag = { ...base, layout: { ...(base.layout as BlanketLayout), inTheRound: true } } as Project
    const { section } = told(bag)
    expect(
      section.match(/join the yarn anywhere along the edge\. Going from right to left, work 96 sc/g),
    ).toHaveLength(2)
    expect(section).toContain('weave in 4 ends')
  })

  it('is what the list of materials points at, and what a phone shows', () => {
    const project = squares(8, 5, { rounds: ['sc'] })
    const { plan, words } = told(project)
    expect(words).toContain(`Round 1: ${plan.edging!.rounds[0]!.stitches} sc. See Border.`)
    expect(words).not.toContain('number in a square')
    expect(phonePage(plan, { version: '1' })).toContain('join the yarn in the top right corner')
  })
})

describe('plain rounds that written ones are worked into', () => {
  it('say where the yarn is joined, and how each of them begins and is closed', () => {
    const pages = mapPages(planProject(readExample('orchard-floor-blanket')), { date: DATE })
    const words = pages.map(wordsOf).join(' ')
    expect(words).toContain(
      'Round 1 Right side facing, join the yarn in a free tip. Going anticlockwise, work dc in every free tip, between',
    )
    expect(words).toContain(
      'Begin round 1 with 1 ch, not counted as a stitch, and close it with a ss in its first dc. Begin round 2 with 2 ch, not counted as a stitch, and close it with a ss in its first htr. Fasten off',
    )
    // The written round says itself how it ends.
    expect(words).not.toContain('Begin round 3')
  })
})

describe('corners of a border that bridges', () => {
  it.each([
    [
      12,
      'the outermost tip, or the end of the straight side of a half motif, or midway between the two outermost',
    ],
    [13, 'the outermost tip, or midway between the two outermost'],
  ])('of %i rows with half motifs lie where the rounds say: %s', (rows, where) => {
    const slate = readExample('slate-roof-lap-blanket')
    const layout = slate.layout as BlanketLayout
    const edging = { ...layout.edging, style: 'bridge', rounds: ['dc', 'tr'] } as BlanketLayout['edging']
    const { words } = told({ ...slate, layout: { ...layout, rows, edging } as BlanketLayout })
    expect(words).toContain(`in one place at each of 4 corners (${where})`)
  })
})

describe('what the drawing of a border says', () => {
  it('has letters for tips that its rounds work in different ways, on a page of its own where that takes one', () => {
    const project = readExample('orangery-cloth')
    for (const paper of ['A4', 'Letter'] as const) {
      const pages = mapPages(planProject(project), { date: DATE, paper })
      const words = wordsOf(pages.find(({ section }) => section === 'edging')!)
      expect(words).toContain('Letters along the edge mark the tips and dips that the rounds name.')
      expect(words).toMatch(/4 corners \(a\), .* other outer tips \(b\) and .* inner tips \(c\)/)
    }
  })

  it('numbers several holes, which its rounds name, and says that these go round the other way', () => {
    const layout = readExample('market-stall-throw').layout as BlanketLayout
    const without = ['4,4', '5,4', '4,5', '5,5', '12,4']
    const cells = { ...layout.cells, motifs: Object.fromEntries(without.map((id) => [id, null])) }
    const project = { ...readExample('market-stall-throw'), layout: { ...layout, cells } } as Project
    const pages = mapPages(planProject(project), { date: DATE })
    const words = pages.map(wordsOf).join(' ')
    expect(words).toContain('Going counterclockwise, around holes clockwise, work sc')
    expect(words).toMatch(
      /\(\d+ around the outside, \d+ around hole 1 in rows 4 and 5 and \d+ around hole 2 in row 12\)/,
    )
    expect(words).toMatch(/(hole )?1 2 Holes, .* have the numbers that the rounds call them by/)
  })
})
