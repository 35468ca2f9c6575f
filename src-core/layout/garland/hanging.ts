/** How one thing hangs: which way up, from which places, how far below the cord, how wide along it. */
import type { Anchor, FastenedBy, MotifAccount, Point } from '../../../shared-types/plan'
import type { Terms } from '../../../shared-types/project'
import { boxOf, directionOf, distance, moveOutline, polar, turnOutline } from '../../geometry/points'
import type { Outline } from '../../geometry/points'
import { stitchAbbreviation, chainsMade } from '../../stitches/terms'
import { degrees } from '../../units/quantity'
import type { Degrees, Millimetres } from '../../units/quantity'
import { CHAINS_BETWEEN } from './constants'

export interface Hanging {
  /** Rotation of the motif so that what it hangs by is on top. */
  readonly turn: Degrees
  /** How far its centre hangs below the cord. */
  readonly below: Millimetres
  /** The outline as it hangs, about the place on the cord. */
  readonly outline: Outline
  /** The places that it hangs by, about the place on the cord. */
  readonly held: Outline
  /** How far it reaches along the cord, before and behind that place. */
  readonly before: Millimetres
  readonly behind: Millimetres
  /** Places that it hangs by, and how far two of them are apart as it lies flat. */
  readonly places: 1 | 2
  readonly apart: Millimetres
  /** Chains between the two places; 0 for one. */
  readonly chains: number
}

interface HangingWish {
  readonly by: 1 | 2
  /** Chains between two places, where they are given. */
  readonly chains: number | null
  /** Length of one chain. */
  readonly chainLength: Millimetres
}

const byNumber = (account: MotifAccount, kind: Anchor['kind'], number: number): Anchor | undefined =>
  account.anchors.find((anchor) => anchor.kind === kind && anchor.petal === number)

/** The topmost point of an outline, where a motif has no place of its own to hang by. */
const top = (outline: Outline): Point =>
  outline.reduce((best, point) => (point.y < best.y ? point : best), outline[0] ?? { x: 0, y: 0 })

/** Whether an outline is wider in its upper half. */
function isWideAbove(outline: Outline): boolean {
  const { top: from, bottom } = boxOf(outline)
  const middle = (from + bottom) / 2
  const widest = (points: Outline): number => points.reduce((most, { x }) => Math.max(most, Math.abs(x)), 0)
  return widest(outline.filter(({ y }) => y < middle)) > widest(outline.filter(({ y }) => y > middle))
}

/** The places that a motif hangs by, about its centre and unturned. */
function hangsBy(account: MotifAccount, wish: HangingWish): readonly Point[] {
  const { shape } = account
  if (shape === 'leaf') {
    // A leaf grows from its stem, a heart hangs by its cleft, a pennant by its wide edge.
    const isByTop = account.form === 'heart' || (account.form === 'triangle' && isWideAbove(account.outline))
    return [byNumber(account, 'tip', isByTop ? 1 : 2) ?? { x: 0, y: boxOf(account.outline).bottom }]
  }
  if (shape === 'round') {
    const radius = account.overTips / 2
    if (wish.by === 1) return [polar(radius, 0)]
    const chord = Math.min(radius, (wish.chains ?? CHAINS_BETWEEN) * wish.chainLength)
    const half = Math.asin(chord / 2 / radius)
    return [polar(radius, -half), polar(radius, half)]
  }
  const kind = shape === 'straight' ? 'corner' : 'tip'
  const first = byNumber(account, kind, 1)
  const second = byNumber(account, kind, 2)
  if (!first) return [top(account.outline)]
  return wish.by === 1 || !second ? [first] : [first, second]
}

/** In (−180, 180], without the dust of binary fractions. */
function tidyDegrees(turn: Degrees): Degrees {
  const tidy = Number(turn.toFixed(9))
  return tidy === -180 ? 180 : tidy
}

/** How a motif hangs. */
export function hangMotif(account: MotifAccount, wish: HangingWish): Hanging {
  const places = hangsBy(account, wish)
  const [first, second = first] = places as [Point, Point?]
  const middle = { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 }
  const up = -directionOf(middle)
  // No negative zero, and no turn of a millionth of a degree.
  const turn = Math.abs(up) < 1e-9 ? 0 : up
  const below = Math.hypot(middle.x, middle.y)
  const outline = moveOutline(turnOutline(account.outline, turn), 0, below)
  const box = boxOf(outline)
  const apart = distance(first, second)
  const flat = Math.max(1, Math.round(apart / wish.chainLength))
  const usual = account.shape === 'straight' ? flat : CHAINS_BETWEEN
  return {
    turn: tidyDegrees(degrees(turn)),
    below,
    outline,
    held: moveOutline(turnOutline(places, turn), 0, below),
    before: -box.left,
    behind: box.right,
    places: places.length > 1 ? 2 : 1,
    apart,
    chains: places.length > 1 ? (wish.chains ?? usual) : 0,
  }
}

/** A bead or another round thing of a given size, threaded on the cord. */
export function hangBead(size: Millimetres): Hanging {
  const radius = size / 2
  const outline = Array.from({ length: 24 }, (_, i) => polar(radius, (2 * Math.PI * i) / 24))
  return {
    turn: 0,
    below: 0,
    outline,
    held: [],
    before: radius,
    behind: radius,
    places: 1,
    apart: 0,
    chains: 0,
  }
}

/** What places of a motif on a cord are called. */
export const FASTENED_BY: Readonly<Record<MotifAccount['shape'], FastenedBy>> = {
  ...{ petals: 'petal', straight: 'corner', round: 'place', leaf: 'tip' },
}

const PLACE_WORDS: Readonly<Record<MotifAccount['shape'], readonly [string, string]>> = {
  petals: ['petal 1', 'next petal'],
  straight: ['corner 1', 'next corner'],
  round: ['its edge', 'its edge a little further on'],
  leaf: ['the stem end', ''],
}

/** How a motif is fastened to the cord: "sc in petal 1, ch 3, sc in next petal". */
export function fasteningWords(
  shape: MotifAccount['shape'],
  hanging: Pick<Hanging, 'places' | 'chains'>,
  worked: boolean,
  terms: Terms,
): string {
  const [first, second] = PLACE_WORDS[shape]
  if (!worked) {
    if (hanging.places === 1) return `sew ${first} to the cord`
    if (shape === 'round') return 'sew two places of its edge to the cord'
    return `sew ${first} and the ${second} to the cord`
  }
  const sc = stitchAbbreviation('sc', terms)
  if (hanging.places === 1) return `${sc} in ${first}`
  const chains = hanging.chains > 0 ? `${chainsMade(hanging.chains, terms)}, ` : ''
  return `${sc} in ${first}, ${chains}${sc} in ${second}`
}

/** How a bead is put on: worked in where the cord is worked, threaded on where it is bought. */
export const beadWords = (bead: string, worked: boolean): string =>
  worked ? `slide up one ${bead} and work the next chain behind it` : `thread one ${bead} on the cord`
