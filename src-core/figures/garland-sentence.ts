/** A garland in one sentence: "12 six-petal flowers and 11 leaves on a cord of 223.2 cm, in 3 swags of 70 cm." */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { Project, UnitSystem } from '../../shared-types/project'
import { formatLength } from '../units/format'
import { counted, listed } from './words'

/** Names a shape, one or many. */
export type NameShape = (motif: NonNullable<Plan['accounts']>[number], many: boolean) => string

export function garlandSentence(
  project: Project,
  plan: Plan,
  garland: GarlandAccount,
  nameShape: NameShape,
): string {
  const units = project.units ?? 'metric'
  const counts = new Map<string, number>()
  for (const { motif, bead } of garland.items) {
    const key = bead === '' ? `m${motif}` : `b${bead}`
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  const things = [...counts].map(([key, count]) => {
    const account = plan.accounts?.find(({ id }) => key === `m${id}`)
    if (account) return `${count.toLocaleString('en')} ${nameShape(account, count !== 1)}`
    return counted(count, key.slice(1))
  })
  const { cord, swags } = garland
  const kind = cord.chains === null ? 'a cord' : 'a cord of chains'
  const start = `${listed(things)} on ${kind}, ${both(cord.length, units)} long`
  if (!swags) return `${start}.`
  const each = swags.count === 1 ? 'one swag' : `${swags.count} swags`
  return `${start}, hung in ${each} of ${formatLength(swags.span, units)}, ${formatLength(swags.drop, units)} deep: ${both(swags.width, units)} of wall.`
}

/** "223.2 cm (87⅞ in)". */
function both(mm: number, units: UnitSystem): string {
  const other = units === 'metric' ? 'imperial' : 'metric'
  return `${formatLength(mm, units)} (${formatLength(mm, other)})`
}
