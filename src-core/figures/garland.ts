/** A garland as it hangs: the cord, the points it hangs from, and everything on it. */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { cordItems, cordNumbers } from './cord'
import type { CordLook } from './cord'
import type { DrawnPlan, FigureItem } from './figure'
import { INK, PAPER, useAt } from './figure'
import { capitalDrop } from './lettering'
import { colourwayMarks, paperColour } from './marks'
import { placedSymbols } from './motif-symbol'
import { rectanglePath } from './path'

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
  /** The cord in the colour of its yarn, for a picture; else in ink. */
  readonly cordInYarn?: boolean
}

/** Printed mm that the garland's own size is never exceeded by; room above for the hooks, below for numbers. */
const HOOK = 0.9
const NUMBERS = 5.5
const NUMBER_TYPE = 8
/** Three figures and the air beside them. */
const NUMBER = { size: NUMBER_TYPE, room: 5.5 } as const
/** Longest and shortest printed piece of a tie. */
const TIE = 9
const LEAST_TIE = 3

/** The cord in ink. */
const CORD: CordLook = {
  strands: [{ stroke: INK, width: 0.4 }],
  loops: { stroke: INK, width: 0.25 },
  tie: TIE,
  hook: { radius: HOOK, fill: PAPER, stroke: INK, width: 0.3 },
  bead: { least: 0, fill: PAPER, stroke: INK, width: 0.25 },
}

/** The cord in its yarn, with a rim of ink that a pale one is seen by. */
function cordOf({ settled }: Plan, { cord }: GarlandAccount): CordLook {
  const colour = paperColour(settled.yarns.find(({ id }) => id === cord.yarn)?.colour)
  return {
    ...CORD,
    strands: [
      { stroke: INK, width: 1 },
      { stroke: colour, width: 0.7 },
    ],
    loops: { stroke: colour, width: 0.4 },
  }
}

/** The garland, or a part of it, in a figure of the given width. */
export function garlandFigure(plan: Plan, garland: GarlandAccount, options: GarlandFigureOptions): DrawnPlan {
  const from = options.from ?? 0
  const to = options.to ?? plan.size.width
  const foot = options.numbered ? NUMBERS : 0
  const room = options.height - 2 * HOOK - foot
  const scale = Math.min(1, options.width / Math.max(to - from, 1), room / Math.max(plan.size.height, 1))
  const [left, top] = [(options.width - (to - from) * scale) / 2 - from * scale, 2 * HOOK]
  // A tie hangs no lower than what is on the cord: below that stands what is written under the drawing.
  const hung = Math.max(...garland.hooks.map(({ y }) => y), 0) * scale
  const drop = Math.max(plan.size.height * scale, garland.cord.ties.length > 0 ? hung + LEAST_TIE : 0)
  const tie = Math.min(TIE, drop - hung)
  const height = top + drop + foot
  const shows = (x: number): boolean => x >= from - 1e-6 && x <= to + 1e-6
  const symbolOf = placedSymbols(plan, colourwayMarks(plan), { scale, look: options.look })
  const motifs = plan.motifs.flatMap((motif) => {
    const symbol = shows(motif.x) && symbolOf(motif)
    return symbol ? [useAt(symbol, left + motif.x * scale, top + motif.y * scale)] : []
  })
  const look = { ...(options.cordInYarn ? cordOf(plan, garland) : CORD), tie }
  const cord = cordItems(garland, look, {
    scale,
    left,
    top,
    shows,
  })
  const baseline = height - NUMBERS / 2 + capitalDrop(NUMBER_TYPE)
  const numbers = options.numbered
    ? cordNumbers(garland, NUMBER, scale, ({ x }) => (shows(x) ? { x: left + x * scale, y: baseline } : null))
    : []
  const items: FigureItem[] = [...cord.under, ...motifs, ...cord.over, ...numbers]
  // What hangs over the edge of a part is cut there.
  const part = options.from !== undefined || options.to !== undefined
  const shown: FigureItem[] = part
    ? [{ kind: 'group', clip: rectanglePath(0, 0, options.width, height), items }]
    : items
  return { width: options.width, height, items: shown, scale, left, top }
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
