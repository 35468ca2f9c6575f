import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork, movedMarks } from '../../../src-core/progress/hold'
import { lostMade, settleLost } from '../../../src-core/progress/lost'
import { clearMade, markJoined, markMade } from '../../../src-core/progress/mark'
import { lostWords } from '../../../src-core/progress/words'
import { disc, first, progressOf, project } from './project'
import { colours, coloursOf, fill, laidAnew, large, painted, withBlanket, withFill } from './large'
import { runs } from '../../runs'

const base = large(200, { rings: 5, cells: { fill } })
/** The same in turn within a limit, cut out: what lies within follows from the measures. */
const cut = large(200, {
  rings: 5,
  cells: { fill: { ...fill, pattern: 'repeat', most: { b: 30 } } },
  outlineShape: { kind: 'triangle', size: 1200, height: 1000 },
})

const edits: fc.Arbitrary<(of: Project) => Project> = fc.oneof(
  fc
    .constantFrom('one', 'repeat', 'rows', 'no-two-alike', 'shade', 'scatter')
    .map((pattern) => (of: Project) => withFill(of, { pattern })),
  fc.integer({ min: 0, max: 99 }).map((seed) => (of: Project) => withFill(of, { seed })),
  fc
    .uniqueArray(fc.constantFrom(...colours), { minLength: 1 })
    .map((colourways) => (of: Project) => withFill(of, { colourways })),
  fc.integer({ min: 1, max: 24 }).map((rows) => (of: Project) => withBlanket(of, { rows })),
  fc.integer({ min: 2, max: 24 }).map((columns) => (of: Project) => withBlanket(of, { columns })),
  fc.integer({ min: 1, max: 9 }).map((rings) => (of: Project) => withBlanket(of, { rings })),
  fc
    .constantFrom('straight-rows', 'offset-rows', 'rings')
    .map((arrangement) => (of: Project) => withBlanket(of, { arrangement })),
  fc
    .constantFrom('same', 'oneFewer', 'oneMore')
    .map((alternateRows) => (of: Project) => withBlanket(of, { alternateRows })),
  fc
    .record({
      row: fc.integer({ min: 1, max: 16 }),
      column: fc.integer({ min: 1, max: 20 }),
      way: fc.constantFrom(...colours),
    })
    .map(
      ({ row, column, way }) =>
        (of: Project) =>
          painted(of, { [`${row},${column}`]: way, '16,20': way }),
    ),
  fc
    .record({
      kind: fc.constantFrom('triangle', 'circle', 'rectangle'),
      size: fc.integer({ min: 300, max: 1500 }),
    })
    .map((outlineShape) => (of: Project) => withBlanket(of, { outlineShape })),
  // As many as are made already, taken as another arrangement: what lies there is marked in the same edit.
  fc
    .record({
      arrangement: fc.constantFrom('straight-rows', 'offset-rows'),
      columns: fc.integer({ min: 8, max: 24 }),
      rows: fc.integer({ min: 6, max: 18 }),
    })
    .map((patch) => (of: Project) => laidAnew(of, patch)),
  // Measures leave places and colours alone, but for an outline.
  fc
    .integer({ min: 40, max: 90 })
    .map((across) => (of: Project) => ({ ...of, motifs: [{ ...disc, across } as never] })),
)

