/**
 * Where every stitch of a round lies (M5–M13): on the ring, on plain and cornered rounds, along loops, in petals.
 * A round stands on the seats that earlier rounds left; each stitch begins at its own seat, so that rounds
 * worked behind petals, into free loops or over an older round start where they are carried.
 */
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { RoundShape } from '../../../shared-types/project'
import type { Radians } from '../../units/quantity'
import { PETALS } from '../constants'
import { locateAsides } from './asides'
import { CHAINS_PRESS } from './constants'
import { locateCornered } from './cornered'
import { cornersOf, stackOf } from './corners'
import type { Corner } from './corners'
import { sideCount } from './side-stitches'
import { drawnWidth, isDrawing } from './drawing'
import { finish, slipPoint } from './finish'
import { angleOf, at, heightOf, isUpright, mean, radiusOf, seatOf, topWidth } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import { goesAroundPoints, standAroundPoints } from './points'
import { overfull, standOnRing } from './ring'
import type { Ring } from './ring'
import { standsOut } from './stands-out'
import { mirrorRound } from './scale'
import { standOnSpokes } from './spokes'
import { standInGroups } from './stand'
import type { Stood } from './stand'

const TURN = 2 * Math.PI

/**
 * Locates one round on those before it. `ring`: what it begins on. What is
 * worked after the work was turned over runs the other way round. `said`: what the motif is said to be.
 */
export function locateRound(
  round: WorkedRound,
  before: readonly LocatedRound[],
  gauge: ResolvedGauge,
  ring: Ring,
  said?: RoundShape,
): LocatedRound {
  const turns = before.filter((entry) => entry.round.turned).length + (round.turned ? 1 : 0)
  if (turns % 2 === 0) return locateOnward(round, before, gauge, ring, said)
  return mirrorRound(locateOnward(round, before.map(mirrorRound), gauge, ring, said))
}

/** Locates a round that is worked in working direction. */
function locateOnward(
  round: WorkedRound,
  before: readonly LocatedRound[],
  gauge: ResolvedGauge,
  ring: Ring,
  said: RoundShape | undefined,
): LocatedRound {
  const onSeats = round.elements.some(
    (e) => (isUpright(e) || e.role === 'slip') && e.into.some((place) => seatOf(place, before)),
  )
  const inRing = onSeats ? null : standOnRing(round, gauge, ring)
  const onSeatsOf = inRing ? null : standInGroups(round, before, gauge)
  const onto = before.find((entry) => entry.round.index === round.onto) ?? before[before.length - 1] ?? null
  const keepsPoints = goesAroundPoints(round, onto)
  const onWork =
    inRing?.stood ??
    (keepsPoints && onto
      ? standAroundPoints(round, onto, onSeatsOf!.stood, gauge)
      : settledOn(round, onSeatsOf!.stood, gauge))
  const tops = new Map(onWork.map((entry) => [entry.element, entry.top]))
  const spokes = standOnSpokes(
    round,
    (element) => tops.get(element) ?? slipPoint(element, onto, gauge),
    gauge,
  )
  const stood = [...onWork, ...spokes.stood]
  const upright = stood.map((entry) => entry.element).filter(isUpright)
  const found = keepsPoints || spokes.stems.size > 0 ? null : cornersOf(round, upright, before)
  const corners = found && isStraightened(found, before, said) ? found : null
  const located =
    corners && onto
      ? locateCornered(round, corners, onto, gauge, stood)
      : finish(round, stood, onto, gauge, {
          stems: new Map([...(inRing?.edges ?? onSeatsOf!.edges), ...spokes.stems]),
        })
  const elements = located.elements.map((entry, i, all) =>
    withFeet(entry, before, isPost(all[i - 1], entry) || isPost(all[i + 1], entry)),
  )
  const below = before.find((entry) => entry.round.index === round.onto)
  const stack = stackOf({ ...located, elements }, below)
  const side = corners ? sideCount(round, corners) : null
  return {
    ...located,
    ...stack,
    elements,
    ...(side && { side }),
    asides: locateAsides({ round, elements }, before, gauge),
  }
}

