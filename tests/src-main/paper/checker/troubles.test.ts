import { describe, expect, it } from 'vitest'
import type { FigureItem } from '../../../../src-core/figures/figure'
import { drawPath, drawText, INK, PAPER } from '../../../../src-core/figures/figure'
import { circlePath, linePath, rectanglePath } from '../../../../src-core/figures/path'
import { readFaces } from '../../../../src-main/paper/pdf/faces'
import { writePdf } from '../../../../src-main/paper/pdf/file'
import { DATE } from '../projects'
import { readSheets } from './read-sheets'
import { beyondMargin, emptyPages, sparsePages, troublesOf } from './troubles'

const information = { title: 't', author: '', subject: '', language: 'en', date: DATE, producer: 'p' }

async function found(...items: FigureItem[]): Promise<string[]> {
  const page = { label: '1', bookmarks: [], figure: { width: 100, height: 100, items } }
  const [sheet] = await readSheets(await writePdf([page], information, { faces: readFaces() }))
  return troublesOf(sheet!, { ink: true })
}

const words = drawText('Work petals', 20, 50, 10)
const through = drawPath(linePath(10, 49, 60, 49), { stroke: INK, width: 0.3 })

describe('the page checker', () => {
  it('lets a page be on which everything can be read', async () => {
    const below = drawPath(linePath(10, 52, 60, 52), { stroke: INK, width: 0.3 })
    expect(await found(words, below, drawText('the next', 20, 56, 10))).toEqual([])
  })

  it('finds text that is cut off, on text, on a line, or clipped', async () => {
    expect(await found(drawText('Apple blo…', 20, 50, 10))).toEqual(['cut off: “Apple blo…”'])
    expect(await found(words, drawText('there', 22, 50.5, 10))).toEqual([
      expect.stringMatching(/^on each other/),
    ])
    expect(await found(words, through)).toEqual([expect.stringMatching(/^a line through “Work petals”/)])
    const clip = rectanglePath(0, 0, 25, 100)
    expect(await found({ kind: 'group', clip, items: [words] })).toEqual(['clipped: “Work petals”'])
  })

  it('knows that paper between a line and a text hides the line, and only then', async () => {
    const paper = drawPath(rectanglePath(18, 45, 30, 7), { fill: PAPER })
    expect(await found(through, paper, words)).toEqual([])
    expect(await found(paper, through, words)).toHaveLength(1)
  })

  it('knows what a clip of any shape shows of a line: what its box alone holds is not there', async () => {
    const clipped = (x: number, y: number, radius: number): FigureItem => ({
      kind: 'group',
      clip: circlePath(x, y, radius),
      items: [through],
    })
    // The text runs from 20 mm on, a little above 50: the corner of this circle's box holds its beginning, the circle not.
    expect(await found(words, clipped(10, 60, 14))).toEqual([])
    expect(await found(words, clipped(20, 50, 4))).toEqual([
      expect.stringMatching(/^a line through “Work petals”/),
    ])
    // Paper that is clipped so hides nothing there either.
    const paper = drawPath(rectanglePath(18, 45, 30, 7), { fill: PAPER })
    const clip = circlePath(10, 60, 14)
    expect(await found(through, { kind: 'group', clip, items: [paper] }, words)).toHaveLength(1)
  })

  it('finds what is too near to an edge, and lets be what a clip hides there', async () => {
    const near = async (...items: FigureItem[]) => {
      const page = { label: '1', bookmarks: [], figure: { width: 100, height: 100, items } }
      const [sheet] = await readSheets(await writePdf([page], information, { faces: readFaces() }))
      return beyondMargin(sheet!)
    }
    const line = drawPath(linePath(11, 30, 60, 30), { stroke: INK, width: 0.3 })
    expect(await near(words, line)).toEqual([expect.stringMatching(/^beyond the margin: a path at 10.9/)])
    const clip = rectanglePath(12, 12, 76, 76)
    expect(await near(words, { kind: 'group', clip, items: [line] })).toEqual([])
    expect(await near(drawText('page 1 of 1', 70, 50, 14))).toHaveLength(1)
  })

  it('finds colour in ink, and a heading with nothing below it', async () => {
    expect(await found(drawPath(rectanglePath(5, 5, 9, 9), { fill: '#d98b8f' }))).toEqual([
      expect.stringMatching(/^coloured in ink: #d98b8f/),
    ])
    const foot = drawText('page 1 of 1', 20, 92, 9)
    const heading = drawText('Materials', 20, 70, 12.5, { weight: 'bold' })
    expect(await found(words, heading, foot)).toEqual(['a heading at the foot: “Materials”'])
    expect(await found(heading, drawText('below it', 20, 76, 10), foot)).toEqual([])
  })

  it('finds a page that is part-empty though its part goes on', async () => {
    const page = (y: number, name: string) => {
      const foot = [drawText('left', 5, 92, 9), drawText(name, 40, 92, 9), drawText('right', 80, 92, 9)]
      return {
        label: '1',
        bookmarks: [],
        figure: { width: 100, height: 100, items: [drawText('words', 5, y, 10), ...foot] },
      }
    }
    const pages = async (...list: ReturnType<typeof page>[]) =>
      readSheets(await writePdf(list, information, { faces: readFaces() }))
    expect(emptyPages(await pages(page(20, 'Order, row 1'), page(20, 'Order, row 2')))).toEqual([
      'page 1, Order, ends at 20 mm',
    ])
    expect(emptyPages(await pages(page(70, 'Order, row 1'), page(20, 'Order, row 2')))).toEqual([])
    expect(emptyPages(await pages(page(20, 'Order, row 1'), page(20, 'Notes')))).toEqual([])
    expect(sparsePages(await pages(page(20, 'Order, row 1'), page(20, 'Notes')))).toEqual([
      'page 1, Order, holds no more than 20 mm',
    ])
    expect(sparsePages(await pages(page(50, 'Order, row 1'), page(20, 'Notes')))).toEqual([])
  })
})
