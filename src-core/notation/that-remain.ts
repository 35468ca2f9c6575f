/** Which stitches are meant, by what is left: "each of the two stitches that remain". */
import type { Reader } from './reader'

/** "That remain", "which are left", "still left over": behind the stitches that are meant; passes it. */
export const passThatRemain = (reader: Reader): boolean =>
  reader.attempt(() => {
    const which = reader.skip('that', 'which')
    if (which) while (reader.skip('still', 'are', 'is', 'now')) continue
    else reader.skip('still')
    if (!reader.skip('remain', 'remains') && !(which && reader.skip('rem'))) {
      if (!reader.skip('left')) return null
      reader.skip('over', 'unworked')
    }
    return endsThere(reader) || null
  }) === true
const endsThere = (reader: Reader): boolean =>
  (reader.peek()?.first ?? true) || /^([.,;:)\]([*]|and|then)$/.test(reader.key())
