/** Labels at the beginning of a line behind which nothing is worked. */
import { listsAbbreviations } from './abbreviation-lists'
import { isMultiple } from './multiples'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import { readStitch } from './vocabulary'

/** "We use American words: sc, dc, tr", "The stitches here are: …": what is said of the words, not what is worked. */
const SPOKEN =
  /\b(words|terms|terminology|names|language|abbreviations|stitch names)\b|^(we|i|you|i'll|we'll|you'll) (use|used|need|must|should|will (use|need))\b|\bstitches (here|i use|we use|are)\b/iu

/** "Worked in four colors: A (center), B, C and D": what it is made of. */
const OF_COLOURS = /^(worked|made|crocheted|shown|pictured) (in|with|from)\b/iu

/** "In the bag: red wool, a 4mm hook, a blunt needle": what there is to work with. */
const STUFF =
  /\b(?:hooks?|needles?|scissors|yarns?|wool|cotton|threads?|ribbons?|buttons?|balls?|skeins?|stitch markers?)\b/giu
const NEEDED = 2
const listsStuff = (words: string): boolean =>
  new Set(words.toLowerCase().match(STUFF)).size >= NEEDED &&
  !/\b(?:join|with|using|change|attach|in(?:to)?) /iu.test(words)

/** "How to join:", "How do I change color?": what is explained, wherever it stands. */
export const tellsHow = ({ kind, numbers, label }: Heading): boolean =>
  kind === 'round' &&
  numbers === null &&
  (/^how (to|do|i|we)\b/iu.test(label ?? '') || OF_EVERY.test(label ?? ''))

/** "End every round: sl st in first st." */
const OF_EVERY =
  /^(to )?(end|ends|ending|finish|close|join|begin|start|beginning|closing)( of)? (every|each|all)( the)? (rounds?|rnds?|rows?)$/iu

/** "Spiral: never join, never turn", "This month's freebie: a scrubber!" before the rounds: nothing there is worked. */
export function isProse(reader: Reader, { kind, numbers, label, from, to }: Heading): boolean {
  if (kind !== 'round' || numbers !== null || reader.tokens[to]?.first !== false) return false
  // "Shell in shell: work shell in ch-2 sp of next shell" says what is understood.
  if (/^(\p{L}+) (?:in|into|over|on) (?:(?:a|the|next|each) )?\1$/iu.test(label ?? '')) return true
  let at = from
  const { tokens } = reader
  const line = tokens.slice(
    from,
    tokens.findIndex(({ first }, index) => index > from && first),
  )
  if (line.some(({ key }) => isMultiple(key))) return true
  const behind = tokens.slice(to, from + line.length)
  if (behind.length > 0 && listsStuff(reader.text.slice(behind[0]!.start, behind.at(-1)!.end))) return true
  if (OF_COLOURS.test(label ?? '') || listsAbbreviations(reader, to, from + line.length)) return true
  const spoken = SPOKEN.test(label ?? '')
  for (; at < reader.tokens.length && (at === from || !reader.tokens[at]!.first); at++) {
    const { kind: is, kinds, key } = reader.tokens[at]!
    // "UK crochet terms: ch chain, dc double crochet".
    if (!spoken && kinds.has('chain')) return false
    if (is === 'number' || is === 'chains' || kinds.has('ring') || key === 'as') return false
    reader.at = at
    if (at >= to && !spoken && !kinds.has('stitch') && readStitch(reader) !== null) return false
  }
  return at < reader.tokens.length
}
