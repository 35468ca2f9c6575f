/** M50: where things stand along the cord, for a spacing, a count or both; mirrored about the middle if wished. */
import type { GarlandLayout } from '../../../shared-types/project'
import { CENTRES, GARLAND, MOST_ITEMS } from '../../fields/garland'
import { finding } from '../../findings/finding'
import { formatLength, formatNumber } from '../../units/format'
import type { Millimetres } from '../../units/quantity'
import type { GarlandReader, Hung } from './read'
import type { Thing } from './sequence'
import { DEFAULTS } from '../../settled'

/** One thing of the sequence that repeats. */
interface Bit {
  readonly before: Millimetres
  readonly behind: Millimetres
  /** Room between it and the next beyond the spacing. */
  readonly gap: Millimetres
}

export interface Spaced {
  /** Which of the sequence, and where along the cord, from the first tie. */
  readonly bits: readonly { readonly bit: number; readonly along: Millimetres }[]
  /** Room between neighbours. */
  readonly spacing: Millimetres
  readonly length: Millimetres
}

/** Why there is nothing to place. */
type Unspaced =
  { readonly problem: 'too-many' } | { readonly problem: 'too-long'; readonly needed: Millimetres }

interface SpacingWish {
  readonly bits: readonly Bit[]
  readonly between: 'edges' | 'centres'
  readonly mm: Millimetres | null
  readonly count: number | null
  /** Length of the cord, or null where it follows from spacing and count. */
  readonly length: Millimetres | null
  readonly symmetric: boolean
}

/** Rounding that does not turn away the last thing on a cord of just the right length. */
const SLACK = 1e-9

/** Which of `size` bits stands at place k of n. */
const bitAt = (k: number, n: number, size: number, symmetric: boolean): number =>
  (symmetric ? Math.min(k, n - 1 - k) : k) % size

/** Centres of n things from the first centre, without any spacing: what is added is one spacing a step. */
function steps(wish: SpacingWish, n: number): number[] {
  const { bits, between, symmetric } = wish
  const centres: number[] = n > 0 ? [0] : []
  for (let k = 0; k + 1 < n; k++) {
    const left = bits[bitAt(k, n, bits.length, symmetric)]!
    const right = bits[bitAt(k + 1, n, bits.length, symmetric)]!
    const gap = bits[(symmetric ? Math.min(k, n - 2 - k) : k) % bits.length]!.gap
    centres.push(centres[k]! + gap + (between === 'edges' ? left.behind + right.before : 0))
  }
  return centres
}

interface Row {
  readonly n: number
  /** Width from the first edge to the last, without spacing. */
  readonly width: Millimetres
  /** No longer row is narrower than this. */
  readonly least: Millimetres
}

/** Widths of 1, 2, 3 … things without spacing, each in constant time. */
function* rows(wish: SpacingWish): Generator<Row> {
  const { bits, between, symmetric } = wish
  const at = (k: number): Bit => bits[k % bits.length]!
  const extents = between === 'edges' ? 1 : 0
  const outward = (k: number): number => at(k).gap + extents * (at(k).behind + at(k + 1).before)
  const inward = (k: number): number => at(k).gap + extents * (at(k + 1).behind + at(k).before)
  const there: number[] = [0]
  const back: number[] = [0]
  for (let n = 1; n <= MOST_ITEMS + 1; n++) {
    if (n > 1) {
      there.push(there[n - 2]! + outward(n - 2))
      back.push(back[n - 2]! + inward(n - 2))
    }
    const half = Math.ceil(n / 2)
    const middle = n % 2 === 0 ? at(half - 1).gap + extents * (at(half - 1).behind + at(half - 1).before) : 0
    const between0 = symmetric ? there[half - 1]! + back[half - 1]! + middle : there[n - 1]!
    const last = symmetric ? at(0) : at(n - 1)
    const width = at(0).before + between0 + last.behind
    yield { n, width, least: symmetric ? width - middle : width - last.behind }
  }
}

