/** A blanket far off the size that was asked for says so over the map, with the button that brings it there. */
import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import TargetNotice from '../../../src-renderer/frame/TargetNotice.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const squares = (sideToSide: number, target = { width: 800, height: 640 }): Project => ({
  ...SMALL,
  motifs: [{ ...SMALL.motifs![0]!, outline: 'square', sideToSide }],
  joining: { rule: 'edges' },
  layout: {
    ...(SMALL.layout as BlanketLayout),
    ...{ arrangement: 'straight-rows', columns: 16, rows: 13, target },
  },
})
const region = () => screen.queryByRole('region', { name: 'Target size' })

describe('A blanket whose motif has grown', () => {
  it('says how far it is off, and comes to the size that was asked for at a press', async () => {
    // 16 × 13 of 50 mm were 80 × 65 cm; of 80 mm they are 128 × 104 cm.
    const { app } = await inWindow(TargetNotice, {}, squares(80))
    expect(region()!.textContent).toContain('It comes out at 128 × 104 cm; you asked for 80 × 64 cm.')
    const name = /^Change to 10 motifs in a row and 8 rows: 80 × 64 cm$/
    await fireEvent.click(await screen.findByRole('button', { name }, { timeout: 5000 }))
    expect(app.document.project.layout).toMatchObject({ columns: 10, rows: 8 })
    app.document.undo()
    expect(app.document.project.layout).toMatchObject({ columns: 16, rows: 13 })
  })

  it('is helped from where heavy work is done, not by the window itself', async () => {
    const { app } = await inWindow(TargetNotice, {}, squares(80))
    const asked = vi.spyOn(app.background, 'toward').mockResolvedValue(null)
    await vi.waitFor(() => expect(asked).toHaveBeenCalledWith(app.document.committed), { timeout: 5000 })
    expect(screen.queryByRole('button', { name: /^Change to/ })).toBeNull()
  })

  it('may be to be as large as it is', async () => {
    const { app } = await inWindow(TargetNotice, {}, squares(80))
    await fireEvent.click(screen.getByRole('button', { name: 'Keep 128 × 104 cm' }))
    expect(app.document.project.layout).toMatchObject({ target: { width: 1280, height: 1040 } })
    expect(region()).toBeNull()
  })

  it('says nothing where it is near enough', async () => {
    await inWindow(TargetNotice, {}, squares(50))
    expect(region()).toBeNull()
  })
})
