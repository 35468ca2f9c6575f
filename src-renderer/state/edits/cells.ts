/** Edits of the cells of a blanket: which motif stands where, what is left out, its outline, the round. */
import type { BlanketLayout, ClosedEnds, OutlineShape, Project } from '../../../shared-types/project'
import { blockOf, keptUnder, placesUnder } from '../../../src-core/layout/blocks'
import { inMiddle } from '../../../src-core/ways/outline-by'
import { isMarked } from '../../../src-core/progress/marks'
import { blanketOf, patchBlanket } from './layout'
import { addColourway, newColourway } from './yarn'

type ByHand = NonNullable<NonNullable<BlanketLayout['cells']>['motifs']>

type Large = NonNullable<NonNullable<BlanketLayout['cells']>['large']>

function withCells(project: Project, motifs: ByHand, large: Large = largeOf(project)): Project {
  const { motifs: _, large: __, ...cells } = blanketOf(project)?.cells ?? {}
  return patchBlanket(project, {
    cells: {
      ...cells,
      ...(Object.keys(motifs).length > 0 && { motifs }),
      ...(Object.keys(large).length > 0 && { large }),
    },
  })
}

const largeOf = (project: Project): Large => blanketOf(project)?.cells?.large ?? {}

/** Places each way of motifs that take several, without those at some addresses. */
const largeWithout = (project: Project, gone: ReadonlySet<string>): Large =>
  Object.fromEntries(Object.entries(largeOf(project)).filter(([id]) => !gone.has(id)))

/** The places at some addresses; of a large motif all that it takes. */
function placesOf(project: Project, ids: Iterable<string>): string[] {
  const large = largeOf(project)
  return [...ids].flatMap((id) => {
    const [row = 0, column = 0] = id.split(',').map(Number)
    const size = large[id]
    return size === undefined ? [id] : placesUnder(row, column, size)
  })
}

/** A motif that comes to the blanket without a colourway gets one, so that it is drawn and its yarn is counted. */
function withOwnColourway(project: Project, motif: string): Project {
  const isColoured = project.colourways?.some((way) => way.motif === motif) ?? false
  if (isColoured || (project.yarns ?? []).length === 0) return project
  return addColourway(project, newColourway(project, motif))
}

/** Puts a motif into cells, or leaves them out where it is null. */
export function setCells(project: Project, ids: Iterable<string>, motif: string | null): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  const motifs: ByHand = { ...blanket.cells?.motifs }
  const isUsual = motif !== null && motif === blanket.motif && !blanket.alternate
  // Where a large motif goes, all of its places are left out, or the pattern's again; another one takes them all.
  const gone = motif === null || isUsual ? new Set(ids) : new Set<string>()
  for (const id of gone.size > 0 ? placesOf(project, gone) : ids) {
    // What is the blanket's only motif needs no word of its own.
    if (isUsual) delete motifs[id]
    else motifs[id] = motif
  }
  const next = withCells(project, motifs, largeWithout(project, gone))
  return motif === null || next === project ? next : withOwnColourway(next, motif)
}

/** Puts one large motif into a block of cells; they stay as they are where they are none. */
export function setLarge(project: Project, ids: readonly string[], motif: string): Project {
  const block = blockOf(ids)
  const blanket = blanketOf(project)
  if (!block || !blanket) return project
  const { row, column, size } = block
  const cleared = new Set(ids)
  const others = Object.entries(blanket.cells?.motifs ?? {}).filter(([id]) => !cleared.has(id))
  const kept = keptUnder(row, column, size)
  const large = { ...largeWithout(project, cleared), [kept]: size }
  return withOwnColourway(withCells(project, { ...Object.fromEntries(others), [kept]: motif }, large), motif)
}

/** Gives cells back to the pattern. */
export function bringBack(project: Project, ids: readonly string[]): Project {
  const gone = new Set(ids)
  const motifs = Object.entries(blanketOf(project)?.cells?.motifs ?? {}).filter(([id]) => !gone.has(id))
  return withCells(project, Object.fromEntries(motifs), largeWithout(project, gone))
}

/** Alternates the blanket's motif with another one; with none it stands alone. */
export function setAlternate(
  project: Project,
  second: string | null,
  by: NonNullable<BlanketLayout['alternate']>['by'] = 'cell',
): Project {
  const blanket = blanketOf(project)
  if (!blanket?.motif) return project
  if (second === null) {
    const { alternate: _, ...rest } = blanket
    return { ...project, layout: rest }
  }
  // More than two, as a file may have them, stay.
  const others = blanket.alternate?.motifs?.filter((id) => id !== blanket.motif && id !== second) ?? []
  const isKnown = blanket.alternate?.motifs?.includes(second) ?? false
  const motifs = isKnown ? [blanket.motif, second, ...others] : [blanket.motif, second]
  return withOwnColourway(patchBlanket(project, { alternate: { motifs, by } }), second)
}

/** What has a height of its own. */
const HIGH: readonly (OutlineShape['kind'] | null)[] = ['rectangle', 'triangle']

/** Cuts the blanket out in a shape, as large as it is now where nothing else is said; null takes all of it. */
export function setOutline(
  project: Project,
  kind: NonNullable<OutlineShape['kind']> | null,
  size: { readonly width: number; readonly height: number } | null,
  patch: Partial<OutlineShape> = {},
): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  if (kind === null) {
    const { outlineShape: _, ...rest } = blanket
    return { ...project, layout: rest }
  }
  const now = (side: 'width' | 'height') => (size ? Math.max(10, Math.round(size[side])) : undefined)
  const width = blanket.outlineShape?.size ?? now('width')
  const height = HIGH.includes(kind) ? (blanket.outlineShape?.height ?? now('height')) : undefined
  const { height: _, ...outline } = blanket.outlineShape ?? {}
  const shaped = patchBlanket(project, {
    outlineShape: { ...outline, size: width, ...(height !== undefined && { height }), ...patch, kind },
  })
  // Nothing is made that could come to lie beside it.
  return isMarked(project) ? shaped : inMiddle(shaped)
}

/** Puts the outline into the middle of the rows again. */
export const centreOutline = inMiddle

/** Joins the last motif of each row to the first, or opens it again; a round has three in a row at least. */
export function setInTheRound(project: Project, inTheRound: boolean): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  if (inTheRound) return patchBlanket(project, { inTheRound, columns: Math.max(3, blanket.columns ?? 8) })
  const { inTheRound: _, ...rest } = blanket
  return { ...project, layout: rest }
}

/** Closes ends of what is joined in the round, or opens them again. */
export function setClosedEnds(project: Project, ends: ClosedEnds): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  if (ends !== 'none') return patchBlanket(project, { closedEnds: ends })
  const { closedEnds: _, ...rest } = blanket
  return { ...project, layout: rest }
}
