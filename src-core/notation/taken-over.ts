/**
 * Rounds behind a change are taken over as they were worked, where the round that changed leaves what it left before:
 * reading on goes no further than it has to. Whatever else could reach them from there has them worked anew.
 */
import type { Course, Note, StateBefore } from './continued'
import type { Moved } from './moved'
import type { Reading } from './reading'
import { leavesUnworked, SHARED } from './state'
import type { Base, RoundState } from './state'
import { BOUGHT_RING } from './taking'
import type { Item, RoundNode } from './tree'
import type { WorkedRound } from './worked'

/** What a course has behind its round that changed, kept before reading goes back to before that one. */
export interface Rest {
  readonly course: Course
  readonly moved: Moved
  /** Which round changed. */
  readonly index: number
  readonly undo: readonly StateBefore[]
  /** Rounds as they were behind the one that changed, and at the end of the text. */
  readonly then: ReadonlyMap<RoundState, StateBefore>
  readonly finally: ReadonlyMap<RoundState, StateBefore>
}

/** A second piece tells of both, wherever it stands. */
const PIECE = /\b(?:lobe|half|bump|hump|piece|circle|wing|ear|leg|tube)s?\b/i

const some = (items: readonly Item[], is: (item: Item) => boolean): boolean =>
  items.some((item) => is(item) || ('items' in item && some(item.items, is)))

const reachesOut = (item: Item): boolean => item.type === 'repeat-round'
const leavesOut = (item: Item): boolean => item.type === 'skip' && Boolean(item.unworked)

const copyOf = (state: RoundState): StateBefore => ({
  ...{ state, loops: state.loops.slice(), touched: state.touched.slice(), loopsBy: state.loopsBy },
})

/** Whether texts that differ in one round say the same of all. */
const saysAlike = (old: string, text: string): boolean =>
  !PIECE.test(text) &&
  !PIECE.test(old) &&
  BOUGHT_RING.test(old) === BOUGHT_RING.test(text) &&
  leavesUnworked(old) === leavesUnworked(text)

/** What may be taken over behind round `index` of the text, where that alone differs from the one of a course. */
export function restBehind(
  course: Course,
  moved: Moved | null,
  index: number,
  text: string,
  common: number,
  rounds: readonly RoundNode[],
  before: readonly number[] = [],
): Rest | null {
  const [own, was] = [rounds[index], course.nodes[index]]
  const note = course.notes[index]
  if (!moved || !own || !was || !note || rounds.length !== course.nodes.length) return null
  if (index === rounds.length - 1 || course.reading.openRound !== null) return null
  const isSame = (node: RoundNode, old: RoundNode): boolean =>
    node.part === null &&
    old.part === null &&
    node.label === old.label &&
    node.pieces === old.pieces &&
    node.numbers?.[0] === old.numbers?.[0] &&
    node.numbers?.[1] === old.numbers?.[1]
  if (!isSame(own, was) || own.start !== was.start || common < own.start) return null
  // The change is one of its words, or the blank behind them.
  const tail = moved.from + moved.by
  if (own.end > tail || text.slice(own.end, tail).trim() !== '') return null
  if (was.end > moved.from || course.text.slice(was.end, moved.from).trim() !== '') return null
  if ([own, was].some(({ items }) => some(items, (item) => reachesOut(item) || leavesOut(item)))) return null
  for (let i = index + 1; i < rounds.length; i++) {
    const [node, old] = [rounds[i]!, course.nodes[i]!]
    if (!isSame(node, old) || node.items !== moved.of(old.items) || node.broken !== old.broken) return null
    if (node.start !== old.start + moved.by || node.end !== old.end + moved.by) return null
    if (before[node.line - 1] !== course.before[old.line - 1] || some(node.items, reachesOut)) return null
  }
  if (!saysAlike(course.text, text)) return null
  const undo = course.reading.undo.slice(note.undo)
  const states = new Set([...note.history.values(), ...undo.map(({ state }) => state)])
  const first = new Map<RoundState, StateBefore>()
  for (const entry of undo) if (!first.has(entry.state)) first.set(entry.state, entry)
  const then = new Map([...states].map((state) => [state, first.get(state) ?? copyOf(state)]))
  return { course, moved, index, undo, then, finally: new Map([...states].map((s) => [s, copyOf(s)])) }
}

const isEmpty = (base: Base): boolean => base.kind !== 'round'
const alike = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

/** Whether a round left what it leaves now. */
function leavesAlike(now: RoundState, old: RoundState, then: StateBefore | undefined): boolean {
  if (!then || now.stated || old.stated || SHARED.has(now) || SHARED.has(old)) return false
  if (now.ahead.length > 0 || old.ahead.length > 0) return false
  const rest = ({ index, number, ordered, unknown, told, endsInSpace, joined, stems, places }: RoundState) =>
    [index, number, ordered, unknown, told, endsInSpace, joined, stems, places] as const
  return (
    (now === old || alike(rest(now), rest(old))) &&
    alike([...now.loops, now.loopsBy, ...now.touched], [...then.loops, then.loopsBy, ...then.touched])
  )
}

const isTurnedAlike = (one: WorkedRound | undefined, other: WorkedRound | undefined): boolean =>
  one !== undefined &&
  other !== undefined &&
  one.turned === other.turned &&
  one.joined === other.joined &&
  one.onto === other.onto &&
  alike(one.foundation, other.foundation)

