/** The words of the kit card, the list along the cord, and the packing list. */
import { marked } from '../../src-core/figures/yarn-words'
import type { GarlandAccount, KitAccount, Plan } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { garlandOf } from '../../src-core/plans/layouts'
import { formatLength, formatMass, formatNumber, formatYarnLength } from '../../src-core/units/format'
import { breakEvenWords, fillIn, lossWords, sellerCheck, sparesWords } from '../../src-core/figures/kit-words'
import { joiningWords } from '../../src-core/figures/sentence'
import { saying } from '../../src-core/stitches/spelling'
import { termWord, chainsMade } from '../../src-core/stitches/terms'
import { capital, counted, listed, numbered } from '../../src-core/figures/words'
import type { Job } from './page'
import { piecesWords } from './words-order'

export const CARD_WORDS = {
  contents: 'In this kit',
  yarn: 'Yarn for it',
  weight: 'weight',
  length: 'length',
  make: 'What you make',
  hangs: 'How it hangs',
  together: 'How it goes together',
  laid: 'How it is sewn down',
  gauge: 'Hook and yarn',
  cord: 'The cord',
  part: (swag: boolean): string => (swag ? 'The first swag, larger' : 'The first part, larger'),
  care: 'Care',
  fibre: (terms: Terms): string => saying(terms)`Fibre`,
  fill: fillIn,
  maker: 'Sold by',
} as const

export const CORD_WORDS = {
  title: 'Along the cord',
  number: 'No.',
  what: 'What',
  colourway: (terms: Terms): string => saying(terms)`Colourway`,
  along: 'from the tie',
  chains: 'chains before it',
  how: 'how it is fastened',
  end: 'end of the cord',
  tie: (chains: number): string => (chains > 0 ? `then ${counted(chains, 'chain')} to tie` : 'fasten off'),
} as const

export const LABEL_WORDS = {
  kind: 'Crochet kit',
  contents: 'Contents',
  fibre: (terms: Terms): string => saying(terms)`Fibre`,
  care: 'Care',
  cautions: 'Take care',
  maker: 'Sold by',
  makerBlank: 'Sold by, with address',
  fill: (terms: Terms): string => fillIn(terms, '__________________'),
  blank: '______________________________',
} as const

export const PACKING_WORDS = {
  title: 'Packing list',
  forSeller: 'For the seller; it does not go into the kit.',
  winding: 'Winding and cutting',
  asTheyAre: (name: string, balls: string): string => `${name}, ${balls} as they are`,
  wound: (name: string): string => `${name}, wound`,
  cut: (each: string, all: string): string => `cord, cut to ${each}, ${all} in all`,
  buying: 'To buy for the batch',
  account: 'Cost and price',
  label: 'For the label',
  check: sellerCheck,
} as const

/** A length in the project's units, the other ones behind it. */
const bothLengths = (mm: number, units: UnitSystem): string =>
  `${formatLength(mm, units)} (${formatLength(mm, units === 'metric' ? 'imperial' : 'metric')})`

/** "31 g (1.1 oz)". */
export const bothMasses = (grams: number, units: UnitSystem): string =>
  `${formatMass(grams, units)} (${formatMass(grams, units === 'metric' ? 'imperial' : 'metric')})`

/** "78 m (85 yd)", or a dash. */
export const bothYarnLengths = (metres: number | null, units: UnitSystem): string =>
  metres === null
    ? '–'
    : `${formatYarnLength(metres, units)} (${formatYarnLength(metres, units === 'metric' ? 'imperial' : 'metric')})`

/** How the garland hangs, in a sentence or two. */
export function hangWords({ swags, cord }: GarlandAccount, units: UnitSystem): string {
  const ties =
    cord.ties.length > 0 ? ` ${bothLengths(cord.ties.length, units)} are left at each end to tie.` : ''
  if (!swags) return `Hung straight it is ${bothLengths(cord.length, units)} long.${ties}`
  const hooks = `${numbered(swags.count + 1, 'point')} at one height, ${bothLengths(swags.span, units)} apart`
  return `Hang it from ${hooks}; it comes down ${bothLengths(swags.drop, units)} between them.${ties}`
}

/** "Thread 12 wood beads before you begin the cord: …" Beads slide along yarn, not over a finished chain. */
function beadsFirst({ cord, items }: GarlandAccount): string {
  const beads = new Map<string, number>()
  for (const { bead } of items) if (bead !== '') beads.set(bead, (beads.get(bead) ?? 0) + 1)
  if (beads.size === 0) return ''
  const told = listed([...beads].map(([bead, count]) => `${formatNumber(count)} × ${bead}`))
  return cord.chains === null
    ? ` Thread the beads (${told}) in the order of the list before you tie the cord.`
    : ` Before you begin the cord, thread all the beads (${told}) on its yarn.`
}

/** The yarn that the cord is worked in, where one is chosen. */
function cordYarn(settled: Settled): string {
  const id = garlandOf(settled)?.cord.yarn
  return id === undefined ? '' : settled.yarns.find((yarn) => yarn.id === id)?.name || id
}

