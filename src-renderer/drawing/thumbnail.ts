/** A plan painted small, on a canvas of its own. */
import { mapSize } from '../../src-core/layout/placed'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Viewport } from './camera'
import { paintMap } from './map-painter'
import { readPalette } from './palette'
import { PictureMaker } from './picture'
import type { Theme } from './scene'

/** CSS pixels kept clear on every side. */
const MARGIN = 2
const NONE: ReadonlySet<string> = new Set()

/** Paints the whole plan into the middle of a canvas; joins and labels are left out. */
export function paintThumbnail(
  canvas: HTMLCanvasElement,
  { project, plan, theme }: { project: Project; plan: Plan; theme: Theme },
  room: Viewport,
): void {
  const ratio = devicePixelRatio || 1
  const width = Math.round(room.width * ratio)
  const height = Math.round(room.height * ratio)
  if (canvas.width !== width) canvas.width = width
  if (canvas.height !== height) canvas.height = height
  const pen = canvas.getContext('2d')
  const size = mapSize(plan)
  if (!pen || width === 0 || height === 0 || !(size.width > 0 && size.height > 0)) return
  const picture = new PictureMaker().make(
    {
      project,
      plan,
      theme,
      previous: null,
      selection: NONE,
      focus: null,
      flagged: NONE,
      tool: 'select',
      showLabels: false,
      showJoins: false,
      // They keep their size, and would cover what is small.
      showCorners: false,
    },
    readPalette(canvas),
  )
  const margin = MARGIN * ratio
  const scale = Math.min((width - 2 * margin) / size.width, (height - 2 * margin) / size.height)
  const x = (width - size.width * scale) / 2
  const y = (height - size.height * scale) / 2
  pen.setTransform(1, 0, 0, 1, 0, 0)
  pen.clearRect(0, 0, width, height)
  paintMap(pen, picture, { scale, x, y, ratio }, { left: 0, top: 0, right: size.width, bottom: size.height })
}
