/**
 * Reads written rounds: text → tree → worked rounds → account, with everything a tech editor would mark.
 * The one door of this room; printing is the other (`print.ts`).
 */
import type { Finding } from '../../shared-types/finding'
import type { Terms } from '../../shared-types/project'
import { finding, said } from '../findings/finding'
import type { Said } from '../findings/finding'
import type { RoundAccount } from './account'
import { isAccessory, ON_ANY } from './accessories'
import { withoutWildAmounts } from './amounts'
import { beginPart, joinTwins, repeatsPart } from './begin-part'
import { completing, withChanges } from './changed-rounds'
import { courseFor, keepCourse, noted, readingFrom } from './continued'
import type { Course } from './continued'
import { inFirstChain } from './first-chain'
import { foundationMade, isFoundationOnly, makesFoundation } from './first'
import { parseRounds } from './grammar'
import { grownItems } from './growth'
import { LIMITS } from './limits'
import { movedTail } from './moved'
import { addFinding, startReading } from './reading'
import type { Reading } from './reading'
import { severalOf } from './pieces'
import { lapsOf, repeatedItems } from './repeated-rounds'
import { commit, workRound } from './rounds'
import { foundationRow, sampleChain } from './sample-chain'
import type { After } from './state'
import { restBehind, takeOver } from './taken-over'
import { findTerms } from './text-terms'
import type { TermsFound } from './text-terms'
import { tokenize } from './tokens'
import type { Span } from './tokens'
import type { Item, RoundNode, RoundsTree } from './tree'
import { overTurn } from './turning'
import { proseOf, workTold } from './unread'
import type { WorkedRound } from './worked'

export interface ReadOptions {
  /** The terms the text is written in; found out where they are not given. */
  readonly terms?: Terms
  /** What the round before the text left. */
  readonly after?: After
  /** Colours of the materials list; else those that the text lists. */
  readonly colours?: readonly string[]
  /** By line: characters that stand before the designer's own words and are no part of a column. */
  readonly before?: readonly number[]
}

export interface ReadRounds {
  readonly rounds: readonly RoundAccount[]
  readonly worked: readonly WorkedRound[]
  readonly tree: RoundsTree
  readonly terms: Terms
  readonly findings: readonly Finding[]
}

/** What is wrong with the heading of a numbered round; true where nothing stands behind it. */
function checkNumber(reading: Reading, text: string, node: RoundNode): boolean {
  if (!node.numbers) return false
  const [number] = node.numbers
  const say = (found: Said) => addFinding(reading, text, node, number, { ...found, span: node.heading })
  const before = reading.number
  if (reading.history.size > 0 && number > before + 1) {
    const count = number - before - 1
    const missing = count === 1 ? `Rnd ${before + 1}` : `Rnds ${before + 1}–${number - 1}`
    say(said('rounds/number-missing', { before: `Rnd ${before}`, missing, count }))
  }
  // "Set-up round: …" stands before the first one.
  const [opening, ...others] = reading.worked
  const setUp = others.length === 0 && /found|set-?up|base|start|begin/i.test(opening?.label ?? '')
  const twice = !setUp && reading.history.size > 0 && number === before && reading.part === node.part
  if (twice && !makesFoundation(node.items)) say(said('rounds/number-twice', { round: `Rnd ${number}` }))
  if (reading.worked.length === 0 && reading.base.kind === 'round' && reading.base.state.unknown)
    say(said('rounds/earlier-missing', { round: `Rnd ${number}` }))
  const empty = !node.broken && node.items.every((item) => item.type === 'count')
  if (empty) say(said('rounds/empty-round'))
  return empty
}

/** Checks what hangs on the last round; it is none itself, and what follows goes on from that one. */
function readAccessory(
  reading: Reading,
  text: string,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
): void {
  const made = workRound(reading, tree, node, reading.number, node.items)
  if (node.broken) return
  for (const found of made.work.findings)
    if (!ON_ANY.has(found.code)) addFinding(reading, text, node, reading.number, found)
}

