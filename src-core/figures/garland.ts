/** A garland as it hangs: the cord, the points it hangs from, and everything on it. */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import type { Figure, FigureItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, useAt } from './figure'
import { CAPITAL_HEIGHT } from './lettering'
import type { ColourwayMark } from './marks'
import { colourwayMarks } from './marks'
import { placedSymbols } from './motif-symbol'
import { circlePath, linePath, polygonPath, rectanglePath } from './path'

interface GarlandFigureOptions {
  /** Largest printed size in mm. */
  readonly width: number
  readonly height: number
  readonly look: SheetStyle
  /** The part of the garland that is shown, in plan mm across; all of it when absent. */
  readonly from?: number
  readonly to?: number
  /** Writes the number of each thing below it. */
  readonly numbered?: boolean
}

/** Printed mm that the garland's own size is never exceeded by; room above for the hooks, below for numbers. */
const HOOK = 0.9
const NUMBERS = 5.5
const NUMBER_TYPE = 8
/** Longest printed piece of a tie. */
const TIE = 9

interface Drawing {
  readonly scale: number
  readonly left: number
  readonly top: number
}

/** The garland, or a part of it, in a figure of the given width. */
export function garlandFigure(
  plan: Plan,
  garland: GarlandAccount,
  options: GarlandFigureOptions,
): Figure & { readonly scale: number } {
  const from = options.from ?? 0
  const to = options.to ?? plan.size.width
  const foot = options.numbered ? NUMBERS : 0
  const room = options.height - 2 * HOOK - foot
  const scale = Math.min(1, options.width / Math.max(to - from, 1), room / Math.max(plan.size.height, 1))
  const drawing = { scale, left: (options.width - (to - from) * scale) / 2 - from * scale, top: 2 * HOOK }
  const height = drawing.top + plan.size.height * scale + foot
  const marks = colourwayMarks(plan)
  const items: FigureItem[] = [
    ...cordItems(garland, drawing, from, to),
    ...thingItems(plan, garland, marks, options, drawing, from, to),
  ]
  if (options.numbered) items.push(...numbers(garland, drawing, from, to, height))
  // What hangs over the edge of a part is cut there.
  const part = options.from !== undefined || options.to !== undefined
  const shown: FigureItem[] = part
    ? [{ kind: 'group', clip: rectanglePath(0, 0, options.width, height), items }]
    : items
  return { width: options.width, height, items: shown, scale }
}

const within = (x: number, from: number, to: number): boolean => x >= from - 1e-6 && x <= to + 1e-6

function cordItems(
  { line, hooks, cord }: GarlandAccount,
  { scale, left, top }: Drawing,
  from: number,
  to: number,
): FigureItem[] {
  const at = (x: number, y: number) => ({ x: left + x * scale, y: top + y * scale })
  const points = line.map(({ x, y }) => at(x, y))
  const items: FigureItem[] = [drawPath(polygonPath(points, false), { stroke: INK, width: 0.4 })]
  const tie = Math.min(TIE, cord.ties.length * scale)
  const ends = [hooks[0], hooks.at(-1)]
  for (const hook of hooks) {
    if (!within(hook.x, from, to)) continue
    const { x, y } = at(hook.x, hook.y)
    if (tie > 0 && ends.includes(hook))
      items.push(drawPath(linePath(x, y, x, y + tie), { stroke: INK, width: 0.4 }))
    items.push(drawPath(circlePath(x, y, HOOK), { fill: PAPER, stroke: INK, width: 0.3 }))
  }
  return items
}

function thingItems(
  plan: Plan,
  garland: GarlandAccount,
  marks: readonly ColourwayMark[],
  options: GarlandFigureOptions,
  { scale, left, top }: Drawing,
  from: number,
  to: number,
): FigureItem[] {
  const symbolOf = placedSymbols(plan, marks, { scale, look: options.look })
  const items: FigureItem[] = []
  for (const motif of plan.motifs) {
    const symbol = within(motif.x, from, to) && symbolOf(motif)
    if (symbol) items.push(useAt(symbol, left + motif.x * scale, top + motif.y * scale))
  }
  for (const { bead, x, y, extent } of garland.items) {
    if (bead === '' || !within(x, from, to)) continue
    const path = circlePath(left + x * scale, top + y * scale, (extent / 2) * scale)
    items.push(drawPath(path, { fill: PAPER, stroke: INK, width: 0.25 }))
  }
  return items
}

function numbers(
  { items }: GarlandAccount,
  { scale, left }: Drawing,
  from: number,
  to: number,
  height: number,
): FigureItem[] {
  const baseline = height - (NUMBERS - NUMBER_TYPE * CAPITAL_HEIGHT * MM_PER_POINT) / 2
  return items.flatMap(({ x }, i) =>
    within(x, from, to)
      ? [drawText(String(i + 1), left + x * scale, baseline, NUMBER_TYPE, { anchor: 'middle' })]
      : [],
  )
}

/** Things that a part of a straight garland shows. */
const PART_ITEMS = 9

/** The part that is worth a larger drawing: the first swag, or the first things; null where that is all of it. */
export function firstPart(plan: Plan, { swags, hooks, items }: GarlandAccount): [number, number] | null {
  // What hangs at the second hook is shown whole.
  const beside = items.reduce((most, { extent }) => Math.max(most, extent), 0) * 0.6
  if (swags && swags.count > 1)
    return [Math.max(0, hooks[0]!.x - beside), Math.min(plan.size.width, hooks[1]!.x + beside)]
  if (swags) return null
  const last = items[PART_ITEMS]
  const before = items[PART_ITEMS - 1]
  if (!last || !before || items.length < 2 * PART_ITEMS) return null
  return [hooks[0]!.x, Math.min(plan.size.width, (last.x + before.x) / 2)]
}
