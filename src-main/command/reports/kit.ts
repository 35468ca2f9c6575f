/** `petalyard plan` of a kit: what goes in, what is bought for the run, cost and price. */
import { breakEvenWords, lengthsWords, lossWords, sparesWords } from '../../../src-core/figures/kit-words'
import { capital, counted } from '../../../src-core/figures/words'
import { termWord } from '../../../src-core/stitches/terms'
import type { KitAccount, KitYarnRun } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { marked, starred } from '../../../src-core/figures/yarn-words'
import { formatMass, formatMoney, formatNumber, formatYarnLength } from '../../../src-core/units/format'
import { listing, table, wrap } from '../text'
import { currencyOf, termsOf, unitsOf } from './words'

export function kitSection(project: Project, settled: Settled, kit: KitAccount, width: number): string[] {
  const units = unitsOf(project)
  const money = (amount: number | null) => (amount === null ? '–' : formatMoney(amount, currencyOf(project)))
  const told = (amount: number | null) => marked(money(amount), kit.assumed?.includes('cost') ?? false)
  const name = (id: string) => project.yarns?.find((yarn) => yarn.id === id)?.name || id
  const run = new Map(kit.run.map((each) => [each.yarn, each]))
  const yarns = kit.perKit.map(({ yarn, grams, metres, assumed = [] }) => {
    const bought = run.get(yarn)
    const isGuessed = bought?.assumed ?? false
    return [
      name(yarn),
      starred(formatMass(grams, units), assumed.includes('grams')),
      metres === null ? '–' : starred(formatYarnLength(metres, units), assumed.includes('metres')),
      starred(formatMass((bought?.grams ?? 0) + (bought?.spares ?? 0), units), assumed.includes('grams')),
      starred(
        packWords(bought, (grams) => formatMass(grams, units)),
        isGuessed,
      ),
      starred(money(bought?.cost ?? null), isGuessed),
    ]
  })
  const extras = kit.extras.map((extra) => [
    extra.name,
    `× ${formatNumber(extra.perKit)}`,
    '',
    `× ${formatNumber(extra.run)}`,
    '',
    money(extra.cost),
  ])
  const heads = ['Kit', 'in one', '', 'in the batch', 'to buy', 'cost']
  const rows = [...yarns, ...extras]
  if (kit.packaging > 0)
    rows.push(['packaging', '× 1', '', `× ${formatNumber(kit.count)}`, '', money(kit.packaging)])
  return [
    '',
    ...table(
      heads.map((head, i) => ({ head, align: i === 0 ? 'left' : 'right' })),
      rows,
      width,
    ),
    ...lengthsWords(settled, kit, termsOf(project)).flatMap((line) => wrap(line, width)),
    '',
    ...listing(priceFacts(kit, told, project, settled), width),
  ]
}

/** "4 × 200 g, 1 × 50 g". */
function packWords(run: KitYarnRun | undefined, mass: (grams: number) => string): string {
  if (!run || run.packs.length === 0) return '–'
  return run.packs.map(({ count, grams }) => `${formatNumber(count)} × ${mass(grams)}`).join(', ')
}

function priceFacts(
  kit: KitAccount,
  money: (amount: number | null) => string,
  project: Project,
  settled: Settled,
): [string, string][] {
  const spares = sparesWords(kit, settled)
  const pairs: [string, string][] = [
    ['Batch', `${counted(kit.count, 'kit')}${spares && `, with ${spares}`}; ${lossWords(kit)}`],
    ['Cost', `${money(kit.runCost)} for the batch, ${money(kit.costPerKit)} for one kit`],
  ]
  if (kit.asked) {
    const { beforeTax, tax, withTax } = kit.asked
    const told = project.layout?.kit?.taxPercent
      ? `${money(beforeTax)} before tax, ${money(withTax)} with ${money(tax)} of tax in it`
      : `${money(beforeTax)}, tax not included`
    pairs.push(['Price', told])
  }
  if (kit.breakEven !== null) pairs.push(['Breaks even', breakEvenWords(kit, money)])
  if (kit.postageGrams !== null)
    pairs.push([
      capital(termWord('shippingWeight', termsOf(project))),
      marked(formatMass(kit.postageGrams, unitsOf(project)), kit.assumed?.includes('postageGrams') ?? false),
    ])
  return pairs
}
