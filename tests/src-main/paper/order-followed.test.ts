/**
 * M33 on paper: somebody who has nothing but the pages follows the order of work box by box, and has in the end joined
 * what the plan joins, place by place. What is shared by many motifs is read where it is told once.
 */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { pieceAt } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { renderMap } from '../../../src-main/paper/index'
import { blanket, ROUND } from '../../src-core/layout/additions'
import { Follower } from './followed/follow'
import { readOrder } from './followed/read-order'
import { EXAMPLES, planOf } from './examples'
import { DATE, flowers, VERSION } from './projects'
import { readPdf } from './read-pdf'

const knot = { name: 'Knot', outline: 'petals', petals: 3, overTips: 12, overValleys: 8 }
const eight = { outline: 'petals', petals: 8, overTips: 80, overValleys: 60 }
const square = { outline: 'square', sideToSide: 80 }

const without = (project: Project, ...ids: string[]): Project => {
  const layout = project.layout as Extract<Project['layout'], { kind: 'blanket' }>
  const motifs = Object.fromEntries(ids.map((id) => [id, null]))
  return { ...project, layout: { ...layout, cells: { ...layout.cells, motifs } } as never }
}

const round = (project: Project): Project =>
  ({ ...project, layout: { ...project.layout, inTheRound: true }, order: 'one-way' }) as Project

const sorted = (ids: readonly string[]): string[] => [...new Set(ids)].sort()

const BLANKETS = EXAMPLES.map(({ name, project }) => [name, project] as const).filter(
  ([, project]) => project.layout?.kind === 'blanket',
)

const PROJECTS: readonly (readonly [string, Project])[] = [
  ...BLANKETS,
  ['offset rows', flowers()],
  ['offset rows, left hand', flowers({}, { hand: 'left' })],
  ['straight rows', flowers({ arrangement: 'straight-rows', turn: 0 })],
  ['straight rows of eight petals, one way', blanket(eight, knot, { columns: 7, rows: 6, turn: 22.5 }, { order: 'one-way' })],
  ['rings from the centre', flowers({ arrangement: 'rings', rings: 5 }, { order: 'centre' })],
  ['rows from the centre', flowers({ columns: 9, rows: 8 }, { order: 'centre' })],
  ['by colourway', flowers({ columns: 8, rows: 8 }, { order: 'colourway' })],
  ['by hand', flowers({ columns: 6, rows: 6 }, { order: ['4,4', '1,1', '3,4', '4,3', '5,5'] })],
  ['holes', without(flowers(), '3,4', '3,5', '6,6', '8,1')],
  ['half motifs and fillers', blanket(ROUND, knot, { arrangement: 'offset-rows', columns: 6, rows: 5, halves: true, fillers: { motif: 'f' } })],
  ['half motifs with petals', flowers({ halves: true, alternateRows: 'oneFewer' })],
  ['round fillers among petals', blanket(eight, { outline: 'round', across: 25 }, { columns: 8, rows: 9, fillers: { motif: 'f' } })],
  ['fillers from the centre', blanket(eight, { outline: 'round', across: 25 }, { columns: 7, rows: 7, fillers: { motif: 'f' } }, { order: 'centre' })],
  ['squares between octagons', blanket({ outline: 'octagon', sideToSide: 100 }, { outline: 'square', sideToSide: 41 }, { columns: 6, rows: 5, fillers: { motif: 'f' } }, { joining: { rule: 'edges' } })],
  ['squares, left hand, between octagons from the centre', blanket({ outline: 'octagon', sideToSide: 100 }, { outline: 'square', sideToSide: 41 }, { columns: 5, rows: 5, fillers: { motif: 'f' } }, { order: 'centre', hand: 'left' })],
  ['squares', blanket(square, knot, { columns: 7, rows: 6 })],
  ['in the round', round(flowers({ columns: 10, rows: 6, arrangement: 'straight-rows' }))],
  ['offset rows in the round', round(flowers({ columns: 10, rows: 6 }))],
  ['a seam', flowers({ columns: 8, rows: 8 }, { joining: { rule: 'seam', seam: 'whip' } })],
] // prettier-ignore

