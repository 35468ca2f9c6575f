/**
 * The motif in the hand as numbers: where its petals' numbers stand, its meeting points, its dimension lines and
 * its scale. One unit is a hundredth of the motif's half size, so that type and lines look alike for all.
 */
import type { Anchor, MotifAccount, PlacedMotif, Plan, Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { dimensionPath, tickEnd } from '../../src-core/figures/dimension-line'
import type { Path } from '../../src-core/figures/figure'
import { motifDimensions } from '../../src-core/figures/motif-figure'
import { keptHalf, motifParts } from '../../src-core/figures/motif-parts'
import { linePath, pathData } from '../../src-core/figures/path'
import { placePoint } from '../../src-core/geometry/place'
import { reachOf, turnPoint } from '../../src-core/geometry/points'
import { listOf } from '../../src-core/joins/words'
import { pieceAt } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { numberedPlaces, placeOn } from '../../src-core/motif/numbering'
import { layingOfAccount } from '../../src-core/motif/ruler'
import { radians } from '../../src-core/units/quantity'
import { layerInk } from './yarn-inks'
import type { LayerInk } from './yarn-inks'

/** Half the size of every motif, in units. */
export const HALF = 100
/** Distance of the numbers from the tips, and of a dimension line from the motif. */
const NUMBER_OFF = 17
const LINE_OFF = 42
/** An upright line beside the motif has its number level on it: it needs more room. */
const BESIDE = 80
/** Room round the motif: bare, with dimension lines, beside a level number, with a scale under it. */
const ROOM = { bare: 34, lines: 60, level: 52, ruler: 36 } as const
/** What ends a dimension line. */
const TICK = tickEnd(5)
/** More numbers than this would run into each other: every second, third… one stands. */
const MOST_NUMBERS = 24

interface PictureLayer {
  readonly path: string
  readonly ink: LayerInk
  /** Lines on it. */
  readonly lines: string
}

const BARE: LayerInk = { fill: 'var(--hairline)', line: 'var(--edge)', text: 'var(--ink)' }

/** Units per mm. */
const unitsOf = (account: MotifAccount): number => HALF / (reachOf(account.outline) || 1)

/**
 * How a motif lies: turned clockwise by degrees, mirrored before that where its wrong side is up; the petal that
 * it is counted from, where that is not petal 1; of a half motif, at which end of its row it stands.
 */
type Lie = Pick<PlacedPiece, 'turn' | 'flipped' | 'firstPetal' | 'side'>

/** Whether a place of a motif as it lies is there: a half motif has those of one side of its cut. */
const isKept = ({ x }: Point, { side }: Lie): boolean =>
  !side || (side === 'left' ? x >= -ON_CUT : x <= ON_CUT)

/** How far beyond the cut a place may lie and still be on the half, in mm. */
const ON_CUT = 0.01

const laid = (point: Point, lie: Lie): Point => placePoint(point, { ...lie, x: 0, y: 0 })

/** The motif's layers in the colours of a colourway (without one: of the first that is made for it). */
export function pictureLayers(
  project: Project,
  account: MotifAccount,
  colourway: string | undefined,
  lie: Lie,
): PictureLayer[] {
  const units = unitsOf(account)
  const ways = project.colourways ?? []
  const way = ways.find(({ id }) => id === colourway) ?? ways.find(({ motif }) => motif === account.id)
  const colourOf = (slot: string) => project.yarns?.find(({ id }) => id === way?.yarns?.[slot])?.colour
  const last = account.layers.length - 1
  const half = lie.side && keptHalf({ side: lie.side })
  const { layers, petals, rounds } = motifParts(account, { ...lie, half, scale: units })
  return account.layers.map(({ slot }, i) => {
    const colour = colourOf(slot)
    return {
      path: pathData(layers[i]!, 2),
      ink: colour ? layerInk(colour, '#cccccc') : BARE,
      lines: pathData([...(i === 0 ? petals : []), ...(i === last ? rounds : [])], 2),
    }
  })
}

interface PlacedNumber {
  readonly text: string
  readonly x: number
  readonly y: number
}

/** Numbers of petals or corners, in working direction from the first, outside their tips. */
export function petalNumbers(account: MotifAccount, lie: Lie): PlacedNumber[] {
  const places = numberedPlaces(account, lie).filter(({ anchor }) => isKept(laid(anchor, lie), lie))
  const every = Math.ceil(places.length / MOST_NUMBERS)
  const units = unitsOf(account)
  return places
    .filter((_, i) => i % every === 0)
    .map(({ anchor, number }) => {
      const at = laid(anchor, lie)
      const radius = Math.hypot(at.x, at.y) || 1
      const out = (radius * units + NUMBER_OFF) / radius
      return { text: String(number), x: at.x * out, y: at.y * out }
    })
}

export interface MeetingPoint {
  readonly x: number
  readonly y: number
  /** This motif was there first: later ones join into it. */
  readonly hosts: boolean
  /** For ears and pointers: "petal 3 to motif 54". */
  readonly words: string
}

/** The join points of a half motif or filler, on its own outline. */
function additionPoints(
  account: MotifAccount,
  plan: Plan,
  placed: PlacedMotif,
  units: number,
): MeetingPoint[] {
  const step = plan.order.find(({ motif }) => motif === placed.id)
  return (step?.joins ?? []).flatMap((join): MeetingPoint[] => {
    const anchor = account.anchors.find(({ id }) => id === join.anchor)
    if (!anchor) return []
    const at = turnPoint(anchor, radians(placed.turn))
    return [{ x: at.x * units, y: at.y * units, hosts: false, words: join.words }]
  })
}

/** The meeting points of a placed motif, half motif or filler, on its own outline. */
export function meetingPoints(account: MotifAccount, plan: Plan, placed: PlacedMotif): MeetingPoint[] {
  const units = unitsOf(account)
  if (plan.garland) return fastenings(plan, placed, units)
  if (pieceAt(plan, placed.id)?.kind !== 'motif') return additionPoints(account, plan, placed, units)
  const anchors = new Map<string, Anchor>(account.anchors.map((anchor) => [anchor.id, anchor]))
  const labels = new Map(plan.motifs.map(({ id, label }) => [id, label]))
  return plan.joins.flatMap((join): MeetingPoint[] => {
    const own = join.members.find(({ motif }) => motif === placed.id)
    if (!own) return []
    const anchor = anchors.get(own.anchor)
    if (!anchor) return []
    const at = turnPoint(anchor, radians(placed.turn))
    const others = join.members
      .filter(({ motif }) => motif !== placed.id)
      .map(({ motif }) => labels.get(motif) ?? motif)
    const words = `${placeOn(account, placed, own.anchor)} to motif ${listOf(others)}`
    return [{ x: at.x * units, y: at.y * units, hosts: join.host === placed.id, words }]
  })
}

/** Where something on a cord is fastened to it. */
function fastenings(plan: Plan, placed: PlacedMotif, units: number): MeetingPoint[] {
  let motifs = -1
  const place = plan.motifs.findIndex(({ id }) => id === placed.id)
  const item = plan.garland?.items.find(({ motif }) => motif !== '' && ++motifs === place)
  return (item?.held ?? []).map(({ x, y }) => ({
    x: (x - placed.x) * units,
    y: (y - placed.y) * units,
    hosts: false,
    words: item!.words,
  }))
}

export interface PictureLine {
  readonly from: Point
  readonly to: Point
  /** Where the number stands. */
  readonly at: Point
  /** Path data of the line with its ends, and of the hairlines to it from the motif. */
  readonly line: string
  readonly leaders: string
}

interface PictureLines {
  /** Over the tips (corners, the whole round; the length of a leaf). */
  readonly tips: PictureLine
  /** Between petals (side to side; the width of a leaf); null for a round. */
  readonly valleys: PictureLine | null
  /** Where the ruler lies on the motif itself, where it does not lie across: from a tip, over the centre. */
  readonly laid: readonly (readonly [Point, Point])[]
  /** Radii of the circles that the two measures are the diameters of; none for a leaf. */
  readonly circles: readonly number[]
}

/** The measures of a motif as dimension lines, as paper has them, each where its number can be typed. */
export function pictureLines(account: MotifAccount): PictureLines {
  const units = unitsOf(account)
  const [lead, second] = motifDimensions(account, 'US')
    .map(({ span }) => [span[0] * units, span[1] * units] as const)
    .reverse()
  const [tips, valleys] = [lead![1], second?.[1] ?? 0]
  if (account.shape === 'leaf')
    return {
      tips: upright(...lead!, -valleys - BESIDE),
      valleys: level(valleys, -tips - LINE_OFF),
      laid: [],
      circles: [],
    }
  if (layingOfAccount(account) !== 'across')
    return {
      tips: upright(...lead!, -HALF - BESIDE),
      valleys: upright(...second!, HALF + BESIDE),
      laid: [
        [
          { x: 0, y: lead![0] },
          { x: 0, y: valleys },
        ],
      ],
      circles: [-lead![0], valleys],
    }
  return {
    tips: level(tips, -HALF - LINE_OFF),
    valleys: second ? level(valleys, HALF + LINE_OFF) : null,
    laid: [],
    circles: second ? [tips, valleys] : [],
  }
}

/** A line from one place to another, with hairlines to it from the motif: from these places. */
function lineBeside(from: Point, to: Point, motif: readonly [Point, Point]): PictureLine {
  const data = (path: Path): string => pathData(path, 2)
  const leaders = [
    linePath(motif[0].x, motif[0].y, from.x, from.y),
    linePath(motif[1].x, motif[1].y, to.x, to.y),
  ]
  return {
    ...{ from, to, at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 } },
    line: data(dimensionPath(from, to, { end: TICK })),
    leaders: data(leaders.flat()),
  }
}

