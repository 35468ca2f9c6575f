/** M27: squares between octagons lie along their sides: joined stitch for stitch from corner to corner. Counted by hand. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { whichWords } from '../../../src-core/joining-round/words'
import { planProject } from '../../../src-core/plan'
import { blanket, ROUND } from './additions'

/** Octagons of 100 mm have sides of 100 · (√2 − 1), and so has the opening between four of them. */
const SIDE = 100 * (Math.SQRT2 - 1)
const OCTAGON = { outline: 'octagon', sideToSide: 100 }
const among = (
  sideToSide: number,
  more: Partial<Project> = {},
  motif: object = OCTAGON,
  filler: object = {},
) =>
  planProject(
    blanket(
      motif,
      { outline: 'square', sideToSide, ...filler },
      { columns: 3, rows: 3, fillers: { motif: 'f' } },
      more,
    ),
  )

describe('M27 a square between four octagons', () => {
  it.each([SIDE, 0.9 * SIDE, SIDE + 1.5])('of %f mm is joined along each of its four sides', (side) => {
    const plan = among(side)
    expect(plan.fillers).toHaveLength(4)
    const steps = plan.order.filter(({ kind }) => kind === 'filler')
    expect(steps).toHaveLength(4)
    // Rows there and back, 1 2 3 and back 4 5 6: the first that is closed in is between 2, 3, 4 and 5.
    expect(steps[0]!.words).toMatch(
      /^join stitch for stitch along each of its four sides: side 1 to \d+, side 2 to \d+, side 3 to \d+, side 4 to \d+$/,
    )
    expect([...steps[0]!.words.matchAll(/to (\d+)/g)].map(([, n]) => Number(n)).sort()).toEqual([2, 3, 4, 5])
    for (const { joins, words } of steps) {
      expect(joins.map(({ along }) => along)).toEqual([true, true, true, true])
      expect(joins[0]!.words).toMatch(/^side 1: join stitch for stitch along its whole length to \d+$/)
      expect(words).not.toMatch(/at its|place/)
    }
  })

  it('sewn, its seams are as long as its sides: 4 fillers of 4', () => {
    const seam = {
      yarns: ['y', 'z', 'j'].map((id) => ({ id, ballGrams: 50, ballMetres: 150 })),
      joining: { rule: 'seam' as const, seam: 'whip' as const, yarn: 'j' },
      allowance: { wastePercent: 0, tail: 0 },
    }
    const plan = among(SIDE, seam)
    expect(plan.order.find(({ kind }) => kind === 'filler')!.words).toMatch(
      /^sew side 1 to motif \d+; side 2 to motif/,
    )
    const sewn = ({ yarns }: typeof plan): number => yarns.find(({ id }) => id === 'j')!.grams.expected
    const bare = planProject(
      blanket(OCTAGON, { outline: 'square', sideToSide: SIDE }, { columns: 3, rows: 3 }, seam),
    )
    // Sewn takes three times its length; 150 m weigh 50 g.
    expect(sewn(plan) - sewn(bare)).toBeCloseTo((3 * 16 * SIDE) / 1000 / 3, 6)
  })

  it('between circles it touches at a point of each side, as the clock tells', () => {
    const plan = among(2 * 40 * (Math.SQRT2 - 1), {}, ROUND)
    const step = plan.order.find(({ kind }) => kind === 'filler')!
    expect(step.joins.map(({ along }) => along ?? false)).toEqual([false, false, false, false])
    expect(step.words).not.toContain('stitch for stitch')
    expect(step.words).toContain('at its half past 4')
  })

  it('at its corners it is not joined along anything', () => {
    const plan = among(Math.SQRT2 * 40 * (Math.SQRT2 - 1), {}, ROUND)
    expect(plan.order.find(({ kind }) => kind === 'filler')!.words).not.toContain('stitch for stitch')
  })
})

describe('the joining round of such a square', () => {
  it('of a measured one, and of one with written rounds', () => {
    const [one, ...others] = joiningRounds(among(SIDE), 'US').filter(({ kind }) => kind === 'filler')
    expect(others).toEqual([])
    expect(one).toMatchObject({ title: 'Joined stitch for stitch along each of its four sides', joins: 4 })
    expect(whichWords(one!)).toMatch(/^4 fillers/)
    expect(one!.words).toBe(
      'Work it without joining up to its last round; in that, along each of its four sides, join every st: drop lp, insert hook in matching st of neighbor, draw lp through, and go on.',
    )
    const rounds = {
      kind: 'rounds',
      foundation: { ring: 'chain', chains: 4 },
      rounds: [
        {
          slot: 'all',
          work: 'ch 3, 2 dc in ring, *ch 2, 3 dc in ring; rep from * 2 more times, ch 2, join with sl st in top of ch 3',
        },
        {
          slot: 'all',
          work: 'sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join with sl st in top of ch 3',
        },
      ],
      measured: { sideToSide: SIDE },
    }
    const [written] = joiningRounds(among(SIDE, {}, OCTAGON, rounds), 'UK').filter(
      ({ kind }) => kind === 'filler',
    )
    expect(written!.words).toMatch(
      /^Work (Round|Rnd) 2 as written; along each of its four sides, join every st: drop lp, insert hook in matching st of neighbour, draw lp through, and go on\.$/,
    )
  })
})
