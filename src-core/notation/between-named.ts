/** Spaces told by the stitches on both sides: "ch-1 sp between first 2 tr", "each ch-2 sp between trs". */
import type { Reader } from './reader'
import type { StitchName } from './stitch-name'
import { readStitch } from './vocabulary'

const WHICH = ['the', 'first', 'next', 'last', 'and', 'each', 'any', 'both']

/** "Between (the) (first) (2) tr", "between first and second tr": the stitch on both sides; passes it. */
export const readBetweenNamed = (reader: Reader): StitchName | null =>
  reader.attempt(() => {
    if (!reader.skip('between')) return null
    const from = reader.at
    while (reader.skip(...WHICH) || reader.number() !== null || reader.ordinal() !== null) continue
    // "Between 3-dc groups": those lie between groups.
    if (reader.tokens.slice(from, reader.at).some(({ hyphen }) => hyphen)) return null
    const name = readStitch(reader)
    if (name?.form !== 'plain' || name.stitch === 'sl st' || name.stitch === 'ch') return null
    const goesOn = reader.isA('group') || reader.isA('counted') || reader.sees('and')
    return goesOn ? null : name
  })
