/** Small things that makers stumbled over in the window. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import Hand from '../../../src-renderer/frame/Hand.svelte'
import SettingsDialog from '../../../src-renderer/frame/SettingsDialog.svelte'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

describe('a motif that was duplicated', () => {
  it('is the one that is shown, with its name under the keyboard', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('button', { name: /^Duplicate / }))
    const made = app.document.project.motifs!.at(-1)!
    expect(app.view.motif).toBe(made.id)
    await waitFor(() => {
      const field = document.activeElement as HTMLInputElement
      expect(field.labels?.[0]?.textContent?.trim()).toBe('Name')
      expect(field.value).toBe(made.name)
    })
  })
})

describe('a hexagon on its drawing', () => {
  it('says which box is which measure', async () => {
    const hexagon = {
      ...{ id: 'm1', name: 'Hexagon', kind: 'measured', outline: 'hexagon', sideToSide: 110 },
    } as NonNullable<Project['motifs']>[number]
    await inWindow(MotifPlace, {}, {
      ...{ format: 'petalyard-project', version: 1, motifs: [hexagon] },
      layout: { kind: 'blanket', motif: 'm1', columns: 2, rows: 2 },
    } as Project)
    await waitFor(() =>
      expect(screen.getByText(/^Above the drawing: point to point\. Below it: side to side\./)).toBeTruthy(),
    )
  })
})

describe('the notes of a project', () => {
  it('have several lines', async () => {
    const { app } = await inWindow(SettingsDialog, { onclose: () => undefined }, SMALL)
    const notes = screen.getByRole('textbox', { name: 'Notes' })
    expect(notes.tagName).toBe('TEXTAREA')
    await fireEvent.change(notes, { target: { value: 'Two handles.\nA lining.' } })
    expect(app.document.project.notes).toBe('Two handles.\nA lining.')
  })
})

describe('one large motif in place of a block', () => {
  const square = (id: string, sideToSide: number) => ({
    ...{ id, name: `Square of ${sideToSide}`, kind: 'measured', outline: 'square', sideToSide },
    slots: [{ slot: 'all', grams: 3 }],
  })
  it('offers no motif that is as small as those that stand there', async () => {
    const project = {
      ...{ format: 'petalyard-project', version: 1, joining: { rule: 'edges' } },
      motifs: [square('m1', 80), square('m2', 80), square('m3', 160)],
      layout: {
        ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 4, rows: 4 },
        // Two of the same size alternate, so that both are laid out.
        alternate: { motifs: ['m1', 'm2'], by: 'cell' },
      },
    } as Project
    const { app } = await inWindow(Hand, { map: null }, project)
    const { selection } = app
    selection.replace(['1,1', '1,2', '2,1', '2,2'])
    selection.focus = '1,1'
    const offered = () =>
      [...(screen.getByRole('combobox', { name: 'One large motif here' }) as HTMLSelectElement).options].map(
        ({ text }) => text,
      )
    await waitFor(() => expect(offered()).toEqual(['choose', 'Square of 160']))
  })
})
