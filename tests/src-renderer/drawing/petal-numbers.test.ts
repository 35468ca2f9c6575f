import { describe, expect, it } from 'vitest'
import { meetingPoints, petalNumbers } from '../../../src-renderer/drawing/motif-picture'
import type { MeetingPoint } from '../../../src-renderer/drawing/motif-picture'
import {
  additionsSeen,
  apart,
  BLANKETS,
  directionTo,
  HANDS,
  hourIn,
  inEveryOrder,
  joinsSeen,
  numberDrawn,
  numberIn,
  petalDirection,
} from '../../src-core/joins/petal-numbers'
import { accountAt } from '../../../src-core/layout/placed'
import type { Planned } from '../../src-core/joins/petal-numbers'

/** Joins that the words number otherwise than the motif in the hand does, in its drawing or for ears. */
function differing({ plan }: Planned): string[] {
  const account = plan.motif!
  const points = new Map<string, readonly MeetingPoint[]>()
  const labels = new Map(plan.motifs.map(({ id, label }) => [id, label]))
  return joinsSeen(plan).flatMap(({ motif, join, node }) => {
    const there = directionTo({ x: node.x - motif.x, y: node.y - motif.y })
    let own = points.get(motif.id)
    if (!own) points.set(motif.id, (own = meetingPoints(account, plan, motif)))
    const first = labels.get(join.with[0]!.motif)!
    // The dot that lies where the map has this join.
    const dot = own.reduce((best, point) =>
      apart(directionTo(point), there) < apart(directionTo(best), there) ? point : best,
    )
    const wrong = `${motif.id}: ${join.words}; ears: ${dot.words}`
    if (!new RegExp(`motif .*\\b${first}\\b`).test(dot.words)) return [wrong]
    if (account.shape === 'round' && !account.spaces)
      return hourIn(join.words) !== null && hourIn(join.words) === hourIn(dot.words) ? [] : [wrong]
    const told = numberIn(join.words)
    const drawn = numberDrawn(
      petalNumbers(account, motif),
      { x: 0, y: 0 },
      account.spaces ? there : petalDirection(account, motif, join.anchor),
    )
    return told !== null && told === numberIn(dot.words) && told === drawn ? [] : [`${wrong}, drawn ${drawn}`]
  })
}

/** The same of half motifs and fillers, in the drawing. */
function differingAdditions({ plan }: Planned): string[] {
  return additionsSeen(plan).flatMap(({ piece, join }) => {
    const account = accountAt(plan, piece)!
    if (account.shape !== 'petals') return []
    const told = numberIn(join.words)
    const direction = petalDirection(account, piece, join.anchor)
    const drawn = numberDrawn(petalNumbers(account, piece), { x: 0, y: 0 }, direction)
    return told !== null && told === drawn ? [] : [`${piece.id}: ${join.words}, drawn ${drawn}`]
  })
}

describe.each(BLANKETS)('M33 one numbering in the hand: %s', (name) => {
  it.each(HANDS)('words, drawing and ears agree on every join in every order, %s-handed', (hand) => {
    for (const planned of inEveryOrder(name, hand)) {
      expect(differing(planned).slice(0, 5), planned.title).toEqual([])
      expect(differingAdditions(planned).slice(0, 5), planned.title).toEqual([])
    }
  })
})
