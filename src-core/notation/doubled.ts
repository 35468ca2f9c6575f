/** "Double each st", "double every 2nd st": two in one, and one in each of the others. */
import { readPlace } from './places'
import type { Reader } from './reader'
import { plainPlace } from './skips'
import type { GroupItem, Item, StitchName } from './tree'
import { NO_NAME } from './tree'

export const readDoubled = (reader: Reader): Item | null => {
  const start = reader.at
  return reader.attempt((): Item | null => {
    if (!/^doubl(e|ing)$/.test(reader.spelled())) return null
    reader.at++
    if (!['each', 'every', 'all', 'next'].includes(reader.key())) return null
    const place = readPlace(reader, true)
    const [part] = place?.parts ?? []
    if (!place || part?.noun.kind !== 'stitch') return null
    const span = reader.span(start)
    const stitch: StitchName = { ...NO_NAME, form: 'increase', name: reader.words(span), ...span }
    if (part.which !== 'every') return { type: 'work', count: null, stitch, place, ...span }
    const all = plainPlace({ which: 'each', each: true, noun: part.noun, extent: null }, span)
    const one: StitchName = { ...stitch, form: 'plain', stitch: 'sc' }
    const group: GroupItem = {
      ...{
        type: 'group',
        bracket: '',
        place: null,
        times: null,
        around: false,
        toCorner: false,
        lastCount: 0,
      },
      items: [
        { type: 'work', count: null, stitch: one, place: all, ...span },
        { type: 'every', count: 2, nth: part.count, ...span },
      ],
      ...span,
    }
    return group
  })
}