/** "Rnds 5 and 6: Hdc in each st. (28) Sc in next st, sl st in next st": what stands behind the count ends the last one. */
function withoutTail(items: readonly Item[]): readonly Item[] {
  const at = items.findLastIndex(({ type }) => type === 'count')
  return at < 0 || at === items.length - 1 ? items : items.slice(0, at + 1)
}

function readNode(reading: Reading, text: string, tree: Omit<RoundsTree, 'repeats'>, node: RoundNode): void {
  if (reading.worked.length > 0 && isAccessory(node, text)) {
    readAccessory(reading, text, tree, node)
    return
  }
  beginPart(reading, text, tree, node)
  joinTwins(reading, text, node)
  if (reading.pieces > 1 && !node.pieces && reading.base.kind === 'round')
    reading.base = { kind: 'round', state: severalOf(reading.base.state, reading.pieces) }
  reading.pieces = node.pieces ?? 1
  const fresh = reading.base.kind === 'none' && reading.history.size === 0
  const unbegun = reading.base.kind === 'chain' && reading.history.size === 0
  if (node.label === 'foundation' || (isFoundationOnly(node) && (fresh || unbegun))) {
    const made = foundationMade(node)
    // Chains that a note before it speaks of are none to work into.
    if (fresh || (unbegun && made?.kind === 'ring')) {
      reading.base = made ?? reading.base
      reading.foundation = reading.base
    }
    return
  }
  const bare = fresh && reading.base.kind === 'none'
  const founded = bare ? foundationRow(node.items) : null
  const chains = founded?.chains ?? (bare ? sampleChain(text, node) : null)
  if (chains !== null) {
    reading.base = { kind: 'chain', chains }
    reading.foundation = reading.base
  }
  // "Work same as for first motif" begins as that one does.
  if (fresh && reading.base.kind === 'none' && repeatsPart(node)) reading.base = reading.foundation
  const from = node.numbers ? node.numbers[0] : reading.number + 1
  const to = node.numbers ? node.numbers[1] : from
  if (to - from >= LIMITS.rounds || reading.worked.length >= LIMITS.rounds) {
    addFinding(reading, text, node, from, {
      code: 'rounds/too-long',
      span: node.heading,
      values: { received: `${to - from + 1} rounds`, most: `${LIMITS.rounds} rounds` },
    })
    return
  }
  const empty = checkNumber(reading, text, node)
  if (empty) node = { ...node, broken: true }
  const repeat = node.items.find((item) => item.type === 'repeat-round')
  const laps = repeat?.type === 'repeat-round' ? Math.max(to - from + 1, lapsOf(repeat)) : to - from + 1
  if (laps > LIMITS.rounds) {
    const values = { received: `${laps} rounds`, most: `${LIMITS.rounds} rounds` }
    addFinding(reading, text, node, from, { code: 'rounds/too-long', span: repeat ?? node.heading, values })
  }
  for (let lap = 0; lap < Math.min(laps, LIMITS.rounds); lap++) {
    const number = from + lap
    const ends = lap === laps - 1
    const own = ends ? node.items : withoutTail(node.items)
    let items = lap === 0 ? inFirstChain(reading, founded?.items ?? own) : own
    const unread = proseOf(node)
    if (unread && !repeat) {
      addFinding(reading, text, node, number, { ...said('rounds/not-read'), span: unread })
      node = { ...node, broken: true }
    }
    if (repeat?.type === 'repeat-round') {
      const again = repeatedItems(reading, tree, repeat, number, lap)
      if (!again) {
        const wanted = typeof repeat.from === 'number' ? repeat.from : number - 1
        addFinding(reading, text, node, number, {
          code: 'rounds/no-such-round',
          span: repeat,
          values: { number: wanted },
        })
      }
      const rest = own.filter((item) => item !== repeat)
      const counts = ends ? rest : rest.filter((item) => item.type !== 'count')
      const other = again && withChanges(again, repeat.changes ?? [])
      if (other?.open) {
        addFinding(reading, text, node, number, { ...said('rounds/not-read'), span: other.open })
        node = { ...node, broken: true }
      }
      items = other ? [...other.items, ...counts] : rest
      if (again && repeat.completes) {
        const at = node.items.indexOf(repeat)
        items = [...node.items.slice(0, at), ...completing(again), ...node.items.slice(at + 1)]
      }
      if (again && repeat.grows) items = grownItems(reading, tree, node, number, again, counts, repeat.grows)
    }
    const quiet = lap > 0 && items === own
    const rest = overTurn(items, reading.carried)
    const made = workTold(reading, text, tree, node, number, rest.items)
    commit(reading, text, node, number, made, quiet)
    reading.carried = rest.carried
  }
}

