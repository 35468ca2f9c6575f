/** "As before", "as in Rnd 2": what is told by an earlier round. */
import type { Reader } from './reader'

const BEFORE = ['before', 'usual', 'established', 'always', 'set', 'described', 'previously']

/** "As before", "the same as last round", "like Rnd 2", "in the same way": passes it. */
export const passAsThere = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('in', 'exactly')
    reader.skip('the')
    const same = reader.skip('same')
    if (same && reader.skip('way', 'manner', 'fashion') && !reader.sees('as')) return true
    if (!reader.skip('as', 'like')) return same && /^[,;.:)]?$/.test(reader.key()) ? true : null
    if (reader.skip(...BEFORE)) return true
    while (reader.skip('for', 'in', 'on', 'of', 'the', 'those', 'corner', 'you', 'did', 'last', 'prev'))
      continue
    if (!reader.skipA('round') && !reader.skip('r')) return null
    reader.number()
    return true
  }) === true
