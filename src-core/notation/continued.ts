/**
 * Reading on: of a text that was read before and is changed now, what stands before the change is not read and worked
 * again. After each round of a text the state is noted; the next reading goes on from the last note that still holds.
 */
import type { Bodies } from './grammar'
import type { Reading } from './reading'
import type { Base, RoundState } from './state'
import type { Token } from './tokens'
import type { RoundNode, StatementItem } from './tree'

/** A round as it was before a later one was worked into it. */
export interface StateBefore {
  readonly state: RoundState
  readonly loops: Uint8Array
  readonly touched: Uint8Array
  readonly loopsBy: number
}

/** What reading had come to behind one round of the text. */
export interface Note {
  readonly base: Base
  readonly history: ReadonlyMap<number, RoundState>
  readonly repeats: Reading['repeats']
  readonly uneven: Reading['uneven']
  readonly usual: ReadonlyMap<number, StatementItem>
  readonly worked: number
  readonly accounts: number
  readonly findings: number
  readonly undo: number
  readonly budget: number
  readonly room: number
  readonly number: number
  readonly turned: boolean
  readonly carried: Reading['carried']
  readonly part: string | null
  readonly partOpen: boolean
  readonly pieces: number
  readonly earlier: Reading['earlier']
  readonly ends: Reading['ends']
  readonly foundation: Base
}

export interface Course {
  readonly text: string
  /** Everything besides the text that decides how it is read. */
  readonly key: string
  readonly before: readonly number[]
  readonly tokens: readonly Token[]
  readonly nodes: readonly RoundNode[]
  readonly bodies: Bodies
  readonly reading: Reading
  readonly notes: Note[]
  /** Findings that stand before those of the rounds. */
  readonly head: number
}

/** Texts that are remembered: the motifs that are open side by side. */
const MOST_COURSES = 4
const courses: Course[] = []

/** Characters that two texts have in common from the beginning. */
function commonLength(a: string, b: string): number {
  const most = Math.min(a.length, b.length)
  let at = 0
  while (at < most && a.charCodeAt(at) === b.charCodeAt(at)) at++
  return at
}

/** The course that has most in common with a text, and how much; null where none has anything. */
export function courseFor(text: string): { readonly course: Course; readonly common: number } | null {
  let best: { course: Course; common: number } | null = null
  for (const course of courses) {
    const common = commonLength(course.text, text)
    if (common > (best?.common ?? 0)) best = { course, common }
  }
  return best
}

/** Keeps a course for the next reading, in the place of the one that it goes on from. */
export function keepCourse(course: Course, instead: Course | null): void {
  const at = instead ? courses.indexOf(instead) : -1
  if (at >= 0) courses.splice(at, 1)
  courses.unshift(course)
  courses.length = Math.min(courses.length, MOST_COURSES)
}

/** Notes the state behind a round. */
export function noted(reading: Reading, head: number): Note {
  const { base, number, turned, carried, part, partOpen, pieces, earlier, ends, foundation, room } = reading
  return {
    ...{ base, number, turned, carried, part, partOpen, pieces, earlier, ends, foundation, room },
    history: new Map(reading.history),
    repeats: new Map(reading.repeats),
    uneven: new Set(reading.uneven),
    usual: new Map(reading.usual),
    worked: reading.worked.length,
    accounts: reading.accounts.length,
    findings: reading.findings.length - head,
    undo: reading.undo.length,
    budget: reading.budget.left,
  }
}

/** A reading that stands where a course stood behind its first rounds; the course itself is used up by it. */
export function readingFrom(course: Course, rounds: number, fresh: Reading): Reading {
  const note = course.notes[rounds - 1]
  if (!note) return fresh
  const { reading, head } = course
  for (const { state, loops, touched, loopsBy } of reading.undo.splice(note.undo).reverse()) {
    state.loops.set(loops)
    state.touched.set(touched)
    state.loopsBy = loopsBy
  }
  const { base, number, turned, carried, part, partOpen, pieces, earlier, ends, foundation, room } = note
  return {
    ...fresh,
    ...{ base, number, turned, carried, part, partOpen, pieces, earlier, ends, foundation, room },
    history: new Map(note.history),
    repeats: new Map(note.repeats),
    uneven: new Set(note.uneven),
    usual: new Map(note.usual),
    gathered: new Map(reading.gathered),
    gaps: reading.gaps,
    worked: reading.worked.slice(0, note.worked),
    accounts: reading.accounts.slice(0, note.accounts),
    findings: reading.findings.slice(head, head + note.findings),
    undo: reading.undo,
    budget: { left: note.budget },
  }
}

/** Forgets every course, so that the next reading is one of the whole text: for measuring, and to compare with. */
export function forgetCourses(): void {
  courses.length = 0
}
