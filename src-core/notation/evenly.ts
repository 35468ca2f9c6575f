/** So many evenly around: the stitches are told in sum. */
import { readExtent } from './extents'
import { readPlace } from './places'
import type { Reader } from './reader'
import { readRowEnds, sideBefore } from './row-ends'
import { spanOf } from './tokens'
import type { EvenItem, Item, NoteItem, Place, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
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

/** "10 sc evenly down the side (one in each row end)": says again how many there are; passes it. */
const passEachEnd = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('(')) return null
    reader.skip('about', 'approximately', 'that', 'is')
    reader.skipA('verb')
    if (reader.number() === null) return null
    if (!reader.skipA('stitch')) readStitch(reader)
    return readRowEnds(reader) && reader.skip(')') ? true : null
  }) === true

/** "(Sc evenly around:) 1 sc in each dc", "(…, working) 1 sc in each st": what stands behind tells it stitch by stitch. */
const eachAhead = (reader: Reader): boolean => {
  const at = reader.at
  while (reader.skip(':', ',', ';', '(', '—', '–', '-', 'with', 'by') || reader.skipA('verb')) continue
  reader.number()
  const part = reader.at > at && readStitch(reader) ? readPlace(reader)?.parts[0] : undefined
  reader.at = at
  return part !== undefined && part.which === 'each' && part.noun.kind === 'stitch'
}

/** "9 sc evenly spaced along row ends": nine of them, not in each row. */
const inSum = (side: Place): Place => ({
  ...side,
  parts: side.parts.map((part) => ({ ...part, which: 'next', count: 1, each: false })),
})

/** "(121 dc evenly) along the hem", "around the edge of the towel": what is edged; passes it. */
const passOnto = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('along', 'across', 'around', 'round') || !reader.skip('the', 'this', 'your', 'one'))
      return null
    const from = reader.at
    while (reader.at - from < MOST_WORDS && reader.peek()?.kind === 'word' && !reader.isA('round'))
      reader.at++
    return reader.at > from && /^([,;.]|)$/.test(reader.key()) ? true : null
  }) === true
const MOST_WORDS = 5

/** "36 sc evenly around", behind the stitch. */
export function readEvenly(
  reader: Reader,
  start: number,
  count: number | null,
  stitch: StitchName | null,
): EvenItem | WorkItem | NoteItem | null {
  return reader.attempt((): EvenItem | WorkItem | NoteItem | null => {
    if (!reader.skip('evenly')) return null
    reader.skip('spaced')
    // "8 sc evenly down the side".
    const side = stitch ? (readRowEnds(reader) ?? sideBefore(reader, start)) : null
    const each = side && count === null ? readEachEnd(reader) : null
    if (each) return { ...each, ...reader.span(start) }
    if (side && stitch && count !== null) {
      passEachEnd(reader)
      return { type: 'work', count, stitch, place: inSum(side), ...reader.span(start) }
    }
    const around = /^(all|a?round)$/.test(reader.spelled()) && { around: true }
    if (count === null || !passOnto(reader)) readExtent(reader)
    if (count === null && stitch && eachAhead(reader))
      return { type: 'note', effect: null, ...reader.span(start) }
    const change =
      stitch?.form === 'increase' ? 'increase' : stitch?.form === 'decrease' ? 'decrease' : 'work'
    const whole = countsFirst(reader) && { withFirst: true }
    const made = change === 'work' ? stitch : null
    return { type: 'evenly', count, stitch: made, change, ...whole, ...around, ...reader.span(start) }
  })
}

/** "(30 dc evenly around,) counting the ch-3 as a dc": whether the number is that of all. */
const countsFirst = (reader: Reader): boolean => {
  const { at } = reader
  while (reader.skip(',', '(')) continue
  const counts = /^(counting|including|incl)$/.test(reader.spelled())
  reader.at = at
  return counts
}

/** "Sc around, increasing 6 evenly": what stands before it is the stitch of it; the two in one, null where they are not. */
export function changedSweep(before: Item | undefined, item: Item): EvenItem | null {
  if (item.type !== 'evenly' || item.change === 'work' || before?.type !== 'work') return null
  const [part, ...others] = before.place?.parts ?? []
  const whole = part?.extent === null || part?.extent.to === 'end'
  const sweeps = part?.which === 'each' && whole && part.noun.kind === 'stitch'
  if (!sweeps || others.length > 0 || (before.count ?? 1) > 1) return null
  return { ...item, stitch: before.stitch, ...spanOf(before, item) }
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
