/**
 * Things of a panel in the hand: what a drag moves or rotates, from CSS pixels to mm, the line that is drawn, and
 * the distances that are shown meanwhile.
 */
import type { Point } from '../../shared-types/plan'
import { formatNumber } from '../../src-core/units/format'
import { MM_PER_INCH } from '../../src-core/units/quantity'
import { drawnAs } from '../kinds/drawn'
import { appliqueOf } from '../state/edits/applique'
import { toPlan, toScreen } from './camera'
import type { Camera } from './camera'
import { GapFinder } from './gaps'
import type { GapLine } from './overlay-painter'
import type { Picture } from './picture'
import type { DrawingCallbacks, Phase, Scene, SelectHow } from './scene'
import { DEFAULTS } from '../../src-core/settled'

/** What handling asks of the drawing. */
interface Holder {
  scene(): Scene | null
  picture(): Picture | null
  camera(): Camera
  redraw(): void
}

/** Milliseconds that distances stay after a key moved something. */
const LINGER = 1600
/** Under this many CSS pixels for a mm things move in halves of a mm, else in tenths. */
const TENTHS_FROM = 4

export class Handling {
  readonly #holder: Holder
  readonly #callbacks: DrawingCallbacks
  readonly #finder = new GapFinder()
  /** What is moved or rotated, from its start to its end. */
  #ids: readonly string[] | null = null
  #line: readonly Point[] | null = null
  /** What things turn about while they are rotated, in mm, and how far they have come. */
  #turned: { readonly pivot: Point; readonly degrees: number } | null = null
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(holder: Holder, callbacks: DrawingCallbacks) {
    this.#holder = holder
    this.#callbacks = callbacks
  }

  /** The line that is being drawn, in mm. */
  get line(): readonly Point[] | null {
    return this.#line
  }

  /** A drag moves or rotates something. */
  get isDragging(): boolean {
    return this.#ids !== null
  }

  /** Something is in the hand: whatever the scene shows of it changes the distances. */
  get busy(): boolean {
    return this.#ids !== null || this.#timer !== undefined
  }

  /** Where things turn that are chosen together with a motif: its centre, or the middle of all of theirs. */
  pivotOf(id: string): Point | null {
    const chosen = new Set(this.#chosenWith(id))
    const centres = (this.#holder.picture()?.motifs ?? []).filter((motif) => chosen.has(motif.id))
    if (centres.length === 0) return null
    const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2
    return { x: middle(centres.map(({ x }) => x)), y: middle(centres.map(({ y }) => y)) }
  }

  take(id: string, how: SelectHow): void {
    this.#ids = this.#chosenWith(id)
    if (this.#holder.scene()?.selection.has(id)) return
    this.#ids = how === 'replace' ? [id] : [...(this.#holder.scene()?.selection ?? []), id]
    this.#callbacks.onSelect([id], how)
  }

  /** Moves what was taken by CSS pixels since the start. */
  move(dx: number, dy: number, phase: Phase, pressed: string): void {
    const ids = (this.#ids ??= this.#chosenWith(pressed))
    const { scale } = this.#holder.camera()
    const step = scale < TENTHS_FROM ? 0.5 : 0.1
    const rounded = (pixels: number) => Number((Math.round(pixels / scale / step) * step).toFixed(1))
    this.#settle(phase)
    this.#callbacks.onMove?.(ids, { dx: rounded(dx), dy: rounded(dy) }, phase)
    this.#holder.redraw()
  }

  /** Rotates what is chosen; on a blanket, all motifs together. */
  turn(degrees: number, phase: Phase, pressed: string): void {
    const scene = this.#holder.scene()
    if (!scene || !drawnAs(scene.plan).turnsEach) return this.#callbacks.onTurn?.(degrees, phase)
    const pivot = this.#turned?.pivot ?? this.pivotOf(pressed)
    const ids = (this.#ids ??= this.#chosenWith(pressed))
    this.#turned = pivot && { pivot, degrees }
    this.#settle(phase)
    this.#callbacks.onTurnItem?.(ids, degrees, phase)
    this.#holder.redraw()
  }

  /** The middle of a rotation that is under way, on screen, and its degrees in words. */
  pivot(): { readonly at: Point; readonly words: string } | null {
    if (!this.#turned) return null
    const { pivot, degrees } = this.#turned
    return { at: toScreen(this.#holder.camera(), pivot), words: `${formatNumber(degrees, 1)}°` }
  }

  drawLine(points: readonly Point[], phase: Phase): void {
    const line = points.map((point) => toPlan(this.#holder.camera(), point))
    this.#line = phase === 'start' || phase === 'move' ? line : null
    this.#callbacks.onDrawLine?.(line, phase)
    this.#holder.redraw()
  }

  /** Shows distances for a moment, after a key moved what is chosen. */
  linger(): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => {
      this.#timer = undefined
      this.#holder.redraw()
    }, LINGER)
    this.#holder.redraw()
  }

  /** The distances to show: of what is in the hand, or of what is chosen while a change is tried out. */
  gaps(): GapLine[] {
    const scene = this.#holder.scene()
    const picture = this.#holder.picture()
    if (!scene?.plan.panel || !picture) return []
    const isShown = this.busy || (scene.previous !== null && scene.selection.size > 0)
    if (!isShown) return []
    const { units } = scene.project
    const clearance = appliqueOf(scene.project)?.clearance ?? 0
    const camera = this.#holder.camera()
    return (
      this.#finder
        .find(picture, new Set(this.#ids ?? scene.selection), clearance)
        // What lies on something else is shown as what it is; a distance of nothing has no line.
        .filter(({ distance }) => distance !== 0)
        .map(({ from, to, distance, isShort }) => ({
          from: toScreen(camera, from),
          to: toScreen(camera, to),
          words: gapWords(distance, units ?? DEFAULTS.units),
          isShort,
        }))
    )
  }

  destroy(): void {
    clearTimeout(this.#timer)
  }

  #settle(phase: Phase): void {
    if (phase === 'start' || phase === 'move') return
    this.#ids = null
    this.#turned = null
  }

  #chosenWith(id: string): readonly string[] {
    const selection = this.#holder.scene()?.selection
    return selection?.has(id) ? [...selection] : [id]
  }
}

/** "4.5 mm", "0.18 in": eighths would hide small distances. */
export const gapWords = (mm: number, units: 'metric' | 'imperial'): string =>
  units === 'imperial' ? `${formatNumber(mm / MM_PER_INCH, 2)} in` : `${formatNumber(mm, 1)} mm`
