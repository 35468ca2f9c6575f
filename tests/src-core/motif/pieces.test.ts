/** Patterns with several parts, worded by us: each on a ring or chain of its own is a piece, and a motif is the first. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { takeApart } from '../../../src-core/notation/take-apart'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

function pasted(text: string) {
  const { rounds, foundation, special } = takeApart(text, 'US', 'US')
  const motif: RoundsMotif = {
    id: 'm',
    kind: 'rounds',
    gauge: GAUGE,
    ...(foundation && { foundation }),
    special,
    rounds: rounds.map(({ work }) => ({ work })),
  }
  return roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
}

const FLOWER = `Ch 5, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 3, sk next sc; rep from * 5 more times; join with sl st in first sc.
Rnd 3: (Sc, hdc, dc, hdc, sc) in each ch-3 sp around; join with sl st in first sc.`

const LEAF = `LEAF (make 2)
Ch 6.
Rnd 1: Sc in 2nd ch from hook, dc in next 3 chs, 3 sc in last ch; working along opposite side of ch, dc in next 3 chs, sc in last ch; join with sl st in first sc. (11 sts)`

const codes = ({ findings }: ReturnType<typeof pasted>) => findings.map(({ code }) => code)

describe('rounds of several pieces', () => {
  it('a flower keeps its size, chart and yarn when its leaf is pasted with it, and the leaf is told', () => {
    const alone = pasted(`FLOWER\n${FLOWER}`)
    const both = pasted(`FLOWER\n${FLOWER}\n\n${LEAF}`)
    expect(codes(alone)).toEqual([])
    expect(codes(both)).toEqual(['motif/other-piece'])
    expect(both.findings[0]!.target).toMatchObject({ motif: 'm', entry: 3, round: 1 })
    const { findings: _, ...account } = both.account!
    const { findings: __, ...wanted } = alone.account!
    expect(account).toEqual(wanted)
    expect(both.drawing()!.located).toHaveLength(3)
    // What is written is read to its end all the same.
    expect(both.read.worked).toHaveLength(4)
    expect(both.read.worked[3]!.stitches).toBe(11)
  })

  it('petals that go on from their center are one piece with it', () => {
    const text = `CENTER
Rnd 1: Magic ring, ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)

PETALS
Rnd 2: Join B with sl st in any sc, ch 1, 2 sc in each sc around; join with sl st in first sc. (16 sc)`
    const told = pasted(text)
    expect(codes(told)).toEqual([])
    expect(told.account!.rounds.map(({ stitches }) => stitches)).toEqual([8, 16])
  })

  it('a second motif worked like the first one up to its last round is a piece of its own', () => {
    const told = pasted(`First Motif
Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)
Rnd 2: Ch 1, sc in each dc around; join with sl st in first sc. (12 sc)

Second Motif
Rnd 1: Same as First Motif.
Rnd 2: Ch 1, 2 sc in each dc around; join with sl st in first sc. (24 sc)`)
    expect(codes(told)).toEqual(['motif/other-piece'])
    expect(told.account!.rounds.map(({ stitches }) => stitches)).toEqual([12, 12])
    expect(told.read.worked.map(({ stitches }) => stitches)).toEqual([12, 12, 12, 24])
  })

  it('a chain that the first round works into as a ring is one, however its closing is told', () => {
    const told = pasted(`Make a ch of 8, join in ring. 1st row—Ch 3, 23 dc in ring, join to top of ch 3.`)
    expect(told.account!.shape).toBe('round')
    expect(told.beginning).toMatchObject({ ringChains: 8, stem: [] })
  })
})
