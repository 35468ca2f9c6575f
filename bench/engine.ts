/** Touching against bisection on the intersection area, joins against every pair of anchors, and growth. */
import { moveOutline } from '../src-core/geometry/points'
import type { Outline } from '../src-core/geometry/points'
import { sharedArea } from '../src-core/geometry/polygons'
import { touchingDistance } from '../src-core/geometry/touching'
import { findNodes } from '../src-core/joins/nodes'
import type { Joinable } from '../src-core/joins/nodes'
import { petalAnchors } from '../src-core/motif/anchors'
import { petalOutline } from '../src-core/motif/outlines'
import { createPlanner } from '../src-core/plan'
import type { Project } from '../shared-types/project'
import { benchPanel } from './drawing-page/project'
import { bestOf, bestOfBoth, milliseconds } from './measure'
import type { Row } from './measure'

const EAST = { x: 1, y: 0 }

/** The general way: bisect on the area that two outlines share, to 0.001 mm. */
function bisect(a: Outline, b: Outline, lateral: number, far: number): number {
  let low = 0
  let high = far
  while (high - low > 0.001) {
    const middle = (low + high) / 2
    if (sharedArea([a], [moveOutline(b, middle, lateral)]) > 0) low = middle
    else high = middle
  }
  return high
}

export function benchTouching(): Row {
  const outline = petalOutline(8, 47.5, 35)
  const laterals = Array.from({ length: 40 }, (_, i) => (i - 20) * 2)
  const fast = bestOf(
    30,
    () => laterals.map((lateral) => touchingDistance(outline, outline, EAST, lateral)),
    () => null,
  )
  const few = laterals.filter((_, i) => i % 8 === 0)
  const slow = bestOf(
    3,
    () => few.map((lateral) => bisect(outline, outline, lateral, 100)),
    () => null,
  )
  const ours = fast / laterals.length
  const baseline = slow / few.length
  const worst = Math.max(
    ...few.map((lateral) =>
      Math.abs(touchingDistance(outline, outline, EAST, lateral)! - bisect(outline, outline, lateral, 100)),
    ),
  )
  const ratio = baseline / ours
  return {
    what: `touching, ${outline.length} vertices (agrees to ${worst.toFixed(4)} mm)`,
    ours: milliseconds(ours),
    baseline: milliseconds(baseline),
    ratio: `${ratio.toFixed(0)} ×`,
    wanted: '≥ 100 ×',
    met: ratio >= 100,
  }
}

/** Meeting points of two by comparing every pair of anchors of different motifs. */
function everyPair(motifs: readonly Joinable[], reach: number): number {
  const count = motifs[0]!.anchors.length
  const xs = new Float64Array(motifs.length * count)
  const ys = new Float64Array(motifs.length * count)
  motifs.forEach((motif, i) =>
    motif.anchors.forEach((anchor, k) => {
      xs[i * count + k] = motif.x + anchor.x
      ys[i * count + k] = motif.y + anchor.y
    }),
  )
  let found = 0
  const squared = reach * reach
  for (let i = 0; i < xs.length; i++)
    for (let j = i - (i % count) + count; j < xs.length; j++) {
      const dx = xs[j]! - xs[i]!
      const dy = ys[j]! - ys[i]!
      if (dx * dx + dy * dy <= squared) found++
    }
  return found
}

export function benchJoins(): Row {
  const side = 100
  const anchors = petalAnchors(8, 47.5, 35, 42, 'right').filter((anchor) => anchor.kind === 'tip')
  const motifs: Joinable[] = Array.from({ length: side * side }, (_, i) => ({
    x: (i % side) * 95,
    y: Math.floor(i / side) * 95,
    turn: 0,
    anchors,
  }))
  const ours = bestOf(
    7,
    () => findNodes(motifs, 7.6),
    () => null,
  )
  let pairs = 0
  const baseline = bestOf(
    1,
    () => (pairs = everyPair(motifs, 7.6)),
    () => null,
  )
  const nodes = findNodes(motifs, 7.6).length
  const ratio = baseline / ours
  return {
    what: `joins, 10,000 motifs (${nodes} nodes, ${pairs} pairs)`,
    ours: milliseconds(ours),
    baseline: milliseconds(baseline),
    ratio: `${ratio.toFixed(0)} ×`,
    wanted: '≥ 50 ×',
    met: ratio >= 50 && nodes === pairs,
  }
}

