/** Lists of garlands and kits for a spreadsheet: what hangs where, what goes into a kit, what is bought. */
import type { KitAccount, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { marked } from '../../src-core/figures/yarn-words'
import { GRAMS_PER_OUNCE, METRES_PER_YARD } from '../../src-core/units/quantity'
import type { Cell } from './csv'
import { csvTable } from './csv'

const yarnName = (project: Project, id: string): string =>
  project.yarns?.find((yarn) => yarn.id === id)?.name || id

const currency = (project: Project): string => project.currency ?? 'EUR'

/** One line for each thing on the cord, from the first tie. */
export function cordCsv(project: Project, plan: Plan): string {
  const motifs = new Map((project.motifs ?? []).map((motif) => [motif.id, motif.name || motif.id]))
  const ways = new Map((project.colourways ?? []).map((way) => [way.id, way]))
  const rows = (plan.items ?? []).map((item, i): Cell[] => {
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
export function kitCsv(project: Project, kit: KitAccount): string {
  const yarns = kit.perKit.map(({ yarn, grams, metres, assumed = [] }): Cell[] => [
    'yarn',
    yarnName(project, yarn),
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
    ['kind', 'what', 'in one kit', 'grams', 'ounces', 'metres', 'yards', 'for the run', 'assumed'],
    ...yarns,
    ...extras,
  ])
}

/** What is bought for the run, marked where it is assumed: one line for each pack size, extra and packaging. */
export function purchaseCsv(project: Project, kit: KitAccount): string {
  const yarns = kit.run.flatMap(({ yarn, packs, assumed }) =>
    packs.map(({ grams, price, count }): Cell[] => [
      marked(yarnName(project, yarn), assumed ?? false),
      grams,
      count,
      price,
      price === null ? null : Number((price * count).toFixed(6)),
      currency(project),
    ]),
  )
  const extras = kit.extras.map(({ name, run, price, cost }): Cell[] => [
    name,
    null,
    run,
    price,
    cost,
    currency(project),
  ])
  const packaging: Cell[] = [
    'packaging',
    null,
    kit.count,
    kit.packaging / kit.count,
    kit.packaging,
    currency(project),
  ]
  return csvTable([
    ['what', 'grams each', 'how many', 'price', 'cost', 'currency'],
    ...yarns,
    ...extras,
    ...(kit.packaging > 0 ? [packaging] : []),
  ])
}
