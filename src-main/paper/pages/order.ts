/** The pages of the order of work: its list in two columns, in the type and the words that take the fewest pages. */
import { orderList } from '../../../src-core/figures/order-list'
import { HEADER_FURNITURE } from '../../../src-core/figures/part'
import { intoPages } from '../columns'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { isTold, orderIntroduction, orderName } from '../words-order'
import type { OrderBlock } from './order-blocks'
import { LEADING, OrderSetter } from './order-blocks'

/** Type sizes, largest first: a smaller one is taken where it saves a page. Lists stay at 8 pt or more. */
const SIZES = [TYPE.list, 8.25, 8] as const
const COLUMN_GAP = 9

/** The pages of the order list, in the largest type that takes no more pages than the smallest would. */
export function orderPages(job: Job): Draft[] {
  if (job.plan.order.length === 0 || job.leftOut.has('order')) return []
  const told = fewestPages(job, false)
  if (!isTold(job) || told.pages.length <= MANY_PAGES) return told.draw()
  const byDots = fewestPages(job, true)
  return (SHORTER * byDots.pages.length <= told.pages.length ? byDots : told).draw()
}

/** A list that is longer is told by the dots of the map, where that makes it so many times shorter (ours). */
const MANY_PAGES = 8
const SHORTER = 1.8

function fewestPages(job: Job, byDots: boolean): OrderAttempt {
  const attempts = SIZES.map((size) => setOrder(job, size, byDots))
  const fewest = Math.min(...attempts.map(({ pages }) => pages.length))
  return attempts.find(({ pages }) => pages.length === fewest)!
}

interface OrderAttempt {
  readonly pages: readonly OrderBlock[][][]
  readonly draw: () => Draft[]
}

/** The list in a size of type: what is on which page, to be drawn when it is chosen. */
function setOrder(job: Job, size: number, byDots: boolean): OrderAttempt {
  const width = (newSheet(job).inner - COLUMN_GAP) / 2
  const lead = Sheet.line(size, LEADING)
  const blocks = new OrderSetter(job, width, size, byDots).build()
  const introduced = newSheet(job)
  const told = isTold(job) && !byDots
  const introduction = orderIntroduction(job, told, told ? orderList(job.plan).ways : [], byDots)
  const title = introduced.title(HEADINGS.order)
  const top =
    introduced.paragraph(introduction, introduced.left, title, introduced.inner, { size: TYPE.table }) + 3
  const room = (page: number): number => introduced.bottom - (page === 0 ? top : introduced.top)
  const pages = intoPages(blocks, room, lead)
  const draw = (): Draft[] =>
    pages.map((columns, page) => {
      const sheet = page === 0 ? introduced : newSheet(job)
      const begins = sheet.bottom - room(page)
      const ends = columns.map((column, i) => {
        const x = sheet.left + i * (width + COLUMN_GAP)
        let y = begins
        const again = column[0]?.again
        if (again) y = sheet.text(again, x, y, { size, leading: LEADING, as: HEADER_FURNITURE })
        for (const block of column) {
          block.draw(sheet, x, y)
          y += block.height
        }
        return y
      })
      const rows = columns.flat().flatMap(({ row }) => row ?? [])
      const name = rows.length > 0 ? orderName(rows) : PAGE_NAMES.order
      const bookmarks = page === 0 ? [HEADINGS.order] : []
      const end = page === pages.length - 1 ? { end: Math.max(...ends) } : {}
      return { section: 'order', name, bookmarks, sheet, ...end } satisfies Draft
    })
  return { pages, draw }
}
