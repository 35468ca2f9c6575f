/** Properties of whole plans, checked by an independent validator: geometry by the polygon library, words by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { moveOutline, turnOutline } from '../../src-core/geometry/points'
import { grow, sharedArea } from '../../src-core/geometry/polygons'
import { planProject } from '../../src-core/plan'
import { runs } from '../runs'

const motif = fc.oneof(
  fc.record({
    outline: fc.constant('petals'),
    petals: fc.integer({ min: 3, max: 12 }),
    overTips: fc.double({ min: 30, max: 150, noNaN: true }),
    share: fc.double({ min: 0.4, max: 0.9, noNaN: true }),
  }),
  fc.record({
    outline: fc.constantFrom('square', 'hexagon', 'octagon'),
    sideToSide: fc.constantFrom(40, 63.5, 152.4),
  }),
  fc.record({ outline: fc.constant('round'), across: fc.constantFrom(35, 80) }),
  fc.record({
    outline: fc.constant('leaf'),
    length: fc.constantFrom(60, 90),
    width: fc.constantFrom(25, 40),
  }),
)

const layout = fc.record({
  kind: fc.constant('blanket' as const),
  motif: fc.constant('m'),
  arrangement: fc.constantFrom('straight-rows' as const, 'offset-rows' as const, 'rings' as const),
  alternateRows: fc.constantFrom('same' as const, 'oneFewer' as const, 'oneMore' as const),
  columns: fc.integer({ min: 2, max: 4 }),
  rows: fc.integer({ min: 1, max: 4 }),
  rings: fc.integer({ min: 0, max: 1 }),
  turn: fc.constantFrom(0, 22.5, 30, 45, 36, 90, 17),
  alternateTurn: fc.constantFrom(0, 0, 180, 36, 60),
})

const project = fc.record({
  motif,
  layout,
  hand: fc.constantFrom('right' as const, 'left' as const),
  rule: fc.constantFrom(
    'tips' as const,
    'edges' as const,
    'bridge' as const,
    'seam' as const,
    'apart' as const,
  ),
  order: fc.constantFrom('there-and-back' as const, 'one-way' as const, 'centre' as const),
})

type Case = typeof project extends fc.Arbitrary<infer T> ? T : never

function build({ motif: { ...shape }, layout: laid, hand, rule, order }: Case): Project {
  const measures = 'share' in shape ? { ...shape, overValleys: shape.overTips * shape.share } : shape
  return {
    format: 'petalyard-project',
    version: 1,
    hand,
    order,
    motifs: [{ id: 'm', kind: 'measured', ...measures } as never],
    layout: laid,
    joining: { rule, bridgeChains: 3, gap: 5 },
  }
}

/** Outlines as placed, shrunk by half of the tolerance so that a mere touch is none. */
function placed(plan: Plan) {
  const shrunk = new Map<number, ReturnType<typeof grow>>()
  return plan.motifs.map((m) => {
    const turned =
      shrunk.get(m.turn) ?? grow([turnOutline(plan.motif!.outline, (m.turn * Math.PI) / 180)], -0.005)
    shrunk.set(m.turn, turned)
    return turned.map((outline) => moveOutline(outline, m.x, m.y))
  })
}

function anchorAt(
  plan: Plan,
  member: { motif: string; anchor: string },
  anchors: Map<string, { x: number; y: number }>,
) {
  const m = plan.motifs.find((entry) => entry.id === member.motif)!
  const a = anchors.get(member.anchor)!
  const angle = (m.turn * Math.PI) / 180
  return {
    x: m.x + a.x * Math.cos(angle) - a.y * Math.sin(angle),
    y: m.y + a.x * Math.sin(angle) + a.y * Math.cos(angle),
  }
}