describe('made motifs while a project changes', () => {
  it('keep place and colour, or are asked about first (property: 200 made, then anything)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(base, cut),
        fc.array(edits, { minLength: 1, maxLength: 6 }),
        (start, changes) => {
          let now = start
          for (const change of changes) {
            const next = holdWork(now, change(now))
            const move = movedMarks(now, next)
            const [was, is] = [coloursOf(now), coloursOf(next)]
            const lost = lostMade(now, next)
            const touched = Object.keys(now.made!).filter((key) => {
              const here = move(key)
              return here === null || !(here in next.made!) || was.get(key) !== is.get(here)
            })
            // What is lost without a question: nothing; and a question is asked only where something is lost.
            expect(lost ? lost.gone + lost.recoloured : 0).toBe(touched.length)
            // Answered with yes, no mark is left where there is no motif.
            now = lost ? settleLost(next, lost) : next
            for (const key of Object.keys(now.made!)) expect(coloursOf(now).has(key), key).toBe(true)
          }
        },
      ),
      { numRuns: runs(60) },
    )
  })

  it('are passed over by every pattern, seed and choice of colourways', () => {
    const stood = coloursOf(base)
    for (const change of [
      { pattern: 'rows' },
      { seed: 5 },
      { colourways: ['d', 'c'] },
      { pattern: 'scatter' },
    ] as const) {
      const next = holdWork(base, withFill(base, change as never))
      expect(lostMade(base, next)).toBeNull()
      for (const key of Object.keys(base.made!)) expect(coloursOf(next).get(key)).toBe(stood.get(key))
      // The rest did change.
      expect([...coloursOf(next)].some(([key, way]) => !(key in base.made!) && stood.get(key) !== way)).toBe(
        true,
      )
      // What is planned is what stands.
      for (const { id, colourway } of planProject(next).motifs.slice(0, 200))
        expect(colourway, id).toBe(stood.get(id))
    }
  })

  it('keep their colour also where the file says nothing of it yet', () => {
    const bare: Project = { ...large(0, { cells: { fill } }), made: first(4) }
    const next = holdWork(bare, withFill(bare, { pattern: 'one' }))
    expect((next.layout as BlanketLayout).cells!.held).toEqual(
      Object.fromEntries(Object.keys(first(4)).map((key) => [key, coloursOf(bare).get(key)])),
    )
    expect(lostMade(bare, next)).toBeNull()
  })

  it('move with their rings', () => {
    const rings = large(7, { arrangement: 'rings', rings: 1, cells: { fill } })
    const next = holdWork(rings, withBlanket(rings, { rings: 2 }))
    expect(Object.keys(next.made!).sort()).toEqual(['2,2', '2,3', '3,2', '3,3', '3,4', '4,2', '4,3'])
    // None is lost; but round them others come first in every row.
    expect(lostMade(rings, next)).toMatchObject({ gone: 0, recoloured: 0, renumbered: { length: 7 } })
    expect(progressOf(next).made).toBe(7)
    const back = holdWork(next, withBlanket(next, { rings: 0 }))
    expect(lostMade(next, back)).toMatchObject({ gone: 6, recoloured: 0 })
    expect(progressOf(settleLost(back, lostMade(next, back)!)).made).toBe(1)
  })

  it('are asked about when their row goes, their motif is another one, or their colourway another yarn', () => {
    const fewer = holdWork(base, withBlanket(base, { rows: 9 }))
    expect(lostMade(base, fewer)).toMatchObject({ gone: 20, recoloured: 0 })
    // Until it is answered the marks are there, and a file that has them says so.
    expect(planProject(fewer).findings.map(({ code }) => code)).toContain('progress/unknown-place')
    const other = { ...base, motifs: [...base.motifs!, { ...disc, id: 'n' }] }
    expect(lostMade(other, withBlanket(other, { motif: 'n' }))).toMatchObject({ gone: 200 })
    const dyed: Project = {
      ...base,
      colourways: base.colourways!.map((way) =>
        way.id === 'a' ? { ...way, yarns: { middle: 'sand', rim: 'clay' } } : way,
      ),
    }
    const inA = Object.keys(base.made!).filter((key) => coloursOf(base).get(key) === 'a').length
    expect(lostMade(base, dyed)).toMatchObject({ gone: 0, recoloured: inA })
  })

  it('are painted only where nothing else is meant, and then asked about', () => {
    const [made, free] = ['1,1', '16,20']
    const way = coloursOf(base).get(made) === 'a' ? 'b' : 'a'
    const both = holdWork(base, painted(base, { [made]: way, [free]: way }))
    expect(coloursOf(both).get(made)).toBe(coloursOf(base).get(made))
    expect(coloursOf(both).get(free)).toBe(way)
    expect(lostMade(base, both)).toBeNull()
    const alone = holdWork(base, painted(base, { [made]: way }))
    expect(lostMade(base, alone)).toMatchObject({ gone: 0, recoloured: 1 })
    expect(coloursOf(alone).get(made)).toBe(way)
  })

  it('are free again when the mark is taken away', () => {
    const fewer = holdWork(base, clearMade(base, ['1,1']))
    expect(lostMade(base, fewer)).toBeNull()
    expect((fewer.layout as BlanketLayout).cells!.held).toBeUndefined()
    const other = holdWork(base, withFill(base, { pattern: 'rows' }))
    const held = (of: Project) => Object.keys((of.layout as BlanketLayout).cells!.held!)
    expect(held(other)).toHaveLength(200)
    expect(held(holdWork(other, clearMade(other, ['1,1'])))).toHaveLength(199)
    const all = clearMade(base, Object.keys(base.made!))
    expect(all.made).toEqual({})
    expect((all.layout as BlanketLayout).cells!.held).toBeUndefined()
  })

  it('are not asked about when a file had marks without a place before', () => {
    const odd = { ...base, made: { ...base.made, '99,1': '' } }
    const next = holdWork(odd, withFill(odd, { seed: 3 }))
    expect(lostMade(odd, next)).toBeNull()
    expect(next.made!['99,1']).toBe('')
  })
})

