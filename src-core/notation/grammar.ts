/**
 * The grammar of a whole text: rounds taken apart at their headings, the stitches that the text explains, its
 * colours. A recursive-descent parser by hand (docs/decisions/written-rounds-parser.md says why).
 */
import type { Terms } from '../../shared-types/project'
import { said } from '../findings/finding'
import { listsOnly, makesGroup, makesRing, makesSteps, namesPost, readDefinition } from './definitions'
import { isKnown } from './known-names'
import { aliasesOf } from './aliases'
import { explainedWithin, withChains } from './explained'
import { findFilet } from './filet'
import { goesOn } from './goes-on'
import { headingScopes } from './heading-scope'
import { findHeadings } from './headings'
import { partName } from './part-names'
import { headsMore, withPieces } from './pieces'
import { lineEnd, looseRounds, readPreamble, sectionEnd, sentenceEnd } from './preamble'
import type { Body } from './preamble'
import { Reader } from './reader'
import type { GrammarFinding } from './reader'
import { readBody, spanTokens } from './round-body'
import type { Moved } from './moved'
import type { Heading } from './round-headings'
import { sectionOf } from './sections'
import { isSlip } from './stitch-name'
import { addColours } from './colour-lists'
import { endsOff } from './accessories'
import { isCountAgain } from './counts-again'
import { withoutTalk } from './talk-before'
import { countsInTurn } from './told-counts'
import { tellsJoins } from './told-joins'
import { tokenize } from './tokens'
import type { Token } from './tokens'
import type { Definition, Item, RoundNode, RoundsTree, UsualChain } from './tree'
import { usualChains, usualLoop, usualTurn } from './usual-chains'

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

/** What was read of a text before it was changed: of its beginning, and of what stands behind the change, farther on. */
export interface Known {
  readonly bodies: Bodies
  readonly common: number
  readonly tail: { readonly moved: Moved; readonly from: number } | null
}

/** Whether a part can begin with it: a chain, a ring, stitches with their number or place. */
const begins = (item: Item): boolean =>
  ['chain', 'foundation', 'group', 'star', 'placed', 'evenly', 'repeat-round', 'skip'].includes(item.type) ||
  (item.type === 'colour' && item.place !== null) ||
  (item.type === 'work' && (item.place !== null || item.count !== null))

const TERMS_ALONE = /^(uk|us|british|american)( crochet)? (terms|terminology)$/i
/** "Work as for First Motif", "Work Rounds 1–3. On Round 4 …": what another part says, told again in words. */
const isRetold = (item: Item): boolean =>
  item.type === 'repeat-round' || (item.type === 'note' && item.unread === 'work')