describe('properties of a plan', () => {
  it('M20 no two outlines overlap by more than 0.01 mm, and neighbours in a row touch', () => {
    fc.assert(
      fc.property(project, (given) => {
        const plan = planProject(build(given))
        expect(plan.motifs.length).toBeGreaterThan(0)
        const outlines = placed(plan)
        for (let i = 0; i < outlines.length; i++)
          for (let j = 0; j < i; j++) {
            const far = Math.hypot(
              plan.motifs[i]!.x - plan.motifs[j]!.x,
              plan.motifs[i]!.y - plan.motifs[j]!.y,
            )
            if (far > 1.01 * plan.motif!.overTips) continue
            expect(sharedArea(outlines[i]!, outlines[j]!)).toBe(0)
          }
      }),
      { numRuns: runs(150) },
    )
  })

  it('M26 the size is the box round all outlines, the top left at 0', () => {
    fc.assert(
      fc.property(project, (given) => {
        const plan = planProject(build(given))
        const points = plan.motifs.flatMap((m) =>
          moveOutline(turnOutline(plan.motif!.outline, (m.turn * Math.PI) / 180), m.x, m.y),
        )
        expect(Math.min(...points.map((p) => p.x))).toBeCloseTo(0, 6)
        expect(Math.min(...points.map((p) => p.y))).toBeCloseTo(0, 6)
        expect(Math.max(...points.map((p) => p.x))).toBeCloseTo(plan.size.width, 6)
        expect(Math.max(...points.map((p) => p.y))).toBeCloseTo(plan.size.height, 6)
      }),
      { numRuns: runs(100) },
    )
  })

  it('M30 members of a node are pairwise within its spread, of different motifs, each anchor in one node', () => {
    fc.assert(
      fc.property(project, (given) => {
        const source = build(given)
        if (given.motif.outline === 'round') return
        const plan = planProject(source)
        const anchors = new Map(plan.motif!.anchors.map((anchor) => [anchor.id, anchor]))
        const gap = given.rule === 'bridge' ? 3 * 5.6 : 0
        const reach = 0.08 * plan.motif!.overTips + gap
        const used = new Set<string>()
        for (const node of plan.joins) {
          const points = node.members.map((member) => anchorAt(plan, member, anchors))
          let spread = 0
          points.forEach((p, i) =>
            points.slice(i + 1).forEach((q) => (spread = Math.max(spread, Math.hypot(p.x - q.x, p.y - q.y)))),
          )
          expect(node.spread).toBeCloseTo(spread, 6)
          expect(spread).toBeLessThanOrEqual(reach + 1e-5)
          expect(new Set(node.members.map((member) => member.motif)).size).toBe(node.members.length)
          expect(node.members.length).toBeGreaterThan(1)
          expect(node.host).toBe(node.members[0]!.motif)
          for (const member of node.members) {
            const key = `${member.motif} ${member.anchor}`
            expect(used.has(key)).toBe(false)
            used.add(key)
          }
        }
      }),
      { numRuns: runs(150) },
    )
  })

  it('M33 every motif is worked once, every join told once, the host being there first', () => {
    fc.assert(
      fc.property(project, (given) => {
        const plan = planProject(build(given))
        expect(new Set(plan.order.map((step) => step.motif)).size).toBe(plan.motifs.length)
        const labels = new Map(plan.motifs.map((m) => [m.id, Number(m.label)]))
        plan.order.forEach((step, i) => expect(labels.get(step.motif)).toBe(i + 1))
        const told = plan.order.flatMap((step) => step.joins.map((join) => `${step.motif} ${join.anchor}`))
        const expected = plan.joins.flatMap((node) =>
          node.members.filter((m) => m.motif !== node.host).map((m) => `${m.motif} ${m.anchor}`),
        )
        expect(told.sort()).toEqual(expected.sort())
        for (const step of plan.order)
          for (const join of step.joins)
            for (const other of join.with)
              expect(labels.get(other.motif)!).toBeLessThan(labels.get(step.motif)!)
      }),
      { numRuns: runs(150) },
    )
  })

  it('turning a grid by a quarter, or mirroring it, changes no count', () => {
    fc.assert(
      fc.property(project, (given) => {
        const straight = {
          ...given,
          layout: { ...given.layout, arrangement: 'straight-rows' as const, alternateTurn: 0 },
        }
        const sizes = (plan: Plan) => plan.joins.map((join) => join.members.length).sort()
        const plan = planProject(build(straight as Case))
        const { columns, rows, turn } = straight.layout
        const quarter = planProject(
          build({
            ...straight,
            layout: { ...straight.layout, columns: rows, rows: columns, turn: turn + 90 },
          } as Case),
        )
        const mirrored = planProject(
          build({
            ...given,
            layout: { ...given.layout, turn: -given.layout.turn, alternateTurn: -given.layout.alternateTurn },
          } as Case),
        )
        const plain = planProject(build(given))
        // A row pitch is taken over all columns, a column pitch within one row: only outlines that meet
        // straight across come to the same after a quarter turn.
        if (
          Math.abs(plan.pitch.row - quarter.pitch.column) < 1e-6 &&
          Math.abs(plan.pitch.column - quarter.pitch.row) < 1e-6
        )
          expect(sizes(quarter)).toEqual(sizes(plan))
        // Rows of equal length that are shifted to the right lie to the left in a mirror: another arrangement.
        if (given.layout.arrangement === 'offset-rows' && given.layout.alternateRows === 'same') return
        expect(sizes(mirrored)).toEqual(sizes(plain))
        // Outlines grown by a gap have corners rounded to within 0.002 mm.
        const digits = given.rule === 'bridge' || given.rule === 'apart' ? 1 : 6
        expect(mirrored.size.width).toBeCloseTo(plain.size.width, digits)
        expect(mirrored.size.height).toBeCloseTo(plain.size.height, digits)
      }),
      { numRuns: runs(100) },
    )
  })
})

