/** A round of a leaf, an oval or a piece in rows on its ground: everything in its place, side by side. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { archAt, archBetween } from './arch'
import { heightOf, mean, middleOf, topWidth } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import { BESIDE_CHAIN } from './leaf-ground'
import type { At, Ground } from './leaf-ground'
import { picotChain } from './picots'
import { alongLine, lineThrough, nearestOn, outwardAt, standAlong } from './ribbon'
import type { Line } from './ribbon'

/** What shapes nothing takes so much room along its round, in stitch widths (by eye). */
const ROOM = { chain: 0.75, join: 0.45, slip: 0.6, hangs: 1.6, hangsFrom: 3 } as const
/** … and stands up to this share of the height of a round (ours). */
const UP_TO = { chain: 0.66, join: 0.75 } as const
/** Up to so many chains between two stitches are drawn so far over their tops, in stitch widths (by eye). */
const FEW_CHAINS = 2
const OVER_TOPS = 0.3
/** Chains that close a round lie so far beyond it, as a share of its height there (by eye). */
const CLOSING_UP = 1.3
/** … and their middle one farther by this share (by eye). */
const POINTED = 0.4
/** The join lies so far behind the last of them, as a share of the way (by eye). */
const JOIN_BEHIND = 0.27
/** Groups so close to a corner go around it, in stitch widths (ours). */
const BESIDE_CORNER = 1.45
/** Stitches in one space begin so far from each other, in stitch widths (by eye). */
const IN_SPACE = 0.55
/** Slip stitches back along a stem lie so far beside its chains, in stitch widths (by eye). */
const BESIDE_STEM = 0.42
const PICOT = 0.35

/** A part of a round that takes room along it. */
interface Part {
  readonly element: WorkedElement | null
  readonly width: Millimetres
  readonly height: Millimetres
  readonly at: Millimetres | null
  /** The place that it is worked into. */
  readonly found: At | null
}

interface Stood {
  readonly located: LocatedRound
  /** Where what the next round is worked into has its place, by element. */
  readonly points: ReadonlyMap<number, Point>
  readonly line: Line
  /** … and how far along the line that is. */
  readonly arcs: ReadonlyMap<number, Millimetres>
  /** Chains of the foundation that stand up before the first stitch. */
  readonly turned: readonly Point[]
}

/** Chains that a first round makes to begin on: they are the foundation, no stem of it. */
const beginsOn = ({ elements, onto }: WorkedRound): WorkedElement | null =>
  onto === -2 && elements[0]?.role === 'stem' && !elements[0].standing ? elements[0] : null

/** Whether an element is worked into chains of its own round: a stem that is worked back along. */
const isOnStem = ({ into: [place] }: WorkedElement, round: WorkedRound): boolean =>
  place?.kind === 'chain' && place.round === round.index && place.index !== beginsOn(round)?.index

const stands = ({ standing, role }: WorkedElement): boolean => standing || role === 'slip'

