/** What the drawing asks of the kind of a plan; the project may already be of another one. */
import type { Plan } from '../../shared-types/plan'

interface DrawnKind {
  /** Motifs stand in rows, which arrow keys go along. */
  readonly hasRows: boolean
  /** Things may lie on each other. */
  readonly isPile: boolean
  /** Each is rotated by itself, round its own middle. */
  readonly turnsEach: boolean
}

const DRAWN: Readonly<Record<Plan['kind'], DrawnKind>> = {
  blanket: { hasRows: true, isPile: false, turnsEach: false },
  garland: { hasRows: true, isPile: true, turnsEach: false },
  applique: { hasRows: false, isPile: true, turnsEach: true },
}

export const drawnAs = ({ kind }: Pick<Plan, 'kind'>): DrawnKind => DRAWN[kind]
