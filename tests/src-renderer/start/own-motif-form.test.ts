import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import OwnMotifForm from '../../../src-renderer/start/OwnMotifForm.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const field = (name: string) => screen.getByRole('textbox', { name }) as HTMLInputElement
const fill = async (name: string, text: string) => {
  await fireEvent.input(field(name), { target: { value: text } })
  await fireEvent.keyDown(field(name), { key: 'Enter' })
}
const pick = (name: string) => fireEvent.click(screen.getByRole('radio', { name }))

async function open() {
  const onmade = vi.fn<(project: Project) => void>()
  await inWindow(OwnMotifForm, { onmade, onwrite: vi.fn() }, SMALL)
  const start = async (): Promise<Project> => {
    await fireEvent.click(screen.getByRole('button', { name: 'Start with this motif' }))
    return onmade.mock.lastCall![0]
  }
  return { start }
}

// Every key lays out a whole throw, here in the same thread.
describe('the start', () => {
  it('asks odd petals for what a ruler can measure, and says what comes of it', async () => {
    const { start } = await open()
    await fill('Petals', '5')
    await fill('Tip to opposite dip', '82 mm')
    expect(field('Center to dip').placeholder).toBe('33.2 mm')
    await fill('Center to dip', '30 mm')
    await waitFor(() => screen.getByText(/A flower of 104 mm through its tips\./))
    expect((await start()).motifs![0]).toMatchObject({ petals: 5, overTips: 104, overValleys: 60 })
    await fireEvent.change(screen.getByRole('combobox', { name: 'Measured from' }), {
      target: { value: 'centre' },
    })
    await fill('Center to tip', '52 mm')
    expect((await start()).motifs![0]).toMatchObject({ ruler: 'centre', overTips: 104, overValleys: 60 })
  })

  it('lets the second measure follow the first until it is typed, and again when it is emptied', async () => {
    await open()
    expect([field('Dip to dip, across').value, field('Dip to dip, across').placeholder]).toEqual([
      ...['', '54.4 mm'],
    ])
    screen.getByText(/^Assumed: it follows the first/)
    await fill('Tip to tip, across', '10 cm')
    expect(field('Dip to dip, across').placeholder).toBe('68 mm')
    await fill('Dip to dip, across', '70 mm')
    expect(screen.queryByText(/^Assumed: it follows the first/)).toBeNull()
    await fill('Tip to tip, across', '9 cm')
    expect(field('Dip to dip, across').value).toBe('70 mm')
    await fill('Dip to dip, across', '')
    expect(field('Dip to dip, across').placeholder).toBe('61.2 mm')
  })

  it('asks whether it is for a child, and takes the size of a baby blanket for it', async () => {
    const { start } = await open()
    await fireEvent.change(screen.getByRole('combobox', { name: 'Shape' }), { target: { value: 'octagon' } })
    const child = () => screen.getByRole<HTMLInputElement>('checkbox', { name: 'For a baby or child' })
    expect(child().checked).toBe(false)
    expect((await start()).forChild).toBeUndefined()
    await fill('Finished width', '90 cm')
    await fill('Finished length', '110 cm')
    expect(child().checked).toBe(true)
    screen.getByText(
      /^This is the size of a baby blanket\. .*not for sleep under 12 months.*where you live\.$/s,
    )
    await screen.findByText(/^For a child, what has no openings of 25 mm or more comes first/)
    const [first] = screen.getAllByRole('radio', { name: /join points/ })
    expect(first!.closest('label')!.textContent).toMatch(
      /Leaves openings of about (?:1\d|2[0-4])(?:\.\d)? mm/,
    )
    expect((await start()).forChild).toBe(true)
    await fireEvent.click(child())
    expect((await start()).forChild).toBeUndefined()
    // Said once, it stays, whatever the size.
    await fireEvent.click(child())
    await fill('Finished length', '150 cm')
    expect(child().checked).toBe(true)
  })

  it('switches to inches beside the first number: round sizes where nothing was typed', async () => {
    const { start } = await open()
    await fill('Finished length', '150 cm')
    await pick('inches')
    await waitFor(() => expect(field('Tip to tip, across').value).toBe('3 in'))
    expect(field('Finished width').value).toBe('40 in')
    // What was typed stays as long as it is.
    expect(field('Finished length').value).toBe('59 in')
    await fill('Finished length', '50')
    expect(await start()).toMatchObject({
      units: 'imperial',
      layout: { target: { width: 1016, height: 1270 } },
    })
    await pick('Garland')
    expect(field('Cord between the ties').value).toBe('72 in')
    await pick('Appliqué')
    expect(field('Panel width').value).toBe('18 in')
    await pick('mm and cm')
    screen.getByText(/^In milli.*unless you write cm/)
    await waitFor(() => expect(field('Panel width').value).toBe('45 cm'))
  })

  it('takes a round panel, no larger than the engine does, and says so in the unit that is used', async () => {
    const { start } = await open()
    await pick('inches')
    await pick('Appliqué')
    await pick('round')
    await fireEvent.input(field('Panel across'), { target: { value: '10 m' } })
    expect(screen.getByRole('alert').textContent).toMatch(/^It can be from ⅞ in to 118 in\./)
    await fill('Panel across', '20')
    expect((await start()).layout).toMatchObject({
      ...{ kind: 'applique', panel: { shape: 'circle', diameter: 508 } },
      items: [{ x: 254, y: 254 }],
    })
  })
})