/** Whether a reading stands behind its round as the course did behind the old one. */
function standsAlike(reading: Reading, { course, index, then }: Rest): boolean {
  const note = course.notes[index]!
  const worked = course.reading.worked
  const { history, base } = reading
  if (reading.carried || note.carried || reading.openRound !== null) return false
  if (reading.number !== note.number || reading.turned !== note.turned || reading.pieces !== note.pieces)
    return false
  if (reading.part !== note.part || reading.partOpen !== note.partOpen) return false
  if (reading.earlier.size > 0 || note.earlier.size > 0 || reading.ends.size > 0 || note.ends.size > 0)
    return false
  if (reading.worked.length !== note.worked || reading.accounts.length !== note.accounts) return false
  const from = index > 0 ? course.notes[index - 1]!.worked : 0
  for (let i = from; i < note.worked; i++) if (!isTurnedAlike(reading.worked[i], worked[i])) return false
  if (base.kind !== 'round' || note.base.kind !== 'round' || history.size !== note.history.size) return false
  if (history.get(reading.number) !== base.state || note.history.get(note.number) !== note.base.state)
    return false
  if (!isEmpty(reading.foundation) || !isEmpty(note.foundation)) return false
  if (reading.usual.size !== note.usual.size) return false
  for (const [chains, statement] of reading.usual) if (note.usual.get(chains) !== statement) return false
  for (const [number, state] of history) {
    const old = note.history.get(number)
    if (!old || !leavesAlike(state, old, then.get(old))) return false
  }
  return true
}

function settle(state: RoundState, { loops, touched, loopsBy }: StateBefore): void {
  state.loops.set(loops)
  state.touched.set(touched)
  state.loopsBy = loopsBy
}

/** A worked round in its new place in the text. */
const movedRound = (round: WorkedRound, moved: Moved): WorkedRound => ({
  ...round,
  elements: round.elements.map((element) => {
    const span = moved.of(element.span)
    return span === element.span ? element : { ...element, span }
  }),
})

/**
 * Takes over what stands behind the round that changed, with the notes behind each; false, and nothing done, where that
 * round leaves something else than before.
 */
export function takeOver(reading: Reading, rest: Rest, notes: Note[], head: number): boolean {
  if (!standsAlike(reading, rest)) return false
  const { course, moved, index } = rest
  const note = course.notes[index]!
  const old = course.reading
  const room = reading.room + old.room - note.room
  const left = reading.budget.left + old.budget.left - note.budget
  if (room <= 0 || left <= 0) return false
  // Later rounds know the old objects, which hold the same.
  const same = new Map<RoundState, RoundState>()
  for (const [number, state] of reading.history) same.set(state, note.history.get(number)!)
  for (const [state, end] of rest.finally) settle(state, end)
  const undone = reading.undo.length
  reading.undo.forEach((entry, i) => {
    reading.undo[i] = { ...entry, state: same.get(entry.state) ?? entry.state }
  })
  reading.undo.push(...rest.undo)
  const findings = reading.findings.length - head - note.findings
  const behind = [...old.findings.slice(course.head + note.findings)]
  reading.findings.push(
    ...behind.map((found) => {
      const { target } = found
      return target?.line === undefined
        ? found
        : { ...found, target: { ...target, line: target.line + moved.lines } }
    }),
  )
  reading.worked.push(...old.worked.slice(note.worked).map((round) => movedRound(round, moved)))
  reading.accounts.push(...old.accounts.slice(note.accounts).map((account) => moved.of(account)))
  for (const { items } of course.nodes.slice(index + 1)) {
    const gathered = old.gathered.get(items)
    if (gathered) reading.gathered.set(moved.of(items), moved.of(gathered))
  }
  const repeats = new Map(reading.repeats)
  const uneven = new Set(reading.uneven)
  const later = (item: Item): boolean => item.start >= moved.from
  const withLater = (more: Reading['repeats']): Reading['repeats'] => {
    const all = new Map(repeats)
    for (const [item, times] of more) if (later(item)) all.set(moved.of(item), times)
    return all
  }
  const unevenWith = (more: ReadonlySet<Item>): Set<Item> =>
    new Set([...uneven, ...[...more].filter(later).map((item) => moved.of(item))])
  const usualAt = (usual: Note['usual']) =>
    new Map([...usual].map(([chains, said]) => [chains, moved.of(said)]))
  const rooms = reading.room - note.room
  const steps = reading.budget.left - note.budget
  // What is noted behind the round itself names the objects that later rounds know.
  notes[notes.length - 1] = { ...notes.at(-1)!, base: note.base, history: note.history }
  for (const each of course.notes.slice(index + 1))
    notes.push({
      ...each,
      repeats: withLater(each.repeats),
      uneven: unevenWith(each.uneven),
      usual: usualAt(each.usual),
      findings: each.findings + findings,
      undo: each.undo - note.undo + undone,
      budget: each.budget + steps,
      room: each.room + rooms,
      carried: moved.of(each.carried),
      foundation: moved.of(each.foundation),
    })
  for (const [item, times] of withLater(old.repeats)) reading.repeats.set(item, times)
  for (const item of unevenWith(old.uneven)) reading.uneven.add(item)
  for (const [chains, said] of usualAt(old.usual)) reading.usual.set(chains, said)
  reading.history.clear()
  for (const [number, state] of old.history) reading.history.set(number, state)
  const { base, number, turned, part, partOpen, pieces, earlier, ends } = old
  Object.assign(reading, { base, number, turned, part, partOpen, pieces, earlier, ends, room })
  reading.carried = moved.of(old.carried)
  reading.budget.left = left
  return true
}
