/** The abbreviations that a text uses, each with what it stands for, and the stitches that the text explains. */
import type { Terms } from '../../shared-types/project'
import { STITCH_KEYS } from '../stitches/table'
import { canonicalStitch, stitchAbbreviation, stitchName } from '../stitches/terms'
import { tokenize } from './tokens'
import { translateText } from './translate'
import type { RoundsTree } from './tree'
import { MEANINGS } from './words'

export interface Abbreviation {
  readonly abbreviation: string
  readonly meaning: string
}

const CAPITALS = new Set(['bl', 'blo', 'fl', 'flo', 'mc', 'cc', 'rs', 'ws'])
const COMPOUND = /^(fp|bp|e)?([a-z]+?)(\d+)?(tog)?$/
const PREFIXES: ReadonlyMap<string, string> = new Map(
  Object.entries({ fp: 'front post ', bp: 'back post ', e: 'extended ' }),
)

function meaningOf(key: string, terms: Terms): Abbreviation | null {
  const plain = canonicalStitch(key, terms)
  if (plain && stitchAbbreviation(plain, terms) === key)
    return { abbreviation: key, meaning: stitchName(plain, terms) }
  const known = MEANINGS.get(key)
  if (known) return { abbreviation: CAPITALS.has(key) ? key.toUpperCase() : key, meaning: known }
  const [, before = '', base = '', number, together] = COMPOUND.exec(key) ?? []
  const stitch = STITCH_KEYS.find((each) => stitchAbbreviation(each, terms) === base)
  if (!stitch || (!before && !together) || (number !== undefined) !== (together !== undefined)) return null
  const post = before === 'e' ? before : before.toUpperCase()
  const behind = together ? `${number}tog` : ''
  return {
    abbreviation: `${post}${base}${behind}`,
    meaning: `${PREFIXES.get(before) ?? ''}${stitchName(stitch, terms)}${together ? ` ${number} together` : ''}`,
  }
}

/**
 * In alphabetical order, in the terms asked for (else the text's own). `beside`: what is printed beside the rounds, in
 * these terms: joining rounds, an edging.
 */
export const abbreviationsUsed = (
  tree: RoundsTree,
  terms: Terms = tree.terms,
  beside: readonly string[] = [],
): Abbreviation[] => abbreviationsIn([translateText(tree.text, tree.terms, terms), ...beside], terms)

/** Those of some texts in these terms, in alphabetical order. */
export function abbreviationsIn(texts: readonly string[], terms: Terms): Abbreviation[] {
  const text = texts.join('\n')
  const found = new Map<string, Abbreviation>()
  const add = (entry: Abbreviation | null) => {
    if (entry) found.set(entry.abbreviation, entry)
  }
  const tokens = tokenize(text)
  tokens.forEach((token, index) => {
    if (token.kind === 'chains') {
      const words = token.text.toLowerCase().startsWith('ch') ? 'ch-' : '-ch'
      add({ abbreviation: words, meaning: 'earlier chain or its space' })
      return
    }
    if (token.kind !== 'word') return
    const next = tokens[index + 1]?.key ?? ''
    if (token.key === 'sl' && (next === 'st' || next === 'sts')) {
      add({ abbreviation: 'sl st', meaning: 'slip stitch' })
      return
    }
    if ((token.key === 'st' || token.key === 'sts') && tokens[index - 1]?.key === 'sl') return
    add(meaningOf(token.key, terms))
  })
  return [...found.values()].sort((a, b) => a.abbreviation.localeCompare(b.abbreviation, 'en'))
}

/** What follows brackets whose contents are worked several times. */
const AGAIN = /^\s*(?:\d+ (?:more )?times|twice|once|around|(?:rep|to)\b)/i

/** What stands in brackets, with what follows them; innermost ones alone. */
const inBrackets = (text: string, [open, close]: readonly [string, string]): [string, string][] =>
  [...text.matchAll(new RegExp(`\\${open}([^\\${open}\\${close}]*)\\${close}(?=(.{0,20}))`, 'g'))].map(
    ([, inside, after]) => [inside!, after!],
  )

/** Stars and brackets of some texts in their terms, each with what it means in them. */
export function signsIn(texts: readonly string[]): Abbreviation[] {
  const text = texts.join('\n')
  const told: Abbreviation[] = []
  if (/\brep(?:eat)? from \*/i.test(text)) {
    told.push({ abbreviation: '*', meaning: 'a repeat begins here' })
  }
  for (const pair of [
    ['[', ']'],
    ['(', ')'],
  ] as const) {
    const found = inBrackets(text, pair)
    const again = found.some(([, after]) => AGAIN.test(after))
    const together = found.some(
      ([inside, after]) => /,/.test(inside) && /^\s*(?:all )?in(?:to)?\b/i.test(after),
    )
    const meanings = [
      ...(again ? ['work it as many times as it says after'] : []),
      ...(together ? ['work it all in one place'] : []),
      // Counts at the end of a round, and what counts as a stitch.
      ...(found.length > 0 && pair[0] === '(' ? ['else a remark or a count'] : []),
    ]
    if (again || together) told.push({ abbreviation: pair.join(' '), meaning: meanings.join('; ') })
  }
  return told
}

/** The stitches that the text explains itself, in its words, in the terms asked for. */
export function specialStitches(tree: RoundsTree, terms: Terms = tree.terms): Abbreviation[] {
  return tree.definitions.map((definition) => ({
    abbreviation: definition.names[definition.names.length - 1] ?? '',
    meaning: translateText(
      tree.text.slice(definition.description.start, definition.description.end).trim(),
      tree.terms,
      terms,
    ),
  }))
}
