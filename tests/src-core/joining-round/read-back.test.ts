/** Every joining round that is told in full, read again, makes the joins of the plan at the same petals. */
import { readdirSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import type { JoiningRound } from '../../../src-core/joining-round/joining-round'
import { takeApart } from '../../../src-core/notation/take-apart'
import { planProject } from '../../../src-core/plan'
import { loadPatterns } from '../../outside/whole-patterns'
import { blanketOf, flower, GRANNY, readBack, readExample } from './flowers'
import { runs } from '../../runs'

/** What the plan joins to motifs that are there already, and what the joining rounds tell of it. */
function totals(plan: Plan, told: readonly JoiningRound[]) {
  const joins = plan.order
    .filter(({ kind }) => kind !== 'half')
    .reduce((sum, step) => sum + step.joins.length, 0)
  return { joins, told: told.reduce((sum, round) => sum + round.joins * round.labels.length, 0) }
}

const TIPS = [
  'ch 1',
  'ch 2',
  'ch 3',
  'ch 4',
  'ch 5',
  'tr',
  '',
  'tr, ch 2, tr',
  'ch 3, sl st in 3rd ch from hook',
]

const layout = fc.record({
  arrangement: fc.constantFrom('straight-rows', 'offset-rows', 'rings'),
  columns: fc.integer({ min: 1, max: 5 }),
  rows: fc.integer({ min: 1, max: 4 }),
  rings: fc.integer({ min: 1, max: 2 }),
  turn: fc.constantFrom(0, 15, 22.5, 30, 45),
  alternateTurn: fc.constantFrom(0, 180),
} as const)

const joining = fc.oneof(
  fc.record({ rule: fc.constantFrom('tips', 'edges') } as const),
  fc.record({ rule: fc.constant('bridge'), bridgeChains: fc.integer({ min: 1, max: 5 }) } as const),
)
const order = fc.constantFrom('there-and-back', 'one-way', 'centre')
const hand = fc.constantFrom('right', 'left')

describe('read back', () => {
  it('flowers of any number of petals, however they end and lie, have the joins of the plan', () => {
    const drawn = fc.tuple(
      fc.integer({ min: 4, max: 9 }),
      fc.constantFrom(...TIPS),
      layout,
      joining,
      order,
      hand,
    )
    fc.assert(
      fc.property(drawn, ([petals, tip, laid, joined, worked, side]) => {
        const rounds = flower(petals, tip)
        const project = blanketOf({ rounds, layout: laid, joining: joined, hand: side })
        const plan = planProject({ ...project, order: worked })
        fc.pre(plan.motif?.petals === petals)
        const told = joiningRounds(plan, 'US')
        const { joins, told: all } = totals(plan, told)
        expect(all).toBe(joins)
        for (const round of told.filter((each) => each.joins > 0)) {
          expect(round, round.words).toMatchObject({ inFull: true })
          const read = readBack(rounds, round, 'US')
          expect(read.errors).toEqual([])
          expect(read.joins).toBe(round.joins)
          expect(read.made).toBe(petals * (tip.match(/tr/g)?.length ?? 0) + petals * 8)
          if (joined.rule === 'edges') continue
          const named = [...round.title.split(';')[0]!.matchAll(/\d+/g)].map(Number)
          expect(read.places).toEqual(named)
        }
      }),
      { numRuns: runs(60) },
    )
  })

  it('squares joined along their sides have the joins of the plan', () => {
    fc.assert(
      fc.property(
        fc.record({ columns: fc.integer({ min: 1, max: 4 }), rows: fc.integer({ min: 1, max: 4 }) }),
        fc.constantFrom('tips', 'edges'),
        order,
        hand,
        (laid, rule, worked, side) => {
          const project = blanketOf({ rounds: GRANNY, layout: laid, joining: { rule }, hand: side })
          const plan = planProject({ ...project, order: worked })
          const told = joiningRounds(plan, 'US')
          const { joins, told: all } = totals(plan, told)
          expect(all).toBe(joins)
          for (const round of told.filter((each) => each.joins > 0)) {
            expect(round, round.words).toMatchObject({ inFull: true })
            const read = readBack(GRANNY, round, 'US')
            expect(read).toMatchObject({ made: 36, joins: round.joins, errors: [] })
          }
        },
      ),
      { numRuns: runs(30) },
    )
  })

  it.each(readdirSync('examples').map((file) => file.replace('.petalyard', '')))(
    'the example %s has every join in its words',
    (name) => {
      const plan = planProject(readExample(name))
      const told = joiningRounds(plan, plan.settled.terms)
      const { joins, told: all } = totals(plan, told)
      if (told.length > 0) expect(all).toBe(joins)
      for (const round of told) {
        const motif = plan.settled.motifs.find(({ id }) => id === round.motif)
        if (motif?.kind === 'rounds') expect(round).toMatchObject({ inFull: true })
      }
    },
  )
})

describe('whole patterns', () => {
  /** d26 joins to a motif already; d58 and x02 have petals that are not alike, and begin with the chains of a repeat. */
  const TOLD_BY_PLACES = new Set(['d26', 'd58', 'x02'])

  /** The plan of a pattern's motif as a blanket, with its joining rounds; every join of the plan is in them. */
  function toldOf({ text, terms }: ReturnType<typeof loadPatterns>[number]) {
    const { rounds, foundation } = takeApart(text, terms, terms)
    const project = blanketOf({ rounds: rounds.map(({ work }) => work), terms })
    const motifs = project.motifs!.map((motif) => ({ ...motif, foundation })) as typeof project.motifs
    const plan = planProject({ ...project, ...(motifs && { motifs }) })
    const told = joiningRounds(plan, terms).filter(({ joins }) => joins > 0)
    const { joins, told: all } = totals(plan, told)
    expect(all).toBe(joins)
    return { isLeaf: plan.motif?.shape === 'leaf', told }
  }

  const wanted = (name: string) => loadPatterns(name).filter(({ kind }) => kind !== 'mistake')

  it.each(wanted('patterns').map((pattern) => [pattern.id, pattern] as const))(
    '%s: its last round is told with the joins of a blanket',
    (id, pattern) => {
      const { isLeaf, told } = toldOf(pattern)
      if (isLeaf || TOLD_BY_PLACES.has(id)) return
      for (const round of told) expect(round, round.words).toMatchObject({ inFull: true })
    },
  )

  it('six of seven rounds of our own patterns (88 % when first measured) are told in full, the others by their places', () => {
    const all = wanted('patterns-own').map(toldOf)
    const rounds = all.filter(({ isLeaf }) => !isLeaf).flatMap(({ told }) => told)
    expect(rounds.filter(({ inFull }) => inFull).length / rounds.length).toBeGreaterThan(6 / 7)
    for (const { words, inFull } of rounds)
      if (!inFull) expect(words).toMatch(/^Work (Rnd|Round) \d+ as written; (at|along|after|instead of) /)
  })

  it('says what to do at the places of rounds that are not told stitch by stitch, and of no instructions', () => {
    const { told } = toldOf(loadPatterns('patterns').find(({ id }) => id === 'd58')!)
    for (const { words, inFull } of told) {
      expect(inFull).toBe(false)
      expect(words).toMatch(/^Work Rnd \d+ as written; (at|along) /)
    }
  })
})
