/** "Keep going like R4, one more (sc, ch 1) per side each round, until it's as big as your coaster" behind the last round. */
import type { Reader } from './reader'
import type { NoteItem } from './tree'

const BEGINS =
  /^(?:to make (?:it|a|the|your)\b|for a (?:bigger|larger|wider)\b|if you\b|(?:just )?(?:keep|carry on|go on|continue|repeat|rep)\b)/i
/** Each further round is larger than the one before, in a way that is told for nobody to count. */
const GROWS =
  /\b(?:one|two|an?|[12]) (?:more|extra|further|additional)\b|\badding\b|\bincreasing\b|\bextra\b/i
const OPEN =
  /\b(?:until|till|as long as|as many|as large|as big|each (?:round|rnd|time|row)|every (?:round|rnd|time|row)|(?:per|each|every) side|you (?:like|want|need|wish)|bigger|larger|wider)\b/i
const HEADING = /^[^\p{L}\d\n]{0,4}(?:r|rnd|round|row)s?\.? ?\d/gimu

const HEADING_ALONE = /^\P{L}*(?:r|rnd|round|row)s?\.? ?\d\P{L}*$/iu

/** Where the last heading of a text stands, looked for once. */
const lastHeadings = new WeakMap<object, number>()
function lastHeading({ tokens, text }: Reader): number {
  const known = lastHeadings.get(tokens)
  if (known !== undefined) return known
  let at = -1
  for (const { index } of text.matchAll(HEADING)) at = index
  lastHeadings.set(tokens, at)
  return at
}

/** Characters in which the opening words stand. */
const LONGEST_OPENING = 30

/** A sentence that lets the piece grow on without saying round by round how; passes it, where no round follows. */
export const readGrowsOn = (reader: Reader): NoteItem | null => {
  const start = reader.at
  const opens = reader.peek()
  if (!opens || start === 0 || !(opens.first || /^[.!)\]]$/.test(reader.key(-1)))) return null
  const { text } = reader
  if (!BEGINS.test(text.slice(opens.start, opens.start + LONGEST_OPENING))) return null
  const end = text.indexOf('\n', opens.start)
  const line = text.slice(opens.start, end < 0 ? text.length : end)
  if (!GROWS.test(line) || !OPEN.test(line)) return null
  // "Rnd 4. Continue as before, with 1 more sc on each side": a round of its own.
  const heading = lastHeading(reader)
  if (heading > opens.start || (heading >= 0 && HEADING_ALONE.test(text.slice(heading, opens.start))))
    return null
  reader.at++
  while (reader.peek() && !reader.peek()!.first && !(reader.sees('.') && reader.depth <= 1)) reader.at++
  return { type: 'note', effect: null, unread: 'words', ...reader.span(start) }
}
