/**
 * M52: a project as a kit, n times. Yarn is wound from the high value up to a step; the run is that n times,
 * to the gram; spares and winding loss come on top of it before whole balls are bought.
 */
import type { Finding } from '../../../shared-types/finding'
import type { KitAccount, KitYarnRun, Plan, YarnNeed } from '../../../shared-types/plan'
import type { BandField, Kit, Motif, Project, Yarn } from '../../../shared-types/project'
import { isWithin } from '../../fields/field'
import { KIT } from '../../fields/kit'
import { PACK } from '../../fields/yarn'
import { finding } from '../../findings/finding'
import { massValue } from '../../findings/quantities'
import { hasInstructions } from '../../motif/instructions'
import { withFields } from '../../telling'
import { formatMass, formatNumber } from '../../units/format'
import type { Grams } from '../../units/quantity'
import { isUsableOrZero } from '../../units/usable'
import { gramsPerMetre } from '../ledger'
import { KIT_CONSTANTS } from './constants'
import { bestWay, gramsOf, joinedWays, wholeWays } from './lengths'
import { PACK_STEP } from './packs'
import type { Pack } from './packs'
import { breakEven, feesOfPrice, priceOf, toCents } from './price'
import { readKit } from './read'
import type { Extra, KitNumbers } from './read'

/** Rounding that does not wind another step. */
const SLACK = 1e-9

/** Grams wound for a need: up to the next step, told without the dust of binary fractions. */
export function woundGrams(high: Grams, windTo: Grams): Grams {
  const steps = Math.max(0, Math.ceil(high / windTo - SLACK))
  return Number((steps * windTo).toFixed(6))
}

/** What a kit is made up of besides yarn and what the seller puts in by hand, which is given. */
export type PutIn = (extras: readonly Extra[]) => readonly Extra[]

/** The plan with the account of its kits, where its layout asks for them. */
export function withKit<Own extends Plan>(
  kit: Kit | undefined,
  { yarns, motifs, currency }: Pick<Project, 'yarns' | 'motifs' | 'currency'>,
  plan: Own,
  putIn?: PutIn,
): Own {
  if (!kit) return plan
  const told = kitAccount(kit, yarns, plan.yarns, putIn, currency)
  const findings = [...plan.findings, ...told.findings, ...untold(motifs, plan)]
  // Without anything to put in there is no kit, but the numbers are checked all the same.
  if (!told.kit || plan.motifs.length === 0) return withFields(plan, { findings })
  return withFields(plan, { kit: told.kit, findings })
}

/** Motifs of the kit that come without a word of how they are worked. */
function untold(motifs: readonly Motif[] | undefined, plan: Plan): Finding[] {
  const used = new Set([
    ...plan.motifs.flatMap(({ motif = plan.motif?.id }) => motif ?? []),
    ...plan.fillerMotifs.map(({ id }) => id),
  ])
  return (motifs ?? [])
    .filter((motif) => used.has(motif.id) && !hasInstructions(motif))
    .map(({ id, name }) =>
      finding('kit/no-instructions', `motif ${id}`, { motif: name || id }, { motif: id }),
    )
}

