import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import PaperPlace from '../../../src-renderer/places/paper/PaperPlace.svelte'
import ItemInHand from '../../../src-renderer/places/arrangement/applique/ItemInHand.svelte'
import { itemsOf } from '../../../src-renderer/state/edits/applique'
import { inWindow } from '../in-window'
import { example } from '../projects'
import { EMPTY, fill, open, press } from './on-panel'

/** The cushion with one of its items in the hand. */
async function holding(id: string, more: readonly string[] = []) {
  const opened = await inWindow(ItemInHand, {}, example('quince-wreath-cushion'))
  opened.app.selection.hold(id)
  opened.app.selection.add(more)
  await Promise.resolve()
  return { ...opened, items: () => itemsOf(opened.app.document.project) }
}

describe('the item in the hand', () => {
  it('is placed by numbers, each a step with its name', async () => {
    const { app, items } = await holding('1,1')
    const field = screen.getByRole('textbox', { name: 'From the left' }) as HTMLInputElement
    expect(field.value).toBe('225 mm')
    app.document.change('tell inches', (project) => ({ ...project, units: 'imperial' }))
    await waitFor(() => expect(field.value).toBe('8.86 in'))
    app.document.undo()
    await fill('From the left', '23 cm')
    expect(items()[0]).toMatchObject({ x: 230, y: 85 })
    expect(app.document.undoLabel).toBe('move item 1')
    await fill('Rotated', '−30')
    expect(items()[0]!.turn).toBe(330)
    app.document.undo()
    app.document.undo()
    expect(items()[0]).toMatchObject({ x: 225, turn: 0 })
  })

  it('tells its nearest neighbour and the edge while a number is typed', async () => {
    await holding('1,25')
    const distances = () =>
      screen.getByLabelText('Distances of item 25').textContent!.replace(/\s+/g, ' ').trim()
    expect(distances()).toMatch(/To the nearest 16.* mm from item \d+ \(Bud\)/)
    await fireEvent.input(screen.getByRole('textbox', { name: 'From the left' }), {
      target: { value: '20 mm' },
    })
    expect(distances()).toMatch(/To the edge 9 mm, 6 mm into the seam/)
  })

  it('becomes another size by becoming another motif, with a colourway that fits', async () => {
    const { items } = await holding('1,1')
    const motif = screen.getByRole('combobox', { name: 'Motif and size' })
    expect(
      within(motif)
        .getAllByRole('option')
        .map((option) => option.textContent),
    ).toEqual(['Quince blossom, 64 mm', 'Leaf, 48 mm', 'Bud, 22 mm'])
    await fireEvent.change(motif, { target: { value: 'bud' } })
    expect(items()[0]).toMatchObject({ motif: 'bud', colourway: 'closed' })
    expect(screen.getByRole('combobox', { name: 'Colourway' }).textContent).not.toContain('Light')
  })

  it('is turned over, stacked, duplicated and removed with all that is selected', async () => {
    const { app, items } = await holding('1,1', ['1,2'])
    await fireEvent.click(screen.getByRole('checkbox', { name: 'Wrong side up' }))
    expect(items().filter(({ flipped }) => flipped)).toHaveLength(2)
    await press('Lay over all')
    expect(app.document.plan.stacking!.slice(-2)).toEqual(['1,1', '1,2'])
    expect(app.document.undoLabel).toBe('lay 2 items over all')
    // As by key.
    expect(app.said).toBe('2 items laid over all')
    await press('Duplicate')
    expect(items()).toHaveLength(29)
    expect([...app.selection.ids]).toEqual(['1,28', '1,29'])
    expect(app.said).toMatch(/^2 items duplicated\. item 29/)
    await press('Remove')
    expect(items()).toHaveLength(27)
    expect(app.selection.focus).toBeNull()
    expect(app.said).toBe('2 items removed')
  })
})

/** jsdom knows files, but not how to read them. */
const svgFile = (text: string, name = 'bag.svg') =>
  Object.assign(new File([text], name, { type: 'image/svg+xml' }), { text: () => Promise.resolve(text) })

