import { counted } from '../../../src-core/figures/words'
import type { Finding } from '../../../shared-types/finding'
import { bySeverity } from '../../../src-core/findings/finding'
import { wrap } from '../text'

/** Findings, worst first, one a line: severity, code, place, what is wrong, what would mend it. */
export function findingLines(findings: readonly Finding[]): string[] {
  const codeWidth = Math.max(0, ...findings.map((finding) => finding.code.length))
  return bySeverity(findings).map((finding) =>
    (
      `${finding.severity.padEnd('warning'.length)}  ${finding.code.padEnd(codeWidth)}  ` +
      `${finding.where}: ${finding.message} ${finding.mend}`
    ).trimEnd(),
  )
}

/** The same as a section at the end of a report, wrapped to `width` columns; empty without findings. */
export function findingSection(findings: readonly Finding[], width: number): string[] {
  if (findings.length === 0) return []
  const lines = bySeverity(findings).flatMap((finding) => {
    const text = `${finding.where}: ${finding.message} ${finding.mend}`
    const mark = `${finding.severity.padEnd('warning'.length)}  `
    return wrap(text, width - mark.length).map(
      (line, index) => (index === 0 ? mark : ' '.repeat(mark.length)) + line,
    )
  })
  return ['', ...lines]
}

/** "2 errors, 1 warning", "nothing found". */
export function countFindings(findings: readonly Finding[]): string {
  const words = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length
    return count === 0 ? [] : [counted(count, severity)]
  })
  return words.join(', ') || 'nothing found'
}
