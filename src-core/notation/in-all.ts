/** Counts told in all, behind whatever was worked. */
import type { Reader } from './reader'
import { readCounts } from './stated'
import type { CountItem } from './tree'

/** "2 dc in every space; 32 dc in all", "…, making 16 loops in all". */
export const readInAll = (reader: Reader): CountItem | null =>
  reader.attempt(() => {
    reader.skip('make')
    const from = reader.at
    let end = from
    while (
      end < reader.end &&
      end - from < 6 &&
      !(reader.tokens[end]!.is === 'in' && reader.tokens[end + 1]?.is === 'all')
    )
      end++
    if (reader.tokens[end]?.is !== 'in' || reader.tokens[end + 1]?.is !== 'all') return null
    const behind = reader.tokens[end + 2]
    if (behind && !behind.first && !/^[.;,)\]]$/.test(behind.key)) return null
    const counts = readCounts(reader, end, false)
    reader.at = end + 2
    return counts && { ...counts, ...reader.span(from) }
  })
