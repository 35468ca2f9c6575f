/**
 * The written rounds of one loop of an edging, read by the reader of rounds: what each makes, uses and is worked of. Of
 * a long loop whose text repeats a short one is read, and one that is one repeat longer: what lies between them is the
 * repeat.
 */
import type { Finding } from '../../shared-types/finding'
import type { Terms } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { stitchesOf } from '../notation/worked'
import type { ReadRounds, RoundAccount } from '../notation/read'
import { readRounds } from '../notation/read'
import type { Item } from '../notation/tree'
import type { WorkedElement, WorkedRound } from '../notation/worked'
import type { StitchKey } from '../stitches/table'
import { EDGING, FROM_CORNER_TO_CORNER } from './constants'
import { expandMarks, marksNamed, usesIn } from './marks'
import type { Mark } from './marks'

/** What is worked, in order. */
export type BorderStitch = Pick<
  WorkedElement,
  'role' | 'stitch' | 'form' | 'legs' | 'count' | 'group' | 'standing'
> & {
  /** Places of the round before that it goes into; none for chains between stitches. */
  readonly into: readonly number[]
}

export interface LoopRound {
  /** The round in words for this loop, with plain counts. */
  readonly text: string
  /** Stitches that stand at its end, and how often its repeat is worked. */
  readonly made: number
  readonly repeats: number
  readonly picots: number
  readonly corners: number
  readonly counts: Readonly<Partial<Record<StitchKey, number>>>
  readonly stitches: readonly BorderStitch[]
  /** The stitch that each place belongs to which it leaves for the next round. */
  readonly places: readonly number[]
}

export interface ReadLoop {
  readonly rounds: readonly LoopRound[]
  readonly findings: readonly Finding[]
  /** Everything comes out even. */
  readonly fits: boolean
  /** And no repeat runs on into where the round began. */
  readonly endsEven: boolean
}

/** The words of rounds on one line each, without headings of their own. */
const HEADING = /^\s*(?:rnds?|rounds?|r)\.?\s*\d+\s*[:.]\s*/i
export const plainWork = (work: string): string =>
  work
    .replace(/[\n\r\u0085\u2028\u2029]+/g, ' ')
    .replace(HEADING, '')
    .trim()

/** Where a column of the plain words stands in the words as they were written, both from 1. */
export function columnIn(own: string, column: number): number {
  const places: number[] = []
  const joined = own.replace(/[\n\r\u0085\u2028\u2029]+|[^]/g, (part, at: number) => {
    places.push(at)
    return part.length > 1 || /[\n\r\u0085\u2028\u2029]/.test(part) ? ' ' : part
  })
  const headed = joined.length - joined.replace(HEADING, '').length
  const blank = joined.slice(headed).length - joined.slice(headed).trimStart().length
  return (places[headed + blank + column - 1] ?? 0) + 1
}

const heading = (number: number): string => `Rnd ${number}: `

interface Reading {
  readonly read: ReadRounds
  /** Lines before the first round. */
  readonly head: number
  readonly texts: readonly string[]
  readonly repeats: readonly number[]
  readonly missed: number | null
  readonly marks: readonly (readonly Mark[])[]
}

/** Where the marks of a round stand in the one that is worked into it. */
function carried(marks: readonly Mark[], below: readonly boolean[], round: WorkedRound): Mark[] {
  // Marks count stitches, the reader's places spaces too.
  const placeOf: number[] = []
  below.forEach((isStitch, place) => isStitch && placeOf.push(place))
  const before: number[] = []
  let stitches = 0
  for (const { kind } of round.places) {
    before.push(stitches)
    if (kind === 'stitch') stitches++
  }
  return marks.flatMap((mark): Mark[] => {
    const place = (placeOf[mark.at] ?? below.length) - (mark.chains > 0 ? 1 : 0)
    const into = (element: WorkedElement): boolean =>
      element.role !== 'join' &&
      element.into.some(({ index, kind }) => index === place && (kind === 'stitch' || kind === 'space'))
    const [first, last] = [round.elements.findIndex(into), round.elements.findLastIndex(into)]
    const left = round.places.flatMap(({ element }, i) => (element >= first && element <= last ? i : []))
    const middle = first < 0 ? undefined : left[Math.floor((left.length - 1) / 2)]
    if (middle === undefined) return []
    const { kind, chains } = round.places[middle]!
    return [{ kind: mark.kind, at: before[middle]!, chains: kind === 'space' ? chains : 0 }]
  })
}

