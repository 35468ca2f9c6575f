/** How stitches more or fewer are spread along the sides of a round, in words. */
import { counted } from '../figures/words'
import { times } from '../notation/restyle'
import { formatNumber } from '../units/format'
import type { SideChange } from './fit'

/**
 * "work 2 together twice along each of the 2 sides of 46 sts, about every 15 sts, and 2 in one stitch once along the side
 * of 31 sts, near its middle": with as many stitches before the first of them as from one to the next. Empty where
 * nothing changes.
 */
export function spreadWords(sides: readonly SideChange[]): string {
  const kinds = new Map<string, { side: SideChange; count: number }>()
  for (const side of sides) {
    const key = `${side.stitches} ${side.more}`
    kinds.set(key, { side, count: (kinds.get(key)?.count ?? 0) + 1 })
  }
  return [...kinds.values()]
    .filter(({ side }) => side.more !== 0)
    .map(({ side: { stitches, more }, count }) => {
      const many = Math.abs(more)
      const apart = Math.max(1, Math.round(stitches / (many + 1)))
      const which = count === 1 ? 'the side' : `each of the ${formatNumber(count)} sides`
      const where = many === 1 ? 'near its middle' : `about every ${counted(apart, 'st')}`
      return `work ${more > 0 ? '2 in one stitch' : '2 together'} ${times(many)} along ${which} of ${counted(stitches, 'st')}, ${where}`
    })
    .join('; ')
}
