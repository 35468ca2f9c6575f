/** The pages of the order of work begin with row 1, and say at the head of a column what goes on there. */
import { beforeAll, describe, expect, it } from 'vitest'
import { renderMap } from '../../../src-main/paper/index'
import { readOrder } from './followed/read-order'
import { example, planOf } from './examples'
import { DATE, flowers, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadPage } from './read-pdf'

const PROJECTS = [
  ['dovecote-runner', example('dovecote-runner')],
  ['market-stall-throw', example('market-stall-throw')],
  ['rings', flowers({ arrangement: 'rings', rings: 5 }, { order: 'centre' })],
] as const

it.each([
  ['orangery-cloth', false],
  ['market-stall-throw', true],
])('the order of work of %s says what left and right are where it speaks of them', async (name, speaks) => {
  const { pages } = await readPdf(await renderMap(planOf(example(name)), { date: DATE, version: VERSION }))
  const words = pages.map((page) => page.words).join(' ')
  expect(/ (left|right) of [A-Z\d]/.test(words)).toBe(speaks)
  expect(words.includes('seen from its middle, looking outward')).toBe(speaks)
})

describe.each(PROJECTS)('the order of work of %s', (_, project) => {
  let pages: readonly ReadPage[] = []

  beforeAll(async () => {
    pages = (await readPdf(await renderMap(planOf(project), { date: DATE, version: VERSION }))).pages
  })

  it('tells of every row what it is made of, row 1 first', () => {
    const { kinds, boxes } = readOrder(pages)
    const rows = [...new Set(boxes.flatMap(({ row }) => row ?? []))]
    expect(kinds[0] ?? 'Row 1').toMatch(/^Rows? 1\b/)
    expect(kinds.length > 0).toBe(rows.length > 0)
    const numbers = (kind: string): number[] => {
      const every = /^Every second row from (\d+) to (\d+)/.exec(kind)
      const said = kind.split(':')[0]!
      const [from, to] = (every?.slice(1) ?? said.match(/(\d+)–(\d+)/)?.slice(1) ?? []).map(Number)
      if (from === undefined || to === undefined) return (said.match(/\d+/g) ?? []).map(Number)
      const by = every ? 2 : 1
      return Array.from({ length: (to - from) / by + 1 }, (_, i) => from + i * by)
    }
    const told = kinds.flatMap(numbers).sort((a, b) => a - b)
    expect(told).toEqual(rows)
  })

  it('begins no column in the middle of something without a word', () => {
    const own = pages.filter(({ texts, height }) =>
      texts.some(({ text, y }) => y > height - 20 && text.startsWith('Order of work')),
    )
    expect(own.length).toBeGreaterThan(0)
    // Below the introduction, which runs across both columns.
    const foot = own[0]!.texts.find(({ text }) => text.endsWith('to weave in.'))!.y
    for (const page of own) {
      const body = page.texts.filter(
        ({ text, y }) =>
          y < page.height - 20 &&
          y > (page === own[0] ? foot + 1 : 0) &&
          !/^[\d ]+$|^([A-Z])\1?$/.test(text.trim()),
      )
      for (const column of [
        body.filter(({ x }) => x < page.width / 2),
        body.filter(({ x }) => x > page.width / 2),
      ]) {
        if (column.length === 0) continue
        const first = column.reduce((a, b) =>
          b.y < a.y - 0.5 || (Math.abs(b.y - a.y) <= 0.5 && b.x < a.x) ? b : a,
        )
        expect(first.text).toMatch(/continued|^(Row|Ring|The middle|Ways to join|What the rows|Tick list)\b/)
      }
    }
  })
})

it.each(['estuary-dusk-shawl', 'market-stall-throw'])(
  'no column of %s goes on with a single kind of rows, its last',
  async (name) => {
    for (const paper of ['A4', 'Letter'] as const) {
      const map = await renderMap(planOf(example(name)), { date: DATE, version: VERSION, paper })
      const words = (await readPdf(map)).pages.map((page) => page.words).join(' ')
      const [, goneOn = null] = /What the rows are made of, continued: (.*?) Row 1 /.exec(words) ?? []
      const kinds = goneOn?.match(/(?:Rows? \d+[^:]*|Every second row[^:]*):/g)
      if (kinds) expect(kinds.length).toBeGreaterThan(1)
    }
  },
)
