/** Projects beyond the limits end with a finding, before any work; those at the limits are planned. */
import { inSpelling } from '../../src-core/stitches/spelling'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { measureProject } from '../../src-core/accounts'
import { legibilityFindings } from '../../src-core/colour/legibility'
import { PROJECT_LIMITS } from '../../src-core/limits'
import { readRounds } from '../../src-core/notation/read'
import {
  checkProject,
  createPlanner,
  fitProject,
  planProject,
  proposeProject,
  waysForProject,
} from '../../src-core/plan'
import { processorTime } from '../processor-time'

const throwOf = (): Project =>
  JSON.parse(
    readFileSync(new URL('../../examples/market-stall-throw.petalyard', import.meta.url), 'utf8'),
  ) as Project

/** So many of a list, each under an id of its own. */
const many = <Item extends { id: string }>(list: readonly Item[], count: number): Item[] =>
  Array.from({ length: count }, (_, i) => ({ ...list[i % list.length]!, id: `n${i}` }))

const blanket = (project: Project) => {
  if (project.layout?.kind !== 'blanket') throw new Error('not a blanket')
  return project.layout
}

/** Something too large by each limit, in their order. */
const LARGE: Readonly<Record<string, (count: number) => Project>> = {
  yarns: (count) => ({ ...throwOf(), yarns: many(throwOf().yarns!, count) }),
  'motifs to choose from': (count) => ({ ...throwOf(), motifs: many(throwOf().motifs!, count) }),
  colourways: (count) => ({ ...throwOf(), colourways: many(throwOf().colourways!, count) }),
  'motifs that alternate': (count) => {
    const project = { ...throwOf(), motifs: many(throwOf().motifs!, count) }
    const alternate = { motifs: project.motifs.map(({ id }) => id) }
    return { ...project, layout: { ...blanket(project), alternate } }
  },
  'places in the list of motifs that alternate': (count) => {
    const motifs = many(throwOf().motifs!, 2)
    const alternate = { motifs: Array.from({ length: count }, (_, i) => motifs[i % 2]!.id) }
    const project = { ...throwOf(), motifs }
    return { ...project, layout: { ...blanket(project), alternate } }
  },
  'different motifs put in by hand': (count) => {
    const project = { ...throwOf(), motifs: many(throwOf().motifs!, count) }
    const motifs = Object.fromEntries(
      project.motifs.map(({ id }, i) => [`${1 + Math.floor(i / 14)},${1 + (i % 14)}`, id]),
    )
    return { ...project, layout: { ...blanket(project), cells: { motifs } } }
  },
  'colours in one motif': (count) => {
    const slots = Array.from({ length: count }, (_, i) => ({ slot: `s${i}` }))
    return { ...throwOf(), motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 80, slots }] }
  },
  'rounds in one motif': (count) => {
    const rounds = Array.from({ length: count }, () => ({ work: 'Ch 1, sc in each st around; join.' }))
    return { ...throwOf(), motifs: [{ id: 'm', kind: 'rounds', rounds }] }
  },
  'points in one traced outline': (count) => {
    const points = Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count
      const far = 36 + 6 * Math.cos(6 * angle)
      return [far * Math.sin(angle), -far * Math.cos(angle)]
    })
    return {
      ...throwOf(),
      motifs: [
        { id: blanket(throwOf()).motif ?? 'm', kind: 'measured', outline: 'traced', traced: { points } },
      ],
    }
  },
  'rounds of edging': (count) => ({
    ...throwOf(),
    layout: { ...blanket(throwOf()), edging: { rounds: Array.from({ length: count }, () => 'sc') } },
  }),
  'joins for pairs of motifs': (count) => ({
    ...throwOf(),
    joining: { pairs: Array.from({ length: count }, () => ({ motifs: ['m'], rule: 'tips' as const })) },
  }),
  'pack sizes of one yarn': (count) => {
    const packs = Array.from({ length: count }, (_, i) => ({ grams: 10 + i, price: 1 }))
    return { ...throwOf(), yarns: throwOf().yarns!.map((yarn) => ({ ...yarn, packs })) }
  },
  'other things in a kit': (count) => ({
    ...throwOf(),
    layout: {
      ...blanket(throwOf()),
      kit: { count: 2, extras: Array.from({ length: count }, (_, i) => ({ name: `x${i}`, count: 1 })) },
    },
  }),
  'painted motifs': (count) => {
    const painted = Object.fromEntries(Array.from({ length: count }, (_, i) => [`1,${i}`, 'c1']))
    return { ...throwOf(), layout: { ...blanket(throwOf()), cells: { painted } } }
  },
  'motifs that are made': (count) => ({
    ...throwOf(),
    made: Object.fromEntries(Array.from({ length: count }, (_, i) => [`1,${i}`, ''])),
  }),
  'motifs in an order of your own': (count) => ({
    ...throwOf(),
    order: Array.from({ length: count }, (_, i) => `1,${i}`),
  }),
}

const codes = (findings: readonly { code: string }[]) => findings.map(({ code }) => code)

