/** Numbers that would let a round work out, as the editor offers them. */
import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import * as edits from '../../../src-renderer/places/motif/rounds/edits'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import RoundsOfFirst from './RoundsOfFirst.svelte'

// jsdom lays nothing out, so nothing can be scrolled to.
beforeAll(() => {
  Element.prototype.scrollIntoView = () => undefined
})

const written = (block: string): Project =>
  edits.replaceRounds(
    { ...SMALL, motifs: [{ id: 'm1', name: 'Flower', kind: 'rounds', rounds: [] }] },
    'm1',
    takeApart(block, 'US'),
  )
const motifOf = (project: Project): RoundsMotif => project.motifs![0] as RoundsMotif

describe('a number that would let a round work out', () => {
  const SLIP = `Rnd 1: Magic ring, 6 sc in ring; join with sl st in first sc. (6 sc)
Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc. (12 sc)
Rnd 3: Ch 1, *sc in next sc, 2 sc in next sc; rep from * 6 more times; join with sl st in first sc. (18 sc)`

  it('is offered below what is wrong, put in by its button, and undone as one step', async () => {
    const { app } = await inWindow(RoundsOfFirst, {}, written(SLIP))
    const wrong = screen.getByRole('textbox', { name: 'Round 3' })
    const offers = await screen.findByRole('list', { name: 'What would work out in round 3' })
    expect(offers.textContent).toMatch(/It works out with\s*rep from \* 5 more times\./)
    await fireEvent.click(within(offers).getByRole('button', { name: 'Change 6 to 5 in round 3' }))
    const now = () => motifOf(app.document.project).rounds![2]!.work
    expect(now()).toContain('rep from * 5 more times')
    await waitFor(() => expect(screen.queryByRole('list', { name: /^What would work out/ })).toBeNull())
    await waitFor(() => expect(window.document.activeElement).toBe(wrong))
    const field = wrong as HTMLTextAreaElement
    expect(field.value.slice(field.selectionStart, field.selectionEnd)).toBe('5')
    app.document.undo()
    expect(now()).toContain('rep from * 6 more times')
    expect(await screen.findByRole('list', { name: 'What would work out in round 3' })).toBeTruthy()
  })

  it('is not there while the round is typed, nor where nothing is wrong', async () => {
    const { app } = await inWindow(RoundsOfFirst, {}, written(SLIP))
    await screen.findByRole('list', { name: 'What would work out in round 3' })
    const field = screen.getByRole('textbox', { name: 'Round 3' }) as HTMLTextAreaElement
    field.value = field.value.replace('6 more', '5 more')
    await fireEvent.input(field)
    expect(screen.queryByRole('list', { name: /^What would work out/ })).toBeNull()
    await waitFor(() => expect(motifOf(app.document.project).rounds![2]!.work).toContain('5 more'))
    expect(screen.queryByRole('list', { name: /^What would work out/ })).toBeNull()
  })
})