describe('the panel', () => {
  it('changes its shape and stays about as large', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    const choose = (name: string) => fireEvent.click(screen.getByRole('radio', { name }))
    await choose('Circle')
    expect(app.document.plan.size).toMatchObject({ width: 300, height: 300 })
    await fill('Across', '40 cm')
    expect(app.document.project.layout).toMatchObject({
      panel: { shape: 'circle', diameter: 400, allowance: 15 },
    })
    await choose('Outline')
    expect(app.document.plan.size).toMatchObject({ width: 400, height: 400 })
    await choose('Ellipse')
    await fill('Height', '25 cm')
    expect(app.document.plan.size).toMatchObject({ width: 400, height: 250 })
    expect(app.document.plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('is typed corner by corner, and says which line is none; the last good one stays', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await fireEvent.click(screen.getByRole('radio', { name: 'Outline' }))
    const field = screen.getByRole('textbox', { name: 'Corners, in mm' }) as HTMLTextAreaElement
    expect(field.value).toBe('0, 0\n450, 0\n450, 300\n0, 300')
    await fireEvent.input(field, { target: { value: '0, 0\n300 0\n150; 260.5' } })
    await fireEvent.blur(field)
    expect(app.document.plan.panel!.outline).toHaveLength(3)
    expect(app.document.undoLabel).toBe('type the panel')
    await fireEvent.input(field, { target: { value: '0, 0\n300, here\n150, 260' } })
    await fireEvent.blur(field)
    expect(screen.getByRole('alert').textContent).toContain('Line 2 ("300, here") is not a corner')
    expect(app.document.plan.panel!.outline).toHaveLength(3)
  })

  it('is pasted as path data; what is hostile is refused beside the field', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await fireEvent.click(screen.getByRole('radio', { name: 'Outline' }))
    await fireEvent.click(screen.getByRole('radio', { name: 'path data' }))
    const field = screen.getByRole('textbox', { name: 'Path data in mm' })
    await fireEvent.input(field, { target: { value: 'M 0 0 H 320 V 240 H 0 Z' } })
    await fireEvent.blur(field)
    expect(app.document.plan.size).toMatchObject({ width: 320, height: 240 })
    const before = app.document.committed
    for (const [text, words] of [
      ['<svg onload="alert(1)"/>', 'tags, quotes or entities'],
      ['M 0 0 L 1e999 0', 'not a place on a panel'],
      ['M 0 0 L 100 100 L 100 0 L 0 120 Z', 'crosses or touches itself'],
      ['M 0 0 H 9 V 9 H 0 Z', 'expected 20 mm to 300 cm'],
      [`M0 0${'l1 1'.repeat(6000)}`, 'more than 5,000 corners'],
      [`${'M0 0'.padEnd(150_000)}Z`, 'at most 100,000'],
    ] as const) {
      await fireEvent.input(field, { target: { value: text } })
      expect(screen.getByRole('alert').textContent).toContain(words)
      await fireEvent.blur(field)
      expect(app.document.project).toBe(before)
    }
  })

  it('comes out of an SVG file, after a look at it', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await fireEvent.click(screen.getByRole('radio', { name: 'Outline' }))
    await fireEvent.click(screen.getByRole('radio', { name: 'SVG file' }))
    const choose = (text: string) =>
      fireEvent.change(screen.getByLabelText('Choose an SVG file'), { target: { files: [svgFile(text)] } })
    await choose(
      '<svg width="600mm" viewBox="0 0 300 200"><path id="front" d="M0 0H150V100H0Z"/><circle id="dot" cx="9" cy="9" r="30"/></svg>',
    )
    await screen.findByText('front: 300 × 200 mm, shown on the map.')
    expect(app.document.plan.size).toMatchObject({ width: 300, height: 200 })
    expect(app.document.undoLabel).toBe('change the shape of the panel')
    await fireEvent.change(screen.getByRole('combobox', { name: 'Line' }), { target: { value: '1' } })
    expect(Math.abs(app.document.plan.size.width - 120)).toBeLessThan(0.2)
    await press('Cancel')
    expect(app.document.plan.size.width).toBe(450)
    await choose('<svg viewBox="0 0 300 200"><path id="back" d="M0 0H200V100H0Z"/></svg>')
    await screen.findByText(/does not say how large it is/)
    await fill('One unit, in mm', '1.5')
    await press('Take it as the panel')
    expect(app.document.plan.size).toMatchObject({ width: 300, height: 150 })
    expect(app.document.undoLabel).toBe('take the panel from bag.svg')
  })

  it('or is dropped there', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await fireEvent.click(screen.getByRole('radio', { name: 'Outline' }))
    await fireEvent.click(screen.getByRole('radio', { name: 'SVG file' }))
    const file = svgFile('<svg width="20cm" viewBox="0 0 20 20"><rect id="r" width="12" height="10"/></svg>')
    await fireEvent.drop(screen.getByRole('group', { name: 'SVG file' }), { dataTransfer: { files: [file] } })
    await screen.findByText('r: 120 × 100 mm, shown on the map.')
    expect(app.document.plan.size).toMatchObject({ width: 120, height: 100 })
  })

  it.each([
    ['<svg onload="alert(1)"><path d="M0 0H9V9Z"/></svg>', 'contains a program'],
    ['<!DOCTYPE svg [<!ENTITY a "b">]><svg><path d="&a;"/></svg>', 'declares entities'],
    [`<svg><path d="M0 0${'l1 1'.repeat(6000)}"/></svg>`, 'more than 5,000 corners'],
    ['<svg><path d="M0 0L1e999 0"/></svg>', 'not a place on a panel'],
    ['<svg><path', 'cannot be read at line 1'],
    ['not a drawing', 'cannot be read at line 1'],
  ])('refuses a hostile file in a clear line and keeps the panel: %.50s', async (text, words) => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    await fireEvent.click(screen.getByRole('radio', { name: 'Outline' }))
    await fireEvent.click(screen.getByRole('radio', { name: 'SVG file' }))
    const before = app.document.committed
    await fireEvent.change(screen.getByLabelText('Choose an SVG file'), {
      target: { files: [svgFile(text)] },
    })
    const alert = await screen.findByRole('alert')
    expect(alert.textContent).toContain(words)
    expect(app.document.project).toBe(before)
    // A file beyond all measure is not even loaded.
    const huge = Object.defineProperty(svgFile('<svg/>'), 'size', { value: 1e9 })
    await fireEvent.change(screen.getByLabelText('Choose an SVG file'), { target: { files: [huge] } })
    expect((await screen.findByRole('alert')).textContent).toContain('at most 2,000,000 can be read')
  })
})

