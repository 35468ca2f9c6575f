/** M50: the things on the cord as the plan tells them: in place, on the map, and how often each motif is made. */
import type { GarlandItem, MotifAccount, PlacedMotif } from '../../../shared-types/plan'
import type { GarlandLayout, Motif } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import type { Piece } from '../../materials/input'
import { degrees } from '../../units/quantity'
import { isWorked } from './cord'
import type { Chain } from './cord'
import { beadWords, FASTENED_BY, fasteningWords } from './hanging'
import type { HungGarland } from './place'
import type { Thing } from './sequence'
import type { Spaced } from './spacing'

/** Everything on the cord, with the chains before it and how it is fastened. */
export function itemsOf(
  project: Settled,
  layout: GarlandLayout,
  things: readonly Thing[],
  spaced: Spaced,
  up: HungGarland,
  chain: Chain,
): GarlandItem[] {
  const worked = isWorked(layout)
  const terms = project.terms
  let done = 0
  return things.map((thing, i): GarlandItem => {
    const { along } = spaced.bits[i]!
    const { hanging, account } = thing
    // Counted from the tie each time, so that rounding does not add up along the cord.
    const start = Math.max(done, Math.round(along / chain.length - hanging.chains / 2))
    const chains = start - done
    done = start + hanging.chains
    return {
      ...up.items[i]!.at,
      turn: degrees(up.items[i]!.turn),
      along,
      motif: thing.motif?.id ?? '',
      colourway: thing.colourway,
      bead: thing.bead,
      part: thing.part,
      held: up.items[i]!.held,
      extent: hanging.before + hanging.behind,
      chains: worked ? chains : null,
      fastened: account && {
        by: FASTENED_BY[account.shape],
        between: worked && hanging.places === 2 ? hanging.chains : null,
      },
      words: account ? fasteningWords(account.shape, hanging, worked, terms) : beadWords(thing.bead, worked),
    }
  })
}

/** The motifs among them; beads have no place on the map. */
export function motifsOf(things: readonly Thing[], up: HungGarland): PlacedMotif[] {
  let number = 0
  return things.flatMap((thing, i): PlacedMotif[] => {
    const { motif, hanging, colourway } = thing
    if (!motif) return []
    number++
    const { centre, turn } = up.items[i]!
    return [
      {
        id: `1,${number}`,
        // Its number on the cord, beads counted: the one that list and paper give it.
        label: String(i + 1),
        row: 1,
        column: number,
        x: centre.x,
        y: centre.y,
        turn: hanging.turn + degrees(turn),
        colourway,
        motif: motif.id,
      },
    ]
  })
}

/** How often each motif is made, in which colourways; the most frequent first. */
export function piecesOf(things: readonly Thing[]): Piece[] {
  const pieces = new Map<
    Motif,
    { motif: Motif; account: MotifAccount | null; motifs: number; ways: Map<string, number> }
  >()
  for (const { motif, account, colourway } of things) {
    if (!motif) continue
    const piece = pieces.get(motif) ?? { motif, account, motifs: 0, ways: new Map<string, number>() }
    piece.motifs++
    piece.ways.set(colourway, (piece.ways.get(colourway) ?? 0) + 1)
    pieces.set(motif, piece)
  }
  return [...pieces.values()]
    .sort((a, b) => b.motifs - a.motifs)
    .map(({ motif, account, motifs, ways }) => ({
      motif,
      account,
      counts: { motifs, byColourway: Object.fromEntries(ways) },
    }))
}
