/** Labels within a round: "First side: 1 htr in next st, …", "Point: …" stand for where its hook is, not for a part of their own. */
import type { Reader } from './reader'
import type { Heading } from './round-headings'

const PLACE =
  /^(the )?((first|second|third|fourth|1st|2nd|3rd|4th|left|right|left-hand|right-hand|other|opposite|far|near|next|last|final|long|short|upper|lower|top|bottom|straight|curved) )*(side|point|tip|dip|cleft|valley|lobe|hump|bump|half|end|curve|corner|edge)( [a-d\d])?$/i
/** Behind these a label begins something new. */
const ENDS = /\b(fasten|break|cut|finish) (off|yarn|thread)\b|\bfasten\b/i

/** Which headings stand for places within the round before them. */
export function placesWithin(reader: Reader, headings: readonly Heading[]): ReadonlySet<Heading> {
  const within = new Set<Heading>()
  let round: Heading | null = null
  headings.forEach((heading, index) => {
    const { kind, numbers, label } = heading
    if (kind !== 'round') round = null
    else if (numbers) round = heading
    else if (round && PLACE.test(label ?? '') && goesOn(reader, round, heading, headings.slice(index + 1)))
      within.add(heading)
    else round = null
  })
  return within
}

/** Whether the round is still worked at the label: nothing was fastened off, and either it had no words yet or the next number follows. */
function goesOn(
  { tokens, text }: Reader,
  round: Heading,
  label: Heading,
  later: readonly Heading[],
): boolean {
  if (tokens[label.to]?.first !== false) return false
  if (ENDS.test(text.slice(round.span.end, label.span.start))) return false
  const next = later.find(({ kind, numbers }) => kind !== 'round' || numbers !== null)
  return tokens[round.to]?.first === true || next?.numbers?.[0] === round.numbers![1] + 1
}

/** Passes such a label where a round is read: "Second side, into the other loops of the same chains:" too. */
export const passPlaceLabel = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.peek()?.first) return null
    const from = reader.at
    while (reader.at - from < 6 && reader.peek()?.kind === 'word') {
      reader.at++
      if (!reader.sees(':')) continue
      return PLACE.test(reader.words(reader.span(from)).trim()) ? ++reader.at > 0 : null
    }
    return null
  }) === true
