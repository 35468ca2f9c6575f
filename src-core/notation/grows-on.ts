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
const HEADING = /^\W*(?:r|rnd|round|row)s?\.? ?\d/im

/** A sentence that lets the piece grow on without saying round by round how; passes it, where no round follows. */
export const readGrowsOn = (reader: Reader): NoteItem | null => {
  const start = reader.at
  const opens = reader.peek()
  if (!opens || start === 0 || !(opens.first || /^[.!)\]]$/.test(reader.key(-1)))) return null
  const rest = reader.text.slice(opens.start)
  if (!BEGINS.test(rest)) return null
  const [line = ''] = rest.split('\n')
  if (!GROWS.test(line) || !OPEN.test(line) || HEADING.test(rest.slice(line.length))) return null
  reader.at++
  while (reader.peek() && !reader.peek()!.first && !(reader.sees('.') && reader.depth <= 1)) reader.at++
  return { type: 'note', effect: null, unread: 'words', ...reader.span(start) }
}
