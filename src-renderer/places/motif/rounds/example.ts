/** A short example for an empty motif: our own flower, in the words of the terms asked for. */
import type { Terms } from '../../../../shared-types/project'
import { translateText } from '../../../../src-core/notation/translate'

const US = `Ch 6, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, *ch 4, sk 1 sc, sc in next sc; rep from * 4 more times, ch 4, sk 1 sc; join with sl st in first sc. (6 ch-4 sps)
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join with sl st in first sc.`

export const exampleBlock = (terms: Terms): string => translateText(US, 'US', terms)
