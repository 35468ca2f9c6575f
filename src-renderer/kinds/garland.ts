/** A garland in the window: motifs and beads along a cord, straight or in swags. */
import { say } from '../state/say'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { chainsBetween, fastenedBy } from '../../src-core/figures/garland-fastening'
import { counted, numbered } from '../../src-core/figures/words'
import { boundsOf } from '../../src-core/fields/field'
import { GARLAND } from '../../src-core/fields/garland'
import { formatLength } from '../../src-core/units/format'
import {
  garlandOf,
  isSwagged,
  itemOfMotif,
  patchCord,
  patchGarland,
  patchPart,
  patchSwags,
  spacingFollows,
  swagFollows,
} from '../state/edits/garland'
import { setLayoutKind } from '../state/edits/layout-kind'
import { countFigure, hoursFigure, lengthFigure } from '../state/ledger-figures'
import type { Field } from '../state/sentence'
import { stepped } from '../state/steps'
import type { KindOfLayout, Measures, Nudge } from './kind'
import { isFor, nameOf, wayWords } from './words'
import { settled } from '../../src-core/settled'

export const GARLAND_KIND: KindOfLayout = {
  kind: 'garland',
  name: 'Garland',
  one: 'a garland',
  thing: 'item',

  tools: ['select', 'paint', 'mark'],
  joinsName: 'Fastenings',
  get colouring() {
    return say`Each part of the sequence has its colourway: choose it at Arrangement, or click a letter disc and paint on the map; every repeat of that part follows.`
  },
  canJoin: () => true,
  keepsColours: false,

  mapLabel: (plan) => `Garland of ${counted(plan.garland?.items.length ?? plan.motifs.length, 'item')}`,
  get mapHelp() {
    return say`Arrow keys move along the cord, letters paint colourways, question mark lists all keys. The garland is also there as a table.`
  },
  emptyMap: {
    what: 'Nothing hangs on the cord yet.',
    then: 'What is missing or cannot be used of it is listed at Arrangement.',
    way: 'To the cord',
    to: { place: 'arrangement' },
  },
  isEmpty: (plan) => plan.motifs.length === 0,
  measures: (project, plan) => measuresOf(project, plan),
  // Its frame has no handles: the length of the cord and the drop are typed.
  resize: { change: 'change the size', edit: (project) => project },

  pieceWords: (project, plan, piece) => {
    const found = itemOfMotif(plan, piece.id)
    return [
      `item ${found?.number ?? piece.label}`,
      nameOf(project, piece),
      wayWords(project, piece),
      ...(found ? [`${formatLength(found.item.along, settled(project).units)} along the cord`] : []),
    ].join(', ')
  },
  hand: {
    teaching: 'Select something on the cord to see more: where it hangs, how it is fastened.',
    moving: 'Arrow keys move along the cord',
    title: (_, { label }, { name }) => [`Item ${label}`, name],
    work: () => '',
    isLow: false,
  },
  /** The parts of the sequence are painted that hang there, so that every repeat follows. */
  painting: (project, plan, ids, colourway) => {
    const suits = (part: number) => isFor(project, garlandOf(project)?.items?.[part]?.motif, colourway)
    const parts = [...new Set(ids.map((id) => itemOfMotif(plan, id)?.item.part ?? -1))].filter(suits)
    const patch = { colourway: colourway ?? undefined }
    return {
      count: `${counted(parts.length, 'part')} of the sequence`,
      edit: (before) => parts.reduce((now, part) => patchPart(now, part, patch), before),
    }
  },

  figures: (project, plan, before) => {
    const { units } = settled(project)
    const after = [countFigure('Ends', plan.ends, before?.ends), hoursFigure(plan, before)]
    if (!plan.garland) return [countFigure('On it', 0, undefined), ...after]
    const { cord, items, swags } = plan.garland
    const was = before?.garland
    const wallBefore = was?.swags?.width ?? was?.cord.length
    const chains = countFigure('Chains', cord.whole.chains ?? 0, was?.cord.whole.chains ?? undefined)
    return [
      lengthFigure('Cord', cord.length, was?.cord.length, units),
      lengthFigure('Wall', swags?.width ?? cord.length, wallBefore, units),
      countFigure('On it', items.length, was?.items.length),
      ...(cord.chains === null ? [] : [chains]),
      ...after,
    ]
  },
  summary: {
    arrangement: (project, { garland }) => {
      const { units } = settled(project)
      if (!garland) return ['a garland']
      const { items, swags, cord, spacing } = garland
      const hanging = counted(items.length, 'item')
      const apart = `${formatLength(spacing, units)} apart`
      const hung = swags
        ? `${counted(swags.count, 'swag')} of ${formatLength(swags.span, units)}`
        : `straight, ${formatLength(cord.length, units)}`
      return [`${hanging}, ${apart}`, hung]
    },
    /** How everything is fastened to the cord. */
    joins: (project, plan) => {
      const hang = garlandOf(project)?.hang
      const worked = plan.garland?.cord.chains !== null
      const items = plan.garland?.items ?? []
      const by = numbered(hang?.by === 1 ? 1 : 2, fastenedBy(items))
      const between = chainsBetween(items)
      const chains = between ? `, ${between.words} between` : ''
      return [
        worked ? `${by}${chains}` : `sewn on by ${by}`,
        hang?.way === 'along' ? 'turned with the cord' : 'hanging straight down',
      ]
    },
  },
  nudge: (field, steps, _, plan) => nudged(field, steps, plan),

  paper: {
    label: 'Card and list',
    what: 'card and list',
    toPutIn: { label: 'Card and list, to put in', what: 'card and list' },
    isTemplate: false,
    list: { list: 'cord', label: 'Along the cord' },
  },
  motifsAbout: (project) => {
    const { spacing, swags, cord } = garlandOf(project) ?? {}
    if (spacing?.count !== undefined) return spacing.count
    const length = cord?.length ?? (swags?.count ?? 1) * ((swags?.span ?? 0) + 2 * (swags?.drop ?? 0))
    return length / ((spacing?.mm ?? 0) + (spacing?.between === 'centres' ? 0 : SLIGHT) || 1)
  },
  isPlannedHere: false,

  start: {
    examples: 'Hung on a cord, sold as a kit',
    made: (answers) =>
      answers.hung === 'straight'
        ? { kind: 'garland', length: answers.number('length') }
        : { kind: 'garland', wall: answers.number('wall'), swags: answers.swags },
    wish: () => null,
    lay: (project, _motif, _colourway, made) => {
      if (made.kind !== 'garland') return project
      const garland = setLayoutKind(project, 'garland')
      if ('length' in made) return patchCord(garland, { length: made.length })
      const span = made.wall / made.swags
      const hung = patchSwags(garland, { count: made.swags, span, drop: Math.round(span * DROP_SHARE) })
      return patchCord(hung, { length: undefined })
    },
  },
}

