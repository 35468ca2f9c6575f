/** Leaves, ovals and pieces in rows as their charts draw them, with borders round them. Texts of our own. */
import { describe, expect, it } from 'vitest'
import type { Point } from '../../../shared-types/plan'
import { chartFigures } from '../../../src-core/figures/chart'
import type { LocatedElement, LocatedRound } from '../../../src-core/motif/rounds/ground'
import { crossings } from '../figures/crossings'
import { workedMotif } from './written-motif'

const ROOM = { width: 186, height: 200, hand: 'right', style: 'ink' } as const

function drawn(rounds: string[], chain: number) {
  const { account, drawing } = workedMotif(rounds, { chain })
  const { located, beginning } = drawing()!
  return { account: account!, located, beginning, figures: chartFigures(located, beginning, ROOM) }
}

const standing = ({ elements }: LocatedRound): LocatedElement[] =>
  elements.filter(({ element }) => element.standing)
const box = (points: readonly Point[]) => {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
}
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
/** From top to top around a round, the gap of its beginning left out. */
const steps = (round: LocatedRound): number[] => {
  const tops = standing(round).map(({ top }) => top)
  return tops.slice(1).map((top, i) => apart(tops[i]!, top))
}

const TILE = [
  'hdc in 3rd ch from hook (2 skipped chs do not count) and in each ch across, turn',
  ...Array.from({ length: 7 }, () => 'ch 1 (does not count), hdc in each hdc across, turn'),
  'Rnd 1: ch 1, 3 sc in first hdc, sc in next 9 hdc, 3 sc in last hdc; work 9 sc evenly spaced along row ends; working in free loops of foundation ch, 3 sc in first ch, sc in next 9 chs, 3 sc in last ch; work 9 sc evenly spaced along row ends; join with sl st in first sc',
  'ch 1, sc in each sc around, join with sl st in first sc',
]

const OVAL = [
  '2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch, working along opposite side of chain, sc in next 7 ch, 2 sc in last ch, join with sl st in first sc',
  'ch 1, 2 sc in each of next 2 sc, sc in next 7 sc, 2 sc in each of next 4 sc, sc in next 7 sc, 2 sc in each of next 2 sc, join with sl st in first sc',
  'ch 1, sc in each sc around, join with sl st in first sc',
]

const LEAF = [
  'sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, 3 sc in last ch, working along opposite side of chain, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, sc in next ch, join with sl st in first sc',
  'ch 1, sc in each of next 11 sts, (sc, ch 2, sc) in next st, sc in each of next 11 sts, join with sl st in first sc',
]

