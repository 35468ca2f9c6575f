/** Marking motifs as made and as joined, and what is said of it. */
import type { Project } from '../../shared-types/project'
import { capital, counted } from '../../src-core/figures/words'
import { pieceAt, placedPieces } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { EDGING } from '../../src-core/progress/marks'
import {
  clearJoined,
  clearMade,
  joinedOf,
  joinsAsMade,
  markEdging,
  markJoined,
  markLoose,
  markMade,
  markMadeBefore,
} from '../../src-core/progress/mark'
import { madeWords } from '../../src-core/progress/words'
import { kindOf } from '../kinds/kinds'
import { piecesCounted } from '../kinds/words'
import { today } from '../state/today'
import type { Marking } from '../state/view.svelte'
import type { WindowState } from '../state/window.svelte'

/** Whether a piece is marked so. */
export const isMarked = (project: Project, id: string, as: Marking): boolean => {
  const [isMade, isJoined] = [project.made, joinedOf(project)].map((marks) => marks?.[id] !== undefined)
  return as === 'loose' ? isMade === true && !isJoined : (as === 'made' ? isMade : isJoined) === true
}

/** What can be said of the motifs of a project: of those that are joined as they are made, that some are not yet. */
export function markingsIn(project: Project): Marking[] {
  if (!kindOf(project).canJoin(project)) return ['made']
  return joinsAsMade(project) ? ['made', 'loose', 'joined'] : ['made', 'joined']
}

/** What a mark says, in words. */
export const markingWords = (as: Marking, joinedAs: string): string =>
  as === 'joined' ? joinedAs : as === 'loose' ? `made, not ${joinedAs} yet` : 'made'

interface Act {
  readonly label: string
  readonly edit: (project: Project) => Project
}

/** Marks pieces, or takes their marks away where the first of them has one already. */
function actOf({ document, view }: WindowState, ids: readonly string[], as: Marking): Act | null {
  const pieces = [...new Set(ids)].flatMap((id) => pieceAt(document.plan, id) ?? [])
  const [first] = pieces
  if (!first) return null
  return setOf(
    document.plan.progress.joinedAs,
    pieces,
    as,
    !isMarked(document.committed, first.id, as),
    view.day,
  )
}

function setOf(
  joinedAs: string,
  pieces: readonly PlacedPiece[],
  as: Marking,
  isOn: boolean,
  day: string | null,
): Act {
  const ids = pieces.map(({ id }) => id)
  const on = day ?? today()
  const words = piecesCounted(pieces)
  const marks = { made: markMade, joined: markJoined, loose: markLoose }
  if (!isOn)
    return {
      label: `mark ${words} as not ${as === 'joined' ? joinedAs : 'made'}`,
      edit: (project) => (as === 'joined' ? clearJoined(project, ids) : clearMade(project, ids)),
    }
  return {
    label: `mark ${words} as ${markingWords(as, joinedAs)}`,
    edit: (project) => marks[as](project, pieces, on),
  }
}

/** Shows what a stroke would mark. */
export function markPreview(state: WindowState, ids: readonly string[]): void {
  const act = actOf(state, ids, state.view.marking)
  if (act) state.document.preview(act.label, act.edit)
}

function run(state: WindowState, act: Act | null): void {
  if (!act) return
  state.document.change(act.label, act.edit)
  const { label } = act
  // A plan that is still on its way knows nothing of these marks yet.
  state.document.whenPlanned(() =>
    state.say(`${capital(label)}: ${madeWords(state.document.plan, state.document.settled.terms)}.`),
  )
}

/** Marks pieces as made or joined, or takes the marks away where the first has one; with `isOn`, as it says. */
export function markPieces(
  state: WindowState,
  ids: readonly string[],
  as: Marking = state.view.marking,
  isOn?: boolean,
): void {
  const { document, view } = state
  if (isOn === undefined) return run(state, actOf(state, ids, as))
  const pieces = [...new Set(ids)].flatMap((id) => pieceAt(document.plan, id) ?? [])
  if (pieces.length > 0) run(state, setOf(document.plan.progress.joinedAs, pieces, as, isOn, view.day))
}

/** Takes over marks from elsewhere in one step: what was made there, and what was marked and is not any more. */
export function takeMarks(state: WindowState, made: readonly string[], removed: readonly string[]): void {
  const { document, view } = state
  const pieces = made.flatMap((id) => pieceAt(document.plan, id) ?? [])
  const gone = removed.flatMap((id) => pieceAt(document.plan, id) ?? [])
  const { joinedAs } = document.plan.progress
  const acts = [
    ...(pieces.length > 0 ? [setOf(joinedAs, pieces, 'made', true, view.day)] : []),
    ...(gone.length > 0 ? [setOf(joinedAs, gone, 'made', false, view.day)] : []),
  ]
  if (acts.length === 0) return
  run(state, {
    label: acts.map(({ label }) => label).join(', '),
    edit: (project) => acts.reduce((next, { edit }) => edit(next), project),
  })
}

/** Marks every motif that is laid out as made before, on a day that is not known, and not joined yet. */
export function markAllMadeBefore(state: WindowState): void {
  const { motifs } = state.document.plan
  run(state, {
    label: `mark ${counted(motifs.length, 'motif')} as made`,
    edit: (project) => markMadeBefore(project, motifs),
  })
}

/** What is worked up to a piece, itself included, in working order; where there is none, in the order of the list. */
export function upTo(state: WindowState, id: string): string[] {
  const { plan } = state.document
  const order =
    plan.order.length > 0 ? plan.order.map(({ motif }) => motif) : placedPieces(plan).map((piece) => piece.id)
  return order.slice(0, order.indexOf(id) + 1)
}

/** Marks the edging as made, or not. */
export function markEdge(state: WindowState, isOn: boolean): void {
  run(state, {
    label: `mark the edging as ${isOn ? 'made' : 'not made'}`,
    edit: (project) => markEdging(project, isOn ? (state.view.day ?? today()) : null),
  })
}

export const isEdgingMade = (project: Project): boolean => project.made?.[EDGING] !== undefined
