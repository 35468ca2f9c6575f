/** What a page of ours says before two rounds. */
import { readPage } from '../../../src-core/page/read-page'
import type { PageFact } from '../../../src-core/page/read-page'

export const US = `

Rnd 1: In magic ring, ch 1, 8 sc, sl st in first sc. (8 sc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each sc around, sl st in top of ch-3.`
const UK = `

Round 1: Magic ring, 1 ch, 8 dc, ss to first dc.
Round 2: 3 ch (counts as 1 tr), 1 tr in same st, 2 tr in each dc round, ss to top of 3 ch.`

/** What the words before the rounds say. */
export const facts = (head: string, terms: 'US' | 'UK' = 'US') =>
  readPage(head + (terms === 'US' ? US : UK), terms)
/** Those of one kind. */
export const only = <Kind extends PageFact['kind']>(list: readonly PageFact[], kind: Kind) =>
  list.filter((fact): fact is Extract<PageFact, { kind: Kind }> => fact.kind === kind)
