import { describe, expect, it } from 'vitest'
import { chooseJoinDetail } from '../../../src-core/figures/join-detail'
import { mapPages, renderMap } from '../../../src-main/paper'
import {
  BLANKETS,
  HANDS,
  inEveryOrder,
  numberDrawn,
  numberIn,
  petalDirection,
} from '../../src-core/joins/petal-numbers'
import type { Planned } from '../../src-core/joins/petal-numbers'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadText } from './read-pdf'

const PETAL_TYPE = 8.5
/** Capitals reach so far above their baseline, in mm for a point of type size. */
const CAPITAL = 0.66 * 0.3528

const middleOf = ({ text, x, y, width, size }: ReadText) => ({
  text,
  x: x + width / 2,
  y: y - (size * CAPITAL) / 2,
  size,
})

/** Joins of the motifs on the printed page that its drawing numbers otherwise than the words, and how many there are. */
async function onPaper({ plan, title }: Planned, page: number) {
  const bytes = await renderMap(plan, { date: DATE, version: VERSION, pages: [page] })
  const [sheet] = (await readPdf(bytes)).pages
  expect(sheet!.words, title).toContain('How the motifs meet')
  const texts = sheet!.texts.map(middleOf)
  const { shown } = chooseJoinDetail(plan)!
  const account = plan.motif!
  const wrong: string[] = []
  let count = 0
  const numbers = texts.filter(({ size, text }) => Math.abs(size - PETAL_TYPE) < 0.01 && /^\d+$/.test(text))
  for (const motif of shown) {
    const labels = texts.filter(({ size, text }) => size > PETAL_TYPE + 0.2 && text === motif.label)
    expect(labels, `${title}: ${motif.label}`).toHaveLength(1)
    const away = ({ x, y }: { x: number; y: number }) => Math.hypot(x - labels[0]!.x, y - labels[0]!.y)
    const own = [...numbers].sort((a, b) => away(a) - away(b)).slice(0, account.petals)
    const middle = {
      x: own.reduce((sum, { x }) => sum + x, 0) / own.length,
      y: own.reduce((sum, { y }) => sum + y, 0) / own.length,
    }
    for (const join of plan.order.find((step) => step.motif === motif.id)!.joins) {
      count++
      const drawn = numberDrawn(own, middle, petalDirection(account, motif, join.anchor))
      if (drawn === null || drawn !== numberIn(join.words)) wrong.push(`${join.words}, printed ${drawn}`)
    }
  }
  return { wrong, count }
}

/** Round motifs have no numbers: their words and the clock are compared where the words are made. */
const ROUND: readonly string[] = ['ferry-rope-wrap', 'orangery-cloth']
const numbered = BLANKETS.filter((name) => !ROUND.includes(name))

describe.each(numbered)('M33 one numbering on paper: %s', (name) => {
  it.each(HANDS)(
    'the printed detail numbers the petals as the words do, in every order, %s-handed',
    async (hand) => {
      let page = 0
      for (const planned of inEveryOrder(name, hand)) {
        const { plan, title } = planned
        page ||= mapPages(plan, { date: DATE }).find(({ section }) => section === 'joins')!.number
        const { wrong, count } = await onPaper(planned, page)
        expect(wrong, title).toEqual([])
        expect(count, title).toBeGreaterThan(0)
      }
    },
  )
})