/** A blanket of `columns` × `rows` eight-petalled motifs, as a project. */
export function blanketProject(columns: number, rows: number, turn = 0): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    title: 'Bench throw',
    yarns: [
      { id: 'y1', name: 'Moss', colour: '#5f7f52', ballGrams: 50, ballMetres: 125, price: 3.9 },
      { id: 'y2', name: 'Straw', colour: '#d8b55a', ballGrams: 50, ballMetres: 125, price: 3.9 },
      { id: 'y3', name: 'Brick', colour: '#b4553f', ballGrams: 50, ballMetres: 125, price: 3.9 },
    ],
    motifs: [
      {
        id: 'm',
        kind: 'measured',
        outline: 'petals',
        petals: 8,
        overTips: 95,
        overValleys: 70,
        slots: [
          { slot: 'centre', grams: 0.8 },
          { slot: 'petals', grams: 3.4 },
        ],
        minutes: 14,
      },
    ],
    colourways: [
      { id: 'c1', code: 'A', name: 'Meadow', motif: 'm', yarns: { centre: 'y2', petals: 'y1' } },
      { id: 'c2', code: 'B', name: 'Barn', motif: 'm', yarns: { centre: 'y2', petals: 'y3' } },
      { id: 'c3', code: 'C', name: 'Stubble', motif: 'm', yarns: { centre: 'y3', petals: 'y2' } },
    ],
    layout: {
      kind: 'blanket',
      arrangement: 'straight-rows',
      motif: 'm',
      columns,
      rows,
      turn,
      cells: { fill: { pattern: 'repeat', colourways: ['c1', 'c2', 'c3'], seed: 1 } },
      edging: { style: 'bridge', rounds: ['sc', 'dc'], yarn: 'y1' },
    },
  }
}

/** One of 500 items of a panel moved and planned again, against a planner that has seen none of them. */
export function benchPanelDrag(): Row {
  const items = 500
  const start = benchPanel(items)
  const moved = (by: number): Project => {
    const { layout } = start
    if (layout?.kind !== 'applique') return start
    const list = layout.items?.map((item, i) => (i === 230 ? { ...item, x: (item.x ?? 0) + by } : item))
    return { ...start, layout: { ...layout, items: list } }
  }
  const planner = createPlanner()
  planner.plan(start)
  let by = 0
  const ours = bestOf(
    30,
    () => planner.plan(moved((by += 0.5))),
    () => null,
  )
  // The same numbers in new objects: nothing about them is known.
  const baseline = bestOf(
    3,
    (own: Project) => createPlanner().plan(own),
    () => structuredClone(moved((by += 0.5))),
  )
  const ratio = baseline / ours
  return {
    what: `drag 1 of ${items} items: plan`,
    ours: milliseconds(ours),
    baseline: milliseconds(baseline),
    ratio: `${ratio.toFixed(1)} ×`,
    wanted: '≥ 5 ×',
    met: ratio >= 5,
  }
}

/** The whole plan at 2,500, 10,000 and 40,000 motifs. */
export function benchGrowth(): Row[] {
  const plan = (project: Project) => createPlanner().plan(project).order
  const of = (side: number) => () => blanketProject(side, side)
  // By turns: what is compared meets the same state of the machine.
  const [small, middle] = bestOfBoth(7, plan, [of(50), of(100)])
  const [again, large] = bestOfBoth(5, plan, [of(100), of(200)], 1)
  const growth = large / Math.min(middle, again)
  return [
    {
      what: 'whole plan, 2,500 → 10,000 motifs',
      ours: milliseconds(middle),
      baseline: milliseconds(small),
      ratio: `${(middle / small).toFixed(2)} ×`,
      wanted: '',
      met: true,
    },
    {
      what: 'whole plan, 10,000 → 40,000 motifs',
      ours: milliseconds(large),
      baseline: milliseconds(Math.min(middle, again)),
      ratio: `${growth.toFixed(2)} ×`,
      wanted: '≤ 4.2 ×',
      met: growth <= 4.2,
    },
  ]
}

/** 10,000 motifs of two kinds like a chessboard, against 10,000 of one kind. */
export function benchTwoKinds(): Row {
  const one = () => blanketProject(100, 100)
  const two = (): Project => {
    const project = one()
    const [motif] = project.motifs ?? []
    const { layout } = project
    if (!motif || layout?.kind !== 'blanket') return project
    const small = { ...motif, id: 'n', overTips: 60, overValleys: 44 } as typeof motif
    const ways = project.colourways?.map((way, i) => (i === 2 ? { ...way, motif: 'n' } : way))
    return {
      ...{ ...project, motifs: [motif, small], colourways: ways },
      layout: { ...layout, alternate: { motifs: ['m', 'n'], by: 'cell' } },
    }
  }
  const plan = (project: Project) => createPlanner().plan(project).order
  const [ours, baseline] = bestOfBoth(7, plan, [two, one])
  const ratio = ours / baseline
  return {
    what: 'whole plan, 10,000 motifs of two kinds, against one kind',
    ours: milliseconds(ours),
    baseline: milliseconds(baseline),
    ratio: `${ratio.toFixed(2)} ×`,
    wanted: '≤ 1.5 ×',
    met: ratio <= 1.5,
  }
}
