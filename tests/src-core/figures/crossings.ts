/** Which symbols of a chart lie on each other: their strokes cross, or a filled dot lies on a stroke. */
import type { Point } from '../../../shared-types/plan'
import type { ChartFigure, ChartMark } from '../../../src-core/figures/chart'
import { flattenPath } from '../../../src-core/figures/chart/flatten'

interface Lines {
  readonly mark: ChartMark
  readonly segments: readonly (readonly [Point, Point])[]
  readonly box: readonly [number, number, number, number]
}

function linesOf(mark: ChartMark): Lines {
  const segments = [...flattenPath(mark.ink.strokes), ...flattenPath(mark.ink.fills)].flatMap((run) =>
    run.slice(1).map((point, i) => [run[i]!, point] as const),
  )
  const xs = segments.flat().map((p) => p.x)
  const ys = segments.flat().map((p) => p.y)
  return { mark, segments, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] }
}

const side = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

const cross = ([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0

/** Pairs of marks that lie on each other, in words. */
export function crossings({ marks }: Pick<ChartFigure, 'marks'>): string[] {
  const all = marks.map(linesOf)
  const found: string[] = []
  all.forEach((one, i) => {
    for (const other of all.slice(i + 1)) {
      if (
        one.box[0] > other.box[2] ||
        other.box[0] > one.box[2] ||
        one.box[1] > other.box[3] ||
        other.box[1] > one.box[3]
      )
        continue
      if (one.segments.some((s) => other.segments.some((t) => cross(s, t))))
        found.push(`${words(one.mark)} on ${words(other.mark)}`)
    }
  })
  return found
}

const words = ({ round, element }: ChartMark): string =>
  `round ${round.round.number} ${element.role} ${element.index} ${element.stitch}`
