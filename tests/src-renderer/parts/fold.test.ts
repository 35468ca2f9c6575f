/** A part of a place that is folded away. */
import { cleanup, screen, waitFor } from '@testing-library/svelte'
import { createRawSnippet } from 'svelte'
import { expect, it } from 'vitest'
import Fold from '../../../src-renderer/parts/Fold.svelte'
import { SMALL } from '../projects'
import { inWindow } from '../in-window'

const children = createRawSnippet(() => ({ render: () => '<p>inside</p>' }))

it('stays as it was left by hand', async () => {
  const { app } = await inWindow(Fold, { title: 'Rotation', children }, SMALL)
  const fold = screen.getByText('inside').closest('details')!
  expect(fold.open).toBe(false)
  fold.open = true
  await waitFor(() => expect([...app.view.folds.values()]).toEqual([true]))
})

it('opens where somebody was led to it, with the keyboard on its first field, and stays open', async () => {
  const field = createRawSnippet(() => ({ render: () => '<div><p>inside</p><input value="20"></div>' }))
  const { app } = await inWindow(Fold, { title: 'Gauge', children: field }, SMALL)
  const fold = screen.getByText('inside').closest('details')!
  app.view.wishedFold = 'Rotation'
  await new Promise((resolve) => setTimeout(resolve, 30))
  expect([fold.open, app.view.wishedFold]).toEqual([false, 'Rotation'])
  app.view.wishedFold = 'Gauge'
  await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('textbox')))
  expect([fold.open, app.view.wishedFold, [...app.view.folds.values()]]).toEqual([true, null, [true]])
})

it('asks and keeps nothing more once it is gone: the platform tells that it was opened only after that', async () => {
  const { app } = await inWindow(Fold, { title: 'Rotation', children }, SMALL)
  screen.getByText('inside').closest('details')!.open = true
  cleanup()
  await new Promise((resolve) => setTimeout(resolve, 30))
  expect([...app.view.folds.values()]).toEqual([])
})
