/** Loops of chains that are worked alike lie alike, the first one of a round as well; long ones stand out of what they span. */
import { describe, expect, it } from 'vitest'
import type { LocatedElement } from '../../../src-core/motif/rounds/ground'
import { workedMotif } from './written-motif'

const made = (rounds: readonly string[]) => workedMotif(rounds, { ring: 'adjustable' })
const reach = ({ x, y }: { readonly x: number; readonly y: number }): number => Math.hypot(x, y)
/** How far each chain of a loop lies from the middle, and how far the loop spreads. */
const lie = ({ chain }: LocatedElement) => ({
  far: chain.map(reach),
  wide: Math.hypot(chain[0]!.x - chain.at(-1)!.x, chain[0]!.y - chain.at(-1)!.y),
})

describe.each([5, 6, 9, 12])('%i loops round a center', (count) => {
  const center = `ch 1, ${count} sc in ring, join with sl st in first sc`
  it.each([
    ['slip stitches', '*ch 3, sl st in next sc; rep from * around'],
    ['single crochet', '*ch 4, sc in next sc; rep from * around'],
    ['slip stitches on both sides', '*ch 8, sl st in same st, sl st in next st; rep from * around'],
  ])('are alike between %s', (_, round) => {
    const { drawing } = made([center, round])
    const loops = drawing()!
      .located.at(-1)!
      .elements.filter(({ element }) => element.role === 'space')
    expect(loops).toHaveLength(count)
    const [first, ...others] = loops.map(lie)
    for (const other of others) {
      expect(other.wide).toBeCloseTo(first!.wide, 6)
      other.far.forEach((far, i) => expect(far).toBeCloseTo(first!.far[i]!, 6))
    }
  })
})

describe('a long loop between two stitches in one place', () => {
  it.each([5, 6, 7])('stands out, and its shell beyond what is beside it: ch %i', (chains) => {
    const { located } = made([
      'ch 3 (counts as dc), 5 dc in ring, join with sl st in top of beg ch-3',
      'ch 6 (counts as dc and ch 3), *dc in next dc, ch 3; rep from * 4 more times, join with sl st in 3rd ch of beg ch-6',
      `sl st in ch-3 sp, ch 1, *(sc, ch ${chains}, sc) in ch-3 sp, ch 3; rep from * 5 more times, join with sl st in first sc`,
      `*6 dc in next ch-${chains} sp, sc in next ch-3 sp; rep from * around, join with sl st in first dc`,
    ])
    const tops = (stitch: string): number[] =>
      located.at(-1)!.elements.flatMap(({ element, top }) => (element.stitch === stitch ? [reach(top)] : []))
    expect(tops('dc')).toHaveLength(36)
    expect(Math.min(...tops('dc'))).toBeGreaterThan(Math.max(...tops('sc')) + 2)
  })
})
