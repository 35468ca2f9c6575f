/** What a careful shopkeeper would ask about each yarn. */
import type { Finding } from '../../shared-types/finding'
import type { YarnNeed } from '../../shared-types/plan'
import type { Project, Yarn } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatMass, formatMassRange, formatNumber, formatYarnLength } from '../units/format'
import { isUsable, isUsableOrZero } from '../units/usable'
import { gramsPerMetre, positiveOrNull } from './ledger'
import type { YarnLedger } from './ledger'

const label = (yarn: Yarn): string => yarn.name ?? yarn.id

/** Fields that must be numbers above zero (or zero, where nothing is a sensible answer). */
const LIMITS = [
  ['ballGrams', false],
  ['ballMetres', false],
  ['price', true],
  ['onHandGrams', true],
] as const

function unusableValues(yarn: Yarn): Finding[] {
  return LIMITS.flatMap(([field, zeroIsFine]) => {
    const value = yarn[field]
    if (value === undefined || (zeroIsFine ? isUsableOrZero(value) : isUsable(value))) return []
    const expected = zeroIsFine ? 'a number from 0 on' : 'a number above 0'
    return finding(
      'yarn/invalid-value',
      `yarn ${yarn.id}, ${field}`,
      { yarn: label(yarn), received: String(value), expected },
      { yarn: yarn.id },
    )
  })
}

/** How far the stash goes: "it runs out at about motif 87 of 120". */
function reach(onHand: number, need: YarnNeed, motifs: number): string {
  const share = onHand / need.grams.expected
  if (motifs === 0) return `it covers about ${formatNumber(share * 100)} %`
  return `it runs out at about motif ${formatNumber(Math.floor(motifs * share) + 1)} of ${formatNumber(motifs)}`
}

function stash(project: Project, yarn: Yarn, need: YarnNeed, motifs: number): Finding[] {
  const onHand = positiveOrNull(yarn.onHandGrams)
  if (onHand === null || onHand >= need.grams.high) return []
  const units = project.units ?? 'metric'
  const values = {
    yarn: label(yarn),
    onHand: formatMass(onHand, units),
    need: formatMassRange(need.grams, units),
    missing: formatMass(need.grams.high - onHand, units),
  }
  const target = { yarn: yarn.id }
  if (onHand >= need.grams.expected) return [finding('yarn/stash-tight', `yarn ${yarn.id}`, values, target)]
  const short = { ...values, reach: reach(onHand, need, motifs) }
  return [finding('yarn/stash-short', `yarn ${yarn.id}`, short, target)]
}

/** Findings about the yarns in use; those of the list that nothing uses are left in peace. */
export function yarnFindings(
  project: Project,
  yarns: readonly Yarn[],
  needs: readonly YarnNeed[],
  ledger: YarnLedger,
): Finding[] {
  const units = project.units ?? 'metric'
  const findings: Finding[] = []
  yarns.forEach((yarn, index) => {
    const need = needs[index]
    if (!need) return
    const target = { yarn: yarn.id }
    const where = `yarn ${yarn.id}`
    findings.push(...unusableValues(yarn))
    const metresOnly = ledger.metresOnly(yarn)
    if (metresOnly > 0) {
      const values = { yarn: label(yarn), metres: formatYarnLength(metresOnly, units) }
      findings.push(finding('yarn/no-ball-band', where, values, target))
    } else if (positiveOrNull(yarn.ballGrams) === null) {
      findings.push(finding('yarn/no-ball-weight', where, { yarn: label(yarn) }, target))
    } else if (gramsPerMetre(yarn) === null) {
      findings.push(finding('yarn/no-ball-length', where, { yarn: label(yarn) }, target))
    }
    if (yarn.price === undefined)
      findings.push(finding('yarn/no-price', where, { yarn: label(yarn) }, target))
    findings.push(...stash(project, yarn, need, ledger.motifsWith(yarn.id)))
  })
  const lots = needs.filter((need) => (need.toBuy ?? 0) > 0 && (need.balls ?? 0) > 1)
  if (lots.length > 0) {
    const balls = lots.reduce((sum, need) => sum + (need.toBuy ?? 0), 0)
    const yarns = lots.length === 1 ? 'one yarn' : `${lots.length} yarns`
    findings.push(finding('yarn/dye-lot', 'yarns', { balls: formatNumber(balls), yarns }))
  }
  return findings
}
