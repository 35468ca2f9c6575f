/** Blankets with an edging, of squares and hexagons whose outlines are known exactly. */
import type { BlanketLayout, MeasuredMotif, Project, Terms } from '../../../shared-types/project'
import type { EdgingKind } from '../../../src-core/edging/gallery'
import { fromGallery } from '../../../src-core/edging/gallery'

type Edging = NonNullable<BlanketLayout['edging']>

/** mm. Side to side of every motif; 20 sc in 10 cm. */
export const SIDE = 60
export const WIDTH = 5

const project = (motif: Partial<MeasuredMotif>, layout: Partial<BlanketLayout>, terms: Terms): Project => ({
  format: 'petalyard-project',
  version: 1,
  terms,
  gauge: { stitch: terms === 'US' ? 'sc' : 'dc', stitches: 20, rows: 22, over: 100 },
  yarns: [
    { id: 'y1', name: 'Cream', ballGrams: 100, ballMetres: 200 },
    { id: 'y2', name: 'Moss', ballGrams: 50, ballMetres: 125 },
  ],
  motifs: [{ id: 'm', name: 'Motif', kind: 'measured', sideToSide: SIDE, ...motif } as MeasuredMotif],
  joining: { rule: 'edges' },
  layout: { kind: 'blanket', motif: 'm', ...layout },
})

/** Squares in a rectangle, which its edging follows. */
export const squares = (columns: number, rows: number, edging: Edging, terms: Terms = 'US'): Project =>
  project(
    { outline: 'square' },
    { arrangement: 'straight-rows', columns, rows, edging: { style: 'follow', yarn: 'y1', ...edging } },
    terms,
  )

/** Rings of hexagons. */
export const hexagons = (rings: number, edging: Edging, terms: Terms = 'US'): Project =>
  project(
    { outline: 'hexagon' },
    { arrangement: 'rings', rings, edging: { style: 'follow', yarn: 'y1', ...edging } },
    terms,
  )

export const ofKind = (kind: EdgingKind, terms: Terms = 'US', rounds: string[] = ['sc']): Edging =>
  fromGallery({ rounds }, kind, terms)
