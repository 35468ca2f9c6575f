/** The lines of a page that are not read as rounds, each under its heading. */
import { isBesideMotif } from '../notation/borders'
import { findHeadings } from '../notation/headings'
import { readRounds } from '../notation/read'
import { Reader } from '../notation/reader'
import { SECTIONS } from '../notation/sections'
import type { SectionKind } from '../notation/sections'
import { endOfWork } from '../notation/talk'
import type { RoundsTree } from '../notation/tree'
import type { Terms } from '../../shared-types/project'
import { shadeNamed } from './shade-names'
import { isLettered } from './yarns'

/** A stretch of a line: its words and the offset of the first of them in the page. */
export interface Line {
  readonly words: string
  readonly start: number
}

/** What stands under one heading, or under none ('free'); `part`: the name of a piece of the pattern. */
export interface Segment {
  readonly kind: SectionKind | 'free' | 'part'
  /** The heading as written, without its sign; '' where there is none. */
  readonly label: string
  readonly lines: readonly Line[]
}

const NAMES = [...SECTIONS.keys()]
  .sort((one, other) => other.length - one.length)
  .join('|')
  .replace(/ /g, '\\s+')
const SIGN = '\\s*(?:\\([^)]*\\)\\s*)?(?:[:=]|\\.?\\s*[—–]|\\.-|\\s-\\s)\\s*'
/** "Gauge: …", "* Materials:" at the start of a line; a heading that has the line to itself needs no sign. */
const AT_START = new RegExp(`^[\\s*•·#_~>=-]*(${NAMES})(?:${SIGN}|[\\s*_~#:=-]*$)`, 'iu')
/** "MATERIALS  Small amounts of DK": a wide gap stands for the sign. */
const WIDE = new RegExp(`^[\\s*•·#_~>=-]*(${NAMES})(?:[ \\u00a0]{2,}|\\t)\\s*(?=\\S)`, 'iu')
/** "TENSION 20 sts to 10 cm": in capitals, before words that are not. */
const IN_CAPITALS = new RegExp(
  `^[\\s*•·#_~>=-]*(${NAMES.toUpperCase().replaceAll('\\S+', '\\s+')})\\s+(?=.*[\\p{Ll}\\d])`,
  'u',
)
/** "Size, 5 inches.": as leaflets of a century ago have it. */
const WITH_COMMA = /^\s*(size),\s+(?=(?:about\s+|approx\S*\s+)?\d)/i
const headingOf = (words: string): RegExpExecArray | null => {
  const wide = WIDE.exec(words)
  return (
    AT_START.exec(words) ??
    WITH_COMMA.exec(words) ??
    (wide && /^\p{Lu}/u.test(wide[1]!) ? wide : IN_CAPITALS.exec(words))
  )
}
/** "… scissors. Gauge: …" within a line: with a capital and a colon. */
const WITHIN = new RegExp(`(?<=[.;)\\]"″”]\\s+)(${NAMES})\\s*:\\s*`, 'giu')
/** "Designed by Ada Birch", "by Ada Birch" without a sign. */
const BY =
  /^\s*(?:(?:pattern |motif |crochet )?(?:designed|design|pattern|created|written) by|by)\s+(?=\p{Lu})/iu
/** "A doily-start hexagon by Ada Birch", in a line of its own: what it is, and who made it. */
const WORK_BY = /^\s*(?=\p{L})([^.,:;=\d]{3,60}?\s)[Bb]y\s+(?=\p{Lu}\p{L})/u
const OTHER_WORK =
  /\b(?:photo|test|edit|translat|illustrat|chart|publish|inspir|dye|yarn|hook|draw|ch\b|sc\b|dc\b|tr\b|row|ro?u?nd)/i
const A_NAME = /^\p{Lu}[\p{L}.'’-]+(?:\s+(?:&|and|de|van|von|\p{Lu}[\p{L}.'’-]*)){1,4}\s*$/u
/** Where the words for what it is end, and those for who made it begin; null where a line says something else. */
function workBy(words: string): { what: number; name: number } | null {
  const found = WORK_BY.exec(words)
  if (!found || OTHER_WORK.test(found[1]!) || !A_NAME.test(words.slice(found[0].length))) return null
  return { what: found[1]!.length, name: found[0].length }
}

const TERMS_WORDS =
  'this the all pattern is are was uses use using in written worked given instruction instructions please note with crochet stitch stitches standard english only used throughout here'
    .split(' ')
    .join('|')
/** "UK terms", "(Written in US terminology)", "This pattern uses UK terms.": says nothing else, and is read with the rounds. */
const TERMS_ALONE = new RegExp(
  `^\\P{L}*(?:(?:${TERMS_WORDS})\\P{L}+)*(?:US|U\\.S\\.|USA|American|UK|U\\.K\\.|British)\\P{L}+(?:(?:english|crochet|stitch)\\P{L}+)?(?:terms?|terminology|abbreviations|notation)(?:\\P{L}+(?:${TERMS_WORDS}))*\\P{L}*$`,
  'iu',
)

const COPYRIGHT = /^\s*(?:©|\(c\)|copyright)/i

/** Sections of one line or two: after a blank line they are over. */
const SHORT: ReadonlySet<string> = new Set(['title', 'designer', 'skill', 'hook', 'gauge', 'size', 'opening'])

/** Sections that are lists: their first line is one of its entries. */
const LISTS: ReadonlySet<string> = new Set(['materials', 'yarn', 'colours', 'hook', 'gauge', 'size', 'skill'])

const kindOf = (label: string): SectionKind => SECTIONS.get(label.toLowerCase().replace(/\s+/g, ' '))!

