/** What a careful shopkeeper would ask about each yarn. */
import type { Finding } from '../../shared-types/finding'
import type { KitAccount, YarnNeed } from '../../shared-types/plan'
import { BAND_FIELDS } from '../../shared-types/project'
import type { BandField, Terms, UnitSystem, Yarn } from '../../shared-types/project'
import { counted, listed, numbered, plural } from '../figures/words'
import { isWithin } from '../fields/field'
import { YARN } from '../fields/yarn'
import { finding } from '../findings/finding'
import { termWord } from '../stitches/terms'
import { formatMass, formatMassRange, formatNumber, formatYarnLength } from '../units/format'
import { gramsPerMetre, positiveOrNull } from './ledger'
import type { YarnLedger } from './ledger'
import { isMissing, shortRemedy } from './no-more'
import type { Grams } from '../units/quantity'

const label = (yarn: Yarn): string => yarn.name ?? yarn.id

function unusableValues(yarn: Yarn): Finding[] {
  return (['ballGrams', 'ballMetres', 'price', 'onHandGrams', 'onHandBalls'] as const).flatMap((field) => {
    const value = yarn[field]
    if (value === undefined || isWithin(value, YARN[field])) return []
    const expected = YARN[field].least === 0 ? 'a number from 0 on' : 'a number above 0'
    return finding(
      'yarn/invalid-value',
      `yarn ${yarn.id}, ${field}`,
      { yarn: label(yarn), received: String(value), expected },
      { yarn: yarn.id },
    )
  })
}

/** What motifs take of a yarn: how many have it in them, how many whole ones these are worth, and grams at the high end. */
interface InMotifs {
  readonly motifs: number
  readonly worth: number
  readonly high: Grams
}

/**
 * How far the stash goes: "it is enough for at least 87 of the 120 motifs that use it". By the high end, as what is
 * missing and bought: those that are too many are as many as it takes to make up for that.
 */
function reach(onHand: number, { grams }: YarnNeed, { motifs, worth, high }: InMotifs): string {
  // Half motifs take of it as well: what one motif takes is told of all of them together.
  const each = motifs > 0 && worth > 0 ? high / worth : 0
  if (each <= 0) return `it covers about ${formatNumber((onHand / grams.expected) * 100)} %`
  const enough = Math.max(0, motifs - Math.ceil((grams.high - onHand) / each - 1e-9))
  return `it is enough for at least ${formatNumber(enough)} of the ${counted(motifs, 'motif')} that ${plural(motifs, 'uses', 'use')} it`
}

function stash(units: UnitSystem, yarn: Yarn, need: YarnNeed, inMotifs: InMotifs): Finding[] {
  const { onHand } = need
  if (!(onHand > 0 || isMissing(need)) || onHand >= need.grams.high) return []
  const { motifs, worth, high } = inMotifs
  const missing = need.grams.high - onHand
  const many = motifs > 0 && high > 0 ? Math.min(motifs, Math.ceil((missing * worth) / high - 1e-9)) : 0
  const ways = (otherwise: (terms: Terms) => string) =>
    shortRemedy(yarn, need, missing, { motifs: many }, otherwise)
  const values = {
    yarn: label(yarn),
    onHand: formatMass(onHand, units),
    need: formatMassRange(need.grams, units),
    missing: formatMass(need.grams.high - onHand, units),
  }
  const target = { yarn: yarn.id }
  if (onHand >= need.grams.expected) {
    const told = ways(
      (terms) => `Keep a ${termWord('ball', terms)} in reserve, or weigh more motifs for a closer estimate`,
    )
    return [finding('yarn/stash-tight', `yarn ${yarn.id}`, { ...values, ways: told }, target)]
  }
  const short = {
    ...values,
    reach: reach(onHand, need, inMotifs),
    ways: ways(() => 'Buy what is missing, or make fewer motifs in this yarn'),
  }
  return [finding('yarn/stash-short', `yarn ${yarn.id}`, short, target)]
}

type Told = (yarn: Yarn) => string

type YarnCode =
  'yarn/no-ball-band' | 'yarn/no-ball-weight' | 'yarn/no-ball-length' | 'yarn/band-assumed' | 'yarn/no-price'

