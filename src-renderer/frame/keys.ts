/**
 * Keys: what each is pressed as, what it does, and how it is told. The map hears its keys from these tables, and the
 * sheet of keys and docs/keys.md are written from them.
 */
import { say } from '../state/say'
import type { UnitSystem } from '../../shared-types/project'
import { columnOf, rowOf } from '../drawing/groups'
import type { MapDrawing } from '../drawing/map-drawing'
import type { Direction } from '../drawing/scene'
import { stepInOrder } from '../drawing/steps'
import type { WindowState } from '../state/window.svelte'
import { kindOf } from '../kinds/kinds'
import type { Marking } from '../state/view.svelte'
import { fillCells } from './cell-acts'
import { heldWords, selectGroup, tellMotif } from './map-acts'
import { markPieces, upTo } from './mark-acts'
import { freeColours, paintAndTell } from './paint-acts'

/** Whom keys are told to. */
export interface Told {
  readonly isMac: boolean
  readonly units: UnitSystem
}
type Words = string | ((told: Told) => string)

/** A key as it is told. */
export interface KeyRow {
  readonly shown: Words
  readonly words: Words
}

/** A key of the map. Of several that a press could mean, the first that does something is the one. */
export interface MapKey extends KeyRow {
  /** As the browser names them; letters in lower case. */
  readonly keys: readonly string[]
  /** Held down with it: must be, must not be; left out, Shift may be, and the others must not. */
  readonly shift?: boolean
  readonly alt?: boolean | 'either'
  readonly mod?: true
  /** Answers false where it does nothing and the press may mean something else. */
  run(press: Press): boolean | void
}

export interface Press {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly state: WindowState
  readonly drawing: MapDrawing
}

const isMeant = ({ keys, shift, alt = false, mod }: MapKey, press: Press): boolean =>
  keys.includes(press.key.length === 1 ? press.key.toLowerCase() : press.key) &&
  (shift === undefined || shift === press.shiftKey) &&
  (alt === 'either' || alt === press.altKey) &&
  (mod ?? false) === (press.ctrlKey || press.metaKey)

/** Does what a press means; answers whether it meant anything. */
export const runKey = (table: readonly MapKey[], press: Press): boolean =>
  table.some((entry) => isMeant(entry, press) && entry.run(press) !== false)

/** Keys by name and words, as somebody reads them. */
export const keyRows = (rows: readonly KeyRow[], told: Told): (readonly [string, string])[] => {
  const text = (words: Words) => (typeof words === 'string' ? words : words(told))
  return rows.map(({ shown, words }) => [text(shown), text(words)] as const)
}

/** The name of the key beside the space bar. */
export const altKey = ({ isMac }: Told): string => (isMac ? 'Option' : 'Alt')

const DIRECTIONS: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
}
export const ARROWS = Object.keys(DIRECTIONS)

function go({ state, drawing, shiftKey }: Press, next: string | null): void {
  const { selection } = state
  const before = selection.focus
  if (!next) return
  if (shiftKey) {
    if (before) selection.add([before])
    selection.add([next])
    selection.focus = next
  } else selection.hold(next)
  drawing.revealMotif(next)
  tellMotif(state)
}

/** From one to the next in the direction of an arrow key; with Shift both are selected. */
export function step(press: Press): void {
  go(press, press.drawing.stepFrom(press.state.selection.focus, DIRECTIONS[press.key]!))
}

const targetsOf = ({ document, selection }: WindowState): string[] => selection.targets(document.plan)

/** Paints with the colourway of a letter. */
function paintWith({ key, state }: Press): boolean {
  const cells = targetsOf(state)
  const way = state.document.project.colourways?.find(({ code }) => code?.toUpperCase() === key.toUpperCase())
  if (!way || cells.length === 0) return false
  state.view.brush = way.id
  paintAndTell(state, cells, way.id, () => heldWords(state))
  return true
}

function toggle({ state }: Press): void {
  const { focus } = state.selection
  if (focus) state.selection.toggle([focus])
}

/** Selects what stands with the motif in the hand; not where nothing is in it. */
const select =
  (group: typeof rowOf) =>
  ({ state }: Press): boolean => {
    const { focus } = state.selection
    if (focus) selectGroup(state, group(state.document.plan, focus))
    return focus !== null
  }

/** Comma and full stop: before and after in the order of work. */
const along = (press: Press): void => {
  const { document, selection } = press.state
  go(press, stepInOrder(document.plan, selection.focus, press.key === '.' ? 1 : -1))
}

function letGo({ state, drawing }: Press): void {
  if (drawing.cancelGesture()) return
  const { document, selection, view } = state
  if (document.isPreviewing) document.cancel()
  else selection.hold(null)
  view.flagged = new Set()
  view.painted = null
  view.drawnLine = null
}

/** What the buttons beside the map zoom by, too. */
export const ZOOM = { in: 1.25, out: 0.8 } as const

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz']
export const ERASERS = ['Delete', 'Backspace']

export const paintKey = (words: string): MapKey => ({
  ...{ shown: 'A, B, C …', words, keys: LETTERS },
  run: paintWith,
})

