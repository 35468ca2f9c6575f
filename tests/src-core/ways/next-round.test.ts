/** M29, one more round in a motif: the next one as its rounds grow, in words that are read back; counted by hand. */
import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif, Terms } from '../../../shared-types/project'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { planProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'
import { withRound } from '../../../src-core/ways/rounds'
import { translateText } from '../../../src-core/notation/translate'
import { expectKept } from './expect-kept'

const END = 'join with sl st in top of beg ch-3'
const FOUR = `ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) 3 times in ring, ${END}`
const BEGIN = 'sl st to ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp'
const TWELVE = `ch 3 (counts as dc), 11 dc in ring, ${END}`
const granny = (side: string) =>
  `${BEGIN}, ch 1${side}, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1${side}; rep from * around, ${END}`
const GROUP = ', 3 dc in next ch-1 sp, ch 1'
const HALF = (side: string) =>
  `sl st to ch-2 sp, ch 3 (counts as dc), 2 dc in same sp, ch 1${side}, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1${side}; rep from * 2 more times, 3 dc in first sp, ch 2, ${END}`
const HEX = (side: string) =>
  `sl st in next dc and into ch-1 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp${side}, *(2 dc, ch 1, 2 dc) in next ch-1 sp${side}; rep from * around, ${END}`
const spaces = (count: number) =>
  `${BEGIN}, *ch 1, (3 dc, ch 1) in each of next ${count} ch-1 sps, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, (3 dc, ch 1) in each of next ${count} ch-1 sps, ${END}`
const bracket = (times: string) => granny(`, (3 dc in next ch-1 sp, ch 1) ${times}`)
const solid = (first: number) =>
  `ch 3 (counts as dc), dc in next ${first} dc, (2 dc, ch 2, 2 dc) in ch-2 sp, *dc in next ${first + 1} dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around, ${END}`
const TO_CORNER = `ch 3 (counts as dc), dc in each dc to ch-2 sp, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in each dc to next ch-2 sp; rep from * around, ${END}`
const BETWEEN = ', 2 dc in next sp between groups'

/** Rounds, the words of the next one, and its stitches. */
const CASES: readonly (readonly [string, readonly string[], string, number])[] = [
  ['a granny square of 2 rounds', [FOUR, granny('')], granny(GROUP), 36],
  ['one of 3', [FOUR, granny(''), granny(GROUP)], granny(GROUP + GROUP), 48],
  [
    'one of 4, its groups in brackets',
    [FOUR, granny(''), granny(GROUP), bracket('twice')],
    bracket('3 times'),
    60,
  ],
  ['one of 4, in each of its spaces', [FOUR, granny(''), granny(GROUP), spaces(2)], spaces(3), 60],
  ['one begun within a corner', [FOUR, HALF('')], HALF(GROUP), 36],
  [
    'a hexagon without chains on its sides',
    [`ch 3 (counts as dc), dc in ring, ch 1, (2 dc, ch 1) 5 times in ring, ${END}`, HEX('')],
    HEX(BETWEEN),
    36,
  ],
  ['a solid square', [FOUR, solid(2)], solid(6), 44],
  ['a solid square that says as far as the corner', [FOUR, TO_CORNER], TO_CORNER, 44],
  [
    'a disc of 2 rounds that begins with a chain',
    [TWELVE, `ch 3 (counts as dc), dc in same st, 2 dc in each st around, ${END}`],
    `ch 3 (counts as dc), dc in same st, *dc in next st, 2 dc in next st; rep from * to last st, dc in last st, ${END}`,
    36,
  ],
  [
    'a disc of 3 that begins with a chain',
    [
      TWELVE,
      `ch 3 (counts as dc), dc in same st, 2 dc in each st around, ${END}`,
      `ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, ${END}`,
    ],
    `ch 3 (counts as dc), dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * around, ${END}`,
    48,
  ],
  [
    'a spiral of 2 rounds',
    ['6 sc in ring', '2 sc in each st around'],
    '*sc in next st, 2 sc in next st; rep from * around',
    18,
  ],
  [
    'one of 3 that says its numbers and counts',
    [
      'Rnd 1: 6 sc in ring (6)',
      'Rnd 2: 2 sc in each st around (12)',
      'Rnd 3: (sc in next st, 2 sc in next st) 6 times (18)',
    ],
    '(sc in next 2 sts, 2 sc in next st) 6 times',
    24,
  ],
  [
    'one of bare stitches',
    ['6 sc in ring', '2 sc in each st around', '(sc, inc) x 6'],
    '(2 sc, inc) x 6',
    24,
  ],
]

const projectOf = (works: readonly string[], terms: Terms): Project => ({
  ...{ format: 'petalyard-project', version: 1, terms },
  yarns: [{ id: 'y', ballGrams: 50, ballMetres: 125 }],
  colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
  motifs: [
    {
      ...{ id: 'm', kind: 'rounds', foundation: { ring: 'chain', chains: 4 } },
      gauge: { stitch: terms === 'US' ? 'dc' : 'tr', stitches: 16, rows: 9, over: 100, hook: 4 },
      rounds: works.map((work) => ({ slot: 'all', work: translateText(work, 'US', terms) })),
    },
  ],
  joining: { rule: 'seam' },
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 5, rows: 5 },
})

const lastOf = (project: Project | null) => project?.motifs?.[0] as RoundsMotif

describe('M29 the next round of a motif', () => {
  it.each(CASES)('M29 goes on as the rounds of %s grow', (_, works, words, stitches) => {
    for (const terms of ['US', 'UK'] as const) {
      const motif = lastOf(withRound(projectOf(works, terms), 'm', true))
      expect(motif.rounds!.at(-1)!.work.replace(/\.$/, '')).toBe(translateText(words, 'US', terms))
      const { reading, findings } = readMotif(motif, terms)
      expect(findings).toEqual([])
      expect(reading.rounds.at(-1)!.made).toBe(stitches)
    }
  })

  it.each([CASES[0]!, CASES[1]!])('M29 is among the ways to a size, to the mm: %s', (_, works, words) => {
    const project = projectOf(works, 'US')
    const { width } = planProject(withRound(project, 'm', true)!).size
    const ways = expectKept(project, { width: Math.round(width) })
    const way = ways.find(({ kinds }) => kinds.join() === 'round')!
    expect(way.size.width).toBeCloseTo(width, 6)
    expect(lastOf(withEdit(project, way.edit)).rounds!.at(-1)!.work).toBe(words)
  })

  it('M29 offers none where its rounds show no growth of their own', () => {
    // Other rounds than the last one grew by other counts: no round of the granny square follows.
    const mixed = [FOUR, granny(''), `ch 1, sc in each st and sp around, join with sl st in first sc`]
    expect(withRound(projectOf(mixed, 'US'), 'm', true)).toBeNull()
  })
})
