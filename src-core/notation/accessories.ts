/** What hangs on a motif and is no round of it: a stem, a loop to hang it by, pieces joined at the end. */
import { isSlip } from './stitch-name'
import type { Item, RoundNode } from './tree'

/** "Stem", "For a stem", "Hanging loop (optional)", "Loop for hanging". */
const HANGS =
  /^(for |to make |add |make |work )?(an? |the |your )?((short |long |little |optional )?(stem|stalk|twig|hanger|handle|strap|tie|ties)|(hanging|hanger|button|hanging-up) ?-?(loop|cord|chain|tab|string)s?|(loop|cord|chain) (for|to) hang(ing)?( (it|up)( by)?)?)( \(.*\))?$/i
/** Whether words name one of them. */
export const namesAccessory = (words: string): boolean => HANGS.test(words)
/** "Joining", "To join the pieces". */
const JOINS = /^(to join|joining|join)( (the|both|two|your))?( (pieces|sides|layers|halves|motifs))?$/i
const SEVERAL = /\b(both (thicknesses|layers|pieces|sides)|pieces|wrong sides together|ws together)\b/i

/** Whether the words of a heading without a number name something that hangs on the rounds before it. */
export function isAccessory(node: RoundNode, text: string): boolean {
  if (node.numbers !== null || node.label === null || node.label === 'foundation') return false
  const label = node.label.trim().replace(/[:.]+$/, '')
  return HANGS.test(label) || (JOINS.test(label) && SEVERAL.test(text.slice(node.start, node.end)))
}
/** What is left of the round that it hangs on says nothing. */
export const ON_ANY = new Set<string>(['rounds/stitches-left', 'rounds/spaces-left'])

/** "Last step: slip stitch into the next stitch and pull the yarn through": how the last round ends, told under a name. */
export function endsOff(items: readonly Item[]): boolean {
  const worked = items.filter(({ type }) => !['note', 'statement', 'join'].includes(type))
  const slips = (item: Item): boolean => {
    if (item.type !== 'work' || !isSlip(item.stitch)) return false
    const [part, ...others] = item.place?.parts ?? []
    const few = !part || (['next', 'same', 'first'].includes(part.which) && part.count <= MOST_SLIPS)
    return few && others.length === 0
  }
  return worked.length > 0 && worked.length <= 2 && worked.every(slips)
}
/** Slip stitches with which a spiral is let down at most (ours). */
const MOST_SLIPS = 3
