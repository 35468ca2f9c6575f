/**
 * M20–M25, M19: the lattice on which motifs stand. Column pitch and row pitches come from touching distances of the
 * turned outlines, grown by half of the rule's gap so that the gap is kept in every direction. With several motifs a
 * pitch is the smallest at which no two of those that lie near each other overlap; a motif put in by hand moves the
 * rows that it reaches, and no others.
 */
import type { Point } from '../../shared-types/plan'
import { boxOf, reachOf, turnOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { growOne } from '../geometry/polygons'
import { farProfile, profileDistance } from '../geometry/touching'
import type { Profile } from '../geometry/touching'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { kindAt, rowPeriod, uniform } from './pattern'
import type { Pattern } from './pattern'

export interface Lattice {
  /** From one motif of a row to the next. */
  readonly column: Millimetres
  /** From an odd row (1, 3, …) to the even one under it, and from an even row to the odd one under it. */
  readonly rows: readonly [toEven: Millimetres, toOdd: Millimetres]
  /** From each row to the one under it, from row 1 on; they repeat. */
  readonly pitches: readonly Millimetres[]
  /** How much farther than that the row under it stands, by row: what motifs put in by hand take. */
  readonly extra: ReadonlyMap<number, Millimetres>
  /** How far even rows are shifted to the right. */
  readonly shift: Millimetres
  /** Turn of odd and of even rows. */
  readonly turns: readonly [Degrees, Degrees]
  /** Outlines of each kind of motif on odd and on even rows, turned, without the gap. */
  readonly shapes: readonly Shape[]
  readonly pattern: Pattern
  /** Towards which neighbours motifs lie that were put in by hand, besides those of the lattice. */
  readonly beside: readonly Point[]
}

export type Shape = readonly [odd: Outline, even: Outline]

/** Two motifs that lie near each other, one of which was put in by hand; in the middle of a block rows may be halves. */
export interface OwnPair {
  readonly row: number
  readonly down: number
  /** Half column pitches from the first to the second, to the right. */
  readonly across: number
  readonly first: number
  readonly second: number
  /** One of them takes a block of places, in whose rows the other stands: they lie beside each other. */
  readonly isBeside: boolean
}

/** More than one kind of motif. */
export interface Mixture {
  readonly pattern: Pattern
  /** Air between outlines of two kinds, in mm. */
  readonly gapOf: (one: number, other: number) => Millimetres
  /** Pairs within so many half columns and rows of each other. */
  readonly ownPairs: (halves: number, rows: number) => readonly OwnPair[]
}

const EAST: Point = { x: 1, y: 0 }
const WEST: Point = { x: -1, y: 0 }
/** Cross coordinates of a slide southwards run to the west, hence the signs of `lateral` below. */
const SOUTH: Point = { x: 0, y: 1 }
const NORTH: Point = { x: 0, y: -1 }

/** The outline of a placed motif, about its middle. */
export const outlineAt = (
  { shapes }: Pick<Lattice, 'shapes'>,
  { kind, even }: { readonly kind: number; readonly even: boolean },
): Outline => shapes[kind]![even ? 1 : 0]

/** From a row to the one under it. */
export const pitchUnder = (
  { pitches, extra }: Pick<Lattice, 'pitches' | 'extra'>,
  row: number,
): Millimetres => pitches[(row - 1) % pitches.length]! + (extra.get(row) ?? 0)

/** Far profiles of one turned and grown outline in the four directions that rows need. */
interface Sides {
  readonly east: Profile
  readonly west: Profile
  readonly south: Profile
  readonly north: Profile
  readonly width: Millimetres
}

function sidesOf(outline: Outline): Sides {
  const box = boxOf(outline)
  return {
    east: farProfile(outline, EAST),
    west: farProfile(outline, WEST),
    south: farProfile(outline, SOUTH),
    north: farProfile(outline, NORTH),
    width: 2 * Math.max(Math.abs(box.left), Math.abs(box.right)),
  }
}

/** What stands at a place: its kind, and whether it lies as even rows do. */
interface Standing {
  readonly kind: number
  readonly even: boolean
}

/** Touching distances between the motifs of a lattice, each worked out once. */
class Distances {
  readonly #sides = new Map<string, Sides>()
  readonly #along = new Map<string, Millimetres>()

  constructor(
    readonly shapes: readonly Shape[],
    private readonly gapOf: Mixture['gapOf'],
  ) {}

  #sidesOf({ kind, even }: Standing, gap: Millimetres): Sides {
    const outline = outlineAt(this, { kind, even })
    // Rows that lie alike share their profiles.
    const key = `${kind} ${even && outline !== this.shapes[kind]![0] ? 1 : 0} ${gap}`
    let sides = this.#sides.get(key)
    if (!sides) this.#sides.set(key, (sides = sidesOf(growOne(outline, gap / 2))))
    return sides
  }

  /** From one motif to another that lies straight to the right of it. */
  along(one: Standing, other: Standing): Millimetres {
    const key = keyOf(one, other)
    let told = this.#along.get(key)
    if (told === undefined) {
      const gap = this.gapOf(one.kind, other.kind)
      const [a, b] = [this.#sidesOf(one, gap), this.#sidesOf(other, gap)]
      this.#along.set(key, (told = profileDistance(a.east, b.west, 0) ?? 0))
    }
    return told
  }

  /** From one motif down to another that is set off to the right; 0 where they pass each other. */
  down(one: Standing, other: Standing, right: Millimetres): Millimetres {
    const gap = this.gapOf(one.kind, other.kind)
    return profileDistance(this.#sidesOf(one, gap).south, this.#sidesOf(other, gap).north, -right) ?? 0
  }

  /** Farther to the side than this motifs of two rows pass each other. */
  widest(even: boolean, lower: boolean): Millimetres {
    let widest = 0
    this.shapes.forEach((_, one) =>
      this.shapes.forEach((_, other) => {
        const gap = this.gapOf(one, other)
        const upper = this.#sidesOf({ kind: one, even }, gap).width
        widest = Math.max(widest, (upper + this.#sidesOf({ kind: other, even: lower }, gap).width) / 2)
      }),
    )
    return widest
  }
}

const keyOf = (one: Standing, other: Standing): string =>
  `${one.kind} ${one.even ? 1 : 0} ${other.kind} ${other.even ? 1 : 0}`

/**
 * The lattice for rows of one outline or of several, see `Mixture`. `offset`: even rows are shifted by half a pitch;
 * `turn` and `alternateTurn` in degrees clockwise, the latter added on even rows; `gap` in mm between outlines.
 */
export function latticeOf(
  outlines: Outline | readonly Outline[],
  offset: boolean,
  turn: Degrees,
  alternateTurn: Degrees,
  gap: Millimetres,
  mixture?: Mixture,
): Lattice {
  const all = isOne(outlines) ? [outlines] : outlines
  const shapes = all.map((outline): Shape => {
    const odd = turnOutline(outline, radians(turn))
    return [odd, alternateTurn === 0 ? odd : turnOutline(outline, radians(turn + alternateTurn))]
  })
  const pattern = mixture?.pattern ?? uniform(offset ? 'offset-rows' : 'straight-rows')
  const distances = new Distances(shapes, mixture?.gapOf ?? (() => gap))
  const period = rowPeriod(pattern)
  const rows = Array.from({ length: period }, (_, i) => i + 1)
  const pairsAt = standingPairs(pattern, offset)
  let column = 0
  for (const row of rows)
    for (let step = 1; step <= pattern.count; step++)
      for (const [one, other] of pairsAt(row, 0, step))
        column = Math.max(column, distances.along(one, other) / step)
  const reach = ownReach(shapes, column)
  const own = mixture?.ownPairs(reach, reach) ?? []
  const standing = (pair: OwnPair): [Standing, Standing] => [
    { kind: pair.first, even: isEven(pattern, Math.floor(pair.row)) },
    { kind: pair.second, even: isEven(pattern, Math.floor(pair.row + pair.down)) },
  ]
  for (const pair of own) {
    if (pair.down !== 0 && !pair.isBeside) continue
    const [left, right] = pair.across > 0 ? standing(pair) : standing(pair).reverse()
    column = Math.max(column, distances.along(left!, right!) / (Math.abs(pair.across) / 2))
  }

  const shift = offset ? column / 2 : 0
  /** Distance at which a row first touches the one `down` rows above it, over every column that can reach it. */
  const rowDistance = (row: number, down: number): Millimetres => {
    const right = (beginsAt(offset, row + down) - beginsAt(offset, row)) * shift
    const widest = distances.widest(isEven(pattern, row), isEven(pattern, row + down))
    let most = 0
    for (let k = Math.ceil((-widest - right) / column); k * column + right <= widest; k++)
      for (const [one, other] of pairsAt(row, down, k))
        most = Math.max(most, distances.down(one, other, k * column + right))
    return most
  }
  const pitches = rows.map((row) => rowDistance(row, 1))
  // A row must clear the row above it and, where motifs reach through, the one above that.
  const areAlike = pattern.count === 1 && shapes[0]![0] === shapes[0]![1]
  for (const row of areAlike ? [1] : rows) {
    const [here, next] = [row - 1, row % period]
    const lacking = rowDistance(row, 2) - pitches[here]! - pitches[next]!
    if (lacking > 0) pitches[row % 2 === 1 ? next : here]! += lacking
  }
  const extra = extraRows(own, pitches, (pair) =>
    distances.down(...standing(pair), (pair.across * column) / 2),
  )
  const lattice = {
    column,
    rows: [pitches[0]!, pitches[1]!] as const,
    pitches,
    extra,
    shift,
    turns: [turn, turn + alternateTurn] as const,
    shapes,
    pattern,
  }
  return { ...lattice, beside: besideOf(own, lattice) }
}

const isOne = (outlines: Outline | readonly Outline[]): outlines is Outline => !Array.isArray(outlines[0])

const isEven = ({ arrangement }: Pattern, row: number): boolean => arrangement !== 'rings' && row % 2 === 0

/** Half column pitches from which the places of a row are counted. */
const beginsAt = (offset: boolean, row: number): number => (offset && row % 2 === 0 ? 1 : 0)

/** Which motifs the pattern has `down` rows apart and `step` whole columns to the right of each other, each once. */
function standingPairs(pattern: Pattern, offset: boolean) {
  const kinds = Array.from({ length: pattern.count }, (_, kind) => kind)
  // Round and round the middle every two kinds can come to lie beside each other.
  const isAny = pattern.arrangement === 'rings' && pattern.by === 'row'
  // Rings count from their middle; a pattern that is the same everywhere may begin anywhere.
  const endless = { ...pattern, rings: 0 }
  return (row: number, down: number, step: number): [Standing, Standing][] => {
    const [even, lower] = [isEven(pattern, row), isEven(pattern, row + down)]
    if (isAny)
      return kinds.flatMap((kind) =>
        kinds.map((other): [Standing, Standing] => [
          { kind, even },
          { kind: other, even: lower },
        ]),
      )
    return kinds.map((place): [Standing, Standing] => {
      const from = 2 * place + beginsAt(offset, row)
      const to = 2 * (place + step) + beginsAt(offset, row + down)
      return [
        { kind: kindAt(endless, row, from), even },
        { kind: kindAt(endless, row + down, to), even: lower },
      ]
    })
  }
}

/** Most columns and rows that motifs put in by hand are looked at across: hands do not make larger ones. */
const MOST_ACROSS = 48

/** Half columns (or rows) within which motifs can touch each other. */
function ownReach(shapes: readonly Shape[], column: Millimetres): number {
  const farthest = Math.max(...shapes.flat().map(reachOf))
  return Math.min(MOST_ACROSS, 2 * Math.ceil((2 * farthest) / Math.max(column, 1e-6)) + 2)
}

/** How much farther rows stand for motifs that were put in by hand, spread over all the rows between two of them. */
function extraRows(
  own: readonly OwnPair[],
  pitches: readonly Millimetres[],
  distanceOf: (pair: OwnPair) => Millimetres,
): Map<number, Millimetres> {
  const extra = new Map<number, Millimetres>()
  const below = own
    .filter(({ down, isBeside }) => down > 0 && !isBeside)
    .sort((a, b) => a.down - b.down || a.row - b.row)
  for (const pair of below) {
    const there = rowsBetween({ pitches, extra }, pair.row, pair.row + pair.down)
    const lacking = (distanceOf(pair) - there) / pair.down
    if (lacking > 0)
      for (let row = Math.floor(pair.row); row < pair.row + pair.down; row++)
        extra.set(row, (extra.get(row) ?? 0) + lacking)
  }
  return extra
}

/** From the middle of one row to that of another one below it; half rows lie halfway between two. */
function rowsBetween(lattice: Pick<Lattice, 'pitches' | 'extra'>, from: number, to: number): Millimetres {
  let between = 0
  for (let row = Math.floor(from); row < to; row++)
    between += pitchUnder(lattice, row) * (Math.min(row + 1, to) - Math.max(row, from))
  return between
}

/** How far short of touching two motifs may fall, as a share of their size, and still face each other. */
const FACING = 0.15

function besideOf(own: readonly OwnPair[], lattice: Omit<Lattice, 'beside'>): Point[] {
  const found = new Map<string, Point>()
  const reaches = lattice.shapes.map(([odd]) => reachOf(odd))
  for (const { row, down, across, first, second } of own) {
    const x = (across * lattice.column) / 2
    const y = rowsBetween(lattice, row, row + down)
    const touching = reaches[first]! + reaches[second]!
    if (Math.hypot(x, y) > touching * (1 + FACING)) continue
    const key = `${x.toFixed(3)} ${y.toFixed(3)}`
    if (!found.has(key)) found.set(key, { x, y })
  }
  return [...found.values()]
}
