/** The fields of a blanket. Counts keep a slip of the finger from asking for what no machine could hold (ours). */
import { USABLE, USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'

const count = { code: 'layout/count', kind: 'count', least: 1, most: 1000 } as const
const target = { ...USABLE, kind: 'span', optional: true, zeroIsNone: true } as const
const outline = {
  code: 'layout/outline-size',
  kind: 'span',
  least: 10,
  most: 100_000,
  optional: true,
} as const
const outlineMiddle = { kind: 'number', least: -1000, most: 2000, optional: true } as const
/** Stored as a factor, told as what it adds (common practice: a few per cent). */
const blocking = {
  code: 'layout/blocking',
  kind: 'percent',
  least: 0.5,
  most: 2,
  initial: 1,
  shown: { times: 100, plus: -100 },
  change: 'change the blocking',
} as const

export const BLANKET = {
  large: field('blanket', 'cells.large[]', {
    ...{ kind: 'count', least: 1, most: 40 },
    code: 'layout/large-places',
    label: 'Places that it takes',
    change: 'change how many places a motif takes',
  }),
  columns: field('blanket', 'columns', {
    ...count,
    label: 'Motifs in a row',
    change: 'change the motifs in a row',
  }),
  rows: field('blanket', 'rows', { ...count, label: 'Rows', change: 'change the rows' }),
  rings: field('blanket', 'rings', {
    ...{ ...count, least: 0, most: 180 },
    label: 'Rings round the middle',
    change: 'change the rings',
  }),
  turn: field('blanket', 'turn', {
    ...{ kind: 'degrees', initial: 0 },
    label: 'Every motif by',
    doc: 'rotation of every motif',
    change: 'rotate the motifs',
    hint: 'Clockwise. At 0° a tip points up.',
  }),
  alternateTurn: field('blanket', 'alternateTurn', {
    ...{ kind: 'degrees', initial: 0 },
    label: 'Every other row by more',
    doc: 'rotation of every other row, in addition',
    change: 'rotate every other row',
  }),
  width: field('blanket', 'target.width', {
    ...{ ...target, what: 'the target width' },
    label: 'Target width',
    change: 'change the target width',
  }),
  height: field('blanket', 'target.height', {
    ...{ ...target, what: 'the target height' },
    label: 'Target height',
    change: 'change the target height',
  }),
  outlineWidth: field('blanket', 'outlineShape.size', {
    ...outline,
    what: 'the width of the outline',
    label: 'Width of the outline',
    doc: 'width of the shape that is cut out: the diameter of a circle, a hexagon from corner to corner',
    change: 'change the outline’s width',
  }),
  outlineHeight: field('blanket', 'outlineShape.height', {
    ...outline,
    what: 'the height of the outline',
    label: 'Height of the outline',
    doc: 'height of a rectangle or triangle that is cut out; left out, it follows from the width',
    change: 'change the outline’s height',
  }),
  outlineRow: field('blanket', 'outlineShape.middle.row', {
    ...outlineMiddle,
    what: 'the row of the outline’s middle',
    label: 'Middle at row',
    doc: 'row at which the middle of the outline lies, parts of a row counted; left out, half way down',
    change: 'move the outline',
  }),
  outlinePlace: field('blanket', 'outlineShape.middle.place', {
    ...outlineMiddle,
    what: 'the motif of the outline’s middle',
    label: 'Middle at motif',
    doc: 'motif of row 1 under which the middle of the outline lies, parts counted; left out, half way across',
    change: 'move the outline',
  }),
  wider: field('blanket', 'blocking.width', {
    ...blocking,
    label: 'Wider by',
    doc: 'finished width by the one before blocking',
  }),
  longer: field('blanket', 'blocking.height', {
    ...blocking,
    label: 'Longer by',
    doc: 'finished length by the one before blocking',
  }),
  most: field('blanket', 'cells.fill.most[]', {
    ...{ kind: 'count', least: 0, most: 100_000, optional: true, placeholder: 'no limit' },
    label: '{name} at most',
    doc: 'the most motifs in a colourway',
    what: 'the limit of a colourway',
    change: 'change the limit of {name}',
  }),
  mostGrams: field('blanket', 'cells.fill.mostGrams[]', {
    ...{ ...USABLE_OR_ZERO, kind: 'mass', optional: true, placeholder: 'no limit' },
    label: '{name} at most',
    doc: 'the most of a yarn in the whole piece',
    what: 'the limit of a yarn',
    change: 'change the limit of {name}',
  }),
} as const
