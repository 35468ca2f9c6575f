/** How often something is worked in all, where the text says how often more. */
import type { Item } from './tree'

const isMade = ({ type }: Item): boolean => type === 'work' || type === 'group' || type === 'placed'

/** Chains at the beginning that are the first of what is repeated: "4 ch, (1 tr, 1 ch) 11 more times in ring". */
function beginsIt(before: readonly Item[], list: readonly Item[]): boolean {
  const chains = before.findLast(({ type }) => type === 'chain')
  const [stitch, gap, ...others] = list.filter(({ type }) => type !== 'note')
  if (chains?.type !== 'chain' || stitch?.type !== 'work' || gap?.type !== 'chain' || others.length > 0)
    return false
  return (stitch.count ?? 1) === 1 && chains.count - gap.count >= LOWEST
}
/** Chains that stand for a stitch of its own, at least. */
const LOWEST = 2

/** How often in all: "five more times" is once more where nothing of it was worked before. `before`: null within a place. */
export const timesOf = (
  amount: number,
  more: boolean,
  before: readonly Item[] | null,
  list: readonly Item[],
): number => (more && before && !before.some(isMade) && !beginsIt(before, list) ? amount + 1 : amount)
