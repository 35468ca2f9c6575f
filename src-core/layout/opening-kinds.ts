/** M27: the openings of a blanket by kind: those between the same motifs that are as large. Each kind takes its own filler. */
import type { OpeningsOfKind } from '../../shared-types/plan'
import type { BlanketLayout } from '../../shared-types/project'
import { remembered } from '../memo'
import type { Millimetres } from '../units/quantity'
import { SAME_OPENING } from './constants'
import type { Filled } from './fillers'
import type { Opening, OpeningKind } from './holes'
import type { Lattice } from './lattice'

export interface OpeningGroup {
  /** Ids of the motifs round each, in the order of the blanket's motifs. */
  readonly between: readonly string[]
  /** Among the groups between the same motifs: 1 the largest. */
  readonly nth: number
  readonly kinds: ReadonlySet<OpeningKind>
  readonly count: number
  /** Of its largest kind. */
  readonly radius: Millimetres
}

/** Fewest motifs round an opening that a filler can stand in. */
export const LEAST_SIDES = 3

/**
 * The openings that a filler can stand in, by kind, the largest first; `ids`: of the motifs by their number in the
 * blanket, where one may come twice. Openings of the pattern come before those that motifs put in by hand make: these
 * change the number of none.
 */
export const groupOpenings = remembered(
  (openings: readonly Opening[], ids: readonly string[]): readonly OpeningGroup[] => {
    const counts = new Map<OpeningKind, number>()
    for (const { kind } of openings)
      if (kind.sides >= LEAST_SIDES) counts.set(kind, (counts.get(kind) ?? 0) + 1)
    const inOrder = [...counts.keys()].sort(
      (a, b) => Number(a.byHand) - Number(b.byHand) || b.radius - a.radius,
    )
    const found: (Omit<OpeningGroup, 'count' | 'kinds'> & { name: string; kinds: Set<OpeningKind> })[] = []
    for (const kind of inOrder) {
      const between = kind.around.map((at) => ids[at.kind]!).sort((a, b) => ids.indexOf(a) - ids.indexOf(b))
      const name = betweenName(between)
      const alike = found.filter((group) => group.name === name)
      const own = alike.find(({ radius }) => Math.abs(radius - kind.radius) < SAME_OPENING)
      if (own) own.kinds.add(kind)
      else found.push({ between, name, nth: alike.length + 1, kinds: new Set([kind]), radius: kind.radius })
    }
    return found
      .map(({ name: _, ...group }) => ({
        ...group,
        count: [...group.kinds].reduce((sum, kind) => sum + counts.get(kind)!, 0),
      }))
      .sort((a, b) => b.radius - a.radius)
  },
)

type Entries = NonNullable<NonNullable<BlanketLayout['fillers']>['openings']>

/** The same motifs in the same number, whatever order they stand in. */
export const betweenName = (between: readonly string[]): string => JSON.stringify([...between].sort())

/** Which entry of a file speaks of each group, by its place there. */
export function entriesOf(
  entries: Entries,
  groups: readonly OpeningGroup[],
): ReadonlyMap<OpeningGroup, number> {
  const places = new Map<string, number[]>()
  entries.forEach(({ between = [] }, place) => {
    const name = betweenName(between)
    places.set(name, [...(places.get(name) ?? []), place])
  })
  const found = new Map<OpeningGroup, number>()
  for (const group of groups) {
    const place = places.get(betweenName(group.between))?.[group.nth - 1]
    if (place !== undefined) found.set(group, place)
  }
  return found
}

/** The groups as a plan tells them; `fillersIn`: those of one opening of a kind. */
export function openingsTold(
  groups: readonly OpeningGroup[],
  lattice: Pick<Lattice, 'turns'>,
  ids: readonly string[],
  fillersIn: (kind: OpeningKind) => readonly Pick<Filled, 'filler' | 'fit'>[],
): OpeningsOfKind[] {
  return groups.map(({ between, nth, kinds, count, radius }): OpeningsOfKind => {
    // Of a filler that all have, one that lacks it is none to show.
    const one = [...kinds].find((kind) => fillersIn(kind).length > 0) ?? [...kinds][0]!
    const { around, pole } = one
    const fillers = fillersIn(one)
    return {
      ...{ between, nth, count, radius },
      filler: fillers[0]?.filler.account.id ?? null,
      turn: fillers[0]?.fit.turn ?? 0,
      stands: fillers.map(({ fit: { middle, turn } }) => ({
        x: middle.x - pole.x,
        y: middle.y - pole.y,
        turn,
      })),
      around: around.map(({ x, y, even, kind }) => ({
        motif: ids[kind]!,
        x: x - pole.x,
        y: y - pole.y,
        turn: lattice.turns[even ? 1 : 0],
      })),
    }
  })
}
