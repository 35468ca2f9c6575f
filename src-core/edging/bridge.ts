/**
 * M35: the chains of an edging that bridges the dips, between which tips there are how many: of a round that later rounds
 * work into by the length of each gap, of one that written rounds work into (M36) as many as these come out even on.
 */
import { distance } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { MATERIAL_CONSTANTS } from '../materials/constants'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { alongOf } from './line-places'

/** A corner, tip or dip of a line of tips. */
export interface BridgedMark {
  /** Index of the tip that it stands in, or of the one before it. */
  readonly tip: number
  /** 0 in the tip itself; else which of the chains after the tip it is. */
  readonly chain: number
}

/** A line from tip to tip with so many chains after each of them. */
export interface Bridged {
  readonly gaps: readonly number[]
  /** In place of chains where a gap is a straight side: stitches between those at its ends. */
  readonly straight?: readonly number[]
  readonly marks: readonly BridgedMark[]
}

/** mm. A mark that is as near to a tip stands in it. */
const IN_TIP: Millimetres = 0.5
/** Share of a chain up to which two gaps take as many (ours: far less than a hand sees). */
const ALIKE = 1e-3

/** Lengths of the gaps between the tips of a line; an open one begins anew where it ends. */
const gapLengths = (line: Outline, isOpen: boolean): Millimetres[] =>
  line.slice(0, isOpen ? -1 : line.length).map((point, i) => distance(point, line[(i + 1) % line.length]!))

/** What lies in each gap of a line, chains or stitches along a straight side. */
type Gaps = Pick<Bridged, 'gaps' | 'straight'>

/** Parts what lies in the gaps into chains and stitches along straight sides. */
const partedGaps = (all: readonly number[], isStraight: readonly boolean[] = []): Gaps =>
  isStraight.includes(true)
    ? {
        gaps: all.map((count, i) => (isStraight[i] ? 0 : count)),
        straight: all.map((count, i) => (isStraight[i] ? count : 0)),
      }
    : { gaps: all }

/** Chains in each gap of a line, and stitches along those that are straight, where nothing else says how many. */
export const plainGaps = (
  line: Outline,
  isOpen: boolean,
  { width }: ResolvedGauge,
  isStraight: readonly boolean[] = [],
): Gaps =>
  partedGaps(
    gapLengths(line, isOpen).map((gap, i) =>
      isStraight[i]
        ? Math.max(0, Math.round(gap / width) - 1)
        : Math.max(0, Math.round((MATERIAL_CONSTANTS.bridgeSlack * gap) / width)),
    ),
    isStraight,
  )

/** Whole numbers with a given sum, by the largest remainder. */
function parted(sum: number, lengths: readonly Millimetres[]): number[] {
  const all = lengths.reduce((total, each) => total + each, 0)
  const exact = lengths.map((each) => (all > 0 ? (each * sum) / all : 0))
  const counts = exact.map((each) => Math.floor(each + 1e-9))
  // As far as lengths are alike, so that what is alike on every side stays so.
  const over = (i: number) => Math.round((exact[i]! - counts[i]!) / ALIKE)
  const order = exact.map((_, i) => i).sort((a, b) => over(b) - over(a) || a - b)
  const missing = sum - counts.reduce((total, each) => total + each, 0)
  for (const i of order.slice(0, missing)) counts[i]!++
  return counts
}

/**
 * Parts the stitches from mark to mark into one for each tip and chains between them. `marks`: where these stand in mm
 * along the line, in its order from the first. Null where there are fewer stitches than tips.
 */
export function bridgeStretches(
  line: Outline,
  isOpen: boolean,
  marks: readonly Millimetres[],
  stretches: readonly number[],
  isStraight?: readonly boolean[],
): Bridged | null {
  const lengths = gapLengths(line, isOpen)
  const tips = lengths.length
  const along = alongOf(line).slice(0, tips + 1)
  const length = along[tips]!
  const places = marks.map((mark) => placeOf(mark, along, length))
  const gaps = new Array<number>(tips).fill(0)
  const found = places.map(({ tip }): BridgedMark => ({ tip, chain: 0 }))
  for (const [i, count] of stretches.entries()) {
    const from = places[i] ?? { tip: 0, beyond: 0 }
    const to = places[(i + 1) % Math.max(1, places.length)] ?? from
    const steps = stepsBetween(from, to, tips)
    const parts = Array.from({ length: steps + (to.beyond > 0 ? 1 : 0) }, (_, k) => {
      const whole = lengths[(from.tip + k) % tips]!
      const [start, end] = [k === 0 ? from.beyond : 0, k === steps ? to.beyond : whole]
      return { gap: (from.tip + k) % tips, long: end - start }
    })
    const stitches = parts.length - (from.beyond > 0 ? 1 : 0)
    if (count < stitches) return null
    const chains = parted(
      count - stitches,
      parts.map(({ long }) => long),
    )
    // A mark between two tips is the first chain of its stretch.
    if (from.beyond > 0 && chains[0] === 0) return null
    parts.forEach(({ gap }, k) => (gaps[gap]! += chains[k]!))
    if (to.beyond > 0) found[(i + 1) % places.length] = { tip: to.tip, chain: chains.at(-1)! + 1 }
  }
  return { ...partedGaps(gaps, isStraight), marks: found }
}

/** The tip that a mark stands in or behind, and how far behind. */
function placeOf(
  mark: Millimetres,
  along: readonly Millimetres[],
  length: Millimetres,
): { readonly tip: number; readonly beyond: Millimetres } {
  const at = ((mark % length) + length) % length
  const tips = along.length - 1
  const next = along.findIndex((each) => each > at + IN_TIP)
  const tip = next < 0 ? tips : next - 1
  const beyond = at - along[tip]!
  return { tip: tip % tips, beyond: beyond > IN_TIP ? beyond : 0 }
}

/** From one place on to the next, once round where they are the same. */
function stepsBetween(
  from: { readonly tip: number; readonly beyond: Millimetres },
  to: { readonly tip: number; readonly beyond: Millimetres },
  tips: number,
): number {
  const steps = (to.tip - from.tip + tips) % tips
  return steps === 0 && to.beyond <= from.beyond ? tips : steps
}
