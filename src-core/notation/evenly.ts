/** So many evenly around: the stitches are told in sum. */
import { readExtent } from './nouns'
import type { Reader } from './reader'
import { readRowEnds } from './row-ends'
import type { EvenItem, StitchName, WorkItem } from './tree'
import { readStitch } from './vocabulary'

/** "(sc evenly down the side,) working 1 sc in each row end": how many that are. */
const readEachEnd = (reader: Reader): WorkItem | null => {
  const start = reader.at
  return reader.attempt((): WorkItem | null => {
    reader.skip(',', '(')
    if (!reader.skipA('verb')) reader.skip('with')
    const count = reader.number() ?? 1
    const stitch = readStitch(reader)
    const place = stitch && readRowEnds(reader)
    return place && { type: 'work', count, stitch, place, ...reader.span(start) }
  })
}

/** "36 sc evenly around", behind the stitch. */
export function readEvenly(
  reader: Reader,
  start: number,
  count: number | null,
  stitch: StitchName | null,
): EvenItem | WorkItem | null {
  return reader.attempt((): EvenItem | WorkItem | null => {
    if (!reader.skip('evenly')) return null
    reader.skip('spaced')
    // "8 sc evenly down the side".
    const side = stitch ? readRowEnds(reader) : null
    const each = side && count === null ? readEachEnd(reader) : null
    if (each) return { ...each, ...reader.span(start) }
    if (side && stitch && count !== null)
      return { type: 'work', count, stitch, place: side, ...reader.span(start) }
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
