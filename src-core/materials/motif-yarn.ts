/**
 * Yarn in one motif by colour (M40, M41): what was weighed or unravelled wins over what follows from the
 * stitches. A weighed or unravelled motif already holds its ends.
 */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, Range, WeightSplit } from '../../shared-types/plan'
import type { Motif, Terms, Weighed } from '../../shared-types/project'
import { byName } from '../by-name'
import type { FindingCode } from '../findings/catalogue'
import { finding } from '../findings/finding'
import { fabricValue, massValue } from '../findings/quantities'
import { signedArea } from '../geometry/points'
import { listed } from '../figures/words'
import { colourSpelled, saying } from '../stitches/spelling'
import { otherHookOf, otherHookWeight } from '../motif/taken-with'
import { GAUGE_CONSTANTS } from '../stitches/gauge'
import { formatNumber } from '../units/format'
import type { Grams } from '../units/quantity'
import { isUsable, isUsableOrZero } from '../units/usable'
import { MATERIAL_CONSTANTS } from './constants'
import { plusMinus, spread, times } from './range'
import { ONLY_SLOT, slotsOf } from './sections'
import { weighedColours, weighedOfNone } from './weighed-colours'

type YarnSource = 'weighed' | 'worked out' | 'unravelled' | 'stitches'

/** What one motif takes of one colour: grams where it was weighed, otherwise metres. */
export interface SlotYarn {
  readonly slot: string
  readonly source: YarnSource
  readonly unit: 'g' | 'm'
  readonly amount: Range
  /** How one weight was split over this colour and others; left out where it was weighed by itself. */
  readonly split?: WeightSplit
}

export interface MotifYarn {
  readonly slots: readonly SlotYarn[]
  /** What the colours that one weight was split over weigh together: known better than each of them. */
  readonly lot: Range | null
  readonly findings: readonly Finding[]
  /** Worth saying where the split colours are worked in different yarns; null without a split. */
  readonly splitNote: Finding | null
}

/** A motif of which nothing is known. */
export const NO_YARN: MotifYarn = { slots: [], lot: null, findings: [], splitNote: null }

const label = (motif: Motif): string => motif.name ?? motif.id
const slotLabel = (slot: string, terms: Terms): string =>
  slot === ONLY_SLOT ? saying(terms)`its only colour` : `its ${colourSpelled(slot, terms)}`
const spelledSlots = (slots: readonly string[]) => ({
  US: listed(slots.map((slot) => slotLabel(slot, 'US'))),
  UK: listed(slots.map((slot) => slotLabel(slot, 'UK'))),
})

/** A weight on a scale that steps by `resolution` for the whole lot, brought to one motif. */
function onScale(grams: number, weighed: Weighed | undefined): Range {
  const motifs = isUsable(weighed?.motifs) ? weighed.motifs : 1
  const resolution = weighed?.resolution
  return isUsableOrZero(resolution)
    ? plusMinus(grams, resolution / motifs)
    : spread(grams, MATERIAL_CONSTANTS.weighedSpread)
}

type Shares = ReadonlyMap<string, number>

/** Slot → share, adding up to 1 over `slots`, from lengths or areas; null unless every slot has one. */
function sharesBy(slots: readonly string[], sizes: Readonly<Record<string, number>>): Shares | null {
  const found = slots.map((slot) => (Object.hasOwn(sizes, slot) ? sizes[slot] : undefined))
  if (!found.every(isUsable)) return null
  const total = found.reduce((sum, size) => sum + size, 0)
  return new Map(slots.map((slot, index) => [slot, (found[index] ?? 0) / total]))
}

/** mm² of each colour in the drawing: every layer covers the middle of the one before. */
function areasOf(account: MotifAccount | null): Record<string, number> {
  const areas = byName<number>()
  const layers = account?.layers ?? []
  layers.forEach(({ slot, outline }, index) => {
    const covered = layers[index + 1]
    const seen = Math.abs(signedArea(outline)) - (covered ? Math.abs(signedArea(covered.outline)) : 0)
    areas[slot] = (areas[slot] ?? 0) + Math.max(0, seen)
  })
  return areas
}

interface Divided {
  readonly shares: Shares
  /** What the shares follow from; null where they were measured, or there is one colour alone. */
  readonly source: WeightSplit | null
}

/** How a weight divides that nobody divided (M41): as unravelled, by stitches, by the areas of the drawing. */
function divide(motif: Motif, account: MotifAccount | null, slots: readonly string[]): Divided {
  const unravelled = sharesBy(slots, motif.unravelled ?? {})
  if (unravelled) return { shares: unravelled, source: null }
  const among = (source: WeightSplit): WeightSplit | null => (slots.length > 1 ? source : null)
  const stitches = sharesBy(slots, account?.metres ?? {})
  if (stitches) return { shares: stitches, source: among('stitches') }
  const written = sharesBy(slots, account?.written ?? {})
  if (written) return { shares: written, source: among('stitches') }
  const areas = sharesBy(slots, areasOf(account))
  if (areas) return { shares: areas, source: among('areas') }
  return { shares: new Map(slots.map((slot) => [slot, 1 / slots.length])), source: among('evenly') }
}

