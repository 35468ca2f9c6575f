/** How a chain is worked along, told apart from the stitches: where that begins, and its other side. */
import { readPlace } from './places'
import type { Reader } from './reader'
import type { ScopeItem } from './tree'
import { readStitch } from './vocabulary'

const FAR_SIDE = ['opposite', 'other', 'second', 'bottom', 'lower', 'under', 'unworked', 'rem', 'far']
const CHAINS_FIRST = ['beg', 'starting', 'base', 'foundation', 'same']
const GOES_ALONG = ['along', 'on', 'down', 'in', 'across', 'into', 'over', 'around', 'up', 'to']

/**
 * "along opposite side of ch", "on the underside of the chain", "in the unworked loops of foundation ch"; passes it.
 * `bare`: "now the other side of the chain".
 */
function passFarSide(reader: Reader, bare: boolean, moves: boolean): boolean {
  reader.skip('back', 'up')
  if (bare && reader.sees('the')) reader.skip('the')
  else if (!reader.skip(...GOES_ALONG)) return false
  reader.skip('the')
  // "in free loops on opposite side of ch".
  reader.attempt(() => {
    const loops = reader.skipAll('unworked', 'lp') && reader.skip('on', 'along', 'of')
    reader.skip('the')
    return loops && FAR_SIDE.includes(reader.key()) ? true : null
  })
  const under = reader.skip('underside')
  const bottom = reader.sees('bottom') && !['side', 'edge'].includes(reader.key(1))
  const named = under || (bottom && reader.skip('bottom'))
  if (!named && !(reader.skip(...FAR_SIDE) && reader.skip('side', 'edge', 'lp', 'half'))) return false
  if (!reader.skip('of')) return !named || (under && moves)
  while (reader.skip('the', ...CHAINS_FIRST)) continue
  if (reader.peek()?.kind !== 'chains')
    return reader.skipA('chain') || reader.key(-1) === 'foundation' || reader.key(-1) === 'base'
  reader.at++
  return true
}

/** What is done with the work, or said of it, on the way to the other side. */
const MOVES = new Set([
  ...['do', 'not', 'turn', 'turning', 'rotate', 'rotating', 'spin', 'flip', 'without', 'but', 'back', 'come'],
  ...['keep', 'keeping', 'moving', 'move', 'swing', 'pivot', 'carrying', 'continuing'],
  ...['go', 'going', 'continue', 'carry', 'work', 'then', 'now', 'so', 'that', 'you', 'can', 'are', 'will'],
  ...['piece', 'it', 'the', 'your', 'around', 'round', 'on', 'and', 'to', 'in', 'up', 'down', 'again', 'now'],
])
const MOST_MOVES = 16

/** "…, then back down the other side", "do not turn but work back along other side of ch"; passes it. */
export const passToFarSide = (reader: Reader, bare: boolean): boolean =>
  reader.attempt(() => {
    for (let words = 0; words < MOST_MOVES; words++) {
      const found = reader.attempt(() => passFarSide(reader, bare || words > 0, words > 0) || null)
      if (found) {
        // "… with sc in next 8 ch".
        const on = reader.sees('with') && reader.attempt(() => (reader.at++, readStitch(reader)))
        if (on) while (!reader.sees('with')) reader.at--
        if (on) reader.at++
        return true
      }
      const comma = reader.sees(',') && ['so', 'and', 'but', 'then'].includes(reader.key(1))
      if (!comma && !reader.seesAny(MOVES) && !reader.isA('verb')) return null
      reader.at++
    }
    return null
  }) === true

/** "turn work upside down", "rotate 180°", "spin the piece around": the other side comes up where the first is done. */
export const passRotated = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('turn', 'rotate', 'rotating', 'spin', 'flip')) return null
    const turns = reader.key(-1) === 'turn'
    while (reader.skip('the', 'your', 'work', 'piece', 'it', 'strip', 'leaf', 'ch')) continue
    if (reader.skip('upside')) return reader.skip('down') || null
    if (reader.skip('upside-down', 'clockwise')) return true
    if (reader.peek()?.value === 180) {
      reader.at++
      reader.skip('degrees', 'degree', 'deg', '°')
      return true
    }
    if (reader.skip('around', 'round')) return /^[,.;:]?$/.test(reader.key()) || null
    return !turns && /^[,.;:]$/.test(reader.key()) ? true : null
  }) === true

/** "Starting in 2nd ch from hook, sc in each ch": where the chain is begun, without a stitch of its own. */
export function readAlong(reader: Reader): ScopeItem | null {
  const start = reader.at
  return reader.attempt((): ScopeItem | null => {
    if (!reader.skip('starting', 'begin', 'beg')) return null
    reader.skip('with', 'from', 'by')
    while (reader.skip('work', 'at')) continue
    const place = readPlace(reader, true)
    const [part] = place?.parts ?? []
    if (!place || place.parts.length > 1 || part?.which !== 'from-hook') return null
    const scope = { loop: null, around: false, round: null, behind: false, opposite: false } as const
    const span = reader.span(start)
    return { type: 'scope', ...scope, along: part, words: span, ...span }
  })
}
