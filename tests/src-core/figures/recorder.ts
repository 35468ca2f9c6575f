/** Records what a figure would draw: every item in page coordinates, symbols and groups taken apart. */
import type {
  Figure,
  FigureItem,
  FigureSymbol,
  Matrix,
  Paint,
  Path,
  TextItem,
} from '../../../src-core/figures/figure'

interface RecordedText extends Omit<TextItem, 'kind'> {
  /** Printed size in points. */
  readonly printed: number
}

interface Recording {
  readonly texts: readonly RecordedText[]
  readonly uses: readonly { readonly symbol: FigureSymbol; readonly x: number; readonly y: number }[]
  /** Paths of the figure itself, not those inside of symbols. */
  readonly paths: readonly {
    readonly points: readonly (readonly [number, number])[]
    readonly paint: Paint
  }[]
}

const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0]

const multiply = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
]

const apply = (m: Matrix, x: number, y: number): [number, number] => [
  m[0] * x + m[2] * y + m[4],
  m[1] * x + m[3] * y + m[5],
]

/** The points that a path names, control points included. */
export function pathPoints(path: Path): [number, number][] {
  return path.flatMap((segment): [number, number][] => {
    switch (segment[0]) {
      case 'M':
      case 'L':
        return [[segment[1], segment[2]]]
      case 'C':
        return [
          [segment[1], segment[2]],
          [segment[3], segment[4]],
          [segment[5], segment[6]],
        ]
      case 'Z':
        return []
    }
  })
}

/** Everything that a figure draws. */
export function record(figure: Pick<Figure, 'items'>): Recording {
  const texts: RecordedText[] = []
  const uses: { symbol: FigureSymbol; x: number; y: number }[] = []
  const paths: { points: [number, number][]; paint: Paint }[] = []
  const visit = (items: readonly FigureItem[], matrix: Matrix): void => {
    for (const item of items) {
      switch (item.kind) {
        case 'text': {
          const [x, y] = apply(matrix, item.x, item.y)
          texts.push({ ...item, x, y, printed: item.size * Math.hypot(matrix[2], matrix[3]) })
          break
        }
        case 'use': {
          const [x, y] = apply(multiply(matrix, item.matrix), 0, 0)
          uses.push({ symbol: item.symbol, x, y })
          break
        }
        case 'path':
          paths.push({
            points: pathPoints(item.path).map(([x, y]) => apply(matrix, x, y)),
            paint: item.paint,
          })
          break
        case 'group':
          visit(item.items, item.matrix ? multiply(matrix, item.matrix) : matrix)
      }
    }
  }
  visit(figure.items, IDENTITY)
  return { texts, uses, paths }
}