export const toggleKey = (thing: string, shift?: boolean): MapKey => ({
  ...{ shown: 'Space', words: `select or leave out the ${thing}`, keys: [' '] },
  ...(shift !== undefined && { shift }),
  run: toggle,
})

const inHandKey: MapKey = {
  ...{ shown: 'Enter', words: 'show its details', keys: ['Enter'] },
  run: ({ state }) => {
    state.view.place = null
  },
}

/** Marks what is selected. */
const mark =
  (as: Marking) =>
  ({ state }: Press): boolean => {
    const ids = targetsOf(state)
    markPieces(state, ids, as)
    return ids.length > 0
  }

const MARK_KEYS: readonly MapKey[] = [
  { ...{ shown: '1', words: 'mark what is selected as made, or not', keys: ['1'] }, run: mark('made') },
  {
    ...{ shown: '2', words: 'mark it as joined (fastened, sewn down), or not', keys: ['2'] },
    run: (press) =>
      kindOf(press.state.document.project).canJoin(press.state.document.project) && mark('joined')(press),
  },
  {
    ...{ shown: '3', words: 'mark all up to here as made, in working order', keys: ['3'] },
    run: ({ state }) => {
      const { focus } = state.selection
      if (focus) markPieces(state, upTo(state, focus), 'made', true)
      return focus !== null
    },
  },
]

/** Keys that every drawing has. */
export const VIEW_KEYS: readonly MapKey[] = [
  inHandKey,
  ...MARK_KEYS,
  {
    ...{ shown: '+ and −', words: 'zoom', keys: ['+', '=', '-'] },
    run: ({ key, drawing }) => drawing.zoomBy(key === '-' ? ZOOM.out : ZOOM.in),
  },
  { ...{ shown: '0', words: 'show all', keys: ['0'] }, run: ({ drawing }) => drawing.fit() },
  {
    ...{ shown: 'Escape', words: 'select nothing; gives up a drag', keys: ['Escape'] },
    run: letGo,
  },
]

const onTheWay: MapKey = {
  ...{ shown: 'Shift + arrow keys', words: 'select on the way', keys: ARROWS, shift: true },
  run: step,
}

export const BLANKET_KEYS: readonly MapKey[] = [
  { ...{ shown: 'Arrow keys', words: 'from motif to motif', keys: ARROWS, shift: false }, run: step },
  {
    shown: ', and .',
    words: 'to the one before, to the next; fillers and half motifs too',
    keys: [',', '.'],
    run: along,
  },
  onTheWay,
  paintKey('paint what is selected, by letter'),
  {
    ...{ shown: 'Shift + Delete', words: 'leave out what is selected', keys: ERASERS, shift: true },
    run: ({ state }) => {
      const cells = targetsOf(state)
      if (cells.length > 0) fillCells(state, cells, null)
    },
  },
  {
    shown: 'Delete',
    words: () => say`free the colour: a pattern may change it again`,
    keys: ERASERS,
    run: ({ state }) => {
      const cells = targetsOf(state)
      if (cells.length > 0) freeColours(state, cells)
    },
  },
  toggleKey('motif', false),
  {
    ...{ shown: 'Shift + Space', words: 'select its row', keys: [' '], shift: true },
    run: select(rowOf),
  },
  {
    ...{ shown: 'Shift + Enter', words: 'select its column', keys: ['Enter'], shift: true },
    run: select(columnOf),
  },
  ...VIEW_KEYS,
]

export const GARLAND_KEYS: readonly MapKey[] = [
  { ...{ shown: 'Arrow keys', words: 'along the cord', keys: ARROWS, shift: false }, run: step },
  onTheWay,
  paintKey('paint what is selected and its repeats, by letter'),
  {
    shown: 'Delete',
    words: () => say`take its colourway off`,
    keys: ERASERS,
    run: ({ state }) => {
      const cells = targetsOf(state)
      if (cells.length > 0) paintAndTell(state, cells, null)
    },
  },
  toggleKey('item'),
  ...VIEW_KEYS,
]

/** In the list of what hangs on a cord, which hears its keys itself. */
export const SEQUENCE_KEYS: readonly KeyRow[] = [
  { shown: 'Arrow up, arrow down', words: 'from part to part' },
  { shown: (told) => `${altKey(told)} + those`, words: 'move the part' },
  { shown: 'Enter', words: 'open it to be changed' },
  { shown: 'Delete', words: 'take it out' },
]

export const FIELD_KEYS: readonly KeyRow[] = [
  { shown: 'Arrow up, arrow down', words: 'a little more, a little less; with Shift ten times that' },
  { shown: '12*9.5 cm, 4 1/2 in', words: 'sums and units are worked out' },
  { shown: 'Enter', words: 'keep it' },
  { shown: 'Escape', words: 'leave it as it was' },
]

export const SENTENCE_KEYS: readonly KeyRow[] = [
  { shown: 'Tab', words: 'from part to part' },
  { shown: 'Arrow keys', words: 'nudge the part; the ledger shows what would follow' },
  { shown: 'Enter', words: 'keep it, or open what changes it' },
]
