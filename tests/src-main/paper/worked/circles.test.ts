/** Circles that are known by their measures, joined at marks: what somebody needs who has only the pages. */
import { describe, expect, it } from 'vitest'
import { circles, hexagons, toldOf } from './pages-of'

const told = toldOf(circles())

describe('circles that are joined at marks', () => {
  it('say where their last round begins and ends, and how it is closed', () => {
    expect(told.plan.motif!.spaces?.marks).toBe(true)
    expect(told.of('overview')).toContain('its last round, which begins and ends at mark 1')
    expect(told.of('order')).toContain('where it ends with a slip stitch into its first stitch')
    expect(told.phone).toContain('where it ends with a slip stitch into its first stitch')
  })

  it('are begun anywhere where nothing is joined', () => {
    expect(told.of('order')).toContain('Work it without joining, beginning anywhere.')
    const hexagon = toldOf(hexagons({ joining: { rule: 'edges' } }))
    expect(hexagon.of('order')).toContain('Work all 6 corners without joining, beginning at any of them.')
  })

  it('are joined at a mark on every page, never in a space or a place that nobody explains', () => {
    expect(told.of('joins')).toContain('circle already there: join at its mark')
    expect(told.of()).toContain('At each mark that meets a neighbor, sl st in the edge of the neighbor')
    for (const page of ['overview', 'joins', 'order'])
      expect(told.of(page)).not.toMatch(/into its space|free place/)
  })

  it('explain the free places of their border before these are used', () => {
    const border = told.of('edging')
    const words =
      'Each circle has twelve places evenly round its edge: at its marks and halfway between them.'
    expect(border.indexOf(words)).toBeGreaterThan(0)
    expect(border.indexOf(words)).toBeLessThan(border.indexOf('every free place'))
    expect(told.phone).toContain(words)
  })

  it('have the chains between these told on one page alone', () => {
    expect(told.of('edging')).toMatch(/between two places of one motif ch \d/)
    expect(told.of('materials')).not.toMatch(/ch \d+ between/)
    expect(told.of('materials')).toContain('chains between: see Border for how many')
  })

  it('need so many stitch markers', () => {
    expect(told.of('materials')).toContain('6 for each circle that is not yet joined all round')
  })
})

it('circles in straight rows have two free places between each two marks', () => {
  const { layout } = circles()
  const straight = toldOf(circles({ layout: { ...layout, arrangement: 'straight-rows' } as never }))
  expect(straight.of('edging')).toContain('at its marks and two between each two of them')
})

it('circles that are joined by chains have them on every page that says how to join', () => {
  const chained = toldOf(circles({ joining: { rule: 'bridge', bridgeChains: 3 } }))
  const words = 'ch 3, work a slip stitch into the edge of that circle, at its mark, and ch 3 again'
  for (const page of ['overview', 'joins']) expect(chained.of(page)).toContain(words)
  expect(chained.of()).toContain('ch 3, sl st in the edge of the neighbor, at its mark, ch 3;')
  expect(told.of()).not.toMatch(/ch \d+, (work a slip stitch|sl st in the edge)/)
})

it('how large the next one may come out is told in whole mm', () => {
  expect(told.of()).toMatch(/may come out \d+ mm to \d+ mm across/)
})

describe('rounds that are not there', () => {
  const WORDS = 'Its rounds are not in these pages'

  it('are said not to be', () => {
    expect(told.of()).toContain(WORDS)
    expect(told.phone).toContain('The rounds of Disc are not on this page')
  })

  it('are not missed where the instructions say how it is worked', () => {
    const [disc] = circles().motifs!
    const instructed = toldOf(
      circles({ motifs: [{ ...disc!, instructions: 'Work 5 rounds of sc.' } as never] }),
    )
    expect(instructed.of()).not.toContain(WORDS)
    expect(instructed.phone).not.toContain('The rounds of Disc')
  })
})
