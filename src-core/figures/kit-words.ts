/** Words of a kit that the window and the printed sheets share: cautions, credit, fibres, what a seller checks. */
import type { KitAccount } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { saying } from '../stitches/spelling'
import { formatNumber } from '../units/format'
import { layoutKindOf } from '../plans/layouts'
import { cribWord, KIND_WORDS } from './kind-words'

/** What stands where the ball band has to be copied from. */
export const FILL_IN = '______________________________ (copy it from the ball band)'

/** What a seller checks before selling: never advice, always "check". */
export const sellerCheck = (terms: Terms): string =>
  saying(
    terms,
  )`Check what applies where you sell: toy safety if a child will play with it, product safety, fibre labelling and care labelling. One dye lot for the whole batch of a yarn.`

export const SMALL_PARTS = 'Hooks, needles and beads are small or sharp parts: not for children under three.'

/** Cautions of the card and the label, short: they defer to local rules. */
export function kitCautions(settled: Settled, terms: Terms): string {
  return [
    KIND_WORDS[layoutKindOf(settled)].caution(cribWord(terms), settled.forChild),
    settled.layout?.kit ? SMALL_PARTS : '',
    'Follow the rules that apply where you live.',
  ]
    .filter(Boolean)
    .join(' ')
}

/** Whose pattern it is. That the permission is still missing is the seller's business: nothing of it reaches a buyer. */
export function creditLine(settled: Settled, forSeller = false): string {
  const pattern = settled.layout?.kit?.pattern
  const owner = pattern?.by?.trim()
  const designer = settled.designer
  if (owner) {
    if (pattern?.allowed) return `Pattern by ${owner}, included with permission.`
    return `Pattern by ${owner}${forSeller ? ', permission still to be asked for' : ''}.`
  }
  return designer ? `Design: ${designer}.` : 'Design: ______________________________'
}

/** Fibres of the yarns in a kit, each once. */
export function fibreWords(settled: Settled, yarnIds: readonly string[]): string {
  const fibres = settled.yarns
    .filter((yarn) => yarnIds.includes(yarn.id))
    .map((yarn) => yarn.fibre?.trim() ?? '')
  const known = [...new Set(fibres.filter(Boolean))]
  if (known.length === 0) return FILL_IN
  return fibres.includes('') ? `${known.join(', ')}; ${FILL_IN}` : known.join(', ')
}

/** When a run of kits has paid for itself: "at 25 of 40", and what a price that was rounded down leaves open. */
export function breakEvenWords(
  { breakEven, count, shortByRounding = 0 }: KitAccount,
  money: (amount: number) => string,
): string {
  if (breakEven === null) return ''
  const at = `at ${formatNumber(breakEven)} of ${formatNumber(count)}`
  return shortByRounding > 0 ? `${at}, less ${money(shortByRounding)} lost in rounding the price` : at
}
