/** Headings: "Rnd 3:", "3rd rnd:", "Rnds 4–6:", "Edging:", and the sections that hold no rounds. */
import { readBareSection } from './bare-sections'
import { isProse, tellsHow } from './prose-labels'
import { skipAdjustable } from './nouns'
import { isDecorated, passDecoration } from './decoration'
import { numberedLines, passStep, readNumberedLine } from './numbered-lines'
import { isOneOfSeveral } from './part-names'
import { placesWithin } from './place-labels'
import type { Reader } from './reader'
import { BEGINS, explainsWorked, isWorkedLater, worksName } from './worked-later'
import { isMeasure, readHowMany, readLabel, readRoundHeading } from './round-headings'
import type { Heading } from './round-headings'
import { sectionOf } from './sections'
import { readShortened } from './shortened-names'
import { passCountLabel } from './count-labels'
import { isForm, readStitch } from './vocabulary'
import { MEANINGS, wordOf } from './words'

/** Whether letters follow each other in a name, in this order: "pc" in "popcorn", not "white" in "petals". */
function shortens(short: string, name: string): boolean {
  const letters = name.toLowerCase()
  let at = 0
  for (const letter of short.toLowerCase().replace(/[^\p{L}]/gu, '')) {
    at = letters.indexOf(letter, at) + 1
    if (at === 0) return false
  }
  return true
}

/** "Petals (make 2)", "Center (yellow)"; an abbreviation in brackets explains a stitch ("Popcorn (pc)"). */
const bracketOf = (bracket: string | null, name: string): boolean =>
  bracket === null ||
  /\b(make|work|cut|rs|ws|optional|both|worked|side|first|motifs?)\b|\d/i.test(bracket) ||
  !shortens(bracket, name)

const passRule = (reader: Reader, single: boolean): boolean =>
  reader.attempt(() => {
    reader.skip('.')
    return reader.skip('—', '–') || reader.skipAll('-', '-') || (single && reader.skip('-')) || null
  }) === true

/** "First cl of the round", "beg cl of each rnd": passes what it is of. */
const passOfRound = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('of', 'in', 'on')) return null
    reader.skip('the', 'a', 'each', 'every', 'any')
    return reader.skipA('round') || null
  }) === true

/** "POPCORN (PC)—5 dc in same st": whether the words before a dash are the name of a stitch that is explained. */
function namesForm(reader: Reader, from: number, to: number): boolean {
  const { at } = reader
  reader.at = from
  const stitch = readStitch(reader)
  passOfRound(reader)
  const whole = stitch !== null && !WORKED_FORMS.has(stitch.form) && reader.at === to
  reader.at = at
  return whole
}

const ABBREVIATES = /^(?!(?:rs|ws|(?:make|work|cut)\b.*)$)[\p{L}\d -]{1,12}$/iu
/** A title has no more words: "Second and all following motifs". */
const MOST_WORDS = 7

/** "14.", "14 ch", "14 (multiple of 4)": whether a number ends there, or counts chains. */
const endsChain = (reader: Reader, ahead: number): boolean =>
  reader.peek(ahead)?.kind !== 'word' || (reader.peek(ahead)?.first ?? true) || reader.isA('chain', ahead)

/** Forms of stitches by whose names nothing is called. */
const WORKED_FORMS: ReadonlySet<string> = new Set(['plain', 'together', 'increase'])

/** Whether the rest of a line says where something is worked. */
function saysWhere(reader: Reader): boolean {
  for (let at = reader.at; at < reader.tokens.length; at++) {
    const token = reader.tokens[at]!
    if (token.first) return false
    if (token.kinds.has('where')) return true
  }
  return false
}

/** Whether the words of a line stand for a part ("LEAF", "Second motif"): no stitch, no instruction. */
function isTitle(reader: Reader, from: number, decorated: boolean): boolean {
  const at = reader.at
  reader.at = from
  const before = reader.tokens[from - 1]
  const ends =
    decorated ||
    before === undefined ||
    reader.tokens[from]!.paragraph ||
    /^[.)\]:!]$/.test(before.key) ||
    // "… — 12 sc", and the title of the next part right below it.
    (reader.tokens[from - 2]?.kind === 'number' && before.kind === 'word')
  // "mr" on a line of its own is what the rounds begin with.
  if (skipAdjustable(reader)) return false
  const stitch = readStitch(reader)
  // "Popcorn edging" names a part; "sc2tog around" and "popcorn in each st" are worked.
  const named = stitch !== null && !WORKED_FORMS.has(stitch.form) && !MEANINGS.has(reader.tokens[from]!.key)
  const plain = stitch === null || (named && !saysWhere(reader))
  reader.at = at
  // "1ST MOTIF".
  const first = reader.tokens[from + Number(reader.tokens[from]!.kind === 'ordinal')]
  return (
    ends && plain && first?.kind === 'word' && !first.kinds.has('instruction') && !first.kinds.has('round')
  )
}

