/**
 * Reads the pages of a PDF in the order in which they are painted, with another library than wrote them: texts with
 * the boxes of their ink, and paths as lines, all in mm from the top left of the page.
 */
import { getDocument, OPS } from '../pdfjs'

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface Point {
  readonly x: number
  readonly y: number
}

export interface PaintedText {
  readonly kind: 'text'
  readonly text: string
  /** Round the ink of the glyphs, not round the line. */
  readonly box: Box
  /** In points. */
  readonly size: number
  /** Corners of the ink's box where the text is turned; the box's own otherwise. */
  readonly corners: readonly Point[]
  readonly clip: Box | null
}

export interface PaintedPath {
  readonly kind: 'path'
  /** Subpaths as lines; curves are taken in steps. */
  readonly lines: readonly (readonly Point[])[]
  readonly box: Box
  readonly filled: boolean
  readonly stroked: boolean
  /** Of the line, in mm. */
  readonly width: number
  /** Colours as "#rrggbb". */
  readonly fill: string
  readonly stroke: string
  readonly clip: Box | null
  /** What it is clipped to, one within the other, each as lines: a circle shows less than its box. */
  readonly clips: readonly (readonly (readonly Point[])[])[]
}

export type Painted = PaintedText | PaintedPath

export interface PaintedSheet {
  readonly width: number
  readonly height: number
  readonly painted: readonly Painted[]
  /** All text in reading order, runs of white space as one space. */
  readonly words: string
}

type Matrix = readonly [number, number, number, number, number, number]

const MM = 25.4 / 72
const FILLS: ReadonlySet<number> = new Set([
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
])
const STROKES: ReadonlySet<number> = new Set([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
])

/** Heights of the letters of Source Sans 3 in parts of the size, from the face's own table. */
const CAPITAL = 0.66
const SMALL = 0.5
const BELOW = 0.2
const TALL = /[^acegmnopqrsuvwxyz.,;:·–—_\-→←×+=≈~\s]/u
const DEEP = /[gjpqyQJ,;()[\]{}|/_]/u

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
]

const at = (m: Matrix, x: number, y: number): Point => ({
  x: m[0] * x + m[2] * y + m[4],
  y: m[1] * x + m[3] * y + m[5],
})

function boxOf(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { x, y } of points) {
    if (x < left) left = x
    if (x > right) right = x
    if (y < top) top = y
    if (y > bottom) bottom = y
  }
  return { left, top, right, bottom }
}

const meet = (a: Box | null, b: Box): Box =>
  a
    ? {
        left: Math.max(a.left, b.left),
        top: Math.max(a.top, b.top),
        right: Math.min(a.right, b.right),
        bottom: Math.min(a.bottom, b.bottom),
      }
    : b

/** Steps along a curve: enough that a letter is never missed at the sizes of a page. */
const STEPS = 8

/** The lines of a path as the library keeps it: 0 move, 1 line, 2 curve, 4 close. */
function linesOf(buffer: Float32Array, matrix: Matrix): Point[][] {
  const lines: Point[][] = []
  let line: Point[] = []
  for (let i = 0; i < buffer.length;) {
    const kind = buffer[i++]
    if (kind === 0) {
      line = [at(matrix, buffer[i]!, buffer[i + 1]!)]
      lines.push(line)
      i += 2
    } else if (kind === 1) {
      line.push(at(matrix, buffer[i]!, buffer[i + 1]!))
      i += 2
    } else if (kind === 2) {
      const from = line.at(-1)!
      const [b, c, d] = [0, 2, 4].map((k) => at(matrix, buffer[i + k]!, buffer[i + k + 1]!)) as [
        Point,
        Point,
        Point,
      ]
      for (let step = 1; step <= STEPS; step++) {
        const t = step / STEPS
        const u = 1 - t
        const mix = (p: number, q: number, r: number, s: number): number =>
          u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * s
        line.push({ x: mix(from.x, b.x, c.x, d.x), y: mix(from.y, b.y, c.y, d.y) })
      }
      i += 6
    } else if (line.length > 0) line.push(line[0]!)
  }
  return lines
}

interface State {
  matrix: Matrix
  width: number
  fill: string
  stroke: string
  clip: Box | null
  clips: PaintedPath['clips']
  size: number
}

interface Glyph {
  readonly unicode: string
  readonly width: number
}

