/** The numbers of petals in small drawings: those of the page of joins, and those of the ways to join. */
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../../src-core/figures/figure'
import { MM_PER_POINT } from '../../../src-core/figures/figure'
import { chooseJoinDetail, isDetailLegible, joinDetailFigure } from '../../../src-core/figures/join-detail'
import { CAPITAL_HEIGHT, FIGURE_WIDTH } from '../../../src-core/figures/lettering'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { neighbourhoodFigure } from '../../../src-core/figures/neighbourhood'
import { orderList } from '../../../src-core/figures/order-list'
import { planProject } from '../../../src-core/plan'
import { readExample } from '../joining-round/flowers'
import { record } from './recorder'

const shapes = (figure: Figure) => {
  const { texts, paths } = record(figure)
  const boxes = texts.map(({ text, x, y, size }) => {
    const width = text.length * size * FIGURE_WIDTH * MM_PER_POINT
    const top = y - size * CAPITAL_HEIGHT * MM_PER_POINT
    return { text, left: x - width / 2, right: x + width / 2, top, bottom: y }
  })
  const arrows = paths.filter(({ paint }) => paint.width === 0.4).flatMap(({ points }) => points)
  return { boxes, arrows }
}

/** mm between figures that are told apart. */
const AIR = 0.15

/** Texts that run into each other or into the points of an arrow. */
function collisions(figure: Figure): string[] {
  const { boxes, arrows } = shapes(figure)
  return boxes.flatMap((one, i) => [
    ...boxes
      .slice(i + 1)
      .filter(
        (other) =>
          one.left < other.right + AIR &&
          other.left < one.right + AIR &&
          one.top < other.bottom + AIR &&
          other.top < one.bottom + AIR,
      )
      .map((other) => `${one.text} on ${other.text}`),
    ...arrows
      .filter(([x, y]) => x > one.left && x < one.right && y > one.top && y < one.bottom)
      .map(() => `an arrow in ${one.text}`),
  ])
}

describe('the page of joins below the key', () => {
  const plan = planProject(readExample('orchard-floor-blanket'))
  const choice = chooseJoinDetail(plan)!
  const look = { marks: colourwayMarks(plan), hand: 'right', hosts: true, told: true } as const

  it('has small motifs whose numbers stand clear of each other and of the arrows', () => {
    for (const height of [72, 80, 120]) {
      const box = { width: 180, height }
      expect(isDetailLegible(plan, choice, box)).toBe(true)
      expect(collisions(joinDetailFigure(plan, choice, look, box))).toEqual([])
    }
  })

  it('is not there where they have no room', () => {
    expect(isDetailLegible(plan, choice, { width: 180, height: 40 })).toBe(false)
  })
})

describe('the drawing of a way to join', () => {
  it('numbers every petal of eight, also where three stand in a row', () => {
    const plan = planProject(readExample('market-stall-throw'))
    const { ways } = orderList(plan)
    expect(ways.length).toBeGreaterThan(3)
    for (const way of ways) {
      const figure = neighbourhoodFigure(plan, way, 'right', { width: 34, height: 31 })
      const numbers = record(figure).texts.filter(({ text }) => /^\d$/.test(text))
      expect(numbers.map(({ text }) => text).sort()).toEqual(['1', '2', '3', '4', '5', '6', '7', '8'])
      expect(collisions(figure)).toEqual([])
    }
  })
})
