import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { GarlandLayout } from '../../../shared-types/project'
import { checkProject, planProject } from '../../../src-core/plan'
import { processorTime } from '../../processor-time'
import { base, codes, plan } from './garland-project'

describe('bad input', () => {
  const bad: [string, Partial<GarlandLayout>][] = [
    ['garland/no-items', { items: [] }],
    ['garland/no-items', { items: [{ gap: 5 }] }],
    ['garland/empty-item', { items: [{}, { motif: 'disc' }] }],
    ['garland/measure', { items: [{ motif: 'disc' }, { gap: -5 }] }],
    ['garland/measure', { items: [{ bead: 'wooden bead', size: -1 }] }],
    ['garland/measure', { cord: { length: -1 } }],
    ['garland/measure', { cord: { length: 1e300 } }],
    ['garland/measure', { cord: { length: 2000, ties: -3 } }],
    ['garland/measure', { spacing: { between: 'edges', mm: -40 } }],
    ['garland/measure', { spacing: { between: 'centres', mm: 0 } }],
    ['garland/measure', { swags: { count: 1000, span: 90_000, drop: 0 }, cord: {} }],
    ['garland/whole-number', { swags: { count: 2.5, span: 900, drop: 10 } }],
    ['garland/whole-number', { spacing: { count: 1e12 } }],
    ['garland/whole-number', { hang: { by: 7 } }],
    ['garland/no-length', { cord: {} }],
    ['garland/no-spacing', { spacing: { between: 'centres' } }],
    ['garland/swags-open', { cord: {}, swags: { count: 2, span: 900 } }],
    ['garland/cord-too-short', { cord: { length: 1000 }, swags: { count: 2, span: 900 } }],
    ['garland/drop-too-deep', { cord: { length: 1000 }, swags: { count: 2, drop: 250 } }],
    ['garland/length-follows', { swags: { count: 3, span: 900, drop: 150 } }],
    ['garland/does-not-fit', { cord: { length: 39 } }],
    ['garland/does-not-fit', { spacing: { count: 60 } }],
    ['garland/too-many', { cord: { length: 1e6 }, items: [{ bead: 'seed', size: 1 }], spacing: { mm: 0 } }],
    ['garland/chain-gauge', { cord: { length: 2000, yarn: 'y1', gauge: { chains: 0, over: 100 } } }],
    ['garland/no-cord-yarn', { cord: { length: 2000 } }],
    ['garland/other-colourway', { items: [{ motif: 'disc', colourway: 'b' }] }],
    ['garland/cut-repeat', { items: [{ motif: 'disc' }, { motif: 'six' }], spacing: { count: 5 } }],
    ['garland/at-hook', { swags: { count: 2, span: 900, drop: 100 }, spacing: { count: 3 }, cord: {} }],
    ['garland/chains-between', { items: [{ motif: 'six' }], hang: { chains: 1 } }],
    ['garland/cord-gives', {}],
  ]
  it.each(bad)('%s is told', (code, layout) => {
    expect(codes(plan(layout))).toContain(code)
  })

  it.each([2000, 2100, 2390])(
    'says what a number of things needs, however long the cord is: %i mm',
    (length) => {
      // 60 discs of 40 mm, side by side.
      const spacing = { between: 'centres', count: 60 } as const
      const told = plan({ cord: { length }, spacing }).findings.filter(({ severity }) => severity === 'error')
      expect(told.map(({ code, message }) => [code, message.includes('needs 240 cm')])).toEqual([
        ['garland/does-not-fit', true],
      ])
      expect(plan({ cord: { length: 2400 }, spacing }).garland?.items).toHaveLength(60)
    },
  )

  it('says when chains are counted by a rule of thumb', () => {
    const cord = { length: 2000, yarn: 'y1' }
    expect(codes(plan({ cord }, { gauge: undefined }))).toContain('garland/chain-by-thumb')
  })

  it('any numbers give a plan of plain numbers in good time', () => {
    const wild = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer(), fc.constant(0))
    const some = fc.option(wild, { nil: undefined })
    fc.assert(
      fc.property(
        fc.record({
          cord: fc.record({ length: some, ties: some, gauge: fc.record({ chains: some, over: some }) }),
          spacing: fc.record({
            between: fc.constantFrom('edges' as const, 'centres' as const),
            mm: some,
            count: some,
          }),
          swags: fc.option(fc.record({ count: some, span: some, drop: some }), { nil: undefined }),
          hang: fc.record({ by: some, chains: some }),
          items: fc.array(fc.record({ motif: fc.constantFrom('disc', 'none', undefined), gap: some }), {
            maxLength: 4,
          }),
        }),
        (layout) => {
          const project = base(layout as Partial<GarlandLayout>)
          const text = JSON.stringify([planProject(project), checkProject(project)])
          expect(text).not.toMatch(/NaN|Infinity/)
          expect(planProject(project).garland?.items.length ?? 0).toBeLessThanOrEqual(10_000)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('the largest garland is planned within seconds', () => {
    const started = processorTime()
    const planned = plan({
      cord: { length: 1e6, yarn: 'y1' },
      spacing: { between: 'centres', mm: 100 },
      items: [{ motif: 'six' }],
    })
    expect(planned.garland!.items).toHaveLength(10_000)
    expect(processorTime() - started).toBeLessThan(8000)
  })
})