/** Stretches of the text that are read with the rounds. */
function readStretches(tree: RoundsTree): (readonly [number, number])[] {
  const { text } = tree
  return [
    ...tree.rounds
      .filter((round) => !isBesideMotif(tree, round))
      .map((round): readonly [number, number] => {
        const { start, label, items } = round
        if (label !== 'foundation') return [start, endOfWork(round, text)]
        // Lines before a foundation are not part of it.
        const works = items.filter(({ type }) => type !== 'note')
        const first = works[0]?.start ?? start
        const last = works.at(-1)?.end ?? first
        const opens = text.lastIndexOf('\n', first - 1) + 1
        const closes = text.indexOf('\n', last)
        return [Math.max(opens, start), closes < 0 ? text.length : closes]
      }),
    ...tree.definitions.flatMap(({ start, end, description }): (readonly [number, number])[] => {
      const to = Math.max(end, description.end)
      // "B = Sunflower yellow" is a yarn.
      const words = text.slice(start, to)
      return isLettered(words) && shadeNamed(words) !== null ? [] : [[start, to]]
    }),
  ].sort(([one], [other]) => one - other)
}

/** What of a line no stretch covers: its longest part with a letter in it. */
function uncovered(line: Line, stretches: readonly (readonly [number, number])[]): Line | null {
  let { start } = line
  const end = line.start + line.words.length
  const parts: Line[] = []
  const { words } = line
  const add = (from: number, to: number) => {
    if (to > from) parts.push({ words: words.slice(from - line.start, to - line.start), start: from })
  }
  for (const [from, to] of stretches) {
    if (to <= start || from >= end) continue
    add(start, Math.min(from, end))
    start = Math.max(start, to)
  }
  add(Math.min(start, end), end)
  return (
    parts
      .filter(({ words: part }) => /\p{L}/u.test(part))
      .sort((a, b) => b.words.length - a.words.length)[0] ?? null
  )
}

/** Names of parts as headings, by the line on which they stand. */
function partsByLine(tree: RoundsTree): ReadonlySet<number> {
  const definitions = new Map(tree.definitions.flatMap((entry) => entry.keys.map((key) => [key, entry])))
  const reader = new Reader(tree.text, tree.tokens, tree.terms, definitions)
  return new Set(findHeadings(reader).flatMap(({ kind, span }) => (kind === 'part' ? [span.line] : [])))
}

/** Takes the headings out of a line: its words by section, the first one perhaps of the section that is open. */
function cut(line: Line): { kind: SectionKind | null; label: string; line: Line }[] {
  const found: { kind: SectionKind | null; label: string; from: number; to: number }[] = []
  const first = headingOf(line.words)
  if (first) found.push({ kind: kindOf(first[1]!), label: first[1]!, from: 0, to: first[0].length })
  else {
    const by = BY.exec(line.words)
    const work = by ? null : workBy(line.words)
    if (by) found.push({ kind: 'designer', label: 'designer', from: 0, to: by[0].length })
    else if (work) {
      found.push({ kind: null, label: '', from: 0, to: 0 })
      found.push({ kind: 'designer', label: 'designer', from: work.what, to: work.name })
    } else if (COPYRIGHT.test(line.words)) found.push({ kind: 'designer', label: '©', from: 0, to: 0 })
    else found.push({ kind: null, label: '', from: 0, to: 0 })
  }
  for (const match of line.words.matchAll(WITHIN)) {
    const label = match[1]!
    if (match.index < found.at(-1)!.to || !/^\p{Lu}/u.test(label)) continue
    found.push({ kind: kindOf(label), label, from: match.index, to: match.index + match[0].length })
  }
  return found.map(({ kind, label, to }, i) => {
    const until = found[i + 1]?.from ?? line.words.length
    return { kind, label, line: { words: line.words.slice(to, until), start: line.start + to } }
  })
}

/** The page without its rounds, in order. */
export function segmentsOf(text: string, terms: Terms): { segments: Segment[]; tree: RoundsTree } {
  const { tree } = readRounds(text, { terms })
  const stretches = readStretches(tree)
  const parts = partsByLine(tree)
  const begun = tree.rounds.find((round) => round.label !== 'foundation')?.start ?? Infinity
  const segments: { kind: Segment['kind']; label: string; lines: Line[] }[] = []
  let open: Segment['kind'] = 'free'
  let label = ''
  const put = (line: Line) => {
    const last = segments.at(-1)
    if (last && last.kind === open && last.label === label) last.lines.push(line)
    else segments.push({ kind: open, label, lines: [line] })
  }
  let start = 0
  text.split('\n').forEach((words, index) => {
    const line = { words, start }
    start += words.length + 1
    if (words.trim() === '') {
      if (SHORT.has(open) && segments.at(-1)?.kind === open) [open, label] = ['free', '']
      return
    }
    const rest = uncovered(line, stretches)
    // A round ends every section but those that go on beside it.
    if (!rest) {
      if (open !== 'explained') [open, label] = ['free', '']
      return
    }
    for (const { kind, label: heading, line: own } of cut(rest)) {
      // What stands right below "MATERIALS" is no name of a part.
      const begins = LISTS.has(open) && segments.at(-1)?.kind !== open
      if (kind) [open, label] = [kind, heading]
      else if (parts.has(index + 1) && !begins) {
        // What stands below a border, or a piece of which no round is told, is said of it.
        const isNamed = own.start > begun
        segments.push({ kind: 'part', label: '', lines: [own] })
        ;[open, label] = isNamed ? ['notes', own.words.trim()] : ['free', '']
        continue
      }
      // Whose terms they are is read with the rounds, and is no instruction.
      if (/\p{L}|\d/u.test(own.words) && !TERMS_ALONE.test(own.words)) put(own)
    }
  })
  return { segments, tree }
}