/** A round on its ground: everything that takes room side by side, chains and picots between, stems outward. */
export function standOn(round: WorkedRound, ground: Ground, skipped: number, gauge: ResolvedGauge): Stood {
  const { width } = gauge
  const parts = partsOf(round, ground, skipped, gauge)
  const back = runsBack(parts)
  const inOrder = back ? [...parts].reverse() : parts
  const placed = standAlong(ground.line, inOrder, width)
  const slots = new Map(inOrder.map((part, i) => [part, placed[i]!]))
  const own = new Map<number, { part: Part; slot: (typeof placed)[number] }>()
  for (const [part, slot] of slots) if (part.element) own.set(part.element.index, { part, slot })
  const tall = parts.flatMap(({ height }) => (height > 0 ? [height] : []))
  // Where a round begins and closes, what shapes nothing keeps to the stitches there.
  const high = mean([tall[0] ?? width, tall.at(-1) ?? width])
  const bases = basesOf(round, own, ground, back, width)
  const from = ({ x, y }: Point, out: Point, way: Millimetres): Point => ({
    x: x + out.x * way,
    y: y + out.y * way,
  })
  const elements: LocatedElement[] = []
  const asides: LocatedElement[] = []
  const points = new Map<number, Point>()
  const tops = new Map<number, Point>()
  for (const element of round.elements) {
    const found = own.get(element.index)
    if (found && stands(element)) tops.set(element.index, found.slot.top)
  }
  const nearest = (index: number, step: 1 | -1): Point | null => {
    for (let k = index + step; k >= 0 && k < round.elements.length; k += step) {
      const top = tops.get(round.elements[k]!.index)
      if (top) return top
    }
    return null
  }
  let closedAt: Point | undefined
  const ring = ground.line.closed ? [...tops.values()] : []
  round.elements.forEach((element, i) => {
    const found = own.get(element.index)
    const out = found?.slot.outward ?? { x: 0, y: 1 }
    if (found && stands(element)) {
      const base = bases.get(element.index)!
      const { top } = found.slot
      const feet = element.into.flatMap((place) => ground.at(place)?.point ?? [])
      const over = overOf(found.part.found, base, top, ground, width)
      const post = found.part.found?.foot ? found.part.found.point : null
      points.set(element.index, top)
      elements.push({
        ...{ element, base: element.role === 'slip' ? top : base, top, chain: [] },
        ...(feet.length > 1 && { feet }),
        ...(over && { over }),
        ...(post && { behindUpTo: Math.hypot(post.x - base.x, post.y - base.y) }),
      })
    } else if (element.role === 'space') {
      const before = nearest(i, -1) ?? ring[ring.length - 1]
      const after = nearest(i, 1) ?? ring[0]
      if (!before || !after) return
      const closes = found !== undefined && ground.line.closed && !nearest(i, 1)
      const loop = closes
        ? closingChains(element, [before, after], CLOSING_UP * high)
        : loopBetween(element, before, after, out, width)
      if (closes) closedAt = loop.end
      points.set(element.index, loop.top)
      elements.push(loop)
    } else if (element.role === 'picot') {
      const foot = nearest(i, -1)
      if (!foot) return
      const way = outwardAt(ground.line, nearestOn(ground.line, foot), width)
      const base = from(foot, way, OVER_TOPS * width)
      const top = from(base, way, PICOT * element.count * width)
      elements.push({ element, base, top, chain: picotChain(base, top, element.count) })
    } else if (element.role === 'stem' && found) {
      const foot = from(found.slot.top, out, width / 2)
      const chain = Array.from({ length: element.count }, (_, k) => from(foot, out, (k + 0.5) * width))
      elements.push({ element, base: foot, top: from(foot, out, element.count * width), chain })
      const along = back ? -1 : 1
      const side = { x: -out.y * along, y: out.x * along }
      for (const each of round.elements) {
        if (!isOnStem(each, round) || each.into[0]!.index !== element.index) continue
        const cell = chain[Math.min(element.count - 1, Math.max(0, each.into[0]!.cell))]!
        const base = from(cell, side, BESIDE_STEM * width)
        const isSlip = each.role === 'slip'
        const end = isSlip ? base : from(base, side, heightOf(each, gauge))
        elements.push({ element: each, base, top: end, chain: [] })
      }
    } else if (element.role === 'travel') {
      const place = element.into[0] && ground.at(element.into[0])
      if (!place) return
      const point = from(place.point, outwardAt(ground.line, place.arc, width), BESIDE_CHAIN * width)
      asides.push({ element, base: point, top: point, chain: [] })
    } else if (found) {
      const up = element.role === 'join' ? UP_TO.join : UP_TO.chain
      const top = (element.role === 'join' && closedAt) || from(found.slot.top, out, up * high)
      asides.push({ element, base: element.role === 'join' ? top : found.slot.top, top, chain: [] })
    }
  })
  const edge = (back ? [...elements].reverse() : elements).flatMap(({ element, top }) =>
    isOnStem(element, round) || element.role === 'stem' ? [] : [top],
  )
  const sides = ground.line.closed ? [] : [...ground.line.points].reverse()
  const carried = (back ? [...round.elements].reverse() : round.elements).flatMap(
    ({ index }) => points.get(index) ?? [],
  )
  const line = lineThrough(carried.length > 0 ? carried : ground.line.points, ground.line.closed)
  const arcs = new Map<number, Millimetres>()
  for (const { index } of back ? [...round.elements].reverse() : round.elements)
    if (points.has(index)) arcs.set(index, line.arcs[arcs.size]!)
  const begun = parts.find(({ element }) => element === null)
  const slot = begun && slots.get(begun)!
  return {
    located: {
      ...{ round, seats: [], elements, asides, edge: [...edge, ...sides], radius: 0 },
      ...{ corners: 0, cornerAngles: [], around: 2 * Math.PI, stacked: 0, stackedAt: [], petals: [] },
      ...{ extra: 0, length: 0, tight: 0 },
    },
    points,
    arcs,
    line,
    turned: slot
      ? Array.from({ length: skipped }, (_, k) =>
          from(slot.top, slot.outward, ((k + 0.5) / skipped) * Math.min(high, skipped * width)),
        )
      : [],
  }
}

