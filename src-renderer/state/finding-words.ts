/** Where a finding is, and the way there, in the words of the window. */
import { say } from './say'
import type { Finding, Severity } from '../../shared-types/finding'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { placeInRow } from '../../src-core/layout/placed'
import { settled } from '../../src-core/settled'
import { termWord } from '../../src-core/stitches/terms'
import { findMotif } from './edits/motif'
import { findColourway, findYarn } from './edits/yarn'
import { placeOfFinding } from './places-of-findings'
import { counted, PLACE_NAMES } from './summaries'
import type { PlaceId } from './view.svelte'

export const SEVERITY: Readonly<Record<Severity, string>> = {
  error: 'Error',
  warning: 'Warning',
  note: 'Note',
}

/** The motif of a finding by its name, or its id where it has none. */
const motifName = (project: Project, id: string | undefined): string | null =>
  id === undefined ? null : findMotif(project, id)?.name || id

/** "Round 3 of Quince blossom", "Motif 14, row 2, motif 4", "Yarn Leek", "Colours"; null for the whole project. */
export function whereWords(
  project: Project,
  plan: Plan,
  { target = {}, ...finding }: Finding,
): string | null {
  const { cells = [] } = target
  const placed = plan.motifs.find(({ id }) => id === cells[0])
  if (placed) {
    const where = plan.arrangement
      ? `Motif ${placed.label}, row ${placed.row}, motif ${placeInRow(plan, placed)}`
      : `Item ${placed.label}`
    return cells.length > 1 ? `${where}, and ${cells.length - 1} more` : where
  }
  if (target.edging !== undefined) return `Round ${borderRound(target)} of the ${borderWord(project)}`
  const motif = motifName(project, target.motif)
  const round = target.round ?? (target.entry === undefined ? undefined : target.entry + 1)
  if (round !== undefined) return motif === null ? `Round ${round}` : `Round ${round} of ${motif}`
  if (motif !== null) return motif
  const yarn = findYarn(project, target.yarn)
  if (yarn) return `${YARN}${yarn.name || yarn.id}`
  const way = findColourway(project, target.colourway)
  if (way) return [say`Colourway`, way.code, way.name].filter(Boolean).join(' ')
  const place = placeOfFinding(finding)
  return place && PLACE_NAMES[place]
}

const YARN = 'Yarn '

/** What a finding says, with where it is in front unless it begins with that name itself. */
export function toldWords(where: string | null, message: string): string {
  const capital = message.charAt(0).toUpperCase() + message.slice(1)
  if (where === null) return capital
  const names = where.startsWith(YARN) ? [where, where.slice(YARN.length)] : [where]
  const says = names.some((name) => message.startsWith(name) && /^\W/.test(message.slice(name.length)))
  return says ? message : `${where}: ${message}`
}

const borderWord = (project: Project): string => termWord('edging', settled(project).terms)

/** The number of a border's written round, as its editor has it. */
const borderRound = ({ round, edging = 0 }: NonNullable<Finding['target']>): number => round ?? edging + 1

/** What is shown now: whoever is there needs no way there. */
interface Shown {
  readonly place: PlaceId | null
  readonly motif: string | null
}

/** The words of the button that leads to a finding; null where it is about the project as a whole, or in view. */
export function goalWords(project: Project, finding: Finding, shown: Shown | null): string | null {
  const { target = {} } = finding
  const place = placeOfFinding(finding)
  const count = target.cells?.length ?? 0
  if (count > 0) return count === 1 ? 'Show on the map' : `Show ${counted(count, 'motif')} on the map`
  if (target.entry !== undefined) return `Go to round ${target.round ?? target.entry + 1}`
  if (target.edging !== undefined) return `Go to round ${borderRound(target)} of the ${borderWord(project)}`
  const isThere = shown !== null && place === shown.place
  if (place === 'motif' && target.motif) {
    const several = (project.motifs ?? []).length > 1
    if (!isThere) return `Go to ${several ? motifName(project, target.motif) : PLACE_NAMES.motif}`
    return several && target.motif !== shown.motif ? 'Show this motif' : null
  }
  return place && !isThere ? `Go to ${PLACE_NAMES[place]}` : null
}
