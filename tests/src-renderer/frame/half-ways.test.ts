/** How a half motif is worked, beside the choice of half motifs: rows to be taken, or the ways out. */
import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import GapFields from '../../../src-renderer/places/arrangement/blanket/GapFields.svelte'
import { blanketOf } from '../../../src-renderer/state/edits/layout'
import { inWindow } from '../in-window'
import { example } from '../projects'

const CUSHION = example('limekiln-cushion')
const HALVED = {
  ...CUSHION,
  layout: {
    ...{ kind: 'blanket', arrangement: 'offset-rows', alternateRows: 'oneFewer', motif: 'hexagon' },
    ...{ columns: 4, rows: 5, halves: true },
  },
} as Project
const MEASURED = {
  ...HALVED,
  motifs: [{ id: 'hexagon', name: 'Hexagon', kind: 'measured', outline: 'hexagon', sideToSide: 90 }],
} as Project

describe('how a half motif is worked', () => {
  it('is shown in rows that follow from the rounds, and put in the instructions', async () => {
    const { app } = await inWindow(GapFields, {}, HALVED)
    expect(screen.getByText('Row 1: Ch 3 (counts as dc), 6 dc in ring; turn. (7 dc)')).toBeTruthy()
    expect(screen.getByText(/^A suggestion that follows from the rounds/)).toBeTruthy()
    await fireEvent.click(screen.getByRole('button', { name: 'Put it in the instructions' }))
    const lines = app.document.project.motifs![0]!.instructions!.split('\n')
    expect(lines.slice(-7, -3)).toEqual([
      'Half motif',
      expect.stringMatching(/right side facing.*straight edge/),
      'Make an adjustable ring.',
      'Row 1: Ch 3 (counts as dc), 6 dc in ring; turn. (7 dc)',
    ])
    expect(app.document.undoLabel).toBe('take the half into the instructions')
    expect(
      await screen.findByText('The instructions of Four-round hexagon say how a half of it is worked.'),
    ).toBeTruthy()
    expect(screen.queryByText(/^A suggestion/)).toBeNull()
  })

  it('is asked for where nothing follows, or half motifs are left out', async () => {
    const { app } = await inWindow(GapFields, {}, MEASURED)
    expect(screen.getByText(/^Hexagon: nothing says how a half of it is worked/)).toBeTruthy()
    const own = screen.getByRole('textbox', { name: 'How a half of Hexagon is worked' })
    await fireEvent.change(own, { target: { value: 'Ch 4, work 5 rows.' } })
    expect(app.document.project.motifs![0]!.instructions).toBe('Half motif: Ch 4, work 5 rows.')
    app.undo()
    await fireEvent.click(await screen.findByRole('button', { name: 'Leave half motifs out' }))
    expect(blanketOf(app.document.project)!.halves).toBe(false)
    expect(app.document.plan.halves).toEqual([])
  })
})
