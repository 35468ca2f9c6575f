import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import { leaving, setLayoutKind } from '../../../src-renderer/state/edits/layout-kind'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const choose = (name: string) => fireEvent.click(screen.getByRole('radio', { name }))

describe('what the motifs are made into', () => {
  it('finds the blanket as it was left, also after a look at a garland and an appliqué', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, SMALL)
    const before = app.document.project.layout
    await choose('Garland')
    expect(app.document.project.layout!.kind).toBe('garland')
    await choose('Appliqué')
    expect(app.document.project.layout!.kind).toBe('applique')
    await choose('Blanket')
    expect(app.document.project.layout).toEqual(before)
    app.document.undo()
    expect(app.document.project.layout!.kind).toBe('applique')
  })

  it('lays out anew what has other motifs by now, and keeps what the kit holds by now', () => {
    const left = leaving({}, SMALL)
    const garland = setLayoutKind(SMALL, 'garland')
    const more = {
      ...garland,
      motifs: [...garland.motifs!, { id: 'm9', kind: 'measured', outline: 'round' }],
    }
    expect(setLayoutKind(more as typeof SMALL, 'blanket', left).layout).not.toEqual(SMALL.layout)
    const kit = { count: 7 }
    const packed = { ...garland, layout: { ...garland.layout!, kit } }
    expect(setLayoutKind(packed as typeof SMALL, 'blanket', left).layout).toEqual({ ...SMALL.layout, kit })
  })
})
