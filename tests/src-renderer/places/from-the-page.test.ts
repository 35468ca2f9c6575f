/** What a pasted page says besides its rounds, in the window: proposed, taken, left, undone. */
import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import RoundsOfFirst from './RoundsOfFirst.svelte'

beforeAll(() => {
  Element.prototype.scrollIntoView = () => undefined
})

const PAGE = `Meadow Mat
Hook: US H-8 (5 mm)
Gauge: Rnds 1 and 2 = 2"
Yarn: DK cotton (50 g/125 m)
Notes: Weave in ends.

Rnd 1: Magic ring, ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)
Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc. (12 sc)`

const empty: RoundsMotif = { id: 'm1', name: 'Flower', kind: 'rounds', gauge: { hook: 3.5 }, rounds: [] }
const project: Project = { ...SMALL, motifs: [empty] }

async function paste(page = PAGE) {
  const { app } = await inWindow(RoundsOfFirst, {}, project)
  await fireEvent.input(screen.getByRole('textbox', { name: /^Paste the rounds/ }), {
    target: { value: page },
  })
  await fireEvent.click(screen.getByRole('button', { name: 'Read the rounds' }))
  const motif = () => app.document.project.motifs![0] as RoundsMotif
  return { app, motif }
}
const list = () => screen.getByRole('list', { name: 'From the page' })
const items = () =>
  within(list())
    .getAllByRole('listitem')
    .map((item) => item.getAttribute('aria-label'))
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))

describe('From the page', () => {
  it('lists what the page says, with its words and what there is now, and sets nothing by itself', async () => {
    const { app, motif } = await paste()
    expect(items()).toEqual([
      'Name of the motif: Meadow Mat',
      'Hook: 5 mm',
      'Gauge by rounds: rounds 1–2 measure 2 in across',
      'Yarn: DK cotton, 1.8 oz, 137 yd, cotton',
      expect.stringMatching(/^Instructions: Yarn: DK cotton/),
      'Instructions: Notes: Weave in ends.',
    ])
    expect(within(list()).getByText(/^Now: 3.5 mm\. Line 2$/)).toBeTruthy()
    expect(within(list()).getByText(/^Line 3: “Rnds 1 and 2 = 2"”$/)).toBeTruthy()
    expect(motif()).toMatchObject({ name: 'Flower', gauge: { hook: 3.5 } })
    expect(app.document.undoLabel).toBe('paste 2 rounds')
    // It stands above the rounds: whoever had the keyboard in them would not see it.
    await waitFor(() => expect(document.activeElement?.textContent).toBe('From the page'))
  })

  it('waits where a round has a mistake, to which the keyboard goes first', async () => {
    await paste(PAGE.replace('(12 sc)', '(13 sc)'))
    await waitFor(() =>
      expect(document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.tagName).toMatch(
        /TEXTAREA|Round 2/,
      ),
    )
  })

  it('takes one with one undo, goes on to the next, and says so', async () => {
    const { app, motif } = await paste()
    await press('Take Hook: 5 mm')
    expect(motif().gauge).toMatchObject({ hook: 5 })
    expect(items()).not.toContain('Hook: 5 mm')
    await waitFor(() =>
      expect(document.activeElement?.getAttribute('aria-label')).toMatch(/^Take Gauge by rounds/),
    )
    expect(app.document.undoLabel).toBe('take hook from the page')
    app.document.undo()
    await waitFor(() => expect(items()).toContain('Hook: 5 mm'))
    expect(motif().gauge).toEqual({ hook: 3.5 })
  })

  it('takes all at once, with one undo', async () => {
    const { app, motif } = await paste()
    await press('Take all')
    expect(motif()).toMatchObject({ name: 'Meadow Mat', gauge: { hook: 5, rounds: 2, across: 50.8 } })
    expect(motif().instructions).toContain('Weave in ends.')
    expect(app.document.project.yarns?.at(-1)).toMatchObject({ name: 'DK cotton', ballGrams: 50 })
    expect(screen.queryByRole('list', { name: 'From the page' })).toBeNull()
    expect(screen.getByText('all answered')).toBeTruthy()
    const told =
      'Taken: name of the motif, hook, gauge by rounds, yarn and instructions. Undo takes all of it back.'
    expect(screen.getByText(told)).toBeTruthy()
    expect(app.said).toBe(`${told} Nothing is left to answer.`)
    app.document.undo()
    await waitFor(() => expect(screen.queryByText(told)).toBeNull())
    await waitFor(() => expect(items()).toHaveLength(6))
    expect(motif().name).toBe('Flower')
  })

  it('leaves one, leaves all, and asks again', async () => {
    const { app, motif } = await paste()
    await press('Leave Name of the motif: Meadow Mat')
    expect(items()).toHaveLength(5)
    await press('Leave all')
    expect(app.document.undoLabel).toBe('leave all of the page')
    expect(screen.getByText('Left as it is: hook, gauge by rounds, yarn and instructions.')).toBeTruthy()
    expect(motif()).toMatchObject({ name: 'Flower', gauge: { hook: 3.5 } })
    await press('Ask again')
    expect(items()).toHaveLength(6)
  })

  it('is not there where the page has nothing but rounds', async () => {
    await paste(PAGE.slice(PAGE.indexOf('Rnd 1')))
    expect(screen.queryByText('From the page')).toBeNull()
  })

  it('takes what is pasted among the rounds as well', async () => {
    await paste(PAGE.slice(PAGE.indexOf('Rnd 1')))
    const text = 'Hook: 6 mm\n\nRnd 3: Sc in each st around.\nRnd 4: Sc in each st around.'
    const last = screen.getByRole('textbox', { name: 'Round 2' })
    await fireEvent.paste(last, { clipboardData: { getData: () => text } })
    expect(items()).toEqual(['Hook: 6 mm'])
  })

  it('gives a later piece a motif of its own, with one undo', async () => {
    const { app, motif } = await paste(
      `${PAGE.slice(PAGE.indexOf('Rnd 1'))}\n\nBUTTON (make 3)\nRnd 1: Magic ring, ch 1, 8 sc in ring; join with sl st in first sc.`,
    )
    expect(motif().rounds).toHaveLength(3)
    await press('Take Motif of its own: Button, make 3, 1 round')
    expect(motif().rounds).toHaveLength(2)
    expect(app.document.project.motifs).toMatchObject([
      { id: 'm1' },
      { name: 'Button', goesWith: { motif: 'm1', each: 3 } },
    ])
    app.document.undo()
    expect(app.document.project.motifs).toHaveLength(1)
    expect(motif().rounds).toHaveLength(3)
  })
})
