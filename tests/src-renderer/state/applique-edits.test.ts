import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { groundOf, spacingOf } from '../../../src-core/composing/ground'
import { planProject } from '../../../src-core/plan'
import * as edits from '../../../src-renderer/state/edits/applique'
import { example, SMALL } from '../projects'
import { runs } from '../../runs'

const CUSHION = example('quince-wreath-cushion')
const items = (project: Project) => edits.itemsOf(project)
const stacking = (project: Project) => planProject(project).stacking!
const panel = { shape: 'rectangle', width: 450, height: 450, allowance: 15 } as const
const laid = (places: readonly (readonly [number, number])[], more: object = {}): Project => ({
  ...CUSHION,
  layout: {
    kind: 'applique',
    panel,
    clearance: 5,
    items: places.map(([x, y]) => ({ motif: 'bud', colourway: 'closed', x, y, turn: 0 })),
    ...more,
  },
})

describe('items of an appliqué', () => {
  it('are moved, the others staying the same objects', () => {
    const next = edits.moveItems(CUSHION, ['1,1', '1,3'], { dx: 10.00004, dy: -5 })
    expect(items(next)[0]).toMatchObject({ x: 235, y: 80 })
    expect(items(next)[2]).toMatchObject({ x: 375, y: 220 })
    expect(items(next)[1]).toBe(items(CUSHION)[1])
    expect(edits.moveItems(CUSHION, ['1,1'], { dx: 0, dy: 0 })).toBe(CUSHION)
    expect(edits.moveItems(CUSHION, ['1,99', 'nothing'], { dx: 1, dy: 1 })).toBe(CUSHION)
    expect(edits.moveItems(SMALL, ['1,1'], { dx: 1, dy: 1 })).toBe(SMALL)
  })

  it('turn alone about their centre, together about their middle: four quarters are none', () => {
    const one = edits.turnItems(CUSHION, ['1,2'], -50)
    expect(items(one)[1]).toMatchObject({ x: 324, y: 126, turn: 355 })
    const pair = laid([
      [100, 100],
      [200, 100],
    ])
    const turned = edits.turnItems(pair, ['1,1', '1,2'], 90)
    expect(items(turned)).toMatchObject([
      { x: 150, y: 50, turn: 90 },
      { x: 150, y: 150, turn: 90 },
    ])
    let back = pair
    for (let i = 0; i < 4; i++) back = edits.turnItems(back, ['1,1', '1,2'], 90)
    expect(items(back)).toEqual(items(pair))
  })

  it('lie wrong side up and right side up again', () => {
    const over = edits.flipItems(CUSHION, ['1,1', '1,2'])
    expect(
      items(over)
        .slice(0, 3)
        .map(({ flipped }) => flipped),
    ).toEqual([true, true, undefined])
    expect(edits.flipItems(over, ['1,1', '1,2'])).toEqual(CUSHION)
    // Where they differ, all of them go over.
    expect(
      items(edits.flipItems(over, ['1,1', '1,3']))
        .slice(0, 3)
        .every((item) => item.flipped),
    ).toBe(true)
  })

  it('are removed and copied, copies at the end of the list', () => {
    const fewer = edits.removeItems(CUSHION, ['1,1', '1,27'])
    expect(items(fewer)).toEqual(items(CUSHION).slice(1, -1))
    const more = edits.duplicateItems(CUSHION, ['1,2', '1,1'])
    expect(edits.addedIds(CUSHION, more)).toEqual(['1,28', '1,29'])
    expect(items(more)[27]).toMatchObject({ motif: 'quince', colourway: 'light', x: 237, y: 97 })
    expect(edits.removeItems(more, edits.addedIds(CUSHION, more))).toEqual(CUSHION)
  })

  it('are raised and lowered by one, or past all, and keep their numbers', () => {
    const three = laid([
      [50, 50],
      [100, 50],
      [150, 50],
    ])
    expect(stacking(three)).toEqual(['1,1', '1,2', '1,3'])
    const up = edits.raiseItems(three, ['1,1'])
    expect(stacking(up)).toEqual(['1,2', '1,1', '1,3'])
    expect(stacking(edits.raiseItems(three, ['1,1'], 'all'))).toEqual(['1,2', '1,3', '1,1'])
    expect(stacking(edits.lowerItems(three, ['1,3'], 'all'))).toEqual(['1,3', '1,1', '1,2'])
    expect(stacking(edits.raiseItems(three, ['1,1', '1,2']))).toEqual(['1,3', '1,1', '1,2'])
    expect(edits.lowerItems(up, ['1,1'])).toEqual(three)
    for (const same of [edits.raiseItems(three, ['1,3']), edits.lowerItems(three, ['1,1', '1,2'], 'all')])
      expect(same).toBe(three)
  })

  it('are raised past what they overlap, so that something is to be seen', () => {
    // 1 and 4 overlap; 2 and 3 lie elsewhere between them.
    const four = laid(
      [
        [50, 50],
        [100, 150],
        [150, 150],
        [60, 50],
      ],
      { overlaps: 'allowed' },
    )
    const { overlaps } = planProject(four)
    const up = edits.raiseItems(four, ['1,1'], 'one', overlaps)
    expect(planProject(up).overlaps).toMatchObject([{ below: '1,4', above: '1,1' }])
    const down = edits.lowerItems(up, ['1,1'], 'one', planProject(up).overlaps)
    expect(planProject(down).overlaps).toMatchObject([{ below: '1,1', above: '1,4' }])
  })

  it('in whatever order, only the order changes', () => {
    const many = laid(Array.from({ length: 7 }, (_, i) => [40 + 50 * i, 60] as const))
    const step = fc.record({
      how: fc.constantFrom(edits.raiseItems, edits.lowerItems),
      ids: fc.uniqueArray(fc.integer({ min: 1, max: 7 }).map((n) => `1,${n}`)),
      reach: fc.constantFrom('one' as const, 'all' as const),
    })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 8 }), (steps) => {
        const end = steps.reduce((project, { how, ids, reach }) => how(project, ids, reach), many)
        expect([...stacking(end)].sort()).toEqual(stacking(many))
        const bare = items(end).map(({ layer: _, ...rest }) => rest)
        expect(bare).toEqual(items(many))
        for (const { layer } of items(end)) expect(layer === undefined || (layer > 0 && layer < 7)).toBe(true)
      }),
    )
  })

  it('become another size by becoming another motif, in yarns like those before', () => {
    const twoSizes: Project = {
      ...CUSHION,
      motifs: [...CUSHION.motifs!, { ...CUSHION.motifs![0]!, id: 'small', overTips: 50 } as never],
      colourways: [
        ...CUSHION.colourways!,
        { id: 's1', code: 'E', motif: 'small', yarns: { heart: 'straw', petals: 'blush' } },
        { id: 's2', code: 'F', motif: 'small', yarns: { heart: 'straw', petals: 'brick' } },
      ],
    }
    const next = edits.setItem(twoSizes, ['1,1', '1,2'], { motif: 'small' })
    expect(items(next).slice(0, 2)).toMatchObject([
      { motif: 'small', colourway: 's1' },
      { motif: 'small', colourway: 's2' },
    ])
    expect(items(edits.setItem(twoSizes, ['1,1'], { turn: -90, x: 99.99999, flipped: true }))[0]).toEqual({
      ...items(CUSHION)[0],
      turn: 270,
      x: 100,
      flipped: true,
    })
  })

  it('are added where there is room, nearest the middle', () => {
    let project = laid([])
    for (let i = 0; i < 20; i++) project = edits.addItem(project, i % 2 ? 'leaf' : 'quince')
    const plan = planProject(project)
    expect(plan.motifs[0]).toMatchObject({ x: 225, y: 225, colourway: 'light' })
    expect(plan.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(plan.clearances!.items).toBeGreaterThanOrEqual(5)
    expect(plan.clearances!.items).toBeLessThan(10)
    // Where there is none, it still comes, and the plan says so.
    const full = edits.addItem(laid([[25, 25]], { panel: { ...panel, width: 50, height: 50 } }), 'quince')
    expect(items(full)[1]).toMatchObject({ x: 25, y: 25 })
    expect(planProject(full).findings.some(({ severity }) => severity === 'error')).toBe(true)
    expect(edits.addItem(SMALL, 'm1')).toBe(SMALL)
  })

  it('are aligned and distributed by their outlines', () => {
    const three: Project = edits.setItem(
      laid([
        [60, 60],
        [120, 70],
        [300, 90],
      ]),
      ['1,2'],
      { motif: 'quince' },
    )
    const left = groundOf(edits.alignItems(three, ['1,1', '1,2', '1,3'], 'left'))!.laid
    for (const { edges } of left) expect(edges.box.left).toBeCloseTo(49, 2)
    const spread = edits.distributeItems(three, ['1,1', '1,2', '1,3'], 'across')
    const ground = groundOf(spread)!
    const [a, b, c] = ground.laid.map(({ edges }) => edges.box)
    expect(b!.left - a!.right).toBeCloseTo(c!.left - b!.right, 2)
    expect([items(spread)[0]!.x, items(spread)[2]!.x]).toEqual([60, 300])
  })

  it('get mirror images, which the plan holds for the same distances', () => {
    const next = edits.mirrorItems(
      laid([
        [60, 60],
        [80, 120],
      ]),
      ['1,1', '1,2'],
      { direction: 'upright', at: 225 },
      true,
    )
    expect(items(next).slice(2)).toMatchObject([
      { x: 390, y: 60, flipped: true },
      { x: 370, y: 120, flipped: true },
    ])
    const ground = groundOf(next)!
    expect(spacingOf(ground, '1,3')!.edge).toBeCloseTo(spacingOf(ground, '1,1')!.edge!, 6)
    // Mirrored back it lies right side up again, and the file says nothing of it.
    const back = edits.mirrorItems(next, ['1,3'], { direction: 'upright', at: 225 }, true)
    expect(items(back).at(-1)).toEqual(items(next)[0])
  })
})

