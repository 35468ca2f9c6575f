/** M28: the half of a motif in rows that follow from its rounds. Counted by hand, and read again as any pattern is. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project, RoundsMotif, Terms } from '../../../shared-types/project'
import { cutAt, halfPattern, suggestedHalf } from '../../../src-core/half-motif/half-motif'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { accountOf } from '../../../src-core/accounts'
import { settled } from '../../../src-core/settled'
import { planProject } from '../../../src-core/plan'
import { readExample } from '../joining-round/flowers'
import { runs } from '../../runs'

const motifOf = (rounds: readonly string[], more: Partial<RoundsMotif> = {}): RoundsMotif => ({
  ...{ id: 'm', name: 'Motif', kind: 'rounds', foundation: { ring: 'adjustable' } },
  rounds: rounds.map((work) => ({ work })),
  ...more,
})
const projectOf = (
  motif: RoundsMotif,
  terms: Terms = 'US',
  blanket: Partial<BlanketLayout> = {},
): Project => ({
  ...{ format: 'petalyard-project', version: 1, terms },
  gauge: { stitch: 'dc', stitches: 16, rows: 8, over: 100 },
  motifs: [motif],
  layout: {
    ...{ kind: 'blanket', motif: motif.id, arrangement: 'offset-rows', alternateRows: 'oneFewer' },
    ...{ columns: 4, rows: 5, halves: true },
    ...blanket,
  },
})
const halfOf = (motif: RoundsMotif, at: 'tips' | 'between', terms: Terms = 'US') => {
  const project = settled(projectOf(motif, terms))
  return halfPattern(project, accountOf(project, project.motifs[0]!).account!, at)
}
const codesOf = (project: Project) =>
  planProject(project).findings.flatMap(({ code }) => (code.startsWith('layout/half-') ? [code] : []))

const SOLID = readExample('limekiln-cushion').motifs![0] as RoundsMotif

describe('M28 the half of a solid hexagon', () => {
  it('is cut through two corners: half a space beside a stitch at both ends', () => {
    expect(halfOf(SOLID, 'tips')).toEqual({
      begin: 'Make an adjustable ring.',
      // 12 dc: 5 between the two that the cut goes through, which stand at the edge.
      rows: [
        'Row 1: Ch 3 (counts as dc), 6 dc in ring; turn. (7 dc)',
        'Row 2: Ch 4 (counts as dc and ch 1), dc in same st, [2 dc in next st, (dc, ch 1, dc) in next st] twice, 2 dc in next st, (dc, ch 1, dc) in top of beg ch-3; turn. (14 dc)',
        'Row 3: Ch 4 (counts as dc and ch 1), dc in next ch-1 sp, [dc in next 4 sts, (dc, ch 1, dc) in next ch-1 sp] twice, dc in next 4 sts, dc in next ch-1 sp, ch 1, dc in 3rd ch of beg ch-4; turn. (20 dc)',
        'Row 4: Ch 1, sc in first st, sc in next ch-1 sp, [sc in next 6 sts, 2 sc in next ch-1 sp] twice, sc in next 6 sts, sc in next ch-1 sp, sc in 3rd ch of beg ch-4; fasten off. (26 sc)',
      ],
      // Half of 48, and the two at the edges.
      stitches: 26,
    })
  })

  it('is cut through two sides: three whole corners', () => {
    const { rows } = halfOf(SOLID, 'between')!
    expect(rows[1]).toBe(
      'Row 2: Ch 3 (counts as dc), dc in same st, [(dc, ch 1, dc) in next st, 2 dc in next st] twice, (dc, ch 1, dc) in next st, 2 dc in top of beg ch-3; turn. (14 dc)',
    )
    expect(rows.at(-1)).toContain(
      '2 sc in next ch-1 sp, sc in next 3 sts, sc in top of beg ch-3; fasten off. (26 sc)',
    )
  })

  it('stands so in the plan of a blanket, instead of the note that nothing says it', () => {
    const plan = planProject(projectOf(SOLID))
    expect(codesOf(projectOf(SOLID))).toEqual(['layout/half-suggested'])
    expect(plan.findings.find(({ code }) => code === 'layout/half-suggested')!.message).toBe(
      'Four-round hexagon: no pattern says how a half of it is worked, but one follows from its rounds: 4 rows back and forth, 26 stitches in the last.',
    )
    const [what, begin, ...rows] = suggestedHalf(plan, plan.motif!, 'US')
    expect(what).toContain('each row in the color of the round of the same number')
    expect([begin, ...rows]).toEqual([halfOf(SOLID, 'tips')!.begin, ...halfOf(SOLID, 'tips')!.rows])
    // The other way up: through two sides.
    const turned = planProject(projectOf(SOLID, 'US', { turn: 30 }))
    expect(suggestedHalf(turned, turned.motif!, 'US').slice(2)).toEqual(halfOf(SOLID, 'between')!.rows)
    // Neither: nothing follows.
    expect(codesOf(projectOf(SOLID, 'US', { turn: 13 }))).toEqual(['layout/half-rows'])
  })

  it('gives way to what the instructions say of halves', () => {
    const said = { ...SOLID, instructions: 'Half motif: ch 4, 6 dc in ring, turn.' }
    const plan = planProject(projectOf(said))
    expect(codesOf(projectOf(said))).toEqual([])
    expect(suggestedHalf(plan, plan.motif!, 'US')).toEqual([])
  })

  it('is told in the terms of the paper', () => {
    const plan = planProject(projectOf(SOLID))
    const rows = suggestedHalf(plan, plan.motif!, 'UK')
    expect(rows[0]).toContain('colour')
    expect(rows[2]).toBe('Row 1: 3 ch (counts as tr), 6 tr in ring; turn. (7 tr)')
  })
})

describe('M28 halves of other motifs', () => {
  it('go on from a ring of chains, with groups of stitches in spaces and passed stitches', () => {
    const granny = motifOf(
      [
        'ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 4 more times, join with sl st in top of beg ch-3 (18 dc)',
        'sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 4 more times, join with sl st in top of beg ch-3 (36 dc)',
      ],
      { foundation: { ring: 'chain', chains: 6 }, shape: 'straight' },
    )
    const half = halfOf(granny, 'tips')!
    expect(half.begin).toBe('Ch 6, join with sl st to form a ring.')
    expect(half.rows).toEqual([
      'Row 1: Ch 4 (counts as dc and ch 1), [3 dc in ring, ch 2] twice, 3 dc in ring, ch 1, dc in ring; turn. (11 dc)',
      'Row 2: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, [ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp] twice, ch 1, 3 dc in next ch-1 sp, ch 1, dc in 3rd ch of beg ch-4; fasten off. (20 dc)',
    ])
  })

  it('have half of the petals of a flower, with what stands between them at the edge', () => {
    const flower = motifOf([
      'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)',
      'ch 1, sc in same st as joining, *ch 4, sk next sc, sc in next sc; rep from * 4 more times, ch 4, sk next sc, join with sl st in first sc (6 ch-4 sps)',
      'sl st in first ch-4 sp, ch 1, (sc, hdc, 3 dc, hdc, sc) in same sp and in each ch-4 sp around, join with sl st in first sc (6 petals)',
    ])
    const { rows } = halfOf(flower, 'between')!
    expect(rows).toEqual([
      'Row 1: Ch 1, 7 sc in ring; turn. (7 sc)',
      'Row 2: Ch 1, sc in first st, [ch 4, sk next st, sc in next st] twice, ch 4, sk next st, sc in last st; turn. (4 sc)',
      'Row 3: Ch 1, sc in first st, (sc, hdc, 3 dc, hdc, sc) in each of next 3 ch-4 sps, sc in last st; fasten off. (8 sc, 6 hdc, 9 dc)',
    ])
  })

  it.each([
    [
      'popcorns',
      [
        'ch 3 (counts as dc), 11 dc in ring, join',
        'ch 3, popcorn in same st, ch 2, *popcorn in next st, ch 2; rep from * around, join',
      ],
    ],
    [
      'what goes back to a round below',
      [
        'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)',
        'ch 1, *sc in next sc, ch 3, sk next sc; rep from * 5 more times, join',
        'ch 1, working behind, *BPsc around next sc of Rnd 1, ch 4; rep from * 5 more times, join',
      ],
    ],
    [
      'rounds that are not alike on both sides',
      [
        'ch 3 (counts as dc), 11 dc in ring, join with sl st in top of beg ch-3 (12 dc)',
        'ch 3 (counts as dc), dc in same st, dc in next 11 dc, join with sl st in top of beg ch-3 (13 dc)',
      ],
    ],
    [
      'an odd number of petals',
      [
        'ch 1, 10 sc in ring, join with sl st in first sc (10 sc)',
        'ch 1, sc in same st as joining, *ch 4, sk next sc, sc in next sc; rep from * 3 more times, ch 4, sk next sc, join with sl st in first sc (5 ch-4 sps)',
      ],
    ],
  ])('do not follow from %s', (_, rounds) => {
    const motif = motifOf(rounds)
    expect([halfOf(motif, 'tips'), halfOf(motif, 'between')]).toEqual([null, null])
    expect(codesOf(projectOf(motif))).not.toContain('layout/half-suggested')
  })

  it('are cut by how they lie', () => {
    const project = settled(projectOf(SOLID))
    const { account } = accountOf(project, project.motifs[0]!)
    expect([0, 60, 180, 30, 90, 13].map((turn) => cutAt(account!, turn))).toEqual([
      ...['tips', 'tips', 'tips', 'between', 'between', null],
    ])
  })
})

/** A polygon in rounds with `corners` corners, each `made` on both sides of `chains`, every other stitch going on. */
function polygon(
  corners: number,
  each: number,
  rounds: readonly { made: number; chains: number }[],
): RoundsMotif {
  const texts = [
    `ch 3 (counts as dc), ${each - 1} dc in ring, ch 2, *${each} dc in ring, ch 2; rep from * ${corners - 2} more times, join with sl st in top of beg ch-3 (${corners * each} dc)`,
  ]
  // From where the round begins to its first corner, along a side, and from the last corner to the end.
  let [first, side, end, space] = [each, each, 0, 2]
  for (const { made, chains } of rounds) {
    const group = made > 1 ? `${made} dc` : 'dc'
    const corner = `(${group}, ch ${chains}, ${group}) in next ch-${space} sp`
    const last = end > 0 ? `dc in next ${end} sts, ` : ''
    texts.push(
      `ch 3 (counts as dc), dc in next ${first - 1} sts, ${corner}, *dc in next ${side} sts, ${corner}; rep from * ${corners - 2} more times, ${last}join with sl st in top of beg ch-3 (${corners * (side + 2 * made)} dc)`,
    )
    ;[first, side, end, space] = [first + made, side + 2 * made, end + made, chains]
  }
  return motifOf(texts, { shape: 'straight' })
}

describe('M28 halves of any regular polygon', () => {
  const drawn = fc.record({
    corners: fc.constantFrom(4, 6, 8),
    each: fc.integer({ min: 2, max: 5 }),
    rounds: fc.array(
      fc.record({ made: fc.integer({ min: 1, max: 3 }), chains: fc.integer({ min: 1, max: 4 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
  })

  it('have half of the stitches, and one at each edge where corners are cut', () => {
    fc.assert(
      fc.property(drawn, ({ corners, each, rounds }) => {
        const motif = polygon(corners, each, rounds)
        const read = readMotif(motif, 'US')
        fc.pre(read.findings.every(({ severity }) => severity !== 'error'))
        const half = halfOf(motif, 'tips')
        expect(half).not.toBeNull()
        const texts = half!.rows.map((row) => Number(/\((\d+) dc\)$/.exec(row)![1]))
        expect(texts).toEqual(read.worked.map(({ stitches }) => stitches / 2 + 2))
      }),
      { numRuns: runs(60) },
    )
  })
})