/** Reads texts for a loop of so many stitches as they are. */
function readAs(
  works: readonly string[],
  stitches: number,
  marks: readonly Mark[],
  from: number,
  terms: Terms,
  special: string,
): Reading {
  const uses = usesIn(terms)
  const texts: string[] = []
  const repeats: number[] = []
  const carriedMarks: (readonly Mark[])[] = [marks]
  const options = { terms, after: { stitches } }
  const head = special === '' ? '' : `Special stitches:\n${special}\n\n`
  const headLines = head.split('\n').length - 1
  const before = [
    ...Array.from({ length: headLines }, () => 0),
    ...works.map((_, i) => heading(from + i).length),
  ]
  const joined = () => head + texts.map((text, i) => heading(from + i) + text).join('\n')
  const isMarked = works.some((work) => marksNamed(work).size > 0)
  let missed: number | null = null
  let below: readonly boolean[] = Array.from({ length: stitches }, () => true)
  let read: ReadRounds | null = null
  works.forEach((work, i) => {
    const own = carriedMarks[i] ?? []
    const count = below.filter(Boolean).length
    const expanded = marksNamed(work).size > 0 ? expandMarks(work, count, own, uses) : null
    // What cannot be counted is not read, nor what is worked into it.
    if (!expanded && marksNamed(work).size > 0) missed ??= i
    if (missed !== null) return
    texts.push(expanded?.text ?? work)
    repeats.push(expanded?.repeats ?? 0)
    if (!isMarked && i < works.length - 1) return
    read = readRounds(joined(), { ...options, before })
    const round = read.worked[i]
    if (!round) return
    carriedMarks.push(isMarked ? carried(own, below, round) : own)
    below = round.places.map(({ kind }) => kind === 'stitch')
  })
  const nothing = () => readRounds('', options)
  return { read: read ?? nothing(), head: headLines, texts, repeats, missed, marks: carriedMarks }
}

/** How often the outermost repeat of a round ran. */
function repeatsOf(items: readonly Item[], ran: ReadonlyMap<Item, number>): number {
  for (const item of items) {
    const times = ran.get(item)
    if (times !== undefined) return times
    if ('items' in item) {
      const within = repeatsOf(item.items, ran)
      if (within > 0) return within
    }
  }
  return 0
}

const roundsOf = ({ read, texts, repeats }: Reading): LoopRound[] =>
  read.worked.slice(0, texts.length).map((round, i) => {
    const account: RoundAccount = read.rounds[i]!
    const stitches = round.elements.map(
      ({ role, stitch, form, legs, count, group, standing, into }): BorderStitch => ({
        ...{ role, stitch, form, legs, count, group, standing },
        into: into.flatMap(({ kind, index }) => (kind === 'stitch' || kind === 'space' ? index : [])),
      }),
    )
    return {
      text: texts[i]!,
      made: account.made ?? round.stitches,
      repeats: repeats[i]! || repeatsOf(read.tree.rounds[i]?.items ?? [], read.tree.repeats),
      picots: account.picots,
      corners: account.corners,
      counts: countsOf(stitches),
      stitches,
      places: round.places.map(({ element }) => element),
    }
  })

function countsOf(stitches: readonly BorderStitch[]): Partial<Record<StitchKey, number>> {
  const counts: Partial<Record<StitchKey, number>> = {}
  for (const each of stitches)
    for (const [stitch, count] of stitchesOf(each)) counts[stitch] = (counts[stitch] ?? 0) + count
  return counts
}

const WRONG_COUNT = 'rounds/wrong-end-count'
const RUNS_ON = 'rounds/last-repeat-not-said'

const isError = ({ severity }: Finding): boolean => severity === 'error'

/** Reads the rounds of a loop of so many stitches, with its corners, tips and dips. */
export function readLoop(
  works: readonly string[],
  stitches: number,
  marks: readonly Mark[],
  from: number,
  terms: Terms,
  /** Stitches by which a loop may be longer, where that is known: of long loops one repeat is read. */
  multiple?: number,
  /** Stitches of the text's own, in words. */
  special = '',
): ReadLoop {
  // Nothing is read where nothing is written.
  if (works.length === 0) return { rounds: [], findings: [], fits: true, endsEven: true }
  const isMarked = works.some((work) => marksNamed(work).size > 0)
  if (!isMarked && multiple && stitches > EDGING.readWhole) {
    const steps = Math.floor((stitches - EDGING.readWhole / 2) / multiple)
    const long = longLoop(works, stitches - steps * multiple, multiple, steps, from, terms, special)
    if (long) return long
  }
  const reading = readAs(works, stitches, marks, from, terms, special)
  const { read, missed } = reading
  // Words that were left as they are say nothing more.
  const findings =
    missed === null
      ? read.findings.map((each) => inOwnWords(each, works, reading, from))
      : [missedFinding(missed, from)]
  const counted = read.rounds.slice(0, works.length)
  const fits =
    missed === null &&
    // A count that is told wrong makes no other stitches.
    !findings.some((each) => isError(each) && each.code !== WRONG_COUNT) &&
    counted.length === works.length &&
    counted.every(({ made }) => made !== null && made > 0)
  const endsEven = fits && !findings.some(({ code }) => code === RUNS_ON)
  return { rounds: roundsOf(reading), findings, fits, endsEven }
}

