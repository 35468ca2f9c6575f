/** What the hours of a work are made of, in words. */
import type { TimeParts } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { MATERIAL_CONSTANTS } from '../materials/constants'
import { termWord } from '../stitches/terms'
import { formatMinutes, formatNumber } from '../units/format'
import { ASSUMED } from './yarn-words'

const LEAST = 0.5
const rate = (minutes: number, isAssumed: boolean): string =>
  ` at ${formatNumber(minutes, 2)} min each${isAssumed ? ` ${ASSUMED}` : ''}`

/** "motifs 20 h, joins 24 min at 1 min each (assumed), ends 9 h at 1 min each (assumed)": without what takes no time. */
export function timeWords(time: TimeParts, terms: Terms): string {
  const { motifs, joins, eachJoin, edging, cord, sewing = 0, ends } = time
  const parts: readonly (readonly [string, number, string])[] = [
    ['motifs', motifs, ''],
    [cord > 0 ? 'fastening' : 'joins', joins, eachJoin ? rate(eachJoin.minutes, eachJoin.assumed) : ''],
    [termWord('edging', terms), edging, ''],
    ['cord', cord, ''],
    ['sewing down', sewing, ''],
    ['ends', ends, rate(MATERIAL_CONSTANTS.endMinutes, true)],
  ]
  return parts
    .filter(([, minutes]) => minutes >= LEAST)
    .map(([name, minutes, how]) => `${name} ${formatMinutes(minutes)}${how}`)
    .join(', ')
}
