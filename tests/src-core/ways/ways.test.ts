import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import type { SizeWay, WishedSize } from '../../../shared-types/ways'
import { planProject, waysForProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'
import { beyondWords, buyWords, errorWords, restWords } from '../../../src-core/ways/words'
import { expectKept, offOf } from './expect-kept'
import { SQUARES } from './squares'

const folder = new URL('../../../examples/', import.meta.url)
const EXAMPLES = readdirSync(folder)
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Project] as const)
  .filter(([, project]) => project.layout?.kind === 'blanket')

describe('M29 ways to a size', () => {
  it.each(EXAMPLES)('%s comes within 2 mm of 5 % more, each way as it promises', (_, project) => {
    const { width, height } = planProject(project).size
    const wish = { width: Math.round(width * 1.05), height: Math.round(height * 1.05) }
    const ways = expectKept(project, wish)
    expect(ways.length).toBeGreaterThan(2)
    expect(offOf(ways[0]!)).toBeLessThanOrEqual(2)
  })

  it('keep what they promise for any motif, rule, counts and wish', () => {
    const shape = fc.oneof(
      fc.record({
        outline: fc.constant('petals' as const),
        petals: fc.integer({ min: 4, max: 8 }),
        overTips: fc.integer({ min: 40, max: 120 }),
      }),
      fc.record({
        outline: fc.constantFrom('square' as const, 'hexagon' as const),
        sideToSide: fc.integer({ min: 40, max: 120 }),
      }),
      fc.record({ outline: fc.constant('round' as const), across: fc.integer({ min: 30, max: 90 }) }),
    )
    const cases = fc.record({
      shape,
      rule: fc.constantFrom('tips' as const, 'bridge' as const, 'seam' as const, 'apart' as const),
      arrangement: fc.constantFrom('straight-rows' as const, 'offset-rows' as const, 'rings' as const),
      counts: fc.record({
        columns: fc.integer({ min: 2, max: 7 }),
        rows: fc.integer({ min: 2, max: 7 }),
        rings: fc.integer({ min: 1, max: 3 }),
      }),
      rounds: fc.constantFrom([], ['sc'], ['dc', 'sc']),
      hook: fc.constantFrom(1.5, 3.5, 4),
      wider: fc.constantFrom(1, 1.02),
      share: fc.double({ min: 0.8, max: 1.25, noNaN: true }),
      side: fc.constantFrom('width' as const, 'height' as const, 'both' as const),
    })
    fc.assert(
      fc.property(cases, ({ shape, rule, arrangement, counts, rounds, hook, wider, share, side }) => {
        const project: Project = {
          ...{ format: 'petalyard-project', version: 1 },
          gauge: { stitch: 'sc', stitches: 22, rows: 24, over: 100, hook },
          yarns: [{ id: 'y', ballGrams: 50, ballMetres: 125 }],
          motifs: [{ id: 'm', kind: 'measured', ...shape, slots: [{ slot: 'all', grams: 3 }] }],
          colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
          joining: {
            rule,
            yarn: 'y',
            ...(rule === 'bridge' && { bridgeChains: 2 }),
            ...(rule === 'apart' && { gap: 6 }),
          },
          layout: {
            ...{ kind: 'blanket', motif: 'm', arrangement, ...counts },
            ...(wider > 1 && { blocking: { width: wider } }),
            ...(rounds.length > 0 && { edging: { rounds: [...rounds], yarn: 'y' } }),
          },
        }
        const { width, height } = planProject(project).size
        const wish = { width: Math.round(width * share), height: Math.round(height * share) }
        expectKept(project, side === 'both' ? wish : { [side]: wish[side] })
      }),
      { numRuns: 12 },
    )
  })

  const wayOf = (project: Project, wish: WishedSize, ...kinds: string[]) =>
    expectKept(project, wish).find((way) => way.kinds.join() === kinds.join())

  it('half a hook size makes stitches, motif and yarn larger by the ratio of the hooks (by hand)', () => {
    const way = wayOf(SQUARES, { width: 1125 }, 'hook')!
    expect(way).toMatchObject({ size: { width: 1125, height: 1350 }, error: { width: 0 } })
    expect(way.change).toBe('4.5 mm hook instead of 4 mm')
    expect(way.fabric).toMatch(/^Looser.*swatch/)
    const made = withEdit(SQUARES, way.edit)
    expect(made.gauge).toMatchObject({ hook: 4.5, stitches: 17.7778, rows: 19.5556, over: 100 })
    expect(made.motifs![0]).toMatchObject({ sideToSide: 112.5, slots: [{ slot: 'all', grams: 4.5 }] })
  })

  it('gauge, blocking and counts by hand; a side that was not asked for keeps its motifs', () => {
    expect(wayOf(SQUARES, { width: 1030 }, 'gauge')!.size).toEqual({ width: 1030, height: 1236 })
    const blocked = wayOf(SQUARES, { width: 1030 }, 'blocking')!
    expect(blocked.size).toEqual({ width: 1030, height: 1200 })
    expect(withEdit(SQUARES, blocked.edit).layout).toMatchObject({ blocking: { width: 1.03 } })
    expect(wayOf(SQUARES, { width: 1100 }, 'count')!.edit).toEqual([{ at: ['layout', 'columns'], value: 11 }])
    // 8 % looser with the same hook is more than anybody works on purpose.
    expect(wayOf(SQUARES, { width: 1080 }, 'gauge')).toBeUndefined()
  })

  it('as many rounds of edging as come nearest, and nothing added that takes it away again', () => {
    const begun: Project = { ...SQUARES, made: { '1,1': '' } }
    const ways = expectKept(begun, { width: 1092 })
    const edged = ways.filter(({ kinds }) => kinds.join() === 'edging')
    const plain = planProject(withEdit(begun, edged[0]!.edit))
    const round = (plain.size.width - 1000) / (plain.edging?.rounds.length ?? 0)
    // Not more than half a round off on both sides together; that takes more than four rounds.
    expect(Math.abs(edged[0]!.error.width!)).toBeLessThanOrEqual(round / 2 + 1e-6)
    expect(plain.edging!.rounds.length).toBeGreaterThan(4)
    // Eleven in a row are 8 mm too wide: with an edging they are still wider.
    const more = ways.filter(({ kinds }) => kinds.includes('count'))
    expect(more.map(({ change }) => change)).toEqual(['11 motifs in a row, 12 rows'])
  })

  it('says what must be bought and which limits it goes beyond (by hand)', () => {
    const limited: Project = {
      ...SQUARES,
      yarns: [{ id: 'y', name: 'Rust', ballGrams: 50, ballMetres: 125, onHandGrams: 520 }],
      colourways: [{ id: 'c', code: 'A', motif: 'm', yarns: { all: 'y' } }],
      allowance: { wastePercent: 0, tail: 0 },
      joining: { rule: 'tips' },
      made: { '1,1': '' },
      layout: {
        ...{ kind: 'blanket', motif: 'm', columns: 10, rows: 12 },
        cells: { fill: { pattern: 'one', colourways: ['c'], mostGrams: { y: 500 }, most: { c: 125 } } },
      },
    }
    // Eleven in a row are 132 motifs of 4 g: 528 g, of which 500 are allowed; at the high end, 5 % more, 34 g beyond the 520 that are there. A may stand 125 times.
    const way = wayOf(limited, { width: 1100 }, 'count')!
    expect(way.motifs).toBe(132)
    expect(way.buy).toEqual([{ id: 'y', balls: 1 }])
    expect(way.beyond).toEqual([
      { yarn: 'y', grams: expect.closeTo(28, 6) as number },
      { colourway: 'c', motifs: 7 },
    ])
    const names = { yarn: () => 'Rust', colourway: () => 'A' }
    expect(beyondWords(way.beyond, names, { units: 'metric', terms: 'UK' })).toBe(
      'Beyond your limits: Rust by 28 g, colourway A by 7 motifs',
    )
    expect(buyWords(way, names.yarn, 'UK')).toBe('To buy: Rust 1 ball')
    expect(way.unweighed).toBeUndefined()
  })

  it('says that the motifs come on top where nobody weighed them, so that a border does not read as the whole', () => {
    const [motif] = SQUARES.motifs!
    const unknown: Project = {
      ...SQUARES,
      motifs: [{ ...motif, slots: [], weighed: undefined } as never],
      yarns: [{ id: 'y', name: 'Rust', ballGrams: 50, ballMetres: 125 }],
      colourways: [{ id: 'c', code: 'A', motif: 'm', yarns: { all: 'y' } }],
      joining: { rule: 'tips', yarn: 'y' },
      layout: {
        ...{ kind: 'blanket', motif: 'm', columns: 10, rows: 12, edging: { rounds: ['sc'], yarn: 'y' } },
        cells: { fill: { pattern: 'one', colourways: ['c'] } },
      },
    }
    const way = wayOf(unknown, { width: 1100 }, 'count')!
    expect(way.yarns[0]!.grams).toBe(0)
    expect(way.unweighed).toBe(true)
    // How much of it is to be bought hangs on what they weigh; of other yarns it is known.
    expect(buyWords(way, () => 'Rust', 'US')).toBe('')
    const joined = wayOf(
      {
        ...unknown,
        yarns: [...unknown.yarns!, { id: 'z', name: 'Oat', ballGrams: 50, ballMetres: 125 }],
        joining: { rule: 'seam', yarn: 'z' },
      },
      { width: 1100 },
      'count',
    )!
    expect(joined.unweighed).toBe(true)
    expect(buyWords(joined, () => 'Oat', 'US')).toMatch(/^To buy, without the motifs: Oat \d skeins?$/)
  })

  it('tells how far it is off in the unit of the size beside it', () => {
    expect(errorWords({ width: -48.7, height: 19 }, 'metric')).toBe('4.9 cm too narrow, 1.9 cm too long')
    expect(errorWords({ width: 0.4, height: -6.35 }, 'imperial')).toBe('¼ in too short')
    expect(errorWords({ width: 0.4 }, 'metric')).toBe('exactly that')
    // 0.03 in, and what a tape would show: a sixteenth.
    expect(errorWords({ height: 0.03 * 25.4 }, 'imperial')).toBe('exactly that')
    expect(errorWords({ height: 25.4 / 16 + 0.01 }, 'imperial')).toBe('⅛ in too long')
    expect(errorWords({ height: 0.9 }, 'metric')).toBe('exactly that')
    expect(errorWords({ height: 1.1 }, 'metric')).toBe('0.1 cm too long')
    expect(restWords({ height: -1.5 }, { width: 1000, height: 1270 }, 'imperial')).toBe('')
    expect(restWords({ height: -1.5 }, { width: 1000, height: 1270 }, 'metric')).not.toBe('')
  })

  it('motifs that lie apart get the gap that fits', () => {
    const apart: Project = { ...SQUARES, joining: { rule: 'apart', gap: 5 } }
    const way = wayOf(apart, { width: 1090 }, 'joining')!
    expect(way).toMatchObject({ size: { width: 1090, height: 1310 }, change: 'Motifs 10 mm apart' })
    expect(way.edit).toEqual([{ at: ['joining', 'gap'], value: 10 }])
  })

  it('what is made keeps its motif, hook, joins and place', () => {
    const begun: Project = { ...SQUARES, made: { '1,1': '' } }
    // Fewer motifs in a row take nothing away that is made; another gauge would.
    const narrower = expectKept(begun, { width: 960 })
    expect(new Set(narrower.flatMap((way) => way.kinds))).not.toContain('gauge')
    expect(narrower.map(({ edit }) => planProject(withEdit(begun, edit)).progress.made)).not.toContain(0)
    const larger = expectKept(begun, { width: 1130, height: 1330 }).flatMap((way) => way.kinds)
    expect(new Set(larger)).toEqual(new Set(['count', 'edging', 'blocking']))
  })

  it('as many motifs in other rows: nothing to buy, what is made keeps its place', () => {
    // 80 squares of 100 mm, 8 in a row and 10 rows, the first 60 made: 10 in a row and 8 rows are 1,000 mm wide.
    const wide: Project = {
      ...SQUARES,
      layout: { ...(SQUARES.layout as BlanketLayout), columns: 8, rows: 10 },
    }
    const made = Object.fromEntries(
      planProject(wide)
        .motifs.slice(0, 60)
        .map(({ id }) => [id, '']),
    )
    const begun: Project = { ...wide, made }
    const ways = expectKept(begun, { width: 980 })
    const same = ways.find(({ motifs, kinds }) => motifs === 80 && kinds.join() === 'count')
    expect(same).toMatchObject({ change: '10 motifs in a row, 8 rows', size: { width: 1000 } })
    expect(planProject(withEdit(begun, same!.edit)).progress.made).toBe(60)
    // With rows 9 and 10 begun that would take them away.
    const further: Project = { ...begun, made: { ...made, '9,1': '' } }
    expect(
      expectKept(further, { width: 980 }).find(
        ({ motifs, kinds }) => motifs === 80 && kinds.join() === 'count',
      ),
    ).toBeUndefined()
  })

  it('says what blocking could do for what is too small, and of anything else that it is the nearest', () => {
    expect(restWords({ width: 0.2 }, { width: 1000, height: 900 }, 'metric')).toBe('')
    expect(restWords({ width: -20, height: -9 }, { width: 1000, height: 900 }, 'metric')).toBe(
      'Blocked 2 % wider and 1 % longer it would be there.',
    )
    expect(restWords({ width: 10 }, { width: 1410, height: 900 }, 'metric')).toBe(
      'The nearest that this comes to it.',
    )
    expect(restWords({ width: -56 }, { width: 1344, height: 900 }, 'metric')).toBe(
      'The nearest that this comes to it.',
    )
  })

  it('no way leaves a made motif without a place, also where it is cut out', () => {
    // What a longer arrangement moves out of a triangle is offered only as long as nothing of it is made.
    const cut: Project = {
      ...SQUARES,
      layout: {
        ...(SQUARES.layout as BlanketLayout),
        ...{ columns: 10, rows: 6 },
        outlineShape: { kind: 'triangle', size: 1100, height: 1000, points: 'up' },
      },
    }
    const made = Object.fromEntries(
      planProject(cut)
        .motifs.slice(0, 20)
        .map(({ id }) => [id, '']),
    )
    const begun: Project = { ...cut, made }
    const { size } = planProject(begun)
    const losing = (ways: readonly SizeWay[]) =>
      ways.filter((way) => planProject(withEdit(begun, way.edit)).progress.made < 20).length
    const wish = { width: size.width, height: size.height + 100 }
    expect(losing(waysForProject(cut, wish).ways)).toBeGreaterThan(0)
    const ways = expectKept(begun, wish)
    expect(losing(ways)).toBe(0)
  })

  it('a motif in rounds gets one more or one fewer, and its weight in proportion', () => {
    const works = [
      '6 sc in ring',
      '2 sc in each st around',
      '*sc in next st, 2 sc in next st; rep from * around',
    ]
    const rounds: Project = {
      ...SQUARES,
      motifs: [
        {
          ...{
            id: 'm',
            kind: 'rounds',
            foundation: { ring: 'adjustable' },
            weighed: { motifs: 1, grams: 2 },
          },
          rounds: works.map((work) => ({ slot: 'all', work })),
        },
      ],
    }
    const { width } = planProject(rounds).size
    const way = wayOf(rounds, { width: Math.round((width * 2) / 3) }, 'round')!
    expect(way.change).toBe('One fewer round in the motif')
    const motif = withEdit(rounds, way.edit).motifs![0]!
    expect(motif).toMatchObject({ rounds: [{}, {}] })
    // 6 + 12 of 6 + 12 + 18 stitches, of which the join of a round takes next to nothing.
    expect(motif.weighed!.grams! / 2).toBeCloseTo(0.5, 1)
    const more = wayOf(rounds, { width: Math.round((width * 4) / 3) }, 'round')!
    expect(more.change).toBe('One more round in the motif')
    expect(withEdit(rounds, more.edit).motifs![0]).toMatchObject({ rounds: [{}, {}, {}, {}] })
  })

  it('an edging where there is none is no more of it, and of what is joined in the round it is at the mouth', () => {
    for (const inTheRound of [false, true]) {
      const project: Project = {
        ...{ format: 'petalyard-project', version: 1, terms: 'UK' },
        motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 100 }],
        joining: { rule: 'edges' },
        layout: {
          ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 8, rows: 6 },
          inTheRound,
        },
        gauge: { stitch: 'dc', stitches: 20, rows: 22, over: 100, hook: 4 },
      }
      const { height } = planProject(project).size
      const edged = waysForProject(project, { height: height + 20 }).ways.filter(
        ({ kinds }) => kinds.join() === 'edging',
      )
      expect(edged.length).toBeGreaterThan(0)
      for (const way of edged) {
        expect(way.change).toMatch(
          inTheRound ? /^\d+ rounds? of edging \(dc\) at the mouth$/ : /^\d+ rounds? of edging \(dc\)$/,
        )
        const { edging } = withEdit(project, way.edit).layout as BlanketLayout
        expect(edging!.ends).toBe(inTheRound ? 'mouth' : undefined)
        const planned = planProject(withEdit(project, way.edit))
        expect(planned.size.height).toBeCloseTo(way.size.height, 6)
        // At one end it is higher by the edging once, round about twice.
        expect(planned.size.height - height).toBeCloseTo((inTheRound ? 1 : 2) * planned.edging!.height, 6)
      }
    }
  })

  it('an outline of another size, to the millimetre with one thing more; its motifs stay under another gauge', () => {
    for (const outlineShape of [
      { kind: 'circle', size: 700 },
      { kind: 'hexagon', size: 780 },
      { kind: 'triangle', size: 760 },
      { kind: 'rectangle', size: 640, height: 720 },
      { kind: 'path', path: 'M0 0 H600 V420 H300 V660 H0 Z' },
    ] as const) {
      const cut: Project = {
        ...SQUARES,
        layout: { kind: 'blanket', motif: 'm', columns: 9, rows: 9, outlineShape },
      }
      const { width, height } = planProject(cut).size
      const motifs = planProject(cut).motifs.map(({ id }) => id)
      for (const wish of [
        { width: Math.round(width * 1.17) },
        { width: Math.round(width * 1.03), height: Math.round(height * 1.03) },
      ]) {
        const ways = expectKept(cut, wish)
        expect(offOf(ways[0]!), `${outlineShape.kind} ${JSON.stringify(wish)}`).toBeLessThanOrEqual(1)
        const isByOutline = (way: SizeWay) => way.kinds.includes('outline') && offOf(way) <= 1
        if (wish.height === undefined) expect(ways.some(isByOutline), outlineShape.kind).toBe(true)
        for (const way of ways.filter(({ kinds }) => kinds.join() === 'gauge'))
          expect(planProject(withEdit(cut, way.edit)).motifs.map(({ id }) => id)).toEqual(motifs)
      }
    }
  })

  it('two things where one alone does not come near: no counts, a hook and then blocking', () => {
    // Two sides of a single motif: 8 % wider is beyond a gauge, and half a hook size is 12.5 %.
    const one: Project = {
      ...SQUARES,
      joining: { rule: 'seam' },
      layout: { kind: 'blanket', motif: 'm', columns: 1, rows: 1 },
    }
    const ways = expectKept(one, { width: 115, height: 116 })
    expect(offOf(ways[0]!)).toBe(0)
    expect(ways[0]!.kinds).toEqual(['hook', 'blocking'])
    expect(ways[0]!.change).toMatch(/^4\.5 mm hook instead of 4 mm; block 2\.2 % wider and 3\.1 % longer$/)
    // Where one is enough no second one is asked for.
    expect(expectKept(SQUARES, { width: 1030 }).every(({ kinds }) => kinds.length <= 2)).toBe(true)
  })

  it('garlands and sizes that are none are refused', () => {
    const garland: Project = { ...SQUARES, layout: { kind: 'garland' } }
    expect(waysForProject(garland, { width: 900, height: 900 })).toMatchObject({
      ways: [],
      findings: [{ code: 'layout/fit-kind' }],
    })
    expect(waysForProject(SQUARES, { width: -1 })).toMatchObject({
      ways: [],
      findings: [{ code: 'layout/target' }],
    })
  })
})