/** The most things that fit a length at a spacing: the widest row that does. */
function mostThatFit(wish: SpacingWish, length: Millimetres, mm: Millimetres): number {
  let most = 0
  for (const { n, width, least } of rows(wish)) {
    // Mirrored, one stands in the middle: two alike side by side would look like a slip.
    const wanted = !wish.symmetric || wish.bits.length === 1 || n % 2 === 1
    if (wanted && width + (n - 1) * mm <= length * (1 + SLACK)) most = n
    if (least + (n - 1) * mm > length * (1 + SLACK)) break
  }
  return most
}

/** Places along the cord, or why there are none. */
export function spaceOut(wish: SpacingWish): Spaced | Unspaced {
  const { bits, between, length: given } = wish
  let { mm, count } = wish
  if (count === null) {
    mm ??= 0
    count = mostThatFit(wish, given ?? 0, mm)
    if (count > MOST_ITEMS) return { problem: 'too-many' }
    if (count === 0) return { problem: 'too-long', needed: bits[0]!.before + bits[0]!.behind }
  }
  const bare = steps(wish, count)
  const first = bits[0]!
  const last = bits[bitAt(count - 1, count, bits.length, wish.symmetric)]!
  const across = bare[count - 1]!
  const width = first.before + across + last.behind
  // Half a spacing at each end: the next cord goes on as this one ends.
  const rest = between === 'edges' ? width : across
  const shares = mm === null
  if (mm === null) {
    mm = ((given ?? 0) - rest) / count
    if (mm < -SLACK * rest || (between === 'centres' && mm <= 0)) return { problem: 'too-long', needed: rest }
    mm = Math.max(0, mm)
  }
  const used = width + (count - 1) * mm
  const length = given ?? Math.max(used, rest + count * mm)
  if (used > length * (1 + SLACK)) {
    // Where they share the cord, a longer one spreads them too: half a spacing at each end must hold half of one.
    const needed = shares ? across + count * (width - across) : used
    return { problem: 'too-long', needed }
  }
  const start = Math.max(0, (length - used) / 2) + first.before
  const spacing = mm
  return {
    bits: bare.map((centre, k) => ({
      bit: bitAt(k, count, bits.length, wish.symmetric),
      along: start + centre + k * spacing,
    })),
    spacing,
    length,
  }
}

/** Places along the cord, or null with a finding. */
export function readSpacing(
  layout: GarlandLayout,
  things: readonly Thing[],
  hung: Hung,
  reader: GarlandReader,
  units: 'metric' | 'imperial',
): Spaced | null {
  const between = layout.spacing?.between ?? DEFAULTS.spacing.between
  const mm = reader.within(layout.spacing?.mm, between === 'centres' ? CENTRES : GARLAND.spacing)
  const count = reader.within(layout.spacing?.count, GARLAND.items)
  if (mm === null || count === null || things.length === 0) return null
  if (between === 'centres' && mm === undefined && count === undefined) {
    reader.findings.push(finding('garland/no-spacing', 'layout.spacing'))
    return null
  }
  if (hung.length === null && (mm === undefined || count === undefined)) {
    reader.findings.push(finding('garland/no-length', 'layout.cord.length'))
    return null
  }
  const spaced = spaceOut({
    bits: things.map(({ hanging, gap }) => ({ before: hanging.before, behind: hanging.behind, gap })),
    between,
    mm: mm ?? null,
    count: count ?? null,
    length: hung.length,
    symmetric: layout.symmetric ?? DEFAULTS.garland.symmetric,
  })
  if ('bits' in spaced) {
    if (spaced.length <= GARLAND.length.most) return spaced
    reader.within(spaced.length, GARLAND.length, 'layout.spacing', 'the cord that follows')
    return null
  }
  if (spaced.problem === 'too-many') {
    reader.findings.push(finding('garland/too-many', 'layout.spacing', { most: formatNumber(MOST_ITEMS) }))
  } else {
    const values = {
      needed: formatLength(spaced.needed, units),
      length: formatLength(hung.length ?? 0, units),
    }
    reader.findings.push(finding('garland/does-not-fit', 'layout.spacing', values))
  }
  return null
}