interface Split extends Divided {
  /** Colours whose shares follow from `source`. */
  readonly assumed: readonly string[]
  readonly findings: readonly Finding[]
}

/** How a weighed motif divides over `slots`: as stated, and what that leaves as `divide` says. */
function splitWeight(
  motif: Motif,
  account: MotifAccount | null,
  slots: readonly string[],
  where: string,
): Split {
  const stated = motif.weighed?.shares ?? {}
  const given = slots.filter((slot) => Object.hasOwn(stated, slot) && (stated[slot] ?? -1) >= 0)
  const sum = given.reduce((total, slot) => total + (stated[slot] ?? 0), 0)
  if (given.length === 0 || !isUsable(sum))
    return { ...divide(motif, account, slots), assumed: slots, findings: [] }
  const missing = slots.filter((slot) => !given.includes(slot))
  const rest = missing.length > 0 ? Math.max(0, 1 - sum) : 0
  const shares = new Map(given.map((slot) => [slot, (stated[slot] ?? 0) / (sum + rest)]))
  const divided = divide(motif, account, missing)
  for (const slot of missing) shares.set(slot, ((divided.shares.get(slot) ?? 0) * rest) / (sum + rest))
  const off = Math.abs(sum + rest - 1) > MATERIAL_CONSTANTS.sharesTolerance
  const target = { motif: motif.id }
  const warning = finding('yarn/shares', `${where}.weighed.shares`, { sum: formatNumber(sum, 3) }, target)
  return { shares, source: divided.source, assumed: missing, findings: off ? [warning] : [] }
}

const SPLIT_FINDINGS = {
  stitches: 'yarn/split-by-stitches',
  areas: 'yarn/split-by-area',
  evenly: 'yarn/split-evenly',
} as const satisfies Record<WeightSplit, FindingCode>

/** "Centre 14 %, Petals 86 %": what a weight was split into. */
function splitNote(motif: Motif, { shares, source, assumed }: Split, where: string): Finding | null {
  if (!source) return null
  const whole = assumed.reduce((sum, slot) => sum + (shares.get(slot) ?? 0), 0)
  if (!(whole > 0)) return null
  const parts = assumed.map((slot) => `${slot} ${formatNumber(((shares.get(slot) ?? 0) / whole) * 100)} %`)
  const values = {
    motif: label(motif),
    slots: assumed.length,
    parts: parts.join(', '),
    spread: formatNumber(SPLIT_SPREAD[source] * 100),
  }
  return finding(SPLIT_FINDINGS[source], where, values, { motif: motif.id })
}

/** How far a share may be off, by what it follows from: written rounds know each colour as well as they do unweighed. */
export const SPLIT_SPREAD: Readonly<Record<WeightSplit, number>> = {
  stitches: MATERIAL_CONSTANTS.modelSpread,
  areas: MATERIAL_CONSTANTS.splitSpread,
  evenly: MATERIAL_CONSTANTS.splitSpread,
}

/** The parts of a split weight: each as wide as splitting makes it, or as the scale does where that is wider. */
function partsOf(lot: Range, shares: readonly number[], source: WeightSplit): Range[] {
  const split = spread(lot.expected, SPLIT_SPREAD[source])
  const one = {
    low: Math.min(lot.low, split.low),
    expected: lot.expected,
    high: Math.max(lot.high, split.high),
  }
  if (source !== 'stitches') return shares.map((share) => times(one, share))
  // Beside what the others take at least, none takes more than the whole at most; nor less, the other way round.
  const together = shares.reduce((sum, share) => sum + share, 0)
  return shares.map((share) => ({
    low: Math.max(one.low * share, lot.low * together - one.high * (together - share)),
    expected: lot.expected * share,
    high: Math.min(one.high * share, lot.high * together - one.low * (together - share)),
  }))
}

/** Grams that a weight of a colour told to a tenth of a gram may be off by. */
const ROUNDED: Grams = 0.05

/**
 * Whether the grams of the colours and the weight of the whole motif cannot both be right: they are further apart than
 * weighing is off, or leave nothing for colours of which nothing is known.
 */
function weightsDiffer(
  sum: Grams,
  whole: Grams,
  isPart: boolean,
  colours: number,
  weighed: Weighed | undefined,
): boolean {
  const scale = onScale(whole, weighed).high - whole
  const room = Math.max(scale, MATERIAL_CONSTANTS.weighedSpread * whole) + colours * ROUNDED
  return isPart ? sum >= whole : Math.abs(sum - whole) > room
}

