/** Paints what motifs lie on or hang from, in device pixels: below them, and what belongs over them. */
import type { Point } from '../../shared-types/plan'
import type { CordPicture, GroundPicture, PanelPicture } from './ground'
import type { Pen, Placing } from './map-painter'
import type { Palette } from './palette'

/** A cord of chains as a band, in mm, never thinner than so many CSS pixels. */
const CORD = { width: 3, least: 1.6, rim: 0.7 } as const
/** CSS pixels: radius of a hook, longest piece of a tie, how far the wall's line goes on beside the hooks. */
const HOOK = 3.5
const TIE = 34
const WALL = 14
/** Share of the hairline's colour in the band of the seam allowance. */
const ALLOWANCE = 0.42
/** A place that something is fastened by: radius in CSS pixels. */
const FASTENED = { share: 0.6, least: 0.9, most: 2.6 } as const

/** What lies under the motifs. */
export function paintGround(pen: Pen, ground: GroundPicture, placing: Placing, palette: Palette): void {
  pen.setTransform(1, 0, 0, 1, placing.x, placing.y)
  pen.lineJoin = 'round'
  if (ground.kind === 'panel') paintPanel(pen, ground, placing, palette)
  else paintCord(pen, ground, placing, palette)
}

/** What lies over them: where things are fastened to the cord. */
export function paintForeground(
  pen: Pen,
  ground: GroundPicture,
  placing: Placing,
  { palette, showJoins }: { readonly palette: Palette; readonly showJoins: boolean },
): void {
  if (ground.kind !== 'cord' || !showJoins) return
  const { scale, ratio, x, y } = placing
  const size = Math.min(FASTENED.most, Math.max(FASTENED.least, FASTENED.share * (scale / ratio) * 2))
  const radius = size * ratio
  pen.setTransform(1, 0, 0, 1, x, y)
  pen.beginPath()
  for (const { held } of ground.garland.items)
    for (const place of held) {
      pen.moveTo(place.x * scale + radius, place.y * scale)
      pen.arc(place.x * scale, place.y * scale, radius, 0, 2 * Math.PI)
    }
  pen.strokeStyle = palette.paper
  pen.lineWidth = 1.2 * ratio
  pen.stroke()
  pen.fillStyle = palette.ink
  pen.fill()
}

function trace(pen: Pen, points: readonly Point[], scale: number): void {
  points.forEach((point, i) => {
    if (i === 0) pen.moveTo(point.x * scale, point.y * scale)
    else pen.lineTo(point.x * scale, point.y * scale)
  })
}

/** The edge in ink, the seam line dashed, and the allowance between them as a quiet band. */
function paintPanel(
  pen: Pen,
  { edge, inner }: PanelPicture,
  { scale, ratio }: Placing,
  palette: Palette,
): void {
  const closed = (outlines: PanelPicture['inner']) => {
    pen.beginPath()
    for (const outline of outlines) {
      trace(pen, outline, scale)
      pen.closePath()
    }
  }
  if (inner.length > 0) {
    closed([edge, ...inner])
    pen.fillStyle = palette.hairline
    pen.globalAlpha = ALLOWANCE
    pen.fill('evenodd')
    pen.globalAlpha = 1
    closed(inner)
    pen.strokeStyle = palette.quiet
    pen.lineWidth = ratio
    pen.setLineDash([5 * ratio, 3.5 * ratio])
    pen.stroke()
    pen.setLineDash([])
  }
  closed([edge])
  pen.strokeStyle = palette.ink
  pen.lineWidth = 1.25 * ratio
  pen.stroke()
}

function paintCord(pen: Pen, cord: CordPicture, { scale, ratio }: Placing, palette: Palette): void {
  const { line, hooks, tie, beads, ink, garland } = cord
  const width = Math.max(CORD.least * ratio, CORD.width * scale)
  const [first, last] = [hooks[0], hooks.at(-1)]
  if (first && last && garland.swags) {
    pen.beginPath()
    pen.moveTo(first.x * scale - WALL * ratio, first.y * scale)
    pen.lineTo(last.x * scale + WALL * ratio, last.y * scale)
    pen.strokeStyle = palette.quiet
    pen.lineWidth = ratio
    pen.setLineDash([2 * ratio, 4 * ratio])
    pen.stroke()
    pen.setLineDash([])
  }
  pen.lineCap = 'round'
  const long = Math.min(TIE * ratio, tie * scale)
  const strands = () => {
    pen.beginPath()
    trace(pen, line, scale)
    if (long > 0)
      for (const end of [first, last])
        if (end) trace(pen, [end, { x: end.x, y: end.y + long / scale }], scale)
  }
  strands()
  pen.strokeStyle = ink.line
  pen.lineWidth = width + 2 * CORD.rim * ratio
  pen.stroke()
  strands()
  pen.strokeStyle = ink.fill
  pen.lineWidth = width
  pen.stroke()
  pen.lineWidth = ratio
  for (const { x, y, radius } of beads) {
    pen.beginPath()
    pen.arc(x * scale, y * scale, Math.max(radius * scale, 1.5 * ratio), 0, 2 * Math.PI)
    pen.fillStyle = palette.paper
    pen.fill()
    pen.strokeStyle = palette.ink
    pen.stroke()
  }
  for (const { x, y } of hooks) {
    pen.beginPath()
    pen.arc(x * scale, y * scale, HOOK * ratio, 0, 2 * Math.PI)
    pen.fillStyle = palette.paper
    pen.fill()
    pen.strokeStyle = palette.ink
    pen.stroke()
  }
}