const level = (half: number, y: number): PictureLine =>
  lineBeside({ x: -half, y }, { x: half, y }, [
    { x: -half, y: 0 },
    { x: half, y: 0 },
  ])

const upright = (top: number, bottom: number, x: number): PictureLine =>
  lineBeside({ x, y: top }, { x, y: bottom }, [
    { x: 0, y: top },
    { x: 0, y: bottom },
  ])

interface Ruler {
  readonly y: number
  readonly from: number
  readonly to: number
  readonly marks: readonly { readonly x: number; readonly long: boolean }[]
  /** What its whole length is: "8 cm", "3 in". */
  readonly words: string
}

/** A scale under the motif, about as long as the motif is wide, in whole centimetres or inches. */
export function rulerUnder(account: MotifAccount, system: 'metric' | 'imperial', below: number): Ruler {
  const units = unitsOf(account)
  const whole = system === 'metric' ? 10 : 25.4
  const count = Math.max(1, Math.floor((2 * HALF) / units / whole))
  const parts = system === 'metric' ? 2 : 4
  const half = (count * whole * units) / 2
  // Fine marks only where they keep apart.
  const each = (whole * units) / parts >= 4 ? parts : 1
  const marks = Array.from({ length: count * each + 1 }, (_, i) => ({
    x: -half + (i * whole * units) / each,
    long: i % each === 0,
  }))
  return { y: below, from: -half, to: half, marks, words: `${count} ${system === 'metric' ? 'cm' : 'in'}` }
}

interface PictureBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** The room that a picture takes, and how far under the motif a scale stands. */
export function pictureBox(
  account: MotifAccount,
  lines: boolean,
  ruler: boolean,
): { box: PictureBox; rulerAt: number } {
  const leaf = account.shape === 'leaf'
  const odd = layingOfAccount(account) !== 'across'
  const below = HALF + (lines && !leaf && !odd && account.shape !== 'round' ? ROOM.lines : ROOM.bare)
  const above = HALF + (lines && !odd ? ROOM.lines : ROOM.bare)
  const beside = (odd ? HALF : (account.overValleys / 2) * unitsOf(account)) + BESIDE
  const side = Math.max(HALF, (leaf || odd) && lines ? beside : 0) + (odd && lines ? ROOM.level : ROOM.bare)
  const height = above + below + (ruler ? ROOM.ruler : 0)
  return { box: { left: -side, top: -above, width: 2 * side, height }, rulerAt: below + 10 }
}
