/** Painting, keeping and freeing colours, and what is said of it: how many others changed with it. */
import { say } from '../state/say'
import type { Project } from '../../shared-types/project'
import { standingColours } from '../../src-core/colour/hold'
import { isByYarn } from '../../src-core/colour/limits'
import { pieceAt, placedPieces } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { counted } from '../state/summaries'
import { blanketOf, patchBlanket } from '../state/edits/layout'
import type { WindowState } from '../state/window.svelte'
import { kindOf } from '../kinds/kinds'
import { piecesCounted } from '../kinds/words'
import { paintCells } from './map-acts'

/** Places of a blanket that are fixed: painted by hand or kept. */
export const fixedOf = (project: Project): Readonly<Record<string, string>> =>
  blanketOf(project)?.cells?.painted ?? {}

/** Ids of motifs whose colourway is another one now, without those of `but`. */
function othersChanged(before: Project, after: Project, but: ReadonlySet<string>): string[] {
  const [was, is] = [standingColours(before), standingColours(after)]
  if (!was || !is || was === is) return []
  const stood = new Map(was.places.map(({ id }, index) => [id, was.assignment.colourways[index]]))
  return is.places.flatMap(({ id }, index) =>
    !but.has(id) && stood.has(id) && stood.get(id) !== is.assignment.colourways[index] ? [id] : [],
  )
}

/** Whether others can only have changed for the limits of a fill. */
function isForLimits(project: Project): boolean {
  const { fill } = blanketOf(project)?.cells ?? {}
  return fill?.pattern !== 'no-two-alike' && (isByYarn(fill) || Object.keys(fill?.most ?? {}).length > 0)
}

/** "Painted 1 motif; 3 others changed to keep the limits." */
function paintWords(done: 'Painted' | 'Kept' | 'Freed', pieces: string, others: number, why: string): string {
  const rest = others === 0 ? '' : `; ${counted(others, 'other')} changed${why}`
  return `${done} ${pieces}${rest}.`
}

/** What is said of things that were painted where no pattern follows: of one all, of several how many. */
function piecesWords({ document }: WindowState, done: string, ids: readonly string[]): string {
  const { project, plan } = document
  const pieces = [...new Set(ids)].flatMap((id) => pieceAt(plan, id) ?? [])
  const [first] = pieces
  const kind = kindOf(project)
  if (first && pieces.length === 1) return kind.pieceWords(project, plan, first)
  return `${done} ${counted(pieces.length, kind.thing)}.`
}

/**
 * Says on screen and to screen readers what became of `before`, with `more` for ears: of what stands there now, which is
 * read from the plan once the change is in it.
 */
export function tellPaint(
  state: WindowState,
  before: Project,
  done: 'Painted' | 'Kept' | 'Freed',
  ids: readonly string[],
  more: (() => string) | null = null,
): void {
  const { document, view } = state
  const project = document.committed
  const say = (words: () => string): void => document.whenPlanned(() => state.say(words()))
  if (!kindOf(project).keepsColours) return say(() => more?.() || piecesWords(state, done, ids))
  if (project === before) return
  const [was, is] = [fixedOf(before), fixedOf(project)]
  const meant = [...new Set(ids)].filter((id) => was[id] !== is[id])
  const pieces = meant.flatMap((id) => pieceAt(document.plan, id) ?? [])
  const others = othersChanged(before, project, new Set(meant))
  const words = paintWords(
    done,
    piecesCounted(pieces),
    others.length,
    isForLimits(project) ? ' to keep the limits' : '',
  )
  view.painted = { project, words, others: new Set(others) }
  if (!more) return state.say(words)
  const { spoken } = state
  document.whenPlanned(() => {
    // Another key may have painted since, or have had its answer.
    if (view.painted?.project === project && state.spoken === spoken)
      state.say([words, more()].filter(Boolean).join(' '))
  })
}

/** Paints in one step, or frees where there is no colourway, and says what changed with it. */
export function paintAndTell(
  state: WindowState,
  ids: readonly string[],
  colourway: string | null,
  more: (() => string) | null = null,
): void {
  const before = state.document.committed
  paintCells(state.document, ids, colourway, 'change')
  tellPaint(state, before, colourway === null ? 'Freed' : 'Painted', ids, more)
}

/** What keys and buttons act on: what is selected, else everything. */
const targetsOf = ({ document, selection }: WindowState): readonly PlacedPiece[] => {
  const chosen = [...selection.ids].flatMap((id) => pieceAt(document.plan, id) ?? [])
  return chosen.length > 0 ? chosen : placedPieces(document.plan)
}

/** Fixes what is selected, or all, in the colourways that stand there. */
export function keepColours(state: WindowState, pieces = targetsOf(state)): void {
  const { document } = state
  const before = document.committed
  const painted = { ...fixedOf(before) }
  // The plan of a large blanket may still be under way: motifs stand as the project has them now.
  const stands = standingColours(before)
  const now = new Map(stands?.places.map(({ id }, index) => [id, stands.assignment.colourways[index]!]))
  const wayAt = ({ id, colourway }: PlacedPiece): string => now.get(id) ?? colourway
  const added = pieces.filter((piece) => wayAt(piece) !== '' && painted[piece.id] === undefined)
  if (!kindOf(before).keepsColours || added.length === 0)
    return state.say('Nothing to keep that is not kept.')
  for (const piece of added) painted[piece.id] = wayAt(piece)
  document.change(say`keep the colours of ${piecesCounted(added)}`, (project) =>
    patchBlanket(project, { cells: { ...blanketOf(project)?.cells, painted } }),
  )
  tellPaint(
    state,
    before,
    'Kept',
    added.map(({ id }) => id),
  )
}

/** Frees what is fixed of what is selected, or of all: a pattern may change it again. */
export function freeColours(state: WindowState, ids: readonly string[] | null = null): void {
  const fixed = Object.keys(fixedOf(state.document.committed))
  const { selection, document } = state
  const wanted = new Set(ids ?? (selection.ids.size > 0 ? selection.ids : fixed))
  const freed = fixed.filter((id) => wanted.has(id))
  if (freed.length === 0) return state.say('Nothing is fixed there.')
  const before = document.committed
  const pieces = freed.flatMap((id) => pieceAt(document.plan, id) ?? [])
  const painted = Object.fromEntries(Object.entries(fixedOf(before)).filter(([id]) => !wanted.has(id)))
  document.change(`free ${piecesCounted(pieces)}`, (project) =>
    patchBlanket(project, { cells: { ...blanketOf(project)?.cells, painted } }),
  )
  tellPaint(state, before, 'Freed', freed)
}
