/**
 * US and UK terms. The engine thinks in US keys; whatever a person wrote is brought to them, and whatever a
 * person reads is brought back. Pairs as in §us-uk.
 */
import type { Terms } from '../../shared-types/project'
import { STITCH_KEYS } from './table'
import type { StitchKey } from './table'

interface StitchNames {
  readonly abbreviation: string
  readonly name: string
  /** Other ways to write it, in lower case. */
  readonly also: readonly string[]
}

const CHAIN: StitchNames = { abbreviation: 'ch', name: 'chain', also: ['chain stitch', 'chain st'] }
const SLIP_ALSO = ['sl st', 'ss', 'sl', 'slst', 'sl stitch', 'slip st']

/** What older English print calls a slip stitch. (Common practice, no source.) */
const SINGLE = ['single', 'single stitch', 'single st', 'single chain']

/** What stitches are called where other languages are at home, alike in both terms. (Common practice, no source.) */
const ABROAD = {
  sc: ['solid', 'firm', 'fixed', 'tight', 'low'],
  hdc: ['half high'],
  dc: ['high'],
} as const satisfies Partial<Record<StitchKey, readonly string[]>>
const abroad = (key: keyof typeof ABROAD): string[] =>
  ABROAD[key].flatMap((word) => [`${word} stitch`, `${word} st`])

const NAMES: Readonly<Record<Terms, Readonly<Record<StitchKey, StitchNames>>>> = {
  US: {
    ch: CHAIN,
    'sl st': { abbreviation: 'sl st', name: 'slip stitch', also: SLIP_ALSO },
    sc: { abbreviation: 'sc', name: 'single crochet', also: ['single', ...abroad('sc')] },
    hdc: {
      abbreviation: 'hdc',
      name: 'half double crochet',
      also: ['half double', 'half-double', 'half-double crochet', 'half dc', ...abroad('hdc')],
    },
    dc: { abbreviation: 'dc', name: 'double crochet', also: ['double', ...abroad('dc')] },
    tr: { abbreviation: 'tr', name: 'treble crochet', also: ['treble', 'triple crochet', 'trc'] },
    dtr: {
      abbreviation: 'dtr',
      name: 'double treble crochet',
      also: ['double treble', 'double triple crochet', 'dtrc', 'dbl tr', 'dbltr', 'dbl treble'],
    },
    trtr: {
      abbreviation: 'trtr',
      name: 'triple treble crochet',
      also: ['triple treble', 'triple triple crochet'],
    },
  },
  UK: {
    ch: CHAIN,
    'sl st': { abbreviation: 'ss', name: 'slip stitch', also: [...SLIP_ALSO, ...SINGLE] },
    sc: { abbreviation: 'dc', name: 'double crochet', also: ['double', ...abroad('sc')] },
    hdc: {
      abbreviation: 'htr',
      name: 'half treble crochet',
      also: ['half treble', 'half-treble', 'half-treble crochet', 'half tr', ...abroad('hdc')],
    },
    dc: { abbreviation: 'tr', name: 'treble crochet', also: ['treble', ...abroad('dc')] },
    tr: {
      abbreviation: 'dtr',
      name: 'double treble crochet',
      also: ['double treble', 'dbl tr', 'dbltr', 'dbl treble', 'ltr'],
    },
    dtr: {
      abbreviation: 'trtr',
      name: 'triple treble crochet',
      also: ['triple treble', 'ttr', 'trip tr', 'triptr'],
    },
    trtr: {
      abbreviation: 'qtr',
      name: 'quadruple treble crochet',
      also: ['quad tr', 'quadtr', 'quadruple treble', 'quad treble', 'quad treble crochet'],
    },
  },
}

/** Lower case, one space between words, no final stop. */
const tidy = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.\s]+$/, '')
    .trim()
    .replace(/\s+/g, ' ')

const spellings = (terms: Terms): ReadonlyMap<string, StitchKey> => {
  const map = new Map<string, StitchKey>()
  for (const key of STITCH_KEYS) {
    const { abbreviation, name, also } = NAMES[terms][key]
    for (const spelling of [abbreviation, name, ...also]) {
      for (const form of [spelling, spelling.replace(/ /g, '-')]) {
        map.set(form, key)
        map.set(form.replace(/(stitch)$/, '$1e') + 's', key)
      }
    }
  }
  return map
}

const SPELLINGS: Readonly<Record<Terms, ReadonlyMap<string, StitchKey>>> = {
  US: spellings('US'),
  UK: spellings('UK'),
}

/** The table's key for a stitch as written ("dc", "Double crochets", "ss"), or null if these terms have none. */
export function canonicalStitch(name: string, terms: Terms): StitchKey | null {
  return SPELLINGS[terms].get(tidy(name)) ?? null
}

/** The abbreviation of a stitch in the wished terms: sc → "sc" (US), "dc" (UK). */
export const stitchAbbreviation = (stitch: StitchKey, terms: Terms): string =>
  NAMES[terms][stitch].abbreviation

/** The full name of a stitch in the wished terms: sc → "single crochet" (US), "double crochet" (UK). */
export const stitchName = (stitch: StitchKey, terms: Terms): string => NAMES[terms][stitch].name

const COMPOUND = /^(fp|bp|e|beg[ -]?)?([a-z]+(?: st)?)(\d+tog)?$/i

/**
 * An abbreviation from one set of terms in another, with its front or back post, "beg" and "n tog":
 * "FPdc" → "FPtr", "dc3tog" → "tr3tog". Null where there is no such stitch in `from`.
 */
export function translateStitch(abbreviation: string, from: Terms, to: Terms): string | null {
  const whole = canonicalStitch(abbreviation, from)
  if (whole) return stitchAbbreviation(whole, to)
  const [, before = '', base = '', after = ''] = COMPOUND.exec(abbreviation.trim()) ?? []
  const stitch = canonicalStitch(base, from)
  return stitch ? before + stitchAbbreviation(stitch, to) + after : null
}

/** Words that differ between the two sets of terms, by what they mean. */
export const TERM_WORDS = {
  skip: { US: 'skip', UK: 'miss' },
  skipShort: { US: 'sk', UK: 'miss' },
  gauge: { US: 'gauge', UK: 'tension' },
  edging: { US: 'border', UK: 'edging' },
  crib: { US: 'crib', UK: 'cot' },
  ball: { US: 'skein', UK: 'ball' },
  balls: { US: 'skeins', UK: 'balls' },
  yarnOver: { US: 'yo', UK: 'yrh' },
  slipStitch: { US: 'sl st', UK: 'ss' },
  shippingWeight: { US: 'shipping weight', UK: 'postage weight' },
} as const satisfies Record<string, Readonly<Record<Terms, string>>>

export type TermWord = keyof typeof TERM_WORDS

/** A word of the trade in the wished terms: skip → "skip" (US), "miss" (UK). */
export const termWord = (word: TermWord, terms: Terms): string => TERM_WORDS[word][terms]

/** Chains that are made, as the terms write them: "ch 5" (US), "5 ch" (UK). */
export const chainsMade = (chains: string | number, terms: Terms): string =>
  terms === 'UK' ? `${chains} ch` : `ch ${chains}`

/** A chain space as the terms write it: "ch-5 sp" (US), "5-ch sp" (UK). */
export const chainSpace = (chains: number, terms: Terms): string =>
  terms === 'UK' ? `${chains}-ch sp` : `ch-${chains} sp`
