/** Marks that only dress a page: put out of the way without moving a letter, so that places in the text stay. */

/** "**Rnd 1** 3 ch": bold in plain text, at the beginning of a line. `**` of a repeat stands before figures, or has a blank behind it. */
const BOLD_LABEL = /^([^\S\n]*)\*\*(?=\p{Lu})([^*,;\n]{0,60}\S)\*\*(?=[\s:.(]|$)/gmu
/** "**sp** space; **ss** slip stitch" in a text with bold labels. */
const BOLD_WORD = /(?<=[\s(.;,])\*\*(?=\p{L})([^*\n]{0,40}[^\s*])\*\*(?=[\s.,;:)]|$)/gu

/** "Rnd 1 | Ch 3, …", "R1 ▸ 6 sc": what stands behind the number of a round. */
const BARRED =
  /^([^\S\n]*(?:rnds?|rounds?|rds?|r|rows?|tours?|laps?)\.?[^\S\n]*\d+(?:[^\S\n]*[-–][^\S\n]*\d+)?[^\S\n]*)[|▸►▶→»](.*)$/gimu

const blank = (text: string): string => ' '.repeat(text.length)

function withoutBold(text: string): string {
  const labels = text.replace(BOLD_LABEL, (_, indent: string, inner: string) => `${indent}  ${inner}  `)
  if (labels === text) return text
  return labels.replace(BOLD_WORD, (_, inner: string) => `  ${inner}  `)
}

/** "…; join. | 10 dc": what stands between bars is a sentence of its own. */
const barsOff = (rest: string): string =>
  rest.replace(/(\S?)([^\S\n]+)[|▸►▶→»](?=\s|$)/gu, (_, before: string, gap: string) =>
    /^[.;:,]$/.test(before) ? `${before}${blank(gap)} ` : `${before}.${blank(gap)}`,
  )

/** The text without bold marks and bars, every letter where it was. */
export function withoutDress(text: string): string {
  const plain = text.includes('**') ? withoutBold(text) : text
  if (!/[|▸►▶→»]/.test(plain)) return plain
  return plain.replace(BARRED, (_, label: string, rest: string) => `${label}:${barsOff(rest)}`)
}
