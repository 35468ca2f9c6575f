/** Edits of the blanket: arrangement, size, edging, painted cells; and of how it is joined. Lengths in mm. */
import type { FitArrangement } from '../../../shared-types/plan'
import type { BlanketLayout, Joining, Project } from '../../../shared-types/project'
import { standingColours, standingPlaces } from '../../../src-core/colour/hold'
import { fromGallery } from '../../../src-core/edging/gallery'
import type { EdgingKind } from '../../../src-core/edging/gallery'
import { withinStash } from '../../../src-core/layout/fit-have'
import { withPiles } from '../../../src-core/layout/piles'
import type { Piles } from '../../../src-core/layout/piles'
import { layoutOfFit } from '../../../src-core/layout/taken'
import { blanketOf } from '../../../src-core/plans/layouts'
import { withOutlineTaken } from '../../../src-core/progress/outline-stays'
import { markLaidOut } from '../../../src-core/progress/mark'
import { settled } from '../../../src-core/settled'
import { stitchAbbreviation } from '../../../src-core/stitches/terms'

export { blanketOf }

type WrittenRound = NonNullable<NonNullable<BlanketLayout['edging']>['written']>[number]

/** Puts fields over those of the blanket. */
export function patchBlanket(project: Project, patch: Partial<BlanketLayout>): Project {
  const blanket = blanketOf(project)
  return blanket ? { ...project, layout: { ...blanket, ...patch } } : project
}

/** What an arrangement is to fit: a size, motifs that are made already, the yarn on hand. */
export type FitFrom = 'size' | 'count' | 'motifs' | 'stash'

/**
 * Takes over an arrangement that fits, rotation and all. Of what there is, it has the size that comes of it: one that
 * was asked for before is not asked for any more. Motifs that are made already are marked so in the same step, so that
 * whatever they would lose by it is asked about; where it is known how many there are of each colourway (`piles`), their
 * colours are chosen from these.
 */
export function takeFit(
  project: Project,
  fit: FitArrangement,
  from: FitFrom = 'size',
  piles?: Piles,
): Project {
  const coloured = piles ? withPiles(project, piles) : project
  const taken = patchBlanket(from === 'stash' ? withinStash(project) : coloured, {
    ...layoutOfFit(project, fit),
    // How large it was to be still holds where the yarn on hand does not reach that far.
    ...(from !== 'size' && from !== 'stash' && { target: undefined }),
  })
  const laid = withOutlineTaken(project, taken)
  if (from !== 'motifs') return laid
  return markLaidOut(project, piles ? heldAsLaid(laid) : laid, standingPlaces(laid))
}

/** Every motif held in the colour that it has: as those that are made already are laid out. */
function heldAsLaid(project: Project): Project {
  const cells = blanketOf(project)?.cells
  const standing = standingColours(project)
  const own = (standing?.places ?? []).flatMap(({ id }, i) => {
    const colour = standing!.assignment.colourways[i]
    return colour ? [[id, colour]] : []
  })
  return patchBlanket(project, { cells: { ...cells, held: { ...cells?.held, ...Object.fromEntries(own) } } })
}

/** Changes the kind of arrangement and sees that the counts it needs are there. */
export function setArrangement(project: Project, arrangement: BlanketLayout['arrangement']): Project {
  const blanket = blanketOf(project)
  const counts =
    arrangement === 'rings'
      ? { rings: blanket?.rings || 4 }
      : { columns: blanket?.columns || 8, rows: blanket?.rows || 8 }
  return patchBlanket(project, { arrangement, ...counts })
}

/** Paints cells with a colourway, or wipes off what was painted where it is null. */
export function paint(project: Project, cells: Iterable<string>, colourway: string | null): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  const painted: Record<string, string> = { ...blanket.cells?.painted }
  let isChanged = false
  for (const cell of cells) {
    if ((painted[cell] ?? null) === colourway) continue
    isChanged = true
    if (colourway === null) delete painted[cell]
    else painted[cell] = colourway
  }
  return isChanged ? patchBlanket(project, { cells: { ...blanket.cells, painted } }) : project
}

/** Puts fields over those of the fill. */
export function patchFill(
  project: Project,
  patch: NonNullable<NonNullable<BlanketLayout['cells']>['fill']>,
): Project {
  const cells = blanketOf(project)?.cells
  return patchBlanket(project, { cells: { ...cells, fill: { ...cells?.fill, ...patch } } })
}

/** Puts fields over those of the edging; without rounds there is none. */
export function patchEdging(project: Project, patch: NonNullable<BlanketLayout['edging']>): Project {
  return patchBlanket(project, { edging: { ...blanketOf(project)?.edging, ...patch } })
}

/** The project with written rounds of the edging as a function leaves them. */
export function editWritten(
  project: Project,
  edit: (written: readonly WrittenRound[]) => readonly WrittenRound[],
): Project {
  return patchEdging(project, { written: [...edit(blanketOf(project)?.edging?.written ?? [])] })
}

/** The project with an edging of the gallery: its rounds instead of those that are written now. */
export const takeEdging = (project: Project, kind: EdgingKind): Project =>
  patchBlanket(project, { edging: fromGallery(blanketOf(project)?.edging, kind, settled(project).terms) })

/** The project with the first round that written ones are worked into, where none stands there yet, to be seen and changed. */
export function withFirstRound(project: Project): Project {
  const { rounds = [], written = [] } = blanketOf(project)?.edging ?? {}
  if (rounds.length + written.length > 0) return project
  return patchEdging(project, { rounds: [stitchAbbreviation('sc', settled(project).terms)] })
}

/** Puts fields over how the motifs are joined. */
export const patchJoining = (project: Project, patch: Partial<Joining>): Project => ({
  ...project,
  joining: { ...project.joining, ...patch },
})

type Single = NonNullable<Joining['single']>[number]

const isPair = ({ places }: Single, one: string, other: string): boolean =>
  places.length === 2 && places.includes(one) && places.includes(other)

/** How two placed motifs are joined where they have a rule of their own. */
export const singleOf = (project: Project, one: string, other: string): Single | undefined =>
  project.joining?.single?.find((pair) => isPair(pair, one, other))

/** Joins two placed motifs by a rule of their own; as all others like them where it is null. */
export function joinPair(
  project: Project,
  [one, other]: readonly [string, string],
  own: Pick<Single, 'rule' | 'bridgeChains'> | null,
): Project {
  const { single = [], ...forAll } = project.joining ?? {}
  const others = single.filter((pair) => !isPair(pair, one, other))
  const next = own ? [...others, { places: [one, other], ...own }] : others
  return { ...project, joining: next.length > 0 ? { ...forAll, single: next } : forAll }
}
