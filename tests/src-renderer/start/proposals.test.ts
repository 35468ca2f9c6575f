import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import { NO_HOUSE } from '../../../shared-types/house'
import type { Project } from '../../../shared-types/project'
import { proposeArrangements } from '../../../src-core/layout/proposals'
import { createPlanner, planProject } from '../../../src-core/plan'
import { ruleWords, titleWords } from '../../../src-renderer/start/proposal-words'
import { laidAsProposed } from '../../../src-renderer/state/resize'
import OwnMotifForm from '../../../src-renderer/start/OwnMotifForm.svelte'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import { countTogether } from '../../src-core/joins/together'
import { inWindow } from '../in-window'

// Arrangements are tried and planned in the test's own thread.
const BLANK: Project = { format: 'petalyard-project', version: 1 }

async function start(petals: string) {
  const made: Project[] = []
  const { app } = await inWindow(
    OwnMotifForm,
    { onmade: (project: Project) => made.push(project), onwrite: () => undefined },
    BLANK,
  )
  const field = screen.getByRole('textbox', { name: 'Petals' })
  await fireEvent.input(field, { target: { value: petals } })
  await fireEvent.change(field, { target: { value: petals } })
  await waitFor(() => expect(screen.getAllByRole('radio', { name: /join points/ }).length).toBeGreaterThan(1))
  return { app, made }
}

describe('the start proposes arrangements that hold', () => {
  it('as pictures to choose from, each with its numbers; the one chosen is begun with', async () => {
    const { made } = await start('7')
    const group = screen.getByRole('group', { name: 'Arrangement' })
    const choices = within(group).getAllByRole('radio') as HTMLInputElement[]
    expect(choices.length).toBeGreaterThanOrEqual(3)
    expect(choices.map(({ checked }) => checked)).toEqual(choices.map((_, i) => i === 0))
    for (const choice of choices)
      expect(choice.closest('label')?.textContent).toMatch(/\d+ motifs.*join points.*[Oo]penings/s)
    const straight = within(group).getByRole('radio', { name: /^Straight rows/ })
    await fireEvent.click(straight)
    await fireEvent.click(screen.getByRole('button', { name: 'Start with this motif' }))
    const [project] = made
    expect(project?.layout).toMatchObject({ arrangement: 'straight-rows', alternateTurn: 180 / 7 })
    expect(countTogether(planProject(project!))).toEqual({ pieces: 1, single: 0 })
  })

  it('and those laid out alike say in their first words how they are joined', () => {
    const flower = {
      ...({ id: 'm', kind: 'measured', outline: 'petals', petals: 5 } as const),
      ...{ overTips: 80, overValleys: 52 },
    }
    const wish = { width: 750, height: 900 }
    const found = proposeArrangements({ ...BLANK, motifs: [flower] }, wish, createPlanner())
    expect(found.proposals.map((one) => titleWords(one, found) + ruleWords(one, found))).toEqual([
      'Joined at tips: straight rows, 10 × 12, every other row rotated 36°',
      'Offset rows, 9 × 14, rotated 36°, every other row 36° more, at tips and shoulders',
      'Joined at tips and shoulders: straight rows, 10 × 12, every other row rotated 36°',
    ])
  })

  it('and begins with the first where the answer has not come yet', async () => {
    const { made } = await start('5')
    await fireEvent.click(screen.getByRole('button', { name: 'Start with this motif' }))
    expect(countTogether(planProject(made[0]!))).toEqual({ pieces: 1, single: 0 })
  })
})

describe('pasted rounds', () => {
  it('that make a square start in straight rows, joined all along', () => {
    const settings = {
      theme: 'light', zoom: 100, units: 'metric', terms: 'US', hand: 'right', currency: 'EUR', paper: 'A4', house: NO_HOUSE, fonts: [],
    } as const // prettier-ignore
    const blank = ownRoundsProject(settings, { kind: 'blanket', width: 600, height: 800 })
    const [motif] = blank.motifs!
    // A plain square of clusters, written for this test.
    const rounds = [
      { slot: 'centre', work: 'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of ch-3' },
      { slot: 'edge', work: 'sl st to ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join with sl st in top of ch-3' },
    ] // prettier-ignore
    const written: Project = {
      ...blank,
      motifs: [
        { id: motif!.id, kind: 'rounds', foundation: { ring: 'chain', chains: 4 }, rounds } as NonNullable<
          Project['motifs']
        >[number],
      ],
    }
    const laid = laidAsProposed(written)
    expect(planProject(laid).motif).toMatchObject({ shape: 'straight', petals: 4 })
    expect(laid.layout).toMatchObject({ arrangement: 'straight-rows', turn: 0, alternateTurn: 0 })
    expect(laid.joining).toMatchObject({ rule: 'edges' })
    expect(countTogether(planProject(laid))).toEqual({ pieces: 1, single: 0 })
  })
})
