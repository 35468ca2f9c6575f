/** Whose tip is whose along a bridging border: against a look at every motif, and asked once. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import { gapsToNext } from '../../../src-core/edging/bridge-spans'
import { workedLine } from '../../../src-core/edging/direction'
import { planProject } from '../../../src-core/plan'
import { readExample } from '../joining-round/flowers'

/** Every motif for every tip; what is joined in a tip belongs to all whose tips seem to lie as far out, to 5 %. */
function byAll({ motifs, halves, accounts, motif, edgingLines, settled }: Plan): boolean[] {
  const pieces = [...motifs, ...halves].map(({ x, y, motif: id }) => {
    const account = accounts.find((each) => each.id === id) ?? motif
    return { x, y, reach: account!.overTips / 2 }
  })
  const bearers = workedLine(edgingLines, 0, false, settled.hand).map(({ x, y }) => {
    const far = pieces.map((piece) => Math.hypot(x - piece.x, y - piece.y) / piece.reach)
    const least = Math.min(...far)
    return far.flatMap((each, i) => (each <= 1.05 * least ? [i] : []))
  })
  return bearers.map((own, i) => !own.some((each) => bearers[(i + 1) % bearers.length]!.includes(each)))
}

describe('the gaps of a bridging border', () => {
  it.each(['estuary-dusk-shawl', 'hedgerow-baby-throw', 'market-stall-throw', 'orchard-floor-blanket'])(
    'of %s lie within a motif or lead to the next',
    (name) => {
      const plan = planProject(readExample(name))
      const told = gapsToNext(plan, 0)
      expect(told).toEqual(byAll(plan))
      expect(new Set(told).size).toBe(2)
      // Each page that says something of them asks again.
      expect(gapsToNext(plan, 0)).toBe(told)
    },
  )
})
