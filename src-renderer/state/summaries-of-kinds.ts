/** What the places say of a garland and of an appliqué, in one or two lines each. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { counted } from '../../src-core/figures/words'
import { marked } from '../../src-core/figures/yarn-words'
import { CHAINS_BETWEEN } from '../../src-core/layout/garland/constants'
import { formatLength, formatMoney, formatYarnLength } from '../../src-core/units/format'
import { garlandOf } from './edits/garland'
import { kitOf } from './edits/kit'

export function garlandLines(project: Project, plan: Plan): string[] {
  const units = project.units ?? 'metric'
  const { garland, swags, cord } = plan
  if (!garland || !cord) return ['a garland']
  const things = counted(garland.items.length, 'thing')
  const apart = `${formatLength(garland.spacing, units)} apart`
  const hung = swags
    ? `${counted(swags.count, 'swag')} of ${formatLength(swags.span, units)}`
    : `straight, ${formatLength(cord.length, units)}`
  return [`${things}, ${apart}`, hung]
}

/** How everything is fastened to the cord. */
export function fasteningLines(project: Project, plan: Plan): string[] {
  const hang = garlandOf(project)?.hang
  const worked = plan.cord?.chains !== null
  const by = hang?.by === 1 ? 'one petal' : 'two petals'
  const chains =
    hang?.by === 1 || !worked ? '' : `, ${counted(hang?.chains ?? CHAINS_BETWEEN, 'chain')} between`
  return [
    worked ? `${by}${chains}` : `sewn on by ${by}`,
    hang?.way === 'along' ? 'turned with the cord' : 'hanging straight down',
  ]
}

export function appliqueLines(project: Project, plan: Plan): string[] {
  const units = project.units ?? 'metric'
  const items = plan.motifs.length > 0 ? counted(plan.motifs.length, 'item') : 'nothing laid yet'
  const closest = plan.clearances?.items
  if (closest === null || closest === undefined) return [items]
  return [items, closest > 0 ? `${formatLength(closest, units)} apart at the closest` : 'some lie on others']
}

/** How the items of an appliqué are sewn down. */
export function sewingLines(project: Project, plan: Plan): string[] {
  const thread = plan.stitching?.thread ?? 0
  if (thread === 0) return ['nothing to sew down yet']
  return ['sewn down', `${formatYarnLength(thread, project.units ?? 'metric')} of thread`]
}

export function kitLines(project: Project, plan: Plan): string[] {
  const given = kitOf(project)
  if (!given) return ['not sold as a kit']
  const { kit } = plan
  const count = counted(kit?.count ?? given.count ?? 1, 'kit')
  if (!kit) return [count]
  const money = (amount: number): string => formatMoney(amount, project.currency ?? 'EUR')
  if (kit.asked) {
    const taxed = kit.asked.tax > 0 ? ' with tax' : ''
    const told = (amount: number): string => marked(money(amount), kit.assumed?.includes('cost') ?? false)
    return [`${count} at ${told(kit.asked.withTax)}${taxed}`, `the run costs ${told(kit.runCost ?? 0)}`]
  }
  return [count, `${counted(kit.extras.length, 'extra')}, no price yet`]
}