/** How much room an element takes along its round; 0 for what lies on others. */
export function roomOf(element: WorkedElement, gauge: ResolvedGauge): Millimetres {
  const { role, count } = element
  if (role === 'slip') return ROOM.slip * gauge.width
  if (stands(element)) return Math.max(gauge.width, topWidth(element, gauge))
  const room: Readonly<Partial<Record<WorkedElement['role'], number>>> = {
    space: count < ROOM.hangsFrom ? ROOM.chain * count : ROOM.hangs,
    beginning: ROOM.chain,
    join: ROOM.join,
    stem: 1,
  }
  return (room[role] ?? 0) * gauge.width
}

/** What takes room along a round, in the order worked. */
function partsOf(round: WorkedRound, ground: Ground, skipped: number, gauge: ResolvedGauge): Part[] {
  const { width } = gauge
  const nothing = { height: 0, at: null, found: null }
  const counts = round.elements.some(({ role, standing }) => role === 'beginning' && standing)
  const runs = runsOf(round.elements.filter((element) => stands(element) && !isOnStem(element, round)))
  const begun: Part[] =
    skipped > 0 && !counts ? [{ element: null, width: ROOM.chain * width, ...nothing }] : []
  const again = comeAgain(runs)
  return [
    ...begun,
    ...round.elements.flatMap((element): Part[] => {
      if (isOnStem(element, round)) return []
      if (stands(element)) {
        const found = again.has(element) ? [] : element.into.flatMap((place) => ground.at(place) ?? [])
        const own = found.length > 0 ? mean(found.map(({ arc }) => arc)) : null
        const at = own !== null && runs.get(element)!.length > 1 ? turnNear(own, ground, width) : own
        const isSlip = element.role === 'slip'
        const high = isSlip ? gauge.height('sl st') : heightOf(element, gauge)
        // Beside a chain heights count from its middle.
        const beside = element.into[0]?.kind === 'chain' ? BESIDE_CHAIN * width : 0
        return [
          {
            element,
            width: roomOf(element, gauge),
            height: Math.max(gauge.height('sl st'), high - beside),
            at,
            found: found[0] ?? null,
          },
        ]
      }
      const own = element === beginsOn(round) ? 0 : roomOf(element, gauge)
      return own === 0 ? [] : [{ element, width: own, ...nothing }]
    }),
  ]
}

/** Stitches that go into a place again which the round has long left, so that it tells nothing of where they stand. */
function comeAgain(runs: ReadonlyMap<WorkedElement, WorkedElement[]>): ReadonlySet<WorkedElement> {
  const all = [...new Set(runs.values())]
  const seen = new Set<string>()
  // A round may end in the place that it began in.
  return new Set(
    all.slice(0, -1).flatMap((run) => {
      const [place] = run[0]!.into
      const key = `${place?.round} ${place?.index}`
      const isAgain = place?.kind === 'stitch' && seen.has(key)
      seen.add(key)
      return isAgain ? run : []
    }),
  )
}

/** Whether a round runs against its line. */
function runsBack(parts: readonly Part[]): boolean {
  const arcs = parts.flatMap(({ at }) => (at === null ? [] : [at]))
  let [on, back] = [0, 0]
  for (let i = 1; i < arcs.length; i++) {
    if (arcs[i]! > arcs[i - 1]!) on++
    if (arcs[i]! < arcs[i - 1]!) back++
  }
  return back > on
}

/** Standing elements one after the other in one place, by each of them. */
function runsOf(standing: readonly WorkedElement[]): Map<WorkedElement, WorkedElement[]> {
  const key = ({ into }: WorkedElement): string =>
    into.map((place) => `${place.kind} ${place.round} ${place.index} ${place.cell} ${place.opposite}`).join()
  const runs = new Map<WorkedElement, WorkedElement[]>()
  standing.forEach((element, i) => {
    const before = standing[i - 1]
    const isTold = element.into.some(({ kind }) => kind !== 'unknown')
    const open = before && isTold && key(before) === key(element) ? runs.get(before)! : []
    open.push(element)
    runs.set(element, open)
  })
  return runs
}

