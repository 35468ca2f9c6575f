/** Sentences of a chatty page in which nothing is worked: "So each petal sits in one dc", "They’ll flop about". */
import type { Reader } from './reader'
import type { NoteItem } from './tree'

/** Words that a remark to the reader begins with, and no instruction. */
const REMARKS =
  /^(so|they|you|your|we|i|it|its|there|if|don.t|remember|isn.t|aren.t|these|those|yes|no|well|oh|ok(ay)?|now)$|^(they|you|we|i|it|that|there|here).(ll|re|s|ve|d|m)$/
/** What such a remark says of something; an instruction has none of these. */
const SAYS =
  /^(is|are|was|were|be|will|won.t|should|may|might|can|can.t|could|would|looks?|feels?|seems?|sits?|lies?|lay|has|have|had|do|does|don.t|did|want|need|needs|like|love|notice|see|find|panic|worry|forget)$|.(ll|re|ve)$/
/** What becomes of a finished piece: "Coil strip, first shell at center; stitch through all layers." */
const ASSEMBLES =
  /^(coil|roll|curl|spiral|wind|arrange|stack|overlap|glue|layer|tack|pin|assemble|stitch|whipstitch|gather|shape)$/
/** These make it work all the same. */
const WORKED_ON = /^(rep|ch|skip|next|each|same|ring|yarn|hook)$/
/** These make a remark an instruction or a count after all. */
const WORKED = /^(rep|ch|counts?|count|join|turn|work|made|skip|total)$/

/** "(Every) following wheel is made like (the first)"; passes it. */
const passOthers = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.at++
    while (reader.skip('the', 'of')) continue
    if (!reader.skip('next', 'other', 'rem', 'more', 'subsequent')) return null
    if (!reader.skipA('motif') || !reader.skip('is', 'are')) return null
    reader.skip('made', 'worked', 'work')
    return reader.skip('like', 'as', 'same', 'the') || null
  }) === true

/** Passes a sentence at the cursor that only remarks on something; null where the cursor begins no sentence, or it works. */
export function passAside(reader: Reader): NoteItem | null {
  const before = reader.tokens[reader.at - 1]
  const token = reader.peek()
  const around = token?.key === 'go' && ['round', 'around'].includes(reader.spelled(1))
  const opens = around ? /^[.!?):]$/ : /^[.!?)]$/
  if (!token || (before && !token.first && !opens.test(before.key))) return null
  const start = reader.at
  // "Go round each point: *sc in …".
  if (token.key === 'go') {
    while (reader.peek() && !/^[:.,*([]$/.test(reader.key())) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  }
  // "Pop a marker in it" works no popcorn.
  if (token.key === 'pop' && /^(a|your|the|it|this|that)$/.test(reader.spelled(1))) {
    while (reader.peek() && !/^[.,;:!]$/.test(reader.key())) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  }
  // "Every following wheel is made like the first, only …": told of other motifs.
  if (/^(every|each|all|the)$/.test(token.key) && passOthers(reader)) {
    reader.at = reader.end
    return { type: 'note', effect: null, ...reader.span(start) }
  }
  const assembles = ASSEMBLES.test(token.key) && reader.peek(1)?.kind === 'word'
  if (!assembles && !REMARKS.test(token.key)) return null
  let end = start
  let says = assembles
  while (
    end < reader.end &&
    reader.tokens[end]!.key !== '.' &&
    !(end > reader.at && reader.tokens[end]!.first)
  ) {
    const { key, is } = reader.tokens[end]!
    if (key === '*' || key === '[' || key === ':' || (assembles ? WORKED_ON : WORKED).test(is)) return null
    says ||= SAYS.test(key)
    end++
  }
  if (!says) return null
  reader.at = end
  return { type: 'note', effect: null, ...reader.span(start) }
}
