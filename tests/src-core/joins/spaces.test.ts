import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Arrangement, Hand, Project } from '../../../shared-types/project'
import { createPlanner, proposeProject } from '../../../src-core/plan'

const TURN = 2 * Math.PI
const COUNTS = Array.from({ length: 22 }, (_, i) => i + 3)
const ARRANGEMENTS: readonly Arrangement[] = ['straight-rows', 'offset-rows', 'rings']

/** Rounds of a circle whose last round has so many spaces. */
const circle = (spaces: number): NonNullable<Project['motifs']>[number] => ({
  ...{ id: 'm', name: 'Circle', kind: 'rounds', shape: 'round', foundation: { ring: 'adjustable' } },
  rounds: [
    { work: `Ch 1, ${spaces} sc in ring, join with sl st in first sc.`, slot: 'a' },
    {
      work: 'Ch 5 (counts as dc and ch 2), *dc in next st, ch 2; rep from * around, join with sl st in 3rd ch of beg ch-5.',
      slot: 'a',
    },
  ],
})

const flower = (petals: number): NonNullable<Project['motifs']>[number] => ({
  ...{ id: 'm', name: 'Flower', kind: 'measured', outline: 'petals', petals, overTips: 80, overValleys: 56 },
})

const projectOf = (
  motif: NonNullable<Project['motifs']>[number],
  arrangement: Arrangement,
  hand: Hand,
): Project => ({
  ...{ format: 'petalyard-project', version: 1, title: 'Spaces', units: 'metric', terms: 'US', hand },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  motifs: [motif],
  layout: { kind: 'blanket', motif: 'm', arrangement, rows: 4, columns: 4, rings: 2 },
})

interface Told {
  /** How many places on from place 1, in working direction; a half between two. */
  readonly at: number
  readonly isBetween: boolean
  /** Direction in which the join point lies from the middle of the motif. */
  readonly towards: number
}

/** A place as a maker counts it; null where the motif has no such place. */
function countedIn(words: string, count: number, noun: 'space' | 'petal'): Omit<Told, 'towards'> | null {
  const between = /between (?:its )?spaces (\d+) and (\d+)/.exec(words)
  if (between) {
    const [first, second] = [Number(between[1]), Number(between[2])]
    return first >= 1 && first <= count && second === (first % count) + 1
      ? { at: first - 0.5, isBetween: true }
      : null
  }
  const found = new RegExp(`${noun} (\\d+)`).exec(words)
  const number = Number(found?.[1] ?? 0)
  return number >= 1 && number <= count ? { at: number - 1, isBetween: false } : null
}

/** What the words of a plan say of every motif, with where its join points lie. */
function toldOf(plan: Plan, count: number, noun: 'space' | 'petal'): Map<string, (Told | string)[]> {
  const middle = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const labels = new Map(plan.motifs.map(({ id, label }) => [label, id]))
  const told = new Map<string, (Told | string)[]>(plan.motifs.map(({ id }) => [id, []]))
  for (const step of plan.order)
    for (const join of step.joins) {
      const node = plan.joins.find(({ members }) =>
        [{ motif: step.motif, anchor: join.anchor }, join.with[0]!].every((one) =>
          members.some(({ motif, anchor }) => motif === one.motif && anchor === one.anchor),
        ),
      )!
      const [own, there] = join.words.split(': ') as [string, string]
      const tell = (id: string, words: string): void => {
        const motif = middle.get(id)!
        const place = countedIn(words, count, noun)
        const towards = Math.atan2(node.x - motif.x, motif.y - node.y)
        told.get(id)!.push(place ? { ...place, towards } : `${id}: ${words}`)
      }
      tell(step.motif, own)
      if (noun === 'petal') continue
      const host = /to (\d+)/.exec(there)!
      tell(labels.get(host[1]!)!, there.slice(host.index + host[0].length))
    }
  return told
}

const wrap = (angle: number): number => angle - TURN * Math.round(angle / TURN)

/** How far places lie from the join points, in steps from one place to the next, as the motif is turned best. */
function farthestOff(told: readonly Told[], count: number, hand: Hand): number {
  const step = TURN / count
  const sign = hand === 'left' ? 1 : -1
  const off = (turn: number): number =>
    Math.max(0, ...told.map(({ at, towards }) => Math.abs(wrap(towards - turn - sign * at * step)) / step))
  return Math.min(...Array.from({ length: 48 * count }, (_, i) => off((i * TURN) / (48 * count))))
}

describe.each(ARRANGEMENTS)('M30 %s of motifs with 3 to 24 spaces or petals', (arrangement) => {
  const planner = createPlanner()

  it.each(COUNTS)(
    'every join of circles with %i spaces names spaces that are there, where the motifs meet',
    (count) => {
      for (const hand of ['right', 'left'] as const) {
        const plan = planner.plan(projectOf(circle(count), arrangement, hand))
        expect(plan.motif).toMatchObject({ shape: 'round', spaces: { count } })
        expect(plan.joins.length).toBeGreaterThan(0)
        for (const [id, places] of toldOf(plan, count, 'space')) {
          expect(places.filter((place) => typeof place === 'string')).toEqual([])
          const told = places as Told[]
          expect(farthestOff(told, count, hand), `${hand}: ${id}`).toBeLessThan(0.26)
          // Each neighbour has a place of its own.
          expect(new Set(told.map(({ at }) => at)).size, `${hand}: ${id}`).toBe(told.length)
        }
        // A joining chain is told wherever one of the two lies between spaces, and nowhere else.
        for (const { words } of plan.order.flatMap(({ joins }) => joins))
          expect(words.includes('with a joining chain'), words).toBe(words.includes('between'))
      }
    },
  )

  it.each(COUNTS)('says of %i spaces whether all motifs meet at them', (count) => {
    const plan = planner.plan(projectOf(circle(count), arrangement, 'right'))
    const found = plan.findings.find(({ code }) => code === 'joins/between-spaces')
    // Four neighbours a quarter turn apart, or six a sixth of it.
    expect(found === undefined).toBe(count % (arrangement === 'straight-rows' ? 4 : 6) === 0)
    const told = plan.order.flatMap(({ joins }) => joins).filter(({ words }) => words.includes('between'))
    expect(plan.counts.between?.joins ?? 0).toBe(told.length)
  })

  it.each(COUNTS)('every join of flowers with %i petals names a petal that points there', (count) => {
    const plan = planner.plan(projectOf(flower(count), arrangement, 'right'))
    for (const [id, places] of toldOf(plan, count, 'petal')) {
      expect(places.filter((place) => typeof place === 'string')).toEqual([])
      expect(farthestOff(places as Told[], count, 'right'), id).toBeLessThan(0.5)
    }
  })
})

describe('M26 what meets at its spaces is offered first', () => {
  it.each([
    [4, 'straight-rows'],
    [6, 'offset-rows'],
    [8, 'straight-rows'],
    [18, 'offset-rows'],
    [20, 'straight-rows'],
  ] as const)('%i spaces: %s', (count, arrangement) => {
    const { proposals } = proposeProject(projectOf(circle(count), 'straight-rows', 'right'), {
      ...{ width: 600, height: 800 },
    })
    expect(proposals[0]!.fit.arrangement).toBe(arrangement)
    expect(proposals[0]!.fit.between).toBeUndefined()
    const others = proposals.filter(
      ({ fit }) => fit.arrangement !== arrangement && fit.arrangement !== 'rings',
    )
    expect(others.length).toBeGreaterThan(0)
    for (const { fit } of others) expect(fit.between?.joins).toBeGreaterThan(0)
  })
})