describe('marking', () => {
  it('keeps the day of what is marked already, and what is joined with it', () => {
    const one = markMade(project(), [{ id: '1,1', colourway: 'a' }], '2026-12-01')
    const two = markMade(
      one,
      [
        { id: '1,1', colourway: 'a' },
        { id: '1,2', colourway: 'a' },
      ],
      '2026-12-02',
    )
    expect(two.made).toEqual({ '1,1': '2026-12-01', '1,2': '2026-12-02' })
    expect(two.joined).toBeUndefined()
    expect(markMade(two, [{ id: '1,1', colourway: 'a' }], '2026-12-03')).toBe(two)
  })

  it('of joined motifs makes them too, and says what was taken for joined until then', () => {
    const seamed = project({ joining: { rule: 'seam' } })
    const joined = markJoined(seamed, [{ id: '1,1', colourway: 'a' }], '2026-12-01')
    expect(joined).toMatchObject({ made: { '1,1': '2026-12-01' }, joined: { '1,1': '2026-12-01' } })
    const tips = markMade(project(), [{ id: '1,1', colourway: 'a' }], '2026-12-01')
    expect(markJoined(tips, [{ id: '1,2', colourway: 'a' }], '2026-12-02').joined).toEqual({
      '1,1': '2026-12-01',
      '1,2': '2026-12-02',
    })
  })
})

describe('items of a panel that are made', () => {
  const item = (x: number, way = 'a') => ({ motif: 'm', colourway: way, x, y: 200 })
  const panel = (items: ReturnType<typeof item>[], made: Record<string, string> = {}): Project =>
    project({
      layout: { kind: 'applique', panel: { shape: 'rectangle', width: 400, height: 400 }, items },
      made,
    })
  const three = [item(100), item(200, 'b'), item(300)]

  it('keep their mark when others come or go, and when they are moved', () => {
    const before = panel(three, { '1,2': '2026-12-01' })
    const fewer: Project = { ...before, layout: { ...before.layout, items: three.slice(1) } as never }
    expect(holdWork(before, fewer).made).toEqual({ '1,1': '2026-12-01' })
    expect(lostMade(before, holdWork(before, fewer))).toBeNull()
    const moved: Project = {
      ...before,
      layout: { ...before.layout, items: [three[0], item(210, 'b'), three[2]] } as never,
    }
    expect(holdWork(before, moved).made).toEqual({ '1,2': '2026-12-01' })
    expect(lostMade(before, moved)).toBeNull()
  })

  it('that are sewn down are asked about where they would lie elsewhere, and are made, not sewn down then', () => {
    const day = '2026-12-01'
    const sewn: Project = { ...panel(three, { '1,2': day, '1,3': day }), joined: { '1,2': day } }
    const laid = (items: object[]): Project => ({ ...sewn, layout: { ...sewn.layout, items } as never })
    const turned = laid([three[0]!, { ...item(200, 'b'), turn: 30 }, three[2]!])
    for (const after of [laid([three[0]!, item(210, 'b'), three[2]!]), turned]) {
      const lost = lostMade(sewn, holdWork(sewn, after))!
      expect(lost).toMatchObject({ gone: 0, rejoined: ['1,2'], isSewn: true })
      expect(lostWords(lost, 'US').question).toMatch(/^1 motif that is sewn down would lie elsewhere/)
      expect(lostWords(lost, 'US').yes).toBe('Mark 1 as not sewn down')
      const settled = settleLost(after, lost)
      expect(settled.made).toEqual(sewn.made)
      expect(settled.joined).toEqual({})
    }
    // What only moves in the list, or is not sewn down, lies where it is.
    for (const after of [laid(three.slice(1)), laid([three[0]!, three[1]!, item(320)])])
      expect(lostMade(sewn, holdWork(sewn, after))).toBeNull()
  })

  it('are asked about when they go or get another colour', () => {
    const before = panel(three, { '1,2': '' })
    const gone: Project = { ...before, layout: { ...before.layout, items: [three[0], three[2]] } as never }
    expect(lostMade(before, holdWork(before, gone))).toMatchObject({ gone: 1 })
    const dyed: Project = {
      ...before,
      layout: { ...before.layout, items: [three[0], item(200), three[2]] } as never,
    }
    expect(lostMade(before, holdWork(before, dyed))).toMatchObject({ recoloured: 1 })
  })
})

describe('motifs of a garland that are made', () => {
  const garland = (items: object[], made: Record<string, string> = {}): Project =>
    project({
      layout: {
        kind: 'garland',
        cord: { length: 1000, worked: 'bought' },
        items,
        spacing: { count: 4 },
      } as never,
      made,
    })
  const [a, b] = ['a', 'b'].map((colourway) => ({ motif: 'm', colourway }))

  it('are asked about when another motif would hang in their place', () => {
    const before = garland([a!, b!], { '1,1': '', '1,2': '' })
    expect(lostMade(before, holdWork(before, { ...before, title: 'Other' }))).toBeNull()
    expect(lostMade(before, holdWork(before, { ...garland([b!, a!]), made: before.made }))).toMatchObject({
      recoloured: 2,
    })
    expect(lostMade(before, holdWork(before, { ...garland([a!]), made: before.made }))).toMatchObject({
      recoloured: 1,
    })
  })
})