/**
 * "Edging:", "Special stitches:", "Shell:" at the start of a line, or behind one another where special stitches are
 * explained (`inline`). The name of a section may stand on a line of its own without a colon.
 */
function readLabelHeading(
  reader: Reader,
  startOfLine: boolean,
  inline: boolean,
  numbersBegan: boolean,
  special: boolean,
): Heading | null {
  const from = reader.at
  const decorated = startOfLine && !reader.peek()!.first
  if (!startOfLine && !inline) return null
  return reader.attempt((): Heading | null => {
    const words: string[] = []
    while (reader.peek() && words.length < MOST_WORDS) {
      // "Tr2tog/tr3tog:" explains two stitches at once.
      if (!['word', 'number', 'chains', 'ordinal'].includes(reader.peek()!.kind) && !reader.sees('/')) break
      if (reader.at > from && reader.peek()!.first) break
      words.push(reader.spelled())
      reader.at++
    }
    if (words.length === 0) return null
    const named = reader.at
    // "In a magic ring work: ch 3, …": an instruction, whatever stands behind it.
    const into = reader.tokens.slice(from, named)
    if (/^(in|into)$/.test(into[0]!.key) && into.some(({ kinds }) => kinds.has('ring') || kinds.has('space')))
      return null
    const titled = (kind: 'part' | 'section'): Heading => {
      const label = reader.words({ ...reader.span(from), end: reader.tokens[named - 1]!.end }).trim()
      return { kind, from, to: reader.at, numbers: null, label, span: reader.span(from) }
    }
    // "Stitch count: 48 dc" tells what the round comes to.
    reader.at = from
    passCountLabel(reader)
    if (reader.at > from && reader.number() !== null) return null
    reader.at = named
    let bracket = readLabel(reader) ?? readHowMany(reader)
    // "* LEAF * (make 2)", "=== Leaf ===": what stands around the words ends with them.
    // "• spike = sc worked lower": what it stands for follows.
    const told = reader.sees('=') && /[\p{L}\d(]/u.test(reader.key(1)) && !reader.peek(1)!.first
    if (decorated && !told && bracket === null && passDecoration(reader, false)) bracket = readLabel(reader)
    // "Abbreviations.—Ch., chain".
    const explains = () => sectionOf(words) !== null || namesForm(reader, from, named)
    // "Abbrevs.: ch., chain".
    if (startOfLine && reader.sees('.') && reader.key(1) === ':' && explains()) reader.at++
    // "Second Motif—Work as for First Motif": what stands behind the name goes on in its line.
    if (
      startOfLine &&
      isOneOfSeveral(words.join(' ')) &&
      (reader.skip(':', '—', '–') || reader.skipAll('.', '.', '.'))
    )
      return titled('part')
    const worked = special && worksName(reader, from)
    // "Popcorn (pc) - 4 dc in same st, drop loop …": a plain dash, too.
    const form = (startOfLine || special) && namesForm(reader, from, named)
    const ruled = (startOfLine || form) && (worked || form || explains()) && passRule(reader, worked || form)
    if (!ruled && !reader.skip(':', '=')) {
      passDecoration(reader, false)
      const alone = startOfLine && (reader.peek()?.first ?? true)
      if (!alone) return null
      const section = sectionOf(words) !== null
      if (!section && (!bracketOf(bracket, words.join(' ')) || !isTitle(reader, from, decorated))) return null
      return titled(section ? 'section' : 'part')
    }
    const equals = reader.tokens[reader.at - 1]!.key === '='
    // "16 dc = 4 in" is a gauge.
    if (equals && isMeasure(reader)) return null
    // "Foundation chain: 14.", "Chain = 20": the label says itself what is made.
    const chained = BEGINS.test(words.join(' ')) && reader.tokens[named - 1]!.kinds.has('chain')
    if (chained && reader.peek()?.kind === 'number' && endsChain(reader, 1)) {
      reader.at = named - 1
      return { ...titled('part'), kind: 'round' }
    }
    const to = reader.at
    // "Sampler Block 7: Pebbles" over everything is a title.
    let end = to
    while (from === 0 && reader.tokens[end]?.kinds.size === 0 && !reader.tokens[end]!.first) end++
    if (!equals && end > to && reader.tokens[end]?.first && sectionOf(words) === null) {
      reader.at = end
      return titled('part')
    }
    const name = words.join(' ')
    const label = reader.words(reader.span(from)).replace(/[:=.—–|\s]+$/, '')
    const make = (kind: Heading['kind']): Heading => ({
      kind,
      from,
      to,
      numbers: null,
      label,
      span: reader.span(from),
    })
    // "You'll need to know: ch = chain, dc = double crochet": the label of a list of abbreviations.
    if (sectionOf(words) !== null || (!equals && reader.key(1) === '=')) return make('section')
    // "Center:" on a line of its own: what follows is that part.
    if (
      !equals &&
      (reader.peek()?.first ?? false) &&
      bracketOf(bracket, name) &&
      isTitle(reader, from, decorated)
    )
      return titled('part')
    // "To make a beginning puff: …".
    reader.at = from
    const called = passToMake(reader) ? reader.at : from
    const stitch = readStitch(reader)
    passOfRound(reader)
    const stitched = stitch !== null && (reader.at === named || reader.sees('/'))
    reader.at = to
    const abbreviation = bracket !== null && ABBREVIATES.test(bracket)
    if (called > from && (stitched || (!numbersBegan && usesLater(reader, called, named))))
      return {
        ...make('definition'),
        called,
        label: reader.words({ ...reader.span(called), end: reader.tokens[named - 1]!.end }),
      }
    if (stitched || equals || (abbreviation && !words.some((word) => wordOf(word).kinds.has('round'))))
      return make('definition')
    // "Sampler Block 7: Pebbles": a title that has two parts.
    const opens = reader.tokens[from]!.paragraph || from === 0
    const ends = equals || !opens ? 0 : titleEnd(reader)
    if (ends > 0 && isTitle(reader, from, decorated)) {
      reader.at = ends
      return { ...make('part'), to: ends }
    }
    // "Starting at a corner: *…" behind the number of a round goes on with it.
    if (numbersBegan && GOES_ON.test(name)) return null
    return make('round')
  })
}
const GOES_ON = /^(starting|beginning|working|continuing|going|from|into|in|using|now|then|next)\b/i

/** "To make a", "how to work the", "how to", "working an" before the name of a stitch; passes it. */
const passToMake = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('how')
    const verb = /^(make|work|do|form|making|working|crochet)$/
    const to = reader.skip('to')
    if (verb.test(reader.spelled())) reader.at++
    else if (!to) return null
    const named = reader.skip('a', 'an', 'the', 'each')
    return to || named || null
  }) === true

