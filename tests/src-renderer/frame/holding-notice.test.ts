import { fireEvent, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import HoldingNotice from '../../../src-renderer/frame/HoldingNotice.svelte'
import { strayMotifs } from '../../../src-core/joins/holding'
import { noFixWords } from '../../../src-renderer/frame/holding-notice-words'
import { fitted } from '../../../src-renderer/state/resize'
import { countTogether } from '../../src-core/joins/together'
import { inWindow } from '../in-window'

const flowers = (petals: number, columns: number, rows: number): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [{ id: 'm1', kind: 'measured', outline: 'petals', petals, overTips: 82, overValleys: 60 }],
  layout: { kind: 'blanket', motif: 'm1', arrangement: 'offset-rows', columns, rows, turn: 0 },
})

describe('a blanket that falls apart', () => {
  it('says so at once, beside the button that fixes it in one change, and says what that gained', async () => {
    const { app } = await inWindow(HoldingNotice, {}, flowers(7, 6, 8))
    screen.getByText(/The blanket falls into 8 pieces, and 16 motifs hang on one join point\./)
    const button = await screen.findByRole('button', { name: 'Rotate to hold' })
    await fireEvent.click(button)
    await screen.findByText(/^In one piece instead of 8, \d+ join points instead of 40\./)
    expect(app.document.undoLabel).toBe('take the best rotation')
    expect(countTogether(app.document.plan)).toEqual({ pieces: 1, single: 0 })
    await fireEvent.click(screen.getByRole('button', { name: 'Undo' }))
    screen.getByText(/falls into 8 pieces/)
  })

  it('where no rotation holds takes another arrangement', async () => {
    const { app } = await inWindow(HoldingNotice, {}, flowers(4, 6, 6))
    const button = await screen.findByRole('button', { name: 'Take straight rows' })
    screen.getByText(/No rotation holds in this arrangement\./)
    await fireEvent.click(button)
    expect(countTogether(app.document.plan)).toEqual({ pieces: 1, single: 0 })
    expect(app.document.undoLabel).toBe('take straight rows')
  })

  it('where no arrangement holds joins in another way', async () => {
    const { app } = await inWindow(HoldingNotice, {}, flowers(3, 6, 6))
    await fireEvent.click(await screen.findByRole('button', { name: 'Join shoulders too' }))
    expect(app.document.project.joining).toMatchObject({ rule: 'edges' })
    expect(countTogether(app.document.plan)).toEqual({ pieces: 1, single: 0 })
  })

  it('offers to leave out the one motif that joins nothing, beside the fix, in one change', async () => {
    // The circle of 5 by 5 leaves a corner of a row alone: its neighbours are left out.
    const alone = flowers(6, 5, 5)
    const layout = { ...alone.layout, arrangement: 'straight-rows', turn: 0 } as never
    const project = { ...alone, motifs: [{ ...alone.motifs![0]!, petals: 8 } as never], layout }
    const cells = { motifs: { '1,2': null, '2,1': null, '2,2': null } }
    const { app } = await inWindow(HoldingNotice, {}, {
      ...project,
      layout: { ...(layout as object), cells },
    } as never)
    expect(app.document.plan.pieces).toBe(2)
    expect(strayMotifs(app.document.plan)).toEqual(['1,1'])
    await fireEvent.click(screen.getByRole('button', { name: 'Leave out the motif that joins nothing' }))
    expect(app.document.undoLabel).toBe('leave out 1 motif')
    expect(app.document.plan.pieces).toBe(1)
    expect(app.document.plan.motifs).toHaveLength(21)
    // Where a blanket falls into halves, nothing of it is stray.
    const halves = {
      ...project,
      layout: {
        ...(layout as object),
        cells: { motifs: Object.fromEntries([1, 2, 3, 4, 5].map((place) => [`3,${place}`, null])) },
      },
    }
    expect(strayMotifs(planProject(halves as never))).toEqual([])
  })

  it('says what would help a single row in American and in British words', () => {
    expect(noFixWords({ ...flowers(6, 6, 1), terms: 'US' })).toMatch(
      /one neighbor only: .* a border round all/,
    )
    expect(noFixWords({ ...flowers(6, 6, 1), terms: 'UK' })).toMatch(
      /one neighbour only: .* an edging round all/,
    )
  })

  it('and nothing is said of one that holds, or that lies apart on purpose', async () => {
    const { app } = await inWindow(HoldingNotice, {}, flowers(6, 6, 6))
    expect(screen.queryByRole('region')).toBeNull()
    app.document.change('lie apart', (project) => ({ ...project, joining: { rule: 'apart', gap: 5 } }))
    await tick()
    expect(screen.queryByRole('region')).toBeNull()
  })
})

describe('a size typed on a dimension line', () => {
  it('keeps a rotation that holds, and takes the best one where it does not', () => {
    const held = flowers(6, 6, 6)
    const wish = { width: 900, height: 1000 }
    expect(fitted(held, planProject(held), wish).layout).toMatchObject({ turn: 0, target: wish })
    const loose = flowers(7, 6, 6)
    const next = fitted(loose, planProject(loose), wish)
    const plan = planProject(next)
    expect(countTogether(plan)).toEqual({ pieces: 1, single: 0 })
    expect(Math.abs(plan.size.width - wish.width)).toBeLessThan(82)
    expect(Math.abs(plan.size.height - wish.height)).toBeLessThan(82)
  })
})
