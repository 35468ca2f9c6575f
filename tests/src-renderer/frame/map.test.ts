import { cleanup, fireEvent, screen, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import type { MapDrawing } from '../../../src-renderer/drawing/map-drawing'
import Hand from '../../../src-renderer/frame/Hand.svelte'
import KeysDialog from '../../../src-renderer/frame/KeysDialog.svelte'
import { paintCells } from '../../../src-renderer/frame/map-acts'
import { keyRows } from '../../../src-renderer/frame/keys'
import { MAP_KEYS, onMapKey } from '../../../src-renderer/frame/map-keys'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { kindOf } from '../../../src-renderer/kinds/kinds'
import { DocumentState } from '../../../src-renderer/state/document.svelte'
import { findItem, itemsOf } from '../../../src-renderer/state/edits/applique'
import { garlandOf } from '../../../src-renderer/state/edits/garland'
import { EXAMPLE_GROUPS, EXAMPLES } from '../../../src-renderer/start/examples'
import { inWindow } from '../in-window'
import { example } from '../projects'

const CUSHION = 'quince-wreath-cushion'
const GARLAND = 'orchard-gate-garland'

/** Stands in for the drawing, which needs a canvas. */
function fakeDrawing() {
  const heard: string[] = []
  const hand = { isBusy: false }
  const drawing = {
    cancelGesture: () => {
      const { isBusy } = hand
      hand.isBusy = false
      return isBusy
    },
    revealMotif: (id: string) => heard.push(`reveal ${id}`),
    showGaps: () => heard.push('gaps'),
    stepFrom: () => '1,2',
    zoomBy: () => heard.push('zoom'),
    fit: () => heard.push('fit'),
  }
  return { drawing: drawing as unknown as MapDrawing, heard, hand }
}

async function onMap(name: string, change: (project: Project) => Project = (project) => project) {
  const { app } = await inWindow(MapTable, {}, change(example(name)))
  const { drawing, heard, hand } = fakeDrawing()
  const press = (key: string, more: KeyboardEventInit = {}) => {
    const event = new KeyboardEvent('keydown', { key, cancelable: true, ...more })
    onMapKey(event, app, drawing)
    return event.defaultPrevented
  }
  return { app, press, heard, hand }
}

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

  it('remove, duplicate, raise and lower, each a step with its name', async () => {
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
    expect(app.document.undoLabel).toBe('raise 1 item')
    press('PageDown', { shiftKey: true })
    expect(app.document.plan.stacking![0]).toBe('1,3')
    expect(app.document.undoLabel).toBe('lower 1 item to the bottom')
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
    expect(app.said).toBe('item 2, Six-petal bloom, colourway A Quince bloom, 133.7 mm along the cord')
  })
})

describe('painting as a gesture', () => {
  it('keeps to the settled project while it is tried', () => {
    const document = new DocumentState(example(CUSHION))
    paintCells(document, ['1,2'], 'light', 'preview')
    expect(document.isPreviewing).toBe(true)
    document.cancel()
    expect(document.project).toEqual(example(CUSHION))
  })
})

describe('numbers on the dimension lines', () => {
  const measures = (project: Project) => {
    const { plan } = new DocumentState(project)
    return { ...kindOf(project).measures(project, plan, plan), project }
  }
  const sized = (project: Project) => new DocumentState(project).plan

  it('change a panel', () => {
    const { across, down, project } = measures(example(CUSHION))
    expect([across.label, across.value, down.value]).toEqual(['Width of the panel', 450, 450])
    expect(sized(across.edit!(project, 500)).size).toMatchObject({ width: 500, height: 450 })
    expect(sized(down.edit!(project, 400)).size).toMatchObject({ width: 450, height: 400 })
  })

  it('change a circle both ways, and leave a drawn outline alone', () => {
    const own = example(CUSHION)
    if (own.layout?.kind !== 'applique') throw new Error('the example is a panel')
    const round: Project = {
      ...own,
      layout: { ...own.layout, panel: { shape: 'circle', diameter: 400, allowance: 10 } },
    }
    const { across, down } = measures(round)
    expect(across.label).toBe('Diameter of the panel')
    expect(sized(down.edit!(round, 420)).size).toMatchObject({ width: 420, height: 420 })
    expect(measures(example('pond-edge-bag')).across.edit).toBeNull()
  })

  it('change the wall and the drop of a garland in swags', () => {
    const { across, down, project } = measures(example(GARLAND))
    expect([across.label, across.value]).toEqual(['Width of the wall', 2100])
    expect([down.label, down.value]).toEqual(['Drop of a swag', 110])
    expect(sized(across.edit!(project, 2400)).garland!.swags).toMatchObject({
      count: 3,
      span: 800,
      width: 2400,
    })
    expect(sized(down.edit!(project, 150)).garland!.swags).toMatchObject({ drop: 150 })
  })

  it('change the cord of a straight one where it is given, and are told where they follow', () => {
    const own = example(GARLAND)
    if (own.layout?.kind !== 'garland') throw new Error('the example is a garland')
    const { swags: _, ...straight } = own.layout
    const given: Project = {
      ...own,
      layout: { ...straight, cord: { ...straight.cord, length: 1800 } },
    }
    const { across, down } = measures(given)
    expect([across.label, across.value]).toEqual(['Length of the cord between the ties', 1800])
    expect(sized(across.edit!(given, 2000)).garland!.cord).toMatchObject({ length: 2000 })
    expect(down.edit).toBeNull()
    const following: Project = {
      ...own,
      layout: { ...straight, spacing: { between: 'edges', mm: 30, count: 9 } },
    }
    expect(measures(following).across.edit).toBeNull()
  })
})

