/** A blanket in the window: motifs joined to each other, with fillers, half motifs and an edging. */
import { PIECE_NAME, standsWords } from '../../src-core/figures/piece-words'
import { capital, counted } from '../../src-core/figures/words'
import { pieceAt } from '../../src-core/layout/placed'
import { blanketOf, paint } from '../state/edits/layout'
import { fitted, resized } from '../state/resize'
import type { KindOfLayout } from './kind'
import { isFor, piecesCounted, wayWords } from './words'

export const BLANKET_KIND: KindOfLayout = {
  kind: 'blanket',
  name: 'Blanket',
  one: 'a blanket',
  thing: 'motif',

  tools: ['select', 'paint', 'turn'],
  joinsName: 'Joins',
  keepsColours: true,

  mapLabel: (plan) => `Map of ${counted(plan.counts.motifs, 'motif')}`,
  mapHelp:
    'Arrow keys move from motif to motif, comma and full stop go through fillers and half motifs too, letters paint colourways, question mark lists all keys. The map is also there as a table.',
  emptyMap: {
    what: 'Nothing is laid out yet.',
    then: 'Start from the motif on your table, or from one of the examples.',
    way: 'Start',
    to: { dialog: 'start' },
  },
  isEmpty: (plan) => plan.motifs.length === 0,
  measures: (_, { size }, from) => {
    const limits = { least: 10, most: 20000, change: 'change the size' }
    const { width, height } = from.size
    return {
      across: {
        ...limits,
        label: 'Width of the blanket',
        value: size.width,
        edit: (before, mm) => fitted(before, from, { width: mm, height }),
      },
      down: {
        ...limits,
        label: 'Height of the blanket',
        value: size.height,
        edit: (before, mm) => fitted(before, from, { width, height: mm }),
      },
    }
  },
  resize: { change: 'change the size', edit: resized },

  pieceWords: (project, plan, piece) => {
    // Painted by hand or kept: no pattern changes it.
    const fixed = blanketOf(project)?.cells?.painted?.[piece.id] === undefined ? [] : ['fixed']
    if (piece.kind !== 'motif')
      return [
        `${PIECE_NAME[piece.kind]} ${piece.label}`,
        standsWords(plan, piece),
        wayWords(project, piece),
        ...fixed,
      ].join(', ')
    const joins = plan.joins.filter(({ members }) => members.some(({ motif }) => motif === piece.id)).length
    return [
      `motif ${piece.label}`,
      `row ${piece.row}`,
      `place ${piece.column}`,
      wayWords(project, piece),
      ...fixed,
      counted(joins, 'join point'),
    ].join(', ')
  },
  hand: {
    teaching: 'Press a motif on the map to take it in the hand: its joins, its colours, its place.',
    moving: 'Arrow keys move from motif to motif, comma and full stop along the order of work',
    title: (plan, piece) => [`${capital(PIECE_NAME[piece.kind])} ${piece.label}`, standsWords(plan, piece)],
    work: (plan, { id }) => {
      const step = plan.order.find(({ motif }) => motif === id)
      return step ? `${capital(step.words)}.` : ''
    },
    isLow: false,
  },
  painting: (project, plan, ids, colourway) => {
    const pieces = ids.flatMap((id) => pieceAt(plan, id) ?? [])
    const suiting = pieces.filter(({ motif }) => isFor(project, motif ?? plan.motif?.id, colourway))
    const painted = suiting.map(({ id }) => id)
    return { count: piecesCounted(suiting), edit: (before) => paint(before, painted, colourway) }
  },
}
