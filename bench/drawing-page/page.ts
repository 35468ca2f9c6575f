/**
 * The page that `bench/drawing.ts` drives: the drawing with a throw on it, or the same throw as one Konva node
 * for each petal. Frames and the script in them are counted from outside the code that is measured.
 */
import Konva from 'konva'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { createPlanner } from '../../src-core/plan'
import { MapDrawing } from '../../src-renderer/drawing/map-drawing'
import type { DrawingView, Scene, Tool } from '../../src-renderer/drawing/scene'
import { benchPanel, benchProject } from './project'
import type { BenchProject } from './project'

const container = document.getElementById('drawing')!
const planner = createPlanner()
let project: Project = benchProject({ columns: 2, rows: 2 })
let drawing: MapDrawing | null = null
let scene: Scene | null = null
let lastView: DrawingView | null = null
let paintedNow: string[] = []
let moveStart: Project = project

function show(change: Partial<Scene>): void {
  const plan: Plan = change.project ? planner.plan(change.project) : scene!.plan
  scene = { ...scene!, ...change, plan: change.plan ?? plan }
  drawing!.show(scene)
}

/** What the window does with a stroke: a project with the motifs painted, planned anew. */
function paint(ids: readonly string[]): void {
  const { layout } = project
  if (layout?.kind !== 'blanket') return
  paintedNow.push(...ids)
  const painted = { ...layout.cells?.painted, ...Object.fromEntries(ids.map((id) => [id, 'd'])) }
  project = { ...project, layout: { ...layout, cells: { ...layout.cells, painted } } }
  show({ project })
}

function startDrawing(wish: BenchProject, change: Partial<Scene> = {}): void {
  drawing?.destroy()
  project = benchProject(wish)
  if (change.project) project = change.project
  paintedNow = []
  drawing = new MapDrawing(container, {
    onSelect: (ids) => show({ selection: new Set(ids) }),
    onPaint: (ids) => ids.length > 0 && paint(ids),
    onResize: () => undefined,
    onMove: (ids, { dx, dy }, phase) => {
      if (phase === 'start') moveStart = project
      moveItems(moveStart, ids, dx, dy)
    },
    onFocus: (focus) => show({ focus }),
    onView: (view) => (lastView = view),
  })
  scene = {
    project,
    plan: planner.plan(project),
    previous: null,
    theme: document.documentElement.dataset.theme === 'dark' ? 'dark' : 'light',
    selection: new Set(),
    focus: null,
    tool: 'select',
    showLabels: false,
    showJoins: true,
    flagged: new Set(),
    ...change,
  }
  drawing.show(scene)
}

/** What the window does with a drag of what lies on a panel: a project with the items moved, planned anew. */
function moveItems(start: Project, ids: readonly string[], dx: number, dy: number): void {
  const { layout } = start
  if (layout?.kind !== 'applique') return
  const chosen = new Set(ids)
  const items = layout.items?.map((item, i) =>
    chosen.has(`1,${i + 1}`) ? { ...item, x: (item.x ?? 0) + dx, y: (item.y ?? 0) + dy } : item,
  )
  project = { ...start, layout: { ...layout, items } }
  show({ project })
}

/** Lays a panel of so many items. */
function startPanel(count: number): void {
  const own = benchPanel(count)
  startDrawing({ columns: 1, rows: 1 }, { project: own, tool: 'move' })
}

