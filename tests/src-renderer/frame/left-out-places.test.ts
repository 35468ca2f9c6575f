import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import type { DrawingView } from '../../../src-renderer/drawing/scene'
import LeftOutPlaces from '../../../src-renderer/frame/LeftOutPlaces.svelte'
import { blanketOf } from '../../../src-renderer/state/edits/layout'
import { cellsProject } from '../../src-core/cells/projects'
import { inWindow } from '../in-window'

const shown: DrawingView = {
  ...{ scale: 0.5, zoom: 1, frame: { left: 10, top: 20, width: 320, height: 240 } },
  ...{ widthNumber: null, heightNumber: null, levelHeight: false },
}

it('a place that was left out is a button on the map that brings its motif back, in one step of undo', async () => {
  const project = cellsProject(['flower'], { cells: { motifs: { '3,4': null, '1,1': null } } })
  const { app: state } = await inWindow(LeftOutPlaces, { shown }, project)
  // The whole plan comes from the background, and tells the places.
  const place = await screen.findByRole('button', { name: 'Bring back the motif in row 3, after motif 3' })
  const at = state.document.plan.leftOut!.find(({ id }) => id === '3,4')!
  expect(parseFloat(place.style.left)).toBeCloseTo(10 + at.x / 2, 6)
  expect(parseFloat(place.style.top)).toBeCloseTo(20 + at.y / 2, 6)
  await fireEvent.click(place)
  expect(blanketOf(state.document.committed)!.cells?.motifs).toEqual({ '1,1': null })
  await waitFor(() => expect(screen.getAllByRole('button')).toHaveLength(1))
  expect(screen.queryByRole('button', { name: 'Bring back the motif in row 3, after motif 3' })).toBeNull()
  // The hand goes on at the motif that came back.
  expect(state.selection.focus).toBe('3,4')
  state.document.undo()
  expect(blanketOf(state.document.committed)!.cells?.motifs).toHaveProperty('3,4', null)
})
