import { fireEvent, screen, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import ColoursPlace from '../../../src-renderer/places/colours/ColoursPlace.svelte'
import JoinsPlace from '../../../src-renderer/places/joins/JoinsPlace.svelte'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import ItemInHand from '../../../src-renderer/places/arrangement/garland/ItemInHand.svelte'
import { garlandOf } from '../../../src-renderer/state/edits/garland'
import { example } from '../projects'
import { inWindow } from '../in-window'

const GATE = example('orchard-gate-garland')
const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}
const rows = () =>
  within(screen.getByRole('list', { name: 'Sequence' }))
    .getAllByRole('button')
    .filter((button) => button.hasAttribute('aria-expanded'))

describe('the sequence in the window', () => {
  it('adds a bead behind the part that is open, and changes it', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    await fireEvent.click(rows()[0]!)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Add behind it' }), {
      target: { value: 'bead' },
    })
    expect(app.document.undoLabel).toBe('add wooden bead')
    await fill('Size along the cord', '2 cm')
    await fill('Price of one (EUR)', '0.15')
    expect(garlandOf(app.document.project)?.items?.[1]).toEqual({
      bead: 'wooden bead',
      size: 20,
      price: 0.15,
    })
  })

  it('moves, duplicates and removes by keyboard and by button, undone by name', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    const names = () => garlandOf(app.document.project)?.items?.map((part) => part.motif)
    await fireEvent.keyDown(rows()[3]!, { key: 'ArrowUp', altKey: true })
    expect(names()).toEqual(['leaf', 'bloom', 'bud', 'leaf'])
    expect(app.document.undoLabel).toBe('move Five-petal bud')
    await fireEvent.keyDown(rows()[2]!, { key: 'Delete' })
    expect(names()).toEqual(['leaf', 'bloom', 'leaf'])
    await fireEvent.click(rows()[1]!)
    await fireEvent.click(screen.getByRole('button', { name: 'Duplicate' }))
    expect(names()).toEqual(['leaf', 'bloom', 'bloom', 'leaf'])
    await fireEvent.click(screen.getByRole('button', { name: 'Move down' }))
    expect(names()).toEqual(['leaf', 'bloom', 'leaf', 'bloom'])
    await fireEvent.click(screen.getByRole('checkbox', { name: /^Mirror it/ }))
    expect(garlandOf(app.document.project)?.symmetric).toBe(false)
  })
})

describe('how it hangs', () => {
  it('asks for the wall or the cord, and shows what follows', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    await fill('Span of one swag', '90 cm')
    expect(app.document.plan.garland!.swags!.width).toBe(2700)
    await fill('Wall that it covers', '240 cm')
    expect(app.document.plan.garland!.swags!.span).toBe(800)
    await fireEvent.click(screen.getByRole('radio', { name: /^the drop/ }))
    expect(screen.queryByRole('textbox', { name: 'Drop' })).toBeNull()
    await fill('Cord between the ties', '300 cm')
    expect(app.document.plan.garland!.swags!.drop).toBeGreaterThan(110)
    within(screen.getByLabelText('How it hangs')).getByText('Drop')
    await fireEvent.click(screen.getByRole('radio', { name: 'straight' }))
    expect(app.document.plan.garland!.swags).toBeFalsy()
    await fireEvent.click(screen.getByRole('radio', { name: /^how long the cord is/ }))
    await fill('How many hang on it', '11')
    expect(app.document.plan.garland!.items).toHaveLength(11)
    expect(app.document.undoLabel).toBe('change how many hang on the cord')
  })

  it('a number out of its limits is told beside it, and the last good one stays', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    await fill('Distance', '-3')
    screen.getByRole('alert')
    expect(garlandOf(app.document.project)?.spacing?.mm).toBe(34)
  })

  it('by one petal, with so many chains, turned with the cord', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    await fireEvent.click(screen.getByText('Fastening'))
    await fill('Chains between the two', '5')
    await fireEvent.click(screen.getByRole('radio', { name: /^one petal/ }))
    await fireEvent.click(screen.getByRole('radio', { name: 'turned with the cord' }))
    expect(garlandOf(app.document.project)?.hang).toEqual({ way: 'along', by: 1, chains: 5 })
  })

  it('a cord of its own yarn and chains, or a bought one', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, GATE)
    await fill('Chains', '30')
    expect(garlandOf(app.document.project)?.cord?.gauge).toEqual({ chains: 30, over: 100 })
    await fireEvent.change(screen.getByRole('combobox', { name: 'Yarn of the cord' }), {
      target: { value: 'cream' },
    })
    await fireEvent.click(screen.getByRole('radio', { name: 'bought' }))
    expect(app.document.plan.garland!.cord.chains).toBeNull()
    expect(screen.queryByRole('textbox', { name: 'Chains' })).toBeNull()
  })
})

describe('one thing of it in the hand', () => {
  it('tells where it hangs, and changes its part of the sequence', async () => {
    const { app } = await inWindow(ItemInHand, { id: '1,2' }, GATE)
    screen.getByText('Sc in petal 1, ch 7, sc in next petal.')
    screen.getByText(/is part 2 of the sequence: a change here changes all/)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Motif' }), { target: { value: 'bud' } })
    expect(garlandOf(app.document.project)?.items?.[1]).toMatchObject({ motif: 'bud', colourway: 'b' })
  })
})

describe('the other places of a garland', () => {
  it('Joins tells how each kind is fastened, and changes it', async () => {
    const { app } = await inWindow(JoinsPlace, {}, GATE)
    const list = screen.getByRole('list', { name: 'How things are fastened' })
    within(list).getByText('Sc in the stem end.')
    within(list).getAllByText('Sc in petal 1, ch 7, sc in next petal.')
    await fill('Chains between the two', '4')
    within(list).getAllByText('Sc in petal 1, ch 4, sc in next petal.')
    await fill('Minutes to fasten one', '2')
    expect(app.document.project.joining?.minutes).toBe(2)
  })

  it('Colours has the colourways of every motif, and none of a blanket’s patterns', async () => {
    const { app } = await inWindow(ColoursPlace, {}, GATE)
    screen.getByRole('heading', { name: 'Five-petal bud' })
    await fireEvent.click(screen.getByRole('button', { name: 'Add a colorway of Leaf' }))
    expect(app.document.project.colourways?.at(-1)).toMatchObject({ code: 'D', motif: 'leaf' })
    expect(screen.queryByRole('radio', { name: /^No two alike/ })).toBeNull()
    await fireEvent.click(screen.getByRole('button', { name: 'Take colorway C Moss leaf out' }))
    expect(garlandOf(app.document.project)?.items?.[0]?.colourway).toBeUndefined()
    expect(app.document.plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('Motif goes from one to the other', async () => {
    await inWindow(MotifPlace, {}, GATE)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Motif' }), { target: { value: 'leaf' } })
    screen.getByDisplayValue('58 mm')
  })
})

describe('the places of an appliqué', () => {
  const WREATH = example('quince-wreath-cushion')

  it('Joins tells how it is sewn down', async () => {
    await inWindow(JoinsPlace, {}, WREATH)
    screen.getByText('Sewing thread, with tails')
    screen.getByRole('list', { name: 'Sewn down in this order' })
  })
})
