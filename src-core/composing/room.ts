/** Where there is room for one more item. */
import type { Point } from '../../shared-types/plan'
import { areaDistance, indexEdges, insideDistance } from '../geometry/edges'
import { boxOf, moveOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { APPLIQUE } from '../layout/applique/constants'
import { isWithinSeam, middleOf } from './ground'
import type { Ground } from './ground'

/** Places that are tried along the longer side of the panel: a finger's width on a cushion (ours). */
const TRIES = 60
/** mm. No finer than this. */
const LEAST_STEP = 3

/**
 * The place nearest to the middle of the panel where an outline about its centre keeps the asked distances;
 * the middle itself where there is no such place. null without a panel.
 */
export function roomFor({ panel, laid, clearance }: Ground, outline: Outline): Point | null {
  if (!panel) return null
  const middle = middleOf(panel)
  const box = boxOf(panel.outline)
  const step = Math.max(LEAST_STEP, Math.max(box.right - box.left, box.bottom - box.top) / TRIES)
  const places: { readonly point: Point; readonly far: number }[] = []
  const [across, down] = [box.right - box.left, box.bottom - box.top].map((size) =>
    Math.ceil(size / step / 2),
  )
  for (let j = -down!; j <= down!; j++)
    for (let i = -across!; i <= across!; i++) {
      const point = { x: middle.x + i * step, y: middle.y + j * step }
      if (isWithinSeam(panel, point)) places.push({ point, far: i * i + j * j })
    }
  places.sort((a, b) => a.far - b.far)
  const least = Math.max(clearance, APPLIQUE.judged)
  const free = places.find(({ point }) => {
    const edges = indexEdges(moveOutline(outline, point.x, point.y))
    return (
      laid.every((item) => areaDistance(item.edges, edges, least) >= least) &&
      insideDistance(edges, panel.edges) >= panel.allowance
    )
  })
  return free?.point ?? middle
}
