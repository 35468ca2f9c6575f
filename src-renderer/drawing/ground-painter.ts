/** Paints what motifs lie on or hang from, in device pixels: below them, and what belongs over them. */
import type { Point } from '../../shared-types/plan'
import type { CordPicture, GroundPicture, PanelPicture } from './ground'
import { write } from './canvas'
import type { Lettering, Pen } from './canvas'
import type { Placing } from './pen'
import type { Palette } from './palette'
import type { Picture } from './picture'

/** A cord of chains as a band, in mm, never thinner than so many CSS pixels. */
const CORD = { width: 3, least: 1.6, rim: 0.7 } as const
/** CSS pixels, and in small pictures no more than so many mm: radius of a hook, the piece of a tie that is shown. */
const HOOK = { most: 3.5, mm: 16 } as const
const TIE = { most: 34, mm: 110 } as const
/** CSS pixels that the wall's line goes on beside the hooks. */
const WALL = 14
/** Share of the hairline's colour in the band of the seam allowance. */
const ALLOWANCE = 0.42
/** Numbers along a cord, in CSS pixels: their type, their distance below things, the room that each takes. */
const NUMBER = { type: 11.5, off: 4, room: 17 } as const
/** A place that something is fastened by: radius in CSS pixels. */
const FASTENED = { share: 0.6, least: 0.9, most: 2.6 } as const

/** What lies under the motifs. */
export function paintGround(pen: Pen, ground: GroundPicture, placing: Placing, palette: Palette): void {
  pen.setTransform(1, 0, 0, 1, placing.x, placing.y)
  pen.lineJoin = 'round'
  // Dashes are cut straight, whatever was drawn before.
  pen.lineCap = 'butt'
  if (ground.kind === 'panel') paintPanel(pen, ground, placing, palette)
  else paintCord(pen, ground, placing, palette)
}

/** What lies over them: where things are fastened to the cord, and their numbers. */
export function paintForeground(
  pen: Pen,
  ground: GroundPicture,
  placing: Placing,
  picture: Pick<Picture, 'palette' | 'showJoins' | 'showLabels' | 'hit'>,
): void {
  if (ground.kind !== 'cord') return
  pen.setTransform(1, 0, 0, 1, placing.x, placing.y)
  if (picture.showJoins) paintFastenings(pen, ground, placing, picture.palette)
  if (picture.showLabels) paintNumbers(pen, ground, placing, picture)
}

function paintFastenings(
  pen: Pen,
  { garland }: CordPicture,
  { scale, ratio }: Placing,
  palette: Palette,
): void {
  const size = Math.min(FASTENED.most, Math.max(FASTENED.least, FASTENED.share * (scale / ratio) * 2))
  const radius = size * ratio
  pen.beginPath()
  for (const { held } of garland.items)
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

/** The number of each thing on the cord below it, as on paper; every second, third… where they are close. */
function paintNumbers(
  pen: Pen,
  { garland: { items } }: CordPicture,
  { scale, ratio }: Placing,
  { palette, hit }: Pick<Picture, 'palette' | 'hit'>,
): void {
  const [first, last] = [items[0], items.at(-1)]
  if (!first || !last) return
  const pitch = ((last.x - first.x) * scale) / Math.max(1, items.length - 1)
  const every = Math.max(1, Math.ceil((NUMBER.room * ratio) / Math.max(pitch, 0.1)))
  const lettering: Lettering = {
    font: `600 ${NUMBER.type * ratio}px ${palette.face}`,
    ...{ colour: palette.ink, hem: palette.paper, hemWidth: 3 * ratio, baseline: 'top' },
  }
  let motifs = 0
  items.forEach(({ motif, x, y, extent }, i) => {
    const box = motif === '' ? null : hit.boxOf(motifs++)
    if (i % every !== 0) return
    const middle = box ? (box.left + box.right) / 2 : x
    const below = box ? box.bottom : y + extent / 2
    write(pen, String(i + 1), { x: middle * scale, y: below * scale + NUMBER.off * ratio }, lettering)
  })
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
  const long = Math.min(TIE.most * ratio, TIE.mm * scale, tie * scale)
  const hook = Math.min(HOOK.most * ratio, HOOK.mm * scale)
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
  paintLoops(pen, cord, scale, Math.max(ratio, width * 0.5))
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
    pen.arc(x * scale, y * scale, hook, 0, 2 * Math.PI)
    pen.fillStyle = palette.paper
    pen.fill()
    pen.strokeStyle = palette.ink
    pen.stroke()
  }
}

/** Where the cord slopes, what hangs straight down is fastened a little above or below it. */
function paintLoops(pen: Pen, { garland, ink }: CordPicture, scale: number, width: number): void {
  const { line, items } = garland
  let at = 0
  pen.beginPath()
  for (const { held } of items)
    for (const place of held) {
      while (at > 0 && line[at]!.x > place.x) at--
      while (at < line.length - 2 && line[at + 1]!.x < place.x) at++
      const [a, b] = [line[at], line[at + 1]]
      if (!a || !b || b.x <= a.x || place.x < a.x || place.x > b.x) continue
      const y = a.y + ((b.y - a.y) * (place.x - a.x)) / (b.x - a.x)
      pen.moveTo(place.x * scale, place.y * scale)
      pen.lineTo(place.x * scale, y * scale)
    }
  pen.strokeStyle = ink.line
  pen.lineWidth = width
  pen.stroke()
}
