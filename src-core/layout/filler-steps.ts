/** M27, M33: where the fillers stand in the finished size, and how each is worked after the motifs round it. */
import type { Anchor, FillerStep, MotifAccount, PlacedFiller } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { clock, workingSign } from '../motif/anchors'
import { countedFrom } from '../motif/numbering'
import { listOf } from '../joins/words'
import type { SeamVerb } from '../joins/words'
import type { Arranged } from './stages'
import { fillerId } from './addresses'
import type { Painted } from './halves'
import { inFrame } from './frame'
import type { EdgingRoom } from './frame'
import type { Radians } from '../units/quantity'
import type { Contact } from './filler-fit'
import type { Filled, Filler, Filling } from './fillers'

/** The fillers in plan coordinates: edging and blocking are round and in them as in the motifs. */
export function finishFillers(
  arranged: Arranged,
  filling: Filling,
  labels: readonly number[],
  firsts: readonly number[],
  wayOf: ReadonlyMap<Filler, string>,
  painted: Painted,
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): PlacedFiller[] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return filling.filled.map(({ opening, fit, filler, motifs }, i) => {
    const first = arranged.placements[opening.motifs[0]!]!
    const round = motifs.map((motif) => arranged.placements[motif]!.id)
    const id = fillerId(round)
    return {
      id,
      label: String(labels[i]),
      firstPetal: firsts[i]!,
      x: x(first.x + fit.middle.x),
      y: y(first.y + fit.middle.y),
      turn: fit.turn,
      motif: filler.account.id,
      radius: fit.room,
      motifs: round,
      joins: motifs.length,
      // Beside it: where a round closes, a motif across the closing line stands at the other end of the map.
      points: fit.contacts.map(({ motif, at }) => {
        const host = opening.kind.around[motif]!
        return { x: x(first.x + host.x + at.x), y: y(first.y + host.y + at.y) }
      }),
      bridge: fit.bridge,
      overlap: fit.overlap,
      colourway: painted[id] ?? wayOf.get(filler) ?? '',
    }
  })
}

/** One step for each filler, in working order: each after the last of the motifs round it. */
export function fillerSteps(
  arranged: Arranged,
  filling: Filling,
  labels: readonly number[],
  hand: Hand,
  seam: SeamVerb | null,
): FillerStep[] {
  // Of several it is said which one.
  const isOne = new Set(filling.filled.map(({ filler }) => filler.account.id)).size < 2
  const last = ({ motifs }: Filled): number => Math.max(...motifs.map((motif) => labels[motif]!))
  return filling.filled
    .map((filled, index) => ({ filled, index, last: last(filled) }))
    .sort((a, b) => a.last - b.last || a.index - b.index)
    .map(({ filled, index, last }): FillerStep => {
      const { motifs, opening } = filled
      const label = (contact: Contact): number => labels[opening.motifs[contact.motif]!]!
      const contacts = contactsInOrder(filled, hand)
      const joins = contacts.map((contact) => ({
        motif: arranged.placements[opening.motifs[contact.motif]!]!.id,
        words: `${placeOf(contact, contacts[0]!, filled.filler.account)} to ${label(contact)}, at its ${clock(contact.fromMotif)}`,
      }))
      const round = contacts.map(label).sort((a, b) => a - b)
      const how = seam ?? 'join'
      return {
        filler: index,
        after: arranged.placements[motifs.find((motif) => labels[motif] === last)!]!.id,
        joins,
        words: `filler${isOne ? '' : ` ${filled.filler.account.name}`} between ${listOf(round)}: ${how} ${joins.map((join) => join.words).join('; ')}`,
      }
    })
}

/**
 * The joins in working direction, beginning at the top: all motifs round a filler are there when it is joined, and
 * fillers that are joined alike are one way to learn.
 */
export function contactsInOrder({ fit: { contacts } }: Filled, hand: Hand): Contact[] {
  const sign = workingSign(hand)
  const onward = ({ direction }: Contact): Radians => {
    const angle = (sign * direction) % (2 * Math.PI)
    // What lies at the very top may come out a hair before it.
    return angle < -ALIKE ? angle + 2 * Math.PI : angle
  }
  return [...contacts].sort((a, b) => onward(a) - onward(b))
}

/** Directions are found on a grid: less than this between two is nothing. */
const ALIKE: Radians = 0.01

/** What a filler is joined at: a side, a corner or a petal. */
export const fillerPlace = ({ shape }: Pick<MotifAccount, 'shape'>, { kind }: Anchor): string =>
  shape !== 'straight' ? 'petal' : kind === 'corner' ? 'corner' : 'side'

/** The place of the filler in hand: counted from its own start, or told by the clock as it lies. */
function placeOf({ anchor, direction }: Contact, first: Contact, filler: MotifAccount): string {
  if (!anchor || !first.anchor) return `at ${clock(direction)}`
  if (filler.shape === 'leaf') return anchor.address
  const number = countedFrom(anchor.petal, first.anchor.petal, Math.max(1, filler.petals))
  return `${fillerPlace(filler, anchor)} ${number}`
}
