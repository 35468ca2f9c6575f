/** M52: what a garland has in its kit besides yarn: its beads, and its cord where that is bought. */
import type { CordAccount, GarlandAccount, GarlandItem } from '../../../shared-types/plan'
import type { GarlandLayout, UnitSystem } from '../../../shared-types/project'
import type { Extra } from '../../materials/kit/read'
import { formatLength } from '../../units/format'
import { isUsableOrZero } from '../../units/usable'

/** Beads and a bought cord as things to put into a kit that has these extras already. */
export const garlandPutIn = (
  { items, cord }: GarlandAccount,
  layout: GarlandLayout,
  extras: readonly Extra[],
  units: UnitSystem,
): Extra[] => [...beadsOf(items, layout), ...cordOf(cord, layout, extras, units)]

/** Beads on a garland as things to put in, by name. */
function beadsOf(items: readonly GarlandItem[], layout: GarlandLayout): Extra[] {
  const beads = new Map<string, Extra>()
  for (const { bead } of items) {
    if (bead === '') continue
    const part = layout.items?.find(
      (item) => item.bead !== undefined && (item.bead.trim() || 'bead') === bead,
    )
    const { price, grams } = part ?? {}
    const known = beads.get(bead)
    beads.set(bead, {
      name: bead,
      perKit: (known?.perKit ?? 0) + 1,
      price: isUsableOrZero(price) ? price : null,
      grams: isUsableOrZero(grams) ? grams : null,
    })
  }
  return [...beads.values()]
}

/** What a bought cord, cut for one garland, is called among the things to put in; null where none is bought. */
export function cordName(cord: CordAccount | undefined, units: UnitSystem): string | null {
  return cord && cord.chains === null ? `cord, ${formatLength(cord.whole.length, units)}` : null
}

/** The bought cord of a garland as a thing to put in, unless the seller has put one in by name. */
function cordOf(
  cord: CordAccount,
  { cord: asked }: GarlandLayout,
  extras: readonly Extra[],
  units: UnitSystem,
): Extra[] {
  const name = cordName(cord, units)
  if (name === null || extras.some((extra) => /\bcord\b/i.test(extra.name))) return []
  const { price, grams } = asked ?? {}
  return [
    {
      name,
      perKit: 1,
      price: isUsableOrZero(price) ? price : null,
      grams: isUsableOrZero(grams) ? grams : null,
    },
  ]
}
