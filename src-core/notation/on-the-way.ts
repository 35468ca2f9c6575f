/** Slip stitches that only lead somewhere, told in a sentence: "with sl sts go to the first ch-3 sp". */
import { readPart, readPlace } from './places'
import type { Reader } from './reader'
import type { Place, WorkItem } from './tree'
import { NO_NAME, isSlip } from './stitch-name'
import { readStitch } from './vocabulary'

const GOES = new Set([
  'go',
  'move',
  'travel',
  'hop',
  'walk',
  'proceed',
  'work',
  'get',
  'pass',
  'advance',
  'crochet',
  'return',
])

const readSlip = (reader: Reader) => {
  reader.skip('a', 'the', 'one', '1')
  const stitch = readStitch(reader)
  return stitch && isSlip(stitch) ? stitch : null
}

/** "Slip to the middle of first loop", "slip along to next ch-3 sp": the stitch itself is left out. */
const readSlipTo = (reader: Reader, start: number): WorkItem | null =>
  reader.attempt((): WorkItem | null => {
    const from = reader.at
    if (!/^slip(ping)?$/.test(reader.spelled())) return null
    reader.at++
    const stitch = { ...NO_NAME, stitch: 'sl st', name: reader.spelled(-1), ...reader.span(from) } as const
    while (reader.skip('your', 'way', 'up', 'along', 'over', 'across', 'on')) continue
    if (!reader.sees('to') && !reader.sees('into')) return null
    const place = readPlace(reader)
    return place && { type: 'work', count: 1, stitch, place, ...reader.span(start) }
  })

/** "(Hop) into the first space with a ss": the stitch is told behind the place. */
function readWayWith(reader: Reader, start: number): WorkItem | null {
  const place = reader.sees('to') || reader.sees('into') ? readPlace(reader) : null
  const stitch = place && reader.skip('with', 'by', 'using', 'in') ? readSlip(reader) : null
  return place && stitch && { type: 'work', count: 1, stitch, place, ...reader.span(start) }
}

/** "With slip stitches go to the middle tr of the first petal", "move with sl sts to next ch-1 sp", "travel in ss to …". */
export function readWay(reader: Reader): WorkItem | null {
  const start = reader.at
  return reader.attempt((): WorkItem | null => {
    const before = reader.attempt(() => (reader.skip('with', 'by', 'using', 'in') ? readSlip(reader) : null))
    // "With sl.st. go to …": the stop ends nothing.
    if (before && reader.sees('.') && GOES.has(reader.key(1))) reader.at++
    reader.skip('then')
    const slips = before ? null : readSlipTo(reader, start)
    if (slips) return slips
    if (!reader.seesAny(GOES) && !(before && reader.sees('to'))) return null
    if (reader.seesAny(GOES)) reader.at++
    while (reader.skip('on', 'along', 'over', 'across', 'up', 'forward')) continue
    const stitch =
      before ?? reader.attempt(() => (reader.skip('with', 'by', 'using', 'in'), readSlip(reader)))
    if (!stitch) return readWayWith(reader, start)
    while (reader.skip('on', 'along', 'over', 'across')) continue
    if (!reader.sees('to') && !reader.sees('into') && !reader.sees('in')) return null
    const place = readPlace(reader)
    return place && { type: 'work', count: 1, stitch, place, ...reader.span(start) }
  })
}

/** "Sl st your way to the corner", "sl st up to ch-2 sp": passes what stands before "to". */
export const passOnTheWay = (reader: Reader): void => {
  reader.attempt(() => {
    const from = reader.at
    while (reader.skip('your', 'way', 'up', 'along', 'over', 'on', 'forward', 'back')) continue
    return reader.at > from && (reader.sees('to') || reader.sees('into')) ? true : null
  })
}

/** "Sl st in next hdc, dc and ch-2 sp": the one after the other, up to a space. */
const readListed = (reader: Reader, place: Place): Place | null =>
  reader.attempt(() => {
    if (place.parts.at(-1)?.which !== 'next') return null
    const parts = [...place.parts]
    for (;;) {
      const begins = reader.skip(',')
      const isLast = reader.skip('and')
      reader.skip('the', 'next')
      if ((!begins && !isLast) || reader.isA('into') || reader.peek()?.kind === 'number') return null
      const part = readPart(reader, false, { which: 'next', count: 1, each: false })
      if (part?.which !== 'next') return null
      parts.push(part)
      if (!isLast) continue
      const ends = part.noun.kind === 'space' && /^[,;.]?$/.test(reader.key())
      return ends ? { ...place, parts, end: reader.tokens[reader.at - 1]!.end } : null
    }
  })

/** "(S.s. over next 2 sts) to centre tr of scallop, s.s. into this tr": the one behind those, told before it is reached. */
const readAim = (reader: Reader): Place | null =>
  reader.attempt(() => {
    const start = reader.at
    if (!reader.skip('to')) return null
    const part = readPart(reader, false, { which: 'next', count: 1, each: false })
    const end = reader.at
    if (part?.noun.kind !== 'within') return null
    while (reader.skip(',', 'and', 'then')) continue
    const slip = readSlip(reader) && (reader.skip('in') || reader.skip('into'))
    if (!slip || !/^th(is|at)$/.test(reader.spelled())) return null
    reader.at = end
    return { parts: [part], over: false, ...reader.span(start) }
  })

/** "Sl st in next hdc, in next dc and into ch-3 sp": every place on the way. */
export function readFurther(reader: Reader, place: Place): Place {
  const start = reader.at
  const listed = readListed(reader, place)
  if (listed) return listed
  const aim = place.over ? readAim(reader) : null
  if (aim) return { ...place, over: false, parts: [...place.parts, ...aim.parts], end: aim.end }
  const more = reader.attempt(() => {
    if (!reader.skip(',')) return null
    const found = reader.isA('into') ? readPlace(reader) : null
    return found && (/^([,;.]|and)?$/.test(reader.key()) ? found : null)
  })
  if (!more || reader.at === start) return place
  const further = { ...place, parts: [...place.parts, ...more.parts], end: more.end }
  return readFurther(reader, further)
}

/** "Sl st in each st to the corner sp" leads into the corner. */
export function toCorner(reader: Reader, place: Place): Place {
  const [part] = place.parts
  // "Sl st to center of first shell": where the round before began is where the hook stands.
  const middle = /^to (the )?(center|centre|middle) of/i.test(reader.words(place))
  if (middle && part?.which === 'first') return { ...place, parts: [{ ...part, which: 'next' }] }
  if (place.parts.length !== 1 || part?.extent?.to !== 'corner') return place
  return {
    ...place,
    parts: [{ ...part, which: 'next', each: false, extent: null, noun: { kind: 'corner' } }],
  }
}