/** Drop as a share of the span: an eighth to a quarter is common practice (no source). */
const DROP_SHARE = 0.16

/** mm. Room that a thing on a cord takes at least, for a guess at how many there are. */
const SLIGHT = 15

/** mm. How far one press moves the length of a cord, or a span. */
const CORD_STEP = 10

/** What an arrow key does to a garland; `plan` is the one before anything was tried. */
function nudged(field: Field, steps: number, plan: Plan): Nudge | null {
  switch (field) {
    case 'count':
      return {
        label: 'change how many hang on the cord',
        edit: (project) => {
          const garland = garlandOf(project)
          if (!garland) return project
          const { between, mm } = garland.spacing ?? {}
          // Where the length follows, the distance stays; else it follows from the count.
          const kept = spacingFollows(garland) === 'length' ? { mm } : {}
          const count = Math.max(1, (plan.garland?.items.length ?? 1) + steps)
          return patchGarland(project, { spacing: { ...(between ? { between } : {}), ...kept, count } })
        },
      }
    case 'spacing':
      return {
        label: 'change the spacing',
        edit: (project) => {
          const garland = garlandOf(project)
          if (!garland) return project
          const { between, count } = garland.spacing ?? {}
          const kept = spacingFollows(garland) === 'length' ? { count } : {}
          const least = between === 'centres' ? 1 : 0
          const mm = Math.max(least, Math.round(plan.garland?.spacing ?? 0) + steps)
          return patchGarland(project, { spacing: { ...(between ? { between } : {}), ...kept, mm } })
        },
      }
    case 'cord':
      return {
        label: 'change the length of the cord',
        edit: (project) => {
          const garland = garlandOf(project)
          const length = garland?.cord?.length
          // A cord that follows is lengthened where it follows from.
          if (length !== undefined)
            return patchCord(project, { length: Math.max(CORD_STEP, length + steps * CORD_STEP) })
          const span = garland?.swags?.span
          return span === undefined
            ? project
            : patchSwags(project, { span: Math.max(CORD_STEP, span + steps * CORD_STEP) })
        },
      }
    case 'swags':
      return {
        label: 'change the swags',
        edit: (project) => {
          const garland = garlandOf(project)
          return garland && isSwagged(garland)
            ? patchSwags(project, { count: stepped(garland.swags?.count, steps) })
            : project
        },
      }
    default:
      return null
  }
}

function measuresOf(project: Project, { garland, size }: Plan): Measures {
  const layout = garlandOf(project)
  const swags = garland?.swags
  if (layout && swags && isSwagged(layout)) {
    const follows = swagFollows(layout)
    return {
      across: {
        label: 'Width of the wall',
        value: swags.width,
        least: GARLAND.span.least * swags.count,
        most: GARLAND.span.most * swags.count,
        edit: follows === 'span' ? null : (before, mm) => patchSwags(before, { span: mm / swags.count }),
        change: 'change the wall',
      },
      down: {
        label: 'Drop of a swag',
        isShort: true,
        value: swags.drop,
        ...boundsOf(GARLAND.drop),
        edit: follows === 'drop' ? null : (before, drop) => patchSwags(before, { drop }),
        change: 'change the drop',
      },
    }
  }
  return {
    across: {
      label: 'Length of the cord between the ties',
      value: garland?.cord.length ?? size.width,
      ...boundsOf(GARLAND.length),
      edit: layout?.cord?.length === undefined ? null : (before, length) => patchCord(before, { length }),
      change: 'change the cord',
    },
    down: {
      label: 'Height as it hangs',
      isShort: true,
      value: size.height,
      least: 0,
      most: Infinity,
      edit: null,
      change: '',
    },
  }
}
