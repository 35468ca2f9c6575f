/** What a careful reader would remark about a garland that can be made. */
import type { Finding } from '../../../shared-types/finding'
import type { GarlandAccount } from '../../../shared-types/plan'
import type { GarlandLayout } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { finding } from '../../findings/finding'
import { fineLengthValue } from '../../findings/quantities'
import type { ResolvedGauge } from '../../stitches/gauge'
import { formatLength, formatNumber } from '../../units/format'
import { BENDING_SHARE } from './constants'
import type { Chain } from './cord'
import type { Thing } from './sequence'

/** Places on the map of things on the cord; beads have none. */
function placesOf({ items }: GarlandAccount, things: readonly number[]): string[] {
  const wanted = new Set(things)
  let number = 0
  return items.flatMap(({ bead }, i) => {
    if (bead !== '') return []
    number++
    return wanted.has(i) ? [`1,${number}`] : []
  })
}

/** The remarks on a garland; `size` is how many things its sequence has. */
export function remarks(
  project: Settled,
  layout: GarlandLayout,
  garland: GarlandAccount,
  things: readonly Thing[],
  size: number,
  chain: Chain,
  gauge: ResolvedGauge,
): Finding[] {
  const units = project.units
  const length = (mm: number): string => formatLength(mm, units)
  const findings: Finding[] = []
  const { cord, collisions: pairs, swags } = garland
  const [pair] = pairs
  if (pair) {
    const values = { pairs: formatNumber(pairs.length), first: pair[0] + 1, second: pair[1] + 1 }
    const cells = placesOf(garland, pairs.flat())
    findings.push(finding('garland/collision', 'layout', values, { cells }))
  }
  const part = things.length % size
  if (part > 0 && !layout.symmetric)
    findings.push(finding('garland/cut-repeat', 'layout.items', { part, size }))
  if (swags) {
    const at = garland.items.findIndex(({ along, extent }) => {
      const hook = Math.round(along / swags.length)
      return hook > 0 && hook < swags.count && Math.abs(along - hook * swags.length) < extent / 4
    })
    const cells = placesOf(garland, [at])
    if (at >= 0) findings.push(finding('garland/at-hook', 'layout.swags', { number: at + 1 }, { cells }))
  }
  if (cord.stretched) {
    const { low, high } = cord.stretched
    const values = { length: length(cord.length), low: length(low), high: length(high) }
    findings.push(finding('garland/cord-gives', 'layout.cord', values))
  }
  if (cord.chains !== null && !chain.known) {
    const values = { chain: fineLengthValue(chain.length), spread: formatNumber(gauge.spread * 100) }
    findings.push(finding('garland/chain-by-thumb', 'layout.cord.gauge', values))
  }
  for (const thing of new Set(things))
    findings.push(...fasteningRemarks(thing, chain, cord.chains !== null, length))
  return findings
}

function fasteningRemarks(
  { motif, account, hanging }: Thing,
  chain: Chain,
  worked: boolean,
  length: (mm: number) => string,
): Finding[] {
  if (!motif || !account || account.shape === 'leaf') return []
  const where = `motif ${motif.id}`
  const target = { motif: motif.id }
  const name = motif.name ?? motif.id
  if (hanging.places === 1) return [finding('garland/one-petal', where, { motif: name }, target)]
  if (!worked || hanging.chains * chain.length >= BENDING_SHARE * hanging.apart) return []
  const values = {
    motif: name,
    apart: length(hanging.apart),
    chains: hanging.chains,
    flat: Math.round(hanging.apart / chain.length),
  }
  return [finding('garland/chains-between', where, values, target)]
}
