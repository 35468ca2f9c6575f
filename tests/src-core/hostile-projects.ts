/** Projects of every sort, which together have every number that a project can have. */

const gauge = {
  stitch: 'sc',
  stitches: 20,
  rows: 22,
  over: 100,
  hook: 4,
  countedWith: 3.5,
  heights: { dc: 12 },
  rounds: 2,
  across: 60,
}
const sizes = {
  overTips: 80,
  asMeasured: { overTips: 82, hook: 4 },
  overValleys: 56,
  across: 70,
  sideToSide: 60,
  pointToPoint: 66,
  length: 60,
  width: 25,
}
const care = {
  stated: { overTips: 80, sideToSide: 60 },
  gauge,
  weighed: { motifs: 3, grams: 30, resolution: 1, shares: { petals: 0.7, centre: 0.3 } },
  measuredWith: { ...gauge, hook: 3 },
  weighedWith: { ...gauge, hook: 3 },
  unravelled: { petals: 4, centre: 2 },
  minutes: 12,
  goesWith: { motif: 'm', each: 2 },
}
const kit = {
  ...{
    count: 10,
    windTo: 5,
    sparePercent: 3,
    packaging: 1,
    packagingGrams: 20,
    marginPercent: 30,
    taxPercent: 19,
  },
  extras: [{ name: 'Needle', price: 1, count: 2, grams: 3 }],
  fees: { fixed: 1, sharePercent: 5 },
}
/** A photo that is none: no number of it is read. */
const photo = { picture: 'data:image/jpeg;base64,/9j/', sheet: 'A4' }
const flower = (id: string, more: object = {}) => ({
  photo,
  ...{ id, kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 56 },
  asMeasured: { overTips: 82, overValleys: 57 },
  fromRounds: { outline: 'petals', petals: 6, sizes: { overTips: 80, overValleys: 56 } },
  slots: [
    { slot: 'petals', grams: 3 },
    { slot: 'centre', grams: 1 },
  ],
  ...more,
})
/** A line as it was traced, with a few points to a petal. */
const trace = {
  points: Array.from({ length: 36 }, (_, i) => {
    const far = [40, 38, 32, 28, 32, 38][i % 6]!
    return [far * Math.sin((i * Math.PI) / 18), -far * Math.cos((i * Math.PI) / 18)]
  }),
  tips: [0, 6, 12, 18, 24, 30],
  dips: [3, 9, 15, 21, 27, 33],
}
const common = {
  ...{ format: 'petalyard-project', version: 1, gauge, allowance: { wastePercent: 5, tail: 150 } },
  yarns: [
    {
      ...{ id: 'y', ballGrams: 50, ballMetres: 120, price: 4, onHandGrams: 20, onHandBalls: 2, onHandAt: 1 },
      left: { grams: 30, at: 4, of: 60 },
      packs: [{ grams: 100, price: 7 }],
    },
  ],
  colourways: [{ id: 'c', motif: 'm', yarns: { petals: 'y', centre: 'y' } }],
}
const blanket = {
  ...{
    kind: 'blanket',
    arrangement: 'offset-rows',
    motif: 'm',
    columns: 4,
    rows: 3,
    rings: 1,
    turn: 30,
    alternateTurn: 0,
  },
  blocking: { width: 1.02, height: 1.01 },
  target: { width: 300, height: 240 },
  cells: {
    fill: {
      ...{ pattern: 'no-two-alike', colourways: ['c'], seed: 3 },
      ...{ most: { c: 20 }, mostGrams: { y: 400 } },
    },
    kept: { seed: 3, pattern: 'no-two-alike' },
    large: { '2,2': 2 },
  },
  halves: true,
  edging: { style: 'level', rounds: ['1 sc in each st'], yarn: 'y' },
  kit,
}
const joining = { rule: 'bridge', bridgeChains: 3, gap: 4, reach: 12, minutes: 2 }
const ROUNDS = {
  ...{ id: 'm', kind: 'rounds', foundation: { chains: 6, chain: 6 }, measured: { ...sizes } },
  rounds: [
    { slot: 'centre', work: '12 dc in ring', across: 30 },
    { slot: 'petals', work: '(sc, hdc, dc, hdc, sc) in each of next 6 sts', across: 60 },
  ],
}
const items = [
  { motif: 'm', colourway: 'c', x: 60, y: 60, turn: 20, layer: 1 },
  { motif: 'm', x: 150, y: 150 },
]
const applique = (panel: object) => ({
  kind: 'applique',
  clearance: 3,
  items,
  kit,
  panel: { allowance: 10, ...panel },
})
const garland = (more: object) => ({
  kind: 'garland',
  cord: {
    length: 900,
    ties: 150,
    worked: 'chain',
    yarn: 'y',
    gauge: { chains: 20, over: 100 },
    price: 2,
    grams: 10,
  },
  items: [
    { motif: 'm', colourway: 'c', gap: 10 },
    { bead: 'Wood', size: 8, price: 0.2, grams: 1 },
  ],
  hang: { way: 'plumb', by: 2, chains: 3 },
  kit,
  ...more,
})

