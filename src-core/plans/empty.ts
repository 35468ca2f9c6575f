import type { BlanketPlan } from '../../shared-types/plan'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import { notBegun } from '../progress/progress'
import { settled } from '../settled'

const { progress, marks } = notBegun({ yarns: [], ends: 0, minutes: null }, { motifs: 0 }, 'joined')

/** The plan of a project of which nothing can be said yet. */
export const EMPTY: BlanketPlan = {
  kind: 'blanket',
  settled: settled({ format: PROJECT_FORMAT, version: PROJECT_VERSION }),
  size: {
    width: 0,
    height: 0,
    sensitivity: { step: 0, width: 0, height: 0 },
    range: { low: { width: 0, height: 0 }, high: { width: 0, height: 0 } },
  },
  counts: { motifs: 0, byColourway: {} },
  pitch: { column: 0, row: 0, rows: [0, 0] },
  arrangement: null,
  motifs: [],
  joins: [],
  pieces: 0,
  single: 0,
  order: [],
  holes: [],
  fillers: [],
  fillerSteps: [],
  halves: [],
  edging: null,
  edgingLines: [],
  yarns: [],
  ends: 0,
  minutes: null,
  findings: [],
  motif: null,
  fillerMotifs: [],
  openings: [],
  accounts: [],
  progress,
  marks,
}