/** Terms that do not go together, or that nobody can tell. */
function checkTerms(
  reading: Reading,
  text: string,
  tree: Omit<RoundsTree, 'repeats'>,
  found: TermsFound,
): void {
  const { us, uk, terms, by } = found
  const alien = terms === 'US' ? uk : us
  const at = alien ?? us ?? uk
  const index = at ? tree.rounds.findIndex((round) => at.start >= round.start && at.start < round.end) : -1
  const node = index >= 0 ? tree.rounds[index]! : null
  const number = node?.numbers?.[0] ?? Math.max(1, index + 1)
  const say = (span: Span | null, found: Said) => addFinding(reading, text, node, number, { ...found, span })
  if (alien && (by === 'caller' || by === 'text'))
    say(alien, said('rounds/wrong-terms', { terms, word: alien.text }))
  else if (us && uk) say(alien, said('rounds/mixed-terms', { us: us.text, uk: uk.text }))
  else if (by === 'default' && usesAmbiguous(tree)) say(null, said('rounds/terms-unclear', { terms }))
}

const AMBIGUOUS = /^(fp|bp)?(dc|tr|dtr|trtr|double|treble)(\d+tog|s)?$/
const usesAmbiguous = (tree: Omit<RoundsTree, 'repeats'>): boolean =>
  tree.tokens.some((token) => AMBIGUOUS.test(token.key))

function emptyTree(text: string, terms: Terms): RoundsTree {
  return { text, terms, tokens: [], rounds: [], definitions: [], usual: [], colours: [], repeats: new Map() }
}

/** Number of the first round, as far as the text or what came before tells. */
function firstNumber(rounds: readonly RoundNode[], after: After | undefined): number {
  const first = rounds.find((round) => round.label !== 'foundation')
  if (first?.numbers) return Math.max(1, first.numbers[0])
  const follows = after && !after.start && after.ring === undefined && after.chain === undefined
  return follows ? 2 : 1
}

interface ReadTexts extends Omit<ReadRounds, 'tree'> {
  /** One for each text. */
  readonly trees: readonly RoundsTree[]
}

/**
 * Reads several texts as one motif: each goes on where the one before left off, as the rounds of a project file do.
 * `worked[].source` is the index of the text. Never throws; what is wrong comes back as findings.
 */