describe.each(PROJECTS)('%s, followed from its pages', (_, project) => {
  const plan = planOf(project)

  it('comes to the joins of the plan, motif by motif', async () => {
    expect(plan.order.length).toBeGreaterThan(15)
    const { pages } = await readPdf(await renderMap(plan, { date: DATE, version: VERSION }))
    const order = readOrder(pages)
    const label = (id: string): string => pieceAt(plan, id)!.label
    // Every box once, in the order in which it is worked.
    expect(order.boxes.map((box) => box.label)).toEqual(plan.order.map(({ motif }) => label(motif)))
    const follower = new Follower(plan, order)
    const isSewn = plan.settled.joining.rule === 'seam'
    plan.order.forEach((step, i) => {
      const box = order.boxes[i]!
      const piece = pieceAt(plan, step.motif)!
      if (box.row !== null && step.kind === 'motif') expect(box.row).toBe(piece.row)
      const words = follower.wordsOf(box)
      const hostOf = (anchor: string): string =>
        anchor === 'side'
          ? step.joins.map((join) => join.anchor).join(' ')
          : step.joins.find((join) => join.anchor === anchor)!.with[0]!.anchor
      if (isSewn && words === '') {
        // The map tells it all: to whatever is there already, along every side.
        const before = order.boxes.slice(0, i).map((each) => each.label)
        const along = step.joins.filter((join) => join.anchor.startsWith('side'))
        expect(sorted(follower.beside(box.label, before)), box.label).toEqual(
          sorted(along.flatMap((join) => join.with.map(({ motif }) => motif))),
        )
        return
      }
      const followed = follower.follow(box.label, words, hostOf)
      const told = `${box.label}: ${words}`
      if (isSewn) {
        // Corners close where the seams along the sides cross: nobody sews them by themselves.
        const along = step.joins.filter((join) => join.anchor.startsWith('side'))
        const met = (along.length > 0 ? along : step.joins).flatMap((join) =>
          join.with.map(({ motif }) => motif),
        )
        expect(sorted(followed.map(({ host }) => host)), told).toEqual(sorted(met))
        return
      }
      expect(followed, told).toHaveLength(step.joins.length)
      for (const {
        anchor,
        with: [first],
      } of step.joins) {
        const same = followed.filter(
          ({ anchors, host, places }) =>
            anchors.includes(anchor) && host === first!.motif && places.includes(first!.anchor),
        )
        expect(
          same.length,
          `${told} (${anchor} to ${first!.motif} ${first!.anchor}; ${JSON.stringify(followed)})`,
        ).toBe(1)
      }
    })
  })
})

describe('a large order of work', () => {
  const pagesOf = async (project: Project): Promise<number> => {
    const { pages } = await readPdf(await renderMap(planProject(project), { date: DATE, version: VERSION }))
    return pages.filter(
      ({ words }) => words.includes(' Order of work, row') || / Order of work page/.test(words),
    ).length
  }

  it('takes at most eight pages for 2,500 motifs, and for 721 from the centre', async () => {
    expect(await pagesOf(flowers({ columns: 50, rows: 50 }))).toBeLessThanOrEqual(8)
    const rings = flowers({ arrangement: 'rings', rings: 15 }, { order: 'centre' })
    expect(planProject(rings).motifs).toHaveLength(721)
    const pages = await pagesOf(rings)
    expect(pages).toBeGreaterThan(0)
    expect(pages).toBeLessThanOrEqual(8)
  })

  it.each(['scatter', 'no-two-alike'] as const)(
    'takes at most eight pages by colourway for 2,500 motifs filled so that hardly two have neighbours alike: %s',
    { timeout: 60_000 },
    async (pattern) => {
      const colourways = flowers()
        .colourways!.slice(0, 4)
        .map(({ id }) => id)
      const cells = { fill: { pattern, colourways, seed: 5 } }
      const plan = planProject(flowers({ columns: 50, rows: 50, cells }, { order: 'colourway' }))
      const { pages } = await readPdf(await renderMap(plan, { date: DATE, version: VERSION }))
      const told = pages.filter(({ words }) => / Order of work.* page/.test(words))
      expect(told.length).toBeGreaterThan(0)
      expect(told.length).toBeLessThanOrEqual(8)
      expect(told[0]!.words).toContain('at every dot on the map that it shares with one of them')
      const { boxes, ways } = readOrder(pages)
      expect(ways.size).toBe(0)
      const inOrder = plan.order.map(({ motif }) => pieceAt(plan, motif)!)
      expect(boxes.map(({ label, row }) => [label, row])).toEqual(
        inOrder.map(({ label, row }) => [label, row]),
      )
      // Who joins each at every dot to what is there already has joined what the plan joins.
      const place = new Map(plan.order.map(({ motif }, i) => [motif, i]))
      const dots = new Map<string, string[]>()
      for (const { members } of plan.joins)
        for (const { motif, anchor } of members)
          if (members.some((other) => place.get(other.motif)! < place.get(motif)!))
            dots.set(motif, [...(dots.get(motif) ?? []), anchor])
      for (const { motif, joins } of plan.order)
        expect((dots.get(motif) ?? []).toSorted(), motif).toEqual(
          joins.map(({ anchor }) => anchor).toSorted(),
        )
    },
  )
})