/** The corner beside a place, around which a group there goes; the place itself where there is none. */
function turnNear(arc: Millimetres, { line, corners }: Ground, width: Millimetres): Millimetres {
  const off = (corner: Millimetres): Millimetres =>
    Math.min(Math.abs(corner - arc), line.length - Math.abs(corner - arc))
  return corners.find((corner) => off(corner) <= BESIDE_CORNER * width) ?? arc
}

/** Where each standing element begins: in one stitch together, in one space or around an end side by side. */
function basesOf(
  round: WorkedRound,
  own: ReadonlyMap<number, { part: Part; slot: { at: Millimetres; top: Point } }>,
  ground: Ground,
  back: boolean,
  width: Millimetres,
): Map<number, Point> {
  const bases = new Map<number, Point>()
  const standing = round.elements.filter((element) => own.has(element.index) && stands(element))
  const runs = runsOf(standing)
  for (const element of standing) {
    const run = runs.get(element)!
    const { part, slot } = own.get(element.index)!
    const kind = element.into[0]?.kind
    const step = kind === 'space' || kind === 'gap' ? IN_SPACE * width : 0
    const aside = (run.indexOf(element) - (run.length - 1) / 2) * step * (back ? -1 : 1)
    const onLine = element.into.length > 1 || !part.found
    // Around the end of a chain each begins below its own top.
    const around = kind === 'chain' && run.length > 1
    const out = outwardAt(ground.line, slot.at, width)
    const { point, foot } = part.found ?? { point: alongLine(ground.line, slot.at) }
    const base = foot ? middleOf(foot, point) : point
    bases.set(
      element.index,
      around
        ? alongLine(ground.line, nearestOn(ground.line, slot.top))
        : onLine
          ? alongLine(ground.line, slot.at)
          : { x: base.x - out.y * aside, y: base.y + out.x * aside },
    )
  }
  return bases
}

/** Chains of the space that a stitch is worked into, and how it leans over them. */
function overOf(
  found: At | null,
  base: Point,
  top: Point,
  ground: Ground,
  width: Millimetres,
): LocatedElement['over'] {
  if (!found?.chains) return undefined
  const out = outwardAt(ground.line, found.arc, width)
  const lean = Math.atan2(top.x - base.x, base.y - top.y) - Math.atan2(out.x, -out.y)
  return { chains: found.chains, lean }
}

/** Chains that close a round ("sc in last ch, ch 2, sl st in first sc") lie beyond its end, as a tip. */
function closingChains(
  element: WorkedElement,
  [before, after]: readonly [Point, Point],
  up: Millimetres,
): LocatedElement {
  // The end of a leaf lies farthest from its middle.
  const middle = middleOf(before, after)
  const away = up / (Math.hypot(middle.x, middle.y) || 1)
  const point = (share: number): Point => {
    const out = away * (1 + POINTED * (1 - Math.abs(2 * share - 1)))
    return {
      x: before.x + (after.x - before.x) * share + middle.x * out,
      y: before.y + (after.y - before.y) * share + middle.y * out,
    }
  }
  const chain = Array.from({ length: element.count }, (_, k) => point((k + 0.5) / element.count))
  return { element, base: before, top: point(0.5), chain, end: point(1 - 0.5 / element.count + JOIN_BEHIND) }
}

/** Chains between two stitches: few of them close over their tops, more in a loop. */
function loopBetween(
  element: WorkedElement,
  before: Point,
  after: Point,
  outward: Point,
  width: Millimetres,
): LocatedElement {
  const arch = archBetween(before, after, element.count * width)
  const clear = element.count <= FEW_CHAINS ? OVER_TOPS * width : 0
  const point = (share: number): Point => {
    const own = archAt(arch, share, outward).point
    return { x: own.x + outward.x * clear, y: own.y + outward.y * clear }
  }
  const chain = Array.from({ length: element.count }, (_, k) => point((k + 0.5) / element.count))
  return { element, base: before, top: point(0.5), chain, end: after }
}
