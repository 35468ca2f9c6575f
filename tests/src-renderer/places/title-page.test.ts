import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import { NO_HOUSE } from '../../../shared-types/house'
import SettingsDialog from '../../../src-renderer/frame/SettingsDialog.svelte'
import PaperPlace from '../../../src-renderer/places/paper/PaperPlace.svelte'
import { inWindow } from '../in-window'
import { example } from '../projects'

// jsdom has dialogs, but no way to show them.
HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

const box = (name: string) => screen.getByRole('textbox', { name })
async function write(name: string, text: string): Promise<void> {
  const field = box(name)
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.change(field)
  await fireEvent.blur(field)
}

describe('the title page at Paper', () => {
  it('is ticked, told and taken back, a step each', async () => {
    const { app } = await inWindow(PaperPlace, {}, example('dovecote-runner'))
    const before = app.document.project
    await fireEvent.click(screen.getByText('Title page'))
    const tick = screen.getByRole('checkbox', { name: 'Print a title page first' }) as HTMLInputElement
    expect(tick.checked).toBe(false)
    await fireEvent.click(tick)
    expect(app.document.project.sheet?.titlePage).toBe(true)
    expect(app.document.undoLabel).toBe('print a title page')
    await write('One line below the title', ' For a long table ')
    await fireEvent.change(screen.getByRole('combobox', { name: 'Skill level' }), {
      target: { value: 'easy' },
    })
    await write('Copyright and terms of use', '© 2026 Wren Hollis')
    expect(app.document.project.pattern).toEqual({
      line: 'For a long table',
      skill: 'easy',
      copyright: '© 2026 Wren Hollis',
    })
    // What is emptied again leaves nothing behind.
    await write('Copyright and terms of use', '')
    expect(app.document.project.pattern).toEqual({ line: 'For a long table', skill: 'easy' })
    for (let i = 0; i < 5; i++) app.document.undo()
    expect(app.document.project).toEqual(before)
  })

  it('follows the house style where the project says nothing', async () => {
    const house = { ...NO_HOUSE, titlePage: true }
    const { app } = await inWindow(PaperPlace, {}, example('dovecote-runner'), { settings: { house } })
    await fireEvent.click(screen.getByText('Title page'))
    const tick = screen.getByRole('checkbox', { name: 'Print a title page first' }) as HTMLInputElement
    expect(tick.checked).toBe(true)
    await fireEvent.click(tick)
    expect(app.document.project.sheet?.titlePage).toBe(false)
    expect(tick.checked).toBe(false)
  })
})

describe('the pages that are printed', () => {
  const tick = (name: string) => screen.getByRole('checkbox', { name }) as HTMLInputElement

  it('are those of the house style, until others are chosen here', async () => {
    const house = { ...NO_HOUSE, leaveOut: ['materials'] as const }
    const { app } = await inWindow(PaperPlace, {}, example('dovecote-runner'), { settings: { house } })
    expect(app.paper.choice.leaveOut).toBeUndefined()
    await fireEvent.click(screen.getByText('Pages'))
    expect(tick('Materials').checked).toBe(false)
    expect(tick('Order of work').checked).toBe(true)
    await fireEvent.click(tick('Order of work'))
    await fireEvent.click(tick('Materials'))
    expect(app.paper.choice.leaveOut).toEqual(['order'])
    expect(app.settings.house.leaveOut).toEqual(['materials'])
  })

  it('are kept in Settings for all projects', async () => {
    const { app } = await inWindow(SettingsDialog, { onclose: () => undefined }, example('dovecote-runner'))
    await fireEvent.click(tick('The motif and its rounds'))
    await waitFor(() => expect(app.settings.house.leaveOut).toEqual(['motif']))
    await fireEvent.click(tick('Title page'))
    await waitFor(() => expect(app.settings.house).toMatchObject({ titlePage: true, leaveOut: ['motif'] }))
    await fireEvent.click(tick('The motif and its rounds'))
    await waitFor(() => expect(app.settings.house.leaveOut).toEqual([]))
  })
})

describe('the house style in Settings', () => {
  it('is kept for all projects, not in this one', async () => {
    const { app } = await inWindow(SettingsDialog, { onclose: () => undefined }, example('dovecote-runner'))
    const before = app.document.project
    await write('Your name or your shop’s', 'Larkspur Yarns')
    await waitFor(() => expect(app.settings.house.name).toBe('Larkspur Yarns'))
    await write('Address, or where to write', '12 Quay Street\nArbroath')
    await waitFor(() => expect(app.settings.house.address).toBe('12 Quay Street\nArbroath'))
    await fireEvent.change(screen.getByLabelText(/^Colou?r of titles$/), { target: { value: '#2f5d50' } })
    await waitFor(() => expect(app.settings.house.accent).toBe('#2f5d50'))
    await fireEvent.click(screen.getByRole('button', { name: 'Back to black' }))
    await waitFor(() => expect(app.settings.house.accent).toBe(''))
    expect(app.document.project).toBe(before)
  })

  it('refuses a picture that is no logo, in words', async () => {
    const { app } = await inWindow(SettingsDialog, { onclose: () => undefined }, example('dovecote-runner'))
    const input = screen.getByLabelText('Picture of the logo')
    await fireEvent.change(input, { target: { files: [new File(['x'], 'a.gif', { type: 'image/gif' })] } })
    expect((await screen.findByRole('alert')).textContent).toBe('A logo is a PNG or an SVG.')
    expect(app.settings.house.logo).toBe('')
  })
})
