/** Whether a save would leave nothing of the work that a file holds. */
interface Work {
  readonly motifs?: readonly unknown[]
  readonly layout?: unknown
}

const hasMotifs = ({ motifs }: Work): boolean => Array.isArray(motifs) && motifs.length > 0
const hasLayout = ({ layout }: Work): boolean => layout !== undefined && layout !== null

/** Are there no motifs, or is there no layout, in a project's text? */
export function isBare(text: string): boolean {
  const work = JSON.parse(text) as Work
  return !hasMotifs(work) || !hasLayout(work)
}

/** Would `next` in the place of `before` lose all motifs or the whole layout? */
export function losesWork(before: string, next: string): boolean {
  const [had, has] = [JSON.parse(before) as Work, JSON.parse(next) as Work]
  return (hasMotifs(had) && !hasMotifs(has)) || (hasLayout(had) && !hasLayout(has))
}