export function readRoundTexts(texts: readonly string[], options: ReadOptions = {}): ReadTexts {
  const length = texts.reduce((sum, text) => sum + text.length, 0)
  if (length > LIMITS.characters) {
    const terms = options.terms ?? 'US'
    const values = { received: `${length} characters`, most: `${LIMITS.characters} characters` }
    const findings = [finding('rounds/too-long', 'the text', values)]
    return { rounds: [], worked: [], trees: texts.map((text) => emptyTree(text, terms)), terms, findings }
  }
  const all = texts.length === 1 ? (texts[0] ?? '') : texts.join('\n')
  // Several texts are read anew; of one, what stands before a change is known.
  const found = texts.length === 1 ? courseFor(all) : null
  const allTokens = tokenize(all, found && { tokens: found.course.tokens, common: found.common })
  const allTerms = findTerms(all, allTokens, options.terms)
  const { terms } = allTerms
  const tail = found && movedTail(found.course.text, all, found.common)
  const known = found && { bodies: found.course.bodies, common: found.common, tail }
  const parsed = texts.map((text) => {
    const tokens = text === all ? allTokens : tokenize(text)
    return { text, tokens, ...withoutWildAmounts(parseRounds(text, terms, tokens, known)) }
  })
  const rounds = parsed.flatMap(({ tree }) => tree.rounds)
  const colours = options.colours ?? options.after?.colours ?? parsed.flatMap(({ tree }) => tree.colours)
  const fresh = startReading(options.after, firstNumber(rounds, options.after), colours, options.before)
  const [one] = parsed
  const key = JSON.stringify([one?.bodies.key, one && describedBy(one.tree), options.after, colours])
  const start =
    found && one ? sameRounds(found.course, found.common, key, one.tree.rounds, options.before) : 0
  const isKnown = found !== null && one !== undefined && found.course.key === key
  const rest = isKnown
    ? restBehind(found.course, tail?.moved ?? null, start, all, found.common, rounds, options.before)
    : null
  const reading = start > 0 ? readingFrom(found!.course, start, fresh) : fresh
  const earlier = reading.findings.splice(0)
  const notes = start > 0 ? found!.course.notes.slice(0, start) : []
  let head = 0
  parsed.forEach(({ text, tokens, tree, findings }, source) => {
    reading.source = source
    if (start === 0) for (const { chains, statement } of tree.usual) reading.usual.set(chains, statement)
    checkTerms(reading, text, tree, texts.length === 1 ? allTerms : findTerms(text, tokens, terms))
    head = reading.findings.length
    reading.findings.push(...earlier)
    let taken = false
    tree.rounds.forEach((node, index) => {
      if (index < start || taken) return
      const number = node.numbers?.[0] ?? reading.number + 1
      for (const slip of findings) if (slip.round === index) addFinding(reading, text, node, number, slip)
      readNode(reading, text, tree, node)
      notes.push(noted(reading, head))
      if (rest && index === start) taken = takeOver(reading, rest, notes, head)
    })
  })
  if (one && texts.length === 1) {
    const { bodies } = one
    const nodes = one.tree.rounds
    keepCourse(
      {
        text: all,
        key,
        before: options.before ?? [],
        tokens: allTokens,
        nodes,
        bodies,
        reading,
        notes,
        head,
      },
      found?.course ?? null,
    )
  }
  const findings = [...reading.findings]
  if (rounds.length === 0) findings.push(finding('rounds/nothing', 'the text'))
  const asWorked = (node: RoundNode): RoundNode => ({
    ...node,
    items: reading.gathered.get(node.items)?.items ?? node.items,
  })
  const trees = parsed.map(({ tree }) => ({
    ...tree,
    rounds: tree.rounds.map(asWorked),
    repeats: reading.repeats,
  }))
  return { rounds: reading.accounts, worked: reading.worked, trees, terms, findings }
}

/** What the text says of all its rounds: its own stitches in its words, and its notes on chains. */
const describedBy = ({ text, definitions, usual }: Omit<RoundsTree, 'repeats'>): readonly string[] => [
  // "2 dc, ch 2, 2 dc in ring (shell made)": the stitches stand before the words.
  ...definitions.map(({ names, description, items }) =>
    [names.join(), description, { start: items[0]?.start ?? 0, end: items.at(-1)?.end ?? 0 }]
      .map((said) => (typeof said === 'string' ? said : text.slice(said.start, said.end)))
      .join(' '),
  ),
  ...usual.map(
    ({ chains, statement: { says, stitch, notIn } }) => `${chains} ${says} ${stitch} ${notIn?.join() ?? ''}`,
  ),
]

/** How many rounds at the beginning are those of a course, word for word and in the same places. */
function sameRounds(
  course: Course,
  common: number,
  key: string,
  rounds: readonly RoundNode[],
  before: readonly number[] = [],
): number {
  if (course.key !== key) return 0
  let count = 0
  while (count < rounds.length && count < course.nodes.length) {
    const round = rounds[count]!
    const known = course.nodes[count]!
    const same = round.items === known.items && round.start === known.start && round.end === known.end
    if (!same || round.end >= common || round.part !== known.part || round.label !== known.label) break
    if (before[round.line - 1] !== course.before[round.line - 1]) break
    count++
  }
  return count
}

/** Reads a text of one or many rounds. Never throws; what is wrong comes back as findings. */
export function readRounds(text: string, options: ReadOptions = {}): ReadRounds {
  const { trees, ...read } = readRoundTexts([text], options)
  return { ...read, tree: trees[0] ?? emptyTree(text, read.terms) }
}

export type { After, RoundAccount }