describe('a project that is too large', () => {
  it('every limit is tried here, and has a reason', () => {
    expect(PROJECT_LIMITS.map(({ what }) => what)).toEqual(Object.keys(LARGE))
    for (const { reason } of PROJECT_LIMITS) expect(reason).toMatch(/\w{3}/)
  })

  it.each(PROJECT_LIMITS)(
    'by $what ends with a finding wherever it is asked for',
    ({ what, most, count }) => {
      const project = LARGE[what]!(most + 1)
      expect(count(project)).toBe(most + 1)
      expect(count(LARGE[what]!(most))).toBe(most)
      const plan = planProject(project)
      const told = `too large to plan: ${(most + 1).toLocaleString('en')} ${inSpelling(what, 'US')}; at most ${most.toLocaleString('en')}.`
      expect(plan.findings.map(({ message }) => message)).toContain(told)
      expect([...new Set(codes(plan.findings))]).toEqual(['file/too-large'])
      expect(plan.motifs).toEqual([])
      expect(plan.settled.motifs).toHaveLength(project.motifs!.length)
      expect(codes(checkProject(project))).toContain('file/too-large')
      expect(codes(measureProject(project).findings)).toContain('file/too-large')
      const planner = createPlanner()
      expect(planner.tryout(project) ?? null).toBeNull()
      expect(planner.numbers(project)).toBeNull()
      expect(planner.size(project)).toBeNull()
      expect(planner.rotation(project)).toBeNull()
      expect(fitProject(project, { width: 500, height: 500 }).arrangements).toEqual([])
      expect(waysForProject(project, { width: 500, height: 500 }).ways).toEqual([])
    },
  )
})

describe('at its limits', () => {
  it(
    'hundreds of yarns and colourways that are all in use are planned in steps that are counted',
    { timeout: 120_000 },
    () => {
      const yarns = many(throwOf().yarns!, 500).map((yarn) => ({ ...yarn, onHandGrams: 100 }))
      const colourways = many(throwOf().colourways!, 500).map((way, i) => ({
        ...way,
        yarns: Object.fromEntries(
          Object.keys(way.yarns ?? {}).map((slot, at) => [slot, `n${(i * 3 + at) % 500}`]),
        ),
      }))
      const fill = {
        pattern: 'no-two-alike' as const,
        withinStash: true,
        colourways: colourways.map(({ id }) => id),
      }
      const project: Project = {
        ...throwOf(),
        yarns,
        colourways,
        layout: { ...blanket(throwOf()), cells: { fill } },
      }
      const before = processorTime()
      const plan = planProject(project)
      expect(plan.motifs.length).toBeGreaterThan(200)
      expect(
        codes(plan.findings).filter((code) => /colours\/(close|same-grey)/.test(code)).length,
      ).toBeLessThan(13)
      // It took minutes when each step looked through everything for the price of one.
      expect(processorTime() - before).toBeLessThan(60_000)
    },
  )

  it('of many yarns that look alike the first pairs are told, and how many more there are', () => {
    const yarns = Array.from({ length: 30 }, (_, i) => ({ id: `y${i}`, colour: '#336699' }))
    const ways = yarns.map(({ id }) => ({ id: `c${id}`, code: id, motif: 'm', yarns: { petals: id } }))
    const found = legibilityFindings(yarns, ways)
    expect(codes(found)).toEqual([...Array.from({ length: 12 }, () => 'colours/close'), 'colours/more-alike'])
    // 30 · 29 / 2 pairs, 12 of them told.
    expect(found.at(-1)?.message).toContain('423 more pairs')
    expect(found[0]?.message).toContain('colorways y0 and y1')
  })
})

describe('rounds of thousands of stitches', () => {
  // Found by `npm run fuzz`: each lap of the repeat looked through all stitches again.
  it.each([
    'Rnd 1: Ch 10, join with sl st to form a ring. Ch 1, work 10000 sc over ring, join with sl st in first sc.\nRnd 2: Ch 1, sc in same st as join, sc in next sc, picot (ch 3, sl st in first ch), *sc in next 2 sc, picot; rep from * around, join with sl st in first sc.',
    'Round 1: ch 4, join. ch 3, 11 dc in ring. sl st to join. 12 dc.\nRound 2: ch 3, dc in same, 1000 dc in each around, join. 24 dc.\nRound 3: ch 3, 2 dc in next, [1 dc, 2 dc in next] repeat around, around, join. 36 dc.',
  ])('end when their steps are used up: %j', (text) => {
    const before = processorTime()
    expect(codes(readRounds(text, { terms: 'US' }).findings)).toContain('rounds/too-long')
    expect(processorTime() - before).toBeLessThan(8_000)
  })

  it('are worked in time where they are within the limits', () => {
    const before = processorTime()
    const { rounds } = readRounds(
      'Rnd 1: Magic ring, ch 2, 12 dc into ring. Join. [12]\nRnd 2: Ch 2, *FPdc around next st, 1001 dc in next dc; repeat from * around. Join.\nRnd 3: Ch 2, *FPdc around next FPdc, dc in next dc, 2 dc in next dc; repeat from * around. Join.',
      { terms: 'US' },
    )
    expect(rounds.map(({ made }) => made)).toEqual([12, 6012, 8016])
    expect(processorTime() - before).toBeLessThan(8_000)
  })
})

describe('a size of more motifs than one plan can hold', () => {
  const small = (kind: 'flat' | 'round'): Project => {
    const project = throwOf()
    const [motif] = project.motifs!
    return {
      ...project,
      motifs: [
        { id: motif!.id, kind: 'measured', outline: 'petals', petals: 6, overTips: 10, overValleys: 7 },
      ],
      layout: { ...blanket(project), ...(kind === 'round' && { inTheRound: true }) },
    }
  }
  it.each(['flat', 'round'] as const)('is said, and nothing is proposed or fitted (%s)', (kind) => {
    const wish = { width: 10_000, height: 10_000 }
    const proposed = proposeProject(small(kind), wish)
    const fitted = fitProject(small(kind), wish)
    expect([proposed.proposals, fitted.arrangements]).toEqual([[], []])
    for (const { findings } of [proposed, fitted])
      expect(findings).toMatchObject([
        {
          code: 'layout/too-many',
          severity: 'error',
          message: expect.stringMatching(/^[\d,]{7,} motifs are more than the 100,000 that/) as string,
        },
      ])
  })
})
