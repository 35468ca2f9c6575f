/** A blanket in the window: motifs joined to each other, with fillers, half motifs and an edging. */
import { legendsOf, SIDES_LEGEND } from '../../src-core/joins/words'
import { say } from '../state/say'
import type { PlanNumbers } from '../../shared-types/plan'
import type { JoinRule, Project } from '../../shared-types/project'
import { ARRANGEMENTS, JOIN_RULES } from '../../shared-types/project'
import { PIECE_NAME, standsWords } from '../../src-core/figures/piece-words'
import { pointsAlone, sideNoun, sidesLength } from '../../src-core/figures/seam-words'
import { capital, counted, rowsOfUpTo } from '../../src-core/figures/words'
import { joinPoints, pieceAt, placeInRow } from '../../src-core/layout/placed'
import { rowLengths } from '../../src-core/layout/standing'
import { countPlaces } from '../../src-core/layout/places'
import { formatLength, formatNumber, formatSize } from '../../src-core/units/format'
import {
  blanketOf,
  paint,
  patchBlanket,
  patchEdging,
  patchJoining,
  setArrangement,
} from '../state/edits/layout'
import { additionFigure, countFigure, hoursFigure, sizeFigure } from '../state/ledger-figures'
import type { LedgerFigure } from '../state/ledger-figures'
import { fitted, resized } from '../state/resize'
import { cycled, stepped } from '../state/steps'
import type { BlanketForm, KindOfLayout, Nudge } from './kind'
import { ARRANGEMENT_NAMES, isFor, piecesCounted, wayWords } from './words'
import { settled } from '../../src-core/settled'