describe('what lies on the panel', () => {
  it('teaches while it is empty, and lays one motif after the other where there is room', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, EMPTY())
    screen.getByText(/Nothing lies on the panel yet/)
    await press('Place one')
    await fireEvent.change(screen.getByRole('combobox', { name: 'Motif to place' }), {
      target: { value: 'leaf' },
    })
    await press('Place one')
    expect(app.document.undoLabel).toBe('place a Leaf')
    expect(app.selection.focus).toBe('1,2')
    expect(app.document.plan.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    const list = screen.getByRole('list', { name: 'Items on the panel' })
    const [first, second] = within(list).getAllByRole('button')
    await fireEvent.click(first!)
    await fireEvent.click(second!, { shiftKey: true })
    expect([...app.selection.ids]).toEqual(['1,1', '1,2'])
    await press('Remove')
    expect(itemsOf(app.document.project)).toEqual([])
  })

  it('is aligned, spread and mirrored', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, example('quince-wreath-cushion'))
    app.selection.replace(['1,1', '1,2', '1,4'])
    await open('Align, spread, mirror')
    await press('Left')
    expect(app.document.undoLabel).toBe('align 3 items left')
    expect(app.said).toBe('3 items aligned left')
    await press('Down')
    expect(app.document.undoLabel).toBe('spread 3 items down')
    await fireEvent.click(screen.getByRole('checkbox', { name: /wrong side up/ }))
    await press('Left and right')
    const items = itemsOf(app.document.project)
    expect(items).toHaveLength(30)
    expect(items[27]).toMatchObject({ x: 450 - items[0]!.x!, y: items[0]!.y, flipped: true })
    expect(app.selection.ids.size).toBe(6)
    expect(app.said).toMatch(/^3 items mirrored/)
  })
})

describe('the template', () => {
  beforeAll(() => {
    // jsdom keeps no pictures.
    URL.createObjectURL = () => 'blob:page'
    URL.revokeObjectURL = () => undefined
  })

  it('is exported for the right side or mirrored for the back, on either paper; with lists', async () => {
    const { host } = await inWindow(PaperPlace, {}, example('quince-wreath-cushion'))
    await press('Export the template as PDF')
    expect(host.asked.at(-1)!.payload).toMatchObject({ kind: 'map', paper: 'A4' })
    expect(host.asked.at(-1)!.payload).not.toHaveProperty('reverse')
    host.finishExport()
    await screen.findByText(/^Exported/)
    await fireEvent.click(screen.getByRole('radio', { name: 'the back, mirrored' }))
    await fireEvent.click(screen.getByRole('radio', { name: 'Letter' }))
    await press('Export the template as PDF')
    expect(host.asked.at(-1)!.payload).toMatchObject({ kind: 'map', paper: 'Letter', reverse: true })
    screen.getByRole('button', { name: 'Cancel the export' })
    host.finishExport()
    await screen.findByText(/^Exported/)
    await press('Items (CSV)')
    expect(host.asked.at(-1)!.payload).toMatchObject({ kind: 'table', table: 'items' })
  })
})
