/** Reads what is marked as made and as joined: where there is a motif, on which day, and what is wrong with it. */
import type { Finding } from '../../shared-types/finding'
import type { Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { addressWords, tidyAddress } from '../layout/addresses'
import { isDay } from './days'
import type { Work } from './work'

/** The address under which the edging of a blanket is marked. */
export const EDGING = 'edging'

type Marked = Pick<Project, 'made' | 'joined'>

/** A work with its marks, by index of its pieces. */
export interface Marking {
  /** Indices of the made pieces, in the order in which they were made: day by day, else as they were marked. */
  readonly made: readonly number[]
  readonly isMade: (piece: number) => boolean
  /** It is joined to those of its neighbours that are joined too: what is left of joins, yarn and hours follows from it. */
  readonly isJoined: (piece: number) => boolean
  /** Nothing before it is missing, so that all its own joins are done: it counts as joined. */
  readonly isJoinedOn: (piece: number) => boolean
  readonly edging: boolean
  /** Day of each made piece, '' where none is known; and of the edging. */
  readonly days: ReadonlyMap<number, string>
  readonly findings: readonly Finding[]
}

/** Whether anything is marked. */
export const isMarked = ({ made, joined }: Marked): boolean =>
  Object.keys(made ?? {}).length + Object.keys(joined ?? {}).length > 0

export function readMarks({ made = {}, joined }: Marked, work: Work): Marking {
  const index = new Map(work.pieces.map(({ id }, i) => [id, i]))
  const findings: Finding[] = []
  const unknown: string[] = []
  const days = new Map<number, string>()
  let edging = false
  for (const [key, day] of Object.entries(made)) {
    if (day !== '' && !isDay(day)) findings.push(finding('progress/day', `made["${key}"]`, { received: day }))
    const address = tidyAddress(key)
    const piece = index.get(address)
    if (piece !== undefined) days.set(piece, isDay(day) ? day : '')
    else if (address === EDGING && work.hasEdging) edging = true
    else unknown.push(key)
  }
  const early: string[] = []
  const marked = new Set<number>()
  for (const [key, day] of Object.entries(joined ?? {})) {
    if (day !== '' && !isDay(day))
      findings.push(finding('progress/day', `joined["${key}"]`, { received: day }))
    const piece = index.get(tidyAddress(key))
    if (piece === undefined) unknown.push(key)
    else if (days.has(piece)) marked.add(piece)
    else early.push(key)
  }
  if (unknown.length > 0) {
    // What is marked as made and as joined is one place.
    const places = [...new Set(unknown)]
    findings.push(
      finding('progress/unknown-place', 'made', { count: places.length, places: addressWords(places, []) }),
    )
  }
  if (early.length > 0) {
    const values = { count: early.length, places: addressWords(early, index.keys()) }
    findings.push(finding('progress/joined-not-made', 'joined', values, { cells: early.map(tidyAddress) }))
  }
  const isMade = (piece: number): boolean => days.has(piece)
  const isJoined = joined || !work.joinsAsMade ? (piece: number) => marked.has(piece) : isMade
  // Joined as it is made, one waits for those before it.
  const isJoinedOn = (piece: number): boolean =>
    isJoined(piece) &&
    (!work.joinsAsMade ||
      (work.pieces[piece]!.links ?? []).every(({ into }) =>
        into.every((other) => other > piece || isMade(other)),
      ))
  // Of one day in the order in which they were marked: what was made when a yarn was weighed stays the same motifs.
  const inOrder = (a: number, b: number): number => byText(days.get(a) ?? '', days.get(b) ?? '')
  return { made: [...days.keys()].sort(inOrder), isMade, isJoined, isJoinedOn, edging, days, findings }
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
