/** How many stitches a ring of chains holds. */
import { stitchAbbreviation } from '../stitches/terms'
import type { Span } from './tokens'
import { STANDING_KEY } from './use'
import { report } from './work'
import type { Work } from './work'

/** So many to a chain are usual (M5, `RING_HOLDS`): 3 sc, 4 dc, and one more in all, which closes the round. */
const USUAL_PER_CHAIN = { sc: 3, other: 4 } as const
/** Rings of 5 chains are printed with 24 dc: a round of tall stitches that are more than usual is only told from here on. */
const MOST_PER_CHAIN = { sc: 3, other: 5 } as const

/** What a ring holds (M5). */
export function checkRing(work: Work): void {
  if (work.base.kind !== 'ring' || work.base.chains === 0) return
  const inRing = work.elements.filter((element) => element.standing && element.into[0]?.kind === 'ring')
  if (inRing.length === 0) return
  const short = inRing.every((element) => STANDING_KEY(element) === 'sc')
  const of = short ? 'sc' : 'other'
  const { chains } = work.base
  if (inRing.length <= MOST_PER_CHAIN[of] * chains + 1) return
  const kind = STANDING_KEY(inRing[inRing.length - 1]!)
  const each = Math.round((inRing.length / chains) * 10) / 10
  // Points at the longest run into the ring, where the number stands.
  const counts = new Map<Span, number>()
  for (const element of inRing) counts.set(element.span, (counts.get(element.span) ?? 0) + 1)
  const [span] = [...counts].sort((a, b) => b[1] - a[1])[0]!
  report(work, 'rounds/ring-crowded', span, {
    ...{ count: inRing.length, chains, each, usual: USUAL_PER_CHAIN[of] },
    stitch: stitchAbbreviation(kind, work.tree.terms),
  })
}
