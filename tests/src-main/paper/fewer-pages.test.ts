/** No page for what has room on the one before it, and no column for what nobody says. */
import { describe, expect, it } from 'vitest'
import { renderMap } from '../../../src-main/paper/index'
import { readSheets } from './checker/read-sheets'
import { troublesOf } from './checker/troubles'
import { example, planOf } from './examples'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadPage } from './read-pdf'

function rendered(name: string, paper: 'A4' | 'Letter'): Promise<Uint8Array> {
  return renderMap(planOf(example(name)), { paper, date: DATE, version: VERSION })
}

const pagesOf = async (...asked: Parameters<typeof rendered>): Promise<readonly ReadPage[]> =>
  (await readPdf(await rendered(...asked))).pages

it('the chart of a hexagon stands on the page of its motif, where all of it can be read', async () => {
  const sheets = await readSheets(await rendered('limekiln-cushion', 'A4'))
  expect(sheets.flatMap((sheet) => troublesOf(sheet, { ink: false }))).toEqual([])
  const pages = await pagesOf('limekiln-cushion', 'A4')
  const own = pages.filter(({ words }) => words.includes('Four-round hexagon'))
  expect(own).toHaveLength(1)
  expect(own[0]!.words).toContain('Key to the chart')
  expect(pages.at(-1)).toBe(own[0])
})

describe.each(['A4', 'Letter'] as const)('on %s', (paper) => {
  it('the list of a panel says what lies on what only where something does', async () => {
    const heads = async (name: string): Promise<string[]> => {
      const pages = await pagesOf(name, paper)
      const list = pages.find(({ words }) => words.startsWith('What lies where'))!
      return list.texts.map(({ text }) => text)
    }
    const wreath = await heads('quince-wreath-cushion')
    expect(wreath).toContain('Rotated')
    expect(wreath).not.toContain('Lies')
    expect(await heads('pond-edge-bag')).toContain('Lies')
  })
})
