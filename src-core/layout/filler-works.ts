/** M27, M33: each filler as the hand works it: its places in order, and what each is joined to. */
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { directionOf, distance, polar, turnPoint } from '../geometry/points'
import { FILLER_AT_TIP } from '../joins/constants'
import type { FillerPlace, FillerWork } from '../joins/steps'
import { clock } from '../motif/anchors'
import { countedFrom } from '../motif/numbering'
import { radians } from '../units/quantity'
import { fillerId } from './addresses'
import type { Placement } from './blanket'
import { facingAnchors } from './filler-fit'
import type { Contact } from './filler-fit'
import { contactsInOrder, fillerPlace } from './filler-steps'
import type { Filled, Filling } from './fillers'

/** The fillers of a blanket in their order of places. */
export function fillerWorks(
  { filled }: Filling,
  accounts: readonly Pick<MotifAccount, 'anchors' | 'shape'>[],
  placements: readonly Placement[],
  hand: Hand,
): FillerWork[] {
  return filled.map((one) => {
    const { opening, motifs } = one
    const filler = one.filler.account
    const contacts = contactsInOrder(one, hand)
    const meets = (contact: Contact): NonNullable<FillerPlace['meets']> => {
      const host = opening.motifs[contact.motif]!
      const placed = placements[host]!
      const met = meeting(contact, accounts[placed.kind]!, placed)
      // A side that is joined all along has no single place there.
      const towards = contact.fromMotif
      if (contact.along) return { host, clock: '', towards, near: met.near, at: null, along: true }
      return { host, clock: clock(towards), towards, ...met }
    }
    const places =
      filler.shape === 'round'
        ? contacts.map((contact) => roundPlace(contact, filler, meets(contact)))
        : placesOf(filler, contacts, meets)
    return { id: fillerId(motifs.map((at) => placements[at]!.id)), shape: filler.shape, places }
  })
}

/** The petal (side, place) that a filler is begun with: the one joined nearest the top. */
export const firstOfFiller = (filled: Filled, hand: Hand): number =>
  contactsInOrder(filled, hand)[0]?.anchor?.petal ?? 1

/** The nearest place of the motif that is met, and whether it is one of its tips or corners. */
function meeting(
  { at }: Contact,
  { anchors, shape }: Pick<MotifAccount, 'anchors' | 'shape'>,
  { turn }: Placement,
) {
  let near: Anchor | undefined
  let least = Infinity
  for (const anchor of anchors) {
    const far = distance(turnPoint(anchor, radians(turn)), at)
    if (far < least - 1e-6) [near, least] = [anchor, far]
  }
  const isTip = near?.kind === 'tip' || near?.kind === 'corner'
  const counted = shape === 'petals' || shape === 'straight'
  return { near: near?.id ?? '', at: near && isTip && counted && least <= FILLER_AT_TIP ? near : null }
}

/** Every place of a filler that can face a motif, from the one that is joined first. */
function placesOf(
  filler: MotifAccount,
  contacts: readonly Contact[],
  meets: (contact: Contact) => NonNullable<FillerPlace['meets']>,
): FillerPlace[] {
  const count = Math.max(1, filler.petals)
  const first = contacts[0]?.anchor?.petal ?? 1
  const number = ({ petal }: Anchor): number => countedFrom(petal, first, count)
  const ways = facingAnchors(filler)
  const met = ways.find((anchors) => contacts.some(({ anchor }) => anchor && anchors.includes(anchor)))
  const facing = [...(met ?? ways[0] ?? [])].sort((a, b) => number(a) - number(b))
  return facing.flatMap((anchor): FillerPlace[] => {
    const place = { anchor, number: number(anchor), name: nameOf(filler, anchor, number(anchor)) }
    const here = contacts.filter((contact) => contact.anchor === anchor)
    return here.length > 0
      ? here.map((contact) => ({ ...place, meets: meets(contact) }))
      : [{ ...place, meets: null }]
  })
}

const nameOf = (filler: MotifAccount, anchor: Anchor, number: number): string =>
  filler.shape === 'leaf' ? anchor.address : `${fillerPlace(filler, anchor)} ${number}`

/** A round filler can be joined anywhere: its place is the nearest of those round the clock. */
function roundPlace(contact: Contact, filler: MotifAccount, meets: FillerPlace['meets']): FillerPlace {
  const towards = polar(1, contact.direction)
  const off = (anchor: Anchor): number => distance(polar(1, directionOf(anchor)), towards)
  const anchor = filler.anchors.reduce(
    (best, each) => (off(each) < off(best) ? each : best),
    filler.anchors[0]!,
  )
  return { anchor, number: anchor.petal, name: `at ${clock(contact.direction)}`, meets }
}
