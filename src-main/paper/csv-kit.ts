/** Lists of garlands and kits for a spreadsheet: what hangs where, what goes into a kit, what is bought. */
import type { KitAccount, Plan } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'
import { marked } from '../../src-core/figures/yarn-words'
import { ballsOnHand } from '../../src-core/materials/kit/on-hand'
import { decimalsOf } from '../../src-core/units/currency'
import { GRAMS_PER_OUNCE, METRES_PER_YARD } from '../../src-core/units/quantity'
import type { Cell } from './csv'
import { csvTable } from './csv'

const yarnName = (settled: Settled, id: string): string =>
  settled.yarns.find((yarn) => yarn.id === id)?.name || id

const currency = (settled: Settled): string => settled.currency

/** One line for each thing on the cord, from the first tie. */
export function cordCsv(plan: Plan): string {
  const { settled } = plan
  const motifs = new Map(settled.motifs.map((motif) => [motif.id, motif.name || motif.id]))
  const ways = new Map(settled.colourways.map((way) => [way.id, way]))
  const rows = (plan.garland?.items ?? []).map((item, i): Cell[] => {
    const way = ways.get(item.colourway)
    return [
      i + 1,
      item.bead || (motifs.get(item.motif) ?? item.motif),
      way?.code ?? '',
      way?.name ?? '',
      item.along,
      item.chains,
      item.words,
    ]
  })
  return csvTable([
    [
      'number',
      'what',
      'colourway',
      'name',
      'mm from the first tie',
      'chains before it',
      'how it is fastened',
    ],
    ...rows,
  ])
}

/** What goes into one kit, and what is wound and put aside for the run. */
export function kitCsv(settled: Settled, kit: KitAccount): string {
  const yarns = kit.perKit.map(({ yarn, grams, metres, assumed = [] }): Cell[] => [
    'yarn',
    yarnName(settled, yarn),
    1,
    grams,
    grams / GRAMS_PER_OUNCE,
    metres,
    metres === null ? null : metres / METRES_PER_YARD,
    kit.count + kit.spares,
    assumed.flatMap((number) => (number === 'grams' ? ['grams', 'ounces'] : ['metres', 'yards'])).join(', '),
  ])
  const extras = kit.extras.map(({ name, perKit, run }): Cell[] => [
    'extra',
    name,
    perKit,
    null,
    null,
    null,
    null,
    run,
    '',
  ])
  return csvTable([
    ['kind', 'what', 'in one kit', 'grams', 'ounces', 'metres', 'yards', 'for the batch', 'assumed'],
    ...yarns,
    ...extras,
  ])
}

/** What is bought for the run, marked where it is assumed: one line for each pack size, extra and packaging. */
export function purchaseCsv(settled: Settled, kit: KitAccount): string {
  const decimals = decimalsOf(currency(settled))
  // As prices are written, with all decimals of the currency.
  const money = (amount: number | null): Cell => (amount === null ? null : amount.toFixed(decimals))
  const shelf = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const yarns = kit.run.flatMap(({ yarn, packs, assumed, leftover }) => {
    const told = shelf.get(yarn)
    const perGram = told?.ballMetres && told.ballGrams ? told.ballMetres / told.ballGrams : null
    const last = packs.length - 1
    return packs.map((pack, i): Cell[] => {
      const { grams, price, count } = pack
      const there = ballsOnHand(told, pack)
      return [
        marked(yarnName(settled, yarn), assumed ?? false),
        told?.fibre ?? '',
        told?.dyeLot ?? '',
        grams,
        perGram === null ? null : perGram * grams,
        count,
        there,
        count - there,
        grams * count,
        i === last ? leftover : null,
        money(price),
        money(price === null ? null : price * count),
        currency(settled),
      ]
    })
  })
  const counted = (what: string, count: number, price: number | null, cost: number | null): Cell[] => [
    ...[what, '', '', null, null, count, null, count, null, null],
    ...[money(price), money(cost), currency(settled)],
  ]
  const extras = kit.extras.map(({ name, run, price, cost }) => counted(name, run, price, cost))
  const packaging = counted('packaging', kit.count, kit.packaging / kit.count, kit.packaging)
  return csvTable([
    [
      ...['what', 'fibre', 'dye lot', 'grams each', 'metres each', 'how many', 'on hand', 'to order'],
      ...['grams in all', 'grams left over', 'price', 'cost', 'currency'],
    ],
    ...yarns,
    ...extras,
    ...(kit.packaging > 0 ? [packaging] : []),
  ])
}
