/** Stitches that are explained by their abbreviation: "MB – make bobble: (yo, …". */
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import { sectionOf } from './sections'
import { isForm } from './vocabulary'

/** Words of the longest name behind its abbreviation. */
const MOST_CALLED = 5

/** "MB – make bobble: (yo, …", "PC popcorn: …", "MB – (yo, …" in a list: a stitch that is explained, by its abbreviation. */
export function readShortened(reader: Reader, special: boolean): Heading | null {
  const from = reader.at
  return reader.attempt((): Heading | null => {
    const short = reader.peek()
    if (short?.kind !== 'word' || !/^(?:Beg)?\p{Lu}{2,5}\d?$/u.test(short.text)) return null
    const known = short.kinds.has('round') || short.kinds.has('chain') || sectionOf([short.key]) !== null
    if (known) return null
    // "SHELL OVER SHELL: …": where a stitch goes that is explained before.
    if (isForm(short) && reader.isA('into', 1)) return null
    reader.at++
    const ruled = reader.skip('–', '—', '-', '=')
    const begins = reader.at
    let form = false
    while (reader.at - begins < MOST_CALLED && reader.peek()?.kind === 'word' && !reader.peek()!.first) {
      form ||= isForm(reader.peek()!)
      reader.at++
    }
    const long = reader.words({ ...reader.span(begins), end: reader.tokens[reader.at - 1]!.end })
    if (form && reader.at > begins && reader.skip(':')) {
      const label = `${long} (${short.text})`
      return { kind: 'definition', from, to: reader.at, numbers: null, label, span: reader.span(from) }
    }
    reader.at = begins
    const told = ruled && special && short.kinds.size === 0 && reader.sees('(', '[')
    return told
      ? { kind: 'definition', from, to: begins, numbers: null, label: short.text, span: reader.span(from) }
      : null
  })
}
