/** A part of the map that begins below what ends the pages before it, where there is room for it. */
import type { Draft, Job } from './page'
import { newSheet } from './page'

/** mm between what ends a page and the title of what begins below it, with a rule in the middle. */
export const BETWEEN = 10

/**
 * The pages with those of one more part. `set` sets the part from a height on, on sheets of its own. It begins below
 * what stands on the last page before it where that saves a page, or costs none and, where it `fills`, one is not half
 * full; else on a new page.
 */
export function withPart(
  job: Job,
  before: readonly Draft[],
  set: (top: number) => Draft[],
  fills = true,
): Draft[] {
  const { top, bottom, width } = newSheet(job)
  const own = set(top)
  const last = before.at(-1)
  // Pages that lie on their side are a drawing's own.
  if (last?.end === undefined || last.sheet.width !== width) return [...before, ...own]
  const from = last.end + BETWEEN
  if (from >= bottom) return [...before, ...own]
  const [part, ...others] = set(from)
  const most = own.length + (fills && last.end < (top + bottom) / 2 ? 1 : 0)
  if (!part || part.sheet.items.length === 0 || 1 + others.length > most) return [...before, ...own]
  return [...before.slice(0, -1), joined(last, part, from - BETWEEN / 2), ...others]
}

function joined(page: Draft, part: Draft, rule: number): Draft {
  page.sheet.rule(rule)
  page.sheet.items.push(...part.sheet.items)
  return {
    ...page,
    name: `${page.name}, ${part.name}`,
    bookmarks: [...page.bookmarks, ...part.bookmarks],
    below: [...(page.below ?? []), { section: part.section, name: part.name }],
    end: part.end,
  }
}

/** mm between the last line of a part and where it ends, at most. */
const AIR_BELOW = 4

/** Whether a page, but the last of them, holds next to nothing: less than a third of its height. */
export const isSparse = (pages: readonly Draft[]): boolean =>
  pages.slice(0, -1).some(({ end, sheet }) => end !== undefined && end - AIR_BELOW < sheet.height / 3)
