/**
 * Corners, tips and dips in the words of a round: "sc in each st to next corner, 3 sc in corner". For one loop of an
 * edging they become plain counts, which the reader of rounds accounts for as it does for any other text.
 */
import type { Terms } from '../../shared-types/project'
import { plural } from '../figures/words'
import { readRounds } from '../notation/read'
import { fromCornerToCorner } from './in-passing'
import { inUsualWords } from './usual-words'

export type MarkKind = 'corner' | 'tip' | 'dip'

/** A corner, tip or dip of a loop: so many stitches from where its round begins. */
export interface Mark {
  readonly kind: MarkKind
  readonly at: number
  /** Chains of the space that it is, where it is one before that stitch; 0: it is the stitch. */
  readonly chains: number
}

const NAMES: Readonly<Record<string, MarkKind>> = {
  corner: 'corner',
  tip: 'tip',
  point: 'tip',
  dip: 'dip',
  valley: 'dip',
}
const NAME = '(corner|tip|point|dip|valley)'
const NAMED = new RegExp(`\\b${NAME}s?\\b`, 'gi')
const UP_TO = new RegExp(
  `^(.*?)(?:\\s+in(?:to)?)?(?:\\s+(?:each|every)(?:\\s+(?:st|stitch|sc|dc|hdc|htr|tr))?)?(?:\\s+evenly)?\\s+to\\s+(?:(?:the\\s+)?last\\s+(\\d+)\\s+sts?\\s+before\\s+)?(?:the\\s+)?(?:next\\s+)?${NAME}(?:\\s+(?:st|sp|stitch|space))?$`,
  'i',
)
const AT = new RegExp(
  `\\b(in|into|over|at)\\s+(?:the\\s+|each\\s+)?(?:next\\s+)?${NAME}(?:\\s+(?:st|sp|stitch|space))?$`,
  'i',
)
const REPEAT = /^([^*]*)\*\s*(.*?)[;,.]?\s*\brep(?:eat)?\s+from\s+\*\s*([^,.;]*)(.*)$/i

/** Which of corners, tips and dips a text names. */
export const marksNamed = (text: string): ReadonlySet<MarkKind> =>
  new Set([...text.matchAll(NAMED)].map(([, name]) => NAMES[name!.toLowerCase()]!))

/** What stands between commas, outside of brackets. */
function clausesOf(text: string): string[] {
  const clauses: string[] = []
  let [depth, from] = [0, 0]
  for (let i = 0; i <= text.length; i++) {
    const at = text[i]
    if (at === '(' || at === '[') depth++
    if (at === ')' || at === ']') depth--
    if (at !== undefined && ((at !== ',' && at !== ';') || depth > 0)) continue
    const clause = text.slice(from, i).trim()
    if (clause !== '') clauses.push(clause)
    from = i + 1
  }
  return clauses
}

/** What a part of a round uses of the round before, by the reader of rounds. */
type Uses = (clause: string) => number

/** Stitches before a part, far more than any uses. */
const PLENTY = 60

/** Clauses that are remembered in either terms (ours: far more than an edging has). */
const REMEMBERED = 200
const remembered: Readonly<Record<Terms, Map<string, number>>> = { US: new Map(), UK: new Map() }

/** Tells what clauses use, each once. */
export function usesIn(terms: Terms): Uses {
  const known = remembered[terms]
  return (clause) => {
    if (known.size > REMEMBERED) known.clear()
    let uses = known.get(clause)
    if (uses === undefined) {
      const { rounds } = readRounds(`Rnd 1: ${clause}`, { terms, after: { stitches: PLENTY } })
      uses = rounds[0]?.consumed?.stitches ?? 0
      known.set(clause, uses)
    }
    return uses
  }
}

/** Writes the clauses of a round out, from stitch to stitch; null where they do not meet the marks. */
class Writer {
  position = 0
  #next = 0
  /** Marks of other kinds that were worked on the way to one: no part of a repeat. */
  passed = 0

  constructor(
    readonly marks: readonly Mark[],
    readonly stitches: number,
    readonly uses: Uses,
    /** What is worked where nothing is said. */
    readonly filling: string,
    /** What is worked at marks that are passed on the way to another. */
    readonly own: ReadonlyMap<MarkKind, string>,
  ) {}

