/** Ways of writing of still later sets by fresh hands: stitches of the text's own that go over several of the round before. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { RING, readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const ROUND = 'Round 1: Magic ring, 12dc in ring, ss to first dc.\n'

const CROSSED: readonly Way[] = [
  [
    'the stitch that you missed',
    'UK',
    `Crossed pair: miss the next st, 1tr in the st after it, then 1tr in the st you missed, working in front of the tr just made.\n\n${ROUND}Round 2: 2ch (doesn't count), [1 crossed pair over next 2 sts, 1ch] 6 times, ss to first tr. – 12tr, 6 1ch-sps\nRound 3: 1ch, [1dc in each of the next 2tr, 1dc in next 1ch-sp] 6 times, ss to first dc.`,
    [[12], [12, { 'ch-1': 6 }], [18]],
  ],
  [
    'the stitch just missed',
    'UK',
    `Crossed trebles: miss 1 st, 1tr in the next st, then go back and work 1tr in the stitch just missed.\n\n${ROUND}Round 2: 2ch (doesn't count), [crossed trebles over next 2 sts, 1ch] 6 times, ss to first tr.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the stitch that was skipped',
    'UK',
    `Cross stitch (cs): skip the next st, 1tr in the following st, 1ch, 1tr in the st that was skipped.\n\n${ROUND}Round 2: 2ch (doesn't count), [1 cs over next 2 sts, 1ch] 6 times, ss to first tr.`,
    [[12], [12, { 'ch-1': 12 }]],
  ],
  [
    'the first of those that were skipped, and a cross wider than its stitches',
    'US',
    `X-stitch: skip next 2 sts, dc in next st, ch 1, dc in the first of the 2 skipped sts.\n\n${RING}Rnd 2: Ch 2 (does not count), [X-stitch over next 3 sts, ch 1] 4 times, join.`,
    [[12], [8, { 'ch-1': 8 }]],
  ],
  [
    'the stitch that you left, until the round is done',
    'US',
    `Crossed dc: sk next st, dc in next st, then working behind that dc, dc in the st you left.\n\n${RING}Rnd 2: Ch 2 (does not count), *crossed dc, ch 1; rep from * around, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'each of the two that you skipped',
    'US',
    `Crossed cable: skip 2 sts, tr in each of next 2 sts, working in front of those tr, tr in each of the 2 sts you skipped.\n\n${RING}Rnd 2: Ch 2 (does not count), [crossed cable over next 4 sts] 3 times, join.`,
    [[12], [12]],
  ],
  [
    'the stitch before it, where none is skipped in words',
    'US',
    `Crossed pair: dc in the 2nd st from hook, then dc in the st before it.\n\n${RING}Rnd 2: Ch 2 (does not count), [crossed pair over next 2 sts, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the one after, and the one that you missed',
    'US',
    `${RING}Rnd 2: Ch 2 (does not count), [miss the next stitch and dc in the one after, then dc in the one you missed, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the missed one',
    'US',
    `${RING}Rnd 2: Ch 2 (does not count), [miss a st, dc in next st, dc in the missed one, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'one shell over five stitches, in the middle one of them',
    'US',
    `Shell: skip 2 sts, 5 dc in next st, skip 2 sts.\n\n${RING}Rnd 2: Ch 1, [sc in next st, shell over next 5 sts] 2 times, join.`,
    [[12], [12]],
  ],
  [
    'shells over six stitches, one in each',
    'US',
    `V-st: (dc, ch 1, dc) in one st.\n\n${RING}Rnd 2: Ch 1, V-sts over next 6 sts, sc in next 6 sts, join.`,
    [[12], [18, { 'ch-1': 6 }]],
  ],
  [
    'the stitches left, and the stitch that a marker was left in',
    'US',
    `${RING}Rnd 2: Ch 1, sc in the first 10 sts, sc in the 2 sts left, join.\nRnd 3: Ch 1, sc in next 11 sts, sc in the st you left your marker in, join.`,
    [[12], [12], [12]],
  ],
]

describe('stitches that cross', () => readsWays(CROSSED))

it('goes back only into what this round has skipped', () => {
  const text = `${RING}Rnd 2: Ch 1, [skip next st, dc in next st, dc in the st you missed] 7 times, join.`
  const codes = readRounds(text, { terms: 'US' }).findings.map(({ code }) => code)
  expect(codes).toContain('rounds/too-many-used')
})
