/** Rounds that go on from others: the text of those before stands in front, and only what follows is told. */
import { readRounds } from './read'
import type { ReadOptions, ReadRounds } from './read'
import { likelySlips } from './slips'
import type { LikelySlip } from './slips'

/** Finding, account or slip with its line counted from the text's own first one. */
type Told = Pick<ReadRounds, 'rounds' | 'findings' | 'terms' | 'tree'> & {
  readonly suggestions: readonly LikelySlip[]
}

/**
 * Reads a text whose rounds follow those of `earlier` (empty: none). Accounts and suggestions are those of the text
 * alone, their lines counted in it; a finding of the rounds before says so in its `where` and points at no line.
 * Offsets of spans count from the first of the rounds before. Never throws.
 */
export function readAfterRounds(text: string, earlier: string, options: ReadOptions): Told {
  const before = earlier.trim() === '' ? '' : `${earlier.trimEnd()}\n`
  const whole = before + text
  const lines = before.split('\n').length - 1
  const read = readRounds(whole, options)
  const suggestions = likelySlips(whole, options, read)
  const here = <T extends { readonly line: number }>(all: readonly T[]): T[] =>
    all.filter(({ line }) => line > lines).map((each) => ({ ...each, line: each.line - lines }))
  return {
    terms: read.terms,
    tree: read.tree,
    rounds: read.rounds
      .filter(({ span }) => span.line > lines)
      .map((account) => ({ ...account, span: { ...account.span, line: account.span.line - lines } })),
    findings: read.findings.map((found) => {
      const { target } = found
      if (lines === 0 || target?.line === undefined) return found
      if (target.line > lines) return { ...found, target: { ...target, line: target.line - lines } }
      const { line: _line, column: _column, length: _length, ...rest } = target
      return { ...found, where: `before the text, ${found.where}`, target: rest }
    }),
    suggestions: here(suggestions),
  }
}
