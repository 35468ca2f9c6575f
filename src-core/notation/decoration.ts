/** Signs around headings: "** CENTER **", "=== Leaf ===", "* LEAF * (make 2)". */
import type { Reader } from './reader'

/** Signs around a heading that say nothing: "** CENTER **", "~ Leaf ~", "- Rnd 1:". */
const DECORATION = /^[*~=#•·_>|+\p{S}\-–—]+$/u

/** Passes them; `before` the words the first of them may begin the line. */
export function passDecoration(reader: Reader, before: boolean): boolean {
  const start = reader.at
  for (;;) {
    const sign = reader.peek()
    const opens = before && reader.at === start
    if (sign?.kind !== 'mark' || !DECORATION.test(sign.key) || (sign.first && !opens)) break
    reader.at++
  }
  return reader.at > start
}

/** "(make 2)" behind a title; "(10 times)" is work. */
const MADE = /^(make|work|cut|makes|both|optional)$/

/** Whether the line in hand ends in a sign, as it began: "* LEAF *", also where it says how many: "* LEAF * (make 2)". */
export function isDecorated(reader: Reader): boolean {
  const { tokens } = reader
  let at = reader.at
  while (at + 1 < tokens.length && at - reader.at < 12 && !tokens[at + 1]!.first) at++
  if (tokens[at]?.key === ')') {
    let opener = at
    while (opener > reader.at && tokens[opener]!.key !== '(') opener--
    if (opener > reader.at && MADE.test(tokens[opener + 1]!.key)) at = opener - 1
  }
  return at > reader.at && DECORATION.test(tokens[at]!.key)
}
