/** One repeat of a chart: counted by hand, and held against the whole. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { chartFigures, readableFigures, segmentFigures } from '../../../src-core/figures/chart'
import type { ChartFigure, ChartMark } from '../../../src-core/figures/chart'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { LEAF, PICOTS } from './chart-motifs'

const ROOM = { width: 123, height: 230, hand: 'right', style: 'ink' } as const
const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

const drawingOf = (motif: RoundsMotif) =>
  roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 }).drawing()

const segments = (motif: RoundsMotif, options: Parameters<typeof chartFigures>[2] = ROOM) => {
  const { located, beginning } = drawingOf(motif)!
  return {
    whole: chartFigures(located, beginning, options),
    repeats: segmentFigures(located, beginning, options),
    printed: readableFigures(located, beginning, options),
  }
}

/** Twelve more in each round. */
const flat = (rounds: number): RoundsMotif => ({
  id: 'flat',
  kind: 'rounds',
  gauge: GAUGE,
  foundation: { ring: 'adjustable' },
  rounds: Array.from({ length: rounds }, (_, at) => {
    const join = 'join with sl st in top of beg ch-3'
    if (at === 0) return { work: `ch 3 (counts as dc), 11 dc in ring, ${join}` }
    const plain = at === 1 ? '' : `, dc in next ${at - 1} dc`
    return {
      work: `ch 3 (counts as dc), dc in same st${plain}, *2 dc in next dc${plain}; rep from * around, ${join}`,
    }
  }),
})

/** Marks of the stitches of a round, as numbers of the order worked. */
const worked = (figure: ChartFigure, round: number): number[] =>
  figure.marks
    .filter((mark: ChartMark) => mark.round.round.number === round && mark.element.standing)
    .map(({ element }) => element.index)

describe('one repeat of a chart', () => {
  it('is a twelfth of twelve increases a round, with the beginnings and a little beside it', () => {
    const { whole, repeats } = segments(flat(12))
    expect(repeats).toHaveLength(1)
    const [figure] = repeats
    expect(figure).toMatchObject({ repeats: 12, rounds: Array.from({ length: 12 }, (_, i) => i + 1) })
    // Round 12 has 144 stitches: 12 in a repeat, a quarter of that before and behind, and what the beginnings are apart.
    const shown = worked(figure!, 12)
    expect(shown.length).toBeGreaterThanOrEqual(12 + 6)
    expect(shown.length).toBeLessThan(36)
    for (let i = 0; i < 12; i++)
      expect(shown).toContain(
        whole[0]!.marks.filter(({ round, element }) => round.round.number === 12 && element.standing)[i]!
          .element.index,
      )
    expect(figure!.unit).toBeGreaterThan(1.25 * whole[0]!.unit)
    // All of it lies on the page.
    for (const { base, top } of figure!.marks)
      for (const { x, y } of [base, top]) {
        expect(x).toBeGreaterThan(0)
        expect(x).toBeLessThan(figure!.width)
        expect(y).toBeGreaterThan(0)
        expect(y).toBeLessThan(figure!.height)
      }
    expect(figure!.width).toBeLessThanOrEqual(ROOM.width + 1e-6)
    expect(figure!.height).toBeLessThanOrEqual(ROOM.height + 1e-6)
  })

  it('is mirrored for left-handers', () => {
    const own = segments(PICOTS).repeats[0]!
    const other = segments(PICOTS, { ...ROOM, hand: 'left' }).repeats[0]!
    expect(other.width).toBeCloseTo(own.width, 6)
    own.marks.forEach(({ top }, i) => {
      expect(other.marks[i]!.top.x).toBeCloseTo(own.width - top.x, 6)
      expect(other.marks[i]!.top.y).toBeCloseTo(top.y, 6)
    })
  })

  it('follows the whole only where that is too small to work from', () => {
    const small = segments(flat(18))
    expect(small.whole[0]!.unit).toBeLessThan(2.2)
    expect(small.printed).toHaveLength(2)
    expect(small.printed[1]).toMatchObject({ repeats: 12 })
    const large = segments(flat(6))
    expect(large.printed).toHaveLength(1)
  })

  it('begins with the round from which on the rounds repeat together, what that is worked into lighter', () => {
    const uneven = flat(14)
    const [first, ...rest] = uneven.rounds!
    // Eleven stitches repeat with nothing but themselves.
    const odd = {
      ...uneven,
      rounds: [
        { work: first!.work.replace('11 dc', '10 dc') },
        {
          work: 'ch 3 (counts as dc), 3 dc in same st, 2 dc in each of next 10 dc, join with sl st in top of beg ch-3',
        },
        ...rest.slice(1),
      ],
    }
    const [figure] = segments(odd).repeats
    expect(figure).toMatchObject({ repeats: 12, rounds: Array.from({ length: 12 }, (_, i) => i + 3) })
    expect(new Set(figure!.carriers.map(({ round }) => round.round.number))).toEqual(new Set([2]))
  })

  it('is none of a leaf, nor of what would hardly be larger', () => {
    expect(segments(LEAF).repeats).toEqual([])
    expect(segments(flat(3)).repeats).toEqual([])
  })
})
