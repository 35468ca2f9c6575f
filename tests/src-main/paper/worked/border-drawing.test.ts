/** The drawing on the border's page: what is said of a stretch stands beside the edge and covers none of it. */
import { expect, it } from 'vitest'
import { cornerPlates } from '../../../../src-core/figures/edging-corners'
import { INK, PAPER } from '../../../../src-core/figures/figure'
import { mapGround } from '../../../../src-core/figures/map-ground'
import { circles, hexagons, toldOf } from './pages-of'

const SCALE = 0.16
const written = [{ work: '*sc in each of next 3 sts, ch 3, sl st in last sc made; rep from * around.' }]

it.each([
  ['circles', circles()],
  [
    'hexagons with halves',
    hexagons({
      layout: {
        ...hexagons().layout!,
        edging: { style: 'follow', rounds: ['sc'], yarn: 'cream', written },
      } as never,
    }),
  ],
])('counts of stitches cover nothing of the edge of %s', (_, project) => {
  const { plan } = toldOf(project)
  const look = { scale: SCALE, type: 7, ink: INK, paper: PAPER, line: 0.25, isBeside: true, left: 0, top: 0 }
  const groups = cornerPlates(plan, look).flatMap((item) => (item.kind === 'group' ? [item] : []))
  expect(groups.length).toBeGreaterThan(2)
  const edge = mapGround(plan, 'ink').edge.flatMap((outline) =>
    outline.flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length]!
      return Array.from({ length: 20 }, (_, k) => ({
        x: (a.x + ((b.x - a.x) * k) / 20) * SCALE,
        y: (a.y + ((b.y - a.y) * k) / 20) * SCALE,
      }))
    }),
  )
  for (const { matrix, items } of groups) {
    const [cos, sin, , , x, y] = matrix!
    const [box] = items
    const path = box!.kind === 'path' ? box!.path : []
    const corners = path.flatMap((each) => (each[0] === 'M' || each[0] === 'L' ? [each] : []))
    expect(corners).toHaveLength(4)
    const across = Math.max(...corners.map(([, at]) => at))
    const down = Math.max(...corners.map(([, , at]) => at))
    const covered = edge.filter((point) => {
      const [dx, dy] = [point.x - x, point.y - y]
      return Math.abs(dx * cos + dy * sin) < across && Math.abs(dy * cos - dx * sin) < down + look.line
    })
    expect(covered).toEqual([])
  }
})