/** The usual way: a Konva node for each petal and each centre, without hit tests; the stage dragged and scaled. */
let naive: { stage: Konva.Stage; layer: Konva.Layer; petals: Konva.Path[][] } | null = null
function startNaive(wish: BenchProject): void {
  drawing?.destroy()
  drawing = null
  const own = benchProject(wish)
  const plan = planner.plan(own)
  const stage = new Konva.Stage({
    container: container as HTMLDivElement,
    width: container.clientWidth,
    height: container.clientHeight,
  })
  const layer = new Konva.Layer({ listening: false })
  const petals = plan.motif?.petals ?? 0
  const each = (plan.motif?.outline.length ?? 0) / petals
  const colours = new Map(own.yarns?.map((yarn) => [yarn.id, yarn.colour]))
  const nodes = plan.motifs.map((motif) => {
    const way = own.colourways?.find((entry) => entry.id === motif.colourway)
    const at = { x: motif.x, y: motif.y, rotation: motif.turn }
    const own8 = Array.from({ length: petals }, (_, k) => {
      const from = Math.round((k - 0.5) * each)
      const points = Array.from({ length: each + 1 }, (_, i) => {
        const outline = plan.motif!.outline
        return outline[(from + i + outline.length) % outline.length]!
      })
      const data = `M0 0L${points.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}Z`
      return new Konva.Path({
        ...at,
        data,
        fill: colours.get(way?.yarns?.petals ?? ''),
        stroke: '#553',
        strokeWidth: 0.8,
      })
    })
    const radius = (plan.motif?.overValleys ?? 0) * 0.24
    const centre = new Konva.Circle({
      ...at,
      radius,
      fill: colours.get(way?.yarns?.centre ?? ''),
      stroke: '#553',
      strokeWidth: 0.8,
    })
    layer.add(...own8, centre)
    return own8
  })
  stage.add(layer)
  const scale = Math.min((stage.width() - 100) / plan.size.width, (stage.height() - 100) / plan.size.height)
  stage.scale({ x: scale, y: scale })
  stage.position({ x: 50, y: 50 })
  naive = { stage, layer, petals: nodes }
}

