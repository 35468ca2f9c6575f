/** M28. Half motifs at the ends of offset rows; counts by hand. Their share of yarn is from memory. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { halfOutline } from '../../../src-core/geometry/half'
import { boxOf, signedArea } from '../../../src-core/geometry/points'
import { sharedArea } from '../../../src-core/geometry/polygons'
import { HALF_SHARE } from '../../../src-core/layout/constants'
import { halfNotes } from '../../../src-core/layout/halves'
import { petalOutline } from '../../../src-core/motif/outlines'
import { planProject } from '../../../src-core/plan'
import { formatLength } from '../../../src-core/units/format'
import { readExample } from '../joining-round/flowers'
import { countTogether } from '../joins/together'
import { blanket, ROUND } from './additions'

const HEXAGON = { outline: 'hexagon', sideToSide: 80 }
const SMALL = { outline: 'round', across: 10 }
const offset = { arrangement: 'offset-rows' as const, halves: true }

describe('M28 half motifs', () => {
  it('one for each row where all rows hold the same; two in every short row else', () => {
    for (const rows of [2, 3, 4, 7])
      for (const [alternateRows, expected] of [
        ['same', rows],
        ['oneFewer', 2 * Math.floor(rows / 2)],
        ['oneMore', 2 * Math.ceil(rows / 2)],
      ] as const) {
        const plan = planProject(blanket(HEXAGON, SMALL, { ...offset, alternateRows, rows }))
        expect(plan.halves).toHaveLength(expected)
      }
  })

  it('stand with their cut edge flush with the side, and the width does not change', () => {
    for (const alternateRows of ['same', 'oneFewer', 'oneMore'] as const)
      for (const joining of [{}, { rule: 'bridge' as const, bridgeChains: 3 }]) {
        const layout = { ...offset, alternateRows }
        const plan = planProject(blanket(HEXAGON, SMALL, layout, { joining }))
        const without = planProject(blanket(HEXAGON, SMALL, { ...layout, halves: false }, { joining }))
        expect(plan.size).toEqual(without.size)
        for (const half of plan.halves) {
          expect(half.x).toBeCloseTo(half.side === 'left' ? 0 : plan.size.width, 6)
          expect(plan.motifs.find(({ row }) => row === half.row)!.y).toBe(half.y)
        }
        expect(new Set(plan.halves.map(({ row, side }) => `${row} ${side}`)).size).toBe(plan.halves.length)
      }
  })

  it('fill what hexagons leave at the sides: with them the sides are straight', () => {
    const plan = planProject(blanket(HEXAGON, SMALL, { ...offset, columns: 3, rows: 4 }))
    const { outline } = plan.motif!
    // Area of a regular hexagon, side to side 80 mm: 80²·√3/2.
    const whole = (80 * 80 * Math.sqrt(3)) / 2
    expect(signedArea(halfOutline(outline, 'right'))).toBeCloseTo(whole / 2, 0)
    expect(signedArea(outline)).toBeCloseTo(whole, 0)
    const right = halfOutline(outline, 'right')
    expect(boxOf(right)).toMatchObject({ left: 0, right: expect.closeTo(40, 6) as number })
  })

  it('a half and its counterpart make the whole, also across petals that run back', () => {
    for (const petals of [3, 5, 6, 8]) {
      const outline = petalOutline(petals, 40, 20)
      const left = halfOutline(outline, 'left')
      const right = halfOutline(outline, 'right')
      expect(signedArea(left) + signedArea(right)).toBeCloseTo(signedArea(outline), 6)
      expect(sharedArea([left], [right])).toBeLessThan(0.01)
    }
  })

  it('take 0.55 of a whole one in yarn and time, ends of their own', () => {
    const layout = { ...offset, rows: 6 }
    const plan = planProject(blanket(ROUND, SMALL, layout))
    const without = planProject(blanket(ROUND, SMALL, { ...layout, halves: false }))
    expect(plan.counts).toEqual({ ...without.counts, halves: 6, joins: plan.counts.joins })
    expect(plan.yarns[0]!.grams.expected - without.yarns[0]!.grams.expected).toBeCloseTo(
      6 * HALF_SHARE * 4,
      9,
    )
    expect(plan.ends - without.ends).toBe(6 * 2)
    const joins = plan.halves.reduce((sum, half) => sum + half.joins, 0)
    expect(plan.minutes!.expected - without.minutes!.expected).toBeCloseTo(6 * (0.55 * 20 + 2) + joins, 9)
  })

  it('are joined where their places meet neighbours', () => {
    // Circles touch the one beside them and those above and below: two at the first and last row, three between.
    const round = planProject(blanket(ROUND, SMALL, { ...offset, rows: 5 }))
    expect(round.halves.map(({ joins }) => joins)).toEqual([2, 3, 3, 3, 2])
    // Six petals with a tip at 3 o'clock meet six neighbours tip to tip, like circles.
    const flower = { outline: 'petals', petals: 6, overTips: 80, overValleys: 56 }
    const tips = planProject(blanket(flower, SMALL, { ...offset, rows: 5, turn: 30 }))
    expect(tips.halves.map(({ joins }) => joins)).toEqual([2, 3, 3, 3, 2])
    const sewn = planProject(blanket(HEXAGON, SMALL, offset, { joining: { rule: 'seam' } }))
    const plain = planProject(
      blanket(HEXAGON, SMALL, { ...offset, halves: false }, { joining: { rule: 'seam' } }),
    )
    // Each side of the half hexagons that meets a neighbour is a seam of 80/√3; whip stitch takes three times that.
    const sides = 2 + 3 + 3 + 2
    const grams = ((sides * 80) / Math.sqrt(3) / 1000) * 3 * (50 / 150)
    const joins = (plan: typeof sewn) => plan.yarns[0]!.parts.joins
    expect(joins(sewn) - joins(plain)).toBeCloseTo(grams, 2)
  })

  it('odd petals have no true half: the nearest are told', () => {
    const flower = (petals: number) => ({ outline: 'petals', petals, overTips: 80, overValleys: 56 })
    const five = planProject(blanket(flower(5), SMALL, offset))
    expect(five.findings.find(({ code }) => code === 'layout/halves-odd')!.message).toBe(
      'a motif with 5 petals has no true half; the closest are 2 or 3.',
    )
    const six = planProject(blanket(flower(6), SMALL, offset))
    expect(six.findings.filter(({ code }) => code.startsWith('layout/halves'))).toEqual([])
  })

  it('that nobody says how to work are noted, with their straight side', () => {
    const told = (own: object, layout: object = offset) =>
      planProject(blanket({ ...HEXAGON, ...own }, SMALL, layout)).findings.filter(({ code }) =>
        code.startsWith('layout/half-'),
      )
    // From point to point: 80 / cos 30°.
    expect(told({}).map(({ message }) => message)).toEqual([
      expect.stringMatching(
        /: nothing says how a half of it is worked\. Its straight side has to be 92 mm long, about \d+ stitches\.$/,
      ),
    ])
    expect(told({ instructions: 'Half: ch 4, 6 dc in ring, turn.' })).toEqual([])
    expect(told({ instructions: 'Work a hexagon.' })).toHaveLength(1)
    expect(told({}, { ...offset, halves: false })).toEqual([])
  })

  it('of a motif in rounds have as many rows, and half of the last round', () => {
    const example = readExample('limekiln-cushion')
    const [hexagon] = example.motifs as [RoundsMotif]
    // Back loops lie in front where a row is turned: its half does not follow.
    const rounds = hexagon.rounds!.map((round, i) =>
      i < 3 ? round : { ...round, work: round.work.replace('ch 1, ', 'ch 1, working in back loops only, ') },
    )
    const file = { ...example, motifs: [{ ...hexagon, rounds }] }
    const layout = {
      kind: 'blanket',
      arrangement: 'offset-rows',
      motif: 'hexagon',
      columns: 4,
      rows: 5,
    } as const
    const plan = planProject({ ...file, layout: { ...layout, halves: true } })
    const [note, ...more] = plan.findings.filter(({ code }) => code.startsWith('layout/half-'))
    expect(more).toEqual([])
    const across = plan.motif!.overTips
    expect(note!.message).toContain(
      `Back and forth it takes 4 rows; its straight side has to be ${formatLength(across, plan.settled.units)} long, about `,
    )
    expect(note!.message).toContain('its last row makes half of the 48 stitches of the last round.')
    expect(halfNotes(plan, 'hexagon')).toEqual([note!.message])
  })

  it('other arrangements have nothing to fill', () => {
    for (const layout of [
      { arrangement: 'straight-rows' as const },
      { arrangement: 'rings' as const, rings: 2 },
      { arrangement: 'offset-rows' as const, rows: 1 },
    ]) {
      const plan = planProject(blanket(ROUND, SMALL, { ...layout, halves: true }))
      expect(plan.halves).toEqual([])
      expect(plan.findings.some(({ code }) => code === 'layout/halves-nothing')).toBe(true)
    }
  })

  it('are told to be for no end of a row, where offset rows are cut to an outline', () => {
    const outlineShape = { kind: 'triangle', size: 600, height: 300 } as const
    const layout = { arrangement: 'offset-rows', columns: 9, rows: 5, halves: true, outlineShape } as const
    const plan = planProject(
      blanket({ outline: 'hexagon', sideToSide: 122 }, SMALL, { ...layout, alternateRows: 'oneFewer' }),
    )
    expect(plan.halves).toEqual([])
    const told = plan.findings.filter(({ code }) => code.startsWith('layout/halves-n'))
    expect(told.map(({ code }) => code)).toEqual(['layout/halves-no-end'])
    expect(told[0]!.mend).not.toContain('offset rows')
  })

  it('take the colourway of their row, or one unlike their neighbours’ where no two alike may touch', () => {
    const ways = ['p', 'q', 'r'].map((id) => ({ id, motif: 'm', yarns: { all: 'y' } }))
    const coloured = (pattern: 'rows' | 'no-two-alike') =>
      planProject(
        blanket(
          ROUND,
          SMALL,
          { ...offset, rows: 6, cells: { fill: { pattern, colourways: ['p', 'q', 'r'], seed: 1 } } },
          { colourways: ways },
        ),
      )
    const rows = coloured('rows')
    for (const half of rows.halves)
      expect(half.colourway).toBe(rows.motifs.find(({ row }) => row === half.row)!.colourway)
    const unlike = coloured('no-two-alike')
    for (const half of unlike.halves) {
      const beside = unlike.motifs.filter(({ x, y }) => Math.hypot(x - half.x, y - half.y) < 81)
      expect(beside.length).toBeGreaterThan(1)
      for (const motif of beside) expect(motif.colourway).not.toBe(half.colourway)
    }
  })

  it('straighten the edge that an edging follows', () => {
    const layout = { ...offset, rows: 8, edging: { style: 'follow' as const, rounds: ['sc'], yarn: 'y' } }
    const edge = (halves: boolean) =>
      planProject(blanket(HEXAGON, SMALL, { ...layout, halves })).edging!.rounds[0]!.length
    expect(edge(true)).toBeLessThan(edge(false))
  })
})

describe('M32 half motifs hang like motifs', () => {
  it('counts them in the pieces and among what hangs on one join point', () => {
    let fallsApart = 0
    for (const petals of [4, 5, 6, 7, 8, 9, 12])
      for (const turn of [0, 15, 22.5, 30])
        for (const alternateRows of ['same', 'oneFewer', 'oneMore'] as const) {
          const motif = { outline: 'petals', petals, overTips: 82, overValleys: 60 }
          const layout = { ...offset, alternateRows, turn, columns: 3, rows: 4 }
          const plan = planProject(blanket(motif, SMALL, layout))
          const { pieces, single } = plan
          expect({ petals, turn, alternateRows, pieces, single }).toMatchObject(countTogether(plan))
          if (plan.halves.some(({ joins }) => joins < 2)) fallsApart++
        }
    expect(fallsApart).toBeGreaterThan(5)
  })

  it('names the half motif that hangs on one join point', () => {
    const motif = { outline: 'petals', petals: 7, overTips: 82, overValleys: 60 }
    const { findings } = planProject(blanket(motif, SMALL, { ...offset, columns: 1, rows: 2 }))
    const told = findings.find(({ code }) => code === 'joins/one-node')
    expect(told?.message).toContain('row 1, right half motif')
    expect(told?.target?.cells).toContain('1,right')
  })
})