/** The account of a run of kits; null with findings where a number of it cannot be used. */
export function kitAccount(
  kit: Kit,
  shelf: readonly Yarn[] | undefined,
  needs: readonly YarnNeed[],
  besides: PutIn = () => [],
  currency?: string,
): { kit: KitAccount | null; findings: Finding[] } {
  const { numbers, findings } = readKit(kit)
  if (kit.pattern?.by && kit.pattern.allowed !== true)
    findings.push(finding('kit/pattern', 'layout.kit.pattern', { by: kit.pattern.by }))
  const yarns = new Map((shelf ?? []).map((yarn) => [yarn.id, yarn]))
  if (!numbers) return { kit: null, findings }
  const spares = Math.ceil((numbers.count * numbers.sparePercent) / 100 - SLACK)
  const counted = needs.filter((need) => {
    const told = need.grams.high > 0
    const values = { yarn: yarns.get(need.id)?.name || need.id }
    if (!told) findings.push(finding('kit/not-counted', `yarn ${need.id}`, values, { yarn: need.id }))
    return told
  })
  const perKit = counted.map((need): KitAccount['perKit'][number] => {
    const { id, grams } = need
    const wound = woundGrams(grams.high, numbers.windTo)
    const yarn = yarns.get(id)
    const perMetre = yarn ? gramsPerMetre(yarn) : null
    const told = { yarn: id, grams: wound, metres: perMetre === null ? null : wound / perMetre }
    const assumed = assumedOf(need, yarn, told.metres)
    return assumed.length > 0 ? { ...told, assumed } : told
  })
  const run = perKit.map(({ yarn, grams, assumed }) => {
    const bought = yarnRun(yarns.get(yarn), yarn, grams, numbers, spares, findings)
    const band = yarns.get(yarn)?.assumed ?? []
    const follows =
      assumed?.includes('grams') || (bought?.packs.length && hangsOn(band, 'ballGrams', 'price'))
    return bought && follows ? { ...bought, assumed: true as const } : bought
  })
  if (run.includes(null)) return { kit: null, findings }
  const bought = run as KitYarnRun[]
  const putIn = [...numbers.extras, ...besides(numbers.extras)]
  const extras = putIn.map(({ name, perKit: each, price }) => {
    const all = each * (numbers.count + spares)
    return { name, perKit: each, run: all, price, cost: price === null ? null : price * all }
  })
  const packaging = numbers.packaging * numbers.count
  const runCost = total([...bought.map(({ cost }) => cost), ...extras.map(({ cost }) => cost), packaging])
  if (runCost === null) {
    const names = [
      ...bought.filter(({ cost }) => cost === null).map(({ yarn }) => yarns.get(yarn)?.name || yarn),
      ...extras.filter(({ cost }) => cost === null).map(({ name }) => name),
    ]
    findings.push(finding('kit/no-price', 'layout.kit', { what: names.join(', ') }))
  }
  const { margin, feeShare } = numbers
  const fees = feesOfPrice(numbers)
  const possible =
    isWithin(margin, KIT.marginPercent) && isWithin(feeShare, KIT.feeShare) && margin + fees < 100
  if (!possible) {
    const values = { margin: formatNumber(margin, 1), fees: formatNumber(fees, 1) }
    findings.push(finding('kit/margin', 'layout.kit.marginPercent', values))
  }
  const postageGrams = postage(perKit, putIn, numbers)
  const follows = [
    ...(runCost !== null && bought.some(({ assumed }) => assumed) ? (['cost'] as const) : []),
    ...(postageGrams !== null && perKit.some(({ assumed }) => assumed?.includes('grams'))
      ? (['postageGrams'] as const)
      : []),
  ]
  const costPerKit = runCost === null ? null : runCost / numbers.count
  const price = costPerKit === null || !possible ? null : priceOf(costPerKit, numbers)
  const asked = price === null ? null : toCents(price, numbers.taxPercent, currency)
  const even = asked === null || runCost === null ? null : breakEven(runCost, asked, numbers, currency)
  return {
    kit: {
      count: numbers.count,
      spares,
      windTo: numbers.windTo,
      lengths: numbers.lengths,
      perKit,
      run: bought,
      extras,
      packaging,
      runCost,
      costPerKit,
      price,
      asked,
      breakEven: even && even.kits,
      ...(even && even.short > 0 ? { shortByRounding: even.short } : {}),
      postageGrams,
      ...(follows.length > 0 ? { assumed: follows } : {}),
    },
    findings,
  }
}

const hangsOn = (assumed: readonly BandField[], ...fields: readonly BandField[]): boolean =>
  fields.some((field) => assumed.includes(field))