  #has(name: string): boolean {
    return this.marks.some(({ kind }) => kind === NAMES[name.toLowerCase()])
  }

  get isDone(): boolean {
    return this.#next >= this.marks.length
  }

  #find(kind: MarkKind): Mark | null {
    const mark = this.marks.find((each, i) => i >= this.#next && each.kind === kind)
    if (mark) return mark
    // After the last one comes the first one again, where the round ends.
    const first = this.marks.find((mark) => mark.kind === kind)
    return first ? { ...first, at: first.at + this.stitches } : null
  }

  fill(count: number, stitch: string): string[] {
    this.position += count
    return count === 0
      ? []
      : [`${stitch} in ${plural(count, 'next', `each of next ${count}`)} ${plural(count, 'st', 'sts')}`]
  }

  /** What a side that begins with a group in brackets has left after the last corner: whole groups of it. */
  group(count: number, clauses: readonly string[]): string[] | null {
    const [, work = ''] = UP_TO.exec(clauses[0] ?? '') ?? []
    if (count === 0 || !isGroup(work)) return []
    const each = this.uses(work)
    return each < 1 || count % each !== 0 ? null : [often(work, count / each)]
  }

  write(clauses: readonly string[]): string[] | null {
    const out: string[] = []
    for (const [i, clause] of clauses.entries()) {
      const written = this.#upTo(clause, clauses[(i + 1) % clauses.length]) ?? this.#at(clause)
      if (written === 'missed') return null
      out.push(...(written ?? [clause]))
      if (!written) this.position += this.uses(clause)
      if (this.position > this.stitches) return null
    }
    return out
  }

  /** How far a clause at a mark reaches before it. */
  #before(clause: string | undefined): number {
    const found = clause && AT.exec(clause)
    return found && found[1]!.toLowerCase() === 'over' ? Math.floor((this.uses(plainly(clause)) - 1) / 2) : 0
  }

  #upTo(clause: string, after: string | undefined): string[] | 'missed' | null {
    const found = UP_TO.exec(clause)
    if (!found) return null
    const [, work = '', last = '0', name = ''] = found
    if (!this.#has(name)) return []
    const mark = this.#find(NAMES[name.toLowerCase()]!)
    if (!mark) return 'missed'
    const passed = this.#pass(mark, work)
    if (!passed) return 'missed'
    const wanted = mark.at - this.#before(after) - Number(last) - this.position
    const count = Math.min(wanted, this.stitches - this.position)
    if (count < 0) return 'missed'
    if (!isGroup(work)) return [...passed, ...this.fill(count, work)]
    const each = this.uses(work)
    if (each < 1 || count % each !== 0) return 'missed'
    this.position += count
    const times = count / each
    return times === 0 ? passed : [...passed, often(work, times)]
  }

  /** Marks of other kinds on the way to one: each is worked as the words say for its kind. */
  #pass(to: Mark, work: string): string[] | null {
    const out: string[] = []
    for (let mark = this.marks[this.#next]; mark && mark.at < to.at; mark = this.marks[this.#next]) {
      const clause = this.own.get(mark.kind)
      if (clause === undefined || isGroup(work)) this.#next++
      else {
        const written = this.#at(clause, work)
        if (!written || written === 'missed') return null
        out.push(...written)
        this.passed++
      }
    }
    return out
  }

  #at(clause: string, filling = this.filling): string[] | 'missed' | null {
    const found = AT.exec(clause)
    if (!found) return null
    if (!this.#has(found[2]!)) return []
    const mark = this.#find(NAMES[found[2]!.toLowerCase()]!)
    if (!mark) return 'missed'
    while (this.marks[this.#next] !== mark && this.#next < this.marks.length) this.#next++
    const count = mark.at - this.#before(clause) - this.position
    if (count < 0 || mark.at >= this.stitches) return 'missed'
    this.#next++
    const before = this.fill(count, filling)
    if (mark.chains > 0) return [...before, plainly(clause, `ch-${mark.chains} sp`)]
    this.position += this.uses(plainly(clause))
    return [...before, plainly(clause)]
  }
}

const often = (work: string, times: number): string =>
  times === 1 ? work : `${work} ${String(times)} ${plural(times, 'time', 'times')}`

const isGroup = (work: string): boolean => /^[([]/.test(work)

/** "3 sc in corner" → "3 sc in next st"; "sc3tog over dip" → "sc3tog". */
const plainly = (clause: string, place = 'st'): string =>
  clause.replace(AT, (_, how: string) => (how.toLowerCase() === 'over' ? '' : `in next ${place}`)).trim()

/** "Sc in each st" → "sc in each st" within a sentence; "FPdc" and "BLO" stay. */
const asPart = (words: string): string =>
  words.replace(/^\p{Lu}(?=\p{Ll})/u, (letter) => letter.toLowerCase())

/** "*sc in each st" → "*Sc in each st" at the beginning of one. */
const asSentence = (words: string): string =>
  words.replace(/^([*[(]*)(\p{Ll})/u, (_, opens: string, letter: string) => opens + letter.toUpperCase())

/** Parts that come again, once with how often: all as "*…; rep from *", else those in a row in brackets. */
function gathered(parts: readonly string[]): string {
  for (let length = 1; length <= parts.length / 2; length++) {
    if (parts.length % length !== 0 || parts.some((part, i) => part !== parts[i % length])) continue
    const more = parts.length / length - 1
    const once = parts.slice(0, length).join(', ')
    return `*${once}; rep from * ${more === 1 ? 'once more' : `${more} more ${plural(more, 'time', 'times')}`}`
  }
  const words: string[] = []
  for (let at = 0; at < parts.length;) {
    const { length, times } = longestRun(parts, at)
    const block = parts.slice(at, at + length).join(', ')
    words.push(times === 1 ? block : often(`[${block}]`, times))
    at += length * times
  }
  return words.join(', ')
}

/** Parts that a block in brackets holds at most: nobody keeps more of them in mind (ours). */
const LONGEST_BLOCK = 8

/** The parts from one on that come again and again behind themselves, as many as there are; of as many the shortest block. */
function longestRun(parts: readonly string[], at: number): { length: number; times: number } {
  let best = { length: 1, times: 1 }
  for (let length = 1; length <= LONGEST_BLOCK && at + 2 * length <= parts.length; length++) {
    let end = at + length
    while (end < parts.length && parts[end] === parts[end - length]) end++
    const times = Math.floor((end - at) / length)
    if (times > 1 && length * times > best.length * best.times) best = { length, times }
  }
  return best
}

export interface Expanded {
  readonly text: string
  /** How often its repeat is worked. */
  readonly repeats: number
}

/** A text for one loop, with plain counts; null where its words do not meet the corners, tips and dips there are. */
export function expandMarks(
  said: string,
  stitches: number,
  all: readonly Mark[],
  uses: Uses,
): Expanded | null {
  const text = fromCornerToCorner(inUsualWords(said), clausesOf)
  const named = marksNamed(text)
  const marks = all.filter(({ kind }) => named.has(kind))
  const [, prefix = '', body = text, , suffix = ''] = REPEAT.exec(text) ?? []
  const isRepeated = body !== text
  const clauses = clausesOf(body.replace(/[.\s]+$/, ''))
  const ending = clausesOf(suffix.replace(/[.\s]+$/, ''))
  const filling = clauses.flatMap((clause) => UP_TO.exec(clause)?.[1] ?? []).find((it) => !isGroup(it))
  const own = new Map<MarkKind, string>()
  for (const clause of clauses) {
    const name = UP_TO.test(clause) ? undefined : AT.exec(clause)?.[2]
    if (name !== undefined) own.set(NAMES[name.toLowerCase()]!, clause)
  }
  const writer = new Writer(marks, stitches, uses, filling ?? 'sc', own)
  // Where there is none, as round a hole, it is worked straight on.
  if (marks.length === 0) {
    if (!filling) return null
    return {
      text: `${[...clausesOf(prefix), `${filling} in each st around`, ...ending].join(', ')}.`,
      repeats: 1,
    }
  }
  const before = writer.write(clausesOf(prefix))
  if (!before) return null
  const parts: string[] = []
  while (!writer.isDone) {
    const part = writer.write(clauses)
    if (!part || part.length === 0) return null
    parts.push(asPart(part.join(', ')))
    if (!isRepeated) break
  }
  if (!writer.isDone) return null
  // What is left after the last corner belongs to the side that the round began on.
  const left = stitches - writer.position - ending.reduce((sum, clause) => sum + uses(clause), 0)
  if (left < 0) return null
  const rest = filling ? writer.fill(left, filling).map(asPart) : writer.group(left, clauses)
  if (!rest) return null
  const words = [...before, gathered(parts), ...rest, ...ending].join(', ')
  // Where marks do not come in turn, no number of repeats holds what is worked at all of them.
  return { text: `${asSentence(words)}.`, repeats: writer.passed > 0 ? 1 : parts.length }
}
