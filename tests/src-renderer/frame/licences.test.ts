/** Whose work is in the program, searched and read. */
import { fireEvent, screen } from '@testing-library/svelte'
import { beforeAll, expect, it } from 'vitest'
import type { LicenceEntry } from '../../../shared-types/bridge'
import { runCommand } from '../../../src-renderer/frame/commands'
import LicencesDialog from '../../../src-renderer/frame/LicencesDialog.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const licences: readonly LicenceEntry[] = [
  { name: 'konva', version: '10.9.1', licence: 'MIT', text: 'Permission is granted.' },
  { name: 'flatbush', version: '4.7.0', licence: 'ISC', text: 'With or without fee.' },
]

beforeAll(() => {
  HTMLDialogElement.prototype.showModal = function show() {
    this.open = true
  }
  HTMLDialogElement.prototype.close = function close() {
    this.open = false
  }
})

const names = () => screen.getAllByRole('listitem').map((item) => item.querySelector('.name')?.textContent)

it('lists every package with its licence and text, and finds by name and by licence', async () => {
  await inWindow(LicencesDialog, { onclose: () => undefined }, SMALL, { licences })
  await screen.findByText('2 of 2 packages')
  expect(names()).toEqual(['konva', 'flatbush'])
  expect(screen.getByText('Permission is granted.')).toBeTruthy()
  const search = screen.getByLabelText('Search packages and licenses')
  await fireEvent.input(search, { target: { value: 'Flat' } })
  expect(names()).toEqual(['flatbush'])
  await fireEvent.input(search, { target: { value: 'mit' } })
  expect(names()).toEqual(['konva'])
  expect(screen.getByText('1 of 2 packages')).toBeTruthy()
  // The browser is not ours.
  expect(screen.queryByRole('button', { name: /Chromium/ })).toBeNull()
})

it('shows those of Electron and Chromium on the desktop', async () => {
  const facts = { host: 'desktop' } as const
  const { host } = await inWindow(LicencesDialog, { onclose: () => undefined }, SMALL, { licences, facts })
  await fireEvent.click(screen.getByRole('button', { name: 'Licenses of Electron and Chromium…' }))
  expect(host.asked.map(({ name }) => name)).toContain('showEngineLicences')
})

it('opens from the menu', async () => {
  const { app } = await inWindow(LicencesDialog, { onclose: () => undefined }, SMALL, { licences })
  runCommand('licences', app, null)
  expect(app.view.dialog).toBe('licences')
})
