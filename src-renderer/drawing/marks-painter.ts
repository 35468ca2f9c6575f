/** What is marked on the map: selected motifs, the one that the keyboard is on, those a finding points at. */
import type { MotifAccount, Point } from '../../shared-types/plan'
import { radians } from '../../src-core/units/quantity'
import type { Camera, Viewport } from './camera'
import { toPlan, toScreen } from './camera'
import type { Picture } from './picture'

export type MarkPen = Pick<
  CanvasRenderingContext2D,
  | 'save'
  | 'restore'
  | 'transform'
  | 'stroke'
  | 'fill'
  | 'beginPath'
  | 'arc'
  | 'moveTo'
  | 'lineTo'
  | 'setLineDash'
  | 'strokeStyle'
  | 'fillStyle'
  | 'lineWidth'
  | 'lineJoin'
>

export interface Marks {
  readonly selection: ReadonlySet<string>
  readonly focus: string | null
  readonly flagged: ReadonlySet<string>
  /** The motif under the pointer. */
  readonly hover: string | null
}

/** CSS pixels between a motif's tips and a ring round it. */
const RING_OFF = 3
/** Under this size on screen (CSS pixels) a selected motif is marked with a dot instead of its contour. */
const CONTOUR_FROM = 12

/** Draws the marks in CSS pixels; `contour` is the motif's outermost layer in mm. */
export function paintMarks(
  pen: MarkPen,
  picture: Picture,
  camera: Camera,
  viewport: Viewport,
  marks: Marks,
  contour: Path2D | null,
): void {
  const { account, palette } = picture
  if (!account || !contour) return
  if (marks.selection.size === 0 && marks.flagged.size === 0 && !marks.focus && !marks.hover) return
  const from = toPlan(camera, { x: 0, y: 0 })
  const to = toPlan(camera, { x: viewport.width, y: viewport.height })
  const size = account.overTips * camera.scale
  const radius = ringRadius(account, picture, camera)
  pen.lineJoin = 'round'
  const flagged: Point[] = []
  for (const index of picture.hit.meeting({ left: from.x, top: from.y, right: to.x, bottom: to.y })) {
    const motif = picture.motifs[index]!
    const at = toScreen(camera, motif)
    if (marks.selection.has(motif.id) || marks.hover === motif.id) {
      const selected = marks.selection.has(motif.id)
      if (size >= CONTOUR_FROM) {
        pen.save()
        place(pen, picture, camera, at, motif.turn)
        if (selected) {
          // A hair of paper under the accent keeps it apart from yarn of a like colour.
          pen.strokeStyle = palette.paper
          pen.lineWidth = 5 / camera.scale
          pen.stroke(contour)
        }
        pen.strokeStyle = selected ? palette.accent : palette.ink
        pen.lineWidth = (selected ? 2.5 : 1.5) / camera.scale
        pen.stroke(contour)
        pen.restore()
      } else {
        pen.fillStyle = selected ? palette.accent : palette.quiet
        pen.beginPath()
        pen.arc(at.x, at.y, Math.max(1.5, size * 0.3), 0, 2 * Math.PI)
        pen.fill()
      }
    }
    if (marks.flagged.has(motif.id)) flagged.push(at)
    if (marks.focus === motif.id) ring(pen, at, radius + 1, palette.accent, palette.paper, 2.5)
  }
  if (flagged.length === 0) return
  pen.setLineDash([4, 3])
  for (const at of flagged) ring(pen, at, radius - 1, palette.warning, palette.paper, 2)
  pen.setLineDash([])
}

function ring(pen: MarkPen, at: Point, radius: number, colour: string, under: string, width: number): void {
  pen.beginPath()
  pen.arc(at.x, at.y, radius, 0, 2 * Math.PI)
  pen.strokeStyle = under
  pen.lineWidth = width + 2
  pen.stroke()
  pen.strokeStyle = colour
  pen.lineWidth = width
  pen.stroke()
}

function ringRadius(account: MotifAccount, picture: Picture, camera: Camera): number {
  const reach = account.outline.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0)
  return reach * Math.max(picture.stretch.width, picture.stretch.height) * camera.scale + RING_OFF
}

function place(pen: MarkPen, picture: Picture, camera: Camera, at: Point, turn: number): void {
  const { width, height } = picture.stretch
  const cos = Math.cos(radians(turn)) * camera.scale
  const sin = Math.sin(radians(turn)) * camera.scale
  pen.transform(cos * width, sin * height, -sin * width, cos * height, at.x, at.y)
}
