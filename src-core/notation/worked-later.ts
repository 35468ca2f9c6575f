/** Names before the rounds that the rounds work: stitches that are explained, whatever stands over them. */
import { isKnown } from './known-names'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import { wordOf } from './words'

/** What everything begins with, told behind a label: no stitch of its own. */
export const BEGINS =
  /^((foundation|base|starting|beginning|center|centre)? ?(ring|chain|ch)|foundation|base|set-?up|(to )?(begin|start)|beginning|opening|(for )?(a |the )?(sample|swatch|example|(test|trial|sample) piece))$/

/** "Tuft: work 5 tr. into same d.c., …" before the rounds that work "1 tuft into next d.c.": a stitch that is explained. */
export function isWorkedLater(
  reader: Reader,
  { kind, numbers, label, to }: Heading,
  first: Heading,
): boolean {
  if (kind !== 'round' || numbers !== null || label === null || reader.tokens[to]?.first) return false
  const names = label
    .split(/[()[\]]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const [name = ''] = names
  const plain =
    name.split(/\s+/).length <= MOST_NAMED && !wordOf(name.split(/\s+/)[0]!.toLowerCase()).kinds.has('round')
  if (!plain || BEGINS.test(name.toLowerCase())) return false
  return worksAny(reader.text.slice(first.span.start), names)
}

/** Whether a text works a stitch by one of the names: "1 tuft into next dc", "spike in next st", "(knot, ch 1)". */
const worksAny = (text: string, names: readonly string[]): boolean =>
  names.some((each) => {
    const words = each.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
    return new RegExp(
      `(^|[,;*:([])\\s*${words}\\s*[,;)\\]]|(\\d|\\ban?|\\bone)\\s+${words}(?![a-z])|(^|[,;*:([]\\s*|\\band\\s+)${words}s?\\s+(in|into|over|round|around|between|under|behind)\\b`,
      'i',
    ).test(text)
  })
const MOST_NAMED = 4

const TELLS = new Set(['=', ':', '–', '—', '-'])

/** "• spike = sc worked one round lower" in a list, where the text works a spike: whether such a line begins here. */
export function explainsWorked(reader: Reader): boolean {
  let ahead = 0
  while (
    ahead < MOST_NAMED &&
    reader.peek(ahead)?.kind === 'word' &&
    !(ahead > 0 && reader.peek(ahead)!.first)
  )
    ahead++
  if (ahead === 0 || !TELLS.has(reader.key(ahead))) return false
  const name = reader.text.slice(reader.peek()!.start, reader.peek(ahead - 1)!.end)
  const known = isKnown(name) && !wordOf(name.toLowerCase()).kinds.has('manner')
  return !known && worksAny(reader.text.slice(reader.peek(ahead)!.end), [name])
}

/** "drop dc - dc in the round below": whether the text works what stands before the dash. */
export function worksName(reader: Reader, from: number): boolean {
  const { at } = reader
  reader.at = from
  const works = explainsWorked(reader)
  reader.at = at
  return works
}
