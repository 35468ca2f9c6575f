/**
 * A chart is a drawing to work from, not a map to scale: rounds stand as wide as their stitches need, loops as long as
 * what is worked into them, so that every symbol has room. Sizes never come from it.
 */
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { COMPOUND_TOP_WIDTH } from '../../stitches/table'
import type { Millimetres } from '../../units/quantity'
import { heightOf, isUpright, mean, topWidth } from './ground'
import type { LocatedRound } from './ground'
import { petalSides } from './petal-sides'

/** The gauge of a drawing: it knows what later rounds work into a loop. */
interface DrawingGauge extends ResolvedGauge {
  /** Stitch widths that an element's place has to hold; 0 where nothing is worked into it. */
  readonly held: (round: WorkedRound, element: WorkedElement) => number
  /** Radius that a round is drawn at least at. */
  readonly reach: (round: WorkedRound) => Millimetres
}

/** Loops hang out of their round: longer ones take no more room along it, but for what they hold. */
const HANGS_FROM = 3
const HANGING = 1.6

/** Stitches in a loop may stand so close, in stitch widths: the arch that they stand on fans them out. */
const FANNED = 0.7

/** The gauge with which rounds are located for their chart. */
export function drawingGauge(gauge: ResolvedGauge, located: readonly LocatedRound[]): ResolvedGauge {
  const worked = new Map(located.map(({ round }) => [round.index, round]))
  const holds = new Map<number, Map<number, number>>()
  for (const { elements } of worked.values())
    for (const element of elements) {
      const place = element.into[0]
      if (!isUpright(element) || place?.kind !== 'space' || place.round < 0) continue
      const carrier = worked.get(place.round)?.places[place.index]?.element
      if (carrier === undefined) continue
      const own = holds.get(place.round) ?? new Map<number, number>()
      const width = element.legs > 1 ? COMPOUND_TOP_WIDTH.cluster : 1
      holds.set(place.round, own.set(carrier, (own.get(carrier) ?? 0) + width))
    }
  const held: DrawingGauge['held'] = (round, element) => holds.get(round.index)?.get(element.index) ?? 0
  const plain: DrawingGauge = { ...gauge, held, reach: () => 0 }
  const reaches = reachesOf(located, plain)
  const drawing: DrawingGauge = { ...plain, reach: (round) => reaches.get(round.index) ?? 0 }
  return drawing
}

/** Rounds are drawn no higher than so many times their stitches: what they need beyond it lifts the ones below. */
const HIGHEST = 1.6

/** How far out each round has to be for its stitches, and for those of the rounds that stand on it. */
function reachesOf(located: readonly LocatedRound[], gauge: DrawingGauge): Map<number, Millimetres> {
  const reaches = new Map<number, Millimetres>()
  for (const { round, around, petals } of [...located].reverse()) {
    const onto = located.find((entry) => entry.round.index === round.onto)
    const edges = petalSides(round, onto?.round)
    const widthOf = (element: WorkedElement): Millimetres => {
      if (element.into[0]?.kind === 'chain' && element.into[0].round === round.index) return 0
      if (edges.has(element)) return gauge.width
      return element.role === 'space'
        ? drawnWidth(gauge, round, element) * gauge.width
        : topWidth(element, gauge)
    }
    const length = round.elements.reduce((sum, element) => sum + widthOf(element), 0)
    // Petals in loops stand along those.
    const own = petals.some(({ chains }) => chains > 0) ? 0 : length / around
    const reach = Math.max(own, reaches.get(round.index) ?? 0)
    reaches.set(round.index, reach)
    const height = mean(round.elements.filter(isUpright).map((element) => heightOf(element, gauge)))
    reaches.set(round.onto, Math.max(reaches.get(round.onto) ?? 0, reach - HIGHEST * height))
  }
  return reaches
}

/** Whether rounds are located for a drawing. */
export const isDrawing = (gauge: ResolvedGauge): gauge is DrawingGauge => 'held' in gauge

/** Chains of a space as it is drawn: a loop that holds more is drawn as long as that needs. */
export const drawnChains = (gauge: ResolvedGauge, round: WorkedRound, element: WorkedElement): number =>
  isDrawing(gauge) && element.count >= HANGS_FROM
    ? Math.max(element.count, FANNED * gauge.held(round, element))
    : element.count

/** Chains that a space takes along its round as it is drawn. */
export const drawnWidth = (gauge: ResolvedGauge, round: WorkedRound, element: WorkedElement): number =>
  isDrawing(gauge) && element.count >= HANGS_FROM
    ? Math.max(HANGING, FANNED * gauge.held(round, element))
    : element.count
