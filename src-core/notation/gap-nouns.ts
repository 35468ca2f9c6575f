/** Gaps by their words: "between next 2 sts", "before the next corner", "between shells". */
import type { Reader } from './reader'
import type { Noun, Which } from './tree'
import { readStitch } from './vocabulary'

/** "ch-3 and first dc", "last dc and beg ch", "this dc and the next" behind "between": passes both. */
const readTwoNamed = (reader: Reader): boolean =>
  reader.attempt(() => {
    const one = () => {
      while (reader.skip('the', 'beg', 'first', 'next', 'last', 'this', 'starting')) continue
      if (reader.peek()?.kind === 'chains') return ++reader.at > 0
      return reader.skipA('chain') || reader.skipA('stitch') || readStitch(reader) !== null
    }
    const isNext = () => reader.key(-1) === 'next' && (reader.skip('one'), true)
    return one() && reader.skip('and') && (one() || isNext()) ? true : null
  }) === true

/** "(Space between) this point and next point", "(this) petal and the next"; passes both. */
const passTwoGroups = (reader: Reader): boolean =>
  reader.attempt(() => {
    const one = () => reader.skipA('group') || reader.skipA('counted') || reader.skipA('landmark')
    reader.skip('this', 'the', 'that')
    if (!one() || !reader.skip('and')) return null
    reader.skip('the')
    return reader.skip('next') ? (one(), true) : null
  }) === true

/** "(two clusters) of 2 dc", "(this group) and the next", "(next group) and the one after". */
function passGroupEnd(reader: Reader): void {
  reader.attempt(() => (reader.skip('of') && (reader.number(), readStitch(reader))) || null)
  reader.attempt(() => {
    if (!reader.skip('and')) return null
    reader.skip('the')
    if (reader.skip('one')) return reader.skip('after', 'behind', 'before') || null
    if (!reader.skip('next')) return null
    reader.attempt(() => {
      const hyphen = reader.peek()?.hyphen === true
      return (reader.number(), readStitch(reader)) && (hyphen || reader.isA('group')) ? true : null
    })
    reader.skipA('group')
    return true
  })
}

/** "(Sp between) last and first groups", "the last shell and the first one": where the round closes. */
const readClosingGap = (reader: Reader): { noun: Noun; which: Which } | null =>
  reader.attempt(() => {
    const passNamed = (): 'group' | 'stitch' | null => {
      if (reader.peek()?.hyphen && ++reader.at) readStitch(reader)
      if (reader.skipA('group') || reader.skipA('counted')) return 'group'
      const named = readStitch(reader)
      if (!named && !reader.skipA('stitch')) return null
      return reader.skipA('group') || named?.form === 'shell' || named?.form === 'v-stitch'
        ? 'group'
        : 'stitch'
    }
    if (!reader.skip('last')) return null
    const before = passNamed()
    if (!reader.skip('and')) return null
    reader.skip('the')
    if (!reader.skip('first')) return null
    const of = passNamed() ?? before
    reader.skip('one')
    return of && { noun: { kind: 'gap', of }, which: 'last' }
  })

/** "sp between 2 dc", "between next 2 sts", "sp between shells". Stands behind "sp" or at "between". */
export function readGap(reader: Reader): { readonly noun: Noun; readonly which?: Which } | null {
  return reader.attempt(() => {
    // "sp before next V-st" lies between the one before and that one.
    if (!reader.skip('between', 'before', 'after')) return null
    reader.skip('the', 'this')
    if (passTwoGroups(reader)) return { noun: { kind: 'gap', of: 'group' }, which: 'next' }
    if (readTwoNamed(reader)) return { noun: { kind: 'gap', of: 'stitch' }, which: 'next' }
    // "The gap before the next corner", "between the corners", "after the first corner".
    const byCorner = reader.attempt(() => {
      while (reader.skip('next', 'first', 'last', 'two', 'four', 'each', 'both', '2')) continue
      if (!reader.skip('corner')) return null
      reader.skipA('group')
      return true
    })
    if (byCorner) return { noun: { kind: 'gap', of: 'group' } }
    const closes = readClosingGap(reader)
    if (closes) return closes
    const which: Which | null = reader.skip('next')
      ? 'next'
      : reader.skip('each')
        ? 'each'
        : reader.skip('any')
          ? 'any'
          : reader.skip('first')
            ? 'first'
            : null
    reader.skip('any')
    if (!reader.peek()?.hyphen) reader.number()
    const hyphen = reader.peek()?.kind === 'number' && reader.peek()!.hyphen
    const group = reader.attempt(() => {
      if (hyphen) {
        reader.at++
        if (!readStitch(reader)) return null
      } else reader.number()
      return reader.skipA('group') || reader.skip('corner', 'block') || null
    })
    if (group) passGroupEnd(reader)
    const said = which === null ? {} : { which }
    if (group) return { noun: { kind: 'gap', of: 'group' }, ...said }
    reader.number()
    const named = readStitch(reader)
    if (!named && !reader.skipA('stitch')) return null
    // "between 3 dc groups".
    const grouped = reader.skipA('group') || named?.form === 'shell' || named?.form === 'v-stitch'
    return { noun: { kind: 'gap', of: grouped ? 'group' : 'stitch' }, ...said }
  })
}
