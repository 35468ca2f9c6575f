/** Places within a petal, group or loop: "center dc of next petal", "4th of 7 dc", "middle ch of next loop". */
import { BUNCHES } from './answers-to'
import { readNoun, readRound } from './nouns'
import type { Reader } from './reader'
import type { Noun, Which } from './tree'
import type { StitchName } from './stitch-name'
import { readStitch } from './vocabulary'

/** Which group or loop: "next", "each", "that". */
export interface InWhich {
  readonly which: Which
  readonly each: boolean
}

const NEXT: InWhich = { which: 'next', each: false }

function passWhich(reader: Reader): InWhich {
  let found = NEXT
  for (;;) {
    if (reader.skip('each', 'every', 'all')) found = { which: 'each', each: true }
    else if (!reader.skip('the', 'of', 'a', 'next', 'same', 'first', 'any', 'this', 'that', 'last'))
      return found
  }
}

/** "of", "on", "at the center of", "in the middle of", "at (each corner)". */
const passOf = (reader: Reader): boolean =>
  reader.skip('of', 'on') ||
  reader.attempt(() => {
    if (!reader.skip('in', 'at')) return null
    // "The middle dc at each corner".
    if (/^(each|every)$/.test(reader.key()) && (reader.key(1) === 'corner' || reader.isA('group', 1)))
      return true
    reader.skip('the')
    return (reader.skip('center') && reader.skip('of')) || null
  }) === true

/** A group as it is named: by its stitches, and how many of them there are. */
interface Group {
  readonly name: StitchName | null
  readonly size?: number
}

/** "7-dc group", "group of 7 dc", "7 dc", "petal", "7 dc of next petal"; with the stitch that is named. */
function readGroup(reader: Reader): Group | null {
  return reader.attempt(() => {
    const hyphen = reader.peek()?.hyphen === true
    const count = reader.number()
    const named = count === null ? null : readStitch(reader)
    if (count !== null && (!named || (count < 2 && !hyphen))) return null
    const corner = reader.sees('corner') && !reader.isA('space', 1) && reader.key(1) !== 'of'
    const group = reader.skipA('group') || (corner && reader.skip('corner'))
    if (!named && !group) return null
    const inside = reader.attempt(() => {
      if (!reader.skip('of')) return null
      passWhich(reader)
      const many = reader.number()
      const stitch = readStitch(reader)
      const petal = reader.skipA('group')
      return petal || (many !== null && stitch) ? { stitch, many } : null
    })
    const size = named ? count : (inside?.many ?? null)
    return { name: named ?? inside?.stitch ?? null, ...(size !== null && size > 1 && { size }) }
  })
}

/** "(Dc) over cl", "(sc) above the next popcorn", "on top of the cluster"; passes it. */
const passOnBunch = (reader: Reader): boolean =>
  reader.attempt(() => {
    const over = reader.sees('over')
    if (!reader.skip('over', 'above', 'on')) return null
    reader.skip('top')
    reader.skip('of')
    while (reader.skip('a', 'the', 'each', 'next', 'every')) continue
    const named = readStitch(reader)
    return named !== null && (BUNCHES.has(named.form) || !over) ? true : null
  }) === true

/** "(Any pair) worked into a dc", "(2nd sc) made in each dc", "(dc) over cl": what the stitches stand in themselves; passes it. */
export const passWorkedInto = (reader: Reader): boolean =>
  passOnBunch(reader) ||
  reader.attempt(() => {
    if (!reader.skip('worked', 'made') || !reader.skip('in', 'into', 'over', 'on')) return null
    while (reader.skip('a', 'any', 'the', 'each', 'same', 'one', 'every')) continue
    return reader.skipA('space') || reader.skipA('stitch') || readStitch(reader) !== null || null
  }) === true

/** "(Ch-1 sp of next) 2 V-sts", "5 shells": groups that are called so, and no stitches of one. */
const namesGroups = (reader: Reader): boolean => {
  const { at } = reader
  const form = reader.number() === null ? null : readStitch(reader)?.form
  const named = form === 'shell' || form === 'v-stitch' || (reader.at === at + 1 && reader.isA('group'))
  reader.at = at
  return named
}

