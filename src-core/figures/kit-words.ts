/** Words of a kit that the window and the printed sheets share: cautions, credit, fibres, what a seller checks. */
import type { KitAccount } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { saying } from '../stitches/spelling'
import { lengthsIn, lossOfLength } from '../materials/kit/lengths'
import { termWord } from '../stitches/terms'
import { formatMass, formatNumber } from '../units/format'
import { layoutKindOf } from '../plans/layouts'
import { cribWord, KIND_WORDS } from './kind-words'
import { counted, oneOf, plural } from './words'

/** What stands where the ball band has to be copied from. */
export const fillIn = (terms: Terms, line = '______________________________'): string =>
  `${line} (copy it from the ${termWord('ball', terms)} band)`

/** What a seller checks before selling: never advice, always "check". */
export const sellerCheck = (terms: Terms): string =>
  saying(
    terms,
  )`Check what applies where you sell: toy safety if a child will play with it, product safety, fibre labelling and care labelling. Buy all of a yarn in one dye lot.`

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

/**
 * "yarn and extras for 2 more to spare (5 % of 25, rounded up)": packaging and labels are for the kits alone. Empty
 * where nothing is to spare.
 */
export function sparesWords({ count, spares, extras }: KitAccount, settled: Settled): string {
  if (spares <= 0) return ''
  const percent = settled.layout?.kit?.sparePercent ?? 0
  const up = (count * percent) / 100 < spares - 1e-6 ? ', rounded up' : ''
  const of = `${formatNumber(percent, 1)}\u00a0% of ${formatNumber(count)}${up}`
  return `yarn${extras.length > 0 ? ' and extras' : ''} for ${formatNumber(spares)} more to spare (${of})`
}

/** Fibres of the yarns in a kit, each once. */
export function fibreWords(settled: Settled, yarnIds: readonly string[], terms: Terms): string {
  const fibres = settled.yarns
    .filter((yarn) => yarnIds.includes(yarn.id))
    .map((yarn) => yarn.fibre?.trim() ?? '')
  const known = [...new Set(fibres.filter(Boolean))]
  if (known.length === 0) return fillIn(terms)
  return fibres.includes('') ? `${known.join(', ')}; ${fillIn(terms)}` : known.join(', ')
}

/**
 * What the balls of a batch give, yarn by yarn, where that is more than a sum of grams: what goes in as it is, how many
 * whole lengths a ball gives and what is left of it, or how many are joined from pieces. Where a table says what goes in
 * as it is, it is not said again.
 */
export function lengthsWords(settled: Settled, kit: KitAccount, terms: Terms, isInTable = false): string[] {
  const mass = (grams: number): string => formatMass(grams, settled.units)
  const all = kit.count + kit.spares
  return kit.run.flatMap(({ yarn, packs, whole, wound, pieced = 0 }) => {
    const name = settled.yarns.find(({ id }) => id === yarn)?.name || yarn
    const part =
      whole && wound > 0 && !isInTable
        ? [`in each kit ${wholeWords(whole, mass, terms)} and a length of ${mass(wound)}`]
        : []
    const pieces =
      pieced > 0
        ? [
            `${formatNumber(pieced)} of ${counted(all, whole ? 'length' : 'bundle')} of ${mass(wound)} ${are(pieced)} joined from two pieces or more`,
          ]
        : []
    const given =
      kit.lengths === 'whole' && !whole
        ? packs.flatMap(({ grams }) => packWords(grams, wound, mass, terms))
        : []
    const told = [...part, ...pieces, ...given]
    return told.length > 0 ? [`${name}: ${told.join('; ')}.`] : []
  })
}

const are = (count: number): string => plural(count, 'is', 'are')

/** "2 balls of 50 g as they are". */
export const wholeWords = (
  { count, grams }: { readonly count: number; readonly grams: number },
  mass: (grams: number) => string,
  terms: Terms,
): string =>
  `${counted(count, termWord('ball', terms))} of ${mass(grams)} as ${count === 1 ? 'it is' : 'they are'}`

/** "a ball of 50 g gives 1 length of 35 g with 14 g left over"; nothing where nothing is left of it. */
function packWords(pack: number, each: number, mass: (grams: number) => string, terms: Terms): string[] {
  if (each <= 0) return []
  const lengths = lengthsIn(pack, each)
  const left = pack - lengths * (each + lossOfLength(pack, each))
  if (lengths === 0 || left < 0.05) return []
  const gives = `${counted(lengths, 'length')} of ${mass(each)}`
  return [`${oneOf(termWord('ball', terms))} of ${mass(pack)} gives ${gives} with ${mass(left)} left over`]
}

/** What is lost in winding: nothing of what goes in as it is. */
export function lossWords({ run }: KitAccount): string {
  if (run.every(({ loss }) => loss === 0))
    return 'whole packs go in as they are, so that nothing is lost in winding'
  const allowed = '2 % is allowed for loss in winding'
  return run.some(({ loss, whole }) => loss === 0 || whole)
    ? `${allowed}, but none where whole packs go in`
    : allowed
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