/** One finding for all yarns that it is about, told by their names or, one by one, as `told` says. */
function once(code: YarnCode, yarns: readonly Yarn[], told: Told = label) {
  const [only, ...others] = yarns
  if (!only) return []
  const named = { yarns: listed(yarns.map(told)) }
  if (others.length > 0) return [finding(code, 'yarns', named)]
  return [finding(code, `yarn ${only.id}`, named, { yarn: only.id })]
}

/** What the bands of yarns do not say, each gap once for all of them. */
function bandFindings(
  yarns: readonly Yarn[],
  needs: readonly YarnNeed[],
  ledger: YarnLedger,
  units: UnitSystem,
): Finding[] {
  const needed = yarns.filter((yarn) => ledger.metresOnly(yarn) > 0)
  const weighed = yarns.filter((yarn) => !needed.includes(yarn))
  // As everywhere else, where length is all that is known.
  const lengthOf = (yarn: Yarn) => needs[yarns.indexOf(yarn)]?.metres?.expected ?? ledger.metresOnly(yarn)
  const heavy = (yarn: Yarn): boolean => positiveOrNull(yarn.ballGrams) !== null
  const assumed = yarns.filter((yarn) => (yarn.assumed?.length ?? 0) > 0)
  return [
    ...once(
      'yarn/no-ball-band',
      needed,
      (yarn) => `${formatYarnLength(lengthOf(yarn), units)} of ${label(yarn)}`,
    ),
    ...once(
      'yarn/no-ball-weight',
      weighed.filter((yarn) => !heavy(yarn)),
    ),
    ...once(
      'yarn/no-ball-length',
      weighed.filter((yarn) => heavy(yarn) && gramsPerMetre(yarn) === null),
    ),
    ...once('yarn/band-assumed', assumed, (yarn) => `${label(yarn)} (${bandWords(yarn, units)})`),
    ...once(
      'yarn/no-price',
      yarns.filter((yarn) => yarn.price === undefined),
    ),
  ]
}

/** What is assumed of a band: "50 g, 125 m". */
function bandWords({ assumed = [], ballGrams = 0, ballMetres = 0, price = 0 }: Yarn, units: UnitSystem) {
  const words: Readonly<Record<BandField, string>> = {
    ballGrams: formatMass(ballGrams, units),
    ballMetres: formatYarnLength(ballMetres, units),
    price: `price ${formatNumber(price, 2)}`,
  }
  return BAND_FIELDS.filter((field) => assumed.includes(field))
    .map((field) => words[field])
    .join(', ')
}

/**
 * Findings about the yarns in use; those of the list that nothing uses are left in peace. `inMotifs` says how much of a
 * yarn motifs take at the high end: what joins and a border take beside them makes no motif dearer.
 */
export function yarnFindings(
  units: UnitSystem,
  yarns: readonly Yarn[],
  needs: readonly YarnNeed[],
  ledger: YarnLedger,
  inMotifs: (yarn: Yarn) => Grams,
): Finding[] {
  const findings: Finding[] = []
  yarns.forEach((yarn, index) => {
    findings.push(...unusableValues(yarn))
    const need = needs[index]
    if (need) {
      const [motifs, worth] = [ledger.motifsWith(yarn.id), ledger.worthWith(yarn.id)]
      findings.push(...stash(units, yarn, need, { motifs, worth, high: inMotifs(yarn) }))
    }
  })
  findings.push(...bandFindings(yarns, needs, ledger, units))
  return [...findings, ...dyeLots(needs)]
}

/** How many balls are to be bought in one dye lot each, of yarns of which more than one is: for the whole batch where it is made as a kit. */
export function dyeLots(needs: readonly YarnNeed[], kit?: KitAccount): Finding[] {
  const lots = kit
    ? kit.run.flatMap(({ balls }) => (balls !== null && balls > 1 ? [balls] : []))
    : needs.flatMap(({ toBuy }) => ((toBuy ?? 0) > 1 ? [toBuy ?? 0] : []))
  if (lots.length === 0) return []
  const count = lots.reduce((sum, balls) => sum + balls, 0)
  const yarns = numbered(lots.length, 'yarn')
  return [finding('yarn/dye-lot', 'yarns', { count: formatNumber(count), yarns })]
}
