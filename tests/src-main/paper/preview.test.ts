/** What the window shows of a page is the page: the letters of its faces, each where the PDF prints it. */
import { describe, expect, it } from 'vitest'
import { mapPages, readFaces, renderMap } from '../../../src-main/paper/index'
import { figureToSvg } from '../../../src-main/paper/svg'
import { DATE, flowers, planned } from './projects'
import { readPdf } from './read-pdf'

const { plan } = planned(flowers({ columns: 4, rows: 3 }))

interface DrawnWord {
  readonly x: number
  readonly y: number
  readonly size: number
}

const POINTS_IN_MM = 72 / 25.4

type Matrix = readonly [number, number, number, number, number, number]

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
]

/** Where the words of a page begin, in mm, and their size in points; groups are moved as a whole, one in the other. */
function wordsOf(svg: string): DrawnWord[] {
  const outlines = new Set([...svg.matchAll(/<path id="(word-\d+)" d="M/g)].map(([, name]) => name))
  const stack: Matrix[] = [[1, 0, 0, 1, 0, 0]]
  const words: DrawnWord[] = []
  for (const [tag, name, attributes = ''] of svg.matchAll(/<\/?(g|use)\b([^>]*)>/g)) {
    const own = /transform="matrix\(([^)]*)\)"/.exec(attributes)?.[1]?.split(' ').map(Number)
    const matrix = own ? times(stack.at(-1)!, own as unknown as Matrix) : stack.at(-1)!
    if (tag.startsWith('</')) stack.pop()
    else if (name === 'g') stack.push(matrix)
    else {
      const href = /href="#([^"]*)"/.exec(attributes)![1]!
      if (!href.startsWith('word-')) continue
      expect(outlines).toContain(href)
      const at = Number(/ x="([^"]*)"/.exec(attributes)?.[1] ?? 0)
      const size = Math.hypot(matrix[0], matrix[1]) * 1000 * POINTS_IN_MM
      words.push({ x: matrix[0] * at + matrix[4], y: matrix[1] * at + matrix[5], size })
    }
  }
  return words
}

describe('a page as a picture', () => {
  it('has every letter where the PDF prints it, and names no face of the system', async () => {
    const faces = readFaces()
    const pages = mapPages(plan, { date: DATE }, faces)
    const pdf = await readPdf(await renderMap(plan, { date: DATE, version: '0' }))
    for (const [at, { figure }] of pages.entries()) {
      const svg = figureToSvg(figure, '', faces)
      expect(svg).not.toMatch(/<text|font-family/)
      const words = wordsOf(svg)
      const { texts } = pdf.pages[at]!
      expect(texts.length).toBeGreaterThan(3)
      const lost = texts.filter(
        (text) =>
          !words.some(
            ({ x, y, size }) =>
              Math.hypot(text.x - x, text.y - y) < 0.03 && Math.abs(text.size - size) < 0.01,
          ),
      )
      expect(lost).toEqual([])
    }
  })
})