describe('the spacing of an item', () => {
  it('names the nearest neighbour and tells the edge and the seam', () => {
    const ground = groundOf(
      laid([
        [60, 60],
        [100, 60],
        [300, 60],
      ]),
    )!
    const spacing = spacingOf(ground, '1,1')!
    expect(spacing.neighbour!.item).toMatchObject({ id: '1,2', name: '2 (Bud)' })
    expect(spacing.neighbour!.distance).toBeCloseTo(40 - 22, 1)
    expect(spacing.edge).toBeCloseTo(60 - 11, 1)
    expect(spacing.seam).toBeCloseTo(60 - 11 - 15, 1)
    expect(spacingOf(ground, '1,9')).toBeNull()
    expect(spacingOf(groundOf(laid([[5, 60]]))!, '1,1')).toMatchObject({
      neighbour: null,
      edge: expect.closeTo(-6, 1) as number,
    })
  })

  it('agrees with the smallest distances of the plan', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 450 }), fc.integer({ min: 0, max: 450 }))
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 9 }), (places) => {
        const project = laid(places)
        const { clearances } = planProject(project)
        const ground = groundOf(project)!
        const all = ground.laid.map(({ id }) => spacingOf(ground, id)!)
        expect(Math.min(...all.map(({ neighbour }) => neighbour!.distance))).toBeCloseTo(
          clearances!.items!,
          9,
        )
        expect(Math.min(...all.map(({ edge }) => edge!))).toBeCloseTo(clearances!.edge!, 9)
      }),
      { numRuns: runs(40) },
    )
  })
})
