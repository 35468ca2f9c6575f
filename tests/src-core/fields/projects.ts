/** For each field a project in which it counts, and where in it; every number is made up. */
import type { AppliqueLayout, Motif, Project } from '../../../shared-types/project'
import type { At, Field } from '../../../src-core/fields/field'

type Layout = NonNullable<Project['layout']>

const kit = {
  ...{ count: 5, windTo: 1, packaging: 1, fees: { fixed: 1 } },
  extras: [{ name: 'needle', count: 1, price: 1, grams: 2 }],
}
const flower = {
  ...{ id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 56 },
  slots: [{ slot: 'all', grams: 4 }],
} as const
const rounds = {
  ...{ id: 'm', kind: 'rounds', foundation: { ring: 'chain', chains: 6 } },
  rounds: [{ slot: 'all', work: '12 dc in ring', across: 30 }],
} as const

function project(layout: Layout, motif: object = {}, more: Partial<Project> = {}): Project {
  return {
    ...{ format: 'petalyard-project', version: 1 },
    yarns: [
      { id: 'y', name: 'Oat', ballGrams: 50, ballMetres: 125, price: 4, packs: [{ grams: 100, price: 7 }] },
    ],
    motifs: [{ ...flower, ...motif } as Motif],
    colourways: [{ id: 'c', code: 'A', motif: 'm', yarns: { all: 'y' } }],
    layout,
    ...more,
  }
}

const blanket = (more: object = {}): Layout => ({
  ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 2, rows: 2, kit },
  cells: { fill: { pattern: 'one', colourways: ['c'] } },
  ...more,
})
const garland = (more: object = {}): Layout => ({
  ...{ kind: 'garland', cord: { length: 900, worked: 'chain' }, spacing: { mm: 40 } },
  items: [
    { motif: 'm', colourway: 'c' },
    { bead: 'wood', size: 12 },
  ],
  ...more,
})
const applique = (panel: AppliqueLayout['panel']): Layout => ({
  ...{ kind: 'applique', panel, clearance: 5 },
  items: [{ motif: 'm', colourway: 'c', x: 150, y: 150 }],
})

const swags = (own: object) =>
  project(garland({ cord: { worked: 'chain' }, swags: { count: 1, span: 900, drop: 100, ...own } }))
const counted = (value: number) => ({ stitches: value, rows: value, over: value })
const withGauge = (gauge: object) => project(blanket({ edging: { rounds: ['sc'] } }), { gauge })
const measured = (outline: string) =>
  project(blanket(), { outline, overTips: undefined, overValleys: undefined })
const written = project(blanket(), rounds)

/** By path; `value` is the one that it is about to have, which some need company for. */
const SPECIAL: Readonly<Record<string, (value: number) => Project>> = {
  'motifs[].across': () => measured('round'),
  'motifs[].sideToSide': () => measured('hexagon'),
  'motifs[].pointToPoint': () => measured('hexagon'),
  'motifs[].length': () => measured('leaf'),
  'motifs[].width': () => measured('leaf'),
  'motifs[].rounds[].across': () => written,
  'motifs[].foundation.chains': () => written,
  'motifs[].foundation.chain': () => written,
  // So that a stitch stays a millimetre wide.
  'motifs[].gauge.stitches': (value) => withGauge({ over: Math.min(1e9, Math.max(1e-3, value)) }),
  'motifs[].gauge.rows': (value) => withGauge({ over: Math.min(1e9, Math.max(1e-3, value)) }),
  'motifs[].gauge.over': (value) => withGauge(counted(Math.min(1e9, Math.max(1e-3, value)))),
  'motifs[].gauge.across': () => withGauge({ rounds: 2 }),
  'motifs[].gauge.rounds': () => withGauge({ across: 60 }),
  'motifs[].weighed.shares[]': () =>
    project(blanket(), { ...rounds, weighed: { motifs: 1, grams: 4, shares: { all: 0.5 } } }),
  'layout.columns': () => project(blanket({ rows: 1 })),
  'layout.rows': () => project(blanket({ columns: 1 })),
  'layout.rings': () => project(blanket({ arrangement: 'rings', rings: 1 })),
  'layout.outlineShape.size': () => project(blanket({ outlineShape: { kind: 'circle' } })),
  'layout.outlineShape.height': () => project(blanket({ outlineShape: { kind: 'rectangle', size: 900 } })),
  'layout.outlineShape.middle.row': () => project(blanket({ outlineShape: { kind: 'circle', size: 900 } })),
  'layout.outlineShape.middle.place': () => project(blanket({ outlineShape: { kind: 'circle', size: 900 } })),
  'layout.cord.gauge.chains': (value) =>
    project(garland({ cord: { length: 900, gauge: { over: Math.min(1e9, Math.max(1e-3, value)) } } })),
  'layout.cord.gauge.over': (value) =>
    project(garland({ cord: { length: 900, gauge: { chains: Math.min(1e9, Math.max(1e-3, value)) } } })),
  'layout.swags.count': () => swags({}),
  'layout.swags.span': () => swags({}),
  'layout.swags.drop': () => swags({}),
  'layout.items[].gap': () => project(garland()),
  'layout.panel.diameter': () => project(applique({ shape: 'circle', diameter: 300 })),
  // At a tenth of a millimetre a chain, as many as can be read are as wide as a gap may be.
  'joining.bridgeChains': () =>
    project(blanket(), { gauge: { stitches: 1000, over: 100 } }, { joining: { rule: 'bridge' } }),
  'joining.gap': () => project(blanket(), {}, { joining: { rule: 'apart' } }),
}

const BY_LAYOUT = {
  blanket: project(blanket()),
  garland: project(garland()),
  applique: project(applique({ width: 300, height: 300 })),
} as const

/** The project in which a field counts. */
export const projectFor = (field: Field, value = 0): Project =>
  SPECIAL[field.path]?.(value) ?? BY_LAYOUT[field.layout ?? 'blanket']

/** Where the field stands in it. */
export const placeFor = ({ path }: Field): At =>
  [...path.matchAll(/(\w+)\[\]/g)].map(([, list = '']) =>
    list === 'shares' || list === 'slots'
      ? 'all'
      : list === 'most'
        ? 'c'
        : list === 'mostGrams'
          ? 'y'
          : list === 'large'
            ? '1,1'
            : path.startsWith('layout.items') && path.match(/size|price|grams/)
              ? 1
              : 0,
  )
