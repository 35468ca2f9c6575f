/** So many evenly around: the stitches are told in sum. */
import { readExtent } from './nouns'
import type { Reader } from './reader'
import type { EvenItem, StitchName } from './tree'
import { readStitch } from './vocabulary'

/** "36 sc evenly around", behind the stitch. */
export function readEvenly(
  reader: Reader,
  start: number,
  count: number | null,
  stitch: StitchName | null,
): EvenItem | null {
  return reader.attempt(() => {
    if (!reader.skip('evenly')) return null
    reader.skip('spaced')
    readExtent(reader)
    const change =
      stitch?.form === 'increase' ? 'increase' : stitch?.form === 'decrease' ? 'decrease' : 'work'
    return { type: 'evenly', count, stitch: change === 'work' ? stitch : null, change, ...reader.span(start) }
  })
}

/** "increasing 6 sts evenly around", "inc 6 evenly". */
export function readEvenChange(reader: Reader): EvenItem | null {
  const start = reader.at
  return reader.attempt(() => {
    const more = reader.skip('increasing', 'inc')
    if (!more && !reader.skip('decreasing', 'dec')) return null
    const count = reader.number()
    if (count === null) return null
    if (!reader.skipA('stitch')) readStitch(reader)
    if (!reader.skip('evenly')) return null
    reader.skip('spaced')
    readExtent(reader)
    return {
      type: 'evenly',
      count,
      stitch: null,
      change: more ? 'increase' : 'decrease',
      ...reader.span(start),
    }
  })
}
