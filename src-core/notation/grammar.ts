/**
 * The grammar of a whole text: rounds taken apart at their headings, the stitches that the text explains, its
 * colours. A recursive-descent parser by hand (docs/decisions/written-rounds-parser.md says why).
 */
import type { Terms } from '../../shared-types/project'
import { canonicalStitch } from '../stitches/terms'
import { said } from '../findings/finding'
import { explainedWithin, passExplanation } from './explained'
import type { Explained } from './explained'
import { findHeadings } from './headings'
import type { Heading } from './headings'
import { readRepeatBrackets, readTimesStar } from './clauses'
import { readCountSentence, readCounts } from './stated'
import { partName } from './part-names'
import { headsMore, withPieces } from './pieces'
import { lineEnd, looseRounds, readPreamble, sectionEnd, sentenceEnd } from './preamble'
import type { Body } from './preamble'
import { Reader } from './reader'
import type { GrammarFinding } from './reader'
import { sectionOf } from './sections'
import { readInAll } from './in-all'
import { isUnreadCount } from './brackets'
import { matchBrackets, sequenceReader } from './sequence'
import { markBefore, repeatAll } from './stars'
import { spanOf, tokenize } from './tokens'
import type { Span, Token } from './tokens'
import type { Definition, Item, RoundNode, RoundsTree, StitchForm, UsualChain } from './tree'
import { unreadWords } from './unread'
import { usualChains, usualLoop } from './usual-chains'
import { definedKey, isForm, readStitch } from './vocabulary'
import { repeatWhole } from './whole-repeats'
import { wordOf } from './words'

export interface Parsed {
  readonly tree: Omit<RoundsTree, 'repeats'>
  /** By round (index into `tree.rounds`). */
  readonly findings: readonly (GrammarFinding & { readonly round: number })[]
  readonly bodies: Bodies
}

/** Rounds that were read, by where they begin in their text: what was read once is not read again. */
export interface Bodies {
  /** What the words of the text mean besides: its terms, its own stitches, its parts. */
  readonly key: string
  readonly at: Map<number, Body & { readonly end: number; readonly found: readonly GrammarFinding[] }>
}

function spanTokens(tokens: readonly Token[], from: number, to: number): Span {
  const first = tokens[from] ?? tokens[tokens.length - 1]
  const last = tokens[to - 1] ?? first
  return first && last ? spanOf(first, last) : { start: 0, end: 0, line: 1, column: 1 }
}

/** "10 hdc." or "—36 dc" as the last words of a round: what it comes to, not more to work. */
function readEndCount(reader: Reader, from: number, to: number): { item: Item; at: number } | null {
  let end = to
  while (end > from && ['.', ';', ':', '!'].includes(reader.tokens[end - 1]!.key)) end--
  let start = end
  while (start > from && end - start < 24) {
    const before = reader.tokens[start - 1]!.key
    if (['.', '—', '–', '-', '=', ';', ':'].includes(before)) break
    if (['(', ')', '[', ']', '{', '}', '*'].includes(before)) {
      if (before !== ')' && before !== ']') return null
      break
    }
    start--
  }
  if (start <= from || start >= end) return null
  const mark = reader.tokens[start - 1]!.key
  // "… and rep Rows 1-5."
  const ranged = start - 2 >= from && reader.tokens[start - 2]!.kind === 'number'
  if (mark === ';' || (ranged && ['-', '–', '—'].includes(mark))) return null
  if (mark === ':') {
    // "join with sl st in top of ch-3: 24 dc.", "Stitch count: 24 dc." tell a count, "into ring work: 12 dc." does not.
    const before = reader.tokens.slice(Math.max(from, start - 12), start - 1).map((token) => token.key)
    const labelled = [2, 3].some((back) => reader.tokens[start - back]?.kinds.has('tells'))
    if (!labelled && !before.some((key) => ['join', 'around', 'end', 'round', 'rnd', 'off'].includes(key)))
      return null
  }
  reader.at = start
  const item = readCounts(reader, end, mark !== '.' && mark !== ')' && mark !== ']')
  return item ? { item, at: start } : null
}

