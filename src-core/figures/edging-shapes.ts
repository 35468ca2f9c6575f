/**
 * Written rounds of an edging as they are: shells as fans, picots as loops, scallops as waves. Their stitches stand
 * where the account of their words has them, along the plan's own lines.
 */
import type { EdgingAccount, EdgingLoop, Plan, Point } from '../../shared-types/plan'
import { readLoop } from '../edging/reading'
import type { BorderStitch, LoopRound } from '../edging/reading'
import { writtenRounds } from '../edging/written'
import { boxOf, distance } from '../geometry/points'
import { PICOT } from '../motif/rounds/constants'
import { blanketOf } from '../plans/layouts'
import { band, trackOf } from './edging-track'
import type { Track, Way } from './edging-track'

/** One round of an edging, in plan mm. */
export interface DrawnRound {
  /** Id of its yarn. */
  readonly yarn: string
  /** Its outer outlines: one for each line, closed. */
  readonly outlines: readonly (readonly Point[])[]
  /** The stitches of its fans, each from where it stands to its top. */
  readonly fans: readonly (readonly (readonly [Point, Point])[])[]
  readonly picots: readonly DrawnPicot[]
}

export interface DrawnPicot extends Point {
  /** The way it points, clockwise from 12 o'clock. */
  readonly angle: number
}

export interface EdgingShapes {
  /** From the outermost: each covers the middle of the one before. */
  readonly rounds: readonly DrawnRound[]
  /** mm. A stitch's width; how high a picot stands. */
  readonly width: number
  readonly picot: number
}

/**
 * Half of the widest angle that a fan opens to, 65°; from how many stitches in one place, and how many stitch widths
 * high, it is one; by how many its outer ones stand nearer than side by side (ours).
 */
const FAN = { half: (65 * Math.PI) / 180, least: 3, tall: 1.2, inner: 0.4 } as const
/** Stitches that short ones in one place stand apart at their tops (ours). */
const SPREAD = 0.5
/** Parts that an arch of chains and the top of a fan are drawn in. */
const PARTS = 4

/** Where the top of a stitch is: along in stitches of the set-up round, and how high. */
interface Spot {
  readonly from: number
  readonly along: number
  readonly height: number
}

/** What a round is drawn on. */
interface Ground {
  readonly track: Track
  /** mm above the base of the track. */
  readonly base: number
  /** Stitches of the set-up round. */
  readonly around: number
  /** mm of a stitch. */
  readonly width: number
  readonly heights: NonNullable<EdgingAccount['gauge']>['heights']
}

interface Top extends Spot {
  readonly stitch: BorderStitch
  /** In a fan: how far it leans, and how long it is. */
  readonly lean?: { readonly angle: number; readonly reach: number }
}

/** What was drawn along the lines of a plan, and what of. */
const known = new WeakMap<Plan['edgingLines'], { readonly key: string; readonly shapes: EdgingShapes }>()

/** The shapes of a plan's written rounds, the same ones as long as they stay as they are; null without any. */
export function edgingShapes(plan: Plan): EdgingShapes | null {
  const { edging, edgingLines, settled } = plan
  if (!edging?.loops || !edging.gauge || edgingLines.length === 0) return null
  const { loops, rounds, gauge } = edging
  const key = JSON.stringify([
    loops,
    rounds.map(({ yarn, height }) => [yarn, height]),
    gauge,
    settled.terms,
    settled.hand,
  ])
  let drawn = known.get(edgingLines)
  if (drawn?.key !== key) {
    const written = writtenRounds(blanketOf(settled)?.edging)
    const works = written.map(({ work }) => work)
    const isRound = plan.round !== undefined
    const { terms, hand } = settled
    const way = { edgingLines, isRound, terms, hand, special: written[0]?.special ?? '' }
    known.set(edgingLines, (drawn = { key, shapes: shapesAlong(way, works, edging, loops) }))
  }
  return drawn.shapes
}

/** The shapes of written rounds along lines. */
export function shapesAlong(
  way: Way,
  works: readonly string[],
  edging: Pick<EdgingAccount, 'rounds' | 'yarn' | 'gauge' | 'multiple'>,
  loops: readonly EdgingLoop[],
): EdgingShapes {
  const plain = edging.rounds.length - works.length
  const setUp = edging.rounds.slice(0, plain).reduce((sum, { height }) => sum + height, 0)
  const drawn = works.map((_, i) => ({
    yarn: edging.rounds[plain + i]!.yarn,
    outlines: [] as Point[][],
    fans: [] as (readonly [Point, Point])[][],
    picots: [] as DrawnPicot[],
  }))
  const below: Point[][] = []
  for (const loop of loops) {
    const track = trackOf(way, loop, setUp)
    if (!track) continue
    below.push([...track.base])
    const { multiple } = edging
    const step = multiple?.by === 'round' ? multiple.of : undefined
    const { rounds } = readLoop(
      ...([works, loop.stitches, loop.marks, plain + 1, way.terms, step, way.special] as const),
    )
    drawLoop(rounds, track, loop, edging, plain, drawn)
  }
  const { width } = edging.gauge!
  const first = { yarn: edging.yarn, outlines: below, fans: [], picots: [] }
  return { rounds: [...drawn.reverse(), first], width, picot: PICOT * PICOT_CHAINS * width }
}

