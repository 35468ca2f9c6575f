/** A whole page that is taken over lays its motif out as it holds, unless somebody chose the arrangement. */
import { fireEvent, screen } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import type { BlanketLayout, Project, RoundsMotif } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { toRounds } from '../../../src-renderer/places/motif/rounds/basis'
import { laidAnew, laidAsProposed } from '../../../src-renderer/state/resize'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import RoundsOfFirst from './RoundsOfFirst.svelte'

beforeAll(() => {
  Element.prototype.scrollIntoView = () => undefined
})

// A plain square of clusters, written for this test.
const PAGE = `Lantern Square
Hook: 5 mm
Gauge: Rnds 1 and 2 = 9 cm
Finished size: 100 cm x 120 cm

Rnd 1: Ch 4, sl st to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of ch-3.
Rnd 2: Sl st to ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join with sl st in top of ch-3.`

const TARGET = { width: 600, height: 800 }
const empty: RoundsMotif = { id: 'm1', name: 'Flower', kind: 'rounds', gauge: { hook: 3.5 }, rounds: [] }
const layout = (project: Project) => project.layout as BlanketLayout
const withLayout = (project: Project, own: Partial<BlanketLayout>): Project => ({
  ...project,
  layout: { ...layout(project), ...own },
})
const blank: Project = withLayout({ ...SMALL, motifs: [empty] }, { target: TARGET })
async function takenAll(project: Project) {
  const { app } = await inWindow(RoundsOfFirst, {}, project)
  await fireEvent.input(screen.getByRole('textbox', { name: /^Paste the rounds/ }), {
    target: { value: PAGE },
  })
  await fireEvent.click(screen.getByRole('button', { name: 'Read the rounds' }))
  const pasted = app.document.project
  screen.getByText('Take all also lays the motif out anew, unless you have changed the arrangement.')
  await fireEvent.click(screen.getByRole('button', { name: 'Take all' }))
  return { app, pasted }
}

describe('Take all', () => {
  it('lays a motif of another shape out as it holds, in the same step of undo', async () => {
    const { app, pasted } = await takenAll(blank)
    const { project } = app.document
    expect(layout(project)).toMatchObject({
      ...{ arrangement: 'straight-rows', turn: 0, alternateTurn: 0 },
      target: { width: 1000, height: 1200 },
    })
    expect(project.joining?.rule).toBe('edges')
    const plan = planProject(project)
    expect(plan.motif).toMatchObject({ shape: 'straight', petals: 4 })
    // As near as whole squares of 90 mm come to it.
    expect(Math.abs(plan.size.width - 1000)).toBeLessThan(46)
    expect(Math.abs(plan.size.height - 1200)).toBeLessThan(46)
    expect(app.document.undoLabel).toBe('take all from the page')
    const { columns, rows } = layout(project)
    screen.getByText(
      new RegExp(
        `^Taken: .*target size.*\\. Laid out anew for it: straight rows, ${columns} motifs in a row, ${rows} rows\\. Undo takes all of it back\\.$`,
      ),
    )
    app.document.undo()
    expect(app.document.project).toEqual(pasted)
  })

  it.each<Partial<BlanketLayout>>([
    { cells: { motifs: { '1,1': null } } },
    { cells: { painted: { '1,1': 'c2' } } },
  ])('leaves the rows as they are where cells were chosen: %j', async (own) => {
    const { app, pasted } = await takenAll(withLayout(blank, own))
    const { columns, rows, arrangement } = layout(pasted)
    expect(layout(app.document.project)).toMatchObject({ columns, rows, arrangement })
  })
})

describe('A motif of another shape', () => {
  const square = { id: 'm1', kind: 'measured', outline: 'square', sideToSide: 100 } as const
  const squares = (project: Project): Project => ({ ...project, motifs: [square] })
  const offset = laidAsProposed(withLayout(SMALL, { target: TARGET }))

  it('takes the rows that are proposed for it where its layout was as proposed: 6 × 8 squares of 100 mm', () => {
    expect(layout(offset).arrangement).toBe('offset-rows')
    const anew = laidAnew(offset, squares(offset))
    expect(layout(anew)).toMatchObject({ arrangement: 'straight-rows', columns: 6, rows: 8, target: TARGET })
    expect(planProject(anew).size).toMatchObject(TARGET)
  })

  it('stays as it was laid out by its measures while its rounds were not written yet', () => {
    const chosen = toRounds(withLayout(offset, { columns: 3 }), 'm1')
    expect(planProject(chosen).motifs).toEqual([])
    const after = squares(chosen)
    expect(laidAnew(chosen, after)).toBe(after)
    // As it was proposed by its measures it is laid out anew.
    const proposed = toRounds(offset, 'm1')
    expect(layout(laidAnew(proposed, squares(proposed)))).toMatchObject({ columns: 6, rows: 8 })
  })

  it.each<[string, Project]>([
    ['other counts', withLayout(offset, { columns: 3 })],
    ['other rows', withLayout(offset, { arrangement: 'straight-rows' })],
    ['another rotation', withLayout(offset, { turn: 12 })],
    ['another join', { ...offset, joining: { rule: 'bridge', bridgeChains: 2 } }],
    ['a motif that is made', { ...offset, made: { '1,1': '' } }],
    ['no size that was asked for', withLayout(offset, { target: undefined })],
  ])('stays as somebody has it: %s', (_, chosen) => {
    const after = squares(chosen)
    expect(laidAnew(chosen, after)).toBe(after)
  })
})
