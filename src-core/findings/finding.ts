/** Builds findings from the catalogue: the code decides severity and wording, the caller gives place and numbers. */
import type { Finding, FindingTarget } from '../../shared-types/finding'
import { CATALOGUE } from './catalogue'
import type { FindingCode } from './catalogue'

export type FindingValues = Readonly<Record<string, string | number>>

/** Fills `{name}` places of a catalogue text; an unknown name is a bug of the caller and throws. */
function fill(template: string, values: FindingValues): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name]
    if (value === undefined) throw new Error(`finding text wants a value for {${name}}: ${template}`)
    return String(value)
  })
}

/** One finding: `where` in words or as a path into the file, `values` for the places in the text. */
export function finding(
  code: FindingCode,
  where: string,
  values: FindingValues = {},
  target?: FindingTarget,
): Finding {
  const entry = CATALOGUE[code]
  const message = fill(entry.message, values)
  const mend = fill(entry.mend, values)
  return { code, severity: entry.severity, where, message, mend, ...(target ? { target } : {}) }
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