/** "To work crossed pair: skip next st, dc in next st, …": a name of the text's own that what follows uses, and no piece. */
function usesLater({ tokens, text }: Reader, called: number, named: number): boolean {
  const [first, next] = [tokens[named + 1], tokens[named + 2]]
  if (!first || named - called > 3 || first.kind === 'chains' || first.kinds.has('chain') || first.first)
    return false
  if (next?.kinds.has('chain') || ['ring', 'foundation'].some((kind) => first.kinds.has(kind))) return false
  const name = text.slice(tokens[called]!.start, tokens[named - 1]!.end).toLowerCase()
  return text
    .slice(first.end, first.end + MOST_BETWEEN)
    .toLowerCase()
    .includes(name)
}
/** Characters between a name and its first use that are looked through. */
const MOST_BETWEEN = 4000

const WORKS = new Set([
  'instruction',
  'verb',
  'into',
  'where',
  'number',
  'chain',
  'step',
  'round',
  'how-often',
])

/** Where the line in hand ends, if it holds names alone ("Pebbles"); else 0. */
function titleEnd(reader: Reader): number {
  let at = reader.at
  while (at < reader.tokens.length && !reader.tokens[at]!.first) {
    const { kind, kinds, text } = reader.tokens[at]!
    const named = [...kinds].every((each) => !WORKS.has(each)) && /^\p{Lu}/u.test(text)
    if (kind !== 'word' || !named) return 0
    at++
  }
  const begins = reader.at
  const stitch = at > begins ? reader.attempt(() => readStitch(reader)) : null
  const works = stitch !== null && WORKED_FORMS.has(stitch.form)
  reader.at = begins
  return works || at - begins > MOST_WORDS ? 0 : at
}

/** A heading may stand behind these within a line. */
const FREE_BEHIND = new Set(['.', ')', ']', ';', ':', '!', '•', '■', '▪', '·', '–', '»', '◦', '●'])
const BULLETS = /^[•■▪·–»◦●-]$/
/** Sections in which every label is a stitch that the text explains. */
const EXPLAINS = /^((uk|us) )?(special|stitch(es)?|sts?\b|abbrev|key\b)/

/** "* Edge st: sc through both loops": an entry of a list of stitches. */
const labelled = (reader: Reader): boolean =>
  [1, 2, 3].some((ahead) => reader.key(ahead) === ':' && reader.peek(ahead - 1)?.kind === 'word')

