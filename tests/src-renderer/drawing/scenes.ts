/** Scenes for the tests of the drawing. */
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { PictureMaker } from '../../../src-renderer/drawing/picture'
import type { Palette } from '../../../src-renderer/drawing/palette'
import type { Scene } from '../../../src-renderer/drawing/scene'

export const palette: Palette = {
  paper: '#fffdf8',
  ink: '#1d1b18',
  quiet: '#635d53',
  markDark: '#1d1b18',
  markLight: '#fffdf8',
  hairline: '#d9d1bf',
  accent: '#1d5a54',
  warning: '#96430f',
  bare: '#d9d1bf',
  face: 'sans-serif',
}

export function project(layout: Partial<BlanketLayout> = {}): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    gauge: { stitch: 'dc', stitches: 16, rows: 8, over: 100 },
    yarns: [
      { id: 'red', colour: '#bb5544' },
      { id: 'blue', colour: '#446688' },
      { id: 'straw', colour: '#e2bb5c' },
    ],
    motifs: [
      {
        id: 'm',
        kind: 'measured',
        outline: 'petals',
        petals: 8,
        overTips: 80,
        overValleys: 50,
        slots: [{ slot: 'centre' }, { slot: 'petals' }],
      },
    ],
    colourways: [
      { id: 'a', code: 'A', motif: 'm', yarns: { centre: 'straw', petals: 'red' } },
      { id: 'b', code: 'B', motif: 'm', yarns: { centre: 'straw', petals: 'blue' } },
    ],
    layout: {
      kind: 'blanket',
      arrangement: 'straight-rows',
      motif: 'm',
      columns: 10,
      rows: 8,
      cells: { fill: { pattern: 'repeat', colourways: ['a', 'b'] } },
      ...layout,
    },
  }
}

export function scene(
  own: Project = project(),
  change: Partial<Scene> = {},
  planner = createPlanner(),
): Scene {
  return {
    project: own,
    plan: planner.plan(own),
    previous: null,
    theme: 'light',
    selection: new Set(),
    focus: null,
    tool: 'select',
    showLabels: false,
    showJoins: true,
    flagged: new Set(),
    ...change,
  }
}

export const picture = (own: Project = project(), change: Partial<Scene> = {}) =>
  new PictureMaker().make(scene(own, change), palette)

/** The project with motifs painted. */
export function painted(own: Project, ids: readonly string[], colourway: string): Project {
  const { layout } = own
  if (layout?.kind !== 'blanket') throw new Error('the fixture is a blanket')
  const now = Object.fromEntries(ids.map((id) => [id, colourway]))
  return {
    ...own,
    layout: { ...layout, cells: { ...layout.cells, painted: { ...layout.cells?.painted, ...now } } },
  }
}
