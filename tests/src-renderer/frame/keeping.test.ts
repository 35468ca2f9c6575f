import { screen } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import type { Keeping } from '../../../shared-types/bridge'
import { finding } from '../../../src-core/findings/finding'
import { isInDanger, keepingWords } from '../../../src-renderer/frame/keeping'
import Notices from '../../../src-renderer/frame/Notices.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const keeping = (more: Partial<Keeping>): Keeping => ({
  name: 'Throw',
  place: 'app',
  where: '',
  revision: 1,
  savedRevision: 1,
  savedAt: new Date(0).toISOString(),
  problem: null,
  folderProblem: null,
  disk: 'same',
  ...more,
})
const cannotKeep = finding('app/cannot-keep', 'Throw', { reason: 'the disk is full' })
const waits = finding('app/saving-waits', 'Throw', { reason: 'The disk is full.' })
const folder = finding('app/own-folder', 'Throw', { folder: '/x', reason: 'the disk is full' })

it.each([
  [{}, 'kept in the app a moment ago', false],
  [{ place: 'file' }, 'saved a moment ago', false],
  [{ problem: waits }, 'not saved, kept in the app', true],
  [{ problem: cannotKeep }, 'not saved, only in memory', true],
  [{ place: 'nowhere', savedAt: null, folderProblem: folder }, 'changes cannot be kept', true],
  // Opened again as it was kept or saved: nobody wrote down when.
  [{ place: 'file', savedAt: null }, 'saved', false],
  [{ place: 'app', savedAt: null }, 'kept in the app', false],
  [{ place: 'file', savedAt: null, savedRevision: 0 }, 'not saved yet', false],
  [{ place: 'nowhere', savedAt: null }, 'nothing to save yet', false],
  // A file does not need the own folder.
  [{ place: 'file', folderProblem: folder }, 'saved a moment ago', false],
] as const)('with %j the header says %j', (more, words, danger) => {
  expect(keepingWords(keeping(more), 0)).toBe(words)
  expect(isInDanger(keeping(more))).toBe(danger)
})

it('without the program behind the window nothing is kept, whatever was before', () => {
  expect(keepingWords(keeping({}), 0, 'app/host-gone')).toBe('not kept: Petalyard does not answer')
  expect(keepingWords(keeping({}), 0, 'app/shut-out')).toBe('not kept: this window was shut out')
})

it('says in one line why nothing is kept, offers another place, and takes the line back by itself', async () => {
  const { app, host } = await inWindow(Notices, {}, SMALL)
  const alerts = () => screen.queryAllByRole('alert').map((each) => each.textContent)
  host.emit('keeping', keeping({ folderProblem: folder }))
  await expect.poll(alerts).toEqual([expect.stringContaining('/x, cannot be written: the disk is full.')])
  // Refused twice, told once, and nothing to put away.
  app.tell(cannotKeep)
  app.tell(cannotKeep)
  await expect.poll(alerts).toEqual([expect.stringContaining('only in memory')])
  expect(screen.getByRole('button', { name: 'Save it elsewhere' })).toBeTruthy()
  host.emit('hostGone', 'app/host-gone')
  await expect.poll(alerts).toEqual([expect.stringContaining('does not answer')])
  expect(screen.getByRole('button', { name: 'Save a copy' })).toBeTruthy()
  host.emit('hostGone', null)
  host.emit('keeping', keeping({}))
  await expect.poll(alerts).toEqual([])
})

it('hands over again what was changed while nobody was there', async () => {
  const { app, host } = await inWindow(Notices, {}, SMALL)
  app.document.change('change the title', (project) => ({ ...project, title: 'While away' }))
  await expect.poll(() => host.kept.length).toBe(1)
  host.emit('hostGone', 'app/host-gone')
  host.emit('hostGone', null)
  await expect.poll(() => host.kept.length).toBe(2)
  expect(JSON.parse(host.kept.at(-1) ?? '{}')).toMatchObject({ title: 'While away' })
})