/** A finding at the round that it is about and at its place in what was written, where that is not another text. */
function inOwnWords(
  found: Finding,
  works: readonly string[],
  { head, texts }: Reading,
  from: number,
): Finding {
  const { line = 1, column, length, ...target } = found.target ?? {}
  const index = line - 1 - head
  const [work, text] = [works[index], texts[index]]
  if (work === undefined || text === undefined || column === undefined || length === undefined)
    return { ...found, target: { ...target, ...(work !== undefined && { round: from + index }) } }
  const words = text.slice(column - 1, column - 1 + length)
  // Corners, tips and dips are written out before they are read: the word is sought where it was written.
  const at = work === text ? column : work.indexOf(words) + 1
  const place = words !== '' && at > 0 ? { column: at, length } : {}
  return { ...found, target: { ...target, round: from + index, ...place } }
}

const missedFinding = (index: number, from: number): Finding =>
  finding(
    'edging/marks-missed',
    `round ${from + index}`,
    { round: from + index, example: FROM_CORNER_TO_CORNER },
    { round: from + index },
  )

/** A long loop from a short one and the same with one repeat more. */
function longLoop(
  works: readonly string[],
  short: number,
  multiple: number,
  steps: number,
  from: number,
  terms: Terms,
  special: string,
): ReadLoop | null {
  const [one, two] = [short, short + multiple].map((count) =>
    readLoop(works, count, [], from, terms, undefined, special),
  )
  if (!one!.fits || !two!.fits) return null
  // What is told of a count is told of the whole loop.
  if (two!.findings.some(({ code }) => code === WRONG_COUNT)) return null
  const rounds = two!.rounds.map((round, i) => extended(one!.rounds[i]!, round, steps - 1))
  if (rounds.some((round) => round === null)) return null
  return { rounds: rounds as LoopRound[], findings: two!.findings, fits: true, endsEven: two!.endsEven }
}

/** A round with `more` of what it has more than a shorter one; null where that does not come again in it. */
function extended(short: LoopRound, long: LoopRound, more: number): LoopRound | null {
  const length = long.stitches.length - short.stitches.length
  if (length < 1) return null
  const from = blockIn(long.stitches, length)
  if (from === null) return null
  const first = (at: number) => long.stitches[at]!.into[0]
  const lead = long.stitches.findIndex((each, i) => i >= from && each.into.length > 0)
  const shift = first(lead + length)! - first(lead)!
  const moved = (each: BorderStitch, times: number, groups: number, fixed = 0): BorderStitch => ({
    ...each,
    group: each.group + groups,
    into: each.into.map((place) => (place < fixed ? place : place + times * shift)),
  })
  // What goes into the beginning of the round goes there still.
  const behind = first(lead)! + shift
  // Groups of copies are told apart by numbers of their own.
  const span = 1 + Math.max(...long.stitches.map(({ group }) => group))
  const before = long.stitches.slice(0, from + length)
  const block = long.stitches.slice(from, from + length)
  const after = long.stitches.slice(from + length)
  const copies = Array.from({ length: more }, (_, k) =>
    block.map((each) => moved(each, k + 1, (k + 1) * span)),
  )
  const stitches = [
    ...before,
    ...copies.flat(),
    ...after.map((each) => moved(each, more, (more + 1) * span, behind)),
  ]
  // By the stitch that a place belongs to: a copy leaves the places of what it is copied from.
  const left = new Map<number, number>()
  for (const element of long.places) left.set(element, (left.get(element) ?? 0) + 1)
  const places: number[] = []
  stitches.forEach((_, i) => {
    const source =
      i < from + length
        ? i
        : i < from + length + more * length
          ? from + ((i - from) % length)
          : i - more * length
    for (let k = left.get(source) ?? 0; k > 0; k--) places.push(i)
  })
  const grown = (key: 'made' | 'repeats' | 'picots' | 'corners') =>
    long[key] + more * (long[key] - short[key])
  return {
    text: long.text,
    ...{ made: grown('made'), repeats: grown('repeats'), picots: grown('picots'), corners: grown('corners') },
    counts: countsOf(stitches),
    ...{ stitches, places },
  }
}

/** Where a block of so many stitches begins that comes again right after itself. */
function blockIn(stitches: readonly BorderStitch[], length: number): number | null {
  const alike = (a: BorderStitch, b: BorderStitch): boolean =>
    a.role === b.role &&
    a.stitch === b.stitch &&
    a.count === b.count &&
    a.legs === b.legs &&
    a.into.length === b.into.length
  for (let from = 0; from + 2 * length <= stitches.length; from++) {
    let i = 0
    while (i < length && alike(stitches[from + i]!, stitches[from + i + length]!)) i++
    if (i === length) return from
  }
  return null
}