/** Whether corners make a round straight: not over petals, and not in a disc, where the motif is said to be one of these. */
function isStraightened(
  corners: readonly Corner[],
  before: readonly LocatedRound[],
  said: RoundShape | undefined,
): boolean {
  if (said !== 'petals' && said !== 'round') return true
  if (before.some(({ petals }) => petals.length >= PETALS.least)) return false
  return said === 'petals' || !corners.every(({ stacked }) => stacked)
}

/** Whether another element goes around the post of the stitch that one goes into. */
function isPost(other: LocatedElement | undefined, { element }: LocatedElement): boolean {
  const [own, its] = [element.into[0], other?.element.into[0]]
  return Boolean(its?.post) && own?.kind === 'stitch' && own.round === its!.round && own.index === its!.index
}

/**
 * The legs of a decrease begin in their own places; what goes around a post begins in the middle of that, and so does
 * what stands beside it in the same place.
 */
function withFeet(
  entry: LocatedElement,
  before: readonly LocatedRound[],
  isBesidePost: boolean,
): LocatedElement {
  const place = entry.element.into[0]
  const around = place && (place.post || isBesidePost) ? seatOf(place, before) : null
  if (around) return { ...entry, behindUpTo: radiusOf(around.point) - radiusOf(entry.base) }
  const chains = place?.kind === 'space' ? seatOf(place, before)?.chains : undefined
  if (chains) {
    const lean = Math.atan2(entry.top.x - entry.base.x, entry.base.y - entry.top.y) - angleOf(entry.base)
    return { ...entry, over: { chains, lean } }
  }
  if (entry.element.into.length < 2) return entry
  const feet = entry.element.into.flatMap((place) => seatOf(place, before)?.point ?? [])
  return feet.length > 1 ? { ...entry, feet } : entry
}

/** Petals stand as they are; a plain round is evened out. */
const settledOn = (round: WorkedRound, stood: Stood[], gauge: ResolvedGauge): Stood[] =>
  stood.some((entry) => entry.petal >= 0) ? stood : evenOut(round, stood, gauge)

/** A plain round's tops spread evenly, and stand out a little when there are too many of them (M7). */
function evenOut(round: WorkedRound, stood: Stood[], gauge: ResolvedGauge): Stood[] {
  const widths = round.elements.map((element) =>
    element.role === 'space' ? drawnWidth(gauge, round, element) * gauge.width : topWidth(element, gauge),
  )
  const total = widths.reduce((sum, width) => sum + width, 0)
  const base = mean(stood.map((entry) => radiusOf(entry.base)))
  const height = mean(stood.map((entry) => heightOf(entry.element, gauge)))
  const level = stood.every((entry) => Math.abs(radiusOf(entry.base) - base) < 0.05 * base)
  if (!level) return stood
  // Chains between stitches lie slack before they press.
  const chains = round.elements.reduce((sum, { role }, i) => sum + (role === 'space' ? widths[i]! : 0), 0)
  const pressed = total - (1 - CHAINS_PRESS) * chains
  const extra = isDrawing(gauge)
    ? Math.max(0, gauge.reach(round) - base - height)
    : overfull(pressed, base, height) * standsOut(pressed, TURN * (base + height))
  const spaces = round.elements.some((element) => element.role === 'space')
  let walked = 0
  const start = angleOf(stood[0]?.top ?? { x: 0, y: -1 })
  const angles = new Map<WorkedElement, Radians>()
  let origin: number | null = null
  round.elements.forEach((element, i) => {
    const middle = walked + widths[i]! / 2
    walked += widths[i]!
    if (!isUpright(element)) return
    origin ??= middle
    angles.set(element, start + ((middle - origin) / Math.max(total, 1e-9)) * TURN)
  })
  return stood.map((entry) => {
    const radius = radiusOf(entry.top) + extra
    const angle = spaces ? angleOf(entry.top) : angles.get(entry.element)!
    return { ...entry, top: at(radius, angle) }
  })
}
