/**
 * What a pasted page says besides its rounds and belongs to the project: each fact with where it stands. Nothing is
 * set here, and nothing is left out: what no fact is made of is a note.
 */
import type { Skill, StitchGauge, Terms } from '../../shared-types/project'
import { capital } from '../figures/words'
import { memoised } from '../memo'
import type { Millimetres } from '../units/quantity'
import { colourNamed } from './colour-names'
import { isOverCorners, roundsGaugeIn, swatchIn } from './gauges'
import { hooksIn } from './hooks'
import { eachOf, laterPieces, makeIn, makeWords } from './pieces'
import type { PieceSays } from './pieces'
import { segmentsOf } from './segments'
import type { Line, Segment } from './segments'
import { firstOfSeveral, MOTIF_WORDS, sizeIn } from './sizes'
import type { ToldSize } from './sizes'
import { isLettered, isYarn, withCommon, yarnsIn } from './yarns'
import type { PageYarn, ToldYarn } from './yarns'

/** Where a fact stands: its words, line and column (both from 1), offsets of the page. */
export interface PageAt {
  readonly words: string
  readonly line: number
  readonly column: number
  readonly start: number
  readonly end: number
}

export type PageSays =
  /** `motif`: what one motif is called, which of a throw of hexagons is a hexagon. */
  | { readonly kind: 'name'; readonly name: string; readonly motif: string }
  | { readonly kind: 'designer'; readonly designer: string }
  /** `skill` is its level, where the text names one of them. */
  | { readonly kind: 'skill'; readonly text: string; readonly skill: Skill | null }
  | { readonly kind: 'hook'; readonly hook: Millimetres }
  | { readonly kind: 'swatch'; readonly gauge: StitchGauge }
  | { readonly kind: 'rounds-gauge'; readonly gauge: StitchGauge }
  | { readonly kind: 'size'; readonly size: ToldSize }
  | { readonly kind: 'yarn'; readonly yarn: PageYarn; readonly role: string | null }
  | { readonly kind: 'notes'; readonly text: string }
  | PieceSays

/** `id` stays the same as long as the page does. */
export type PageFact = PageSays & { readonly id: string; readonly at: PageAt }

type Add = (says: PageSays, start: number, end: number) => void

