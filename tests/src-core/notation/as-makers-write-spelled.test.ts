/** Ways of writing of a set that spells things out: spaces, bobbles and groups named in words, loops by their number. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const RING = 'Round 1: Magic ring, 3ch (counts as 1tr), 11tr into ring, ss to top of 3ch. [12tr]\n'

const CASES: readonly Way[] = [
  [
    'spaces by the number of their chains in words',
    'UK',
    'Round 1. Magic ring. Make 3 chain; this stands for your first treble. Work 1 treble into the ring, then make 1 chain. Now *work 2 trebles into the ring, then make 1 chain. Repeat from * 6 more times. Slip stitch into the top of the 3 chain. (16 trebles, 8 one-chain spaces)\nRound 2. Slip stitch into the next treble and into the one-chain space. Make 3 chain (your first treble), work 2 trebles into the same space, then make 2 chain. Now *work 3 trebles into the next one-chain space, then make 2 chain. Repeat from * 6 more times. Slip stitch into the top of the 3 chain. (24 trebles, 8 two-chain spaces)',
    [
      [16, { 'ch-1': 8 }],
      [24, { 'ch-2': 8 }],
    ],
  ],
  [
    'a bobble by the long form of its name, told with its legs',
    'UK',
    `MB (make bobble): work 5tr into st indicated, leaving last loop of each on hook, yrh and draw through all 6 loops.\n${RING}Round 2: 4ch (counts as 1tr, 1ch), 1tr into same place, MB in next st, *(1tr, 1ch, 1tr) into next st, MB in next st; rep from * 4 more times, ss to 3rd of 4ch. [12tr, 6MB, 6 1ch-sps]`,
    [[12], [18, { 'ch-1': 6 }]],
  ],
  [
    'a stitch of the text’s own that draws several together',
    'UK',
    `Winkle (W): work 5tr into st indicated, leaving last loop of each on hook, yrh and draw through all 6 loops.\n${RING}Round 2: 1ch, [1dc in next st, W in next st] 6 times. (12 sts)`,
    [[12], [12]],
  ],
  [
    'loops of the round before the last, told by how many they are',
    'US',
    'Rd 1: Magic ring, 12 sc in ring, sl st to first sc.\nRd 2: In each of the 12 front loops work (sl st, ch 2, 2 dc, ch 2, sl st).\nRd 3: Fold the petals forward; you’ll see the BACK loops of Rd 1 behind them. In each of the 12 back loops work (sl st, ch 3, 3 tr, ch 3, sl st).',
    [[12], [24, { 'ch-2': 24 }], [36, { 'ch-3': 24 }]],
  ],
  [
    'a chain that is a treble again, and lots of chains in a count',
    'UK',
    'Round 1 - Magic ring. 3ch (that’s your first tr), 1tr into ring, 1ch, then (2tr into ring, 1ch) five times. Ss to top of the 3ch. You’ve got 12tr and 6 one-chain gaps.\nRound 2 - Ss over the next tr and into the gap. 3ch (a tr again), 2tr in the same gap, 2ch. *3tr, 2ch in the next gap* all the way round. Ss to top of 3ch. 18tr, 6 two-chain gaps.\nRound 3 - New colour in any 2ch gap, 1ch (ignore this one). Into each gap go: 1dc, 3ch, 1dc, 3ch. Ss to top of first dc. That’s 12 dc with 12 lots of 3ch.',
    [
      [12, { 'ch-1': 6 }],
      [18, { 'ch-2': 6 }],
      [12, { 'ch-3': 12 }],
    ],
  ],
  [
    'the same group into each space',
    'UK',
    'Round 1: Magic ring, (1dc, 4ch) 8 times in ring. (8dc, 8 4ch-sps)\nRound 2: Ss into first 4ch-sp, 1ch, (1dc, 1htr, 1tr, 1dtr, 1tr, 1htr, 1dc) into same sp, then the same into each 4ch-sp to end, ss into first dc. (8 petals)',
    [
      [8, { 'ch-4': 8 }],
      [56, {}],
    ],
  ],
]

describe('as makers write, spelled out', () => readsWays(CASES))

const messages = (text: string): readonly string[] =>
  readRounds(text, { terms: 'UK' })
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ message }) => message)

describe('what is told all the same', () => {
  it('tells of lots of chains that are not so many', () => {
    expect(
      messages(`${RING}Round 2: 1ch, (1dc in next tr, 3ch) 12 times. 12 dc with 10 lots of 3ch.`),
    ).toEqual([expect.stringContaining('10 lots of 3ch')])
  })

  it('tells of loops that are worked already', () => {
    expect(
      messages(
        `${RING}Round 2: In front loops only, 1ch, 1dc in each st around. (12)\nRound 3: 1dc in each of the 11 back loops.`,
      ),
    ).not.toEqual([])
  })

  it('takes several stitches that nothing draws together for as many', () => {
    expect(
      messages(
        `Winkle (W): work 5tr into st indicated.\n${RING}Round 2: 1ch, [1dc in next st, W in next st] 6 times. (12 sts)`,
      ),
    ).toEqual([expect.stringContaining('the round makes 36')])
  })
})
