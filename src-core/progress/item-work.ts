/** Garlands and panels as works in progress: their motifs one by one, in the order of their lists. */
import type { GarlandItem, PlacedMotif } from '../../shared-types/plan'
import type { LaidItem } from '../layout/applique/items'
import type { MaterialsInput, Piece } from '../materials/input'
import type { Minutes } from '../units/quantity'
import type { Work, WorkPiece } from './work'

/** Its motifs as they hang; joined is what is fastened to the cord, and the cord is worked as far as that. */
export function garlandWork(
  motifs: readonly PlacedMotif[],
  items: readonly GarlandItem[],
  pieces: readonly Piece[],
  input: MaterialsInput,
): Work {
  const group = new Map(pieces.map(({ motif }, i) => [motif.id, i]))
  // A bead is put on before the motif that follows it, or with the last one.
  const joins: number[] = []
  let beads = 0
  for (const { bead } of items) {
    beads++
    if (bead !== '') continue
    joins.push(beads)
    beads = 0
  }
  if (joins.length > 0) joins[joins.length - 1]! += beads
  return {
    pieces: motifs.map(({ id, label, colourway, motif = '' }, i): WorkPiece => ({
      ...{ id, label, colourway, kind: 'motif', seam: 0 },
      group: group.get(motif) ?? 0,
      joins: joins[i] ?? 0,
    })),
    input,
    joinsAsMade: false,
    hasEdging: false,
    joinedAs: 'fastened',
  }
}

/** Its items by number; joined is what is sewn down. */
export function panelWork(
  laid: readonly LaidItem[],
  sewingOf: (item: LaidItem) => Minutes,
  sewingSpread: number,
  input: MaterialsInput,
): Work {
  const group = new Map((input.others ?? []).map(({ motif }, i) => [motif.id, i]))
  return {
    pieces: laid.map((item): WorkPiece => ({
      ...{ id: item.id, label: String(item.number), colourway: item.colourway, kind: 'motif', seam: 0 },
      group: group.get(item.motif.id) ?? 0,
      joins: 1,
      sewing: sewingOf(item),
    })),
    input,
    joinsAsMade: false,
    hasEdging: false,
    joinedAs: 'sewn down',
    sewingSpread,
  }
}
