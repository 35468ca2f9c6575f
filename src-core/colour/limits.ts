/**
 * What the colours of a map may take: so many motifs of each, and so many grams of each yarn. What was painted by
 * hand counts, and where a limit cannot be kept it is told by how much it is passed.
 */
import type { Finding, InUnits } from '../../shared-types/finding'
import type { YarnForMotifs } from '../../shared-types/plan'
import type { BlanketLayout, UnitSystem } from '../../shared-types/project'
import { capital, counted, listed } from '../figures/words'
import { finding, spelledValue } from '../findings/finding'
import { formatMass, isBeneathShown } from '../units/format'
import type { Grams } from '../units/quantity'
import { isUsableOrZero } from '../units/usable'
import { countsWithin, excessOf } from './counts'
import type { CountTask, YarnLimit } from './counts'
import { FREE, evenCounts } from './graph'
import { isByChance } from './kept'

type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>

/** Limits for the cells that are free, by colour. */
export interface Limits {
  readonly most: readonly number[]
  /** As in `CountTask`. */
  readonly shares?: readonly number[] | undefined
  readonly yarns: readonly (YarnLimit &
    Pick<YarnForMotifs, 'id' | 'name' | 'isShared' | 'noMore'> & {
      /** Its grams count so many times over: a yarn of which no more can be had runs short last. */
      readonly weight: number
    })[]
}

/** What is known of fillings that go less far beyond the limits than one. */
export interface Proof {
  /** There are none. */
  readonly isLeast: boolean
  /** None keeps the limits: all of them together go at least so many motifs beyond them, or else so many grams. */
  readonly atLeast?: { readonly motifs: number; readonly grams: Grams } | undefined
}

/** Whether colourways are to be as often as there is yarn for them. */
export const isByStash = (fill: { readonly pattern?: string | undefined } | undefined): boolean =>
  fill?.pattern === 'by-stash'

/** Whether a fill has limits for yarns, so that it must be known what motifs take. */
export const isByYarn = (fill: Fill | undefined): boolean =>
  fill?.withinStash === true || isByStash(fill) || Object.values(fill?.mostGrams ?? {}).some(isUsableOrZero)

/**
 * A gram beyond what there is of a yarn of which no more can be had is worse than so many of others: no stash has as many
 * grams of one that can be bought, and a motif beyond its limit still counts for more (`MOTIF_WEIGHT`).
 */
export const FIRM = 1000

/** A limit as it counts beside others. */
export const weighed = <Limit extends YarnLimit & Pick<YarnForMotifs, 'noMore'>>(limit: Limit) => {
  const weight = limit.noMore ? FIRM : 1
  return { ...limit, weight, left: limit.left * weight, each: limit.each.map((one) => one * weight) }
}

/**
 * What would make room: a limit of one's own is raised, of what is on hand there can be more, unless it `isFirm`. Empty
 * where nothing would.
 */
export function roomWords(fill: Fill, isFirm = false): string {
  const limits = [...Object.values(fill.most ?? {}), ...Object.values(fill.mostGrams ?? {})]
  const isSet = limits.some(isUsableOrZero)
  const isOnHand = fill.withinStash === true || isByStash(fill) || !isSet
  const ways = [...(isSet ? ['raise a limit'] : []), ...(isOnHand && !isFirm ? ['add yarn'] : [])]
  return ways.join(' or ')
}

/** "Raise a limit or add yarn, or choose …": what else can be done, before what is to be chosen. */
export function orChoose(ways: readonly string[]): string {
  const told = ways.filter(Boolean).join(', ')
  return told ? `${capital(told)}, or choose` : 'Choose'
}

/** The limits of a fill for its chosen colourways, less what is painted `byHand`; null where it has none. */
export function limitsOf(
  fill: Fill,
  chosen: readonly string[],
  byHand: Iterable<string>,
  stash: readonly YarnForMotifs[],
): Limits | null {
  const painted = new Map<string, number>()
  for (const id of byHand) painted.set(id, (painted.get(id) ?? 0) + 1)
  const most = chosen.map((id) => {
    const limit = fill.most?.[id]
    return isUsableOrZero(limit) ? Math.floor(limit) - (painted.get(id) ?? 0) : Infinity
  })
  if (stash.length === 0 && most.every((limit) => limit === Infinity)) return null
  const yarns = stash.map(({ id, name, left, each, isShared, noMore }) => {
    const taken = [...painted].reduce((sum, [way, many]) => sum + many * (each[way] ?? 0), 0)
    const free = { id, name, left: left - taken, each: chosen.map((way) => each[way] ?? 0) }
    return weighed({ ...free, ...(isShared && { isShared }), ...(noMore && { noMore }) })
  })
  return { most, yarns }
}

/** Cells of each colour among some, each as many times as `sizes` says. */
export function tallied(colours: number, of: ArrayLike<number>, sizes: readonly number[]): number[] {
  const cells = new Array<number>(colours).fill(0)
  sizes.forEach((size, at) => {
    const colour = of[at] ?? FREE
    if (colour !== FREE && colour < colours) cells[colour] = (cells[colour] ?? 0) + size
  })
  return cells
}

/** The task of finding counts for groups of cells. */
export function countTask(limits: Limits, sizes: readonly number[], wish: readonly number[]): CountTask {
  const many = new Map<number, number>()
  for (const size of sizes) if (size > 0) many.set(size, (many.get(size) ?? 0) + 1)
  const groups = [...many].sort(([a], [b]) => a - b).map(([size, count]) => ({ size, many: count }))
  return { groups, most: limits.most, shares: limits.shares, yarns: limits.yarns, wish }
}

