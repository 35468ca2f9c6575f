import { render, screen } from '@testing-library/svelte'
import { createRawSnippet } from 'svelte'
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import MotifPicture from '../../../src-renderer/drawing/MotifPicture.svelte'
import {
  HALF,
  meetingPoints,
  petalNumbers,
  pictureLayers,
  pictureBox,
  pictureLines,
  rulerUnder,
} from '../../../src-renderer/drawing/motif-picture'
import { project } from './scenes'

const own = project()
const plan = planProject(own)
const account = plan.motif!
const middle = plan.motifs.find(({ id }) => id === '4,5')!

describe('the motif in the hand', () => {
  it('numbers the petals counter-clockwise from 12 o’clock for right-handers, clockwise for left-handers', () => {
    const [first, second] = petalNumbers(account, { turn: 0 })
    expect(first!.text).toBe('1')
    expect(first!.x).toBeCloseTo(0)
    expect(first!.y).toBeLessThan(-HALF)
    expect(second!.x).toBeLessThan(0)
    const left = planProject({ ...own, hand: 'left' }).motif!
    expect(petalNumbers(left, { turn: 0 })[1]!.x).toBeGreaterThan(0)
  })

  it('turns with the motif on the map', () => {
    const [first] = petalNumbers(account, { turn: 90 })
    expect(first!.x).toBeGreaterThan(HALF)
    expect(first!.y).toBeCloseTo(0)
  })

  it('shows the meeting points of a placed motif where its petals are, and who was there first', () => {
    const points = meetingPoints(account, plan, middle)
    const joins = plan.joins.filter((join) => join.members.some(({ motif }) => motif === middle.id))
    expect(points).toHaveLength(joins.length)
    expect(points.length).toBeGreaterThanOrEqual(4)
    expect(points.filter(({ hosts }) => hosts)).toHaveLength(
      joins.filter(({ host }) => host === middle.id).length,
    )
    for (const { x, y } of points) expect(Math.hypot(x, y)).toBeLessThanOrEqual(HALF + 1e-6)
    const labels = new Set(plan.motifs.map(({ label }) => label))
    for (const { words } of points) expect(labels).toContain(/motif (\d+)/.exec(words)![1])
  })

  it('takes the colours of the colourway, and of the first one without', () => {
    expect(pictureLayers(own, account, 'b', { turn: 0 }).map(({ ink }) => ink.fill)).toEqual([
      '#446688',
      '#e2bb5c',
    ])
    expect(pictureLayers(own, account, undefined, { turn: 0 })[0]!.ink.fill).toBe('#bb5544')
    expect(pictureLayers({ ...own, yarns: [] }, account, 'b', { turn: 0 })[0]!.ink.fill).toBe(
      'var(--hairline)',
    )
  })

  it('measures tips and valleys as diameters', () => {
    const { tips, valleys, circles } = pictureLines(account)
    expect(tips.to.x - tips.from.x).toBeCloseTo(2 * HALF)
    expect((valleys!.to.x - valleys!.from.x) / (tips.to.x - tips.from.x)).toBeCloseTo(50 / 80)
    expect(circles).toHaveLength(2)
  })

  it('shows where the ruler lies on odd petals: from tip 1 to the dip under it, and from the middle', () => {
    const odd = planProject({ ...own, motifs: [{ ...own.motifs![0]!, petals: 5 } as MeasuredMotif] }).motif!
    const { tips, valleys, laid } = pictureLines(odd)
    expect(tips.from.x).toBe(tips.to.x)
    expect([tips.from.y, tips.to.y]).toEqual([-HALF, expect.closeTo((HALF * 50) / 80)])
    expect([valleys!.from.y, valleys!.to.y]).toEqual([0, expect.closeTo((HALF * 50) / 80)])
    expect(laid).toHaveLength(1)
    const fromCentre = pictureLines({ ...odd, ruler: 'centre' })
    expect([fromCentre.tips.from.y, fromCentre.tips.to.y]).toEqual([-HALF, 0])
    // Both numbers have room beside the motif.
    const { box } = pictureBox(odd, true, true)
    expect(box.left).toBeLessThan(tips.at.x - 40)
    expect(box.left + box.width).toBeGreaterThan(valleys!.at.x + 40)
  })

  it('lays a scale of whole centimetres or inches under the motif', () => {
    const metric = rulerUnder(account, 'metric', 150)
    expect(metric.words).toBe('8 cm')
    expect(metric.to - metric.from).toBeCloseTo(2 * HALF)
    const imperial = rulerUnder(account, 'imperial', 150)
    expect(imperial.words).toBe('3 in')
    expect((imperial.to - imperial.from) / (2 * HALF)).toBeCloseTo(76.2 / 80)
  })

  it('puts what it is given on its dimension lines and says what it shows', () => {
    const field = (name: string) =>
      createRawSnippet(() => ({ render: () => `<input aria-label="${name}" />` }))
    const props = { project: own, account, tips: field('tip to tip'), valleys: field('between petals') }
    const { unmount } = render(MotifPicture, { props })
    expect(screen.getByLabelText('tip to tip')).toBeTruthy()
    expect(screen.getByLabelText('between petals')).toBeTruthy()
    unmount()
    render(MotifPicture, { props: { project: own, account, plan, placed: middle } })
    expect(screen.getByRole('img').getAttribute('aria-label')).toMatch(/petal \d+ to motif \d+/)
    expect(screen.queryByLabelText('tip to tip')).toBeNull()
  })
})
