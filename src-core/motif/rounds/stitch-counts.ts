/** What a motif in written rounds is made of: stitches and yarn, by colour (M40). */
import { byName } from '../../by-name'
import { stitchesOf } from '../../notation/worked'
import type { WorkedRound } from '../../notation/worked'
import { stitchYarn } from '../../stitches/gauge'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { StitchKey } from '../../stitches/table'
import type { Metres } from '../../units/quantity'

interface SlotWork {
  readonly stitches: Record<string, Record<string, number>>
  readonly metres: Record<string, Metres>
}

/**
 * Stitch counts and metres of yarn by slot; `slotOf` names the colour of a round. `ring` and `stem` are the chains of
 * a ring or foundation chain that the project gives, outside of the text: they belong to the first colour.
 */
export function slotWork(
  rounds: readonly WorkedRound[],
  slotOf: (round: WorkedRound) => string,
  gauge: ResolvedGauge,
  { ring = 0, stem = 0 }: { readonly ring?: number; readonly stem?: number } = {},
): SlotWork {
  const stitches = byName<Record<string, number>>()
  const metres = byName<Metres>()
  for (const round of rounds) {
    const slot = slotOf(round)
    const counts = (stitches[slot] ??= {})
    const add = (stitch: StitchKey, count: number) => {
      counts[stitch] = (counts[stitch] ?? 0) + count
      metres[slot] = (metres[slot] ?? 0) + (count * stitchYarn(stitch, gauge)) / 1000
    }
    // A chain that a row makes and is worked along stands among what it works.
    const isWorked = round.elements.some(({ role, into }) => role === 'stem' && into.length === 0)
    if (round.foundation && round.foundation.chains > 0) {
      if (!isWorked) add('ch', round.foundation.chains)
    } else if (round === rounds[0] && ring > 1) {
      add('ch', ring)
      add('sl st', 1)
    } else if (round === rounds[0] && !isWorked && stem > 0) add('ch', stem)
    for (const element of round.elements)
      for (const [stitch, count] of stitchesOf(element)) add(stitch, count)
  }
  return { stitches, metres }
}

/** The tallest stitch that is common: a tenth of the standing stitches and more. */
export function tallest(worked: readonly WorkedRound[]): StitchKey {
  const counts = new Map<StitchKey, number>()
  let total = 0
  for (const round of worked)
    for (const element of round.elements)
      if (element.role === 'stitch') {
        counts.set(element.stitch, (counts.get(element.stitch) ?? 0) + 1)
        total++
      }
  const common = (['trtr', 'dtr', 'tr', 'dc', 'hdc', 'sc'] as const).find(
    (stitch) => (counts.get(stitch) ?? 0) >= total / 10,
  )
  return common ?? 'sc'
}
