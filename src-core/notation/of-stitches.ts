/** What is told right behind the name of a stitch: how often it goes into its place, of how many chains it is. */
import type { Reader } from './reader'

/** "Sc twice in each st", "dc 3 times in next sp": how many go into one place; passes it. */
export const timesInPlace = (reader: Reader): number | null =>
  reader.attempt(() => {
    const worded = reader.valueOf('how-often')
    if (worded !== null) reader.at++
    const count = worded ?? reader.number()
    if (worded === null && !reader.skip('times')) return null
    return reader.sees('in') || reader.sees('into') ? count : null
  })

/** "(A picot) of 3 ch": passes it. */
export function passOfChains(reader: Reader): void {
  reader.attempt(() => {
    if (!reader.skip('of', 'with', 'from')) return null
    if (reader.peek()?.kind === 'chains') return ++reader.at > 0
    const before = reader.number()
    return reader.skipA('chain') && (before ?? reader.number()) !== null ? true : null
  })
}
