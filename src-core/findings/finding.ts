/** Builds findings from the catalogue: the code decides severity and wording, the caller gives place and numbers. */
import type { Finding, FindingTarget, FindingValues, InUnits } from '../../shared-types/finding'
import type { UnitSystem } from '../../shared-types/project'
import { CATALOGUE } from './catalogue'
import type { CatalogueEntry, FindingCode } from './catalogue'

export type { FindingValues } from '../../shared-types/finding'

const isInUnits = (value: string | number | InUnits): value is InUnits => typeof value === 'object'

/** Fills `{name}` places of a catalogue text; an unknown name is a bug of the caller and throws. */
function fill(template: string, values: FindingValues, units: UnitSystem): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name]
    if (value === undefined) throw new Error(`finding text wants a value for {${name}}: ${template}`)
    return isInUnits(value) ? value[units] : String(value)
  })
}

/**
 * One finding: `where` in words or as a path into the file, `values` for the places in the text. Its numbers with
 * units (see quantities.ts) stand there in metric ones until `inUnits` tells them in those of the project, so that
 * no stage needs to know them.
 */
export function finding(
  code: FindingCode,
  where: string,
  values: FindingValues = {},
  target?: FindingTarget,
): Finding {
  const entry = CATALOGUE[code]
  const kept = Object.values(values).some(isInUnits)
  return {
    code,
    severity: entry.severity,
    where,
    message: fill(entry.message, values, 'metric'),
    mend: fill(entry.mend, values, 'metric'),
    ...(kept ? { values } : {}),
    ...(target ? { target } : {}),
  }
}

/** Findings as their reader measures: "78 mm", or "3⅛ in". */
export function inUnits(findings: readonly Finding[], units: UnitSystem): readonly Finding[] {
  if (!findings.some(({ values }) => values)) return findings
  return findings.map((told) => {
    const { values, ...rest } = told
    const entry: CatalogueEntry | undefined = values && CATALOGUE[told.code as FindingCode]
    if (!values || !entry) return told
    return {
      ...rest,
      message: fill(entry.message, values, units),
      mend: fill(entry.mend, values, units),
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
