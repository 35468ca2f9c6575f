/** Marks that only dress a page: put out of the way without moving a letter, so that places in the text stay. */

/** "**Rnd 1** 3 ch": bold in plain text, at the beginning of a line. `**` of a repeat stands before figures, or has a blank behind it. */
const BOLD_LABEL = /^([^\S\n]*)\*\*(?=\p{Lu})([^*,;\n]{0,60}\S)\*\*(?=[\s:.(]|$)/gmu
/** "**sp** space; **ss** slip stitch" in a text with bold labels. */
const BOLD_WORD = /(?<=[\s(.;,])\*\*(?=\p{L})([^*\n]{0,40}[^\s*])\*\*(?=[\s.,;:)]|$)/gu

/** "Rnd 1 | Ch 3, …", "R1 ▸ 6 sc": what stands behind the number of a round. */
const BARRED =
  /^([^\S\n]*\|?[^\S\n]*(?:rnds?|rounds?|rds?|r|rows?|tours?|laps?)\.?[^\S\n]*\d+(?:[^\S\n]*[-–][^\S\n]*\d+)?[^\S\n]*(?:\((?:RS|WS)\)[^\S\n]*)?)[|▸►▶→»](.*)$/gimu

/** "1 | 6 sc in ring | 6", "| 2 (RS) | inc x 6 | 12 |": a row of a table whose head says that these are rounds. */
const TABLE_ROW =
  /^([^\S\n]*\|?[^\S\n]*\d{1,2}(?:[^\S\n]*[-–][^\S\n]*\d{1,2})?[^\S\n]*(?:\((?:RS|WS)\)[^\S\n]*)?)\|(.*)$/gimu
/** "----+------", "|:---|---:|": what only parts the head of a table from its rows. */
const TABLE_RULE = /^(?=[^\n]*[-=–—]{3})[^\S\n]*[-=–—|+:][-=–—|+: \t]*$/gmu
/** "Round | Instructions | Count". */
const TABLE_HEAD =
  /^[^\S\n]*\|?[^\S\n]*(?:rnds?|rounds?|rds?|r|rows?|no|nr|#|tours?|laps?)\.?[^\S\n]*\|[^\n\d]*$/imu

/** "<28, 44, 60 dc; 4 ch-2 sps>": counts in pointed brackets. */
const POINTED = /[<‹⟨«]([^\S\n]*\d[^<>‹›⟨⟩«»()\n]*)[>›⟩»]/gu

/** "Key: ch = chain | dc = double crochet | cnr = (3 dc, ch 3, 3 dc) in ch-3 sp": abbreviations between bars. */
const KEY_LINE = /^(?!\s*\|)[^|=\n]*=[^|=\n]*\|[^|=\n]*=[^\n]*$/gmu

const blank = (text: string): string => ' '.repeat(text.length)

function withoutBold(text: string): string {
  const labels = text.replace(BOLD_LABEL, (_, indent: string, inner: string) => `${indent}  ${inner}  `)
  if (labels === text) return text
  return labels.replace(BOLD_WORD, (_, inner: string) => `  ${inner}  `)
}

/** "…; join. | 10 dc": what stands between bars is a sentence of its own, and figures at the end are what the round comes to. */
const barsOff = (rest: string): string =>
  rest.replace(
    /(\S?)([^\S\n]+)[|▸►▶→»](?=\s|$)([^\S\n]*\d+(?: [\p{L}-]+\d*)?(?:, \d+ [\p{L}-]+\d*)*[^\S\n]*$)?/gu,
    (_, before: string, gap: string, total = '') => {
      const sign = total === '' ? ' ' : '='
      const ended = /^[.;:,]$/.test(before) ? `${before}${blank(gap)}` : `${before}.${blank(gap).slice(1)}`
      return `${ended}${sign}${total}`
    },
  )

/** A table of rounds without its head and rules, each row as a round with its number. */
function withoutTable(text: string): string {
  const head = TABLE_HEAD.exec(text)
  if (!head) return text
  const bare = text.replace(head[0], blank(head[0])).replace(TABLE_RULE, blank)
  return bare.replace(TABLE_ROW, (_, label: string, rest: string) => barred(label, rest))
}

/** "Rnd, Col, Work, Total": the head of a table that was copied from a sheet, with tabs between its cells. */
const SHEET_HEAD = /^[^\S\n]*(?:rnds?|rounds?|rds?|r|rows?|no|nr|#)\.?\t[^\n\d]*$/imu
const SHEET_ROW = /^(?:(?:rnds?|rounds?|rows?|r)\.?[^\S\n\t]*)?\d{1,2}(?:[-–]\d{1,2})?\.?\t[^\n]*$/gimu
const COLOUR_CELL = /^\s*(?:col(?:ou?rs?)?|yarns?|shades?)\.?\s*$/iu

/** A table with tabs without its head, each row as a round with its number, its yarn before a colon and its count behind a sign. */
function withoutSheet(text: string): string {
  const head = SHEET_HEAD.exec(text)
  if (!head) return text
  const columns = head[0].split('\t')
  const row = (line: string): string => {
    const [label = '', ...cells] = line.split('\t')
    return cells.reduce((told, cell, at) => {
      const before =
        at === 0 || COLOUR_CELL.test(columns[at] ?? '') ? ':' : /^\s*\d+\b/.test(cell) ? '=' : '.'
      const opens = at > 0 && COLOUR_CELL.test(columns[at] ?? '') && (cells[at - 1] ?? '').trim() === ''
      return `${told}${at > 0 && (opens || cell.trim() === '') ? ' ' : before}${cell}`
    }, label)
  }
  const from = head.index + head[0].length
  return `${text.slice(0, head.index)}${blank(head[0])}${text.slice(from).replace(SHEET_ROW, row)}`
}

/** "| Abbreviation | Meaning (UK) |", "Term | What it means": the head of a table that explains words. */
const GLOSSARY_HEAD =
  /^[^\S\n]*\|?[^\S\n]*(?:abbr(?:eviation)?s?\.?|terms?|stitch(?:es)?|special stitch(?:es)?|symbols?|short|words?)[^\S\n]*\|[^\S\n]*(?:what|mean|explan|desc|full|definition|how|stands|instruction|stitch|term|name)[^\n]*\n/gimu
/** "| petal | (sc, hdc, 5 dc, hdc, sc) |". */
const GLOSSARY_ROW = /^([^\S\n]*)(\|?)([^|\n]+)\|([^|\n]+)(\|?[^\S\n]*)$/u

/** A table of abbreviations and special stitches without its head and rules, each row as "petal = (sc, hdc, …)". */
function withoutGlossary(text: string): string {
  let plain = text
  for (const head of text.matchAll(GLOSSARY_HEAD)) {
    const from = head.index + head[0].length
    const rows = plain
      .slice(from)
      .split('\n')
      .map((line, index, all) => {
        const isRow = all
          .slice(0, index + 1)
          .every((each) => each.includes('|') || /^[-=–—+: \t]*[-=–—]{3}/.test(each))
        if (!isRow) return line
        if (/^[-=–—|+:\s]*$/.test(line)) return blank(line)
        return line.replace(
          GLOSSARY_ROW,
          (_, indent: string, bar: string, name: string, meaning: string, end: string) =>
            `${indent}${blank(bar)}${name}=${meaning}${blank(end)}`,
        )
      })
      .join('\n')
    plain = `${plain.slice(0, head.index)}${blank(head[0].slice(0, -1))}\n${rows}`
  }
  return plain
}

/** A label and what stands behind its bar, without the bars that frame the row. */
const barred = (label: string, rest: string): string =>
  `${label.replace('|', ' ')}:${barsOff(rest.replace(/\|(?=[^\S\n]*$)/u, ' '))}`

/** "Changes since 2.0", with what was put right in which round: nothing of it is worked. */
const CHANGES =
  /^[^\S\n]*(?:changes|corrections|errata|revisions|updates|version history|what['’]s new)\b[^\n]*\n(?:[^\S\n]*[•*\-–][^\n]*(?:\n|$))+/gimu

/** "rnd 2 / ch 3, dc 3, cnr / 10 sts a side": a round whose parts stand between slashes. */
const SLASHED = /^[^\S\n]*(?:rnds?|rounds?|rds?|r|rows?)\.?[^\S\n]*\d+[^\S\n]+\/ [^\n]*$/gimu

/** The text without bold marks and bars, every letter where it was. */
export function withoutDress(dressed: string): string {
  const text = dressed
    .replace(CHANGES, (block: string) => block.replace(/[^\n]/gu, ' '))
    .replace(SLASHED, (line: string) => line.replaceAll(' / ', ' | '))
  const sheet = text.includes('\t') ? withoutSheet(text) : text
  const bold = sheet.includes('**') ? withoutBold(sheet) : sheet
  const plain = bold.replace(POINTED, '($1)')
  if (!/[|▸►▶→»]/.test(plain)) return plain
  const listed = plain.replace(KEY_LINE, (line: string) => line.replaceAll('|', ';'))
  return withoutTable(withoutGlossary(listed)).replace(BARRED, (_, label: string, rest: string) =>
    barred(label, rest),
  )
}
