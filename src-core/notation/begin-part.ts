/** Where a part of a pattern begins, and what it stands on: its own ring or chain, an earlier round, or an edge. */
import { EDGE, goesRoundJoined, namedEnd } from './borders'
import { isFoundationOnly, makesFoundation } from './first'
import type { Reading } from './reading'
import { SKIPPED, WORKED } from './source'
import { GONE_BACK_TO, SHARED } from './state'
import type { RoundState } from './state'
import type { RoundNode, RoundsTree } from './tree'

/** "Second motif: work as first until Rnd 4 is done. Rnd 5: …" goes on from that round of the first one. */
function branchOff(reading: Reading, number: number): void {
  const below = reading.history.get(number)
  if (!below) return
  const { length } = below.places
  const state = { ...below, loops: new Uint8Array(length), touched: new Uint8Array(length) }
  // "Second lobe": on the stitches that the first one left.
  if (below.touched.some((used) => used === WORKED) && below.touched.some((used) => used < SKIPPED))
    SHARED.add(state)
  reading.base = { kind: 'round', state }
  reading.number = number
}

/** A border goes on from the last round of the part that it is named after, or round what was joined. */
function beginBorder(
  reading: Reading,
  text: string,
  tree: Pick<RoundsTree, 'rounds'>,
  node: RoundNode,
): void {
  const named = namedEnd(reading, node.part)
  if (named) {
    reading.base = { kind: 'round', state: named.state }
    reading.history.clear()
    for (const [number, state] of named.history) reading.history.set(number, state)
  } else if (goesRoundJoined(text, tree.rounds[tree.rounds.indexOf(node) - 1], node)) {
    reading.base = EDGE
  }
}

/** "Ears. Join yarn in any st. Row 1: ch 1, sc in next 5 sts, turn": back and forth on a few stitches of what is done. */
function isRowOnRound({ unknown }: RoundState, { items }: RoundNode): boolean {
  const turns = items.some((item) => item.type === 'note' && item.effect === 'turn')
  return !unknown && turns && !items.some(({ type }) => type === 'join')
}

/** What such rows leave of the round is meant. */
function onSome(reading: Reading, below: RoundState): void {
  const state = { ...below }
  SHARED.add(state)
  reading.base = { kind: 'round', state }
}

/** "Go back to Row 4", "return to Rnd 7", "rejoin yarn in Row 4", "in next unworked st of Row 4": which one it is. */
const BACK_TO =
  /\b(?:(?:go|going|come|coming|move) back to|return(?:ing)? to|(?:re-?)?(?:join|attach)(?:ing)? (?:the |your |new )?(?:yarn )?(?:in|to|on)|(?:unworked|unused|remaining|free|left-?over|skipped|missed) (?:st|stitch|sc|hdc|dc|tr|htr|dtr)s? (?:of|on|in|along)) (?:the )?(?:row|rnd|round)\.? (\d+)/i

/** A stitch in a place of its own, and something behind it. */
const WORKS_BEFORE = /\b(?:sc|hdc|dc|tr|htr|dtr|st|sts)\b[^,;.:]*\b(?:in|into)\b[^,;.:]*[,;]/i

const ENDED = /\b(?:fasten(?:ed)? off|cut|break off)\b/i

/** A second piece stands on what the first one left of a row: "Second hump: go back to Row 7, skip next dc, …". */
function goBack(reading: Reading, text: string, rounds: readonly RoundNode[], node: RoundNode): void {
  const before = rounds[rounds.indexOf(node) - 1]
  // Behind the end of a row it tells of what comes then.
  const [opening = ''] = text.slice(node.start, node.end).split(ENDED)
  const found = BACK_TO.exec(text.slice(before?.end ?? 0, node.start) + opening)
  // "Sc in next 3 dc, long dc in next skipped dc of Rnd 1": the row does not begin there.
  if (found && WORKS_BEFORE.test(found.input.slice(0, found.index))) return
  const number = Number(found?.[1])
  const below = reading.history.get(number)
  if (!below || below.unknown || (reading.base.kind === 'round' && reading.base.state.index === below.index))
    return
  const some = below.touched.some((by) => by === WORKED) && below.touched.some((by) => by < WORKED)
  if (!some) return
  const state = { ...below }
  SHARED.add(state)
  GONE_BACK_TO.add(state)
  reading.base = { kind: 'round', state }
  const first = reading.worked[below.index + 1]
  if (first) reading.turned = first.turned
}