/** The same panel with a Konva node for each colour section of each item. */
function startNaivePanel(count: number): void {
  drawing?.destroy()
  drawing = null
  const own = benchPanel(count)
  const plan = planner.plan(own)
  const accounts = new Map(plan.accounts?.map((account) => [account.id, account]))
  const stage = new Konva.Stage({
    container: container as HTMLDivElement,
    width: container.clientWidth,
    height: container.clientHeight,
  })
  const layer = new Konva.Layer({ listening: false })
  const colours = new Map(own.yarns?.map((yarn) => [yarn.id, yarn.colour]))
  const nodes = plan.motifs.map((motif) => {
    const way = own.colourways?.find((entry) => entry.id === motif.colourway)
    const own8 = (accounts.get(motif.motif ?? '')?.layers ?? []).map(({ slot, outline }) => {
      const points = outline.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`)
      return new Konva.Path({
        x: motif.x,
        y: motif.y,
        rotation: motif.turn,
        data: `M${points.join('L')}Z`,
        fill: colours.get(way?.yarns?.[slot] ?? ''),
        stroke: '#553',
        strokeWidth: 0.8,
      })
    })
    layer.add(...own8)
    return own8
  })
  stage.add(layer)
  const scale = Math.min((stage.width() - 100) / plan.size.width, (stage.height() - 100) / plan.size.height)
  stage.scale({ x: scale, y: scale })
  stage.position({ x: 50, y: 50 })
  naive = { stage, layer, petals: nodes }
}

function stopNaive(): void {
  naive?.stage.destroy()
  naive = null
}

export interface Frames {
  /** Milliseconds of script in each frame: in frame callbacks and in the events before them. */
  readonly script: number[]
  /** Milliseconds from frame to frame. */
  readonly frame: number[]
}

const request = window.requestAnimationFrame.bind(window)
let counted = 0
window.requestAnimationFrame = (heard) =>
  request((now) => {
    const start = performance.now()
    heard(now)
    counted += performance.now() - start
  })

/** Runs `step` once before each of `count` frames and measures them. */
function measure(count: number, step: (i: number) => void): Promise<Frames> {
  return new Promise((done) => {
    const script: number[] = []
    const frame: number[] = []
    let i = 0
    let last = performance.now()
    const next = () => {
      const now = performance.now()
      if (i > 0) {
        frame.push(now - last)
        script.push(counted)
      }
      last = now
      counted = 0
      if (i === count) return done({ script, frame })
      const start = performance.now()
      step(i++)
      counted += performance.now() - start
      // After everything that asked for this frame.
      request(() => setTimeout(next))
    }
    request(() => setTimeout(next))
  })
}

const point = (type: string, x: number, y: number, buttons: number) =>
  container.dispatchEvent(
    new PointerEvent(type, {
      clientX: x,
      clientY: y,
      pointerId: 1,
      buttons,
      button: type === 'pointermove' ? -1 : 0,
      bubbles: true,
    }),
  )
const wheel = (x: number, y: number, deltaX: number, deltaY: number, ctrlKey: boolean) =>
  container.dispatchEvent(
    new WheelEvent('wheel', {
      clientX: x,
      clientY: y,
      deltaX,
      deltaY,
      ctrlKey,
      bubbles: true,
      cancelable: true,
    }),
  )

/** The three gestures of the bench, on the drawing. */
const gestures = {
  pan: (count: number) =>
    measure(count, (i) => void wheel(600, 400, 14 * Math.sin(i / 9), 11 * Math.cos(i / 7), false)),
  zoom: (count: number) => measure(count, (i) => void wheel(600, 400, 0, i % 60 < 30 ? -24 : 24, true)),
  paint: (count: number) => {
    show({ tool: 'paint' })
    return measure(count, (i) => {
      const x = 640 + 330 * Math.sin(i / 11)
      const y = 400 + 260 * Math.sin(i / 7.3)
      if (i === 0) point('pointerdown', x, y, 1)
      else point(i === count - 1 ? 'pointerup' : 'pointermove', x, y, i === count - 1 ? 0 : 1)
    })
  },
}

/** A drag of one item of a panel about its neighbours. */
const drag = (count: number): Promise<Frames> => {
  const at = drawing!.placeOf('1,230')!
  return measure(count, (i) => {
    if (i === 0) point('pointerdown', at.x, at.y, 1)
    else {
      const x = at.x + 70 * Math.sin(i / 14)
      const y = at.y + 50 * Math.sin(i / 9)
      point(i === count - 1 ? 'pointerup' : 'pointermove', x, y, i === count - 1 ? 0 : 1)
    }
  })
}
const naiveDrag = (count: number): Promise<Frames> =>
  measure(count, (i) => {
    for (const node of naive!.petals[229]!) node.x(node.x() + Math.sin(i / 9))
  })

/** The same on the nodes. */
const naiveGestures = {
  pan: (count: number) =>
    measure(count, (i) => {
      const { stage } = naive!
      stage.position({ x: stage.x() + 14 * Math.sin(i / 9), y: stage.y() + 11 * Math.cos(i / 7) })
    }),
  zoom: (count: number) =>
    measure(count, (i) => {
      const { stage } = naive!
      const factor = Math.exp((i % 60 < 30 ? 24 : -24) / 320)
      stage.scale({ x: stage.scaleX() * factor, y: stage.scaleY() * factor })
      stage.position({ x: 600 - (600 - stage.x()) * factor, y: 400 - (400 - stage.y()) * factor })
    }),
  paint: (count: number) =>
    measure(count, (i) => {
      const motif = naive!.petals[(i * 37) % naive!.petals.length]!
      for (const petal of motif) petal.fill('#5b7592')
    }),
}

const bench = {
  startDrawing,
  startNaive,
  startPanel,
  startNaivePanel,
  stopNaive,
  drag,
  naiveDrag,
  gestures,
  naiveGestures,
  show,
  drawing: () => drawing!,
  view: () => lastView,
  painted: () => paintedNow,
  plan: () => scene!.plan,
  tool: (tool: Tool) => show({ tool }),
  theme: (theme: 'light' | 'dark') => {
    document.documentElement.dataset.theme = theme
    if (scene) show({ theme })
  },
}
export type Bench = typeof bench
;(globalThis as unknown as { bench: Bench }).bench = bench
