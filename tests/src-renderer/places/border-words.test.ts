/** Findings of a border's written rounds lead to their word, and stand under their own round. */
import { fireEvent, render, screen, waitFor } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import FindingList from '../../../src-renderer/parts/FindingList.svelte'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import { SMALL } from '../projects'
import { inWindow } from '../in-window'
import WithWindow from '../WithWindow.svelte'

// The world of these tests scrolls nothing.
Element.prototype.scrollIntoView = () => undefined

const WORKS = ['sc in each st around', 'sc in next st, flurb in next st']
const project: Project = {
  ...SMALL,
  terms: 'US',
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  layout: {
    ...(SMALL.layout as BlanketLayout),
    edging: { style: 'follow', rounds: ['sc'], written: WORKS.map((work) => ({ work })) },
  },
}
const fieldOf = (round: number) =>
  screen.getByLabelText<HTMLTextAreaElement>(`Round ${round} in words`, { exact: true })

it('from the list of findings to the word, with the fold that it stands in opened', async () => {
  const { app } = await inWindow(ArrangementPlace, {}, project)
  app.view.place = 'arrangement'
  const findings = app.document.findings.filter(({ target }) => target?.edging !== undefined)
  expect(findings.map(({ target }) => target?.edging)).toContain(1)
  const own = findings.filter(({ code }) => code === 'rounds/unknown-abbreviation')
  const props = { findings: own, map: null }
  render(WithWindow, { props: { app, part: FindingList as never, props } })
  expect(screen.getByText(/^.*Round 3 of the border: /)).toBeTruthy()
  const field = fieldOf(3)
  expect(field.closest('details')?.open).toBe(false)
  await fireEvent.click(screen.getByRole('button', { name: 'Go to round 3 of the border' }))
  await waitFor(() => expect(document.activeElement).toBe(field))
  expect(field.value.slice(field.selectionStart, field.selectionEnd)).toBe('flurb')
  expect(field.closest('details')?.open).toBe(true)
})

it('and under each round stands what is about it alone, with a button to its word', async () => {
  await inWindow(ArrangementPlace, {}, project)
  expect(fieldOf(2).getAttribute('aria-invalid')).toBeNull()
  const wrong = fieldOf(3)
  expect(wrong.getAttribute('aria-invalid')).toBe('true')
  await fireEvent.click(screen.getByRole('button', { name: 'Select “flurb”', hidden: true }))
  await waitFor(() => expect(document.activeElement).toBe(wrong))
  expect([wrong.selectionStart, wrong.selectionEnd]).toEqual([15, 20])
})

it('each time a round is entered and typed in is a step of its own, however many keys it took', async () => {
  const { app } = await inWindow(ArrangementPlace, {}, project)
  const workOf = () => (app.document.committed.layout as BlanketLayout).edging!.written![0]!.work
  const typed = async (...texts: string[]) => {
    await fireEvent.focus(fieldOf(2))
    for (const value of texts) await fireEvent.input(fieldOf(2), { target: { value } })
    await fireEvent.blur(fieldOf(2))
    await waitFor(() => expect(workOf()).toBe(texts.at(-1)))
  }
  await typed('hdc in each', 'hdc in each st around')
  await typed('dc in each', 'dc in each st around')
  app.document.undo()
  await waitFor(() => expect(workOf()).toBe('hdc in each st around'))
  app.document.undo()
  await waitFor(() => expect(workOf()).toBe('sc in each st around'))
})
