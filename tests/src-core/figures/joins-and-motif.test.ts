import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import {
  chooseJoinDetail,
  joinDetailFigure,
  joinLegend,
  nodeKinds,
} from '../../../src-core/figures/join-detail'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import { numberedPlaces } from '../../../src-core/motif/numbering'
import { namedIn } from '../../../src-core/joins/words'
import { createPlanner, planProject } from '../../../src-core/plan'
import { record } from './recorder'
import { sampleMotif, samplePlan } from './sample'

const measure = (text: string, size: number): number => text.length * size * 0.17
const { project, plan } = samplePlan({ columns: 7, rows: 6 })
const marks = colourwayMarks(plan)
const look = { marks, hand: 'right', hosts: true, told: true } as const
const box = { width: 180, height: 120 }

describe('the join detail', () => {
  const choice = chooseJoinDetail(plan)!

  it('shows a motif from the middle with all that it meets, and every meeting point among them', () => {
    expect(choice.focus.row).toBeGreaterThan(1)
    expect(choice.focus.row).toBeLessThan(6)
    const ids = new Set(choice.shown.map((motif) => motif.id))
    for (const node of plan.joins) {
      if (node.members.some((member) => member.motif === choice.focus.id)) {
        for (const member of node.members) expect(ids.has(member.motif)).toBe(true)
        expect(choice.nodes).toContain(node)
      }
    }
  })

  it.each([
    ['offset rows', { arrangement: 'offset-rows', turn: 30 }],
    ['straight rows', { arrangement: 'straight-rows', turn: 0 }],
  ] as const)('draws every motif that its step names: %s', (_, layout) => {
    for (const order of ['there-and-back', 'one-way', 'centre'] as const) {
      const own = planProject({ ...project, order, layout: { ...project.layout, ...layout } } as Project)
      const shown = chooseJoinDetail(own)!
      const named = namedIn(own.order.find(({ motif }) => motif === shown.focus.id)!.pattern)
      expect(named.length).toBeGreaterThan(0)
      const { texts } = record(joinDetailFigure(own, shown, look, box))
      expect(texts.map(({ text }) => text)).toEqual(expect.arrayContaining(named))
    }
  })

  it('marks each meeting point, points to its host, and numbers every petal', () => {
    const recording = record(joinDetailFigure(plan, choice, look, box))
    const dots = recording.paths.filter(({ paint }) => paint.width === 1.5)
    const arrows = recording.paths.filter(({ paint }) => paint.width === 0.4)
    expect(dots).toHaveLength(choice.nodes.length)
    expect(arrows.length).toBeGreaterThan(0)
    expect(arrows.length).toBeLessThanOrEqual(dots.length)
    const petals = recording.texts.filter((text) => text.size === 8.5)
    expect(petals).toHaveLength(6 * choice.shown.length)
    for (const text of recording.texts) expect(text.printed).toBeGreaterThanOrEqual(7)
  })

  it('has no hosts where motifs are sewn together later', () => {
    const recording = record(joinDetailFigure(plan, choice, { ...look, hosts: false, told: false }, box))
    expect(recording.paths.filter(({ paint }) => paint.width === 0.4)).toHaveLength(0)
    const legend = joinLegend(
      { marks: { two: 'two motifs meet' }, way: 'the way' },
      { hand: 'right', outline: [] },
      measure,
      9.5,
      80,
    )
    expect(record(legend).texts.map((text) => text.text)).toEqual(['two motifs meet', 'the way'])
  })

  it('M33 counts the petals as the step in words does, from the first of the longest free run', () => {
    const six: Project = {
      ...project,
      layout: { kind: 'blanket', arrangement: 'offset-rows', motif: 'm1', columns: 6, rows: 5, turn: 30 },
    }
    const real = createPlanner().plan(six)
    const middle = chooseJoinDetail(real)!.focus
    const step = real.order.find(({ motif }) => motif === middle.id)!
    const places = numberedPlaces(real.motif!, middle)
    const number = (id: string): number => places.find(({ anchor }) => anchor.id === id)!.number
    expect(step.free.map(number)).toEqual(step.free.map((_, i) => i + 1))
    for (const join of step.joins) expect(join.words).toMatch(new RegExp(`^petal ${number(join.anchor)}: `))
  })

  it('is left out where nothing is joined', () => {
    expect(chooseJoinDetail({ ...plan, joins: [] })).toBeNull()
  })

  it('counts the meeting points by how many motifs meet, with the largest gap', () => {
    expect(nodeKinds(plan)).toEqual([{ members: 2, count: plan.joins.length, spread: 2 }])
  })
})

