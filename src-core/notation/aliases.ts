/** Single capitals that stand for stitches, as patterns of stuffed figures have them: "X = sc, V = inc, A = dec". */
import type { Token } from './tokens'
import { wordOf } from './words'

type Meaning = Pick<Token, 'key' | 'is' | 'kinds'>

/** Stitches that such letters are short for. */
const ALIASED = /^(sc|hdc|dc|tr|htr|inc|dec|ch|sl|slst|ss)$/
const TOGETHER = /^(?:sc|dc)\d?tog$|^2(?:sc|dc)tog$/

const meaningOf = (word: string): Meaning => {
  const { is, kinds } = wordOf(word)
  return { key: is, is, kinds }
}

/** What stands behind the sign: "sc", "2 sc in same st", "sc2tog", "single crochet". */
function meantAt(tokens: readonly Token[], at: number): Meaning | null {
  const key = (ahead: number): string => tokens[at + ahead]?.key ?? ''
  const ends = (ahead: number): boolean =>
    /^[,;.:/()]?$/.test(key(ahead)) || tokens[at + ahead]?.first === true
  const [named] = tokens.slice(at, at + 1)
  if (!named) return null
  if (TOGETHER.test(named.key)) return meaningOf('dec')
  if (/^(sc|dc)$/.test(named.key) && key(1) === '2' && /^tog/.test(key(2))) return meaningOf('dec')
  if (named.key === '2' && /^(sc|dc|sts?)$/.test(key(1))) {
    if (/^tog/.test(key(2))) return meaningOf('dec')
    const into = /^(in|into)$/.test(key(2))
    if (into && /^(same|1|one|next|a|each)$/.test(key(3))) return meaningOf('inc')
  }
  if (named.is === 'inc' || named.is === 'dec') return meaningOf(named.is)
  if (named.key === 'single' && key(1) === 'crochet') return meaningOf('sc')
  return ALIASED.test(named.key) && (ends(1) || tokens[at + 1]!.kind === 'word') ? named : null
}

/** Without a key: "6X", "(X, V)*6" and "(X, A)*6" are what they are everywhere (common practice, no source). */
const USUAL: readonly (readonly [string, string])[] = [
  ['X', 'sc'],
  ['V', 'inc'],
  ['A', 'dec'],
]

/** Before a letter that is worked: the heading of a round, a bracket, a comma, the ring. */
const OPENS = /^(?:[:(,[]|mr|ring)$/

/** Whether letters alone are worked: "6X" and "6V", or "(X, V)", with nothing that says what they are; "inc, repeat 6X" says how often. */
function usesUsual(tokens: readonly Token[]): boolean {
  const worked = (letter: RegExp): number =>
    tokens.filter(({ text, spaced }, at) => {
      if (!letter.test(text)) return false
      const before = tokens[at - 1]
      const counted = before?.kind === 'number' && !spaced && OPENS.test(tokens[at - 2]?.key ?? ':')
      const listed = /^[(,[]$/.test(before?.key ?? '') && /^[,)\]]$/.test(tokens[at + 1]?.key ?? '')
      return counted || listed
    }).length
  return worked(/^X$/) > 1 && worked(/^[VA]$/) > 0
}

const known = new WeakMap<readonly Token[], string>()

/** What letters of these tokens stand for: "X=sc V=inc"; '' where they stand for themselves. */
export const aliasesOf = (tokens: readonly Token[]): string => known.get(tokens) ?? ''

/** The tokens, with what single capitals stand for in the place of those. */
export function withAliases(tokens: Token[]): Token[] {
  const aliases = new Map<string, Meaning>()
  tokens.forEach((token, at) => {
    if (!/^[A-Z]$/.test(token.text) || tokens[at + 1]?.key !== '=') return
    const meant = meantAt(tokens, at + 2)
    if (meant) aliases.set(token.text, meant)
  })
  const usual = aliases.size === 0 && usesUsual(tokens)
  if (usual) for (const [letter, word] of USUAL) aliases.set(letter, meaningOf(word))
  if (aliases.size === 0) return tokens
  const meant = tokens.map((token, at) => {
    const alias = tokens[at + 1]?.key === '=' ? undefined : aliases.get(token.text)
    return alias ? { ...token, key: alias.key, is: alias.is, kinds: alias.kinds } : token
  })
  known.set(meant, [...aliases].map(([letter, { key }]) => `${letter}=${key}`).join(' '))
  return meant
}
