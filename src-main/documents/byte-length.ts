/** Names of files are as long as their bytes in UTF-8; they are cut between letters, never within one. */

const letters = new Intl.Segmenter(undefined, { granularity: 'grapheme' })

/**
 * The longest beginning of `text` that takes at most `most` bytes: whole letters and emoji, or of a single one
 * that is longer (marks upon marks) whole characters.
 */
export function shortenedTo(text: string, most: number): string {
  const byLetters = longest(letters.segment(text), most)
  if (byLetters === null) return text
  return byLetters || (longest(text, most) ?? text)
}

/** The parts from the first on that fit together; null where all of them do. */
function longest(parts: Iterable<string | { readonly segment: string }>, most: number): string | null {
  let [found, length] = ['', 0]
  for (const each of parts) {
    const part = typeof each === 'string' ? each : each.segment
    length += Buffer.byteLength(part)
    if (length > most) return found
    found += part
  }
  return null
}
