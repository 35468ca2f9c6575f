/** What the page on an edging says of its corners is what the plan counts. */
import { describe, expect, it } from 'vitest'
import type { EdgingKind } from '../../../src-core/edging/gallery'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { cornerRound } from '../../../src-main/paper/words-corners'
import { ofKind, squares } from '../../src-core/edging/helpers'
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
    const sides = [...said!.split('left side')[0]!.matchAll(/([\d,]+) sts along the/g)]
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
    expect(cornerRound(loop, '', 1)).not.toBe('')
    expect(cornerRound(moved, '', 1)).toBe('')
  })
})
