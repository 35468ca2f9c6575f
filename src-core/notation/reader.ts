/** A cursor over tokens with the small questions that the grammar asks all the time. */
import type { Terms } from '../../shared-types/project'
import type { FindingCode } from '../findings/catalogue'
import { said } from '../findings/finding'
import type { Said, Told } from '../findings/finding'
import type { Filet } from './filet'
import type { StitchName } from './stitch-name'
import { spanOf } from './tokens'
import type { Span, Token } from './tokens'
import type { Definition } from './tree'
import { wordOf } from './words'

/** A finding of the grammar, before the round it stands in is known. */
export type GrammarFinding = Said & { readonly span: Span }

export class Reader {
  at = 0
  depth = 0
  /** Names of the parts of the pattern, in lower case. */
  readonly parts = new Set<string>()
  /** The part that the words in hand stand in, in lower case. */
  part: string | null = null
  /** Whether the words in hand belong to a numbered round. */
  inRound = false
  /** Spaces and blocks, where the text explains them. */
  filet: Filet | null = null
  /** What the text calls an adjustable ring besides its usual names, in lower case. */
  readonly rings = new Set<string>()
  readonly findings: GrammarFinding[] = []
  /** Stitches by the place where their names were read, and where reading went on; so far as `end` was the same. */
  readonly stitches = new Map<number, { end: number; name: StitchName | null; to: number }>()

  constructor(
    readonly text: string,
    readonly tokens: readonly Token[],
    readonly terms: Terms,
    readonly definitions: Map<string, Definition>,
    public end = tokens.length,
  ) {}

  /** The text explains a stitch: its names are that from now on. */
  define(definition: Definition): void {
    for (const key of definition.keys) this.definitions.set(key, definition)
    this.stitches.clear()
  }

  peek(ahead = 0): Token | undefined {
    const index = this.at + ahead
    return index < this.end ? this.tokens[index] : undefined
  }

  /** The word there, whatever its spelling; '' behind the last one. */
  key(ahead = 0): string {
    return this.peek(ahead)?.is ?? ''
  }

  /** What is written there, in lower case. */
  spelled(ahead = 0): string {
    return this.peek(ahead)?.key ?? ''
  }

  /** Whether the word there can stand for something: "space", "verb" (`words.ts`). */
  isA(kind: string, ahead = 0): boolean {
    return this.peek(ahead)?.kinds.has(kind) ?? false
  }

  /** Passes a word that can stand for something. */
  skipA(kind: string): boolean {
    if (!this.isA(kind)) return false
    this.at++
    return true
  }

  /** The number that a word of a kind stands for ("three", "twice"); null where it is another word. */
  valueOf(kind: string): number | null {
    return this.isA(kind) ? wordOf(this.key()).value : null
  }

  /** Whether the next tokens are these words, in order. */
  sees(...words: string[]): boolean {
    for (let index = 0; index < words.length; index++) if (this.key(index) !== words[index]) return false
    return true
  }

  seesAny(words: ReadonlySet<string>, ahead = 0): boolean {
    return words.has(this.key(ahead))
  }

  /** Passes one of the words if it comes next. */
  skip(...words: string[]): boolean {
    if (!words.includes(this.key())) return false
    this.at++
    return true
  }

  /** Passes these words in order if they come next. */
  skipAll(...words: string[]): boolean {
    if (!this.sees(...words)) return false
    this.at += words.length
    return true
  }

  /** A whole number in figures or words; null (and nothing passed) where there is none. */
  number(): number | null {
    const token = this.peek()
    if (!token) return null
    const value = token.kind === 'number' ? token.value : this.valueOf('number')
    if (value === null || !Number.isInteger(value)) return null
    this.at++
    return value
  }

  ordinal(): number | null {
    const token = this.peek()
    if (!token) return null
    const value = token.kind === 'ordinal' ? token.value : this.valueOf('ordinal')
    if (value === null) return null
    this.at++
    return value
  }

  /** The stretch from the token at `start` to the last one passed. */
  span(start: number): Span {
    const from = this.tokens[start] ?? this.tokens[this.tokens.length - 1]
    const to = this.tokens[Math.max(start, this.at - 1)] ?? from
    if (!from || !to) return { start: 0, end: 0, line: 1, column: 1 }
    return spanOf(from, to)
  }

  words(span: Span): string {
    return this.text.slice(span.start, span.end)
  }

  /** Runs `read`; where it gives null, the cursor stands where it stood. */
  attempt<Result>(read: () => Result | null): Result | null {
    const at = this.at
    const found = this.findings.length
    const result = read()
    if (result === null) {
      this.at = at
      if (this.findings.length > found) this.findings.length = found
    }
    return result
  }

  report<Code extends FindingCode>(code: Code, span: Span, ...values: Told<Code>): void {
    this.findings.push({ ...said(code, ...values), span })
  }
}
