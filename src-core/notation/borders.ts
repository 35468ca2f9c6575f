/** A border of something that the text does not make: what it is worked on is taken to be there. */
import type { Reading } from './reading'
import { stateOf } from './state'
import type { Base, RoundState } from './state'
import { placeParts } from './tree'
import type { Item, RoundNode, RoundsTree } from './tree'

const MADE = new Set<Item['type']>(['foundation'])
const WORDS = /\b(border|edging|edge)\b/i
/** "With RS facing, join Navy with sl st in any corner." and nothing more before the round. */
const JOINS_FIRST =
  /\b(?:join|attach|rejoin)\b[^.;:]{0,60}\b(?:in|into|to|at) (?:any|one|a) corner\b[^.;:]{0,40}[.;:]?\s*$/i

/** "Join M in any corner, 1 ch, *3 dc in corner, …" where no round stands before it. */
export function standsOnEdge(node: RoundNode, { text }: Pick<RoundsTree, 'text'>): boolean {
  if (node.items.some(({ type }) => MADE.has(type))) return false
  if (!WORDS.test(text.slice(0, node.end))) return false
  if (JOINS_FIRST.test(text.slice(0, node.start))) return true
  const [first] = placeParts(node.items)
  if (!first || first.noun.kind === 'ring' || first.noun.kind === 'own' || first.noun.kind === 'chain')
    return false
  const any = first.which === 'any'
  const cornered = first.which === 'same' && first.noun.kind === 'space'
  // "Join with ss to the first tr after a corner space."
  const [opens] = node.items
  const joined = opens?.type === 'colour' && opens.place?.parts[0] === first && first.count === 1
  return any || cornered || joined
}

/** Nothing is known of it: everything that is asked for is there. */
export const EDGE: Base = { kind: 'round', state: stateOf(-1, 0, [], { unknown: true }) }

const PLURALS =
  '(motifs|squares|hexagons|octagons|triangles|pentagons|diamonds|flowers|blocks|wheels|medallions|circles|hexies|pieces|strips|panels|grannies|bags?|cushions?)'
/** What a border goes round where several motifs were joined before it. */
const ON_JOINED = new RegExp(
  [
    '\\bseams?\\b',
    '\\b(outer|outside)\\s+(corner|side|edge|sp|space|petal|tip|point|ch)',
    `\\bjoined\\s+(work|piece|blanket|throw|mat|panel|runner|edge|sides?|${PLURALS})`,
    '\\b(of|round|around)\\s+(the\\s+)?(whole|joined|finished|assembled)\\b',
  ].join('|'),
  'i',
)
/** "Whipstitch nine squares together, three by three", told between the motif and its border. */
const JOINED = new RegExp(
  `\\b(sew|sewn|stitch|whip-?stitch|mattress|oversew|join|joined|crochet|lay|arrange|assemble)\\b[^.]{0,80}\\b(together|${PLURALS})\\b`,
  'i',
)
const OFF = /\b(fasten|fastened|cut|break|finish)\s+(off|yarn|thread|wool|the)\b|\bf\.?\s?o\.?\b/gi

/** "EDGING", "Outer border": the name of a part that is worked once the motifs are joined. */
const BORDER_PART = /^\W*(?:(?:the|outer|outside|final|lace|picot|shell)\s+)*(?:border|edging)\W*$/i

/** "Second and Following Hexagons", "Rnd 6 (joining rnd)": there are several, joined to each other. */
const SEVERAL = new RegExp(
  `\\b(?:second|following|remaining|other|next)\\b[^.\\n]{0,20}\\b${PLURALS}\\b|\\bjoining (?:rnd|round)\\b`,
  'i',
)

/** Whether a round belongs to the border of a work whose motifs are joined before, and is none of a motif. */
function isOfBorder({ rounds, text }: Pick<RoundsTree, 'rounds' | 'text'>, node: RoundNode): boolean {
  if (!BORDER_PART.test(node.part ?? '')) return false
  const first = rounds.find(({ part }) => part === node.part)!
  const before = rounds.find(({ label, start }) => label !== 'foundation' && start < first.start)
  if (!before || (first.numbers?.[0] ?? 1) !== 1) return false
  const told = text.slice(before.end, first.start)
  return SEVERAL.test(told) || JOINED.test(told) || ON_JOINED.test(told)
}

/** "Rnd 6 (joining rnd): work as Rnd 6, but …" behind Rnd 6 itself: the same round, as later motifs have it. */
const isJoinedAgain = ({ rounds }: Pick<RoundsTree, 'rounds'>, node: RoundNode): boolean => {
  const [from, to] = node.numbers ?? [0, 0]
  if (from === 0 || from !== to || !/\bjoin(?:ing|ed)?\b/i.test(node.label ?? '')) return false
  return rounds.some(
    ({ numbers, start, label }) =>
      start < node.start && numbers !== null && numbers[0] <= from && from <= numbers[1] && label === null,
  )
}

/** Whether a round is none of those that the motif is made of: of the border of the whole, or told once more for joining. */
export const isBesideMotif = (tree: Pick<RoundsTree, 'rounds' | 'text'>, node: RoundNode): boolean =>
  isOfBorder(tree, node) || isJoinedAgain(tree, node)

/** Whether a part of its own is a border of what joined motifs come to, of which nothing is known. */
export function goesRoundJoined(text: string, before: RoundNode | undefined, node: RoundNode): boolean {
  if (!before || !WORDS.test(node.part ?? '')) return false
  const own = text.slice(before.start, before.end)
  const ended = [...own.matchAll(OFF)].at(-1)
  const between = (ended ? own.slice(ended.index) : '') + text.slice(before.end, node.start)
  return JOINED.test(between) || ON_JOINED.test(between) || ON_JOINED.test(text.slice(node.start, node.end))
}

/** A part as it stood when the next one began: its last round, and all of them by number. */
export interface PartEnd {
  readonly state: RoundState
  readonly history: ReadonlyMap<number, RoundState>
}

const wordsOf = (name: string): readonly string[] =>
  (name.toLowerCase().match(/\p{L}+/gu) ?? []).map((word) => word.replace(/s$/, ''))

/** "BORDER FOR A SINGLE SQUARE" behind a circle: the earlier part that a border is named after. */
export function namedEnd({ ends, part: last }: Reading, name: string | null): PartEnd | null {
  if (name === null || !WORDS.test(name)) return null
  const words = new Set(wordsOf(name))
  const shared = ([part]: readonly [string, PartEnd]) => {
    const own = wordsOf(part.replace(/\(.*\)/, ''))
    return words.has(own.at(-1) ?? '') ? own.filter((word) => words.has(word)).length : 0
  }
  const known = [...ends].map((entry) => ({ entry, shares: shared(entry) }))
  const most = Math.max(0, ...known.map(({ shares }) => shares))
  const named = most > 0 ? known.findLast(({ shares }) => shares === most) : undefined
  return named && named.entry[0] !== last ? named.entry[1] : null
}