/** A chain grows away from the hook, with its front facing: from left to right in right hands alone. */
const MIRRORED =
  ' Your cord grows from right to left: the first thing of the list comes to hang on the right, as in a mirror of the drawing.'

/** How the cord is begun: its beads, its yarn, its chains. */
export function cordWords(
  { settled, units, terms }: Pick<Job, 'settled' | 'units' | 'terms'>,
  garland: GarlandAccount,
): string {
  const say = saying(terms)
  const { cord, items } = garland
  if (cord.chains === null)
    return `A bought cord of ${bothLengths(cord.whole.length, units)}. Measure from the first tie.${beadsFirst(garland)}`
  const tie = cord.ties.chains ? formatNumber(cord.ties.chains) : null
  const gives = cord.stretched
    ? ` It stretches to between ${formatLength(cord.stretched.low, units)} and ${formatLength(cord.stretched.high, units)}.`
    : ''
  const fastened =
    items.length > 0
      ? say` Do not chain them all beforehand: the list says after how many chains you fasten each thing, its right side towards you, before you chain on.${settled.hand === 'left' ? MIRRORED : ''}`
      : ''
  const yarn = cordYarn(settled)
  const body = `${formatNumber(cord.chains)} for the cord (${bothLengths(cord.length, units)})`
  const parts = tie === null ? body : `${tie} for a tie, ${body}, ${tie} for the other tie`
  return `${yarn ? `In ${yarn}: ` : ''}${chainsMade(formatNumber(cord.whole.chains ?? 0), terms)}: ${parts}.${beadsFirst(garland)}${fastened}${gives}`
}

/** Facts under the account of a run, label and value. */
export function accountFacts(
  kit: KitAccount,
  money: (amount: number) => string,
  units: UnitSystem,
  taxed: boolean,
  terms: Terms,
): [string, string][] {
  const facts: [string, string][] = []
  const [cost, post] = (['cost', 'postageGrams'] as const).map((number) => kit.assumed?.includes(number))
  const told = (words: string): string => marked(words, cost ?? false)
  if (kit.runCost !== null) facts.push(['The batch costs', told(money(kit.runCost))])
  if (kit.costPerKit !== null) facts.push(['One kit costs', told(money(kit.costPerKit))])
  if (kit.asked) {
    const { beforeTax, tax, withTax } = kit.asked
    facts.push([
      'Price',
      told(taxed ? `${money(beforeTax)} before tax` : `${money(beforeTax)}, tax not included`),
    ])
    if (taxed) facts.push(['', told(`${money(withTax)} with ${money(tax)} of tax in it`)])
  }
  if (kit.breakEven !== null) facts.push(['Breaks even', told(breakEvenWords(kit, money))])
  if (kit.postageGrams !== null)
    facts.push([
      capital(termWord('shippingWeight', terms)),
      marked(bothMasses(kit.postageGrams, units), post ?? false),
    ])
  return facts
}

/** What the run is, under the title of the packing list. */
export function runWords(kit: KitAccount, settled: Settled): string {
  const kits = kit.count === 1 ? 'One kit' : counted(kit.count, 'kit')
  const spares = sparesWords(kit, settled)
  return `${kits}${spares && `, with ${spares}`}. Yarn is counted from the high end of its range, up to whole steps of ${formatNumber(kit.windTo, 1)} g; ${lossWords(kit)}. ${PACKING_WORDS.forSeller}`
}

/** "Oatmeal yarn": names of colours alone may be those of anything. */
export const yarnCalled = (name: string): string =>
  /\b(yarn|wool|cotton)s?\b/i.test(name) ? name : `${name} yarn`

/** What is in one kit, thing by thing: "Moss yarn 31 g", "2 × blunt needle". Yarn is told in grams, as labels ask. */
export function contentsWords(settled: Settled, kit: KitAccount): string[] {
  const names = new Map(settled.yarns.map((yarn) => [yarn.id, yarn.name || yarn.id]))
  const yarns = kit.perKit.map(
    ({ yarn, grams, assumed = [] }) =>
      `${yarnCalled(names.get(yarn) ?? yarn)} ${marked(formatMass(grams, 'metric'), assumed.includes('grams'))}`,
  )
  const extras = kit.extras.map(({ name, perKit }) =>
    perKit === 1 ? name : `${formatNumber(perKit)} × ${name}`,
  )
  return [...yarns, ...extras]
}

/** How a blanket goes together, for the card of its kit. */
export function togetherWords(plan: Plan): string {
  return `Work ${piecesWords(plan)}, ${joiningWords(plan.settled, plan.motif, plan.joins)}, in the order shown on the map. Weave in ${counted(plan.ends, 'end')}.`
}

/** How an appliqué is sewn down, for the card of its kit. */
export function laidWords(plan: Plan, units: UnitSystem): string {
  const thread = bothYarnLengths(plan.stitching?.thread ?? null, units)
  return `Mark every place through the template, which is printed at full size, and sew down ${counted(plan.motifs.length, 'item')} with about ${thread} of sewing thread, the lowest first.`
}
