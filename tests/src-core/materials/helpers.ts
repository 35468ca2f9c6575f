import type { MotifAccount } from '../../../shared-types/plan'
import type { MeasuredMotif, Project, RoundsMotif } from '../../../shared-types/project'
import type { MaterialsInput } from '../../../src-core/materials/input'
import type { materials } from '../../../src-core/materials/materials'
import { settled } from '../../../src-core/settled'
import { resolveGauge } from '../../../src-core/stitches/gauge'

export const daisy: MeasuredMotif = {
  id: 'm1',
  name: 'Measured daisy',
  kind: 'measured',
  outline: 'petals',
  petals: 8,
  overTips: 95,
  overValleys: 70,
  slots: [
    { slot: 'centre', grams: 0.8 },
    { slot: 'petals', grams: 3.4 },
  ],
  weighed: { motifs: 10, resolution: 0.1 },
  minutes: 15,
}

export const flower: RoundsMotif = {
  id: 'm1',
  name: 'Six-petal flower',
  kind: 'rounds',
  rounds: [
    { slot: 'centre', work: '18 sc in ring' },
    { slot: 'petals', work: '*ch 6, sk 2, sc in next st*' },
    { slot: 'petals', work: 'petals' },
  ],
}

export const flowerAccount: MotifAccount = {
  id: 'm1',
  name: 'Six-petal flower',
  shape: 'petals',
  petals: 6,
  overTips: 78,
  overValleys: 52,
  range: { low: 70, high: 86 },
  provenance: 'gauge',
  rounds: [],
  stitches: { centre: { sc: 18 }, petals: { sc: 18, hdc: 12, dc: 36, ch: 48 } },
  metres: { centre: 1, petals: 6 },
  outline: [],
  anchors: [],
  layers: [],
  findings: [],
}

export const project = (changes: Partial<Project> = {}): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: [
    { id: 'y1', name: 'Sea glass', ballGrams: 50, ballMetres: 125, price: 3.9 },
    { id: 'y2', name: 'Sand', ballGrams: 50, ballMetres: 125, price: 4.1 },
  ],
  colourways: [{ id: 'c1', code: 'A', motif: 'm1', yarns: { centre: 'y2', petals: 'y1' } }],
  allowance: { wastePercent: 10, tail: 150 },
  ...changes,
})

/** What a blanket's planner hands to `materials`; the fields of `project` stand where it would put them. */
export const input = ({
  project: asked = project(),
  ...changes
}: Partial<MaterialsInput> & { readonly project?: Project } = {}): MaterialsInput => ({
  basis: settled(asked),
  joining: asked.joining,
  edging: asked.layout?.kind === 'blanket' ? asked.layout.edging : undefined,
  motif: daisy,
  account: null,
  gauge: resolveGauge({ stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }, 'US'),
  counts: { motifs: 100, byColourway: { c1: 100 } },
  joinOperations: 0,
  seams: { length: 0, count: 0 },
  edgingBase: null,
  ...changes,
})

/** Codes of what is found. */
export const codes = (found: ReturnType<typeof materials>) => found.findings.map((finding) => finding.code)
/** What is needed of a yarn. */
export const yarn = (found: ReturnType<typeof materials>, id: string) => {
  const need = found.yarns.find((candidate) => candidate.id === id)
  if (!need) throw new Error(`no yarn ${id}`)
  return need
}