/** Slips that leave the account open: what the rest makes is not known either. */
const UNREADABLE = new Set<string>(['rounds/unknown-abbreviation', 'rounds/repeat-without-star'])

/** The first word of the paragraph behind "Fasten off"; null where there is none. */
function paragraphBehind(tokens: readonly Token[], items: readonly Item[]): Token | null {
  const off = items.find((item) => item.type === 'note' && item.effect === 'fasten-off')
  return (off && tokens.find(({ start, paragraph }) => paragraph && start >= off.end)) ?? null
}

/** "Round 1 – Marmalade. Magic ring …": one word with a capital before the first sentence names a colour or a part. */
function isHead(tokens: readonly Token[], { start }: Span): boolean {
  const at = tokens.findIndex(({ kind }) => kind !== 'mark')
  const [word, stop] = [tokens[at], tokens[at + 1]]
  return (
    word?.start === start && /^\p{Lu}\p{L}{2,}$/u.test(word.text) && (stop?.key === '.' || stop?.key === ':')
  )
}

/** What works something, or tells what was worked. */
const MAKES = new Set<Item['type']>([
  'work',
  'chain',
  'group',
  'placed',
  'star',
  'evenly',
  'repeat-round',
  'count',
])

/** "Pop your mug on it and enjoy!": a stitch's word without number or place works nothing. */
const worksSomething = (item: Item): boolean =>
  MAKES.has(item.type) && !(item.type === 'work' && item.count === null && item.place === null)

function readBody(reader: Reader, from: number, to: number): Body {
  const found = reader.findings.length
  const { matches, broken } = matchBrackets(reader, from, to)
  if (broken) return { items: [], broken }
  const count = readEndCount(reader, from, to)
  reader.at = from
  reader.end = count?.at ?? to
  const sequence = sequenceReader(matches)
  const items: Item[] = []
  while (reader.at < reader.end) {
    const at = reader.at
    while (reader.skip(';', '.', ',')) continue
    const told = (items.length > 0 ? readInAll(reader) : null) ?? readCountSentence(reader, items)
    if (told) {
      items.push(told)
      continue
    }
    const explained = passExplanation(reader)
    if (explained) {
      items.push(explained)
      continue
    }
    const again = readRepeatBrackets(reader)
    if (!again && items.length > 0) repeatWhole(reader, items)
    const group = items.findLastIndex((item) => item.type === 'group')
    const repeated = items[group]
    if (again && repeated?.type === 'group' && repeated.times === null)
      items[group] = { ...repeated, times: again.times, around: again.times === null }
    const timesAt = reader.at
    const times = items.length > 0 ? readTimesStar(reader) : null
    if (times !== null) repeatAll(items, times, reader.span(timesAt))
    for (const item of sequence(reader, 'clause')) {
      const last = items.at(-1)
      const told =
        last &&
        last.type !== 'star' &&
        'bracket' in item &&
        item.bracket &&
        isUnreadCount(reader, last, item, item)
      items.push(told ? { type: 'note', effect: null, ...spanOf(item, item) } : item)
    }
    // A clause stops at full stops and semicolons, which separate phrases here.
    if (reader.at === at) {
      for (const item of sequence(reader, 'close')) items.push(item)
      if (reader.at === at) reader.at++
    }
  }
  // "Fasten off.", and a paragraph that works nothing: it tells of what becomes of the motif.
  const behind = paragraphBehind(reader.tokens.slice(from, to), items)
  if (behind && !items.some((item) => item.start >= behind.start && worksSomething(item))) {
    items.splice(0, items.length, ...items.filter((item) => item.start < behind.start))
    const kept = reader.findings.filter((finding, i) => i < found || finding.span.start < behind.start)
    reader.findings.splice(0, reader.findings.length, ...kept)
  }
  markBefore(items)
  if (count) items.push(count.item)
  reader.end = reader.tokens.length
  for (const slip of unreadWords(items))
    if (!isHead(reader.tokens.slice(from, to), slip))
      reader.report('rounds/unknown-abbreviation', slip, { word: reader.words(slip) })
  const unknown = reader.findings.slice(found).some((finding) => UNREADABLE.has(finding.code))
  return { items, broken: unknown }
}

