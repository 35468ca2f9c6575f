/** The note that a size is off its target: a button that says what it does, does it, and is undone in one step. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import FindingList from '../../../src-renderer/parts/FindingList.svelte'
import { towardTarget } from '../../../src-renderer/state/resize'
import { towardWords } from '../../../src-renderer/state/toward-words'
import { SMALL } from '../projects'
import { inWindow } from '../in-window'

/** Squares of 80 mm; columns and rows as a hand left them. */
const squares = (layout: Partial<BlanketLayout>): Project => ({
  ...SMALL,
  motifs: [{ ...SMALL.motifs![0]!, outline: 'square', sideToSide: 80 }],
  joining: { rule: 'edges' },
  layout: {
    ...(SMALL.layout as BlanketLayout),
    ...{ arrangement: 'straight-rows', columns: 3, rows: 11, target: { width: 800, height: 640 } },
    ...layout,
  },
})
const blanket = (project: Project) => project.layout as BlanketLayout
const toward = (project: Project) => towardTarget(project, planProject(project))

describe('A blanket off its target size', () => {
  it('is changed to the numbers that the button names, in one step of undo', async () => {
    const project = squares({ cells: { motifs: { '2,2': null } } })
    const plan = planProject(project)
    const findings = plan.findings.filter(({ code }) => code === 'layout/off-target')
    expect(findings).toHaveLength(1)
    const { app } = await inWindow(FindingList, { findings, map: null }, project)
    // By hand: 800 / 80 = 10 in a row, 640 / 80 = 8 rows.
    const name = /^Change to 10 motifs in a row and 8 rows: 80 × 64 cm$/
    await fireEvent.click(screen.getByRole('button', { name }))
    expect(blanket(app.document.project)).toMatchObject({ columns: 10, rows: 8 })
    expect(blanket(app.document.project).cells!.motifs).toEqual({ '2,2': null })
    expect(app.document.undoLabel).toBe('change to 10 motifs in a row and 8 rows')
    await vi.waitFor(() => expect(app.document.plan.size).toMatchObject({ width: 800, height: 640 }), 5000)
    await waitFor(() => expect(screen.queryByRole('button', { name: /^Change to/ })).toBeNull())
    app.document.undo()
    expect(app.document.project).toEqual(project)
  })

  it('takes rows as long as each other where offset rows come nearer with them', () => {
    // Hexagons of 122 mm: 11 and 10 in a row are 1342 mm wide, 11 in every row half a hexagon more.
    const hexagons = squares({ arrangement: 'offset-rows', alternateRows: 'oneFewer', columns: 8, rows: 11 })
    const project: Project = {
      ...hexagons,
      motifs: [{ ...hexagons.motifs![0]!, outline: 'hexagon', sideToSide: 122 } as never],
      layout: { ...blanket(hexagons), target: { width: 1400, height: 1800 } },
    }
    const found = toward(project)!
    expect(blanket(found.project)).toMatchObject({ columns: 11, rows: 17, alternateRows: 'same' })
    expect(found.size.width).toBeCloseTo(1403, 0)
    expect(towardWords(found, 'metric').does).toMatch(
      /^Change to 11 motifs in a row, as many in each, and 17 rows: 140.3 × /,
    )
    // Halves stand at the ends that are short by one.
    const filled = toward({ ...project, layout: { ...blanket(project), halves: true } })!
    expect(blanket(filled.project).alternateRows).toBe('oneFewer')
  })

  it('is offered nothing where no other number comes nearer', () => {
    expect(toward(squares({ columns: 10, rows: 8 }))).toBeNull()
    expect(toward(squares({ columns: 10, rows: 8, target: { width: 830, height: 640 } }))).toBeNull()
    expect(toward(squares({ target: undefined }))).toBeNull()
  })

  it('takes no place from what is made: as many rows as that needs, or no button', () => {
    const begun = (id: string) => toward({ ...squares({}), made: { [id]: '2026-11-30' } })
    expect(blanket(begun('8,3')!.project)).toMatchObject({ columns: 10, rows: 8 })
    expect(blanket(begun('9,3')!.project)).toMatchObject({ columns: 10, rows: 9 })
    expect(begun('11,3')).toBeNull()
  })

  it('keeps a round of alternating motifs even, and an outline its shape', () => {
    const other = { ...squares({}).motifs![0]!, id: 'm2' }
    const round = squares({
      ...{ columns: 4, rows: 3, inTheRound: true, alternate: { motifs: ['m1', 'm2'], by: 'cell' } },
      target: { width: 720, height: 240 },
    })
    const bag = toward({ ...round, motifs: [...round.motifs!, other] })!
    // Nine are 720 mm, but two alike would meet.
    expect(blanket(bag.project).columns! % 2).toBe(0)
    expect(Math.abs(bag.size.width - 720)).toBeCloseTo(80, 6)
    const cut = squares({ columns: 5, rows: 5, outlineShape: { kind: 'circle', size: 380 } })
    const next = toward(cut)!
    expect(blanket(next.project).outlineShape!.kind).toBe('circle')
    expect(next.size.width).toBeGreaterThan(planProject(cut).size.width)
  })
})
