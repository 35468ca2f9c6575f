/** Which rounds are drawn together: rounds worked behind petals get a drawing of their own. */
import { hidesItself } from '../../motif/rounds/ground'
import type { LocatedRound } from '../../motif/rounds/ground'
import type { WorkedElement } from '../../notation/worked'

export interface ChartPart {
  readonly rounds: readonly LocatedRound[]
  /** Elements of earlier rounds, drawn before, that these rounds are worked into: shown lighter. */
  readonly carriers: ReadonlyMap<LocatedRound, ReadonlySet<WorkedElement>>
  /** What is drawn of the rounds; all of them where it is left out. */
  readonly only?: ReadonlySet<WorkedElement>
}

/** Worked behind what is there, short around its posts, or into an older round than the one before it: it would lie on top of that. */
function beginsPart(round: LocatedRound, all: readonly LocatedRound[]): boolean {
  const index = all.indexOf(round)
  if (index < 1) return false
  if (round.elements.some((entry) => entry.element.behind || hidesItself(entry))) return true
  const previous = all[index - 1]!
  const isOlder = (source: number): boolean => source >= 0 && source < previous.round.index
  // Posts of older rounds: their stitches lie across the rounds between.
  if (
    round.elements.some(({ element }) =>
      element.into.some((place) => place.post !== null && isOlder(place.round)),
    )
  )
    return true
  const sources = round.elements.flatMap(({ element }) => element.into.map((place) => place.round))
  return sources.length > 0 && sources.every(isOlder)
}

/** The rounds of a motif in drawings, in which no symbol lies on another. */
export function chartParts(located: readonly LocatedRound[]): ChartPart[] {
  const parts: LocatedRound[][] = []
  for (const round of located) {
    const open = parts[parts.length - 1]
    if (!open || beginsPart(round, located)) parts.push([round])
    else open.push(round)
  }
  return parts.map((rounds) => ({ rounds, carriers: carriersOf(rounds, located) }))
}

function carriersOf(
  rounds: readonly LocatedRound[],
  located: readonly LocatedRound[],
): Map<LocatedRound, Set<WorkedElement>> {
  const found = new Map<LocatedRound, Set<WorkedElement>>()
  for (const { elements } of rounds) {
    for (const { element } of elements) {
      for (const place of element.into) {
        const source = located.find((entry) => entry.round.index === place.round)
        if (!source || rounds.includes(source)) continue
        const left = source.round.places[place.index]
        const carrier = left && source.round.elements[left.element]
        if (carrier) found.set(source, (found.get(source) ?? new Set<WorkedElement>()).add(carrier))
      }
    }
  }
  return found
}
