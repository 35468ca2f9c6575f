/** M50: the cord in chains, what it takes, and how it gives. */
import type { Finding } from '../../../shared-types/finding'
import type { CordAccount, CordPart, GarlandAccount } from '../../../shared-types/plan'
import type { GarlandLayout, StitchGauge } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { finding } from '../../findings/finding'
import type { OtherWork } from '../../materials/input'
import { stitchYarn } from '../../stitches/gauge'
import type { ResolvedGauge } from '../../stitches/gauge'
import { FREE_CHAIN_LENGTH, STITCHES, YARN_PER_LOOP } from '../../stitches/table'
import { formatLength, formatNumber } from '../../units/format'
import type { Millimetres } from '../../units/quantity'
import { isUsable } from '../../units/usable'
import { CORD_GIVES } from './constants'
import type { Thing } from './sequence'

/** mm. No chain is shorter or longer than this: from the finest thread to whole arms for hooks (ours). */
const CHAIN = { least: 0.5, most: 200 } as const

export interface Chain {
  readonly length: Millimetres
  /** Width of a stitch of this yarn and hook, which its yarn is counted by (M40). */
  readonly width: Millimetres
  /** From the gauge of the cord or of a swatch, not by rule of thumb. */
  readonly known: boolean
}

/** One chain of the cord: by its own gauge, else 0.92 of a stitch of the swatch. */
export function chainOf(
  layout: GarlandLayout,
  gauge: ResolvedGauge,
  project: Settled,
): { chain: Chain; findings: Finding[] } {
  const own = layout.cord?.gauge
  const byGauge: Chain = {
    length: FREE_CHAIN_LENGTH * gauge.width,
    width: gauge.width,
    known: gauge.provenance === 'gauge',
  }
  if (!own || (own.chains === undefined && own.over === undefined)) return { chain: byGauge, findings: [] }
  const over = own.over ?? 100
  const length = isUsable(own.chains) && isUsable(over) ? over / own.chains : Number.NaN
  if (length >= CHAIN.least && length <= CHAIN.most)
    return { chain: { length, width: length / FREE_CHAIN_LENGTH, known: true }, findings: [] }
  const values = {
    chains: own.chains === undefined ? 'no' : formatNumber(own.chains, 2),
    over: formatLength(over, project.units),
  }
  return { chain: byGauge, findings: [finding('garland/chain-gauge', 'layout.cord.gauge', values)] }
}

export const isWorked = (layout: GarlandLayout): boolean => layout.cord?.worked !== 'bought'

/** The account of the cord. */
export function cordAccount(
  layout: GarlandLayout,
  chain: Chain,
  length: Millimetres,
  ties: Millimetres,
): CordAccount {
  const worked = isWorked(layout)
  const part = (mm: Millimetres): CordPart => ({
    length: mm,
    chains: worked ? Math.round(mm / chain.length) : null,
  })
  const between = part(length)
  const tie = part(ties)
  const whole = {
    length: length + 2 * ties,
    chains: between.chains === null ? null : between.chains + 2 * (tie.chains ?? 0),
  }
  const stretched = { low: length * (1 + CORD_GIVES.low), high: length * (1 + CORD_GIVES.high) }
  return { ...between, ties: tie, whole, yarn: layout.cord?.yarn ?? '', stretched: worked ? stretched : null }
}

/** Yarn of so many chains, in mm (M40). */
export const chainYarn = (chain: Chain, chains: number): Millimetres => chains * YARN_PER_LOOP * chain.width

/** The gauge of the cord's yarn as it was given: that of the first motif that has one, else the project's. */
export function cordGauge(project: Settled, layout: GarlandLayout | null): StitchGauge | undefined {
  const used = new Set(layout?.items?.map((item) => item.motif))
  return (project.motifs.find((motif) => used.has(motif.id) && motif.gauge) ?? project).gauge
}

/** Yarn and loops of a worked cord, and of what fastens things to it. */
export function cordWork(
  project: Settled,
  layout: GarlandLayout,
  garland: GarlandAccount,
  things: readonly Thing[],
  chain: Chain,
  gauge: ResolvedGauge,
): { works: OtherWork[]; findings: Finding[] } {
  const chains = garland.cord.whole.chains
  if (chains === null) return { works: [], findings: [] }
  const only = project.yarns.length === 1 ? project.yarns[0]?.id : undefined
  const yarn = layout.cord?.yarn ?? only
  if (!yarn) return { works: [], findings: [finding('garland/no-cord-yarn', 'layout.cord.yarn')] }
  const stitches = things.reduce((sum, { motif, hanging }) => sum + (motif ? hanging.places : 0), 0)
  const works: OtherWork[] = [
    { use: 'cord', yarn, millimetres: chainYarn(chain, chains), tails: 2, loops: chains },
    {
      use: 'joins',
      yarn,
      millimetres: stitches * stitchYarn('sc', gauge),
      tails: 0,
      loops: stitches * STITCHES.sc.loops,
    },
  ]
  return { works, findings: [] }
}
