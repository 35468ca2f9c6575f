/** A small plan made by hand, so that figures and pages are tested without the pipeline. */
import type {
  Anchor,
  BlanketPlan,
  JoinNode,
  MotifAccount,
  OrderStep,
  PlacedMotif,
  Plan,
} from '../../../shared-types/plan'
import { EMPTY } from '../../../src-core/plans/empty'
import type { Project } from '../../../shared-types/project'
import { settled } from '../../../src-core/settled'

const TIP = 39
const VALLEY = 26

function polarOutline(petals: number, tip: number, valley: number) {
  return Array.from({ length: 120 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 120
    const radius = valley + (tip - valley) * Math.abs(Math.cos((petals * angle) / 2))
    return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) }
  })
}

/** Six petals, tip to tip 78 mm, between petals 52 mm, for a right-handed maker. */
export function sampleMotif(petals = 6): MotifAccount {
  const anchors: Anchor[] = Array.from({ length: petals }, (_, k) => {
    const angle = (-2 * Math.PI * k) / petals
    const outward = { x: Math.sin(angle), y: -Math.cos(angle) }
    return {
      id: `tip-${k + 1}`,
      kind: 'tip' as const,
      petal: k + 1,
      x: TIP * outward.x,
      y: TIP * outward.y,
      outward,
      address: `petal ${k + 1}`,
    }
  })
  return {
    id: 'm1',
    name: 'Six-petal flower',
    shape: 'petals',
    petals,
    overTips: 2 * TIP,
    overValleys: 2 * VALLEY,
    range: { low: 75.7, high: 80.3 },
    provenance: 'measured',
    rounds: [],
    stitches: {},
    metres: {},
    outline: polarOutline(petals, TIP, VALLEY),
    anchors,
    layers: [
      { slot: 'petals', outline: polarOutline(petals, TIP, VALLEY) },
      { slot: 'centre', outline: polarOutline(petals, 15, 14) },
    ],
    findings: [],
  }
}

const COLOURS = ['#b5533c', '#c9b458', '#e8e0cf', '#46617a', '#7fb5a8', '#2b2b33', '#9c7aa8', '#d98e73']

interface SampleWish {
  readonly columns: number
  readonly rows: number
  readonly colourways?: number
  readonly title?: string
  readonly edging?: boolean
}