const FORM_BY_ITEMS = (items: readonly Item[]): StitchForm =>
  items.some((item) => item.type === 'work' || item.type === 'group' || item.type === 'placed')
    ? 'shell'
    : 'special'

/** "MB (make bobble)": what a stitch is called tells its form, whatever its abbreviation. */
const formNamed = (names: readonly string[]): StitchForm | null =>
  (['bobble', 'popcorn', 'puff', 'cluster'] as const).find((form) =>
    names.some((name) => name.split(/\s+/).some((word) => wordOf(word).is === form)),
  ) ?? null

function readDefinition(reader: Reader, heading: Heading | Explained, to: number): Definition {
  const label = heading.label ?? ''
  const [, long = label, short = ''] = /^(.*?)\s*[([](?!e?s[)\]])([^)\]]*)[)\]]$/.exec(label) ?? []
  const names = [long, short]
    .flatMap((name) => name.split(/\/|\bor\b/i))
    .map((name) =>
      name
        .trim()
        .toLowerCase()
        .replace(/^(an?|the) /, ''),
    )
    .filter((name) => name !== '')
  reader.at = heading.from
  const manner = reader.isA('manner')
  const named = readStitch(reader)
  // "Tr3tog", "FPdc" and "sc" are known as they stand, "long dc" is not.
  const known = named !== null && !manner && (named.form === 'together' || named.form === 'plain')
  const before = reader.findings.length
  const { items } = readBody(reader, heading.to, to)
  // Special stitches are explained in prose; what is not understood there is no slip of the pattern.
  reader.findings.length = before
  const form = named && named.form !== 'plain' ? named.form : (formNamed(names) ?? FORM_BY_ITEMS(items))
  return {
    names,
    keys: known ? [] : names.map(definedKey),
    form,
    stitch: named?.stitch ?? null,
    items,
    description: spanTokens(reader.tokens, heading.to, to),
    ...heading.span,
  }
}

/** "dc = double crochet", "rep = repeat": a list of abbreviations explains no stitch of its own. */
function isKnown(name: string): boolean {
  const [first = '', ...others] = name.replace(/\(e?s\)$/, '').split('-')
  // "ch-sp = chain space".
  if (others.length > 0 && [first, ...others].every(isKnown)) return true
  const word = wordOf(name.replace(/\(e?s\)$/, ''))
  return word.known ? !isForm(word) : (canonicalStitch(name, 'US') ?? canonicalStitch(name, 'UK')) !== null
}

/** "Corner = (2 dc, ch 2, 2 dc)": a word of the trade that the text makes one thing of, not an abbreviation. */
const makesGroup = ({ items }: Definition): boolean =>
  items.some(
    (item) =>
      (item.type === 'group' || item.type === 'placed') && item.items.some((each) => MAKES.has(each.type)),
  ) ||
  items.filter(({ type }) => type === 'work' || type === 'chain').length > 1 ||
  items.some((item) => item.type === 'work' && item.stitch.form === 'together')

const COLOUR = /^([A-Z]|MC|CC\d?|C[A-H])$/
/** "Work as for First Motif", "Work Rounds 1–3. On Round 4 …": what another part says, told again in words. */
const isRetold = (item: Item): boolean =>
  item.type === 'repeat-round' || (item.type === 'note' && item.unread === 'work')

/** "mc = magic circle". */
const makesRing = ({ items }: Definition): boolean =>
  items.length > 0 && items.every((item) => item.type === 'foundation' && item.ring === 'adjustable')

