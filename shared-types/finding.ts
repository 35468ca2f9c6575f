/**
 * Findings: what a good tech editor would mark. The shape is shared; codes and wording stand in the
 * catalogue (`src-core/findings/catalogue.ts`), the same for window, command line, paper, docs and tests.
 */
import type { Terms, UnitSystem } from './project'

export type Severity = 'error' | 'warning' | 'note'

/** A number with its unit, as each system of units tells it. */
export type InUnits = Readonly<Record<UnitSystem, string>>

/** Words that differ between American and British spelling, or between the terms. */
export type InTerms = Readonly<Record<Terms, string>>

/** What stands in the places of a finding's text. */
export type FindingValues = Readonly<Record<string, string | number | InUnits | InTerms>>

export interface Finding {
  /** Stable code such as `joins/one-node`; documented in docs/findings.md. */
  readonly code: string
  readonly severity: Severity
  /** The place in words or as a path into the file: "motif m1, round 3", "colourways[2].yarns.petals". */
  readonly where: string
  /** What is wrong, with its numbers. */
  readonly message: string
  /** What would mend it. */
  readonly mend: string
  /** Kept until the text is told in the project's units, where a number in it has one; absent after that. */
  readonly values?: FindingValues
  /** Things that the window can point at; absent where the place is the whole project. */
  readonly target?: FindingTarget
}

export interface FindingTarget {
  readonly motif?: string
  readonly yarn?: string
  readonly colourway?: string
  /** Placed motifs ("row,place"). */
  readonly cells?: readonly string[]
  readonly round?: number
  /** From 1, in the line; of rounds of a motif or of the edging in that round's own text. */
  readonly column?: number
  /** Characters from `column` on; absent where the whole round is meant. */
  readonly length?: number
  /** Line of the text, from 1. */
  readonly line?: number
  /** Index into the motif's rounds. */
  readonly entry?: number
  /** Index into the written rounds of the edging. */
  readonly edging?: number
}