/** A project and a plan of offset rows, worked there and back, joined tip to tip along the rows and between them. */
export function samplePlan(wish: SampleWish): { project: Project; plan: Plan } {
  const { columns, rows, colourways = 4 } = wish
  const motif = sampleMotif()
  const pitch = 2 * TIP * Math.cos(Math.PI / 6) + 8
  const rowPitch = TIP + VALLEY + 3
  const border = wish.edging ? 9 : 0
  const width = pitch * (columns - 1) + pitch / 2 + 2 * TIP + 2 * border
  const height = rowPitch * (rows - 1) + 2 * TIP + 2 * border
  const motifs: PlacedMotif[] = []
  const joins: JoinNode[] = []
  const order: OrderStep[] = []
  const ids = COLOURS.slice(0, colourways).map((_, i) => `c${i + 1}`)
  for (let row = 1; row <= rows; row++) {
    for (let column = 1; column <= columns; column++) {
      const place = row % 2 === 1 ? column : columns + 1 - column
      motifs.push({
        id: `${row},${column}`,
        label: String((row - 1) * columns + place),
        row,
        column,
        x: border + TIP + (column - 1) * pitch + (row % 2 === 0 ? pitch / 2 : 0),
        y: border + TIP + (row - 1) * rowPitch,
        turn: 0,
        colourway: ids[(row * 3 + column * 5 + row * column) % ids.length]!,
      })
    }
  }
  const at = (row: number, column: number) => motifs[(row - 1) * columns + column - 1]
  for (const m of motifs) {
    const back = m.row % 2 === 0
    const before = at(m.row, back ? m.column + 1 : m.column - 1)
    const above = m.row > 1 ? at(m.row - 1, m.column) : undefined
    const steps: { anchor: string; with: { motif: string; anchor: string }[]; words: string }[] = []
    if (m.row > 1 && above) {
      joins.push({
        x: (m.x + above.x) / 2,
        y: (m.y + above.y) / 2,
        spread: 2,
        host: above.id,
        members: [
          { motif: above.id, anchor: 'tip-4' },
          { motif: m.id, anchor: 'tip-1' },
        ],
      })
      steps.push({
        anchor: 'tip-1',
        with: [{ motif: above.id, anchor: 'tip-4' }],
        words: `petal 1 to ${above.label}'s free petal above`,
      })
    }
    if (before && before.row === m.row && Math.abs(before.column - m.column) === 1) {
      joins.push({
        x: (m.x + before.x) / 2,
        y: m.y,
        spread: 1.2,
        host: before.id,
        members: [
          { motif: before.id, anchor: back ? 'tip-3' : 'tip-5' },
          { motif: m.id, anchor: back ? 'tip-5' : 'tip-3' },
        ],
      })
      steps.push({
        anchor: back ? 'tip-5' : 'tip-3',
        with: [{ motif: before.id, anchor: back ? 'tip-3' : 'tip-5' }],
        words: `petal ${back ? 5 : 3} to ${before.label}'s petal next to it`,
      })
    }
    const joined = new Set(steps.map((step) => step.anchor))
    const free = motif.anchors.map((anchor) => anchor.id).filter((id) => !joined.has(id))
    const words = `Work ${free.length} petals free${steps.map((step) => `; ${step.words}`).join('')}.`
    order.push({ kind: 'motif', motif: m.id, free, joins: steps, words, pattern: words })
  }
  const label = (id: string): number => Number(motifs.find((m) => m.id === id)!.label)
  if (motifs.length < 500) order.sort((a, b) => label(a.motif) - label(b.motif))
  const byColourway = Object.fromEntries(
    ids.map((id) => [id, motifs.filter((m) => m.colourway === id).length]),
  )
  const plan: Omit<BlanketPlan, 'settled'> = {
    kind: 'blanket',
    accounts: [],
    progress: EMPTY.progress,
    marks: EMPTY.marks,
    size: {
      width,
      height,
      sensitivity: { step: 2, width: 2 * columns, height: 2 * rows },
      range: {
        low: { width: width * 0.97, height: height * 0.97 },
        high: { width: width * 1.03, height: height * 1.03 },
      },
    },
    counts: { motifs: motifs.length, byColourway },
    pitch: { column: pitch, row: rowPitch, rows: [rowPitch, rowPitch] },
    arrangement: 'offset-rows',
    motifs,
    joins,
    pieces: 1,
    single: 0,
    order,
    holes: [],
    fillers: [],
    fillerSteps: [],
    halves: [],
    fillerMotifs: [],
    openings: [],
    edging: wish.edging
      ? {
          style: 'bridge',
          length: 2 * (width + height - 4 * border),
          height: border,
          yarn: 'y1',
          rounds: [
            {
              ...{ number: 1, height: border / 2, yarn: 'y1' },
              stitch: 'sc',
              stitches: 420,
              chains: 300,
              length: 3300,
              metres: 9.6,
            },
            {
              ...{ number: 2, height: border / 2, yarn: 'y1' },
              stitch: 'dc',
              stitches: 720,
              chains: 0,
              length: 3330,
              metres: 14.2,
            },
          ],
        }
      : null,
    edgingLines: wish.edging
      ? [
          [
            { x: border, y: border },
            { x: width - border, y: border },
            { x: width - border, y: height - border },
            { x: border, y: height - border },
          ],
        ]
      : [],
    yarns: ids.map((_, i) => ({
      id: `y${i + 1}`,
      grams: { low: 380 + i, expected: 410 + i, high: 445 + i },
      metres: { low: 950, expected: 1025, high: 1112 },
      balls: 9,
      onHand: 0,
      toBuy: 7,
      leftover: 25,
      cost: 27.3,
      parts: { motifs: 360, joins: 4, edging: 8, tails: 0, waste: 38 },
    })),
    ends: motifs.length * 4,
    minutes: { low: 2000, expected: 2300, high: 2600 },
    findings: [],
    motif,
  }
  const names = ['Dawn', 'Reed', 'Sand', 'Dusk', 'Ember', 'Night', 'Heath', 'Clay']
  const project: Project = {
    format: 'petalyard-project',
    version: 1,
    title: wish.title ?? 'Harbour window throw',
    designer: 'Ida Moe',
    units: 'metric',
    terms: 'US',
    hand: 'right',
    currency: 'EUR',
    gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
    yarns: ids.map((_, i) => ({
      id: `y${i + 1}`,
      name: ['Brick', 'Lichen', 'Oat', 'Harbour', 'Sea glass', 'Slate', 'Heather', 'Terracotta'][i],
      colour: COLOURS[i],
      ballGrams: 50,
      ballMetres: 125,
      price: 3.9,
      onHandGrams: 120,
      fibre: 'cotton',
    })),
    motifs: [
      {
        id: 'm1',
        name: 'Six-petal flower',
        kind: 'measured',
        outline: 'petals',
        petals: 6,
        overTips: 78,
        overValleys: 52,
        blocked: true,
        slots: [
          { slot: 'centre', grams: 0.8 },
          { slot: 'petals', grams: 3.4 },
        ],
      },
    ],
    colourways: ids.map((id, i) => ({
      id,
      code: 'ABCDEFGH'[i],
      name: names[i],
      motif: 'm1',
      yarns: { centre: `y${((i + 1) % ids.length) + 1}`, petals: `y${i + 1}` },
    })),
    layout: { kind: 'blanket', arrangement: 'offset-rows', motif: 'm1', columns, rows },
    joining: { rule: 'tips' },
    order: 'there-and-back',
  }
  return { project, plan: { ...plan, settled: settled(project) } }
}
