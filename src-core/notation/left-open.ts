/** What a row leaves: "leave the remaining 3 sts unworked", "the last 2 dc are left", "do not work the rest". */
import { readPlace } from './places'
import { plainPlace } from './plain-place'
import type { Reader } from './reader'
import { goesOnBehind } from './skips'
import { statedStitches } from './told-counts'
import type { RoundNode, SkipItem } from './tree'

const REST = ['rest', 'remainder', 'others']
const OPEN = ['unworked', 'alone', 'empty', 'behind', 'undone', 'over', 'as']

/** "leave", "leaving", "do not work", "without working", "stop", "stopping"; passes it. */
const passLeaves = (reader: Reader): boolean => {
  reader.skip('and')
  if (reader.skip('leave', 'leaving', 'stop', 'stopping', 'ignore', 'ignoring')) return true
  const no = reader.skip('do') ? reader.skip('not') : reader.skip('not', 'without')
  return no && reader.skipA('verb') && (reader.skip('in', 'into', 'over'), true)
}

interface Left {
  readonly count: number | null
  /** Named so that nothing else can be meant: "the rest", "the last 3 sts". */
  readonly sure: boolean
}

const LAST = /^(last|final|remaining|rem)\b/i

/** "the remaining 3 d.c.", "the last 2 sts", "3 sts", "the rest of the row"; passes it. `sure`: no other place is looked for. */
const readLeft = (reader: Reader, sure = false): Left | null =>
  reader.attempt((): Left | null => {
    reader.skip('all', 'the')
    reader.skip('the')
    if (reader.skip(...REST)) {
      if (reader.skip('of')) {
        while (reader.skip('the', 'this')) continue
        if (!reader.skipA('round') && !reader.skipA('stitch') && !reader.skipA('chain')) return null
      }
      return { count: null, sure: true }
    }
    // "Leave the other stitch alone", "leave the other sts for now".
    if (reader.skip('other') && reader.skipA('stitch'))
      return { count: /s$/i.test(reader.spelled(-1)) ? null : 1, sure: true }
    const from = reader.at
    if (sure && !LAST.test(reader.peek()?.text ?? '')) return null
    const part = readPlace(reader, true)?.parts[0]
    if (!part || !['stitch', 'chain'].includes(part.noun.kind)) return null
    const last = LAST.test(reader.words(reader.span(from)))
    if (part.which === 'each') return last ? { count: null, sure: true } : null
    if (!['last', 'next'].includes(part.which)) return null
    return { count: part.count, sure: last }
  })

const item = (reader: Reader, start: number, count: number | null): SkipItem => {
  const span = reader.span(start)
  const noun = { kind: 'stitch', name: null } as const
  const place = plainPlace({ which: 'last', each: false, noun, extent: null }, span)
  return { type: 'skip', place, unworked: true, ...(count !== null && { left: count }), ...span }
}

const endsThere = (reader: Reader): boolean =>
  !reader.peek() || reader.peek()!.first || /^([,;.:)!\]]|and|then|for)$/.test(reader.key())

/** Passes what says that the rest of a row stays as it is. */
export function readLeftOpen(reader: Reader): SkipItem | null {
  const start = reader.at
  const leaves = reader.attempt((): SkipItem | null => {
    // "Sc in next 5 sts. Stop here!"
    const turns = (ahead: number): boolean =>
      /^(and|,)$/.test(reader.key(ahead)) && reader.key(ahead + 1) === 'turn'
    const stops = /^([.!]|here|there)$/.test(reader.key(1)) || turns(1)
    if (reader.sees('stop') && stops && reader.at > 0) {
      reader.at++
      reader.skip('here', 'there')
      return /^[.!]$/.test(reader.key()) || turns(0) ? item(reader, start, null) : null
    }
    if (!passLeaves(reader)) return null
    const bare = reader.peek()?.kind === 'number'
    const left = readLeft(reader)
    if (!left) return null
    // "Stop 3 sts before the end."
    if (reader.skip('before')) {
      while (reader.skip('the', 'end', 'of')) continue
      reader.skipA('round')
    }
    const open = reader.skip(...OPEN)
    if (reader.key(-1) === 'as') while (reader.skip('they', 'it', 'are', 'is')) continue
    // "Leave 3 sts" says it, too; "leaving 1 st between" does not.
    if (!open && !endsThere(reader)) return null
    // "Leave 1 dc, sc in next dc" lies between two stitches.
    if (!open && bare && goesOnBehind(reader)) return null
    return item(reader, start, left.count)
  })
  if (leaves) return leaves
  return reader.attempt((): SkipItem | null => {
    const left = readLeft(reader, true)
    if (!left) return null
    // "The remaining stitches wait."
    if (reader.skip('wait', 'waits')) return endsThere(reader) ? item(reader, start, left.count) : null
    if (!reader.skip('are', 'is', 'stay', 'remain', 'stays', 'remains')) return null
    const said = reader.skip('not') ? reader.skipA('verb') : reader.skip('left', 'unworked', 'skipped')
    reader.skip('unworked')
    return said && endsThere(reader) ? item(reader, start, left.count) : null
  })
}

/** Rows that leave as many as one that says it, where the steps at the side of a leaf are told once. */
const STEPS = 2

/**
 * Whether a row may leave so many without a word: one of its piece says that it leaves as many; where it tells its count,
 * also the last one of a piece whose rows leave their ends.
 */
export function leavesAsBefore(rows: readonly RoundNode[], row: RoundNode, left: number): boolean {
  const at = rows.indexOf(row)
  if (statedStitches(row.items) === null) return left >= STEPS && stepsAsTold(rows, row, left)
  const leaves = ({ items }: RoundNode, count: number | null): boolean =>
    items.some(
      (each) => each.type === 'skip' && each.unworked && (count === null || (each.left ?? count) === count),
    )
  const before = rows[at - 1]
  if (before && leaves(before, left)) return true
  const ends = row.items.some((item) => item.type === 'note' && item.effect === 'fasten-off')
  return ends && rows.slice(0, at).some((each) => each.part === row.part && leaves(each, null))
}

/** "Row 1: …, turn, leaving last 3 ch unworked": whether the rows of a piece go back and forth in steps of so many. */
function stepsAsTold(rows: readonly RoundNode[], row: RoundNode, left: number): boolean {
  const goesBack = row.items.some(
    ({ type, ...item }) =>
      type === 'note' && 'effect' in item && /^(turn|fasten-off)$/.test(item.effect ?? ''),
  )
  const tells = ({ items, part }: RoundNode): boolean =>
    part === row.part && items.some((each) => each.type === 'skip' && each.unworked && each.left === left)
  return goesBack && rows.slice(0, rows.indexOf(row)).some(tells)
}