describe('the motif with its measures', () => {
  const options = {
    width: 100,
    across: 80,
    units: 'metric',
    terms: 'US',
    hand: 'right',
    mark: null,
    look: 'ink',
    measure,
  } as const

  const lines = (figure: ReturnType<typeof motifFigure>): { width: number; height: number }[] =>
    record(figure)
      .paths.filter(({ paint }) => paint.width === 0.25)
      .map(({ points }) => {
        const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
        return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) }
      })

  it('is drawn at full size where there is room, with dimension lines as long as they say', () => {
    const figure = motifFigure(sampleMotif(), { ...options, width: 130 })
    expect(figure.scale).toBe(1)
    expect(record(figure).texts.map((text) => text.text)).toEqual([
      ...['1', '2', '3', '4', '5', '6'],
      'dip to dip 52 mm',
      'tip to tip',
      '78 mm',
    ])
    const [valleys, tips] = lines(figure)
    expect(valleys!.width).toBeCloseTo(52, 6)
    expect(tips!.height).toBeCloseTo(78, 6)
  })

  it('is drawn smaller where it must be', () => {
    expect(motifFigure(sampleMotif(), { ...options, across: 39 }).scale).toBeCloseTo(0.5, 9)
    expect(motifFigure(sampleMotif(), { ...options, width: 80 }).scale).toBeLessThan(1)
  })

  it('M16 shows what a ruler can measure: across, or from tip to opposite dip where petals are odd', () => {
    const shown = (petals: number) =>
      motifDimensions(sampleMotif(petals), 'US').map((dimension) => dimension.shown)
    expect(shown(5)).toEqual(['circle', 'down'])
    expect(shown(6)).toEqual(['across', 'down'])
    expect(shown(8)).toEqual(['circle', 'down'])
    const five = motifFigure(sampleMotif(5), { ...options, width: 130 })
    const [dip, tip] = lines(five)
    expect(dip!.width).toBeCloseTo(26, 6)
    expect(tip!.height).toBeCloseTo(39 + 26, 6)
    expect(record(five).texts.map((text) => text.text)).toEqual([
      ...['1', '2', '3', '4', '5'],
      ...['center to dip 26 mm', 'tip to opposite dip', '65 mm'],
    ])
    const fromCentre = motifDimensions({ ...sampleMotif(5), ruler: 'centre' }, 'UK')
    expect(fromCentre.map(({ words, length }) => `${words} ${length}`)).toEqual([
      ...['centre to dip 26', 'centre to tip 39'],
    ])
  })

  it('names what its shape is measured by', () => {
    const names = (shape: 'round' | 'straight' | 'leaf'): string[] =>
      motifDimensions({ ...sampleMotif(), shape }, 'US').map(({ words, shown }) => `${words} ${shown}`)
    expect(names('round')).toEqual(['across across'])
    expect(names('straight')).toEqual(['side to side across', 'point to point down'])
    expect(names('leaf')).toEqual(['width across', 'length down'])
  })
})

describe('the key', () => {
  it('shows the letter in the texture; in colour the middle stays to be seen', () => {
    const ink = record(keySwatch(sampleMotif(), marks[0]!, 'ink', 0, 13))
    expect(ink.texts).toMatchObject([{ text: 'A', anchor: 'middle', weight: 'bold' }])
    expect(record(keySwatch(sampleMotif(), marks[0]!, 'colour', 0, 13)).texts).toHaveLength(0)
  })
})
