/**
 * What of a file cannot be kept as it stands, because JSON is read into numbers of 53 bits and groups in which a name
 * stands once. Files of ours have none of it; other programs may have put it there.
 */

/** Things told; one is enough for a person to know. */
const TOLD = 3
/** Digits that a number keeps whatever they are. */
const SAFE_LENGTH = 15

/** What of a JSON text would come back otherwise, the first few, in words. */
export function unkeptIn(text: string): readonly string[] {
  const found: string[] = []
  // The names in each group that is open; null for a list.
  const open: (Set<string> | null)[] = []
  const tell = (at: number, what: string) => found.push(`line ${lineOf(text, at)}: ${what}`)
  for (let at = 0; at < text.length && found.length < TOLD; at++) {
    const sign = text[at]!
    if (sign === '{') open.push(new Set())
    else if (sign === '[') open.push(null)
    else if (sign === '}' || sign === ']') open.pop()
    else if (sign === '"') {
      const end = endOfText(text, at)
      const names = open.at(-1)
      if (names && isName(text, end)) {
        const name = JSON.parse(text.slice(at, end)) as string
        if (names.has(name)) tell(at, `‘${shortened(name)}’ stands there twice`)
        names.add(name)
      }
      at = end - 1
    } else if (sign === '-' || (sign >= '0' && sign <= '9')) {
      let end = at + 1
      while (end < text.length && /[\d.eE+-]/.test(text[end]!)) end++
      const number = text.slice(at, end)
      if (!isKept(number)) tell(at, `the number ${shortened(number)}`)
      at = end - 1
    }
  }
  return found
}

/** Behind the closing quote of a text that begins at `from`. */
function endOfText(text: string, from: number): number {
  let at = from + 1
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1
  return at + 1
}

/** Does a colon follow? */
function isName(text: string, end: number): boolean {
  let at = end
  while (' \n\r\t'.includes(text[at] ?? '.')) at++
  return text[at] === ':'
}

/** Does a number come back with the digits that it has? */
function isKept(number: string): boolean {
  if (number.length <= SAFE_LENGTH && !/e/i.test(number)) return true
  const value = Number(number)
  return Number.isFinite(value) && digitsOf(String(value)) === digitsOf(number)
}

/** The digits of a number that count, and where its point stands among them; without its sign. */
function digitsOf(number: string): string {
  const [, whole = '', part = '', power = '0'] = /^-?(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(number) ?? []
  const all = (whole + part).replace(/^0+/, '')
  const digits = all.replace(/0+$/, '')
  return digits === '' ? '0' : `${digits}e${Number(power) - part.length + all.length - digits.length}`
}

const shortened = (text: string): string => (text.length > 30 ? `${text.slice(0, 29)}…` : text)

function lineOf(text: string, end: number): number {
  let line = 1
  for (let at = text.indexOf('\n'); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) line++
  return line
}
