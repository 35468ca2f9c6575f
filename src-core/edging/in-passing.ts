/**
 * A round that names its corners in passing, as most patterns do: "sc in each st around, 3 sc in each corner, join with
 * sl st in first sc". It is told as what is worked at each of them and up to the next one.
 */

const EACH = '(?:each|every|all|the)?\\s*(?:of\\s+)?(?:the\\s+)?(?:\\d+\\s+)?(?:outer\\s+|outside\\s+)?'
const NAME = '(corner|tip|point|dip|valley)s?'
const PLACE = '(?:\\s+(?:sts?|stitch(?:es)?|sps?|spaces?))?'
/** What leads from what is worked all round to what is worked at corners. */
const LEADS =
  '(?:and\\s+|but\\s+|with\\s+|working\\s+|work\\s+|placing\\s+|making\\s+|putting\\s+|except\\s+)+'
const AT = new RegExp(`^(?:${LEADS})?(.+?)\\s+(in|into|over|at)\\s+${EACH}${NAME}${PLACE}$`, 'i')
const AROUND =
  /^(?:work\s+)?(.+?)(?:\s+in(?:to)?\s+(?:each|every)(?:\s+(?:st|stitch|sc|dc|hdc|htr|tr))?|\s+evenly)*\s+(?:all\s+(?:the\s+way\s+)?)?(?:a)?round(?:\s+(?:the\s+)?(?:edge|outside|whole\s+(?:edge|blanket|piece)|blanket|piece))?$/i
/** "around and 3 sc in each corner", "around (3 sc in each corner)": two parts without a comma. */
const TOGETHER = new RegExp(
  `\\b(a?round)\\s+(?:${LEADS})([^,;()]+?\\s+(?:in|into|over|at)\\s+${EACH}${NAME}${PLACE})(?=\\s*[,;.)]|\\s*$)`,
  'gi',
)
const BRACKETED = new RegExp(
  `\\s*\\(\\s*(?:${LEADS})?([^()]+?\\s+(?:in|into|over|at)\\s+${EACH}${NAME}${PLACE})\\s*\\)`,
  'gi',
)

/** "1 sc in each st" of a round that says no more of how far than at what corners. */
const IN_EACH =
  /^(?:work\s+)?(?:(?:1|one)\s+)?(.+?)\s+in(?:to)?\s+(?:each|every)\s+(?:st|stitch|sc|dc|hdc|htr|tr)$/i

/** The same round, told from corner to corner; as it is where it does not name corners in passing. */
export function fromCornerToCorner(text: string, clausesOf: (text: string) => string[]): string {
  if (text.includes('*') || !/round|\bin(?:to)?\s+(?:each|every)\b/i.test(text)) return text
  const apart = text.replace(BRACKETED, ', $1').replace(TOGETHER, '$1, $2')
  const clauses = clausesOf(apart.replace(/[.\s]+$/, ''))
  const isAround = (how: RegExp) => clauses.findIndex((clause) => how.test(clause) && !AT.test(clause))
  const how = isAround(AROUND) >= 0 ? AROUND : IN_EACH
  const around = isAround(how)
  if (around < 0) return text
  const work = how.exec(clauses[around]!)![1]!
  // "to next corner" is told from corner to corner already.
  if (
    clauses.some((clause) => /\bto\s+(?:the\s+)?(?:next\s+)?(?:corner|tip|point|dip|valley)\b/i.test(clause))
  )
    return text
  const at = clauses.flatMap((clause, i) => {
    const found = i === around ? null : AT.exec(clause)
    return found ? [{ i, clause: `${found[1]!} ${found[2]!} ${found[3]!}`, name: found[3]! }] : []
  })
  const [first] = at
  if (!first || at.length > 1) return text
  const before = clauses.slice(0, Math.min(around, first.i))
  const after = clauses.filter((_, i) => i !== around && i !== first.i && i >= before.length)
  const body = `*${first.clause}, ${work} in each st to next ${first.name}; rep from * around`
  return [...before, body, ...after].join(', ')
}
