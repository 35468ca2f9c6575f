import { cleanup, fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import KeysDialog from '../../../src-renderer/frame/KeysDialog.svelte'
import { keyRows } from '../../../src-renderer/frame/keys'
import { MAP_KEYS } from '../../../src-renderer/frame/map-keys'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { findItem, itemsOf } from '../../../src-renderer/state/edits/applique'
import { garlandOf } from '../../../src-renderer/state/edits/garland'
import { inWindow } from '../in-window'
import { example } from '../projects'
import { CUSHION, GARLAND, onMap } from './on-map'

describe('keys on a panel', () => {
  it('move the item in the hand by mm, ten of them, or a tenth', async () => {
    const { app, press, heard } = await onMap(CUSHION)
    app.selection.hold('1,1')
    const at = () => findItem(app.document.project, '1,1')
    expect(at()).toMatchObject({ x: 225, y: 85 })
    press('ArrowRight')
    press('ArrowDown', { shiftKey: true })
    press('ArrowLeft', { altKey: true })
    expect(at()).toMatchObject({ x: 225.9, y: 95 })
    expect(heard).toContain('gaps')
    // Nudges that follow each other are one step.
    expect(app.document.undoLabel).toBe('move 1 item')
    app.document.undo()
    expect(at()).toMatchObject({ x: 225, y: 85 })
    expect(app.document.undoLabel).toBeNull()
  })

  it('move by parts of an inch in an imperial project', async () => {
    const { app, press } = await onMap('pond-edge-bag')
    app.selection.hold('1,1')
    const x = () => findItem(app.document.project, '1,1')!.x!
    const before = x()
    press('ArrowRight')
    expect(x() - before).toBeCloseTo(25.4 / 16, 2)
    press('ArrowRight', { shiftKey: true })
    expect(x() - before).toBeCloseTo(25.4 / 16 + 12.7, 2)
  })

  it('rotate with the tool that rotates, and go from item to item with the one that selects', async () => {
    const { app, press } = await onMap(CUSHION)
    app.selection.hold('1,1')
    app.view.tool = 'turn'
    press('ArrowRight')
    press('ArrowRight', { shiftKey: true })
    press('ArrowUp', { altKey: true })
    expect(findItem(app.document.project, '1,1')!.turn).toBeCloseTo(15.9, 9)
    app.view.tool = 'select'
    press('ArrowRight')
    expect(app.selection.focus).toBe('1,2')
  })

  it('lead from item to item, round and round', async () => {
    const { app, press } = await onMap(CUSHION)
    press('.')
    expect(app.selection.focus).toBe('1,1')
    press(',')
    expect(app.selection.focus).toBe('1,27')
    press('.')
    expect(app.selection.focus).toBe('1,1')
    expect(app.said).toContain('item 1, Quince blossom, colourway A Light')
  })

  it('remove, duplicate, lay over and tuck under, each a step with its name', async () => {
    const { app, press } = await onMap(CUSHION)
    app.selection.hold('1,3')
    expect(press('d', { ctrlKey: true })).toBe(true)
    expect(itemsOf(app.document.project)).toHaveLength(28)
    expect(app.selection.focus).toBe('1,28')
    press('Delete')
    expect(itemsOf(app.document.project)).toHaveLength(27)
    expect(app.document.undoLabel).toBe('remove 1 item')
    expect(app.selection.focus).toBeNull()
    app.selection.hold('1,3')
    press(']')
    expect(app.document.undoLabel).toBe('lay 1 item over')
    press('{', { shiftKey: true })
    expect(app.document.plan.stacking![0]).toBe('1,3')
    expect(app.document.undoLabel).toBe('tuck 1 item under all')
    expect(press('PageUp')).toBe(false)
    press('>', { shiftKey: true })
    expect(app.document.undoLabel).toBe('lay 1 item over')
    press('>', { shiftKey: true, altKey: true })
    expect(app.document.undoLabel).toBe('lay 1 item over all')
    press('{', { altKey: true })
    expect(app.document.plan.stacking![0]).toBe('1,3')
  })

  it('give up a drag with Escape before they let go of what is selected', async () => {
    const { app, press, hand } = await onMap(CUSHION)
    app.selection.hold('1,3')
    hand.isBusy = true
    press('Escape')
    expect(app.selection.focus).toBe('1,3')
    press('Escape')
    expect(app.selection.focus).toBeNull()
  })

  it('leave other keys with Control to the menu', async () => {
    const { app, press } = await onMap(CUSHION)
    app.selection.hold('1,3')
    expect(press('z', { ctrlKey: true })).toBe(false)
    expect(press('D', { ctrlKey: true, shiftKey: true })).toBe(false)
    expect(itemsOf(app.document.project)).toHaveLength(27)
  })

  it('paint only what may have a colourway', async () => {
    const { app, press } = await onMap(CUSHION)
    // A blossom and a leaf; B is a colourway of blossoms.
    app.selection.replace(['1,1', '1,9'])
    press('b')
    expect(findItem(app.document.project, '1,1')!.colourway).toBe(
      app.document.project.colourways!.find(({ code }) => code === 'B')!.id,
    )
    expect(app.document.undoLabel).toBe('paint 1 item')
    expect(findItem(app.document.project, '1,9')).toEqual(findItem(example(CUSHION), '1,9'))
  })
})

describe('keys on a garland', () => {
  it('paint the part of the sequence, so that every repeat follows', async () => {
    const second = { id: 'd', code: 'D', name: 'Cream bloom', motif: 'bloom', yarns: { Petals: 'cream' } }
    const { app, press } = await onMap(GARLAND, (project) => ({
      ...project,
      colourways: [...project.colourways!, second],
    }))
    const blooms = app.document.plan.motifs.filter(({ motif }) => motif === 'bloom')
    app.selection.hold(blooms[0]!.id)
    press('d')
    expect(garlandOf(app.document.project)!.items![1]).toEqual({ motif: 'bloom', colourway: 'd' })
    expect(app.document.plan.counts.byColourway).toMatchObject({ d: blooms.length })
    expect(app.document.undoLabel).toBe('paint 1 part of the sequence')
  })

  it('say where along the cord they lead', async () => {
    const { app, press } = await onMap(GARLAND)
    app.selection.hold('1,1')
    press('ArrowRight')
    expect(app.said).toBe('item 2, Six-petal bloom, colorway A Quince bloom, 133.7 mm along the cord')
  })
})

describe('the sheet of keys', () => {
  it('lists those of the kind of project', async () => {
    // The test world has dialogs, but cannot show them.
    Object.assign(HTMLDialogElement.prototype, {
      showModal(this: HTMLDialogElement) {
        this.open = true
      },
      close(this: HTMLDialogElement) {
        this.open = false
      },
    })
    await inWindow(KeysDialog, { onclose: () => undefined }, example(CUSHION))
    expect(screen.getByRole('heading', { name: 'On the panel' })).toBeTruthy()
    expect(screen.getByText('duplicate')).toBeTruthy()
    cleanup()
    await inWindow(KeysDialog, { onclose: () => undefined }, example(GARLAND))
    expect(screen.getByRole('heading', { name: 'On the garland' })).toBeTruthy()
    cleanup()
    await inWindow(KeysDialog, { onclose: () => undefined }, example('market-stall-throw'))
    expect(screen.getByRole('heading', { name: 'On the map' })).toBeTruthy()
  })
})

describe('the table of keys', () => {
  it('tells the keys that the map hears, each of them, in every kind of layout', async () => {
    const isHeldDown = (shown: string) => / while dragging$/.test(shown)
    for (const [kind, name] of [
      ['blanket', 'lantern-table-mat'],
      ['garland', GARLAND],
      ['applique', CUSHION],
    ] as const) {
      const { app, press } = await onMap(name)
      for (const entry of MAP_KEYS[kind].keys) {
        const [[shown, words]] = keyRows([entry], { isMac: false, units: 'metric' }) as [[string, string]]
        expect(words).not.toBe('')
        if (isHeldDown(shown)) continue
        // A key may have left a place out.
        app.selection.hold(app.document.plan.motifs[1]!.id)
        app.view.tool = shown.endsWith('tool Select') ? 'select' : null
        const held = {
          shiftKey: entry.shift ?? false,
          altKey: entry.alt === true,
          ctrlKey: entry.mod === true,
        }
        expect(press(entry.keys[0]!, held), `${kind}: ${shown}`).toBe(true)
      }
      cleanup()
    }
  })

  it('speaks of what a list gives another colourway, as of what a letter paints', async () => {
    const { app } = await inWindow(MapTable, {}, example(CUSHION))
    const [first] = screen.getAllByRole<HTMLSelectElement>('combobox', { name: 'Colourway of item 1' })
    const other = [...first!.options].find(({ value }) => value !== first!.value)!
    await fireEvent.change(first!, { target: { value: other.value } })
    expect(app.said).toContain('item 1, Quince blossom, colourway B')
    expect(app.document.undoLabel).toBe('paint 1 item')
  })
})
