/** An appliqué in the window: items laid on a panel, each by itself. */
import { say } from '../state/say'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { counted } from '../../src-core/figures/words'
import { PANEL } from '../../src-core/fields/applique'
import { boundsOf } from '../../src-core/fields/field'
import { formatLength, formatYarnLength } from '../../src-core/units/format'
import {
  appliqueOf,
  findItem,
  patchApplique,
  patchPanel,
  setItem,
  setPanelShape,
} from '../state/edits/applique'
import { setLayoutKind } from '../state/edits/layout-kind'
import { countFigure, figure, hoursFigure, lengthFigure, sizeFigure } from '../state/ledger-figures'
import { panelResized } from '../state/resize'
import type { KindOfLayout, Measures } from './kind'
import { isFor, nameOf, wayWords } from './words'
import { settled } from '../../src-core/settled'

export const APPLIQUE_KIND: KindOfLayout = {
  kind: 'applique',
  name: 'Appliqué',
  one: 'an appliqué',
  thing: 'item',

  tools: ['move', 'select', 'paint', 'turn', 'line', 'mark'],
  joinsName: null,
  get colouring() {
    return say`Each item has its own colourway: click a letter disc and paint on the map, or press a letter key there.`
  },
  canJoin: () => true,
  keepsColours: false,

  mapLabel: (plan) => `Panel of ${counted(plan.motifs.length, 'item')}`,
  get mapHelp() {
    return say`Comma and full stop lead from item to item, arrow keys move the item, letters paint colourways, question mark lists all keys. The panel is also there as a table.`
  },
  emptyMap: {
    what: 'There is no panel to place anything on.',
    then: 'What is missing or cannot be used of it is listed at Arrangement.',
    way: 'To the panel',
    to: { place: 'arrangement' },
  },
  isEmpty: (plan) => plan.motifs.length === 0 && !plan.panel,
  measures: (project, plan) => measuresOf(project, plan),
  resize: { change: 'change the panel', edit: panelResized },

  pieceWords: (project, _, piece) => {
    const { units } = settled(project)
    return [
      `item ${piece.label}`,
      nameOf(project, piece),
      wayWords(project, piece),
      `${formatLength(piece.x, units)} from the left`,
      `${formatLength(piece.y, units)} from the top`,
      `rotated ${Math.round(piece.turn * 10) / 10} degrees`,
      ...(piece.flipped ? ['wrong side up'] : []),
    ].join(', ')
  },
  hand: {
    get teaching() {
      return say`Select an item on the panel to see more: its place, its distances, its colours.`
    },
    moving: 'Arrow keys move the item, comma and full stop lead to the next',
    title: (_, { label }, { name }) => [`Item ${label}`, name],
    work: () => '',
    isLow: true,
  },
  painting: (project, _, ids, colourway) => {
    const suiting = ids.filter((id) => isFor(project, findItem(project, id)?.motif, colourway))
    const patch = { colourway: colourway ?? undefined }
    return { count: counted(suiting.length, 'item'), edit: (before) => setItem(before, suiting, patch) }
  },

  figures: (project, plan, before) => {
    const { units } = settled(project)
    const closest = plan.clearances?.items ?? null
    const thread = plan.stitching?.thread ?? 0
    return [
      sizeFigure(project, plan, before),
      countFigure('Items', plan.motifs.length, before?.motifs.length),
      ...(closest === null
        ? []
        : [lengthFigure('Closest', closest, before?.clearances?.items ?? undefined, units)]),
      figure('Thread', formatYarnLength(thread, units)),
      hoursFigure(plan, before),
    ]
  },
  summary: {
    arrangement: (project, plan) => {
      const items = plan.motifs.length > 0 ? counted(plan.motifs.length, 'item') : 'nothing placed yet'
      const closest = plan.clearances?.items ?? null
      if (closest === null) return [items]
      const apart = `${formatLength(closest, settled(project).units)} apart at the closest`
      return [items, closest > 0 ? apart : 'some lie on others']
    },
    /** How the items are sewn down. */
    joins: (project, plan) => {
      const thread = plan.stitching?.thread ?? 0
      if (thread === 0) return ['nothing to sew down yet']
      return ['sewn down', `${formatYarnLength(thread, settled(project).units)} of thread`]
    },
  },
  nudge: (field, steps) =>
    field === 'clearance'
      ? {
          label: 'change the minimum gap',
          edit: (project) =>
            patchApplique(project, {
              clearance: Math.max(0, (appliqueOf(project)?.clearance ?? 0) + steps),
            }),
        }
      : null,

  paper: {
    label: 'The template',
    what: 'the template',
    toPutIn: { label: 'Card and template, to put in', what: 'card and template' },
    alone: 'The template alone',
    isTemplate: true,
    list: { list: 'items', label: 'Items' },
  },
  motifsAbout: () => 0,
  isPlannedHere: true,

  start: {
    examples: 'Placed on a panel: appliqué',
    made: (answers) =>
      answers.panel === 'circle'
        ? { kind: 'applique', diameter: answers.number('across') }
        : { kind: 'applique', width: answers.number('across'), height: answers.number('down') },
    wish: () => null,
    /** One motif lies in the middle, to be moved, turned and joined by others. */
    lay: (project, motif, colourway, made) => {
      if (made.kind !== 'applique') return project
      const first = setLayoutKind(project, 'applique')
      const isRound = 'diameter' in made
      const [width, height] = isRound ? [made.diameter, made.diameter] : [made.width, made.height]
      const panel = isRound
        ? patchPanel(setPanelShape(first, 'circle'), { diameter: made.diameter })
        : patchPanel(first, { width, height })
      const item = { motif, colourway, x: width / 2, y: height / 2, turn: 0 }
      return patchApplique(panel, { items: [item] })
    },
  },
}

function measuresOf(project: Project, { size }: Plan): Measures {
  const limits = { ...boundsOf(PANEL.width), change: PANEL.width.change }
  const shape = appliqueOf(project)?.panel?.shape ?? 'rectangle'
  const isDrawn = shape === 'outline'
  if (shape === 'circle') {
    const edit = (before: Project, diameter: number) => patchPanel(before, { diameter })
    return {
      across: { ...limits, label: 'Diameter of the panel', value: size.width, edit },
      down: { ...limits, label: 'Diameter of the panel, top to bottom', value: size.height, edit },
    }
  }
  return {
    across: {
      ...limits,
      label: 'Width of the panel',
      value: size.width,
      edit: isDrawn ? null : (before, width) => patchPanel(before, { width }),
    },
    down: {
      ...limits,
      label: 'Height of the panel',
      value: size.height,
      edit: isDrawn ? null : (before, height) => patchPanel(before, { height }),
    },
  }
}