/** Chains of a picot as it is drawn. */
const PICOT_CHAINS = 3

/** Adds the rounds of one loop to what is drawn. */
function drawLoop(
  rounds: readonly LoopRound[],
  track: Track,
  loop: EdgingLoop,
  edging: Pick<EdgingAccount, 'rounds' | 'gauge'>,
  plain: number,
  drawn: { outlines: Point[][]; fans: (readonly [Point, Point])[][]; picots: DrawnPicot[] }[],
): void {
  let places: readonly number[] = Array.from({ length: loop.stitches }, (_, i) => i)
  let base = 0
  const foot = Array.from({ length: loop.stitches + 1 }, (_, i) => track.at(i, 0))
  let under: readonly Point[] = track.isOpen ? fromTheLeft(foot, track) : []
  const isLast = (i: number) => i === rounds.length - 1
  rounds.forEach((round, i) => {
    const into = drawn[i]!
    const ground = { track, base, around: loop.stitches, ...edging.gauge! }
    const tops = topsOf(round, places, ground)
    const worked = outlineOf(tops, ground)
    // An open end is as high where it closes as where it begins.
    const [first] = tops.filter(({ stitch }) => stitch.standing)
    if (track.isOpen && first) worked.push(track.at(loop.stitches, base + first.height))
    const outline = track.isOpen ? fromTheLeft(worked, track) : worked
    into.outlines.push(track.isOpen ? band(under, outline) : outline)
    under = outline
    for (const group of groupsOf(tops))
      if (group.length >= FAN.least && group[0]!.lean)
        into.fans.push(
          group.map((top) => [track.at(top.from, base), track.at(top.along, base + top.height)] as const),
        )
    tops.forEach(({ stitch, along, height }) => {
      if (stitch.role !== 'picot') return
      const out = track.out(along)
      into.picots.push({ ...track.at(along, base + height), angle: Math.atan2(out.x, -out.y) })
    })
    const byStitch = new Map(tops.map((top) => [top.stitch, top.along]))
    places = round.places.map((element) => byStitch.get(round.stitches[element]!) ?? 0)
    base += isLast(i) ? 0 : edging.rounds[plain + i]!.height
  })
}

/** What is worked along an open end from its first corner on, past where the map ends: told from where the map begins. */
function fromTheLeft(worked: Point[], { base, isLeftward }: Track): Point[] {
  const { left, right } = boxOf(base)
  const way = isLeftward ? worked.toReversed() : worked
  const jump = way.findIndex(({ x }, i) => i > 0 && way[i - 1]!.x - x > (right - left) / 2)
  if (jump < 0) return way
  const told = [...way.slice(jump), ...way.slice(0, jump)]
  return [{ x: left, y: told[0]!.y }, ...told, { x: right, y: told.at(-1)!.y }]
}

/** Stitches that stand in the same place, next to each other. */
function groupsOf(tops: readonly Top[]): Top[][] {
  const groups: Top[][] = []
  for (const top of tops) {
    if (top.stitch.role !== 'stitch' && top.stitch.role !== 'beginning') continue
    const last = groups.at(-1)
    const alike =
      last?.at(-1)?.stitch.group === top.stitch.group && Math.abs(last.at(-1)!.from - top.from) < 1e-6
    if (alike) last!.push(top)
    else groups.push([top])
  }
  return groups
}

/** Where every stitch of a round has its top. */
function topsOf({ stitches }: LoopRound, places: readonly number[], ground: Ground): Top[] {
  const { width, heights, around } = ground
  const worked = stitches.filter(({ role }) => role !== 'join' && role !== 'travel')
  const standing = worked.map((stitch): Top | null => {
    const feet = stitch.into.flatMap((place) => places[place] ?? [])
    if (feet.length === 0 || stitch.role === 'picot' || stitch.role === 'space') return null
    const low = Math.min(...feet)
    // A decrease over the beginning of the round stands on both sides of it.
    const level = feet.map((foot) => (foot - low > around / 2 ? foot - around : foot))
    const from = level.reduce((sum, foot) => sum + foot, 0) / level.length
    const height = stitch.role === 'slip' ? heights['sl st']! : (heights[stitch.stitch] ?? width)
    return { stitch, from, along: from, height }
  })
  const fans = fanned(
    standing.filter((top) => top !== null),
    ground,
  )
  let before: Top | null = null
  return worked.map((stitch, i): Top => {
    const own = standing[i]
    if (own) return (before = fans.get(stitch) ?? own)
    const after = standing.slice(i + 1, i + 40).find((top) => top !== null)
    const next = after ? (fans.get(after.stitch) ?? after) : null
    const last = before ?? next ?? { along: 0, height: 0 }
    const isBetween = stitch.role === 'space' && before !== null
    const end = next && next.along >= last.along ? next.along : around
    const along = isBetween ? (last.along + end) / 2 : last.along
    const chord = Math.max(0.5, end - last.along)
    const rise = isBetween ? Math.max(0, (stitch.count - chord) / 2) * width : 0
    return { stitch, from: along, along, height: last.height + rise }
  })
}

