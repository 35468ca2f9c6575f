import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { KeptPhoto, MeasuredMotif } from '../../../shared-types/project'
import type { Measured } from '../../../src-core/photo/motif'
import PhotoDialog from '../../../src-renderer/photo/PhotoDialog.svelte'
import { photographed, takeMeasured } from '../../../src-renderer/state/edits/motif'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import { aFile, answerOf, fakeFinder, KEPT_JPEG, measuresOf } from './fake-finder'

/** The page of these tests knows no dialogs of the platform. */
beforeEach(() => {
  HTMLDialogElement.prototype.showModal = function () {
    this.open = true
  }
  HTMLDialogElement.prototype.close = function () {
    this.open = false
  }
})

async function open(...answers: ReturnType<typeof answerOf>[]) {
  const onuse = vi.fn<(measured: Measured, kept: KeptPhoto | undefined, colours: readonly string[]) => void>()
  const fake = fakeFinder(answers)
  const reader = { units: 'metric', terms: 'US' } as const
  await inWindow(PhotoDialog, { onuse, onclose: vi.fn(), reader, finder: fake.finder, file: aFile() }, SMALL)
  await waitFor(() => screen.getByText(/^Measured: /))
  return { onuse, ...fake }
}
const field = (name: string) => screen.getByRole('textbox', { name }) as HTMLInputElement
const type = async (name: string, text: string) => {
  await fireEvent.input(field(name), { target: { value: text } })
  await fireEvent.keyDown(field(name), { key: 'Enter' })
}

describe('the dialog of photos', () => {
  it('shows what was found and takes what is typed over it', async () => {
    const { onuse } = await open(answerOf(measuresOf(8, 104, 70), 'photo/dips-hidden'))
    expect(field('Petals').value).toBe('8')
    expect(field('Tip to tip, across').value).toBe('104 mm')
    const slider = screen.getByRole('slider', { name: 'Circle through the dips' })
    expect(slider.getAttribute('aria-valuetext')).toBe('70 mm')
    expect(screen.getByRole('status').textContent).toMatch(/^Measured: 8 petals, .*Not sure: /)
    // Why stands right under it, before the numbers that it is about.
    const why = screen.getByText(/^Not sure: /).nextElementSibling!
    expect(why.textContent).toContain('The dips between the petals cannot be made out well.')
    expect(why.compareDocumentPosition(field('Petals'))).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
    await fireEvent.input(slider, { target: { value: '66' } })
    expect(field('Dip to dip, across').value).toBe('66 mm')
    expect(screen.getByText(/^Sure: /)).toBeTruthy()
    await type('Tip to tip, across', '10.2 cm')
    await fireEvent.click(screen.getByRole('button', { name: 'Use as measured' }))
    expect(onuse.mock.lastCall![0]).toMatchObject({
      ...{ outline: 'traced', petals: 8, overTips: 102, overValleys: 66 },
    })
    expect(onuse.mock.lastCall![2]).toEqual(['#7fb5a8'])
  })

  it('asks an odd number of petals for what a ruler can show', async () => {
    const { onuse } = await open(answerOf(measuresOf(5, 104, 60)))
    expect(field('Tip to opposite dip').value).toBe('82 mm')
    await type('Center to dip', '31 mm')
    await fireEvent.click(screen.getByRole('button', { name: 'Use as measured' }))
    expect(onuse.mock.lastCall![0]).toMatchObject({ petals: 5, overTips: 102, overValleys: 62 })
  })

  it('moves a corner with the keys and measures once they rest', async () => {
    const { asked } = await open(answerOf(measuresOf(8, 104, 70)))
    const corner = screen.getByRole('button', { name: /^Corner of the sheet, top left/ })
    for (let i = 0; i < 3; i++) await fireEvent.keyDown(corner, { key: 'ArrowRight' })
    expect(asked).toHaveLength(1)
    await waitFor(() => expect(asked).toHaveLength(2))
    expect(asked[1]!.corners![0]).toEqual({ x: 103, y: 80 })
    screen.getByRole('button', { name: 'Find the corners' })
  })

  it('asks for two points on a ruler and for what lies between them', async () => {
    const answer = answerOf(measuresOf(8, 104, 70))
    const { asked } = await open(answer, { ...answer, sheet: 'ruler' })
    const sheet = screen.getByRole('combobox', { name: 'Lies on a' })
    await fireEvent.change(sheet, { target: { value: 'ruler' } })
    expect(screen.queryByRole('button', { name: /^Corner of the sheet/ })).toBeNull()
    expect((screen.getByRole('button', { name: 'Use as measured' }) as HTMLButtonElement).disabled).toBe(true)
    for (const name of [/^First point on the ruler: 25 % from the left/, /^Second point on the ruler/])
      await fireEvent.keyDown(screen.getByRole('button', { name }), { key: 'ArrowUp', shiftKey: true })
    await waitFor(() => expect(asked).toHaveLength(2))
    expect(asked[1]).toMatchObject({ sheet: 'ruler', ruler: { length: 100, from: { x: 250 } } })
    await type('Between the points', '20 cm')
    await waitFor(() => expect(asked).toHaveLength(3))
    expect(asked[2]!.ruler!.length).toBe(200)
  })

  it('keeps the picture only where that is wished, and says what becomes of it', async () => {
    const { onuse, state } = await open(answerOf(measuresOf(8, 104, 70)))
    const tick = screen.getByRole('checkbox', { name: 'Keep the picture with the motif' })
    expect((tick as HTMLInputElement).checked).toBe(false)
    const words = () => document.getElementById(tick.getAttribute('aria-describedby')!)!.textContent
    expect(words()).toContain('stays on this machine and outside the project')
    const use = () => fireEvent.click(screen.getByRole('button', { name: 'Use as measured' }))
    await use()
    await waitFor(() => expect(onuse).toHaveBeenCalledTimes(1))
    expect(onuse.mock.lastCall![1]).toBeUndefined()
    expect(state.kept).toEqual([])

    await fireEvent.click(tick)
    expect(words()).toContain('goes into the project file, without place, date or camera')
    await use()
    await waitFor(() => expect(onuse).toHaveBeenCalledTimes(2))
    expect(onuse.mock.lastCall![1]).toEqual({ picture: KEPT_JPEG, sheet: 'A4' })

    state.isSmallEnough = false
    await use()
    expect((await screen.findByRole('alert')).textContent).toBe(
      'rose.jpg cannot be kept: it cannot be made small enough. Use the motif without it.',
    )
    expect(onuse).toHaveBeenCalledTimes(2)
  })

  it('offers nothing to use where nothing was found', async () => {
    const fake = fakeFinder([answerOf(null, 'photo/no-motif')])
    const reader = { units: 'imperial', terms: 'UK' } as const
    const props = { onuse: vi.fn(), onclose: vi.fn(), reader, finder: fake.finder, file: aFile() }
    await inWindow(PhotoDialog, props, SMALL)
    await waitFor(() => screen.getByText(/^Nothing on the sheet stands out from it\./))
    expect((screen.getByRole('button', { name: 'Use as measured' }) as HTMLButtonElement).disabled).toBe(true)
  })
})

