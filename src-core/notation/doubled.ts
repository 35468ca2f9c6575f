/** "Double each st", "double every 2nd st": two in one, and one in each of the others. */
import { readPlace } from './places'
import type { Reader } from './reader'
import { plainPlace } from './plain-place'
import type { GroupItem, Item } from './tree'
import type { StitchName } from './stitch-name'
import { NO_NAME } from './stitch-name'
import { readStitch } from './vocabulary'

const EACH = new Set(['each', 'every', 'all', 'next'])

export const readDoubled = (reader: Reader): Item | null => {
  const start = reader.at
  return reader.attempt((): Item | null => {
    const besides = reader.spelled() === 'increasing'
    const doubles = besides || /^doubl(e|ing)$/.test(reader.spelled())
    if (doubles) reader.at++
    const increase = doubles ? null : readStitch(reader)
    if (!doubles && increase?.form !== 'increase') return null
    if (besides || increase ? !reader.isA('into') : !EACH.has(reader.key())) return null
    const place = readPlace(reader, true)
    const [part] = place?.parts ?? []
    if (!place || part?.noun.kind !== 'stitch') return null
    if ((besides || increase) && (part.which !== 'every' || place.parts.length > 1)) return null
    const span = reader.span(start)
    // "Sc in each st, increasing in every 2nd st".
    if (besides && reader.tokens[start - 1] && /^[,;]|and|while$/.test(reader.tokens[start - 1]!.key))
      return { type: 'every', count: 2, nth: part.count, ...span }
    const stitch: StitchName = { ...NO_NAME, form: 'increase', name: reader.words(span), ...span }
    if (part.which !== 'every') return { type: 'work', count: null, stitch, place, ...span }
    const all = plainPlace({ which: 'each', each: true, noun: part.noun, extent: null }, span)
    const one: StitchName = { ...stitch, form: 'plain', stitch: increase?.stitch ?? 'sc' }
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
