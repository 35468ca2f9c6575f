/** The fields of an appliqué, and of what an arranger is asked for before it lays anything. */
import type { FieldFacts } from './field'
import { field } from './field'

/** mm. A panel is no smaller and no larger; 3 m is more than a bedspread is wide. */
const SIZE = { code: 'applique/panel-size', kind: 'span', least: 20, most: 3000 } as const
const change = 'change the panel'

export const PANEL = {
  width: field('applique', 'panel.width', { ...SIZE, label: 'Width', doc: 'width of the panel', change }),
  height: field('applique', 'panel.height', { ...SIZE, label: 'Height', doc: 'height of the panel', change }),
  diameter: field('applique', 'panel.diameter', {
    ...SIZE,
    label: 'Across',
    doc: 'diameter of the panel',
    change,
  }),
  allowance: field('applique', 'panel.allowance', {
    ...{ code: 'applique/allowance', kind: 'length', least: 0, most: 200 },
    label: 'Seam allowance',
    change: 'change the seam allowance',
  }),
} as const

export const CLEARANCE = field('applique', 'clearance', {
  ...{ code: 'applique/clearance', kind: 'length', least: 0, most: 1000 },
  label: 'Minimum gap',
  change: 'change the minimum gap',
  hint: 'From outline to outline.',
})

/** mm. Items lie no farther from the panel's top left. */
const PLACE = { code: 'applique/no-place', kind: 'place', least: -10_000, most: 10_000 } as const

/** Of one item. Whole turns change nothing, so that any will do. */
export const ITEM = {
  x: field('item', 'x', {
    ...PLACE,
    label: 'From the left',
    doc: 'centre of an item from the left of the panel',
    change: 'move item {label}',
  }),
  y: field('item', 'y', {
    ...PLACE,
    label: 'From the top',
    doc: 'centre of an item from the top of the panel',
    change: 'move item {label}',
  }),
  turn: field('item', 'turn', {
    ...{ kind: 'degrees', initial: 0 },
    label: 'Rotated',
    doc: 'rotation of an item',
    change: 'rotate item {label}',
  }),
} as const

/** A number that an arranger is asked for: not in the project, and what follows from the panel when left empty. */
export interface WishField extends Omit<FieldFacts, 'change'> {
  readonly key: string
  /** There may be no room for so many. */
  readonly isRoom?: boolean
}
const wish = <const Facts extends WishField>(facts: Facts): Facts => facts

/** Most items that one panel can hold. */
export const MOST_APPLIQUE_ITEMS = 500
const COUNT = { kind: 'count', least: 1, most: MOST_APPLIQUE_ITEMS, isRoom: true } as const
const REACH = { kind: 'length', least: 1, most: SIZE.most } as const
const MIDDLE = { kind: 'length', least: 0, most: SIZE.most } as const
const ROOM_HINT = 'Left empty: as many as keep the minimum gap.'
const turn = wish({ key: 'turn', kind: 'degrees', label: 'Rotate each by', initial: 0 })

export const WREATH = {
  count: wish({ key: 'count', ...COUNT, label: 'Items', hint: ROOM_HINT }),
  /** Told from centre to centre; the engine counts from the middle. */
  width: wish({
    key: 'radiusX',
    ...REACH,
    least: 0.5,
    most: REACH.most / 2,
    shown: { times: 2 },
    label: 'Wide, centre to centre',
  }),
  height: wish({
    key: 'radiusY',
    ...REACH,
    least: 0.5,
    most: REACH.most / 2,
    shown: { times: 2 },
    label: 'High',
  }),
  start: wish({ key: 'start', kind: 'degrees', label: 'Begins at', initial: 0 }),
  turn,
  left: wish({ key: 'x', ...MIDDLE, label: 'Middle, from the left' }),
  top: wish({ key: 'y', ...MIDDLE, label: 'Middle, from the top' }),
} as const

export const ROW = { count: WREATH.count, turn } as const

export const SPRAY = {
  count: wish({ key: 'count', ...COUNT, label: 'Items' }),
  first: wish({ key: 'first', ...MIDDLE, label: 'Corner to first item' }),
  step: wish({ key: 'step', ...REACH, label: 'Arc to arc' }),
  opening: wish({ key: 'opening', kind: 'degrees', least: 0, most: 360, label: 'Opens by' }),
  turn,
} as const

export const SCATTER = {
  distance: wish({ ...CLEARANCE, key: 'distance', label: 'Apart at least', hint: '' }),
  most: wish({ key: 'most', ...COUNT, label: 'At most', hint: 'Left empty: as many as there is room for.' }),
  turn: wish({ key: 'turn', kind: 'degrees', label: 'By', initial: 0 }),
  seed: wish({
    ...{ key: 'seed', kind: 'count', least: 0, most: 999_999, label: 'Seed' },
    hint: 'The same seed gives the same scatter.',
  }),
} as const
