/** Builds findings from the catalogue: the code decides severity and wording, the caller gives place and numbers. */
import { plural } from '../figures/words'
import type { Finding, FindingTarget, FindingValues, InTerms, InUnits } from '../../shared-types/finding'
import type { Terms, UnitSystem } from '../../shared-types/project'
import { inSpelling, isSpelledTwoWays } from '../stitches/spelling'
import { TERM_WORDS, termWord } from '../stitches/terms'
import type { TermWord } from '../stitches/terms'
import { CATALOGUE } from './catalogue'
import type { CatalogueEntry, FindingCode } from './catalogue'

export type { FindingValues } from '../../shared-types/finding'

type Value = FindingValues[string]
const isForReader = (value: Value): value is InUnits | InTerms => typeof value === 'object'

/** Words of the program that stand in a finding as a value: spelled for who reads it. */
export const spelledValue = (text: string): string | InTerms =>
  isSpelledTwoWays(text) ? { US: inSpelling(text, 'US'), UK: text } : text

/** Whom a finding is told: in which units they measure and in which terms they read. */
export interface Reader {
  readonly units: UnitSystem
  readonly terms: Terms
}

/** Until it is known who reads. */
const ANYBODY: Reader = { units: 'metric', terms: 'US' }

/** `{ball}`: a word of the trade, unless a value of the finding has its name. */
const PLACE = /\{(\w+)\}/g
/** `{count|motif hangs|motifs hang}`: what stands for one, and for any other number. */
const PLURAL = /\{(\w+)\|([^|{}]*)\|([^|{}]*)\}/g

const isTermWord = (name: string): name is TermWord => Object.hasOwn(TERM_WORDS, name)

/** Whether a text has words that differ between US and UK terms, or are spelled in two ways. */
const hasTerms = (template: string, values: FindingValues): boolean =>
  isSpelledTwoWays(template) ||
  [...template.matchAll(PLACE)].some(([, name = '']) => !Object.hasOwn(values, name) && isTermWord(name))

/** Names of the places in a text: `{what}` and `{count|one|many}`. */
type PlacesIn<Text extends string> = Text extends `${string}{${infer Place}}${infer Rest}`
  ? (Place extends `${infer Name}|${string}` ? Name : Place) | PlacesIn<Rest>
  : never

/** By code, the places that its finding needs a value for; words of the trade fill themselves. */
type Needed = {
  [Code in FindingCode]: Exclude<
    PlacesIn<(typeof CATALOGUE)[Code]['message']> | PlacesIn<(typeof CATALOGUE)[Code]['mend']>,
    TermWord
  >
}

/** The values that a finding needs; with several codes, those of each of them. */
export type ValuesOf<Code extends FindingCode> = FindingValues & {
  readonly [Name in Needed[Code]]: FindingValues[string]
}

/** Values and what else a caller may say, all left out where a finding needs none. */
export type Told<Code extends FindingCode, More = FindingTarget> = [Needed[Code]] extends [never]
  ? [values?: FindingValues, more?: More | undefined]
  : [values: ValuesOf<Code>, more?: More | undefined]

/** A code with its values, on the way to become a finding: what is wrong, before it is known where. */
export type Said<Codes extends FindingCode = FindingCode> = {
  [Code in Codes]: {
    readonly code: Code
    readonly values: [Needed[Code]] extends [never] ? FindingValues : ValuesOf<Code>
  }
}[Codes]

/** Says what is wrong. */
export const said = <Code extends FindingCode, More>(code: Code, ...[values = {}]: Told<Code, More>): Said =>
  ({ code, values }) as unknown as Said

/** Fills the places of a catalogue text. */
function fill(template: string, values: FindingValues, { units, terms }: Reader): string {
  const told = (name: string): string => {
    const value = Object.hasOwn(values, name) ? values[name] : undefined
    if (value === undefined || !isForReader(value)) return String(value)
    return 'US' in value ? value[terms] : value[units]
  }
  const word = (place: string, name: string): string =>
    !Object.hasOwn(values, name) && isTermWord(name) ? termWord(name, terms) : place
  return inSpelling(template, terms)
    .replace(PLACE, word)
    .replace(PLURAL, (_, name: string, one: string, many: string) => plural(Number(told(name)), one, many))
    .replace(PLACE, (_, name: string) => told(name))
}

/**
 * One finding: `where` in words or as a path into the file, `values` for the places in the text. Its numbers with
 * units (see quantities.ts) stand there in metric ones, and its words of the trade in US terms, until `toldTo` tells
 * them as the project does, so that no stage needs to know either.
 */
export const finding = <Code extends FindingCode>(
  code: Code,
  where: string,
  ...[values, target]: Told<Code>
): Finding => tell(code, where, values, target)

/** The finding of what was said, with its place. */
export const findingOf = ({ code, values }: Said, where: string, target?: FindingTarget): Finding =>
  tell(code, where, values, target)

function tell(
  code: FindingCode,
  where: string,
  values: FindingValues = {},
  target: FindingTarget | undefined,
): Finding {
  const entry: CatalogueEntry = CATALOGUE[code]
  const kept = Object.values(values).some(isForReader) || hasTerms(`${entry.message} ${entry.mend}`, values)
  return {
    code,
    severity: entry.severity,
    where,
    message: fill(entry.message, values, ANYBODY),
    mend: fill(entry.mend, values, ANYBODY),
    ...(kept ? { values } : {}),
    ...(target ? { target } : {}),
  }
}

/** Findings as their reader measures and reads: "78 mm" or "3⅛ in", "skeins" or "balls". */
export function toldTo(
  { units = 'metric', terms = 'US' }: { [Key in keyof Reader]?: Reader[Key] | undefined },
  findings: readonly Finding[],
): readonly Finding[] {
  if (!findings.some(({ values }) => values)) return findings
  return findings.map((told) => {
    const { values, ...rest } = told
    const entry: CatalogueEntry | undefined = values && CATALOGUE[told.code as FindingCode]
    if (!values || !entry) return told
    return {
      ...rest,
      message: fill(entry.message, values, { units, terms }),
      mend: fill(entry.mend, values, { units, terms }),
    }
  })
}

const RANK = { error: 0, warning: 1, note: 2 } as const

/** Errors first, then warnings, then notes; otherwise in the order found. What is said twice is told once. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>()
  const unlike = findings.filter(({ code, where, message }) => {
    const key = `${code} ${where} ${message}`
    return !seen.has(key) && seen.add(key)
  })
  return unlike.sort((a, b) => RANK[a.severity] - RANK[b.severity])
}