/** "1. FULL SQUARE", "2) The Leaf", "STEP 2 - THE BASE": passes the number before a title that stands alone on its line. */
const passPartNumber = (reader: Reader): boolean =>
  reader.attempt(() => {
    const step = /^(step|part|stage|section)$/.test(reader.spelled()) && ++reader.at > 0
    if (reader.number() === null || !reader.skip('.', ')', ...(step ? [':', '-', '–', '—'] : []))) return null
    const at = reader.at
    const named = reader.tokens.slice(at, titleEnds(reader)).filter(({ kind }) => kind === 'word')
    return named.length > 0 && named.every(({ text }) => /^\p{Lu}/u.test(text)) && isTitle(reader, at, true)
      ? true
      : null
  }) === true

/** Where the words of a line end before a bracket or the next line. */
function titleEnds(reader: Reader): number {
  let end = reader.at
  while (reader.tokens[end] && !reader.tokens[end]!.first && !/^[([]$/.test(reader.tokens[end]!.key)) end++
  return end
}

/** Every heading of the text, in order. */
export function findHeadings(reader: Reader): Heading[] {
  const headings: Heading[] = []
  const numbered = numberedLines(reader.tokens)
  let special = false
  let numbersBegan = false
  for (let index = 0; index < reader.tokens.length; index++) {
    const token = reader.tokens[index]!
    const before = reader.tokens[index - 1]?.key ?? '.'
    reader.at = index
    const counted = token.first && !numbered.has(index) && passPartNumber(reader)
    const stepped = token.first && !counted && !numbered.has(index) && passStep(reader)
    const decorated = counted || stepped || (token.first && passDecoration(reader, true))
    // "* sc in next st …" is worked: a sign before a title has its like behind it.
    const closed = counted || (decorated && isDecorated(reader))
    const start = reader.at
    const listed: boolean = !token.first && BULLETS.test(before) && reader.tokens[index - 1]!.first
    // "- Knot (kn): …" in a list of special stitches.
    // "SPECIAL STITCH -- Knot (kn): …".
    const ruled: boolean =
      special && /^[-–—]$/.test(before) && /^[-–—]|stitch/.test(reader.tokens[index - 2]?.key ?? '')
    const free: boolean = token.first || FREE_BEHIND.has(before) || (listed && special) || ruled
    const behind: boolean = listed || ruled || (!token.first && /^[:.;]$/.test(before))
    // "Size 10 thread. Picot: ch 3, sl st in last sc."
    // "3. Corner = (dc, ch 2, dc) in next sp."
    const head = reader.peek()
    const named = head !== undefined && (isForm(head) || head.kinds.has('counted'))
    const told = named && (reader.key(1) === '=' || (isForm(head) && reader.key(1) === ':'))
    const inline: boolean = behind && (special || told)
    const explained: boolean = decorated && !numbersBegan && explainsWorked(reader)
    const found: Heading | null =
      free && reader.peek()
        ? ((numbered.has(index) ? readNumberedLine(reader) : readRoundHeading(reader, token.first)) ??
          (token.first ? (readShortened(reader, special) ?? readBareSection(reader)) : null) ??
          (!decorated || closed || (special && labelled(reader)) || told || explained
            ? readLabelHeading(reader, token.first, inline, numbersBegan, special)
            : null))
        : null
    if (found && decorated && !numbered.has(index)) {
      reader.at = found.to
      passDecoration(reader, false)
    }
    const heading: Heading | null =
      found && decorated
        ? { ...found, from: index, to: reader.at, ...(explained && { worked: true }) }
        : found
    reader.at = start
    if (!heading) continue
    const section: string | null = heading.kind === 'section' ? (heading.label ?? '').toLowerCase() : null
    const begins = BEGINS.test((heading.label ?? '').toLowerCase())
    const explains = special && !begins && !token.kinds.has('round')
    if (heading.kind === 'round' && heading.numbers === null && explains) {
      headings.push({ ...heading, kind: 'definition' })
    } else
      headings.push(
        (numbersBegan || !isProse(reader, heading)) && !tellsHow(heading)
          ? heading
          : { ...heading, kind: 'section' },
      )
    numbersBegan ||= heading.kind === 'round' && heading.numbers !== null
    if (heading.kind === 'part') special = false
    else if (section !== null)
      special = EXPLAINS.test(section) || sectionOf(section.split(/\s+/)) === 'explained'
    else if (heading.kind === 'round' && heading.numbers !== null) special = false
    index = Math.max(index, heading.to - 1)
  }
  const within = placesWithin(reader, headings)
  const own = headings.filter((heading) => !within.has(heading))
  const first = own.findIndex(({ kind, numbers }) => kind === 'round' && numbers !== null)
  return own.map((heading, at) =>
    at < first && isWorkedLater(reader, heading, own[first]!)
      ? { ...heading, kind: 'definition', worked: true }
      : heading,
  )
}