/** One project of each sort; together they have every number that a project can have. */
export const BASES = {
  'a blanket of flowers': {
    ...common,
    motifs: [flower('m', care)],
    joining,
    layout: blanket,
  },
  'a blanket of rings, apart': {
    ...{ ...common, motifs: [flower('m', care)], joining: { ...joining, rule: 'apart', reach: undefined } },
    layout: {
      ...blanket,
      arrangement: 'rings',
      halves: false,
      cells: { fill: { pattern: 'scatter', seed: 5, colourways: ['c'] } },
    },
  },
  'a blanket of every measure': {
    ...{
      ...common,
      motifs: [flower('m', { ...sizes, ...care, outline: 'hexagon' })],
      joining: { ...joining, rule: 'seam' },
    },
    layout: { ...blanket, arrangement: 'straight-rows', fillers: { motif: 'm' } },
  },
  'a blanket of written rounds': { ...common, motifs: [{ ...ROUNDS, ...care }], joining, layout: blanket },
  'a blanket of leaves': {
    ...common,
    motifs: [flower('m', { ...sizes, outline: 'leaf' })],
    joining,
    layout: blanket,
  },
  'a blanket of a traced flower': {
    ...common,
    motifs: [flower('m', { outline: 'traced', traced: trace })],
    joining,
    layout: blanket,
  },
  'a blanket of rounds': {
    ...common,
    motifs: [flower('m', { ...sizes, outline: 'round' })],
    joining,
    layout: blanket,
  },
  'a blanket of two flowers, cut out': {
    ...{ ...common, motifs: [flower('m', care), flower('n')] },
    joining: {
      ...joining,
      pairs: [{ motifs: ['m', 'n'], rule: 'bridge', bridgeChains: 2, gap: 1 }],
      single: [{ places: ['1,1', '1,2'], rule: 'bridge', bridgeChains: 2 }],
    },
    layout: {
      ...blanket,
      alternate: { motifs: ['m', 'n'], by: 'cell' },
      outlineShape: { kind: 'rectangle', size: 400, height: 300, middle: { row: 2.5, place: 2 } },
    },
  },
  'a garland': {
    ...common,
    motifs: [flower('m', care)],
    layout: garland({ spacing: { between: 'edges', mm: 30, count: 8 } }),
  },
  'a garland in swags': {
    ...{ ...common, motifs: [{ ...ROUNDS, ...care }] },
    layout: garland({ spacing: { between: 'centres', mm: 90 }, swags: { count: 2, span: 400, drop: 80 } }),
  },
  'a panel': {
    ...common,
    motifs: [flower('m', care)],
    layout: applique({ shape: 'rectangle', width: 220, height: 220 }),
  },
  'a round panel': {
    ...common,
    motifs: [{ ...ROUNDS, ...care }],
    layout: applique({ shape: 'circle', diameter: 220 }),
  },
  'a drawn panel': {
    ...{ ...common, motifs: [flower('m')] },
    layout: applique({
      shape: 'outline',
      points: [
        [0, 0],
        [220, 0],
        [220, 220],
        [0, 220],
      ],
    }),
  },
}
