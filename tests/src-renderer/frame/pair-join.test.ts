import { fireEvent, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import HandBlanket from '../../../src-renderer/frame/HandBlanket.svelte'
import SinglePairs from '../../../src-renderer/places/joins/SinglePairs.svelte'
import { pieceAt } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { inWindow } from '../in-window'
import { project } from '../../src-core/progress/project'

const one: Project = project()

it('joins two selected motifs in their own way, and as all others again', async () => {
  const held = pieceAt(planProject(one), '1,1')!
  const { app } = await inWindow(HandBlanket, { held }, one)
  expect(screen.queryByLabelText('Joined to each other')).toBeNull()
  app.selection.hold('1,1')
  app.selection.replace(['1,1', '1,2'])
  await tick()
  const joins = app.document.plan.joins.length
  const select = screen.getByLabelText('Joined to each other')
  await fireEvent.change(select, { target: { value: 'apart' } })
  expect(app.document.project.joining?.single).toEqual([{ places: ['1,1', '1,2'], rule: 'apart' }])
  expect(app.document.plan.joins.length).toBe(joins - 1)
  expect(app.document.undoLabel).toBe('join two motifs in their own way')
  await fireEvent.change(select, { target: { value: 'bridge' } })
  expect(app.document.project.joining?.single).toEqual([
    { places: ['1,1', '1,2'], rule: 'bridge', bridgeChains: 3 },
  ])
  screen.getByLabelText('Chains between these two')
  await fireEvent.change(select, { target: { value: '' } })
  expect(app.document.project.joining).not.toHaveProperty('single')
})

it('lists them at Joins, and takes them away there', async () => {
  const single = [{ places: ['1,1', '1,2'], rule: 'apart' as const }]
  const { app } = await inWindow(SinglePairs, {}, { ...one, joining: { ...one.joining, single } })
  screen.getByText('1 pair joined in its own way')
  await fireEvent.click(screen.getByRole('button', { name: 'row 1, motif 1; row 1, motif 2' }))
  expect([...app.selection.ids]).toEqual(['1,1', '1,2'])
  await fireEvent.click(
    screen.getByRole('button', { name: 'Join row 1, motif 1; row 1, motif 2 as all others' }),
  )
  expect(app.document.project.joining?.single).toBeUndefined()
  app.document.undo()
  expect(app.document.project.joining?.single).toEqual(single)
})
