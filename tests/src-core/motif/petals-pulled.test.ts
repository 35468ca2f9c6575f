/** A round over petals, as even in their dips as on their tips. Common practice, no source: tension decides what it does. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'

const PETALS = [
  'ch 1, 12 sc in ring, join with sl st in first sc',
  'ch 1, *sc in next sc, ch 5, sk next sc; rep from * 5 more times, join with sl st in first sc',
  '(sc, hdc, dc, 3 tr, dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
]

function told(...edge: string[]) {
  const motif: RoundsMotif = {
    id: 'm1',
    kind: 'rounds',
    foundation: { ring: 'chain', chains: 4 },
    gauge: { stitch: 'dc', stitches: 18, rows: 9, over: 100, hook: 4 },
    rounds: [...PETALS, ...edge].map((work) => ({ slot: 'a', work })),
  }
  const { account, findings } = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  const pulled = findings.filter(({ code }) => code === 'motif/petals-pulled')
  return { shape: account?.shape, pulled: pulled.map(({ target }) => target?.round) }
}

describe('an even edge over petals', () => {
  it('is told to straighten them where it does so here', () => {
    const edge =
      'ch 1, *sc in next 4 sts, 3 sc in next st, sc in next 4 sts; rep from * 5 more times, join with sl st in first sc'
    expect(told(edge)).toEqual({ shape: 'straight', pulled: [4] })
  })

  it('is not spoken of without an edge, or where chains cross the dips', () => {
    expect(told()).toEqual({ shape: 'petals', pulled: [] })
    const bridge =
      'ch 1, *sk next 4 sts, (3 sc) in next st, sk next 4 sts, ch 6; rep from * 5 more times, join with sl st in first sc'
    expect(told(bridge).pulled).toEqual([])
  })
})