/** How far outlines turn inward at most from one point to the next, in mm off the line between its neighbors. */
const hollow = (points: readonly Point[], apart: number): number =>
  Math.max(
    ...points.map((point, i) => {
      const a = points.at(i - apart)!
      const b = points[(i + apart) % points.length]!
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1
      return ((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / length
    }),
  )

describe('a leaf that chains close', () => {
  const side = 'hdc in next ch, dc in next 2 ch, tr in next 2 ch, dc in next 2 ch, hdc in next ch'
  const closed = (end: string) =>
    drawn(
      [
        `sc in 2nd ch from hook, ${side}, 3 sc in last ch, working along other side of chain, ${side}, sc in last ch, ${end}`,
      ],
      11,
    )

  it.each([
    'join with sl st in first sc',
    'ch 1, sl st in first sc',
    'ch 2, sl st in first sc',
    'ch 3, sl st in first sc',
  ])('has no waist, and its tip clear of its stitches: %s', (end) => {
    const { account, figures } = closed(end)
    for (const apart of [4, 8, 12]) expect(hollow(account.outline, apart)).toBeLessThan(0.15)
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
  })

  it('keeps the lobes that slip stitches make', () => {
    const lobe = '(hdc, 2 tr, hdc) in next ch, sl st in next 2 ch'
    const { account } = drawn(
      [
        `sc in 2nd ch from hook, sc in next ch, ${lobe}, ${lobe}, (hdc, dc, hdc) in next ch, sc in next 3 ch, 3 sc in last ch, working along other side of chain, sc in next 3 ch, (hdc, dc, hdc) in next ch, sl st in next 2 ch, (hdc, 2 tr, hdc) in next ch, sl st in next 2 ch, (hdc, 2 tr, hdc) in next ch, sc in last 2 ch, sl st in first sc`,
      ],
      14,
    )
    expect(hollow(account.outline, 8)).toBeGreaterThan(2)
  })
})

describe('a piece in rows with a border', () => {
  const { account, located, beginning, figures } = drawn(TILE, 13)
  const rows = located.slice(0, 8)
  const border = located[8]!

  it('has no symbol on another, and grows from the chain up', () => {
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
    const [first, last] = [figures[0]!.marks[0]!, figures[0]!.marks.filter((m) => m.round === rows[7])[5]!]
    expect(last.top.y).toBeLessThan(first.base.y - 6 * figures[0]!.unit)
  })

  it('has straight rows of stitches that stand on those of the row before', () => {
    rows.slice(1).forEach((row, i) => {
      const below = standing(rows[i]!).map(({ top }) => top)
      for (const { base } of standing(row))
        expect(Math.min(...below.map((top) => apart(top, base)))).toBeLessThan(0.01)
      const xs = standing(row).map(({ top }) => top.x)
      expect(Math.max(...xs) - Math.min(...xs)).toBeLessThan(0.01)
      for (const step of steps(row)) expect(step).toBeCloseTo(beginning.stitchWidth, 6)
    })
  })

  it('has its border all round it, evenly, with three stitches at each corner', () => {
    const [left, right, top, bottom] = box(rows.flatMap((row) => standing(row).map((entry) => entry.top)))
    const tops = standing(border).map((entry) => entry.top)
    for (const { x, y } of tops)
      expect(x < left || x > right - 1 || y < top || y > bottom, `${x} ${y}`).toBe(true)
    const between = steps(border)
    expect(Math.min(...between)).toBeGreaterThan(0.8 * beginning.stitchWidth)
    expect(Math.max(...between)).toBeLessThan(2.2 * beginning.stitchWidth)
    // The middle ones of the threes are the farthest in their corners.
    const corners = [
      [-1, -1],
      [-1, 1],
      [1, -1],
      [1, 1],
    ] as const
    const middles = corners.map(([sx, sy]) => {
      const out = tops.map(({ x, y }) => sx * x + sy * y)
      return [1, 13, 25, 37].filter((i) => Math.max(...out) - out[i]! < 0.6 * beginning.stitchWidth)
    })
    expect(middles.flat().sort((a, b) => a - b)).toEqual([1, 13, 25, 37])
  })

  it('has slip stitches within the figure', () => {
    const outer = located[9]!
    const [left, right, top, bottom] = box(standing(outer).map((entry) => entry.top))
    const dots = located.flatMap(({ asides }) => asides.filter(({ element }) => element.role === 'join'))
    expect(dots).toHaveLength(2)
    for (const { top: dot } of dots) {
      expect(dot.x).toBeGreaterThan(left)
      expect(dot.x).toBeLessThan(right)
      expect(dot.y).toBeGreaterThan(top)
      expect(dot.y).toBeLessThan(bottom)
    }
  })

  it('is as wide as its chain and as high as its rows, each of them once, and its border twice', () => {
    const height = (round: LocatedRound): number => apart(standing(round)[5]!.base, standing(round)[5]!.top)
    const hdc = height(rows[1]!)
    const [, right, , bottom] = box(account.outline)
    expect(right * 2).toBeCloseTo(account.overValleys, 6)
    expect(bottom * 2).toBeCloseTo(account.overTips, 6)
    expect(account.overValleys).toBeGreaterThan(11 * beginning.stitchWidth)
    expect(account.overValleys).toBeLessThan(17 * beginning.stitchWidth)
    expect(account.overTips).toBeGreaterThan(8 * hdc)
    expect(account.overTips).toBeLessThan(8 * hdc + 6 * beginning.stitchWidth)
  })
})

describe('a border round rows, whichever end it comes from', () => {
  const FIRST = 'sc in 2nd ch from hook and in each ch across'
  const rows = (count: number): string[] => [
    FIRST,
    ...Array.from(
      { length: count - 1 },
      (_, i) => `With ${i % 2 ? 'A' : 'B'}, ch 1, turn, sc in each sc across`,
    ),
  ]
  const border = (count: number, begins: string): string =>
    `${begins}, 3 sc in first sc, sc in next 8 sc, 3 sc in last sc; work ${count} sc evenly spaced along row ends; working in free loops of foundation ch, 3 sc in first ch, sc in next 8 chs, 3 sc in last ch; work ${count} sc evenly spaced along row ends; join with sl st in first sc`
  const evenly = 'ch 1, turn, work 40 sc evenly around all four sides, join with sl st in first sc'

  it.each([
    ['turned behind an even row', 8, border(8, 'Rnd 1: ch 1, turn')],
    ['turned behind an odd row', 9, border(9, 'Rnd 1: ch 1, turn')],
    ['turned behind an odd row, in a new color', 9, border(9, 'Rnd 1: With A, ch 1, turn')],
    ['not turned behind an even row', 8, border(8, 'Rnd 1: ch 1')],
    ['not turned behind an odd row', 9, border(9, 'Rnd 1: ch 1')],
    ['evenly around, behind an even row', 8, `Rnd 1: ${evenly}`],
    ['evenly around, behind an odd row', 9, `Rnd 1: ${evenly}`],
  ])('%s: goes round once, beside what it is worked into', (_, count, round) => {
    const { located, beginning, figures } = drawn([...rows(count), round], 11)
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
    const edge = located[count]!
    expect(edge.round.stitches).toBeGreaterThan(39)
    const [left, right, top, bottom] = box(
      located.slice(0, count).flatMap((row) => standing(row).flatMap((entry) => [entry.base, entry.top])),
    )
    const middle = { x: (left + right) / 2, y: (top + bottom) / 2 }
    const turns = standing(edge).map(({ top: { x, y } }) => Math.atan2(y - middle.y, x - middle.x))
    const walked = turns.slice(1).map((turn, i) => Math.sin(turn - turns[i]!))
    expect(Math.abs(walked.reduce((sum, each) => sum + Math.sign(each), 0))).toBe(walked.length)
    for (const { base, top: end } of standing(edge))
      expect(apart(base, end)).toBeLessThan(2.5 * beginning.stitchWidth)
  })

  it('goes round rows that begin at a point as well, told evenly', () => {
    const pennant = [
      '3 sc in 2nd ch from hook',
      ...Array.from(
        { length: 6 },
        (_, i) => `ch 1, turn, 2 sc in first sc, sc in next ${2 * i + 1} sc, 2 sc in last sc`,
      ),
      'Rnd 1: ch 1, turn, work 48 sc evenly around, join with sl st in first sc',
    ]
    const { located, figures } = drawn(pennant, 2)
    const over = figures.flatMap((figure) => crossings(figure))
    // Turning chains beside slanting ends may touch the border.
    expect(over.filter((words) => !words.includes(' beginning '))).toEqual([])
    expect(over.length).toBeLessThan(2)
    expect(new Set(standing(located[7]!).map(({ element }) => element.into[0]!.kind))).toEqual(
      new Set(['unknown']),
    )
  })

  it('is none in a spiral round a chain: there each stitch goes into one of the round before', () => {
    const spiral = [
      '2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch, working along opposite side of chain, sc in next 7 ch, 2 sc in last ch',
      'work 28 sc evenly around',
    ]
    const { located } = drawn(spiral, 10)
    expect(standing(located[1]!)).toHaveLength(28)
    expect(new Set(standing(located[1]!).map(({ element }) => element.into[0]!.kind))).toEqual(
      new Set(['stitch']),
    )
  })

  it('turns rows that begin in another color', () => {
    const { located } = drawn(rows(6), 11)
    expect(located.map(({ round }) => round.turned)).toEqual([false, true, true, true, true, true])
  })
})

describe('an oval and a leaf', () => {
  it.each([
    ['oval', OVAL, 10],
    ['leaf', LEAF, 12],
  ] as const)('%s: no symbol lies on another', (_, rounds, chain) => {
    const { figures } = drawn([...rounds], chain)
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
  })

  it('have their stitches evenly around both ends', () => {
    const { located, beginning } = drawn(OVAL, 10)
    for (const round of located) {
      const between = steps(round)
      expect(Math.min(...between)).toBeGreaterThan(0.7 * beginning.stitchWidth)
      expect(Math.max(...between)).toBeLessThan(2.5 * Math.min(...between))
    }
  })

  it('have nothing below the figure: joins lie beside the first stitch', () => {
    for (const [rounds, chain] of [
      [OVAL, 10],
      [LEAF, 12],
    ] as const) {
      const { located, beginning } = drawn([...rounds], chain)
      const tops = located.flatMap((round) => standing(round).map(({ top }) => top))
      const [, , , bottom] = box(tops)
      for (const { asides } of located)
        for (const { top } of asides) expect(top.y).toBeLessThan(bottom + 0.25 * beginning.stitchWidth)
    }
  })

  it('have a stem that hangs from the end, its slip stitches beside its chains', () => {
    const stem =
      'ch 1, sc in each of next 12 sts, 3 sc in ch-2 sp, sc in each of next 12 sts, join with sl st in first sc, ch 6, sl st in 2nd ch from hook and in next 4 ch, join with sl st in first sc'
    const { located, figures } = drawn([...LEAF, stem], 12)
    const last = located[2]!
    const chain = last.elements.find(({ element }) => element.role === 'stem')!.chain
    const dots = last.elements.filter(({ element }) => element.role === 'slip')
    expect(chain).toHaveLength(6)
    expect(dots).toHaveLength(5)
    for (const { top } of dots)
      expect(Math.min(...chain.map((cell) => apart(cell, top)))).toBeLessThan(
        0.5 * apart(chain[0]!, chain[2]!),
      )
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
  })
})

describe('rows that begin at a point', () => {
  const HEART = [
    '3 sc in 2nd ch from hook, turn',
    'ch 1, 2 sc in first sc, sc in next sc, 2 sc in last sc, turn',
    'ch 1, 2 sc in first sc, sc in next 3 sc, 2 sc in last sc, turn',
    'ch 1, 2 sc in first sc, sc in next 5 sc, 2 sc in last sc, turn',
    'ch 1, sc in each sc across, turn',
  ]

  it('grow upward from it, each row on the one before, and their outline is wide where they are', () => {
    const { account, located, figures, beginning } = drawn(HEART, 2)
    expect(account.shape).toBe('leaf')
    expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
    located.slice(1).forEach((row, i) => {
      const below = standing(located[i]!).map(({ top }) => top)
      for (const { base, top } of standing(row)) {
        expect(Math.min(...below.map((each) => apart(each, base)))).toBeLessThan(0.01)
        expect(top.x).toBeLessThan(base.x)
      }
    })
    const widthNear = (y: number): number => {
      const near = account.outline.filter((point) => Math.abs(point.y - y) < account.overTips / 12)
      return Math.max(...near.map(({ x }) => x)) - Math.min(...near.map(({ x }) => x))
    }
    expect(widthNear(-0.4 * account.overTips)).toBeGreaterThan(2 * widthNear(0.4 * account.overTips))
    expect(account.overValleys).toBeCloseTo(9 * beginning.stitchWidth, 6)
  })
})

describe('a leaf of which nothing can be read', () => {
  it('is as long as its chain', () => {
    const { account } = workedMotif(['words of nobody'], { chain: 12 })
    expect(account!.rounds.map(({ outerRadius }) => outerRadius)).toEqual([account!.overTips / 2])
  })
})
