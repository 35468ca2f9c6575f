import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Keeping } from '../../../shared-types/bridge'
import { finding } from '../../../src-core/findings/finding'
import { changedWords, isInDanger, keepingWords, pageTitle } from '../../../src-renderer/frame/keeping'
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

describe('a file that was changed elsewhere', () => {
  const theirs = { changedAt: '2026-12-01T09:30:00Z', differs: ['Rows: 14 here, 9 in the file'], more: 0 }

  it('says when, and in which numbers it differs', () => {
    expect(changedWords({ theirs })).toMatch(
      /^The file was changed elsewhere: .*2026.*\. Rows: 14 here, 9 in the file\.$/,
    )
    expect(changedWords({ theirs: { ...theirs, more: 1 } })).toMatch(/in the file; 1 more number differs\.$/)
    expect(changedWords({ theirs: { ...theirs, differs: [] } })).toMatch(
      /\. Its numbers are the same as here\.$/,
    )
    expect(changedWords({})).toBe('The file was changed elsewhere since it was opened here.')
  })

  it('is used as one step: Undo brings back what was here, and hands it over', async () => {
    const { app, host } = await inWindow(Notices, {}, SMALL)
    app.document.change('change the title', (project) => ({ ...project, title: 'Mine' }))
    host.emit('keeping', keeping({ place: 'file', disk: 'changed', theirs }))
    app.tell(finding('app/changed-on-disk', 'a', { file: 'a.petalyard' }))
    await fireEvent.click(await screen.findByRole('button', { name: 'Use the file on disk' }))
    await expect.poll(() => app.document.undoLabel).toBe('use the file on disk')
    expect(app.notices).toEqual([])
    expect(app.document.project.title).toBe(SMALL.title)
    app.undo()
    expect(app.document.project.title).toBe('Mine')
    await expect.poll(() => JSON.parse(host.kept.at(-1) ?? '{}')).toMatchObject({ title: 'Mine' })
    app.redo()
    expect(app.document.project.title).toBe(SMALL.title)
  })

  it('that is gone is offered to be saved again, or elsewhere', async () => {
    const { host } = await inWindow(Notices, {}, SMALL)
    host.emit('keeping', keeping({ place: 'file', disk: 'missing' }))
    const again = await screen.findByRole('button', { name: 'Save it here again' })
    expect(screen.getByRole('button', { name: 'Save as' })).toBeTruthy()
    expect(screen.queryByRole('button', { name: 'Keep mine' })).toBeNull()
    await fireEvent.click(again)
    await expect.poll(() => host.asked.map(({ name }) => name)).toContain('answerDisk')
  })
})

it('a refused save is told no longer once the project is saved elsewhere', async () => {
  const { app } = await inWindow(Notices, {}, SMALL)
  app.tell(finding('app/cannot-write', 'a.petalyard', { reason: 'the folder is read-only' }))
  await app.saveAs()
  expect(app.notices).toEqual([])
})

it.each([
  ['Throw', { place: 'file', name: 'shared' }, 'Throw (shared) – Petalyard'],
  ['Throw', { place: 'file', name: 'throw' }, 'Throw – Petalyard'],
  ['Throw', { place: 'app', name: 'Throw of mine' }, 'Throw – Petalyard'],
] as const)('a page of %s kept as %j is called %s', (name, kept, title) => {
  expect(pageTitle(name, kept)).toBe(title)
})