describe('a motif taken from a photo', () => {
  const measured: Measured = {
    ...{ outline: 'traced', petals: 5, overTips: 90, overValleys: 60 },
    traced: { points: [[0, -45]] },
  }

  it('keeps name, colours and weight of the one that was there, and no size of it', () => {
    const motif: MeasuredMotif = {
      ...{ id: 'm', name: 'Rose', kind: 'measured', outline: 'round', across: 70, minutes: 12 },
      ...{ asMeasured: { across: 66 }, slots: [{ slot: 'all', grams: 4 }] },
    }
    const project = { ...SMALL, motifs: [motif] }
    expect(takeMeasured(project, 'm', measured).motifs![0]).toEqual({
      ...{ id: 'm', name: 'Rose', kind: 'measured', minutes: 12, slots: motif.slots, blocked: true },
      ...measured,
    })
  })

  it('has no photo but the one that was kept with it last', () => {
    const photo = { picture: KEPT_JPEG, sheet: 'A4' }
    const kept = takeMeasured(SMALL, SMALL.motifs![0]!.id, measured, photo)
    expect(kept.motifs![0]!.photo).toEqual(photo)
    expect(takeMeasured(kept, SMALL.motifs![0]!.id, measured).motifs![0]).not.toHaveProperty('photo')
    expect(photographed(SMALL, measured, photo).photo).toEqual(photo)
    expect(photographed(SMALL, measured)).not.toHaveProperty('photo')
  })

  it('is a new one with colours of its own', () => {
    const made = photographed(SMALL, measured)
    expect(made).toMatchObject({ kind: 'measured', ...measured, name: expect.stringMatching(/^Flower/) })
    expect(made.slots!.map(({ slot }) => slot)).toEqual(['center', 'petals'])
    expect(photographed(SMALL, { outline: 'round', across: 80 })).toMatchObject({
      outline: 'round',
      across: 80,
    })
  })
})
