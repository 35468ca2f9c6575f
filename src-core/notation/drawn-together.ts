/** A decrease told in its steps: "draw up a loop in each of next 2 sc, yarn over and draw through all 3 loops". */
import { readPlace } from './places'
import type { Reader } from './reader'
import { NO_NAME } from './stitch-name'
import type { Place, WorkItem } from './tree'

const PULLS = /^(pull|draw|bring)$/

/** "(Insert hook in next sc and) draw up a loop (in each of next 2 sc)": the place that it is drawn up in; passes it. */
const readLoopUp = (reader: Reader): Place | null =>
  reader.attempt(() => {
    let place: Place | null = null
    if (reader.skip('insert')) {
      while (reader.skip('the', 'your', 'hook')) continue
      place = readPlace(reader)
      if (!place) return null
      while (reader.skip(',', 'and', 'then', 'yo')) continue
    }
    if (!PULLS.test(reader.spelled())) return null
    reader.at++
    reader.skip('up')
    reader.skip('a', 'the')
    if (!reader.skip('lp')) return null
    reader.skip('up', 'through')
    return place ?? readPlace(reader)
  })

/** "Yarn over (hook) and draw through all 3 loops (on hook)": how many loops, 0 where it is not told; passes it. */
const readThroughAll = (reader: Reader): number | null =>
  reader.attempt(() => {
    while (reader.skip(',', ';', 'and', 'then')) continue
    if (!reader.skip('yo') && !reader.skipAll('yarn', 'over') && !reader.skipAll('yarn', 'around'))
      return null
    while (reader.skip(',', 'and', 'then', 'over', 'hook', 'the')) continue
    if (!PULLS.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('it', 'up', 'a', 'lp', 'yarn', 'off')) continue
    if (!reader.skip('through')) return null
    const all = reader.skip('all')
    reader.skip('the')
    const loops = reader.number()
    if (!all && loops === null) return null
    reader.skip('of')
    reader.skip('the')
    if (!reader.skip('lp')) return null
    while (reader.skip('on', 'the', 'your', 'hook')) continue
    return loops ?? 0
  })

/** How many stitches a place names: "next 2 sc", "each of next 3 sts"; 0 where it names no next ones. */
const stitchesOf = ({ parts: [part, ...others] }: Place): number =>
  part?.which === 'next' && part.noun.kind === 'stitch' && others.length === 0 ? part.count : 0

/** One stitch over all in which a loop was drawn up, where the loops come to that. */
export function readDrawnTogether(reader: Reader): WorkItem | null {
  const start = reader.at
  return reader.attempt((): WorkItem | null => {
    const first = readLoopUp(reader)
    if (!first) return null
    let size = stitchesOf(first)
    if (size === 0) return null
    for (;;) {
      const more = reader.attempt(() => {
        while (reader.skip(',', 'and', 'then')) continue
        return readLoopUp(reader)
      })
      if (!more) break
      if (stitchesOf(more) === 0) return null
      size += stitchesOf(more)
    }
    const loops = readThroughAll(reader)
    if (loops === null || size < 2 || (loops > 0 && loops !== size + 1)) return null
    const span = reader.span(start)
    const stitch = {
      ...NO_NAME,
      form: 'together',
      stitch: 'sc',
      size,
      name: `sc${size}tog`,
      ...span,
    } as const
    const parts = [{ ...first.parts[0]!, count: size, each: false }]
    return { type: 'work', count: 1, stitch, place: { ...first, parts, over: true }, ...span }
  })
}