/** "(Ch-1 space of each of the next) 9 V-sts": of how many groups, one after the other. */
const readMany = (reader: Reader): { readonly many: number; readonly group: Group } | null =>
  reader.attempt(() => {
    if (reader.key(-1) !== 'next' || reader.peek()?.hyphen) return null
    const many = reader.number()
    const group = many !== null && many > 1 ? readGroup(reader) : null
    return group && /s$/.test(reader.spelled(-1)) ? { many: many!, group } : null
  })

/** "of next petal", "of the 7 dc", "at the center of next shell" behind a stitch or space counted within it. */
export const readWithin = (reader: Reader): (InWhich & Group & { readonly many?: number }) | null =>
  reader.attempt(() => {
    const spaces = /^(sps|lps|spaces|loops)$/.test(reader.spelled(-1))
    if (!passOf(reader)) return null
    const which = passWhich(reader)
    const several = which.each || spaces || namesGroups(reader) ? readMany(reader) : null
    if (several) return { which: 'next', each: false, ...several.group, many: several.many }
    const group = readGroup(reader)
    if (group) passWorkedInto(reader)
    return group && { ...which, ...group }
  })

/** "of next ch-5 loop", "of the 5-ch", "of next 5 ch loop" behind a chain counted along it: the loop itself. */
export const readLoopOf = (reader: Reader): (InWhich & { readonly noun: Noun }) | null =>
  reader.attempt(() => {
    if (!passOf(reader)) return null
    const which = passWhich(reader)
    const noun = readNoun(reader)
    if (noun?.kind === 'space' || noun?.kind === 'corner') return { ...which, noun }
    if (noun !== null) return null
    const chains = readChains(reader)
    if (chains === null) return null
    // "3rd of 5 ch of next loop".
    reader.attempt(() => (passOf(reader) && (passWhich(reader), readNoun(reader)?.kind === 'space')) || null)
    return { ...which, noun: { kind: 'space', chains, corner: false } }
  })

function readChains(reader: Reader): number | null {
  const token = reader.peek()
  if (token?.kind === 'chains') return ++reader.at > 0 ? token.value : null
  const before = reader.number()
  if (!reader.skipA('chain')) return null
  return before ?? reader.number()
}

/** "in the single tr", "in the point tr", "in the tall dc": a stitch told by what it is like. */
export const readSingled = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    if (!reader.skip('single', 'only', 'lone', 'point', 'tip', 'tall', 'odd')) return null
    const noun = readNoun(reader)
    return noun?.kind === 'stitch' && noun.name ? noun : null
  })

/** "in any petal", "in top of next petal", "in each petal": its tip. */
export const readPetal = (reader: Reader): Noun | null =>
  reader.skip('petal') ? { kind: 'landmark', name: 'tip' } : null

/** "(In tip) of next petal", "(in the point) of each leaf": which of them; null where nothing is said. */
export const readTipOf = (reader: Reader): (InWhich & { readonly count: 1 }) | null => {
  const found = reader.attempt(() => {
    if (!reader.skip('of')) return null
    const which = passWhich(reader)
    return reader.skip('petal', 'leaf', 'point', 'scallop') ? which : null
  })
  return found && { ...found, count: 1 }
}

/** "corresponding st of Rnd 2": of this motif. */
export const readFacing = (reader: Reader) =>
  reader.attempt(() => {
    if (!reader.skip('corresponding', 'matching')) return null
    const noun = readNoun(reader)
    const round = readRound(reader)
    return noun && round ? { noun, round } : null
  })

/** "in beg lp", "in beg corner": where the round began. */
export const readBegunLoop = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    if (!reader.skip('beg', 'starting')) return null
    const space = readNoun(reader)
    return space?.kind === 'space' || space?.kind === 'corner' ? space : null
  })

/** "first of these (3) ch", "3rd of those chs", "base of these ch": of chains just made; passes it. `said`: how it begins. */
export const passOfThese = (reader: Reader, said: Which | null): boolean =>
  reader.attempt(() => {
    if (said !== null && said !== 'first' && said !== 'nth') return null
    reader.skip('base')
    if (!reader.skip('of') || !reader.skip('these', 'those')) return null
    reader.number()
    return reader.skipA('chain') || null
  }) === true
