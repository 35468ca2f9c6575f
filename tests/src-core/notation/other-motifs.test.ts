/** Joins to other motifs in words (§joining-last-round; drawn-through loops and picots: common practice, no source). */
import { describe, expect, it } from 'vitest'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds } from '../../../src-core/notation/read'
import type { WorkedElement } from '../../../src-core/notation/worked'
import { made, told } from './telling'

const AFTER = { stitches: 0, spaces: { 'ch-6': 2 } }
const JOINS = (elements: readonly WorkedElement[]) =>
  elements.filter(({ role, into }) => role === 'travel' && into[0]?.kind === 'unknown')

const petal = (join: string) =>
  `(Sc, 2 dc, ${join}, 2 dc, sc) in next ch-6 sp, (sc, 2 dc, ch 3, 2 dc, sc) in next ch-6 sp; join with sl st in first sc.`

describe('a join to another motif', () => {
  it.each([
    'ch 1, sl st in corresponding ch-3 sp of neighbor, ch 1',
    'ch 1, sl st in joined ch-3 sp of neighbor, ch 1',
    'ch 1, sl st in matching ch-3 sp on neighboring motif, ch 1',
  ])('“%s” parts a chain and makes no stitch', (join) => {
    const { rounds, worked, findings } = readRounds(petal(join), { after: AFTER })
    expect(findings).toEqual([])
    expect(JOINS(worked[0]!.elements)).toHaveLength(1)
    expect(rounds[0]).toMatchObject({ made: 12, spaces: { 'ch-2': 1, 'ch-3': 1 } })
  })

  it('is a loop drawn through a stitch of the other motif, and no popcorn', () => {
    const text = petal('drop lp, insert hook in corresponding dc of neighbor, draw lp through')
    const { rounds, worked, findings, tree } = readRounds(text, { after: AFTER })
    expect(findings).toEqual([])
    expect(JOINS(worked[0]!.elements)).toHaveLength(1)
    expect(worked[0]!.elements.every(({ form }) => form === 'plain')).toBe(true)
    expect(rounds[0]).toMatchObject({ made: 12, spaces: { 'ch-3': 1 } })
    const again = readRounds(printRounds(tree, { style: 'consistent' }), { after: AFTER })
    expect(again.rounds[0]).toMatchObject({ made: 12, spaces: { 'ch-3': 1 } })
    expect(JOINS(again.worked[0]!.elements)).toHaveLength(1)
  })

  it('is a popcorn still where the hook goes into its own motif', () => {
    const text = '(5 dc in next ch-6 sp, drop lp, insert hook in first dc, draw lp through, ch 2) twice.'
    const { worked } = readRounds(text, { after: AFTER })
    expect(worked[0]!.elements.filter(({ form }) => form === 'popcorn')).toHaveLength(2)
  })

  it('in the middle of a picot leaves one picot', () => {
    const text =
      '(2 sc, ch 2, sl st in corresponding picot of neighbor, ch 2, sl st in first ch of picot, 2 sc) in next ch-6 sp, (2 sc, ch 5, sl st in 5th ch from hook, 2 sc) in next ch-6 sp; join with sl st in first sc.'
    const { rounds, worked, findings } = readRounds(text, { after: AFTER })
    expect(findings).toEqual([])
    expect(rounds[0]).toMatchObject({ made: 8, picots: 2, spaces: {} })
    expect(worked[0]!.elements.flatMap(({ role, count }) => (role === 'picot' ? [count] : []))).toEqual([
      4, 5,
    ])
    expect(JOINS(worked[0]!.elements)).toHaveLength(1)
  })

  it('is read in UK words too', () => {
    const text =
      '(Dc, 2 tr, 1 ch, ss in corresponding 3-ch sp of neighbour, 1 ch, 2 tr, dc) in each 6-ch sp around; join with ss in first dc.'
    const { rounds, worked, findings } = readRounds(text, { after: AFTER, terms: 'UK' })
    expect(findings).toEqual([])
    expect(JOINS(worked[0]!.elements)).toHaveLength(2)
    expect(rounds[0]).toMatchObject({ made: 12, spaces: { 'ch-2': 2 } })
  })
})

describe('Motifs that are joined where others meet', () => {
  const filler = (
    place: string,
  ) => `Rnd 1: Magic ring, ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)
Rnd 2: Ch 1, *sc in next sc, ch 3, sl st ${place}, ch 3, sk next sc; rep from * 3 more times; join with sl st in first sc. (4 sc)`

  it.each([
    'in joined corner of two large motifs',
    'in ch-3 sp of a large motif',
    'in any ch-3 sp of one of the large motifs',
    'in the corner where two large motifs are joined',
    'in the place where the motifs meet',
    'in the join between two motifs',
  ])('%s', (place) => {
    expect(told(filler(place))).toEqual([])
    expect(made(filler(place))).toEqual([8, 4])
  })

  it.each(['in ch-3 sp of this motif', 'in next ch-3 sp of current motif'])('and not %s', (place) => {
    expect(told(filler(place))).not.toEqual([])
  })
})

describe('The name of a motif', () => {
  const names = ['1ST MOTIF', 'FIRST MOTIF', 'First Motif:', 'Motif 1', 'MOTIF I', 'Motif One'] as const
  const seconds = ['2ND MOTIF', 'SECOND MOTIF', 'Second Motif:', 'Motif 2', 'MOTIF II', 'Motif Two'] as const
  const ways = [
    'As 1st motif.',
    'As for first motif.',
    'Work as for Motif 1.',
    'Same as Motif One.',
    'Work as Rnd 1 of 1st Motif.',
    'Like FIRST MOTIF.',
  ]
  const joined = (first: string, second: string, way: string) => `${first}
Rnd 1: Ch 4, sl st in 4th ch from hook to form ring. Ch 3 (= 1 dc), 2 dc in ring, ch 2, (3 dc, ch 2) 3 times in ring, sl st in 3rd of ch-3. (12 dc)
Rnd 2: Join B in any ch-2 sp, ch 3, 2 dc, ch 2, 3 dc all in same sp, ch 1, *3 dc, ch 2, 3 dc all in next ch-2 sp, ch 1; rep from * twice more, sl st in 3rd of ch-3. (24 dc)

${second}
Rnd 1: ${way}
Rnd 2: Join B in any ch-2 sp, ch 3, 2 dc in same sp, ch 1, sl st in a corner ch-2 sp of 1st motif, ch 1, 3 dc in same sp of 2nd motif, sl st in next ch-1 sp of 1st motif, 3 dc in next ch-2 sp of 2nd motif, ch 1, sl st in next corner ch-2 sp of motif 1, ch 1, 3 dc in same sp of this motif, ch 1, *3 dc, ch 2, 3 dc all in next ch-2 sp, ch 1; rep from * once more, sl st in 3rd of ch-3.`
  const cases = names.flatMap((name, at) => ways.map((way) => [name, seconds[at]!, way] as const))

  it.each(cases)('is the same in figures and in words: %s, %s: %s', (first, second, way) => {
    expect(told(joined(first, second, way))).toEqual([])
    expect(made(joined(first, second, way))).toEqual([12, 24, 12, 24])
  })
})