/** Every page of the file. */
export async function readSheets(bytes: Uint8Array): Promise<PaintedSheet[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const sheets: PaintedSheet[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const [, , width, height] = page.view as [number, number, number, number]
    const { fnArray, argsArray } = await page.getOperatorList()
    const painted = paint(fnArray, argsArray as unknown[], height)
    const words = painted.flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(' ')
    sheets.push({ width: width * MM, height: height * MM, painted, words: words.replace(/\s+/g, ' ') })
  }
  await task.destroy()
  return sheets
}

function paint(operators: readonly number[], list: readonly unknown[], height: number): Painted[] {
  const painted: Painted[] = []
  let state: State = {
    matrix: [MM, 0, 0, -MM, 0, height * MM],
    width: 1,
    fill: '#000000',
    stroke: '#000000',
    clip: null,
    clips: [],
    size: 0,
  }
  const saved: State[] = []
  let text: Matrix = [1, 0, 0, 1, 0, 0]
  let clipNext = false
  operators.forEach((operator, i) => {
    const args = list[i] as never
    switch (operator) {
      case OPS.save:
        saved.push({ ...state })
        break
      case OPS.restore:
      case OPS.paintFormXObjectEnd:
        state = saved.pop()!
        break
      case OPS.paintFormXObjectBegin:
        saved.push({ ...state })
        if (args[0]) state = { ...state, matrix: times(state.matrix, args[0]) }
        break
      case OPS.transform:
        state = { ...state, matrix: times(state.matrix, args) }
        break
      case OPS.setLineWidth:
        state.width = args[0]
        break
      case OPS.setFillRGBColor:
        state.fill = args[0]
        break
      case OPS.setStrokeRGBColor:
        state.stroke = args[0]
        break
      case OPS.setFont:
        state.size = args[1]
        break
      case OPS.setTextMatrix: {
        // The matrix is wrapped in a list of its own, as numbers or as a typed array.
        const [wrapped] = args as unknown as [ArrayLike<number>]
        text = Array.from(wrapped) as unknown as Matrix
        break
      }
      case OPS.showText:
        painted.push(...textOf(args[0] as (Glyph | number)[], times(state.matrix, text), state))
        break
      case OPS.clip:
      case OPS.eoClip:
        clipNext = true
        break
      case OPS.constructPath: {
        const [how, [buffer]] = args as unknown as [number, [Float32Array | null]]
        const lines = buffer ? linesOf(buffer, state.matrix) : []
        if (lines.length === 0) break
        const box = boxOf(lines.flat())
        if (clipNext) {
          state.clip = meet(state.clip, box)
          state.clips = [...state.clips, lines]
        } else {
          const { fill, stroke, clip, clips, matrix, width } = state
          painted.push({
            kind: 'path',
            lines,
            box,
            filled: FILLS.has(how),
            stroked: STROKES.has(how),
            width: width * Math.hypot(matrix[0], matrix[1]),
            fill,
            stroke,
            clip,
            clips,
          })
        }
        clipNext = false
      }
    }
  })
  return painted
}

/** Without the spaces at the end: a line is told with the space to the next one, which has no ink. */
function inked(glyphs: readonly (Glyph | number)[]): readonly (Glyph | number)[] {
  const last = glyphs.findLastIndex((glyph) => typeof glyph !== 'number' && glyph.unicode.trim() !== '')
  return glyphs.slice(0, last + 1)
}

function textOf(all: readonly (Glyph | number)[], matrix: Matrix, state: State): PaintedText[] {
  const glyphs = inked(all)
  const words = glyphs.map((glyph) => (typeof glyph === 'number' ? '' : glyph.unicode)).join('')
  if (words.trim() === '') return []
  const wide =
    (glyphs.reduce<number>((sum, glyph) => sum + (typeof glyph === 'number' ? -glyph : glyph.width), 0) *
      state.size) /
    1000
  const high = (TALL.test(words) ? CAPITAL : SMALL) * state.size
  const low = DEEP.test(words) ? -BELOW * state.size : 0
  const corners = [
    [0, low],
    [wide, low],
    [wide, high],
    [0, high],
  ].map(([x, y]) => at(matrix, x!, y!))
  const size = (state.size * Math.hypot(matrix[2], matrix[3])) / MM
  return [{ kind: 'text', text: words, box: boxOf(corners), size, corners, clip: state.clip }]
}
