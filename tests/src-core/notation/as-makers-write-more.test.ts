/** More ways of writing that fresh hands used: each reads as its plain form does. */
import { describe } from 'vitest'
import { readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const POINT =
  'Ch 2.\nRow 1: 3 sc in 2nd ch from hook, turn.\nRow 2: Ch 1, 2 sc in first st, sc in next st, 2 sc in last st, turn.\nRow 3: Ch 1, 2 sc in first st, sc in next 3 sts, 2 sc in last st, turn.\n'

const CASES: readonly Way[] = [
  [
    'a second piece that goes back to a row, which then has only what the first one left',
    'US',
    `${POINT}FIRST HUMP\nRow 4: Ch 1, sc in first 3 sts. Leave the rest unworked. Turn.\nRow 5: Ch 1, sc3tog. Fasten off.\nSECOND HUMP\nGo back to Row 3. Skip the middle st, join yarn in the next st.\nRow 6: Ch 1, sc in same st and in the last 2 sts. Turn.\nRow 7: Ch 1, sc3tog. Fasten off.`,
    [[3], [5], [7], [3], [1], [3], [1]],
  ],
  [
    'a second piece on the stitches that a row has left, named once',
    'US',
    `${POINT}Row 4: Ch 1, sc in next 3 sts, leave the rest unworked, turn.\nRow 5: Ch 1, sc3tog. Fasten off.\nRow 6: Skip next unworked st of Row 3, join yarn in next st, ch 1, sc in same st and in the next 2 sts, turn.`,
    [[3], [5], [7], [3], [1], [3]],
  ],
]

describe('ways of writing', () => readsWays(CASES))