describe('the map in words', () => {
  it('says what it is of', () => {
    const label = (name: string) => {
      const project = example(name)
      return kindOf(project).mapLabel(new DocumentState(project).plan)
    }
    expect(label(GARLAND)).toBe('Garland of 29 items')
    expect(label(CUSHION)).toBe('Panel of 27 items')
    expect(label('limekiln-cushion')).toBe('Map of 19 motifs')
  })

  const cells = (row: HTMLElement) =>
    within(row)
      .getAllByRole('cell')
      .map((cell) => cell.textContent!.trim())
  const heads = () => screen.getAllByRole('columnheader').map((head) => head.textContent)

  it('is a table of what hangs on a cord', async () => {
    const { app } = await inWindow(MapTable, {}, example(GARLAND))
    expect(heads()).toEqual([
      'Number',
      'What',
      'Colourway',
      'Made',
      'Along the cord',
      'Chains before',
      'How it is fastened',
    ])
    const rows = screen.getAllByRole('row').slice(1)
    expect(rows).toHaveLength(29)
    const second = app.document.plan.garland!.items[1]!
    const told = cells(rows[1]!)
    expect(told[0]).toBe('Six-petal bloom')
    expect(told.slice(2)).toEqual(['', '13.4 cm', String(second.chains), second.words])
    await fireEvent.click(screen.getByRole('button', { name: 'Take item 2 in hand' }))
    expect(app.selection.focus).toBe('1,2')
  })

  it('offers an item of a cord the colourways of its motif', async () => {
    await inWindow(MapTable, {}, example(GARLAND))
    const choice = screen.getByRole('combobox', { name: 'Colourway of item 2' })
    expect(
      within(choice)
        .getAllByRole('option')
        .map((option) => option.textContent),
    ).toEqual(['A Quince bloom'])
  })

  it('is a table of what lies on a panel, with how high', async () => {
    const { app } = await inWindow(MapTable, {}, example(CUSHION))
    expect(heads()).toEqual([
      'Item',
      'Motif',
      'Colourway',
      'Made',
      'From the left',
      'From the top',
      'Rotated',
      'Wrong side up',
      'Layer from below',
    ])
    const rows = screen.getAllByRole('row').slice(1)
    expect(rows).toHaveLength(27)
    const told = cells(rows[0]!)
    expect(told[0]).toBe('Quince blossom')
    expect(told.slice(2)).toEqual(['', '225 mm', '85 mm', '0°', '', '1'])
    const leaf = app.document.plan.motifs.findIndex(({ flipped }) => flipped)
    if (leaf >= 0) expect(cells(rows[leaf]!)[6]).toBe('yes')
  })
})

describe('the hand', () => {
  it('shows the item of a panel with its own motif and its findings', async () => {
    const own = example(CUSHION)
    if (own.layout?.kind !== 'applique') throw new Error('the example is a panel')
    const [first, ...rest] = own.layout.items!
    const { app } = await inWindow(
      Hand,
      { map: null },
      {
        ...own,
        layout: { ...own.layout, items: [{ ...first!, y: 40 }, ...rest] },
      },
    )
    app.selection.hold('1,1')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 1 Quince blossom' })).toBeTruthy()
    expect(screen.getByText(/reaches .* into the seam allowance/)).toBeTruthy()
    app.selection.hold('1,9')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 9 Leaf' })).toBeTruthy()
    expect(screen.queryByText(/into the seam allowance/)).toBeNull()
  })

  it('shows what hangs on a cord with where it is fastened', async () => {
    const { app } = await inWindow(Hand, { map: null }, example(GARLAND))
    app.selection.hold('1,2')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 2 Six-petal bloom' })).toBeTruthy()
    const { words } = app.document.plan.garland!.items[1]!
    expect(screen.getByRole('img', { name: `Six-petal bloom; ${words}; ${words}` })).toBeTruthy()
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

describe('the examples of the first start', () => {
  it('are all there, in groups by what they are made into', () => {
    expect(EXAMPLE_GROUPS.map(({ kind }) => kind)).toEqual(['garland', 'applique', 'blanket'])
    expect(EXAMPLE_GROUPS.flatMap(({ examples }) => examples)).toHaveLength(EXAMPLES.length)
    expect(EXAMPLES.map(({ name }) => name)).toEqual(
      expect.arrayContaining([GARLAND, CUSHION, 'pond-edge-bag']),
    )
  })
})
