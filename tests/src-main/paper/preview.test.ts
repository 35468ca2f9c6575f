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

/** Sheets of words alone. */
const FLAT: ReadonlySet<string> = new Set(['order', 'materials', 'notes'])
const POINTS_IN_MM = 72 / 25.4

/** Where the words of a page begin, in mm, and their size in points. */
function wordsOf(svg: string): DrawnWord[] {
  const outlines = new Set([...svg.matchAll(/<path id="(word-\d+)" d="M/g)].map(([, name]) => name))
  return [...svg.matchAll(/<g transform="matrix\(([^)]*)\)" fill="[^"]*">(.*?)<\/g>/g)].flatMap(
    ([, matrix, uses]) => {
      const [scale, , , , x, y] = matrix!.split(' ').map(Number) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ]
      return [...uses!.matchAll(/<use href="#([^"]*)"(?: x="([^"]*)")?\/>/g)].map(([, name, at]) => {
        expect(outlines).toContain(name)
        return { x: x + scale * Number(at ?? 0), y, size: scale * 1000 * POINTS_IN_MM }
      })
    },
  )
}

describe('a page as a picture', () => {
  it('has every letter where the PDF prints it, and names no face of the system', async () => {
    const faces = readFaces()
    const pages = mapPages(plan, { date: DATE }, faces)
    expect(pages.filter(({ section }) => FLAT.has(section)).length).toBeGreaterThan(1)
    const pdf = await readPdf(await renderMap(plan, { date: DATE, version: '0' }))
    for (const [at, { figure, section }] of pages.entries()) {
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
      // On the others there are groups, which are moved as a whole.
      if (FLAT.has(section)) expect(lost).toEqual([])
    }
  })
})
