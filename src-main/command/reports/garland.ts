/** `petalyard plan` of a garland: the cord, how it hangs, and what is fastened where. */
import { chainsMade } from '../../../src-core/stitches/terms'
import { lettered } from '../../../src-core/colour/letters'
import { counted } from '../../../src-core/figures/words'
import type { GarlandAccount, Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { formatLength, formatNumber, lengthsIn } from '../../../src-core/units/format'
import { table } from '../text'
import { saying } from '../../../src-core/stitches/spelling'
import { termsOf, unitsOf } from './words'

/** Things on the cord that are shown unless all are asked for. */
const ITEMS_SHOWN = 6

export function garlandFacts(project: Project, plan: Plan, garland: GarlandAccount): [string, string][] {
  const length = (mm: number) => formatLength(mm, unitsOf(project))
  const { cord, swags, between, spacing } = garland
  const chains = (count: number | null) => (count === null ? '' : `, ${counted(count, 'chain')}`)
  const pairs: [string, string][] = [['Cord', `${length(cord.length)}${chains(cord.chains)}`]]
  if (cord.ties.length > 0)
    pairs.push([
      '',
      `and ${length(cord.ties.length)}${chains(cord.ties.chains)} to tie at each end: ${length(cord.whole.length)}${chains(cord.whole.chains)} in all`,
    ])
  if (cord.stretched)
    pairs.push(['', `under load ${length(cord.stretched.low)} to ${length(cord.stretched.high)}`])
  if (swags) {
    const each = swags.count > 1 ? ' each' : ''
    const many = swags.count > 1 ? counted(swags.count, 'swag') : 'one swag'
    pairs.push([
      'Hangs',
      `in ${many} of ${length(swags.span)}${each}, ${length(swags.drop)} deep: a wall of ${length(swags.width)}`,
    ])
  } else pairs.push(['Hangs', 'straight'])
  const where = between === 'edges' ? 'from edge to edge' : saying(termsOf(project))`from centre to centre`
  pairs.push(['On it', `${thingWords(project, plan)}, ${length(spacing)} ${where}`])
  return pairs
}

/** "16 Leaf, 8 Six-petal bloom, 3 wooden bead". */
function thingWords(project: Project, plan: Plan): string {
  const names = new Map((project.motifs ?? []).map((motif) => [motif.id, motif.name || motif.id]))
  const counts = new Map<string, number>()
  for (const { motif, bead } of plan.garland?.items ?? []) {
    const name = bead || (names.get(motif) ?? motif)
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return [...counts].map(([name, count]) => `${formatNumber(count)} × ${name}`).join(', ')
}

/** What is fastened where, from the first tie. */
export function cordSection(
  project: Project,
  { cord, items }: GarlandAccount,
  width: number,
  whole: boolean,
): string[] {
  const units = unitsOf(project)
  const names = new Map((project.motifs ?? []).map((motif) => [motif.id, motif.name || motif.id]))
  const codes = new Map(lettered(project.colourways ?? []).map(({ id, code }) => [id, code ?? '']))
  const along = lengthsIn(
    units,
    items.map((item) => item.along),
  )
  const shown = whole ? items : items.slice(0, ITEMS_SHOWN)
  const rest = items.length - shown.length
  const worked = cord.chains !== null
  const rows = shown.map((item, i) => [
    String(i + 1),
    item.bead || (names.get(item.motif) ?? item.motif),
    codes.get(item.colourway) ?? '',
    along(item.along),
    ...(worked ? [chainsMade(formatNumber(item.chains ?? 0), termsOf(project))] : []),
    item.words,
  ])
  const left = { align: 'left' } as const
  const right = { align: 'right' } as const
  const columns = [
    { head: '', ...right },
    { head: 'Along the cord', ...left },
    { head: '', ...left },
    { head: 'at', ...right },
    ...(worked ? [{ head: 'after', ...right }] : []),
    { head: `in ${termsOf(project)} terms`, ...left },
  ]
  return [
    '',
    ...table(columns, rows, width),
    ...(rest > 0 ? [`… and ${formatNumber(rest)} more: --order shows all, --csv cord lists them.`] : []),
  ]
}