/** Whether cells of each colour are as even as they can be round those that are painted, within limits where there are any. */
export function isAsEvenAsCanBe(
  counts: readonly number[],
  painted: readonly number[],
  limits: Limits | null,
): boolean {
  const gap = (of: readonly number[]): number => Math.max(...of) - Math.min(...of)
  const free = total(counts) - total(painted)
  if (counts.length < 2 || free <= 0 || gap(counts) <= gap(evenCounts(painted, free))) return true
  if (!limits) return false
  const wish = painted.map((many) => -many)
  const { cells } = countsWithin({ ...limits, groups: [{ size: 1, many: free }], wish })
  return gap(counts) <= gap(cells.map((many, colour) => many + (painted[colour] ?? 0)))
}

/** What is left to be taken, while cells are coloured one after the other. */
export interface Room {
  readonly fits: (colour: number, size: number) => boolean
  readonly take: (colour: number, size: number) => void
}

/** Room for so many groups of each size and colour. */
export function roomFor(task: CountTask, groups: readonly (readonly number[])[]): Room {
  const left = new Map(task.groups.map(({ size }, at) => [size, [...(groups[at] ?? [])]]))
  return {
    fits: (colour, size) => (left.get(size)?.[colour] ?? 0) > 0,
    take(colour, size) {
      const row = left.get(size)
      if (row) row[colour] = (row[colour] ?? 0) - 1
    },
  }
}

/** The fewest motifs to leave out so that a yarn lasts: those that take most of it first. */
function motifsShort({ each }: YarnLimit, grams: Grams, cells: readonly number[]): number {
  const order = [...each.keys()].sort((a, b) => (each[b] ?? 0) - (each[a] ?? 0))
  let missing = grams
  let motifs = 0
  for (const colour of order) {
    const one = each[colour] ?? 0
    if (missing <= 0 || one <= 0) break
    const many = Math.min(cells[colour] ?? 0, Math.ceil(missing / one - 1e-9))
    motifs += many
    missing -= many * one
  }
  return motifs
}

const total = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0)

/**
 * What a filling goes beyond its limits, and what is known of others. `ids` and `names` are of the colourways that have
 * a limit each, in their order.
 */
export function limitFindings(
  fill: Fill,
  limits: Limits,
  cells: readonly number[],
  names: readonly string[],
  ids: readonly string[],
  { isLeast, atLeast }: Proof,
): Finding[] {
  const { cells: over, grams: exactly } = excessOf(limits, cells)
  // What vanishes where it is shown is not missing.
  const grams = exactly.map((counted, yarn) => {
    const { left = 0, weight = 1 } = limits.yarns[yarn] ?? {}
    const short = counted / weight
    return isBeneathShown(short, short + left / weight) ? 0 : short
  })
  const tell = (units: UnitSystem): string =>
    listed([
      ...over.flatMap((many, colour) =>
        many > 0
          ? `${counted(many, 'motif')} in ${names[colour] ?? ''} beyond its limit of ${fill.most?.[ids[colour] ?? ''] ?? 0}`
          : [],
      ),
      ...grams.flatMap((short, yarn) => {
        const of = limits.yarns[yarn]
        if (!of || short === 0) return []
        const motifs = counted(motifsShort(of, short * of.weight, cells), 'motif')
        return `${formatMass(short, units)} of ${of.name} missing, for ${motifs}`
      }),
    ])
  const short: InUnits = { metric: tell('metric'), imperial: tell('imperial') }
  if (short.metric === '') return []
  // Without neighbours to keep apart the counts alone would come closer.
  const least = Math.max(0, total(cells) - total(limits.most))
  const apart =
    fill.pattern === 'no-two-alike' && total(over) > least
      ? '; that no two alike touch comes before the limits, and other patterns can come closer to them'
      : ''
  const isFirm = grams.every((gram, yarn) => gram === 0 || limits.yarns[yarn]?.noMore)
  const room = roomWords(fill, isFirm && grams.some((gram) => gram > 0))
  // What no chance fills cannot be shuffled; a yarn that runs short is spared by a colourway of others alone.
  const ways = spelledValue(orChoose([...(isByChance(fill) ? ['shuffle the colours'] : []), room]))
  const others = grams.some((short) => short > 0) ? ' in other yarns' : ''
  const told = { short, apart, Room: room ? `${capital(room)}, choose` : 'Choose', ways, others }
  const isSure = !grams.some((gram, yarn) => gram > 0 && limits.yarns[yarn]?.isShared)
  const where = 'layout.cells.fill'
  if (!isSure) return [finding('colours/limits-not-found', where, told)]
  if (isLeast) return [finding('colours/limits-impossible', where, told)]
  // Of grams that count for more than they are no sum can be told.
  const isTold = atLeast && (atLeast.motifs > 0 || limits.yarns.every(({ weight }) => weight === 1))
  if (!isTold) return [finding('colours/limits-not-found', where, told)]
  const bound = (units: UnitSystem): string =>
    atLeast.motifs > 0 ? counted(atLeast.motifs, 'motif') : formatMass(atLeast.grams, units)
  const bounds: InUnits = { metric: bound('metric'), imperial: bound('imperial') }
  return [finding('colours/limits-nearest', where, { ...told, least: bounds })]
}
