/** Clusters over several stitches by their name, and stitches drawn together over another number than their own. Common practice, no source. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { readAlike } from './wordings'
import type { Wordings } from './wordings'

const RING = 'Rnd 1: 24 sc in magic ring; join. (24 sc)\n'
const HELD = 'holding back on hook the last loop of each dc, dc in next 3 sc, yo and draw through all 4 loops'

const ALIKE: readonly Wordings[] = [
  {
    name: 'clusters over three stitches',
    before: '',
    after: '\nRnd 3: Ch 1, 5 sc in each ch-5 sp around; join. (40 sc)',
    made: [24, 8, 40],
    wordings: [
      `${RING}Rnd 2: Ch 1, *3-dc cluster over next 3 sc, ch 5; rep from * 7 more times; join in top of first cluster. (8 clusters)`,
      `${RING}Rnd 2: Ch 1, *dc3tog over next 3 sc, ch 5; rep from * 7 more times; join in top of first cluster. (8 clusters)`,
      `3-dc cluster = ${HELD}.\n${RING}Rnd 2: Ch 1, *3-dc cluster over next 3 sc, ch 5; rep from * 7 more times; join in top of first cluster. (8 clusters)`,
      `Cluster (cl): ${HELD}.\n${RING}Rnd 2: Ch 1, *cl over next 3 sc, ch 5; rep from * 7 more times; join in top of first cl. (8 cl)`,
      `Cl = 3-dc cluster.\n${RING}Rnd 2: Ch 1, *cl over next 3 sc, ch 5; rep from * 7 more times; join in top of first cl. (8 cl)`,
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

describe('stitches drawn together over another number than their own', () => {
  const told = (work: string) =>
    readRounds(`${RING}Rnd 2: Ch 1, *${work}, ch 4; rep from * around; join.`).findings.filter(
      ({ code }) => code === 'rounds/together-over',
    )
  it.each(['dc4tog over next 3 sc', 'dc3tog over next 2 sc', 'sc3tog over next 4 sc'])(
    '%s is told once',
    (work) => expect(told(work)).toHaveLength(1),
  )

  it.each(['dc3tog over next 3 sc', 'dc4tog over next 2 sc', 'sc2tog over next 4 sc', 'dc3tog in next sc'])(
    '%s is as it should be',
    (work) => expect(told(work)).toEqual([]),
  )
})
