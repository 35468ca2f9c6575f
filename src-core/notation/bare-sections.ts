/** Headings in capitals with what stands under them on the same line, and no colon: "ABBREVIATIONS (UK) ch, chain; …". */
import type { Reader } from './reader'
import { readLabel } from './round-headings'
import type { Heading } from './round-headings'
import { sectionOf } from './sections'
import type { Token } from './tokens'

/** Words of the longest name of a section. */
const MOST_WORDS = 5
/** Abbreviations of the trade that stand in capitals anywhere. */
const ALWAYS = /^(UK|US|DK|MC|CC|RS|WS|[A-Z]|\d.*)$/

/** Names that begin no sentence of work: "Abbreviations (UK) ch chain, …", "Materials 4-ply cotton". */
const PLAIN = /^(Abbreviations?|Abbrevs?|Materials?|Measurements?|Tension|Gauge|Equipment|Supplies)$/

const inCapitals = ({ text }: Token): boolean => /^[\p{Lu}\d'’&/-]+$/u.test(text)

/** "MATERIALS DK cotton in three shades": the section that a line in capitals begins with; passes its name. */
export function readBareSection(reader: Reader): Heading | null {
  const from = reader.at
  return reader.attempt((): Heading | null => {
    const plain = PLAIN.test(reader.peek()?.text ?? '')
    let words = plain ? 1 : 0
    while (!plain && words < MOST_WORDS && reader.peek(words) && inCapitals(reader.peek(words)!)) {
      if (words > 0 && reader.peek(words)!.first) break
      words++
    }
    for (let length = words; length > 0; length--) {
      const names = Array.from({ length }, (_, ahead) => reader.spelled(ahead))
      const kind = sectionOf(names)
      if (kind === null || kind === 'opening') continue
      // A title that only begins like a section: "YARN LOVERS BLANKET".
      const behind = reader.peek(length)
      if (behind && !behind.first && inCapitals(behind) && !ALWAYS.test(behind.text)) return null
      reader.at += length
      const label = reader.words(reader.span(from))
      readLabel(reader)
      if (!reader.peek() || reader.peek()!.first) return null
      return { kind: 'section', from, to: reader.at, numbers: null, label, span: reader.span(from) }
    }
    return null
  })
}