/** Join points, and what is joined along whole sides with how long that is. */
function joinFigures(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure[] {
  const { counts } = plan
  const was = before?.counts
  const points = countFigure('Join points', pointsAlone(counts), was && pointsAlone(was))
  if (!counts.sides && !was?.sides) return [points]
  const { joining, units } = settled(project)
  const [sides] = additionFigure(`${capital(sideNoun(joining))}s`, counts.sides?.count, was?.sides?.count)
  const range = counts.sides ? `(${sidesLength(counts.sides, units)})` : ''
  return [...(pointsAlone(counts) > 0 ? [points] : []), ...(sides ? [{ ...sides, range }] : [])]
}

export const BLANKET_KIND: KindOfLayout = {
  kind: 'blanket',
  name: 'Blanket',
  one: 'a blanket',
  thing: 'motif',

  tools: ['select', 'paint', 'turn', 'mark'],
  joinsName: 'Joins',
  canJoin: (project) => settled(project).joining.rule !== 'apart',
  keepsColours: true,

  mapLabel: (plan) => `Map of ${counted(plan.counts.motifs, 'motif')}`,
  get mapHelp() {
    return say`Arrow keys move from motif to motif, comma and full stop go through fillers and half motifs too, letters paint colourways, question mark lists all keys. The map is also there as a table.`
  },
  emptyMap: {
    what: 'Nothing is arranged yet.',
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
      `motif ${placeInRow(plan, piece)}`,
      wayWords(project, piece),
      ...fixed,
      counted(joins, 'join point'),
    ].join(', ')
  },
  hand: {
    get teaching() {
      return say`Select a motif on the map to see more: its joins and its colours.`
    },
    moving: 'Arrow keys move from motif to motif, comma and full stop along the order of work',
    title: (plan, piece) => [`${capital(PIECE_NAME[piece.kind])} ${piece.label}`, standsWords(plan, piece)],
    work: (plan, { id }) => {
      const step = plan.order.find(({ motif }) => motif === id)
      if (!step) return ''
      // Read beside the map, left and right would be those of the map.
      const [legend = ''] = legendsOf([step.words], null).filter((each) => each === SIDES_LEGEND)
      return [`${capital(step.words)}.`, legend].filter(Boolean).join(' ')
    },
    isLow: false,
  },
  painting: (project, plan, ids, colourway) => {
    const pieces = ids.flatMap((id) => pieceAt(plan, id) ?? [])
    const suiting = pieces.filter(({ motif }) => isFor(project, motif ?? plan.motif?.id, colourway))
    const painted = suiting.map(({ id }) => id)
    return { count: piecesCounted(suiting), edit: (before) => paint(before, painted, colourway) }
  },

  figures: (project, plan, before) => [
    sizeFigure(project, plan, before),
    countFigure('Motifs', plan.counts.motifs, before?.counts.motifs),
    ...additionFigure('Fillers', plan.counts.fillers, before?.counts.fillers),
    ...additionFigure('Halves', plan.counts.halves, before?.counts.halves),
    ...joinFigures(project, plan, before),
    countFigure('Ends', plan.ends, before?.ends),
    hoursFigure(plan, before),
  ],
  summary: {
    arrangement: (project, plan) => {
      const blanket = blanketOf(project)
      const { units } = settled(project)
      if (!blanket?.arrangement) return ['none yet']
      const name = ARRANGEMENT_NAMES[blanket.arrangement]
      const isCut = blanket.outlineShape !== undefined && blanket.arrangement !== 'rings'
      // What is cut out has other rows than the fields say.
      const lengths = isCut ? rowLengths(plan) : []
      const counts =
        lengths.length > 0
          ? rowsOfUpTo(lengths, name.replace(/s$/, ''), name)
          : blanket.arrangement === 'rings'
            ? `${counted(blanket.rings ?? 0, 'ring')}, ${counted(plan.counts.motifs, 'motif')}`
            : `${name}, ${formatNumber(blanket.columns ?? 0)} × ${formatNumber(blanket.rows ?? 0)}`
      const { width, height } = blanket.target ?? {}
      // Rows that nothing stands in are numbers to begin with, and nobody's choice.
      if (plan.motifs.length === 0 && width && height)
        return ['nothing arranged yet', `target ${formatSize(width, height, units)}`]
      if (width && height) return [counts, `target ${formatSize(width, height, units)}`]
      return plan.size.width > 0 ? [counts, formatSize(plan.size.width, plan.size.height, units)] : [counts]
    },
    joins: (project, plan) => {
      const rule = settled(project).joining.rule
      if (rule === 'apart')
        return [`not joined, ${formatLength(settled(project).joining.gap, settled(project).units)} apart`]
      const threes = plan.joins.filter((node) => node.members.length > 2).length
      const { sides } = plan.counts
      const points = sides ? pointsAlone(plan.counts) : joinPoints(plan).length
      const lines = points > 0 || !sides ? [counted(points, 'join point')] : []
      if (sides) lines.unshift(counted(sides.count, sideNoun(settled(project).joining)))
      if (rule === 'seam') lines.unshift('seamed')
      else if (threes > 0) lines.push(`${formatNumber(threes)} of three and more`)
      return lines
    },
  },
  nudge: (field, steps, isSideways) => {
    switch (field) {
      case 'columns':
        return nudgeCount(steps, true)
      case 'count':
      case 'rings':
      case 'size':
        return nudgeCount(steps, isSideways)
      case 'arrangement':
        return {
          label: 'change the arrangement',
          edit: (project) => {
            const now = blanketOf(project)?.arrangement ?? 'straight-rows'
            return setArrangement(project, cycled(ARRANGEMENTS, now, steps))
          },
        }
      case 'joining':
        return {
          label: 'change the way of joining',
          edit: (project) =>
            patchJoining(project, { rule: cycled(PLAIN_RULES, settled(project).joining.rule, steps) }),
        }
      case 'size-with-edging':
        return {
          label: 'change the edging',
          edit: (project) => {
            const rounds = blanketOf(project)?.edging?.rounds ?? []
            const next = steps > 0 ? [...rounds, rounds.at(-1) ?? 'sc'] : rounds.slice(0, -1)
            return patchEdging(project, { rounds: next })
          },
        }
      default:
        return null
    }
  },

  paper: {
    label: 'The map',
    what: 'the map',
    toPutIn: { label: 'Card and map, to put in', what: 'card and map' },
    alone: 'The map alone',
    isTemplate: false,
    list: { list: 'order', label: 'Working order' },
  },
  motifsAbout: (project) => {
    const {
      arrangement = 'straight-rows',
      columns = 0,
      rows = 0,
      rings = 0,
      alternateRows = 'same',
    } = blanketOf(project) ?? {}
    return countPlaces({ arrangement, columns, rows, rings, alternateRows })
  },
  isPlannedHere: false,

  start: {
    examples: 'Joined: blankets, throws and cloths',
    made: (answers) => {
      const { width, height } = FORM_NUMBERS[answers.form]
      const size = { width: answers.number(width), height: answers.number(height) }
      return {
        kind: 'blanket',
        ...size,
        ...(answers.form !== 'flat' && { form: answers.form }),
        ...(answers.form === 'round' && { ends: answers.ends }),
        ...(answers.forChild && { forChild: true as const }),
      }
    },
    wish: (made) => (made.kind === 'blanket' ? { width: made.width, height: made.height } : null),
    /** In a piece, until an arrangement is chosen. */
    lay: (project, motif, colourway, made) => {
      if (made.kind !== 'blanket') return project
      return {
        ...project,
        ...(made.forChild && { forChild: true }),
        layout: {
          kind: 'blanket',
          arrangement: 'straight-rows',
          motif,
          columns: 8,
          rows: 8,
          alternateRows: 'same',
          turn: 0,
          alternateTurn: 0,
          target: { width: made.width, height: made.height },
          ...(made.form === 'shawl' && {
            outlineShape: { kind: 'triangle', size: made.width, height: made.height, points: 'down' },
          }),
          ...(made.form === 'round' && {
            inTheRound: true,
            ...(made.ends !== 'none' && made.ends && { closedEnds: made.ends }),
          }),
          cells: { fill: { pattern: 'one', colourways: [colourway], seed: 1 } },
        },
      }
    },
  },
}

/** Which two numbers of the start are the size of what joined motifs become. */
export const FORM_NUMBERS = {
  flat: { width: 'width', height: 'height' },
  shawl: { width: 'wingspan', height: 'depth' },
  round: { width: 'around', height: 'tall' },
} as const satisfies Record<BlanketForm, object>

/** Rules that can be cycled through without saying more. */
const PLAIN_RULES: readonly JoinRule[] = JOIN_RULES.filter((rule) => rule !== 'apart')

const nudgeCount = (steps: number, isSideways: boolean): Nudge => ({
  label: 'change the number of motifs',
  edit: (project: Project) => {
    const { arrangement, rings, columns, rows } = blanketOf(project) ?? {}
    if (arrangement === 'rings') return patchBlanket(project, { rings: stepped(rings, steps) })
    return patchBlanket(
      project,
      isSideways ? { columns: stepped(columns, steps) } : { rows: stepped(rows, steps) },
    )
  },
})
