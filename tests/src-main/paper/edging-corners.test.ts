/** What the page on an edging says of its corners is what the plan counts. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import type { EdgingKind } from '../../../src-core/edging/gallery'
import { firstRoundOf, pickUps } from '../../../src-core/edging/pick-up'
import { edgingCorners } from '../../../src-core/figures/edging-corners'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { cornerRound } from '../../../src-main/paper/words-corners'
import { hexagons, ofKind, squares, WIDTH } from '../../src-core/edging/helpers'
import { record } from '../../src-core/figures/recorder'
import { DATE } from './projects'

function told(kind: EdgingKind, terms?: 'US' | 'UK') {
  const plan = planProject(squares(8, 5, ofKind(kind)))
  const pages = mapPages(plan, { date: DATE, ...(terms && { terms }) })
  const page = pages.find(({ section }) => section === 'edging')!
  const words = record(page.figure)
    .texts.map(({ text }) => text)
    .join(' ')
  return { words, loop: plan.edging!.loops![0]! }
}

describe('the corners of an edging', () => {
  it.each(['picot', 'shell', 'scallop'] as const)('%s: a repeat begins in each corner stitch', (kind) => {
    const { words, loop } = told(kind)
    expect(words).toContain('At each corner the first sc of a repeat goes into the corner stitch: ')
    const sides = [...words.matchAll(/([\d,]+) repeats \(([\d,]+) sts\) along the/g)]
    expect(sides).toHaveLength(4)
    const sum = (at: number) => sides.reduce((all, side) => all + Number(side[at]!.replace(',', '')), 0)
    expect(sum(1)).toBe(loop.repeats[0])
    expect(sum(2)).toBe(loop.made[0])
  })

  it('plain: three go into each corner stitch, and the sides have the others', () => {
    const { words, loop } = told('plain')
    expect(words).toContain('At each corner the 3 sc go into the corner stitch; between corners that is ')
    const [, said] = words.split('between corners that is ')
    const sides = [...said!.split('right side')[0]!.matchAll(/([\d,]+) sts along the/g)]
    expect(sides).toHaveLength(4)
    expect(sides.reduce((all, [, count]) => all + Number(count!.replace(',', '')), 4 * 3)).toBe(loop.made[0])
  })

  it('is said in the terms of the sheet, and of a ripple nothing is said', () => {
    expect(told('shell', 'UK').words).toContain('At each corner the first dc of a repeat goes')
    expect(told('ripple').words).not.toContain('At each corner')
  })

  it('is not said where a repeat runs on past a corner', () => {
    const { loop } = told('shell')
    const [first = 0, ...others] = loop.stretches
    const moved = { ...loop, stretches: [first + 1, ...others.slice(0, -1), others.at(-1)! - 1] }
    expect(cornerRound(loop, '', 1, null)).not.toBe('')
    expect(cornerRound(moved, '', 1, null)).toBe('')
  })
})

/** The page on the edging of a project, and its plan. */
function pageOf(project: Project) {
  const plan = planProject(project)
  const page = mapPages(plan, { date: DATE }).find(({ section }) => section === 'edging')!
  const words = record(page.figure)
    .texts.map(({ text }) => text)
    .join(' ')
  return { plan, words }
}

/** Hexagons in offset rows, edged. */
const offset = (more: Partial<BlanketLayout>): Project => {
  const rings = hexagons(2, ofKind('shell'))
  const layout = { ...rings.layout, arrangement: 'offset-rows', alternateRows: 'oneFewer', ...more }
  return { ...rings, layout: layout as BlanketLayout }
}

describe('sides of an edging in words and on the drawing', () => {
  it('a shawl that points down has its long side at the top, whichever corner is the first', () => {
    const outlineShape = { kind: 'triangle', size: 1000, height: 440, points: 'down' } as const
    const { plan, words } = pageOf(offset({ columns: 14, rows: 7, outlineShape }))
    const { corners, stretches } = edgingCorners(plan)
    expect(corners).toHaveLength(4)
    const told = [...words.matchAll(/(\d+) along the ([a-z ]+?) \(corner (\d) to (\d)\)/g)]
    expect(
      told
        .slice(0, 4)
        .map(([, , side]) => side)
        .sort(),
    ).toEqual(['bottom', 'left side', 'right side', 'top'])
    const middle = (axis: 'x' | 'y') => corners.reduce((sum, corner) => sum + corner[axis], 0) / 4
    for (const [, count, side, from, to] of told.slice(0, 4)) {
      const stretch = stretches.find((each) => each.from === Number(from) && each.to === Number(to))!
      expect(stretch.stitches).toBe(Number(count))
      const lies = {
        top: stretch.y < middle('y'),
        bottom: stretch.y > middle('y'),
        'left side': stretch.x < middle('x'),
        'right side': stretch.x > middle('x'),
      }
      expect(lies[side as keyof typeof lies], side).toBe(true)
    }
    const top = told.find(([, , side]) => side === 'top')!
    expect(Number(top[1])).toBe(Math.max(...stretches.map(({ stitches }) => stitches)))
  })

  it('a motif at the end of its row between two half motifs gives the stitches of one of its sides', () => {
    const { plan, words } = pageOf(offset({ columns: 6, rows: 7, halves: true }))
    expect(plan.halves).toHaveLength(6)
    const loop = plan.edging!.loops![0]!
    const picked = pickUps(plan, firstRoundOf(loop))
    const given = (ids: readonly string[]) =>
      picked.filter(({ motif }) => ids.includes(motif.id)).map(({ stitches }) => stitches)
    // A side of a hexagon is 60 mm / √3 long, seven stitches of 5 mm.
    const ends = given(['3,1', '5,1', '3,6', '5,6'])
    expect(ends).toHaveLength(4)
    for (const stitches of ends)
      expect(Math.abs(stitches - 60 / Math.sqrt(3) / WIDTH)).toBeLessThanOrEqual(1.5)
    const halves = picked.filter(({ isHalf }) => isHalf).map(({ stitches }) => stitches)
    expect(halves).toHaveLength(6)
    const range = [...new Set([Math.min(...halves), Math.max(...halves)])].join('–')
    expect(words).toContain(`${range} sts from each of 6 half motifs.`)
    expect(picked.reduce((sum, { stitches }) => sum + stitches, 0)).toBe(firstRoundOf(loop).stitches)
  })
})
