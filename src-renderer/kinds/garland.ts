/** A garland in the window: motifs and beads along a cord, straight or in swags. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { counted } from '../../src-core/figures/words'
import { GARLAND_LIMITS } from '../../src-core/layout/garland/constants'
import { formatLength } from '../../src-core/units/format'
import {
  garlandOf,
  isSwagged,
  itemOfMotif,
  patchCord,
  patchPart,
  patchSwags,
  swagFollows,
} from '../state/edits/garland'
import type { KindOfLayout, Measures } from './kind'
import { isFor, nameOf, wayWords } from './words'

export const GARLAND_KIND: KindOfLayout = {
  kind: 'garland',
  name: 'Garland',
  one: 'a garland',
  thing: 'item',

  tools: ['select', 'paint'],
  joinsName: 'Fastenings',
  colouring:
    'Each part of the sequence has its colourway: choose it at Arrangement, or press a letter disc and paint on the map; every repeat of that part follows.',
  keepsColours: false,

  mapLabel: (plan) => `Garland of ${counted(plan.items?.length ?? plan.motifs.length, 'item')}`,
  mapHelp:
    'Arrow keys move along the cord, letters paint colourways, question mark lists all keys. The garland is also there as a table.',
  emptyMap: {
    what: 'Nothing hangs on the cord yet.',
    then: 'What is missing or cannot be used of it is told at Arrangement.',
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
      ...(found ? [`${formatLength(found.item.along, project.units ?? 'metric')} along the cord`] : []),
    ].join(', ')
  },
  hand: {
    teaching: 'Press something on the cord to take it in the hand: where it hangs, how it is fastened.',
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
        least: GARLAND_LIMITS.span.least * swags.count,
        most: GARLAND_LIMITS.span.most,
        edit: follows === 'span' ? null : (before, mm) => patchSwags(before, { span: mm / swags.count }),
        change: 'change the wall',
      },
      down: {
        label: 'Drop of a swag',
        isShort: true,
        value: swags.drop,
        ...GARLAND_LIMITS.drop,
        edit: follows === 'drop' ? null : (before, drop) => patchSwags(before, { drop }),
        change: 'change the drop',
      },
    }
  }
  return {
    across: {
      label: 'Length of the cord between the ties',
      value: garland?.cord.length ?? size.width,
      ...GARLAND_LIMITS.length,
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
