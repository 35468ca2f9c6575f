/** Fonts for other scripts in the settings, and what follows from them in the window. */
import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { FontAdded, NewFont, Outcome } from '../../../shared-types/bridge'
import { done, refused } from '../../../shared-types/bridge'
import { finding } from '../../../src-core/findings/finding'
import SettingsDialog from '../../../src-renderer/frame/SettingsDialog.svelte'
import { inWindow } from '../in-window'
import { SETTINGS } from '../memory-bridge'
import { example } from '../projects'

// jsdom has dialogs, but no way to show them.
HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

const HEBREW = {
  ...{ id: '0123456789abcdef0123456789abcdef', name: 'Noto Sans Hebrew', face: 1, scripts: ['Hebrew'] },
  covers: '590-5ff fb1d-fb4f',
}
const PROJECT = { ...example('dovecote-runner'), title: 'שמיכה' }
const settingsWith = { ...SETTINGS, fonts: [HEBREW] }

const choose = (name: string) =>
  fireEvent.change(screen.getByLabelText('Font file'), {
    target: { files: [new File(['bytes'], name)] },
  })
const fonts = () => within(screen.getByRole('group', { name: 'Fonts for other scripts' }))

describe('fonts for other scripts', () => {
  it('are chosen and shown with their scripts; what they cover is no longer reported, until they are removed', async () => {
    const addFont = (): Outcome<FontAdded> => done({ settings: settingsWith })
    const { app, host } = await inWindow(SettingsDialog, { onclose: () => undefined }, PROJECT, { addFont })
    const isReported = () => app.document.findings.some(({ code }) => code === 'letters/missing')
    expect(isReported()).toBe(true)
    await choose('hebrew.ttf')
    await waitFor(() => fonts().getByText('Noto Sans Hebrew'))
    expect(fonts().getByRole('listitem').textContent).toContain('Noto Sans Hebrew: Hebrew')
    const sent = host.asked.at(-1)!.payload as NewFont
    expect(sent).toEqual({ name: 'hebrew.ttf', data: Buffer.from('bytes').toString('base64'), face: null })
    expect(isReported()).toBe(false)
    expect(app.document.plan.covered).toHaveLength(1)
    await fireEvent.click(fonts().getByRole('button', { name: 'Remove Noto Sans Hebrew' }))
    await waitFor(() => expect(fonts().queryByText('Noto Sans Hebrew')).toBeNull())
    expect(isReported()).toBe(true)
  })

  it('of a collection, one is chosen', async () => {
    const addFont = ({ face }: NewFont): Outcome<FontAdded> =>
      done(face === null ? { choose: ['Sans JP', 'Sans KR'] } : { settings: settingsWith })
    const { host } = await inWindow(SettingsDialog, { onclose: () => undefined }, PROJECT, { addFont })
    await choose('both.ttc')
    const list = await screen.findByRole('combobox', { name: 'Which font of both.ttc' })
    await fireEvent.change(list, { target: { value: '2' } })
    await fireEvent.click(screen.getByRole('button', { name: 'Use this font' }))
    await waitFor(() => fonts().getByText('Noto Sans Hebrew'))
    expect(host.asked.at(-1)!.payload).toMatchObject({ name: 'both.ttc', face: 2 })
  })

  it('say why one is refused, in a line', async () => {
    const addFont = (): Outcome<FontAdded> =>
      refused(finding('app/font-refused', 'bad.ttf', { reason: 'it is damaged' }))
    await inWindow(SettingsDialog, { onclose: () => undefined }, PROJECT, { addFont })
    await choose('bad.ttf')
    const alert = await screen.findByRole('alert')
    expect(alert.textContent).toBe('bad.ttf: this font cannot be used: it is damaged.')
  })

  it('are four at most', async () => {
    const four = [0, 1, 2, 3].map((i) => ({ ...HEBREW, id: `${i}`.repeat(32) }))
    await inWindow(SettingsDialog, { onclose: () => undefined }, PROJECT, { settings: { fonts: four } })
    expect(fonts().getAllByRole('listitem')).toHaveLength(4)
    expect(fonts().queryByRole('button', { name: 'Choose a font…' })).toBeNull()
  })
})