/** "MC" is the main color where the text joins it or lists it, else a magic circle. */
const MAIN_COLOUR =
  /\b(with|join|to|using|attach|off|cut|break|drop)\s+MC\b|^In MC\b|\bMC\)?\s*(?:[:=–—-](?!\s*(?:ch\s*\d|\d))|\(\p{L})|[(=]\s*MC\)|main colou?r/imu

/** Parses a text in the given terms. Never throws; what it cannot read becomes notes and findings. */
export function parseRounds(
  text: string,
  terms: Terms,
  tokens: readonly Token[] = tokenize(text),
  known: { readonly bodies: Bodies; readonly common: number } | null = null,
): Parsed {
  const definitions = new Map<string, Definition>()
  const reader = new Reader(text, tokens, terms, definitions)
  const headings = findHeadings(reader)
  reader.findings.length = 0
  if (!MAIN_COLOUR.test(text)) reader.rings.add('mc')
  const bounds = headings.map((heading, index) => {
    const next = headings[index + 1]?.from ?? tokens.length
    // Behind "Instructions" the work itself begins.
    const words = (heading.label ?? '').toLowerCase().split(/\s+/)
    if (heading.kind === 'section' && sectionOf(words) === 'opening') return heading.to
    // "3 ch at start of row = 1 tr" is told on a line.
    const line = heading.kind === 'definition' ? lineEnd(tokens, heading.to, next) : next
    if (line < next && usualChains(reader, heading.from, line).length > 0) return line
    return heading.kind === 'round' || heading.kind === 'part'
      ? next
      : Math.max(heading.to, Math.min(next, sectionEnd(reader, heading.to, next)))
  })
  const usual: UsualChain[] = []
  const explained: Definition[] = []
  const colours: string[] = []
  headings.forEach((heading, index) => {
    const { from, kind, label } = heading
    const ofChains = kind === 'definition' ? usualChains(reader, from, bounds[index]!) : []
    usual.push(...ofChains)
    // "Group = 3 dc finished together. … Otherwise 3 ch = 1 dc.": a stitch, and behind it what chains stand for.
    const behind = ofChains.length > 0 && label !== null && !/\bch|\d/i.test(label)
    if (kind === 'definition' && (ofChains.length === 0 || behind)) {
      const to = behind ? sentenceEnd(tokens, heading.to, bounds[index]!) : bounds[index]!
      const definition = readDefinition(reader, heading, to)
      const ring = makesRing(definition)
      if (ring) for (const name of definition.names) reader.rings.add(name)
      if (definition.names.every(isKnown) && !makesGroup(definition)) return
      explained.push(definition)
      if (!ring) for (const key of definition.keys) definitions.set(key, definition)
    }
    if (kind === 'section') usual.push(...usualChains(reader, heading.to, bounds[index]!))
    if (kind === 'section' && /colou?rs$/i.test(label ?? '')) {
      for (let at = heading.to; at < bounds[index]!; at++) {
        const word = tokens[at]!.text
        if (COLOUR.test(word) && !colours.includes(word)) colours.push(word)
      }
    }
  })
  for (const found of explainedWithin(reader)) {
    const definition = readDefinition(reader, found, found.end)
    if (definition.keys.every((key) => definitions.has(key))) continue
    // The first one may begin with the chains of its round.
    if (found.made && (found.first || definition.items[0]?.type === 'chain')) continue
    explained.push(definition)
    for (const key of definition.keys) definitions.set(key, definition)
  }
  const words = explained.map(({ names, form, stitch }) => `${names.join()} ${form} ${stitch}`)
  const opens = headings.find((heading) => heading.kind === 'round')
  const inLoop = usualLoop(text.slice(0, opens?.span.start ?? 0))
  const titles = headings.flatMap(({ kind, label }) => (kind === 'part' ? [label] : []))
  const bodies: Bodies = {
    key: [terms, ...words, ...reader.rings, inLoop ?? '', ...titles].join('\n'),
    at: new Map(),
  }
  const same = known?.bodies.key === bodies.key
  const rounds: RoundNode[] = []
  const findings: (GrammarFinding & { round: number })[] = []
  let part: string | null = null
  const addRound = (from: number, to: number, heading: Heading | null, preamble = false) => {
    reader.part = part === null ? null : partName(part)
    const at = tokens[from]?.start ?? text.length
    const end = tokens[to]?.start ?? text.length
    const before = same && end < known!.common ? known!.bodies.at.get(at) : undefined
    const read = () => (preamble ? readPreamble(reader, from, to, readBody) : readBody(reader, from, to))
    const body = before?.end === end ? before : { end, ...read(), found: reader.findings.splice(0) }
    bodies.at.set(at, body)
    const { items, broken, found } = body
    const works = items.some(({ type }) => !['note', 'count', 'statement'].includes(type))
    if (headsMore(heading?.label ?? null) && rounds.length > 0) return
    if (preamble || heading?.kind === 'part') usual.push(...usualChains(reader, from, to))
    if (!broken && !works && (heading?.numbers ?? null) === null) return
    const retold = heading?.kind === 'part' && rounds.length > 0 ? items.find(isRetold) : undefined
    if (retold && isRetold(items[0]!)) {
      const words = reader.words(spanTokens(tokens, from, to)).replace(/\s+/g, ' ')
      findings.push({ ...said('rounds/part-in-prose', { words }), span: retold, round: rounds.length - 1 })
      return
    }
    if (preamble && !items.some((item) => item.type === 'chain' || item.type === 'foundation')) return
    if (!preamble) for (const finding of found) findings.push({ ...finding, round: rounds.length })
    rounds.push({
      numbers: heading?.numbers ?? null,
      label: preamble ? 'foundation' : (heading?.label ?? null),
      heading: heading?.span ?? null,
      part,
      items,
      broken: broken && !preamble,
      ...spanTokens(tokens, heading?.from ?? from, to),
    })
  }
  const working = headings.filter((heading) => heading.kind === 'round')
  for (const heading of headings) if (heading.kind === 'part') reader.parts.add(partName(heading.label ?? ''))
  if (working.length === 0) {
    const covered = headings.map(
      (heading, index) => [heading.from, heading.kind === 'part' ? heading.to : bounds[index]!] as const,
    )
    const parts = headings.filter((heading) => heading.kind === 'part')
    for (const [from, to] of looseRounds(tokens, parts)) {
      part = parts.findLast((title) => title.to <= from)?.label ?? null
      if (!covered.some(([start, end]) => from >= start && from < end)) addRound(from, to, null)
    }
  } else {
    const start = headings[0]!.from
    if (start > 0) addRound(0, start, null, true)
    headings.forEach((heading, index) => {
      if (heading.kind === 'part') part = heading.label
      const next = headings.slice(index + 1).find(({ kind }) => kind === 'round' || kind === 'part')?.kind
      if (heading.kind === 'round') addRound(heading.to, bounds[index]!, heading)
      else if (heading.kind === 'part' && next !== 'round')
        addRound(heading.to, bounds[index]!, { ...heading, numbers: null })
      else {
        // Lines between a section or title and the next round may hold the foundation.
        const after = headings[index + 1]?.from ?? tokens.length
        const begin = heading.kind === 'part' ? heading.to : bounds[index]!
        if (begin < after) addRound(begin, after, null, true)
      }
    })
  }
  // Of one part alone the heading is the title of the pattern.
  const titled = new Set(rounds.map((round) => round.part)).size === 1
  const named = headings.flatMap(({ kind, label, span }) =>
    kind === 'part' ? [{ label, words: reader.words(span) }] : [],
  )
  const counted = withPieces(rounds, text, named)
  const nodes = titled ? counted.map((round) => ({ ...round, part: null })) : counted
  return {
    tree: { text, terms, tokens, rounds: nodes, definitions: explained, colours, usual, usualLoop: inLoop },
    findings,
    bodies,
  }
}
