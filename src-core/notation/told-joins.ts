/** Motifs joined to others, told in sentences: "Next motifs: work as first, joining at the corners by replacing …". */
import { placeParts } from './tree'
import type { Span } from './tokens'
import type { Item, PlacePart } from './tree'
import type { Work } from './work'

const MOTIF =
  '(motifs?|squares?|hexagons?|octagons?|triangles?|flowers?|blocks?|wheels?|medallions?|circles?|hexies|pieces?|rows?|ones?)'
/** "Joining", "Join as you go", "To join the motifs", "Joining round (in place of Rnd 3)". */
const JOINS =
  /^(notes? (on|about|for) )?(for |to |the |how to |as[- ]you[- ]go |all )*(join\b|joining\b|jayg\b|assembly\b|assembling\b)/i
/** "Second and following motifs", "For the next flower", "All other squares". */
const OTHERS = new RegExp(
  `^(for |make |work |on |the |all |each |every )*(second|2nd|third|next|following|other|others|remaining|rest|further|subsequent|additional|more|last)\\b.{0,40}\\b${MOTIF}$`,
  'i',
)

/** What says how the work goes, before anything is worked. */
const SAYS = new Set<Item['type']>(['scope', 'statement', 'colour', 'count'])

/**
 * Whether what stands under a label is only told: another motif, or the joining of several, as an earlier round has it
 * but for what is replaced. A round that is written out is none of these.
 */
export function tellsJoins(label: string | null, items: readonly Item[]): boolean {
  const name = (label ?? '').replace(/\s*\(.*\)\s*$/, '').trim()
  if (!JOINS.test(name) && !OTHERS.test(name)) return false
  const first = items.find(({ type }) => !SAYS.has(type))
  if (first?.type === 'repeat-round') return true
  if (first?.type !== 'note') return false
  if (first.unread || !items.some(({ type }) => type === 'star')) return true
  return [...placeParts(items)].some(({ which }) => which === 'elsewhere')
}

/** "To join as you go, work Round 4 of the next hexagon with (…)": how motifs are joined. */
const TO_JOIN =
  /^(to|for|when|if)\s+(join|joining)\b(?!\s+(the\s+|new\s+|a\s+|next\s+)*(yarn|colou?r|thread|wool|with|sl|ss))|^(for|on|in)\s+(the|all|every|each)\s+(other|next|second|following|later|remaining|further)\b[^,:]{0,30}(motif|square|hexagon|octagon|triangle|flower|block|wheel|medallion|circle)s?\b/i
const ROUND_NAMED = /\b(r|rounds?|rnds?\.?|rows?)\s*\d/i
const JOINS_ONTO =
  /\b(neighbou?r|previous|former|corresponding|adjoining|adjacent|shared|joined|next|second)\b/i

/** Whether a sentence says how motifs are joined in a round that is named, which was worked before. */
export const tellsToJoin = (words: string): boolean =>
  TO_JOIN.test(words) && JOINS_ONTO.test(words) && ROUND_NAMED.test(words)

/** "Ss in next gap" behind "ss in next gap of first square": of that one again, as long as such gaps are its own. */
export function meetsAgain({ node, tree }: Work, part: PlacePart): boolean {
  if (part.which !== 'next' || part.noun.kind !== 'space' || part.noun.chains !== null) return false
  const said = ({ start, end }: Span): string => tree.text.slice(start, end).toLowerCase()
  const word = /\p{L}+s?$/u.exec(said(part))?.[0] ?? ''
  return [...placeParts(node.items)].some(
    (other) =>
      other.which === 'elsewhere' &&
      other.end <= part.start &&
      said(other)
        .split(/[^\p{L}]+/u)
        .includes(word),
  )
}
