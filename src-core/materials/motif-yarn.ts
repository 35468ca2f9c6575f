/**
 * Yarn in one motif by colour (M40, M41): what was weighed or unravelled wins over what follows from the
 * stitches. A weighed or unravelled motif already holds its ends.
 */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, Range } from '../../shared-types/plan'
import type { Motif, Weighed } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { GAUGE_CONSTANTS } from '../stitches/gauge'
import { formatNumber } from '../units/format'
import { isUsable, isUsableOrZero } from '../units/usable'
import { MATERIAL_CONSTANTS } from './constants'
import { plusMinus, spread, times } from './range'
import { ONLY_SLOT, slotsOf } from './sections'

export type YarnSource = 'weighed' | 'unravelled' | 'stitches'

/** What one motif takes of one colour: grams where it was weighed, otherwise metres. */
export interface SlotYarn {
  readonly slot: string
  readonly source: YarnSource
  readonly unit: 'g' | 'm'
  readonly amount: Range
}

export interface MotifYarn {
  readonly slots: readonly SlotYarn[]
  readonly findings: readonly Finding[]
}

const label = (motif: Motif): string => motif.name ?? motif.id
const slotLabel = (slot: string): string => (slot === ONLY_SLOT ? 'its only colour' : `colour ${slot}`)

/** A weight on a scale that steps by `resolution` for the whole lot, brought to one motif. */
function onScale(grams: number, weighed: Weighed | undefined): Range {
  const motifs = isUsable(weighed?.motifs) ? weighed.motifs : 1
  const resolution = weighed?.resolution
  return isUsableOrZero(resolution)
    ? plusMinus(grams, resolution / motifs)
    : spread(grams, MATERIAL_CONSTANTS.weighedSpread)
}

/** Slot → share, adding up to 1 over `slots`, from lengths; null unless every slot has one. */
function sharesByLength(slots: readonly string[], lengths: Readonly<Record<string, number>>) {
  const found = slots.map((slot) => lengths[slot])
  if (!found.every(isUsable)) return null
  const total = found.reduce((sum, length) => sum + length, 0)
  return new Map(slots.map((slot, index) => [slot, (found[index] ?? 0) / total]))
}

function splitWithoutShares(motif: Motif, account: MotifAccount | null, slots: readonly string[]) {
  const evenly = new Map(slots.map((slot) => [slot, 1 / slots.length]))
  const byLength =
    sharesByLength(slots, motif.unravelled ?? {}) ?? sharesByLength(slots, account?.metres ?? {})
  return { shares: byLength ?? evenly, even: byLength === null && slots.length > 1 }
}

interface Split {
  readonly shares: ReadonlyMap<string, number>
  readonly findings: readonly Finding[]
}

/** How a weighed motif divides over `slots`: as stated, else by length, else evenly with a note. */
function splitWeight(
  motif: Motif,
  account: MotifAccount | null,
  slots: readonly string[],
  where: string,
): Split {
  const target = { motif: motif.id }
  const stated = motif.weighed?.shares ?? {}
  const given = slots.filter((slot) => Object.hasOwn(stated, slot) && (stated[slot] ?? -1) >= 0)
  const sum = given.reduce((total, slot) => total + (stated[slot] ?? 0), 0)
  if (given.length === 0 || !isUsable(sum)) {
    const { shares, even } = splitWithoutShares(motif, account, slots)
    const note = finding('yarn/split-evenly', where, { motif: label(motif), slots: slots.length }, target)
    return { shares, findings: even ? [note] : [] }
  }
  const missing = slots.filter((slot) => !given.includes(slot))
  const rest = missing.length > 0 ? Math.max(0, 1 - sum) : 0
  const shares = new Map(given.map((slot) => [slot, (stated[slot] ?? 0) / (sum + rest)]))
  const { shares: byRest } = splitWithoutShares(motif, account, missing)
  for (const slot of missing) shares.set(slot, ((byRest.get(slot) ?? 0) * rest) / (sum + rest))
  const off = Math.abs(sum + rest - 1) > MATERIAL_CONSTANTS.sharesTolerance
  const warning = finding('yarn/shares', `${where}.weighed.shares`, { sum: formatNumber(sum, 3) }, target)
  return { shares, findings: off ? [warning] : [] }
}

/** Yarn in one motif by colour; colours that nothing is known of are named in a finding. */
export function motifYarn(motif: Motif, account: MotifAccount | null, where: string): MotifYarn {
  const findings: Finding[] = []
  const slots: SlotYarn[] = []
  const names = slotsOf(motif, account)
  const weighed = motif.weighed

  const direct = new Map<string, number>()
  if (motif.kind === 'measured') {
    for (const { slot, grams } of motif.slots ?? []) {
      if (isUsable(grams)) direct.set(slot, (direct.get(slot) ?? 0) + grams)
    }
  }
  for (const [slot, grams] of direct) {
    slots.push({ slot, source: 'weighed', unit: 'g', amount: onScale(grams, weighed) })
  }

  const open = names.filter((slot) => !direct.has(slot))
  const known = [...direct.values()].reduce((sum, grams) => sum + grams, 0)
  const motifs = isUsable(weighed?.motifs) ? weighed.motifs : 1
  const whole = isUsable(weighed?.grams) ? weighed.grams / motifs : 0
  const countable = weighed?.motifs === undefined || isUsable(weighed.motifs)
  const rest = countable ? whole - known : 0
  for (const field of ['motifs', 'grams', 'resolution'] as const) {
    const value = weighed?.[field]
    if (value === undefined || (field === 'resolution' ? isUsableOrZero(value) : isUsable(value))) continue
    const values = { motif: label(motif), field, received: String(value) }
    findings.push(finding('yarn/invalid-weighing', `${where}.weighed.${field}`, values, { motif: motif.id }))
  }
  if (open.length > 0 && rest > 0) {
    const { shares, findings: found } = splitWeight(motif, account, open, where)
    findings.push(...found)
    for (const slot of open) {
      const amount = times(onScale(rest, weighed), shares.get(slot) ?? 0)
      slots.push({ slot, source: 'weighed', unit: 'g', amount })
    }
    return { slots, findings }
  }

  const { modelSpread, unravelledSpread } = MATERIAL_CONSTANTS
  const rough = account?.provenance === 'rule-of-thumb' ? GAUGE_CONSTANTS.ruleOfThumbSpread : 0
  const unknown: string[] = []
  for (const slot of open) {
    const unravelled = motif.unravelled?.[slot]
    const computed = account?.metres[slot]
    if (isUsable(unravelled)) {
      const amount = spread(unravelled, unravelledSpread)
      slots.push({ slot, source: 'unravelled', unit: 'm', amount })
    } else if (isUsable(computed)) {
      const amount = spread(computed, Math.max(modelSpread, rough))
      slots.push({ slot, source: 'stitches', unit: 'm', amount })
    } else unknown.push(slot)
  }
  if (unknown.length > 0) {
    const values = { motif: label(motif), slots: unknown.map(slotLabel).join(', ') }
    findings.push(finding('yarn/no-weight', where, values, { motif: motif.id }))
  }
  return { slots, findings }
}
