/** Reads the lines of a PDF back, in mm from the top left of each page, with another library than wrote them. */
import { getDocument, OPS } from './pdfjs'

export interface ReadPath {
  /** Corners of the path; of a curve its ends. */
  readonly points: readonly { readonly x: number; readonly y: number }[]
  readonly stroked: boolean
  /** Line width in mm. */
  readonly width: number
  readonly dashed: boolean
  /** Box that all clips round it share, or null. */
  readonly clip: Box | null
}

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

type Matrix = readonly [number, number, number, number, number, number]
const MM = 25.4 / 72
const STROKES: readonly number[] = [OPS.stroke, OPS.closeStroke, OPS.fillStroke, OPS.closeFillStroke]
const ARGUMENTS = [2, 2, 6, 4, 0] as const

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
]

export const boxOfPoints = (points: ReadPath['points']): Box => ({
  left: Math.min(...points.map(({ x }) => x)),
  top: Math.min(...points.map(({ y }) => y)),
  right: Math.max(...points.map(({ x }) => x)),
  bottom: Math.max(...points.map(({ y }) => y)),
})

/** A clip within another shows what both show (§pdf, 8.5.4). */
const shared = (outer: Box | null, inner: Box): Box =>
  outer
    ? {
        left: Math.max(outer.left, inner.left),
        top: Math.max(outer.top, inner.top),
        right: Math.min(outer.right, inner.right),
        bottom: Math.min(outer.bottom, inner.bottom),
      }
    : inner

/** The paths of every page. */
export async function readPaths(bytes: Uint8Array): Promise<ReadPath[][]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const pages: ReadPath[][] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const [, , , height] = page.view as [number, number, number, number]
    const { fnArray, argsArray } = await page.getOperatorList()
    const paths: ReadPath[] = []
    let state = {
      matrix: [MM, 0, 0, -MM, 0, height * MM] as Matrix,
      width: 1,
      dashed: false,
      clip: null as Box | null,
    }
    const saved: (typeof state)[] = []
    let clipNext = false
    fnArray.forEach((operator, i) => {
      const args = argsArray[i] as never
      switch (operator) {
        case OPS.save:
          saved.push({ ...state })
          break
        case OPS.restore:
          state = saved.pop()!
          break
        case OPS.transform:
          state = { ...state, matrix: times(state.matrix, args) }
          break
        case OPS.paintFormXObjectBegin:
          saved.push({ ...state })
          if (args[0]) state = { ...state, matrix: times(state.matrix, args[0]) }
          break
        case OPS.paintFormXObjectEnd:
          state = saved.pop()!
          break
        case OPS.setLineWidth:
          state = { ...state, width: args[0] }
          break
        case OPS.setDash:
          state = { ...state, dashed: (args[0] as number[]).length > 0 }
          break
        case OPS.clip:
          clipNext = true
          break
        case OPS.constructPath: {
          const [paint, [buffer]] = args as unknown as [number, [Float32Array | null]]
          const points = buffer ? corners(buffer, state.matrix) : []
          if (clipNext) {
            state = { ...state, clip: shared(state.clip, boxOfPoints(points)) }
            clipNext = false
          } else if (points.length > 0) {
            const scale = Math.hypot(state.matrix[0], state.matrix[1])
            const { dashed, clip } = state
            paths.push({ points, stroked: STROKES.includes(paint), width: state.width * scale, dashed, clip })
          }
        }
      }
    })
    pages.push(paths)
  }
  await task.destroy()
  return pages
}

function corners(buffer: Float32Array, matrix: Matrix): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = []
  for (let i = 0; i < buffer.length;) {
    const count = ARGUMENTS[buffer[i] as 0 | 1 | 2 | 3 | 4]
    if (count > 0) {
      const [x, y] = [buffer[i + count - 1]!, buffer[i + count]!]
      points.push({
        x: matrix[0] * x + matrix[2] * y + matrix[4],
        y: matrix[1] * x + matrix[3] * y + matrix[5],
      })
    }
    i += 1 + count
  }
  return points
}
