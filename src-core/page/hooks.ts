/** Hooks as pages name them: in millimetres, by US letter or number, or as a steel hook. */
import type { Millimetres } from '../units/quantity'
import { lengthsIn } from './quantities'
import type { Found } from './quantities'
import { BY_LETTER, BY_NUMBER } from '../stitches/hooks'

/** mm by number of US steel hooks, which grow thinner (from memory). */
const STEEL: Readonly<Record<string, Millimetres>> = {
  ...{ '0': 3.25, '1': 2.75, '2': 2.25, '3': 2.1, '4': 2, '5': 1.9, '6': 1.8, '7': 1.65 },
  ...{ '8': 1.5, '9': 1.4, '10': 1.3, '11': 1.1, '12': 1, '13': 0.85, '14': 0.75 },
}

/** mm. Lengths that may be a hook: what is longer is said of something else. */
const LARGEST = 30

const HALF = '(?:½|\\.5|[ -]?1/2)?'
const LETTERED = new RegExp(
  `(?<![\\p{L}\\d])(M/N|N/P|P/Q|[B-N]|[QS])(?:[ ]?[-/–][ ]?(\\d{1,2}${HALF}))?(?![\\p{L}\\d'’])`,
  'gu',
)
const NUMBERED = new RegExp(
  `(?:\\bUS|\\bno\\.?|\\bnumber|#|\\bsize)\\s*#?\\s*(\\d{1,2}${HALF})(?!\\.?\\d|\\s*mm)`,
  'giu',
)

/** The stretch of words around "hook", as far as a comma or the end of the sentence. */
function clausesOf(text: string, always: boolean): { words: string; start: number }[] {
  const clauses: { words: string; start: number }[] = []
  const sign = /(?:[^,;()[\]]|(?<=\d),(?=\d)|[([][^()[\]]*[)\]])+/g
  for (let match = sign.exec(text); match; match = sign.exec(text)) {
    if (always || /\bhooks?\b/i.test(match[0])) clauses.push({ words: match[0], start: match.index })
  }
  return clauses
}

/**
 * The hooks that a text names, in mm, in its order. `always`: it stands under the heading of hooks, without that word.
 * Where a hook is told in millimetres these rule over its letter.
 */
export function hooksIn(text: string, always = false): Found<Millimetres>[] {
  return clausesOf(text, always).flatMap(({ words, start }) => {
    const at = (from: number, length: number, value: Millimetres): Found<Millimetres> => ({
      value,
      start: start + from,
      end: start + from + length,
    })
    const measured = lengthsIn(words.replace(/["″”]/g, '?')).filter(({ value }) => value <= LARGEST)
    if (measured.length > 0) return measured.map((one) => at(one.start, one.end - one.start, one.value))
    const inches = /steel/i.test(words)
    if (!inches) {
      const lettered = [...words.matchAll(LETTERED)]
      const [match] = lettered
      const value = match && BY_LETTER[match[1]!]
      if (match && value !== undefined) return [at(match.index, match[0].length, value)]
    }
    const match = NUMBERED.exec(words)
    NUMBERED.lastIndex = 0
    const number = match?.[1]?.replace(/\.5|[ -]?1\/2/, '½')
    const value = number === undefined ? undefined : (inches ? STEEL : BY_NUMBER)[number]
    return match && value !== undefined ? [at(match.index, match[0].length, value)] : []
  })
}
