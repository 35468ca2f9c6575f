/** What commands print, and the code that they end with. */
import type { Finding } from '../../shared-types/finding'
import { EXIT } from './exit-codes'
import type { ExitCode } from './exit-codes'
import type { Surroundings } from './surroundings'
import { jsonForTerminal } from '../../src-core/letters/one-line'
import { findingLines } from './reports/findings'
import { printable } from './text'

/** 1 where a finding is an error, else 0. */
export function exitFor(findings: readonly Finding[]): ExitCode {
  return findings.some((finding) => finding.severity === 'error') ? EXIT.projectErrors : EXIT.done
}

/** One JSON document and nothing else. Numbers stay unrounded; JSON knows neither −0 nor NaN. */
export function printJson(around: Surroundings, document: object): void {
  around.out(`${jsonForTerminal(JSON.stringify(document, null, 2))}\n`)
}

/** Lines of a report on standard output, safe for the terminal whatever stands in the file. */
export function printLines(around: Surroundings, lines: readonly string[]): void {
  around.out(lines.map((line) => `${printable(line)}\n`).join(''))
}

/** Findings on standard error, one a line: for commands whose answer is something else. */
export function complainOf(around: Surroundings, findings: readonly Finding[]): void {
  around.err(
    findingLines(findings)
      .map((line) => `${line}\n`)
      .join(''),
  )
}