/** "HEXAGON" is a name as "Hexagon". */
const asName = (words: string): string => {
  const plain = words.replace(/^[\s*~=#•·_>|–—-]+|[\s*~=#•·_>|:–—-]+$/g, '')
  return /\p{Ll}/u.test(plain)
    ? plain
    : plain
        .toLowerCase()
        .replace(/(^|[\s-])(\p{L})/gu, (_, before: string, letter: string) => before + letter.toUpperCase())
}

/** "No. 214. STAR DOILY.": the number of a leaflet and the stop behind capitals are no part of its name. */
const titleWords = (words: string): string => {
  const plain = words.replace(/^\s*(?:no|number|design)\.?\s*\d+\s*[.:–—-]?\s+(?=\p{Lu})/iu, '')
  return /\p{Ll}/u.test(plain) ? plain : plain.replace(/\.\s*$/, '')
}

/** "First Hexagon": which one it is belongs to its rounds. */
const WHICH = /^(?:the\s+)?(?:first|1st|basic|main|each|one)\s+(?=\p{L})|\s+(?:1|one)$/giu

/**
 * What one motif is called on a page: as the heading over its rounds has it, else by the last word for a
 * motif in a title of what is made of many ("Hexagon Throw"); else as the page itself.
 */
function motifName(title: string, line: Line, segments: readonly Segment[], until: number): string {
  const heads = segments.flatMap(({ kind, lines }) => (kind === 'part' ? lines.slice(0, 1) : []))
  const part = heads.findLast(({ start }) => start > line.start && start < until)
  const words = asName(makeIn(part?.words ?? '').name).replace(WHICH, '')
  const isKind = new RegExp(`^${MOTIF_WORDS.source}$`, 'i')
  if (isKind.test(words)) return title.toLowerCase().endsWith(words.toLowerCase()) ? title : words
  const made = MADE_OF_MANY.exec(title)
  const kind = MOTIF_WORDS.source
  const kinds = new RegExp(`${kind}(?:\\s+${kind})*`, 'gi')
  const [goesOn] = [...title.slice(0, made?.index ?? 0).matchAll(kinds)].slice(-1)
  return goesOn ? capital(goesOn[0].toLowerCase()) : title
}

/** What many motifs are made into: "Granny Square", "Circle Coaster" and "African Flower Hexagon" name one motif. */
const MADE_OF_MANY =
  /\b(?:throw|blanket|afghan|spread|bedspread|coverlet|counterpane|quilt|rug|cover|cloth|tablecloth|runner|scarf|shawl|wrap|stole|poncho|cowl|bag|tote|purse|pouch|cushion|pillow|garland|bunting|banner|curtain|top|tunic|vest|jacket|cardigan|sweater|pullover|skirt|dress|hat|beanie|slippers|project)s?\b/i

/** A title has few words and no stop. */
const isTitleLine = (words: string): boolean =>
  words.trim().split(/\s+/).length <= 8 &&
  !/[.,=]\s*$|;|\b(?:hook|yarn|thread)\b/i.test(words) &&
  !/\d\s*("|cm|in\b|mm)/i.test(words)

/** Sentences of a line, each with its offset; a stop after an abbreviation ends none. */
function sentences({ words, start }: Line): Line[] {
  const parts: Line[] = []
  let from = 0
  for (const match of words.matchAll(/[.;!](?=\s+["(]?\p{Lu})\s+/gu)) {
    if (/\b(?:approx|no|sts?|rnds?|dia)\.$/i.test(words.slice(0, match.index + 1))) continue
    parts.push({ words: words.slice(from, match.index + 1), start: start + from })
    from = match.index + match[0].length
  }
  parts.push({ words: words.slice(from), start: start + from })
  return parts.filter(({ words: own }) => own.trim() !== '')
}

/** Items of a list in one line, split at commas and semicolons outside brackets. */
function itemsOf({ words, start }: Line): Line[] {
  const items: Line[] = []
  for (const match of words.matchAll(/(?:[^,;([]|[([][^)\]]*(?:[)\]]|$)|(?<=\d),(?=\d))+/g))
    if (/\p{L}|\d/u.test(match[0])) items.push({ words: match[0], start: start + match.index })
  return items
}

const endOf = ({ words, start }: Line): number => start + words.trimEnd().length
const startOf = ({ words, start }: Line): number => start + Math.max(0, words.search(/\S/))

function addHooks(line: Line, always: boolean, add: Add): boolean {
  const hooks = hooksIn(line.words, always)
  for (const { value, start, end } of hooks)
    add({ kind: 'hook', hook: value }, line.start + start, line.start + end)
  return hooks.length > 0
}

/** Signs of a measure; of a size also "My flower is about 8 cm across". */
const TELLS =
  /=|\bmeasur|\bper (?:inch|cm)|\bto (?:\d+ ?(?:cm|in))|\b(?:is|are|comes? out|ends? up)\b.*\b(?:across|diameter)\b/i

/** A gauge or a size in one sentence; false where it tells none. */
function addMeasure(line: Line, terms: Terms, of: 'gauge' | 'size' | 'free', add: Add): boolean {
  const { words } = line
  const put = (says: PageSays) => {
    add(says, startOf(line), endOf(line))
    return true
  }
  const isTold = of !== 'free' || TELLS.test(words)
  if (!isTold) return false
  const swatch = of === 'size' ? null : swatchIn(words, terms)
  if (swatch) return put({ kind: 'swatch', gauge: swatch })
  if (isOverCorners(words)) return false
  const rounds = roundsGaugeIn(words)
  if (rounds) return put({ kind: 'rounds-gauge', gauge: rounds })
  // "It is about 8 cm across with my 4 mm hook": the hook's millimetres are no size.
  const plain = words.replace(/[\d.,]+ ?mm\b(?=[^,;]{0,20}\bhook)/gi, '')
  const isMotif = MOTIF_WORDS.test(words) || /\b(it|they|these|mine|each)\b/i.test(words)
  const first = firstOfSeveral(plain)
  const size = of === 'size' || isMotif ? sizeIn(first) : null
  // What is told of other pieces stays in words.
  return size ? put({ kind: 'size', size }) && first === plain : false
}

/** "… and Claret (C). 3 mm hook.": where one thing ends and the next begins; not behind "no." or "oz.". */
const THINGS =
  /(?<=[\p{L})\]])(?:(?<!\b(?:no|nos|approx|oz|yds?|gr?|ca|wt|sz|col|art))\.\s+(?=[\p{L}\d(])|\.\s+(?=(?:steel|crochet)\s+(?:crochet\s+)?hook\b))/giu

/** The things that a line of materials lists, up to a stop each. */
function thingsIn({ words, start }: Line): Line[] {
  const things: Line[] = []
  let from = 0
  for (const match of words.matchAll(THINGS)) {
    things.push({ words: words.slice(from, match.index), start: start + from })
    from = match.index + match[0].length
  }
  return [...things, { words: words.slice(from), start: start + from }]
}

/** "Coral (B) and Claret (C) and a 3 mm hook": the yarn alone. */
const withoutHook = ({ words, start }: Line): Line => {
  const at = words.search(/\s(?:and|with|plus|&)\s+(?:an?\s+)?[^()]*\bhook\b[^()]*$/i)
  return {
    words:
      at > 0 && /[([](?:[A-H]|MC|CC ?\d?|C[1-9])[)\]]/.test(words.slice(0, at)) ? words.slice(0, at) : words,
    start,
  }
}

/** Yarns of a line of materials: items that are no yarn belong to none; those that follow each other are one list. */
function yarnsOf(line: Line, always: boolean): ToldYarn[] {
  const runs: { start: number; end: number }[] = []
  let isOpen = false
  for (const item of itemsOf(line).map(withoutHook)) {
    const isColour =
      /^\s*(?:and\s+)?\p{L}+(?:\s+(?:and\s+)?\p{L}+){0,3}\.?\s*$/u.test(item.words) &&
      colourNamed(item.words) !== null
    const goesOn: boolean =
      isOpen &&
      (isColour ||
        /^\s*size\s+\d+\s*$/i.test(item.words) ||
        /[A-H]\b|\bMC\b|\bCC|\d\s*(?:g|m|yds?|oz)\b/.test(item.words))
    const isMeant: boolean = always || goesOn || isYarn(item.words) || isLettered(item.words)
    const isItem: boolean = !/\bhooks?\b/i.test(item.words) && isMeant
    const end = item.start + item.words.length
    if (isItem && isOpen) runs[runs.length - 1]!.end = end
    else if (isItem) runs.push({ start: item.start, end })
    isOpen = isItem
  }
  return runs.flatMap(({ start, end }) =>
    yarnsIn(line.words.slice(start - line.start, end - line.start)).map((told) => ({
      ...told,
      start: told.start + start,
      end: told.end + start,
    })),
  )
}

function addMaterials(lines: readonly Line[], always: boolean, add: Add): void {
  const yarns = withCommon(
    lines.flatMap(thingsIn).flatMap((thing) => yarnsOf(thing, always)),
    ({ written }) => written,
  )
  for (const { yarn, role, start, end } of yarns) add({ kind: 'yarn', yarn, role }, start, end)
  for (const line of lines) for (const item of itemsOf(line)) addHooks(item, false, add)
}

const joined = (lines: readonly Line[]): string =>
  lines.map(({ words }) => words.replace(/^[\s*•·–-]+/, '').trim()).join('\n')

function addNotes(label: string, lines: readonly Line[], add: Add): void {
  const [first] = lines
  if (!first) return
  const text = joined(lines)
  const told = label === '' ? text : `${capital(label.toLowerCase())}: ${text}`
  add({ kind: 'notes', text: told }, startOf(first), endOf(lines.at(-1)!))
}

/** What is told by the sentence: gauge, size, hook. What is left of it is a note. */
function addSentences(segment: Segment, terms: Terms, of: 'gauge' | 'size' | 'free', add: Add): void {
  const left = segment.lines.filter((line) => {
    const parts = sentences(line)
    const taken = parts.filter((part) => {
      const measured = addMeasure(part, terms, of, add)
      return addHooks(part, false, add) || measured
    })
    return taken.length < parts.length
  })
  addNotes(segment.label, left, add)
}

/** Words for the four project levels (§project-levels), those of the older four among them. */
const LEVELS: readonly (readonly [RegExp, Skill])[] = [
  [/^(?:basic|beginners?|novice|absolute beginners?|level 1)\b/i, 'basic'],
  [/^(?:easy|advanced beginners?|level 2)\b/i, 'easy'],
  [/^(?:intermediate|level 3)\b/i, 'intermediate'],
  [/^(?:complex|advanced|experienced|expert|skilled|challenging|level 4)\b/i, 'complex'],
]

/** The level that words tell; null where they tell none, or more than one ("easy to intermediate"). */
function skillOf(words: string): Skill | null {
  const told = words.trim().split(/\s*(?:\/|,|\bto\b|\bor\b|–|-)\s*/)
  const levels = told.map((each) => (LEVELS.find(([pattern]) => pattern.test(each)) ?? [])[1] ?? null)
  return levels.length === 1 ? levels[0]! : null
}

function addSegment(segment: Segment, terms: Terms, add: Add): void {
  const { kind, label, lines } = segment
  switch (kind) {
    case 'title':
      for (const line of lines.slice(0, 1))
        add({ kind: 'name', name: asName(line.words), motif: asName(line.words) }, startOf(line), endOf(line))
      return addNotes('', lines.slice(1), add)
    case 'designer': {
      const [line] = lines
      const name =
        line?.words
          .replace(/^\s*(?:©|\(c\)|copyright)*[\s\d©,–-]*(?:by\s+)?/i, '')
          .replace(/(?:[\s,]*(?:©|\(c\)|copyright))?[\s,]*(?:\d{4})?[\s.]*$/i, '') ?? ''
      const isName = /^\p{Lu}[\p{L}.'’-]*(?:\s+(?:&|and|de|van|von|\p{Lu}[\p{L}.'’-]*)){0,5}$/u.test(name)
      if (line && isName) add({ kind: 'designer', designer: name }, startOf(line), endOf(line))
      return addNotes('', isName ? lines.slice(1) : lines, add)
    }
    case 'skill':
      if (lines[0])
        add(
          { kind: 'skill', text: joined(lines.slice(0, 1)), skill: skillOf(joined(lines.slice(0, 1))) },
          startOf(lines[0]),
          endOf(lines[0]),
        )
      return addNotes('', lines.slice(1), add)
    case 'hook': {
      const left = lines.filter((line) => !addHooks(line, true, add))
      return addNotes(label, left, add)
    }
    case 'gauge':
      return addSentences(segment, terms, 'gauge', add)
    case 'size':
      return addSentences(segment, terms, 'size', add)
    case 'materials':
    case 'yarn':
    case 'colours':
      addMaterials(lines, kind !== 'materials', add)
      return addNotes(label, lines, add)
    case 'free': {
      // "Crochet cotton no. 10; steel hook no. 7": materials without a heading.
      // "Yarn A = blue, yarn B = white", and "Yarn A: blue" on a line of its own.
      const isList = ({ words }: Line) =>
        /\b(?:yarn|colou?r) [A-H] ?[=:].*\b(?:yarn|colou?r) [A-H] ?[=:]/i.test(words) ||
        (/^\W*(?:yarn|colou?r)\b/i.test(words) && isLettered(words)) ||
        (/\bhooks?\b/i.test(words) && isYarn(words.replace(/[^,;]*\bhooks?\b[^,;]*/gi, '')))
      const lists = lines.filter(isList)
      addMaterials(lists, false, add)
      addNotes('', lists, add)
      return addSentences({ ...segment, lines: lines.filter((line) => !isList(line)) }, terms, 'free', add)
    }
    case 'notes':
    case 'finishing':
    case 'explained':
    case 'opening':
      return addNotes(label, lines, add)
    // Names of parts stand with their rounds; abbreviations are printed from the rounds.
    case 'part':
    case 'abbreviations':
      return
  }
}

/** The name of a page: its first line, where nothing else is said there, else the only name that stands over rounds. */
function titleOf(segments: readonly Segment[]): { line: Line; segment: Segment } | null {
  if (segments.some(({ kind }) => kind === 'title')) return null
  const [first] = segments
  const [line] = first?.lines ?? []
  if (line && (first?.kind === 'free' || first?.kind === 'part') && isTitleLine(titleWords(line.words)))
    return { line, segment: first }
  const parts = segments.filter(({ kind }) => kind === 'part')
  return parts.length === 1 ? { line: parts[0]!.lines[0]!, segment: parts[0]! } : null
}

/** Everything that a page says of the project, in its order. Never throws. */
export const readPage = memoised((text: string, terms: Terms): readonly PageFact[] => {
  const { segments, tree } = segmentsOf(text, terms)
  const begins = tree.rounds.find(({ label }) => label !== 'foundation')?.start ?? 0
  const lineStarts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)]
  const facts: PageFact[] = []
  const counts = new Map<string, number>()
  const add: Add = (says, start, end) => {
    // A hook that is named again is the same hook.
    if (says.kind === 'hook' && facts.some((fact) => fact.kind === 'hook' && fact.hook === says.hook)) return
    const count = (counts.get(says.kind) ?? 0) + 1
    counts.set(says.kind, count)
    const line = lineStarts.findLastIndex((at) => at <= start)
    const words = text.slice(start, end)
    const at = { words, line: line + 1, column: start - lineStarts[line]! + 1, start, end }
    facts.push({ ...says, id: `${says.kind}-${count}`, at })
  }
  const title = titleOf(segments)
  const put = (says: PageSays, line: Line) => add(says, startOf(line), endOf(line))
  if (title) {
    const { name, make } = makeIn(titleWords(title.line.words))
    put(
      { kind: 'name', name: asName(name), motif: motifName(asName(name), title.line, segments, begins) },
      title.line,
    )
    if (make !== null) put({ kind: 'notes', text: makeWords(make) }, title.line)
  }
  for (const segment of segments) {
    const isTitled = segment === title?.segment
    addSegment(isTitled ? { ...segment, lines: segment.lines.slice(1) } : segment, terms, add)
  }
  const parts = segments.flatMap(({ kind, lines }) => (kind === 'part' ? lines.slice(0, 1) : []))
  const pieces = laterPieces(text, terms)
  const heads = [...(title ? [title.line] : []), ...parts]
  const own = heads.findLast((line) => line.start <= (pieces[0]?.start ?? 0))
  const ofFirst = heads.flatMap(({ words, start }) =>
    own && start < own.start ? (makeIn(words).make ?? []) : [],
  )
  pieces.forEach(({ name, rounds, start, end }, i) => {
    // The heading of a piece stands above its first round.
    const heading = name === null ? undefined : parts.findLast((line) => line.start <= start)
    const told = heading ? makeIn(heading.words) : { name: name ?? `Piece ${i + 2}`, make: null }
    const each = eachOf(told.make, ofFirst[0] ?? null)
    const says = { kind: 'piece', name: asName(told.name), make: told.make, each, rounds } as const
    if (heading) put(says, heading)
    else add(says, start, end)
  })
  return withOneBase(facts.sort((one, other) => one.at.start - other.at.start))
}, 4)

/** "Yarn: DK cotton" and, under another heading, "A: cream": each letter is that yarn in its colour. */
function withOneBase(facts: readonly PageFact[]): readonly PageFact[] {
  const yarns = facts.filter((fact) => fact.kind === 'yarn')
  if (yarns[0]?.role !== null) return facts
  const together = new Map(withCommon(yarns, ({ at }) => at.words).map((fact) => [fact.id, fact]))
  return facts.flatMap((fact) => (fact.kind === 'yarn' ? (together.get(fact.id) ?? []) : fact))
}
