/** M17 in the window: what does not lie flat is said beside its size, where its rounds are written. */
import { screen } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import * as edits from '../../../src-renderer/places/motif/rounds/edits'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import RoundsOfFirst from './RoundsOfFirst.svelte'

// jsdom lays nothing out, so nothing can be scrolled to.
beforeAll(() => {
  Element.prototype.scrollIntoView = () => undefined
})

const gauge = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const empty: RoundsMotif = { id: 'm1', name: 'Disc', kind: 'rounds', gauge, rounds: [] }

/** What stands there of a motif in these rounds. */
async function said(...rounds: string[]): Promise<string[]> {
  const block = rounds.map((work, i) => `Rnd ${i + 1}: ${work}`).join('\n')
  inWindow(
    RoundsOfFirst,
    {},
    edits.replaceRounds({ ...SMALL, motifs: [empty] }, 'm1', takeApart(block, 'US')),
  )
  await screen.findByText(/^Across/)
  return screen.queryAllByText(/than lie flat/).map(({ textContent }) => textContent.trim())
}

const TWICE = '2 sc in each st around.'

describe('M17 the place of a motif in written rounds', () => {
  it('says how many stitches more than lie flat it has', async () => {
    const [words, ...others] = await said('Magic ring, 8 sc in ring.', TWICE, TWICE, TWICE)
    expect(others).toEqual([])
    expect(words).toMatch(/^Ruffles: rounds? .* more stitches than lie flat \(.*about \d+ too many\)\.$/)
  })

  it('says nothing of that where it lies flat', async () => {
    const third = '*Sc in next st, 2 sc in next st; rep from * around.'
    expect(await said('Magic ring, 7 sc in ring.', TWICE, third)).toEqual([])
  })
})