/** Which numbers of a yarn in a kit follow from a band that nobody entered. */
function assumedOf(
  { assumed }: YarnNeed,
  yarn: Yarn | undefined,
  metres: number | null,
): ('grams' | 'metres')[] {
  const long = metres !== null && hangsOn(yarn?.assumed ?? [], 'ballGrams', 'ballMetres')
  return [...(assumed?.includes('grams') ? (['grams'] as const) : []), ...(long ? (['metres'] as const) : [])]
}

/** What one yarn of the run takes, and the cheapest way to buy it; null where the run is beyond reckoning. */
function yarnRun(
  yarn: Yarn | undefined,
  id: string,
  grams: Grams,
  { count, windTo, lengths }: KitNumbers,
  spareKits: number,
  findings: Finding[],
): KitYarnRun | null {
  const kits = count * grams
  const spares = spareKits * grams
  const portions = count + spareKits
  const { packs, priced } = packsOf(yarn, id, findings)
  const best = bestWay(
    lengths === 'whole' ? wholeWays(packs, grams, portions) : joinedWays(packs, grams, portions, windTo),
  )
  if (!best) {
    const loss = (kits + spares) * KIT_CONSTANTS.windingLoss
    const unbought = { yarn: id, grams: kits, spares, loss, wound: grams }
    if (packs.length === 0) return { ...unbought, balls: null, packs: [], leftover: null, cost: null }
    const values = { yarn: yarn?.name || id, grams: formatMass(kits + spares + loss, 'metric') }
    findings.push(finding('kit/run-too-large', `yarn ${id}`, values, { yarn: id }))
    return null
  }
  const { loss, mix, cost, whole, wound, pieced } = best
  return {
    ...{ yarn: id, grams: kits, spares, loss, wound },
    ...(whole ? { whole } : {}),
    ...(pieced > 0 ? { pieced } : {}),
    balls: mix.reduce((sum, pack) => sum + pack.count, 0),
    packs: priced ? mix : mix.map((pack) => ({ ...pack, price: null })),
    leftover: Math.max(0, Number((gramsOf(mix) - kits - spares - loss).toFixed(6))),
    cost: priced ? Number(cost.toFixed(6)) : null,
  }
}

/** The sizes that a yarn is sold in: its ball and its other packs. Without prices the ball alone, to be counted. */
function packsOf(
  yarn: Yarn | undefined,
  id: string,
  findings: Finding[],
): { packs: Pack[]; priced: boolean } {
  const sold = (grams: number | undefined): grams is number =>
    grams !== undefined &&
    isWithin(grams, PACK.grams) &&
    Math.abs(grams / PACK_STEP - Math.round(grams / PACK_STEP)) < 1e-6
  const packs: Pack[] = []
  if (sold(yarn?.ballGrams) && isUsableOrZero(yarn.price))
    packs.push({ grams: yarn.ballGrams, price: yarn.price })
  for (const { grams, price } of yarn?.packs ?? []) {
    if (sold(grams) && isUsableOrZero(price)) packs.push({ grams, price })
    else {
      const values = { yarn: yarn?.name || id, grams: massValue(grams) }
      findings.push(finding('kit/pack', `yarn ${id}, packs`, values, { yarn: id }))
    }
  }
  if (packs.length > 0) return { packs, priced: true }
  return { packs: sold(yarn?.ballGrams) ? [{ grams: yarn.ballGrams, price: 1 }] : [], priced: false }
}

/** A sum, or null where a part is not known. */
function total(amounts: readonly (number | null)[]): number | null {
  let sum = 0
  for (const amount of amounts) {
    if (amount === null) return null
    sum += amount
  }
  return Number(sum.toFixed(6))
}

/** Weight of one kit: yarn, extras and packaging, as far as all of them are known. */
function postage(
  perKit: KitAccount['perKit'],
  extras: readonly Extra[],
  { packagingGrams }: KitNumbers,
): number | null {
  if (packagingGrams === null) return null
  const weights = extras.map(({ grams, perKit: each }) => (grams === null ? null : grams * each))
  return total([...perKit.map(({ grams }) => grams), ...weights, packagingGrams])
}