/** "… of the other lobe", "of the first lobe": stitches of a second piece like the one in hand. */
const OF_TWIN =
  /\bof (?:the )?(?:other|first|second|1st|2nd) (?:lobe|half|bump|hump|piece|circle|wing|ear|leg|tube)\b/i

/** That there are two of them. */
const TWO =
  /\b(?:make|work) (?:2|two)\b|\b(?:2|two) (?:lobes|halves|bumps|humps|pieces|circles|wings|ears|legs|tubes)\b|\b(?:lobe|half|piece|circle|ear|leg) (?:1|2|one|two)\b|\b(?:first|second) (?:lobe|half|bump|piece|circle|wing|ear|leg)\b/i

const PIECE = /\b(?:lobe|half|bump|hump|piece|circle|wing|ear|leg|tube)\b/gi

/** A round that joins two pieces alike, worked before one after the other, goes round both. */
export function joinTwins(reading: Reading, text: string, { start, end }: RoundNode): void {
  const { base } = reading
  if (base.kind !== 'round' || base.state.unknown || base.state.told) return
  const words = text.slice(start, end)
  // "Sl st in corresponding ch-5 sp of First Circle": a neighbor that is met.
  if (/\b(?:corresponding|matching|joining)\b/i.test(words)) return
  // A project keeps the rounds alone: that there are two may be told by the round that joins them.
  if (!OF_TWIN.test(words) || !(TWO.test(text.slice(0, start)) || (words.match(PIECE)?.length ?? 0) > 1))
    return
  const { state } = base
  const places = [...state.places, ...state.places]
  const twice = (used: Uint8Array) => Uint8Array.from([...used, ...used])
  const both = { ...state, index: -1, places, loops: twice(state.loops), touched: twice(state.touched) }
  reading.base = { kind: 'round', state: both }
}

/** A part of its own ("Leaf", "Second motif") begins with nothing but its own ring or chain; others go on. */
export function beginPart(
  reading: Reading,
  text: string,
  tree: Pick<RoundsTree, 'rounds'>,
  node: RoundNode,
): void {
  const first = node.numbers?.[0] ?? null
  const newPart = node.part !== reading.part
  if (newPart) reading.partOpen = true
  if (newPart && reading.part !== null && reading.base.kind === 'round') {
    const ended = { state: reading.base.state, history: new Map(reading.history) }
    reading.ends = new Map(reading.ends).set(reading.part, ended)
  }
  if (first === null && !isFoundationOnly(node) && !makesFoundation(node.items)) return
  const again = first !== null && first <= reading.number && reading.history.size > 0
  const anew = makesFoundation(node.items) || isFoundationOnly(node) || repeatsPart(node)
  if (reading.partOpen || again) {
    const begins = anew && (first === null || first === 1 || reading.number === 0)
    if (begins && (reading.history.size > 0 || reading.base.kind !== 'none')) {
      reading.base = { kind: 'none' }
      reading.earlier = new Map(reading.history)
      reading.history.clear()
      reading.number = 0
      reading.turned = false
      reading.carried = null
    }
    if (newPart && first === 1 && !anew && reading.base.kind === 'round') {
      const before = reading.base
      beginBorder(reading, text, tree, node)
      if (reading.base === before && isRowOnRound(before.state, node)) onSome(reading, before.state)
      reading.number = 0
    }
    reading.partOpen = false
  }
  // "Rnd 4 (joining)": in place of Rnd 4, for motifs that are joined.
  const instead = !newPart && first === reading.number && /\bjoin/i.test(node.label ?? '')
  const back = (newPart && first !== null && first <= reading.number) || instead
  if (back && first > 1) branchOff(reading, first - 1)
  else goBack(reading, text, tree.rounds, node)
  reading.part = node.part
}

/** "Work same as for first motif": a part told by another one. */
export const repeatsPart = (node: RoundNode): boolean =>
  node.items.some((item) => item.type === 'repeat-round' && item.part !== null)