/** "MC" is the main color where the text joins it or lists it, else a magic circle. */
const MAIN_COLOUR =
  /\b(with|join|to|using|attach|off|cut|break|drop)\s+MC\b|^In MC\b|\bMC\)?\s*(?:[:=–—-](?!\s*(?:ch\s*\d|\d))|\(\p{L})|[(=]\s*MC\)|main colou?r/imu

const JOINED = new Set<Item['type']>(['colour', 'join', 'note', 'count', 'statement'])
const joinsYarn = (item: Item): boolean =>
  item.type === 'colour' && (item.stitch === null || isSlip(item.stitch))

/** "Treble triangles with a picot trim": a stitch's word without number or place works nothing. */
const doesSomething = (item: Item): boolean =>
  !['note', 'count', 'statement'].includes(item.type) &&
  !(item.type === 'work' && item.count === null && item.place === null)

const WORKED = new Set<Item['type']>(['work', 'group', 'star', 'placed', 'evenly'])

/** "Ch 5, join. Ch 3, 11 dc in ring, join. 2nd rnd: …": what stands before the second round is the first one. */
function withFirst(rounds: readonly RoundNode[]): readonly RoundNode[] {
  const second = rounds.findIndex(({ numbers }) => numbers !== null)
  const before = rounds[second - 1]
  if (rounds[second]?.numbers?.[0] !== 2 || before?.label !== 'foundation') return rounds
  const works = before.items.some(
    (item) => WORKED.has(item.type) && !(item.type === 'work' && isSlip(item.stitch)),
  )
  if (!works || before.part !== rounds[second]!.part) return rounds
  return rounds.map((round) =>
    round === before ? { ...round, numbers: [1, 1] as const, label: null } : round,
  )
}

/** A round behind the change as it was read, in its new place. */
function bodyBehind({ bodies, tail }: Known, at: number, end: number) {
  const { moved } = tail!
  const found = bodies.at.get(at - moved.by)
  return found?.end === end - moved.by ? { ...moved.of(found), end } : null
}

/** Parses a text in the given terms. Never throws; what it cannot read becomes notes and findings. */
export function parseRounds(
  text: string,
  terms: Terms,
  tokens: readonly Token[] = tokenize(text),
  known: Known | null = null,
): Parsed {
  const definitions = new Map<string, Definition>()
  const reader = new Reader(text, tokens, terms, definitions)
  const plain = findHeadings(reader)
  const squares = findFilet(reader, plain)
  const headings = squares?.headings ?? plain
  reader.filet = squares?.filet ?? null
  reader.findings.length = 0
  if (!MAIN_COLOUR.test(text)) reader.rings.add('mc')
  const bounds = headings.map((heading, index) => {
    const next = headings[index + 1]?.from ?? tokens.length
    // Behind "Instructions" the work itself begins.
    const words = (heading.label ?? '').toLowerCase().split(/\s+/)
    if (heading.kind === 'section' && sectionOf(words) === 'opening') return heading.to
    // "UK terms" on a line of its own has nothing under it.
    const alone = tokens[heading.to]?.first ?? true
    if (heading.kind === 'section' && alone && TERMS_ALONE.test(heading.label ?? '')) return heading.to
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
      const known = definition.names.every(isKnown) && !makesGroup(definition) && !makesSteps(definition)
      if (heading.square) {
        explained.push({ ...definition, keys: [], form: 'special' })
        return
      }
      if ((!heading.worked && known) || namesPost(definition) || listsOnly(definition, text)) return
      explained.push(definition)
      if (!ring) reader.define(definition)
    }
    if (kind === 'section') usual.push(...usualChains(reader, heading.to, bounds[index]!))
    if (kind === 'section') addColours(colours, tokens, label ?? '', heading.to, bounds[index]!)
  })
  for (const found of explainedWithin(reader)) {
    const read = readDefinition(reader, found, found.end)
    if (read.keys.every((key) => definitions.has(key))) continue
    const definition = found.made && found.first ? withChains(read) : read
    if (!definition || (found.made && definition.items[0]?.type === 'chain')) continue
    explained.push(definition)
    reader.define(definition)
  }
  const words = explained.map(({ names, form, stitch }) => `${names.join()} ${form} ${stitch}`)
  const opens = headings.find((heading) => heading.kind === 'round')
  const before = text.slice(0, opens?.span.start ?? 0)
  const inLoop = usualLoop(before)
  const turned = usualTurn(before) || squares !== null
  const titles = headings.flatMap(({ kind, label }) => (kind === 'part' ? [label] : []))
  const bodies: Bodies = {
    key: [
      terms,
      ...words,
      ...reader.rings,
      JSON.stringify([...(reader.filet?.names ?? [])]),
      inLoop ?? '',
      `${turned}`,
      aliasesOf(tokens),
      ...titles,
    ].join('\n'),
    at: new Map(),
  }
  const same = known?.bodies.key === bodies.key
  const rounds: RoundNode[] = []
  const findings: (GrammarFinding & { round: number })[] = []
  let part: string | null = null
  const addRound = (
    from: number,
    to: number,
    heading: Heading | null,
    preamble = false,
    following: number | null = null,
  ) => {
    if (heading?.kind === 'round' && isCountAgain(reader, rounds, part, heading, from, to)) return
    reader.part = part === null ? null : partName(part)
    reader.inRound = (heading?.numbers ?? null) !== null
    const at = tokens[from]?.start ?? text.length
    const end = tokens[to]?.start ?? text.length
    const before = same && end < known!.common ? known!.bodies.at.get(at) : undefined
    const read = () => (preamble ? readPreamble(reader, from, to, readBody) : readBody(reader, from, to))
    const tail = same && tokens[from - 1] && tokens[from - 1]!.start >= (known!.tail?.from ?? Infinity)
    const behind = tail ? bodyBehind(known!, at, end) : null
    const body =
      behind ?? (before?.end === end ? before : { end, ...read(), found: reader.findings.splice(0) })
    bodies.at.set(at, body)
    const { broken, found } = body
    const scopes = heading?.kind === 'round' && heading.label !== null ? headingScopes(reader, heading) : []
    const opens = (heading?.numbers ?? null) === null && !rounds.some(({ numbers }) => numbers !== null)
    const spoken = opens && (heading || preamble) ? withoutTalk(text, body.items) : body.items
    const inTurn = countsInTurn(spoken, heading?.numbers ?? null)
    const whole = scopes.length > 0 ? [...scopes, ...inTurn] : inTurn
    const last = heading?.numbers?.[1] ?? null
    const on = preamble ? null : goesOn(reader, whole, last)
    const items = on?.items ?? whole
    const works = items.some(doesSomething)
    if (headsMore(heading?.label ?? null) && rounds.length > 0) return
    if (preamble || heading?.kind === 'part') usual.push(...usualChains(reader, from, to))
    if (!broken && !works && (heading?.numbers ?? null) === null) return
    // "CC: join in any st" between two rounds says with what the next one is worked.
    const onlyJoins = items.every(({ type }) => JOINED.has(type)) && items.some(joinsYarn)
    if (heading?.kind === 'round' && heading.numbers === null && rounds.length > 0 && onlyJoins) return
    if (heading && heading.numbers === null && !preamble && rounds.length === 0 && !items.some(begins)) return
    if (heading && heading.numbers === null && !preamble && rounds.length > 0 && endsOff(items)) return
    const retold = heading?.kind === 'part' && rounds.length > 0 ? items.find(isRetold) : undefined
    const joins = rounds.length > 0 && heading?.numbers === null && tellsJoins(heading.label, items)
    const only = retold && isRetold(items[0]!) ? retold : joins ? spanTokens(tokens, from, to) : null
    if (only) {
      const words = reader.words(spanTokens(tokens, from, to)).replace(/\s+/g, ' ')
      findings.push({ ...said('rounds/part-in-prose', { words }), span: only, round: rounds.length - 1 })
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
    if (!on || last === null) return
    // "Rep Rows 2 and 3 twice more." and then "Row 8:": the rows between are these.
    if (following !== null && following > last + 1) {
      const numbers = [last + 1, following - 1] as const
      const { start, end, line, column } = on.repeat
      const node = { numbers, label: null, heading: null, part, items: [on.repeat], broken: false }
      rounds.push({ ...node, start, end, line, column })
      return
    }
    const words = text.slice(on.repeat.start, on.repeat.end)
    findings.push({ ...said('rounds/part-in-prose', { words }), span: on.repeat, round: rounds.length - 1 })
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
      const follows = headings.slice(index + 1).find(({ kind }) => kind === 'round' || kind === 'part')
      const next = follows?.kind
      if (heading.kind === 'round')
        addRound(heading.to, bounds[index]!, heading, false, follows?.numbers?.[0] ?? null)
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
  const numbered = withFirst(counted)
  const nodes = titled ? numbered.map((round) => ({ ...round, part: null })) : numbered
  return {
    tree: {
      text,
      terms,
      tokens,
      rounds: nodes,
      definitions: explained,
      colours,
      usual,
      usualLoop: inLoop,
      turned,
      filet: reader.filet,
    },
    findings,
    bodies,
  }
}