describe('M33 the words name the right petal', () => {
  /** Follows "join to X, k-th free petal to the left of Y" on the drawing itself, by angles alone. */
  it('for petals, right- and left-handed, in every order', () => {
    fc.assert(
      fc.property(
        fc.record({
          motif: fc.record({
            outline: fc.constant('petals'),
            petals: fc.constantFrom(5, 6, 8, 10),
            overTips: fc.constant(80),
            share: fc.constant(0.66),
          }),
          layout: layout.map((l) => ({ ...l, columns: 4, rows: 4 })),
          hand: fc.constantFrom('right' as const, 'left' as const),
          rule: fc.constant('tips' as const),
          order: fc.constantFrom('there-and-back' as const, 'one-way' as const, 'centre' as const),
        }),
        (given) => {
          const plan = planProject(build(given as Case))
          const petals = (given.motif as { petals: number }).petals
          const byLabel = new Map(plan.motifs.map((m) => [m.label, m]))
          /** Petal in each direction on the drawing: angle step counter-clockwise is to the left. */
          const direction = (id: string, anchor: string) => {
            const petal = Number(anchor.replace('tip-', '')) - 1
            const sign = given.hand === 'left' ? 1 : -1
            return plan.motifs.find((m) => m.id === id)!.turn + (sign * petal * 360) / petals
          }
          const made: { a: string; anchorA: string; b: string; anchorB: string }[] = []
          for (const step of plan.order) {
            const own = plan.motifs.find((m) => m.id === step.motif)!.label
            for (const join of step.joins) {
              const words =
                /join to (\d+), (next|2nd|3rd|\d+th) free petal to the (left|right) of (?:the one just joined|(\d+))$/.exec(
                  join.words,
                )
              if (words) {
                const host = byLabel.get(words[1]!)!
                const steps = words[2] === 'next' ? 1 : parseInt(words[2]!)
                const reference = byLabel.get(words[4] ?? own)!
                const ways = made
                  .flatMap((m) => [m, { a: m.b, anchorA: m.anchorB, b: m.a, anchorB: m.anchorA }])
                  .filter((m) => m.a === host.id && m.b === reference.id)
                const target = direction(host.id, join.with[0]!.anchor)
                const side = words[3] === 'left' ? -1 : 1
                const hit = ways.some((m) => {
                  const there = direction(m.a, m.anchorA) + (side * steps * 360) / petals
                  return Math.abs(((there - target + 900) % 360) - 180) < 1e-6
                })
                expect(hit, join.words).toBe(true)
              }
              for (const other of join.with)
                made.push({ a: step.motif, anchorA: join.anchor, b: other.motif, anchorB: other.anchor })
            }
          }
        },
      ),
      { numRuns: runs(60) },
    )
  })
})
