/** M27, M28, M33: fillers and half motifs in the working order, made in a simulation, step by step. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { accountAt, pieceAt, placedPieces } from '../../../src-core/layout/placed'
import { numberedPlaces } from '../../../src-core/motif/numbering'
import { planProject } from '../../../src-core/plan'
import { blanket, ROUND } from '../layout/additions'
import { BLANKETS, HANDS, inEveryOrder, numberIn } from './petal-numbers'
import { runs } from '../../runs'

/** Makes one piece after the other; answers what goes wrong. */
function simulate(plan: Plan): string[] {
  const wrong: string[] = []
  const made = new Set<string>()
  const joined = new Map<string, number>()
  const once = (key: string): void => void joined.set(key, (joined.get(key) ?? 0) + 1)
  const runs: string[][] = []
  let row: number | undefined
  for (const { kind, motif, joins, words } of plan.order) {
    const piece = pieceAt(plan, motif)
    if (piece?.kind !== kind) wrong.push(`${motif} is no ${kind}`)
    if (made.has(motif)) wrong.push(`${motif} is made twice`)
    if (words === '') wrong.push(`${motif} is told nothing`)
    for (const { anchor, with: others } of joins)
      for (const other of others) {
        if (!made.has(other.motif)) wrong.push(`${motif} joins ${other.motif}, which is not there yet`)
        once(`${motif} ${anchor} ${other.motif}`)
      }
    if (kind === 'motif') {
      if (piece?.row !== row) runs.push([])
      row = piece?.row
    }
    runs.at(-1)?.push(motif)
    made.add(motif)
  }
  const all = placedPieces(plan).map(({ id }) => id)
  if (all.some((id) => !made.has(id)) || made.size !== all.length) wrong.push('something is not made')
  for (const [key, times] of joined) if (times > 1) wrong.push(`${key} is joined ${times} times`)
  // Every join point of motifs takes one join fewer than it has members.
  const of = (kind: string) => plan.order.filter((step) => step.kind === kind)
  const expected = plan.joins.reduce((sum, { members }) => sum + members.length - 1, 0)
  const points = of('motif').reduce((sum, { joins }) => sum + joins.length, 0)
  if (points !== expected) wrong.push(`${points} joins of motifs instead of ${expected}`)
  for (const step of of('filler')) {
    const filler = plan.fillers.find(({ id }) => id === step.motif)!
    const met = step.joins.map(({ with: [other] }) => other!.motif)
    if (met.length !== filler.joins || [...met].sort().join() !== [...filler.motifs].sort().join())
      wrong.push(`${filler.id} is joined to ${met.join(' ')}`)
  }
  // A place that two halves share is joined once: by the later of them.
  const ofHalves = of('half').reduce((sum, { joins }) => sum + joins.length, 0)
  const places = plan.halves.reduce((sum, { joins }) => sum + joins, 0)
  if (ofHalves > places) wrong.push(`${ofHalves} joins of halves instead of ${places}`)
  // Each is made at the end of the run in which the last that it joins was made.
  const runOf = new Map(runs.flatMap((ids, i) => ids.map((id) => [id, i] as const)))
  for (const { motif, joins, kind } of plan.order) {
    if (kind === 'motif' || joins.length === 0) continue
    const others = joins.flatMap((join) => join.with.map((other) => other.motif))
    const last = Math.max(...others.map((id) => runOf.get(id)!))
    const beside = kind === 'half' ? besideOf(plan, motif) : undefined
    if (runOf.get(motif) !== Math.max(last, runOf.get(beside ?? '') ?? last))
      wrong.push(`${motif} is made late`)
  }
  return wrong
}

/** The motif at the end of a half motif's row. */
function besideOf(plan: Plan, id: string): string {
  const half = pieceAt(plan, id)!
  const row = plan.motifs.filter((motif) => motif.row === half.row)
  return (half.side === 'left' ? row[0] : row.at(-1))!.id
}

describe.each(BLANKETS)('every motif, filler and half of %s', (name) => {
  it.each(HANDS)('is made once, after all that it joins, in every order, %s-handed', (hand) => {
    for (const { title, plan } of inEveryOrder(name, hand)) {
      expect(plan.order, title).toHaveLength(placedPieces(plan).length)
      expect(simulate(plan).slice(0, 5), title).toEqual([])
    }
  })
})

const SHAPES = [
  ROUND,
  { outline: 'petals', petals: 6, overTips: 80, overValleys: 56 },
  { outline: 'petals', petals: 8, overTips: 80, overValleys: 60 },
  { outline: 'petals', petals: 5, overTips: 80, overValleys: 56 },
  { outline: 'octagon', sideToSide: 80 },
  { outline: 'hexagon', sideToSide: 80 },
] as const
const FILLERS = [
  { outline: 'round', across: 20 },
  { outline: 'petals', petals: 4, overTips: 26, overValleys: 16 },
  { outline: 'petals', petals: 3, overTips: 14, overValleys: 9 },
  { outline: 'square', sideToSide: 24 },
  { outline: 'leaf', length: 24, width: 12 },
] as const

