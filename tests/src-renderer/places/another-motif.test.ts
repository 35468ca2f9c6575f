/** Rounds of another motif take the place of one that was measured and weighed. */
import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { lostSizes, replaceRounds } from '../../../src-renderer/places/motif/rounds/edits'

const SQUARE = `Rnd 1: Ch 4, join. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join. (12 dc)
Rnd 2: Sl st to ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times; join. (24 dc)`

const measured = (sizes: RoundsMotif['measured'], gauge = true): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  ...(gauge && { gauge: { stitch: 'dc', stitches: 16, rows: 8, over: 100, hook: 4 } }),
  motifs: [
    {
      ...{ id: 'm1', kind: 'rounds', rounds: [{ work: 'Magic ring, 6 sc.' }], measured: sizes },
      weighed: { motifs: 10, resolution: 1 },
    },
  ],
})
const pasted = (before: Project): RoundsMotif =>
  replaceRounds(before, 'm1', takeApart(SQUARE, 'US')).motifs![0] as RoundsMotif

describe('what was measured and weighed', () => {
  it('goes where the rounds are plainly those of another motif', () => {
    const before = measured({ overTips: 21, overValleys: 15 })
    expect(pasted(before)).toMatchObject({ measured: undefined, weighed: undefined })
    expect(lostSizes(before, replaceRounds(before, 'm1', takeApart(SQUARE, 'US')), 'm1')).toBe(true)
  })

  it('stays where it may be of the same motif, as a square is measured', () => {
    const before = measured({ overTips: 90 })
    expect(pasted(before).measured).toEqual({ pointToPoint: 90 })
    expect(pasted(before).weighed).toEqual({ motifs: 10, resolution: 1 })
  })

  it('stays where no gauge says how large the rounds come out', () => {
    expect(pasted(measured({ overTips: 21 }, false)).measured).toEqual({ pointToPoint: 21 })
  })
})
