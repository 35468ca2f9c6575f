/** What is begun in a window has a history of its own: undo never leads into what was open before. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import StartDialog from '../../../src-renderer/start/StartDialog.svelte'
import type { MeasuredMotif } from '../../../shared-types/project'
import { EXAMPLE_GROUPS, EXAMPLES } from '../../../src-renderer/start/examples'
import { patchMotif } from '../../../src-renderer/state/edits/motif'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

const EXAMPLE = EXAMPLE_GROUPS[0]!.examples[0]!.project.title!
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))

it.each([
  ['the own motif', () => press('Start with this motif')],
  ['written rounds', () => press('Start from its written rounds')],
  ['an example', () => press(new RegExp(EXAMPLE))],
])('begins %s with nothing to undo, and keeps it', async (_what, begin) => {
  const { app, host } = await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
  app.document.change('change the title', (project) => ({ ...project, title: 'Other' }))
  app.undo()
  await begin()
  const begun = app.document.project
  expect(begun).not.toBe(SMALL)
  expect([app.document.undoLabel, app.document.redoLabel]).toEqual([null, null])
  app.undo()
  expect(app.document.project).toBe(begun)
  await waitFor(() => expect(host.kept.length).toBeGreaterThan(0))
  expect(JSON.parse(host.kept.at(-1)!)).toEqual(JSON.parse(JSON.stringify(begun)))
  // It is theirs now, with or without a change: nothing else may take its place in this window.
  expect(app.isUntouched).toBe(false)
})

it('leaves a window alone whose project has a file, also where every change was taken back', async () => {
  const { app, host } = await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
  expect(app.isUntouched).toBe(true)
  host.emit('keeping', { ...app.keeping, place: 'file' })
  expect(app.isUntouched).toBe(false)
})

it('speaks in the terms for new projects, whatever those of the open one are', async () => {
  const { app } = await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
  expect(app.document.settled.terms).toBe('US')
  app.view.dialog = 'start'
  const centre = (spelling: string) => screen.findAllByText(new RegExp(`over the ${spelling}`))
  expect(await centre('center')).toHaveLength(1)
  await app.changeSettings({ terms: 'UK' })
  expect(await centre('centre')).toHaveLength(1)
  expect(screen.getByText(/^Hexagons in five rings round the one in the middle/)).toBeTruthy()
  app.view.dialog = null
  await centre('center')
})

it.each(['Blanket', 'Garland', 'Appliqué'])(
  'begins written rounds of “%s” with nothing that looks like a mistake',
  async (made) => {
    const { app } = await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
    await fireEvent.click(screen.getByRole('radio', { name: made }))
    await press('Start from its written rounds')
    expect(app.document.findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'note motif/no-rounds',
    ])
  },
)

it('begins the own motif without a warning for what nobody could have said yet, and warns of half of it', async () => {
  const { app } = await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
  await press('Start with this motif')
  const told = () => app.document.findings.map(({ code, severity }) => `${severity} ${code}`)
  await waitFor(() => expect(told()).toContain('note yarn/no-weight'))
  expect(told().filter((each) => !each.startsWith('note'))).toEqual([])
  const [motif] = app.document.project.motifs as readonly MeasuredMotif[]
  app.document.change('weigh one color', (project) =>
    patchMotif(project, motif!.id, {
      slots: motif!.slots!.map((slot, at) => (at === 0 ? { ...slot, grams: 1 } : slot)),
    }),
  )
  await waitFor(() => expect(told()).toContain('warning yarn/no-weight'))
})

it('shows its questions at once, and the pictures of the examples one after the other', async () => {
  await inWindow(StartDialog, { onclose: () => undefined }, SMALL)
  const pictures = () => document.querySelectorAll('.examples canvas').length
  expect(screen.getByRole('button', { name: 'Start with this motif' })).toBeTruthy()
  expect(pictures()).toBeLessThan(2)
  await waitFor(() => expect(pictures()).toBe(EXAMPLES.length))
})
