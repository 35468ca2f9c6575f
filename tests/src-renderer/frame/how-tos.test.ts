/** Help > How to…: what people look for is found by the words that they have for it. */
import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import HelpDialog from '../../../src-renderer/frame/HelpDialog.svelte'
import { howTos, howTosFor } from '../../../src-renderer/frame/how-tos'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

// jsdom shows no dialogs.
HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

describe('answers', () => {
  it.each([
    ['hexagon', 'My flower became a hexagon'],
    ['skeins of one', 'Only 3 skeins of one color'],
    ['HOOK', 'I changed the hook'],
    ['  shawl ', 'Make a shawl'],
    ['How many skeins do I need?', 'How much yarn, and how many skeins'],
    ['how do I make a shawl', 'Make a shawl'],
  ])('are found by “%s”', (sought, ask) => {
    expect(howTosFor('US', sought).map((each) => each.ask)).toContain(ask)
  })

  it('need every word, and begin with all of them', () => {
    expect(howTosFor('US', 'hexagon zebra')).toEqual([])
    expect(howTosFor('US', ' ')).toEqual(howTos('US'))
  })

  it('speak of tension and colours in UK terms', () => {
    expect(howTosFor('UK', 'tension').map(({ ask }) => ask)).toContain('I changed the hook')
    expect(JSON.stringify(howTos('UK'))).not.toMatch(/gauge|color\b|skein/)
    expect(JSON.stringify(howTos('US'))).not.toMatch(/tension|colour|\bballs\b/)
    expect(howTosFor('UK', 'colour balls').map(({ ask }) => ask)).toEqual(['Only 3 balls of one colour'])
  })

  it('are found by the words of the other terms, and say what the reader’s do', () => {
    expect(howTosFor('UK', 'gauge').map(({ ask }) => ask)).toEqual(['I changed the hook'])
    expect(howTosFor('US', 'colour balls').map(({ ask }) => ask)).toEqual(['Only 3 skeins of one color'])
  })
})

it('the dialog shows what is sought, and says how much that is', async () => {
  await inWindow(HelpDialog, { onclose: () => undefined }, SMALL)
  const box = screen.getByRole('searchbox', { name: 'Search' })
  // The keyboard begins there, as showModal gives it.
  expect((box as HTMLInputElement).autofocus).toBe(true)
  expect(screen.getAllByRole('term').length).toBeGreaterThan(15)
  await fireEvent.input(box, { target: { value: 'hexagon' } })
  expect(screen.getAllByRole('term').map(({ textContent }) => textContent)).toEqual([
    'My flower became a hexagon',
  ])
  expect(screen.getByRole('status').textContent.trim()).toBe('1 answer')
  await fireEvent.keyDown(box, { key: 'ArrowDown' })
  expect(document.activeElement).toBe(screen.getByRole('region', { name: 'Answers' }))
  await fireEvent.input(box, { target: { value: 'zebra' } })
  screen.getByText(/^No answer has all these words/)
})
