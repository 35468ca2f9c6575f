/**
 * Other ways in which patterns say what is worked along a side of an edging: "across to next corner", "up to the corner
 * ch-2 sp", "*…; rep from * to next corner". They are told in the words that are counted between corners, tips and dips.
 */

const NAME = '(?:corner|tip|point|dip|valley)'
const TO = `to\\s+(?:(?:the\\s+)?last\\s+\\d+\\s+sts?\\s+before\\s+)?(?:the\\s+)?(?:next\\s+)?${NAME}\\b`
/** "across", "along the side", "evenly across this edge", between what is worked and how far. */
const ALONG = new RegExp(
  `(?:\\s+(?:evenly|(?:all\\s+the\\s+way\\s+)?(?:across|along|down|up)(?:\\s+(?:the|each|this|that|next))?(?:\\s+(?:long|short))?(?:\\s+(?:side|edge))?))+(?=\\s+${TO})`,
  'gi',
)
const UNTIL = new RegExp(`\\b(?:until|up\\s+to)(?=\\s+(?:the\\s+)?(?:next\\s+)?${NAME}\\b)`, 'gi')
const CHAINS = '(?:ch-?\\s?\\d+|\\d+-?ch)'
/** The space of a corner, whichever word comes first; how many chains it has is known of each corner. */
const SPACE_OF = new RegExp(`\\b${CHAINS}\\s+(${NAME})\\s+(?:sp|space)\\b`, 'gi')
const OF_SPACE = new RegExp(`\\b(${NAME})\\s+${CHAINS}\\s+(?:sp|space)\\b`, 'gi')
/** The end of an asterisk of its own within a side. */
const WITHIN = new RegExp(
  `(\\*{1,2})\\s*([^*]*?)[;,]?\\s*\\brep(?:eat)?\\s+from\\s+\\1\\s*,?\\s*(${TO})`,
  'i',
)
const FROM_FIRST = /\b(rep(?:eat)?\s+from)\s+(?:the\s+)?(?:first|1st)\s+\*/gi
const REPEATED = /\brep(?:eat)?\s+from\s+\*/i

/** The same round in the words that are counted; as it is where it names nothing in these ways. */
export function inUsualWords(said: string): string {
  const told = said
    .replace(SPACE_OF, '$1')
    .replace(OF_SPACE, '$1')
    .replace(UNTIL, 'to')
    .replace(ALONG, '')
    .replace(FROM_FIRST, '$1 *')
  const within = WITHIN.exec(told)
  if (!within) return told
  const [whole, , work = '', to = ''] = within
  const before = told.slice(0, within.index)
  const after = told.slice(within.index + whole.length)
  const side = `${before}[${work.trim()}] ${to}${after}`
  // The first asterisk was that of the side: what is repeated all round begins with it.
  const isOpen = side.includes('*') && side.indexOf('*') < side.search(REPEATED)
  if (isOpen || !REPEATED.test(side)) return side
  return `${before}*[${work.trim()}] ${to}${after}`
}
