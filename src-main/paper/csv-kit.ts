/** Lists of garlands and kits for a spreadsheet: what hangs where, what goes into a kit, what is bought. */
import type { KitAccount, Plan } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'
import { marked } from '../../src-core/figures/yarn-words'
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
  const yarns = kit.run.flatMap(({ yarn, packs, assumed }) =>
    packs.map(({ grams, price, count }): Cell[] => [
      marked(yarnName(settled, yarn), assumed ?? false),
      grams,
      count,
      price,
      price === null ? null : Number((price * count).toFixed(6)),
      currency(settled),
    ]),
  )
  const extras = kit.extras.map(({ name, run, price, cost }): Cell[] => [
    name,
    null,
    run,
    price,
    cost,
    currency(settled),
  ])
  const packaging: Cell[] = [
    'packaging',
    null,
    kit.count,
    kit.packaging / kit.count,
    kit.packaging,
    currency(settled),
  ]
  return csvTable([
    ['what', 'grams each', 'how many', 'price', 'cost', 'currency'],
    ...yarns,
    ...extras,
    ...(kit.packaging > 0 ? [packaging] : []),
  ])
}
