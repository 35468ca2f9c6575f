import { cleanup, fireEvent, screen, within } from '@testing-library/svelte'
import { afterEach, describe, expect, it } from 'vitest'
import ItemInHand from '../../../src-renderer/places/arrangement/applique/ItemInHand.svelte'
import { itemsOf } from '../../../src-renderer/state/edits/applique'
import { inWindow } from '../in-window'
import { example } from '../projects'

afterEach(cleanup)

const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))

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
    await press('To the top')
    expect(app.document.plan.stacking!.slice(-2)).toEqual(['1,1', '1,2'])
    expect(app.document.undoLabel).toBe('raise 2 items to the top')
    await press('Duplicate')
    expect(items()).toHaveLength(29)
    expect([...app.selection.ids]).toEqual(['1,28', '1,29'])
    await press('Remove')
    expect(items()).toHaveLength(27)
    expect(app.selection.focus).toBeNull()
  })
})
