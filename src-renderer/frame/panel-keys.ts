/** Keys for what lies on a panel: they move it, rotate it, lay it higher or lower, copy it and take it away. */
import type { UnitSystem } from '../../shared-types/project'
import { MM_PER_INCH } from '../../src-core/units/quantity'
import { kindOf } from '../kinds/kinds'
import { toolFor } from '../state/tools'
import { altKey, ARROWS, ERASERS, paintKey, step, toggleKey, VIEW_KEYS } from './keys'
import type { MapKey, Press } from './keys'
import { copyItems, deleteItems, nudgeItems, rotateItems, stackItems, tellMotif } from './map-acts'
import { shortcutWords } from './shortcuts'

type Reach = 'plain' | 'far' | 'fine'

/** mm that an arrow key moves things by: alone, with Shift, with Alt; as it is told. */
const NUDGE: Readonly<Record<UnitSystem, Readonly<Record<Reach, readonly [mm: number, words: string]>>>> = {
  metric: { plain: [1, '1 mm'], far: [10, '10 mm'], fine: [0.1, '0.1 mm'] },
  imperial: {
    plain: [MM_PER_INCH / 16, '1/16 in'],
    far: [MM_PER_INCH / 2, '1/2 in'],
    fine: [MM_PER_INCH / 64, '1/64 in'],
  },
}
/** Degrees that an arrow key rotates things by. */
const ROTATE: Readonly<Record<Reach, number>> = { plain: 1, far: 15, fine: 0.1 }

const TOWARDS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

const targetsOf = ({ state }: Press): string[] => state.selection.targets(state.document.plan)

/** Moves or rotates what is selected, as the tool is. */
const moveBy =
  (reach: Reach) =>
  (press: Press): boolean => {
    const { state, drawing } = press
    const { document, selection, view } = state
    const ids = targetsOf(press)
    const [right, down] = TOWARDS[press.key]!
    const tool = toolFor(kindOf(document.project).tools, view.tool)
    if (ids.length === 0 || tool === 'select' || tool === 'mark') return false
    if (tool === 'turn') {
      // Right and down: clockwise.
      rotateItems(state, ids, (right || down) * ROTATE[reach])
    } else {
      const [mm] = NUDGE[document.settled.units][reach]
      nudgeItems(state, ids, right * mm, down * mm)
      if (selection.focus) drawing.revealMotif(selection.focus)
    }
    drawing.showGaps()
    tellMotif(state)
    return true
  }

/** Does something to what is selected; not where nothing is. */
const toTargets =
  (act: (press: Press, ids: readonly string[]) => void) =>
  (press: Press): boolean => {
    const ids = targetsOf(press)
    if (ids.length > 0) act(press, ids)
    return ids.length > 0
  }

const OVER = [']', '}', '>']

const stack = (reach: 'one' | 'all') =>
  toTargets(({ state, key }, ids) => stackItems(state, ids, OVER.includes(key), reach))

/** Takes the item before or after the one in the hand, by number, round and round. */
function goAlong({ key, state, drawing }: Press): void {
  const { document, selection } = state
  const { motifs } = document.plan
  if (motifs.length === 0) return
  const by = key === '.' ? 1 : -1
  const index = motifs.findIndex(({ id }) => id === selection.focus)
  const from = index < 0 && by < 0 ? 0 : index
  const next = motifs[(from + by + motifs.length) % motifs.length]!
  selection.hold(next.id)
  drawing.revealMotif(next.id)
  tellMotif(state)
}

export const PANEL_KEYS: readonly MapKey[] = [
  { ...{ shown: ', and .', words: 'to the item before, to the next', keys: [',', '.'] }, run: goAlong },
  {
    shown: 'Arrow keys',
    words: ({ units }) =>
      `move by ${NUDGE[units].plain[1]}; with the tool Rotate, rotate by ${ROTATE.plain}°`,
    ...{ keys: ARROWS, shift: false },
    run: moveBy('plain'),
  },
  {
    shown: 'Shift + arrow keys',
    words: ({ units }) => `by ${NUDGE[units].far[1]}; by ${ROTATE.far}°`,
    ...{ keys: ARROWS, shift: true, alt: 'either' },
    run: moveBy('far'),
  },
  {
    shown: (told) => `${altKey(told)} + arrow keys`,
    words: ({ units }) => `by ${NUDGE[units].fine[1]}; by ${ROTATE.fine}°`,
    ...{ keys: ARROWS, alt: true },
    run: moveBy('fine'),
  },
  {
    shown: 'Arrow keys, tool Select',
    words: 'from item to item; with Shift select on the way',
    keys: ARROWS,
    run: step,
  },
  paintKey('paint what is selected, by letter'),
  {
    shown: '] and [',
    words: 'lay over, tuck under',
    // On some keyboards they need Option.
    ...{ keys: [']', '['], alt: 'either' },
    run: stack('one'),
  },
  {
    shown: '} and {',
    words: 'lay over all, tuck under all',
    ...{ keys: ['}', '{'], alt: 'either' },
    run: stack('all'),
  },
  // For keyboards where brackets need AltGr, which counts as Ctrl and Alt.
  {
    ...{ shown: '> and <', words: 'also lay over, tuck under', keys: ['>', '<'] },
    run: stack('one'),
  },
  {
    shown: (told) => `${altKey(told)} + > and <`,
    words: 'also lay over all, tuck under all',
    ...{ keys: ['>', '<'], alt: true },
    run: stack('all'),
  },
  {
    shown: ({ isMac }) => shortcutWords('Mod+D', isMac),
    words: 'duplicate',
    ...{ keys: ['d'], shift: false, mod: true },
    run: toTargets(({ state }, ids) => copyItems(state, ids)),
  },
  {
    ...{ shown: 'Delete', words: 'remove', keys: ERASERS },
    run: toTargets(({ state }, ids) => deleteItems(state, ids)),
  },
  toggleKey('item'),
  // The hand on the map hears these itself.
  {
    ...{ shown: 'Shift while dragging', words: 'straight across or down; rotate by 15°', keys: [] },
    run: () => false,
  },
  { ...{ shown: (told) => `${altKey(told)} while dragging`, words: 'finer', keys: [] }, run: () => false },
  ...VIEW_KEYS,
]
