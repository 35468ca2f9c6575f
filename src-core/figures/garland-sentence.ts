/** A garland in one sentence: "12 six-petal flowers and 11 leaves, 40 mm apart, on a cord of …" */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import { saying } from '../stitches/spelling'
import { formatLength, formatNumber } from '../units/format'
import type { SentencePart } from './sentence'
import { counted } from './words'

/** Names a shape, one or many. */
type NameShape = (motif: NonNullable<Plan['accounts']>[number], many: boolean) => string

/** The sentence, in parts: counts, motifs, spacing, cord and swags can be changed. */
export function garlandSentence(
  plan: Plan,
  garland: GarlandAccount,
  nameShape: NameShape,
  terms: Terms,
): SentencePart[] {
  const { settled } = plan
  const units = settled.units
  const { cord, swags, spacing, between } = garland
  const apart = formatLength(spacing, units)
  const parts: SentencePart[] = [
    ...thingParts(plan, garland, nameShape),
    { text: ', ' },
    {
      text: between === 'edges' ? `${apart} apart` : saying(terms)`${apart} from centre to centre`,
      field: 'spacing',
    },
    { text: ', on ' },
    {
      text: `${cord.chains === null ? 'a cord' : 'a cord of chains'}, ${both(cord.length, units)} long`,
      field: 'cord',
    },
  ]
  if (!swags) return [...parts, { text: ', ' }, { text: 'hung straight', field: 'swags' }, { text: '.' }]
  const each = swags.count === 1 ? 'one swag' : counted(swags.count, 'swag')
  const hung = `${each} of ${formatLength(swags.span, units)}, ${formatLength(swags.drop, units)} deep`
  return [
    ...parts,
    { text: ', hung in ' },
    { text: hung, field: 'swags' },
    { text: `: ${both(swags.width, units)} of wall.` },
  ]
}

/** "24 leaves, 8 six-petal flowers and 7 five-petal flowers": every count and every motif a part of its own. */
function thingParts(plan: Plan, { items }: GarlandAccount, nameShape: NameShape): SentencePart[] {
  const counts = new Map<string, number>()
  for (const { motif, bead } of items) {
    const key = bead === '' ? `m${motif}` : `b${bead}`
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  const names = [...counts].map(([key, count]) => {
    const account = plan.accounts.find(({ id }) => key === `m${id}`)
    if (account) return { count, name: nameShape(account, count !== 1) }
    return { count, name: counted(count, key.slice(1)).replace(/^\S+ /, '') }
  })
  return names.flatMap(({ count, name }, i) => [
    ...(i === 0 ? [] : [{ text: i === names.length - 1 ? ' and ' : ', ' }]),
    { text: formatNumber(count), field: 'count' as const },
    { text: ' ' },
    { text: name, field: 'sequence' as const },
  ])
}

/** "223.2 cm (87⅞ in)". */
function both(mm: number, units: UnitSystem): string {
  const other = units === 'metric' ? 'imperial' : 'metric'
  return `${formatLength(mm, units)} (${formatLength(mm, other)})`
}
