/** Back into what was passed over, in words of its own: "the one you missed", "the missed one", "the st before it". */
import type { Reader } from './reader'
import { endsPlace, passWhichMissed } from './where'

const PASSED = ['skipped', 'unworked']

/** "The first of the 2 skipped sts", "either of the sts you missed": one of a run; passes it. */
const passOfRun = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.ordinal() === null && !reader.skip('first', 'last', 'one', 'other')) return null
    if (!reader.skip('of')) return null
    while (reader.skip('the', 'those', 'these')) continue
    reader.number()
    const passed = reader.skip(...PASSED)
    if (!reader.skipA('stitch')) return null
    return passed || passWhichMissed(reader) || null
  }) === true

/** Whether the words name a stitch that was passed over without calling it so before its name; passes them. */
export const passMissedOne = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('the', 'that')
    if (passOfRun(reader)) return true
    if (reader.skip(...PASSED)) return (reader.skip('one') && endsPlace(reader)) || null
    if (reader.skip('one')) return passWhichMissed(reader) || null
    if (!reader.skipA('stitch') || !reader.skip('before')) return null
    return (reader.skip('it', 'that', 'this') && endsPlace(reader)) || null
  }) === true
