/** A bought ring that a motif is worked over: its size stands in the text, and it neither gives nor is drawn together. */
import type { RoundsMotif } from '../../../shared-types/project'
import { BOUGHT_RING } from '../../notation/taking'
import { lengthsIn } from '../../page/quantities'
import type { Millimetres } from '../../units/quantity'

/** A size belongs to a ring that stands so few characters from it. */
const NEAR = 24
/** Rings that are bought for crochet are so wide, in mm (ours). */
const ACROSS = { least: 5, most: 300 } as const

const MADE_RING = /\b(?:magic|adjustable|sliding|slip) (?:ring|loop|circle|knot)\b/i

/** How wide the ring is that a motif's words begin on: "a 25 mm plastic ring", "curtain ring (1 in)"; null without one. */
export function boughtRing({ foundation, instructions, rounds }: RoundsMotif): Millimetres | null {
  const first = rounds?.[0]?.work ?? ''
  const isMade = foundation?.chain !== undefined || (foundation?.ring ?? 'adjustable') !== 'adjustable'
  if (isMade || MADE_RING.test(first) || !/\brings?\b/i.test(first)) return null
  for (const text of [first, instructions ?? '']) {
    const ring = BOUGHT_RING.exec(text)
    if (!ring) continue
    const end = ring.index + ring[0].length
    const size = lengthsIn(text).find(
      (length) =>
        (length.end <= ring.index && isNear(text.slice(length.end, ring.index))) ||
        (length.start >= end && isNear(text.slice(end, length.start))),
    )
    if (size && size.value >= ACROSS.least && size.value <= ACROSS.most) return size.value
  }
  return null
}

const isNear = (between: string): boolean => between.length <= NEAR && !/[.;\n]/.test(between)