const given = fc.record({
  motif: fc.constantFrom(...SHAPES),
  filler: fc.constantFrom(...FILLERS),
  arrangement: fc.constantFrom('straight-rows' as const, 'offset-rows' as const, 'rings' as const),
  alternateRows: fc.constantFrom('same' as const, 'oneFewer' as const, 'oneMore' as const),
  columns: fc.integer({ min: 2, max: 5 }),
  rows: fc.integer({ min: 2, max: 5 }),
  turn: fc.constantFrom(0, 22.5, 30, 13),
  alternateTurn: fc.constantFrom(0, 180),
  rule: fc.constantFrom('tips' as const, 'edges' as const, 'seam' as const, 'apart' as const),
  hand: fc.constantFrom('right' as const, 'left' as const),
  order: fc.constantFrom(
    'there-and-back' as const,
    'one-way' as const,
    'centre' as const,
    'colourway' as const,
  ),
})
type Given = typeof given extends fc.Arbitrary<infer T> ? T : never

const build = ({ motif, filler, rule, hand, order, ...layout }: Given): Project =>
  blanket(
    motif,
    filler,
    { ...layout, rings: 2, halves: true, fillers: { motif: 'f' } },
    { joining: { rule }, hand, order },
  )

describe('M27, M28 in any arrangement', () => {
  it('every filler and half is made once, after all that it joins, and every join once', () => {
    const met = { fillers: 0, halves: 0 }
    fc.assert(
      fc.property(given, (each) => {
        const plan = planProject(build(each))
        met.fillers += plan.fillers.length
        met.halves += plan.halves.length
        expect(simulate(plan)).toEqual([])
      }),
      { numRuns: runs(150) },
    )
    expect(Math.min(met.fillers, met.halves)).toBeGreaterThan(runs(100))
  })

  it('their working numbers follow those of the motifs, in the order in which they are made', () => {
    fc.assert(
      fc.property(given, (each) => {
        const plan = planProject(build(each))
        const labels = (kind: boolean) =>
          plan.order
            .filter((step) => (step.kind === 'motif') === kind)
            .map(({ motif }) => pieceAt(plan, motif)!.label)
        expect([...labels(true), ...labels(false)]).toEqual(plan.order.map((_, i) => String(i + 1)))
      }),
      { numRuns: runs(40) },
    )
  })

  it('a petal that is called free is free, whatever halves and fillers are joined to the motif', () => {
    let read = 0
    fc.assert(
      fc.property(given, (each) => {
        const plan = planProject(build(each))
        const taken = new Set<string>()
        for (const step of plan.order)
          for (const { anchor, words, with: others } of step.joins) {
            const host = `${others[0]!.motif} ${others[0]!.anchor}`
            if (/ free (petal|corner) /.test(words)) {
              read++
              expect(taken.has(host), `${step.motif}: ${words}`).toBe(false)
            } else if (words.includes('into the same space')) expect(taken.has(host), words).toBe(true)
            taken.add(`${step.motif} ${anchor}`)
            for (const other of others) taken.add(`${other.motif} ${other.anchor}`)
          }
      }),
      { numRuns: runs(80) },
    )
    expect(read).toBeGreaterThan(200)
  })

  it('petals of halves and fillers are numbered in words as they are counted in pictures', () => {
    for (const hand of HANDS)
      for (const motif of [SHAPES[1], SHAPES[2]]) {
        const plan = planProject(
          build({
            ...{ motif, filler: FILLERS[1], arrangement: 'offset-rows', alternateRows: 'same' },
            ...{ columns: 4, rows: 4, turn: 0, alternateTurn: 0, rule: 'tips', hand, order: 'one-way' },
          }),
        )
        let told = 0
        for (const step of plan.order.filter(({ kind }) => kind !== 'motif')) {
          const piece = pieceAt(plan, step.motif)!
          const account = accountAt(plan, piece)!
          const numbers = new Map(
            numberedPlaces(account, piece).map((entry) => [entry.anchor.id, entry.number]),
          )
          for (const { anchor, words } of step.joins) {
            told++
            expect(numberIn(words), words).toBe(numbers.get(anchor))
          }
        }
        expect(told).toBeGreaterThan(10)
      }
  })

  it('a half is worked from one end of its cut to the other', () => {
    const plan = planProject(
      build({
        ...{ motif: SHAPES[1], filler: FILLERS[0], arrangement: 'offset-rows', alternateRows: 'same' },
        ...{ columns: 4, rows: 4, turn: 30, alternateTurn: 0, rule: 'tips', hand: 'right', order: 'one-way' },
      }),
    )
    const step = plan.order.find(({ motif }) => motif === '2,left')!
    expect(step).toMatchObject({ kind: 'half' })
    // A half of six petals, cut between two of them, has three: all meet what is round it.
    expect(step.joins.map(({ words }) => numberIn(words))).toEqual([1, 2, 3])
    expect(step.words).toMatch(/^petal 1: join .+; petal 2: join .+; petal 3: join .+$/)
  })
})
