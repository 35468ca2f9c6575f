/** M35: the border in the window says how many stitches each side of its first round takes, the way the hand works it. */
import { screen } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import { squares } from '../../src-core/edging/helpers'
import { inWindow } from '../in-window'

it.each([
  [
    'right',
    /^Round 1, counterclockwise from the top right corner: \d+ along the top, \d+ along the left side, /,
  ],
  ['left', /^Round 1, clockwise from the top left corner: \d+ along the top, \d+ along the right side, /],
] as const)('tells a %s-hander the stitches side by side', async (hand, words) => {
  await inWindow(ArrangementPlace, {}, { ...squares(8, 5, { rounds: ['sc'] }), hand })
  expect(screen.getByText(words)).toBeTruthy()
})