/** A warning where so many grams of one motif cannot be, for the area that it covers; null where they can. */
function unlikelyWeight(
  motif: Motif,
  account: MotifAccount | null,
  grams: Grams,
  where: string,
): Finding | null {
  const area = account ? Math.abs(signedArea(account.outline)) : 0
  if (!(area > 0)) return null
  const perSquareMetre = (grams / area) * 1e6
  const { least, most } = MATERIAL_CONSTANTS.perSquareMetre
  if (perSquareMetre >= least && perSquareMetre <= most) return null
  const values = {
    motif: label(motif),
    grams: massValue(grams),
    density: fabricValue(perSquareMetre),
    ...{ least: fabricValue(least), most: fabricValue(most) },
    lot: motif.weighed?.grams !== undefined ? massValue(motif.weighed.grams) : massValue(grams),
    count: isUsable(motif.weighed?.motifs) ? motif.weighed.motifs : 1,
  }
  const code = perSquareMetre < least ? 'yarn/weight-too-light' : 'yarn/weight-too-heavy'
  return finding(code, where, values, { motif: motif.id })
}

/** Yarn in one motif by colour; colours that nothing is known of are named in a finding. */
export function motifYarn(
  motif: Motif,
  account: MotifAccount | null,
  where: string,
  terms: Terms = 'US',
): MotifYarn {
  const told = yarnAsTaken(motif, account, where)
  const isOther = otherHookOf(motif, 'weight', terms) !== null
  if (!isOther && !motif.weightWorkedOut) return told
  // Nobody weighed it as it is worked now: it is as sure as the model.
  const isWeighed = ({ source }: SlotYarn): boolean => source !== 'stitches'
  const loose = ({ expected }: Range): Range => spread(expected, MATERIAL_CONSTANTS.modelSpread)
  const slots = told.slots.map((slot) =>
    isWeighed(slot) ? { ...slot, source: 'worked out' as const, amount: loose(slot.amount) } : slot,
  )
  const grams = told.slots
    .filter(({ unit }) => unit === 'g')
    .reduce((sum, { amount }) => sum + amount.expected, 0)
  const more = isOther ? otherHookWeight(motif, grams, where, terms) : []
  return { ...told, slots, lot: told.lot && loose(told.lot), findings: [...told.findings, ...more] }
}

function yarnAsTaken(motif: Motif, account: MotifAccount | null, where: string): MotifYarn {
  const findings: Finding[] = []
  const slots: SlotYarn[] = []
  const names = slotsOf(motif, account)
  const weighed = motif.weighed

  const direct = weighedColours(motif, names)
  const lost = weighedOfNone(motif, names, where)
  if (lost) findings.push(lost)
  for (const [slot, grams] of direct) {
    slots.push({ slot, source: 'weighed', unit: 'g', amount: onScale(grams, weighed) })
  }

  const open = names.filter((slot) => !direct.has(slot))
  const known = [...direct.values()].reduce((sum, grams) => sum + grams, 0)
  const motifs = isUsable(weighed?.motifs) ? weighed.motifs : 1
  const whole = isUsable(weighed?.grams) ? weighed.grams / motifs : 0
  const countable = weighed?.motifs === undefined || isUsable(weighed.motifs)
  const rest = countable ? whole - known : 0
  const differs =
    countable && whole > 0 && known > 0 && weightsDiffer(known, whole, open.length > 0, direct.size, weighed)
  if (differs) {
    const values = { motif: label(motif), sum: massValue(known), whole: massValue(whole) }
    findings.push(finding('yarn/weights-differ', where, values, { motif: motif.id }))
  }
  for (const field of ['motifs', 'grams', 'resolution'] as const) {
    const value = weighed?.[field]
    if (value === undefined || (field === 'resolution' ? isUsableOrZero(value) : isUsable(value))) continue
    const values = { motif: label(motif), field, received: String(value) }
    findings.push(finding('yarn/invalid-weighing', `${where}.weighed.${field}`, values, { motif: motif.id }))
  }
  const one = Math.max(whole, known)
  const unlikely = countable && one > 0 ? unlikelyWeight(motif, account, one, where) : null
  if (unlikely) findings.push(unlikely)
  if (open.length > 0 && rest > 0) {
    const split = splitWeight(motif, account, open, where)
    const { shares, source, assumed } = split
    findings.push(...split.findings)
    const scale = onScale(rest, weighed)
    const guessed = source ? assumed : []
    const parts = source
      ? partsOf(
          scale,
          guessed.map((slot) => shares.get(slot) ?? 0),
          source,
        )
      : []
    for (const slot of open) {
      const known = { slot, source: 'weighed', unit: 'g' } as const
      const amount = parts[guessed.indexOf(slot)]
      if (source && amount) slots.push({ ...known, amount, split: source })
      else slots.push({ ...known, amount: times(scale, shares.get(slot) ?? 0) })
    }
    const together = assumed.reduce((sum, slot) => sum + (shares.get(slot) ?? 0), 0)
    const lot = source ? times(scale, together) : null
    return { slots, lot, findings, splitNote: splitNote(motif, split, where) }
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
    const values = { motif: label(motif), slots: spelledSlots(names.length === 1 ? [ONLY_SLOT] : unknown) }
    findings.push(finding('yarn/no-weight', where, values, { motif: motif.id }))
  }
  return { slots, lot: null, findings, splitNote: null }
}
