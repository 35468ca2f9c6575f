import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import { itemsOf } from '../../../src-renderer/state/edits/applique'
import { inWindow } from '../in-window'
import { example } from '../projects'
import { EMPTY, fill, open, press } from './on-panel'

describe('arrangers', () => {
  it('a wreath is shown while it is thought over, and laid in one step', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await open('Place a wreath')
    const count = () => itemsOf(app.document.project).length
    await waitFor(() => expect(count()).toBeGreaterThan(6))
    const widest = count()
    expect(app.document.isPreviewing).toBe(true)
    expect(app.document.undoLabel).toBeNull()
    await fill('Wide, centre to centre', '15 cm')
    await waitFor(() => expect(count()).toBeLessThan(widest))
    await fill('Items', '5')
    await fireEvent.change(screen.getByRole('combobox', { name: 'Petal 1 faces' }), {
      target: { value: 'up' },
    })
    await waitFor(() => expect(itemsOf(app.document.project).every(({ turn }) => turn === 0)).toBe(true))
    await press('Place 5 items')
    expect(app.document.undoLabel).toBe('place a wreath of 5 items')
    expect(app.document.isPreviewing).toBe(false)
    expect(app.selection.ids.size).toBe(5)
    app.document.undo()
    expect(count()).toBe(0)
  })

  it('by turns, with what lies there kept or replaced; and nothing stays of what is put away', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, example('quince-wreath-cushion'))
    const before = app.document.committed
    await open('Place a corner spray')
    await waitFor(() => expect(itemsOf(app.document.project)).toHaveLength(33))
    expect(screen.getByRole('status').textContent).toMatch(/to fix/)
    await fireEvent.click(screen.getByRole('radio', { name: 'Replace it' }))
    await press('Alternate with another')
    await waitFor(() =>
      expect(itemsOf(app.document.project).map(({ motif }) => motif)).toEqual([
        'quince',
        'leaf',
        'quince',
        'leaf',
        'quince',
        'leaf',
      ]),
    )
    await press('Cancel')
    await waitFor(() => expect(app.document.project).toBe(before))
    expect(app.document.undoLabel).toBeNull()
  })

  it('a scatter keeps its distance, and another seed is another one', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await open('Scatter')
    await screen.findByRole('textbox', { name: 'Apart at least' })
    await fill('Apart at least', '20 mm')
    await waitFor(() => expect(app.document.plan.clearances!.items!).toBeGreaterThanOrEqual(20))
    const first = itemsOf(app.document.project)
    await press('Scatter anew')
    await waitFor(() => expect(itemsOf(app.document.project)).not.toEqual(first))
    expect(app.document.plan.clearances!.items!).toBeGreaterThanOrEqual(20)
    await fill('Seed', '1')
    await waitFor(() => expect(itemsOf(app.document.project)).toEqual(first))
    await fill('At most', '3')
    await press('Place 3 items')
    expect(app.document.undoLabel).toBe('scatter 3 items')
  })

  it('a row lies along the line that was drawn, or along path data', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    app.view.drawnLine = [
      { x: 60, y: 150 },
      { x: 390, y: 150 },
    ]
    await screen.findByText(/A line of 33 cm/)
    await waitFor(() => expect(itemsOf(app.document.project).length).toBeGreaterThan(3))
    await fill('Items', '4')
    await press('Place 4 items')
    expect(itemsOf(app.document.project).map(({ x }) => x)).toEqual([60, 170, 280, 390])
    expect(app.view.drawnLine).toBeNull()
    await open('Place a row along a line')
    await fireEvent.click(await screen.findByRole('radio', { name: 'path data' }))
    const field = screen.getByRole('textbox', { name: /^Path data/ })
    await fireEvent.input(field, { target: { value: '<path onload="x"/>' } })
    expect(screen.getByRole('alert').textContent).toContain('tags, quotes or entities')
    await fireEvent.input(field, { target: { value: 'M 60 240 H 390' } })
    await waitFor(() => expect(itemsOf(app.document.project)).toHaveLength(8))
  })

  it('fold when something else has kept what they showed', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await open('Place a wreath')
    await waitFor(() => expect(app.document.isPreviewing).toBe(true))
    app.document.commit()
    await waitFor(() => expect(screen.queryByRole('button', { name: /^Place \d+ items/ })).toBeNull())
    expect(app.document.isPreviewing).toBe(false)
    expect(app.document.plan.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })

  it('are taken back by undo, and come back where something else was only tried', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await open('Place a wreath')
    await waitFor(() => expect(app.document.isPreviewing).toBe(true))
    const shown = itemsOf(app.document.project).length
    const field = screen.getByRole('textbox', { name: 'Width' })
    await fireEvent.input(field, { target: { value: '60 cm' } })
    expect(itemsOf(app.document.project)).toHaveLength(0)
    await fireEvent.keyDown(field, { key: 'Escape' })
    await waitFor(() => expect(itemsOf(app.document.project)).toHaveLength(shown))
    app.document.undo()
    await waitFor(() => expect(screen.queryByRole('button', { name: /^Place \d+ items/ })).toBeNull())
    expect(itemsOf(app.document.project)).toHaveLength(0)
    expect(app.document.isPreviewing).toBe(false)
  })

  it('say where there is no room', async () => {
    const { app } = await inWindow(
      ArrangementPlace,
      {},
      {
        ...EMPTY(),
        layout: {
          ...EMPTY().layout!,
          panel: { shape: 'rectangle', width: 60, height: 60, allowance: 15 },
        } as never,
      },
    )
    await open('Scatter')
    await screen.findByText('There is no room for a single item.')
    expect((screen.getByRole('button', { name: 'Place them' }) as HTMLButtonElement).disabled).toBe(true)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Motif' }), {
      target: { value: JSON.stringify(['bud', 'closed']) },
    })
    await waitFor(() => expect(itemsOf(app.document.project).length).toBe(1))
  })
})