/** Stitches in one place spread like a fan. */
function fanned(tops: readonly Top[], ground: Ground): Map<BorderStitch, Top> {
  const { width } = ground
  const fans = new Map<BorderStitch, Top>()
  for (const group of groupsOf(tops)) {
    const count = group.length
    group.forEach((top, i) => {
      const share = (i - (count - 1) / 2) / Math.max(1, (count - 1) / 2)
      const reach = ((count - 1) / 2 - FAN.inner) * width
      const half = Math.min(FAN.half, Math.asin(Math.min(1, Math.max(0, reach / top.height))))
      const angle = share * half
      if (count < 2) return
      if (top.height <= FAN.tall * width) {
        const apart = SPREAD * (i - (count - 1) / 2)
        fans.set(top.stitch, { ...top, along: alongAt(top, apart * width, ground) })
        return
      }
      const lean = { angle, reach: top.height }
      const spot = { ...top, height: top.height * Math.cos(angle), lean }
      fans.set(top.stitch, { ...spot, along: alongAt(spot, top.height * Math.sin(angle), ground) })
    })
  }
  return fans
}

/**
 * How far along the top of a stitch is that stands so many mm beside the middle of its fan: where the line bends away
 * under it fewer stitches along than on a straight one.
 */
function alongAt(spot: Pick<Spot, 'from' | 'height'>, off: number, { track, base, width }: Ground): number {
  const { from, height } = spot
  const middle = track.at(from, base + height)
  const reach = (stitches: number) => distance(middle, track.at(from + stitches, base + height))
  const straight = off / width
  if (reach(straight) <= Math.abs(off) * STRAIGHT) return from + straight
  let [near, far] = [0, straight]
  for (let step = 0; step < HALVINGS; step++) {
    const half = (near + far) / 2
    if (reach(half) > Math.abs(off)) far = half
    else near = half
  }
  return from + near
}
/** A line is straight where it takes its stitches so much farther at most; how often the rest is halved. */
const STRAIGHT = 1.03
const HALVINGS = 8

/** Radians. By how much a line may bend between two tops that are joined by a straight line (by eye). */
const BEND = 0.2

/** What leads round a bend from one top to the next, at their heights. */
function roundBend(a: Spot, b: Spot, { track, base }: Ground): Point[] {
  const [from, to] = [track.out(a.along), track.out(b.along)]
  const turn = Math.acos(Math.min(1, Math.max(-1, from.x * to.x + from.y * to.y)))
  const parts = b.along > a.along ? Math.ceil(turn / BEND) : 1
  return Array.from({ length: Math.max(0, parts - 1) }, (_, i) => {
    const between = (one: number, other: number) => one + ((other - one) * (i + 1)) / parts
    return track.at(between(a.along, b.along), base + between(a.height, b.height))
  })
}

/** The outer outline of a round. */
function outlineOf(tops: readonly Top[], ground: Ground): Point[] {
  const { track, base } = ground
  const spots = spotsOf(tops, ground)
  const [first] = spots
  const last = spots.at(-1)
  const line = spots.flatMap((spot, i) => [
    ...(i > 0 ? roundBend(spots[i - 1]!, spot, ground) : []),
    track.at(spot.along, base + spot.height),
  ])
  if (track.isOpen || !first || !last) return line
  return [...line, ...roundBend(last, { ...first, along: first.along + ground.around }, ground)]
}

/** The tops of a round with what stands between them: the arches of chains, and the round edges of fans. */
function spotsOf(tops: readonly Top[], ground: Ground): Spot[] {
  let last: Top | null = null
  return tops.flatMap((top): Spot[] => {
    const { stitch, from, along, height, lean } = top
    const before = last
    if (stitch.role === 'picot' || (stitch.role === 'beginning' && !stitch.standing)) return []
    last = top
    if (stitch.role === 'space') {
      const [half, low] = [stitch.count / PARTS, before?.height ?? 0]
      return Array.from({ length: PARTS - 1 }, (_, part) => {
        const angle = (Math.PI * (part + 1)) / PARTS
        const at = along - half * Math.cos(angle)
        return { from: at, along: at, height: low + (height - low) * Math.sin(angle) }
      })
    }
    if (!before?.lean || !lean || before.stitch.group !== stitch.group) return [top]
    // The edge of a fan is round.
    const angle = (before.lean.angle + lean.angle) / 2
    const reach = (before.lean.reach + lean.reach) / 2
    const spot = { from, height: reach * Math.cos(angle) }
    return [{ ...spot, along: alongAt(spot, reach * Math.sin(angle), ground) }, top]
  })
}

/** A picot: a loop that stands on its point, `height` mm high, pointing up from (0, 0). */
export function picotLoop(height: number): Point[] {
  const half = height * 0.42
  return Array.from({ length: 16 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 16
    // Narrow where it is closed, round where it stands out.
    const lift = (1 - Math.cos(angle)) / 2
    return { x: half * Math.sin(angle) * (0.45 + 0.55 * lift) * 1.25, y: -height * lift }
  })
}
