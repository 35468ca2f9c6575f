/** Petals and points that are worked in rows, one after the other, on the round that carries them all. */
import type { Reader } from './reader'
import { stateOf } from './state'
import type { RoundState } from './state'
import { tellsToJoin } from './told-joins'
import type { NoteItem, RoundNode } from './tree'
import { wordOf } from './words'

const COUNT = '(\\d+|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)'
const NAMES =
  '(?:petals?|points?|lea(?:f|ves)|lobes?|sections?|rays?|arms?|ears?|tips?|wings?|flaps?|peaks?|spokes?)'
/** "Petals (make 5)", "Points (worked five times)", "Five petals". */
const MADE = new RegExp(
  `\\b(?:make|work|worked)\\s+${COUNT}\\b|\\b${COUNT}\\s+times\\b|^${COUNT}\\s+${NAMES}`,
  'iu',
)
/** "for each of the other 4 petals", "work five more petals". */
const MORE = new RegExp(
  `\\b(?<!between\\s(?:the\\s)?)(?:other|remaining|next|further)\\s+${COUNT}\\s+${NAMES}|\\b${COUNT}\\s+(?:more|other|further|remaining)\\s+${NAMES}`,
  'iu',
)
/** "Make five more in the same manner", "work another three to match": whole pieces, once a round is done. */
const MORE_ALIKE =
  /^(?!.*\b(?:rounds?|rnds?|rows?|sts?|stitch(?:es)?|reps?|repeats?|times)\b)(?:make|work|crochet|do|complete|you need)\s+(?:[\p{L}\d-]+\s+){1,2}(?:more|others?|further|motifs?|squares?|mats?|pieces?)\b\s*(?:\p{L}+\s+){0,3}?(?:in (?:exactly )?(?:the same|this|like|a similar) (?:manner|way|fashion)|like (?:this|it|the first)|the same|alike|to match|likewise|similarly)\b[^,;*(]*$/iu
/** "Join yarn in the next free st of the disc and make another point." */
const ANOTHER = new RegExp(`^(?:re-?join|join|attach)\\b[^*]{0,80}\\b(?:make|work) another ${NAMES}`, 'iu')
const AGAIN = /\b(re-?join|join|attach|rows?|fasten on)\b/i
const ROWS = /\brows?\b/i
/** Words and signs of the longest sentence that tells of more pieces (ours). */
const LONGEST = 80

const valueOf = (found: RegExpExecArray | null): number => {
  const word = found?.slice(1).find((each) => each !== undefined) ?? ''
  return Number(word) || wordOf(word.toLowerCase()).value
}

/** Whether a heading stands for others of what was just worked: "Next 4 petals:". */
export const headsMore = (label: string | null): boolean =>
  label !== null && MORE.test(label) && !/\d\s*\)$/.test(label)

/**
 * "For each of the other 4 petals, join yarn in next unworked sc and rep Rows 1-5.", or how motifs are joined as they are
 * made: passes the sentence.
 */
export const passMorePieces = (reader: Reader): NoteItem | null => {
  const before = reader.tokens[reader.at - 1]
  if (before && !reader.peek()?.first && !/^[.!)\]:]$/.test(before.key)) return null
  const start = reader.at
  let end = start
  while (
    end < reader.end &&
    end - start <= LONGEST &&
    reader.tokens[end]!.key !== '.' &&
    !(end > start && reader.tokens[end]!.paragraph)
  )
    end++
  // Looked at anew at every place that may begin a sentence: without an end it would grow with the square.
  if (end === start || end - start > LONGEST) return null
  const words = reader.text.slice(reader.tokens[start]!.start, reader.tokens[end - 1]!.end)
  // "*…; repeat from * until seven more spokes are made, and join": of those of the round itself.
  const told =
    MORE_ALIKE.test(words) ||
    ANOTHER.test(words) ||
    (!words.includes('*') && MORE.test(words) && AGAIN.test(words)) ||
    tellsToJoin(words)
  if (!told) return null
  reader.at = end
  return { type: 'note', effect: null, ...reader.span(start) }
}

/** How many pieces alike the rows of each part make, where the text says it. */
export function withPieces(
  rounds: readonly RoundNode[],
  text: string,
  titles: readonly { readonly label: string | null; readonly words: string }[],
): readonly RoundNode[] {
  const told: RoundNode[] = [...rounds]
  for (let from = 0; from < rounds.length;) {
    const opens = rounds[from]!
    let to = from + 1
    while (to < rounds.length && goesOn(rounds[to - 1]!, rounds[to]!)) to++
    const rows = opens.heading !== null && ROWS.test(text.slice(opens.heading.start, opens.heading.end))
    // "HEART (make 2)" over rows that other parts go on with: the whole of it.
    const worked = rounds.slice(0, from).some(({ numbers }) => numbers !== null)
    const whole = !worked && rounds[to]?.numbers?.[0] === (rounds[to - 1]!.numbers?.[1] ?? 0) + 1
    if (from > 0 && rows && !whole && opens.numbers?.[0] === 1) {
      const title = titles.findLast(({ label }) => label === opens.part)?.words ?? ''
      const words = text.slice(opens.start, rounds[to]?.start ?? text.length)
      const times = Math.max(valueOf(MADE.exec(title)), valueOf(MORE.exec(words)) + 1)
      if (times > 1) for (let at = from; at < to; at++) told[at] = { ...rounds[at]!, pieces: times }
    }
    from = to
  }
  return told
}

const goesOn = (before: RoundNode, node: RoundNode): boolean =>
  node.part === before.part &&
  node.numbers !== null &&
  before.numbers !== null &&
  node.numbers[0] > before.numbers[1]

/** The last rows of all of them, side by side. */
export function severalOf(state: RoundState, times: number): RoundState {
  const places = Array.from({ length: times }, () => state.places).flat()
  return stateOf(-1, state.number, places, { unknown: state.unknown, ordered: state.ordered })
}
